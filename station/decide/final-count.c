#include "decide/final-count.h"

#include <stdio.h>
#include <string.h>

#include "decide/want.h"

void final_begin(struct turn *t)
{
	int on = sheet_first_digit_on(t->s);
	if (!sheet_holds_any(t->s)) {
		turn_refuse(t, SAY(NOTHING_TO_COUNT));
		return;
	}
	if (on && sheet_digit_const(t->s, on)->state == DIGIT_MAYBE_ON) {
		turn_refuse(t, SAY(FIRST_SAY_WHETHER_ON, .digit = on));
		return;
	}
	if (on) {
		turn_refuse(t, SAY(TAKE_IT_OFF_AND_SCAN, .digit = on));
		return;
	}
	if (!t->s->initial_agreed && !t->s->single) {
		turn_refuse(t, SAY(INITIAL_NOT_AGREED));
		return;
	}
	turn_close_question(t);
	EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
	turn_say(t, t->s->discrepancy ? SAY(R_COUNTING_AGAIN) : SAY(R_FINAL));
	final_progress(t);
}

/* "Still missing: needle." of the first item that is not accounted for. */
static void say_still(struct turn *t)
{
	for (int i = 0; i < t->s->n_items; i++) {
		const struct item *it = &t->s->items[i];
		if (!item_open(it))
			continue;
		turn_say_more(t, it->place == ITEM_EXTRA ? SAY(R_STILL_EXTRA, .item = it->thing.name)
		                 : it->condition == CONDITION_PIECES_MISSING
		                     ? SAY(R_STILL_IN_PIECES, .item = it->thing.name)
		                     : SAY(R_STILL_MISSING, .item = it->thing.name));
		return;
	}
}

static void open_discrepancy(struct turn *t)
{
	if (!t->s->discrepancy) {
		EMIT(t, .kind = EV_DISCREPANCY, .n = 1);
		turn_queue_slip(t, SLIP_DISCREPANCY, t->s->case_no);
	}
	int first = t->out->events[t->out->count - 1].kind == EV_SLIP_QUEUED;
	if (first)
		turn_say_more(t, SAY(R_DISCREPANCY));
	else
		say_still(t);
}

/* After each answer: is a line still to be asked, is something missing, or can the count be agreed? */
void final_progress(struct turn *t)
{
	if (t->s->final != FINAL_ASKING || sheet_next_open(t->s))
		return;
	if (sheet_missing(t->s)) {
		open_discrepancy(t);
		return;
	}
	if (t->s->discrepancy)
		EMIT(t, .kind = EV_DISCREPANCY, .n = 0);
	final_state_alone(t);
}

/* A lone operator states the final count by answering its last line, once it is known who that is. */
void final_state_alone(struct turn *t)
{
	int32_t who = t->s->team.at[PLACE_FIELD];
	if (!t->s->single || !who || !sheet_is_ready_to_agree(t->s))
		return;
	if (t->s->discrepancy) /* what was missing or extra has been settled in another way */
		EMIT(t, .kind = EV_DISCREPANCY, .n = 0);
	EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_FINAL, .person = who, .n = who);
}

static const char *search_place(const struct turn *t)
{
	int step = t->s->search_done;
	return t->s->discrepancy && step < t->station->policy.n_search ? t->station->policy.search[step] : "";
}

static void emit_shown(struct turn *t, int item, int n, enum evidence evidence, enum condition condition,
                       enum saying remark)
{
	struct event e = {.kind = EV_ITEM_SHOWN,
	                  .item = (uint8_t)item,
	                  .n = n,
	                  .what = (uint8_t)evidence,
	                  .other = (int32_t)condition};
	int found = sheet_item_const(t->s, item)->missing != 0;
	if (remark)
		said_keep(&e.said, &(struct say){.saying = remark});
	else if (found)
		snprintf(e.text, sizeof e.text, "%s", search_place(t));
	turn_emit(t, &e);
}

static enum saying how_saying(const struct turn *t, const struct item *it)
{
	return it->evidence == EVIDENCE_MARK             ? SAY_R_HOW_MARK
	       : it->condition == CONDITION_CUT_COMPLETE ? SAY_R_HOW_CUT
	       : it->condition == CONDITION_INTACT       ? SAY_R_HOW_INTACT
	       : t->s->single                            ? SAY_R_HOW_ONE_PERSON
	                                                 : SAY_R_HOW_BOTH;
}

/* Where a thing goes that was accounted for: no sharp is left lying. */
static void say_where_it_goes(struct turn *t, const struct thing *th)
{
	if (role_has(th->role, TRAIT_SHARP))
		turn_say_more(t, SAY(R_SHARPS));
}

static void shown(struct turn *t, int item, int n, enum evidence evidence, enum condition condition,
                  enum saying remark)
{
	int found = sheet_item_const(t->s, item)->missing != 0;
	turn_close_question(t);
	emit_shown(t, item, n, evidence, condition, remark);
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place != ITEM_ACCOUNTED)
		turn_say(t, condition == CONDITION_PIECES_MISSING
		                ? SAY(R_SHOWN_PIECES_MISSING, .item = it->thing.name, .n = item_accounted(it),
		                      .all = it->pieces)
		                : SAY(R_SHOWN_OF, .item = it->thing.name, .n = it->shown, .all = it->pieces));
	else {
		turn_say(t, found ? SAY(R_FOUND_SHOWN, .item = it->thing.name, .what = how_saying(t, it),
		                        .n = it->shown, .all = it->pieces)
		                  : SAY(R_ACCOUNTED, .item = it->thing.name, .what = how_saying(t, it),
		                        .n = it->shown, .all = it->pieces));
		say_where_it_goes(t, &it->thing);
	}
	final_progress(t);
}

/* The open item that an answer is about: the one the board asks for, or a missing one that was found. */
static int asked_tourniquet(const struct turn *t)
{
	int next = t->s->asked.what == Q_FOUND ? t->s->asked.item : sheet_next_open(t->s);
	if (next && role_has(sheet_item_const(t->s, next)->thing.role, TRAIT_CONDITION))
		return next;
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = &t->s->items[i - 1];
		if (item_open(it) && it->place != ITEM_EXTRA && it->place != ITEM_ON &&
		    role_has(it->thing.role, TRAIT_CONDITION) && (t->s->discrepancy || !it->missing))
			return i;
	}
	return 0;
}

static void emit_missing(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	EMIT(t, .kind = EV_ITEM_NOT_SHOWN, .item = (uint8_t)item, .n = it->pieces - it->shown);
}

/* NO speaks of all alike that are asked for together. */
static void answer_missing(struct turn *t, int item)
{
	struct item first = *sheet_item_const(t->s, item);
	int pieces = sheet_alike_open(t->s, item), shown_before = first.shown;
	for (int i = 1; i <= t->s->n_items; i++)
		if (sheet_is_asked(t->s, i) &&
		    (i == item || item_is_alike(&first, sheet_item_const(t->s, i))))
			emit_missing(t, i);
	turn_say(t,
	         SAY(R_NOT_THERE, .item = first.thing.name, .n = shown_before, .all = pieces + shown_before));
	final_progress(t);
}

static void refuse_alike(struct turn *t, int item)
{
	turn_refuse(t, SAY(ALIKE_TOGETHER, .n = sheet_alike_open(t->s, item)));
}

/* The tourniquet that was accounted for last; 0 none. */
static int accounted_tourniquet(const struct sheet *s)
{
	for (int i = s->n_items; i >= 1; i--)
		if (role_has(s->items[i - 1].thing.role, TRAIT_CONDITION) &&
		    s->items[i - 1].place == ITEM_ACCOUNTED)
			return i;
	return 0;
}

/* The other tourniquet that an offcut can be of: one that is still asked for, else one that was shown cut; 0 none. */
static int other_cut(const struct sheet *s, int item)
{
	for (int accounted = 0; accounted < 2; accounted++)
		for (int i = s->n_items; i >= 1; i--) {
			const struct item *it = &s->items[i - 1];
			if (i != item && it->place != ITEM_EXTRA &&
			    role_has(it->thing.role, TRAIT_CONDITION) &&
			    (accounted
			         ? it->place == ITEM_ACCOUNTED && it->condition == CONDITION_CUT_COMPLETE
			         : item_open(it)))
				return i;
		}
	return 0;
}

/* Nothing was cut from the one that is whole: with several it was not seen of which an offcut was. 1: of another. */
static int offcuts_leave(struct turn *t, int item)
{
	int offcuts = sheet_item_const(t->s, item)->pieces - 1, other = other_cut(t->s, item);
	if (offcuts <= 0)
		return 0;
	EMIT(t, .kind = EV_ITEM_MORE, .item = (uint8_t)item, .n = -offcuts);
	if (!other)
		return 0;
	if (sheet_item_const(t->s, other)->place == ITEM_ACCOUNTED)
		EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)other);
	EMIT(t, .kind = EV_ITEM_MORE, .item = (uint8_t)other, .n = offcuts);
	if (sheet_item_const(t->s, other)->missing) /* its offcut is looked for as well */
		emit_missing(t, other);
	return 1;
}

static void answer_condition(struct turn *t, enum condition condition)
{
	int item = asked_tourniquet(t);
	if (!item && condition == CONDITION_PIECES_MISSING && (item = accounted_tourniquet(t->s)))
		EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)item); /* what was said of it is not so */
	if (!item) {
		turn_refuse(t, SAY(NO_TOURNIQUET_ASKED));
		return;
	}
	if (condition == CONDITION_INTACT && t->s->asked.what != Q_FOUND &&
	    sheet_alike_open(t->s, item) > 1 && sheet_item_const(t->s, item)->pieces == 1) {
		refuse_alike(t, item);
		return;
	}
	int of_other = condition == CONDITION_INTACT && offcuts_leave(t, item);
	shown(t, item, sheet_item_const(t->s, item)->pieces, EVIDENCE_SHOWN, condition, SAY_NONE);
	if (of_other)
		turn_say_more(t, SAY(R_OFFCUT_OF_OTHER));
}

/* More than are on the sheet: the rest is a surplus. */
static void emit_surplus(struct turn *t, int item, int number)
{
	struct thing th = sheet_item_const(t->s, item)->thing;
	th.identity[0] = th.lot[0] = 0; /* whose wrapper nobody has seen */
	th.identity_kind = IDENTITY_NONE;
	th.expiry = 0;
	EMIT(t, .kind = EV_EXTRA, .item = (uint8_t)(t->s->n_items + 1), .thing = th, .n = number);
}

/* So many of those alike are there, laid side by side; the rest is not (rule 22). */
static void answer_number(struct turn *t, int item, int number)
{
	struct item first = *sheet_item_const(t->s, item);
	if (first.thing.identity_kind == IDENTITY_MARK && number > 1) {
		turn_refuse(t, SAY(ONE_BY_ITS_MARK, .item = first.thing.name));
		return;
	}
	int asked = sheet_alike_open(t->s, item), left = number, last = t->s->n_items;
	enum condition condition =
	    role_has(first.thing.role, TRAIT_CONDITION) ? CONDITION_INTACT : CONDITION_NONE;
	turn_close_question(t);
	for (int i = 1; i <= last; i++) {
		if (!sheet_is_asked(t->s, i) ||
		    !(i == item || item_is_alike(&first, sheet_item_const(t->s, i))))
			continue;
		const struct item *it = sheet_item_const(t->s, i);
		int here = left < it->pieces ? left : it->pieces;
		left -= here;
		if (here || it->pieces > 1)
			emit_shown(t, i, here, EVIDENCE_SHOWN,
			           here == it->pieces ? condition : CONDITION_NONE, SAY_NONE);
		else
			emit_missing(t, i);
	}
	if (left > 0)
		emit_surplus(t, item, left);
	const struct item *now = sheet_item_const(t->s, item);
	if (number == asked) {
		turn_say(t, SAY(R_ACCOUNTED, .item = first.thing.name, .what = how_saying(t, now),
		                .n = number, .all = asked));
		say_where_it_goes(t, &first.thing);
	} else if (number > asked)
		turn_say(t, SAY(R_SHOWN_MORE, .item = first.thing.name, .n = number, .most = number - asked));
	else
		turn_say(t, SAY(R_SHOWN_OF, .item = first.thing.name, .n = number, .all = asked));
	final_progress(t);
}

/* One is asked for, and more lie there: how the one is, is asked next. */
static void more_than_the_one(struct turn *t, int item, int number)
{
	const struct thing *th = &sheet_item_const(t->s, item)->thing;
	for (int i = 1; i <= t->s->n_items; i++)
		if (t->s->items[i - 1].place == ITEM_EXTRA &&
		    strcmp(t->s->items[i - 1].thing.line, th->line) == 0) {
			turn_refuse(t,
			            SAY(SAY_HOW_IT_IS, .item = th->name)); /* the others are on the sheet */
			return;
		}
	turn_close_question(t);
	emit_surplus(t, item, number - 1);
	turn_say(t, SAY(R_SHOWN_MORE, .item = sheet_item_const(t->s, item)->thing.name, .n = number,
	                .most = number - 1));
	final_progress(t);
}

/* YES, NO, MISSING, INTACT … and SHOWN n while the final count or a search asks. `number` for SHOWN n. */
void final_answer(struct turn *t, int card, int number)
{
	if (card == CARD_INTACT || card == CARD_CUT_AND_COMPLETE || card == CARD_PIECES_MISSING) {
		answer_condition(t, card == CARD_INTACT             ? CONDITION_INTACT
		                    : card == CARD_CUT_AND_COMPLETE ? CONDITION_CUT_COMPLETE
		                                                    : CONDITION_PIECES_MISSING);
		return;
	}
	int next = sheet_next_open(t->s);
	if (card == CARD_NO || card == CARD_MISSING) {
		if (next)
			answer_missing(t, next);
		else
			turn_refuse(t, SAY(NOTHING_COULD_BE_MISSING));
		return;
	}
	int item = t->s->asked.what == Q_FOUND && t->s->asked.item ? t->s->asked.item : next;
	if (!item) {
		turn_refuse(t, sheet_missing(t->s) ? SAY(FOUND_WHEN_IN_HAND)
		               : t->s->single      ? SAY(LINES_ANSWERED_SINGLE)
		                                   : SAY(LINES_ANSWERED_CARD, .card = t->in->card));
		return;
	}
	const struct item *it = sheet_item_const(t->s, item);
	int found = t->s->asked.what == Q_FOUND;
	int tourniquet = role_has(it->thing.role, TRAIT_CONDITION), alike = sheet_alike_open(t->s, item);
	int together = !found && alike > 1 && it->pieces == 1;
	if (tourniquet && together && card == CARD_YES && alike <= 10)
		refuse_alike(t, item);
	else if (tourniquet && !together && !found && it->pieces == 1 && number > 1)
		more_than_the_one(t, item, number);
	else if (tourniquet && (!together || card == CARD_MARK_UNREADABLE))
		turn_refuse(t, SAY(SAY_HOW_IT_IS, .item = it->thing.name));
	else if (card == CARD_MARK_UNREADABLE)
		shown(t, item, it->pieces, EVIDENCE_SHOWN, CONDITION_NONE, SAY_MARK_UNREADABLE);
	else if (found)
		shown(t, item, card == CARD_YES ? it->pieces : number, EVIDENCE_SHOWN, CONDITION_NONE,
		      SAY_NONE);
	else
		answer_number(t, item, card == CARD_YES ? sheet_alike_open(t->s, item) : number);
}

/* Somebody sees after the agreement that a piece is lacking: the count begins again with that (rules 1, 10). */
void final_contradicted(struct turn *t)
{
	if (!accounted_tourniquet(t->s)) {
		turn_refuse(t, SAY(NO_PIECE_MISSING));
		return;
	}
	EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
	answer_condition(t, CONDITION_PIECES_MISSING);
}

/* An item that is on the sheet was scanned while it is being accounted for (rule 11). */
void final_mark(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place == ITEM_ACCOUNTED) {
		turn_refuse(t, SAY(ACCOUNTED_ALREADY, .item = it->thing.name));
	} else if (it->thing.identity_kind != IDENTITY_MARK) {
		turn_refuse(t, SAY(THAT_IS_THE_WRAPPER, .item = it->thing.name));
	} else if (role_has(it->thing.role, TRAIT_CONDITION)) {
		turn_refuse(t, SAY(MARK_READ_SAY_HOW));
	} else if (it->place == ITEM_ON) {
		turn_refuse(t, SAY(ITEM_ON_TAKE_OFF, .item = it->thing.name, .digit = it->digit));
	} else if (it->place == ITEM_EXTRA) {
		turn_refuse(t, SAY(IS_THE_EXTRA_ITEM, .item = it->thing.name));
	} else {
		shown(t, item, it->pieces, EVIDENCE_MARK, CONDITION_NONE, SAY_NONE);
	}
}
