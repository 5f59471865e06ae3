/* Cards: what each printed answer does when it is scanned. */
#include <stdio.h>
#include <string.h>

#include "decide/turn.h"
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

/* The tourniquet that is on, or will go on, without being in the catalogue. */
static void card_unlisted(struct turn *t)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	const struct item *it = d ? sheet_item_const(t->s, d->item) : NULL;
	if (it && it->place == ITEM_ON) { /* that is the one: it was entered with its digit card */
		turn_refuse(t, SAY(LISTED_AS_UNLISTED, .digit = it->digit));
		return;
	}
	item_add_unlisted(t, ROLE_TOURNIQUET, SAY_TOURNIQUET_NOT_LISTED);
	turn_close_question(t);
	turn_accept(
	    t, "Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.");
}

static void card_unreadable(struct turn *t)
{
	if (t->s->final == FINAL_ASKING) {
		final_answer(t, CARD_MARK_UNREADABLE, 0);
		return;
	}
	int before = t->s->initial_agreed;
	item_add_unlisted(t, ROLE_FORCEPS, SAY_FORCEPS_UNREADABLE);
	turn_close_question(t);
	turn_accept(
	    t, before ? "Added: 1 further artery forceps, mark unreadable. If it is counted in already: UNDO."
	              : "Counted in: 1 artery forceps, mark unreadable. At the end it is shown.");
}

static void card_forceps_moved(struct turn *t)
{
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = &t->s->items[i - 1];
		if (role_has(it->thing.role, TRAIT_CLAMPS) && it->place == ITEM_ON) {
			int digit = it->digit;
			EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)i);
			turn_accept(
			    t, "Forceps moved away: tourniquet without forceps on the %s. The clock runs.",
			    own_digit_name(digit));
			return;
		}
	}
	turn_refuse(t, SAY(NO_FORCEPS_IS_ON));
}

/* The digit that was timed last; 0 where none was, or where it turned out that nothing was on it. */
static int last_timed(const struct sheet *s)
{
	const struct digit *d = sheet_digit_const(s, s->last_timed);
	return d && (d->had || digit_is_on(d)) ? d->number : 0;
}

static void card_minutes_ago(struct turn *t, int minutes)
{
	const struct digit *d = sheet_digit_const(t->s, last_timed(t->s));
	if (!d) {
		turn_refuse(t, SAY(NOTHING_TIMED, .card = t->in->card));
		return;
	}
	int off = t->s->last_timed_off, most = (int)(d->known_ms / 60000);
	if (off && !most) {
		turn_refuse(t, SAY(ON_LESS_THAN_A_MINUTE, .digit = d->number));
		return;
	}
	if (off && minutes > most) { /* it cannot have come off before it went on */
		turn_refuse(t, SAY(ON_LESS_THAN_THAT, .digit = d->number, .most = most, .minutes = minutes));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_EARLIER, .digit = d->number, .n = minutes, .what = (uint8_t)(off ? 2 : 1));
	turn_accept(t, "%s %d min earlier, %s.",
	            off                          ? "Off"
	            : d->state == DIGIT_MAYBE_ON ? "'On?' from"
	                                         : "On",
	            minutes, own_digit_name(d->number));
}

/* What a step was, as people say it; its event has a name for machines. */
static const char *step_words(const struct turn *t, const struct step *step)
{
	switch ((enum event_kind)step->kind) {
	case EV_ASKED:
		return t->station->before[t->index].asked.what ? "the answer" : "the question";
	case EV_JOINED:
		return "the badge";
	case EV_COUNT_AGREED:
		return "the count that was agreed";
	case EV_DIGIT_DOUBTED:
	case EV_DIGIT_MAYBE_ON:
		return "'on?'";
	case EV_PAID:
		return "what was answered for";
	case EV_ITEM_IN:
		return t->s->initial_agreed ? "what was added" : "counted in";
	case EV_ITEM_SHOWN:
		return "accounted for";
	case EV_ITEM_NOT_SHOWN:
		return "not there";
	case EV_DIGIT_ON:
		return "tourniquet on";
	case EV_ITEM_OFF:
	case EV_DIGIT_OFF:
		return "off";
	case EV_DIGIT_SEEN_BARE:
		return "seen bare";
	case EV_COUNT_STARTED:
		return "the beginning of the count";
	case EV_SEARCH_STEP:
		return "the step of the search";
	default:
		return "the last scan";
	}
}

static int clocks(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++)
		n += digit_runs(&s->digits[i]);
	return n;
}

/* UNDO would stop a clock, and a tourniquet may be on: only a person knows whether one went on at all. */
static void undo_asks(struct turn *t, const struct step *step)
{
	if (t->s->asked.what == Q_IS_ON)
		turn_refuse(t, SAY(UNDO_STOPS_NO_CLOCK, .digit = t->s->asked.digit));
	else
		turn_ask(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)last_timed(t->s)},
		         "The clock of the %s runs on: UNDO does not stop it.", own_digit_name(step->digit));
}

static void card_undo(struct turn *t)
{
	struct step step = t->index >= 0 ? t->station->undo[t->index] : (struct step){0};
	if (step.seq && clocks(t->s) > clocks(&t->station->before[t->index])) {
		undo_asks(t, &step);
		return;
	}
	if (!step.seq) {
		turn_refuse(t, SAY(NOTHING_TO_TAKE_BACK));
		return;
	}
	const char *words = step_words(t, &step), *of = "";
	if (step.digit)
		of = own_digit_name(step.digit);
	else if (step.item && sheet_item(t->s, step.item))
		of = sheet_item(t->s, step.item)->thing.name;
	char what[LINE_NAME_MAX];
	snprintf(what, sizeof what, "%s", of); /* the sheet that it stands on is taken back as well */
	EMIT(t, .kind = EV_UNDONE, .ref = step.seq);
	for (int i = 0; i < SHEETS_MAX; i++) { /* the item that is asked about there may be another one now */
		const struct sheet *there = &t->station->sheets[i];
		if (there->case_no && there->asked.what == Q_HERE_NOW && there->asked.n == t->s->case_no)
			EMIT(t, .kind = EV_ASKED, .case_no = there->case_no, .what = Q_NONE);
	}
	*t->s = t->station->before[t->index];
	turn_accept(t, "Taken back: %s%s%s. The record keeps both.", words, *what ? ", " : "", what);
}

static void card_misread(struct turn *t)
{
	int digit = last_timed(t->s);
	turn_ask(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit},
	         digit ? "Misread: the %s, or a pack." : "Misread%s.", digit ? own_digit_name(digit) : "");
}

static void card_suspend(struct turn *t)
{
	char on[80];
	int suspended = station_suspended_in(t->station, t->in->room);
	if (turn_has_case(t)) {
		EMIT(t, .kind = EV_SUSPENDED);
		turn_accept(t, "Case %d is suspended.%s Clocks and reminders go on.", (int)t->s->case_no,
		            sheet_on_words(t, on));
	} else if (suspended >= 0) {
		*t->s = t->station->sheets[suspended];
		EMIT(t, .kind = EV_RESUMED);
		turn_accept(t, "Case %d goes on.", (int)t->s->case_no);
	} else {
		turn_refuse(t, SAY(NO_CASE_TO_SUSPEND, .room = station_room_name(t->station, t->in->room)));
	}
}

void search_answered(struct turn *t, int done)
{
	int step = t->s->search_done + 1;
	struct event e = {.kind = EV_SEARCH_STEP, .n = step, .what = (uint8_t)(done ? 1 : 2)};
	snprintf(e.text, sizeof e.text, "%s", t->station->policy.search[step - 1]);
	turn_emit(t, &e);
	turn_accept(t, "Search step %d %s: %s.%s", step, done ? "done" : "NOT done", e.text,
	            done ? "" : " Type why, or write it on the slip.");
}

static void card_step(struct turn *t, int done)
{
	if (!t->s->discrepancy)
		turn_refuse(t, SAY(NO_SEARCH));
	else if (sheet_next_open(t->s))
		turn_refuse(t, SAY(COUNT_UNFINISHED_SEARCH));
	else if (t->s->search_done >= t->station->policy.n_search)
		turn_refuse(t, SAY(SEARCH_ALL_ANSWERED));
	else
		search_answered(t, done);
}

static void card_end_unresolved(struct turn *t)
{
	int on = sheet_first_digit_on(t->s), doubted = sheet_first_digit_doubted(t->s);
	if (sheet_next_open(t->s) && (sheet_missing(t->s) || t->s->discrepancy))
		turn_refuse(t, SAY(COUNT_UNFINISHED_ITEM,
		                   .item = sheet_item_const(t->s, sheet_next_open(t->s))->thing.name));
	else if (!t->s->discrepancy)
		turn_refuse(t, SAY(NOTHING_MISSING_TO_END));
	else if (doubted)
		turn_refuse(t, SAY(FIRST_SAY_WHETHER_ON, .digit = doubted));
	else if (on)
		turn_refuse(t, SAY(TAKE_IT_OFF_FIRST, .digit = on));
	else if (t->s->search_done < t->station->policy.n_search)
		turn_refuse(t, SAY(SEARCH_STEP_OPEN, .step = t->station->policy.search[t->s->search_done]));
	else
		turn_ask(t, (struct asked){.what = Q_SURGEON_ENDS}, "Each step of the search is answered.");
}

/* The one that was cut: one that is still asked for before one that was accounted for, the latest first. */
static int item_of_offcut(const struct sheet *s)
{
	for (int accounted = 0; accounted < 2; accounted++)
		for (int i = s->n_items; i >= 1; i--) {
			const struct item *it = &s->items[i - 1];
			if (role_has(it->thing.role, TRAIT_CONDITION) &&
			    (accounted ? it->place == ITEM_ACCOUNTED : item_open(it)))
				return i;
		}
	return 0;
}

/* An offcut that turns up contradicts what was accounted for before: it is counted again (rule 10). */
static void card_offcut(struct turn *t)
{
	int i = item_of_offcut(t->s), agreed = t->s->final == FINAL_AGREED;
	const struct item *it = sheet_item_const(t->s, i);
	if (!it) {
		turn_refuse(t, SAY(NO_OFFCUT_WITHOUT_ONE));
		return;
	}
	if (agreed)
		EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
	else if (it->place == ITEM_ACCOUNTED)
		EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)i);
	EMIT(t, .kind = EV_ITEM_MORE, .item = (uint8_t)i, .n = 1);
	turn_accept(t, "Offcut counted: %s, now %d pieces.%s", it->thing.name, it->pieces,
	            agreed ? " The final count starts again." : "");
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

static int is_missing(const struct item *it)
{
	return item_open(it) && (it->missing || it->condition == CONDITION_PIECES_MISSING);
}

/* Which of the missing items was found? They are asked for one by one, beginning behind number `after`; behind the
 * last it may be one of another case. */
void search_ask_found(struct turn *t, int after)
{
	for (int i = after + 1; i <= t->s->n_items; i++)
		if (is_missing(&t->s->items[i - 1])) {
			turn_ask(t, (struct asked){.what = Q_FOUND, .item = (uint8_t)i}, "Found.");
			return;
		}
	turn_ask(t, (struct asked){.what = Q_FOUND}, "%s",
	         after ? "None of what is missing in this case."
	               : "Nothing is missing in this case. It may be of an earlier one.");
}

static void card_found(struct turn *t)
{
	if (!t->s->discrepancy && t->s->final == FINAL_ASKING && !sheet_missing(t->s))
		turn_refuse(t, SAY(FOUND_WHILE_COUNTING));
	else
		search_ask_found(t, 0);
}

static void card_without_full_sight(struct turn *t)
{
	if (t->s->asked.what != Q_HANDOVER_SEEN) {
		turn_refuse(t, t->s->asked.what == Q_HANDOVER_OUT || t->s->asked.what == Q_HANDOVER_IN
		                   ? SAY(HANDOVER_BADGES_FIRST)
		               : t->s->asked.what == Q_HANDOVER_AGREE ? SAY(HANDOVER_ALL_SEEN)
		                                                      : SAY(FULL_SIGHT_AT_HANDOVER));
		return;
	}
	struct asked q = t->s->asked;
	EMIT(t, .kind = EV_DIGIT_SEEN_ON, .digit = q.digit, .n = 0);
	turn_ask(t, (struct asked){.what = Q_HANDOVER_AGREE, .person = q.person, .n = q.n},
	         "Handover without full sight of the %s. The slip says so.", own_digit_name(q.digit));
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
	         sheet_open_words(t, open));
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
		return !turn_has_case(t) && idle_answer(t, t->in->card == CARD_YES);
	case CARD_FOUND:
		if (turn_has_case(t))
			return 0;
		turn_ask(t, (struct asked){.what = Q_FOUND}, "Found after the end of a case.");
		return 1;
	default:
		return 0;
	}
}

static void shout(char *words)
{
	for (char *c = words; *c; c++)
		*c = (char)(*c >= 'a' && *c <= 'z' ? *c - 'a' + 'A' : *c);
}

/* " A TOURNIQUET IS ON THE LEFT THUMB.", or "". */
const char *sheet_on_words(const struct turn *t, char out[80])
{
	int on = sheet_first_digit_on(t->s);
	const struct digit *d = sheet_digit_const(t->s, on);
	snprintf(out, 80,
	         !on                    ? "%s"
	         : d->state == DIGIT_ON ? " A TOURNIQUET IS ON THE %s."
	                                : " A TOURNIQUET MAY BE ON THE %s.",
	         own_digit_name(on));
	shout(out);
	return out;
}

/* What is not as it must be before the patient goes: " FORCEPS NOT ACCOUNTED FOR. LEFT THUMB NOT SEEN BARE.", or "". */
const char *sheet_open_words(const struct turn *t, char out[OPEN_WORDS_MAX])
{
	char on[80];
	size_t used = (size_t)snprintf(out, OPEN_WORDS_MAX, "%s", sheet_on_words(t, on));
	for (int i = 0; i < t->s->n_items && used < OPEN_WORDS_MAX - 160; i++)
		if (item_open(&t->s->items[i]) && t->s->items[i].place != ITEM_ON)
			used += (size_t)snprintf(out + used, OPEN_WORDS_MAX - used, " %s NOT ACCOUNTED FOR.",
			                         t->s->items[i].thing.name);
	for (int i = 0; i < t->s->n_digits && used < OPEN_WORDS_MAX - 80; i++)
		if (t->s->digits[i].had && !digit_is_on(&t->s->digits[i]) && !t->s->digits[i].seen_bare)
			used += (size_t)snprintf(out + used, OPEN_WORDS_MAX - used, " %s NOT SEEN BARE.",
			                         own_digit_name(t->s->digits[i].number));
	shout(out);
	return out;
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
		card_without_full_sight(t);
		return;
	case CARD_STEP_DONE:
		card_step(t, 1);
		return;
	case CARD_NOT_DONE:
		card_step(t, 0);
		return;
	case CARD_FOUND:
		card_found(t);
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
		card_end_unresolved(t);
		return;
	case CARD_PATIENT_LEAVES:
		turn_ask(t, (struct asked){.what = Q_LEAVES}, "Patient leaves.%s", sheet_open_words(t, open));
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

/* Cards that begin something else close the open question; the rest must answer it. */
static int must_answer(enum question q, int card)
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
	if (answers_stored(t) || card_of_room(t))
		return;
	if (!turn_has_case(t)) {
		card_without_case(t);
		return;
	}
	if (must_answer((enum question)t->s->asked.what, t->in->card))
		answer_question(t, t->in->card);
	else
		card_in_case(t);
}
