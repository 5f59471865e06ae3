/* What is amiss on a sheet: what is missing, in pieces or extra, things alike together, and where it may be. */
#ifndef BANDTALLY_TELL_AMISS_H
#define BANDTALLY_TELL_AMISS_H

#include "count/sheet.h"
#include "words/language.h"

enum amiss_how {
	AMISS_MISSING = 1, /* answered as not there */
	AMISS_OPEN,        /* not accounted for, and nobody has said that it is not there */
	AMISS_PIECES,
	AMISS_EXTRA,
};

struct amiss {
	enum amiss_how how;
	uint8_t item;  /* the first of them */
	uint8_t timed; /* a tourniquet */
	int16_t pieces, shown, missing;
	uint32_t digits; /* on which one of them was: 1 << number (own-codes.h) */
};

/* How many. `ended`: what nobody answered for is amiss as well. */
int amiss_list(const struct sheet *s, int ended, struct amiss out[ITEMS_MAX]);

/* On which digits the item or one that is alike was: 1 << number. */
uint32_t amiss_digits(const struct sheet *s, int item);

/* "the right index finger or the left ring finger" of such digits, as `or`; with AND else. "" of none. */
void amiss_digits_words(const struct language *language, uint32_t digits, int with_or, char *out,
                        size_t size);

/* Part of a sentence: "1 finger tourniquet, green, M not found; 1 swab extra". */
void amiss_words(const struct language *language, const struct sheet *s, char *out, size_t size);

#endif
