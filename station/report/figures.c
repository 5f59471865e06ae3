#include "report/figures.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "report/charts.h"
#include "report/days.h"

#define DAY_MS 86400000.0
#define SHORT_SPAN_DAYS 100 /* up to a quarter's, a chart of shares goes by weeks */

struct collected {
	struct case_row *list;
	size_t count, room;
};

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "cannot make the report: out of memory: close other programs");
}

static int collect(void *to, const struct case_row *row)
{
	struct collected *c = to;
	if (c->count == c->room) {
		size_t room = c->room ? 2 * c->room : 1024;
		struct case_row *more = realloc(c->list, room * sizeof *more);
		if (!more)
			return -ENOMEM;
		c->list = more;
		c->room = room;
	}
	c->list[c->count++] = *row;
	return 0;
}

static int add_batch(void *to, const struct pack_batch *batch)
{
	*(int64_t *)to += batch->count;
	return 0;
}

/* --- how many people ---------------------------------------------------------------------------------------- */

static int by_number(const void *a, const void *b)
{
	const int32_t *x = a, *y = b;
	return *x < *y ? -1 : *x > *y;
}

/* Of rows that `of` picks in order. -ENOMEM or how many. */
static int people_of(const struct case_row *const *of, size_t count)
{
	int32_t *all = calloc(count * CASE_PEOPLE + 1, sizeof *all);
	size_t n = 0;
	int people = 0;
	if (!all)
		return -ENOMEM;
	for (size_t i = 0; i < count; i++)
		for (int k = 0; k < CASE_PEOPLE && of[i]->people[k]; k++)
			all[n++] = of[i]->people[k];
	qsort(all, n, sizeof *all, by_number);
	for (size_t i = 0; i < n; i++)
		people += i == 0 || all[i] != all[i - 1];
	free(all);
	return people;
}

/* --- totals ------------------------------------------------------------------------------------------------------ */

static void close_share(struct share *s, int n)
{
	s->n = n;
	s->low = s->high = NAN;
	if (!n)
		return;
	stats_interval(s->x, n, &s->low, &s->high);
	if (!s->x)
		s->high = stats_none_bound(n);
}

static void add_ends(struct figures *f, const struct case_row *row)
{
	switch ((enum case_end_kind)row->end) {
	case CASE_OPEN:
		f->open++;
		return;
	case CASE_RECONCILED:
		f->reconciled++;
		return;
	case CASE_UNRESOLVED:
		f->unresolved++;
		return;
	case CASE_CANCELLED:
		f->cancelled++;
	}
}

static void add_marks(struct figures *f, const struct case_row *row)
{
	f->single.x += (row->marks & CASE_SINGLE) != 0;
	f->owed.x += (row->marks & CASE_OWED) != 0;
	f->overridden.x += (row->marks & CASE_OVERRIDDEN) != 0;
	f->keyed.x += row->keyed > 0;
	f->late.x += row->late > 0;
	f->corrected.x += row->corrected > 0;
	f->clock += (row->marks & CASE_CLOCK) != 0;
	f->power_cuts += (row->marks & CASE_POWER_CUT) != 0;
	f->unfollowed += (row->marks & CASE_UNFOLLOWED) != 0;
	f->patient_left += (row->marks & CASE_PATIENT_LEFT) != 0;
	f->numbers_owed += (row->marks & CASE_NUMBER_OWED) != 0;
	f->found_after.x += (row->marks & CASE_FOUND_AFTER) != 0;
}

static void add_search(struct figures *f, const struct case_row *row)
{
	f->discrepancy.x += row_counted(row) && row->marks & CASE_DISCREPANCY;
	f->discrepancies += row->discrepancies;
	f->closed += (row->marks & CASE_CLOSED) != 0;
	f->steps_done += row->steps_done;
	f->steps_not_done += row->steps_not_done;
	for (int i = 0; i < row->n_found; i++)
		if (row->found_step[i] < FIGURES_STEPS)
			f->found.count[row->found_step[i]]++;
}

static void add_things(struct figures *f, const struct case_row *row)
{
	f->items += row->items;
	f->by_mark += row->by_mark;
	f->by_shown += row->by_shown;
	f->typed += row->typed;
	f->isolated += row->isolated;
	f->returned += row->returned;
	f->packs_opened += row->packs_opened;
	f->packs_returned += row->packs_returned;
	f->slips += row->slips;
	f->slips_seen += row->slips_seen;
	f->digits_left_out += row->digits_left_out;
}

static void add_all(struct figures *f, struct rows rows)
{
	f->cases = (int)rows.count;
	for (size_t i = 0; i < rows.count; i++) {
		add_ends(f, &rows.list[i]);
		add_marks(f, &rows.list[i]);
		add_search(f, &rows.list[i]);
		add_things(f, &rows.list[i]);
	}
	struct share *of_cases[] = {&f->single,     &f->keyed,     &f->late,       &f->owed,
	                            &f->overridden, &f->corrected, &f->found_after};
	for (size_t i = 0; i < sizeof of_cases / sizeof of_cases[0]; i++)
		close_share(of_cases[i], f->cases);
	close_share(&f->discrepancy, f->reconciled + f->unresolved);
	f->unresolved_share.x = f->unresolved;
	close_share(&f->unresolved_share, f->reconciled + f->unresolved);
	f->not_seen.x = f->slips - f->slips_seen;
	close_share(&f->not_seen, f->slips);
}

/* --- minutes ------------------------------------------------------------------------------------------------------ */

static void add_digit(struct minutes *m, const struct case_row *row, const struct case_digit *d)
{
	double minutes = d->seconds / 60.0;
	m->n++;
	m->past += d->past;
	m->no_reminder += !row->first_reminder_min;
	m->on += d->on;
	m->at_least += !d->over && !d->on;
	if (m->n > 1 && minutes <= m->longest)
		return;
	m->longest = minutes;
	m->longest_at_least = !d->over;
}

static int make_minutes(struct figures *f, struct rows rows, int part)
{
	struct minutes *m = &f->minutes[part];
	struct stats_time *times = calloc(rows.count * CASE_DIGITS + 1, sizeof *times);
	if (!times)
		return -ENOMEM;
	for (size_t i = 0; i < rows.count; i++)
		for (int k = 0; k < rows.list[i].n_digits; k++) {
			const struct case_digit *d = &rows.list[i].digits[k];
			if (part && d->part != part)
				continue;
			times[m->n] = (struct stats_time){d->seconds / 60.0, d->over};
			add_digit(m, &rows.list[i], d);
		}
	m->held_back = m->n > 0 && m->n < FIGURES_CASES;
	m->median = stats_quantile(times, m->n, 500);
	m->p90 = stats_quantile(times, m->n, 900);
	free(times);
	return chart_minutes(&f->minutes_charts[part], rows, part);
}

/* --- rooms and weeks ------------------------------------------------------------------------------------------------ */

struct cell_row {
	int32_t room, week;
	const struct case_row *row;
};

static int by_cell(const void *a, const void *b)
{
	const struct cell_row *x = a, *y = b;
	return x->room != y->room ? x->room - y->room : x->week < y->week ? -1 : x->week > y->week;
}

static void add_signs(struct signs *s, const struct case_row *row)
{
	s->fast_answers += row->fast_answers;
	s->fast_looks += row->fast_looks;
	s->close_badges += row->close_badges;
	s->keyed_bursts += row->keyed_bursts;
	s->even_scans += row->even_scans;
}

/* Begins a cell's figures at the rows from `at` on; how many rows it takes, or -ENOMEM. */
static int cell_people(const struct cell_row *cells, size_t count, int by_week, int *people)
{
	const struct case_row **of = calloc(count, sizeof(const struct case_row *));
	size_t n = 0;
	if (!of)
		return -ENOMEM;
	while (n < count && cells[n].room == cells[0].room && (!by_week || cells[n].week == cells[0].week)) {
		of[n] = cells[n].row;
		n++;
	}
	*people = people_of(of, n);
	free(of);
	return *people < 0 ? *people : (int)n;
}

static int is_held_back(int cases, int people)
{
	return cases < FIGURES_CASES || people < FIGURES_PEOPLE;
}

static int make_signs(struct figures *f, const struct cell_row *cells, size_t count)
{
	f->signs = calloc(count + 1, sizeof *f->signs);
	if (!f->signs)
		return -ENOMEM;
	for (size_t i = 0; i < count;) {
		struct signs *s = &f->signs[f->n_signs++];
		*s = (struct signs){.room = cells[i].room, .week = cells[i].week};
		int n = cell_people(cells + i, count - i, 1, &s->people);
		if (n < 0)
			return n;
		s->cases = n;
		s->held_back = is_held_back(n, s->people);
		for (int k = 0; k < n; k++)
			add_signs(s, cells[i + (size_t)k].row);
		i += (size_t)n;
	}
	return 0;
}

/* What is held back could be worked out from the sum, which is shown: so is then the next smallest, until it cannot. */
static void hold_back_others(struct figures *f)
{
	for (;;) {
		struct room_figures *least = NULL;
		int held = 0, cases = 0;
		for (struct room_figures *r = f->rooms; r < f->rooms + f->n_rooms; r++) {
			held += r->held_back;
			cases += r->held_back ? r->cases : 0;
			if (!r->held_back && (!least || r->cases < least->cases))
				least = r;
		}
		if (!held || !least || (held > 1 && cases >= FIGURES_CASES))
			return;
		least->held_back = 1;
	}
}

static int make_rooms(struct figures *f, const struct cell_row *cells, size_t count)
{
	f->rooms = calloc(count + 1, sizeof *f->rooms);
	if (!f->rooms)
		return -ENOMEM;
	for (size_t i = 0; i < count;) {
		struct room_figures *r = &f->rooms[f->n_rooms++];
		*r = (struct room_figures){.room = cells[i].room};
		int n = cell_people(cells + i, count - i, 0, &r->people);
		if (n < 0)
			return n;
		r->cases = n;
		r->held_back = is_held_back(n, r->people);
		for (int k = 0; k < n; k++) {
			const struct case_row *row = cells[i + (size_t)k].row;
			r->discrepancies += (row->marks & CASE_DISCREPANCY) != 0;
			r->unresolved += row->end == CASE_UNRESOLVED;
		}
		i += (size_t)n;
	}
	hold_back_others(f);
	return 0;
}

/* Weeks are those of a clock that could be trusted; rooms of all cases. */
static int make_cells(struct figures *f, struct rows rows)
{
	struct cell_row *cells = calloc(rows.count + 1, sizeof *cells);
	size_t trusted = 0;
	if (!cells)
		return -ENOMEM;
	for (size_t i = 0; i < rows.count; i++)
		if (!(rows.list[i].marks & CASE_CLOCK))
			cells[trusted++] =
			    (struct cell_row){rows.list[i].room, day_week(rows.list[i].day), &rows.list[i]};
	qsort(cells, trusted, sizeof *cells, by_cell);
	int n = make_signs(f, cells, trusted);
	for (size_t i = 0; i < rows.count; i++)
		cells[i] = (struct cell_row){rows.list[i].room, 0, &rows.list[i]};
	qsort(cells, rows.count, sizeof *cells, by_cell);
	if (n == 0)
		n = make_rooms(f, cells, rows.count);
	free(cells);
	return n;
}

/* --- coverage --------------------------------------------------------------------------------------------------------- */

/* Cases of a room and day. */
static int recorded_on(struct rows rows, int32_t day, int32_t room)
{
	int n = 0;
	for (size_t i = 0; i < rows.count; i++)
		n += rows.list[i].day == day && rows.list[i].room == room &&
		     rows.list[i].end != CASE_CANCELLED && !(rows.list[i].marks & CASE_CLOCK);
	return n;
}

static struct coverage *month_of(struct figures *f, int32_t month)
{
	int i = 0;
	while (i < f->n_coverage && f->coverage[i].month < month)
		i++;
	if (i < f->n_coverage && f->coverage[i].month == month)
		return &f->coverage[i];
	memmove(f->coverage + i + 1, f->coverage + i, (size_t)(f->n_coverage++ - i) * sizeof *f->coverage);
	f->coverage[i] = (struct coverage){.month = month};
	return &f->coverage[i];
}

static int is_asked(const struct figures_ask *ask, const struct plan_slot *s)
{
	return s->day >= ask->span.from && s->day <= ask->span.to && (!ask->room || s->room == ask->room);
}

/* Each room and day of the list once: `i` is its first line; where the next one begins. */
static size_t cover_day(struct figures *f, struct rows rows, size_t i)
{
	const struct plan *p = f->ask.plan;
	const struct plan_slot *first = &p->slots[i];
	struct coverage *c = month_of(f, day_month(first->day));
	int planned = 0, recorded = recorded_on(rows, first->day, first->room);
	for (; i < p->count && p->slots[i].day == first->day && p->slots[i].room == first->room; i++)
		planned += p->slots[i].digit;
	c->planned += planned;
	c->recorded += recorded;
	c->empty_days += planned > 0 && !recorded;
	c->unplanned += planned ? 0 : recorded;
	return i;
}

static int is_listed(const struct plan *p, int32_t day, int32_t room)
{
	for (size_t i = 0; i < p->count; i++)
		if (p->slots[i].day == day && p->slots[i].room == room)
			return 1;
	return 0;
}

/* Cases of a day and room that the list does not have: the first of them counts the day. */
static void cover_unknown(struct figures *f, struct rows rows)
{
	for (size_t i = 0; i < rows.count; i++) {
		const struct case_row *row = &rows.list[i];
		int before = 0;
		if (row->marks & CASE_CLOCK || is_listed(f->ask.plan, row->day, row->room))
			continue;
		for (size_t k = i; k-- > 0 && rows.list[k].day == row->day && !before;)
			before = rows.list[k].room == row->room;
		month_of(f, day_month(row->day))->unknown_days += !before;
	}
}

static int make_coverage(struct figures *f, struct rows rows)
{
	const struct plan *p = f->ask.plan;
	f->coverage = calloc(p->count + rows.count + 1, sizeof *f->coverage);
	if (!f->coverage)
		return -ENOMEM;
	for (size_t i = 0; i < p->count;)
		i = is_asked(&f->ask, &p->slots[i]) ? cover_day(f, rows, i) : i + 1;
	cover_unknown(f, rows);
	return 0;
}

/* --- all of it ---------------------------------------------------------------------------------------------------------- */

static int32_t until(const struct figures_ask *ask)
{
	return ask->last_day < ask->span.to ? ask->last_day : ask->span.to;
}

static int make_days(struct figures *f, struct rows rows)
{
	double *days = calloc(rows.count + 1, sizeof *days);
	f->unresolved_days = calloc(rows.count + 1, sizeof *f->unresolved_days);
	int n = 0;
	if (days && f->unresolved_days)
		for (size_t i = 0; i < rows.count; i++)
			if (rows.list[i].end == CASE_UNRESOLVED && !(rows.list[i].marks & CASE_CLOCK)) {
				f->unresolved_days[n] = rows.list[i].day;
				days[n++] = (double)rows.list[i].opened_ms / DAY_MS;
			}
	f->n_unresolved_days = n;
	n = days && f->unresolved_days
	        ? chart_between_days(&f->days_chart, days, n, (double)day_number(until(&f->ask)) + 1,
	                             &f->running_chance)
	        : -ENOMEM;
	free(days);
	return n;
}

static int count_people(struct figures *f, struct rows rows)
{
	const struct case_row **of = calloc(rows.count + 1, sizeof(const struct case_row *));
	if (!of)
		return -ENOMEM;
	for (size_t i = 0; i < rows.count; i++)
		of[i] = &rows.list[i];
	f->people = people_of(of, rows.count);
	free(of);
	f->held_back = rows.count > 0 && is_held_back((int)rows.count, f->people);
	return f->people < 0 ? f->people : 0;
}

static int make_all(struct figures *f, struct rows rows)
{
	int n = count_people(f, rows);
	int64_t days = day_number(f->ask.span.to) - day_number(f->ask.span.from);
	add_all(f, rows);
	for (int part = 0; n == 0 && part < DIGIT_PARTS; part++)
		n = make_minutes(f, rows, part);
	if (n == 0)
		n = chart_between_cases(&f->cases_chart, rows);
	if (n == 0)
		n = make_days(f, rows);
	if (n == 0)
		n = make_cells(f, rows);
	if (n == 0 && f->ask.plan)
		n = make_coverage(f, rows);
	chart_slips(&f->slips_chart, rows, days < SHORT_SPAN_DAYS);
	return n;
}

int figures_make(struct figures **out, const struct source *source, const struct figures_ask *ask,
                 struct error *e)
{
	struct collected rows = {0};
	struct figures *f = calloc(1, sizeof *f);
	if (!f)
		return no_memory(e);
	f->ask = *ask;
	int n = source->cases(source->context, ask->span, ask->room, collect, &rows, e);
	if (n == 0)
		n = source->batches(source->context, ask->span, add_batch, &f->packs_numbered, e);
	if (n == 0)
		n = make_all(f, (struct rows){rows.list, rows.count});
	free(rows.list);
	if (n == 0) {
		*out = f;
		return 0;
	}
	figures_free(f);
	return n == -ENOMEM ? no_memory(e) : n;
}

void figures_free(struct figures *f)
{
	if (!f)
		return;
	free(f->unresolved_days);
	free(f->rooms);
	free(f->signs);
	free(f->coverage);
	free(f);
}
