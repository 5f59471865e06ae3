/* Debts: what was missing when a fact came first (rule 3). Each holds the sign-out until it is paid. */
#ifndef BANDTALLY_COUNT_DEBT_H
#define BANDTALLY_COUNT_DEBT_H

#include <stdint.h>

#include "words/said.h"

/* X(NAME, "name in the record"): SAY_DEBT_NAME is what is owed, as people read it. */
#define DEBTS(X)                                                                                             \
	X(COUNT, "count")                                                                                    \
	X(TEAM, "team")                                                                                      \
	X(LISTING, "listing")                                                                                \
	X(REASON, "reason")                                                                                  \
	X(ON, "maybe-on")                                                                                    \
	X(SURGEON, "surgeon-decision")                                                                       \
	X(ADDED, "added")                                                                                    \
	X(MARKED_DIGIT, "marked-digit")                                                                      \
	X(NAME, "visitor-name")                                                                              \
	X(INCIDENT, "incident-number")                                                                       \
	X(HANDOVER, "handover")                                                                              \
	X(EXPIRY_READ, "expiry-read")                                                                        \
	/* of a case that has ended (count/after-end.h) */                                                   \
	X(CALLED, "patient-called-back")                                                                     \
	X(LOOK, "digit-seen-bare")                                                                           \
	X(WARD, "ward-told")

enum debt_kind {
	DEBT_NONE = 0,
#define X(name, text) DEBT_##name,
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
	X(NAME_WRITTEN, "name-written", "name written by the circulating practitioner")                      \
	X(ENTERED_AFTER, "entered-after", "entered after the end")

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
enum saying debt_saying(enum debt_kind kind); /* SAY_NONE of DEBT_NONE */
const char *debt_words(enum debt_kind kind);
const char *paid_words(enum paid_how how); /* "" for PAID_TYPED, or where it is none */

#endif
