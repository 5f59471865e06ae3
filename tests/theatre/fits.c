#include "fits.h"

#include <stdio.h>
#include <string.h>

#include "decide/want.h"

struct scanned scan_card(const struct world *t, int operation, int card)
{
	return (struct scanned){
	    .act = ACT_CARD, .thing = -1, .n = card, .room = t->operations[operation].room};
}

struct scanned scan_digit(const struct world *t, int operation, int digit)
{
	return (struct scanned){
	    .act = ACT_DIGIT, .thing = -1, .n = digit, .room = t->operations[operation].room};
}

struct scanned scan_badge(int32_t badge)
{
	return (struct scanned){.act = ACT_BADGE, .thing = -1, .n = badge};
}

/* --- counting in -------------------------------------------------------------------------------- */

/* Of what is lost the wrapper still lies here. */
static int wants_counting_in(const struct real *r, int operation)
{
	return r->of == operation && !r->entered && r->where != IN_STORE && r->where != AWAY &&
	       !(r->where == LOST && r->by_mark);
}

int first_uncounted(const struct world *t, int operation)
{
	for (int i = 0; i < t->n_things; i++)
		if (wants_counting_in(&t->things[i], operation) && !t->things[i].no_code)
			return i;
	return -1;
}

static int stands_on(const struct sheet *s, const char *line)
{
	for (int i = 0; i < s->n_items; i++)
		if (s->items[i].place != ITEM_STRUCK && s->items[i].place != ITEM_RETURNED &&
		    strcmp(s->items[i].thing.line, line) == 0)
			return 1;
	return 0;
}

struct scanned to_count_in(const struct world *t, const struct sheet *s, int thing)
{
	const struct real *r = &t->things[thing];
	struct scanned c = {.act = ACT_THING, .thing = (int8_t)thing};
	int card = 0;
	if (r->by_mark && !r->readable)
		card = CARD_MARK_UNREADABLE;
	else if (!r->number && s->asked.what != Q_ADD && stands_on(s, r->line))
		card = CARD_ADD;
	if (!card)
		return c;
	if (card == s->last_answer) /* NEXT stands between two equal answers */
		card = CARD_NEXT;
	c = scan_card(t, r->of, card);
	c.thing = (int8_t)(card == CARD_MARK_UNREADABLE ? thing : -1);
	return c;
}

/* --- deeds by their kind ------------------------------------------------------------------------ */

static int missing_at_hand(const struct world *t, int op, const struct sheet *s)
{
	for (int i = 1; i <= s->n_items; i++) {
		const struct item *it = &s->items[i - 1];
		struct at_hand h = world_at_hand(t, op, s, i);
		if (item_counts(it) && it->missing && h.intact + h.cut > it->shown)
			return 1;
	}
	return 0;
}

/* Of another operation, here and with its own number on it. */
static int stranger(const struct world *t, int op)
{
	for (int i = 0; i < t->n_things; i++)
		if (t->things[i].of >= 0 && t->things[i].of != op && t->things[i].where == LOST &&
		    t->things[i].digit == DIGIT_NUMBER_MAX + 1 + op)
			return i;
	return -1;
}

/* Nothing has been opened, and nothing lies here to be. */
static int nothing_to_do(const struct world *t, int op)
{
	for (int i = 0; i < t->n_things; i++)
		if (t->things[i].of == op && t->things[i].where != AWAY && t->things[i].where != IN_STORE &&
		    !(t->things[i].no_code && t->things[i].where != ON_DIGIT))
			return 0;
	return 1;
}

static int is_yes(const struct world *t, int op, const struct sheet *s, int digit)
{
	const struct operation *o = &t->operations[op];
	enum question q = (enum question)s->asked.what;
	if (!q && s->debts.count)
		q = s->debts.list[0].kind == DEBT_ON         ? Q_IS_ON
		    : s->debts.list[0].kind == DEBT_ROLLS_ON ? Q_ROLLS_ON
		                                             : Q_RIGHT_DIGIT;
	switch (q) {
	case Q_IS_ON:
		return o->roots[digit].bands > 0;
	case Q_RIGHT_DIGIT:
		return o->roots[digit].ever;
	case Q_ROLLS_ON:
		return o->wound;
	case Q_POINT:
		return o->points_ok;
	case Q_CANCEL:
		return o->no_operation || nothing_to_do(t, op);
	case Q_VISITOR_IS_SURGEON:
		return s->asked.person == o->surgeon;
	case Q_EXTRA: {
		for (int i = 0; i < t->n_things; i++)
			if (t->things[i].of == op && world_is(t, op, s, s->asked.item, i))
				return 1;
		return 0;
	}
	case Q_HERE_NOW:
		return o->in_hand >= 0 && t->things[o->in_hand].of == op &&
		       t->things[o->in_hand].where != ON_DIGIT;
	case Q_LISTED_ALREADY:
		return o->in_hand >= 0 && t->things[o->in_hand].entered;
	case Q_COUNTED_IN:
		return s->asked.n != CARD_ADD || (o->in_hand >= 0 && t->things[o->in_hand].entered);
	case Q_NO_CODE:
	case Q_SLIP_HERE:
		return 1;
	default:
		return 0;
	}
}

static int some_off(const struct world *t, int op, const struct sheet *s, int digit)
{
	int on = 0;
	for (int i = 0; i < s->n_items; i++)
		on += s->items[i].place == ITEM_ON && s->items[i].digit == digit &&
		      s->items[i].thing.role == ROLE_TOURNIQUET;
	return (on ? on : 1) - t->operations[op].roots[digit].bands;
}

/* A digit that has more tourniquets on it than the sheet; 0 none. */
int untold_on(const struct world *t, int op, const struct sheet *s)
{
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++) {
		const struct digit *entered = sheet_digit_const(s, d);
		if (t->operations[op].roots[d].bands && !(entered && digit_is_on(entered)))
			return d;
	}
	return 0;
}

/* Where the tourniquet that was entered for another digit really was. */
static int really_on(const struct world *t, int op, const struct sheet *s)
{
	if (s->asked.digit && t->operations[op].roots[s->asked.digit].ever)
		return 0;
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++) {
		const struct digit *entered = sheet_digit_const(s, d);
		if (t->operations[op].roots[d].ever && !(entered && entered->had))
			return d;
	}
	return 0;
}

static int digit_of_deed(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	switch ((enum truth)d->truth) {
	case TRUTH_ON:
	case TRUTH_ON_AGAIN:
		return untold_on(t, op, s);
	case TRUTH_OTHER_DIGIT:
		return really_on(t, op, s);
	case TRUTH_ON_A_DIGIT:
		return d->item ? world_at_hand(t, op, s, d->item).digit : untold_on(t, op, s);
	case TRUTH_OFF:
	case TRUTH_CAME_OFF:
		return some_off(t, op, s, d->digit) > 0 ? d->digit : 0;
	case TRUTH_SEEN_BARE:
	case TRUTH_STEP_DONE:
		return t->operations[op].roots[d->digit].bands ? 0 : d->digit;
	case TRUTH_FULL_SIGHT:
		return t->operations[op].roots[d->digit].bands ? d->digit : 0;
	default:
		return d->digit;
	}
}

static int32_t who_is(const struct operation *o, const struct sheet *s, int place)
{
	switch ((enum team_place)place) {
	case PLACE_FIELD:
		return o->field;
	case PLACE_CIRCULATING:
		return o->circulating;
	case PLACE_SURGEON:
		return o->surgeon < 0 && !s->team.at[PLACE_SURGEON] ? 0 : o->surgeon;
	case PLACE_CHARGE:
		return 6;
	case PLACE_VISITOR:
	case TEAM_PLACES:
		break;
	}
	int field = (int)team_place_of(&s->team, o->field),
	    circulating = (int)team_place_of(&s->team, o->circulating);
	/* who leaves, or else who takes the place of one who is not here */
	if (s->asked.what == Q_HANDOVER_OUT)
		return team_place_of(&s->team, o->leaves) ? o->leaves
		       : !field                           ? o->field
		       : !circulating                     ? o->circulating
		                                          : 0;
	if (s->asked.what == Q_HANDOVER_STAYS)
		return s->asked.person != o->field && field               ? o->field
		       : s->asked.person != o->circulating && circulating ? o->circulating
		                                                          : 0;
	if (s->asked.what == Q_HANDOVER_IN)
		return o->comes;
	return o->circulating ? o->circulating : o->field;
}

static int fits_badge(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	switch ((enum truth)d->truth) {
	case TRUTH_ALL_POINTS:
		return t->operations[op].points_ok && who_is(&t->operations[op], s, d->n);
	case TRUTH_ALL_COUNTED:
		return first_uncounted(t, op) < 0;
	default:
		return who_is(&t->operations[op], s, d->n) != 0;
	}
}

/* 'Found: is it this?' What is in the hand is what was not shown before. */
static int is_the_found_one(const struct at_hand *h, const struct item *it)
{
	if (it->condition == CONDITION_PIECES_MISSING)
		return h->intact + h->cut > 0;
	return h->intact + h->cut + h->in_pieces > it->shown;
}

static int fits_item(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	const struct item *it = &s->items[d->item - 1];
	struct at_hand h = world_at_hand(t, op, s, d->item);
	int asked = sheet_alike_open(s, d->item);
	if (s->asked.what == Q_FOUND && s->asked.item == d->item && !is_the_found_one(&h, it))
		return d->truth == TRUTH_SOMETHING_ELSE;
	switch ((enum truth)d->truth) {
	case TRUTH_INTACT:
		return h.intact >= 1;
	case TRUTH_CUT_COMPLETE:
	case TRUTH_ONE_CUT:
		return h.cut >=
		       1; /* one that is cut lacks nothing, however many pieces of it the board asks for */
	case TRUTH_PIECES_MISSING:
	case TRUTH_ONE_IN_PIECES:
		return h.in_pieces >= 1;
	case TRUTH_SHOWN:
	case TRUTH_SHOWN_ALONE:
	case TRUTH_MARK_READ:
		return h.intact + h.cut >= it->pieces;
	case TRUTH_ALL_INTACT:
	case TRUTH_ALL_SHOWN:
		return h.intact >= asked;
	case TRUTH_SOME_INTACT:
	case TRUTH_SOME_SHOWN:
		return h.intact > 0 && h.intact < asked;
	case TRUTH_NOT_THERE:
	case TRUTH_NONE_THERE:
	case TRUTH_SOMETHING_ELSE:
		return h.intact + h.cut + h.in_pieces < (it->thing.role == ROLE_OTHER ? it->pieces : 1) &&
		       !h.on_digit;
	case TRUTH_ON_A_DIGIT:
		return h.on_digit > 0;
	default:
		return 1;
	}
}

static int fits_digit_now(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	const struct root *root = &t->operations[op].roots[d->digit];
	switch ((enum truth)d->truth) {
	case TRUTH_OFF:
	case TRUTH_CAME_OFF:
		return some_off(t, op, s, d->digit) > 0;
	case TRUTH_STILL_ON:
		return root->bands && some_off(t, op, s, d->digit) == 0;
	case TRUTH_SECOND_ON:
		return some_off(t, op, s, d->digit) < 0;
	case TRUTH_ON:
	case TRUTH_IS_ON_NOW:
		return root->bands > 0;
	case TRUTH_ON_AGAIN:
		return root->bands && root->on_ms >= root->station_off_ms;
	case TRUTH_NEVER_OFF:
		return root->bands && root->on_ms < root->station_off_ms;
	case TRUTH_NOT_ON:
	case TRUTH_NOT_ON_YET:
		return !root->bands;
	case TRUTH_NEVER_ON:
		return !root->ever;
	default:
		return 1;
	}
}

static int fits_looked(const struct operation *o, int card)
{
	return card - CARD_LOOKED_PATIENT + LOOKED_PATIENT == o->looked;
}

static int fits_card(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	const struct operation *o = &t->operations[op];
	switch ((enum truth)d->truth) {
	case TRUTH_YES:
		return is_yes(t, op, s, d->digit);
	case TRUTH_NO:
		return !is_yes(t, op, s, d->digit);
	case TRUTH_NOTHING_USED:
		return !o->more_to_come && !untold_on(t, op, s);
	case TRUTH_NO_OPERATION:
		return o->no_operation || nothing_to_do(t, op);
	case TRUTH_PATIENT:
	case TRUTH_CARER:
	case TRUTH_COLLEAGUE:
	case TRUTH_NOBODY:
		return fits_looked(o, d->n);
	case TRUTH_NOT_ALL_POINTS:
		return !o->points_ok;
	case TRUTH_NO_BADGE:
		return (s->team.at[PLACE_FIELD] ? o->surgeon : o->field) < 0;
	case TRUTH_STEP_NOT_DONE:
		return o->steps_not_done;
	case TRUTH_FOUND:
		return missing_at_hand(t, op, s);
	case TRUTH_COUNT_AGAIN:
		return !missing_at_hand(t, op, s) && 0;
	case TRUTH_NUMBER_OWED:
		return !o->number_known;
	case TRUTH_GO_ON:
		return missing_at_hand(t, op, s);
	case TRUTH_CASE_FIRST:
		return t->stored_by[o->room != 1] == op && !o->ended && !o->case_no;
	case TRUTH_MADE_HERE:
		return t->stored_by[o->room != 1] == op;
	case TRUTH_READ_BY_MISTAKE: /* nobody here knows */
	case TRUTH_CASE_KNOWN:
		return 0;
	case TRUTH_NO_FULL_SIGHT:
		return 1;
	default:
		break;
	}
	if (d->item)
		return fits_item(t, op, s, d);
	return d->digit ? fits_digit_now(t, op, s, d) : 1;
}

static int fits_thing(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	int thing = -1;
	if (d->truth == TRUTH_FOUND)
		return stranger(t, op);
	if (d->kind == DEED_MARK)
		for (int i = 0; i < t->n_things; i++)
			if (world_is(t, op, s, d->item, i) && t->things[i].readable &&
			    t->things[i].where == ON_FIELD)
				thing = i;
	if (d->kind == DEED_MARK)
		return thing;
	if (d->truth == TRUTH_TO_COUNT_IN || s->asked.what == Q_ADD)
		return first_uncounted(t, op);
	for (int i = 0; d->item && i < t->n_things; i++)
		if (t->things[i].role != ROLE_FORCEPS && !t->things[i].entered && !t->things[i].no_code &&
		    world_is(t, op, s, d->item, i))
			thing = i;
	return thing;
}

static int cards_number(const struct world *t, int op, const struct sheet *s, const struct deed *d)
{
	int is_some = d->truth == TRUTH_SOME_INTACT || d->truth == TRUTH_SOME_SHOWN;
	if (d->n == CARD_NEXT && d->then)
		return CARD_NEXT;
	return is_some ? CARD_SHOWN_1 - 1 + world_at_hand(t, op, s, d->item).intact : d->n;
}

int deed_fits(const struct world *t, int op, const struct station *st, const struct sheet *s,
              const struct deed *d, struct scanned *out)
{
	int found;
	(void)st;
	*out = (struct scanned){.act = ACT_TICK, .thing = -1};
	switch ((enum deed_kind)d->kind) {
	case DEED_CARD:
		if (d->then < 0) { /* NEXT before a badge */
			struct deed badge = {.kind = DEED_BADGE, .truth = d->truth, .n = -d->then};
			*out = scan_card(t, op, CARD_NEXT);
			return fits_badge(t, op, s, &badge);
		}
		*out = scan_card(t, op, cards_number(t, op, s, d));
		return fits_card(t, op, s, d);
	case DEED_DIGIT:
		found = digit_of_deed(t, op, s, d);
		if (d->item && !fits_item(t, op, s, d))
			found = 0;
		*out = scan_digit(t, op, found);
		return found > 0;
	case DEED_MARK:
	case DEED_PACK:
		found = fits_thing(t, op, s, d);
		if (found >= 0)
			*out = d->truth == TRUTH_TO_COUNT_IN
			           ? to_count_in(t, s, found)
			           : (struct scanned){.act = ACT_THING, .thing = (int8_t)found};
		return found >= 0;
	case DEED_BADGE:
		*out = scan_badge(who_is(&t->operations[op], s, d->n));
		if (out->n < 0)
			*out = scan_card(t, op, CARD_VISITOR_1 - 1 - out->n);
		return fits_badge(t, op, s, d);
	case DEED_SLIP:
		*out = (struct scanned){.act = ACT_SLIP, .thing = -1, .n = op};
		return d->truth == TRUTH_PAPER_IN_HAND && t->operations[op].slips > 0;
	case DEED_TYPE:
		*out = (struct scanned){.act = ACT_TYPED, .thing = -1, .n = d->truth == TRUTH_NUMBER_KNOWN};
		return d->truth != TRUTH_NUMBER_KNOWN || t->operations[op].number_known;
	case DEED_NONE:
		break;
	}
	return 0;
}

int first_that_fits(const struct world *t, int op, const struct station *st, const struct sheet *s,
                    const struct next *n, struct scanned *out)
{
	for (int i = 0; i < n->n_deeds; i++)
		if (deed_fits(t, op, st, s, &n->deeds[i], out))
			return i;
	return -1;
}

const struct deed *that_it_is_on(const struct world *t, int op, const struct station *st,
                                 const struct sheet *s, const struct next *n, int digit, struct scanned *out)
{
	for (int i = 0; i < n->n_deeds; i++) {
		const struct deed *d = &n->deeds[i];
		int tells = d->truth == TRUTH_ON || d->truth == TRUTH_ON_AGAIN ||
		            d->truth == TRUTH_ON_A_DIGIT || d->truth == TRUTH_STILL_ON ||
		            d->truth == TRUTH_SECOND_ON || d->truth == TRUTH_NEVER_OFF ||
		            d->truth == TRUTH_IS_ON_NOW;
		if (tells && (!d->digit || d->digit == digit) && deed_fits(t, op, st, s, d, out))
			return d;
	}
	*out = scan_digit(t, op, digit);
	return NULL;
}
