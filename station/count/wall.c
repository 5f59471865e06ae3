#include "count/wall.h"

#include <stdio.h>

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

void wall_words(const struct station *st, struct moment now, char *out, size_t size)
{
	char date[11], hm[6], last_date[11], last_hm[6];
	out[0] = 0;
	if (!st->clock_wrong)
		return;
	clock_text_date(now.wall_ms, now.utc_min, date);
	clock_text_hm(now.wall_ms, now.utc_min, hm);
	clock_text_date(st->wall_ms, now.utc_min, last_date);
	clock_text_hm(st->wall_ms, now.utc_min, last_hm);
	if (now.wall_ms < st->wall_ms)
		snprintf(out, size,
		         "The wall clock is wrong: %s %s, though the record reaches to %s %s. Read expiry "
		         "dates aloud; have the clock set.",
		         date, hm, last_date, last_hm);
	else
		snprintf(out, size,
		         "The wall clock is wrong: %s %s, before this program was made. Read expiry dates "
		         "aloud; have the clock set.",
		         date, hm);
}
