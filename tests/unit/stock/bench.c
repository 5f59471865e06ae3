#include "tests/unit/stock/bench.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct line lines[] = {
    {.key = "GREEN-M",
     .name = "finger tourniquet, green, M",
     .role = ROLE_TOURNIQUET,
     .identity = IDENTITY_PACK,
     .marked = 1,
     .visible = 1,
     .single_use = 1,
     .per_pack = 1,
     .minimum = 4,
     .codes = {"09506000134352", "09506000134369*10"}},
    {.key = "PLAIN-M",
     .name = "finger tourniquet, orange, M",
     .role = ROLE_TOURNIQUET,
     .marked = 1,
     .visible = 1,
     .single_use = 1,
     .per_pack = 1,
     .label = LABEL_AFTER_STERILISING,
     .label_place = "film side, clear of the seal"},
    {.key = "FORCEPS", .name = "artery forceps, curved", .role = ROLE_FORCEPS, .per_pack = 1},
};

static struct event events_of_a_scan[BENCH_EVENTS_MAX];

void stores_init(struct stores *s)
{
	static const struct room rooms[] = {
	    {.number = 1, .name = "Theatre 1"},
	    {.number = 2, .name = "Theatre 2"},
	    {.number = 9, .name = "Stores", .kind = ROOM_OF_STORES},
	    {.number = 10, .name = "Stores, desk", .kind = ROOM_OF_STORES},
	};
	memset(s, 0, sizeof *s);
	memcpy(s->st.site, "BC", 3);
	memcpy(s->st.rooms, rooms, sizeof rooms);
	s->st.n_rooms = 4;
	policy_default(&s->st.policy);
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
		catalogue_set(&s->st.catalogue, &lines[i], NULL);
	for (int i = 1; i <= 3; i++) {
		struct person p = {.number = i, .kind = STAFF_PRACTITIONER, .withdrawn = i == 3};
		snprintf(p.name, sizeof p.name, "STORES-%d", i);
		staff_set(&s->st.staff, &p);
	}
	s->out.events = events_of_a_scan;
}

void stores_deinit(struct stores *s)
{
	station_deinit(&s->st);
	stock_deinit(&s->stock);
}

static void note_label(struct stores *s, const struct event *e)
{
	if (e->kind == EV_LABELLED)
		for (int64_t i = e->batch.first; i <= e->batch.last && i < LABELS_KNOWN; i++)
			s->batches[i] = e->batch, s->labels[i] = label_known_by(NULL);
	if ((e->kind == EV_LABEL_FATE || e->kind == EV_ISSUED || e->kind == EV_PUT_BACK ||
	     e->kind == EV_WRITTEN_OFF) &&
	    e->batch.first && e->batch.first < LABELS_KNOWN)
		s->labels[e->batch.first] = label_known_by(e);
}

int stores_apply(struct stores *s, const struct event *events, int count, char *why, size_t size)
{
	struct error e = {0};
	if (stock_fits(&s->stock, events, count, &e) < 0) {
		snprintf(why, size, "%.*s", (int)size - 1, e.text);
		return -EINVAL;
	}
	for (int i = 0; i < count; i++) {
		struct event ev = events[i];
		ev.seq = ++s->seq;
		if ((!ev.case_no && station_apply(&s->st, &ev) < 0) || stock_apply(&s->stock, &ev) < 0) {
			snprintf(why, size, "%s does not apply", event_name(ev.kind));
			return -EINVAL;
		}
		if (ev.kind == EV_SLIP_QUEUED)
			s->st.last_slip_no = ev.n;
		note_label(s, &ev);
	}
	e = (struct error){0};
	enum stores_rule rule = rule_stock_broken(&s->stock, &e);
	snprintf(why, size, "%.*s", (int)size - 1, e.text);
	return rule ? -EINVAL : 0;
}

const char *stores_scan(struct stores *s, struct bench_input in)
{
	char why[300];
	bench_decide(&s->stock, &s->st, &in, &s->out);
	if (stores_apply(s, s->out.events, s->out.count, why, sizeof why) < 0) {
		fprintf(stderr, "%s, after: %s\n", why, s->out.said);
		exit(1);
	}
	bench_next(&s->stock, &s->st, in.room, &s->next);
	return s->out.said;
}

struct bench_input stores_in(const struct stores *s, enum bench_act act)
{
	return (struct bench_input){.act = act,
	                            .room = BENCH_ROOM,
	                            .today = BENCH_TODAY,
	                            .packs = 1,
	                            .text = "",
	                            .at = {.boot = 1, .boot_ms = s->seq * 1000, .wall_ms = s->seq * 1000}};
}

const char *stores_card(struct stores *s, int card)
{
	struct bench_input in = stores_in(s, BENCH_CARD);
	in.card = card;
	return stores_scan(s, in);
}

const char *stores_badge(struct stores *s, int32_t number)
{
	struct bench_input in = stores_in(s, BENCH_BADGE);
	in.number = number;
	return stores_scan(s, in);
}

const char *stores_type(struct stores *s, const char *text)
{
	struct bench_input in = stores_in(s, BENCH_TYPED);
	in.text = text;
	return stores_scan(s, in);
}

static void put_line(const struct stores *s, struct bench_input *in, const char *key)
{
	in->line = catalogue_by_key(&s->st.catalogue, key);
	snprintf(in->batch.line, sizeof in->batch.line, "%s", key);
	snprintf(in->thing.line, sizeof in->thing.line, "%s", key);
	snprintf(in->thing.name, sizeof in->thing.name, "%s", in->line ? in->line->name : "");
}

struct bench_input stores_pack_in(const struct stores *s, const char *line, const char *lot, int32_t expiry,
                                  int32_t packs)
{
	struct bench_input in = stores_in(s, BENCH_PACK);
	put_line(s, &in, line);
	snprintf(in.batch.lot, sizeof in.batch.lot, "%s", lot);
	in.batch.expiry = expiry;
	in.packs = packs;
	return in;
}

const char *stores_pack(struct stores *s, const char *line, const char *lot, int32_t expiry, int32_t packs)
{
	return stores_scan(s, stores_pack_in(s, line, lot, expiry, packs));
}

struct bench_input stores_label_in(const struct stores *s, int32_t number)
{
	struct bench_input in = stores_in(s, BENCH_LABEL);
	if (number < LABELS_KNOWN && s->batches[number].line[0]) {
		put_line(s, &in, s->batches[number].line);
		in.batch = s->batches[number];
		in.label = s->labels[number];
	}
	in.batch.first = in.batch.last = number;
	return in;
}

const char *stores_label(struct stores *s, int32_t number)
{
	return stores_scan(s, stores_label_in(s, number));
}

const char *stores_slip(struct stores *s, int32_t case_no)
{
	struct bench_input in = stores_in(s, BENCH_SLIP);
	in.number = case_no;
	return stores_scan(s, in);
}

void stores_took(struct stores *s, enum case_took what, int32_t case_no, int32_t room, const char *line,
                 const char *lot, int32_t expiry, int32_t packs)
{
	char why[300];
	struct event e = {.kind = EV_CASE_TOOK,
	                  .what = (uint8_t)what,
	                  .other = case_no,
	                  .room = room,
	                  .n = packs,
	                  .batch.expiry = expiry};
	snprintf(e.batch.line, sizeof e.batch.line, "%s", line);
	snprintf(e.batch.lot, sizeof e.batch.lot, "%s", lot);
	if (stores_apply(s, &e, 1, why, sizeof why) < 0) {
		fprintf(stderr, "%s\n", why);
		exit(1);
	}
}

const struct stock_lot *stores_lot(const struct stores *s, const char *line, const char *lot, int32_t expiry)
{
	struct batch b = {.expiry = expiry};
	snprintf(b.line, sizeof b.line, "%s", line);
	snprintf(b.lot, sizeof b.lot, "%s", lot);
	return stock_lot_of(&s->stock, &b);
}
