#include "run/known.h"

#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "decide/slip-read.h"

static void could_not_ask(struct input *in, int n)
{
	in->known.unasked = 1;
	log_line("the record could not be asked about a code: %s", strerror(-n));
}

/* Where the record does not know the paper the key does, if it was printed here: the record is an older one. */
static int look_up_slip(struct core *c, struct input *in, int32_t number, int32_t copy)
{
	int n = record_slip_of(c->record, number, copy, &in->known.slip, &in->known.paper);
	if (n < 0 || in->act != ACT_SLIP)
		return n;
	in->known.slip_case = in->known.slip.case_no;
	in->known.slip_room = in->known.slip.room;
	in->known.newer = !in->known.paper.queued && in->proof &&
	                  in->proof == slip_proof(c->seal, c->station.site, c->station.number, number, copy);
	return n;
}

/* YES to a slip that was read in another room. Records of format 1 do not say which copy it was: the last. */
static int look_up_asked(struct core *c, struct input *in, int room_index)
{
	int32_t number = c->station.idle_n[room_index], copy = c->station.idle_copy[room_index];
	int n = look_up_slip(c, in, number, copy);
	return n == 1 && !copy ? look_up_slip(c, in, number, in->known.slip.copy) : n;
}

/* What is typed comes from people, whatever name they give. */
static const char *guesser_of(const struct input *in)
{
	return in->flags & EVENT_KEYED ? "keyed" : in->scanner;
}

static void look_at_guesses(struct core *c, struct input *in)
{
	struct event e = {.kind = EV_SCANNER_FAULT, .room = in->room};
	if (in->held) /* it was looked at when it came */
		return;
	in->known.unanswered = guesses_silent(&c->guesses, guesser_of(in), core_now(c)) != 0;
	if (in->known.unanswered || in->known.newer || in->known.unasked ||
	    paper_is_ours(&in->known.paper, in->proof))
		return;
	if (guesses_note(&c->guesses, guesser_of(in), core_now(c)) == GUESS_NOTED)
		return;
	const struct say *say = SAY(SLIP_CODES_TRIED, .scanner = guesser_of(in));
	char words[SAID_MAX];
	say_sentence(say, words, sizeof words);
	said_keep(&e.said, say);
	log_line("%s", words);
	core_store(c, &e, 1, NULL);
}

void known_ask(struct core *c, struct input *in)
{
	int n = 0, i = core_room_index(c, in->room);
	if (in->act == ACT_THING || in->act == ACT_TRAY)
		n = record_item_used(c->record, in->thing.identity, &in->known.used_in, &in->known.used_back);
	if (in->act == ACT_SLIP)
		n = look_up_slip(c, in, in->number, in->copy);
	if (in->act == ACT_CARD && i >= 0 && c->station.idle_asked[i] == Q_SLIP_HERE)
		n = look_up_asked(c, in, i);
	if (n < 0)
		could_not_ask(in, n);
	if (in->act == ACT_SLIP)
		look_at_guesses(c, in);
}

int known_batch(struct core *c, const struct code *code, struct batch *batch, struct input *in)
{
	if (code->kind != CODE_OWN || code->own.kind != OWN_ITEM || code->own.station != c->station.number)
		return 0;
	int n = record_batch_of(c->record, code->own.number, batch);
	if (n < 0)
		could_not_ask(in, n);
	return n == RECORD_FOUND;
}
