#include "tests/unit/record/history.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/buf.h"
#include "code/own-codes.h"
#include "decide/next.h"
#include "record/event-json.h"
#include "record/event-text.h"

static uint32_t any(struct history *h, uint32_t below)
{
	h->random ^= h->random << 13;
	h->random ^= h->random >> 7;
	h->random ^= h->random << 17;
	return (uint32_t)(h->random >> 11) % below;
}

static int apply_all(struct history *h, const struct event *events, int count)
{
	for (int i = 0; i < count; i++) {
		int n = station_apply(&h->st, &events[i]);
		if (n < 0)
			return error_set(&h->error, n, "event %lld (%s) does not apply",
			                 (long long)events[i].seq, event_name(events[i].kind));
	}
	return 0;
}

void history_scrub(struct moment *m)
{
	struct moment as_it_is = *m;
	memset(m, 0, sizeof *m);
	m->boot_ms = as_it_is.boot_ms;
	m->wall_ms = as_it_is.wall_ms;
	m->boot = as_it_is.boot;
	m->utc_min = as_it_is.utc_min;
}

struct sheet history_scrubbed(const struct sheet *s)
{
	struct sheet out = *s;
	memset(&out.asked, 0, sizeof out.asked);
	out.asked.what = s->asked.what;
	out.asked.item = s->asked.item;
	out.asked.digit = s->asked.digit;
	out.asked.person = s->asked.person;
	out.asked.n = s->asked.n;
	out.asked.at = s->asked.at;
	history_scrub(&out.asked.at);
	history_scrub(&out.final_at);
	for (int i = 0; i < DIGITS_MAX; i++)
		history_scrub(&out.digits[i].since);
	return out;
}

/* What a kind does not name is not kept, and would be missing after a restart. */
static int has_more_than_its_kind(const struct event *e)
{
	uint32_t f = event_fields(e->kind);
	return (e->item && !(f & F_ITEM)) || (e->digit && !(f & F_DIGIT)) || (e->person && !(f & F_PERSON)) ||
	       (e->other && !(f & F_OTHER)) || (e->n && !(f & F_N)) || (e->what && !(f & F_WHAT)) ||
	       (e->ref && !(f & F_REF)) || (e->proof && !(f & F_PROOF)) || (e->text[0] && !(f & F_TEXT));
}

static int keeps_in(struct history *h, struct event e, int format)
{
	_cleanup_(buf_free) struct buf text = {0}, again = {0};
	struct event back;
	e.format = (uint8_t)format;
	int n = event_write(&e, &text);
	if (n == 0)
		n = event_read(&back, text.data, text.size, &h->error);
	if (n == 0)
		n = event_write(&back, &again);
	if (n == 0 &&
	    (has_more_than_its_kind(&e) || back.format != format || strcmp(text.data, again.data) != 0))
		n = error_set(&h->error, -EINVAL, "the record does not keep the whole of %s", text.data);
	return n;
}

static int keeps_whole(struct history *h, const struct event *e)
{
	int n = 0;
	for (int format = 1; n == 0 && format <= FORMAT_VERSION; format++)
		n = keeps_in(h, *e, format);
	return n;
}

int history_flush(struct history *h)
{
	int n = record_append(h->record, h->pending, h->n_pending, &h->error);
	h->n_pending = 0;
	return n;
}

int history_store(struct history *h, struct event *events, int count)
{
	for (int i = 0; i < count; i++)
		if (!events[i].at.boot)
			events[i].at = h->now;
	if (!h->batch) {
		int n = record_append(h->record, events, count, &h->error);
		for (int i = 0; n == 0 && i < count; i++)
			n = keeps_whole(h, &events[i]);
		return n < 0 ? n : apply_all(h, events, count);
	}
	if (h->n_pending + count > HISTORY_PENDING || h->n_pending >= h->batch) {
		int n = history_flush(h);
		if (n < 0)
			return n;
	}
	for (int i = 0; i < count; i++) {
		events[i].seq = record_last(h->record, NULL) + h->n_pending + 1;
		h->pending[h->n_pending++] = events[i];
	}
	return apply_all(h, events, count);
}

int history_take(struct history *h, struct input *in)
{
	in->at = h->now;
	snprintf(in->scanner, sizeof in->scanner, "hand-%d", (int)in->room);
	if (!h->batch && in->thing.identity[0])
		record_item_used(h->record, in->thing.identity, &in->known.used_in, &in->known.used_back);
	if (!h->batch && in->act == ACT_SLIP)
		if (record_slip_of(h->record, in->number, in->copy, &in->known.slip, &in->known.paper) == 1) {
			in->known.slip_case = in->known.slip.case_no;
			in->known.slip_room = in->known.slip.room;
		}
	decide(&h->st, in, &h->out);
	return history_store(h, h->out.events, h->out.count);
}

static int set_up_lines(struct history *h)
{
	char path[512], text[8192];
	const char *source = getenv("BANDTALLY_SOURCE");
	snprintf(path, sizeof path, "%s/tests/replay/catalogue.csv", source ? source : ".");
	FILE *f = fopen(path, "re");
	if (!f)
		return error_set(&h->error, -errno, "cannot read %s: set BANDTALLY_SOURCE", path);
	size_t size = fread(text, 1, sizeof text, f), count = 0;
	fclose(f);
	struct line *lines = NULL;
	int n = catalogue_read_csv(text, size, &lines, &count, &h->error);
	for (size_t i = 0; n == 0 && i < count; i++)
		n = history_store(h, &(struct event){.kind = EV_LINE_SET, .line = lines[i]}, 1);
	free(lines);
	return n;
}

int history_init_at(struct history *h, struct record *record, uint64_t seed, int batch, int64_t wall_ms)
{
	static const struct person people[] = {
	    {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},   {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	    {3, "SURG-3", STAFF_SURGEON, 1, 0},         {4, "SUPPORT-4", STAFF_PRACTITIONER, 0, 0},
	    {5, "SCRUB-5", STAFF_PRACTITIONER, 1, 0},   {6, "CHARGE-6", STAFF_CHARGE, 1, 0},
	    {7, "SUPPORT-7", STAFF_PRACTITIONER, 0, 0},
	};
	memset(h, 0, sizeof *h);
	h->record = record;
	h->random = seed * 0x9e3779b97f4a7c15u + 1;
	h->batch = batch;
	h->pending = batch ? calloc(HISTORY_PENDING, sizeof *h->pending) : NULL;
	h->now = (struct moment){.boot = 1, .boot_ms = 1000000, .wall_ms = wall_ms};
	snprintf(h->st.site, sizeof h->st.site, "BC");
	policy_default(&h->st.policy);
	h->st.rooms[h->st.n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	h->st.rooms[h->st.n_rooms++] = (struct room){.number = 2, .name = "Theatre 2"};
	h->st.rooms[h->st.n_rooms++] = (struct room){.number = 3, .name = "Minor injuries", .single = 1};
	int n = history_store(h, &(struct event){.kind = EV_STARTED, .n = 1, .text = "boot-1"}, 1);
	if (n == 0)
		n = set_up_lines(h);
	for (size_t i = 0; n == 0 && i < sizeof people / sizeof *people; i++)
		n = history_store(h, &(struct event){.kind = EV_STAFF_SET, .staff = people[i]}, 1);
	return n;
}

int history_init(struct history *h, struct record *record, uint64_t seed, int batch)
{
	return history_init_at(h, record, seed, batch, HISTORY_BEGINS_MS);
}

void history_deinit(struct history *h)
{
	station_deinit(&h->st);
	free(h->pending);
	h->pending = NULL;
}

static int pass(struct history *h, int64_t ms)
{
	h->now.boot_ms += ms;
	h->now.wall_ms += ms;
	int n;
	do {
		struct input tick = {.act = ACT_TICK};
		n = history_take(h, &tick);
	} while (n == 0 && h->out.count && h->out.reply.said[0]);
	return n;
}

static int card(struct history *h, int32_t room, int meaning)
{
	return history_take(
	    h, &(struct input){.act = ACT_CARD, .room = room, .card_room = room, .card = meaning});
}

static int badge(struct history *h, int32_t room, int32_t number)
{
	return history_take(h, &(struct input){.act = ACT_BADGE, .room = room, .number = number});
}

static int digit(struct history *h, int32_t room, int number)
{
	return history_take(
	    h, &(struct input){.act = ACT_DIGIT, .room = room, .card_room = room, .digit = number});
}

static int pack(struct history *h, int32_t room, const char *key, int32_t identity)
{
	struct input in = {.act = ACT_THING, .room = room};
	const struct line *line = catalogue_by_key(&h->st.catalogue, key);
	struct thing *t = &in.thing;
	in.line = line;
	in.act = line->role == ROLE_TRAY ? ACT_TRAY : ACT_THING;
	snprintf(t->line, sizeof t->line, "%s", line->key);
	snprintf(t->name, sizeof t->name, "%s", line->name);
	t->role = (uint8_t)line->role;
	t->single_use = (uint8_t)line->single_use;
	t->rolls_on = (uint8_t)line->rolls_on;
	t->identity_kind = identity ? (uint8_t)line->identity : IDENTITY_NONE;
	if (identity && line->identity != IDENTITY_NONE)
		snprintf(t->identity, sizeof t->identity, "%s:%d", line->key, (int)identity);
	if (line->role == ROLE_TOURNIQUET)
		snprintf(t->lot, sizeof t->lot, "T%d", (int)identity % 3);
	t->expiry = 20991231;
	for (int i = 0; i < LINE_CONTENTS_MAX && line->contents[i].key[0]; i++)
		in.parts[i] = catalogue_by_key(&h->st.catalogue, line->contents[i].key);
	return history_take(h, &in);
}

static int slip(struct history *h, int32_t room, int32_t number)
{
	const struct slip *s = station_slip(&h->st, number);
	struct input in = {.act = ACT_SLIP, .room = room, .number = number, .copy = 1};
	if (s) {
		in.known.slip_case = s->case_no;
		in.known.slip_room = s->room;
	}
	return history_take(h, &in);
}

static const char by_the_book[] = "c1 b1 b2 g f b2 d2 w32 d2 c40 w8 c50 c41 f b2 d2 b3 s";
static const char lone[] = "b3 g d2 w20 d2 c40 c50 c41 d2 c82 b3 s";
static const char unresolved[] =
    "c1 b1 b2 g b2 d11 w5 d11 c40 c50 c43 c5 c60 c15 c60 c15 c60 c15 c60 c15 c60 c15 c60 c15 c60 c61 "
    "c60 c15 c60 c15 c60 c5 b2 b3";
static const char cancelled[] = "c1 c3 c10";

int history_word(struct history *h, int32_t room, const char *w, int32_t identity)
{
	int number = atoi(w + 1);
	switch (w[0]) {
	case 'c':
		return card(h, room, number);
	case 'b':
		return badge(h, room, number);
	case 'd':
		return digit(h, room, number);
	case 'g':
		return pack(h, room, "GREEN-M", 1000 + identity);
	case 'f':
		return pack(h, room, "FORCEPS", 1 + identity % 500);
	case 't':
		return history_take(h,
		                    &(struct input){.act = ACT_TYPED, .room = room, .text = "INC-2026-0042"});
	case 's':
		return slip(h, room, h->st.last_slip_no);
	default:
		for (int n = 0; number; number--)
			if ((n = pass(h, 60000)) < 0)
				return n;
		return 0;
	}
}

static int play(struct history *h, int32_t room, const char *script)
{
	int32_t identity = h->next_identity++;
	int n = 0;
	h->in_script++;
	h->played_in = room;
	for (const char *w = script; w && n == 0; w = strchr(w, ' ')) {
		w += *w == ' ';
		n = history_word(h, room, w, identity);
		if (n == 0 && h->mixed && h->in_script == 1 && any(h, 6) == 0)
			n = history_step(h);
	}
	h->in_script--;
	return n;
}

int history_case(struct history *h, int32_t room)
{
	return play(h, room, by_the_book);
}

int history_seen(struct history *h)
{
	const struct slip *s = station_slip(&h->st, h->st.last_slip_no);
	if (!s)
		return 0;
	struct event e = {.kind = EV_SLIP_STATE,
	                  .case_no = s->case_no,
	                  .room = s->room,
	                  .n = s->number,
	                  .what = SLIP_SEEN,
	                  .other = s->copy};
	return history_store(h, &e, 1);
}

static int any_case(struct history *h, int32_t room)
{
	int n = station_sheet_of_room(&h->st, room) >= 0 && any(h, 2) ? card(h, room, CARD_SUSPEND) : 0;
	if (n < 0)
		return n;
	switch (any(h, 6)) {
	case 0:
		return play(h, room, cancelled);
	case 1:
	case 2:
		n = play(h, room, unresolved);
		return n < 0 ? n : play(h, room, any(h, 2) ? "c61" : "t");
	default:
		return play(h, room, room == 3 ? lone : by_the_book);
	}
}

/* --- whatever lies at hand ---------------------------------------------------------------------- */

static int any_card(struct history *h, int32_t room)
{
	int fitting[DEEDS_MAX] = {0}, index = station_sheet_of_room(&h->st, room), count = 0;
	struct next next = {0};
	if (index >= 0 && any(h, 4))
		next_step(&h->st, &h->st.sheets[index], room, h->now, &next);
	for (int i = 0; i < next.n_deeds; i++)
		if (next.deeds[i].kind == DEED_CARD)
			fitting[count++] = next.deeds[i].n;
	if (count > 0)
		return card(h, room, fitting[any(h, (uint32_t)count)]);
	int m = 0;
	for (uint32_t i = any(h, 60); i || !m; i -= i > 0)
		m = own_card_next(m);
	return card(h, room, m);
}

static int any_pack(struct history *h, int32_t room)
{
	size_t line = any(h, (uint32_t)h->st.catalogue.count);
	char key[LINE_KEY_MAX];
	memcpy(key, h->st.catalogue.lines[line].key, sizeof key);
	return pack(h, room, key, (int32_t)any(h, 40));
}

static int power_cut(struct history *h)
{
	int32_t boot = h->now.boot + 1;
	h->now.wall_ms += 60000 * (int64_t)any(h, 90);
	h->now.boot_ms = 5000;
	h->now.boot = boot;
	struct event started = {.kind = EV_STARTED, .n = boot};
	snprintf(started.text, sizeof started.text, "boot-%d", (int)boot);
	return history_store(h, &started, 1);
}

static int stores(struct history *h)
{
	struct event e = {.kind = any(h, 2) ? EV_QUARANTINED : EV_RELEASED, .text = "seal of the pouch open"};
	snprintf(e.thing.line, sizeof e.thing.line, "GREEN-M");
	snprintf(e.thing.lot, sizeof e.thing.lot, "T%d", (int)any(h, 3));
	if (any(h, 3))
		return history_store(h, &e, 1);
	if (!any(h, 3))
		return history_store(h, &(struct event){.kind = EV_BACKED_UP, .ref = 1 + any(h, 1000)}, 1);
	struct event labels = {.kind = EV_LABELLED};
	snprintf(labels.batch.line, sizeof labels.batch.line, "PLAIN-M");
	labels.batch.first = h->st.last_item_no + 1;
	labels.batch.last = labels.batch.first + any(h, 50);
	return history_store(h, &labels, 1);
}

/* The printer's program reports; sometimes a further copy is asked for. */
static int printer(struct history *h)
{
	if (!h->st.n_unseen)
		return 0;
	const struct slip *s = &h->st.unseen[any(h, (uint32_t)h->st.n_unseen)];
	struct event e = {.kind = any(h, 4) ? EV_SLIP_STATE : EV_SLIP_QUEUED,
	                  .case_no = s->case_no,
	                  .room = s->room,
	                  .n = s->number,
	                  .what = (uint8_t)(SLIP_WRITTEN + any(h, 5)),
	                  .other = s->copy,
	                  .ref = 7};
	if (e.kind == EV_SLIP_QUEUED) {
		e.what = s->kind;
		e.other++;
		e.ref = 0;
	}
	return history_store(h, &e, 1);
}

/* On the way to an end: cards that fit, badges, digits, END UNRESOLVED, CANCEL, and no further packs. */
static int towards_an_end(struct history *h, int32_t room)
{
	static const int cards[] = {CARD_YES,           CARD_NO,           CARD_FINAL_COUNT, CARD_OFF,
	                            CARD_INTACT,        CARD_MISSING,      CARD_STEP_DONE,   CARD_NOT_DONE,
	                            CARD_CANCEL,        CARD_LOOKED_CARER, CARD_SHOWN_10,    CARD_UNDO,
	                            CARD_END_UNRESOLVED};
	switch (any(h, 8)) {
	case 0:
		return badge(h, room, 1 + (int32_t)any(h, 3));
	case 1:
		return digit(h, room, 1 + (int32_t)any(h, 3));
	case 2:
		return any(h, 2) ? badge(h, room, 6) : pass(h, 60000);
	case 3:
	case 4:
		return card(h, room, cards[any(h, sizeof cards / sizeof *cards)]);
	default:
		return any_card(h, room);
	}
}

int history_step(struct history *h)
{
	h->mixed = 1;
	int32_t room = 1 + (int32_t)any(h, 3);
	if (h->in_script && room == h->played_in && any(h, 8))
		room = room % 3 + 1;
	int index = station_sheet_of_room(&h->st, room);
	/* A case in three is at its end; the fuller the sheet, the likelier. */
	if (index >= 0 && (int)any(h, 12) < h->st.sheets[index].n_items + 2)
		return towards_an_end(h, room);
	switch (any(h, 24)) {
	case 0:
		return pass(h, 1000 * (int64_t)any(h, 1500));
	case 1:
		return any(h, 6) ? pass(h, 700) : power_cut(h);
	case 2:
		return stores(h);
	case 3:
		return printer(h);
	case 4:
		return slip(h, room, (int32_t)any(h, (uint32_t)h->st.last_slip_no + 2));
	case 5:
		return history_take(h,
		                    &(struct input){.act = ACT_TYPED, .room = room, .text = "INC-2026-17"});
	case 6:
		return history_take(
		    h,
		    &(struct input){.act = ACT_CASE_LABEL, .room = room, .number = 1 + (int32_t)any(h, 30)});
	case 7:
	case 8:
	case 23:
		return h->in_script ? any_card(h, room) : any_case(h, room);
	case 9:
	case 10:
		return badge(h, room, 1 + (int32_t)any(h, 8));
	case 11:
	case 12:
		return digit(h, room, 1 + (int32_t)any(h, 3));
	case 13:
	case 14:
		return any_pack(h, room);
	default:
		return any_card(h, room);
	}
}
