/* What left a record (archive.h): stretches of numbers without an event, and cases without theirs; and one hash over both, which
 * the event that says so bears. Only archive.c and watch.c include this.
 */
#ifndef BANDTALLY_RECORD_GONE_H
#define BANDTALLY_RECORD_GONE_H

#include <stddef.h>
#include <stdint.h>

#include "record/chain.h"

struct record;

struct stretch {
	int64_t first, last;
	struct chain before, hash; /* of the event before it, and of its last */
};

struct stretches {            /* in order */
	struct stretch *list; /* the caller's to free */
	size_t count, room;
};

int gone_add(struct stretches *all, struct stretch one); /* 0 or -ENOMEM */

/* The hash is of all stretches in order, then of all cases in order; `seq`: of the event with which it left. */
void gone_hash_stretch(struct chain *all, const struct stretch *one);
void gone_hash_case(struct chain *all, int32_t case_no, int64_t seq);

/* Of what the record's tables say, in hex; `rows`: how many they have. 0 or a negative errno. */
int gone_hash(struct record *r, char hex[2 * CHAIN_BYTES + 1], int64_t *rows);

#endif
