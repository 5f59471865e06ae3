#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "walk.h"

#define WALL_MS 1795600800000

static const struct moment still = {.boot = 1, .boot_ms = 7200000, .wall_ms = WALL_MS};

static void add(struct world *w, struct input in, const char *name)
{
	if (w->n_inputs == INPUTS_MAX) {
		fprintf(stderr, "states: more than %d inputs\n", INPUTS_MAX);
		exit(1);
	}
	in.at = still;
	if (!in.room)
		in.room = 1;
	if (!in.card_room)
		in.card_room = in.room;
	snprintf(in.scanner, sizeof in.scanner, "hand");
	if (in.act == ACT_CARD)
		w->cards[in.card / 64 % 4] |= (uint64_t)1 << in.card % 64;
	struct scan_choice *c = &w->inputs[w->n_inputs++];
	c->in = in;
	snprintf(c->name, sizeof c->name, "%s", name);
}

static struct line line_of(const char *key, const char *name, enum role role, enum identity_kind identity)
{
	struct line l = {
	    .role = role, .identity = identity, .marked = 1, .visible = 1, .single_use = 1, .per_pack = 1};
	snprintf(l.key, sizeof l.key, "%s", key);
	snprintf(l.name, sizeof l.name, "%s", name);
	snprintf(l.codes[0], sizeof l.codes[0], "%s", key);
	return l;
}

static void add_thing(struct world *w, const char *key, const char *identity, int32_t used_in, int32_t expiry)
{
	struct input in = {.act = ACT_THING, .known = {.used_in = used_in, .used_back = used_in != 0}};
	char name[64];
	in.line = catalogue_by_key(&w->station.catalogue, key);
	struct thing *th = &in.thing;
	snprintf(th->line, sizeof th->line, "%s", key);
	snprintf(th->name, sizeof th->name, "%s", in.line->name);
	snprintf(th->identity, sizeof th->identity, "%s", identity);
	th->role = (uint8_t)in.line->role;
	th->single_use = (uint8_t)in.line->single_use;
	th->rolls_on = (uint8_t)in.line->rolls_on;
	th->identity_kind = (uint8_t)(*identity ? in.line->identity : IDENTITY_NONE);
	th->expiry = expiry;
	snprintf(name, sizeof name, "pack %s %s%s%s", key, identity, used_in ? " used before" : "",
	         expiry && expiry < 20200101 ? " expired" : "");
	add(w, in, name);
}

static void add_catalogue(struct world *w, const struct room_plan *p)
{
	struct line lines[] = {
	    line_of("T", "tourniquet", ROLE_TOURNIQUET, IDENTITY_PACK),
	    line_of("N", "tourniquet without number", ROLE_TOURNIQUET, IDENTITY_NONE),
	    line_of("R", "tourniquet that rolls on", ROLE_TOURNIQUET, IDENTITY_PACK),
	    line_of("F", "forceps", ROLE_FORCEPS, IDENTITY_MARK),
	    line_of("O", "swabs", ROLE_OTHER, IDENTITY_NONE),
	    line_of("G", "glove finger", ROLE_REFUSED, IDENTITY_NONE),
	};
	lines[2].rolls_on = 1;
	lines[3].single_use = 0;
	lines[4].per_pack = 2;
	snprintf(lines[5].instead, sizeof lines[5].instead, "a listed one");
	lines[0].size_min_mm = p->size ? 45 : 0;
	lines[0].size_max_mm = p->size ? 60 : 0;
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
		catalogue_set(&w->station.catalogue, &lines[i], NULL);
}

static void add_things(struct world *w, const struct room_plan *p)
{
	char identity[16];
	for (int i = 1; i <= p->tourniquets; i++) {
		snprintf(identity, sizeof identity, "T:%d", i);
		add_thing(w, "T", identity, 0, 20330101);
	}
	for (int i = 1; i <= p->forceps; i++) {
		snprintf(identity, sizeof identity, "F:%d", i);
		add_thing(w, "F", identity, 0, 0);
	}
	for (int i = 0; i < p->others; i++)
		add_thing(w, "O", "", 0, 0);
	if (p->rolls_on)
		add_thing(w, "R", "R:1", 0, 0);
	if (p->no_identity)
		add_thing(w, "N", "", 0, 0);
	for (int lot = 0; lot < 2 && p->two_lots; lot++) {
		add_thing(w, "N", "", 0, 0);
		snprintf(w->inputs[w->n_inputs - 1].in.thing.lot, LOT_MAX, "%c", 'A' + lot);
	}
	if (p->forceps_again)
		add_thing(w, "F", "F:8", 4, 0);
	if (p->refused) {
		add_thing(w, "T", "T:8", 4, 20330101);
		add_thing(w, "T", "T:9", 0, 20190101);
		add_thing(w, "G", "", 0, 0);
		add(w, (struct input){.act = ACT_UNKNOWN, .text = "(01)00000000000000"}, "unknown code");
		add(w, (struct input){.act = ACT_PATIENT, .text = ""}, "wristband");
		add(w, (struct input){.act = ACT_CARD, .card = CARD_OFF, .card_room = 2}, "OFF of room 2");
	}
}

static void add_person(struct world *w, const struct person *x)
{
	add(w, (struct input){.act = ACT_BADGE, .number = x->number}, x->name);
}

static void add_people(struct world *w, const struct room_plan *p)
{
	static const struct person people[] = {
	    {1, "SURG", STAFF_SURGEON, 1, 0},        {2, "SCRUB", STAFF_PRACTITIONER, 1, 0},
	    {3, "CIRC", STAFF_PRACTITIONER, 0, 0},   {4, "RELIEF", STAFF_PRACTITIONER, 0, 0},
	    {5, "SECOND", STAFF_PRACTITIONER, 1, 0},
	};
	static const struct person charge = {6, "CHARGE", STAFF_CHARGE, 1, 0};
	static const struct person withdrawn = {7, "FORMER", STAFF_SURGEON, 1, 1};
	static const int who[][5] = {{0}, {1, 0}, {2, 3, 0}, {1, 2, 3, 0}, {1, 2, 3, 4, 0}};
	/* Everybody has a badge of this site, whether it is scanned in this room or not. */
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		staff_set(&w->station.staff, &people[i]);
	staff_set(&w->station.staff, &charge);
	staff_set(&w->station.staff, &withdrawn);
	for (int i = 0; who[p->people][i]; i++) {
		add_person(w, &people[who[p->people][i] - 1]);
	}
	if (p->charge)
		add_person(w, &charge);
	if (p->withdrawn)
		add_person(w, &withdrawn);
}

static void add_cards(struct world *w, const struct room_plan *p)
{
	if (p->cards) {
		for (const int *m = p->cards; *m; m++)
			add(w, (struct input){.act = ACT_CARD, .card = *m}, own_card_name(*m));
		return;
	}
	for (int m = own_card_next(0); m; m = own_card_next(m)) {
		/* One of each kind that differs only in its number. */
		if ((m > CARD_SHOWN_3) || (m > CARD_5_MINUTES_AGO && m < CARD_SHOWN_1) ||
		    (m >= CARD_1_MINUTE_AGO && m < CARD_5_MINUTES_AGO) ||
		    (m > CARD_VISITOR_1 && m <= CARD_VISITOR_4) || m == CARD_THIS_ROOM ||
		    m == CARD_SPARE_SCANNER)
			continue;
		add(w, (struct input){.act = ACT_CARD, .card = m}, own_card_name(m));
	}
}

static void later(struct world *w, struct input in, const char *name)
{
	add(w, in, name);
	struct moment *at = &w->inputs[w->n_inputs - 1].in.at;
	at->boot_ms += 3 * 60000;
	at->wall_ms += 3 * 60000;
}

static void add_later(struct world *w, const struct room_plan *p)
{
	static const int answers[] = {CARD_YES, CARD_NO, CARD_OFF, CARD_INTACT};
	for (size_t i = 0; i < sizeof answers / sizeof *answers; i++)
		later(w, (struct input){.act = ACT_CARD, .card = answers[i]}, "an answer later");
	for (int d = 1; d <= p->digits; d++)
		later(w, (struct input){.act = ACT_DIGIT, .digit = d + !p->thumb}, "a digit later");
}

static void add_stored(struct world *w)
{
	static const char *const names[] = {"stored: right index finger, OFF", "stored: OFF, OFF"};
	for (int i = 0; i < 2; i++) {
		struct input off = {
		    .act = ACT_CARD, .at = still, .card = CARD_OFF, .card_room = 1, .scanner = "hand"};
		w->stored[i][0] = w->stored[i][1] = off;
		if (i == 0)
			w->stored[i][0] = (struct input){
			    .act = ACT_DIGIT, .at = still, .digit = 2, .card_room = 1, .scanner = "hand"};
		add(w, (struct input){.act = ACT_STORED, .stored = w->stored[i], .n_stored = 2}, names[i]);
	}
}

/* The other room: the same packs, and what brings one on to a digit there, off it, and into its count. */
static void add_other_room(struct world *w)
{
	static const int cards[] = {CARD_OFF, CARD_FINAL_COUNT, CARD_NO};
	int n = w->n_inputs;
	for (int i = 0; i < n; i++) {
		struct scan_choice c = w->inputs[i];
		c.in.room = c.in.card_room = 2;
		int is_card = 0;
		for (size_t k = 0; c.in.act == ACT_CARD && k < sizeof cards / sizeof *cards; k++)
			is_card |= c.in.card == cards[k];
		if (!is_card && c.in.act != ACT_THING && c.in.act != ACT_DIGIT &&
		    !(c.in.act == ACT_BADGE && c.in.number == 3))
			continue;
		char name[64];
		snprintf(name, sizeof name, "room 2: %.50s", c.name);
		add(w, c.in, name);
	}
}

int world_has_card(const struct world *w, int card)
{
	return w->cards[card / 64 % 4] >> card % 64 & 1;
}

void world_init(struct world *w, const struct room_plan *p)
{
	memset(w, 0, sizeof *w);
	w->plan = p;
	struct station *st = &w->station;
	snprintf(st->site, sizeof st->site, "BC");
	policy_default(&st->policy);
	st->policy.points_one_by_one = (uint8_t)p->one_by_one;
	st->policy.both_badges = (uint8_t)p->both_badges;
	st->policy.n_search = 2;
	st->policy.look_step = 2;
	snprintf(st->policy.search[1], sizeof st->policy.search[1],
	         "look at and feel the digit, under the dressing too");
	st->policy.n_points = 2;
	st->rooms[st->n_rooms++] = (struct room){.number = 1, .name = "Room 1", .single = (uint8_t)p->single};
	st->rooms[st->n_rooms++] = (struct room){.number = 2, .name = "Room 2"};
	st->boot = 1;
	st->last = still;
	add_catalogue(w, p);
	add_people(w, p);
	add_things(w, p);
	for (int d = 1; d <= p->digits; d++)
		add(w, (struct input){.act = ACT_DIGIT, .digit = d + !p->thumb},
		    own_digit_name(d + !p->thumb));
	add_cards(w, p);
	if (p->stored)
		add_stored(w);
	add(w, (struct input){.act = ACT_TYPED, .text = "INC-1"}, "typed number");
	add(w, (struct input){.act = ACT_SLIP, .number = 1, .copy = 1, .known = {.slip_case = 90}}, "slip 1");
	if (p->copies)
		add(w, (struct input){.act = ACT_SLIP, .number = 1, .copy = 2, .known = {.slip_case = 90}},
		    "slip 1, copy 2");
	if (p->size)
		add(w, (struct input){.act = ACT_TYPED, .text = "60 mm"}, "typed size");
	if (p->later)
		add_later(w, p);
	if (p->other_room)
		add_other_room(w);
	if (!p->no_time) {
		add(w, (struct input){.act = ACT_TICK}, "half an hour passes");
		w->inputs[w->n_inputs - 1].in.at.boot_ms += 30 * 60000;
		w->inputs[w->n_inputs - 1].in.at.wall_ms += 30 * 60000;
	}
}

void world_deinit(struct world *w)
{
	station_deinit(&w->station);
	keys_free(&w->entered_again);
}
