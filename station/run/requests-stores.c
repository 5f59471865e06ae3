#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"
#include "run/labels-list.h"
#include "run/media.h"
#include "run/request.h"
#include "run/stock-lists.h"
#include "run/stock-steps.h"
#include "stock/bench-view.h"

/* Two people release, who are known by their badges: stores rule 5. */
static int take_two(const struct client *c, const json_t *q, struct event *ev, struct error *e)
{
	const struct staff *staff = &c->d->core.station.staff;
	if (request_number(q, "by", 1, BADGE_NUMBER_MAX, &ev->person, e) < 0 ||
	    request_number(q, "and", 1, BADGE_NUMBER_MAX, &ev->other, e) < 0)
		return -EINVAL;
	const struct person *by = staff_find(staff, ev->person), *and = staff_find(staff, ev->other);
	if (!ev->person || !ev->other || ev->person == ev->other)
		return error_set(e, -EINVAL, "not released: two people release: give the badges of both");
	if (!by || by->withdrawn || !and || and->withdrawn)
		return error_set(e, -EINVAL,
		                 "not released: one of the badges is not in use: see 'bandtally staff list'");
	return 0;
}

/* NULL with `e` where the catalogue has none of that key. */
static const struct line *line_asked(const struct client *c, const json_t *q, struct error *e)
{
	char key[LINE_KEY_MAX];
	if (request_name(q, "line", key, sizeof key, e) < 0)
		return NULL;
	const struct line *line = catalogue_by_key(&c->d->core.station.catalogue, key);
	if (!line)
		error_set(e, -ENOENT, "line '%s' is not in the catalogue: see 'bandtally catalogue export'",
		          key);
	return line;
}

/* The same of packs: they may have outlived their line. -ENOENT with `e` where stores know none of that key. */
static int key_asked(const struct client *c, const json_t *q, char key[LINE_KEY_MAX], struct error *e)
{
	int n = request_name(q, "line", key, LINE_KEY_MAX, e);
	if (n < 0 || stock_knows(&c->d->core.stock, &c->d->core.station, key))
		return n < 0 ? n : 0;
	return error_set(e, -ENOENT,
	                 "line '%s' is not in the catalogue, and stores have nothing of it: see 'bandtally "
	                 "catalogue export'",
	                 key);
}

/* What is released and was not held, or is held all the same, would be said to be fit for use. */
static int is_to_release(const struct station *st, const struct thing *th, struct error *e)
{
	char lot[LOT_MAX] = "", given[LOT_MAX];
	if (station_is_held(st, th->line, th->lot))
		return 0;
	for (size_t i = 0; i < st->n_quarantines; i++)
		if (strcmp(st->quarantines[i].line, th->line) == 0)
			snprintf(lot, sizeof lot, "%s", st->quarantines[i].lot);
	snprintf(given, sizeof given, "%s", th->lot);
	name_mend(lot);
	name_mend(given);
	if (th->lot[0] && station_is_held(st, th->line, ""))
		return error_set(
		    e, -ENOENT,
		    "not released: %s as a whole is in quarantine, and not its lot %s: leave out --lot",
		    th->line, given);
	if (lot[0])
		return error_set(e, -ENOENT, "not released: of %s the lot %s is in quarantine: give --lot %s",
		                 th->line, lot, lot);
	return error_set(e, -ENOENT,
	                 "not released: %s%s%s is not in quarantine: look at the catalogue's key and the lot",
	                 th->line, given[0] ? ", lot " : "", given);
}

json_t *request_quarantine(struct client *c, const json_t *q)
{
	struct error e = {0};
	int release = strcmp(json_text(q, "do"), "release") == 0;
	struct event ev = {.kind = release ? EV_RELEASED : EV_QUARANTINED};
	if (key_asked(c, q, ev.thing.line, &e) < 0)
		return answer_no(e.text);
	const struct line *line = catalogue_by_key(&c->d->core.station.catalogue, ev.thing.line);
	snprintf(ev.thing.name, sizeof ev.thing.name, "%s", line ? line->name : ev.thing.line);
	/* What was let in before must find its way out. */
	if ((release ? request_text : request_name)(q, "lot", ev.thing.lot, sizeof ev.thing.lot, &e) < 0 ||
	    request_name(q, "why", ev.text, sizeof ev.text, &e) < 0)
		return answer_no(e.text);
	if (release && take_two(c, q, &ev, &e) < 0)
		return answer_no(e.text);
	if (release && is_to_release(&c->d->core.station, &ev.thing, &e) < 0)
		return answer_no(e.text);
	if (!release && !ev.text[0])
		return answer_no(
		    "not put in quarantine: no reason is given: say why, the people at the table will "
		    "read it");
	if (core_store(&c->d->core, &ev, 1, &e) < 0)
		return answer_no(e.text);
	json_t *o = answer_yes();
	const char *still = station_quarantined(&c->d->core.station, ev.thing.line, ev.thing.lot);
	if (release && still)
		json_object_set_new(o, "still", json_string(still));
	return o;
}

static int take_lot(const struct client *c, const json_t *q, struct batch *of, struct error *e)
{
	if (key_asked(c, q, of->line, e) < 0)
		return e->code;
	return request_text(q, "lot", of->lot, sizeof of->lot, e);
}

static json_t *answer_with(const char *name, json_t *value, const struct error *e)
{
	if (!value)
		return answer_no(e->text);
	json_t *o = answer_yes();
	json_object_set_new(o, name, value);
	return o;
}

json_t *request_stock(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct batch of = {0};
	struct core *core = &c->d->core;
	if (json_object_get(q, "text") || json_object_get(q, "only"))
		return answer_with_ok(stock_seek(&core->stock, &core->station, json_text(q, "text"),
		                                 json_text(q, "only"), core_today(core)),
		                      &e);
	if (*json_text(q, "line") ? take_lot(c, q, &of, &e) < 0
	                          : request_text(q, "lot", of.lot, sizeof of.lot, &e) < 0)
		return answer_no(e.text);
	return answer_with("stock",
	                   stock_list(&core->stock, &core->station, of.line, of.lot, core_today(core)), &e);
}

json_t *request_recall(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct batch of = {0};
	if (take_lot(c, q, &of, &e) < 0)
		return answer_no(e.text);
	return answer_with("recall", stock_recall_list(&c->d->core, &of, &e), &e);
}

json_t *request_used(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct batch of = {0};
	int32_t since = 0;
	if (take_lot(c, q, &of, &e) < 0 || request_day(q, "since", &since, &e) < 0)
		return answer_no(e.text);
	return answer_with("used", stock_used(&c->d->core, &of, since, &e), &e);
}

json_t *request_shortfalls(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t since = 0;
	if (request_day(q, "since", &since, &e) < 0)
		return answer_no(e.text);
	return answer_with_ok(stock_found(&c->d->core, since, &e), &e);
}

json_t *request_bench(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t room = core_bench_room(&c->d->core);
	if (request_number(q, "room", 1, ROOM_MAX, &room, &e) < 0)
		return answer_no(e.text);
	return answer_with_ok(stock_steps(&c->d->core, room, json_object_get(q, "steps"), &e), &e);
}

json_t *request_labels_write(struct client *c, const json_t *q)
{
	struct error e = {0};
	(void)q;
	return answer_with_ok(labels_list_write(&c->d->core, &e), &e);
}

json_t *request_labels_take(struct client *c, const json_t *q)
{
	struct error e = {0};
	return answer_with_ok(
	    labels_list_take(&c->d->core, json_object_get(q, "list"), json_text(q, "key"), &e), &e);
}

json_t *request_label(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_LABELLED};
	int32_t count = 0;
	int64_t first = c->d->core.station.last_item_no + 1;
	const struct line *line = line_asked(c, q, &e);
	if (!line)
		return answer_no(e.text);
	if (request_number(q, "count", 1, 500, &count, &e) < 0 ||
	    request_day(q, "expiry", &ev.batch.expiry, &e) < 0 ||
	    request_name(q, "lot", ev.batch.lot, sizeof ev.batch.lot, &e) < 0)
		return answer_no(e.text);
	if (count < 1)
		return answer_no("no labels were numbered: 'count' is missing: say how many, 1 to 500");
	if (line->label == LABEL_NEVER)
		return answer_no(
		    "no labels were numbered: the catalogue does not say where the label of this line goes, "
		    "and whether before or after sterilising: fill its columns 'label' and 'label_place', "
		    "and import it");
	if (first + count - 1 > ITEM_NUMBER_MAX)
		return answer_no(
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
		return answer_no(e.text);
	c->d->numbers_only = 1;
	json_t *o = answer_yes_or_no(json_truth(q, "try") ? 0 : core_store(&c->d->core, &ev, 1, &e), &e);
	c->d->numbers_only = 0;
	if (medium)
		json_object_set_new(o, "medium", medium);
	json_object_set_new(o, "first", json_integer(first));
	json_object_set_new(o, "place", name_told(line->label_place, LINE_LABEL_MAX));
	json_object_set_new(o, "before", json_boolean(line->label == LABEL_BEFORE_STERILISING));
	json_object_set_new(o, "name", name_told(line->name, LINE_NAME_MAX));
	json_object_set_new(o, "site", json_string(c->d->core.station.site));
	json_object_set_new(o, "station", json_integer(c->d->core.station.number));
	json_object_set_new(o, "site_name", json_string(c->d->core.station.site_name));
	json_object_set_new(o, "language", json_string(station_language(&c->d->core.station, ev.room)));
	return o;
}
