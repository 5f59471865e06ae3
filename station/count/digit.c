#include "count/digit.h"

#include <inttypes.h>
#include <stdio.h>

int digit_is_on(const struct digit *d)
{
	return d->state == DIGIT_ON || d->state == DIGIT_MAYBE_ON;
}

int digit_runs(const struct digit *d)
{
	return digit_is_on(d) || d->doubted;
}

int64_t moment_between_ms(struct moment from, struct moment to)
{
	return from.boot == to.boot ? to.boot_ms - from.boot_ms : to.wall_ms - from.wall_ms;
}

int64_t digit_stretch_ms(const struct digit *d, struct moment now)
{
	if (d->doubted)
		return d->doubt_known_ms +
		       (now.boot == d->doubt_since.boot ? now.boot_ms - d->doubt_since.boot_ms : 0);
	if (!digit_is_on(d))
		return 0;
	return d->known_ms + (now.boot == d->since.boot ? now.boot_ms - d->since.boot_ms : 0);
}

int64_t digit_longest_ms(const struct digit *d, struct moment now)
{
	int64_t present = digit_stretch_ms(d, now);
	return present > d->longest_ms ? present : d->longest_ms;
}

int64_t digit_total_ms(const struct digit *d, struct moment now)
{
	return d->total_ms + digit_stretch_ms(d, now);
}

void digit_cross_boot(struct digit *d, struct moment last, struct moment started)
{
	if (d->doubted) {
		if (last.boot == d->doubt_since.boot && last.boot_ms > d->doubt_since.boot_ms)
			d->doubt_known_ms += last.boot_ms - d->doubt_since.boot_ms;
		d->doubt_gap = 1;
		d->doubt_since = started;
	}
	by_wall_cross(d, last, started);
	if (!digit_is_on(d) && d->state != DIGIT_OFF)
		return;
	if (digit_is_on(d)) {
		if (last.boot == d->since.boot && last.boot_ms > d->since.boot_ms)
			d->known_ms += last.boot_ms - d->since.boot_ms;
		d->gap = 1;
	}
	d->since = started;
}

enum saying digit_minutes(const struct digit *d, struct moment now, int32_t *minutes, int32_t *most)
{
	int off = d->state == DIGIT_OFF && !d->doubted;
	*minutes = (int32_t)((off ? d->known_ms : digit_stretch_ms(d, now)) / 60000);
	*most = (int32_t)((d->doubted ? digit_open_ms(d, now) : digit_by_wall_ms(d, now)) / 60000);
	if (!(d->doubted ? d->doubt_gap : d->gap))
		return SAY_MINUTES;
	return d->doubted || digit_wall_holds(d, now) ? SAY_MINUTES_AT_LEAST : SAY_MINUTES_NO_WALL;
}

void digit_minutes_text(const struct digit *d, struct moment now, char *out, size_t size)
{
	struct say say = {0};
	say.saying = digit_minutes(d, now, &say.minutes, &say.most);
	say_part(&say, out, size);
}
