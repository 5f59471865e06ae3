/* What must hold. Each check has a name; CHECKS lists them with what they say. */
#ifndef BANDTALLY_TESTS_THEATRE_CHECKS_H
#define BANDTALLY_TESTS_THEATRE_CHECKS_H

#include "stage.h"

#define CHECKS(X)                                                                                            \
	X(TRACED, "traced", "what is not true on an ended sheet was caused by people or a missed read")      \
	X(NAMED, "named", "the reply names the digit or pack that was read")                                 \
	X(MINUTES, "minutes", "exact minutes are never fewer, 'at least' never more than the true ones")     \
	X(REMINDER, "reminder", "a reminder comes in time and never says less than is so")                   \
	X(BARE, "bare", "no digit is shown free while a tourniquet is on it")                                \
	X(FACTS, "facts", "a digit card of a tourniquet that is on is never refused")                        \
	X(REPEAT, "repeat", "no repeat of a code creates a fact")                                            \
	X(NO_DEAD_END, "no-dead-end", "for each truth the deeds end the case")                               \
	X(INNOCENCE, "innocence", "a thing is on one sheet; no case is charged for another's")               \
	X(ONE_QUESTION, "one-question", "one open question at a time, and the board shows it")               \
	X(ROOM_NAMED, "room-named", "a reply names the room where more than one has a case")                 \
	X(RULES, "rules", "the rules that a sheet can be held against")                                      \
	X(WORDS, "words", "each reply says what happened and what is next")                                  \
	X(APPLIES, "applies", "what was decided can be applied")

enum check {
#define X(name, text, words) CHECK_##name,
	CHECKS(X)
#undef X
	    CHECK_KINDS
};

const char *check_name(enum check c);
const char *check_words(enum check c);

void check_reply(struct stage *g, const struct entry *e, const struct input *in,
                 int is_repeat); /* before it applies */
void check_state(struct stage *g);
void check_ended(struct stage *g, int operation, const struct sheet *s, enum case_end how);
void check_tick(struct stage *g);

/* From this state, for each fixed truth, the deed that fits ends the case. (no-dead-end.c) */
void check_dead_end(struct stage *g, int room);

#endif
