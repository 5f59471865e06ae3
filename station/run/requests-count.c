#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "base/name.h"
#include "run/board.h"
#include "run/media.h"
#include "run/outbox.h"
#include "run/request.h"
#include "run/teller.h"
#include "run/typing.h"
#include "stock/bench-view.h"
#include "tell/view.h"

#define SCAN_BYTES_MAX 8192
#define CASES_PAGE 50

json_t *request_scan(struct client *c, const json_t *q)
{
	char data[SCAN_BYTES_MAX];
	struct error e = {0};
	char scanner[sizeof c->d->drivers[0].name] = "";
	struct scan s = {.scanner = "keyed",
	                 .room = c->d->core.station.rooms[0].number,
	                 .aim = json_text(q, "aim"),
	                 .data = data,
	                 .flags = EVENT_KEYED};
	const json_t *code = json_object_get(q, "code");
	s.size = json_string_length(code);
	if (!s.size || s.size > sizeof data)
		return answer_no("the code is empty or longer than 8,192 bytes: scan it again");
	memcpy(data, json_string_value(code), s.size);
	if (request_number(q, "room", 1, ROOM_MAX, &s.room, &e) < 0 ||
	    request_text(q, "scanner", scanner, sizeof scanner, &e) < 0)
		return answer_no(e.text);
	if (scanner[0])
		s.scanner = scanner;
	if (json_truth(q, "late"))
		s.flags |= EVENT_LATE;
	return answer_reply(core_scan(&c->d->core, &s));
}

json_t *request_type(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t room = c->d->core.station.rooms[0].number;
	const char *text = json_text(q, "text");
	if (!*text || strlen(text) >= EVENT_TEXT_MAX)
		return answer_no("the text is empty or longer than 200 bytes: shorten it");
	if (request_number(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return answer_no(e.text);
	return answer_reply(core_typed(&c->d->core, room, text));
}

json_t *request_sheet(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t room = c->d->core.station.rooms[0].number;
	if (request_number(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return answer_no(e.text);
	json_t *view = teller_room(&c->d->core, room);
	if (!view) {
		error_set(&e, -ENOENT, "room %d is not in station.ini: see 'bandtally status'", (int)room);
		return answer_no(e.text);
	}
	json_t *o = answer_yes();
	json_object_set_new(o, "view", view);
	return o;
}

/* Whether station.ini starts the camera's program for this scanner. */
static int is_camera(const struct daemon *d, const char *name)
{
	const struct settings *s = &d->core.settings;
	for (int i = 0; i < s->n_drivers; i++)
		if (strcmp(s->drivers[i].name, name) == 0)
			return strstr(s->drivers[i].command, "scan-camera") != NULL;
	return 0;
}

static json_t *texts_told(const char (*texts)[POLICY_TEXT_MAX], int n)
{
	json_t *list = json_array();
	for (int i = 0; i < n; i++)
		json_array_append_new(list, name_told(texts[i], POLICY_TEXT_MAX));
	return list;
}

/* Of each slip that does not come what the printer's program said last. */
static void put_why(const struct daemon *d, json_t *slips)
{
	size_t i;
	json_t *x;
	json_array_foreach(slips, i, x) for (int k = 0; k < UNSEEN_MAX;
	                                     k++) if (d->outbox[k].slip && d->outbox[k].why &&
	                                              d->outbox[k].slip == json_number(x, "number", 0))
	    json_object_set_new(x, "why", json_string(saying_text(d->outbox[k].why)));
}

json_t *request_status(struct client *c, const json_t *q)
{
	(void)q;
	json_t *o = answer_yes(), *drivers = json_array();
	for (int i = 0; i < c->d->n_drivers; i++) {
		const struct driver_child *dc = &c->d->drivers[i];
		json_t *x = json_object();
		json_object_set_new(x, "name", json_string(dc->name));
		json_object_set_new(x, "room", json_integer(dc->room));
		json_object_set_new(x, "device", name_told(dc->device, sizeof dc->device));
		json_object_set_new(x, "running", json_boolean(child_running(dc->child)));
		json_object_set_new(x, "camera", json_boolean(is_camera(c->d, dc->name)));
		json_object_set_new(x, "fault", name_told(dc->fault, sizeof dc->fault));
		json_array_append_new(drivers, x);
	}
	json_t *status = teller_status(&c->d->core, NULL);
	json_object_set_new(status, "drivers", drivers);
	board_slip_faults(c->d, 0, NULL, json_object_get(status, "faults"));
	board_label_faults(c->d, 0, NULL, json_object_get(status, "faults"));
	put_why(c->d, json_object_get(status, "slips"));
	if (c->d->board_amiss[0])
		json_array_append_new(json_object_get(status, "faults"),
		                      name_told(c->d->board_amiss, sizeof c->d->board_amiss));
	if (c->d->board_port)
		json_object_set_new(status, "board_port", json_integer(c->d->board_port));
	const struct policy *p = &c->d->core.station.policy;
	json_object_set_new(status, "search", texts_told(p->search, p->n_search));
	json_object_set_new(status, "points", texts_told(p->points, p->n_points));
	/* of papers that belong to no room */
	json_object_set_new(status, "site_language",
	                    json_string(c->d->core.station.language[0] ? c->d->core.station.language : "en"));
	json_object_set_new(status, "telephone",
	                    name_told(c->d->core.settings.telephone, sizeof c->d->core.settings.telephone));
	json_object_set_new(o, "status", status);
	return o;
}

json_t *request_case(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t case_no = 0;
	if (request_number(q, "case", 1, NUMBER_MAX, &case_no, &e) < 0)
		return answer_no(e.text);
	json_t *doc = teller_case(&c->d->core, case_no, &e);
	if (!doc)
		return answer_no(e.text);
	json_t *o = answer_yes();
	json_object_set_new(o, "case", doc);
	return o;
}

static int list_case(void *context, const struct case_edges *x)
{
	json_t *list = context, *o = json_object();
	json_object_set_new(o, "case", json_integer(x->case_no));
	json_object_set_new(o, "room", json_integer(x->room));
	json_object_set_new(o, "opened_ms", json_integer(x->opened_ms));
	json_object_set_new(o, "state", json_string(case_end_name(x->end)));
	if (x->ended_ms)
		json_object_set_new(o, "ended_ms", json_integer(x->ended_ms));
	json_t *slips = json_array();
	for (int i = 0; i < x->n_slips && i < CASE_SLIPS_MAX; i++)
		json_array_append_new(slips, json_integer(x->slips[i]));
	json_object_set_new(o, "slips", slips);
	if (x->n_slips > CASE_SLIPS_MAX)
		json_object_set_new(o, "slips_more", json_integer(x->n_slips - CASE_SLIPS_MAX));
	return json_array_append_new(list, o) < 0 ? -ENOMEM : 0;
}

/* A page of them: who wants the next asks again, and others have their turn between. */
json_t *request_cases(struct client *c, const json_t *q)
{
	struct error e = {0};
	int64_t last = 0;
	const json_t *after = json_object_get(q, "after");
	json_t *o = answer_yes(), *list = json_array();
	json_object_set_new(o, "cases", list);
	int n = after && (!json_is_integer(after) || json_integer_value(after) < 0)
	            ? error_set(&e, -EINVAL, "'after' must be what the page before gave: begin without it")
	            : 0;
	if (n == 0)
		n = record_each_case(c->d->core.record, json_integer_value(after), CASES_PAGE, list_case,
		                     list, &last, &e);
	if (n < 0) {
		json_decref(o);
		return answer_no(e.text);
	}
	if (last)
		json_object_set_new(o, "after", json_integer(last));
	return o;
}

json_t *request_retry(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t slip = 0;
	if (request_number(q, "slip", 1, NUMBER_MAX, &slip, &e) < 0)
		return answer_no(e.text);
	return answer_yes_or_no(outbox_retry(c->d, slip, &e), &e);
}

/* Who may only look gets what only looks. */
json_t *request_board(struct client *c, const json_t *q)
{
	struct error e = {0};
	char address[ADDRESS_MAX];
	int32_t room = c->d->core.station.rooms[0].number;
	if (json_truth(q, "stores") && !(room = core_bench_room(&c->d->core)))
		return answer_no("no ticket: station.ini has no room of kind stores: describe one there");
	if (request_number(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return answer_no(e.text);
	unsigned types = core_is_bench(&c->d->core, room) ? RIGHT_STORES : RIGHT_COUNT;
	if (typing_address(c->d, json_truth(q, "desk") ? ROOM_DESK : room,
	                   c->rights & types ? TICKET_COUNT : TICKET_AUDIT, json_truth(q, "elsewhere"),
	                   address, &e) < 0)
		return answer_no(e.text);
	json_t *o = answer_yes();
	json_object_set_new(o, "address", json_string(address));
	return o;
}
