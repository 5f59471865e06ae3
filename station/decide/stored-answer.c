#include "decide/stored-answer.h"

#include "decide/stored-list.h"

static void stored_ask_here(struct turn *t, enum question q)
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
	int n = stored_list(t->station, t->in->room, t->out, list);
	enum question idle = stored_idle_question(t->station, t->in->room, t->out);
	if (question_of_stored(idle) && (running || !n)) {
		turn_emit_for_room(t, (struct event){.kind = EV_ASKED, .what = Q_NONE});
		idle = Q_NONE;
	}
	if (turn_has_case(t) && question_of_stored((enum question)t->s->asked.what) && (!running || !n))
		turn_close_question(t);
	if (n && !t->in->more && !t->out->enter && !(running ? t->s->asked.what : (uint8_t)idle))
		stored_ask_here(t, Q_STORED);
}

static void answered(struct turn *t, const struct held *h, enum held_answer what)
{
	turn_emit_for_room(t, (struct event){.kind = EV_HELD_ANSWERED, .ref = h->seq, .what = (uint8_t)what});
}

static void throw_away(struct turn *t, const struct held *list, int n)
{
	struct event e = {.kind = EV_REFUSED};
	struct say names[SAID_LISTED_MAX];
	for (int i = 0; i < n; i++)
		answered(t, &list[i], HELD_THROWN);
	said_keep(&e.said,
	          SAY(THROWN_AWAY, .n = n)); /* held-scan-answered says of each that it was one of them */
	turn_emit(t, &e);
	stored_ask_here(t, Q_NONE);
	turn_say(t, SAY(R_THROWN_AWAY, .n = n));
	int named = stored_named(t->station, list, n, names);
	for (int i = 0; i < named; i++)
		turn_list(t, &names[i]);
}

/* All are entered, or it is asked first whether what came in a row was meant so. */
static void enter_all(struct turn *t)
{
	struct held list[HELD_ROOM_MAX];
	int n = stored_list(t->station, t->in->room, t->out, list), from = 0;
	if (stored_first_row(list, n, &from)) {
		stored_ask_here(t, Q_TWICE);
		turn_say(t, SAY(R_NOT_ENTERED_YET));
		t->out->reply.verdict = VERDICT_QUESTION;
		return;
	}
	stored_ask_here(t, Q_NONE);
	t->out->enter = n;
	turn_say(t, SAY(R_STORED_LATE, .n = n));
}

/* Nothing is held for the room any more where its last scan was entered or thrown away since it was asked. */
void stored_answer(struct turn *t, int yes)
{
	struct held list[HELD_ROOM_MAX];
	int n = stored_list(t->station, t->in->room, NULL, list);
	if (!yes)
		throw_away(t, list, n);
	else if (!turn_has_case(t) && stored_wants_case(list, n))
		turn_refuse(t, SAY(STORED_NEED_A_CASE, .room = station_room_name(t->station, t->in->room)));
	else
		enter_all(t);
}

void stored_meant(struct turn *t, int yes)
{
	struct held list[HELD_ROOM_MAX];
	int n = stored_list(t->station, t->in->room, NULL, list);
	int from = 0, times = stored_first_row(list, n, &from);
	for (int i = 1; i < times; i++)
		answered(t, &list[from + i], yes ? HELD_MEANT : HELD_THROWN);
	enter_all(t);
}
