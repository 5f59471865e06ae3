/* A start and a scan from beginning to end: what is held is entered or asked about as well. */
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "count/wall.h"
#include "run/core-internal.h"
#include "run/known.h"

int core_open(struct core *c, const char *folder, struct error *e)
{
	return core_open_noting(c, folder, NULL, e);
}

int core_open_noting(struct core *c, const char *folder, const char *head, struct error *e)
{
	int n = core_start(c, folder, head, e);
	if (n == 0)
		core_ask_held(c);
	return n;
}

static void tell_forgotten(struct core *c, const struct half *half)
{
	char said[SAID_MAX];
	if (!half->scanner[0])
		return;
	snprintf(
	    said, sizeof said,
	    "NOT ENTERED: the first of two codes that scanner %s read is forgotten, too many others wait "
	    "for their second: scan both again.",
	    half->scanner);
	core_tell(c, half->room, VERDICT_REFUSED, said);
}

int core_read(struct core *c, const struct scan *s, struct input *in)
{
	static struct half forgotten; /* a kilobyte; one thread */
	struct code code;
	struct code_fault fault;
	struct batch batch;
	int32_t today = clock_date_number(wall_latest_ms(&c->station, in->at), in->at.utc_min);
	if (code_read(&code, s->aim, s->data, s->size, today, &fault) < 0) {
		input_from_fault(in, &fault);
		return 0;
	}
	enum halves_join joined = halves_take(&c->halves, s->scanner, in->room, &code, in->at, &forgotten);
	tell_forgotten(c, &forgotten);
	if (joined == HALVES_WAITS) {
		in->act = ACT_HALF;
		snprintf(in->text, sizeof in->text, "%s", code.wants);
		return 0;
	}
	int has_batch = known_batch(c, &code, &batch, in);
	input_from_code(in, &c->station, &code, has_batch ? &batch : NULL);
	known_ask(c, in);
	return joined == HALVES_JOINED;
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
		core_enter_held(c, in.room, c->outcome.enter);
	return &c->outcome.reply;
}
