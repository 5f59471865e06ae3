/* Packs and instruments, as they are scanned: what this one may be, and who deals with it (rules 4, 5, 11, 21). */
#include "decide/pack.h"

#include <string.h>

#include "decide/answer.h"
#include "decide/count-in.h"
#include "decide/extra.h"
#include "decide/final-count.h"
#include "decide/other-sheet.h"
#include "decide/owed-after-end.h"
#include "decide/tray.h"
#include "decide/want.h"

/* A pack that is on the sheet without a number of its own; where one is spoken of that lies in a hand, one that lies here unused
 * before any other. 0 none. */
static int item_of_line(const struct sheet *s, const struct thing *th, int in_hand)
{
	for (int unused = in_hand; unused >= 0; unused--)
		for (int i = s->n_items; i >= 1; i--) {
			const struct item *it = &s->items[i - 1];
			if (item_counts(it) && strcmp(it->thing.line, th->line) == 0 &&
			    (!th->lot[0] || strcmp(it->thing.lot, th->lot) == 0) &&
			    (!unused || lies_here_whole(it)))
				return i;
		}
	return 0;
}

static int known_item(const struct turn *t)
{
	const struct thing *th = &t->in->thing;
	const enum question q = turn_asked(t);
	int item = sheet_item_by_identity(t->s, th->identity);
	if (!item && !th->identity[0] && th->line[0])
		item = item_of_line(t->s, th,
		                    q == Q_RETURNED || q == Q_ISOLATE || q == Q_DROPPED || q == Q_MOVE_TO);
	return item;
}

/* The code of a tray whose things are on the sheet. */
static int tray_is_counted_in(const struct turn *t)
{
	for (int k = 0; t->in->act == ACT_TRAY && k < LINE_CONTENTS_MAX && t->in->line->contents[k].key[0];
	     k++)
		for (int i = 0; i < t->s->n_items; i++)
			if (item_counts(&t->s->items[i]) &&
			    strcmp(t->s->items[i].thing.line, t->in->line->contents[k].key) == 0)
				return 1;
	return 0;
}

/* A code that stands on the sheet already. */
static void seen_again(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place == ITEM_ISOLATED) {
		turn_refuse(t, SAY(IS_ISOLATED, .item = it->thing.name));
	} else if (t->s->final == FINAL_ASKING || t->s->discrepancy) {
		final_mark(t, item);
	} else if (it->place == ITEM_ON && role_has(it->thing.role, TRAIT_CLAMPS)) {
		turn_refuse(t, SAY(FORCEPS_ON_ALREADY, .item = it->thing.name, .digit = it->digit));
	} else if (it->place == ITEM_ON) {
		turn_refuse(t, SAY(WRAPPER_PROVES_NO_MORE, .item = it->thing.name, .digit = it->digit));
	} else {
		turn_refuse(t, SAY(NOT_COUNTED_TWICE, .item = it->thing.name));
	}
}

/* What an ended case looks for, or counted as back, and lies here now (rule 21). */
static int comes_from_ended_case(const struct turn *t)
{
	const struct input *in = t->in;
	return in->known.used_in &&
	       (!in->known.used_back || (in->thing.identity_kind == IDENTITY_MARK && in->thing.single_use));
}

/* It acts on its own case, whatever is open here; nothing of it is entered on this sheet. */
static void found_of_ended_case(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	int32_t case_no = t->in->known.used_in;
	if (t->in->thing.identity_kind !=
	    IDENTITY_MARK) { /* a label or wrapper proves only itself (rule 11) */
		turn_refuse(t, SAY(WRAPPER_OF_MISSING, .item = th->name, .case_no = case_no));
		return;
	}
	if (turn_asked(t) == Q_FOUND)
		turn_close_question(t);
	turn_found_after(t, case_no, th);
	after_end_found(t, case_no);
	EMIT(t, .kind = EV_ITEM_USED, .case_no = case_no, .thing = *th, .n = 1);
	turn_say(t, t->in->known.used_back
	                ? SAY(R_FOUND_COUNTED_THERE, .item = th->name, .case_no = case_no)
	                : SAY(R_FOUND_MISSING_THERE, .item = th->name, .case_no = case_no));
}

static void without_case(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	if (turn_asked(t) == Q_FOUND) {
		turn_close_question(t);
		if (t->in->known.used_in)
			turn_refuse(t,
			            SAY(WRAPPER_OF_ENDED, .item = th->name, .case_no = t->in->known.used_in));
		else
			turn_refuse(t, th->name[0] ? SAY(WHICH_CASE_OF, .item = th->name) : SAY(WHICH_CASE));
		return;
	}
	int suspended = station_suspended_in(t->station, t->in->room);
	if (suspended >= 0)
		turn_refuse(t, SAY(SUSPENDED_THEN_THIS, .case_no = t->station->sheets[suspended].case_no,
		                   .room = station_room_name(t->station, t->in->room)));
	else
		turn_refuse(t, SAY(NO_CASE_THEN_THIS, .room = station_room_name(t->station, t->in->room)));
}

/* What lay on the floor went on all the same: it is the tourniquet that was entered as not listed. */
static int dropped_is_on(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	const int entered = sheet_owes_listing(t->s);
	if (!entered || !it || !it->dropped || it->place != ITEM_HERE ||
	    !role_has(it->thing.role, TRAIT_TIMED))
		return 0;
	const struct item was = *sheet_item_const(t->s, entered);
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)entered);
	if (was.digit)
		EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = was.digit);
	if (was.digit && was.place != ITEM_ON)
		EMIT(t, .kind = EV_ITEM_OFF, .item = (uint8_t)item, .digit = was.digit);
	turn_pay(t, DEBT_LISTING, entered, 0, PAID_PACK);
	turn_say(t, SAY(R_DROPPED_IS_THAT, .item = it->thing.name));
	final_progress(t);
	return 1;
}

void thing_take(struct turn *t)
{
	int on_this_sheet = turn_has_case(t) ? sheet_item_by_identity(t->s, t->in->thing.identity) : 0;
	int late = turn_has_case(t) && sheet_owes_listing(t->s) && role_has(t->in->thing.role, TRAIT_TIMED);
	if (!on_this_sheet && !late && t->in->known.unasked) {
		turn_refuse_unasked(t);
		return;
	}
	if (!on_this_sheet && !late && comes_from_ended_case(t)) {
		found_of_ended_case(t);
		return;
	}
	if (!on_this_sheet && !late && other_sheet_found(t) == ANSWERED)
		return;
	if (!turn_has_case(t)) {
		without_case(t);
		return;
	}
	int item = known_item(t);
	if (answer_thing(t, item) == ANSWERED)
		return;
	if (late && dropped_is_on(t, on_this_sheet))
		return;
	int extra = on_this_sheet && sheet_item_const(t->s, on_this_sheet)->place == ITEM_EXTRA;
	if (late && extra) { /* what turned up is what is on */
		turn_close_question(t);
		EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)on_this_sheet);
	}
	if ((late && (extra || !on_this_sheet)) || (t->s->asked.what == Q_ADD && !item)) {
		count_in_thing(t);
		return;
	}
	if (item && sheet_item_const(t->s, item)->place == ITEM_EXTRA) { /* whatever was answered before */
		extra_ask(t, item);
		return;
	}
	if (on_this_sheet && sheet_item_const(t->s, on_this_sheet)->place != ITEM_RETURNED) {
		seen_again(t, on_this_sheet);
		return;
	}
	if (sheet_is_counting(t->s)) {
		if (tray_is_counted_in(t))
			turn_refuse(t, SAY(TRAY_THING_BY_THING));
		else if (item)
			final_mark(t, item);
		else
			extra_turned_up(t);
		return;
	}
	count_in_thing(t);
}
