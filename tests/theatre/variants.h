/* Broken variants of the station: each breaks one check, and the theatre must see it. */
#ifndef BANDTALLY_TESTS_THEATRE_VARIANTS_H
#define BANDTALLY_TESTS_THEATRE_VARIANTS_H

#include "checks.h"

struct variant {
	const char *name;
	enum check check;                                  /* that must fail */
	void (*before)(struct stage *g, struct input *in); /* NULL, or what it does to what is asked */
	void (*spoil)(struct outcome *out, const struct input *in, const struct sheet *before);
};

extern const struct variant variants[];
extern const int n_variants;

#endif
