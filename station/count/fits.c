/* Whether events will fit, tried on copies of what they touch: nothing may be stored that a start could not apply. */
#include <errno.h>
#include <string.h>

#include "count/station.h"

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "cannot store this: out of memory: try again");
}

static size_t count_of(const struct event *events, int count, enum event_kind kind)
{
	size_t n = 0;
	for (int i = 0; i < count; i++)
		n += events[i].kind == kind;
	return n;
}

/* Only catalogue files bring lines, so a copy of the whole catalogue stands in no scan's way. */
static int lines_fit(struct station *st, const struct event *events, int count, size_t lines, struct error *e)
{
	struct catalogue copy;
	struct error why;
	if (catalogue_reserve(&st->catalogue, lines) < 0 || catalogue_copy(&copy, &st->catalogue) < 0)
		return no_memory(e);
	int n = 0;
	for (int i = 0; i < count && n == 0; i++) {
		if (events[i].kind == EV_LINE_REMOVED)
			catalogue_remove(&copy, events[i].batch.line);
		if (events[i].kind == EV_LINE_SET && (n = catalogue_set(&copy, &events[i].line, &why)) < 0)
			error_set(e, n, "cannot take the catalogue: %.400s", why.text);
	}
	catalogue_deinit(&copy);
	return n;
}

static int stores_fit(struct station *st, const struct event *events, int count, struct error *e)
{
	size_t lines = count_of(events, count, EV_LINE_SET), staff = count_of(events, count, EV_STAFF_SET),
	       lots = count_of(events, count, EV_QUARANTINED);
	if ((staff && staff_reserve(&st->staff, staff) < 0) ||
	    (lots && station_reserve_quarantines(st, lots) < 0))
		return no_memory(e);
	return lines ? lines_fit(st, events, count, lines, e) : 0;
}

/* A sheet that only this try sees. */
struct trial {
	struct sheet sheet, before;
	struct step undo;
	int open;
};

static void trial_begin(struct trial *t, const struct station *st, int32_t case_no)
{
	int index = station_sheet_of_case(st, case_no);
	t->open = index >= 0;
	if (!t->open) {
		memset(&t->sheet, 0, sizeof t->sheet);
		return;
	}
	sheet_save(&t->sheet, &st->sheets[index]);
	sheet_save(&t->before, &st->before[index]);
	t->undo = st->undo[index];
}

/* `places`: how many further cases may be opened. */
static int trial_step(struct trial *t, const struct event *ev, int *places, struct origin *at)
{
	if (ev->kind == EV_CASE_OPENED) {
		if (t->open || --*places < 0)
			return ERROR_AT(at, t->open ? -EINVAL : -ENOSPC);
		t->open = 1;
		t->undo = (struct step){0};
		memset(&t->before, 0, sizeof t->before);
	}
	if (!t->open) /* it has ended: what acts on it afterwards changes no sheet */
		return 0;
	int n = station_step(&t->sheet, &t->before, &t->undo, ev, at);
	if (n == 0 && ev->kind == EV_CASE_ENDED) {
		t->open = 0;
		++*places;
	}
	return n;
}

static int is_done(const struct event *events, int i)
{
	for (int k = 0; k < i; k++)
		if (events[k].case_no == events[i].case_no &&
		    event_group(events[k].kind) != EVENTS_OF_STATION)
			return 1;
	return 0;
}

static int does_not_fit(const struct event *ev, int n, struct origin at, struct error *e)
{
	if (n == -ENOSPC)
		error_set(e, n,
		          "cannot store this (%s): there is no room for it on the sheet or for the case: "
		          "write it on the paper sheet and count by hand",
		          event_name(ev->kind));
	else
		error_set(e, n,
		          "cannot store this (%s): it does not fit what is on the sheet: write it on the "
		          "paper sheet, "
		          "and tell whoever looks after the station",
		          event_name(ev->kind));
	if (e)
		e->at = at;
	return n;
}

static int case_fits(const struct station *st, const struct event *events, int from, int count, int *places,
                     struct error *e)
{
	struct trial t;
	struct origin at = {0};
	trial_begin(&t, st, events[from].case_no);
	for (int i = from; i < count; i++) {
		int n =
		    events[i].case_no == events[from].case_no ? trial_step(&t, &events[i], places, &at) : 0;
		if (n < 0)
			return does_not_fit(&events[i], n, at, e);
	}
	return 0;
}

static int held_fit(const struct station *st, const struct event *events, int count, struct error *e)
{
	struct held list[HELD_MAX];
	struct origin at;
	int n_held = st->n_held;
	memcpy(list, st->held, sizeof list);
	for (int i = 0; i < count; i++) {
		int held = events[i].kind == EV_HELD || events[i].kind == EV_HELD_ANSWERED;
		int n = held ? held_apply(list, &n_held, HELD_MAX, &events[i]) : 0;
		if (n < 0)
			return does_not_fit(&events[i], ERROR_AT(&at, n), at, e);
	}
	return 0;
}

int station_fits(struct station *st, const struct event *events, int count, struct error *e)
{
	int places = 0, n = stores_fit(st, events, count, e);
	if (n == 0 && (count_of(events, count, EV_HELD) || count_of(events, count, EV_HELD_ANSWERED)))
		n = held_fit(st, events, count, e);
	for (int i = 0; i < SHEETS_MAX; i++)
		places += !st->sheets[i].case_no;
	for (int i = 0; i < count && n == 0; i++)
		if (events[i].case_no && event_group(events[i].kind) != EVENTS_OF_STATION &&
		    !is_done(events, i))
			n = case_fits(st, events, i, count, &places, e);
	return n;
}
