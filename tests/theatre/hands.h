/* What people do without a scanner. Each is an entry of the stage. */
#ifndef BANDTALLY_TESTS_THEATRE_HANDS_H
#define BANDTALLY_TESTS_THEATRE_HANDS_H

#include "play.h"

struct operation *hands_operation(struct play *p, const struct actor *a);
int hands_room(const struct play *p, const struct actor *a); /* index */
const struct sheet *hands_sheet(struct play *p, const struct actor *a);

/* Its entry's id. */
int hands_move(struct play *p, const struct actor *a, int thing, enum where where, int digit,
               enum whole whole);
void hands_change(struct play *p, int op, enum change what, int64_t n);
void hands_cause(struct play *p, const struct actor *a, enum cause c, int thing);
void hands_later(struct play *p, struct actor *a, int64_t low_ms, int64_t high_ms); /* they act again then */

void hands_put_on(struct play *p, struct actor *a);            /* the next of the plan */
int hands_one_on(const struct play *p, const struct actor *a); /* a thing that is on a digit, -1 none */
void hands_take_off(struct play *p, struct actor *a, int thing);
void hands_lose_or_find(struct play *p, struct actor *a);

/* They see the board and act; once. (people.c) */
void people_act(struct play *p, int room);

#endif
