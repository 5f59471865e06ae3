#include "decide/reads.h"

#include <stdio.h>
#include <string.h>

/* What two reads of one code have in common; "" where the code is never entered. */
static void key_of(const struct input *in, char out[READ_KEY_MAX])
{
	out[0] = 0;
	switch (in->act) {
	case ACT_CARD:
		snprintf(out, READ_KEY_MAX, "card %d %d", (int)in->card_room, in->card);
		return;
	case ACT_DIGIT:
		snprintf(out, READ_KEY_MAX, "digit %d %d", (int)in->card_room, in->digit);
		return;
	case ACT_BADGE:
		snprintf(out, READ_KEY_MAX, "badge %d", (int)in->number);
		return;
	case ACT_CASE_LABEL:
		snprintf(out, READ_KEY_MAX, "case %d", (int)in->number);
		return;
	case ACT_PAPER_SHEET:
		snprintf(out, READ_KEY_MAX, "paper %d %d", (int)in->card_room, (int)in->number);
		return;
	case ACT_SLIP:
		snprintf(out, READ_KEY_MAX, "slip %d %d", (int)in->number, (int)in->copy);
		return;
	case ACT_THING:
	case ACT_TRAY:
		snprintf(out, READ_KEY_MAX, "%s/%s/%s", in->thing.line, in->thing.lot, in->thing.identity);
		return;
	case ACT_TICK:
	case ACT_SIGNED:
	case ACT_UNKNOWN:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_TYPED:
	case ACT_HALF:
	case ACT_STORED:
		return;
	}
}

static int is_by(const struct read *r, const struct input *in)
{
	return r->room == in->room && strcmp(r->scanner, in->scanner) == 0;
}

/* The last code that this scanner entered in this room. */
static int is_latest(const struct reads *r, const struct read *of, const struct input *in)
{
	for (int i = 0; i < READS_MAX; i++)
		if (r->list[i].key[0] && is_by(&r->list[i], in) && r->list[i].order > of->order)
			return 0;
	return 1;
}

/* The last code that was entered in this room. */
static int is_last_of_room(const struct reads *r, const struct read *of)
{
	for (int i = 0; i < READS_MAX; i++)
		if (r->list[i].key[0] && r->list[i].room == of->room && r->list[i].order > of->order)
			return 0;
	return 1;
}

/* A thing of an ended case that was answered for a moment ago is not counted in here by a second read, however late, and
 * the mark that counted an instrument in does not account for it. */
static int is_same_thing_still(const struct reads *r, const struct read *k, const struct input *in)
{
	return in->act == ACT_THING && in->thing.identity[0] &&
	       (in->known.used_in || in->thing.identity_kind == IDENTITY_MARK) && is_last_of_room(r, k);
}

void reads_look(const struct reads *r, struct input *in, int32_t repeat_ms)
{
	char key[READ_KEY_MAX];
	key_of(in, key);
	in->repeated = REPEATED_NOT;
	if (in->flags & EVENT_KEYED) /* no scanner stutters on a keyboard */
		return;
	for (int i = 0; key[0] && i < READS_MAX; i++) {
		const struct read *k = &r->list[i];
		if (in->held && in->act == ACT_CARD && k->room == in->room && strcmp(k->key, key) == 0 &&
		    moment_between_ms(in->at, k->at) > 0)
			in->repeated = REPEATED_NOW; /* it was scanned again since */
		else if (!in->held && k->room == in->room && strcmp(k->key, key) == 0) {
			if (moment_between_ms(k->at, in->at) < repeat_ms &&
			    (!is_by(k, in) || is_latest(r, k, in)))
				in->repeated = REPEATED_NOW;
			else if (!in->repeated && is_same_thing_still(r, k, in))
				in->repeated = REPEATED_STILL;
		}
	}
}

/* Where this read is noted: over the same one, or the oldest. */
static struct read *place_for(struct reads *r, const struct input *in, const char *key)
{
	struct read *oldest = &r->list[0];
	for (int i = 0; i < READS_MAX; i++) {
		struct read *k = &r->list[i];
		if (!k->key[0] || (is_by(k, in) && strcmp(k->key, key) == 0))
			return k;
		if (k->order < oldest->order)
			oldest = k;
	}
	return oldest;
}

void reads_note(struct reads *r, const struct input *in, enum verdict verdict)
{
	char key[READ_KEY_MAX];
	key_of(in, key);
	if (!key[0] || in->held || verdict == VERDICT_REFUSED)
		return;
	struct read *k = place_for(r, in, key);
	k->room = in->room;
	k->at = in->at;
	k->order = ++r->reads;
	memcpy(k->key, key, sizeof key);
	snprintf(k->scanner, sizeof k->scanner, "%s", in->scanner);
}
