#include "decide/turn.h"

#include <errno.h>
#include <stdio.h>

int32_t input_answer(const struct input *in)
{
	return in->act == ACT_CARD ? in->card : in->act == ACT_BADGE ? -in->number : 0;
}

int turn_has_case(const struct turn *t)
{
	return t->s->case_no != 0;
}

/* What is asked in this room, with or without a case. */
enum question turn_asked(const struct turn *t)
{
	return turn_has_case(t) ? (enum question)t->s->asked.what
	                        : station_idle_asked(t->station, t->in->room);
}

const char *turn_name_of(const struct turn *t, int32_t number)
{
	return staff_name(&t->station->staff, number);
}

/* A step is what UNDO takes back; NEXT only stands between two of them, and time passing is none. */
static int begins_step(const struct turn *t, const struct event *e)
{
	for (int i = 0; i < t->out->count; i++)
		if (t->out->events[i].case_no == e->case_no)
			return 0;
	return t->in->act != ACT_TICK && e->kind != EV_REFUSED && e->kind != EV_NEXT && e->case_no &&
	       t->s->case_no == e->case_no;
}

/* Whether what is entered of this case stands on a paper count sheet. */
static int is_from_paper(const struct turn *t, int32_t case_no)
{
	int i = station_room_index(t->station, t->in->room);
	return case_no && i >= 0 && t->station->papers[i].case_no == case_no;
}

/* The first one counts. */
static void does_not_fit(struct turn *t, enum event_kind kind, int code, struct origin at)
{
	if (!t->failed)
		t->out->misfit = (struct misfit){code, kind, at};
	t->failed = 1;
}

static int has_room(struct turn *t, enum event_kind kind)
{
	struct origin at;
	if (t->out->count < OUTCOME_EVENTS_MAX)
		return 1;
	does_not_fit(t, kind, ERROR_AT(&at, -ENOSPC), at);
	return 0;
}

void turn_emit(struct turn *t, const struct event *e)
{
	struct origin at = {0};
	if (!has_room(t, e->kind))
		return;
	struct event *kept = &t->out->events[t->out->count];
	*kept = *e;
	kept->room = t->in->room;
	if (event_fields(e->kind) & F_THING && e->thing.called)
		kept->thing.name[0] = 0; /* its words are made of what it is called */
	if (!kept->case_no)
		kept->case_no = e->kind == EV_CASE_OPENED ? t->station->last_case_no + 1 : t->s->case_no;
	if (!kept->at.boot)
		kept->at = t->in->at;
	kept->flags |= t->in->flags;
	if (is_from_paper(t, kept->case_no))
		kept->flags |= EVENT_LATE;
	if (begins_step(t, kept))
		kept->flags |= EVENT_FIRST;
	if (kept->flags & EVENT_FIRST || e->kind == EV_CASE_ENDED || e->kind == EV_SUSPENDED)
		/* What was stored comes out of its time: the last scan of the people here stays the last. */
		kept->answer = t->in->held ? t->s->last_answer : input_answer(t->in);
	t->out->count++;
	if ((kept->case_no && kept->case_no == t->s->case_no) || e->kind == EV_CASE_OPENED) {
		int n = sheet_apply(t->s, kept, &at);
		if (n < 0)
			does_not_fit(t, e->kind, n, at);
	}
}

void turn_emit_for_room(struct turn *t, struct event e)
{
	if (!has_room(t, e.kind))
		return;
	e.room = t->in->room;
	if (!e.at.boot)
		e.at = t->in->at;
	if (e.kind == EV_ASKED && !t->in->held)
		e.answer = input_answer(t->in);
	t->out->events[t->out->count++] = e;
}

void turn_say(struct turn *t, const struct say *what)
{
	reply_say(&t->out->reply, VERDICT_ACCEPTED, what);
}

void turn_say_more(struct turn *t, const struct say *what)
{
	reply_add(&t->out->reply, what);
}

void turn_list(struct turn *t, const struct say *thing)
{
	reply_list(&t->out->reply, thing);
}

/* A refusal is kept too: an auditor wants to see what the station would not take. */
void turn_refuse_fault(struct turn *t, const struct say *why, const struct say *kept)
{
	struct event e = {.kind = EV_REFUSED};
	reply_say(&t->out->reply, VERDICT_REFUSED, kept);
	say_sentence(why, t->out->reply.said, sizeof t->out->reply.said);
	said_keep(&e.said, kept);
	turn_emit(t, &e);
}

void turn_refuse(struct turn *t, const struct say *why)
{
	turn_refuse_fault(t, why, why);
}

/* What nobody knows is not 'not used' (rules 4 and 5). */
void turn_refuse_unasked(struct turn *t)
{
	turn_refuse(t, SAY(RECORD_NOT_ASKED));
}

/* A handover that has not begun: whoever comes is not in the team yet. */
static int is_of_handover(int question)
{
	return question == Q_HANDOVER_OUT || question == Q_HANDOVER_IN || question == Q_HANDOVER_STAYS;
}

static int is_on_the_way(int question)
{
	return is_of_handover(question) || question == Q_HANDOVER_SEEN || question == Q_HANDOVER_AGREE;
}

void turn_ask_saying(struct turn *t, struct asked q, const struct say *what)
{
	const int pushed_away = is_of_handover((int)turn_asked(t)) && !is_on_the_way(q.what);
	reply_say(&t->out->reply, VERDICT_QUESTION, what);
	EMIT(t, .kind = EV_ASKED, .what = q.what, .item = q.item, .digit = q.digit, .person = q.person,
	     .n = q.n);
	if (pushed_away)
		turn_say_more(t, SAY(R_NO_HANDOVER_YET));
}

void turn_close_question(struct turn *t)
{
	if (turn_asked(t))
		EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
}

static void owe(struct turn *t, struct event *e)
{
	struct origin at;
	if (t->s->debts.count == DEBTS_MAX &&
	    !debts_owes(&t->s->debts, (struct debt){e->what, e->item, e->digit}))
		does_not_fit(t, EV_OWED, ERROR_AT(&at, -ENOSPC), at); /* nothing owed falls off the list */
	e->kind = EV_OWED;
	turn_emit(t, e);
}

void turn_owe(struct turn *t, enum debt_kind kind, int item, int digit)
{
	owe(t, &(struct event){.what = (uint8_t)kind, .item = (uint8_t)item, .digit = (uint8_t)digit});
}

void turn_owe_reason(struct turn *t, int item, const struct say *why)
{
	struct event e = {.what = DEBT_REASON, .item = (uint8_t)item};
	said_keep(&e.said, why);
	owe(t, &e);
}

static void emit_paid(struct turn *t, struct event e)
{
	e.kind = EV_PAID;
	if (t->in->act == ACT_BADGE)
		e.person = t->in->number;
	turn_emit(t, &e);
}

void turn_pay(struct turn *t, enum debt_kind kind, int item, int digit, enum paid_how how)
{
	emit_paid(t, (struct event){.what = (uint8_t)kind,
	                            .item = (uint8_t)item,
	                            .digit = (uint8_t)digit,
	                            .other = (int32_t)how});
}

void turn_pay_typed(struct turn *t, enum debt_kind kind, const char *text)
{
	struct event e = {.what = (uint8_t)kind};
	snprintf(e.text, sizeof e.text, "%s", text);
	emit_paid(t, e);
}

/* Slips are numbered in order; a turn can queue more than one. */
void turn_queue_slip(struct turn *t, enum slip_kind kind, int32_t case_no)
{
	int32_t number = t->station->last_slip_no + 1;
	for (int i = 0; i < t->out->count; i++)
		number += t->out->events[i].kind == EV_SLIP_QUEUED;
	struct event e = {
	    .kind = EV_SLIP_QUEUED, .case_no = case_no, .n = number, .what = (uint8_t)kind, .other = 1};
	snprintf(e.text, sizeof e.text, "%s", station_language(t->station, t->in->room));
	turn_emit(t, &e);
}

void turn_found_after(struct turn *t, int32_t case_no, const struct thing *what)
{
	EMIT(t, .kind = EV_FOUND_AFTER, .case_no = case_no, .thing = *what);
	turn_queue_slip(t, SLIP_ADDENDUM, case_no);
}

void turn_open_case(struct turn *t, const char *label)
{
	const struct room *room = station_room(t->station, t->in->room);
	struct event e = {.kind = EV_CASE_OPENED, .n = room && room->single};
	snprintf(e.text, sizeof e.text, "%s", label);
	if (paper_sheet_of(label))
		e.flags = EVENT_LATE;
	turn_emit(t, &e);
	if (t->station->clock_wrong)
		EMIT(t, .kind = EV_CLOCK_WRONG, .n = 1);
}

void turn_refuse_further_case(struct turn *t)
{
	const char *room = station_room_name(t->station, t->in->room);
	int suspended = station_suspended_in(t->station, t->in->room);
	turn_refuse(t, suspended < 0 ? SAY(CASE_IS_OPEN, .case_no = t->s->case_no, .room = room)
	                             : SAY(ROOM_HAS_TWO_CASES, .case_no = t->s->case_no, .room = room,
	                                   .other_case = t->station->sheets[suspended].case_no));
}

/* Where the paper itself proves less, that is said. */
void turn_slip_seen(struct turn *t, const struct slip *slip, const struct paper *paper)
{
	EMIT(t, .kind = EV_SLIP_STATE, .case_no = slip->case_no, .n = slip->number, .what = SLIP_SEEN,
	     .other = paper->copy);
	turn_say(t,
	         t->in->flags & EVENT_KEYED
	             ? SAY(R_SLIP_TYPED, .slip = slip->number, .case_no = slip->case_no, .copy = paper->copy)
	             : SAY(R_SLIP_SEEN, .slip = slip->number, .case_no = slip->case_no, .copy = paper->copy));
	if (!paper->proof)
		turn_say_more(t, SAY(R_SLIP_OLD_CODE));
}
