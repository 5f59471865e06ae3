#include "decide/undo.h"

#include <stdio.h>

/* The digit that was timed last; 0 where none was, or where it turned out that nothing was on it. */
static int last_timed(const struct sheet *s)
{
	const struct digit *d = sheet_digit_const(s, s->last_timed);
	return d && (d->had || digit_is_on(d)) ? d->number : 0;
}

void card_minutes_ago(struct turn *t, int minutes)
{
	const struct digit *d = sheet_digit_const(t->s, last_timed(t->s));
	if (!d) {
		turn_refuse(t, SAY(NOTHING_TIMED, .card = t->in->card));
		return;
	}
	int off = t->s->last_timed_off, most = (int)(d->known_ms / 60000);
	if (off && !most) {
		turn_refuse(t, SAY(ON_LESS_THAN_A_MINUTE, .digit = d->number));
		return;
	}
	if (off && minutes > most) { /* it cannot have come off before it went on */
		turn_refuse(t, SAY(ON_LESS_THAN_THAT, .digit = d->number, .most = most, .minutes = minutes));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_EARLIER, .digit = d->number, .n = minutes, .what = (uint8_t)(off ? 2 : 1));
	turn_say(t, off ? SAY(R_OFF_EARLIER, .minutes = minutes, .digit = d->number)
	            : d->state == DIGIT_MAYBE_ON
	                ? SAY(R_MAYBE_EARLIER, .minutes = minutes, .digit = d->number)
	                : SAY(R_ON_EARLIER, .minutes = minutes, .digit = d->number));
}

void card_misread(struct turn *t)
{
	int digit = last_timed(t->s);
	turn_ask_saying(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit},
	                digit ? SAY(R_MISREAD_DIGIT, .digit = digit) : SAY(R_MISREAD));
}

/* What a step was, as people say it; its event has a name for machines. */
static const char *step_words(const struct turn *t, const struct step *step)
{
	static const struct {
		enum event_kind kind;
		const char *words;
	} steps[] = {{EV_JOINED, "the badge"},
	             {EV_COUNT_AGREED, "the count that was agreed"},
	             {EV_DIGIT_DOUBTED, "'on?'"},
	             {EV_DIGIT_MAYBE_ON, "'on?'"},
	             {EV_PAID, "what was answered for"},
	             {EV_ITEM_SHOWN, "accounted for"},
	             {EV_ITEM_NOT_SHOWN, "not there"},
	             {EV_DIGIT_ON, "tourniquet on"},
	             {EV_ITEM_OFF, "off"},
	             {EV_DIGIT_OFF, "off"},
	             {EV_DIGIT_SEEN_BARE, "seen bare"},
	             {EV_COUNT_STARTED, "the beginning of the count"},
	             {EV_SEARCH_STEP, "the step of the search"}};
	if (step->kind == EV_ASKED)
		return t->station->before[t->index].asked.what ? "the answer" : "the question";
	if (step->kind == EV_ITEM_IN)
		return t->s->initial_agreed ? "what was added" : "counted in";
	for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
		if ((int)steps[i].kind == step->kind)
			return steps[i].words;
	return "the last scan";
}

static int clocks(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++)
		n += digit_runs(&s->digits[i]);
	return n;
}

/* UNDO would stop a clock, and a tourniquet may be on: only a person knows whether one went on at all. */
static void undo_asks(struct turn *t, const struct step *step)
{
	if (t->s->asked.what == Q_IS_ON)
		turn_refuse(t, SAY(UNDO_STOPS_NO_CLOCK, .digit = t->s->asked.digit));
	else
		turn_ask_saying(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)last_timed(t->s)},
		                SAY(R_CLOCK_RUNS_ON, .digit = step->digit));
}

void card_undo(struct turn *t)
{
	struct step step = t->index >= 0 ? t->station->undo[t->index] : (struct step){0};
	if (step.seq && clocks(t->s) > clocks(&t->station->before[t->index])) {
		undo_asks(t, &step);
		return;
	}
	if (!step.seq) {
		turn_refuse(t, SAY(NOTHING_TO_TAKE_BACK));
		return;
	}
	const char *words = step_words(t, &step), *of = "";
	if (step.digit)
		of = own_digit_name(step.digit);
	else if (step.item && sheet_item(t->s, step.item))
		of = sheet_item(t->s, step.item)->thing.name;
	char what[LINE_NAME_MAX];
	snprintf(what, sizeof what, "%s", of); /* the sheet that it stands on is taken back as well */
	EMIT(t, .kind = EV_UNDONE, .ref = step.seq);
	for (int i = 0; i < SHEETS_MAX; i++) { /* the item that is asked about there may be another one now */
		const struct sheet *there = &t->station->sheets[i];
		if (there->case_no && there->asked.what == Q_HERE_NOW && there->asked.n == t->s->case_no)
			EMIT(t, .kind = EV_ASKED, .case_no = there->case_no, .what = Q_NONE);
	}
	*t->s = t->station->before[t->index];
	turn_accept(t, "Taken back: %s%s%s. The record keeps both.", words, *what ? ", " : "", what);
}
