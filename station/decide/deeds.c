#include "decide/deeds.h"

#include "code/own-codes.h"

struct deed deed_card_of_item(int card, int item, enum truth truth)
{
	return (struct deed){.kind = DEED_CARD, .n = card, .item = (uint8_t)item, .truth = (uint8_t)truth};
}

void deeds_shown(struct next *n, const struct sheet *s, int item, const struct item *it)
{
	if (it->thing.identity_kind == IDENTITY_MARK)
		next_add(n, DEED_OF_ITEM(MARK, item, MARK_READ));
	next_add(n, deed_card_of_item(CARD_YES, item, s->single ? TRUTH_SHOWN_ALONE : TRUTH_SHOWN));
	next_add(n, deed_card_of_item(CARD_NO, item, TRUTH_NOT_THERE));
}

void deeds_yes_no(struct next *n, const struct sheet *s, const struct asked *q)
{
	struct deed yes = DEED_OF_CARD(YES, YES), no = DEED_OF_CARD(NO, NO);
	(void)s;
	yes.item = no.item = q->item;
	yes.digit = no.digit = q->digit;
	next_add(n, yes);
	next_add(n, no);
}

/* --- a tourniquet and its digit ----------------------------------------------------------------- */

void deeds_is_on(struct next *n, const struct sheet *s, const struct asked *q)
{
	const struct digit *d = sheet_digit_const(s, q->digit);
	struct deed yes = DEED_OF_CARD(YES, ON), no = DEED_OF_CARD(NO, NOT_ON),
	            never = DEED_OF_CARD(MISREAD, NEVER_OFF);
	yes.digit = no.digit = never.digit = q->digit;
	if (d && d->had)
		yes.truth = TRUTH_ON_AGAIN;
	else if (!s->initial_agreed && !sheet_is_empty(s))
		no.truth = TRUTH_NOT_ON_YET;
	next_add(n, yes);
	next_add(n, no);
	if (d && d->had)
		next_add(n, never);
}

void deeds_off(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	struct deed off = DEED_OF_CARD(OFF, OFF), no = DEED_OF_CARD(NO, STILL_ON),
	            add = DEED_OF_CARD(ADD, SECOND_ON);
	off.digit = no.digit = add.digit = q->digit;
	next_add(n, off);
	next_add(n, no);
	next_add(n, add);
}

void deeds_digits_on(struct next *n, const struct sheet *s, enum truth truth)
{
	for (int i = 0; i < s->n_digits; i++)
		if (digit_is_on(&s->digits[i]))
			next_add(n, (struct deed){.kind = DEED_DIGIT,
			                          .digit = s->digits[i].number,
			                          .truth = (uint8_t)truth});
}

void deeds_which_off(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)q;
	deeds_digits_on(n, s, TRUTH_CAME_OFF);
	next_add(n, DEED_OF_CARD(NO, AS_ENTERED));
}

static int may_be_never_on(const struct sheet *s, int digit)
{
	const struct item *it = sheet_item_const(s, sheet_item_last_on(s, digit));
	return !it || it->place != ITEM_ACCOUNTED;
}

void deeds_move_to(struct next *n, const struct sheet *s, const struct asked *q)
{
	next_add(n, q->digit ? DEED_OF_DIGIT(0, OTHER_DIGIT) : DEED_OF_ITEM(PACK, 0, SO));
	if (q->digit && may_be_never_on(s, q->digit)) {
		struct deed never = DEED_OF_CARD(YES, NEVER_ON);
		never.digit = q->digit;
		next_add(n, never);
	}
	next_add(n, DEED_OF_CARD(NO, AS_ENTERED));
}

/* --- an item ------------------------------------------------------------------------------------ */

void deeds_pack(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	next_add(n, DEED_OF_ITEM(PACK, 0, SO));
	next_add(n, DEED_OF_CARD(NO, AS_ENTERED));
}

void deeds_mark(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	next_add(n, DEED_OF_ITEM(MARK, 0, SO));
	next_add(n, DEED_OF_CARD(NO, AS_ENTERED));
}

static void deeds_found_item(struct next *n, const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	if (role_has(it->thing.role, TRAIT_CONDITION)) {
		next_add(n, deed_card_of_item(CARD_INTACT, item, TRUTH_INTACT));
		next_add(n, deed_card_of_item(CARD_CUT_AND_COMPLETE, item, TRUTH_CUT_COMPLETE));
		next_add(n, deed_card_of_item(CARD_PIECES_MISSING, item, TRUTH_PIECES_MISSING));
	} else {
		deeds_shown(n, s, item, it);
		n->n_deeds--;
	}
	next_add(n, deed_card_of_item(CARD_NO, item, TRUTH_SOMETHING_ELSE));
}

void deeds_found(struct next *n, const struct sheet *s, const struct asked *q)
{
	if (q->item) {
		deeds_found_item(n, s, q->item);
		return;
	}
	next_add(n, DEED_OF_ITEM(MARK, 0, FOUND));
	next_add(n, (struct deed){.kind = DEED_SLIP, .truth = TRUTH_NO_NUMBER});
	next_add(n, DEED_OF_CARD(NO, AS_ENTERED));
}

/* --- people ------------------------------------------------------------------------------------- */

static void badge_or_no(struct next *n, int place)
{
	next_add(n, DEED_OF_BADGE(place, SO));
	next_add(n, DEED_OF_CARD(NO, AS_ENTERED));
}

void deeds_anybody(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	badge_or_no(n, 0);
}

void deeds_circulating(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	badge_or_no(n, PLACE_CIRCULATING);
}

void deeds_field(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	badge_or_no(n, PLACE_FIELD);
}

/* The card of a visitor who is here to watch, else the first that nobody has. */
static int visitor_card(const struct sheet *s)
{
	if (s->team.at[PLACE_VISITOR])
		return own_card_saying(CARDS_VISITORS, -s->team.at[PLACE_VISITOR]);
	for (int v = 1; v <= VISITORS_MAX; v++)
		if (!team_place_of(&s->team, -v))
			return own_card_saying(CARDS_VISITORS, v);
	return CARD_VISITOR_1;
}

/* A visitor has no badge: the card stands for one where a surgeon is asked for. */
void deeds_surgeon(struct next *n, const struct sheet *s)
{
	int32_t who = s->team.at[PLACE_SURGEON];
	if (who < 0)
		next_add(n, (struct deed){.kind = DEED_CARD,
		                          .n = own_card_saying(CARDS_VISITORS, -who),
		                          .truth = TRUTH_SO});
	else
		next_add(n, DEED_OF_BADGE(s->single ? PLACE_FIELD : PLACE_SURGEON, SO));
	if (!who && !s->single)
		next_add(n, (struct deed){.kind = DEED_CARD, .n = visitor_card(s), .truth = TRUTH_NO_BADGE});
}

void deeds_surgeon_ends(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)q;
	deeds_surgeon(n, s);
	next_add(n, DEED_OF_CARD(NO, GO_ON));
}

void deeds_incident(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	next_add(n, (struct deed){.kind = DEED_TYPE, .truth = TRUTH_NUMBER_KNOWN});
	next_add(n, DEED_OF_CARD(NOT_DONE, NUMBER_OWED));
}

void deeds_who_looked(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	(void)q;
	next_add(n, DEED_OF_CARD(LOOKED_PATIENT, PATIENT));
	next_add(n, DEED_OF_CARD(LOOKED_CARER, CARER));
	next_add(n, DEED_OF_CARD(LOOKED_COLLEAGUE, COLLEAGUE));
	next_add(n, DEED_OF_CARD(LOOKED_NOBODY, NOBODY));
}

void deeds_handover_seen(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)s;
	next_add(n, DEED_OF_DIGIT(q->digit, FULL_SIGHT));
	next_add(n, DEED_OF_CARD(WITHOUT_FULL_SIGHT, NO_FULL_SIGHT));
}

void deeds_handover_agree(struct next *n, const struct sheet *s, const struct asked *q)
{
	(void)q;
	next_add(n, DEED_OF_BADGE(s->single ? PLACE_FIELD : PLACE_CIRCULATING, SO));
}
