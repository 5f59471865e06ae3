#include "decide/answer.h"

#include <string.h>

#include "decide/agree.h"
#include "decide/count-in.h"
#include "decide/digit-clock.h"
#include "decide/end.h"
#include "decide/expiry.h"
#include "decide/extra.h"
#include "decide/final-count.h"
#include "decide/handover.h"
#include "decide/item-in.h"
#include "decide/item-out.h"
#include "decide/other-sheet.h"
#include "decide/phrases.h"
#include "decide/search.h"
#include "decide/stored-answer.h"
#include "decide/visitor.h"
#include "decide/want.h"

static void is_not_on(struct turn *t, int digit)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	int32_t case_no = t->s->case_no;
	int had = d && d->had;
	EMIT(t, .kind = EV_DIGIT_NOT_ON, .digit = (uint8_t)digit);
	turn_pay(t, DEBT_ON, 0, digit, PAID_NOT_ON);
	turn_close_question(t);
	if (sheet_is_empty(t->s)) {
		EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_NOTHING_OPENED);
		turn_accept(t, "Not on: %s. Case %d ended as cancelled; nothing was counted in.",
		            own_digit_name(digit), (int)case_no);
	} else if (!had && !t->s->initial_agreed) {
		EMIT(t, .kind = EV_DIGIT_MARKED, .digit = (uint8_t)digit);
		turn_accept(t, "Marked digit: %s.", own_digit_name(digit));
	} else if (had && search_is_look_step(t) && sheet_digits_had(t->s) == 1) {
		search_answered(t, 1);
	} else {
		turn_accept(t, "Not on: %s.", own_digit_name(digit));
	}
}

/* It is timed from the scan that asked, not from the answer. */
static void answer_is_on(struct turn *t, int yes)
{
	int digit = t->s->asked.digit;
	if (!yes) {
		is_not_on(t, digit);
		return;
	}
	turn_pay(t, DEBT_ON, 0, digit, PAID_IS_ON);
	digit_start_on(t, digit);
}

static void answer_never_off(struct turn *t)
{
	const struct digit *d = sheet_digit_const(t->s, t->s->asked.digit);
	if (d && d->state == DIGIT_OFF)
		digit_never_off(t, d->number);
	else /* the wrong card was read: its clock belongs to another digit */
		turn_ask(t, (struct asked){.what = Q_MOVE_TO, .digit = t->s->asked.digit}, "Misread: the %s.",
		         own_digit_name(t->s->asked.digit));
}

static void answer_rolls_on(struct turn *t, int yes)
{
	int item = t->s->asked.item;
	turn_close_question(t);
	if (!yes) {
		turn_accept(t, "No open wound, flap, infection or tumour on the digit, says the team.");
		return;
	}
	turn_owe(t, DEBT_SURGEON, item, 0);
	turn_accept(t,
	            "Noted. A tourniquet that rolls on may carry infection or tumour along and tear a flap.");
}

static void answer_extra(struct turn *t, int yes)
{
	int item = t->s->asked.item;
	turn_close_question(t);
	if (yes) {
		extra_opened_here(t, item);
	} else {
		turn_accept(t, "Extra item, origin not known: isolate it, keep it in the room. A misread: "
		               "scan MISREAD, then its code.");
	}
	final_progress(t);
}

static void answer_right_digit(struct turn *t, int yes)
{
	int digit = t->s->asked.digit;
	if (!yes) {
		turn_ask(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit}, "Not the %s.",
		         own_digit_name(digit));
		return;
	}
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_RIGHT_DIGIT);
	turn_close_question(t);
	turn_accept(t, "The %s is right, says the team.", own_digit_name(digit));
}

/* A tourniquet that went on another digit than the marked one, and was entered as it was. 1 where that is it. */
static int leaves_wrong_digit(struct turn *t)
{
	int digit = t->s->asked.digit;
	if (!debts_owes(&t->s->debts, (struct debt){.kind = DEBT_MARKED_DIGIT, .digit = (uint8_t)digit}))
		return 0;
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_OTHER_DIGIT);
	turn_close_question(t);
	turn_accept(t,
	            "Left as it is: it went on the %s, which is not the marked digit. Tell the surgeon now.",
	            own_digit_name(digit));
	return 1;
}

static void answer_here_now(struct turn *t, int yes)
{
	struct asked q = t->s->asked;
	int index = station_sheet_of_case(t->station, q.n);
	const struct item *it = index >= 0 ? sheet_item_const(&t->station->sheets[index], q.item) : NULL;
	turn_close_question(t);
	if (!yes || !it || it->place != ITEM_HERE) {
		turn_accept(t, "Left as it is.");
		return;
	}
	struct thing th = it->thing;
	other_sheet_take_from(t, &th);
	count_in_pack(t, &th, it->pieces);
}

/* A pack of the same line and lot, without a number, while another tourniquet is not listed: it may be the same pack
 * read again. The thing itself is told by the item that it is like. */
static void answer_listed_already(struct turn *t, int yes)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	struct thing th = sheet_item_const(t->s, t->s->asked.item)->thing;
	int item = d ? d->item : 0;
	turn_close_question(t);
	if (yes || !item) {
		turn_accept(t, "Listed once: %s.", th.name);
		return;
	}
	count_in_list_late(t, &th, item, NULL);
	expiry_owe(t, item, item);
}

static void answer_counted_in(struct turn *t, int yes)
{
	int item = t->s->asked.item, adds = t->s->asked.n == CARD_ADD;
	const struct item *known = sheet_item_const(t->s, item);
	struct thing th = known->thing;
	if (adds) {
		const struct line *line = catalogue_by_key(&t->station->catalogue, th.line);
		int pieces = line ? line->per_pack : known->pieces;
		turn_close_question(t);
		if (yes)
			turn_accept(t, "Left as it is: %s.", th.name);
		else
			count_in_pack(t, &th, pieces);
		return;
	}
	if (!yes) {
		item_in(t, &th, 1);
		item = t->s->n_items;
	}
	item_isolated(t, item);
}

/* ADD, and what stands on the sheet. With a number it is that one. Without, while a count goes on, it may be the
 * wrapper of what is counted, or a further pack: only a person knows. 1 where this was the answer. */
static int adds_again(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (!known || sheet_owes_listing(t->s))
		return 0;
	if (!t->in->thing.identity[0]) {
		if (!sheet_is_counting(t->s))
			return 0;
		turn_ask(t, (struct asked){.what = Q_COUNTED_IN, .item = (uint8_t)item, .n = CARD_ADD},
		         "%s: one is on the sheet.", known->thing.name);
		return 1;
	}
	turn_close_question(t);
	return 0;
}

/* Questions that a pack or an instrument answers. 1 where it did. */
int answer_thing(struct turn *t, int item)
{
	switch ((enum question)t->s->asked.what) {
	case Q_RETURNED:
		item_give_back(t, item);
		return 1;
	case Q_ISOLATE:
		item_isolate(t, item);
		return 1;
	case Q_DROPPED:
		if (!item && !sheet_owes_listing(t->s)) {
			turn_refuse(t, SAY(NOT_DROPPED, .item = t->in->thing.name));
			return 1;
		}
		if (!item)
			return 0;
		EMIT(t, .kind = EV_ITEM_DROPPED, .item = (uint8_t)item);
		turn_close_question(t);
		turn_accept(t, "Dropped: %s. It stays in the room and in the count.",
		            sheet_item(t->s, item)->thing.name);
		return 1;
	case Q_MOVE_TO:
		item_strike(t, item);
		return 1;
	case Q_FOUND:
		if (!item)
			return 0;
		final_mark(t, item);
		return 1;
	case Q_ADD:
		return adds_again(t, item);
	default:
		return 0;
	}
}

/* Questions that a digit card answers. 1 where it did. */
int answer_digit(struct turn *t, int digit)
{
	switch ((enum question)t->s->asked.what) {
	case Q_WHICH_OFF: {
		const struct digit *d = sheet_digit_const(t->s, digit);
		if (!d || (d->state != DIGIT_ON && d->state != DIGIT_MAYBE_ON))
			return 0;
		digit_take_off(t, digit);
		return 1;
	}
	case Q_MOVE_TO:
		if (!t->s->asked.digit) { /* nothing was timed that could move: this is a fact of its own */
			turn_close_question(t);
			return 0;
		}
		digit_move_to(t, digit);
		return 1;
	case Q_HANDOVER_SEEN:
		handover_seen_on(t, digit);
		return 1;
	default:
		return 0;
	}
}

/* Questions that a badge answers. 1 where it did. */
int answer_badge(struct turn *t, const struct person *p, enum team_place place)
{
	switch ((enum question)t->s->asked.what) {
	case Q_HANDOVER_OUT:
		return handover_out(t, p, place);
	case Q_HANDOVER_STAYS:
		handover_stays(t, p, place);
		return 1;
	case Q_HANDOVER_IN:
		handover_in(t, p, place);
		return 1;
	case Q_HANDOVER_AGREE:
		if (!place && !t->s->single && !t->s->team.at[PLACE_CIRCULATING])
			return 0; /* joins first */
		handover_agree(t, p->number);
		return 1;
	case Q_SURGEON_ENDS:
		case_surgeon_ends(t, p, place);
		return 1;
	case Q_FIELD_TOO:
		if (place == PLACE_FIELD)
			count_agree(t, p->number);
		else
			turn_refuse(t, SAY(BOTH_BADGES_NEEDED));
		return 1;
	case Q_VISITOR:
		visitor_vouch(t, p, place);
		return 1;
	case Q_WITNESS:
		if (place == PLACE_CIRCULATING)
			sign_out_witnessed(t, p->number);
		else
			turn_refuse(t, SAY(CIRCULATING_WITNESSES));
		return 1;
	default:
		return 0;
	}
}

/* YES or NO to the open question. */
static int answer_yes_no(struct turn *t, int yes)
{
	switch ((enum question)t->s->asked.what) {
	case Q_IS_ON:
		answer_is_on(t, yes);
		return 1;
	case Q_ROLLS_ON:
		answer_rolls_on(t, yes);
		return 1;
	case Q_RIGHT_DIGIT:
		answer_right_digit(t, yes);
		return 1;
	case Q_EXTRA:
		answer_extra(t, yes);
		return 1;
	case Q_POINT:
		sign_out_point(t, yes);
		return 1;
	case Q_CANCEL:
		if (yes) {
			case_cancel(t);
			return 1;
		}
		break;
	case Q_LEAVES:
		if (yes) {
			char open[OPEN_WORDS_MAX];
			EMIT(t, .kind = EV_PATIENT_LEFT);
			turn_close_question(t);
			sheet_open_words(t->s, open);
			turn_accept(t, "The patient has left the room.%s%s", open,
			            *open ? " Tell the surgeon and the ward now." : "");
			return 1;
		}
		break;
	case Q_NO_CODE:
		turn_close_question(t);
		item_add_unlisted(t, yes ? ROLE_TOURNIQUET : ROLE_OTHER,
		                  yes ? SAY_TOURNIQUET_NO_CODE : SAY_ITEM_NO_CODE);
		turn_accept(t, "Counted in: %s. Say aloud what it is and write it on the paper sheet.",
		            t->s->items[t->s->n_items - 1].thing.name);
		return 1;
	case Q_OFF:
		if (yes) {
			turn_refuse(t, SAY(YES_STOPS_NO_CLOCK));
			return 1;
		}
		turn_close_question(t);
		turn_accept(t, "Still on. The clock runs.");
		return 1;
	case Q_HANDOVER_OUT:
	case Q_HANDOVER_STAYS:
	case Q_HANDOVER_IN:
		if (yes)
			return 0;
		turn_close_question(t);
		turn_accept(t, "No handover.");
		return 1;
	case Q_WHO_LOOKED:
		if (yes)
			return 0;
		turn_refuse(t, SAY(NO_IS_NOBODY));
		return 1;
	case Q_FOUND:
		if (!t->s->asked.item)
			break;
		if (yes)
			final_answer(t, CARD_YES, 0);
		else
			search_ask_found(t, t->s->asked.item);
		return 1;
	case Q_HANDOVER_SEEN:
	case Q_HANDOVER_AGREE: /* begun, it is owed */
		return 0;
	case Q_LISTED_ALREADY:
		answer_listed_already(t, yes);
		return 1;
	case Q_HERE_NOW:
		answer_here_now(t, yes);
		return 1;
	case Q_COUNTED_IN:
		answer_counted_in(t, yes);
		return 1;
	case Q_MOVE_TO:
		if (yes && t->s->asked.digit) {
			digit_never_on(t, t->s->asked.digit);
			return 1;
		}
		if (!yes && leaves_wrong_digit(t))
			return 1;
		break;
	case Q_VISITOR_IS_SURGEON:
		visitor_is(t, yes);
		return 1;
	default:
		break;
	}
	if (yes)
		return 0;
	turn_close_question(t);
	turn_accept(t, "Left as it is.");
	return 1;
}

static int is_condition(int card)
{
	return card == CARD_INTACT || card == CARD_CUT_AND_COMPLETE || card == CARD_PIECES_MISSING;
}

/* The same question is asked again after a card that does not answer it; the fact on the card is lost to
 * nobody: it is refused in words. */
void answer_question(struct turn *t, int card)
{
	enum question q = (enum question)t->s->asked.what;
	if ((card == CARD_YES || card == CARD_NO) && answer_yes_no(t, card == CARD_YES))
		return;
	if (q == Q_FOUND && t->s->asked.item && (is_condition(card) || card == CARD_MARK_UNREADABLE)) {
		final_answer(t, card, 0);
		return;
	}
	if (q == Q_IS_ON && card == CARD_MISREAD) {
		answer_never_off(t);
		return;
	}
	if (q == Q_INCIDENT && card == CARD_NOT_DONE) {
		case_end_unresolved(t, "");
		return;
	}
	enum saying asked = question_saying(q);
	const char *words = saying_text(asked);
	turn_refuse(t, *words && words[strlen(words) - 1] == '?'
	                   ? SAY(NOT_AN_ANSWER, .card = card, .question = asked)
	                   : SAY(NOT_AN_ANSWER_STATED, .card = card, .question = asked));
}

/* Cards that begin something else close the open question; the rest must answer it. */
int answer_is_due(enum question q, int card)
{
	switch (card) {
	case CARD_YES:
	case CARD_NO:
		return q != Q_NONE;
	case CARD_INTACT:
	case CARD_CUT_AND_COMPLETE:
	case CARD_PIECES_MISSING:
	case CARD_MARK_UNREADABLE:
		return q == Q_FOUND;
	case CARD_NOT_DONE:
		return q == Q_INCIDENT;
	case CARD_MISREAD:
		return q == Q_IS_ON;
	default:
		return 0;
	}
}

/* FOUND, then the slip of the case that it comes from: for an item that bears no number (rule 21). */
int answer_slip(struct turn *t)
{
	int32_t case_no = t->in->slip_case;
	if (turn_asked(t) != Q_FOUND || (turn_has_case(t) && t->s->asked.item) || !case_no)
		return 0;
	if (station_sheet_of_case(t->station, case_no) >= 0) {
		turn_refuse(t, SAY(CASE_STILL_OPEN, .case_no = case_no));
		return 1;
	}
	EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
	int extra = sheet_first_extra(t->s);
	struct thing what = {.called = SAY_ITEM_NO_NUMBER};
	if (extra)
		what = sheet_item_const(t->s, extra)->thing;
	turn_found_after(t, case_no, &what);
	if (extra) { /* it is settled by that: it is none of this case */
		EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)extra);
		final_progress(t);
	}
	turn_accept(t,
	            "Found after the end: entered for case %d. Look at that patient's digit now and tell the "
	            "surgeon.",
	            (int)case_no);
	return 1;
}

/* YES or NO in a room without a case. 1 where it was an answer. */
int answer_without_case(struct turn *t, int yes)
{
	int i = station_room_index(t->station, t->in->room);
	int here = yes && turn_asked(t) == Q_SLIP_HERE && t->in->slip.number == t->station->idle_n[i] &&
	           t->in->paper.queued && !t->in->paper.seen;
	if (turn_asked(t) == Q_NONE)
		return 0;
	if (yes && turn_asked(t) == Q_SLIP_HERE && t->in->unasked) {
		turn_refuse_unasked(t);
		return 1;
	}
	EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
	if (here)
		turn_slip_seen(t, &t->in->slip, &t->in->paper);
	else
		turn_accept(t, "Left as it is.");
	return 1;
}
