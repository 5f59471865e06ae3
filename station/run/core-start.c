/* A start: the settings, the record, and what this start adds to it.
 *
 * Wherever in it the record turns out to be damaged, that record is kept aside and the whole start is made again on a new one:
 * what a start does not read now, it or the next one would read later, and end there each time (rule 26).
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/release.h"
#include "record/snapshot.h"
#include "run/aside.h"
#include "run/core-internal.h"
#include "run/day-load.h"
#include "run/prove.h"

/* The boot that the record saw last, by its kernel id. */
struct boots {
	int32_t number;
	int unreadable; /* one start, or more */
	char id[EVENT_TEXT_MAX];
};

static int last_boot(void *context, const struct event *e)
{
	struct boots *b = context;
	b->unreadable |= e->kind == EV_UNREADABLE;
	if (e->kind == EV_STARTED) {
		b->number = e->n;
		memcpy(b->id, e->text, sizeof b->id);
	}
	return 0;
}

static int record_start(struct core *c, struct error *e)
{
	struct boots last = {0};
	int n = record_each_station(c->record, EV_STARTED, last_boot, &last, e);
	if (n < 0)
		return n;
	n = clock_boot_id(c->boot_id);
	if (n < 0)
		return error_set(e, n, "cannot read the kernel's boot id: /proc must be mounted: mount it");
	struct event started = {.kind = EV_STARTED, .n = last.number};
	if (last.unreadable && c->station.last.boot > started.n)
		started.n = c->station.last.boot;
	if (last.unreadable || strcmp(last.id, c->boot_id) != 0)
		started.n++;
	snprintf(started.text, sizeof started.text, "%s", c->boot_id);
	struct instant now = clock_now();
	started.at = (struct moment){.boot = started.n,
	                             .boot_ms = now.boot_ms,
	                             .wall_ms = now.wall_ms,
	                             .utc_min = clock_utc_min(now.wall_ms)};
	struct event all[3] = {started};
	int count = 1;
	n = prove_record(c, &all[count], e);
	if (n < 0)
		return n;
	count += n == PROVE_ANOTHER;
	if (prove_key(c, &all[count]))
		count++;
	all[1].at = all[2].at = started.at;
	n = core_store(c, all, count, e);
	if (n == 0)
		prove_publish(c);
	return n;
}

/* Settings as they are from this start on, where the record has them otherwise. */
static int record_settings(struct core *c, struct error *e)
{
	char zone[ZONE_MAX];
	struct recorded is;
	struct event *events = calloc(RECORDED_CHANGES_MAX, sizeof *events);
	if (!events)
		return error_set(e, -ENOMEM, "out of memory: try again");
	clock_zone_name(zone, sizeof zone);
	recorded_now(&is, &c->station, zone);
	int count = recorded_changes(&c->station.recorded, &is, events);
	struct moment now = core_now(c);
	for (int i = 0; i < count; i++)
		events[i].at = now; /* they are of one moment */
	int n = core_store(c, events, count, e);
	free(events);
	return n;
}

static int load(struct core *c, struct error *e)
{
	_cleanup_(buf_free) struct buf annex = {0};
	c->snapshot_seq = 0;
	if (snapshot_load(c->record, c->seal, c->folder, &c->station, &annex, &c->snapshot_seq) !=
	    SNAPSHOT_TAKEN) {
		int n = record_load(c->record, &c->station, e);
		return n < 0 ? n : stock_read(c, 0, e);
	}
	/* Bytes that were signed and are not understood would be a fault of ours: it is read from its beginning. */
	int64_t after = stock_unpack(&c->stock, annex.data, annex.size) == 0 ? c->snapshot_seq : 0;
	int n = record_load_from(c->record, c->snapshot_seq, &c->station, e);
	return n < 0 ? n : stock_read(c, after, e);
}

/* Everything that reads the record before the first event of this start. */
static int read_record(struct core *c, struct error *e)
{
	int n = record_open(&c->record, c->folder, e); /* makes the folder, and holds it */
	if (n == 0 && aside_wanted(c->folder))
		n = record_check_pages(c->record, PAGES_AND_INDEXES, e);
	if (n == 0)
		n = seal_open(&c->seal, c->folder, e);
	if (n == 0)
		n = load(c, e);
	if (n == 0)
		n = day_load(&c->day, c->record, c->station.last_case_no, e);
	return n;
}

/* Where it fails nothing is held. */
static int begin(struct core *c, const char *folder, const char *head, struct error *e)
{
	memset(c, 0, sizeof *c);
	snprintf(c->folder, sizeof c->folder, "%s", folder);
	c->station.released = RELEASED;
	if (languages_read(&c->languages, languages_folder(), e) < 0)
		log_warn(LOG_BOARD, "%s", e->text); /* the count goes on, in English */
	core_settings_read(c);
	int n = read_record(c, e);
	if (n == 0) {
		core_settings_settle(c);
		aside_find(folder, c->doubt.aside, sizeof c->doubt.aside);
		prove_place(c, head);
		n = record_start(c, e);
	}
	if (n == 0)
		n = record_settings(c, e);
	if (n == 0)
		core_weigh(c);
	else
		core_close(c);
	return n;
}

int core_start(struct core *c, const char *folder, const char *head, struct error *e)
{
	if (strlen(folder) >= sizeof c->folder)
		return error_set(e, -ENAMETOOLONG,
		                 "the path of the data folder is too long: use a shorter one");
	int n = begin(c, folder, head, e);
	if (n == -EUCLEAN) {
		log_warn(LOG_RECORD, "%s", e->text);
		n = aside_put(folder, e);
		if (n == 0)
			n = begin(c, folder, head, e);
	}
	if (n == 0)
		aside_over(folder);
	return n;
}

static void take_settings(struct core *c, const struct core *real)
{
	const struct station *from = &real->station;
	struct station *to = &c->station;
	c->settings = real->settings;
	c->settings.head[0] = 0; /* that place is the real record's */
	c->languages = real->languages;
	memcpy(to->site, from->site, sizeof to->site);
	memcpy(to->site_name, from->site_name, sizeof to->site_name);
	memcpy(to->language, from->language, sizeof to->language);
	memcpy(to->rooms, from->rooms, sizeof to->rooms);
	to->number = from->number;
	to->n_rooms = from->n_rooms;
	to->policy = from->policy;
	to->released = from->released;
	to->practice = 1;
}

int core_start_practice(struct core *c, const char *folder, const struct core *real, struct error *e)
{
	memset(c, 0, sizeof *c);
	snprintf(c->folder, sizeof c->folder, "%s", folder);
	take_settings(c, real);
	int n = read_record(c, e);
	if (n == 0) {
		prove_place(c, NULL);
		n = record_start(c, e);
	}
	if (n == 0)
		n = record_settings(c, e);
	if (n == 0)
		core_weigh(c);
	else
		core_close_practice(c);
	return n;
}

void core_close_practice(struct core *c)
{
	c->languages = (struct languages){0}; /* of the real one */
	core_close(c);
}
