/* What the time is for the station. */
#include "base/clock.h"
#include "count/wall.h"
#include "run/core.h"

struct moment core_now(const struct core *c)
{
	struct instant now = clock_now();
	return (struct moment){.boot = c->station.boot,
	                       .boot_ms = now.boot_ms,
	                       .wall_ms = now.wall_ms,
	                       .utc_min = clock_utc_min(now.wall_ms)};
}

int32_t core_today(const struct core *c)
{
	struct moment now = core_now(c);
	return clock_date_number(wall_latest_ms(&c->station, now), now.utc_min);
}
