/* Scans that a scanner had stored: held, asked about as one question among the others, then entered one by one
 * as late or thrown away (rules 17 and 19). */
#include <stdio.h>
#include <string.h>

#include "decide/turn.h"

/* --- what is held ------------------------------------------------------------------------------- */

/* Of a room, oldest first, as it will be after `out`; `out` may be NULL. */
static int held_of_room(const struct station *st, int32_t room, const struct outcome *out,
                        struct held list[HELD_ROOM_MAX])
{
	int n = 0;
	for (int i = 0; i < st->n_held && n < HELD_ROOM_MAX; i++)
		if (st->held[i].room == room)
			list[n++] = st->held[i];
	for (int i = 0; out && i < out->count; i++)
		if (out->events[i].kind == EV_HELD || out->events[i].kind == EV_HELD_ANSWERED)
			held_apply(list, &n, HELD_ROOM_MAX, &out->events[i]);
	return n;
}

/* The question of the room while no case runs in it, as it will be after `out`. */
static enum question idle_question(const struct station *st, int32_t room, const struct outcome *out)
{
	enum question q = station_idle_asked(st, room);
	for (int i = 0; i < out->count; i++)
		if (out->events[i].kind == EV_CASE_OPENED || out->events[i].kind == EV_RESUMED)
			q = Q_NONE;
		else if (out->events[i].kind == EV_ASKED && !out->events[i].case_no)
			q = (enum question)out->events[i].what;
	return q;
}

/* What it was, by itself: texts are the station's and the scan's. */
static struct say scan_of(const struct station *st, const struct held *h)
{
	switch ((enum held_kind)h->kind) {
	case HELD_CARD:
		return *SAY(SCAN_OF_CARD, .card = h->n);
	case HELD_DIGIT:
		return *SAY(SCAN_OF_DIGIT, .digit = h->digit);
	case HELD_BADGE:
		return *SAY(SCAN_OF_BADGE, .person = staff_name(&st->staff, h->n));
	case HELD_CASE_LABEL:
		return *SAY(SCAN_OF_CASE_LABEL, .label = h->n);
	case HELD_SLIP:
		return *SAY(SCAN_OF_SLIP, .slip = h->n);
	case HELD_THING:
		return *SAY(SCAN_OF_PACK, .item = h->thing.name);
	case HELD_TRAY:
		return *SAY(SCAN_OF_TRAY, .item = h->thing.name);
	}
	return (struct say){0};
}

static void name_of(const struct station *st, const struct held *h, char *out, size_t size)
{
	struct say scan = scan_of(st, h);
	say_part(&scan, out, size);
}

/* "pack …; left thumb; OFF and 7 more". */
static void names_of(const struct station *st, const struct held *list, int n, char *out, size_t size)
{
	size_t used = 0;
	out[0] = 0;
	for (int i = 0; i < n; i++) {
		char name[80];
		name_of(st, &list[i], name, sizeof name);
		size_t more = strlen(name) + 2, rest = n - i > 1 ? sizeof " and 24 more" : 1;
		if (i && used + more + rest > size) {
			snprintf(out + used, size - used, " and %d more", n - i);
			return;
		}
		int k = snprintf(out + used, size - used, "%s%s", i ? "; " : "", name);
		used += k > 0 ? (size_t)k : 0;
	}
}

static struct moment oldest(const struct held *list, int n)
{
	struct moment at = list[0].made;
	for (int i = 1; i < n; i++)
		if (list[i].made.wall_ms < at.wall_ms)
			at = list[i].made;
	return at;
}

/* The first scans that came in a row and are the same, and nobody has said yet that it was meant: list[*from]
 * and those behind it. How many; 0 none. */
static int first_row(const struct held *list, int n, int *from)
{
	for (int i = 0; i + 1 < n; i++) {
		int k = i + 1;
		while (k < n && held_same(&list[k - 1], &list[k]) && !list[k].meant)
			k++;
		if (k > i + 1) {
			*from = i;
			return k - i;
		}
	}
	return 0;
}

/* Whether one of them would be refused because no case is open when its turn comes. */
static int wants_case(const struct held *list, int n)
{
	for (int i = 0; i < n; i++)
		switch ((enum held_kind)list[i].kind) {
		case HELD_DIGIT:
		case HELD_CASE_LABEL:
			return 0;
		case HELD_SLIP:
			break;
		case HELD_CARD:
			if (list[i].n == CARD_NEW_CASE || list[i].n == CARD_SUSPEND)
				return 0;
			if (list[i].n != CARD_FOUND)
				return 1;
			break;
		case HELD_BADGE:
		case HELD_THING:
		case HELD_TRAY:
			return 1;
		}
	return 0;
}

/* --- words -------------------------------------------------------------------------------------- */

static void ask_row(const struct station *st, const struct held *first, int times, struct next *next)
{
	char name[80];
	name_of(st, first, name, sizeof name);
	if (times == 2)
		next_say(next, "%s came twice in a row. Meant twice?", name);
	else
		next_say(next, "%s came %d times in a row. Meant %d times?", name, times, times);
	next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_YES, .truth = TRUTH_YES});
	next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_NO, .truth = TRUTH_MEANT_ONCE});
}

static void ask_all(const struct station *st, const struct held *list, int n, int in_case, struct next *next)
{
	char names[110], time[6];
	const char *where = in_case ? ", for this case" : "";
	names_of(st, list, n, names, sizeof names);
	if (n == 1)
		next_say(next, "A scan was stored: %s (made %s). Made in this room%s?", names,
		         moment_hm(list->made, time), where);
	else
		next_say(next, "%d scans were stored: %s (oldest %s). Made in this room%s?", n, names,
		         moment_hm(oldest(list, n), time), where);
	if (!in_case && wants_case(list, n))
		next_add(next,
		         (struct deed){.kind = DEED_CARD, .n = CARD_NEW_CASE, .truth = TRUTH_CASE_FIRST});
	else
		next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_YES, .truth = TRUTH_MADE_HERE});
	next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_NO, .truth = TRUTH_MADE_ELSEWHERE});
}

/* After `out`, which may be NULL. 1 where there is something to ask. */
static int question_step(const struct station *st, int32_t room, const struct outcome *out, enum question q,
                         int in_case, struct next *next)
{
	struct held list[HELD_ROOM_MAX];
	int n = held_of_room(st, room, out, list), from = 0, times = n ? first_row(list, n, &from) : 0;
	if (q == Q_TWICE && times)
		ask_row(st, &list[from], times, next);
	else if (n)
		ask_all(st, list, n, in_case, next);
	return n;
}

void stored_step(const struct station *st, int32_t room, enum question q, int in_case, struct next *next)
{
	question_step(st, room, NULL, q, in_case, next);
}

void stored_next(const struct station *st, int32_t room, struct outcome *out)
{
	int in_case = out->sheet.case_no && !out->sheet.suspended;
	enum question q = in_case ? (enum question)out->sheet.asked.what : idle_question(st, room, out);
	if (question_of_stored(q) && question_step(st, room, out, q, in_case, &out->reply.next))
		next_word(&out->reply.next, &out->sheet, 0);
}

/* --- asking ------------------------------------------------------------------------------------- */

static void ask_here(struct turn *t, enum question q)
{
	if (turn_has_case(t) && !t->s->suspended)
		EMIT(t, .kind = EV_ASKED, .what = (uint8_t)q);
	else
		turn_emit_for_room(t, (struct event){.kind = EV_ASKED, .what = (uint8_t)q});
}

/* What is held is asked about where the room looks: on the sheet that runs in it, or on the room itself. */
void stored_ask(struct turn *t)
{
	struct held list[HELD_ROOM_MAX];
	int running = turn_has_case(t) && !t->s->suspended;
	int n = held_of_room(t->station, t->in->room, t->out, list);
	enum question idle = idle_question(t->station, t->in->room, t->out);
	if (question_of_stored(idle) && (running || !n)) {
		turn_emit_for_room(t, (struct event){.kind = EV_ASKED, .what = Q_NONE});
		idle = Q_NONE;
	}
	if (turn_has_case(t) && question_of_stored((enum question)t->s->asked.what) && (!running || !n))
		turn_close_question(t);
	if (n && !t->in->more && !t->out->enter && !(running ? t->s->asked.what : (uint8_t)idle))
		ask_here(t, Q_STORED);
}

/* --- a batch comes ------------------------------------------------------------------------------ */

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
	case ACT_TICK:
	case ACT_TYPED:
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
	int i = station_suspended_in(t->station, t->in->room);
	const struct digit *d =
	    !turn_has_case(t) && i >= 0 ? sheet_digit_const(&t->station->sheets[i], digit) : NULL;
	return d && digit_is_on(d);
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
	return held_of_room(t->station, t->in->room, t->out, list) < HELD_ROOM_MAX &&
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
		return in->text[0] ? *SAY(UNHELD_FOR, .what = SAY_SCAN_OF_FOREIGN, .why = SAY_OTHER_SITE,
		                          .site = in->text)
		                   : *SAY(UNHELD_FOR, .what = SAY_SCAN_OF_FOREIGN, .why = SAY_OTHER_STATION,
		                          .station = in->number);
	case ACT_HALF:
		return *SAY(UNHELD_FAULT, .what = SAY_SCAN_OF_HALF, .fault = in->text);
	case ACT_BROKEN:
		return *SAY(UNHELD_FAULT, .what = SAY_SCAN_MISREAD, .fault = in->text);
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
	case ACT_CASE_LABEL:
	case ACT_SLIP:
	case ACT_THING:
	case ACT_TRAY:
		break;
	}
	return *SAY(UNHELD, .what = SAY_SCAN_OF_NOTHING);
}

/* What cannot be held is said and recorded, each with its reason. */
struct not_held {
	int count;
	char said[160];
};

static void not_held(struct turn *t, struct not_held *list, struct say what)
{
	struct event e = {.kind = EV_REFUSED};
	if (!list->count++)
		say_part(&what, list->said, sizeof list->said);
	what.saying = what.saying == SAY_UNHELD_FOR ? SAY_NOT_HELD_FOR : SAY_NOT_HELD;
	said_keep(&e.said, &what);
	turn_emit(t, &e);
}

static void scan_not_held(struct turn *t, struct not_held *list, const struct held *h, enum saying why)
{
	struct say what = scan_of(t->station, h);
	what.what = what.saying;
	what.why = why;
	what.saying = SAY_UNHELD_FOR;
	not_held(t, list, what);
}

/* Cards that answer what was asked when they were scanned, or take back what was last then: later they would answer
 * something else. */
static int answers_only(int card)
{
	switch ((enum own_card)card) {
	case CARD_YES:
	case CARD_NO:
	case CARD_NEXT:
	case CARD_UNDO:
	case CARD_MISREAD:
	case CARD_INTERRUPTED:
	case CARD_INTACT:
	case CARD_CUT_AND_COMPLETE:
	case CARD_PIECES_MISSING:
	case CARD_MISSING:
	case CARD_MARK_UNREADABLE:
	case CARD_STEP_DONE:
	case CARD_NOT_DONE:
	case CARD_WITHOUT_FULL_SIGHT:
		return 1;
	default:
		return own_card_group(card) == CARDS_EARLIER || own_card_group(card) == CARDS_SHOWN ||
		       own_card_group(card) == CARDS_LOOKED;
	}
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

/* " The clock runs as 'on?': left thumb from 10:14." */
static void clocks_words(const struct turn *t, char *out, size_t size)
{
	size_t used = 0;
	char time[6];
	out[0] = 0;
	for (int i = 0; i < t->out->count && used + 1 < size; i++) {
		const struct event *e = &t->out->events[i];
		if (e->kind != EV_DIGIT_MAYBE_ON && e->kind != EV_DIGIT_DOUBTED)
			continue;
		int k = snprintf(out + used, size - used, "%s%s from %s",
		                 used ? ", " : " The clock runs as 'on?': ", own_digit_name(e->digit),
		                 moment_hm(e->at, time));
		used += k > 0 ? (size_t)k : 0;
	}
	if (used && used + 1 < size)
		snprintf(out + used, size - used, ".");
}

void stored_take(struct turn *t)
{
	struct not_held rest = {0};
	char clocks[120], unheld[230] = "";
	if (!t->in->n_stored && !t->in->lost) {
		turn_accept(t, "Stored scans wait for an answer.");
		return;
	}
	int kept = hold_each(t, &rest);
	start_digits(t);
	if (t->in->lost)
		not_held(t, &rest, *SAY(UNHELD, .what = SAY_SCAN_TOO_LONG));
	clocks_words(t, clocks, sizeof clocks);
	if (rest.count > 1)
		snprintf(unheld, sizeof unheld,
		         " %d NOT held, the first: %s. Enter them from the paper sheet.", rest.count,
		         rest.said);
	else if (rest.count)
		snprintf(unheld, sizeof unheld, " NOT held: %s. Enter it from the paper sheet.", rest.said);
	t->out->reply.verdict = kept ? VERDICT_QUESTION : VERDICT_REFUSED;
	snprintf(t->out->reply.said, sizeof t->out->reply.said, "%d stored scan%s came.%s%s",
	         t->in->n_stored + t->in->lost, t->in->n_stored + t->in->lost == 1 ? "" : "s", clocks,
	         unheld);
}

/* --- the answer --------------------------------------------------------------------------------- */

static void answered(struct turn *t, const struct held *h, enum held_answer what)
{
	turn_emit_for_room(t, (struct event){.kind = EV_HELD_ANSWERED, .ref = h->seq, .what = (uint8_t)what});
}

static void throw_away(struct turn *t, const struct held *list, int n)
{
	char names[150], thrown[60];
	struct event e = {.kind = EV_REFUSED};
	const struct say *say = SAY(THROWN_AWAY, .n = n);
	names_of(t->station, list, n, names, sizeof names);
	for (int i = 0; i < n; i++)
		answered(t, &list[i], HELD_THROWN);
	said_keep(&e.said, say); /* held-scan-answered says of each that it was one of them */
	turn_emit(t, &e);
	say_sentence(say, thrown, sizeof thrown);
	ask_here(t, Q_NONE);
	turn_accept(t, "%s: %s. The record says so.", thrown, names);
}

/* All are entered, or it is asked first whether what came in a row was meant so. */
static void enter_all(struct turn *t)
{
	struct held list[HELD_ROOM_MAX];
	int n = held_of_room(t->station, t->in->room, t->out, list), from = 0;
	if (first_row(list, n, &from)) {
		ask_here(t, Q_TWICE);
		t->out->reply.verdict = VERDICT_QUESTION;
		snprintf(t->out->reply.said, sizeof t->out->reply.said, "Not entered yet.");
		return;
	}
	ask_here(t, Q_NONE);
	t->out->enter = n;
	turn_accept(t, n == 1 ? "%d stored scan is entered as late." : "%d stored scans are entered as late.",
	            n);
}

static void answer_row(struct turn *t, const struct held *list, int n, int meant)
{
	int from = 0, times = first_row(list, n, &from);
	for (int i = 1; i < times; i++)
		answered(t, &list[from + i], meant ? HELD_MEANT : HELD_THROWN);
	enter_all(t);
}

int answers_stored(struct turn *t)
{
	struct held list[HELD_ROOM_MAX];
	int yes = t->in->card == CARD_YES, n = held_of_room(t->station, t->in->room, NULL, list);
	enum question q = turn_has_case(t) ? (enum question)t->s->asked.what
	                                   : idle_question(t->station, t->in->room, t->out);
	if (t->in->held || !question_of_stored(q) || !n || (!yes && t->in->card != CARD_NO))
		return 0;
	if (q == Q_TWICE)
		answer_row(t, list, n, yes);
	else if (!yes)
		throw_away(t, list, n);
	else if (!turn_has_case(t) && wants_case(list, n))
		turn_refuse(t, SAY(STORED_NEED_A_CASE, .room = station_room_name(t->station, t->in->room)));
	else
		enter_all(t);
	return 1;
}

/* --- each is entered ---------------------------------------------------------------------------- */

/* When it was made, on the clock of the present boot, so that a clock that starts there runs. Through a power cut
 * only the wall clock knows (rule 14). */
static struct moment in_this_boot(struct moment made, struct moment now)
{
	int64_t ago = now.wall_ms - made.wall_ms;
	if (made.boot == now.boot)
		return made;
	made.boot = now.boot;
	made.boot_ms = now.boot_ms - (ago > 0 ? ago : 0);
	return made;
}

static void thing_of(const struct station *st, const struct held *h, struct input *in)
{
	in->thing = h->thing;
	in->line = h->thing.line[0] ? catalogue_by_key(&st->catalogue, h->thing.line) : NULL;
	for (int i = 0; in->line && i < LINE_CONTENTS_MAX && in->line->contents[i].key[0]; i++)
		in->parts[i] = catalogue_by_key(&st->catalogue, in->line->contents[i].key);
}

int held_input(const struct station *st, int32_t room, struct moment now, struct input *in)
{
	static const enum act acts[] = {ACT_TICK,       ACT_CARD, ACT_DIGIT, ACT_BADGE,
	                                ACT_CASE_LABEL, ACT_SLIP, ACT_THING, ACT_TRAY};
	struct held list[HELD_ROOM_MAX];
	int n = held_of_room(st, room, NULL, list);
	const struct held *h = &list[0];
	memset(in, 0, sizeof *in);
	if (!n)
		return 0;
	in->act = acts[h->kind];
	in->at = h->kind == HELD_DIGIT ? in_this_boot(h->made, now) : h->made;
	in->room = room;
	in->flags = EVENT_LATE;
	in->held = h->seq;
	in->outlived = h->outlived;
	in->card = in->number = h->n;
	in->copy = in->card_room = h->other;
	in->proof = h->proof;
	in->digit = h->digit;
	memcpy(in->scanner, h->scanner, sizeof in->scanner);
	thing_of(st, h, in);
	return 1;
}

/* A card that was made before the tourniquet came off, or before the final count, is no look at a bare digit. */
static int before_off(const struct turn *t, const struct digit *d)
{
	return d->state == DIGIT_OFF &&
	       (moment_between_ms(t->in->at, d->since) > 0 ||
	        (t->s->final == FINAL_AGREED && moment_between_ms(t->in->at, t->s->final_at) > 0));
}

/* Its clock was started as 'on?' when it came; had it come at its time, the count agreed, it would be on. */
int held_start(struct turn *t)
{
	char made[6];
	int digit = t->in->digit;
	const struct digit *d = turn_has_case(t) ? sheet_digit_const(t->s, digit) : NULL;
	enum question q = turn_has_case(t) ? (enum question)t->s->asked.what : Q_NONE;
	if (!t->in->held || !d || q == Q_WHICH_OFF || q == Q_MOVE_TO || q == Q_HANDOVER_SEEN)
		return 0;
	if (d->state == DIGIT_MAYBE_ON && (t->s->initial_agreed || (t->s->single && t->s->n_items))) {
		turn_pay(t, DEBT_ON, 0, digit, PAID_WAS_ON);
		digit_start_on(t, digit);
		return 1;
	}
	if (!before_off(t, d))
		return 0;
	/* What goes on again after an OFF goes on no earlier than that; behind a power cut the OFF's own time is not known
	 * any more, and the card's counts. */
	int bounded = t->in->at.boot_ms >= 0 && moment_between_ms(t->in->at, d->since) > 0;
	digit_doubt_on(t, digit, bounded ? d->since : t->in->at);
	turn_ask(t, (struct asked){.what = Q_IS_ON, .digit = (uint8_t)digit, .n = 1},
	         "%s: scanned at %s, before what was entered since.", own_digit_name(digit),
	         moment_hm(t->in->at, made));
	return 1;
}

/* The digit whose tourniquet this turn takes off before it went on; 0 none. */
static int off_before_on(const struct turn *t)
{
	for (int i = 0; t->index >= 0 && i < t->out->count; i++) {
		const struct event *e = &t->out->events[i];
		const struct digit *d = sheet_digit_const(&t->station->sheets[t->index], e->digit);
		if ((e->kind != EV_ITEM_OFF && e->kind != EV_DIGIT_OFF) || !d || !digit_is_on(d))
			continue;
		if (d->since.boot == t->in->at.boot ? digit_stretch_ms(d, t->in->at) < 0
		                                    : t->in->at.wall_ms < d->on_wall_ms)
			return e->digit;
	}
	return 0;
}

void held_entered(struct turn *t)
{
	int digit = off_before_on(t);
	if (digit) {
		t->out->count = 0;
		*t->s = t->station->sheets[t->index];
		turn_refuse(t, SAY(OFF_BEFORE_ON, .time = moment_minute_of_day(t->in->at), .digit = digit));
	}
	turn_emit_for_room(
	    t, (struct event){.kind = EV_HELD_ANSWERED, .ref = t->in->held, .what = HELD_ENTERED});
}
