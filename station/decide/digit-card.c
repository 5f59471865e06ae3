#include "decide/digit-card.h"

#include <stdio.h>

#include "decide/answer.h"
#include "decide/digit-clock.h"
#include "decide/phrases.h"
#include "decide/search.h"

static void digit_look_bare(struct turn *t, int digit)
{
	int32_t who = t->s->team.at[t->s->single ? PLACE_FIELD : PLACE_CIRCULATING];
	if (t->s->dressing_on)
		EMIT(t, .kind = EV_DRESSING_ON, .n = 0);
	EMIT(t, .kind = EV_DIGIT_SEEN_BARE, .digit = (uint8_t)digit, .person = who);
	turn_close_question(t);
	if (t->s->single && !sheet_next_look(t->s)) {
		turn_ask_saying(t, (struct asked){.what = Q_WHO_LOOKED},
		                SAY(R_SEEN_BARE, .digit = digit, .time = moment_minute_of_day(t->in->at)));
		return;
	}
	turn_say(t, SAY(R_SEEN_BARE, .digit = digit, .time = moment_minute_of_day(t->in->at)));
}

/* A digit that has or had a tourniquet. */
static void on_known_digit(struct turn *t, int digit, const struct digit *d)
{
	if (d->state == DIGIT_ON)
		digit_ask_off(t, digit);
	else if (digit_runs(d))
		digit_ask_is_on(t, digit, SAY_NONE);
	else if (t->s->final == FINAL_AGREED && !d->seen_bare)
		digit_look_bare(t, digit);
	else if (search_is_look_step(t))
		digit_ask_is_on(t, digit, SAY_R_FEEL_IT);
	else
		digit_ask_is_on(t, digit, d->seen_bare ? SAY_R_WAS_SEEN_BARE : SAY_NONE);
}

/* A start without a doubt: both have counted, or a lone operator has scanned a pack, and one lies here unused. */
static int may_start(const struct sheet *s)
{
	return sheet_unused_tourniquet(s) && (s->initial_agreed || s->single);
}

/* A digit card that opened its case says so. */
static void open_by_digit(struct turn *t, int digit)
{
	int suspended = station_suspended_in(t->station, t->in->room);
	digit_ask_is_on(t, digit, SAY_NONE);
	turn_say_more(t, SAY(R_CASE_IS_OPENED, .case_no = t->s->case_no));
	if (suspended >= 0)
		turn_say_more(t, SAY(R_STAYS_SUSPENDED, .case_no = t->station->sheets[suspended].case_no));
}

void digit_card_take(struct turn *t)
{
	int digit = t->in->digit;
	if (!turn_has_case(t)) {
		turn_open_case(t, "");
		if (!t->s->case_no)
			return;
		turn_owe(t, DEBT_TEAM, 0, 0);
		open_by_digit(t, digit);
		return;
	}
	if (answer_digit(t) == ANSWERED)
		return;
	const struct digit *d = sheet_digit_const(t->s, digit);
	if (d && (d->had || digit_runs(d)))
		on_known_digit(t, digit, d);
	else if (may_start(t->s))
		digit_start_on(t, digit);
	else
		digit_ask_is_on(t, digit, SAY_NONE);
}
