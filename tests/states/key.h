/* What makes two sheets one state: all that a decision in this room can read of them, field by field, and nothing
 * else.
 *
 * Left out: what is only told on the slip (when something was added, wall clocks, totals), the history of cards that are not
 * in the room (stretches and what was timed last without MISREAD and MINUTES AGO, the sheet before the last step without
 * UNDO), and what was struck but its number. Names stand for each other: which of two digits, of two like badges or of two
 * packs of one line is which follows from the order in which the sheet names them. The last card or badge (rule 22) is kept where the
 * same one would be entered if it came again; where it would be refused anyway, that it is the last one changes nothing but
 * the words of that refusal. Everything else is kept as it is, times as whole minutes before now.
 *
 * The reduction is guarded: see compare_states() in walk.c.
 */
#ifndef BANDTALLY_TESTS_STATES_KEY_H
#define BANDTALLY_TESTS_STATES_KEY_H

#include "walk.h"

/* Which thing, badge or digit of the room is which in a state. */
#define NAMES_MAX 12
struct names {
	int32_t persons[NAMES_MAX];
	uint8_t digits[NAMES_MAX];
	const char *identities[NAMES_MAX];
	int n_persons, n_digits, n_identities;
};

/* Of the state that the world is in. `names` may be NULL. */
struct key key_of_state(struct world *w, struct names *names);

/* The same without putting names for each other, with `extra` mixed in. */
struct key key_of_exact_state(struct world *w, const void *extra, size_t size);

/* Of everything on one sheet, times and history too, but not of bytes that mean nothing. */
struct key key_of_whole_sheet(const struct sheet *s);

/* What an input is under these names: equal for two inputs that do the same in two states of one key. Names that
 * the state does not hold are added. */
struct key key_of_input(const struct world *w, struct names *names, const struct input *in);

#endif
