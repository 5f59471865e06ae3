/* The two clocks, and how a time is written.
 *
 * Durations come from CLOCK_BOOTTIME, which no one can set and which runs on through suspend (rule 14). It
 * starts again at each boot, so a reading means something only beside the boot it was taken in.
 */
#ifndef BANDTALLY_BASE_CLOCK_H
#define BANDTALLY_BASE_CLOCK_H

#include <stddef.h>
#include <stdint.h>

struct instant {
	int64_t boot_ms; /* since this boot, CLOCK_BOOTTIME */
	int64_t wall_ms; /* since 1970-01-01 UTC, CLOCK_REALTIME */
};

struct instant clock_now(void);

/* The kernel's random identifier of this boot as 32 hex digits; 0 or negative errno. */
int clock_boot_id(char out[33]);

#define CLOCK_UTC_MIN_MAX 840 /* no place on earth is further from UTC, either way */

/* How many minutes this computer's zone is ahead of UTC at a wall reading: the only question that is asked of the zone.
 * Everything below is told the answer, so that the same values give the same text everywhere. */
int16_t clock_utc_min(int64_t wall_ms);

/* The name of that zone, "Europe/London", as TZ or /etc/localtime gives it; "" where neither does. */
void clock_zone_name(char *out, size_t size);

/* 0 where TZ names a zone that this computer does not have: then its times are UTC, and nobody meant that. */
int clock_zone_is_known(void);

/* Civil time of a wall reading where it is `utc_min` ahead of UTC. Each writes a terminated text that fits the given
 * array. */
void clock_text_hm(int64_t wall_ms, int16_t utc_min, char out[6]);    /* "10:41" */
void clock_text_date(int64_t wall_ms, int16_t utc_min, char out[11]); /* "2026-11-25" */
void clock_text_full(int64_t wall_ms, int16_t utc_min, char out[26]); /* "2026-11-25T10:41:07+00:00" */

int32_t clock_minute_of_day(int64_t wall_ms, int16_t utc_min); /* 0 to 1439 */

/* The civil date as a number, 20261125, for comparing with expiry dates. */
int32_t clock_date_number(int64_t wall_ms, int16_t utc_min);
/* The time of the day in minutes, 0 to 1439. */
int32_t clock_minute_of_day(int64_t wall_ms, int16_t utc_min);

#endif
