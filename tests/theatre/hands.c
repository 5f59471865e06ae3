/* What people do with their hands: things go on a digit, come off, get lost and are found. */
#include "hands.h"

struct operation *hands_operation(struct play *p, const struct actor *a)
{
	return &p->stage->world.operations[a->op];
}

int hands_room(const struct play *p, const struct actor *a)
{
	return p->plans[a->op].room;
}

const struct sheet *hands_sheet(struct play *p, const struct actor *a)
{
	return stage_sheet(p->stage, hands_operation(p, a)->room);
}

int hands_move(struct play *p, const struct actor *a, int thing, enum where where, int digit,
               enum whole whole)
{
	struct entry e = {.kind = ENTRY_MOVES,
	                  .at_ms = p->stage->true_ms,
	                  .operation = (int8_t)a->op,
	                  .thing = (int8_t)thing,
	                  .where = (uint8_t)where,
	                  .digit = (uint8_t)digit,
	                  .whole = (uint8_t)whole,
	                  .id = (int16_t)p->next_id++,
	                  .group = -1,
	                  .reports = -1};
	stage_do(p->stage, &e);
	return e.id;
}

void hands_change(struct play *p, int op, enum change what, int64_t n)
{
	struct entry e = {.kind = ENTRY_CHANGES,
	                  .at_ms = p->stage->true_ms,
	                  .operation = (int8_t)op,
	                  .whole = (uint8_t)what,
	                  .n = n,
	                  .thing = -1,
	                  .id = (int16_t)p->next_id++,
	                  .group = -1,
	                  .reports = -1};
	stage_do(p->stage, &e);
}

void hands_cause(struct play *p, const struct actor *a, enum cause c, int thing)
{
	struct entry e = {.kind = ENTRY_SAYS,
	                  .at_ms = p->stage->true_ms,
	                  .operation = (int8_t)a->op,
	                  .cause = (uint8_t)c,
	                  .thing = (int8_t)thing,
	                  .id = (int16_t)p->next_id++,
	                  .group = -1,
	                  .reports = -1};
	stage_do(p->stage, &e);
}

void hands_later(struct play *p, struct actor *a, int64_t low_ms, int64_t high_ms)
{
	a->wake_ms = p->stage->true_ms + between(&p->chance, low_ms, high_ms);
}

void hands_put_on(struct play *p, struct actor *a)
{
	struct plan *plan = &p->plans[a->op];
	const struct put *put = &plan->puts[plan->puts_done++];
	if (plan->puts_done == plan->n_puts)
		hands_change(p, a->op, CHANGE_MORE, 0);
	if (p->stage->world.things[put->thing].where == AWAY)
		return;
	int id = hands_move(p, a, put->thing, ON_DIGIT, put->digit, WHOLE);
	a->off_ms = p->stage->true_ms + plan->minutes_ms;
	if (p->troubles & TROUBLE_LEFT_OUT && in_hundred(&p->chance, 25)) {
		plan->skip_on = 1;
		hands_cause(p, a, CAUSE_LEFT_OUT, -1);
	} else {
		a->report_on = put->digit;
		a->reports = id;
	}
	hands_later(p, a, 800, 15000);
}

int hands_one_on(const struct play *p, const struct actor *a)
{
	for (int i = 0; i < p->stage->world.n_things; i++)
		if (p->stage->world.things[i].of == a->op && p->stage->world.things[i].where == ON_DIGIT)
			return i;
	return -1;
}

static enum whole comes_off_as(const struct play *p, const struct actor *a, int thing)
{
	const struct plan *plan = &p->plans[a->op];
	for (int i = 0; i < plan->n_puts; i++)
		if (plan->puts[i].thing == thing)
			return (enum whole)plan->puts[i].whole;
	return WHOLE;
}

void hands_take_off(struct play *p, struct actor *a, int thing)
{
	struct plan *plan = &p->plans[a->op];
	enum whole whole = plan->again ? WHOLE : comes_off_as(p, a, thing);
	int lost = plan->lose == thing && !plan->again;
	hands_move(p, a, thing, lost ? LOST : ON_FIELD, 0, whole);
	if (lost)
		plan->lose = -2 - thing;
	plan->skip_on = 0;
	hands_later(p, a, 800, 15000);
}

/* A thing that was opened and not put on gets lost too. */
void hands_lose_or_find(struct play *p, struct actor *a)
{
	struct plan *plan = &p->plans[a->op];
	const struct sheet *s = hands_sheet(p, a);
	if (plan->lose >= 0 && s->final != FINAL_NONE &&
	    p->stage->world.things[plan->lose].where != ON_DIGIT &&
	    p->stage->world.things[plan->lose].where != AWAY) {
		if (p->stage->world.things[plan->lose].role != ROLE_TOURNIQUET || !plan->n_puts)
			hands_move(p, a, plan->lose, LOST, 0, WHOLE);
		plan->lose = p->stage->world.things[plan->lose].where == LOST ? -2 - plan->lose : -1;
	}
	if (plan->lose < -1 && plan->find < 99 && s->discrepancy && s->search_done >= plan->find) {
		int thing = -2 - plan->lose;
		hands_move(p, a, thing, ON_FIELD, 0, comes_off_as(p, a, thing));
		plan->lose = -1;
	}
}
