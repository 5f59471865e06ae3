#include "count/unanswered.h"

#include "base/clock.h"

struct moment station_last_scan(const struct station *st, int32_t room)
{
	static const struct moment never;
	int i = station_room_index(st, room);
	return i < 0 ? never : st->heard[i].scan;
}

/* Over a power cut whose length nobody knows it stands at once. */
static int stands(const struct station *st, const struct heard *h, struct moment now)
{
	int64_t ms = moment_between_ms(h->reminder, now);
	return st->policy.nobody_min && h->reminder.boot &&
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

static void tell(const struct station *st, const struct sheet *s, const struct digit *d, struct moment now,
                 struct unanswered *out)
{
	int off = d->state == DIGIT_OFF, least = d->by_wall.cuts && !digit_wall_holds(d, now);
	struct say say = {.room = station_room_name(st, s->room),
	                  .digit = d->number,
	                  .minutes = (int32_t)(digit_open_ms(d, now) / 60000)};
	say.what = since(st, station_last_scan(st, s->room), now, &say);
	if (least)
		say.saying = off ? SAY_NOBODY_OFF_LEAST : SAY_NOBODY_ON_LEAST;
	else
		say.saying = off ? SAY_NOBODY_OFF : SAY_NOBODY_ON;
	*out = (struct unanswered){s->room, say};
}

int station_unanswered(const struct station *st, struct moment now, struct unanswered out[UNANSWERED_MAX])
{
	int n = 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i];
		int place = s->case_no ? station_room_index(st, s->room) : -1;
		if (place < 0 || !stands(st, &st->heard[place], now))
			continue;
		for (int d = 0; d < s->n_digits && n < UNANSWERED_MAX; d++)
			if (s->digits[d].reminded)
				tell(st, s, &s->digits[d], now, &out[n++]);
	}
	return n;
}
