#include "count/catalogue-import.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

struct work {
	struct catalogue_import *im;
	const struct catalogue *there;
	struct catalogue now; /* what it would become */
	const int *numbers;
	const struct csv *places;
	int whole;
};

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "cannot take the file: out of memory: try again");
}

/* --- what differs ---------------------------------------------------------------------------------- */

static int differs(const struct line *was, const struct line *is, uint32_t *columns)
{
	_cleanup_(buf_free) struct buf a = {0}, b = {0};
	*columns = 0;
	for (int i = 0; i < LINE_COLUMNS; i++) {
		buf_clear(&a);
		buf_clear(&b);
		if (line_write_column(was, (enum line_column)i, &a) < 0 ||
		    line_write_column(is, (enum line_column)i, &b) < 0)
			return -ENOMEM;
		if (a.size != b.size || (a.size && memcmp(a.data, b.data, a.size) != 0))
			*columns |= UINT32_C(1) << i;
	}
	return 0;
}

static int compare_file(struct work *w)
{
	for (size_t i = 0; i < w->im->file.count; i++) {
		const struct line *is = &w->im->file.lines[i], *was = catalogue_by_key(w->there, is->key);
		struct line_change *c = &w->im->changes[w->im->n_changes++];
		*c = (struct line_change){.kind = LINE_ADDED, .number = w->numbers[i], .was = was, .is = is};
		if (was && differs(was, is, &c->columns) < 0)
			return -ENOMEM;
		if (was)
			c->kind = c->columns ? LINE_CHANGED : LINE_STAYS;
	}
	return 0;
}

static void list_absent(struct work *w)
{
	for (size_t i = 0; i < w->there->count; i++) {
		const struct line *was = &w->there->lines[i];
		if (!catalogue_by_key(&w->im->file, was->key))
			w->im->changes[w->im->n_changes++] = (struct line_change){
			    .kind = w->whole ? LINE_REMOVED : LINE_NOT_IN_FILE, .was = was};
	}
}

/* --- what is stored -------------------------------------------------------------------------------- */

static void add_line(struct work *w, const struct line *line)
{
	w->im->events[w->im->n_events++] = (struct event){.kind = EV_LINE_SET, .line = *line};
}

static int remove_line(struct work *w, const struct line *line, struct error *e)
{
	for (size_t i = 0; i < w->im->file.count; i++)
		for (int k = 0; k < LINE_CONTENTS_MAX && w->im->file.lines[i].contents[k].count; k++)
			if (strcmp(w->im->file.lines[i].contents[k].key, line->key) == 0) {
				char place[CSV_PLACE_MAX];
				csv_place(w->places, w->numbers[i], COL_CONTENTS, place);
				return error_set(e, -EINVAL,
				                 "%s: '%s' holds '%s', which is not in this file: give that "
				                 "line as well, or the tray without it",
				                 place, w->im->file.lines[i].key, line->key);
			}
	struct event *ev = &w->im->events[w->im->n_events++];
	*ev = (struct event){.kind = EV_LINE_REMOVED};
	memcpy(ev->batch.line, line->key, sizeof ev->batch.line);
	catalogue_remove(&w->now, line->key);
	return 0;
}

/* A line that the file changes lets its codes go first, so that the file may move a code from one of its lines to another. */
static int let_codes_go(struct work *w, const struct line_change *c)
{
	if (!(c->columns >> COL_CODES & 1))
		return 0;
	struct line bare = *c->was;
	memset(bare.codes, 0, sizeof bare.codes);
	add_line(w, &bare);
	return catalogue_set(&w->now, &bare, NULL);
}

static int set_line(struct work *w, const struct line_change *c, struct error *e)
{
	struct error why;
	const char *code = "";
	const struct line *owner = catalogue_owner(&w->now, c->is, &code);
	char place[CSV_PLACE_MAX];
	csv_place(w->places, c->number, COL_CODES, place);
	if (owner)
		return error_set(e, -EINVAL,
		                 "%s: the code '%s' of '%s' finds the line '%s' of the station's catalogue: "
		                 "to rename that "
		                 "line keep its key; to move the code give '%s' without it in the same file",
		                 place, code, c->is->key, owner->key, owner->key);
	int r = catalogue_set(&w->now, c->is, &why);
	if (r < 0)
		return error_set(e, r, "line %d: %.400s", c->number, why.text);
	add_line(w, c->is);
	return 0;
}

static int make_events(struct work *w, struct error *e)
{
	int r = 0;
	const struct line_change *all = w->im->changes, *end = all + w->im->n_changes;
	for (const struct line_change *c = all; r == 0 && c < end; c++)
		if (c->kind == LINE_REMOVED)
			r = remove_line(w, c->was, e);
	for (const struct line_change *c = all; r == 0 && c < end; c++)
		if (c->kind == LINE_CHANGED && (r = let_codes_go(w, c)) < 0)
			r = error_set(e, r, "cannot take the file: %s: try again", strerror(-r));
	for (const struct line_change *c = all; r == 0 && c < end; c++)
		if (c->kind == LINE_CHANGED || c->kind == LINE_ADDED)
			r = set_line(w, c, e);
	return r;
}

static int lay_over(struct work *w, struct error *e)
{
	size_t in_file = w->im->file.count, there = w->there->count;
	w->im->changes = calloc(in_file + there, sizeof *w->im->changes);
	w->im->events = calloc(2 * in_file + there, sizeof *w->im->events);
	if (!w->im->changes || !w->im->events || catalogue_copy(&w->now, w->there) < 0 || compare_file(w) < 0)
		return no_memory(e);
	list_absent(w);
	return make_events(w, e);
}

/* --- for others ------------------------------------------------------------------------------------ */

int catalogue_import_init(struct catalogue_import *im, const struct catalogue *there, const char *text,
                          size_t size, int whole, struct error *e)
{
	struct csv places;
	int *numbers = NULL;
	*im = (struct catalogue_import){0};
	int r = catalogue_read_lines(text, size, &im->file, &numbers, &places, e);
	if (r == 0 && !im->file.count)
		r = error_set(e, -EINVAL,
		              "the file holds no line of a catalogue: give a CSV with a head line and lines");
	if (r == 0) {
		struct work w = {
		    .im = im, .there = there, .numbers = numbers, .places = &places, .whole = whole};
		r = lay_over(&w, e);
		catalogue_deinit(&w.now);
	}
	free(numbers);
	if (r < 0)
		catalogue_import_deinit(im);
	return r;
}

static int check_part(const struct catalogue_import *im, const struct catalogue *there,
                      const struct line_change *c, const char *key, const struct line **beside,
                      struct error *e)
{
	if (strcmp(key, c->is->key) == 0)
		return error_set(e, -EINVAL, "line %d: '%s' lists itself in 'contents': list what is on it",
		                 c->number, key);
	if (catalogue_by_key(&im->file, key))
		return 0;
	if (!*beside)
		*beside = c->is;
	if (catalogue_by_key(there, key))
		return 0;
	return error_set(e, -EINVAL,
	                 "line %d: '%s' holds '%s', which is neither in this file nor in the catalogue of a "
	                 "station that runs here: give that line as well, or the tray without it",
	                 c->number, c->is->key, key);
}

int catalogue_import_lists(const struct catalogue_import *im, const struct catalogue *there,
                           const struct line **beside, struct error *e)
{
	const struct line *first = NULL;
	int r = 0;
	for (size_t i = 0; i < im->n_changes; i++)
		for (int k = 0; r == 0 && im->changes[i].is && k < LINE_CONTENTS_MAX; k++)
			if (im->changes[i].is->contents[k].count)
				r = check_part(im, there, &im->changes[i], im->changes[i].is->contents[k].key,
				               &first, e);
	if (beside)
		*beside = first;
	return r;
}

void catalogue_import_deinit(struct catalogue_import *im)
{
	free(im->changes);
	free(im->events);
	catalogue_deinit(&im->file);
	*im = (struct catalogue_import){0};
}

size_t catalogue_import_count(const struct catalogue_import *im, enum line_change_kind kind)
{
	size_t n = 0;
	for (size_t i = 0; i < im->n_changes; i++)
		n += im->changes[i].kind == kind;
	return n;
}
