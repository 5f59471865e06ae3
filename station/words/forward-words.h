/* What the board says of the way to the hospital's store, each by its name: the program that goes there says the name, and the
 * station the sentence. {fault} is what server or network said. All of them leave the count as it is. */
#ifndef BANDTALLY_WORDS_FORWARD_WORDS_H
#define BANDTALLY_WORDS_FORWARD_WORDS_H

#include <inttypes.h>

/* X(NAME, "name on the pipe", "sentence") */
/* clang-format off */
#define FORWARD_WORDS(X) \
	X(UNREACHABLE, "unreachable", \
	  "The hospital's store is not reached: {fault}: the count goes on, and what was counted is sent later; tell whoever looks after the network if it lasts.") \
	X(CERTIFICATE, "certificate", \
	  "The hospital's store does not take this station's certificate, or shows a wrong one: {fault}: the count goes on; ask whoever looks after the store for a certificate that is valid.") \
	X(REFUSED, "refused", \
	  "The hospital's store does not let this station in: {fault}: the count goes on; ask whoever looks after the store to make the station known there.") \
	X(SCHEMA, "schema", \
	  "The hospital's store is not made for this version: {fault}: the count goes on; ask whoever looks after the store to apply schema.sql.") \
	X(FULL, "full", \
	  "The hospital's store has no space left: {fault}: the count goes on, and what was counted is sent later; tell whoever looks after the store.") \
	X(SLOW, "slow", \
	  "The hospital's store does not answer: {fault}: nothing is taken for kept until it does; the count goes on.") \
	X(STANDBY, "standby", \
	  "The hospital's store waits for its second machine, and keeps nothing until that answers: tell whoever looks after the store; the count goes on.") \
	X(DOWN, "down", \
	  "The hospital's store was ended, or is starting: {fault}: the count goes on, and what was counted is sent later.") \
	X(OLD_SERVER, "old-server", \
	  "The hospital's store that answers is one that was replaced ({fault}): nothing is sent to it; tell whoever looks after the store to stop it.") \
	X(FORK, "fork", \
	  "The hospital's store has another event under a number of this station ({fault}): this record was put back to an older state, or another station uses this one's certificate: tell whoever looks after the store; the count goes on.") \
	X(CHANGED, "changed", \
	  "The hospital's store refuses an event of this station, whose text does not fit its hash ({fault}): run 'bandtally audit verify', and tell whoever looks after the station; the count goes on.") \
	X(BEHIND, "behind", \
	  "This station's record ends before what the hospital's store has of it ({fault}): it was put back to an older state; tell whoever looks after the station; the count goes on.") \
	X(INCIDENT, "incident", \
	  "At the hospital's store something is to be settled about this station ({fault}): tell whoever looks after the store; sending and counting go on.") \
	X(CLOCK, "clock", \
	  "This station's clock and the hospital's differ by {fault}: one of them is wrong: have it set; minutes on the slips do not depend on it.") \
	X(ENDED, "ended", \
	  "The program that goes to the hospital's store ended, and is started again: the count goes on.") \
	X(OTHER, "other", \
	  "Something is wrong between this station and the hospital's store: {fault}: the count goes on; tell whoever looks after the store.")

/* The rows as sentences: given to X of whoever spells out the list. */
#define FORWARD_ROW(name, word, text) X(FORWARD_##name, "forward-" word, text)
/* clang-format on */

/* What comes back: why and from where a line or lot went into quarantine (why, origin, version), as its event keeps it. What the
 * rooms are told of it stands in reply-words.h. */
#define FORWARD_ORIGIN "%s (hospital list of %s, no. %" PRId64 ")"
enum forward_word {
	FORWARD_NOTHING,
#define X(name, word, text) FORWARD_##name,
	FORWARD_WORDS(X)
#undef X
};

const char *forward_word_name(enum forward_word w);     /* "" of none */
enum forward_word forward_word_named(const char *name); /* FORWARD_NOTHING where there is none of that name */

#endif
