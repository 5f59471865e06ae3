#include "decide/stored-come.h"

#include <string.h>

#include "decide/phrases.h"
#include "decide/stored-list.h"
#include "decide/unreadable.h"

static enum held_kind kind_of(enum act act)
{
	switch (act) {
	case ACT_CARD:
		return HELD_CARD;
	case ACT_DIGIT:
		return HELD_DIGIT;
	case ACT_BADGE:
		return HELD_BADGE;
	case ACT_CASE_LABEL:
		return HELD_CASE_LABEL;
	case ACT_SLIP:
		return HELD_SLIP;
	case ACT_THING:
		return HELD_THING;
	case ACT_TRAY:
		return HELD_TRAY;
	case ACT_PAPER_SHEET:
	case ACT_TICK:
	case ACT_TYPED:
	case ACT_SIGNED:
	case ACT_UNKNOWN:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_HALF:
	case ACT_STORED:
		break;
	}
	return 0;
}

static struct held held_of(const struct input *in, int32_t room, int place)
{
	struct held h = {.made = in->at,
	                 .room = room,
	                 .kind = (uint8_t)kind_of(in->act),
	                 .digit = (uint8_t)in->digit,
	                 .place = (uint8_t)(place < 255 ? place : 255),
	                 .n = in->act == ACT_CARD ? in->card : in->number,
	                 .other = in->act == ACT_SLIP ? in->copy : in->card_room,
	                 .proof = in->act == ACT_SLIP ? in->proof : 0,
	                 .thing = in->thing};
	memcpy(h.scanner, in->scanner, sizeof h.scanner);
	return h;
}

static void start_doubt(struct turn *t, int digit, struct moment made)
{
	const struct digit *d = turn_has_case(t) ? sheet_digit_const(t->s, digit) : NULL;
	if (d ? digit_runs(d) : t->s->n_digits == DIGITS_MAX)
		return;
	if (!turn_has_case(t)) {
		turn_open_case(t, "");
		turn_owe(t, DEBT_TEAM, 0, 0);
	}
	if (d && d->state == DIGIT_OFF && d->since.boot == made.boot && moment_between_ms(made, d->since) > 0)
		made = d->since; /* what goes on again goes on no earlier than the last came off */
	EMIT(t, .kind = d && d->had ? EV_DIGIT_DOUBTED : EV_DIGIT_MAYBE_ON, .digit = (uint8_t)digit,
	     .at = made, .flags = EVENT_LATE | EVENT_FIRST);
	EMIT(t, .kind = EV_OWED, .what = DEBT_ON, .digit = (uint8_t)digit, .at = made);
}

/* A case that is suspended here keeps its own clocks; a digit that runs there begins no case. */
static int runs_suspended(const struct turn *t, int digit)
{
	for (int i = 0; i < SHEETS_MAX && !turn_has_case(t); i++) {
		const struct sheet *s = &t->station->sheets[i];
		const struct digit *d =
		    s->case_no && s->room == t->in->room && s->suspended ? sheet_digit_const(s, digit) : NULL;
		if (d && digit_runs(d))
			return 1;
	}
	return 0;
}

/* A digit card means that a tourniquet may be on since it was made, whatever becomes of the question (rule 3). */
static void start_digits(struct turn *t)
{
	for (int i = 0; i < t->in->n_stored; i++) {
		const struct input *s = &t->in->stored[i];
		if (s->act != ACT_DIGIT || s->card_room != t->in->room || runs_suspended(t, s->digit))
			continue;
		if (turn_has_case(t) || station_free_sheet(t->station) >= 0)
			start_doubt(t, s->digit, s->at);
	}
}

static int fits(const struct turn *t)
{
	struct held list[HELD_ROOM_MAX];
	int fresh = 0;
	for (int i = 0; i < t->out->count; i++)
		fresh += t->out->events[i].kind == EV_HELD;
	return stored_list(t->station, t->in->room, t->out, list) < HELD_ROOM_MAX &&
	       t->station->n_held + fresh < HELD_MAX;
}

/* What came is no scan that can be entered later. `why`: what more is known of it, SAY_NONE nothing. */
static struct say unusable(const struct input *in)
{
	struct say say;
	switch (in->act) {
	case ACT_PATIENT:
		return *SAY(UNHELD, .what = SAY_SCAN_OF_PATIENT);
	case ACT_FOREIGN:
		if (in->what == SAY_SCAN_OF_PRACTICE)
			return *SAY(UNHELD, .what = SAY_SCAN_OF_PRACTICE);
		return in->text[0] ? *SAY(UNHELD_FOR, .what = SAY_SCAN_OF_FOREIGN, .why = SAY_OTHER_SITE,
		                          .site = in->text)
		                   : *SAY(UNHELD_FOR, .what = SAY_SCAN_OF_FOREIGN, .why = SAY_OTHER_STATION,
		                          .station = in->number);
	case ACT_HALF:
		return *SAY(UNHELD, .what = SAY_SCAN_OF_HALF);
	case ACT_BROKEN:
		return *SAY(UNHELD, .what = SAY_SCAN_MISREAD);
	case ACT_UNKNOWN:
		say = input_unknown_code(in);
		say.why = say.saying;
		say.saying = say.why == SAY_CODE_AS_READ && !in->text[0] ? SAY_UNHELD : SAY_UNHELD_FOR;
		say.what = SAY_SCAN_UNKNOWN;
		return say;
	case ACT_TICK:
	case ACT_TYPED:
	case ACT_STORED:
	case ACT_CARD:
	case ACT_DIGIT:
	case ACT_BADGE:
	case ACT_PAPER_SHEET:
	case ACT_CASE_LABEL:
	case ACT_SLIP:
	case ACT_SIGNED:
	case ACT_THING:
	case ACT_TRAY:
		break;
	}
	return *SAY(UNHELD, .what = SAY_SCAN_OF_NOTHING);
}

/* What cannot be held is said and recorded, each with its reason. */
struct not_held {
	int count;
	struct say first;
};

static void not_held(struct turn *t, struct not_held *list, struct say what)
{
	struct event e = {.kind = EV_REFUSED};
	if (!list->count++)
		list->first = what;
	what.saying = what.saying == SAY_UNHELD_FOR ? SAY_NOT_HELD_FOR : SAY_NOT_HELD;
	said_keep(&e.said, &what);
	turn_emit(t, &e);
}

static void scan_not_held(struct turn *t, struct not_held *list, const struct held *h, enum saying why)
{
	struct say what = stored_scan(t->station, h);
	what.what = what.saying;
	what.why = why;
	what.saying = SAY_UNHELD_FOR;
	not_held(t, list, what);
}

/* Cards that answer what was asked when they were scanned, or take back what was last then: later they would answer
 * something else. */
static int answers_only(int card)
{
	static const int others[] = {CARD_INTACT,          CARD_CUT_AND_COMPLETE, CARD_PIECES_MISSING,
	                             CARD_MARK_UNREADABLE, CARD_MISSING,          CARD_WITHOUT_FULL_SIGHT,
	                             CARD_STEP_DONE,       CARD_NOT_DONE};
	enum own_card_group group = own_card_group(card);
	for (size_t i = 0; i < sizeof others / sizeof *others; i++)
		if (others[i] == card)
			return 1;
	return group == CARDS_ANSWERS || group == CARDS_EARLIER || group == CARDS_SHOWN ||
	       group == CARDS_LOOKED;
}

static int hold_each(struct turn *t, struct not_held *rest)
{
	int kept = 0;
	for (int i = 0; i < t->in->n_stored; i++) {
		const struct input *s = &t->in->stored[i];
		struct held h = held_of(s, t->in->room, i + 1);
		struct event e;
		if (h.kind == HELD_CARD && h.n == CARD_SUSPEND) {
			scan_not_held(t, rest, &h, SAY_BEHIND_SUSPEND);
		} else if (h.kind == HELD_CARD && answers_only(h.n)) {
			scan_not_held(t, rest, &h, SAY_ANSWERED_WHAT);
		} else if (!h.kind) {
			not_held(t, rest, unusable(s));
		} else if (!fits(t)) {
			scan_not_held(t, rest, &h, SAY_TOO_MANY_WAIT);
		} else {
			held_event(&h, &e);
			turn_emit_for_room(t, e);
			kept++;
		}
	}
	return kept;
}

static void say_clocks(struct turn *t)
{
	for (int i = 0; i < t->out->count; i++) {
		const struct event *e = &t->out->events[i];
		if (e->kind == EV_DIGIT_MAYBE_ON || e->kind == EV_DIGIT_DOUBTED)
			turn_say_more(
			    t, SAY(R_ON_MAYBE_FROM, .digit = e->digit, .time = moment_minute_of_day(e->at)));
	}
}

/* A stored digit card that opened its case says so, as one does that was just scanned. */
static void say_opened(struct turn *t)
{
	int suspended = station_suspended_in(t->station, t->in->room);
	if (t->index >= 0 || !turn_has_case(t))
		return;
	turn_say_more(t, SAY(R_CASE_IS_OPENED, .case_no = t->s->case_no));
	if (suspended >= 0)
		turn_say_more(t, SAY(R_STAYS_SUSPENDED, .case_no = t->station->sheets[suspended].case_no));
}

static void say_not_held(struct turn *t, const struct not_held *rest)
{
	if (!rest->count)
		return;
	enum saying why = rest->first.why;
	int says_what_to_do = why == SAY_ANSWERED_WHAT || why == SAY_BEHIND_SUSPEND;
	turn_say_more(t, rest->count > 1   ? SAY(R_NOT_HELD_FIRST, .n = rest->count)
	                 : says_what_to_do ? SAY(R_NOT_HELD_SAID)
	                                   : SAY(R_NOT_HELD));
	turn_list(t, &rest->first);
}

void stored_take(struct turn *t)
{
	struct not_held rest = {0};
	if (!t->in->n_stored && !t->in->lost) {
		turn_say(t, SAY(R_STORED_WAIT));
		return;
	}
	int kept = hold_each(t, &rest);
	start_digits(t);
	if (t->in->lost)
		not_held(t, &rest, *SAY(UNHELD, .what = SAY_SCAN_TOO_LONG));
	reply_say(&t->out->reply, kept ? VERDICT_QUESTION : VERDICT_REFUSED,
	          SAY(R_STORED_CAME, .n = t->in->n_stored + t->in->lost));
	say_not_held(t, &rest);
	say_clocks(t);
	say_opened(t);
}
