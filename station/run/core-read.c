/* From bytes to an input: what the code says, joined to the half of its pack that waits, and what the record knows of it. */
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "count/wall.h"
#include "decide/input.h"
#include "run/core-internal.h"
#include "run/known.h"

int32_t core_room_of(const struct core *c, const struct scan *s, struct moment now)
{
	return c->station.practice ? s->room : station_scanner_room(&c->station, s->scanner, s->room, now);
}

static void tell_forgotten(struct core *c, const struct half *half)
{
	if (half->scanner[0])
		core_tell(c, half->room, VERDICT_REFUSED, SAY(R_HALF_FORGOTTEN, .scanner = half->scanner));
}

/* A compact JWS (RFC 7515), as stands on a slip: three parts of base64url, the first a JSON object. */
static int is_signed(const struct scan *s)
{
	int dots = 0;
	if (s->size < 3 || memcmp(s->data, "eyJ", 3) != 0)
		return 0;
	for (size_t i = 0; i < s->size; i++) {
		char c = s->data[i];
		dots += c == '.';
		if (!(c == '.' || c == '-' || c == '_' || (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') ||
		      (c >= 'a' && c <= 'z')))
			return 0;
	}
	return dots == 2;
}

enum halves_join core_read(struct core *c, const struct scan *s, struct input *in)
{
	static struct half forgotten; /* a kilobyte; one thread */
	struct code code;
	struct code_fault fault;
	struct batch batch;
	if (is_signed(s)) {
		in->act = ACT_SIGNED;
		if (station_room_is(&c->station, in->room, ROOM_OF_AUDIT))
			known_ask_signed(c, s, in);
		return HALVES_WHOLE;
	}
	int32_t today = clock_date_number(wall_latest_ms(&c->station, in->at), in->at.utc_min);
	if (code_read(&code, s->aim, s->data, s->size, today, &fault) < 0) {
		input_from_fault(in, &fault);
		return HALVES_WHOLE;
	}
	enum halves_join joined = halves_take(&c->halves, s->scanner, in->room, &code, in->at, &forgotten);
	tell_forgotten(c, &forgotten);
	if (joined == HALVES_WAITS) {
		in->act = ACT_HALF;
		snprintf(in->text, sizeof in->text, "%s", code.wants);
		return joined;
	}
	int has_batch = known_batch(c, &code, &batch, in);
	input_from_code(in, &c->station, &code, has_batch ? &batch : NULL);
	known_ask(c, in);
	return joined;
}
