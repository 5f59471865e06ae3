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
	X(WARD, "ward-told")                                                                                 \
	/* of a case again */                                                                                \
	X(STORES_ASKED, "stores-asked-of-recalls")                                                           \
	X(ROLLS_ON, "rolls-on")

enum debt_kind {
	DEBT_NONE = 0,
#define X(name, text) DEBT_##name,
	DEBTS(X)
#undef X
	    DEBT_KINDS
};

/* X(NAME, "name in the record"); SAY_PAID_NAME is what people read. What somebody typed is kept as text instead. */
#define PAID_HOWS(X)                                                                                         \
	X(AGREED, "agreed-aloud")                                                                            \
	X(AGREED_LATE, "agreed-aloud-late")                                                                  \
	X(NAMED, "named-aloud")                                                                              \
	X(WAS_ON, "was-on")                                                                                  \
	X(MOVED, "moved")                                                                                    \
	X(NEVER_HERE, "never-here")                                                                          \
	X(NEVER_ON, "never-on")                                                                              \
	X(NEVER_OFF, "never-off")                                                                            \
	X(NOT_ON, "not-on")                                                                                  \
	X(IS_ON, "is-on")                                                                                    \
	X(RIGHT_DIGIT, "right-digit")                                                                        \
	X(OTHER_DIGIT, "other-digit")                                                                        \
	X(READ, "read-aloud")                                                                                \
	X(IMPROVISED, "improvised")                                                                          \
	X(PACK, "pack-scanned")                                                                              \
	X(BADGED, "badged-in")                                                                               \
	X(BY_OPERATOR, "by-operator")                                                                        \
	X(BY_OPERATOR_LATE, "by-operator-late")                                                              \
	X(DECIDED, "surgeon-decided")                                                                        \
	X(ANSWERED, "surgeon-answers")                                                                       \
	X(NAME_WRITTEN, "name-written")                                                                      \
	X(ENTERED_AFTER, "entered-after")                                                                    \
	X(ASKED_STORES, "stores-asked")                                                                      \
	X(NO_WOUND, "no-wound")                                                                              \
	X(WOUND, "wound")                                                                                    \
	X(NOT_USED, "not-used")

enum paid_how {
	PAID_TYPED = 0,
#define X(name, text) PAID_##name,
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
enum saying paid_saying(enum paid_how how); /* SAY_NONE for PAID_TYPED, or where it is none */

#endif
