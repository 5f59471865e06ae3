#include "run/machine.h"

#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"

enum { UPDATE_WAITS = 1, RESTART_WAITS = 2 };

static int is_there(const char *file)
{
	return access(file, F_OK) == 0;
}

/* One for each case that is open, suspended ones too. How many. */
static int of_each_case(const struct core *c, enum away what, struct event out[SHEETS_MAX])
{
	int n = 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &c->station.sheets[i];
		if (s->case_no)
			out[n++] = (struct event){
			    .kind = EV_AWAY, .case_no = s->case_no, .room = s->room, .what = (uint8_t)what};
	}
	return n;
}

int machine_stops(struct core *c)
{
	static struct event events[SHEETS_MAX];
	int forced = is_there(MACHINE_ANYWAY);
	int n = of_each_case(c, forced ? AWAY_FORCED : AWAY_STOPPED, events);
	if (!n)
		return 0;
	log_line("stopped in the middle of %d open case%s%s", n, n > 1 ? "s" : "",
	         forced ? ": forced, for " MACHINE_ANYWAY " is there" : "");
	c->doubt.stopped = 1;
	core_store(c, events, n, NULL);
	return 1;
}

/* Which events told of stops and starts last. */
struct comings {
	int64_t stopped, started, started_before;
};

static int take_coming(void *comings, const struct event *e)
{
	struct comings *x = comings;
	if (e->kind == EV_STOPPED) {
		x->stopped = e->seq;
	} else {
		x->started_before = x->started;
		x->started = e->seq;
	}
	return 0;
}

static int was_stopped(const struct core *c)
{
	struct comings x = {0};
	return record_each_station(c->record, EV_STARTED, take_coming, &x, NULL) == 0 &&
	       record_each_station(c->record, EV_STOPPED, take_coming, &x, NULL) == 0 &&
	       x.stopped > x.started_before;
}

static int take_heard(void *heard, const struct event *e)
{
	if (e->kind != EV_STARTED)
		*(struct moment *)heard = e->at;
	return 0;
}

static void tell_was_away(struct core *c, const struct event *back, struct moment heard)
{
	core_tell(c, back->room, VERDICT_QUESTION,
	          SAY(R_WAS_AWAY, .from = clock_minute_of_day(heard.wall_ms, heard.utc_min),
	              .to = clock_minute_of_day(back->at.wall_ms, back->at.utc_min)));
}

void machine_is_back(struct core *c)
{
	static struct event events[SHEETS_MAX];
	struct moment heard[SHEETS_MAX] = {0};
	int n = of_each_case(c, AWAY_BACK, events);
	if (!n)
		return;
	enum away what = was_stopped(c) ? AWAY_BACK : AWAY_UNSTOPPED;
	for (int i = 0; i < n; i++) {
		events[i].what = (uint8_t)what;
		record_each(c->record, events[i].case_no, take_heard, &heard[i], NULL);
	}
	core_store(c, events, n, NULL);
	for (int i = 0; i < n; i++)
		tell_was_away(c, &events[i], heard[i]);
}

void machine_look(struct core *c)
{
	unsigned now = 0;
	for (int i = 0; i < SHEETS_MAX && !now; i++)
		if (c->station.sheets[i].case_no)
			now = (is_there(MACHINE_UPDATE) ? UPDATE_WAITS : 0u) |
			      (is_there(MACHINE_RESTART) ? RESTART_WAITS : 0u);
	c->changes += now != c->waits;
	c->waits = now;
}

const enum saying *machine_waits(const struct core *c)
{
	static const enum saying waits[][3] = {
	    [UPDATE_WAITS] = {SAY_WAITS_UPDATE},
	    [RESTART_WAITS] = {SAY_WAITS_RESTART},
	    [UPDATE_WAITS | RESTART_WAITS] = {SAY_WAITS_UPDATE, SAY_WAITS_RESTART}};
	return waits[c->waits];
}
