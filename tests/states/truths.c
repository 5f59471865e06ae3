#include "truths.h"

#include <stdio.h>
#include <string.h>

/* --- what is true ------------------------------------------------------------------------------- */

static int is_on(const struct truths *t, int digit)
{
	return digit > 0 && digit < DIGIT_PLACES && t->band[digit];
}

/* The digit that this item is on in truth, 0 none. */
int truths_digit_of(const struct truths *t, int item)
{
	for (int d = 1; d < DIGIT_PLACES; d++)
		if (t->band[d] == 1 + item)
			return d;
	return 0;
}

static int is_here(const struct truths *t, int item, enum thing_truth how)
{
	return item >= 1 && item <= ITEMS_MAX && !truths_digit_of(t, item) && t->things[item - 1] == how;
}

/* Which of things alike, asked together, are so. */
static int count_alike(const struct ends *e, int item, enum thing_truth how)
{
	const struct sheet *s = ends_sheet(e);
	int n = 0;
	for (int i = 1; i <= s->n_items; i++)
		if (sheet_is_asked(s, i) &&
		    (i == item || item_is_alike(&s->items[item - 1], &s->items[i - 1])))
			n += is_here(&e->now, i, how) ? s->items[i - 1].pieces : 0;
	return n;
}

static int alike_on_a_digit(const struct ends *e, int item)
{
	const struct sheet *s = ends_sheet(e);
	for (int i = 1; i <= s->n_items; i++)
		if (sheet_is_asked(s, i) &&
		    (i == item || item_is_alike(&s->items[item - 1], &s->items[i - 1])) &&
		    truths_digit_of(&e->now, i))
			return truths_digit_of(&e->now, i);
	return 0;
}

/* Something that the count misses is in a hand, or on a digit, or truly gone. */
static int missed_is(const struct ends *e, int *here, int *on)
{
	const struct sheet *s = ends_sheet(e);
	int gone = 0;
	*here = *on = 0;
	for (int i = 1; i <= s->n_items; i++) {
		const struct item *it = &s->items[i - 1];
		if (!item_open(it) ||
		    !(it->missing || it->place == ITEM_EXTRA || it->condition == CONDITION_PIECES_MISSING))
			continue;
		if (it->place == ITEM_EXTRA)
			gone = 1;
		else if (truths_digit_of(&e->now, i))
			*on = 1;
		else if (is_here(&e->now, i, THERE) || is_here(&e->now, i, CUT))
			*here = 1;
		else
			gone = 1;
	}
	return gone;
}

static const struct input *uncounted(const struct ends *e, int tourniquet)
{
	for (int i = 0; e->now.packs && i < e->world.n_inputs; i++) {
		const struct input *in = &e->world.inputs[i].in;
		if (in->act != ACT_THING || in->room != 1 || in->known.used_in ||
		    in->thing.role == ROLE_REFUSED || (in->thing.expiry && in->thing.expiry < 20200101) ||
		    !in->thing.identity[0])
			continue;
		if ((!tourniquet || in->thing.role == ROLE_TOURNIQUET) &&
		    !station_identity_open(&e->world.station, in->thing.identity))
			return in;
	}
	return NULL;
}

/* The code of an item that lies here as counted in. */
static const struct input *code_of(const struct ends *e, int item)
{
	const struct item *it = sheet_item_const(ends_sheet(e), item);
	for (int i = 0; it && i < e->world.n_inputs; i++) {
		const struct input *in = &e->world.inputs[i].in;
		if (in->act == ACT_THING && in->room == 1 && strcmp(in->thing.line, it->thing.line) == 0 &&
		    strcmp(in->thing.identity, it->thing.identity) == 0)
			return in;
	}
	return NULL;
}

static const struct input *one_here(const struct ends *e)
{
	const struct sheet *s = ends_sheet(e);
	for (int i = 1; i <= s->n_items; i++)
		if (s->items[i - 1].place == ITEM_HERE && code_of(e, i))
			return code_of(e, i);
	return NULL;
}

/* A digit with a band that the sheet does not know of. */
static int digit_unknown_on(const struct ends *e)
{
	for (int d = 1; d < DIGIT_PLACES; d++) {
		const struct digit *x = sheet_digit_const(ends_sheet(e), d);
		if (e->now.band[d] && !(x && digit_runs(x)))
			return d;
	}
	return 0;
}

/* --- scans -------------------------------------------------------------------------------------- */

static int scan(const struct ends *e, struct input *in, enum act act, int n)
{
	*in = (struct input){
	    .act = act, .at = e->world.inputs[0].in.at, .room = 1, .card_room = 1, .scanner = "hand"};
	in->card = act == ACT_CARD ? n : 0;
	in->digit = act == ACT_DIGIT ? n : 0;
	in->number = act == ACT_BADGE ? n : 0;
	return n != 0;
}

static int scan_thing(struct input *in, const struct input *thing)
{
	if (thing)
		*in = *thing;
	return thing != NULL;
}

/* Everybody has one badge; what stands for a visitor's is the visitor's card. */
static int scan_person(const struct ends *e, struct input *in, int32_t person)
{
	return person < 0 ? scan(e, in, ACT_CARD, CARD_VISITOR_1 - 1 - person)
	                  : scan(e, in, ACT_BADGE, person);
}

enum { SURGEON = 1, SCRUB = 2, CIRCULATING = 3, RELIEF = 4, REGISTERED = 5, CHARGE = 6 };

static int32_t newcomer(const struct sheet *s)
{
	static const int32_t people[] = {SCRUB, CIRCULATING, RELIEF, REGISTERED};
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		if (!team_place_of(&s->team, people[i]))
			return people[i];
	return 0;
}

static int32_t badge_of_place(const struct sheet *s, int place)
{
	if (s->team.at[place])
		return s->team.at[place];
	if (place == PLACE_SURGEON || (place == PLACE_FIELD && s->single))
		return SURGEON;
	if (place == PLACE_FIELD && !team_place_of(&s->team, SCRUB))
		return SCRUB;
	return place == PLACE_CHARGE ? CHARGE : newcomer(s);
}

static int has_surgeons_badge(const struct ends *e)
{
	return !e->now.no_badge || ends_sheet(e)->single || ends_sheet(e)->team.at[PLACE_SURGEON] > 0;
}

static int badge_anybody(const struct ends *e, struct input *in)
{
	const struct sheet *s = ends_sheet(e);
	int32_t who = s->team.at[PLACE_CIRCULATING] ? s->team.at[PLACE_CIRCULATING] : s->team.at[PLACE_FIELD];
	if (s->asked.what == Q_HANDOVER_OUT)
		return e->now.contrary && scan_person(e, in, s->team.at[PLACE_FIELD]);
	if (s->asked.what == Q_HANDOVER_STAYS)
		return e->now.contrary && scan_person(e, in, s->team.at[PLACE_CIRCULATING]);
	if (s->asked.what == Q_HANDOVER_IN)
		return e->now.contrary && s->asked.person == s->team.at[PLACE_SURGEON]
		           ? scan_person(e, in, 0)
		           : e->now.contrary && scan_person(e, in, s->single ? SCRUB : REGISTERED);
	return scan_person(e, in, who ? who : s->single ? SURGEON : CIRCULATING);
}

/* --- deeds -------------------------------------------------------------------------------------- */

/* YES and NO of questions that speak of neither things nor bands. */
static int says_yes(const struct ends *e)
{
	int contrary = e->now.contrary;
	switch ((enum question)ends_sheet(e)->asked.what) {
	case Q_POINT:
		return !e->now.point_bad;
	case Q_VISITOR_IS_SURGEON:
		return e->now.no_badge;
	case Q_CANCEL:
		return contrary || (!sheet_holds_any(ends_sheet(e)) && !uncounted(e, 0));
	case Q_LEAVES:
	case Q_ROLLS_ON:
		return contrary;
	default:
		return !contrary;
	}
}

/* Of a question about a digit, or a debt that asks the same. */
static int says_yes_of_digit(const struct ends *e, int digit)
{
	const struct sheet *s = ends_sheet(e);
	int right = s->asked.what == Q_RIGHT_DIGIT ||
	            (!s->asked.what && debts_owes(&s->debts, (struct debt){.kind = DEBT_MARKED_DIGIT,
	                                                                   .digit = (uint8_t)digit}));
	if (!right)
		return is_on(&e->now, digit);
	return is_on(&e->now, digit) || !digit_unknown_on(e);
}

static int fits_so(const struct ends *e, const struct deed *d, struct input *in)
{
	const struct sheet *s = ends_sheet(e);
	int here, on;
	switch ((enum deed_kind)d->kind) {
	case DEED_BADGE:
		if (!d->n)
			return badge_anybody(e, in);
		if (s->asked.what == Q_SURGEON_ENDS && !missed_is(e, &here, &on))
			return 0;
		if (d->n == PLACE_SURGEON && !has_surgeons_badge(e))
			return 0;
		return scan_person(e, in, badge_of_place(s, d->n));
	case DEED_PACK:
		if (s->asked.what == Q_ADD)
			return scan_thing(in, uncounted(e, 0));
		if (s->asked.what == Q_MOVE_TO)
			return 0;
		if (s->asked.what)
			return e->now.contrary && scan_thing(in, one_here(e));
		return !e->now.contrary && scan_thing(in, uncounted(e, 1));
	case DEED_CARD:
		return scan(e, in, ACT_CARD, d->n);
	case DEED_NONE:
	case DEED_DIGIT:
	case DEED_MARK:
	case DEED_SLIP:
	case DEED_TYPE:
		break;
	}
	return 0;
}

/* The digit that it is really on, where the one that was entered bears none. */
static int other_digit(const struct ends *e)
{
	int d = digit_unknown_on(e);
	const struct digit *x = sheet_digit_const(ends_sheet(e), d);
	const struct digit *from = sheet_digit_const(ends_sheet(e), ends_sheet(e)->asked.digit);
	int can_move = !(x && x->had) || (from && digit_is_on(from));
	return d && !is_on(&e->now, ends_sheet(e)->asked.digit) && can_move ? d : 0;
}

static int typed(const struct ends *e, struct input *in)
{
	scan(e, in, ACT_TYPED, 1);
	snprintf(in->text, sizeof in->text, "INC-1");
	return 1;
}

/* Found: is it this one? What is in the hand is a missing thing that is here, and no piece that was found before. */
static int is_in_hand(const struct ends *e, int item)
{
	const struct sheet *s = ends_sheet(e);
	const struct item *it = sheet_item_const(s, item);
	return s->asked.what != Q_FOUND || !it || it->condition != CONDITION_PIECES_MISSING ||
	       !is_here(&e->now, item, PIECES);
}

/* Does the truth of this deed hold, apart from the way in which it is done? */
static int holds(const struct ends *e, const struct deed *d)
{
	const struct truths *t = &e->now;
	const struct sheet *s = ends_sheet(e);
	int here, on, gone = missed_is(e, &here, &on), item = d->item, many = 0;
	int pieces = item && item <= s->n_items ? s->items[item - 1].pieces : 0;
	if (item)
		many = count_alike(e, item, THERE) + count_alike(e, item, MISSING) +
		       count_alike(e, item, CUT) + count_alike(e, item, PIECES);
	switch ((enum truth)d->truth) {
	case TRUTH_INTACT:
		return is_here(t, item, THERE) && pieces == 1;
	case TRUTH_SHOWN:
	case TRUTH_SHOWN_ALONE:
		return is_here(t, item, THERE);
	case TRUTH_MARK_READ:
		return is_here(t, item, THERE) && !t->contrary;
	case TRUTH_CUT_COMPLETE:
		return is_here(t, item, CUT) || (is_here(t, item, THERE) && pieces > 1);
	case TRUTH_PIECES_MISSING:
		return is_here(t, item, PIECES) && is_in_hand(e, item);
	case TRUTH_ALL_INTACT:
	case TRUTH_ALL_SHOWN:
		return !alike_on_a_digit(e, item) && many && count_alike(e, item, THERE) == many;
	case TRUTH_SOME_INTACT:
	case TRUTH_SOME_SHOWN:
		return count_alike(e, item, THERE) > 0;
	case TRUTH_ONE_CUT:
		return count_alike(e, item, CUT) > 0;
	case TRUTH_ONE_IN_PIECES:
		return count_alike(e, item, PIECES) > 0;
	case TRUTH_NOT_THERE:
		return is_here(t, item, MISSING);
	case TRUTH_NONE_THERE:
		return many && count_alike(e, item, MISSING) == many && !alike_on_a_digit(e, item);
	case TRUTH_ON_A_DIGIT:
		return alike_on_a_digit(e, item) != 0;
	case TRUTH_OFF:
	case TRUTH_CAME_OFF:
	case TRUTH_NOT_ON:
	case TRUTH_NOT_ON_YET:
	case TRUTH_SEEN_BARE:
		return !is_on(t, d->digit);
	case TRUTH_STILL_ON:
	case TRUTH_IS_ON_NOW:
		return is_on(t, d->digit);
	case TRUTH_ON:
		return d->digit ? is_on(t, d->digit) : digit_unknown_on(e) != 0;
	case TRUTH_ON_AGAIN: /* or it never came off: then that is the contrary answer */
		return is_on(t, d->digit) && (!t->contrary || s->asked.what != Q_IS_ON);
	case TRUTH_NEVER_OFF:
		return is_on(t, d->digit);
	case TRUTH_NEVER_ON:
		return t->contrary && !is_on(t, d->digit);
	case TRUTH_OTHER_DIGIT:
		return other_digit(e) != 0;
	case TRUTH_YES:
		return d->digit ? says_yes_of_digit(e, d->digit) : says_yes(e);
	case TRUTH_NO:
		return d->digit ? !says_yes_of_digit(e, d->digit) : !says_yes(e);
	case TRUTH_TO_COUNT_IN:
		return uncounted(e, 0) != NULL;
	case TRUTH_ALL_COUNTED:
	case TRUTH_NO_OPERATION:
		return !uncounted(e, 0);
	case TRUTH_NOTHING_USED:
		return !digit_unknown_on(e);
	case TRUTH_PATIENT:
	case TRUTH_STEP_DONE:
	case TRUTH_NUMBER_KNOWN:
	case TRUTH_FULL_SIGHT:
	case TRUTH_MADE_HERE:
		return !t->contrary;
	case TRUTH_CARER:
	case TRUTH_COLLEAGUE:
	case TRUTH_SECOND_ON:
	case TRUTH_NOBODY_SCRUBS:
	case TRUTH_NO_NUMBER:
	case TRUTH_READ_BY_MISTAKE:
	case TRUTH_CASE_KNOWN:
		return 0;
	case TRUTH_FOUND:
		return d->kind == DEED_CARD && here;
	case TRUTH_GIVEN_UP:
		return gone;
	case TRUTH_ALL_POINTS:
		return !t->point_bad && (d->kind == DEED_CARD || has_surgeons_badge(e));
	case TRUTH_NOT_ALL_POINTS:
		return t->point_bad;
	case TRUTH_NO_BADGE:
		return t->no_badge && !s->team.at[PLACE_SURGEON];
	case TRUTH_SO:
	case TRUTH_AS_ENTERED:
	case TRUTH_COUNTED_ALOUD:
	case TRUTH_WRITTEN:
	case TRUTH_NAMED_ALOUD:
	case TRUTH_READ_ALOUD:
	case TRUTH_STORES_ASKED:
	case TRUTH_NOBODY:
	case TRUTH_STEP_NOT_DONE:
	case TRUTH_SOMETHING_ELSE:
	case TRUTH_COUNT_AGAIN:
	case TRUTH_GO_ON:
	case TRUTH_NUMBER_OWED:
	case TRUTH_REASON:
	case TRUTH_PAPER_IN_HAND:
	case TRUTH_NEXT_PATIENT:
	case TRUTH_AFTER_DONE:
	case TRUTH_AFTER_BARE:
	case TRUTH_AFTER_ON:
	case TRUTH_RESUME:
	case TRUTH_TOLD:
	case TRUTH_NO_FULL_SIGHT:
	case TRUTH_REGISTERED_COMES:
	case TRUTH_MADE_ELSEWHERE:
	case TRUTH_MEANT_ONCE:
	case TRUTH_CASE_FIRST:
		return 1;
#define X(name, text, words) case TRUTH_##name:
		TRUTHS_OF_STORES(X)
#undef X
	case TRUTH_NONE:
	case TRUTH_KINDS:
		break;
	}
	return 0;
}

/* The card of a deed: of 'as many as are there', the one with their number. */
static int card_of(const struct ends *e, const struct deed *d)
{
	int some = d->truth == TRUTH_SOME_INTACT || d->truth == TRUTH_SOME_SHOWN;
	return some && d->n != CARD_NEXT ? CARD_SHOWN_1 - 1 + count_alike(e, d->item, THERE) : d->n;
}

static int digit_card_of(const struct ends *e, const struct deed *d)
{
	if (d->truth == TRUTH_ON_A_DIGIT)
		return alike_on_a_digit(e, d->item);
	if (d->truth == TRUTH_OTHER_DIGIT)
		return other_digit(e);
	return d->digit ? d->digit : digit_unknown_on(e);
}

/* 1 where the deed's truth holds; then `in` is what is scanned or typed. */
static int fits(const struct ends *e, const struct deed *d, struct input *in)
{
	if (!holds(e, d))
		return 0;
	if (d->truth == TRUTH_SO && !(d->kind == DEED_CARD && d->n == CARD_NEXT))
		return fits_so(e, d, in);
	switch ((enum deed_kind)d->kind) {
	case DEED_CARD:
		return scan(e, in, ACT_CARD, card_of(e, d));
	case DEED_DIGIT:
		return scan(e, in, ACT_DIGIT, digit_card_of(e, d));
	case DEED_MARK:
		return scan_thing(in, code_of(e, d->item));
	case DEED_PACK:
		return scan_thing(in, uncounted(e, 0));
	case DEED_BADGE:
		return d->n ? scan_person(e, in, badge_of_place(ends_sheet(e), d->n)) : badge_anybody(e, in);
	case DEED_TYPE:
		return typed(e, in);
	case DEED_SLIP:
	case DEED_NONE:
		break;
	}
	return 0;
}

/* Nothing but an OFF is waited for: the operation is over, and a band comes off. */
static int take_a_band_off(struct ends *e, const struct next *n)
{
	for (int i = 0; i < n->n_deeds; i++)
		if (n->deeds[i].truth != TRUTH_OFF || n->deeds[i].kind != DEED_DIGIT)
			return 0;
	if (!n->n_deeds)
		return 0;
	e->now.band[n->deeds[0].digit] = 0;
	return 1;
}

int truths_choose(struct ends *e, const struct next *n, struct input *in)
{
	for (int again = 0; again < 2; again++) {
		for (int i = 0; i < n->n_deeds; i++)
			if (fits(e, &n->deeds[i], in))
				return 1;
		if (!take_a_band_off(e, n))
			return 0;
	}
	return 0;
}
