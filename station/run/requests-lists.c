#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"
#include "count/staff-file.h"
#include "run/file-lists.h"
#include "run/request.h"

json_t *request_lines(struct client *c, const json_t *q)
{
	(void)q;
	_cleanup_(buf_free) struct buf csv = {0};
	if (catalogue_write_csv(&c->d->core.station.catalogue, &csv) < 0)
		return answer_no("out of memory: try again");
	json_t *o = answer_yes();
	json_object_set_new(o, "csv", json_string(csv.data));
	return o;
}

/* A file's text comes as it is and is read here, so that one program decides what a list may say. */
json_t *request_catalogue(struct client *c, const json_t *q)
{
	struct error e = {0};
	const json_t *csv = json_object_get(q, "csv");
	return answer_with_ok(
	    import_catalogue(&c->d->core, json_string_value(csv) ? json_string_value(csv) : "",
	                     json_string_length(csv), json_truth(q, "whole"), json_truth(q, "preview"), &e),
	    &e);
}

json_t *request_staff_file(struct client *c, const json_t *q)
{
	struct error e = {0};
	const json_t *csv = json_object_get(q, "csv");
	return answer_with_ok(import_staff(&c->d->core, json_string_value(csv) ? json_string_value(csv) : "",
	                                   json_string_length(csv), json_truth(q, "preview"), &e),
	                      &e);
}

/* A number is one person's for ever: what was agreed with it would else read as another's. */
static int given_to_another(const struct core *c, const struct person *is, struct error *e)
{
	const struct person *was = staff_find(&c->station.staff, is->number);
	if (!was || strcmp(was->name, is->name) == 0)
		return 0;
	return error_set(
	    e, -EEXIST,
	    "badge %06d was given to %s: leave --number out and %s gets a new one; the same person "
	    "under another name is written in the file of 'bandtally staff import'",
	    (int)is->number, was->name, is->name);
}

json_t *request_staff(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_STAFF_SET};
	const char *name = json_text(q, "name");
	int32_t kind = 0;
	if (request_number(q, "number", 0, BADGE_NUMBER_MAX, &ev.staff.number, &e) < 0 ||
	    request_number(q, "kind", 0, 255, &kind, &e) < 0)
		return answer_no(e.text);
	ev.staff.kind = (uint8_t)kind;
	ev.staff.registered = (uint8_t)json_truth(q, "registered");
	if (name_check("the badge was not added: its name or role code", name, sizeof ev.staff.name - 1, &e) <
	    0)
		return answer_no(e.text);
	if (ev.staff.kind < STAFF_PRACTITIONER || ev.staff.kind > STAFF_CHARGE)
		return answer_no("the badge was not added: its kind must be practitioner, surgeon or "
		                 "nurse-in-charge: give "
		                 "one of them");
	if (!ev.staff.number && !(ev.staff.number = staff_new_number(&c->d->core.station.staff)))
		return answer_no(
		    "the badge was not added: each number up to 999999 was given: no badge is left");
	snprintf(ev.staff.name, sizeof ev.staff.name, "%s", name);
	if (given_to_another(&c->d->core, &ev.staff, &e) < 0)
		return answer_no(e.text);
	int32_t number = ev.staff.number;
	json_t *o = answer_yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
	json_object_set_new(o, "number", json_integer(number));
	return o;
}

json_t *request_list_staff(struct client *c, const json_t *q)
{
	(void)q;
	json_t *o = answer_yes(), *list = json_array();
	const struct staff *staff = &c->d->core.station.staff;
	for (size_t i = 0; i < staff->count; i++) {
		json_t *x = json_object();
		json_object_set_new(x, "number", json_integer(staff->list[i].number));
		json_object_set_new(x, "name", name_told(staff->list[i].name, sizeof staff->list[i].name));
		json_object_set_new(x, "kind", json_integer(staff->list[i].kind));
		json_object_set_new(x, "registered", json_boolean(staff->list[i].registered));
		json_object_set_new(x, "withdrawn", json_boolean(staff->list[i].withdrawn));
		json_array_append_new(list, x);
	}
	json_object_set_new(o, "staff", list);
	_cleanup_(buf_free) struct buf csv = {0};
	if (staff_write_csv(staff, &csv) == 0)
		json_object_set_new(o, "csv", json_string(csv.data));
	return o;
}

json_t *request_withdraw(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_STAFF_WITHDRAWN};
	if (request_number(q, "number", 1, BADGE_NUMBER_MAX, &ev.person, &e) < 0)
		return answer_no(e.text);
	if (!staff_find(&c->d->core.station.staff, ev.person) || ev.person < 1)
		return answer_no("there is no such badge: see 'bandtally staff list'");
	return answer_yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}
