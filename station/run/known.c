#include "run/known.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "decide/slip-read.h"
#include "record/elsewhere.h"
#include "record/slip-check.h"
#include "run/aside.h"

/* What the count asks for at each scan it must be able to read. */
static void could_not_ask(const struct core *c, struct input *in, int n)
{
	in->known.unasked = 1;
	if (n == -EUCLEAN)
		aside_want(c->folder);
	log_warn(LOG_RECORD, "the record could not be asked about a code: %s", strerror(-n));
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
	log_warn(LOG_GUESSES, "%s", words);
	core_store(c, &e, 1, NULL);
}

/* What is not to be had of it holds nobody up: the store finds an item in two cases all the same. */
static void ask_elsewhere(struct core *c, struct input *in)
{
	struct elsewhere_use use;
	int n = elsewhere_find(c->elsewhere, in->thing.identity, &use);
	if (n < 0)
		log_warn_errno(LOG_LISTS, n, "what the hospital said of a used item cannot be read");
	if (n != RECORD_FOUND)
		return;
	in->known.elsewhere = use.case_no;
	in->known.elsewhere_station = use.station;
}

void known_ask(struct core *c, struct input *in)
{
	in->known.lists_old = c->lists_say != SAY_NONE;
	int n = 0, i = core_room_index(c, in->room);
	if (in->act == ACT_THING || in->act == ACT_TRAY) {
		n = record_item_used(c->record, in->thing.identity, &in->known.used_in, &in->known.used_back);
		ask_elsewhere(c, in);
	}
	if (in->act == ACT_SLIP)
		n = look_up_slip(c, in, in->number, in->copy);
	if (in->act == ACT_CARD && i >= 0 && c->station.idle_asked[i] == Q_SLIP_HERE)
		n = look_up_asked(c, in, i);
	if (n < 0)
		could_not_ask(c, in, n);
	if (in->act == ACT_SLIP)
		look_at_guesses(c, in);
}

static int is_held(struct core *c, const char *jws, struct input *in)
{
	static struct keys keys; /* some kilobytes; one thread */
	char file[sizeof c->folder + sizeof KEYS_FILE + 1], words[SLIP_CHECK_WORDS] = "";
	struct error e = {0};
	_cleanup_(json_drop) json_t *payload = NULL;
	snprintf(file, sizeof file, "%s/" KEYS_FILE, c->folder);
	int n =
	    keys_read(&keys, file, &e) < 0 ? -EIO : slip_check(c->record, &keys, jws, words, &payload, &e);
	if (n < 0 || n == SLIP_OTHER) /* people at the desk hear that it is so, who looks into it why */
		log_warn(LOG_RECORD, "a slip was read at a desk: %s", n < 0 ? e.text : words);
	in->known.slip.number = (int32_t)json_number(payload, "slip", 0);
	in->known.paper.copy = (int32_t)json_number(payload, "copy", 0);
	in->known.slip_case = (int32_t)json_number(payload, "case", 0);
	return n;
}

void known_ask_signed(struct core *c, const struct scan *s, struct input *in)
{
	static char jws[CODE_BYTES_MAX + 1];
	if (s->size >= sizeof jws || memchr(s->data, 0, s->size)) {
		in->known.signature = SIGNATURE_OF_NOBODY;
		return;
	}
	memcpy(jws, s->data, s->size);
	jws[s->size] = 0;
	int n = is_held(c, jws, in);
	in->known.signature = n == SLIP_HELD    ? SIGNATURE_HELD
	                      : n == SLIP_OTHER ? SIGNATURE_OTHER
	                                        : SIGNATURE_OF_NOBODY;
	in->known.unasked = n < 0 && n != -EINVAL;
}

int known_batch(struct core *c, const struct code *code, struct batch *batch, struct input *in)
{
	if (code->kind != CODE_OWN || code->own.kind != OWN_ITEM ||
	    strcmp(code->own.site, c->station.site) != 0)
		return 0;
	int n = code->own.station == c->station.number
	            ? record_batch_of(c->record, code->own.number, batch)
	            : record_batch_of_station(c->record, code->own.station, code->own.number, batch);
	if (n < 0)
		could_not_ask(c, in, n);
	return n == RECORD_FOUND;
}
