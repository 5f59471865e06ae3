#include "run/socket.h"

#include <dirent.h>
#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/random.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <sys/un.h>
#include <unistd.h>

#include "base/log.h"
#include "base/name.h"
#include "code/date.h"
#include "count/staff-file.h"
#include "count/unfollowed.h"
#include "run/board.h"
#include "run/file-lists.h"
#include "run/labels-list.h"
#include "run/media.h"
#include "run/outbox.h"
#include "run/peer.h"
#include "run/stock-lists.h"
#include "run/stock-steps.h"
#include "run/teller.h"
#include "run/typing.h"
#include "stock/bench-view.h"
#include "tell/view.h"

#define REQUEST_MAX (2u << 20) /* a whole catalogue comes in one line */
#define REQUEST_SMALL_MAX (64u << 10)
#define CLIENTS_MAX 100
#define CLIENTS_OF_A_USER 8
#define SCAN_BYTES_MAX 8192
#define SETTLED_MAX 170
#define CASES_PAGE 50
#define COPY_PAGES 64
#define COPY_EVERY_MS 3
#define COPY_SECRET_BYTES 16
#define COPY_LEAVES (4u << 20) /* of the disk */

enum right { RIGHT_COUNT = 1, RIGHT_STORES = 2, RIGHT_AUDIT = 4, RIGHT_ALL = 8 };

struct client {
	struct client *next;
	struct daemon *d;
	uid_t uid;
	struct stream *stream;
	unsigned rights;
	int copying;              /* this one asked for the copy that is being made */
	char copy_file[PATH_MAX]; /* "", or its copy, which lives as long as its connection */
	int64_t copy_events;      /* in that copy, once it is made */
};

/* --- who asks ----------------------------------------------------------------------------------- */

static unsigned rights_of_group(const struct daemon *d, gid_t gid)
{
	static const unsigned right[GROUPS] = {
	    [GROUP_COUNT] = RIGHT_COUNT, [GROUP_STORES] = RIGHT_STORES, [GROUP_AUDIT] = RIGHT_AUDIT};
	unsigned rights = 0;
	for (int i = 0; i < GROUPS; i++)
		if (d->groups.gid[i] == gid && gid != GROUP_NONE)
			rights |= right[i];
	return rights;
}

/* The groups that the peer's process has, as the kernel knows them. */
static unsigned rights_of_groups(const struct daemon *d, int fd, gid_t gid)
{
	static gid_t all[NGROUPS_MAX];
	socklen_t many = sizeof all;
	unsigned rights = rights_of_group(d, gid);
	if (getsockopt(fd, SOL_SOCKET, SO_PEERGROUPS, all, &many) == 0)
		for (size_t i = 0; i < many / sizeof *all; i++)
			rights |= rights_of_group(d, all[i]);
	return rights;
}

#define NOT_ALLOWED                                                                                          \
	"not allowed: your user is not in the group for this (bandtally-count, -stores, -audit): ask "       \
	"whoever looks after the station"

/* As a service it has a user of its own, as whom nobody works: whoever asks as that one has broken out of a program of
 * ours. By hand its user is whoever started it. systemd names the process that it started itself. */
static int is_service(void)
{
	const char *started = getenv("SYSTEMD_EXEC_PID");
	return started && atoi(started) == getpid();
}

static unsigned rights_of(const struct daemon *d, int fd, const struct ucred *peer)
{
	if (peer->uid == 0 || (peer->uid == geteuid() && !is_service()))
		return RIGHT_ALL | RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT;
	return peer->uid == geteuid() ? 0 : rights_of_groups(d, fd, peer->gid);
}

/* --- answers ------------------------------------------------------------------------------------ */

static void leave(struct client *c);

/* An answer that cannot be made is told to be missing; who cannot be told even that is left, and hears so by it. */
static int answer(struct client *c, json_t *o)
{
	static const char missing[] = "{\"error\":\"the answer could not be made: out of memory: try again\","
	                              "\"ok\":false}\n";
	_cleanup_(buf_free) struct buf line = {0};
	int made = json_write_canonical(o, &line) == 0 && buf_add_text(&line, "\n") == 0;
	int n = made ? stream_send(c->stream, line.data, line.size)
	             : stream_send(c->stream, missing, sizeof missing - 1);
	json_decref(o);
	if (n < 0) {
		log_line("a program at the socket does not take its answer: %s: it is left", strerror(-n));
		leave(c);
	}
	return n;
}

static json_t *yes(void)
{
	json_t *o = json_object();
	json_object_set_new(o, "ok", json_true());
	return o;
}

static json_t *no(const char *why)
{
	json_t *o = json_object();
	json_object_set_new(o, "ok", json_false());
	json_object_set_new(o, "error", name_told(why, ERROR_TEXT_MAX));
	return o;
}

static json_t *yes_or_no(int n, const struct error *e)
{
	return n < 0 ? no(e->text) : yes();
}

static json_t *reply_json(const struct reply *r)
{
	json_t *o = yes();
	json_object_set_new(o, "verdict", json_string(verdict_name(r->verdict)));
	json_object_set_new(o, "said", name_told(r->said, sizeof r->said));
	json_object_set_new(o, "next", name_told(r->next.words, sizeof r->next.words));
	json_object_set_new(o, "deeds", view_deeds(&r->next, NULL));
	return o;
}

/* --- numbers that come in ------------------------------------------------------------------------ */

#define ROOM_MAX 99              /* as on its cards */
#define NUMBER_MAX INT32_MAX     /* of cases and slips */
#define BADGE_MAX 999999         /* six digits in its code */
#define ITEM_NUMBER_MAX 99999999 /* eight */

/* Takes a number of the request. 0, where it is absent as well: then `out` stays as it was. Else -EINVAL, and `why`
 * names it. */
static int take(const json_t *q, const char *key, int64_t low, int64_t high, int32_t *out, struct error *why)
{
	const json_t *v = json_object_get(q, key);
	int64_t n = json_integer_value(v);
	if (!v)
		return 0;
	if (!json_is_integer(v) || n < low || n > high)
		return error_set(why, -EINVAL,
		                 "'%s' must be a whole number from %" PRId64 " to %" PRId64 ": give another",
		                 key, low, high);
	*out = (int32_t)n;
	return 0;
}

/* A day, yyyymmdd; 0 none. */
static int take_day(const json_t *q, const char *key, int32_t *out, struct error *why)
{
	int n = take(q, key, 0, 99991231, out, why);
	if (n == 0 && *out && !date_make(*out / 10000, *out / 100 % 100, *out % 100))
		return error_set(why, -EINVAL, "'%s' is no day: give one as 20280331, or leave it out", key);
	return n;
}

static int take_text(const json_t *q, const char *key, char *out, size_t size, struct error *why)
{
	const char *text = json_text(q, key);
	if (strlen(text) >= size)
		return error_set(why, -EINVAL, "'%s' is longer than %zu bytes: shorten it", key, size - 1);
	memcpy(out, text, strlen(text) + 1);
	return 0;
}

/* One that people read; it may be left out. */
static int take_name(const json_t *q, const char *key, char *out, size_t size, struct error *why)
{
	char what[24];
	snprintf(what, sizeof what, "'%s'", key);
	int n = *json_text(q, key) ? name_check(what, json_text(q, key), size - 1, why) : 0;
	return n < 0 ? n : take_text(q, key, out, size, why);
}

/* --- requests ----------------------------------------------------------------------------------- */

static json_t *do_scan(struct client *c, const json_t *q)
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
		return no("the code is empty or longer than 8,192 bytes: scan it again");
	memcpy(data, json_string_value(code), s.size);
	if (take(q, "room", 1, ROOM_MAX, &s.room, &e) < 0 ||
	    take_text(q, "scanner", scanner, sizeof scanner, &e) < 0)
		return no(e.text);
	if (scanner[0])
		s.scanner = scanner;
	if (json_truth(q, "late"))
		s.flags |= EVENT_LATE;
	return reply_json(core_scan(&c->d->core, &s));
}

static json_t *do_type(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t room = c->d->core.station.rooms[0].number;
	const char *text = json_text(q, "text");
	if (!*text || strlen(text) >= EVENT_TEXT_MAX)
		return no("the text is empty or longer than 200 bytes: shorten it");
	if (take(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return no(e.text);
	return reply_json(core_typed(&c->d->core, room, text));
}

static json_t *do_sheet(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t room = c->d->core.station.rooms[0].number;
	if (take(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return no(e.text);
	json_t *view = teller_room(&c->d->core, room);
	if (!view)
		return no("there is no such room in station.ini: see 'bandtally status'");
	json_t *o = yes();
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

static json_t *do_status(struct client *c, const json_t *q)
{
	(void)q;
	json_t *o = yes(), *drivers = json_array();
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
	if (c->d->board_port)
		json_object_set_new(status, "board_port", json_integer(c->d->board_port));
	const struct policy *p = &c->d->core.station.policy;
	json_object_set_new(status, "search", texts_told(p->search, p->n_search));
	json_object_set_new(status, "points", texts_told(p->points, p->n_points));
	json_object_set_new(status, "telephone",
	                    name_told(c->d->core.settings.telephone, sizeof c->d->core.settings.telephone));
	json_object_set_new(o, "status", status);
	return o;
}

static json_t *do_case(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t case_no = 0;
	if (take(q, "case", 1, NUMBER_MAX, &case_no, &e) < 0)
		return no(e.text);
	json_t *doc = teller_case(&c->d->core, case_no, &e);
	if (!doc)
		return no(e.text);
	json_t *o = yes();
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
static json_t *do_cases(struct client *c, const json_t *q)
{
	struct error e = {0};
	int64_t last = 0;
	const json_t *after = json_object_get(q, "after");
	json_t *o = yes(), *list = json_array();
	json_object_set_new(o, "cases", list);
	int n = after && (!json_is_integer(after) || json_integer_value(after) < 0)
	            ? error_set(&e, -EINVAL, "'after' must be what the page before gave: begin without it")
	            : 0;
	if (n == 0)
		n = record_each_case(c->d->core.record, json_integer_value(after), CASES_PAGE, list_case,
		                     list, &last, &e);
	if (n < 0) {
		json_decref(o);
		return no(e.text);
	}
	if (last)
		json_object_set_new(o, "after", json_integer(last));
	return o;
}

static json_t *do_lines(struct client *c, const json_t *q)
{
	(void)q;
	_cleanup_(buf_free) struct buf csv = {0};
	if (catalogue_write_csv(&c->d->core.station.catalogue, &csv) < 0)
		return no("out of memory: try again");
	json_t *o = yes();
	json_object_set_new(o, "csv", json_string(csv.data));
	return o;
}

static json_t *taken_or_not(json_t *o, const struct error *e)
{
	if (!o)
		return no(e->text);
	json_object_set_new(o, "ok", json_true());
	return o;
}

/* A file's text comes as it is and is read here, so that one program decides what a list may say. */
static json_t *do_catalogue(struct client *c, const json_t *q)
{
	struct error e = {0};
	const json_t *csv = json_object_get(q, "csv");
	return taken_or_not(
	    import_catalogue(&c->d->core, json_string_value(csv) ? json_string_value(csv) : "",
	                     json_string_length(csv), json_truth(q, "whole"), json_truth(q, "preview"), &e),
	    &e);
}

static json_t *do_staff_file(struct client *c, const json_t *q)
{
	struct error e = {0};
	const json_t *csv = json_object_get(q, "csv");
	return taken_or_not(import_staff(&c->d->core, json_string_value(csv) ? json_string_value(csv) : "",
	                                 json_string_length(csv), json_truth(q, "preview"), &e),
	                    &e);
}

static json_t *do_staff(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_STAFF_SET};
	const char *name = json_text(q, "name");
	int32_t kind = 0;
	if (take(q, "number", 0, BADGE_MAX, &ev.staff.number, &e) < 0 ||
	    take(q, "kind", 0, 255, &kind, &e) < 0)
		return no(e.text);
	ev.staff.kind = (uint8_t)kind;
	ev.staff.registered = (uint8_t)json_truth(q, "registered");
	if (name_check("the badge was not added: its name or role code", name, sizeof ev.staff.name - 1, &e) <
	    0)
		return no(e.text);
	if (ev.staff.kind < STAFF_PRACTITIONER || ev.staff.kind > STAFF_CHARGE)
		return no("the badge was not added: its kind must be practitioner, surgeon or charge: give "
		          "one of them");
	for (size_t i = 0; !ev.staff.number && i <= c->d->core.station.staff.count; i++) {
		int32_t highest = 0;
		for (size_t k = 0; k < c->d->core.station.staff.count; k++)
			if (c->d->core.station.staff.list[k].number > highest)
				highest = c->d->core.station.staff.list[k].number;
		ev.staff.number = highest + 1;
	}
	if (ev.staff.number < 1 || ev.staff.number > 999999)
		return no("the badge was not added: its number must be 1 to 999999: give another, or none");
	snprintf(ev.staff.name, sizeof ev.staff.name, "%s", name);
	int32_t number = ev.staff.number;
	json_t *o = yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
	json_object_set_new(o, "number", json_integer(number));
	return o;
}

static json_t *do_list_staff(struct client *c, const json_t *q)
{
	(void)q;
	json_t *o = yes(), *list = json_array();
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

static json_t *do_withdraw(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_STAFF_WITHDRAWN};
	if (take(q, "number", 1, BADGE_MAX, &ev.person, &e) < 0)
		return no(e.text);
	if (!staff_find(&c->d->core.station.staff, ev.person) || ev.person < 1)
		return no("there is no such badge: see 'bandtally staff list'");
	return yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

/* Two people release, who are known by their badges: stores rule 5. */
static int take_two(const struct client *c, const json_t *q, struct event *ev, struct error *e)
{
	const struct staff *staff = &c->d->core.station.staff;
	if (take(q, "by", 1, BADGE_MAX, &ev->person, e) < 0 ||
	    take(q, "and", 1, BADGE_MAX, &ev->other, e) < 0)
		return -EINVAL;
	const struct person *by = staff_find(staff, ev->person), *and = staff_find(staff, ev->other);
	if (!ev->person || !ev->other || ev->person == ev->other)
		return error_set(e, -EINVAL, "not released: two people release: give the badges of both");
	if (!by || by->withdrawn || !and || and->withdrawn)
		return error_set(e, -EINVAL,
		                 "not released: one of the badges is not in use: see 'bandtally staff list'");
	return 0;
}

static json_t *do_quarantine(struct client *c, const json_t *q)
{
	struct error e = {0};
	int release = strcmp(json_text(q, "do"), "release") == 0;
	struct event ev = {.kind = release ? EV_RELEASED : EV_QUARANTINED};
	const struct line *line = catalogue_by_key(&c->d->core.station.catalogue, json_text(q, "line"));
	if (!line)
		return no("the catalogue has no such line: see 'bandtally catalogue export'");
	snprintf(ev.thing.line, sizeof ev.thing.line, "%s", line->key);
	snprintf(ev.thing.name, sizeof ev.thing.name, "%s", line->name);
	/* What was let in before must find its way out. */
	if ((release ? take_text : take_name)(q, "lot", ev.thing.lot, sizeof ev.thing.lot, &e) < 0 ||
	    take_name(q, "why", ev.text, sizeof ev.text, &e) < 0)
		return no(e.text);
	if (release && take_two(c, q, &ev, &e) < 0)
		return no(e.text);
	if (!release && !ev.text[0])
		return no("not put in quarantine: no reason is given: say why, the people at the table will "
		          "read it");
	return yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

static int take_lot(const struct client *c, const json_t *q, struct batch *of, struct error *e)
{
	const struct line *line = catalogue_by_key(&c->d->core.station.catalogue, json_text(q, "line"));
	if (!line)
		return error_set(e, -ENOENT,
		                 "the catalogue has no such line: see 'bandtally catalogue export'");
	snprintf(of->line, sizeof of->line, "%s", line->key);
	return take_text(q, "lot", of->lot, sizeof of->lot, e);
}

static json_t *answer_with(const char *name, json_t *value, const struct error *e)
{
	if (!value)
		return no(e->text);
	json_t *o = yes();
	json_object_set_new(o, name, value);
	return o;
}

static json_t *do_stock(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct batch of = {0};
	struct core *core = &c->d->core;
	if (*json_text(q, "line") && take_lot(c, q, &of, &e) < 0)
		return no(e.text);
	return answer_with("stock",
	                   stock_list(&core->stock, &core->station, of.line, of.lot, core_today(core)), &e);
}

static json_t *do_recall(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct batch of = {0};
	if (take_lot(c, q, &of, &e) < 0)
		return no(e.text);
	return answer_with("recall", stock_recall_list(&c->d->core, &of, &e), &e);
}

static json_t *do_used(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct batch of = {0};
	int32_t since = 0;
	if (take_lot(c, q, &of, &e) < 0 || take_day(q, "since", &since, &e) < 0)
		return no(e.text);
	return answer_with("used", stock_used(&c->d->core, &of, since, &e), &e);
}

static json_t *do_bench(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t room = core_bench_room(&c->d->core);
	if (take(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return no(e.text);
	return taken_or_not(stock_steps(&c->d->core, room, json_object_get(q, "steps"), &e), &e);
}

static json_t *do_labels_write(struct client *c, const json_t *q)
{
	struct error e = {0};
	(void)q;
	return taken_or_not(labels_list_write(&c->d->core, &e), &e);
}

static json_t *do_labels_take(struct client *c, const json_t *q)
{
	struct error e = {0};
	return taken_or_not(
	    labels_list_take(&c->d->core, json_object_get(q, "list"), json_text(q, "key"), &e), &e);
}

static json_t *do_label(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_LABELLED};
	int32_t count = 0;
	int64_t first = c->d->core.station.last_item_no + 1;
	const struct line *line = catalogue_by_key(&c->d->core.station.catalogue, json_text(q, "line"));
	if (!line)
		return no("the catalogue has no such line: see 'bandtally catalogue export'");
	if (take(q, "count", 1, 500, &count, &e) < 0 || take_day(q, "expiry", &ev.batch.expiry, &e) < 0 ||
	    take_name(q, "lot", ev.batch.lot, sizeof ev.batch.lot, &e) < 0)
		return no(e.text);
	if (count < 1)
		return no("no labels were numbered: 'count' is missing: say how many, 1 to 500");
	if (line->label == LABEL_NEVER)
		return no(
		    "no labels were numbered: the catalogue does not say where the label of this line goes, "
		    "and whether before or after sterilising: fill its columns 'label' and 'label_place', "
		    "and import it");
	if (first + count - 1 > ITEM_NUMBER_MAX)
		return no(
		    "no labels were numbered: this station's item numbers are used up: ask whoever looks "
		    "after the station for another number of it");
	snprintf(ev.batch.line, sizeof ev.batch.line, "%s", line->key);
	ev.batch.first = first;
	ev.batch.last = first + count - 1;
	ev.room = core_bench_room(&c->d->core);
	ev.n = ev.room != 0;
	json_t *medium =
	    *json_text(q, "medium") ? media_find(c->d->core.folder, json_text(q, "medium"), &e) : NULL;
	if (*json_text(q, "medium") && !medium)
		return no(e.text);
	json_t *o = yes_or_no(json_truth(q, "try") ? 0 : core_store(&c->d->core, &ev, 1, &e), &e);
	if (medium)
		json_object_set_new(o, "medium", medium);
	json_object_set_new(o, "first", json_integer(first));
	json_object_set_new(o, "place", name_told(line->label_place, LINE_LABEL_MAX));
	json_object_set_new(o, "before", json_boolean(line->label == LABEL_BEFORE_STERILISING));
	json_object_set_new(o, "name", name_told(line->name, LINE_NAME_MAX));
	json_object_set_new(o, "site", json_string(c->d->core.station.site));
	json_object_set_new(o, "station", json_integer(c->d->core.station.number));
	json_object_set_new(o, "site_name", json_string(c->d->core.station.site_name));
	return o;
}

static json_t *do_settle(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t seq = 0;
	struct event ev = {.kind = EV_CORRECTION};
	const char *what = json_text(q, "what");
	if (take(q, "event", 1, NUMBER_MAX, &seq, &e) < 0)
		return no(e.text);
	if (!unfollowed_has(&c->d->core.station, seq) && !proof_waits(&c->d->core.station.proof, seq))
		return no(
		    "that event is not among those that somebody must deal with: see 'bandtally status'");
	if (name_check("what was done about it", what, SETTLED_MAX, &e) < 0)
		return no(e.text);
	ev.ref = seq;
	snprintf(ev.text, sizeof ev.text, "%s", what);
	return yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

/* Who asks for people's names, or for what a badge did, is on record with the reason. */
static json_t *do_audited(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_AUDITED};
	const char *why = json_text(q, "why");
	if (take(q, "case", 0, NUMBER_MAX, &ev.n, &e) < 0 ||
	    take(q, "person", 0, NUMBER_MAX, &ev.person, &e) < 0)
		return no(e.text);
	if (name_check("the reason", why, EVENT_TEXT_MAX - 1, &e) < 0)
		return no(e.text);
	snprintf(ev.text, sizeof ev.text, "%s", why);
	return yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

static json_t *do_retry(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t slip = 0;
	if (take(q, "slip", 1, NUMBER_MAX, &slip, &e) < 0)
		return no(e.text);
	return yes_or_no(outbox_retry(c->d, slip, &e), &e);
}

/* Who may only look gets what only looks. */
static json_t *do_board(struct client *c, const json_t *q)
{
	struct error e = {0};
	char address[ADDRESS_MAX];
	int32_t room = c->d->core.station.rooms[0].number;
	if (take(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return no(e.text);
	unsigned types = core_is_bench(&c->d->core, room) ? RIGHT_STORES : RIGHT_COUNT;
	if (typing_address(c->d, json_truth(q, "desk") ? ROOM_DESK : room,
	                   c->rights & types ? TICKET_COUNT : TICKET_AUDIT, json_truth(q, "elsewhere"),
	                   address, &e) < 0)
		return no(e.text);
	json_t *o = yes();
	json_object_set_new(o, "address", json_string(address));
	return o;
}

/* --- a copy of the record, in short steps ------------------------------------------------------- */

static void copy_step(void *context)
{
	struct client *c = context;
	struct error e = {0};
	int n = record_copy_step(c->d->core.record, COPY_PAGES, &e);
	if (n == RECORD_COPY_GOES_ON) {
		loop_after(c->d->loop, COPY_EVERY_MS, copy_step, c);
		return;
	}
	c->copying = c->d->copying = 0;
	/* Read by another user than the station's, who got its name from us and nobody else. */
	if (n == 0 && chmod(c->copy_file, 0644) < 0)
		n = error_set(&e, -errno, "cannot hand out the copy: %s: check the data folder",
		              strerror(errno));
	json_t *o = yes_or_no(n, &e);
	c->copy_events = n == 0 ? record_last(c->d->core.record, NULL) : 0;
	json_object_set_new(o, "file", json_string(c->copy_file));
	json_object_set_new(o, "events", json_integer(c->copy_events));
	answer(c, o);
}

static void copies_folder(const struct daemon *d, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s/copies", d->core.folder);
}

/* A file in a folder that can be passed through but not listed, with a name that cannot be guessed: who asks
 * may be a user whose own folders the station cannot write to, and the station writes nowhere else. */
static int copy_name(const struct daemon *d, char out[PATH_MAX], struct error *e)
{
	unsigned char secret[COPY_SECRET_BYTES];
	char folder[PATH_MAX];
	copies_folder(d, folder);
	if ((mkdir(folder, 0711) < 0 && errno != EEXIST) || chmod(folder, 0711) < 0 ||
	    getrandom(secret, sizeof secret, 0) != (ssize_t)sizeof secret)
		return error_set(e, -EIO, "cannot make %.200s: %s: check the data folder", folder,
		                 strerror(errno));
	int n = snprintf(out, PATH_MAX, "%.3900s/", folder);
	for (size_t i = 0; i < sizeof secret; i++)
		n += snprintf(out + n, PATH_MAX - (size_t)n, "%02x", secret[i]);
	return 0;
}

/* What a station left that was killed while somebody read a copy. */
static void copies_clear(const struct daemon *d)
{
	char folder[PATH_MAX];
	copies_folder(d, folder);
	DIR *dir = opendir(folder);
	for (struct dirent *x = dir ? readdir(dir) : NULL; x; x = readdir(dir))
		if (x->d_name[0] != '.')
			unlinkat(dirfd(dir), x->d_name, 0);
	if (dir)
		closedir(dir);
}

/* A copy must not take the space in which the count is stored. */
static int copy_fits(const struct daemon *d, struct error *e)
{
	char record[PATH_MAX];
	struct stat file;
	struct statvfs disk;
	snprintf(record, sizeof record, "%.3900s/" RECORD_FILE, d->core.folder);
	if (stat(record, &file) < 0 || statvfs(d->core.folder, &disk) < 0)
		return error_set(e, -errno, "cannot look how much space there is: %s: check the data folder",
		                 strerror(errno));
	uint64_t space = (uint64_t)disk.f_bavail * disk.f_frsize, size = (uint64_t)file.st_size;
	if (space >= size + COPY_LEAVES)
		return 0;
	return error_set(
	    e, -ENOSPC,
	    "no copy was made: the disk of the data folder has %llu kB free, a copy takes %llu and "
	    "must leave %u for the count: free some space there",
	    (unsigned long long)space / 1024, (unsigned long long)size / 1024, COPY_LEAVES / 1024);
}

static json_t *do_copy(struct client *c, const json_t *q)
{
	struct error e = {0};
	(void)q;
	if (c->d->copying)
		return no("a copy of the record is being made already: wait for it and try again");
	if (c->copy_file[0])
		return no("this connection has its copy already: open another for the next");
	int n = copy_fits(c->d, &e);
	if (n == 0)
		n = copy_name(c->d, c->copy_file, &e);
	if (n == 0)
		n = record_copy_start(c->d->core.record, c->copy_file, &e);
	if (n < 0)
		return no(e.text);
	c->copying = c->d->copying = 1;
	loop_after(c->d->loop, 0, copy_step, c);
	return NULL; /* answered when it is done */
}

/* Who was given a copy says that a backup was made of it and read back from its first event to its last. */
static json_t *do_backed_up(struct client *c, const json_t *q)
{
	struct error e;
	struct event ev = {.kind = EV_BACKED_UP, .ref = c->copy_events};
	(void)q;
	if (!c->copy_events)
		return no(
		    "this connection was given no copy of which there could be a backup: ask for one first");
	return yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

/* --- one client --------------------------------------------------------------------------------- */

static const struct {
	const char *name;
	unsigned rights;
	json_t *(*fn)(struct client *c, const json_t *q);
	unsigned at_bench; /* instead, where the room that is asked about is a stores bench; 0 the same */
} requests[] = {
    {"scan", RIGHT_COUNT, do_scan, RIGHT_STORES},
    {"type", RIGHT_COUNT, do_type, RIGHT_STORES},
    {"sheet", RIGHT_COUNT | RIGHT_AUDIT, do_sheet, RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT},
    {"board", RIGHT_COUNT | RIGHT_AUDIT, do_board, RIGHT_STORES | RIGHT_AUDIT},
    {"status", RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT, do_status, 0},
    {"case", RIGHT_COUNT | RIGHT_AUDIT, do_case, 0},
    {"cases", RIGHT_COUNT | RIGHT_AUDIT, do_cases, 0},
    {"lines", RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT, do_lines, 0},
    {"catalogue", RIGHT_STORES, do_catalogue, 0},
    {"staff", RIGHT_ALL, do_staff, 0},
    {"staff-file", RIGHT_ALL, do_staff_file, 0},
    {"withdraw", RIGHT_ALL, do_withdraw, 0},
    {"list-staff", RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT, do_list_staff, 0},
    {"quarantine", RIGHT_STORES, do_quarantine, 0},
    {"release", RIGHT_STORES, do_quarantine, 0},
    {"stock", RIGHT_STORES | RIGHT_AUDIT, do_stock, 0},
    {"recall", RIGHT_STORES | RIGHT_AUDIT, do_recall, 0},
    {"used", RIGHT_STORES | RIGHT_AUDIT, do_used, 0},
    {"bench", RIGHT_STORES, do_bench, 0},
    {"labels-write", RIGHT_STORES, do_labels_write, 0},
    {"labels-take", RIGHT_STORES, do_labels_take, 0},
    {"label", RIGHT_STORES, do_label, 0},
    {"settle", RIGHT_ALL, do_settle, 0},
    {"retry", RIGHT_COUNT | RIGHT_STORES, do_retry, 0},
    {"copy", RIGHT_AUDIT, do_copy, 0},
    {"backed-up", RIGHT_AUDIT, do_backed_up, 0},
    {"audited", RIGHT_AUDIT, do_audited, 0},
};

static unsigned rights_needed(const struct client *c, size_t i, const json_t *q)
{
	const json_t *room = json_object_get(q, "room");
	int64_t number = room ? json_integer_value(room) : c->d->core.station.rooms[0].number;
	int bench = requests[i].at_bench && number >= 1 && number <= ROOM_MAX &&
	            core_is_bench(&c->d->core, (int32_t)number);
	return bench ? requests[i].at_bench : requests[i].rights;
}

static json_t *handle(struct client *c, const char *line, size_t size)
{
	struct error e = {0};
	if (!line)
		return no(c->rights & RIGHT_STORES ? "the request is longer than 2 MiB: send less at once"
		                                   : "the request is longer than 64 KiB: send less at once");
	_cleanup_(json_drop) json_t *q = json_read(line, size, &e);
	if (!json_is_object(q))
		return no(q ? "the request is not a JSON object: send one object on a line" : e.text);
	for (size_t i = 0; i < sizeof requests / sizeof *requests; i++) {
		if (strcmp(requests[i].name, json_text(q, "do")) != 0)
			continue;
		if (!(c->rights & rights_needed(c, i, q)))
			return no(NOT_ALLOWED);
		return requests[i].fn(c, q);
	}
	return no("the request asks for something unknown: use this version's 'bandtally'");
}

static void on_line(void *context, const char *line, size_t size)
{
	struct client *c = context;
	struct daemon *d = c->d;
	json_t *o = handle(c, line, size);
	if (o)
		answer(c, o);
	board_show(d);
}

static void leave(struct client *c)
{
	stream_free(c->stream);
	if (c->copying) { /* nobody waits for the copy any more */
		loop_cancel(c->d->loop, c);
		record_copy_stop(c->d->core.record);
		c->d->copying = 0;
	}
	if (c->copy_file[0])
		unlink(c->copy_file);
	for (struct client **at = &c->d->clients; *at; at = &(*at)->next)
		if (*at == c) {
			*at = c->next;
			break;
		}
	free(c);
}

static void on_end(void *context)
{
	leave(context);
}

static void on_unread(void *context)
{
	log_line("a program at the socket does not take its answer: it is left");
	leave(context);
}

/* Connections cost descriptors, which drivers and printing need too, and no user may use up another's. Why `uid` gets
 * none now, or NULL. */
static const char *too_many(const struct daemon *d, uid_t uid)
{
	int all = 0, of_user = 0;
	for (const struct client *c = d->clients; c; c = c->next) {
		all++;
		of_user += c->uid == uid;
	}
	if (of_user >= CLIENTS_OF_A_USER)
		return "too many programs of your user talk to the station at once: end those that hang, and "
		       "try again";
	return all < CLIENTS_MAX ? NULL
	                         : "too many programs talk to the station at once: end those that hang, and "
	                           "try again";
}

static void turn_away(int fd, const char *why)
{
	char line[256];
	int n = snprintf(line, sizeof line, "{\"error\":\"%s\",\"ok\":false}\n", why);
	send(fd, line, (size_t)n, MSG_NOSIGNAL | MSG_DONTWAIT);
	close(fd);
}

static int let_in(struct daemon *d, int fd, uid_t uid, unsigned rights)
{
	static const struct stream_calls calls = {on_line, on_end};
	size_t line_max = rights & RIGHT_STORES ? REQUEST_MAX : REQUEST_SMALL_MAX;
	struct client *c = calloc(1, sizeof *c);
	if (!c)
		return -ENOMEM;
	*c = (struct client){.next = d->clients, .d = d, .uid = uid, .rights = rights};
	int n = stream_new(&c->stream, d->loop, fd, line_max, &calls, c);
	if (n < 0) {
		free(c);
		return n;
	}
	stream_guard(c->stream, on_unread);
	d->clients = c;
	return 0;
}

static void on_accept(void *context, int fd)
{
	struct daemon *d = context;
	struct ucred peer = {.uid = (uid_t)-1};
	socklen_t size = sizeof peer;
	unsigned rights =
	    getsockopt(fd, SOL_SOCKET, SO_PEERCRED, &peer, &size) < 0 ? 0 : rights_of(d, fd, &peer);
	const char *why = rights ? too_many(d, peer.uid) : NOT_ALLOWED;
	/* Last: it costs most, and whoever may ask for nothing could have it done again and again. */
	if (!why && peer_is_ours(fd, peer.pid))
		why = "not allowed: the station's own programs may ask it for nothing";
	if (why)
		turn_away(fd, why);
	else if (let_in(d, fd, peer.uid, rights) < 0)
		turn_away(fd, "the station is out of memory: try again");
}

int socket_open(struct daemon *d, struct error *e)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	int n = snprintf(a.sun_path, sizeof a.sun_path, "%s/socket", d->core.folder);
	if (n < 0 || (size_t)n >= sizeof a.sun_path)
		return error_set(e, -ENAMETOOLONG,
		                 "the path of the data folder is too long for a socket (%zu bytes at most): "
		                 "use a shorter one",
		                 sizeof a.sun_path - 8);
	copies_clear(d);
	unlink(a.sun_path); /* the folder's lock says that no other daemon uses it */
	int fd = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0);
	if (fd < 0 || bind(fd, (struct sockaddr *)&a, sizeof a) < 0 || chmod(a.sun_path, 0666) < 0 ||
	    listen(fd, 64) < 0) {
		n = -errno;
		if (fd >= 0)
			close(fd);
		return error_set(e, n, "cannot listen at %s: %s: check the data folder", a.sun_path,
		                 strerror(-n));
	}
	return loop_accept(d->loop, fd, on_accept, d);
}
