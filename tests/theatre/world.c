#include "world.h"

#include <stdio.h>
#include <string.h>

const char *where_name(enum where w)
{
	static const char *const names[] = {"in store",   "in its pack", "on the field",
	                                    "on a digit", "lost",        "put aside"};
	return names[w];
}

const char *whole_name(enum whole w)
{
	static const char *const names[] = {"whole", "cut", "in pieces, some missing"};
	return names[w];
}

const char *cause_name(enum cause c)
{
	static const char *const names[] = {
	    "none",
	    "a false declaration",
	    "a step left out",
	    "a missed read",
	    "a neighbouring card, not contradicted",
	    "a scan in the other room, not contradicted",
	    "a scan that came when the board asked something else than when it was made"};
	return names[c];
}

int world_of_case(const struct world *t, int32_t case_no)
{
	for (int i = 0; case_no && i < t->n_operations; i++)
		if (t->operations[i].case_no == case_no)
			return i;
	return -1;
}

void world_put_on(struct world *t, int thing, int digit, int64_t now)
{
	struct real *r = &t->things[thing];
	struct root *root = &t->operations[r->of].roots[digit];
	r->where = ON_DIGIT;
	r->digit = (uint8_t)digit;
	if (!root->bands++) {
		root->on_ms = now;
		root->told = 0;
	}
	root->ever = 1;
}

void world_take_off(struct world *t, int thing, enum whole whole, int64_t now)
{
	struct real *r = &t->things[thing];
	struct root *root = &t->operations[r->of].roots[r->digit];
	r->where = ON_FIELD;
	r->whole = (uint8_t)whole;
	if (!--root->bands)
		root->off_ms = now;
}

int world_bands_on(const struct world *t, int operation)
{
	int n = 0;
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++)
		n += t->operations[operation].roots[d].bands;
	return n;
}

void world_relieve(struct operation *o, const struct sheet *s)
{
	enum team_place taken = o->comes ? team_place_of(&s->team, o->comes) : 0;
	if (!taken)
		return;
	if (taken == PLACE_FIELD)
		o->field = o->comes;
	else if (taken == PLACE_CIRCULATING)
		o->circulating = o->comes;
	o->comes = o->leaves = 0;
}

void world_cause(struct world *t, int operation, enum cause c)
{
	if (operation < 0 || c == CAUSE_NONE)
		return;
	t->operations[operation].causes[c]++;
	t->operations[operation].honest = 0;
}

int world_has_cause(const struct operation *o)
{
	for (int c = 1; c < CAUSES; c++)
		if (o->causes[c])
			return c;
	return 0;
}

static int identity_is(const struct real *r, const char *identity)
{
	char text[IDENTITY_MAX];
	snprintf(text, sizeof text, "%s:%d", r->line, (int)r->number);
	return r->number && strcmp(text, identity) == 0;
}

/* What no listed item of the sheet stands for. */
static int is_uncovered(const struct sheet *s, const struct real *r)
{
	if (r->no_code || !r->entered || (r->by_mark && !r->readable))
		return 1;
	for (int i = 0; i < s->n_items; i++)
		if (item_counts(&s->items[i]) && strcmp(s->items[i].thing.line, r->line) == 0)
			return 0;
	return 1;
}

static int is_of_role(const struct real *r, int role)
{
	return r->role == role || (role == ROLE_TOURNIQUET && r->role == ROLE_REFUSED);
}

int world_is(const struct world *t, int operation, const struct sheet *s, int item, int thing)
{
	const struct real *r = &t->things[thing];
	const struct item *it = sheet_item_const(s, item);
	if (!it || r->of != operation || r->where == AWAY || r->where == IN_STORE)
		return 0;
	if (!it->thing.line[0])
		return is_of_role(r, it->thing.role) && is_uncovered(s, r);
	if (it->thing.identity_kind == IDENTITY_MARK)
		return identity_is(r, it->thing.identity);
	if (!r->entered && r->number && it->thing.identity[0] && !identity_is(r, it->thing.identity))
		return 0; /* it was refused, or never scanned: people know that it is not the one on the sheet */
	return strcmp(r->line, it->thing.line) == 0 && !(r->by_mark && r->readable);
}

static int same_group(const struct item *a, const struct item *b)
{
	if (a->thing.identity_kind == IDENTITY_MARK || b->thing.identity_kind == IDENTITY_MARK)
		return strcmp(a->thing.identity, b->thing.identity) == 0;
	return a->thing.role == b->thing.role && strcmp(a->thing.line, b->thing.line) == 0;
}

static void take_shown(struct at_hand *h, const struct item *it)
{
	if (it->condition == CONDITION_PIECES_MISSING)
		h->in_pieces--;
	else if (it->condition == CONDITION_CUT_COMPLETE)
		h->cut -= it->shown;
	else
		h->intact -= it->shown;
}

struct at_hand world_at_hand(const struct world *t, int operation, const struct sheet *s, int item)
{
	struct at_hand h = {0};
	for (int i = 0; i < t->n_things; i++) {
		const struct real *r = &t->things[i];
		if (!world_is(t, operation, s, item, i))
			continue;
		if (r->where == ON_DIGIT) {
			h.on_digit++;
			h.digit = r->digit;
		} else if (r->where == ON_FIELD || r->where == IN_PACK) {
			h.intact += r->whole == WHOLE ? r->here : 0;
			h.cut += r->whole == CUT ? r->here : 0;
			h.in_pieces += r->whole == IN_PIECES;
		}
	}
	for (int i = 0; i < s->n_items; i++)
		if (i + 1 != item && s->items[i].shown && same_group(&s->items[i], &s->items[item - 1]) &&
		    (s->items[i].place == ITEM_ACCOUNTED || s->items[i].place == ITEM_OFF ||
		     s->items[i].place == ITEM_HERE))
			take_shown(&h, &s->items[i]);
	return h;
}
