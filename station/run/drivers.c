#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/wire.h"
#include "code/own-codes.h"
#include "run/daemon.h"

#define FAULT_EVERY_MS 10000 /* a driver that goes mad fills neither the record nor the board */

/* A fault is told on the board at once and kept in the record, at most one in ten seconds of each driver. */
static void tell_fault(struct driver_child *dc, const char *text)
{
	struct daemon *d = dc->daemon;
	int64_t now = clock_now().boot_ms;
	snprintf(dc->fault, sizeof dc->fault, "%.199s", text);
	d->core.changes++;
	if (dc->fault_ms && now - dc->fault_ms < FAULT_EVERY_MS) {
		dc->turned_away++;
		return;
	}
	struct event e = {.kind = EV_SCANNER_FAULT, .room = dc->room};
	snprintf(e.text, sizeof e.text, "scanner %s of %s: %.120s", dc->name,
	         station_room_name(&d->core.station, dc->room), text);
	if (dc->turned_away) {
		size_t used = strlen(e.text);
		snprintf(e.text + used, sizeof e.text - used, " (%d more since)", (int)dc->turned_away);
	}
	dc->fault_ms = now;
	dc->turned_away = 0;
	log_line("%s", e.text);
	core_store(&d->core, &e, 1, NULL);
}

/* --- scans, and bursts of them (rule 17) ------------------------------------------------------------------
 */

static void enter(struct driver_child *dc, const struct held_scan *s, uint32_t flags)
{
	dc->fault[0] = 0;
	core_scan(&dc->daemon->core, &(struct scan){.scanner = dc->name,
	                                            .room = dc->room,
	                                            .aim = s->aim,
	                                            .data = s->data,
	                                            .size = s->size,
	                                            .flags = flags});
}

/* Some milliseconds after the first scan that followed a silence: one alone is entered; several at once were
 * stored in the scanner, and only a person knows when and where they were made. */
static void on_settled(void *context)
{
	struct driver_child *dc = context;
	char text[SAID_MAX];
	if (dc->n_held == 1 && !dc->asked) {
		enter(dc, &dc->held[0], 0);
		dc->n_held = 0;
	} else if (dc->n_held > 1 && !dc->asked) {
		dc->asked = 1;
		snprintf(text, sizeof text,
		         "%d scans arrived at once after a silence. Were they made in this room, for this "
		         "case? YES enters them as late, NO throws them away.",
		         dc->n_held);
		core_tell(&dc->daemon->core, dc->room, VERDICT_QUESTION, text);
		tell_fault(dc, text);
	}
	board_show(dc->daemon);
}

static void hold(struct driver_child *dc, const struct wire_line *w)
{
	if (dc->n_held == HELD_MAX || w->data_size >= sizeof dc->held[0].data) {
		tell_fault(dc,
		           "stored scans were lost: too many or too long: enter them from the paper sheet");
		return;
	}
	struct held_scan *s = &dc->held[dc->n_held++];
	memcpy(s->aim, w->aim, sizeof s->aim);
	memcpy(s->data, w->data, w->data_size);
	s->size = w->data_size;
}

/* YES or NO of this room to the held scans. 1 where the scan was that answer. */
static int answer_burst(struct driver_child *dc, const struct wire_line *w)
{
	struct own_code own;
	struct core *c = &dc->daemon->core;
	if (own_code_read(w->data, w->data_size, &own, NULL) < 0 || own.kind != OWN_CARD ||
	    strcmp(own.site, c->station.site) != 0 || (own.meaning != CARD_YES && own.meaning != CARD_NO))
		return 0;
	int n = dc->n_held;
	dc->n_held = dc->asked = 0;
	dc->fault[0] = 0;
	for (int i = 0; own.meaning == CARD_YES && i < n; i++)
		enter(dc, &dc->held[i], EVENT_LATE);
	if (own.meaning == CARD_NO) {
		struct event e = {.kind = EV_REFUSED, .room = dc->room};
		snprintf(e.text, sizeof e.text,
		         "%d stored scans of scanner %s were thrown away: not of this room or case", n,
		         dc->name);
		core_store(c, &e, 1, NULL);
		core_tell(c, dc->room, VERDICT_ACCEPTED,
		          "The stored scans were thrown away. The record says so.");
	}
	return 1;
}

static int after_silence(const struct driver_child *dc, int64_t now)
{
	const struct policy *p = &dc->daemon->core.station.policy;
	return p->burst_ms && (!dc->last_scan_ms || now - dc->last_scan_ms >= (int64_t)p->gap_s * 1000);
}

static void take_scan(struct driver_child *dc, const struct wire_line *w)
{
	struct daemon *d = dc->daemon;
	int64_t now = clock_now().boot_ms;
	const struct policy *p = &d->core.station.policy;
	struct own_code own;
	if (dc->profile[0] && own_code_read(w->data, w->data_size, &own, NULL) == 0 &&
	    own.kind == OWN_SCANNER_CHECK) {
		hotplug_restart(d, dc, 1);
		core_tell(&d->core, dc->room, VERDICT_QUESTION,
		          "Scanner check: scan the sheet once from the first code to the last, the first one "
		          "again too.");
	} else if (dc->asked && answer_burst(dc, w)) {
		/* entered or thrown away */
	} else if (after_silence(dc, now)) {
		hold(dc, w);
		loop_after(d->loop, p->burst_ms, on_settled, dc);
	} else if (dc->n_held && now - dc->last_scan_ms < p->burst_ms) {
		hold(dc, w);
	} else {
		struct core *c = &d->core;
		dc->fault[0] = dc->asked ? dc->fault[0] : 0;
		core_scan(c, &(struct scan){.scanner = dc->name,
		                            .room = dc->room,
		                            .aim = w->aim,
		                            .data = w->data,
		                            .size = w->data_size});
	}
	dc->last_scan_ms = now;
	board_show(d);
}

/* --- lines ------------------------------------------------------------------------------------------------
 */

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	struct driver_child *dc = context;
	static struct wire_line w; /* 13 kB; one thread */
	struct error e;
	(void)c;
	if (!line) {
		tell_fault(dc, "sent a line that is too long: it was thrown away");
		return;
	}
	if (wire_read_line(line, size, &w, &e) < 0) {
		tell_fault(dc, "sent a line that is not of our format: it was thrown away");
		return;
	}
	switch (w.kind) {
	case WIRE_HELLO:
		snprintf(dc->device, sizeof dc->device, "%.255s", w.device);
		snprintf(dc->fault, sizeof dc->fault, "%.199s", w.uncertain);
		dc->daemon->core.changes++;
		return;
	case WIRE_SCAN:
		take_scan(dc, &w);
		return;
	case WIRE_FAULT:
		tell_fault(dc, w.text);
		return;
	}
}

static void on_ended(void *context, struct child *c, int status)
{
	struct driver_child *dc = context;
	(void)c;
	if (dc->learning) {
		core_tell(&dc->daemon->core, dc->room, status == 0 ? VERDICT_ACCEPTED : VERDICT_REFUSED,
		          status == 0 ? "Scanner check done: this station now knows how this scanner sends."
		                      : "Scanner check not complete: scan its first code to begin again.");
		hotplug_restart(dc->daemon, dc, 0);
		return;
	}
	if (!dc->fault[0])
		tell_fault(
		    dc,
		    "lost: its program ended and is started again; use the spare scanner or type the code");
}

static const struct child_calls calls = {.line = on_line, .ended = on_ended};

struct driver_child *driver_by_node(struct daemon *d, const char *node)
{
	for (int i = 0; i < d->n_drivers; i++)
		if (d->drivers[i].child && d->drivers[i].node[0] && strcmp(d->drivers[i].node, node) == 0)
			return &d->drivers[i];
	return NULL;
}

int driver_add(struct daemon *d, const char *name, const char *node, int32_t room, char *const *words,
               const char *profile)
{
	int i = 0;
	while (i < d->n_drivers && strcmp(d->drivers[i].name, name) != 0)
		i++;
	if (i == DRIVERS_MAX)
		return -ENOSPC;
	struct driver_child *dc = &d->drivers[i];
	child_free(dc->child);
	loop_cancel(d->loop, dc);
	*dc = (struct driver_child){.daemon = d, .room = room, .last_scan_ms = dc->last_scan_ms};
	snprintf(dc->name, sizeof dc->name, "%.32s", name);
	snprintf(dc->node, sizeof dc->node, "%.255s", node);
	snprintf(dc->profile, sizeof dc->profile, "%.299s", profile);
	if (i == d->n_drivers)
		d->n_drivers++;
	d->core.changes++;
	return child_start(&dc->child, d->loop, words, WIRE_LINE_MAX, 0, &calls, dc);
}

void driver_remove(struct daemon *d, const char *node)
{
	struct driver_child *dc = driver_by_node(d, node);
	if (!dc)
		return;
	child_free(dc->child);
	dc->child = NULL;
	dc->n_held = dc->asked = 0;
	dc->fault_ms = 0; /* this one is told whatever was told before */
	tell_fault(dc, "unplugged: plug it in, use the spare scanner or type the code");
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
		int r = n ? driver_add(d, s->name, "", s->room, words, "") : 0;
		if (r < 0)
			return r;
	}
	return 0;
}

void drivers_stop(struct daemon *d)
{
	for (int i = 0; i < d->n_drivers; i++) {
		child_free(d->drivers[i].child);
		loop_cancel(d->loop, &d->drivers[i]);
	}
	d->n_drivers = 0;
}
