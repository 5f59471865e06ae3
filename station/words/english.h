/* Every sentence that the station can say: its number, its name, and its English, which every other language is made from
 * and falls back to. How one is said with its values stands in said.h. */
#ifndef BANDTALLY_WORDS_ENGLISH_H
#define BANDTALLY_WORDS_ENGLISH_H

#include <stddef.h>
#include <stdint.h>

#include "words/sentences.h"

enum saying {
	SAY_NONE = 0,
#define X(name, key, ...) SAY_##name,
	SAYINGS(X, X) SAYINGS_KEPT, /* from here on no record holds any */
	SAY_LAST_KEPT = SAYINGS_KEPT - 1,
	SENTENCES(X, X)
#undef X
	    SAYING_KINDS
};

/* The English of a saying that has no values. */
const char *saying_text(enum saying saying);

/* Its English, the form of one and of many, and whether it has both: {n} decides. */
const char *saying_english(enum saying saying, int many);
int saying_counts(enum saying saying);

/* The name by which a record keeps it; NULL where the number has none: 0 never has, nor has a sentence that no record
 * holds. */
const char *saying_name(int64_t saying);

/* The number of a name that a record keeps, or -EINVAL. */
int saying_from_name(const char *name);

/* Of any sentence, as catalogues and the board's page call it; NULL where there is none of the number. */
const char *saying_key(int64_t saying);

/* Which value stands in braces at `at`, from 0 in the order of values.h, the loose ones last, and its length with the braces;
 * -ENOENT and 0 where none does. */
int saying_value(const char *at, size_t *size);

#endif
