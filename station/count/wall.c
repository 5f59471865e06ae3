#include "count/wall.h"

#include "base/clock.h"

#define LAG_MS 60000    /* clocks are put right by seconds all the time */
#define DAY_MS 86400000 /* the day of a release begins at another time in each place */
/* yyyymmdd: no program is used for 30 years, and two digits of a year name one of 100 */
#define OF_USE 300000

int wall_is_beyond(const struct station *st, struct moment at)
{
	return st->released && clock_date_number(at.wall_ms, at.utc_min) >= st->released + OF_USE;
}

int wall_is_wrong(const struct station *st, struct moment now)
{
	int64_t lag = st->clock_wrong ? 0 : LAG_MS;
	return now.wall_ms + lag < st->wall_ms ||
	       clock_date_number(now.wall_ms + DAY_MS, now.utc_min) < st->released || wall_is_beyond(st, now);
}

int64_t wall_latest_ms(const struct station *st, struct moment now)
{
	return now.wall_ms > st->wall_ms && !wall_is_beyond(st, now) ? now.wall_ms : st->wall_ms;
}

int64_t wall_turned_ms(struct moment from, struct moment to)
{
	int64_t ms = (to.wall_ms - from.wall_ms) - (to.boot_ms - from.boot_ms);
	return from.boot && from.boot == to.boot && (ms >= LAG_MS || ms <= -LAG_MS) ? ms : 0;
}

struct say wall_says(const struct station *st, struct moment now)
{
	struct say say = {0};
	if (!st->clock_wrong)
		return say;
	say.saying = now.wall_ms < st->wall_ms ? SAY_CLOCK_BEHIND
	             : wall_is_beyond(st, now) ? SAY_CLOCK_FAR_AHEAD
	                                       : SAY_CLOCK_BEFORE_PROGRAM;
	say.date = clock_date_number(now.wall_ms, now.utc_min);
	say.time = clock_minute_of_day(now.wall_ms, now.utc_min);
	say.other_date = clock_date_number(st->wall_ms, now.utc_min);
	say.to = clock_minute_of_day(st->wall_ms, now.utc_min);
	return say;
}
