/* Debts: what was missing when a fact came first (rule 3). Each holds the sign-out until it is paid. */
#ifndef BANDTALLY_COUNT_DEBT_H
#define BANDTALLY_COUNT_DEBT_H

#include <stdint.h>

/* X(NAME, "name in the record", "what is owed, as people read it") */
#define DEBTS(X)                                                                                             \
	X(COUNT, "count",                                                                                    \
	  "the initial count was not agreed before the tourniquet went on: agree it aloud now, "             \
	  "then scan the circulating badge")                                                                 \
	X(TEAM, "team", "nobody was badged when it began: scan the badges of those who count")               \
	X(LISTING, "listing",                                                                                \
	  "a tourniquet is not listed: scan its pack, or say aloud what it is, then the "                    \
	  "badge of the one who records")                                                                    \
	X(REASON, "reason", "an item was used that the station refused: the surgeon's badge answers for it") \
	X(ON, "maybe-on", "say whether a tourniquet is on: scan YES or NO")                                  \
	X(SURGEON, "surgeon-decision",                                                                       \
	  "it rolls on over an open wound, flap, infection or tumour: the "                                  \
	  "surgeon's badge decides")                                                                         \
	X(ADDED, "added", "what was added: count it aloud together, then scan the circulating badge")        \
	X(MARKED_DIGIT, "marked-digit",                                                                      \
	  "the tourniquet is on a digit that was not marked: scan YES if it is "                             \
	  "right, NO if not")                                                                                \
	X(NAME, "visitor-name", "a visitor's name: write it on the slip, then scan the circulating badge")   \
	X(INCIDENT, "incident-number", "the incident number")

enum debt_kind {
	DEBT_NONE = 0,
#define X(name, text, words) DEBT_##name,
	DEBTS(X)
#undef X
	    DEBT_KINDS
};

#define DEBTS_MAX 16

struct debt {
	uint8_t kind;  /* enum debt_kind */
	uint8_t item;  /* which item, 0 none */
	uint8_t digit; /* which digit, 0 none */
};

struct debts {
	struct debt list[DEBTS_MAX];
	uint8_t count;
};

/* Owing the same thing twice is owing it once. Paying what is not owed does nothing. */
void debts_owe(struct debts *d, struct debt debt);
void debts_pay(struct debts *d, struct debt debt);
int debts_has(const struct debts *d, enum debt_kind kind);                 /* how many of the kind */
const struct debt *debts_find(const struct debts *d, enum debt_kind kind); /* the oldest, or NULL */

const char *debt_name(enum debt_kind kind);
const char *debt_words(enum debt_kind kind);

#endif
