/* What the parts of a slip's document share: how names, times and rows are put, and what slip.c asks of each part. Only
 * slip*.c include this. */
#ifndef BANDTALLY_TELL_SLIP_MAKING_H
#define BANDTALLY_TELL_SLIP_MAKING_H

#include "tell/amiss.h"
#include "tell/slip.h"

#define OUTCOME_MAX 1200
#define ROW_MAX 700 /* of what one row says */

struct making {
	const struct slip_source *from;
	const struct story *s;
	json_t *o;    /* the document */
	json_t *rows; /* of it */
	enum slip_kind kind;
	int n_amiss;
	struct amiss amiss[ITEMS_MAX];
};

/* Texts are cut at the paper's limits in whole characters, and what may not stand there is replaced: a paper is never kept
 * back for a name. The record keeps them as they are. */
json_t *slip_told(const char *s, size_t limit);
void slip_put(json_t *o, const char *key, const char *s, size_t limit); /* nothing of "" */

/* In the slip's language: a part of a sentence, and the text of one that has no values. */
void slip_say(const struct making *m, const struct say *say, char *out, size_t size);
const char *slip_text(const struct making *m, enum saying saying);

/* As it was read in the room: the minute of the day, and yyyymmdd. */
int32_t slip_minute(struct moment at);
int32_t slip_date(struct moment at);
#define SLIP_HM 6
void slip_hm(struct moment at, char hm[SLIP_HM]); /* "10:41" */
#define SLIP_DATE 40
void slip_day(const struct making *m, int32_t yyyymmdd, char out[SLIP_DATE]); /* "31 Mar 2028" */

const char *slip_name(const struct making *m, int32_t number); /* of a badge */

/* 'label  what is said'; nothing where it says nothing. `write`: a line to write on follows, NULL none. */
void slip_row(const struct making *m, enum saying label, const char *says, const char *write);

/* Adds to what a row is to say, with "; "; where the row is full it is put, and another one begins. */
void slip_row_add(const struct making *m, enum saying label, char says[ROW_MAX], const char *more);

/* Joins with "; ". */
void slip_list(char *list, size_t size, const char *more);

/* Everything is told here: an addendum that only adds to an earlier slip tells what came after the end alone. */
int slip_tells_all(const struct making *m);

void slip_put_items(const struct making *m);
void slip_outcome_items(const struct making *m, char *out, size_t size);

/* Digits that had a tourniquet, the longest first. */
int slip_digits_sorted(const struct story *s, const struct story_digit *out[DIGITS_MAX]);
void slip_put_digits(const struct making *m);
void slip_digit_rows(const struct making *m);
void slip_outcome_digits(const struct making *m, char *out, size_t size);

void slip_put_amiss(const struct making *m);
void slip_put_search(const struct making *m);
void slip_discrepancy_words(const struct making *m, const struct story_discrepancy *d, char *out,
                            size_t size);

void slip_put_rows(const struct making *m);

#endif
