#include "decide/decide.h"

#include <stdio.h>
#include <string.h>

#include "decide/turn.h"

static void on_case_label(struct turn *t)
{
	char label[16];
	if (turn_has_case(t)) {
		turn_refuse(t, SAY(CASE_IS_OPEN, .case_no = t->s->case_no,
		                   .room = station_room_name(t->station, t->in->room)));
		return;
	}
	snprintf(label, sizeof label, "%07d", (int)t->in->number);
	turn_open_case(t, label);
	turn_accept(t, "Case %d opened in %s, label %s.", (int)t->s->case_no,
	            station_room_name(t->station, t->in->room), label);
}

static enum question idle_question(const struct turn *t)
{
	int i = station_room_index(t->station, t->in->room);
	return i >= 0 ? (enum question)t->station->idle_asked[i] : Q_NONE;
}

/* What is asked in this room, with or without a case. */
enum question turn_asked(const struct turn *t)
{
	return turn_has_case(t) ? (enum question)t->s->asked.what : idle_question(t);
}

/* FOUND, then the slip of the case that it comes from: for an item that bears no number (rule 21). */
static int found_by_slip(struct turn *t)
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

/* Where the paper itself proves less, that is said. */
static void slip_seen(struct turn *t, const struct slip *slip, const struct paper *paper)
{
	const char *how = t->in->flags & EVENT_KEYED
	                      ? "typed: somebody read the code of this paper, no scanner did"
	                      : "seen: this paper came out";
	EMIT(t, .kind = EV_SLIP_STATE, .case_no = slip->case_no, .n = slip->number, .what = SLIP_SEEN,
	     .other = paper->copy);
	turn_accept(
	    t, "Slip %07d of case %d, copy %d, %s.%s", (int)slip->number, (int)slip->case_no,
	    (int)paper->copy, how,
	    paper->proof ? "" : " Its code is of an earlier version, which anybody could have worked out.");
}

/* What nobody knows is not 'not used' (rules 4 and 5). */
void turn_refuse_unasked(struct turn *t)
{
	turn_refuse(t, SAY(RECORD_NOT_ASKED));
}

int input_is_lost(const struct station *st, const struct input *in)
{
	return in->newer && in->slip.number != in->number && in->number <= st->last_slip_no;
}

/* A paper whose digits this station did not give it. */
static void refuse_strange(struct turn *t)
{
	const struct input *in = t->in;
	int known = in->slip.number == in->number;
	if (input_is_lost(t->station, in))
		turn_refuse(t, SAY(SLIP_BEFORE_RESTORE, .slip = in->number, .copy = in->copy));
	else if (in->newer)
		turn_refuse(t, SAY(SLIP_NEWER, .slip = in->number, .copy = in->copy));
	else if (in->paper.queued && !in->proof)
		turn_refuse(t, SAY(SLIP_LONGER_CODE, .slip = in->number, .copy = in->copy));
	else if (!known && !in->proof)
		turn_refuse(t, SAY(SLIP_NOT_IN_RECORD, .slip = in->number));
	else if (known && !in->paper.queued)
		turn_refuse(t, SAY(SLIP_NO_SUCH_COPY, .slip = in->number, .copy = in->copy));
	else
		turn_refuse(t, SAY(SLIP_NOT_OURS, .slip = in->number, .copy = in->copy));
}

static void refuse_second(struct turn *t)
{
	const struct paper *paper = &t->in->paper;
	if (paper->seen == paper->copy)
		turn_refuse(t, SAY(SLIP_SEEN_BEFORE, .slip = t->in->number, .copy = paper->copy));
	else
		turn_refuse(t, SAY(SLIP_COPY_SEEN, .slip = t->in->number, .copy = paper->copy,
		                   .other_copy = paper->seen));
}

static void seen_elsewhere(struct turn *t, const struct slip *slip)
{
	if (turn_has_case(t)) {
		turn_refuse(t, SAY(SLIP_OF_OTHER_ROOM, .slip = slip->number, .case_no = slip->case_no,
		                   .room = station_room_name(t->station, slip->room)));
		return;
	}
	EMIT(t, .kind = EV_ASKED, .what = Q_SLIP_HERE, .n = slip->number, .item = (uint8_t)t->in->copy);
	t->out->reply.verdict = VERDICT_QUESTION;
	snprintf(t->out->reply.said, SAID_MAX, "Slip %07d is of case %d in %s.", (int)slip->number,
	         (int)slip->case_no, station_room_name(t->station, slip->room));
}

/* The paper proves itself: its own code was read back, so it exists (DESIGN section 8). */
void slip_take(struct turn *t)
{
	const struct slip *slip = &t->in->slip;
	const struct paper *paper = &t->in->paper;
	if (t->in->unanswered)
		turn_refuse(t, SAY(SLIPS_NOT_ANSWERED));
	else if (t->in->unasked)
		turn_refuse_unasked(t);
	else if (slip->number != t->in->number || !paper_is_ours(paper, t->in->proof))
		refuse_strange(t);
	else if (found_by_slip(t))
		return;
	else if (paper->seen)
		refuse_second(t);
	else if (!paper->made)
		turn_refuse(t, SAY(SLIP_NOT_PRINTED, .slip = slip->number, .copy = paper->copy));
	else if (slip->room != t->in->room)
		seen_elsewhere(t, slip);
	else
		slip_seen(t, slip, paper);
}

/* YES or NO in a room without a case. 1 where it was an answer. */
int idle_answer(struct turn *t, int yes)
{
	int i = station_room_index(t->station, t->in->room);
	int here = yes && idle_question(t) == Q_SLIP_HERE && t->in->slip.number == t->station->idle_n[i] &&
	           t->in->paper.queued && !t->in->paper.seen;
	if (idle_question(t) == Q_NONE)
		return 0;
	if (yes && idle_question(t) == Q_SLIP_HERE && t->in->unasked) {
		turn_refuse_unasked(t);
		return 1;
	}
	EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
	if (here)
		slip_seen(t, &t->in->slip, &t->in->paper);
	else
		turn_accept(t, "Left as it is.");
	return 1;
}

/* A card of another room is announced and asked: nothing is entered until the scanner's room is clear
 * (rule 18). THIS ROOM answers it; SPARE SCANNER binds a scanner until a further card. 1 where the card was
 * dealt with.
 */
static int other_room(struct turn *t)
{
	const struct input *in = t->in;
	if (in->act == ACT_CARD && (in->card == CARD_THIS_ROOM || in->card == CARD_SPARE_SCANNER)) {
		int spare = in->card == CARD_SPARE_SCANNER;
		struct event e = {.kind = EV_SCANNER_ROOM, .n = in->card_room, .what = (uint8_t)spare};
		snprintf(e.text, sizeof e.text, "%s", in->scanner);
		turn_emit_for_room(t, e);
		turn_accept(
		    t,
		    spare ? "This scanner is now a spare of %s, until a card THIS ROOM or SPARE SCANNER "
		            "of another "
		            "room is scanned with it."
		          : "This scanner now works for %s.",
		    station_room_name(t->station, in->card_room));
		return 1;
	}
	if (in->card_room == in->room)
		return 0;
	turn_refuse(t, SAY(CARD_OF_OTHER_ROOM, .other_room = station_room_name(t->station, in->card_room),
	                   .room = station_room_name(t->station, in->room)));
	return 1;
}

struct say input_unknown_code(const struct input *in)
{
	switch (in->what) {
	case SAY_CODE_OF_STORES:
		return *SAY(CODE_OF_STORES, .item_number = in->number);
	case SAY_CODE_OF_TRAY:
		return *SAY(CODE_OF_TRAY, .tray_number = in->number);
	case SAY_CODE_OF_CHECK:
		return *SAY(CODE_OF_CHECK);
	case SAY_CODE_OF_NO_CARD:
		return *SAY(CODE_OF_NO_CARD, .n = in->card);
	default:
		return *SAY(CODE_AS_READ, .code = in->text);
	}
}

static void refuse_unknown(struct turn *t)
{
	struct say say = input_unknown_code(t->in);
	if (say.saying == SAY_CODE_AS_READ && !t->in->text[0]) {
		turn_refuse(t, SAY(NOT_OUR_CODE));
		return;
	}
	say.what = say.saying;
	say.saying = SAY_NOT_IN_CATALOGUE;
	say.then = !turn_has_case(t)                                ? SAY_IF_ON_DIGIT_CARD
	           : t->s->final != FINAL_NONE || t->s->discrepancy ? SAY_KEEP_IN_ROOM
	                                                            : SAY_USE_LISTED;
	turn_refuse(t, &say);
}

static void on_unreadable(struct turn *t)
{
	const char *text = t->in->text;
	if (t->in->unasked) {
		turn_refuse_unasked(t);
		return;
	}
	switch (t->in->act) {
	case ACT_UNKNOWN:
		refuse_unknown(t);
		return;
	case ACT_BROKEN:
		turn_refuse_fault(t, SAY(MISREAD_FOR, .fault = text), SAY(MISREAD));
		return;
	case ACT_FOREIGN:
		turn_refuse(t, text[0]
		                   ? SAY(FOREIGN_CODE, .what = SAY_OTHER_SITE, .site = text)
		                   : SAY(FOREIGN_CODE, .what = SAY_OTHER_STATION, .station = t->in->number));
		return;
	case ACT_PATIENT:
		turn_refuse(t, SAY(PATIENTS_CODE));
		return;
	case ACT_HALF:
		turn_refuse_fault(t, SAY(HALF_OF_PACK_FOR, .fault = text), SAY(HALF_OF_PACK));
		return;
	case ACT_TICK:
	case ACT_CARD:
	case ACT_DIGIT:
	case ACT_BADGE:
	case ACT_CASE_LABEL:
	case ACT_SLIP:
	case ACT_THING:
	case ACT_TRAY:
	case ACT_TYPED:
	case ACT_STORED:
		break;
	}
	turn_refuse(t, SAY(CODE_OF_NO_USE));
}

/* Cards that, entered once more, tell of one thing more. */
static int is_of_a_further_thing(int card)
{
	return card == CARD_OFF || card == CARD_UNLISTED_TOURNIQUET || card == CARD_NO_CODE ||
	       card == CARD_FORCEPS_MOVED || card == CARD_OFFCUT;
}

/* Whether a stored card was scanned again since it came is known to the program that ran then. 1 where it would matter. */
static int is_uncertain(struct turn *t)
{
	if (!t->in->held || !t->in->outlived || !is_of_a_further_thing(t->in->card))
		return 0;
	turn_refuse(t, SAY(STORED_BEFORE_START, .card = t->in->card));
	return 1;
}

static void take(struct turn *t)
{
	switch (t->in->act) {
	case ACT_CARD:
		if (!other_room(t) && !is_uncertain(t))
			card_take(t);
		return;
	case ACT_DIGIT:
		if (!other_room(t) && !held_start(t))
			digit_card_take(t);
		return;
	case ACT_BADGE:
		badge_take(t);
		return;
	case ACT_CASE_LABEL:
		on_case_label(t);
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
	case ACT_HALF:
		on_unreadable(t);
		return;
	case ACT_STORED:
		stored_take(t);
		return;
	case ACT_TICK:
		return;
	}
}

/* A suspended case goes on when what is scanned can only belong to it and no other case is running. */
static int which_sheet(const struct station *st, const struct input *in)
{
	int index = station_sheet_of_room(st, in->room);
	int suspended = station_suspended_in(st, in->room);
	if (index >= 0 || suspended < 0)
		return index;
	const struct sheet *s = &st->sheets[suspended];
	if (in->act == ACT_CARD && in->card == CARD_OFF && in->card_room == in->room)
		return sheet_digits_on(s) ? suspended : -1;
	const struct digit *d =
	    in->act == ACT_DIGIT && in->card_room == in->room ? sheet_digit_const(s, in->digit) : NULL;
	return d && digit_is_on(d) ? suspended : -1;
}

/* A case that was cancelled and holds nothing any more has nothing to count. */
static void end_if_empty(struct turn *t)
{
	size_t used = strlen(t->out->reply.said);
	int32_t case_no = t->s->case_no;
	if (!turn_has_case(t) || !t->s->cancelled || t->s->suspended || t->s->asked.what ||
	    sheet_holds_any(t->s) || t->out->reply.verdict == VERDICT_REFUSED)
		return;
	EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_SHEET_EMPTY);
	snprintf(t->out->reply.said + used, SAID_MAX - used,
	         " Case %d ended as cancelled; nothing is on its sheet.", (int)case_no);
}

/* A question about what is on a patient, or about an extra item, does not go away because something else was scanned:
 * where it is still owed and nothing else is asked, it is asked again (rules 1, 3 and 19). */
static void ask_again(struct turn *t)
{
	const struct debt *d;
	if (!turn_has_case(t) || t->s->asked.what || t->s->suspended || t->out->enter || t->in->more)
		return;
	if ((d = debts_find(&t->s->debts, DEBT_ON)))
		EMIT(t, .kind = EV_ASKED, .what = Q_IS_ON, .digit = d->digit, .n = 1);
	else if ((d = debts_find(&t->s->debts, DEBT_MARKED_DIGIT)))
		EMIT(t, .kind = EV_ASKED, .what = Q_RIGHT_DIGIT, .digit = d->digit);
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

static const char *read_name(const struct turn *t, char out[LINE_NAME_MAX + 40])
{
	const struct input *in = t->in;
	const char *name = in->act == ACT_CARD    ? own_card_name(in->card)
	                   : in->act == ACT_DIGIT ? own_digit_name(in->digit)
	                   : in->act == ACT_BADGE ? staff_name(&t->station->staff, in->number)
	                                          : in->thing.name;
	if (in->act == ACT_SLIP)
		snprintf(out, LINE_NAME_MAX + 40, "slip %07d", (int)in->number);
	else
		snprintf(out, LINE_NAME_MAX + 40, "%s", name);
	return out;
}

/* One read is one answer (rule 22): the same code within the repeat time, and the same card or badge right after
 * itself however late, is entered once. 1 where it was such a read. */
static int read_again(struct turn *t)
{
	char name[LINE_NAME_MAX + 40];
	int i = station_room_index(t->station, t->in->room);
	int32_t answer = input_answer(t->in);
	int32_t last = turn_has_case(t) ? t->s->last_answer : i >= 0 ? t->station->idle_last[i] : 0;
	if (t->in->repeated == REPEATED_STILL && !t->in->used_in &&
	    !(turn_has_case(t) && sheet_item_by_identity(t->s, t->in->thing.identity)))
		return 0; /* what it was entered as has been taken back since */
	if (t->in->repeated == REPEATED_NOW)
		turn_accept(t, "Read twice, entered once: %s.", read_name(t, name));
	else if (t->in->repeated == REPEATED_STILL)
		turn_accept(t, "Entered once already: %s. If it is meant again: NEXT, then this.",
		            read_name(t, name));
	else if (answer && answer == last && (t->in->act != ACT_CARD || t->in->card_room == t->in->room))
		turn_accept(t, "Entered once already: %s. If it is meant again: NEXT, then this.",
		            read_name(t, name));
	else
		return 0;
	return 1;
}

/* Every reply of a room says which, where another room has a case as well. */
static void name_room(const struct station *st, int32_t room, struct outcome *out)
{
	char said[SAID_MAX];
	struct reply *reply = &out->reply;
	if (out->count && out->events[0].kind == EV_SCANNER_ROOM) /* the new one is named */
		return;
	if (!reply->said[0] || !station_others_have_a_case(st, room))
		return;
	memcpy(said, reply->said, sizeof said);
	snprintf(reply->said, sizeof reply->said, "%s: %.*s", station_room_name(st, room),
	         (int)(SAID_MAX - ROOM_NAME_MAX - 4), said);
}

static int32_t suspended_in(const struct station *st, int32_t room)
{
	int index = station_suspended_in(st, room);
	return index >= 0 ? st->sheets[index].case_no : 0;
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
		if (idle || e->kind == EV_CASE_ENDED || e->kind == EV_SUSPENDED)
			after.last = e->answer;
		if (e->kind == EV_NEXT || (e->kind == EV_SLIP_STATE && e->what == SLIP_SEEN))
			after.last = 0;
	}
	next_after(st, s, in->at, &after, &out->reply.next);
	if (room == in->room)
		stored_next(st, room, out);
}

void decide(const struct station *st, const struct input *in, struct outcome *out)
{
	out->count = out->enter = 0;
	out->told_room = 0;
	out->told[0] = 0;
	memset(&out->reply, 0, sizeof out->reply);
	memset(&out->sheet, 0, sizeof out->sheet);
	if (in->act == ACT_TICK) {
		tick_take(st, in, out);
		return;
	}
	struct turn t = {.station = st, .in = in, .s = &out->sheet, .out = out, .index = which_sheet(st, in)};
	if (t.index >= 0)
		out->sheet = st->sheets[t.index];
	if (!station_room(st, in->room)) {
		turn_refuse(&t, SAY(ROOM_NOT_IN_SETTINGS, .n = in->room));
	} else if (t.index < 0 && station_free_sheet(st) < 0 && in->act != ACT_STORED) {
		turn_refuse(&t, SAY(TOO_MANY_CASES, .n = SHEETS_MAX));
	} else if (read_again(&t)) {
		if (in->held)
			held_entered(&t);
		stored_ask(&t);
	} else {
		if (t.index >= 0 && t.s->suspended)
			EMIT(&t, .kind = EV_RESUMED);
		take(&t);
		end_if_empty(&t);
		if (in->held)
			held_entered(&t);
		stored_ask(&t);
		ask_again(&t);
	}
	if (t.failed) { /* nothing of a step that does not fit is kept */
		out->count = 0;
		if (t.index >= 0)
			out->sheet = st->sheets[t.index];
		t.failed = 0;
		turn_refuse(&t, SAY(SHEET_IS_FULL));
		if (in->held)
			held_entered(&t);
	}
	name_room(st, in->room, out);
	say_next(st, in, out);
}
