#include "count/staff-file.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/csv.h"
#include "base/name.h"

enum { NAME, KIND, NUMBER, REGISTERED, COLUMNS };
static const char *const column_names[COLUMNS] = {"name", "kind", "number", "registered"};
#define COLUMNS_NEEDED 3 /* without numbers everybody would be somebody else */

struct work {
	struct csv csv;
	struct staff_import *im;
	const struct staff *there;
	size_t room;
	int32_t highest; /* number that is taken */
	int32_t lowest;  /* up to which each was looked at, once none is left behind the highest */
};

/* --- one line -------------------------------------------------------------------------------------- */

/* 0 where none is given; -EINVAL. */
static int32_t number_of(const char *text)
{
	char *end;
	long n = strtol(text, &end, 10);
	if (!*text)
		return 0;
	return text[strspn(text, "0123456789")] || n < 1 || n > BADGE_NUMBER_MAX ? -EINVAL : (int32_t)n;
}

static int read_person(const struct work *w, const struct csv_row *row, struct person *p, struct error *e)
{
	char place[COLUMNS][CSV_PLACE_MAX];
	int kind = staff_kind_from_name(row->cell[KIND]);
	const char *registered = row->cell[REGISTERED];
	for (int i = 0; i < COLUMNS; i++)
		csv_place(&w->csv, row->line, i, place[i]);
	*p = (struct person){.number = number_of(row->cell[NUMBER])};
	if (name_check(place[NAME], row->cell[NAME], sizeof p->name - 1, e) < 0)
		return -EINVAL;
	memcpy(p->name, row->cell[NAME], strlen(row->cell[NAME]) + 1);
	if (kind < 0)
		return error_set(e, -EINVAL,
		                 "%s is '%.80s': it must be practitioner, surgeon or nurse-in-charge",
		                 place[KIND], row->cell[KIND]);
	if (p->number < 0)
		return error_set(e, -EINVAL,
		                 "%s is '%.80s': it must be that of the badge, 1 to 999999, or nothing for a "
		                 "new one",
		                 place[NUMBER], row->cell[NUMBER]);
	if (*registered && strcmp(registered, "yes") != 0 && strcmp(registered, "no") != 0)
		return error_set(e, -EINVAL, "%s is '%.80s': it must be yes or no", place[REGISTERED],
		                 registered);
	p->kind = (uint8_t)kind;
	p->registered = strcmp(registered, "yes") == 0;
	return 0;
}

static const struct person_change *in_file(const struct staff_import *im, int32_t number)
{
	for (size_t i = 0; number && i < im->n_changes; i++)
		if (im->changes[i].is.number == number)
			return &im->changes[i];
	return NULL;
}

/* A person without a number whose name has a badge already is most likely that one. */
static int check_person(const struct work *w, const struct csv_row *row, const struct person *p,
                        struct error *e)
{
	char place[CSV_PLACE_MAX];
	const struct person_change *same = in_file(w->im, p->number);
	csv_place(&w->csv, row->line, NUMBER, place);
	if (same)
		return error_set(e, -EINVAL,
		                 "%s: badge %06d stands in line %d as well, of '%s': each person has a badge "
		                 "of their own",
		                 place, (int)p->number, same->line, same->is.name);
	for (size_t i = 0; !p->number && i < w->there->count; i++)
		if (!w->there->list[i].withdrawn && strcmp(w->there->list[i].name, p->name) == 0)
			return error_set(e, -EINVAL,
			                 "%s: '%s' has badge %06d already: give that number, or another name",
			                 place, p->name, (int)w->there->list[i].number);
	return 0;
}

static enum person_change_kind kind_of(const struct person *was, const struct person *is)
{
	if (!was)
		return PERSON_ADDED;
	if (was->withdrawn)
		return PERSON_CAME_BACK;
	return was->kind == is->kind && was->registered == is->registered && strcmp(was->name, is->name) == 0
	           ? PERSON_STAYS
	           : PERSON_CHANGED;
}

static struct person_change *add_change(struct work *w)
{
	struct staff_import *im = w->im;
	if (im->n_changes == w->room) {
		size_t room = w->room ? 2 * w->room : 64;
		struct person_change *list = realloc(im->changes, room * sizeof *list);
		if (!list)
			return NULL;
		im->changes = list;
		w->room = room;
	}
	struct person_change *c = &im->changes[im->n_changes++];
	*c = (struct person_change){0};
	return c;
}

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "cannot take the file: out of memory: try again");
}

static int take_row(struct work *w, const struct csv_row *row, struct error *e)
{
	struct person p;
	if (read_person(w, row, &p, e) < 0 || check_person(w, row, &p, e) < 0)
		return -EINVAL;
	if (w->im->n_changes == STAFF_FILE_MAX)
		return error_set(e, -ENOSPC, "line %d: more than %d people: this is no list of one site",
		                 row->line, STAFF_FILE_MAX);
	struct person_change *c = add_change(w);
	if (!c)
		return no_memory(e);
	c->line = row->line;
	c->was = p.number ? staff_find(w->there, p.number) : NULL;
	c->is = p;
	c->kind = kind_of(c->was, &p);
	if (p.number > w->highest)
		w->highest = p.number;
	return 0;
}

/* --- the whole file -------------------------------------------------------------------------------- */

/* As staff_new_number(), of the people there and those of the file. */
static int32_t next_number(struct work *w)
{
	if (w->highest < BADGE_NUMBER_MAX)
		return ++w->highest;
	while (w->lowest < BADGE_NUMBER_MAX)
		if (!staff_find(w->there, ++w->lowest) && !in_file(w->im, w->lowest))
			return w->lowest;
	return 0;
}

static int number_new(struct work *w, struct error *e)
{
	for (size_t i = 0; i < w->im->n_changes; i++) {
		struct person_change *c = &w->im->changes[i];
		if (c->is.number)
			continue;
		c->is.number = next_number(w);
		if (!c->is.number)
			return error_set(e, -ENOSPC,
			                 "line %d: each number up to %d was given: no badge is left", c->line,
			                 BADGE_NUMBER_MAX);
	}
	return 0;
}

static int withdraw_leavers(struct work *w, struct error *e)
{
	for (size_t i = 0; i < w->there->count; i++) {
		const struct person *p = &w->there->list[i];
		if (p->withdrawn || in_file(w->im, p->number))
			continue;
		struct person_change *c = add_change(w);
		if (!c)
			return no_memory(e);
		*c = (struct person_change){.kind = PERSON_WITHDRAWN, .is = *p, .was = p};
	}
	return 0;
}

static int make_events(struct work *w, struct error *e)
{
	struct staff_import *im = w->im;
	im->events = calloc(im->n_changes, sizeof *im->events);
	if (!im->events)
		return no_memory(e);
	for (size_t i = 0; i < im->n_changes; i++) {
		const struct person_change *c = &im->changes[i];
		if (c->kind == PERSON_WITHDRAWN)
			im->events[im->n_events++] =
			    (struct event){.kind = EV_STAFF_WITHDRAWN, .person = c->is.number};
		else if (c->kind != PERSON_STAYS)
			im->events[im->n_events++] = (struct event){.kind = EV_STAFF_SET, .staff = c->is};
	}
	return 0;
}

static int read_people(struct work *w, const char *text, size_t size, struct error *e)
{
	struct csv_row row;
	int r = csv_begin(&w->csv, text, size, column_names, COLUMNS, COLUMNS_NEEDED, e);
	while (r == 0 && (r = csv_next(&w->csv, &row, e)) > 0)
		r = take_row(w, &row, e);
	if (r == 0 && !w->im->n_changes)
		return error_set(e, -EINVAL,
		                 "the file names nobody, so everybody would be withdrawn: give a CSV with a "
		                 "head line and people");
	return r;
}

int staff_import_init(struct staff_import *im, const struct staff *there, const char *text, size_t size,
                      struct error *e)
{
	struct work w = {.im = im, .there = there};
	*im = (struct staff_import){0};
	for (size_t i = 0; i < there->count; i++)
		if (there->list[i].number > w.highest)
			w.highest = there->list[i].number;
	int r = read_people(&w, text, size, e);
	if (r == 0)
		r = number_new(&w, e);
	if (r == 0)
		r = withdraw_leavers(&w, e);
	if (r == 0)
		r = make_events(&w, e);
	if (r < 0)
		staff_import_deinit(im);
	return r;
}

void staff_import_deinit(struct staff_import *im)
{
	free(im->changes);
	free(im->events);
	*im = (struct staff_import){0};
}

size_t staff_import_count(const struct staff_import *im, enum person_change_kind kind)
{
	size_t n = 0;
	for (size_t i = 0; i < im->n_changes; i++)
		n += im->changes[i].kind == kind;
	return n;
}

int staff_write_csv(const struct staff *s, struct buf *out)
{
	int r = 0;
	for (int i = 0; r == 0 && i < COLUMNS; i++)
		r = buf_printf(out, "%s%s", column_names[i], i + 1 < COLUMNS ? "," : "\n");
	for (size_t i = 0; r == 0 && i < s->count; i++) {
		const struct person *p = &s->list[i];
		if (p->withdrawn)
			continue;
		r = csv_add(out, p->name);
		if (r == 0)
			r = buf_printf(out, ",%s,%d,%s\n", staff_kind_name((enum staff_kind)p->kind),
			               (int)p->number, p->registered ? "yes" : "no");
	}
	return r;
}
