#include "count/unanswered.h"

#include <inttypes.h>
#include <stdio.h>

#include "base/clock.h"
#include "code/own-codes.h"

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
static void since_text(const struct station *st, struct moment scan, struct moment now, char out[40])
{
	char date[11] = "", hm[6];
	if (st->clock_wrong || scan.wall_ms > now.wall_ms) {
		snprintf(out, 40, "no scan since the reminder");
		return;
	}
	clock_text_hm(scan.wall_ms, now.utc_min, hm);
	if (clock_date_number(scan.wall_ms, now.utc_min) != clock_date_number(now.wall_ms, now.utc_min))
		clock_text_date(scan.wall_ms, now.utc_min, date);
	snprintf(out, 40, "no scan since %s%s%s", date, *date ? " " : "", hm);
}

static void tell(const struct station *st, const struct sheet *s, const struct digit *d, struct moment now,
                 struct unanswered *out)
{
	char since[40];
	int64_t min = digit_open_ms(d, now) / 60000;
	since_text(st, station_last_scan(st, s->room), now, since);
	out->room = s->room;
	snprintf(out->text, sizeof out->text, "%s: %s%s %s%" PRId64 " min, %s",
	         station_room_name(st, s->room), own_digit_name(d->number),
	         d->state == DIGIT_OFF ? ", off and not accounted for," : "",
	         d->by_wall.cuts && !digit_wall_holds(d, now) ? "at least " : "", min, since);
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
