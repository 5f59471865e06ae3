/* Cards, as they are scanned: what each does where it answers no question. */
#include "decide/card.h"

#include "decide/answer.h"
#include "decide/badge.h"
#include "decide/card-item.h"
#include "decide/digit-clock.h"
#include "decide/end.h"
#include "decide/final-count.h"
#include "decide/handover.h"
#include "decide/phrases.h"
#include "decide/search.h"
#include "decide/stored-answer.h"
#include "decide/undo.h"
#include "decide/visitor.h"
#include "decide/want.h"

static void card_new_case(struct turn *t)
{
	if (turn_has_case(t)) {
		turn_refuse(t, SAY(CASE_IS_OPEN, .case_no = t->s->case_no,
		                   .room = station_room_name(t->station, t->in->room)));
		return;
	}
	turn_open_case(t, "");
	turn_accept(t, "Case %d opened in %s.", (int)t->s->case_no,
	            station_room_name(t->station, t->in->room));
}

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
	else if (t->s->asked.what == Q_OFF)
		digit_take_off(t, t->s->asked.digit);
	else if (on == 1 && sheet_digits_had(t->s) <= 1)
		digit_take_off(t, sheet_first_digit_on(t->s));
	else
		turn_ask(t, (struct asked){.what = Q_WHICH_OFF},
		         "More than one digit had a tourniquet in this case.");
}

static void card_add(struct turn *t)
{
	if (t->s->asked.what == Q_OFF) { /* ADD instead of OFF: a second tourniquet on that digit */
		digit_second_on(t, t->s->asked.digit);
		return;
	}
	turn_ask(t, (struct asked){.what = Q_ADD}, "Adding.");
}

static void card_suspend(struct turn *t)
{
	char on[80];
	int suspended = station_suspended_in(t->station, t->in->room);
	if (turn_has_case(t)) {
		EMIT(t, .kind = EV_SUSPENDED);
		turn_accept(t, "Case %d is suspended.%s Clocks and reminders go on.", (int)t->s->case_no,
		            sheet_on_words(t->s, on));
	} else if (suspended >= 0) {
		*t->s = t->station->sheets[suspended];
		EMIT(t, .kind = EV_RESUMED);
		turn_accept(t, "Case %d goes on.", (int)t->s->case_no);
	} else {
		turn_refuse(t, SAY(NO_CASE_TO_SUSPEND, .room = station_room_name(t->station, t->in->room)));
	}
}

/* The line that was being answered is asked again; a sign-out begins again (sections 4, 8). */
static void card_interrupted(struct turn *t)
{
	if (t->s->asked.what == Q_POINT) {
		int32_t badge = t->s->asked.person;
		turn_close_question(t);
		if (badge)
			sign_out_begin(t, badge);
		else
			sign_out_ask_points(t);
		return;
	}
	if (t->s->final != FINAL_ASKING) {
		turn_refuse(t, !t->s->initial_agreed && t->s->n_items && !t->s->single
		                   ? SAY(INITIAL_COUNT_AGAIN)
		                   : SAY(NO_COUNT_GOES_ON));
		return;
	}
	int next = sheet_next_open(t->s), item = next;
	for (int i = 1; i <= t->s->n_items; i++)
		if (t->s->items[i - 1].place == ITEM_ACCOUNTED && (!next || i < next))
			item = i;
	if (!item) {
		turn_refuse(t, SAY(NO_LINE_COUNTED));
		return;
	}
	if (t->s->asked.what == Q_FIELD_TOO)
		turn_close_question(t);
	EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)item);
	turn_accept(t, "Interrupted: %s is counted again.", t->s->items[item - 1].thing.name);
}

static void card_looked(struct turn *t, enum who_looked who)
{
	static const char *const words[] = {"", "", "the patient", "a carer", "a colleague", "nobody else"};
	if (!t->s->single || t->s->final != FINAL_AGREED || sheet_next_look(t->s)) {
		turn_refuse(t, SAY(WHO_LOOKED_NOT_NOW));
		return;
	}
	if (t->s->who_looked == who) {
		turn_close_question(t);
		turn_accept(t, "Entered once already: looked at the bare digit as well: %s.", words[who]);
		return;
	}
	EMIT(t, .kind = EV_WHO_LOOKED, .what = (uint8_t)who);
	turn_close_question(t);
	turn_accept(t, "Looked at the bare digit as well: %s.", words[who]);
}

static void card_cancel(struct turn *t)
{
	char open[OPEN_WORDS_MAX];
	turn_ask(t, (struct asked){.what = Q_CANCEL}, "Case %d.%s", (int)t->s->case_no,
	         sheet_open_words(t->s, open));
}

static void card_awake(struct turn *t)
{
	int awake = !t->s->awake;
	EMIT(t, .kind = EV_AWAKE, .n = awake);
	turn_accept(t, awake ? "The patient is awake: quiet sounds, plain words." : "Usual sounds again.");
}

static void card_dressing(struct turn *t)
{
	if (t->s->final == FINAL_AGREED && !sheet_next_look(t->s)) {
		turn_refuse(t, sheet_digits_had(t->s) ? SAY(SEEN_BEFORE_DRESSING) : SAY(NO_LOOK_OWED));
		return;
	}
	EMIT(t, .kind = EV_DRESSING_ON, .n = 1);
	turn_accept(t, "Noted: a dressing is on. It comes down for the look at the bare digit.");
}

/* A visitor's card is a badge of one whom the circulating badge vouches for; once in the team it stands for that
 * person (rule 19). */
static void card_visitor(struct turn *t, int32_t visitor)
{
	enum team_place place = team_place_of(&t->s->team, visitor);
	int watches =
	    place == PLACE_VISITOR && !t->s->team.at[PLACE_SURGEON]; /* and may yet be the surgeon */
	if (place && !watches) {
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
	turn_ask(t, (struct asked){.what = Q_VISITOR_IS_SURGEON, .person = visitor}, "%s.",
	         staff_name(&t->station->staff, visitor));
}

/* Cards that need no case. 1 where the card was one. */
static int card_of_room(struct turn *t)
{
	switch ((enum own_card)t->in->card) {
	case CARD_NEW_CASE:
		card_new_case(t);
		return 1;
	case CARD_SUSPEND:
		card_suspend(t);
		return 1;
	case CARD_NEXT:
		EMIT(t, .kind = EV_NEXT);
		turn_accept(t, "Next.");
		return 1;
	case CARD_YES:
	case CARD_NO:
		return !turn_has_case(t) && answer_without_case(t, t->in->card == CARD_YES);
	case CARD_FOUND:
		if (turn_has_case(t))
			return 0;
		turn_ask(t, (struct asked){.what = Q_FOUND}, "Found after the end of a case.");
		return 1;
	default:
		return 0;
	}
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
	default:
		return SAY_NONE;
	}
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

static void card_in_case(struct turn *t)
{
	int card = t->in->card;
	char open[OPEN_WORDS_MAX];
	switch ((enum own_card)card) {
	case CARD_OFF:
		card_off(t);
		return;
	case CARD_ADD:
		card_add(t);
		return;
	case CARD_RETURNED_UNOPENED:
		turn_ask(t, (struct asked){.what = Q_RETURNED}, "Returned unopened.");
		return;
	case CARD_UNLISTED_TOURNIQUET:
		card_unlisted(t);
		return;
	case CARD_NO_CODE:
		turn_ask(t, (struct asked){.what = Q_NO_CODE}, "An item without a code.");
		return;
	case CARD_MARK_UNREADABLE:
		card_unreadable(t);
		return;
	case CARD_DROPPED:
		turn_ask(t, (struct asked){.what = Q_DROPPED}, "Dropped.");
		return;
	case CARD_WRONG_NUMBER_IN_PACK:
		turn_ask(t, (struct asked){.what = Q_ISOLATE}, "Wrong number in the pack.");
		return;
	case CARD_FORCEPS_MOVED:
		card_forceps_moved(t);
		return;
	case CARD_FINAL_COUNT:
		final_begin(t);
		return;
	case CARD_HANDOVER:
		turn_ask(t, (struct asked){.what = Q_HANDOVER_OUT}, "Handover.");
		return;
	case CARD_WITHOUT_FULL_SIGHT:
		handover_without_sight(t);
		return;
	case CARD_STEP_DONE:
		search_step(t, 1);
		return;
	case CARD_NOT_DONE:
		search_step(t, 0);
		return;
	case CARD_FOUND:
		search_found(t);
		return;
	case CARD_MISREAD:
		card_misread(t);
		return;
	case CARD_UNDO:
		card_undo(t);
		return;
	case CARD_1_MINUTE_AGO:
	case CARD_2_MINUTES_AGO:
	case CARD_3_MINUTES_AGO:
	case CARD_5_MINUTES_AGO:
	case CARD_10_MINUTES_AGO:
		card_minutes_ago(t, own_card_says(card));
		return;
	case CARD_AWAKE_PATIENT:
		card_awake(t);
		return;
	case CARD_INTERRUPTED:
		card_interrupted(t);
		return;
	case CARD_CANCEL:
		card_cancel(t);
		return;
	case CARD_VISITOR_1:
	case CARD_VISITOR_2:
	case CARD_VISITOR_3:
	case CARD_VISITOR_4:
		card_visitor(t, -own_card_says(card));
		return;
	case CARD_LOOKED_PATIENT:
		card_looked(t, LOOKED_PATIENT);
		return;
	case CARD_LOOKED_CARER:
		card_looked(t, LOOKED_CARER);
		return;
	case CARD_LOOKED_COLLEAGUE:
		card_looked(t, LOOKED_COLLEAGUE);
		return;
	case CARD_LOOKED_NOBODY:
		card_looked(t, LOOKED_NOBODY);
		return;
	case CARD_DRESSING_ALREADY_ON:
		card_dressing(t);
		return;
	case CARD_OFFCUT:
		card_offcut(t);
		return;
	case CARD_END_UNRESOLVED:
		search_end_unresolved(t);
		return;
	case CARD_PATIENT_LEAVES:
		turn_ask(t, (struct asked){.what = Q_LEAVES}, "Patient leaves.%s",
		         sheet_open_words(t->s, open));
		return;
	case CARD_YES:
	case CARD_NO:
	case CARD_INTACT:
	case CARD_CUT_AND_COMPLETE:
	case CARD_PIECES_MISSING:
	case CARD_MISSING:
		if (t->s->final == FINAL_ASKING)
			final_answer(t, card, 0);
		else if (card == CARD_PIECES_MISSING && t->s->final == FINAL_AGREED)
			final_contradicted(t);
		else if (card == CARD_NO && sheet_wants(t->station, t->s).kind == WANT_LOOK)
			digit_ask_is_on(t, sheet_next_look(t->s), "");
		else if (card == CARD_NO && t->station->policy.n_points && ready_to_sign_out(t->s))
			sign_out_ask_points(t);
		else
			refuse_answer(t, card);
		return;
	case CARD_SHOWN_1:
	case CARD_SHOWN_2:
	case CARD_SHOWN_3:
	case CARD_SHOWN_4:
	case CARD_SHOWN_5:
	case CARD_SHOWN_6:
	case CARD_SHOWN_7:
	case CARD_SHOWN_8:
	case CARD_SHOWN_9:
	case CARD_SHOWN_10:
		if (t->s->final == FINAL_ASKING)
			final_answer(t, card, own_card_says(card));
		else
			turn_refuse(t, SAY(NO_NUMBER_ASKED));
		return;
	case CARD_NEW_CASE:
	case CARD_SUSPEND:
	case CARD_NEXT:
	case CARD_SPARE_SCANNER:
	case CARD_THIS_ROOM:
		break;
	}
	turn_refuse(t, SAY(CARD_OF_NO_USE));
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
	else if (t->in->card == CARD_UNLISTED_TOURNIQUET)
		turn_refuse(t, SAY(NO_CASE_IF_ON, .room = room));
	else if (begins_something(t->in->card))
		turn_refuse(t, SAY(NO_CASE_NEW_FIRST, .room = room));
	else
		turn_refuse(t, SAY(NO_CASE_TO_ACT_ON, .room = room, .card = t->in->card));
}

void card_take(struct turn *t)
{
	if (stored_answer(t) || card_of_room(t))
		return;
	if (!turn_has_case(t)) {
		card_without_case(t);
		return;
	}
	if (answer_is_due((enum question)t->s->asked.what, t->in->card))
		answer_question(t, t->in->card);
	else
		card_in_case(t);
}
