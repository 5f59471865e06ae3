#include "decide/decide.h"

#include <stdio.h>
#include <string.h>

#include "decide/audit-desk.h"
#include "decide/badge.h"
#include "decide/card.h"
#include "decide/digit-card.h"
#include "decide/next.h"
#include "decide/pack.h"
#include "decide/slip-read.h"
#include "decide/stored-answer.h"
#include "decide/stored-come.h"
#include "decide/stored-enter.h"
#include "decide/stored-list.h"
#include "decide/tick.h"
#include "decide/typed.h"
#include "decide/unreadable.h"

static void on_case_label(struct turn *t)
{
	char label[16];
	if (turn_has_case(t)) {
		turn_refuse_further_case(t);
		return;
	}
	snprintf(label, sizeof label, "%07d", (int)t->in->number);
	turn_open_case(t, label);
	turn_say(t, SAY(R_CASE_OPENED_LABEL, .case_no = t->s->case_no,
	                .room = station_room_name(t->station, t->in->room), .label = t->in->number));
}

/* FROM PAPER: what was counted on this sheet while the station was silent is entered as a case of its own. */
static void on_paper_sheet(struct turn *t)
{
	char label[PAPER_LABEL_MAX];
	const char *room = station_room_name(t->station, t->in->room);
	int i = station_room_index(t->station, t->in->room);
	if (turn_has_case(t)) {
		turn_refuse_further_case(t);
		return;
	}
	if (i >= 0 && paper_sheets_has(&t->station->papers[i], t->in->number)) {
		turn_refuse(t, SAY(PAPER_SHEET_ENTERED, .n = t->in->number, .room = room));
		return;
	}
	paper_sheet_label(t->in->number, label);
	turn_open_case(t, label);
	turn_say(t, SAY(R_FROM_PAPER, .case_no = t->s->case_no, .room = room, .n = t->in->number));
}

/* A card of another room is announced and asked: nothing is entered until the scanner's room is clear
 * (rule 18). THIS ROOM answers it; SPARE SCANNER binds a scanner until a further card.
 */
static enum answered card_of_other_room(struct turn *t)
{
	const struct input *in = t->in;
	if (in->act == ACT_CARD && (in->card == CARD_THIS_ROOM || in->card == CARD_SPARE_SCANNER)) {
		int spare = in->card == CARD_SPARE_SCANNER;
		struct event e = {.kind = EV_SCANNER_ROOM,
		                  .n = in->card_room,
		                  .what = (uint8_t)(spare ? CARRIED_SPARE : CARRIED_FOR_A_WHILE)};
		snprintf(e.text, sizeof e.text, "%s", in->scanner);
		turn_emit_for_room(t, e);
		turn_say(t, spare
		                ? SAY(R_SPARE_SCANNER, .room = station_room_name(t->station, in->card_room))
		                : SAY(R_SCANNER_WORKS, .room = station_room_name(t->station, in->card_room)));
		return ANSWERED;
	}
	if (in->card_room == in->room)
		return ANSWERED_NOT;
	turn_refuse(t, SAY(CARD_OF_OTHER_ROOM, .other_room = station_room_name(t->station, in->card_room),
	                   .room = station_room_name(t->station, in->room)));
	return ANSWERED;
}

/* Cards that, entered once more, tell of one thing more. */
static int is_of_a_further_thing(int card)
{
	return card == CARD_OFF || card == CARD_UNLISTED_TOURNIQUET || card == CARD_NO_CODE ||
	       card == CARD_FORCEPS_MOVED || card == CARD_OFFCUT;
}

/* Whether a stored card was scanned again since it came is known to the program that ran then: refused where it would matter. */
static enum answered card_before_start(struct turn *t)
{
	if (!t->in->held || !t->in->outlived || !is_of_a_further_thing(t->in->card))
		return ANSWERED_NOT;
	turn_refuse(t, SAY(STORED_BEFORE_START, .card = t->in->card));
	return ANSWERED;
}

static void take(struct turn *t)
{
	if (station_room_is(t->station, t->in->room, ROOM_OF_AUDIT)) {
		if (t->in->act != ACT_CARD || card_of_other_room(t) == ANSWERED_NOT)
			audit_desk_take(t);
		return;
	}
	switch (t->in->act) {
	case ACT_CARD:
		if (card_of_other_room(t) == ANSWERED_NOT && card_before_start(t) == ANSWERED_NOT)
			card_take(t);
		return;
	case ACT_DIGIT:
		if (card_of_other_room(t) == ANSWERED_NOT && stored_start(t) == ANSWERED_NOT)
			digit_card_take(t);
		return;
	case ACT_BADGE:
		badge_take(t);
		return;
	case ACT_CASE_LABEL:
		on_case_label(t);
		return;
	case ACT_PAPER_SHEET:
		if (card_of_other_room(t) == ANSWERED_NOT)
			on_paper_sheet(t);
		return;
	case ACT_SLIP:
		slip_take(t);
		return;
	case ACT_THING:
	case ACT_TRAY:
		thing_take(t);
		return;
	case ACT_TYPED:
		typed_take(t);
		return;
	case ACT_UNKNOWN:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_SIGNED:
	case ACT_HALF:
		unreadable_take(t);
		return;
	case ACT_STORED:
		stored_take(t);
		return;
	case ACT_TICK:
		return;
	}
}

/* Whether what is scanned can only belong to a suspended case, where no other is running. */
static int fits_suspended(const struct sheet *s, const struct input *in)
{
	if (in->card_room != in->room)
		return 0;
	if (in->act == ACT_CARD && in->card == CARD_OFF)
		return sheet_digits_on(s) != 0;
	const struct digit *d = in->act == ACT_DIGIT ? sheet_digit_const(s, in->digit) : NULL;
	return d && digit_runs(d);
}

/* How many suspended cases of the room it fits while none runs there; the first two of them. */
static int suspended_that_fit(const struct station *st, const struct input *in, int fit[2])
{
	int n = 0;
	for (int i = 0; i < SHEETS_MAX && station_sheet_of_room(st, in->room) < 0; i++) {
		const struct sheet *s = &st->sheets[i];
		if (!s->case_no || s->room != in->room || !s->suspended || !fits_suspended(s, in))
			continue;
		if (n < 2)
			fit[n] = i;
		n++;
	}
	return n;
}

/* A suspended case goes on when what is scanned can only belong to it and no other case is running. */
static int which_sheet(const struct station *st, const struct input *in)
{
	int fit[2], index = station_sheet_of_room(st, in->room);
	return index < 0 && suspended_that_fit(st, in, fit) == 1 ? fit[0] : index;
}

/* Records of earlier versions may have two suspended in a room: nothing acts on the wrong one. */
static enum answered fits_two(struct turn *t)
{
	int fit[2];
	if (suspended_that_fit(t->station, t->in, fit) < 2)
		return ANSWERED_NOT;
	turn_refuse(t, SAY(SUSPENDED_FITS_TWO, .case_no = t->station->sheets[fit[0]].case_no,
	                   .other_case = t->station->sheets[fit[1]].case_no,
	                   .room = station_room_name(t->station, t->in->room)));
	return ANSWERED;
}

/* A case that was cancelled and holds nothing any more has nothing to count. */
static void end_if_empty(struct turn *t)
{
	int32_t case_no = t->s->case_no;
	if (!turn_has_case(t) || !t->s->cancelled || t->s->suspended || t->s->asked.what ||
	    sheet_holds_any(t->s) || t->out->reply.verdict == VERDICT_REFUSED)
		return;
	EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_SHEET_EMPTY);
	turn_say_more(t, SAY(R_ENDED_NOTHING_LEFT, .case_no = case_no));
}

/* Of what was given back, or never was here, nothing of its use is owed any more (rules 5 and 7). */
static void not_used_after_all(struct turn *t)
{
	struct debts owed = t->s->debts;
	for (int i = 0; i < owed.count; i++) {
		const struct debt *d = &owed.list[i];
		const struct item *it = sheet_item_const(t->s, d->item);
		int of_use =
		    d->kind == DEBT_ROLLS_ON || d->kind == DEBT_SURGEON || d->kind == DEBT_EXPIRY_READ;
		if (of_use && it && (it->place == ITEM_STRUCK || it->place == ITEM_RETURNED))
			turn_pay(t, (enum debt_kind)d->kind, d->item, 0, PAID_NOT_USED);
	}
}

/* A question about what is on a patient, or about an extra item, does not go away because something else was scanned:
 * where it is still owed and nothing else is asked, it is asked again (rules 1, 3 and 19). */
static void ask_again(struct turn *t)
{
	const struct debt *d;
	int unseen;
	if (!turn_has_case(t))
		return;
	not_used_after_all(t);
	if (t->s->asked.what || t->s->suspended || t->out->enter || t->in->more)
		return;
	if ((d = debts_find(&t->s->debts, DEBT_ON)))
		EMIT(t, .kind = EV_ASKED, .what = Q_IS_ON, .digit = d->digit, .n = 1);
	else if ((d = debts_find(&t->s->debts, DEBT_MARKED_DIGIT)))
		EMIT(t, .kind = EV_ASKED, .what = Q_RIGHT_DIGIT, .digit = d->digit);
	else if (debts_has(&t->s->debts, DEBT_HANDOVER) && (unseen = sheet_first_unseen_on(t->s)))
		EMIT(t, .kind = EV_ASKED, .what = Q_HANDOVER_SEEN, .digit = (uint8_t)unseen);
	else if ((d = debts_find(&t->s->debts, DEBT_ROLLS_ON)))
		EMIT(t, .kind = EV_ASKED, .what = Q_ROLLS_ON, .item = d->item);
	else if (t->s->final == FINAL_ASKING && !t->s->discrepancy && !sheet_next_open(t->s) &&
	         sheet_first_extra(t->s))
		EMIT(t, .kind = EV_ASKED, .what = Q_EXTRA, .item = (uint8_t)sheet_first_extra(t->s));
}

static int unseen_after(const struct station *st, int32_t room, const struct outcome *out)
{
	int unseen = station_unseen_in(st, room);
	for (int i = 0; i < out->count; i++) {
		const struct event *e = &out->events[i];
		const struct slip *slip =
		    e->kind == EV_SLIP_STATE && e->what == SLIP_SEEN ? station_slip(st, e->n) : NULL;
		unseen += (e->kind == EV_SLIP_QUEUED && e->room == room) - (slip && slip->room == room);
	}
	return unseen;
}

/* The same again is said as what it was: `once` says what became of it. */
static void say_read_again(struct turn *t, enum saying once)
{
	const struct input *in = t->in;
	struct say say = {.saying = once, .what = SAY_R_READ_THING, .item = in->thing.name};
	if (in->act == ACT_CARD) {
		say.what = SAY_SCAN_OF_CARD;
		say.card = in->card;
	} else if (in->act == ACT_DIGIT) {
		say.what = SAY_SCAN_OF_DIGIT;
		say.digit = in->digit;
	} else if (in->act == ACT_BADGE) {
		say.what = SAY_SCAN_OF_BADGE;
		say.person = staff_name(&t->station->staff, in->number);
	} else if (in->act == ACT_SLIP) {
		say.what = SAY_SCAN_OF_SLIP;
		say.slip = in->number;
	}
	turn_say(t, &say);
}

/* One read is one answer (rule 22): the same code within the repeat time, and the same card or badge right after
 * itself however late, is entered once. */
static enum answered read_again(struct turn *t)
{
	int i = station_room_index(t->station, t->in->room);
	int32_t answer = input_answer(t->in);
	int32_t last = turn_has_case(t) ? t->s->last_answer : i >= 0 ? t->station->idle_last[i] : 0;
	if (t->in->repeated == REPEATED_STILL && !t->in->known.used_in &&
	    !(turn_has_case(t) && sheet_item_by_identity(t->s, t->in->thing.identity)))
		return ANSWERED_NOT; /* what it was entered as has been taken back since */
	if (t->in->repeated == REPEATED_NOW)
		say_read_again(t, SAY_R_READ_TWICE);
	else if (t->in->repeated == REPEATED_STILL)
		say_read_again(t, SAY_R_ENTERED_ALREADY);
	else if (answer && answer == last && (t->in->act != ACT_CARD || t->in->card_room == t->in->room))
		say_read_again(t, SAY_R_ENTERED_ALREADY);
	else
		return ANSWERED_NOT;
	return ANSWERED;
}

/* Stands before all that the reply says; `said`: the same in English. */
static void say_before(struct reply *reply, const struct say *first, const char *said)
{
	char rest[SAID_MAX];
	memcpy(rest, reply->said, sizeof rest);
	snprintf(reply->said, sizeof reply->said, "%s: %.*s", said, (int)(SAID_MAX - ROOM_NAME_MAX - 4),
	         rest);
	if (reply->n_parts == REPLY_PARTS)
		reply->n_parts--;
	if (reply->n_parts) {
		memmove(&reply->parts[1], &reply->parts[0], sizeof *reply->parts * (size_t)reply->n_parts);
		memmove(&reply->listed[1], &reply->listed[0], (size_t)reply->n_parts++);
		reply->listed[0] = 0;
		said_keep(&reply->parts[0], first);
	}
}

/* Every reply of a room says which, where another room has a case as well; and of practice, that it is one. */
static void name_room(const struct station *st, int32_t room, struct outcome *out)
{
	struct reply *reply = &out->reply;
	if (reply->said[0] && st->practice)
		say_before(reply, SAY(R_PRACTICE), "Practice");
	if (out->count && out->events[0].kind == EV_SCANNER_ROOM) /* the new one is named */
		return;
	if (!reply->said[0] || !station_others_have_a_case(st, room))
		return;
	say_before(reply, SAY(R_ROOM, .room = station_room_name(st, room)), station_room_name(st, room));
}

static int32_t suspended_in(const struct station *st, int32_t room)
{
	int index = station_suspended_in(st, room);
	return index >= 0 ? st->sheets[index].case_no : 0;
}

static int has_event(const struct turn *t, enum event_kind kind)
{
	for (int i = 0; i < t->out->count; i++)
		if (t->out->events[i].kind == kind)
			return 1;
	return 0;
}

/* What somebody began to enter is lost with the question about it: it is said, or the thing stands on no sheet. */
static void say_pushed_away(struct turn *t, enum question was)
{
	int card = was == Q_NO_CODE ? CARD_NO_CODE : was == Q_ISOLATE ? CARD_WRONG_NUMBER_IN_PACK : 0;
	int answer = t->in->act == ACT_CARD && (t->in->card == CARD_NO || t->in->card == CARD_UNDO ||
	                                        t->in->card == CARD_NEXT || t->in->card == CARD_MISREAD);
	if (!card || answer || t->out->reply.verdict == VERDICT_REFUSED || turn_asked(t) == was ||
	    turn_asked(t) == Q_COUNTED_IN || !has_event(t, EV_ASKED) || has_event(t, EV_ITEM_IN) ||
	    has_event(t, EV_ITEM_ISOLATED))
		return;
	turn_say_more(t, SAY(R_PUSHED_AWAY, .card = card));
}

/* The patient before lies somewhere with one on the same digit: whose card was it? */
static void say_suspended_on(struct turn *t)
{
	int index = station_suspended_in(t->station, t->in->room);
	for (int i = 0; index >= 0 && i < t->out->count; i++) {
		const struct event *e = &t->out->events[i];
		const struct sheet *s = &t->station->sheets[index];
		const struct digit *d = sheet_digit_const(s, e->digit);
		if ((e->kind == EV_DIGIT_ON || e->kind == EV_DIGIT_MAYBE_ON) && e->case_no == t->s->case_no &&
		    s->case_no != e->case_no && d && digit_runs(d))
			turn_say_more(t, SAY(R_SUSPENDED_HAS_ONE, .case_no = s->case_no, .digit = e->digit));
	}
}

/* What comes next, in the room that the scanner works for after this scan. */
static void say_next(const struct station *st, const struct input *in, struct outcome *out)
{
	static const struct sheet none;
	struct station_view after = {.room = in->room, .unseen = unseen_after(st, in->room, out)};
	const struct sheet *s = &out->sheet;
	int32_t room = in->room;
	int i = station_room_index(st, room);
	after.asked = i >= 0 ? st->idle_asked[i] : Q_NONE;
	after.last = i >= 0 ? st->idle_last[i] : 0;
	after.suspended = suspended_in(st, room);
	for (int k = 0; k < out->count; k++) {
		const struct event *e = &out->events[k];
		if (e->kind == EV_SCANNER_ROOM && e->n != room) {
			after.room = room = e->n;
			after.unseen = unseen_after(st, room, out);
			int index = station_sheet_of_room(st, room), at = station_room_index(st, room);
			s = index >= 0 ? &st->sheets[index] : &none;
			after.suspended = suspended_in(st, room);
			after.asked = at >= 0 ? st->idle_asked[at] : Q_NONE;
			after.last = at >= 0 ? st->idle_last[at] : 0;
		}
		int idle = e->kind == EV_ASKED && !e->case_no;
		if (idle)
			after.asked = e->what;
		int owed = e->kind == EV_PAID && debt_is_after_end((enum debt_kind)e->what);
		if (idle || owed || e->kind == EV_CASE_ENDED || e->kind == EV_SUSPENDED)
			after.last = e->answer;
		if (e->kind == EV_NEXT || (e->kind == EV_SLIP_STATE && e->what == SLIP_SEEN))
			after.last = 0;
	}
	after_end_first(st, room, out->events, out->count, &after.owed);
	after.out = room == in->room ? out : NULL;
	next_after(st, s, in->at, &after, &out->reply.next);
}

void decide(const struct station *st, const struct input *in, struct outcome *out)
{
	out->count = out->enter = 0;
	out->misfit = (struct misfit){0};
	out->told_room = 0;
	out->reply.verdict = VERDICT_ACCEPTED;
	out->reply.said[0] = 0;
	out->reply.n_parts = 0;
	next_clear(&out->reply.next);
	sheet_clear(&out->sheet);
	if (in->act == ACT_TICK) {
		tick_take(st, in, out);
		return;
	}
	struct turn t = {.station = st, .in = in, .s = &out->sheet, .out = out, .index = which_sheet(st, in)};
	if (t.index >= 0)
		sheet_copy(&out->sheet, &st->sheets[t.index]);
	if (!station_room(st, in->room)) {
		turn_refuse(&t, SAY(ROOM_NOT_IN_SETTINGS, .n = in->room));
	} else if (t.index < 0 && station_free_sheet(st) < 0 && in->act != ACT_STORED) {
		turn_refuse(&t, SAY(TOO_MANY_CASES, .n = SHEETS_MAX));
	} else if (read_again(&t) == ANSWERED) {
		if (in->held)
			stored_entered(&t);
		stored_ask(&t);
	} else {
		int goes_on = t.index >= 0 && t.s->suspended;
		if (goes_on)
			EMIT(&t, .kind = EV_RESUMED);
		enum question was = turn_asked(&t);
		if (fits_two(&t) == ANSWERED_NOT)
			take(&t);
		say_pushed_away(&t, was);
		say_suspended_on(&t);
		if (goes_on && t.s->case_no)
			turn_say_more(&t, SAY(R_GOES_ON_WITH_THIS, .case_no = t.s->case_no));
		end_if_empty(&t);
		if (in->held)
			stored_entered(&t);
		stored_ask(&t);
		ask_again(&t);
	}
	if (t.failed) { /* nothing of a step that does not fit is kept */
		out->count = 0;
		if (t.index >= 0)
			sheet_copy(&out->sheet, &st->sheets[t.index]);
		t.failed = 0;
		turn_refuse(&t, SAY(SHEET_IS_FULL));
		if (in->held)
			stored_entered(&t);
	}
	name_room(st, in->room, out);
	say_next(st, in, out);
}
