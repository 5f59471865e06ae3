#include "count/unanswered.h"

#include "base/clock.h"

struct moment station_last_scan(const struct station *st, int32_t room)
{
	static const struct moment never;
	int i = station_room_index(st, room);
	return i < 0 ? never : st->heard[i].scan;
}

/* Over a power cut whose length nobody knows it stands at once. */
static int stands(const struct station *st, struct moment reminder, struct moment now)
{
	int64_t ms = moment_between_ms(reminder, now);
	return st->policy.nobody_min && reminder.boot &&
	       (ms < 0 || ms >= (int64_t)st->policy.nobody_min * 60000);
}

/* A time of day only where it can be true. */
static enum saying since(const struct station *st, struct moment scan, struct moment now, struct say *say)
{
	if (st->clock_wrong || scan.wall_ms > now.wall_ms)
		return SAY_NO_SCAN_SINCE_REMINDER;
	say->time = clock_minute_of_day(scan.wall_ms, now.utc_min);
	say->date = clock_date_number(scan.wall_ms, now.utc_min);
	return say->date == clock_date_number(now.wall_ms, now.utc_min) ? SAY_NO_SCAN_SINCE
	                                                                : SAY_NO_SCAN_SINCE_DAY;
}

static enum saying of_suspended(const struct digit *d)
{
	return digit_runs(d) ? d->state == DIGIT_ON ? SAY_SUSPENDED_ON : SAY_SUSPENDED_MAYBE_ON
	                     : SAY_SUSPENDED_CASE;
}

static void tell(const struct station *st, const struct sheet *s, const struct digit *d, struct moment now,
                 struct unanswered *out)
{
	int off = d->state == DIGIT_OFF && !d->doubted, least = d->by_wall.cuts && !digit_wall_holds(d, now);
	struct say say = {.room = station_room_name(st, s->room),
	                  .digit = d->number,
	                  .case_no = s->case_no,
	                  .minutes = (int32_t)(digit_open_ms(d, now) / 60000)};
	say.what = s->suspended ? of_suspended(d) : since(st, station_last_scan(st, s->room), now, &say);
	if (least)
		say.saying = off ? SAY_NOBODY_OFF_LEAST : SAY_NOBODY_ON_LEAST;
	else
		say.saying = off ? SAY_NOBODY_OFF : SAY_NOBODY_ON;
	out->room = s->room;
	out->case_no = s->suspended ? s->case_no : 0;
	out->reminded = d->reminded;
	out->say = say;
}

/* `nobody`: those that nobody answers; else those of suspended cases that are not among them. */
static int tell_sheet(const struct station *st, const struct sheet *s, struct moment now, int nobody,
                      struct unanswered out[UNANSWERED_MAX], int n)
{
	int place = s->case_no ? station_room_index(st, s->room) : -1;
	if (place < 0)
		return n;
	const struct heard *h = &st->heard[place];
	int unheard = stands(st, s->suspended ? h->of_suspended : h->reminder, now);
	for (int i = 0; i < s->n_digits && n < UNANSWERED_MAX; i++) {
		const struct digit *d = &s->digits[i];
		int is_nobody = unheard && d->reminded;
		if (is_nobody != nobody || (!nobody && (!s->suspended || (!d->reminded && !digit_runs(d)))))
			continue;
		tell(st, s, d, now, &out[n]);
		out[n++].nobody = (uint8_t)nobody;
	}
	return n;
}

int station_unanswered(const struct station *st, struct moment now, struct unanswered out[UNANSWERED_MAX])
{
	int n = 0;
	for (int nobody = 1; nobody >= 0; nobody--)
		for (int i = 0; i < SHEETS_MAX; i++)
			n = tell_sheet(st, &st->sheets[i], now, nobody, out, n);
	return n;
}
