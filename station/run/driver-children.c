#include "run/driver-children.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "base/wire.h"
#include "code/own-codes.h"
#include "run/board.h"
#include "run/shown.h"

#define OLD_S 10             /* a scan that is older than this when it comes was stored somewhere */
#define FAULT_EVERY_MS 10000 /* a driver that goes mad fills neither the record nor the board */

static int is_there(const struct driver_child *dc)
{
	const struct finder *finder = dc->daemon->finder;
	return finder && finder->has(dc->daemon, dc);
}

static int start_again(struct driver_child *dc, int learn)
{
	const struct finder *finder = dc->daemon->finder;
	return finder ? finder->restart(dc->daemon, dc, learn) : -ENODEV;
}

static int32_t minute_now(void)
{
	int64_t now = clock_now().wall_ms;
	return clock_minute_of_day(now, clock_utc_min(now));
}

/* Kept as a name with values: what the driver says of it in its own words is for the board and the journal. */
static void record_fault(struct driver_child *dc, const struct say *say)
{
	struct event e = {.kind = EV_SCANNER_FAULT, .room = dc->room};
	said_keep(&e.said, say);
	core_store(&dc->daemon->core, &e, 1, NULL);
}

/* For the board. */
static void set_fault(struct driver_child *dc, enum saying what, const char *text)
{
	snprintf(dc->fault, sizeof dc->fault, "%.199s", text);
	name_mend(dc->fault); /* a device may have been let say it */
	dc->fault_says = what == SAY_SCANNER_OTHER ? SAY_NONE : what;
	dc->fault_minute = minute_now();
	dc->daemon->core.changes++;
}

/* A fault is told on the board at once and kept in the record, at most one in ten seconds of each driver. */
static void tell_fault(struct driver_child *dc, enum saying what, const char *text)
{
	struct daemon *d = dc->daemon;
	int64_t now = clock_now().boot_ms;
	set_fault(dc, what, text);
	if (dc->fault_ms && now - dc->fault_ms < FAULT_EVERY_MS) {
		dc->turned_away++;
		return;
	}
	const char *room = station_room_name(&d->core.station, dc->room);
	if (dc->turned_away)
		log_warn(LOG_SCANNER, "scanner %s of %s: %s (%d more since)", dc->name, room, dc->fault,
		         (int)dc->turned_away);
	else
		log_warn(LOG_SCANNER, "scanner %s of %s: %s", dc->name, room, dc->fault);
	record_fault(dc,
	             SAY(SCANNER_TOLD, .scanner = dc->name, .room = room, .what = what, .time = minute_now(),
	                 .n = dc->turned_away, .then = dc->turned_away ? SAY_SCANNER_MORE_SINCE : SAY_NONE));
	dc->fault_ms = now;
	dc->turned_away = 0;
}

/* In our own words. */
static void tell_own_fault(struct driver_child *dc, enum saying what)
{
	char text[sizeof dc->fault];
	say_part(&(struct say){.saying = what, .time = minute_now()}, text, sizeof text);
	tell_fault(dc, what, text);
}

/* In the room that it works for, or in its own, to which it may be taken back at any time. */
static int counts_for_a_case(const struct driver_child *dc)
{
	struct core *c = &dc->daemon->core;
	int32_t room = station_scanner_room(&c->station, dc->name, dc->home, core_now(c));
	return station_sheet_of_room(&c->station, room) >= 0 ||
	       station_sheet_of_room(&c->station, dc->home) >= 0;
}

/* In the driver's, which has a word for it. That a room is dark in which no case is open is nothing to be kept; the board
 * says it once one is. */
static void tell_drivers_fault(struct driver_child *dc, const struct wire_line *w)
{
	enum saying what = saying_of_drivers_word(w->code);
	if (what == SAY_SCANNER_DARK && !counts_for_a_case(dc))
		set_fault(dc, what, w->text);
	else
		tell_fault(dc, what, w->text);
}

/* What was told of it is over. What is not known of how it sends is not, before it is learned. */
static void fault_over(struct driver_child *dc)
{
	if (strcmp(dc->fault, dc->uncertain) == 0)
		return;
	set_fault(dc, dc->uncertain[0] ? SAY_SCANNER_UNCERTAIN : SAY_NONE, dc->uncertain);
}

/* Gone with its device: once for each device, whether its program or udev says so first. */
static void tell_lost(struct driver_child *dc)
{
	if (dc->lost)
		return;
	dc->lost = 1;
	dc->fault_ms = 0; /* told whatever was told before */
	tell_own_fault(dc, SAY_SCANNER_LOST_AT);
}

/* --- scans, and bursts of them (rule 17) -------------------------------------------------------- */

struct code_read { /* borrowed */
	const char *aim, *data;
	size_t size;
};

/* Another room's card: whoever scans it may stand there, so that room reads the answer as well (rule 18). */
static void tell_cards_room(struct driver_child *dc, const struct code_read *s, const struct reply *reply)
{
	struct own_code own;
	struct core *c = &dc->daemon->core;
	if (own_code_read(s->data, s->size, &own, NULL) == 0 && !own.practice &&
	    strcmp(own.site, c->station.site) == 0 && own.room != dc->room &&
	    station_room(&c->station, own.room))
		core_pass_on(c, own.room, core_now(c), reply);
}

static void enter(struct driver_child *dc, const struct code_read *s)
{
	struct core *c = &dc->daemon->core;
	fault_over(dc);
	if (shown_card(dc, s->data, s->size))
		return;
	const struct reply *reply = core_scan(
	    c, &(struct scan){
	           .scanner = dc->name, .room = dc->home, .aim = s->aim, .data = s->data, .size = s->size});
	tell_cards_room(dc, s, reply);
	dc->room = station_scanner_room(&c->station, dc->name, dc->home, core_now(c));
}

static int is_old(int64_t made, int64_t now)
{
	return now - made > OLD_S * 1000;
}

/* The batch is whole: one scan alone is entered, if it is fresh; several at once were stored in the scanner, and
 * only a person knows where they were made. */
static void settle(struct driver_child *dc)
{
	struct core *c = &dc->daemon->core;
	struct scan scans[STORED_MAX];
	int n = dc->n_batch, lost = dc->too_long;
	loop_cancel(dc->daemon->loop, dc);
	if (n == 1 && !lost && !is_old(dc->batch->made_ms, clock_now().boot_ms)) {
		dc->n_batch = 0;
		enter(dc, &(struct code_read){dc->batch->aim, dc->batch->data, dc->batch->size});
		return;
	}
	for (int i = 0; i < n; i++)
		scans[i] = (struct scan){.aim = dc->batch[i].aim,
		                         .data = dc->batch[i].data,
		                         .size = dc->batch[i].size,
		                         .made_ms = dc->batch[i].made_ms};
	for (int i = 0; i < n || i == 0; i++) {
		scans[i].scanner = dc->name;
		scans[i].room = dc->home;
	}
	dc->n_batch = dc->too_long = 0;
	if (!n && !lost)
		return;
	fault_over(dc);
	core_stored(c, scans, n, lost);
	dc->room = station_scanner_room(&c->station, dc->name, dc->home, core_now(c));
}

static void on_settled(void *context)
{
	struct driver_child *dc = context;
	settle(dc);
	board_show(dc->daemon);
}

static void add_to_batch(struct driver_child *dc, const struct wire_line *w, int64_t made)
{
	if (w->data_size >= sizeof dc->batch[0].data) {
		dc->too_long = 1;
		return;
	}
	if (dc->n_batch == STORED_MAX)
		settle(dc);
	struct late_scan *s = &dc->batch[dc->n_batch++];
	memcpy(s->aim, w->aim, sizeof s->aim);
	memcpy(s->data, w->data, w->data_size);
	s->size = w->data_size;
	s->made_ms = made;
}

/* By age and by the time between two: what comes after a silence, and what lay somewhere, may have been
 * stored. */
static int may_be_stored(const struct driver_child *dc, int64_t made, int64_t now)
{
	const struct policy *p = &dc->daemon->core.station.policy;
	return p->burst_ms && (!dc->last_scan_ms || made - dc->last_scan_ms >= (int64_t)p->gap_s * 1000 ||
	                       is_old(made, now));
}

static int is_of_batch(const struct driver_child *dc, int64_t made)
{
	return (dc->n_batch || dc->too_long) &&
	       made - dc->last_scan_ms < dc->daemon->core.station.policy.burst_ms;
}

/* The first code of this site's scanner-check sheet. */
static int begins_check(const struct driver_child *dc, const struct wire_line *w)
{
	struct own_code own;
	return dc->profile[0] && own_code_read(w->data, w->data_size, &own, NULL) == 0 &&
	       own.kind == OWN_SCANNER_CHECK && own.number == OWN_CHECK_START &&
	       strcmp(own.site, dc->daemon->core.station.site) == 0;
}

static void begin_check(struct driver_child *dc)
{
	if (counts_for_a_case(dc)) {
		core_tell(&dc->daemon->core, dc->room, VERDICT_REFUSED, SAY(R_CHECK_NOT_BEGUN));
		return;
	}
	start_again(dc, 1);
	core_tell(&dc->daemon->core, dc->room, VERDICT_QUESTION, SAY(R_CHECK_BEGUN));
}

static void take_scan(struct driver_child *dc, const struct wire_line *w)
{
	struct daemon *d = dc->daemon;
	int64_t now = clock_now().boot_ms, made = w->ms >= 0 && w->ms < now ? w->ms : now;
	const struct policy *p = &d->core.station.policy;
	if (begins_check(dc, w)) {
		begin_check(dc);
	} else if (may_be_stored(dc, made, now) || is_of_batch(dc, made)) {
		add_to_batch(dc, w, made);
		loop_cancel(d->loop, dc);
		if (loop_after(d->loop, p->burst_ms, on_settled, dc) < 0)
			settle(dc);
	} else {
		settle(dc);
		enter(dc, &(struct code_read){w->aim, w->data, w->data_size});
	}
	dc->last_scan_ms = made > dc->last_scan_ms ? made : dc->last_scan_ms;
	board_show(d);
}

/* --- lines -------------------------------------------------------------------------------------- */

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	struct driver_child *dc = context;
	static struct wire_line w; /* 13 kB; one thread */
	struct error e = {0};
	(void)c;
	if (!line) {
		tell_own_fault(dc, SAY_SCANNER_LINE_TOO_LONG);
		return;
	}
	if (wire_read_line(line, size, &w, &e) < 0) {
		tell_own_fault(dc, SAY_SCANNER_LINE_ODD);
		return;
	}
	switch (w.kind) {
	case WIRE_HELLO:
		snprintf(dc->device, sizeof dc->device, "%.255s", w.device);
		snprintf(dc->uncertain, sizeof dc->uncertain, "%.199s", w.uncertain);
		dc->said_why = 0;
		dc->pictures = w.pictures;
		fault_over(dc);
		if (dc->learning)
			set_fault(dc, SAY_SCANNER_IS_CHECKED, saying_text(SAY_SCANNER_IS_CHECKED));
		dc->daemon->core.changes++;
		return;
	case WIRE_SCAN:
		take_scan(dc, &w);
		return;
	case WIRE_PICTURE:
		shown_picture(dc, &w);
		memset(&w, 0, sizeof w); /* no pixel of it stays */
		return;
	case WIRE_FAULT:
		if (dc->learning && strcmp(w.code, "uncertain") == 0)
			/* what is still open, or all of it where the check failed */
			snprintf(dc->uncertain, sizeof dc->uncertain, "%.199s",
			         w.uncertain[0] ? w.uncertain : w.text);
		dc->said_why = strcmp(w.code, "lost") == 0 || strcmp(w.code, "open") == 0 ||
		               strcmp(w.code, "stalled") == 0;
		if (dc->node[0] && strcmp(w.code, "lost") == 0)
			tell_lost(dc);
		else if (strcmp(w.code, "over") == 0)
			fault_over(dc);
		else
			tell_drivers_fault(dc, &w);
		return;
	}
}

/* The pass over the scanner-check sheet is over. What it wrote takes the old profile's place only when it is
 * whole. */
static void end_check(struct driver_child *dc, int status)
{
	char fresh[304];
	snprintf(fresh, sizeof fresh, "%s.new", dc->profile);
	int good = status == 0 && rename(fresh, dc->profile) == 0, whole = good && !dc->uncertain[0];
	if (!good)
		unlink(fresh);
	core_tell(&dc->daemon->core, dc->room, whole ? VERDICT_ACCEPTED : VERDICT_REFUSED,
	          whole               ? SAY(R_CHECK_DONE)
	          : !dc->uncertain[0] ? SAY(R_CHECK_LOST)
	          : good              ? SAY(R_CHECK_PARTLY, .fault = dc->uncertain)
	                              : SAY(R_CHECK_FAILED, .fault = dc->uncertain));
	start_again(dc, 0);
}

/* A case was opened meanwhile by others: the scanner is needed. */
static void break_off_check(struct driver_child *dc)
{
	char fresh[304];
	if (start_again(dc, 0) < 0)
		return; /* it has gone, which udev tells */
	snprintf(fresh, sizeof fresh, "%s.new", dc->profile);
	unlink(fresh);
	core_tell(&dc->daemon->core, dc->room, VERDICT_REFUSED, SAY(R_CHECK_ENDED));
}

void drivers_look(struct daemon *d)
{
	for (int i = 0; i < d->n_drivers; i++)
		if (d->drivers[i].child && d->drivers[i].learning && counts_for_a_case(&d->drivers[i]))
			break_off_check(&d->drivers[i]);
}

static void on_ended(void *context, struct child *c, int status)
{
	struct driver_child *dc = context;
	(void)c;
	shown_over(dc);
	if (dc->learning)
		end_check(dc, status);
	else if (!dc->lost && !dc->said_why)
		tell_own_fault(dc, SAY_SCANNER_ENDED);
	board_show(dc->daemon);
}

/* A driver of a device that has gone waits until udev says so, and takes no other device that got its node.
 */
static int wanted(void *context, struct child *c)
{
	struct driver_child *dc = context;
	(void)c;
	if (!dc->node[0] || is_there(dc))
		return 1;
	tell_lost(dc);
	board_show(dc->daemon);
	return 0;
}

static const struct child_calls calls = {.line = on_line, .ended = on_ended};

struct driver_child *driver_by_node(struct daemon *d, const char *node)
{
	for (int i = 0; i < d->n_drivers; i++)
		if (d->drivers[i].child && d->drivers[i].node[0] && strcmp(d->drivers[i].node, node) == 0)
			return &d->drivers[i];
	return NULL;
}

/* What has no place stands behind the others: it owns nothing, and so can be moved. */
static int n_placed(const struct daemon *d)
{
	int n = d->n_drivers;
	while (n > 0 && d->drivers[n - 1].unplaced)
		n--;
	return n;
}

static struct driver_child *unplaced_by_node(struct daemon *d, const char *node)
{
	for (int i = n_placed(d); i < d->n_drivers; i++)
		if (strcmp(d->drivers[i].node, node) == 0)
			return &d->drivers[i];
	return NULL;
}

static void forget_unplaced(struct daemon *d, const char *node)
{
	struct driver_child *dc = unplaced_by_node(d, node);
	if (!dc)
		return;
	*dc = d->drivers[--d->n_drivers];
	d->core.changes++;
}

/* Room behind those that have a place; where all is taken a running scanner matters more than a fault. */
static void make_way(struct daemon *d)
{
	int at = n_placed(d);
	if (d->n_drivers == DRIVERS_MAX)
		d->n_drivers--;
	memmove(&d->drivers[at + 1], &d->drivers[at], (size_t)(d->n_drivers - at) * sizeof d->drivers[0]);
	memset(&d->drivers[at], 0, sizeof d->drivers[at]);
	d->n_drivers++;
}

/* The place of this scanner, or where a new one begins; -1 where all are taken. */
static int place_of(const struct daemon *d, const struct driver_place *at, char name[33])
{
	int placed = n_placed(d);
	for (int i = 0; i < placed && at->node[0]; i++)
		if (strcmp(d->drivers[i].node, at->node) == 0 && strcmp(d->drivers[i].base, at->name) == 0) {
			memcpy(name, d->drivers[i].name, 33);
			return i;
		}
	for (int k = 1; k <= DRIVERS_MAX; k++) {
		int i = 0;
		snprintf(name, 33, k == 1 ? "%.32s" : "%.28s-%d", at->name, k);
		while (i < placed && strcmp(d->drivers[i].name, name) != 0)
			i++;
		if (i == DRIVERS_MAX)
			return -1;
		if (i == placed || !d->drivers[i].child)
			return i;
	}
	return -1;
}

int driver_add(struct daemon *d, const struct driver_place *at, char *const *words)
{
	char name[33];
	int i = place_of(d, at, name);
	if (i < 0)
		return -ENOSPC;
	forget_unplaced(d, at->node);
	if (i == n_placed(d))
		make_way(d);
	struct driver_child *dc = &d->drivers[i];
	child_free(dc->child);
	if (dc->daemon)
		settle(dc);
	*dc = (struct driver_child){
	    .daemon = d, .home = at->room, .learning = at->learning, .last_scan_ms = dc->last_scan_ms};
	memcpy(dc->name, name, sizeof dc->name);
	snprintf(dc->base, sizeof dc->base, "%.32s", at->name);
	snprintf(dc->node, sizeof dc->node, "%.255s", at->node);
	snprintf(dc->syspath, sizeof dc->syspath, "%.299s", at->syspath);
	snprintf(dc->profile, sizeof dc->profile, "%.295s", at->profile);
	dc->room = station_scanner_room(&d->core.station, name, at->room, core_now(&d->core));
	d->core.changes++;
	int n = child_start(&dc->child, &d->children, words, WIRE_LINE_MAX, 0, -1, &calls, dc);
	if (n == 0)
		child_ask(dc->child, wanted);
	return n;
}

int driver_unplaced(struct daemon *d, const struct driver_place *at, const char *why)
{
	struct driver_child *dc = unplaced_by_node(d, at->node);
	int told = dc && strcmp(dc->syspath, at->syspath) == 0;
	if (!dc && d->n_drivers == DRIVERS_MAX)
		return -ENOSPC;
	if (!dc)
		dc = &d->drivers[d->n_drivers++];
	*dc = (struct driver_child){.daemon = d, .home = at->room, .room = at->room, .unplaced = 1};
	snprintf(dc->name, sizeof dc->name, "%.32s", at->name);
	snprintf(dc->node, sizeof dc->node, "%.255s", at->node);
	snprintf(dc->syspath, sizeof dc->syspath, "%.299s", at->syspath);
	set_fault(dc, SAY_NONE, why);
	if (told)
		return 0;
	log_warn(LOG_SCANNER, "scanner %s: %s", dc->name, dc->fault);
	record_fault(dc, SAY(SCANNER_WITHOUT_ROOM, .scanner = dc->name));
	return 0;
}

void driver_remove(struct daemon *d, const char *node)
{
	struct driver_child *dc = driver_by_node(d, node);
	forget_unplaced(d, node);
	if (!dc)
		return;
	child_free(dc->child);
	dc->child = NULL;
	shown_over(dc);
	settle(dc);
	tell_lost(dc);
}

int drivers_start(struct daemon *d)
{
	for (int i = 0; i < d->core.settings.n_drivers; i++) {
		const struct driver_setting *s = &d->core.settings.drivers[i];
		char command[sizeof s->command], *words[32], *save = NULL;
		int n = 0;
		memcpy(command, s->command, sizeof command);
		for (char *w = strtok_r(command, " ", &save); w && n < 31; w = strtok_r(NULL, " ", &save))
			words[n++] = w;
		words[n] = NULL;
		int r =
		    n ? driver_add(
		            d,
		            &(struct driver_place){
		                .name = s->name, .node = "", .syspath = "", .profile = "", .room = s->room},
		            words)
		      : 0;
		if (r < 0)
			return r;
	}
	return 0;
}

void drivers_stop(struct daemon *d)
{
	for (int i = 0; i < d->n_drivers; i++) {
		child_free(d->drivers[i].child);
		settle(&d->drivers[i]);
	}
	d->n_drivers = 0;
}
