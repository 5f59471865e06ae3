#include "decide/item-out.h"

#include <stdio.h>
#include <string.h>

#include "decide/count-in.h"
#include "decide/final-count.h"
#include "decide/item-in.h"
#include "decide/other-sheet.h"
#include "decide/tray.h"

/* A day may have passed since it was counted in, or a recall have come (rule 5). */
static void say_given_back(struct turn *t, const struct thing *th, int dropped)
{
	struct say why = *SAY(DROPPED_HERE);
	why.item = th->name;
	if (!dropped && !thing_fault(t, th, &why)) {
		turn_say(t, SAY(R_GIVEN_BACK, .item = th->name));
		return;
	}
	why.why = why.saying;
	why.saying = SAY_R_GIVEN_BACK_APART;
	turn_say(t, &why);
}

/* All of it leaves the count, or it is left to people to say what of it does. 1: answered. */
static int tray_leaves(struct turn *t, enum event_kind how, const struct say *say)
{
	uint8_t picked[ITEMS_MAX + 1];
	int n = tray_on_sheet(t, picked);
	if (n < 0)
		turn_refuse(t, SAY(TRAY_NOT_WHOLE, .item = t->in->line->name));
	if (n <= 0)
		return n < 0;
	for (int i = 1; i <= t->s->n_items; i++)
		if (picked[i])
			EMIT(t, .kind = how, .item = (uint8_t)i);
	turn_close_question(t);
	turn_say(t, say);
	final_progress(t);
	return 1;
}

/* Of two packs alike the station does not see which one was opened: the one that is in the hand unopened was not. The other one
 * is what went on; 0 there is none. */
static int trade_places(struct turn *t, int item)
{
	const struct item *in_hand = sheet_item_const(t->s, item);
	if (!in_hand || in_hand->thing.identity_kind != IDENTITY_PACK ||
	    !role_has(in_hand->thing.role, TRAIT_TIMED) ||
	    (in_hand->place != ITEM_ON && in_hand->place != ITEM_OFF && in_hand->place != ITEM_ACCOUNTED))
		return 0;
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *other = sheet_item_const(t->s, i);
		if (!lies_here_whole(other) || other->thing.identity_kind != IDENTITY_PACK ||
		    !item_is_alike(in_hand, other))
			continue;
		const struct thing opened = other->thing, whole = in_hand->thing;
		EMIT(t, .kind = EV_ITEM_LISTED, .item = (uint8_t)i, .thing = whole);
		EMIT(t, .kind = EV_ITEM_LISTED, .item = (uint8_t)item, .thing = opened);
		return i;
	}
	return 0;
}

/* A piece of it was shown, or looked for, in a count: it was opened, whatever its wrapper seems to say (rule 11). */
static int refuse_opened(struct turn *t, const struct item *it)
{
	if (!it->opened)
		return 0;
	turn_refuse(t, SAY(OPENED_AS_COUNTED, .item = it->thing.name));
	turn_close_question(t); /* what is looked for is asked for again */
	return 1;
}

void item_give_back(struct turn *t, int item)
{
	struct thing part;
	struct say back = *SAY(R_GIVEN_BACK, .item = t->in->thing.name), why;
	if (tray_fault(t, &part, &why)) {
		back = why;
		back.why = why.saying;
		back.saying = SAY_R_TRAY_BACK_APART;
	}
	if (!item && tray_leaves(t, EV_ITEM_RETURNED, &back))
		return;
	const int other = trade_places(t, item);
	struct item *it = sheet_item(t->s, other ? other : item);
	if (other)
		item = other;
	if (!it || it->place != ITEM_HERE || it->digit) { /* forceps that clamped are here again, and used */
		turn_refuse(t, SAY(NOT_RETURNED, .item = it ? it->thing.name : t->in->thing.name));
		return;
	}
	if (refuse_opened(t, it))
		return;
	EMIT(t, .kind = EV_ITEM_RETURNED, .item = (uint8_t)item);
	turn_close_question(t);
	say_given_back(t, &it->thing, it->dropped);
	if (other)
		turn_say_more(t, SAY(R_OTHER_PACK_USED));
	final_progress(t);
}

/* That one, without a doubt; `came_now`: it was entered with this scan, and nobody had counted it. */
static void isolated(struct turn *t, int item, int came_now)
{
	const struct item *it = sheet_item_const(t->s, item);
	int counted = 0, was_counted = t->s->initial_agreed && it->place == ITEM_HERE && !came_now;
	EMIT(t, .kind = EV_ITEM_ISOLATED, .item = (uint8_t)item);
	if (was_counted) /* the two who agreed on it count anew what is left */
		turn_owe(t, DEBT_ADDED, 0, 0);
	turn_close_question(t);
	for (int i = 0; i < t->s->n_items; i++)
		if (item_counts(&t->s->items[i]) && item_is_alike(&t->s->items[i], it))
			counted += t->s->items[i].pieces;
	turn_say(t, counted ? SAY(R_ISOLATED, .item = it->thing.name, .n = counted)
	                    : SAY(R_ISOLATED_ALL, .item = it->thing.name));
	if (was_counted)
		turn_say_more(t, SAY(R_ISOLATED_IN_USE));
	final_progress(t);
}

/* WRONG NUMBER IN PACK takes the pack that is in the hand. Without a number of its own nobody but a person knows
 * whether that one was counted in. */
void item_isolate(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (!item && tray_leaves(t, EV_ITEM_ISOLATED, SAY(R_TRAY_ISOLATED, .item = t->in->thing.name)))
		return;
	if (known && known->place == ITEM_HERE && refuse_opened(t, known))
		return;
	if (known && !t->in->thing.identity[0]) {
		turn_ask_saying(t, (struct asked){.what = Q_COUNTED_IN, .item = (uint8_t)item},
		                SAY(R_ONE_ON_SHEET, .item = known->thing.name));
		return;
	}
	const int other = trade_places(t, item);
	if (other) {
		isolated(t, other, 0);
		turn_say_more(t, SAY(R_OTHER_PACK_USED));
		return;
	}
	if (known && known->place != ITEM_HERE) {
		turn_refuse(t, SAY(NOT_ISOLATED, .item = known->thing.name));
		return;
	}
	if (!known) {
		struct thing th = t->in->thing;
		other_sheet_believe(t, &th);
		item_in(t, &th, 1);
		other_sheet_take_from(t, &th);
		item = t->s->n_items;
	}
	isolated(t, item, !known);
}

/* The item that is asked about, without a number of its own, was scanned to be isolated or added: is it the one that was
 * counted in? */
void item_counted_in_yes(struct turn *t)
{
	int item = t->s->asked.item, adds = t->s->asked.n == CARD_ADD;
	const struct item *it = sheet_item_const(t->s, item);
	if (adds) {
		turn_close_question(t);
		turn_say(t, SAY(R_LEFT_ITEM, .item = it->thing.name));
	} else if (it->place != ITEM_HERE) {
		/* what is on a digit, or was counted as back, stays in the count */
		turn_refuse(t, SAY(NOT_ISOLATED, .item = it->thing.name));
		turn_close_question(t);
	} else {
		isolated(t, item, 0);
	}
}

void item_counted_in_no(struct turn *t)
{
	const struct item *known = sheet_item_const(t->s, t->s->asked.item);
	const struct line *line = catalogue_by_key(&t->station->catalogue, known->thing.line);
	struct thing th = known->thing;
	int pieces = line ? line->per_pack : known->pieces;
	if (t->s->asked.n == CARD_ADD) {
		turn_close_question(t);
		count_in_pack(t, &th, pieces);
	} else {
		item_in(t, &th, 1);
		isolated(t, t->s->n_items, 1);
	}
}

/* What is looked for is never struck: nothing that is missing may leave the sheet as a misread. */
void item_strike(struct turn *t, int item)
{
	struct item *it = sheet_item(t->s, item);
	if (!item && t->s->final != FINAL_ASKING &&
	    tray_leaves(t, EV_ITEM_STRUCK, SAY(R_STRUCK, .item = t->in->thing.name))) {
		if (t->s->initial_agreed && t->out->reply.verdict == VERDICT_ACCEPTED)
			turn_owe(t, DEBT_ADDED, 0, 0);
		return;
	}
	int extra = it && it->place == ITEM_EXTRA; /* it never was here: the neighbour's code was read */
	if (!it || (!extra && (it->place != ITEM_HERE || it->missing || t->s->final == FINAL_ASKING))) {
		turn_refuse(t, SAY(NOT_STRUCK));
		return;
	}
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
	if (t->s->initial_agreed && !extra)
		turn_owe(t, DEBT_ADDED, 0, 0);
	turn_close_question(t);
	turn_say(t, SAY(R_STRUCK, .item = it->thing.name));
	final_progress(t);
}

void item_drop(struct turn *t, int item)
{
	uint8_t picked[ITEMS_MAX + 1];
	if (!item && tray_on_sheet(t, picked)) {
		turn_refuse(t, SAY(NOT_DROPPED_OF_TRAY));
		return;
	}
	if (!item) {
		turn_refuse(t, SAY(NOT_DROPPED, .item = t->in->thing.name));
		return;
	}
	const struct item *it = sheet_item_const(t->s, item);
	const int clamped = it->place == ITEM_ON && role_has(it->thing.role, TRAIT_CLAMPS) ? it->digit : 0;
	EMIT(t, .kind = EV_ITEM_DROPPED, .item = (uint8_t)item);
	if (clamped) /* on the floor they clamp nothing */
		EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)item);
	turn_close_question(t);
	turn_say(t, SAY(R_DROPPED, .item = it->thing.name));
	if (clamped && sheet_item_on(t->s, clamped, TRAIT_TIMED))
		turn_say_more(t, SAY(R_FORCEPS_MOVED, .digit = clamped));
}
