/* Cards, as they are scanned: what each does where it answers no question (answer.h). */
#include "decide/card.h"

#include <string.h>

#include "decide/answer.h"
#include "decide/badge.h"
#include "decide/card-item.h"
#include "decide/digit-clock.h"
#include "decide/end.h"
#include "decide/final-count.h"
#include "decide/handover.h"
#include "decide/owed-after-end.h"
#include "decide/phrases.h"
#include "decide/search.h"
#include "decide/undo.h"
#include "decide/visitor.h"
#include "decide/want.h"

/* --- the case, in a room with or without one ---------------------------------------------------- */

static void card_new_case(struct turn *t)
{
	if (turn_has_case(t)) {
		turn_refuse_further_case(t);
		return;
	}
	turn_open_case(t, "");
	turn_say(t, SAY(R_CASE_OPENED, .case_no = t->s->case_no,
	                .room = station_room_name(t->station, t->in->room)));
}

static void resume(struct turn *t, int suspended)
{
	*t->s = t->station->sheets[suspended];
	EMIT(t, .kind = EV_RESUMED);
	turn_say_more(t, SAY(R_GOES_ON, .case_no = t->s->case_no));
}

/* A room has one suspended case at most: where there is one already the two change over, so that each can be reached, and
 * what happens to its patient entered, while the other is open. */
static void card_suspend(struct turn *t)
{
	int suspended = station_suspended_behind(t->station, t->in->room, t->index);
	if (turn_has_case(t)) {
		EMIT(t, .kind = EV_SUSPENDED);
		turn_say(t, SAY(R_SUSPENDED, .case_no = t->s->case_no));
		say_on(t);
		turn_say_more(t, SAY(R_CLOCKS_GO_ON));
		if (suspended < 0)
			return;
		if (question_of_stored((enum question)t->s->asked.what)) /* is asked where the room looks */
			turn_close_question(t);
		resume(t, suspended);
	} else if (suspended >= 0) {
		resume(t, suspended);
	} else {
		turn_refuse(t, SAY(NO_CASE_TO_SUSPEND, .room = station_room_name(t->station, t->in->room)));
	}
}

/* Cards that need no case, or speak of more than it. */
static enum answered card_of_room(struct turn *t)
{
	int card = t->in->card;
	if (card == CARD_NEW_CASE)
		card_new_case(t);
	else if (card == CARD_SUSPEND)
		card_suspend(t);
	else if (card == CARD_NEXT) {
		EMIT(t, .kind = EV_NEXT);
		turn_say(t, SAY(R_NEXT));
	} else if (card == CARD_FOUND && !turn_has_case(t))
		turn_ask_saying(t, (struct asked){.what = Q_FOUND}, SAY(R_FOUND_AFTER));
	else if (card == CARD_SHOW_CAMERA)
		turn_refuse(t, t->station->practice ? SAY(CAMERA_NOT_IN_PRACTICE) : SAY(CAMERA_BY_SCANNER));
	else if (card == CARD_STEP_DONE)
		return after_end_done(t);
	else if (card == CARD_NO)
		return after_end_still_on(t);
	else
		return ANSWERED_NOT;
	return ANSWERED;
}

static int begins_something(int card)
{
	return card == CARD_ADD || card == CARD_NO_CODE || card == CARD_MARK_UNREADABLE ||
	       card == CARD_AWAKE_PATIENT || own_card_group(card) == CARDS_VISITORS;
}

/* A case that is suspended here is not forgotten; and what says nothing to a new case is not sent to open one. */
static void card_without_case(struct turn *t)
{
	const char *room = station_room_name(t->station, t->in->room);
	int suspended = station_suspended_in(t->station, t->in->room);
	if (suspended >= 0)
		turn_refuse(t, SAY(SUSPENDED_THEN_CARD, .case_no = t->station->sheets[suspended].case_no,
		                   .room = room, .card = t->in->card));
	else if (t->in->card == CARD_UNDO && undo_after_end(t) == ANSWERED)
		return;
	else if (t->in->card == CARD_UNLISTED_TOURNIQUET)
		turn_refuse(t, SAY(NO_CASE_IF_ON, .room = room));
	else if (begins_something(t->in->card))
		turn_refuse(t, SAY(NO_CASE_NEW_FIRST, .room = room));
	else
		turn_refuse(t, SAY(NO_CASE_TO_ACT_ON, .room = room, .card = t->in->card));
}

/* --- in a case ---------------------------------------------------------------------------------- */

static void refuse_off(struct turn *t)
{
	int index = station_suspended_in(t->station, t->in->room);
	const struct sheet *suspended = index >= 0 ? &t->station->sheets[index] : NULL;
	if (suspended && sheet_digits_on(suspended))
		turn_refuse(t,
		            SAY(OFF_IN_OTHER_CASE, .case_no = t->s->case_no, .other_case = suspended->case_no,
		                .digit = sheet_first_digit_on(suspended)));
	else
		turn_refuse(t, SAY(OFF_CHANGES_NOTHING));
}

/* OFF alone is clear while one digit had a tourniquet in this case; after a second one it needs its digit card. */
static void card_off(struct turn *t)
{
	int on = sheet_digits_on(t->s), doubted = sheet_first_digit_doubted(t->s);
	if (!on && doubted) /* OFF may say that it came off again, or that it never went on again */
		turn_refuse(t, SAY(OFF_ENTERED_ALREADY, .digit = doubted));
	else if (!on)
		refuse_off(t);
	else if (on == 1 && sheet_digits_had(t->s) <= 1)
		digit_take_off(t, sheet_first_digit_on(t->s));
	else
		turn_ask_saying(t, (struct asked){.what = Q_WHICH_OFF, .n = t->in->held != 0},
		                SAY(R_MORE_THAN_ONE));
}

static void card_add(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_ADD}, SAY(R_ADDING));
}

static void card_returned(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_RETURNED}, SAY(R_RETURNED));
}

static void card_no_code(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_NO_CODE}, SAY(R_NO_CODE));
}

static void card_dropped(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_DROPPED}, SAY(R_DROPPED_WHAT));
}

static void card_wrong_number(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_ISOLATE}, SAY(R_WRONG_NUMBER));
}

static void card_minutes(struct turn *t)
{
	card_minutes_ago(t, own_card_says(t->in->card));
}

static void card_handover(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_HANDOVER_OUT}, SAY(R_HANDOVER));
}

/* Where no digit is to be seen now. */
static void card_without_sight(struct turn *t)
{
	enum question q = turn_asked(t);
	turn_refuse(t, q == Q_HANDOVER_OUT || q == Q_HANDOVER_IN ? SAY(HANDOVER_BADGES_FIRST)
	               : q == Q_HANDOVER_AGREE                   ? SAY(HANDOVER_ALL_SEEN)
	                                                         : SAY(FULL_SIGHT_AT_HANDOVER));
}

static void card_step_done(struct turn *t)
{
	search_step(t, 1);
}

static void card_not_done(struct turn *t)
{
	search_step(t, 0);
}

static void card_leaves(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_LEAVES}, SAY(R_LEAVES));
	say_open(t);
}

/* It was answered in this count; while things are searched for, what is missing is not counted again by this. */
static int is_answered(const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	return it->place == ITEM_ACCOUNTED ||
	       (!s->discrepancy && it->place != ITEM_EXTRA && item_is_sought(it));
}

/* Things that nobody can tell apart are answered together, and so asked again together; with them goes what was more. */
static void line_again(struct turn *t, int item)
{
	const struct item first = *sheet_item_const(t->s, item);
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = sheet_item_const(t->s, i);
		const int alike = item_is_alike(&first, it), extra = it->place == ITEM_EXTRA;
		if (i == item || (alike && !extra && (is_answered(t->s, i) || item_is_sought(it))))
			EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)i);
		else if (extra && !t->s->discrepancy && !it->thing.identity[0] &&
		         it->thing.role == first.thing.role &&
		         strcmp(it->thing.line, first.thing.line) == 0 &&
		         strcmp(it->thing.name, first.thing.name) == 0)
			EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)i);
	}
}

/* The line that was being answered is asked again. */
static void card_interrupted(struct turn *t)
{
	if (t->s->final != FINAL_ASKING) {
		turn_refuse(t, !t->s->initial_agreed && t->s->n_items && !t->s->single
		                   ? SAY(INITIAL_COUNT_AGAIN)
		                   : SAY(NO_COUNT_GOES_ON));
		return;
	}
	int next = sheet_next_open(t->s), item = next;
	for (int i = 1; i <= t->s->n_items; i++)
		if (is_answered(t->s, i) && (!next || i < next))
			item = i;
	if (!item) {
		turn_refuse(t, SAY(NO_LINE_COUNTED));
		return;
	}
	if (t->s->asked.what == Q_FIELD_TOO)
		turn_close_question(t);
	line_again(t, item);
	turn_say(t, SAY(R_INTERRUPTED, .item = t->s->items[item - 1].thing.name));
}

static void card_looked(struct turn *t)
{
	static const enum saying words[] = {SAY_NONE,       SAY_NONE,           SAY_R_BY_PATIENT,
	                                    SAY_R_BY_CARER, SAY_R_BY_COLLEAGUE, SAY_R_BY_NOBODY};
	int card = t->in->card;
	enum who_looked who = card == CARD_LOOKED_PATIENT     ? LOOKED_PATIENT
	                      : card == CARD_LOOKED_CARER     ? LOOKED_CARER
	                      : card == CARD_LOOKED_COLLEAGUE ? LOOKED_COLLEAGUE
	                                                      : LOOKED_NOBODY;
	if (!t->s->single || t->s->final != FINAL_AGREED || sheet_next_look(t->s)) {
		turn_refuse(t, SAY(WHO_LOOKED_NOT_NOW));
		return;
	}
	if (t->s->who_looked == who) {
		turn_close_question(t);
		turn_say(t, SAY(R_LOOKED_ALREADY, .what = words[who]));
		return;
	}
	EMIT(t, .kind = EV_WHO_LOOKED, .what = (uint8_t)who);
	turn_close_question(t);
	turn_say(t, SAY(R_LOOKED_TOO, .what = words[who]));
}

static void card_cancel(struct turn *t)
{
	turn_ask_saying(t, (struct asked){.what = Q_CANCEL}, SAY(R_CASE, .case_no = t->s->case_no));
	say_open(t);
}

static void card_awake(struct turn *t)
{
	int awake = !t->s->awake;
	EMIT(t, .kind = EV_AWAKE, .n = awake);
	turn_say(t, awake ? SAY(R_AWAKE) : SAY(R_USUAL_SOUNDS));
}

static void card_dressing(struct turn *t)
{
	if (t->s->final == FINAL_AGREED && !sheet_next_look(t->s)) {
		turn_refuse(t, sheet_digits_had(t->s) ? SAY(SEEN_BEFORE_DRESSING) : SAY(NO_LOOK_OWED));
		return;
	}
	EMIT(t, .kind = EV_DRESSING_ON, .n = 1);
	turn_say(t, SAY(R_DRESSING_ON));
}

/* A visitor's card is a badge of one whom the circulating badge vouches for; once in the team it stands for that
 * person (rule 19). */
static void card_visitor(struct turn *t)
{
	int32_t visitor = -own_card_says(t->in->card);
	enum team_place place = team_place_of(&t->s->team, visitor);
	int takes_over = place == PLACE_VISITOR && t->s->asked.what == Q_HANDOVER_IN;
	int watches =
	    place == PLACE_VISITOR && !t->s->team.at[PLACE_SURGEON]; /* and may yet be the surgeon */
	if (place && (takes_over || !watches)) {
		badge_take_visitor(t, visitor, place);
		return;
	}
	if (t->s->single) {
		if (t->s->team.at[PLACE_FIELD])
			turn_refuse(t, SAY(OPERATORS_BADGE_ONLY));
		else
			visitor_join(t, visitor, PLACE_FIELD);
		return;
	}
	turn_ask_saying(t, (struct asked){.what = Q_VISITOR_IS_SURGEON, .person = visitor},
	                SAY(R_PERSON, .person = staff_name(&t->station->staff, visitor)));
}

/* What a YES does not do that the board waits for; SAY_NONE where it is none of these. */
static enum saying yes_is_nothing(const struct turn *t)
{
	switch (sheet_wants(t->station, t->s).kind) {
	case WANT_LOOK:
		return SAY_YES_IS_NO_LOOK;
	case WANT_SIGN_OUT:
		return t->s->single ? SAY_YES_IS_NO_SIGN_OUT_SINGLE : SAY_YES_IS_NO_SIGN_OUT;
	case WANT_COUNT_IN:
		return SAY_YES_IS_NO_AGREEMENT;
	case WANT_SEARCH:
		return SAY_YES_IS_NO_STEP;
	case WANT_NOTHING:
	case WANT_RESUME:
	case WANT_ANSWER:
	case WANT_SEARCH_END:
	case WANT_ITEM:
	case WANT_TEAM:
	case WANT_FINAL_AGREED:
	case WANT_DEBT:
	case WANT_WHO_LOOKED:
	case WANT_REMINDER:
	case WANT_OFF:
	case WANT_FINAL:
	case WANT_ON:
		break;
	}
	return SAY_NONE;
}

/* An answer where the board waits for something that is no answer card (section 4: each read gets one that helps). */
static void refuse_answer(struct turn *t, int card)
{
	enum saying yes = yes_is_nothing(t);
	if (card == CARD_MISSING && t->s->final == FINAL_AGREED)
		turn_refuse(t, SAY(COUNT_AGREED_MISSING));
	else if (card == CARD_YES && yes)
		turn_refuse(t, &(struct say){.saying = yes});
	else
		turn_refuse(t, SAY(CARD_ANSWERS_NOTHING, .card = card));
}

/* YES, NO, MISSING, INTACT …: to the line that the count asks for, or to what the board says. */
static void card_of_line(struct turn *t)
{
	int card = t->in->card;
	if (t->s->final == FINAL_ASKING)
		final_answer(t, card, 0);
	else if (card == CARD_PIECES_MISSING && t->s->final == FINAL_AGREED)
		final_contradicted(t);
	else if (card == CARD_NO && sheet_wants(t->station, t->s).kind == WANT_LOOK)
		digit_ask_is_on(t, sheet_next_look(t->s), SAY_NONE);
	else if (card == CARD_NO && t->station->policy.n_points && ready_to_sign_out(t->s))
		sign_out_ask_points(t);
	else
		refuse_answer(t, card);
}

static void card_shown(struct turn *t)
{
	if (t->s->final == FINAL_ASKING)
		final_answer(t, t->in->card, own_card_says(t->in->card));
	else
		turn_refuse(t, SAY(NO_NUMBER_ASKED));
}

static void card_of_no_use(struct turn *t)
{
	turn_refuse(t, SAY(CARD_OF_NO_USE));
}

/* --- a row a card ------------------------------------------------------------------------------- */

/* clang-format off */
#define DOES_NEW_CASE card_of_no_use /* these six before a case is looked at */
#define DOES_SUSPEND card_of_no_use
#define DOES_NEXT card_of_no_use
#define DOES_SPARE_SCANNER card_of_no_use
#define DOES_THIS_ROOM card_of_no_use
#define DOES_SHOW_CAMERA card_of_no_use
#define DOES_CANCEL card_cancel
#define DOES_PATIENT_LEAVES card_leaves
#define DOES_END_UNRESOLVED search_end_unresolved
#define DOES_YES card_of_line
#define DOES_NO card_of_line
#define DOES_MISREAD card_misread
#define DOES_UNDO card_undo
#define DOES_INTERRUPTED card_interrupted
#define DOES_ADD card_add
#define DOES_RETURNED_UNOPENED card_returned
#define DOES_UNLISTED_TOURNIQUET card_unlisted
#define DOES_NO_CODE card_no_code
#define DOES_MARK_UNREADABLE card_unreadable
#define DOES_WRONG_NUMBER_IN_PACK card_wrong_number
#define DOES_DROPPED card_dropped
#define DOES_FORCEPS_MOVED card_forceps_moved
#define DOES_OFF card_off
#define DOES_INTACT card_of_line
#define DOES_CUT_AND_COMPLETE card_of_line
#define DOES_PIECES_MISSING card_of_line
#define DOES_OFFCUT card_offcut
#define DOES_FINAL_COUNT final_begin
#define DOES_HANDOVER card_handover
#define DOES_WITHOUT_FULL_SIGHT card_without_sight
#define DOES_MISSING card_of_line
#define DOES_DRESSING_ALREADY_ON card_dressing
#define DOES_STEP_DONE card_step_done
#define DOES_NOT_DONE card_not_done
#define DOES_FOUND search_found
#define DOES_AWAKE_PATIENT card_awake
#define DOES_LOOKED_PATIENT card_looked
#define DOES_LOOKED_CARER card_looked
#define DOES_LOOKED_COLLEAGUE card_looked
#define DOES_LOOKED_NOBODY card_looked
#define DOES_VISITOR_1 card_visitor
#define DOES_VISITOR_2 card_visitor
#define DOES_VISITOR_3 card_visitor
#define DOES_VISITOR_4 card_visitor
#define DOES_1_MINUTE_AGO card_minutes
#define DOES_2_MINUTES_AGO card_minutes
#define DOES_3_MINUTES_AGO card_minutes
#define DOES_5_MINUTES_AGO card_minutes
#define DOES_10_MINUTES_AGO card_minutes
#define DOES_SHOWN_1 card_shown
#define DOES_SHOWN_2 card_shown
#define DOES_SHOWN_3 card_shown
#define DOES_SHOWN_4 card_shown
#define DOES_SHOWN_5 card_shown
#define DOES_SHOWN_6 card_shown
#define DOES_SHOWN_7 card_shown
#define DOES_SHOWN_8 card_shown
#define DOES_SHOWN_9 card_shown
#define DOES_SHOWN_10 card_shown
/* clang-format on */

static void card_in_case(struct turn *t)
{
	static const struct {
		int card;
		void (*does)(struct turn *t);
	} rows[] = {
#define X(number, name, words, group, says, use) {CARD_##name, DOES_##name},
	    OWN_CARDS(X)
#undef X
	};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (rows[i].card == t->in->card) {
			rows[i].does(t);
			return;
		}
	card_of_no_use(t);
}

void card_take(struct turn *t)
{
	if (answer_card(t) == ANSWERED || card_of_room(t) == ANSWERED)
		return;
	if (turn_has_case(t))
		card_in_case(t);
	else
		card_without_case(t);
}
