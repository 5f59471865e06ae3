#include "decide/digit-card.h"

#include <stdio.h>

#include "decide/answer.h"
#include "decide/digit-clock.h"
#include "decide/phrases.h"
#include "decide/search.h"

static void digit_look_bare(struct turn *t, int digit)
{
	char time[6];
	int32_t who = t->s->team.at[t->s->single ? PLACE_FIELD : PLACE_CIRCULATING];
	if (t->s->dressing_on)
		EMIT(t, .kind = EV_DRESSING_ON, .n = 0);
	EMIT(t, .kind = EV_DIGIT_SEEN_BARE, .digit = (uint8_t)digit, .person = who);
	turn_close_question(t);
	if (t->s->single && !sheet_next_look(t->s)) {
		turn_ask(t, (struct asked){.what = Q_WHO_LOOKED}, "%s seen bare at %s.",
		         own_digit_name(digit), moment_hm(t->in->at, time));
		return;
	}
	turn_accept(t, "%s seen bare at %s.", own_digit_name(digit), moment_hm(t->in->at, time));
}

static void ask_off(struct turn *t, int digit)
{
	char min[80];
	digit_minutes_text(sheet_digit_const(t->s, digit), t->in->at, min, sizeof min);
	turn_ask(t, (struct asked){.what = Q_OFF, .digit = (uint8_t)digit}, "Tourniquet on the %s for %s.",
	         own_digit_name(digit), min);
}

/* A digit that has or had a tourniquet. */
static void on_known_digit(struct turn *t, int digit, const struct digit *d)
{
	if (d->state == DIGIT_ON)
		ask_off(t, digit);
	else if (digit_runs(d))
		digit_ask_is_on(t, digit, "");
	else if (t->s->final == FINAL_AGREED && !d->seen_bare)
		digit_look_bare(t, digit);
	else if (search_is_look_step(t))
		digit_ask_is_on(t, digit, " Look at it and feel it, under the dressing too.");
	else
		digit_ask_is_on(t, digit, d->seen_bare ? " It was seen bare." : "");
}

/* A start without a doubt: both have counted, or a lone operator has scanned a pack, and one lies here unused. */
static int may_start(const struct sheet *s)
{
	return sheet_unused_tourniquet(s) && (s->initial_agreed || s->single);
}

/* A digit card that opened its case says so. */
static void open_by_digit(struct turn *t, int digit)
{
	char besides[120];
	int suspended = station_suspended_in(t->station, t->in->room);
	size_t used = (size_t)snprintf(besides, sizeof besides, " Case %d is opened.", (int)t->s->case_no);
	if (suspended >= 0)
		snprintf(besides + used, sizeof besides - used, " Case %d stays suspended.",
		         (int)t->station->sheets[suspended].case_no);
	digit_ask_is_on(t, digit, besides);
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
		digit_ask_is_on(t, digit, "");
}
