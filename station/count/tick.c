/* Time passing: reminders until the tourniquet itself is accounted for, and marks in time (rules 2, 14). */
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "count/turn.h"

/* Minutes since the tourniquet of this stretch went on, counted on while it is off and not accounted for. */
static int64_t minutes_open(const struct digit *d, struct moment now)
{
	int64_t ms =
	    d->state == DIGIT_OFF ? d->known_ms + moment_between_ms(d->since, now) : digit_stretch_ms(d, now);
	return ms / 60000;
}

static int wants_reminders(const struct sheet *s, const struct digit *d)
{
	if (digit_is_on(d))
		return 1;
	for (int i = 0; d->had && i < s->n_items; i++)
		if (s->items[i].place == ITEM_OFF && s->items[i].digit == d->number)
			return 1;
	return 0;
}

static int due(const struct policy *p, const struct digit *d, int64_t minutes)
{
	if (!p->first_reminder_min)
		return 0;
	int64_t at =
	    d->reminded_min ? (int64_t)d->reminded_min + p->next_reminder_min : p->first_reminder_min;
	return (!d->reminded_min || p->next_reminder_min) && minutes >= at;
}

static void remind(struct turn *t, const struct digit *d, int64_t minutes)
{
	char text[80];
	digit_minutes_text(d, t->in->at, text, sizeof text);
	EMIT(t, .kind = EV_REMINDED, .digit = d->number, .n = (int32_t)minutes);
	if (d->state == DIGIT_OFF)
		turn_accept(t, "Reminder: the tourniquet of the %s is off and not yet accounted for.",
		            own_digit_name(d->number));
	else
		turn_accept(t, "Reminder: tourniquet on the %s for %s.", own_digit_name(d->number), text);
}

static int remind_sheet(const struct station *st, const struct input *in, struct outcome *out, int index)
{
	struct input here = *in;
	here.room = st->sheets[index].room;
	struct turn t = {.station = st, .in = &here, .s = &out->sheet, .out = out, .index = index};
	out->sheet = st->sheets[index];
	for (int d = 0; d < out->sheet.n_digits; d++) {
		const struct digit *digit = &out->sheet.digits[d];
		int64_t minutes = minutes_open(digit, in->at);
		if (!wants_reminders(&out->sheet, digit) || !due(&st->policy, digit, minutes))
			continue;
		remind(&t, digit, minutes);
		for (int i = 0; i < out->count; i++)
			out->events[i].flags &=
			    ~EVENT_FIRST; /* time passing is no step that UNDO takes back */
		next_step(st, &out->sheet, in->at, out->reply.next);
		return 1;
	}
	return 0;
}

/* One reminder at a time: the caller ticks again until nothing is due. */
void on_tick(const struct station *st, const struct input *in, struct outcome *out)
{
	int on = 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		if (!st->sheets[i].case_no)
			continue;
		on += sheet_digits_on(&st->sheets[i]);
		if (remind_sheet(st, in, out, i))
			return;
	}
	memset(&out->sheet, 0, sizeof out->sheet);
	if (on && st->policy.alive_s &&
	    moment_between_ms(st->last, in->at) >= (int64_t)st->policy.alive_s * 1000)
		out->events[out->count++] = (struct event){.kind = EV_ALIVE, .at = in->at};
}
