/* half-year FOLDER SEED: half a year of an invented hospital with two theatres, so that a report has something to show. Each
 * case is scanned through the count itself, as people would, at hours of working days; beside the record lies list.csv, what
 * the theatres had planned. Nobody and nothing in it ever was. The same seed gives the same half year.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "tests/unit/record/history.h"

#define WEEKS 26
#define HOUR_MS INT64_C(3600000)
#define DAY_MS (24 * HOUR_MS)
#define FIRST_MONDAY_MS INT64_C(1795996800000) /* 2026-11-30 00:00 UTC */

struct year {
	struct history h;
	uint64_t random;
	FILE *list;
	int cases;
};

static double draw(struct year *y) /* 0 to 1, a splitmix64 step */
{
	uint64_t z = y->random += 0x9e3779b97f4a7c15u;
	z = (z ^ z >> 30) * 0xbf58476d1ce4e5b9u;
	z = (z ^ z >> 27) * 0x94d049bb133111ebu;
	return (double)((z ^ z >> 31) >> 11) / 9007199254740992.0;
}

static double normal(struct year *y)
{
	return sqrt(-2 * log(1 - draw(y))) * cos(2 * M_PI * draw(y));
}

/* As it stands on the case's paper: mostly fingers, some thumbs and toes. */
static int any_digit(struct year *y)
{
	static const int digits[] = {2, 2, 2, 3, 3, 4, 5, 7, 7, 8, 9, 10, 1, 6, 11, 11, 16, 12};
	return digits[(size_t)(draw(y) * (double)(sizeof digits / sizeof *digits))];
}

static void script(struct year *y, char *out, size_t size)
{
	int d = any_digit(y), scrub = draw(y) < 0.6 ? 1 : 5;
	int minutes = (int)exp(log(21) + 0.35 * normal(y));
	double how = draw(y);
	minutes = minutes < 5 ? 5 : minutes;
	int n = snprintf(out, size, "c1 b%d b2 g f b2 d%d w%d d%d c40 w6 c50 ", scrub, d, minutes, d);
	if (how < 0.07) /* the forceps are not there at first */
		snprintf(out + n, size - (size_t)n, "c41 c11 c60 c15 c60 c62 c10 b2 d%d b3", d);
	else
		snprintf(out + n, size - (size_t)n, "c41 f b2 d%d b3%s", d, draw(y) < 0.94 ? " s" : "");
}

/* Hands take some seconds from scan to scan; a few are in a hurry. */
static int play(struct year *y, int32_t room, const char *words)
{
	int32_t identity = y->h.next_identity++;
	int n = 0, hurry = draw(y) < 0.05;
	for (const char *w = words; w && n >= 0; w = strchr(w, ' ')) {
		w += *w == ' ';
		int64_t ms = (int64_t)(hurry ? 700 + 400 * draw(y) : 4000 + 14000 * draw(y));
		y->h.now.boot_ms += ms;
		y->h.now.wall_ms += ms;
		n = *w == 's' ? history_seen(&y->h) : history_word(&y->h, room, w, identity);
	}
	y->cases++;
	return n;
}

static void plan(struct year *y, int64_t day_ms, int32_t room, int slots)
{
	char day[11];
	clock_text_date(day_ms, 0, day);
	for (int i = 1; i <= slots; i++)
		fprintf(y->list, "%s,%d,%d,yes\n", day, (int)room, i);
}

static void go_to(struct year *y, int64_t wall_ms)
{
	int64_t ms = wall_ms - y->h.now.wall_ms;
	if (ms < 0)
		return;
	y->h.now.wall_ms += ms;
	y->h.now.boot_ms += ms;
}

/* A list of up to three in each theatre; now and then something is not scanned at all, and something unplanned is. */
static int play_day(struct year *y, int64_t day_ms)
{
	char words[200];
	int n = 0;
	for (int32_t room = 1; n >= 0 && room <= 2; room++) {
		int slots = (int)(draw(y) * 3.4), done = slots;
		plan(y, day_ms, room, slots);
		if (draw(y) < 0.06)
			done = 0;
		else if (draw(y) < 0.08)
			done++;
		for (int i = 0; n >= 0 && i < done; i++) {
			go_to(y, day_ms + (8 + 2 * i) * HOUR_MS + (int64_t)(draw(y) * 20 * 60000) +
			             room * 60000);
			script(y, words, sizeof words);
			n = play(y, room, words);
		}
	}
	return n;
}

static int set(struct history *h)
{
	struct event e[] = {
	    {.kind = EV_SETTING, .what = SETTING_SITE, .text = "BC"},
	    {.kind = EV_SETTING, .what = SETTING_SITE_NAME, .text = "An invented hospital"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 1, .n = 1, .text = "Theatre 1"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 2, .n = 1, .text = "Theatre 2"},
	    {.kind = EV_SETTING, .what = SETTING_FIRST_REMINDER, .n = h->st.policy.first_reminder_min},
	    {.kind = EV_SETTING, .what = SETTING_SEARCH, .other = 1, .text = "Say it aloud"},
	    {.kind = EV_SETTING, .what = SETTING_SEARCH, .other = 2, .text = "Count again"},
	    {.kind = EV_SETTING, .what = SETTING_SEARCH, .other = 3, .text = "Look at and feel the digit"},
	};
	for (size_t i = 0; i < sizeof e / sizeof *e; i++)
		e[i].at = h->now;
	return history_store(h, e, sizeof e / sizeof *e);
}

static int play_all(struct year *y)
{
	int n = set(&y->h);
	fputs("date,room,slot,digit\n", y->list);
	for (int week = 0; n >= 0 && week < WEEKS; week++)
		for (int day = 0; n >= 0 && day < 5; day++)
			n = play_day(y, FIRST_MONDAY_MS + (7 * week + day) * DAY_MS);
	return n < 0 ? n : history_flush(&y->h);
}

int main(int argc, char **argv)
{
	static struct year y;
	struct record *r = NULL;
	struct error e = {0};
	char file[4096];
	if (argc != 3) {
		fputs("half-year: FOLDER SEED\n", stderr);
		return 2;
	}
	snprintf(file, sizeof file, "%s/list.csv", argv[1]);
	y.random = (uint64_t)atoll(argv[2]);
	y.list = fopen(file, "we");
	int n = y.list ? record_open(&r, argv[1], &e) : -1;
	if (n == 0)
		n = history_init(&y.h, r, 1, 2000);
	if (n == 0)
		n = play_all(&y);
	if (n < 0)
		fprintf(stderr, "half-year: %s\n",
		        *y.h.error.text ? y.h.error.text
		        : *e.text       ? e.text
		                        : file);
	else
		printf("%d cases of half a year that never was\n", y.cases);
	history_deinit(&y.h);
	record_close(r);
	if (y.list)
		fclose(y.list);
	return n < 0;
}
