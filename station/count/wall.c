#include "count/wall.h"

#include "base/clock.h"

#define LAG_MS 60000
#define DAY_MS 86400000 /* the day of a release begins at another time in each place */

int wall_is_wrong(const struct station *st, struct moment now)
{
	int64_t lag = st->clock_wrong ? 0 : LAG_MS;
	return now.wall_ms + lag < st->wall_ms ||
	       clock_date_number(now.wall_ms + DAY_MS, now.utc_min) < st->released;
}

int64_t wall_latest_ms(const struct station *st, struct moment now)
{
	return now.wall_ms > st->wall_ms ? now.wall_ms : st->wall_ms;
}

struct say wall_says(const struct station *st, struct moment now)
{
	struct say say = {0};
	if (!st->clock_wrong)
		return say;
	say.saying = now.wall_ms < st->wall_ms ? SAY_CLOCK_BEHIND : SAY_CLOCK_BEFORE_PROGRAM;
	say.date = clock_date_number(now.wall_ms, now.utc_min);
	say.time = clock_minute_of_day(now.wall_ms, now.utc_min);
	say.other_date = clock_date_number(st->wall_ms, now.utc_min);
	say.to = clock_minute_of_day(st->wall_ms, now.utc_min);
	return say;
}
