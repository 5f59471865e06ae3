#include "count/heard.h"

static int place_of(const struct station *st, int32_t room)
{
	for (int i = 0; i < st->n_rooms; i++)
		if (st->rooms[i].number == room)
			return i;
	return -1;
}

/* Each scan leaves one of these, a refused one as well; time passing, printing and faults leave none. */
static int is_of_a_scan(const struct event *e)
{
	if (e->flags & EVENT_FIRST)
		return 1;
	switch (e->kind) {
	case EV_CASE_OPENED:
	case EV_NEXT:
	case EV_REFUSED:
	case EV_SCANNER_ROOM:
	case EV_FOUND_AFTER:
		return 1;
	case EV_ASKED:
		return !e->case_no;
	case EV_SLIP_STATE:
		return e->what == SLIP_SEEN;
	default: /* a kind that is new comes of a scan where it is the first of one */
		return 0;
	}
}

static int is_later(struct moment at, struct moment than)
{
	return at.boot > than.boot || (at.boot == than.boot && at.boot_ms > than.boot_ms);
}

static void heard_scan(struct station *st, int32_t room, struct moment at)
{
	int i = place_of(st, room);
	if (i < 0)
		return;
	if (is_later(at, st->heard[i].scan))
		st->heard[i].scan = at;
	st->heard[i].reminder = (struct moment){0};
}

static int is_suspended(const struct station *st, int32_t case_no)
{
	for (int i = 0; i < SHEETS_MAX; i++)
		if (case_no && st->sheets[i].case_no == case_no)
			return st->sheets[i].suspended;
	return 0;
}

static void heard_reminder(struct station *st, const struct event *e)
{
	int i = place_of(st, e->room);
	if (i < 0)
		return;
	struct heard *h = &st->heard[i];
	struct moment *first = is_suspended(st, e->case_no) ? &h->of_suspended : &h->reminder;
	if (e->kind == EV_RESUMED)
		h->of_suspended = (struct moment){0};
	else if (!first->boot)
		*first = e->at;
}

void heard_apply(struct station *st, const struct event *e)
{
	if (e->kind == EV_REMINDED || e->kind == EV_RESUMED)
		heard_reminder(st, e);
	if (!is_of_a_scan(e))
		return;
	heard_scan(st, e->room, e->at);
	if (e->kind == EV_SCANNER_ROOM) /* whoever scanned that room's card stands in it */
		heard_scan(st, e->n, e->at);
}
