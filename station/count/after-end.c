#include "count/after-end.h"

#include <string.h>

#include "count/station.h"

int debt_is_after_end(enum debt_kind kind)
{
	return kind == DEBT_CALLED || kind == DEBT_LOOK || kind == DEBT_WARD;
}

static int is_it(const struct after_end *a, const struct event *e)
{
	return a->case_no == e->case_no && a->what == e->what && a->digit == e->digit;
}

static struct after_end of_event(const struct event *e)
{
	return (struct after_end){.case_no = e->case_no,
	                          .room = e->room,
	                          .wall_ms = e->at.wall_ms,
	                          .what = e->what,
	                          .digit = e->digit};
}

static void owe(struct station *st, const struct event *e)
{
	for (int i = 0; i < st->n_after; i++)
		if (is_it(&st->after[i], e))
			return;
	if (st->n_after == AFTER_END_MAX) {
		st->more_after++;
		return;
	}
	st->after[st->n_after++] = of_event(e);
}

static void pay(struct station *st, const struct event *e)
{
	for (int i = 0; i < st->n_after; i++)
		if (is_it(&st->after[i], e)) {
			st->n_after--;
			memmove(&st->after[i], &st->after[i + 1],
			        sizeof *st->after * (size_t)(st->n_after - i));
			return;
		}
	st->more_after -= st->more_after > 0;
}

void after_end_apply(struct station *st, const struct event *e)
{
	if (!debt_is_after_end((enum debt_kind)e->what))
		return;
	if (e->kind == EV_OWED)
		owe(st, e);
	else if (e->kind == EV_PAID)
		pay(st, e);
}

static int is_paid_by(const struct after_end *a, const struct event *events, int count)
{
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_PAID && is_it(a, &events[i]))
			return 1;
	return 0;
}

static int is_new(const struct event *e)
{
	return e->kind == EV_OWED && debt_is_after_end((enum debt_kind)e->what);
}

/* Of the case that has waited longest; of that the first in the order of the debts: who has gone is called back first. */
static void take(struct after_end *first, const struct after_end *a)
{
	if (!first->case_no || (a->case_no == first->case_no && a->what < first->what))
		*first = *a;
}

int after_end_first(const struct station *st, int32_t room, const struct event *events, int count,
                    struct after_end *out)
{
	*out = (struct after_end){0};
	for (int i = 0; i < st->n_after; i++)
		if (st->after[i].room == room && !is_paid_by(&st->after[i], events, count))
			take(out, &st->after[i]);
	for (int i = 0; i < count; i++)
		if (is_new(&events[i]) && events[i].room == room) {
			struct after_end a = of_event(&events[i]);
			take(out, &a);
		}
	return out->case_no != 0;
}
