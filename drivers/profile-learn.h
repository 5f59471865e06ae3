/* Learns how a scanner sends from one pass over the scanner-check sheet (`bandtally label scanner-check`).
 *
 * The sheet is the same everywhere (labels/paper.h, PAPER_SAMPLES, which a test compares with the copy here):
 * a start code, samples whose text is known, and an end code. Each layout is tried on all codes that were
 * scanned; the layouts that explain the most of them are the possible ones, so a sample that was passed over
 * leaves more of them, and is never guessed. Codes that no layout explains are passed over. Pure.
 */
#ifndef BANDTALLY_DRIVERS_PROFILE_LEARN_H
#define BANDTALLY_DRIVERS_PROFILE_LEARN_H

#include <stdbool.h>
#include <stddef.h>

#include "drivers/profile.h"

/* X(NAME, symbol, text): what the sheet prints between its start and end codes. */
#define LEARN_SAMPLES(X)                                                                                     \
	X(LETTERS, CODE_128, "ABCDEFGHIJKLMNOPQRSTUVWXYZ")                                                   \
	X(DIGITS, CODE_128, "0123456789")                                                                    \
	X(SIGNS, CODE_128, "-./+$% :*()=&#")                                                                 \
	X(LOWER, CODE_128, "abcdefghijklmnopqrstuvwxyz")                                                     \
	X(GS1_128, GS1_128,                                                                                  \
	  "10AB12\x1d"                                                                                       \
	  "2134CD")                                                                                          \
	X(EAN13, EAN_13, "9506000134352")                                                                    \
	X(GS1_DATAMATRIX, GS1_DATAMATRIX,                                                                    \
	  "10AB12\x1d"                                                                                       \
	  "2134CD")                                                                                          \
	X(QR, QR_CODE, "bandtally check ]Q1")

#define LEARN_CODES_MAX 64
#define LEARN_STROKES_MAX 96 /* of one code; the longest sample has 26 characters */
#define LEARN_OURS_MAX 13    /* a badge; station/code/own-codes.h has their forms */
/* Silence that ends a code on the sheet, whatever the scanner sends behind it. */
#define LEARN_GAP_MS 350

struct learner {
	struct learner_code {
		struct stroke strokes[LEARN_STROKES_MAX];
		size_t count;
	} codes[LEARN_CODES_MAX];
	size_t count;
	unsigned longest_ms; /* between two keys of one code */
	char ours[LEARN_OURS_MAX + 1];
};

enum learner_heard {
	LEARNER_OTHER, /* nothing known, or no more room */
	LEARNER_BEGIN, /* the start code */
	LEARNER_END,   /* the end code: once or twice on the sheet */
	LEARNER_OURS, /* no line of the sheet but a card, badge or digit: `ours` is its text, and the check digits hold */
};

/* Adds one code; an all-zero learner is empty. `maps` has all layouts. Longer codes are passed over. A card, badge or
 * digit is noticed even where there is no more room, and teaches nothing. */
enum learner_heard learner_add(struct learner *l, const struct keymaps *maps, const struct stroke *strokes,
                               size_t count, unsigned longest_ms);

/* What was learned. 0; -ENODATA where the start code was not among the codes or no sample was known: then `e`
 * says so. What is undecided, profile_undecided() tells. */
int learner_result(const struct learner *l, const struct keymaps *maps, struct profile *out, struct error *e);

#endif
