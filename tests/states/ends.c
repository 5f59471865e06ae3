#include "ends.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "decide/next.h"
#include "key.h"
#include "truths.h"

#define NEVER 0xffffffu

struct ends *ends_new(const struct room_plan *plan, int quiet, const struct saboteur *saboteur)
{
	struct ends *e = calloc(1, sizeof *e);
	if (!e)
		exit(1);
	world_init(&e->world, plan);
	e->quiet = quiet;
	e->saboteur = saboteur;
	return e;
}

void ends_free(struct ends *e)
{
	if (!e)
		return;
	keys_free(&e->known);
	keys_free(&e->told);
	world_deinit(&e->world);
	free(e);
}

uint64_t ends_tried(const struct ends *e)
{
	return e->known.count;
}

int ends_longest(const struct ends *e)
{
	return e->longest;
}

uint64_t ends_dead(const struct ends *e)
{
	return e->dead;
}

/* --- the way to the end ------------------------------------------------------------------------- */

/* What people did and saw changes what is true from now on. */
static void after_scan(struct ends *e, const struct input *in, const struct outcome *out)
{
	const struct sheet *s = ends_sheet(e);
	for (int i = 0; i < out->count; i++)
		if (out->events[i].kind == EV_POINT && out->events[i].what == 2)
			e->now.point_bad = 0;
	if (in->act == ACT_THING && out->reply.verdict == VERDICT_REFUSED)
		e->now.packs = 0;
	/* What the sheet says is on a digit that bears a band is that band. */
	for (int d = 1; d < DIGIT_PLACES; d++) {
		int item = e->now.band[d] ? sheet_item_on(s, d, TRAIT_TIMED) : 0;
		if (item) {
			e->now.band[d] = (uint8_t)(1 + item);
			e->now.things[item - 1] = THERE;
		}
	}
}

static void let_reminders_come(struct ends *e)
{
	static struct outcome out;
	static struct sheet at_end;
	int ended;
	struct input tick = {.act = ACT_TICK, .at = e->world.inputs[0].in.at};
	tick.at.boot_ms += 30 * 60000;
	tick.at.wall_ms += 30 * 60000;
	for (int i = 0; e->now.reminders && i < 8; i++) {
		decide(&e->world.station, &tick, &out);
		if (!out.count)
			return;
		snapshot_apply(&e->world, &out, &at_end, &ended);
	}
}

static const char *name_of(const struct ends *e, const struct input *in)
{
	static char name[80];
	if (in->act == ACT_CARD)
		return own_card_name(in->card);
	if (in->act == ACT_DIGIT)
		return own_digit_name(in->digit);
	if (in->act == ACT_BADGE)
		return staff_name(&e->world.station.staff, in->number);
	snprintf(name, sizeof name, "%s %.30s", in->act == ACT_THING ? in->thing.line : "typed",
	         in->act == ACT_THING ? in->thing.identity : in->text);
	return name;
}

static void tell_truths(const struct truths *t)
{
	static const char *const words[] = {"there", "missing", "cut", "in pieces"};
	printf("  what is true:");
	for (int i = 0; i < ITEMS_MAX; i++)
		if (t->things[i])
			printf(" item %d is %s,", i + 1, words[t->things[i]]);
	for (int d = 1; d < DIGIT_PLACES; d++)
		if (t->band[d])
			printf(" a band (item %d) is on the %s,", t->band[d] - 1, own_digit_name(d));
	printf("%s%s%s the rest is there\n", t->contrary ? " the contrary answers," : "",
	       t->no_badge ? " the surgeon has no badge," : "", t->reminders ? " reminders come," : "");
}

/* One of a kind: why, and what the station says next. */
static int is_fresh(struct ends *e, const char *why, const char *next)
{
	int is_new;
	struct key k = {1, 2};
	for (const char *c = why; *c; c++)
		k.a = (k.a ^ (unsigned char)*c) * 1099511628211u;
	for (const char *c = next; *c; c++)
		k.b = (k.b ^ (unsigned char)*c) * 1099511628211u;
	keys_at(&e->told, k, &is_new);
	return is_new;
}

static void tell(struct ends *e, const struct truths *truths, int length, const char *why)
{
	const char *kind = length ? e->way[length - 1].next : "";
	if (!is_fresh(e, why, kind) || e->quiet)
		return;
	e->fresh++;
	printf("DEAD END: %s\n", why);
	tell_truths(truths);
	for (int i = 0; i < length; i++)
		if (i < 12 || i >= length - 12)
			printf("    next: %s\n      -> %s\n", e->way[i].next, e->way[i].scanned);
}

static int is_at_end(const struct ends *e)
{
	return !ends_sheet(e)->case_no;
}

static int most_scans(const struct ends *e)
{
	return 40 + 4 * (ends_sheet(e)->n_items + e->world.station.policy.n_search);
}

/* What is asked of stored scans is worded with what they are; the answers are these. */
static void stored_deeds(const struct station *st, struct next *n)
{
	if (!question_of_stored((enum question)st->sheets[0].asked.what) || n->n_deeds)
		return;
	next_add(n, (struct deed){.kind = DEED_CARD, .n = CARD_YES, .truth = TRUTH_MADE_HERE});
	next_add(n, (struct deed){.kind = DEED_CARD, .n = CARD_NO, .truth = TRUTH_MADE_ELSEWHERE});
}

/* Follows the deeds until the end, or what is known, or a state comes again. The scans to the end, NEVER where
 * there is none. */
static uint32_t follow(struct ends *e, const struct truths *truths, int *length, const char **why)
{
	static struct outcome out;
	static struct next next;
	const struct station *st = &e->world.station;
	int is_new, most = most_scans(e);
	*length = 0;
	e->now = *truths;
	for (;;) {
		let_reminders_come(e);
		if (is_at_end(e))
			return 0;
		struct key key = key_of_exact_state(&e->world, &e->now, sizeof e->now);
		for (int i = 0; i < *length; i++)
			if (e->way[i].key.a == key.a && e->way[i].key.b == key.b) {
				*why = "the same state again";
				return NEVER;
			}
		uint32_t known = *keys_at(&e->known, key, &is_new);
		if (known) {
			*why = NULL; /* told when it was found */
			return known == NEVER ? NEVER : known - 1;
		}
		if (*length == PATH_MAX_SCANS || *length > most) {
			*why = "more scans than 40 and 4 for each item and step";
			return NEVER;
		}
		struct input in;
		struct way *way = &e->way[(*length)++];
		way->key = key;
		next_step(st, &st->sheets[0], 1, e->world.inputs[0].in.at, &next);
		stored_deeds(st, &next);
		if (e->saboteur)
			e->saboteur->spoil_next(&next);
		snprintf(way->next, sizeof way->next, "%s", next.words);
		if (!truths_choose(e, &next, &in)) {
			snprintf(way->scanned, sizeof way->scanned, "no deed fits");
			*why = "no deed fits what is true";
			return NEVER;
		}
		snapshot_scan(&e->world, &in, &out);
		if (strstr(out.reply.said, "sheet is full")) /* what follows is written on paper */
			return 0;
		after_scan(e, &in, &out);
		snprintf(way->scanned, sizeof way->scanned, "%.40s (%.30s", name_of(e, &in), out.reply.said);
	}
}

static void try_truths(struct ends *e, const struct snapshot *from, const struct truths *t)
{
	int length, is_new, most;
	const char *why = NULL;
	snapshot_put(from, &e->world);
	most = most_scans(e);
	uint32_t scans = follow(e, t, &length, &why);
	if (scans == NEVER && why)
		tell(e, t, length, why);
	for (int i = length - 1; i >= 0; i--) {
		if (scans != NEVER)
			scans++;
		*keys_at(&e->known, e->way[i].key, &is_new) = scans == NEVER ? NEVER : scans + 1;
		e->dead += scans == NEVER;
	}
	if (scans != NEVER && (int)scans > e->longest)
		e->longest = (int)scans;
	if (scans != NEVER && (int)scans > most)
		tell(e, t, length, "more scans than 40 and 4 for each item and step");
}

/* Which tourniquet the band on this digit is: the one that the sheet says, or else one that lies nowhere else. */
static uint8_t band_for(const struct sheet *s, const struct truths *t, int digit)
{
	int item = sheet_item_last_on(s, digit);
	for (int i = s->n_items; !item && i >= 1; i--)
		if (s->items[i - 1].thing.role == ROLE_TOURNIQUET && item_counts(&s->items[i - 1]) &&
		    !truths_digit_of(t, i))
			item = i;
	if (item && (t->things[item - 1] == MISSING || truths_digit_of(t, item)))
		item = 0;
	return (uint8_t)(1 + item);
}

static void try_bands(struct ends *e, const struct snapshot *from, struct truths t)
{
	int digits = e->world.plan->digits, first = e->world.plan->thumb ? 1 : 2;
	for (int mask = 0; mask < 1 << digits; mask++)
		for (int contrary = 0; contrary < 2; contrary++) {
			struct truths here = t;
			here.contrary = here.no_badge = here.point_bad = here.reminders = (uint8_t)contrary;
			here.packs = (uint8_t)!contrary;
			for (int d = 0; d < digits; d++)
				if (mask >> d & 1)
					here.band[first + d] = band_for(&from->sheet, &here, first + d);
			try_truths(e, from, &here);
		}
}

int ends_check(struct ends *e, const struct snapshot *from)
{
	const struct sheet *s = &from->sheet;
	e->fresh = 0;
	if (!s->case_no)
		return 0;
	try_bands(e, from, (struct truths){0});
	for (int i = 0; i < s->n_items; i++) {
		int last = s->items[i].thing.role == ROLE_TOURNIQUET ? PIECES : MISSING;
		for (int how = MISSING; item_counts(&s->items[i]) && how <= last; how++) {
			struct truths t = {0};
			t.things[i] = (uint8_t)how;
			try_bands(e, from, t);
		}
	}
	return e->fresh;
}
