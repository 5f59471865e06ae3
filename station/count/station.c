#include "count/station.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "count/heard.h"
#include "count/settled.h"
#include "count/wall.h"

void station_deinit(struct station *st)
{
	catalogue_deinit(&st->catalogue);
	staff_deinit(&st->staff);
	free(st->quarantines);
	memset(st, 0, sizeof *st);
}

/* The next one behind `after`, round and round; -1: from the first on. */
static int find_sheet(const struct station *st, int32_t room, int suspended, int after)
{
	for (int k = 1; k <= SHEETS_MAX; k++) {
		int i = (after + k) % SHEETS_MAX;
		const struct sheet *s = &st->sheets[i];
		if (s->case_no && s->room == room && s->suspended == suspended)
			return i;
	}
	return -1;
}

int station_sheet_of_room(const struct station *st, int32_t room)
{
	return find_sheet(st, room, 0, -1);
}

int station_suspended_in(const struct station *st, int32_t room)
{
	return find_sheet(st, room, 1, -1);
}

int station_suspended_behind(const struct station *st, int32_t room, int index)
{
	return find_sheet(st, room, 1, index);
}

int station_sheet_of_case(const struct station *st, int32_t case_no)
{
	for (int i = 0; case_no && i < SHEETS_MAX; i++)
		if (st->sheets[i].case_no == case_no)
			return i;
	return -1;
}

int station_free_sheet(const struct station *st)
{
	for (int i = 0; i < SHEETS_MAX; i++)
		if (!st->sheets[i].case_no)
			return i;
	return -1;
}

enum question station_idle_asked(const struct station *st, int32_t room)
{
	for (int i = 0; i < st->n_rooms; i++)
		if (st->rooms[i].number == room)
			return (enum question)st->idle_asked[i];
	return Q_NONE;
}

const struct sheet *station_shown(const struct station *st, int32_t room, struct sheet *idle)
{
	int index = station_sheet_of_room(st, room);
	enum question q = station_idle_asked(st, room);
	if (index >= 0)
		return &st->sheets[index];
	memset(idle, 0, sizeof *idle);
	idle->room = room;
	idle->asked.what = (uint8_t)(question_of_stored(q) ? q : Q_NONE);
	return idle;
}

int station_may_practise(const struct station *st, int32_t room)
{
	struct after_end owed;
	return station_room_is(st, room, ROOM_OF_CASES) && station_sheet_of_room(st, room) < 0 &&
	       station_suspended_in(st, room) < 0 && station_idle_asked(st, room) == Q_NONE &&
	       !after_end_first(st, room, NULL, 0, &owed);
}

int32_t station_identity_open(const struct station *st, const char *identity)
{
	for (int i = 0; i < SHEETS_MAX; i++) {
		int item = st->sheets[i].case_no ? sheet_item_by_identity(&st->sheets[i], identity) : 0;
		if (item && st->sheets[i].items[item - 1].place != ITEM_RETURNED)
			return st->sheets[i].case_no;
	}
	return 0;
}

int station_is_held(const struct station *st, const char *line, const char *lot)
{
	for (size_t i = 0; i < st->n_quarantines; i++)
		if (strcmp(st->quarantines[i].line, line) == 0 && strcmp(st->quarantines[i].lot, lot) == 0)
			return 1;
	return 0;
}

const char *station_quarantined(const struct station *st, const char *line, const char *lot)
{
	for (size_t i = 0; i < st->n_quarantines; i++) {
		const struct quarantine *q = &st->quarantines[i];
		if (strcmp(q->line, line) == 0 && (!q->lot[0] || strcmp(q->lot, lot) == 0))
			return q->why;
	}
	return NULL;
}

/* Where the wall clock went back over a power cut nobody knows how long it was: then it is over. */
static int carry_holds(const struct station *st, const struct carried *c, struct moment now)
{
	int64_t ms = moment_between_ms(c->since, now);
	return c->bound || (ms >= 0 && ms < (int64_t)st->policy.room_hold_min * 60000);
}

int32_t station_scanner_room(const struct station *st, const char *scanner, int32_t own, struct moment now)
{
	for (int i = 0; i < st->n_carried; i++) {
		const struct carried *c = &st->carried[i];
		if (strcmp(c->scanner, scanner) == 0 && station_room(st, c->room) && carry_holds(st, c, now))
			return c->room;
	}
	return own;
}

const struct slip *station_slip(const struct station *st, int32_t number)
{
	for (int i = 0; i < st->n_unseen; i++)
		if (st->unseen[i].number == number)
			return &st->unseen[i];
	return NULL;
}

int station_unseen_in(const struct station *st, int32_t room)
{
	int n = 0;
	for (int i = 0; i < st->n_unseen; i++)
		n += st->unseen[i].room == room;
	return n;
}

int32_t station_incarnation(const struct station *st)
{
	return st->incarnation ? st->incarnation : 1;
}

/* --- applying events ---------------------------------------------------------------------------- */

static int apply_started(struct station *st, const struct event *e)
{
	for (int i = 0; i < st->n_held; i++)
		st->held[i].outlived = 1;
	if (e->n != st->boot) {
		for (int i = 0; i < SHEETS_MAX; i++) {
			for (int d = 0; d < st->sheets[i].n_digits; d++)
				digit_cross_boot(&st->sheets[i].digits[d], st->last, e->at);
			st->undo[i] = (struct step){0};
		}
		st->boot = e->n;
	}
	return 0;
}

int station_reserve_quarantines(struct station *st, size_t more)
{
	size_t room = st->n_quarantines + more;
	if (room <= st->quarantines_room)
		return 0;
	struct quarantine *all = realloc(st->quarantines, room * sizeof *all);
	if (!all)
		return -ENOMEM;
	st->quarantines = all;
	st->quarantines_room = room;
	return 0;
}

static int apply_quarantined(struct station *st, const struct event *e)
{
	if (station_reserve_quarantines(st, 1) < 0)
		return -ENOMEM;
	struct quarantine *q = &st->quarantines[st->n_quarantines++];
	memset(q, 0, sizeof *q);
	memcpy(q->line, e->thing.line, sizeof q->line);
	memcpy(q->lot, e->thing.lot, sizeof q->lot);
	memcpy(q->why, e->text, sizeof q->why);
	memcpy(q->notice, e->notice, sizeof q->notice);
	return 0;
}

static int apply_released(struct station *st, const struct event *e)
{
	size_t kept = 0;
	for (size_t i = 0; i < st->n_quarantines; i++) {
		const struct quarantine *q = &st->quarantines[i];
		if (strcmp(q->line, e->thing.line) != 0 || strcmp(q->lot, e->thing.lot) != 0)
			st->quarantines[kept++] = *q;
	}
	st->n_quarantines = kept;
	return 0;
}

static void unseen_remove(struct station *st, int index)
{
	st->n_unseen--;
	memmove(&st->unseen[index], &st->unseen[index + 1],
	        sizeof *st->unseen * (size_t)(st->n_unseen - index));
}

static int apply_slip(struct station *st, const struct event *e)
{
	if (e->kind == EV_SLIP_QUEUED) {
		for (int i = 0; i < st->n_unseen; i++)
			if (st->unseen[i].number == e->n) { /* a further copy of the same slip */
				st->unseen[i].copy = (uint8_t)e->other;
				st->unseen[i].state = SLIP_QUEUED;
				return 0;
			}
		if (e->n <= st->last_slip_no && st->older_unseen) /* a further copy of one of those before */
			st->older_unseen--;
		if (st->n_unseen == UNSEEN_MAX) {
			unseen_remove(st, 0);
			st->older_unseen++;
		}
		st->unseen[st->n_unseen++] = (struct slip){
		    .number = e->n,
		    .case_no = e->case_no,
		    .room = e->room,
		    .kind = e->what,
		    .state = SLIP_QUEUED,
		    .copy = (uint8_t)e->other,
		    .wall_ms = e->at.wall_ms,
		};
		if (e->n > st->last_slip_no)
			st->last_slip_no = e->n;
		return 0;
	}
	for (int i = 0; i < st->n_unseen; i++)
		if (st->unseen[i].number == e->n) {
			st->unseen[i].state = e->what;
			st->unseen[i].job = (int32_t)e->ref;
			if (e->what == SLIP_SEEN)
				unseen_remove(st, i);
			return 0;
		}
	if (e->what == SLIP_SEEN && st->older_unseen) /* nobody sees one twice (decide.c) */
		st->older_unseen--;
	return 0;
}

/* Who goes first where there is no place for a further scanner: one that works for its own room again; then one that was
 * carried for a while; last a spare, which is bound until a further card. Of each the oldest. */
static int rank_of(const struct carried *c)
{
	return !c->room ? 0 : c->bound ? 2 : 1;
}

static int least_carried(const struct station *st)
{
	int least = 0;
	for (int i = 1; i < st->n_carried; i++) {
		const struct carried *a = &st->carried[i], *b = &st->carried[least];
		if (rank_of(a) != rank_of(b)
		        ? rank_of(a) < rank_of(b)
		        : a->since.boot < b->since.boot ||
		              (a->since.boot == b->since.boot && a->since.boot_ms < b->since.boot_ms))
			least = i;
	}
	return least;
}

static int carried_place(const struct station *st, const char *scanner)
{
	int i = 0;
	while (i < st->n_carried &&
	       strncmp(st->carried[i].scanner, scanner, sizeof st->carried[i].scanner - 1) != 0)
		i++;
	return i;
}

const struct carried *station_carried_falls(const struct station *st, const struct event *e)
{
	if (e->kind != EV_SCANNER_ROOM || carried_place(st, e->text) < CARRIED_MAX)
		return NULL;
	const struct carried *c = &st->carried[least_carried(st)];
	return c->room && carry_holds(st, c, e->at) ? c : NULL;
}

static void apply_scanner_room(struct station *st, const struct event *e)
{
	int i = carried_place(st, e->text);
	if (i == CARRIED_MAX)
		i = least_carried(st);
	else if (i == st->n_carried)
		st->n_carried++;
	snprintf(st->carried[i].scanner, sizeof st->carried[i].scanner, "%.32s", e->text);
	st->carried[i].room = e->n;
	st->carried[i].bound = e->what == CARRIED_SPARE;
	st->carried[i].since = e->at;
}

static void apply_idle_asked(struct station *st, const struct event *e)
{
	int i = station_room_index(st, e->room);
	if (i < 0)
		return;
	st->idle_asked[i] = e->what;
	st->idle_n[i] = e->n;
	st->idle_copy[i] = e->item;
}

/* Which card or badge was the last scan of a room without a running case (rule 22). */
static void apply_idle_last(struct station *st, const struct event *e)
{
	int i = station_room_index(st, e->room);
	if (i < 0)
		return;
	int after_end = e->kind == EV_PAID && debt_is_after_end((enum debt_kind)e->what);
	if (e->kind == EV_CASE_ENDED || e->kind == EV_SUSPENDED || after_end ||
	    (e->kind == EV_ASKED && !e->case_no))
		st->idle_last[i] = e->answer;
	else if (e->kind == EV_CASE_OPENED || e->kind == EV_RESUMED || e->kind == EV_NEXT ||
	         (e->kind == EV_SLIP_STATE && e->what == SLIP_SEEN))
		st->idle_last[i] = 0;
}

static void owe_number(struct station *st, const struct event *e)
{
	if (st->n_owed == OWED_MAX) {
		st->more_owed++;
		return;
	}
	st->owed[st->n_owed++] =
	    (struct owed_number){.case_no = e->case_no, .room = e->room, .wall_ms = e->at.wall_ms};
}

static void pay_number(struct station *st, int32_t case_no)
{
	for (int i = 0; i < st->n_owed; i++)
		if (st->owed[i].case_no == case_no) {
			st->n_owed--;
			memmove(&st->owed[i], &st->owed[i + 1], sizeof *st->owed * (size_t)(st->n_owed - i));
			return;
		}
	st->more_owed -= st->more_owed > 0;
}

int station_step(struct sheet *s, struct sheet *before, struct step *undo, const struct event *e,
                 struct origin *at)
{
	if (e->kind == EV_UNDONE) {
		if (!e->ref || undo->seq != e->ref)
			return ERROR_AT(at, -EINVAL);
		uint8_t unfollowed = s->unfollowed;
		sheet_copy(s, before);
		s->unfollowed |= unfollowed;
		*undo = (struct step){0};
		return 0;
	}
	struct sheet was;
	sheet_save(&was, s);
	if (s->unfollowed && !s->room) /* the event that said it could not be read */
		s->room = e->room;
	int r = sheet_apply(s, e, at);
	if (r < 0) {
		sheet_copy(s, &was);
		return r;
	}
	if (e->kind == EV_CASE_OPENED || e->kind == EV_CASE_ENDED) {
		*undo = (struct step){0};
	} else if (e->flags & EVENT_FIRST) {
		sheet_copy(before, &was);
		*undo = (struct step){
		    .seq = e->seq, .kind = (uint8_t)e->kind, .item = e->item, .digit = e->digit};
	}
	return 0;
}

static void clear_idle(struct station *st, int32_t room)
{
	int i = station_room_index(st, room);
	if (i >= 0)
		st->idle_asked[i] = Q_NONE;
}

static void enter_paper(struct station *st, const struct event *e)
{
	int32_t number = paper_sheet_of(e->text);
	int i = station_room_index(st, e->room);
	if (number && i >= 0)
		paper_sheets_enter(&st->papers[i], number, e->case_no);
}

static int apply_case_event(struct station *st, const struct event *e)
{
	int index =
	    e->kind == EV_CASE_OPENED ? station_free_sheet(st) : station_sheet_of_case(st, e->case_no);
	if (e->kind == EV_CASE_OPENED && index >= 0 && e->case_no > st->last_case_no)
		st->last_case_no = e->case_no;
	if (e->kind == EV_CASE_OPENED && index >= 0)
		enter_paper(st, e);
	if (e->kind == EV_CASE_OPENED || e->kind == EV_RESUMED)
		clear_idle(st, e->room);
	if (index < 0) { /* the case has ended: only what acts on it afterwards comes here (rules 16, 21) */
		if (e->kind == EV_PAID && e->what == DEBT_INCIDENT)
			pay_number(st, e->case_no);
		after_end_apply(st, e);
		return e->kind == EV_CASE_OPENED ? -ENOSPC : 0;
	}
	if (e->kind == EV_CASE_ENDED && debts_has(&st->sheets[index].debts, DEBT_INCIDENT))
		owe_number(st, e);
	return station_step(&st->sheets[index], &st->before[index], &st->undo[index], e, NULL);
}

static void step_reaches(struct step *step, enum step_beyond how, int32_t case_no)
{
	if (!step->seq)
		return;
	step->beyond = (uint8_t)how;
	step->other_case = case_no;
}

/* A scan in the room of one case changed another: neither sheet's copy takes that back. */
static void note_beyond(struct station *st, const struct event *e)
{
	int by = station_sheet_of_room(st, e->room), there = station_sheet_of_case(st, e->case_no);
	if (by < 0 || by == there || (e->kind != EV_ITEM_STRUCK && e->kind != EV_FOUND_AFTER))
		return;
	step_reaches(&st->undo[by], e->kind == EV_FOUND_AFTER ? STEP_FOUND : STEP_TOOK, e->case_no);
	if (there >= 0)
		step_reaches(&st->undo[there], STEP_TAKEN, st->sheets[by].case_no);
}

/* What was given out before must not be given out again, though this record does not know it. */
static void apply_incarnation(struct station *st, const struct event *e)
{
	st->incarnation = e->n;
	if (e->head.case_no > st->last_case_no)
		st->last_case_no = e->head.case_no;
	if (e->head.slip > st->last_slip_no)
		st->last_slip_no = e->head.slip;
	if (e->head.item > st->last_item_no)
		st->last_item_no = e->head.item;
	proof_apply(&st->proof, e);
}

static void settle(struct station *st, const struct event *correction)
{
	int64_t seq = settled_event(correction);
	unfollowed_settle(st, seq);
	proof_settle(&st->proof, seq);
}

int station_apply(struct station *st, const struct event *e)
{
	int r = 0;
	switch (e->kind) {
	case EV_STARTED:
		r = apply_started(st, e);
		break;
	case EV_LINE_SET:
		r = catalogue_set(&st->catalogue, &e->line, NULL);
		break;
	case EV_LINE_REMOVED:
		catalogue_remove(&st->catalogue, e->batch.line);
		break;
	case EV_STAFF_SET:
		r = staff_set(&st->staff, &e->staff);
		break;
	case EV_STAFF_WITHDRAWN: {
		struct person *p = (struct person *)staff_find(&st->staff, e->person);
		if (p)
			p->withdrawn = 1;
		break;
	}
	case EV_QUARANTINED:
		r = apply_quarantined(st, e);
		break;
	case EV_RELEASED:
		r = apply_released(st, e);
		break;
	case EV_LABELLED:
		if (e->batch.last > st->last_item_no)
			st->last_item_no = e->batch.last;
		break;
	case EV_SLIP_QUEUED:
	case EV_SLIP_STATE:
		r = apply_slip(st, e);
		break;
	case EV_SCANNER_ROOM:
		apply_scanner_room(st, e);
		break;
	case EV_CLOCK_WRONG:
		if (!e->case_no)
			st->clock_wrong = e->n == 1;
		break;
	case EV_SETTING:
		recorded_apply(&st->recorded, e);
		break;
	case EV_BACKED_UP:
		st->backup_seq = e->ref;
		st->backup_ms = e->at.wall_ms;
		break;
	case EV_HELD:
	case EV_HELD_ANSWERED:
		r = held_apply(st->held, &st->n_held, HELD_MAX, e);
		break;
	default: /* of a case: its sheet says which kinds there are */
		if (e->case_no) {
			note_beyond(st, e);
			r = apply_case_event(st, e);
		} else if (e->kind == EV_ASKED)
			apply_idle_asked(st, e);
		else if (e->kind == EV_CORRECTION)
			settle(st, e);
		break;
	case EV_KEY:
		proof_apply(&st->proof, e);
		break;
	case EV_INCARNATION:
		apply_incarnation(st, e);
		break;
	}
	if (r == 0)
		apply_idle_last(st, e);
	/* An event may bear the time at which it was asked about or stored; the last moment never goes back. */
	if (r == 0 &&
	    (e->at.boot > st->last.boot || (e->at.boot == st->last.boot && e->at.boot_ms > st->last.boot_ms)))
		st->last = e->at;
	if (r == 0 && e->at.wall_ms > st->wall_ms && !wall_is_beyond(st, e->at))
		st->wall_ms = e->at.wall_ms;
	if (r == 0)
		heard_apply(st, e);
	return r;
}
