#include "run/file-lists.h"

#include <errno.h>
#include <string.h>

#include "base/name.h"
#include "count/catalogue-import.h"
#include "count/staff-file.h"

static void put_n(json_t *o, const char *key, size_t n)
{
	json_object_set_new(o, key, json_integer((json_int_t)n));
}

static int store(struct core *c, struct event *events, size_t n, int preview, struct error *e)
{
	return preview || !n ? 0 : core_store(c, events, (int)n, e);
}

static json_t *no_memory(struct error *e)
{
	error_set(e, -ENOMEM, "out of memory: try again");
	return NULL;
}

/* --- the catalogue --------------------------------------------------------------------------------- */

static json_t *column_told(const struct line *line, enum line_column column)
{
	_cleanup_(buf_free) struct buf text = {0};
	return line_write_column(line, column, &text) < 0
	           ? NULL
	           : name_told(text.size ? text.data : "", text.size + 1);
}

static json_t *columns_told(const struct line_change *c)
{
	json_t *list = json_array();
	for (int i = 0; i < LINE_COLUMNS; i++) {
		if (!(c->columns >> i & 1))
			continue;
		json_t *o = json_object();
		json_object_set_new(o, "column", json_string(line_column_name((enum line_column)i)));
		json_object_set_new(o, "was", column_told(c->was, (enum line_column)i));
		json_object_set_new(o, "is", column_told(c->is, (enum line_column)i));
		json_array_append_new(list, o);
	}
	return list;
}

static const char *const line_words[] = {[LINE_STAYS] = "stay",
                                         [LINE_ADDED] = "added",
                                         [LINE_CHANGED] = "changed",
                                         [LINE_REMOVED] = "removed",
                                         [LINE_NOT_IN_FILE] = "absent"};

static json_t *line_told(const struct core *core, const struct line_change *c)
{
	const struct line *line = c->is ? c->is : c->was;
	json_t *o = json_object();
	json_object_set_new(o, "what", json_string(line_words[c->kind]));
	put_n(o, "line", (size_t)c->number);
	json_object_set_new(o, "key", name_told(line->key, sizeof line->key));
	json_object_set_new(o, "name", name_told(line->name, sizeof line->name));
	json_object_set_new(o, "columns", columns_told(c));
	if (c->kind == LINE_REMOVED)
		put_n(o, "packs", (size_t)stock_lying(&core->stock, line->key));
	return o;
}

static json_t *lines_told(const struct core *c, const struct catalogue_import *im)
{
	json_t *o = json_object(), *list = json_array();
	put_n(o, "count", im->file.count);
	for (int k = LINE_STAYS; k <= LINE_NOT_IN_FILE; k++)
		put_n(o, line_words[k], catalogue_import_count(im, (enum line_change_kind)k));
	for (size_t i = 0; i < im->n_changes; i++)
		if (im->changes[i].kind != LINE_STAYS)
			json_array_append_new(list, line_told(c, &im->changes[i]));
	json_object_set_new(o, "changes", list);
	return o;
}

json_t *import_catalogue(struct core *c, const char *csv, size_t size, int whole, int preview,
                         struct error *e)
{
	struct catalogue_import im;
	if (catalogue_import_init(&im, &c->station.catalogue, csv, size, whole, e) < 0)
		return NULL;
	if (catalogue_import_lists(&im, &c->station.catalogue, NULL, e) < 0) {
		catalogue_import_deinit(&im);
		return NULL;
	}
	json_t *o = lines_told(c, &im); /* first: what is stored changes the lines that it compares */
	int n = o ? store(c, im.events, im.n_events, preview, e) : 0;
	catalogue_import_deinit(&im);
	if (!o)
		return no_memory(e);
	if (n == 0)
		return o;
	json_decref(o);
	return NULL;
}

/* --- staff ----------------------------------------------------------------------------------------- */

static json_t *person_told(const struct person *p)
{
	json_t *o = json_object();
	json_object_set_new(o, "name", name_told(p->name, sizeof p->name));
	json_object_set_new(o, "kind", json_string(staff_kind_name((enum staff_kind)p->kind)));
	json_object_set_new(o, "registered", json_boolean(p->registered));
	return o;
}

static const char *const person_words[] = {[PERSON_STAYS] = "stay",
                                           [PERSON_ADDED] = "added",
                                           [PERSON_CHANGED] = "changed",
                                           [PERSON_CAME_BACK] = "back",
                                           [PERSON_WITHDRAWN] = "withdrawn"};

static json_t *person_change_told(const struct person_change *c)
{
	json_t *o = person_told(&c->is);
	json_object_set_new(o, "what", json_string(person_words[c->kind]));
	put_n(o, "line", (size_t)c->line);
	put_n(o, "number", (size_t)c->is.number);
	if (c->was)
		json_object_set_new(o, "was", person_told(c->was));
	return o;
}

static json_t *people_told(const struct staff_import *im)
{
	json_t *o = json_object(), *list = json_array();
	put_n(o, "count", im->n_changes - staff_import_count(im, PERSON_WITHDRAWN));
	for (int k = PERSON_STAYS; k <= PERSON_WITHDRAWN; k++)
		put_n(o, person_words[k], staff_import_count(im, (enum person_change_kind)k));
	for (size_t i = 0; i < im->n_changes; i++)
		if (im->changes[i].kind != PERSON_STAYS)
			json_array_append_new(list, person_change_told(&im->changes[i]));
	json_object_set_new(o, "changes", list);
	return o;
}

int badge_may_be(const struct core *c, const struct person *is, struct error *e)
{
	const struct person *was = staff_find(&c->station.staff, is->number);
	if (!was || strcmp(was->name, is->name) == 0)
		return 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &c->station.sheets[i];
		if (s->case_no && team_place_of(&s->team, is->number))
			return error_set(
			    e, -EBUSY,
			    "badge %06d is of %s, who is in case %d: it can be of %s when that case is over",
			    (int)is->number, was->name, (int)s->case_no, is->name);
	}
	return 0;
}

static int badges_may_be(const struct core *c, const struct staff_import *im, struct error *e)
{
	for (size_t i = 0; i < im->n_events; i++)
		if (im->events[i].kind == EV_STAFF_SET && badge_may_be(c, &im->events[i].staff, e) < 0)
			return -EBUSY;
	return 0;
}

json_t *import_staff(struct core *c, const char *csv, size_t size, int preview, struct error *e)
{
	struct staff_import im;
	if (staff_import_init(&im, &c->station.staff, csv, size, e) < 0)
		return NULL;
	json_t *o = people_told(&im);
	int n = o && !preview ? badges_may_be(c, &im, e) : 0;
	if (o && n == 0)
		n = store(c, im.events, im.n_events, preview, e);
	staff_import_deinit(&im);
	if (!o)
		return no_memory(e);
	if (n == 0)
		return o;
	json_decref(o);
	return NULL;
}
