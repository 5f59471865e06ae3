/* What things are called, and how lists are written: sentences that stand inside others. The form is that of
 * sayings.h.
 */
#ifndef BANDTALLY_WORDS_NAME_WORDS_H
#define BANDTALLY_WORDS_NAME_WORDS_H

#include "code/own-codes.h"

/* clang-format off */
/* These rows are given to X of whoever spells out the list. */
#define DIGIT_NAME_ROW(number, words) X(DIGIT_##number, "digit-" #number, words)
#define CARD_NAME_ROW(number, name, words, group, says, use) X(CARD_##name, "card-" #number, words)
#define CARD_USE_ROW(number, name, words, group, says, use) X(USE_##name, "use-" #number, use)
#define CARD_GROUP_ROW(name, title) X(GROUP_##name, "cards-" #name, title)

#define NAME_WORDS(X, N) \
	OWN_DIGIT_NAMES(DIGIT_NAME_ROW) \
	OWN_CARDS(CARD_NAME_ROW) \
	OWN_CARDS(CARD_USE_ROW) \
	OWN_CARD_GROUPS(CARD_GROUP_ROW) \
	/* who has no badge of this site */ \
	X(PERSON_VISITOR_1, "person-visitor-1", "visitor 1") \
	X(PERSON_VISITOR_2, "person-visitor-2", "visitor 2") \
	X(PERSON_VISITOR_3, "person-visitor-3", "visitor 3") \
	X(PERSON_VISITOR_4, "person-visitor-4", "visitor 4") \
	X(PERSON_UNKNOWN, "person-unknown", "badge unknown") \
	OWN_STORES_CARDS(CARD_NAME_ROW) \
	OWN_STORES_CARDS(CARD_USE_ROW) \
	OWN_STORES_CARD_GROUPS(CARD_GROUP_ROW) \
	X(RECORD_AT, "record-at", "event {event}, hash {code}") \
	/* of two; of more: what is before the last but one, and the last */ \
	X(LIST_TWO, "list-two", "{first} and {second}") \
	X(LIST_MORE, "list-more", "{first}, {second}") \
	X(LIST_LAST, "list-last", "{first} and {second}") \
	X(LIST_THINGS, "list-things", "{first}; {second}") \
	N(LIST_FURTHER, "list-further", "{n} further", "{n} further")
/* clang-format on */

#endif
