#include "decide/next.h"

#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "decide/answer.h"
#include "decide/deeds.h"
#include "decide/owed-after-end.h"
#include "decide/phrases.h"
#include "decide/stored-list.h"
#include "decide/want.h"

/* --- a line of the final count ------------------------------------------------------------------ */

/* Things alike are laid side by side and answered once by their number; what differs, one by one (rule 22). */
static void ask_alike(struct next *n, const struct sheet *s, int item, int number)
{
	const struct item *it = sheet_item_const(s, item);
	int tourniquet = role_has(it->thing.role, TRAIT_CONDITION);
	next_say(n, SAY(HEAD_LAY, .n = number, .item = it->thing.name));
	next_add(n, deed_card_of_item(number <= 10 ? own_card_saying(CARDS_SHOWN, number) : CARD_YES, item,
	                              tourniquet ? TRUTH_ALL_INTACT : TRUTH_ALL_SHOWN));
	if (tourniquet) {
		next_add(n, deed_card_of_item(CARD_CUT_AND_COMPLETE, item, TRUTH_ONE_CUT));
		next_add(n, deed_card_of_item(CARD_PIECES_MISSING, item, TRUTH_ONE_IN_PIECES));
	}
	if (tourniquet)
		next_add(n, DEED_OF_ITEM(DIGIT, item, ON_A_DIGIT));
	next_add(n, deed_card_of_item(CARD_SHOWN_1, item, tourniquet ? TRUTH_SOME_INTACT : TRUTH_SOME_SHOWN));
	next_add(n, deed_card_of_item(CARD_NO, item, TRUTH_NONE_THERE));
}

static void ask_tourniquet(struct next *n, int item)
{
	next_add(n, deed_card_of_item(CARD_INTACT, item, TRUTH_INTACT));
	next_add(n, deed_card_of_item(CARD_CUT_AND_COMPLETE, item, TRUTH_CUT_COMPLETE));
	next_add(n, deed_card_of_item(CARD_PIECES_MISSING, item, TRUTH_PIECES_MISSING));
	next_add(n, deed_card_of_item(CARD_NO, item, TRUTH_NOT_THERE));
	next_add(n, DEED_OF_ITEM(DIGIT, item, ON_A_DIGIT));
}

/* Its number among those alike that were shown before it in this count. */
static void name_item(struct next *n, const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	int before = sheet_alike_shown(s, item), all = sheet_alike(s, item);
	if (role_has(it->thing.role, TRAIT_CONDITION) && it->pieces > 1)
		next_say(n, SAY(HEAD_SHOW_PIECES, .n = it->pieces, .item = it->thing.name));
	else if (before)
		next_say(n, before == 1 ? SAY(HEAD_SHOW_BESIDE_FIRST, .item = it->thing.name, .n = before + 1,
		                              .all = all)
		                        : SAY(HEAD_SHOW_BESIDE_OTHERS, .item = it->thing.name,
		                              .n = before + 1, .all = all));
	else if (it->thing.identity_kind == IDENTITY_MARK && all > 1)
		next_say(n, SAY(HEAD_SHOW_MARKED, .item = it->thing.name, .code = it->thing.identity));
	else
		next_say(n, SAY(HEAD_SHOW, .item = it->thing.name));
}

static void ask_item(struct next *n, const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	int number = sheet_alike_open(s, item);
	if (number > 1 && !(role_has(it->thing.role, TRAIT_CONDITION) && it->pieces > 1)) {
		ask_alike(n, s, item, number);
		return;
	}
	name_item(n, s, item);
	if (role_has(it->thing.role, TRAIT_CONDITION))
		ask_tourniquet(n, item);
	else
		deeds_shown(n, s, item, it);
}

/* --- open questions ----------------------------------------------------------------------------- */

static void ask_question(struct next *n, const struct station *st, const struct sheet *s)
{
	const struct asked *q = &s->asked;
	if (q->what == Q_FOUND && q->item)
		next_say(n, SAY(HEAD_FOUND_IS, .item = sheet_item_const(s, q->item)->thing.name));
	else if (q->what == Q_POINT)
		next_say(n, SAY(HEAD_POINT, .n = q->n, .all = st->policy.n_points,
		                .step = st->policy.points[q->n - 1]));
	else if (q->digit)
		next_say(n, SAY(HEAD_ASKED_OF_DIGIT, .digit = q->digit,
		                .question = question_saying((enum question)q->what)));
	else
		next_say(n, SAY(HEAD_ASKED, .question = question_saying((enum question)q->what)));
	answer_deeds(n, s, q);
}

/* --- debts, search, sign-out -------------------------------------------------------------------- */

static void ask_debt(struct next *n, const struct sheet *s, const struct debt *d)
{
	enum debt_kind kind = (enum debt_kind)d->kind;
	enum team_place payer = debt_payer(s, kind);
	const struct item *it = sheet_item_const(s, d->item);
	int names = it && kind != DEBT_LISTING; /* that one has no name yet */
	if (d->digit && names)
		next_say(n, SAY(HEAD_OWED_DIGIT_ITEM, .digit = d->digit, .what = debt_saying(kind),
		                .item = it->thing.name));
	else if (d->digit)
		next_say(n, SAY(HEAD_OWED_DIGIT, .digit = d->digit, .what = debt_saying(kind)));
	else if (names)
		next_say(n, SAY(HEAD_OWED_ITEM, .what = debt_saying(kind), .item = it->thing.name));
	else
		next_say(n, SAY(HEAD_OWED, .what = debt_saying(kind)));
	switch (kind) {
	case DEBT_LISTING:
		next_add(n, DEED_OF_ITEM(PACK, d->item, TO_COUNT_IN));
		n->deeds[0].truth = TRUTH_SO;
		next_add(n, DEED_OF_BADGE(payer, NAMED_ALOUD));
		return;
	case DEBT_REASON:
	case DEBT_SURGEON:
		deeds_surgeon(n, s);
		return;
	case DEBT_ON:
	case DEBT_MARKED_DIGIT:
	case DEBT_ROLLS_ON:
		deeds_yes_no(n, s, &(struct asked){.digit = d->digit});
		return;
	case DEBT_NONE:
	case DEBT_COUNT:
	case DEBT_TEAM:
	case DEBT_ADDED:
	case DEBT_NAME:
	case DEBT_HANDOVER:
	case DEBT_EXPIRY_READ:
	case DEBT_STORES_ASKED:
	case DEBT_INCIDENT:
	case DEBT_CALLED:
	case DEBT_LOOK:
	case DEBT_WARD:
	case DEBT_KINDS:
		break;
	}
	next_add(n, DEED_OF_BADGE(payer, COUNTED_ALOUD));
	if (kind == DEBT_NAME)
		n->deeds[0].truth = TRUTH_WRITTEN;
	if (kind == DEBT_EXPIRY_READ)
		n->deeds[0].truth = TRUTH_READ_ALOUD;
	if (kind == DEBT_STORES_ASKED)
		n->deeds[0].truth = TRUTH_STORES_ASKED;
}

/* Something is missing, or what is there is one too many: then its code may have been read by mistake, or its case be
 * known. */
static void found_or_misread(struct next *n, const struct sheet *s)
{
	int extra = 0, missing = 0, tourniquet = 0;
	for (int i = 0; i < s->n_items; i++) {
		int open = item_open(&s->items[i]) && s->items[i].place != ITEM_EXTRA;
		extra += s->items[i].place == ITEM_EXTRA;
		missing += open;
		if (open && !tourniquet && role_has(s->items[i].thing.role, TRAIT_TIMED))
			tourniquet = i + 1;
	}
	if (missing)
		next_add(n, DEED_OF_CARD(FOUND, FOUND));
	if (tourniquet)
		next_add(n, DEED_OF_ITEM(DIGIT, tourniquet, ON_A_DIGIT));
	if (extra)
		next_add(n, DEED_OF_CARD(MISREAD, READ_BY_MISTAKE));
	if (extra && !missing)
		next_add(n, DEED_OF_CARD(FOUND, CASE_KNOWN));
}

static void ask_search(struct next *n, const struct station *st, const struct sheet *s)
{
	int step = s->search_done;
	next_say(
	    n, SAY(HEAD_SEARCH, .n = step + 1, .all = st->policy.n_search, .step = st->policy.search[step]));
	int look = step + 1 == st->policy.look_step && sheet_digits_had(s) == 1;
	for (int i = 0; look && i < s->n_digits; i++)
		if (s->digits[i].had)
			next_add(n, DEED_OF_DIGIT(s->digits[i].number, STEP_DONE));
	if (!look) /* the card of the digit says that it was looked at, and more than STEP DONE does */
		next_add(n, DEED_OF_CARD(STEP_DONE, STEP_DONE));
	next_add(n, DEED_OF_CARD(NOT_DONE, STEP_NOT_DONE));
	found_or_misread(n, s);
}

static void ask_search_end(struct next *n, const struct sheet *s)
{
	next_say(n, SAY(HEAD_SEARCH_END));
	found_or_misread(n, s);
	next_add(n, DEED_OF_CARD(END_UNRESOLVED, GIVEN_UP));
	next_add(n, DEED_OF_CARD(FINAL_COUNT, COUNT_AGAIN));
}

static void ask_sign_out(struct next *n, const struct station *st, const struct sheet *s)
{
	if (s->point_no)
		next_say(n, SAY(HEAD_HELD, .n = s->point_no));
	else if (s->points_yes && s->points_yes == st->policy.n_points)
		next_say(n, s->single ? SAY(HEAD_POINTS_YES_SINGLE) : SAY(HEAD_POINTS_YES));
	else
		next_say(n, SAY(HEAD_READ_POINTS));
	deeds_surgeon(n, s);
	if (st->policy.n_points && s->points_yes != st->policy.n_points) {
		struct deed visitor = n->deeds[1];
		int has_visitor = n->n_deeds == 2;
		n->n_deeds = 1;
		n->deeds[0].truth = TRUTH_ALL_POINTS;
		next_add(n, DEED_OF_CARD(NO, NOT_ALL_POINTS));
		if (has_visitor)
			next_add(n, visitor);
	}
}

/* --- before the final count --------------------------------------------------------------------- */

static void ask_team(struct next *n, const struct sheet *s, enum team_place place)
{
	int on = sheet_first_digit_on(s);
	if (on)
		next_say(n, SAY(HEAD_WHO_COUNTS, .digit = on));
	else if (place == PLACE_CIRCULATING)
		next_say(n, SAY(HEAD_WHO_CIRCULATES));
	else
		next_say(n, s->single ? SAY(HEAD_WHO_WORKS_ALONE) : SAY(HEAD_BEFORE_SCRUBBING));
	next_add(n, DEED_OF_BADGE(place, SO));
	if (!s->single && team_surgeon_may_count(&s->team, place))
		next_add(n, DEED_OF_BADGE(PLACE_SURGEON, NOBODY_SCRUBS));
	if (place == PLACE_FIELD)
		next_add(n, DEED_OF_CARD(VISITOR_1, NO_BADGE));
}

static void ask_count_in(struct next *n, const struct sheet *s)
{
	struct deed pack = {.kind = DEED_PACK, .truth = TRUTH_TO_COUNT_IN};
	if (!sheet_holds_any(s)) {
		next_say(n, SAY(HEAD_COUNT_IN));
		next_add(n, pack);
		next_add(n, DEED_OF_CARD(CANCEL, NO_OPERATION));
	} else if (s->single) {
		next_say(n, SAY(HEAD_WHEN_ON_SINGLE));
		next_add(n, DEED_OF_DIGIT(0, ON));
		next_add(n, DEED_OF_CARD(FINAL_COUNT, NOTHING_USED));
	} else {
		next_say(n, SAY(HEAD_COUNT_IN));
		next_add(n, pack);
		next_add(n, DEED_OF_BADGE(PLACE_CIRCULATING, ALL_COUNTED));
	}
}

static void ask_off_of(struct next *n, const struct sheet *s)
{
	next_say(n, sheet_digits_on(s) > 1 ? SAY(HEAD_WHEN_ONE_OFF, .list = NULL)
	                                   : SAY(HEAD_WHEN_OFF, .list = NULL));
	deeds_digits_on(n, s, TRUTH_OFF);
}

static void ask_reminder(struct next *n, const struct sheet *s, int digit, struct moment now)
{
	const struct digit *d = sheet_digit_const(s, digit);
	struct say head = {.saying = d->state == DIGIT_OFF ? SAY_HEAD_REMIND_OFF
	                             : s->single           ? SAY_HEAD_REMIND_SINGLE
	                                                   : SAY_HEAD_REMIND,
	                   .digit = digit};
	head.what = digit_minutes(d, now, &head.minutes, &head.most);
	next_say(n, &head);
	next_add(n, DEED_OF_BADGE(s->single ? PLACE_FIELD : 0, TOLD));
}

static void ask_idle(struct next *n, const struct sheet *s, const struct station_view *after)
{
	if (after->asked) {
		next_say(n, SAY(HEAD_ASKED, .question = question_saying((enum question)after->asked)));
		answer_deeds(n, s, &(struct asked){.what = after->asked});
	} else {
		if (after->owed.case_no && !after->suspended)
			after_end_ask(n, &after->owed);
		else if (after->suspended)
			next_say(n, SAY(HEAD_SUSPENDED, .case_no = after->suspended));
		else
			next_say(n, after->unseen ? SAY(HEAD_PAPER) : SAY(HEAD_NEXT_PATIENT));
		if (after->suspended)
			next_add(n, DEED_OF_CARD(SUSPEND, RESUME));
		if (after->unseen)
			next_add(n, (struct deed){.kind = DEED_SLIP, .truth = TRUTH_PAPER_IN_HAND});
		next_add(n, DEED_OF_CARD(NEW_CASE, NEXT_PATIENT));
		if (!after->unseen && !after->suspended && !after->owed.case_no)
			n->deeds[0].truth = TRUTH_SO;
	}
}

static void ask_want(struct next *n, const struct station *st, const struct sheet *s, struct moment now,
                     const struct want *w)
{
	switch (w->kind) {
	case WANT_NOTHING: /* next_after() */
		return;
	case WANT_RESUME:
		next_say(n, SAY(HEAD_SUSPENDED, .case_no = s->case_no));
		next_add(n, DEED_OF_CARD(SUSPEND, RESUME));
		next_add(n, DEED_OF_CARD(NEW_CASE, NEXT_PATIENT));
		return;
	case WANT_ANSWER:
		ask_question(n, st, s);
		return;
	case WANT_SEARCH:
		ask_search(n, st, s);
		return;
	case WANT_SEARCH_END:
		ask_search_end(n, s);
		return;
	case WANT_ITEM:
		ask_item(n, s, w->item);
		return;
	case WANT_TEAM:
		ask_team(n, s, w->place);
		return;
	case WANT_FINAL_AGREED:
		next_say(n, SAY(HEAD_AGREE_FINAL));
		next_add(n, DEED_OF_BADGE(s->single ? PLACE_FIELD : PLACE_CIRCULATING, SO));
		return;
	case WANT_LOOK:
		if (s->dressing_on)
			next_say(n, SAY(HEAD_LOOK_DRESSING, .digit = w->digit));
		else if (s->patient_left)
			next_say(n, SAY(HEAD_LOOK_LEFT, .digit = w->digit));
		else
			next_say(n, SAY(HEAD_LOOK, .digit = w->digit));
		next_add(n, DEED_OF_DIGIT(w->digit, SEEN_BARE));
		next_add(n, DEED_OF_CARD(NO, IS_ON_NOW));
		n->deeds[1].digit = (uint8_t)w->digit;
		return;
	case WANT_DEBT:
		ask_debt(n, s, &w->debt);
		return;
	case WANT_WHO_LOOKED:
		next_say(n, SAY(HEAD_ASKED, .question = question_saying(Q_WHO_LOOKED)));
		answer_deeds(n, s, &(struct asked){.what = Q_WHO_LOOKED});
		return;
	case WANT_SIGN_OUT:
		ask_sign_out(n, st, s);
		return;
	case WANT_REMINDER:
		ask_reminder(n, s, w->digit, now);
		return;
	case WANT_COUNT_IN:
		ask_count_in(n, s);
		return;
	case WANT_OFF:
		ask_off_of(n, s);
		return;
	case WANT_FINAL:
		next_say(n, s->patient_left ? SAY(HEAD_FINAL_LEFT) : SAY(HEAD_FINAL));
		next_add(n, DEED_OF_CARD(FINAL_COUNT, SO));
		return;
	case WANT_ON:
		next_say(n, SAY(HEAD_WHEN_ON));
		next_add(n, DEED_OF_DIGIT(0, ON));
		next_add(n, DEED_OF_CARD(FINAL_COUNT, NOTHING_USED));
		return;
	}
}

static void ask_at_desk(struct next *n)
{
	next_say(n, SAY(HEAD_AUDIT_DESK));
	next_add(n, (struct deed){.kind = DEED_SLIP, .truth = TRUTH_PAPER_IN_HAND});
}

/* Scans that are held are asked about, whatever else is wanted. Whether there are any. */
static int ask_stored(struct next *n, const struct station *st, const struct sheet *s,
                      const struct station_view *after)
{
	int32_t in_case = s->suspended ? 0 : s->case_no;
	enum question q = (enum question)(in_case ? s->asked.what : after->asked);
	return question_of_stored(q) && stored_question(st, after->room, after->out, q, in_case, n);
}

void next_after(const struct station *st, const struct sheet *s, struct moment now,
                const struct station_view *after, struct next *n)
{
	struct want w = sheet_wants(st, s);
	if (!ask_stored(n, st, s, after)) {
		if (station_room_is(st, after->room, ROOM_OF_AUDIT))
			ask_at_desk(n);
		else if (w.kind == WANT_NOTHING)
			ask_idle(n, s, after);
		else
			ask_want(n, st, s, now, &w);
	}
	next_word(n, s, after->last);
}

void next_step(const struct station *st, const struct sheet *s, int32_t room, struct moment now,
               struct next *n)
{
	int i = station_room_index(st, room);
	struct station_view here = {.room = room, .unseen = station_unseen_in(st, room)};
	int suspended = station_suspended_in(st, room);
	if (suspended >= 0)
		here.suspended = st->sheets[suspended].case_no;
	if (i >= 0) {
		here.asked = st->idle_asked[i];
		here.last = st->idle_last[i];
	}
	after_end_first(st, room, NULL, 0, &here.owed);
	next_after(st, s, now, &here, n);
}
