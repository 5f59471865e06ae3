#include "decide/stored-enter.h"

#include <string.h>

#include "decide/answer.h"
#include "decide/digit-clock.h"
#include "decide/phrases.h"
#include "decide/stored-list.h"

/* When it was made, on the clock of the present boot, so that a clock that starts there runs. Through a power cut
 * only the wall clock knows (rule 14). */
static struct moment in_this_boot(struct moment made, struct moment now)
{
	int64_t ago = now.wall_ms - made.wall_ms;
	if (made.boot == now.boot)
		return made;
	made.boot = now.boot;
	made.boot_ms = now.boot_ms - (ago > 0 ? ago : 0);
	return made;
}

static void thing_of(const struct station *st, const struct held *h, struct input *in)
{
	in->thing = h->thing;
	in->line = h->thing.line[0] ? catalogue_by_key(&st->catalogue, h->thing.line) : NULL;
	for (int i = 0; in->line && i < LINE_CONTENTS_MAX && in->line->contents[i].key[0]; i++)
		in->parts[i] = catalogue_by_key(&st->catalogue, in->line->contents[i].key);
}

bool stored_input(const struct station *st, int32_t room, struct moment now, struct input *in)
{
	static const enum act acts[] = {ACT_TICK,       ACT_CARD, ACT_DIGIT, ACT_BADGE,
	                                ACT_CASE_LABEL, ACT_SLIP, ACT_THING, ACT_TRAY};
	struct held list[HELD_ROOM_MAX];
	int n = stored_list(st, room, NULL, list);
	const struct held *h = &list[0];
	memset(in, 0, sizeof *in);
	if (!n)
		return false;
	in->act = acts[h->kind];
	in->at = h->kind == HELD_DIGIT ? in_this_boot(h->made, now) : h->made;
	in->room = room;
	in->flags = EVENT_LATE;
	in->held = h->seq;
	in->outlived = h->outlived;
	in->card = in->number = h->n;
	in->copy = in->card_room = h->other;
	in->proof = h->proof;
	in->digit = h->digit;
	memcpy(in->scanner, h->scanner, sizeof in->scanner);
	thing_of(st, h, in);
	return true;
}

/* A card that was made before the tourniquet came off, or before the final count, is no look at a bare digit. */
static int before_off(const struct turn *t, const struct digit *d)
{
	return d->state == DIGIT_OFF &&
	       (moment_between_ms(t->in->at, d->since) > 0 ||
	        (t->s->final == FINAL_AGREED && moment_between_ms(t->in->at, t->s->final_at) > 0));
}

/* Its clock was started as 'on?' when it came; had it come at its time, the count agreed, it would be on. */
enum answered stored_start(struct turn *t)
{
	int digit = t->in->digit;
	const struct digit *d = turn_has_case(t) ? sheet_digit_const(t->s, digit) : NULL;
	if (!t->in->held || !d || answer_is_digit(t))
		return ANSWERED_NOT;
	if (d->state == DIGIT_MAYBE_ON && (t->s->initial_agreed || (t->s->single && t->s->n_items))) {
		turn_pay(t, DEBT_ON, 0, digit, PAID_WAS_ON);
		digit_start_on(t, digit);
		return ANSWERED;
	}
	if (!before_off(t, d))
		return ANSWERED_NOT;
	/* What goes on again after an OFF goes on no earlier than that; behind a power cut the OFF's own time is not known
	 * any more, and the card's counts. */
	int bounded = t->in->at.boot_ms >= 0 && moment_between_ms(t->in->at, d->since) > 0;
	digit_doubt_on(t, digit, bounded ? d->since : t->in->at);
	turn_ask_saying(t, (struct asked){.what = Q_IS_ON, .digit = (uint8_t)digit, .n = 1},
	                SAY(R_SCANNED_BEFORE, .digit = digit, .time = moment_minute_of_day(t->in->at)));
	return ANSWERED;
}

/* The digit whose tourniquet this turn takes off before it went on; 0 none. */
static int off_before_on(const struct turn *t)
{
	for (int i = 0; t->index >= 0 && i < t->out->count; i++) {
		const struct event *e = &t->out->events[i];
		const struct digit *d = sheet_digit_const(&t->station->sheets[t->index], e->digit);
		if ((e->kind != EV_ITEM_OFF && e->kind != EV_DIGIT_OFF) || !d || !digit_is_on(d))
			continue;
		if (d->since.boot == t->in->at.boot ? digit_stretch_ms(d, t->in->at) < 0
		                                    : t->in->at.wall_ms < d->on_wall_ms)
			return e->digit;
	}
	return 0;
}

void stored_entered(struct turn *t)
{
	int digit = off_before_on(t);
	if (digit) {
		t->out->count = 0;
		*t->s = t->station->sheets[t->index];
		turn_refuse(t, SAY(OFF_BEFORE_ON, .time = moment_minute_of_day(t->in->at), .digit = digit));
	}
	turn_emit_for_room(
	    t, (struct event){.kind = EV_HELD_ANSWERED, .ref = t->in->held, .what = HELD_ENTERED});
}
