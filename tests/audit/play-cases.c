/* play-cases FOLDER: a record of cases at given times, told by the lines of its standard input:
 *
 *     2026-03-29T00:50 1                  an ordinary case in room 1 that opens then, which is UTC
 *     2026-03-29T00:50 1 c1 b1 b2 …       one of these scans, as tests/unit/record/history.h has them;
 *                                         pN is a power cut of N minutes, s the last slip is seen; from qN on
 *                                         hands take N ms from scan to scan, else 6 s
 *
 * in the order of their times. What is ahead of UTC is what the zone of TZ is at each scan, as the station asks its own.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "base/clock.h"
#include "tests/unit/record/history.h"

#define LINE_MAX_BYTES 2000

static const char ordinary[] = "c1 b1 b2 g f b2 d2 w20 d2 c40 w6 c50 c41 f b2 d2 b3 s";

/* As a start records them. */
static int set(struct history *h)
{
	struct event e[] = {
	    {.kind = EV_SETTING, .what = SETTING_SITE, .text = "BC"},
	    {.kind = EV_SETTING, .what = SETTING_SITE_NAME, .text = "Invented hospital"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 1, .n = 1, .text = "Theatre 1"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 2, .n = 1, .text = "Theatre 2"},
	    {.kind = EV_SETTING, .what = SETTING_FIRST_REMINDER, .n = 20},
	    {.kind = EV_SETTING, .what = SETTING_SEARCH, .other = 1, .text = "Say it aloud"},
	};
	return history_store(h, e, sizeof e / sizeof *e);
}

static void look_at_the_zone(struct history *h)
{
	h->now.utc_min = clock_utc_min(h->now.wall_ms);
}

static int power_cut(struct history *h, int minutes)
{
	int32_t boot = h->now.boot + 1;
	h->now.wall_ms += 60000 * (int64_t)minutes;
	h->now.boot_ms = 5000;
	h->now.boot = boot;
	look_at_the_zone(h);
	struct event started = {.kind = EV_STARTED, .n = boot};
	snprintf(started.text, sizeof started.text, "boot-%d", (int)boot);
	return history_store(h, &started, 1);
}

static int play(struct history *h, int32_t room, const char *words)
{
	int32_t identity = h->next_identity++;
	int n = 0, hand_ms = 6000;
	for (const char *w = words; w && *w && n >= 0; w = strchr(w, ' ')) {
		w += *w == ' ';
		if (*w == 'q') {
			hand_ms = atoi(w + 1);
			continue;
		}
		h->now.boot_ms += hand_ms;
		h->now.wall_ms += hand_ms;
		look_at_the_zone(h);
		n = *w == 'p'   ? power_cut(h, atoi(w + 1))
		    : *w == 's' ? history_seen(h)
		                : history_word(h, room, w, identity);
	}
	return n;
}

static int go_to(struct history *h, struct tm *t)
{
	int64_t ms = (int64_t)timegm(t) * 1000 - h->now.wall_ms;
	if (ms < 0)
		return -1;
	h->now.wall_ms += ms;
	h->now.boot_ms += ms;
	return 0;
}

static int take_line(struct history *h, char *line)
{
	struct tm t = {0};
	int room = 0, used = 0;
	line[strcspn(line, "\n")] = 0;
	if (sscanf(line, "%d-%d-%dT%d:%d %d%n", &t.tm_year, &t.tm_mon, &t.tm_mday, &t.tm_hour, &t.tm_min,
	           &room, &used) != 6)
		return -1;
	t.tm_year -= 1900;
	t.tm_mon--;
	used += line[used] == ' ';
	return go_to(h, &t) < 0 ? -1 : play(h, room, line[used] ? line + used : ordinary);
}

int main(int argc, char **argv)
{
	static struct history h;
	struct record *r = NULL;
	struct error e = {0};
	char line[LINE_MAX_BYTES];
	struct tm first = {0};
	int n = -1;
	if (argc == 2 && fgets(line, sizeof line, stdin) &&
	    sscanf(line, "%d-%d-%d", &first.tm_year, &first.tm_mon, &first.tm_mday) == 3) {
		first.tm_year -= 1900;
		first.tm_mon--;
		n = record_open(&r, argv[1], &e);
	}
	if (n == 0)
		n = history_init_at(&h, r, 1, 2000, (int64_t)timegm(&first) * 1000 - INT64_C(86400000));
	if (n == 0)
		n = set(&h);
	do
		n = n < 0 ? n : take_line(&h, line);
	while (n >= 0 && fgets(line, sizeof line, stdin));
	n = n < 0 ? n : history_flush(&h);
	if (n < 0)
		fprintf(stderr, "play-cases: %s: %s\n", line,
		        *h.error.text ? h.error.text
		        : *e.text     ? e.text
		                      : "no such line, or before the end of the last");
	history_deinit(&h);
	record_close(r);
	return n < 0;
}
