#include "decide/search.h"

#include <stdio.h>

#include "decide/want.h"

/* The step of the search that a digit card answers: what it asks is the look itself. */
int search_is_look_step(const struct turn *t)
{
	return sheet_wants(t->station, t->s).kind == WANT_SEARCH &&
	       t->s->search_done + 1 == t->station->policy.look_step;
}

void search_answered(struct turn *t, int done)
{
	int step = t->s->search_done + 1;
	struct event e = {
	    .kind = EV_SEARCH_STEP, .n = step, .what = (uint8_t)(done ? STEP_DONE : STEP_NOT_DONE)};
	snprintf(e.text, sizeof e.text, "%s", t->station->policy.search[step - 1]);
	turn_emit(t, &e);
	turn_say(t, done ? SAY(R_STEP_DONE, .n = step, .step = e.text)
	                 : SAY(R_STEP_NOT_DONE, .n = step, .step = e.text));
}

static int is_of_handover(enum question q)
{
	return q == Q_HANDOVER_OUT || q == Q_HANDOVER_IN || q == Q_HANDOVER_SEEN || q == Q_HANDOVER_AGREE ||
	       q == Q_HANDOVER_STAYS;
}

void search_step(struct turn *t, int done)
{
	if (!t->s->discrepancy)
		turn_refuse(t, SAY(NO_SEARCH));
	else if (is_of_handover(turn_asked(t)))
		turn_refuse(t, SAY(HANDOVER_THEN_SEARCH));
	else if (sheet_next_open(t->s))
		turn_refuse(t, SAY(COUNT_UNFINISHED_SEARCH));
	else if (t->s->search_done >= t->station->policy.n_search)
		turn_refuse(t, SAY(SEARCH_ALL_ANSWERED));
	else
		search_answered(t, done);
}

/* Which of the missing items was found? They are asked for one by one, beginning behind number `after`; behind the
 * last it may be one of another case. */
void search_ask_found(struct turn *t, int after)
{
	for (int i = after + 1; i <= t->s->n_items; i++)
		if (item_is_sought(&t->s->items[i - 1])) {
			turn_ask_saying(t, (struct asked){.what = Q_FOUND, .item = (uint8_t)i}, SAY(R_FOUND));
			return;
		}
	turn_ask_saying(t, (struct asked){.what = Q_FOUND},
	                after ? SAY(R_NONE_OF_MISSING) : SAY(R_NOTHING_MISSING));
}

void search_found(struct turn *t)
{
	if (!t->s->discrepancy && t->s->final == FINAL_ASKING && !sheet_missing(t->s))
		turn_refuse(t, SAY(FOUND_WHILE_COUNTING));
	else
		search_ask_found(t, 0);
}

void search_end_unresolved(struct turn *t)
{
	int on = sheet_first_digit_on(t->s), doubted = sheet_first_digit_doubted(t->s);
	if (sheet_next_open(t->s) && (sheet_missing(t->s) || t->s->discrepancy))
		turn_refuse(t, SAY(COUNT_UNFINISHED_ITEM,
		                   .item = sheet_item_const(t->s, sheet_next_open(t->s))->thing.name));
	else if (!t->s->discrepancy)
		turn_refuse(t, SAY(NOTHING_MISSING_TO_END));
	else if (doubted)
		turn_refuse(t, SAY(FIRST_SAY_WHETHER_ON, .digit = doubted));
	else if (on)
		turn_refuse(t, SAY(TAKE_IT_OFF_FIRST, .digit = on));
	else if (t->s->search_done < t->station->policy.n_search)
		turn_refuse(t, SAY(SEARCH_STEP_OPEN, .step = t->station->policy.search[t->s->search_done]));
	else
		turn_ask_saying(t, (struct asked){.what = Q_SURGEON_ENDS}, SAY(R_STEPS_ANSWERED));
}
