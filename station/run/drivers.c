#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/wire.h"
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

static void take_scan(struct driver_child *dc, const struct wire_line *w)
{
	dc->fault[0] = 0;
	core_scan(&dc->daemon->core, &(struct scan){.scanner = dc->name, .room = dc->room, .aim = w->aim,
						     .data = w->data, .size = w->data_size});
	board_show(dc->daemon);
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	struct driver_child *dc = context;
	static struct wire_line w; /* 9 kB; one thread */
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
		dc->fault[0] = 0;
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
	(void)status;
	if (!dc->fault[0])
		tell_fault(dc, "lost: its program ended and is started again; use the spare scanner or type the code");
}

int drivers_start(struct daemon *d)
{
	static const struct child_calls calls = {.line = on_line, .ended = on_ended};
	for (int i = 0; i < d->core.settings.n_drivers; i++) {
		const struct driver_setting *s = &d->core.settings.drivers[i];
		struct driver_child *dc = &d->drivers[d->n_drivers];
		char command[sizeof s->command], *words[32], *save = NULL;
		int n = 0;
		memcpy(command, s->command, sizeof command);
		for (char *w = strtok_r(command, " ", &save); w && n < 31; w = strtok_r(NULL, " ", &save))
			words[n++] = w;
		words[n] = NULL;
		if (!n)
			continue;
		*dc = (struct driver_child){.daemon = d, .room = s->room};
		memcpy(dc->name, s->name, sizeof dc->name);
		d->n_drivers++;
		int r = child_start(&dc->child, d->loop, words, WIRE_LINE_MAX, 0, &calls, dc);
		if (r < 0)
			return r;
	}
	return 0;
}

void drivers_stop(struct daemon *d)
{
	for (int i = 0; i < d->n_drivers; i++)
		child_free(d->drivers[i].child);
	d->n_drivers = 0;
}
