#include "decide/tick.h"

#include <string.h>

#include "count/wall.h"
#include "decide/next.h"
#include "decide/turn.h"

static int wants_reminders(const struct sheet *s, const struct digit *d)
{
	if (digit_runs(d))
		return 1;
	for (int i = 0; d->had && i < s->n_items; i++)
		if (s->items[i].place == ITEM_OFF && s->items[i].digit == d->number)
			return 1;
	return 0;
}

/* After a power cut over which the wall clock went back nobody knows how long it was: the reminder comes at once. And a
 * clock that was set ahead and back again must not hold the next one up. */
static int due(const struct policy *p, const struct digit *d, int64_t minutes, struct moment now)
{
	const struct moment *last = &d->by_wall.reminded_at;
	if (!p->first_reminder_min)
		return 0;
	if (d->by_wall.back)
		return 1;
	if (!d->reminded_min)
		return minutes >= p->first_reminder_min;
	return p->next_reminder_min &&
	       (minutes >= (int64_t)d->reminded_min + p->next_reminder_min ||
	        (last->boot == now.boot &&
	         now.boot_ms - last->boot_ms >= (int64_t)p->next_reminder_min * 60000));
}

static void remind_on(struct turn *t, const struct digit *d)
{
	struct say say = {.saying = SAY_R_REMIND, .digit = d->number};
	say.what = digit_minutes(d, t->in->at, &say.minutes, &say.most);
	turn_say(t, &say);
}

static void remind(struct turn *t, const struct digit *d, int64_t minutes)
{
	EMIT(t, .kind = EV_REMINDED, .digit = d->number, .n = (int32_t)minutes);
	if (d->state == DIGIT_OFF && !d->doubted)
		turn_say(t, SAY(R_REMIND_OFF, .digit = d->number));
	else
		remind_on(t, d);
}

static int remind_sheet(const struct station *st, const struct input *in, struct outcome *out, int index)
{
	struct input here = *in;
	here.room = st->sheets[index].room;
	struct turn t = {.station = st, .in = &here, .s = &out->sheet, .out = out, .index = index};
	sheet_copy(&out->sheet, &st->sheets[index]);
	for (int d = 0; d < out->sheet.n_digits; d++) {
		const struct digit *digit = &out->sheet.digits[d];
		int64_t minutes = digit_open_ms(digit, in->at) / 60000;
		if (!wants_reminders(&out->sheet, digit) || !due(&st->policy, digit, minutes, in->at))
			continue;
		remind(&t, digit, minutes);
		next_step(st, &out->sheet, out->sheet.room, in->at, &out->reply.next);
		return 1;
	}
	return 0;
}

/* Said once for the station, and in each open case, whose slip says it too. */
static int tell_clock(const struct station *st, const struct input *in, struct outcome *out)
{
	int wrong = wall_is_wrong(st, in->at);
	if (wrong == st->clock_wrong)
		return 0;
	out->events[out->count++] = (struct event){.kind = EV_CLOCK_WRONG, .at = in->at, .n = wrong};
	for (int i = 0; i < SHEETS_MAX; i++)
		if (st->sheets[i].case_no)
			out->events[out->count++] = (struct event){.kind = EV_CLOCK_WRONG,
			                                           .at = in->at,
			                                           .room = st->sheets[i].room,
			                                           .case_no = st->sheets[i].case_no,
			                                           .n = wrong};
	return 1;
}

/* One thing at a time: the caller ticks again until nothing is due. */
void tick_take(const struct station *st, const struct input *in, struct outcome *out)
{
	if (tell_clock(st, in, out))
		return;
	int on = 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		if (!st->sheets[i].case_no)
			continue;
		on += sheet_digits_on(&st->sheets[i]);
		if (remind_sheet(st, in, out, i))
			return;
	}
	sheet_clear(&out->sheet);
	if (on && st->policy.alive_s &&
	    moment_between_ms(st->last, in->at) >= (int64_t)st->policy.alive_s * 1000)
		out->events[out->count++] = (struct event){.kind = EV_ALIVE, .at = in->at};
}
