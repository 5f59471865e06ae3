/* Debts: what was missing when a fact came first (rule 3). Each holds the sign-out until it is paid. */
#ifndef BANDTALLY_COUNT_DEBT_H
#define BANDTALLY_COUNT_DEBT_H

#include <stdint.h>

/* X(NAME, "name in the record", "what is owed, as people read it") */
#define DEBTS(X)                                                                                             \
	X(COUNT, "count", "the initial count, not agreed before the tourniquet went on")                     \
	X(TEAM, "team", "who counts: nobody was badged when it began")                                       \
	X(LISTING, "listing", "which tourniquet it is, not listed")                                          \
	X(REASON, "reason", "the surgeon's answer for an item that the station refused")                     \
	X(ON, "maybe-on", "whether a tourniquet is on")                                                      \
	X(SURGEON, "surgeon-decision",                                                                       \
	  "the surgeon's decision: it rolls on over an open wound, flap, infection or tumour")               \
	X(ADDED, "added", "the count of what was added")                                                     \
	X(MARKED_DIGIT, "marked-digit", "whether this is the right digit: it was not marked")                \
	X(NAME, "visitor-name", "a visitor's name on the slip")                                              \
	X(INCIDENT, "incident-number", "the incident number")                                                \
	X(HANDOVER, "handover", "the handover count")                                                        \
	X(EXPIRY_READ, "expiry-read", "an expiry date that the station cannot judge")

enum debt_kind {
	DEBT_NONE = 0,
#define X(name, text, words) DEBT_##name,
	DEBTS(X)
#undef X
	    DEBT_KINDS
};

/* X(NAME, "name in the record", "how it was paid, as people read it"). What somebody typed is kept as text instead. */
#define PAID_HOWS(X)                                                                                         \
	X(AGREED, "agreed-aloud", "agreed aloud")                                                            \
	X(AGREED_LATE, "agreed-aloud-late", "agreed aloud after the tourniquet went on")                     \
	X(NAMED, "named-aloud", "named aloud, not in the catalogue")                                         \
	X(WAS_ON, "was-on", "it was on")                                                                     \
	X(MOVED, "moved", "entered for the wrong digit and moved")                                           \
	X(NEVER_HERE, "never-here", "it was never here")                                                     \
	X(NEVER_ON, "never-on", "it was never on")                                                           \
	X(NEVER_OFF, "never-off", "it never came off")                                                       \
	X(NOT_ON, "not-on", "not on")                                                                        \
	X(IS_ON, "is-on", "it is on")                                                                        \
	X(RIGHT_DIGIT, "right-digit", "the team says that it is the right digit")                            \
	X(OTHER_DIGIT, "other-digit", "it went on this digit, which is not the marked one")                  \
	X(READ, "read-aloud", "read aloud")                                                                  \
	X(IMPROVISED, "improvised", "improvised: its code was scanned")                                      \
	X(PACK, "pack-scanned", "its pack was scanned")                                                      \
	X(BADGED, "badged-in", "both have badged in")                                                        \
	X(BY_OPERATOR, "by-operator", "counted by the operator")                                             \
	X(BY_OPERATOR_LATE, "by-operator-late", "stated by the operator after the tourniquet went on")       \
	X(DECIDED, "surgeon-decided", "the surgeon's decision")                                              \
	X(ANSWERED, "surgeon-answers", "the surgeon answers for it")                                         \
	X(NAME_WRITTEN, "name-written", "name written by the circulating practitioner")

enum paid_how {
	PAID_TYPED = 0,
#define X(name, text, words) PAID_##name,
	PAID_HOWS(X)
#undef X
	    PAID_KINDS
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
int debts_owes(const struct debts *d, struct debt debt);                   /* 1 where this very one is owed */
int debts_has(const struct debts *d, enum debt_kind kind);                 /* how many of the kind */
const struct debt *debts_find(const struct debts *d, enum debt_kind kind); /* the oldest, or NULL */

const char *debt_name(enum debt_kind kind);
const char *debt_words(enum debt_kind kind);
const char *paid_words(enum paid_how how); /* "" for PAID_TYPED, or where it is none */

#endif
