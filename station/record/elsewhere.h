/* Which items other stations of the hospital have used: what its store says, kept beside the record and not in it. What is decided by
 * it stands in the record. Lost with the file is only what was said so far: the store still finds an item in two cases. */
#ifndef BANDTALLY_RECORD_ELSEWHERE_H
#define BANDTALLY_RECORD_ELSEWHERE_H

#include <stdint.h>

#include "base/error.h"

#define ELSEWHERE_FILE "elsewhere.db" /* in the data folder */
#define ELSEWHERE_DAYS 400            /* what was said longer ago is forgotten as the file is opened */

struct elsewhere;

struct elsewhere_use {
	int32_t station, case_no;
};

/* Opens or makes the file in the data folder. A file that cannot be read is made anew. `today`: days since 1970. 0, or a negative
 * errno with `e`. */
int elsewhere_open(struct elsewhere **out, const char *folder, int32_t today, struct error *e);
void elsewhere_close(struct elsewhere *w); /* NULL too */

/* What is said of an item again: the last holds. It need not be durable: what is lost in a power cut is only this. 0 or a negative
 * errno. */
int elsewhere_add(struct elsewhere *w, const char *identity, struct elsewhere_use use, int32_t today);

/* RECORD_FOUND with `out`, RECORD_HAS_NONE, or a negative errno. `w` NULL: none. */
int elsewhere_find(struct elsewhere *w, const char *identity, struct elsewhere_use *out);

#endif
