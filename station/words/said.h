/* Every sentence that people in the room or readers of paper see: by name, with named values (values.h), and in English.
 *
 * Who decides names a sentence and gives its values; the sentence is made where people read it. The record holds the name
 * and the values, so that it can be told in another language, or better.
 *
 *     turn_refuse(t, SAY(CASE_IS_OPEN, .case_no = s->case_no, .room = name));
 *
 * A call gives the values that the text names, no other ones, and no words of its own: tests/layers/sayings holds every
 * call to the list.
 */
#ifndef BANDTALLY_WORDS_SAID_H
#define BANDTALLY_WORDS_SAID_H

#include <stddef.h>
#include <stdint.h>

#include "words/sayings.h"
#include "words/values.h"

enum saying {
	SAY_NONE = 0,
#define X(name, key, ...) SAY_##name,
	SAYINGS(X, X)
#undef X
	    SAYING_KINDS
};

#define SAID_NUMBER(member, size) int32_t member;
#define SAID_DIGITS(member, size) SAID_NUMBER(member, size)
#define SAID_DIGIT(member, size) SAID_NUMBER(member, size)
#define SAID_CARD(member, size) SAID_NUMBER(member, size)
#define SAID_DATE(member, size) SAID_NUMBER(member, size)
#define SAID_TIME(member, size) SAID_NUMBER(member, size)
#define SAID_SAYING(member, size) enum saying member;
#define X(type, member, name, size) SAID_##type(member, size)

/* A sentence as a call names it: the texts are borrowed, NULL is "", and they may be longer than they are kept. */
#define SAID_TEXT(member, size) const char *member;
#define SAID_FAULT(member, size) SAID_TEXT(member, size)
struct say {
	VALUES(X)
};
#undef SAID_TEXT
#undef SAID_FAULT

/* The same as it is kept, without the fault. */
#define SAID_TEXT(member, size) char member[size];
#define SAID_FAULT(member, size)
struct said {
	VALUES(X)
};
#undef SAID_TEXT
#undef SAID_FAULT
#undef X

#define SAY(name, ...) (&(const struct say){.saying = SAY_##name, __VA_ARGS__})

/* A text that is too long is cut behind a whole letter. */
void said_keep(struct said *said, const struct say *say);

/* Whether two say the same of the same. */
int said_same(const struct said *a, const struct said *b);

/* The texts stay those of `said`. */
struct say said_say(const struct said *said);

/* The sentence in English, which begins with a capital where it begins with a letter from a to z, cut behind a whole letter
 * where it is too long; "" of SAY_NONE. */
void say_sentence(const struct say *say, char *out, size_t size);

/* The same as it stands in the middle of another sentence. */
void say_part(const struct say *say, char *out, size_t size);

/* The text of a saying that has no values. */
const char *saying_text(enum saying saying);

/* The name by which a record keeps it; NULL where the number has none: 0 never has. */
const char *saying_name(int64_t saying);

/* The number of a name, or -EINVAL. */
int saying_from_name(const char *name);

#endif
