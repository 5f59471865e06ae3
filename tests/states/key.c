#include "key.h"
#include "decide/next.h"
#include "known.h"

#include <string.h>

struct writer {
	struct key key;
	uint64_t at;
	const struct world *world; /* NULL: a whole sheet */
	struct names *names;       /* NULL: each keeps its own name */
	int misread, minutes;
	uint8_t item[ITEMS_MAX + 1]; /* what each item is numbered without those that were struck */
};

static uint64_t mix(uint64_t h, uint64_t v)
{
	h ^= v;
	h *= 0x9e3779b97f4a7c15u;
	return h ^ (h >> 29);
}

static void put(struct writer *w, int64_t value)
{
	w->at++;
	w->key.a = mix(w->key.a, (uint64_t)value + w->at);
	w->key.b = mix(w->key.b ^ w->at << 32, (uint64_t)value);
}

static void put_text(struct writer *w, const char *text)
{
	uint64_t eight = 0;
	int n = 0;
	for (; *text; text++) {
		eight = eight << 8 | (unsigned char)*text;
		if (++n % 8 == 0)
			put(w, (int64_t)eight);
	}
	put(w, (int64_t)eight);
	put(w, n);
}

/* --- names -------------------------------------------------------------------------------------- */

static int person_class(const struct world *w, int32_t number)
{
	const struct person *p = staff_find(&w->station.staff, number);
	if (number <= 0 || !p)
		return (int)number * 100;
	return 1 + p->kind * 4 + p->registered * 2 + p->withdrawn;
}

static void put_person(struct writer *w, int32_t number)
{
	struct names *n = w->names;
	if (!n || !number) {
		put(w, number);
		return;
	}
	int class = person_class(w->world, number), before = 0, i = 0;
	for (; i < n->n_persons && n->persons[i] != number; i++)
		before += person_class(w->world, n->persons[i]) == class;
	if (i == n->n_persons && i < NAMES_MAX)
		n->persons[n->n_persons++] = number;
	put(w, class * 16 + before);
}

static void put_digit(struct writer *w, uint8_t number)
{
	struct names *n = w->names;
	int i = 0;
	if (!n || !number) {
		put(w, number);
		return;
	}
	while (i < n->n_digits && n->digits[i] != number)
		i++;
	if (i == n->n_digits && i < NAMES_MAX)
		n->digits[n->n_digits++] = number;
	put(w, 1 + i);
}

static const struct input *input_of(const struct world *w, const char *identity)
{
	for (int i = 0; i < w->n_inputs; i++)
		if (w->inputs[i].in.act == ACT_THING && strcmp(w->inputs[i].in.thing.identity, identity) == 0)
			return &w->inputs[i].in;
	return NULL;
}

/* Two packs are alike where line, expiry and what the record knows of them are. */
static int is_class(const struct world *w, const char *a, const char *b)
{
	const struct input *x = input_of(w, a), *y = input_of(w, b);
	return x && y && x->line == y->line && x->thing.expiry == y->thing.expiry &&
	       x->known.used_in == y->known.used_in;
}

static void put_identity(struct writer *w, const char *identity)
{
	struct names *n = w->names;
	int before = 0, i = 0;
	if (!n || !identity[0]) {
		put_text(w, identity);
		return;
	}
	for (; i < n->n_identities && strcmp(n->identities[i], identity) != 0; i++)
		before += is_class(w->world, n->identities[i], identity);
	if (i == n->n_identities && i < NAMES_MAX)
		n->identities[n->n_identities++] = identity;
	const struct input *in = input_of(w->world, identity);
	put(w, before);
	put(w, in ? in->known.used_in : -1);
}

/* The last card or badge: see sheet.last_answer. */
static void put_answer(struct writer *w, int32_t answer)
{
	put(w, answer < 0);
	if (answer < 0)
		put_person(w, -answer);
	else
		put(w, answer);
}

/* --- a sheet ------------------------------------------------------------------------------------ */

static void put_minutes(struct writer *w, int64_t ms)
{
	put(w, w->world ? ms / 60000 : ms);
}

static void put_moment(struct writer *w, const struct moment *at)
{
	if (w->world) {
		put_minutes(w, w->world->inputs[0].in.at.boot_ms - at->boot_ms);
		return;
	}
	put(w, at->boot);
	put(w, at->boot_ms);
	put(w, at->wall_ms);
}

static void put_thing(struct writer *w, const struct thing *th)
{
	put_text(w, th->line);
	put_text(w, th->lot);
	if (!w->world || !th->line[0])
		put_text(w, th->name);
	put_identity(w, th->identity);
	put(w, th->role | th->identity_kind << 8 | th->single_use << 16 | th->rolls_on << 24);
	put(w, th->unlisted | th->shows_on_xray << 8);
	put(w, th->expiry);
}

static void put_item(struct writer *w, const struct item *it)
{
	int digit_is_read = !w->world || it->place == ITEM_ON || it->thing.role == ROLE_TOURNIQUET;
	put(w, it->place);
	put_thing(w, &it->thing);
	if (w->world && !item_counts(it))
		return;
	put(w, it->pieces | it->shown << 8 | it->missing << 16);
	put(w, it->evidence | it->condition << 8 | it->dropped << 16 | it->opened << 17);
	put_digit(w, digit_is_read ? it->digit : 0);
	if (!w->world)
		put(w, it->added);
}

/* Items that were struck are gone for good; what stays of them is the place that they take. */
static void put_items(struct writer *w, const struct sheet *s)
{
	int struck = 0, kept = 0;
	w->item[0] = 0;
	for (int i = 0; i < s->n_items; i++) {
		int is_struck = w->world && s->items[i].place == ITEM_STRUCK;
		struck += is_struck;
		w->item[i + 1] = (uint8_t)(is_struck ? ITEMS_MAX + 1 : ++kept);
		if (!is_struck)
			put_item(w, &s->items[i]);
	}
	put(w, s->n_items | struck << 8);
}

static void put_doubt(struct writer *w, const struct digit *d)
{
	put(w, d->doubted | d->doubt_gap << 1);
	if (!d->doubted && w->world)
		return;
	put_moment(w, &d->doubt_since);
	put_minutes(w, d->doubt_known_ms);
	if (!w->world)
		put(w, d->doubt_wall_ms);
}

static void put_digits(struct writer *w, const struct sheet *s)
{
	put(w, s->n_digits);
	for (int i = 0; i < s->n_digits; i++) {
		const struct digit *d = &s->digits[i];
		put_digit(w, d->number);
		put(w, d->state | d->marked << 8 | d->had << 9 | d->seen_bare << 10 | d->seen_on << 11 |
		           d->reminded << 12);
		put(w, !w->world || w->misread ? d->stretches : 0);
		put_doubt(w, d);
		if (w->world && d->state == DIGIT_BARE)
			continue;
		put(w, d->gap);
		put_moment(w, &d->since);
		put_minutes(w, d->known_ms);
		put(w, d->reminded_min);
		put(w, d->by_wall.back);
		if (d->reminded_min || !w->world)
			put_moment(w, &d->by_wall.reminded_at);
		if (!w->world || w->minutes) { /* N MINUTES AGO goes no further back than the last OFF */
			put_minutes(w, d->stretches > 1 ? d->bare_ms : -60000);
			put_minutes(w,
			            d->sure_ms +
			                d->sure_cut_ms); /* nor an OFF before somebody said that it is on */
			put_minutes(w, d->by_wall.off_ms);
		}
		if (w->world)
			continue;
		put(w, d->by_wall.cut_ms);
		put(w, d->by_wall.off_wall_ms);
		put(w, d->by_wall.off_ms);
		put(w, d->by_wall.cuts | d->by_wall.gaps << 1);
		put(w, d->on_wall_ms);
		put(w, d->total_ms);
		put(w, d->longest_ms);
	}
}

static void put_asked(struct writer *w, const struct asked *q)
{
	put(w, q->what);
	put(w, q->item <= ITEMS_MAX ? w->item[q->item] : 0);
	put_digit(w, q->digit);
	put_person(w, q->person);
	if (q->what == Q_HANDOVER_SEEN || q->what == Q_HANDOVER_AGREE)
		put_person(w, q->n);
	else
		put(w, q->n);
	if (!w->world)
		put_moment(w, &q->at);
}

static void put_sheet(struct writer *w, const struct sheet *s)
{
	put(w, w->world ? s->case_no != 0 : s->case_no);
	if (!s->case_no)
		return;
	put(w,
	    s->room | s->single << 8 | s->initial_agreed << 9 | s->discrepancy << 10 | s->dressing_on << 11);
	put(w, s->awake | s->suspended << 1 | s->cancelled << 2 | s->signed_out << 3 | s->patient_left << 4);
	put(w, s->final | s->search_done << 8 | s->search_not_done << 16);
	put(w, s->points_yes | s->point_no << 8);
	put(w, s->who_looked);
	put(w, s->size_mm);
	for (int p = 0; p < TEAM_PLACES; p++)
		put_person(w, s->team.at[p]);
	put_digits(w, s);
	put_items(w, s);
	put_asked(w, &s->asked);
	put(w, s->debts.count);
	for (int i = 0; i < s->debts.count; i++) {
		put(w, s->debts.list[i].kind);
		put(w, s->debts.list[i].item <= ITEMS_MAX ? w->item[s->debts.list[i].item] : 0);
		put_digit(w, s->debts.list[i].digit);
	}
	if (!w->world || s == &w->world->station.sheets[1])
		put_answer(w, s->last_answer);
	if (!w->world || w->misread || w->minutes) {
		put_digit(w, s->last_timed);
		put(w, s->last_timed_what);
		if (s->last_timed_what == TIMED_BESIDE_ON || s->last_timed_what == TIMED_BESIDE_OFF) {
			put(w, s->beside_item <= ITEMS_MAX ? w->item[s->beside_item] : 0);
			put_moment(w, &s->beside_at);
		}
	}
	if (w->world)
		return;
	put_moment(w, &s->final_at);
}

static struct writer writer(const struct world *w, struct names *names)
{
	return (struct writer){
	    .key = {0x243f6a8885a308d3u, 0x13198a2e03707344u},
	    .world = w,
	    .names = names,
	    .misread = w && world_has_card(w, CARD_MISREAD),
	    .minutes = w && (world_has_card(w, CARD_1_MINUTE_AGO) || world_has_card(w, CARD_5_MINUTES_AGO))};
}

/* Does the board say NEXT because of the last card or badge? */
static int is_said(const struct world *w, const struct sheet *sheet)
{
	static struct sheet without;
	struct next with_it, without_it;
	without = *sheet;
	without.last_answer = 0;
	next_step(&w->station, sheet, 1, w->inputs[0].in.at, &with_it);
	next_step(&w->station, &without, 1, w->inputs[0].in.at, &without_it);
	return strcmp(with_it.words, without_it.words) != 0;
}

/* Would the last card or badge of this sheet be entered again, if nothing remembered it? */
static int is_entered_again(struct world *w, const struct sheet *sheet)
{
	static struct outcome out;
	static struct sheet now;
	int32_t answer = sheet->last_answer;
	struct input in = {.act = answer < 0 ? ACT_BADGE : ACT_CARD,
	                   .card = answer > 0 ? answer : 0,
	                   .number = answer < 0 ? -answer : 0,
	                   .at = w->inputs[0].in.at,
	                   .room = 1,
	                   .card_room = 1};
	now = w->station.sheets[0];
	w->station.sheets[0] = *sheet;
	w->station.sheets[0].last_answer = 0;
	decide_known(&w->station, &in, &out);
	w->station.sheets[0] = now;
	int entered = out.reply.verdict != VERDICT_REFUSED;
	for (int i = 0; i < out.count; i++)
		entered |= out.events[i].kind != EV_REFUSED;
	return entered;
}

/* Where this sheet can change without a scan of its room, by time or from the other room, the answer is kept: it
 * can come to matter. */
static void put_last_answer(struct writer *w, struct world *world, const struct sheet *s)
{
	const struct room_plan *p = world->plan;
	int is_new;
	if (!s->case_no || !s->last_answer)
		return;
	struct key key = w->key;
	key.a = mix(key.a, (uint64_t)s->last_answer);
	uint32_t *known = keys_at(&world->entered_again, key, &is_new);
	if (is_new)
		*known = 1 + (uint32_t)(p->other_room || !p->no_time || is_entered_again(world, s) ||
		                        is_said(world, s));
	put_answer(w, *known == 2 ? s->last_answer : 0);
}

/* Scans that wait for an answer, in their order. */
static void put_held(struct writer *w)
{
	const struct station *st = &w->world->station;
	put(w, st->n_held);
	for (int i = 0; i < st->n_held; i++) {
		const struct held *h = &st->held[i];
		put(w, h->room | h->kind << 8 | h->place << 16 | h->meant << 24);
		put(w, h->n);
		put(w, h->other);
		put_digit(w, h->digit);
		put_moment(w, &h->made);
		put_thing(w, &h->thing);
	}
}

static void put_state(struct writer *w, struct world *world)
{
	const struct station *st = &w->world->station;
	put_sheet(w, &st->sheets[1]);
	put_sheet(w, &st->sheets[0]);
	put_last_answer(w, world, &st->sheets[0]);
	put_held(w);
	if (!st->sheets[0].case_no || st->sheets[0].suspended) {
		put(w, st->idle_asked[0]);
		put(w, st->idle_n[0] != 0);
		put(w, st->idle_copy[0]);
		put_answer(w, st->idle_last[0]);
		for (int i = 0; !st->sheets[0].case_no && i < st->n_after; i++) {
			put(w, st->after[i].what);
			put_digit(w, st->after[i].digit);
		}
	}
	if (!world_has_card(w->world, CARD_UNDO) || !st->undo[0].seq)
		return;
	put(w, st->undo[0].kind);
	put(w, st->undo[0].item <= ITEMS_MAX ? w->item[st->undo[0].item] : 0);
	put_digit(w, st->undo[0].digit);
	put_sheet(w, &st->before[0]);
	put_last_answer(w, world, &st->before[0]);
}

struct key key_of_state(struct world *world, struct names *names)
{
	struct names own = {0};
	struct names *used = names ? names : &own;
	used->n_persons = used->n_digits = used->n_identities = 0;
	struct writer w = writer(world, used);
	put_state(&w, world);
	return w.key;
}

struct key key_of_exact_state(struct world *world, const void *extra, size_t size)
{
	struct writer w = writer(world, NULL);
	put_state(&w, world);
	for (size_t i = 0; i < size; i++)
		put(&w, ((const unsigned char *)extra)[i]);
	return w.key;
}

struct key key_of_whole_sheet(const struct sheet *s)
{
	struct writer w = writer(NULL, NULL);
	put_sheet(&w, s);
	return w.key;
}

struct key key_of_input(const struct world *world, struct names *names, const struct input *in)
{
	struct writer w = writer(world, names);
	put(&w, in->act);
	put(&w, in->room);
	put(&w, in->card_room);
	put(&w, in->act == ACT_CARD ? in->card : in->copy);
	put_moment(&w, &in->at);
	if (in->act == ACT_DIGIT)
		put_digit(&w, (uint8_t)in->digit);
	if (in->act == ACT_BADGE)
		put_person(&w, in->number);
	if (in->act == ACT_THING)
		put_thing(&w, &in->thing);
	put_text(&w, in->text);
	for (int i = 0; in->act == ACT_STORED && i < in->n_stored; i++) {
		put(&w, in->stored[i].card);
		put_digit(&w, (uint8_t)in->stored[i].digit);
	}
	return w.key;
}
