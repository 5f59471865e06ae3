#include "decide/item-out.h"

#include <stdio.h>

#include "decide/count-in.h"
#include "decide/final-count.h"
#include "decide/item-in.h"
#include "decide/other-sheet.h"

/* A day may have passed since it was counted in, or a recall have come (rule 5). */
static void say_given_back(struct turn *t, const struct thing *th)
{
	struct say why;
	if (!thing_fault(t, th, &why)) {
		turn_say(t, SAY(R_GIVEN_BACK, .item = th->name));
		return;
	}
	why.why = why.saying;
	why.saying = SAY_R_GIVEN_BACK_APART;
	turn_say(t, &why);
}

void item_give_back(struct turn *t, int item)
{
	struct item *it = sheet_item(t->s, item);
	if (!it || it->place != ITEM_HERE || it->digit) { /* forceps that clamped are here again, and used */
		turn_refuse(t, SAY(NOT_RETURNED, .item = it ? it->thing.name : t->in->thing.name));
		return;
	}
	EMIT(t, .kind = EV_ITEM_RETURNED, .item = (uint8_t)item);
	turn_close_question(t);
	say_given_back(t, &it->thing);
	final_progress(t);
}

void item_isolated(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	int counted = 0;
	EMIT(t, .kind = EV_ITEM_ISOLATED, .item = (uint8_t)item);
	turn_close_question(t);
	for (int i = 0; i < t->s->n_items; i++)
		if (item_counts(&t->s->items[i]) && item_is_alike(&t->s->items[i], it))
			counted += t->s->items[i].pieces;
	turn_say(t, counted ? SAY(R_ISOLATED, .item = it->thing.name, .n = counted)
	                    : SAY(R_ISOLATED_ALL, .item = it->thing.name));
	final_progress(t);
}

/* WRONG NUMBER IN PACK takes the pack that is in the hand. Without a number of its own nobody but a person knows
 * whether that one was counted in. */
void item_isolate(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (known && !t->in->thing.identity[0] && known->place == ITEM_HERE) {
		turn_ask_saying(t, (struct asked){.what = Q_COUNTED_IN, .item = (uint8_t)item},
		                SAY(R_ONE_ON_SHEET, .item = known->thing.name));
		return;
	}
	if (known && known->place != ITEM_HERE && t->in->thing.identity[0]) {
		turn_refuse(t, SAY(NOT_ISOLATED, .item = known->thing.name));
		return;
	}
	if (!known || known->place != ITEM_HERE) {
		struct thing th = t->in->thing;
		other_sheet_believe(t, &th);
		item_in(t, &th, 1);
		other_sheet_take_from(t, &th);
		item = t->s->n_items;
	}
	item_isolated(t, item);
}

/* What is looked for is never struck: nothing that is missing may leave the sheet as a misread. */
void item_strike(struct turn *t, int item)
{
	struct item *it = sheet_item(t->s, item);
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
	if (!item) {
		turn_refuse(t, SAY(NOT_DROPPED, .item = t->in->thing.name));
		return;
	}
	EMIT(t, .kind = EV_ITEM_DROPPED, .item = (uint8_t)item);
	turn_close_question(t);
	turn_say(t, SAY(R_DROPPED, .item = sheet_item(t->s, item)->thing.name));
}
