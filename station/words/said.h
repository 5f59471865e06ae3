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

#include "words/english.h"
#include "words/values.h"

struct language; /* language.h; NULL is English */

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
#define SAID_PERSON(member, size) const char *member;
#define SAID_SHIPPED(member, size) const char *member;
#define SAID_THING(member, size) const char *member;
#define SAID_WORDS(member, size) const char *member;
struct say {
	VALUES(X)
	LOOSE_VALUES(X)
};
#undef SAID_TEXT
#undef SAID_PERSON
#undef SAID_SHIPPED
#undef SAID_THING

/* The same as it is kept: by a record the VALUES, by a reply the loose numbers as well. */
#define SAID_TEXT(member, size) char member[size];
#define SAID_PERSON(member, size) SAID_TEXT(member, size)
#define SAID_SHIPPED(member, size) SAID_TEXT(member, size)
#define SAID_THING(member, size) SAID_TEXT(member, size)
#define SAID_LOOSE_NUMBER(member, size) SAID_NUMBER(member, size)
#define SAID_LOOSE_TIME(member, size) SAID_TIME(member, size)
#define SAID_LOOSE_SAYING(member, size) SAID_SAYING(member, size)
#define SAID_LOOSE_DATE(member, size) SAID_DATE(member, size)
#define SAID_LOOSE_DIGIT(member, size) SAID_DIGIT(member, size)
#define SAID_LOOSE_TEXT(member, size) char member[(size) + !(size)]; /* of 0 it is not kept */
#define SAID_LOOSE_PERSON(member, size) SAID_LOOSE_TEXT(member, size)
#define SAID_LOOSE_THING(member, size) SAID_LOOSE_TEXT(member, size)
#define SAID_LOOSE_WORDS(member, size)
struct said {
	VALUES(X)
#undef X
#define X(type, member, name, size) SAID_LOOSE_##type(member, size)
	LOOSE_VALUES(X)
};
#undef SAID_TEXT
#undef SAID_PERSON
#undef SAID_SHIPPED
#undef SAID_THING
#undef SAID_WORDS
#undef X

#define SAY(name, ...) (&(const struct say){.saying = SAY_##name, __VA_ARGS__})

/* A text that is too long is cut behind a whole letter. */
void said_keep(struct said *said, const struct say *say);

/* Whether two say the same of the same. */
int said_same(const struct said *a, const struct said *b);

/* The texts stay those of `said`. */
struct say said_say(const struct said *said);

/* The sentence in a language (NULL: English), which begins with a capital where it begins with a letter that has one, cut
 * behind a whole letter where it is too long; "" of SAY_NONE. In a language from right to left each value stands in its own
 * direction (language.h), and everywhere a name from right to left does. */
void say_sentence_in(const struct language *language, const struct say *say, char *out, size_t size);

/* The same as it stands in the middle of another sentence, or in a table. */
void say_part_in(const struct language *language, const struct say *say, char *out, size_t size);

/* Behind what stands in `text`, with `between` where that is not empty; nothing of ""; cut behind a whole letter. */
void said_join(char *text, size_t size, const char *between, const char *more);

/* The first letter as a capital, where it has one. */
void saying_capital(char *text);

void say_sentence(const struct say *say, char *out, size_t size); /* in English */
void say_part(const struct say *say, char *out, size_t size);

/* The text of a saying that has no values. */
const char *saying_text_in(const struct language *language, enum saying saying);

#define SAID_LIST_MAX 600
/* "one", "one and another", "one, another and a third" of n parts that were said already; "one, green; another" where one of
 * them has a comma of its own. */
void say_list(const struct language *language, const char *const *parts, int n, char *out, size_t size);

/* The same of things that are kept. `size`: SAID_LIST_MAX is room for all. */
#define SAID_LISTED_MAX 6
void said_list(const struct language *language, const struct said *things, int n, char *out, size_t size);
/* Keeps one thing more in a list of n, which has room for `most`, at most SAID_LISTED_MAX: where it is full its last thing
 * says how many there are besides. How many it has now. */
int said_list_add(struct said *things, int n, int most, const struct say *thing);

/* The names of what has a number; SAY_NONE where there is none of it. */
enum saying saying_of_digit(int number); /* 1 to 24 */
enum saying saying_of_card(int meaning); /* enum own_card: the words on it */
enum saying saying_of_use(int meaning);  /* the line below them */

/* Who has no badge, by the name that the record keeps ("visitor 1"); SAY_NONE for everybody else. */
enum saying saying_of_person(const char *name);

/* What to call somebody: `name`, or what the language says for one who has no badge. Borrowed. */
const char *person_text_in(const struct language *language, const char *name);

/* The point or step that is shipped with this text, by which settings and records know it; SAY_NONE of a site's own. */
enum saying saying_of_shipped(const char *text);

/* A point or step as it is read: `text`, or what the language says for the one that is shipped. Borrowed. */
const char *shipped_text_in(const struct language *language, const char *text);

/* A thing as it is read: `name`, or what the language says for one that the catalogue does not know. Borrowed. */
const char *thing_text_in(const struct language *language, const char *name);

/* What is wrong on the way to the hospital's store (enum forward_word); SAY_NONE of nothing. */
enum saying saying_of_forward(int word);

/* What the printer's program names on its line: the name behind "printer-"; SAY_PRINTER_OTHER of one that is none of the list's. */
enum saying saying_of_printer(const char *name);

/* What a driver's word for a fault says; SAY_SCANNER_OTHER of a word that is none of the list's. */
enum saying saying_of_drivers_word(const char *word);

#endif
