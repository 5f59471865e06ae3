#include "count/decide.h"

#include <stdio.h>
#include <string.h>

#include "count/turn.h"

static void on_case_label(struct turn *t)
{
	char label[16];
	if (has_case(t)) {
		refuse(t, "Case %d is open in %s: end it, or scan SUSPEND or CANCEL.", (int)t->s->case_no,
		       station_room_name(t->station, t->in->room));
		return;
	}
	snprintf(label, sizeof label, "%07d", (int)t->in->number);
	open_case(t, label);
	turn_accept(t, "Case %d opened in %s, label %s.", (int)t->s->case_no,
	            station_room_name(t->station, t->in->room), label);
}

/* The paper proves itself: its own code was read back, so it exists (DESIGN section 8). */
void on_slip(struct turn *t)
{
	const struct slip *slip = station_slip(t->station, t->in->number);
	int idle = 0;
	for (int i = 0; i < t->station->n_rooms; i++)
		idle |= t->station->rooms[i].number == t->in->room && t->station->idle_asked[i] == Q_FOUND;
	if (!has_case(t) && idle && t->in->slip_case) { /* rule 21, for an item that bears no number */
		EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
		found_after(t, t->in->slip_case, "an item without a number");
		turn_accept(
		    t,
		    "Found after the end: entered for case %d. Look at that patient's digit now and tell the "
		    "surgeon.",
		    (int)t->in->slip_case);
		return;
	}
	if (!slip) {
		refuse(t,
		       t->in->slip_case
		           ? "Slip %07d was seen before."
		           : "Slip %07d is not of this station: put the right slip in the notes.",
		       (int)t->in->number);
		return;
	}
	EMIT(t, .kind = EV_SLIP_STATE, .case_no = slip->case_no, .n = slip->number, .what = SLIP_SEEN,
	     .other = t->in->copy);
	turn_accept(t, "Slip %07d of case %d, copy %d, seen: this is the paper in the notes.",
	            (int)slip->number, (int)slip->case_no, (int)t->in->copy);
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
		emit(t, &e);
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
	refuse(t,
	       "This card belongs to %s, but this scanner works for %s. Nothing was entered. If you are in "
	       "%s now, "
	       "scan its card THIS ROOM, then this card again.",
	       station_room_name(t->station, in->card_room), station_room_name(t->station, in->room),
	       station_room_name(t->station, in->card_room));
	return 1;
}

static void on_unreadable(struct turn *t)
{
	const char *text = t->in->text;
	switch (t->in->act) {
	case ACT_UNKNOWN:
		refuse(t,
		       "Not in the catalogue: %.120s. Not counted. Use a listed item; if it is already on "
		       "the digit, "
		       "scan UNLISTED TOURNIQUET.",
		       text);
		return;
	case ACT_BROKEN:
		refuse(t, "Misread, nothing entered: %.200s", text);
		return;
	case ACT_FOREIGN:
		refuse(t,
		       "This code belongs to another site (%.8s): nothing entered. Use this site's cards and "
		       "labels.",
		       text);
		return;
	case ACT_PATIENT:
		refuse(t, "That is a patient's code: nothing of it was kept. Scan packs, instruments, cards "
		          "and badges "
		          "only.");
		return;
	case ACT_HALF:
		refuse(t, "Half of a pack's data: %.120s. Scan the pack's other symbol as well.", text);
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
		break;
	}
	refuse(t, "This code has no use here.");
}

static void take(struct turn *t)
{
	switch (t->in->act) {
	case ACT_CARD:
		if (!other_room(t))
			on_card(t);
		return;
	case ACT_DIGIT:
		if (!other_room(t))
			on_digit(t);
		return;
	case ACT_BADGE:
		on_badge(t);
		return;
	case ACT_CASE_LABEL:
		on_case_label(t);
		return;
	case ACT_SLIP:
		on_slip(t);
		return;
	case ACT_THING:
	case ACT_TRAY:
		on_thing(t);
		return;
	case ACT_TYPED:
		on_typed(t);
		return;
	case ACT_UNKNOWN:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_HALF:
		on_unreadable(t);
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
	if (index >= 0 || suspended < 0 || in->act != ACT_DIGIT)
		return index;
	const struct digit *d = sheet_digit_const(&st->sheets[suspended], in->digit);
	return d && digit_is_on(d) ? suspended : -1;
}

/* A question about what is on a patient does not go away because something else was scanned: where it is
 * still owed and nothing else is asked, it is asked again (rules 3 and 19). */
static void ask_again(struct turn *t)
{
	const struct debt *d;
	if (!has_case(t) || t->s->asked.what || t->s->suspended || t->out->reply.verdict == VERDICT_REFUSED)
		return;
	if ((d = debts_find(&t->s->debts, DEBT_ON)))
		EMIT(t, .kind = EV_ASKED, .what = Q_IS_ON, .digit = d->digit, .n = 1);
	else if ((d = debts_find(&t->s->debts, DEBT_MARKED_DIGIT)))
		EMIT(t, .kind = EV_ASKED, .what = Q_RIGHT_DIGIT, .digit = d->digit);
}

static int unseen_after(const struct station *st, const struct outcome *out)
{
	int unseen = st->n_unseen;
	for (int i = 0; i < out->count; i++)
		unseen += (out->events[i].kind == EV_SLIP_QUEUED) -
		          (out->events[i].kind == EV_SLIP_STATE && out->events[i].what == SLIP_SEEN);
	return unseen;
}

void decide(const struct station *st, const struct input *in, struct outcome *out)
{
	out->count = 0;
	memset(&out->reply, 0, sizeof out->reply);
	memset(&out->sheet, 0, sizeof out->sheet);
	if (in->act == ACT_TICK) {
		on_tick(st, in, out);
		return;
	}
	struct turn t = {.station = st, .in = in, .s = &out->sheet, .out = out, .index = which_sheet(st, in)};
	if (t.index >= 0)
		out->sheet = st->sheets[t.index];
	if (!station_room(st, in->room)) {
		refuse(&t,
		       "Room %d is not in station.ini: nothing was entered. Add the room, or use this site's "
		       "cards.",
		       (int)in->room);
	} else if (t.index < 0 && station_free_sheet(st) < 0) {
		refuse(
		    &t,
		    "Too many cases are open or suspended (%d): end one. Count by hand on the paper sheet.",
		    SHEETS_MAX);
	} else {
		if (t.index >= 0 && t.s->suspended)
			EMIT(&t, .kind = EV_RESUMED);
		take(&t);
		ask_again(&t);
	}
	if (t.failed) { /* nothing of a step that does not fit is kept */
		out->count = 0;
		if (t.index >= 0)
			out->sheet = st->sheets[t.index];
		t.failed = 0;
		refuse(&t, "The sheet is full: this was NOT entered. Write it on the paper sheet and count "
		           "by hand.");
	}
	next_step(st, &out->sheet, in->at, out->reply.next);
	if (!out->sheet.case_no)
		idle_step(unseen_after(st, out), out->reply.next);
	if (!out->sheet.case_no && out->count && out->events[0].kind == EV_ASKED &&
	    out->events[0].what == Q_FOUND)
		snprintf(out->reply.next, sizeof out->reply.next,
		         "Scan the item that was found, or the slip of the case that it comes from.");
	capital(out->reply.next);
}
