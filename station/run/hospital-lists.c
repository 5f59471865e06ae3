#include "run/hospital-lists.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "count/catalogue-import.h"
#include "record/elsewhere.h"
#include "words/forward-words.h"

#define DAY_MS 86400000

struct entry {
	const char *origin, *kind;
	int64_t version;
	const json_t *body;
};

static int take_name(const char *what, const json_t *body, const char *key, char *out, size_t size,
                     struct error *e)
{
	const char *text = json_text(body, key);
	if (*text && name_check(what, text, size - 1, e) < 0)
		return -EINVAL;
	snprintf(out, size, "%s", text);
	return 0;
}

static void tell_rooms(struct core *c, const struct say *what)
{
	char said[SAID_MAX];
	say_sentence(what, said, sizeof said);
	log_line("%s", said);
	for (int i = 0; i < c->station.n_rooms; i++)
		core_tell(c, c->station.rooms[i].number, VERDICT_QUESTION, what);
}

/* Of this very line and lot, and not of the whole line. */
static int is_in_quarantine(const struct station *st, const struct thing *t)
{
	for (size_t i = 0; i < st->n_quarantines; i++)
		if (strcmp(st->quarantines[i].line, t->line) == 0 &&
		    strcmp(st->quarantines[i].lot, t->lot) == 0)
			return 1;
	return 0;
}

static int take_recall(struct core *c, const struct entry *x, struct error *e)
{
	int recall = strcmp(x->kind, "recall") == 0;
	struct event ev = {.kind = recall ? EV_QUARANTINED : EV_RELEASED};
	char why[120];
	const struct line *line = catalogue_by_key(&c->station.catalogue, json_text(x->body, "line"));
	if (!line)
		return error_set(
		    e, -EINVAL,
		    "the catalogue of this station has no line %.40s: nothing of it is counted in",
		    json_text(x->body, "line"));
	snprintf(ev.thing.line, sizeof ev.thing.line, "%s", line->key);
	snprintf(ev.thing.name, sizeof ev.thing.name, "%s", line->name);
	if (take_name("its lot", x->body, "lot", ev.thing.lot, sizeof ev.thing.lot, e) < 0 ||
	    take_name("its reason", x->body, "why", why, sizeof why, e) < 0)
		return -EINVAL;
	if (is_in_quarantine(&c->station, &ev.thing) == recall)
		return 0;
	snprintf(ev.text, sizeof ev.text, FORWARD_ORIGIN, why, x->origin, x->version);
	int n = core_store(c, &ev, 1, e);
	struct say told = {.saying = recall ? SAY_R_RECALL : SAY_R_RECALL_OVER,
	                   .item = ev.thing.name,
	                   .lot = ev.thing.lot,
	                   .typed = ev.text};
	if (ev.thing.lot[0])
		told.saying = recall ? SAY_R_RECALL_LOT : SAY_R_RECALL_LOT_OVER;
	if (n == 0)
		tell_rooms(c, &told);
	return n;
}

/* Lines that are the same already are no event, and none is removed. */
static int take_lines(struct core *c, const struct entry *x, struct error *e)
{
	const json_t *csv = json_object_get(x->body, "csv");
	struct catalogue_import im;
	int n = catalogue_import_init(&im, &c->station.catalogue,
	                              json_string_value(csv) ? json_string_value(csv) : "",
	                              json_string_length(csv), 0, e);
	if (n < 0)
		return n == -ENOMEM ? n : -EINVAL;
	if (im.n_events)
		n = core_store(c, im.events, (int)im.n_events, e);
	catalogue_import_deinit(&im);
	return n;
}

static int take_staff(struct core *c, const struct entry *x, struct error *e)
{
	int64_t number = json_number(x->body, "number", 0);
	struct event ev = {.kind = EV_STAFF_SET};
	const struct person *is = staff_find(&c->station.staff, (int32_t)number);
	ev.staff.number = (int32_t)number;
	int kind = staff_kind_from_name(json_text(x->body, "kind"));
	ev.staff.registered = (uint8_t)json_truth(x->body, "registered");
	if (number < 1 || number > BADGE_NUMBER_MAX || kind < 0)
		return error_set(e, -EINVAL, "a badge must have a number from 1 to 999999 and a kind");
	ev.staff.kind = (uint8_t)kind;
	if (name_check("its name", json_text(x->body, "name"), sizeof ev.staff.name - 1, e) < 0)
		return -EINVAL;
	snprintf(ev.staff.name, sizeof ev.staff.name, "%s", json_text(x->body, "name"));
	if (is && !is->withdrawn && is->kind == ev.staff.kind && is->registered == ev.staff.registered &&
	    strcmp(is->name, ev.staff.name) == 0)
		return 0;
	return core_store(c, &ev, 1, e);
}

static int take_withdrawn(struct core *c, const struct entry *x, struct error *e)
{
	int64_t number = json_number(x->body, "number", 0);
	struct event ev = {.kind = EV_STAFF_WITHDRAWN, .person = (int32_t)number};
	const struct person *is =
	    number > 0 && number <= BADGE_NUMBER_MAX ? staff_find(&c->station.staff, ev.person) : NULL;
	return is && !is->withdrawn ? core_store(c, &ev, 1, e) : 0;
}

/* One item in two cases. Told where one of them is a case of this station. */
static int take_twice(struct core *c, const struct entry *x, struct error *e)
{
	char identity[IDENTITY_MAX];
	const json_t *a = json_object_get(x->body, "first"), *b = json_object_get(x->body, "second");
	int64_t sa = json_number(a, "station", -1), sb = json_number(b, "station", -1);
	if (take_name("its identity", x->body, "identity", identity, sizeof identity, e) < 0)
		return -EINVAL;
	if (sa != c->station.number && sb != c->station.number)
		return 0;
	int32_t case_a = (int32_t)json_number(a, "case", 0), case_b = (int32_t)json_number(b, "case", 0);
	tell_rooms(c, SAY(R_ITEM_TWICE, .identity = identity, .case_no = case_a, .station = (int32_t)sa,
	                  .other_case = case_b, .other_station = (int32_t)sb));
	return 0;
}

/* By another station of this site; what this one used stands in its record. */
static int take_used(struct core *c, const struct entry *x, struct error *e)
{
	char identity[IDENTITY_MAX];
	int64_t station = json_number(x->body, "station", -1), case_no = json_number(x->body, "case", 0);
	if (take_name("its identity", x->body, "identity", identity, sizeof identity, e) < 0)
		return -EINVAL;
	if (!identity[0] || station < 0 || station > 99 || case_no < 1 || case_no > INT32_MAX)
		return error_set(e, -EINVAL, "an item that was used needs identity, station and case");
	if (station == c->station.number || !c->elsewhere)
		return 0;
	int n =
	    elsewhere_add(c->elsewhere, identity, (struct elsewhere_use){(int32_t)station, (int32_t)case_no},
	                  (int32_t)(clock_now().wall_ms / DAY_MS));
	return n < 0 ? error_set(e, n, "what was used elsewhere cannot be kept: free some space on the disk")
	             : 0;
}

int hospital_take_entry(struct core *c, const json_t *entry, struct error *e)
{
	static const struct {
		const char *kind;
		int (*take)(struct core *c, const struct entry *x, struct error *e);
	} kinds[] = {{"recall", take_recall}, {"release", take_recall},     {"line", take_lines},
	             {"staff", take_staff},   {"withdraw", take_withdrawn}, {"twice", take_twice},
	             {"used", take_used}};
	char origin[40];
	struct entry x = {.origin = origin,
	                  .kind = json_text(entry, "kind"),
	                  .version = json_number(entry, "version", 0),
	                  .body = json_object_get(entry, "body")};
	if (take_name("its origin", entry, "origin", origin, sizeof origin, e) < 0)
		return -EINVAL;
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(kinds[i].kind, x.kind) == 0)
			return kinds[i].take(c, &x, e);
	return error_set(e, -EINVAL, "entries of the kind %.20s are not known to this version", x.kind);
}
