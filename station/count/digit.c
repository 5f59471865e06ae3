#include "count/digit.h"

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

void digit_is_sure(struct digit *d, struct moment at)
{
	const int64_t ms = digit_stretch_ms(d, at);
	if (ms + d->by_wall.cut_ms > d->sure_ms + d->sure_cut_ms) {
		d->sure_ms = ms;
		d->sure_cut_ms = d->by_wall.cut_ms;
	}
}

int64_t digit_since_sure_ms(const struct digit *d)
{
	return d->known_ms - d->sure_ms + d->by_wall.cut_ms - d->sure_cut_ms;
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
