/* What a run will bring: who operates on whom, with which things, and what will go wrong. */
#include <stdio.h>
#include <string.h>

#include "play.h"

static int add_thing(struct world *w, int op, const char *line, int role, int numbered, int pieces)
{
	if (w->n_things == THINGS_MAX)
		return -1;
	struct real *r = &w->things[w->n_things];
	*r = (struct real){.role = (uint8_t)role, .of = (int8_t)op, .where = IN_PACK, .readable = 1};
	snprintf(r->line, sizeof r->line, "%s", line);
	r->number = numbered ? 101 + w->n_things : 0;
	r->expiry = 20290331;
	r->pieces = r->here = (int16_t)pieces;
	r->by_mark = role == ROLE_FORCEPS;
	return w->n_things++;
}

static int add_band(struct play *p, struct world *w, int op)
{
	int which = one_of(&p->chance, 100);
	if (which < 60)
		return add_thing(w, op, "GREEN-M", ROLE_TOURNIQUET, 1, 1);
	if (which < 85)
		return add_thing(w, op, "PLAIN-M", ROLE_TOURNIQUET, 0, 1);
	return add_thing(w, op, "ROLL-S", ROLE_TOURNIQUET, 1, 1);
}

static void add_others(struct play *p, struct world *w, int op)
{
	int forceps = one_of(&p->chance, 3);
	for (int i = 0; i < forceps; i++) {
		int thing = add_thing(w, op, "FORCEPS", ROLE_FORCEPS, 1, 1);
		if (thing >= 0 && in_hundred(&p->chance, 15))
			w->things[thing].readable = 0;
	}
	if (in_hundred(&p->chance, 25))
		add_thing(w, op, "SWAB-5", ROLE_OTHER, 0, 5);
	if (in_hundred(&p->chance, 5)) {
		int thing = add_thing(w, op, "GREEN-M", ROLE_TOURNIQUET, 1, 1);
		if (thing >= 0)
			w->things[thing].expiry =
			    20190101; /* the station will refuse it, and it is put aside */
	}
}

static uint8_t how_it_comes_off(struct play *p)
{
	int which = one_of(&p->chance, 100);
	return which < 80 ? WHOLE : which < 94 ? CUT : IN_PIECES;
}

static void plan_bands(struct play *p, struct world *w, int op)
{
	static const uint8_t digits[] = {1, 2, 3, 6, 7, 11};
	struct plan *plan = &p->plans[op];
	int bands = 1 + (in_hundred(&p->chance, 25)), same = in_hundred(&p->chance, 20);
	for (int i = 0; i < bands; i++) {
		int thing = add_band(p, w, op);
		uint8_t digit = digits[one_of(&p->chance, 6)];
		if (i && same)
			digit = plan->puts[0].digit;
		if (thing >= 0)
			plan->puts[plan->n_puts++] = (struct put){(int8_t)thing, digit, how_it_comes_off(p)};
	}
	plan->early = in_hundred(&p->chance, 12);
	if (plan->early && in_hundred(&p->chance, 25)) { /* what should not be used as one */
		struct real *r = &w->things[plan->puts[0].thing];
		*r = (struct real){.role = ROLE_REFUSED,
		                   .of = (int8_t)op,
		                   .where = IN_PACK,
		                   .readable = 1,
		                   .expiry = 20290331,
		                   .pieces = 1,
		                   .here = 1,
		                   .no_code = (uint8_t)one_of(&p->chance, 2)};
		snprintf(r->line, sizeof r->line, "GLOVE");
	}
	if (in_hundred(&p->chance, 6))
		plan->n_puts = 0; /* it is not needed after all */
	plan->again = plan->n_puts && in_hundred(&p->chance, 10) ? (int)between(&p->chance, 1, 4) : 0;
	plan->minutes_ms = between(&p->chance, 2, 45) * 60000 + between(&p->chance, 0, 59999);
}

static void plan_operation(struct play *p, struct world *w, int room)
{
	int op = w->n_operations++;
	struct operation *o = &w->operations[op];
	struct plan *plan = &p->plans[op];
	*plan = (struct plan){.room = room, .lose = -1, .turns_up_in = -1};
	*o = (struct operation){.room = room_numbers[room], .honest = 1, .points_ok = 1};
	o->field = room ? 5 : 1;
	o->circulating = room ? 0 : 2;
	o->surgeon = room ? 0 : in_hundred(&p->chance, 12) ? -1 : 3;
	o->wound = (uint8_t)in_hundred(&p->chance, 20);
	o->number_known = (uint8_t)one_of(&p->chance, 2);
	o->steps_not_done = (uint8_t)in_hundred(&p->chance, 20);
	o->looked = (uint8_t)between(&p->chance, LOOKED_PATIENT, LOOKED_NOBODY);
	int first = w->n_things;
	plan_bands(p, w, op);
	add_others(p, w, op);
	o->more_to_come = plan->n_puts > 0;
	if (in_hundred(&p->chance, 15) && w->n_things > first) {
		plan->lose = first + one_of(&p->chance, w->n_things - first);
		plan->find = in_hundred(&p->chance, 70) ? (int)between(&p->chance, 0, 11) : 99;
	}
	if (p->troubles & TROUBLE_RELIEF && !room && in_hundred(&p->chance, 60))
		plan->relief = (int)between(&p->chance, 4, 16);
}

void plan_run(struct play *p, struct world *start)
{
	memset(start, 0, sizeof *start);
	plan_operation(p, start, 0);
	plan_operation(p, start, 1);
	if (in_hundred(&p->chance, 15))
		plan_operation(p, start, one_of(&p->chance, 2));
	for (int i = 0; i < start->n_operations; i++)
		if (p->plans[i].find == 99 && start->n_operations == 3 && i != 2)
			p->plans[i].turns_up_in = 2;
}
