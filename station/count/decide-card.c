/* Cards: what each printed answer does when it is scanned. */
#include <stdio.h>
#include <string.h>

#include "count/turn.h"

static void card_new_case(struct turn *t)
{
	if (has_case(t)) {
		refuse(t, "Case %d is open in %s: end it, or scan SUSPEND or CANCEL.", (int)t->s->case_no,
		       station_room_name(t->station, t->in->room));
		return;
	}
	open_case(t, "");
	turn_accept(t, "Case %d opened in %s.", (int)t->s->case_no,
	            station_room_name(t->station, t->in->room));
}

static void card_off(struct turn *t)
{
	int on = sheet_digits_on(t->s);
	if (!on)
		refuse(
		    t,
		    "No tourniquet is on a digit: OFF changes nothing. If one is on, scan its digit card.");
	else if (t->s->asked.what == Q_OFF)
		take_off(t, t->s->asked.digit);
	else if (on == 1)
		take_off(t, sheet_first_digit_on(t->s));
	else
		ask(t, (struct asked){.what = Q_WHICH_OFF}, "Tourniquets are on %d digits.", on);
}

static void card_add(struct turn *t)
{
	if (t->s->asked.what == Q_OFF) { /* ADD instead of OFF: a second tourniquet on that digit */
		second_on(t, t->s->asked.digit);
		return;
	}
	ask(t, (struct asked){.what = Q_ADD}, "Adding.");
}

/* The tourniquet that is on, or will go on, without being in the catalogue. */
static void card_unlisted(struct turn *t)
{
	add_unlisted(t, ROLE_TOURNIQUET, "tourniquet, not listed");
	close_question(t);
	turn_accept(
	    t, "Entered: a tourniquet that is not listed. Say aloud what it is; a glove finger or a drain "
	       "must not be "
	       "used.");
}

static void card_unreadable(struct turn *t)
{
	if (t->s->final == FINAL_ASKING) {
		final_answer(t, CARD_MARK_UNREADABLE, 0);
		return;
	}
	add_unlisted(t, ROLE_FORCEPS, "artery forceps, mark unreadable");
	close_question(t);
	turn_accept(t, "Counted in: 1 artery forceps, mark unreadable. At the end it is shown to both.");
}

static void card_forceps_moved(struct turn *t)
{
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = &t->s->items[i - 1];
		if (it->thing.role == ROLE_FORCEPS && it->place == ITEM_ON) {
			int digit = it->digit;
			EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)i);
			turn_accept(
			    t, "Forceps moved away: tourniquet without forceps on the %s. The clock runs.",
			    own_digit_name(digit));
			return;
		}
	}
	refuse(t, "No forceps is on a tourniquet now.");
}

static void card_minutes_ago(struct turn *t, int minutes)
{
	const struct digit *d = sheet_digit_const(t->s, t->s->last_timed);
	if (!d) {
		refuse(t,
		       "Nothing has been timed yet: scan the digit card or OFF first, then %d MINUTES AGO.",
		       minutes);
		return;
	}
	EMIT(t, .kind = EV_DIGIT_EARLIER, .digit = d->number, .n = minutes,
	     .what = (uint8_t)(t->s->last_timed_off ? 2 : 1));
	turn_accept(t, "%s %d min earlier, %s.", t->s->last_timed_off ? "Off" : "On", minutes,
	            own_digit_name(t->s->last_timed));
}

static void card_undo(struct turn *t)
{
	struct step step = t->index >= 0 ? t->station->undo[t->index] : (struct step){0};
	if (!step.seq) {
		refuse(t, "Nothing can be taken back now. To move an entry to the right digit scan MISREAD.");
		return;
	}
	char what[120] = "", done[40];
	snprintf(done, sizeof done, "%s", event_name((enum event_kind)step.kind));
	for (char *c = done; *c; c++)
		*c = *c == '-' ? ' ' : *c;
	if (step.digit)
		snprintf(what, sizeof what, ", %s", own_digit_name(step.digit));
	else if (step.item && sheet_item(t->s, step.item))
		snprintf(what, sizeof what, ", %s", sheet_item(t->s, step.item)->thing.name);
	EMIT(t, .kind = EV_UNDONE, .ref = step.seq);
	*t->s = t->station->before[t->index];
	turn_accept(t, "Taken back: %s%s. The record keeps both.", done, what);
}

static void card_misread(struct turn *t)
{
	int digit = t->s->last_timed;
	ask(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit},
	    digit ? "Misread: the %s is wrong." : "Misread: for a pack, scan that pack again to strike it.%s",
	    digit ? own_digit_name(digit) : "");
}

static void card_suspend(struct turn *t)
{
	int suspended = station_suspended_in(t->station, t->in->room);
	if (has_case(t)) {
		EMIT(t, .kind = EV_SUSPENDED);
		turn_accept(t,
		            "Case %d is suspended. Clocks and reminders go on. SUSPEND again continues it.",
		            (int)t->s->case_no);
	} else if (suspended >= 0) {
		*t->s = t->station->sheets[suspended];
		EMIT(t, .kind = EV_RESUMED);
		turn_accept(t, "Case %d goes on.", (int)t->s->case_no);
	} else {
		refuse(t, "No case is open or suspended in %s.", station_room_name(t->station, t->in->room));
	}
}

static void search_step(struct turn *t, int done)
{
	int step = t->s->search_done + 1;
	if (!t->s->discrepancy || step > t->station->policy.n_search) {
		refuse(t, t->s->discrepancy
		              ? "Every step of the search is answered. FINAL COUNT counts again; END "
		                "UNRESOLVED is the surgeon's decision."
		              : "There is no search now.");
		return;
	}
	struct event e = {.kind = EV_SEARCH_STEP, .n = step, .what = (uint8_t)(done ? 1 : 2)};
	snprintf(e.text, sizeof e.text, "%s", t->station->policy.search[step - 1]);
	emit(t, &e);
	turn_accept(t, "Search step %d %s: %s.", step, done ? "done" : "not done", e.text);
}

static void card_end_unresolved(struct turn *t)
{
	int on = sheet_first_digit_on(t->s);
	if (!t->s->discrepancy)
		refuse(t, "Nothing is missing or extra: a case ends unresolved only after a discrepancy.");
	else if (on)
		refuse(t, "A tourniquet is on the %s: take it off first.", own_digit_name(on));
	else if (t->s->search_done < t->station->policy.n_search)
		refuse(t, "The search is not complete. Next: %s. Scan STEP DONE or NOT DONE.",
		       t->station->policy.search[t->s->search_done]);
	else
		ask(t, (struct asked){.what = Q_SURGEON_ENDS}, "Every step of the search is answered.");
}

static void card_offcut(struct turn *t)
{
	for (int i = t->s->n_items; i >= 1; i--) {
		const struct item *it = &t->s->items[i - 1];
		if (it->thing.role == ROLE_TOURNIQUET && item_open(it)) {
			EMIT(t, .kind = EV_ITEM_MORE, .item = (uint8_t)i, .n = 1);
			turn_accept(t, "Offcut counted: %s, now %d pieces.", it->thing.name, it->pieces);
			return;
		}
	}
	refuse(t, "No tourniquet is on the sheet that an offcut could come from.");
}

/* The line that was being answered is asked again; a sign-out begins again (sections 4, 8). */
static void card_interrupted(struct turn *t)
{
	if (t->s->asked.what == Q_POINT) {
		int32_t badge = t->s->asked.person;
		close_question(t);
		if (badge)
			sign_out(t, badge);
		else
			ask_points(t);
		return;
	}
	if (t->s->final != FINAL_ASKING) {
		refuse(t, "No count is going on.");
		return;
	}
	int next = sheet_next_open(t->s), item = next;
	for (int i = 1; i <= t->s->n_items; i++)
		if (t->s->items[i - 1].place == ITEM_ACCOUNTED && (!next || i < next))
			item = i;
	if (!item) {
		refuse(t, "No line has been counted yet.");
		return;
	}
	EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)item);
	turn_accept(t, "Interrupted: %s is counted again.", t->s->items[item - 1].thing.name);
}

static int is_missing(const struct item *it)
{
	return item_open(it) && (it->missing || it->condition == CONDITION_PIECES_MISSING);
}

/* Which of the missing items was found? They are asked for one by one, beginning behind number `after`. */
void ask_found(struct turn *t, int after)
{
	for (int i = after + 1; i <= t->s->n_items; i++)
		if (is_missing(&t->s->items[i - 1])) {
			ask(t, (struct asked){.what = Q_FOUND, .item = (uint8_t)i}, "Found.");
			return;
		}
	close_question(t);
	if (after)
		turn_accept(t, "None of the missing items. An item that is not on the sheet: scan its code.");
	else
		refuse(t, "Nothing that is on the sheet is missing now.");
}

static void card_found(struct turn *t)
{
	if (t->s->discrepancy || sheet_missing(t->s))
		ask_found(t, 0);
	else
		refuse(t, "Nothing is missing in this case. An item of an earlier case: end this one, then "
		          "scan FOUND.");
}

static void card_without_full_sight(struct turn *t)
{
	if (t->s->asked.what != Q_HANDOVER_SEEN) {
		refuse(t, "WITHOUT FULL SIGHT belongs to a handover.");
		return;
	}
	struct asked q = t->s->asked;
	EMIT(t, .kind = EV_DIGIT_SEEN_ON, .digit = q.digit, .n = 0);
	ask(t, (struct asked){.what = Q_HANDOVER_AGREE, .person = q.person, .n = q.n},
	    "Handover without full sight of the %s. The slip says so.", own_digit_name(q.digit));
}

static void card_looked(struct turn *t, enum who_looked who)
{
	static const char *const words[] = {"", "", "the patient", "a carer", "a colleague", "nobody else"};
	if (!t->s->single || t->s->final != FINAL_AGREED || sheet_next_look(t->s)) {
		refuse(t, "WHO LOOKED belongs to a single-person count, after the look at the bare digit.");
		return;
	}
	EMIT(t, .kind = EV_WHO_LOOKED, .what = (uint8_t)who);
	close_question(t);
	turn_accept(t, "Looked at the bare digit as well: %s.", words[who]);
}

static void card_cancel(struct turn *t)
{
	ask(t, (struct asked){.what = Q_CANCEL}, "Case %d.", (int)t->s->case_no);
}

static void card_awake(struct turn *t)
{
	int awake = !t->s->awake;
	EMIT(t, .kind = EV_AWAKE, .n = awake);
	turn_accept(t, awake ? "The patient is awake: quiet sounds, plain words." : "Usual sounds again.");
}

static void card_dressing(struct turn *t)
{
	EMIT(t, .kind = EV_DRESSING_ON, .n = 1);
	turn_accept(t, "A dressing is on already: it comes down for the look at the bare digit.");
}

static void card_visitor(struct turn *t, int32_t visitor)
{
	enum team_place place = team_place_of(&t->s->team, visitor);
	if (place == PLACE_FIELD || place == PLACE_CIRCULATING || place == PLACE_VISITOR)
		refuse(t, "%s is in the team already.", staff_name(&t->station->staff, visitor));
	else
		ask(t, (struct asked){.what = Q_VISITOR, .person = visitor}, "%s.",
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
	case CARD_FOUND:
		if (has_case(t))
			return 0;
		ask(t, (struct asked){.what = Q_FOUND},
		    "Found after the end of a case. Scan the item, or the slip of "
		    "the case that it comes from.");
		return 1;
	default:
		return 0;
	}
}

static void card_in_case(struct turn *t)
{
	int card = t->in->card;
	switch ((enum own_card)card) {
	case CARD_OFF:
		card_off(t);
		return;
	case CARD_ADD:
		card_add(t);
		return;
	case CARD_RETURNED_UNOPENED:
		ask(t, (struct asked){.what = Q_RETURNED}, "Returned unopened.");
		return;
	case CARD_UNLISTED_TOURNIQUET:
		card_unlisted(t);
		return;
	case CARD_NO_CODE:
		ask(t, (struct asked){.what = Q_NO_CODE}, "An item without a code.");
		return;
	case CARD_MARK_UNREADABLE:
		card_unreadable(t);
		return;
	case CARD_DROPPED:
		ask(t, (struct asked){.what = Q_DROPPED}, "Dropped.");
		return;
	case CARD_WRONG_NUMBER_IN_PACK:
		ask(t, (struct asked){.what = Q_ISOLATE}, "Wrong number in the pack.");
		return;
	case CARD_FORCEPS_MOVED:
		card_forceps_moved(t);
		return;
	case CARD_FINAL_COUNT:
		final_begin(t);
		return;
	case CARD_HANDOVER:
		ask(t, (struct asked){.what = Q_HANDOVER_OUT}, "Handover.");
		return;
	case CARD_WITHOUT_FULL_SIGHT:
		card_without_full_sight(t);
		return;
	case CARD_STEP_DONE:
		search_step(t, 1);
		return;
	case CARD_NOT_DONE:
		search_step(t, 0);
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
		card_minutes_ago(t, card - 100);
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
		card_visitor(t, 90 - card);
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
		ask(t, (struct asked){.what = Q_LEAVES}, "Patient leaves.");
		return;
	case CARD_YES:
	case CARD_NO:
	case CARD_INTACT:
	case CARD_CUT_AND_COMPLETE:
	case CARD_PIECES_MISSING:
	case CARD_MISSING:
		if (t->s->final == FINAL_ASKING)
			final_answer(t, card, 0);
		else if (card == CARD_NO && t->station->policy.n_points && ready_to_sign_out(t->s))
			ask_points(t);
		else
			refuse(t, "Nothing is asked now that %s would answer.", own_card_name(card));
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
			final_answer(t, card, card - 200);
		else
			refuse(t, "No count asks for a number now.");
		return;
	case CARD_NEW_CASE:
	case CARD_SUSPEND:
	case CARD_SPARE_SCANNER:
	case CARD_THIS_ROOM:
		break;
	}
	refuse(t, "This card has no use here.");
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
	default:
		return 0;
	}
}

void on_card(struct turn *t)
{
	if (card_of_room(t))
		return;
	if (!has_case(t)) {
		refuse(t, "No case is open in %s: scan NEW CASE first.",
		       station_room_name(t->station, t->in->room));
		return;
	}
	if (must_answer((enum question)t->s->asked.what, t->in->card))
		answer_question(t, t->in->card);
	else
		card_in_case(t);
}
