#include "decide/owed-after-end.h"

#include "decide/deeds.h"
#include "decide/phrases.h"

static void owe(struct turn *t, int32_t case_no, enum debt_kind kind, int digit)
{
	EMIT(t, .kind = EV_OWED, .case_no = case_no, .what = (uint8_t)kind, .digit = (uint8_t)digit);
}

/* Each digit that had a tourniquet and was not seen bare since, and each on which what is missing may be. */
struct after_unresolved after_of_sheet(const struct sheet *s)
{
	struct after_unresolved of = {.case_no = s->case_no, .left = s->patient_left};
	for (int i = 0; i < s->n_digits; i++)
		of.look[s->digits[i].number] = s->digits[i].had && !s->digits[i].seen_bare;
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++)
		for (int i = 1; i <= s->n_items; i++)
			if (item_open(&s->items[i - 1]) && sheet_may_be_on(s, i, d))
				of.look[d] = 1;
	return of;
}

void after_end_unresolved(struct turn *t, const struct after_unresolved *of)
{
	if (of->left)
		owe(t, of->case_no, DEBT_CALLED, 0);
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++)
		if (of->look[d])
			owe(t, of->case_no, DEBT_LOOK, d);
	owe(t, of->case_no, DEBT_WARD, 0);
}

static int looks_owed(const struct station *st, int32_t case_no)
{
	for (int i = 0; i < st->n_after; i++)
		if (st->after[i].case_no == case_no && st->after[i].what == DEBT_LOOK)
			return 1;
	return 0;
}

/* The patient may be anywhere by now, and which digit it was is on the slip. */
void after_end_found(struct turn *t, int32_t case_no)
{
	owe(t, case_no, DEBT_CALLED, 0);
	if (!looks_owed(t->station, case_no))
		owe(t, case_no, DEBT_LOOK, 0);
	owe(t, case_no, DEBT_WARD, 0);
}

static void pay(struct turn *t, const struct after_end *a, enum paid_how how)
{
	EMIT(t, .kind = EV_PAID, .case_no = a->case_no, .what = a->what, .digit = a->digit,
	     .other = (int32_t)how, .answer = input_answer(t->in));
}

/* What the room asks for; 0 where it does not. */
static int is_asked_for(const struct turn *t, struct after_end *a)
{
	return !turn_has_case(t) && station_suspended_in(t->station, t->in->room) < 0 &&
	       after_end_first(t->station, t->in->room, NULL, 0, a);
}

enum answered after_end_done(struct turn *t)
{
	struct after_end a;
	if (!is_asked_for(t, &a))
		return ANSWERED_NOT;
	pay(t, &a, PAID_ENTERED_AFTER);
	if (a.what == DEBT_LOOK)
		turn_say(t, a.digit ? SAY(R_AFTER_LOOK_AT, .case_no = a.case_no, .digit = a.digit)
		                    : SAY(R_AFTER_LOOK, .case_no = a.case_no));
	else
		turn_say(t, a.what == DEBT_WARD ? SAY(R_AFTER_WARD, .case_no = a.case_no)
		                                : SAY(R_AFTER_CALLED, .case_no = a.case_no));
	return ANSWERED;
}

enum answered after_end_still_on(struct turn *t)
{
	struct after_end a;
	if (!is_asked_for(t, &a) || a.what != DEBT_LOOK)
		return ANSWERED_NOT;
	EMIT(t, .kind = EV_FOUND_AFTER, .case_no = a.case_no, .digit = a.digit,
	     .thing = {.role = ROLE_TOURNIQUET, .called = SAY_TOURNIQUET_LEFT_ON});
	turn_queue_slip(t, SLIP_ADDENDUM, a.case_no);
	pay(t, &a, PAID_WAS_ON);
	owe(t, a.case_no, DEBT_LOOK, a.digit);
	owe(t, a.case_no, DEBT_WARD, 0);
	turn_say(t, a.digit ? SAY(R_AFTER_ON_IT, .case_no = a.case_no, .digit = a.digit)
	                    : SAY(R_AFTER_ON, .case_no = a.case_no));
	return ANSWERED;
}

void after_end_ask(struct next *n, const struct after_end *a)
{
	if (a->what == DEBT_CALLED)
		next_say(n, SAY(HEAD_AFTER_CALLED, .case_no = a->case_no));
	else if (a->what == DEBT_WARD)
		next_say(n, SAY(HEAD_AFTER_WARD, .case_no = a->case_no));
	else if (a->digit)
		next_say(n, SAY(HEAD_AFTER_LOOK_AT, .case_no = a->case_no, .digit = a->digit));
	else
		next_say(n, SAY(HEAD_AFTER_LOOK, .case_no = a->case_no));
	if (a->what == DEBT_LOOK) {
		next_add(n, DEED_OF_CARD(STEP_DONE, AFTER_BARE));
		next_add(n, DEED_OF_CARD(NO, AFTER_ON));
	} else {
		next_add(n, DEED_OF_CARD(STEP_DONE, AFTER_DONE));
	}
}
