/* No dead end (rule 23), from outside: a person who knows what is true in the room takes the first deed whose truth holds,
 * again and again, and the case ends.
 *
 * What is true is fixed: every thing is there, or one is missing, in pieces or cut; each digit bears a band or none; and
 * whether the rest is the ordinary answer or the contrary one (struct truths, truths.h). Only what the station itself asks people to do
 * changes it: a band comes off when nothing but its OFF is waited for, a sign-out point that was NO is resolved, a pack that was
 * refused is put aside.
 *
 * Under one truth each state has one successor, so that the length of every way to the end is known from that of the next
 * state, and every state is looked at once.
 */
#ifndef BANDTALLY_TESTS_STATES_ENDS_H
#define BANDTALLY_TESTS_STATES_ENDS_H

#include "snapshot.h"

struct ends;

/* Uses a world of its own, made of the same plan. */
struct ends *ends_new(const struct room_plan *plan, int quiet, const struct saboteur *saboteur); /* or NULL */
void ends_free(struct ends *e); /* NULL is fine */

/* Tries every truth from this state. How many dead ends of a new kind were found and told. */
int ends_check(struct ends *e, const struct snapshot *from);

uint64_t ends_tried(const struct ends *e); /* states with a truth */
int ends_longest(const struct ends *e);    /* scans of the longest way to an end */
uint64_t ends_dead(const struct ends *e);  /* states with a truth from which no end is reached */

#endif
