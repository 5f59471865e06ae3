/* A start and a scan from beginning to end: what is held is entered or asked about as well, and an open case is told. */
#include <stdio.h>
#include <string.h>

#include "run/core-internal.h"
#include "run/machine.h"
#include "run/practice.h"

int core_open(struct core *c, const char *folder, struct error *e)
{
	return core_open_noting(c, folder, NULL, e);
}

int core_open_noting(struct core *c, const char *folder, const char *head, struct error *e)
{
	int n = core_start(c, folder, head, e);
	if (n == 0) {
		practice_clear(c);
		machine_is_back(c);
		core_ask_stored(c);
	}
	return n;
}

static const struct reply *take(struct core *c, const struct scan *s)
{
	struct input in = {.at = core_now(c), .flags = s->flags};
	snprintf(in.scanner, sizeof in.scanner, "%s", s->scanner);
	in.room = core_room_of(c, s, in.at);
	core_read(c, s, &in);
	bench_read(c, s, &in);
	core_carry_out(c, &in, NULL);
	if (c->outcome.enter)
		core_enter_stored(c, in.room, c->outcome.enter);
	return &c->outcome.reply;
}

const struct reply *core_scan(struct core *c, const struct scan *s)
{
	struct scan here = *s;
	here.room = core_room_of(c, s, core_now(c));
	struct core *practice = practice_takes(c, &here, 1);
	return practice ? take(practice, &here) : take(c, s);
}

const struct reply *core_typed(struct core *c, int32_t room, const char *text)
{
	struct core *practice = practice_in(c, room);
	struct input in = {.act = ACT_TYPED, .room = room, .flags = EVENT_KEYED};
	snprintf(in.text, sizeof in.text, "%s", text);
	c->changes += practice != NULL;
	c = practice ? practice : c;
	in.at = core_now(c);
	return core_carry_out(c, &in, NULL);
}
