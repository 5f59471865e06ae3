/* Scans that a scanner had stored: from their bytes to what is held, and from what is held to entries. */
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "decide/stored-enter.h"
#include "run/core-internal.h"
#include "run/known.h"
#include "run/practice.h"

static struct moment made_at(struct moment now, int64_t made_ms)
{
	int64_t age = made_ms > 0 && made_ms < now.boot_ms ? now.boot_ms - made_ms : 0;
	now.boot_ms -= age;
	now.wall_ms -= age;
	return now;
}

static int moves_scanner(const struct input *in)
{
	return in->act == ACT_CARD && (in->card == CARD_THIS_ROOM || in->card == CARD_SPARE_SCANNER);
}

static void hold(struct core *c, const char *scanner, int32_t room, const struct input *list, int n, int lost)
{
	struct input in = {
	    .act = ACT_STORED, .at = core_now(c), .room = room, .stored = list, .n_stored = n, .lost = lost};
	snprintf(in.scanner, sizeof in.scanner, "%s", scanner);
	if (n || lost)
		core_carry_out(c, &in, NULL);
}

/* Nothing there is timed, and each label counts once however it came. */
static void at_bench(struct core *c, const struct scan *scans, int n, int32_t room)
{
	for (int i = 0; i < n; i++) {
		struct input in = {.at = core_now(c), .flags = scans[i].flags, .room = room};
		snprintf(in.scanner, sizeof in.scanner, "%s", scans[i].scanner);
		core_read(c, &scans[i], &in);
		bench_read(c, &scans[i], &in);
		core_carry_out(c, &in, NULL);
	}
}

/* A card that says where the scanner works is no entry of a case: what comes behind it belongs to its room. */
static void hold_all(struct core *c, const struct scan *scans, int n, int lost)
{
	static struct input list[STORED_MAX]; /* some 30 kB; one thread */
	struct moment now = core_now(c);
	int32_t room = core_room_of(c, &scans[0], now);
	if (core_is_bench(c, room)) {
		at_bench(c, scans, n, room);
		return;
	}
	int kept = 0;
	for (int i = 0; i < n && i < STORED_MAX; i++) {
		struct input in = {.at = made_at(now, scans[i].made_ms), .room = room};
		snprintf(in.scanner, sizeof in.scanner, "%s", scans[i].scanner);
		if (core_read(c, &scans[i], &in) == HALVES_JOINED && kept && list[kept - 1].act == ACT_HALF)
			kept--;
		list[kept++] = in;
		if (!moves_scanner(&in))
			continue;
		hold(c, in.scanner, room, list, kept - 1, 0);
		in.flags = EVENT_LATE;
		core_carry_out(c, &in, NULL);
		room = core_room_of(c, &scans[i], now);
		kept = 0;
	}
	hold(c, scans[0].scanner, room, list, kept, lost);
}

/* All of the practice set, or nothing of it is practised. */
void core_stored(struct core *c, const struct scan *scans, int n, int lost)
{
	struct scan here[STORED_MAX];
	struct moment now = core_now(c);
	for (int i = 0; i < n && i < STORED_MAX; i++) {
		here[i] = scans[i];
		here[i].room = core_room_of(c, &scans[i], now);
	}
	struct core *practice = lost ? NULL : practice_takes(c, here, n < STORED_MAX ? n : STORED_MAX);
	hold_all(practice ? practice : c, practice ? here : scans, n, lost);
}

void core_ask_stored(struct core *c)
{
	int32_t asked = 0;
	for (int i = 0; i < c->station.n_held; i++) {
		struct input in = {.act = ACT_STORED, .at = core_now(c), .room = c->station.held[i].room};
		if (in.room != asked && station_room(&c->station, in.room))
			core_carry_out(c, &in, NULL);
		asked = in.room;
	}
}

/* What was entered, and of the first that was refused why. */
struct entered {
	int done, refused;
	struct reply why;
};

static void add_all(struct reply *r, const struct reply *more)
{
	for (int i = 0; i < more->n_parts; i++) {
		struct say part = said_say(&more->parts[i]);
		if (more->listed[i])
			reply_list(r, &part);
		else
			reply_add(r, &part);
	}
}

/* Of the last one its question is told; of what was refused, why. */
static void tell_all(struct reply *r, struct entered *e)
{
	int asks = r->verdict == VERDICT_QUESTION;
	if (!e->refused) {
		e->why = *r;
		reply_say(r, r->verdict, SAY(R_STORED_ENTERED, .n = e->done));
	} else {
		reply_say(r, VERDICT_REFUSED, SAY(R_STORED_SOME, .n = e->done, .all = e->done + e->refused));
	}
	if (e->refused || asks)
		add_all(r, &e->why);
}

void core_enter_stored(struct core *c, int32_t room, int n)
{
	static struct entered e; /* some 20 kB; one thread */
	struct input in;
	int stored = 1;
	e.done = e.refused = 0;
	while (n-- > 0 && stored && stored_input(&c->station, room, core_now(c), &in)) {
		in.more = n > 0;
		known_ask(c, &in);
		const struct reply *r = core_carry_out(c, &in, &stored);
		e.done += r->verdict != VERDICT_REFUSED;
		if (r->verdict == VERDICT_REFUSED && !e.refused++)
			e.why = *r;
	}
	if (stored)
		tell_all(&c->outcome.reply, &e);
}
