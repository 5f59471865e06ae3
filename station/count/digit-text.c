#include "count/digit.h"

enum saying digit_minutes(const struct digit *d, struct moment now, int32_t *minutes, int32_t *most)
{
	int off = d->state == DIGIT_OFF && !d->doubted;
	int64_t ms = off ? d->known_ms : digit_stretch_ms(d, now);
	*minutes =
	    ms > 0 ? (int32_t)(ms / 60000) : 0; /* a scan that was stored before the clock began anew */
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
