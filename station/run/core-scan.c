/* A start and a scan from beginning to end: what is held is entered or asked about as well. */
#include <stdio.h>
#include <string.h>

#include "run/core-internal.h"

int core_open(struct core *c, const char *folder, struct error *e)
{
	return core_open_noting(c, folder, NULL, e);
}

int core_open_noting(struct core *c, const char *folder, const char *head, struct error *e)
{
	int n = core_start(c, folder, head, e);
	if (n == 0)
		core_ask_stored(c);
	return n;
}

const struct reply *core_scan(struct core *c, const struct scan *s)
{
	struct input in = {.at = core_now(c), .flags = s->flags};
	snprintf(in.scanner, sizeof in.scanner, "%s", s->scanner);
	in.room = station_scanner_room(&c->station, s->scanner, s->room, in.at);
	core_read(c, s, &in);
	bench_read(c, s, &in);
	core_carry_out(c, &in, NULL);
	if (c->outcome.enter)
		core_enter_stored(c, in.room, c->outcome.enter);
	return &c->outcome.reply;
}
