/* Feeding the board: a whole view of a room at each change, the station's status, and a heartbeat. It is
 * given views and gives back typed codes; it knows nothing else. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "run/daemon.h"
#include "run/view.h"

#define BOARD_LINE_MAX 8192

static int send_object(struct daemon *d, const char *key, json_t *value)
{
	_cleanup_(json_drop) json_t *o = json_object();
	_cleanup_(buf_free) struct buf line = {0};
	json_object_set_new(o, "v", json_integer(1));
	json_object_set_new(o, "seq", json_integer(++d->board_seq));
	json_object_set_new(o, key, value);
	int n = json_write_canonical(o, &line);
	if (n == 0)
		n = buf_add_text(&line, "\n");
	return n < 0 ? n : child_send(d->board, line.data, line.size);
}

static void put_faults(const struct daemon *d, json_t *view, int32_t room)
{
	json_t *list = json_array();
	for (int i = 0; i < d->n_drivers; i++) {
		const struct driver_child *dc = &d->drivers[i];
		char text[300];
		if (!dc->fault[0] || (room && dc->room != room))
			continue;
		snprintf(text, sizeof text, "Scanner %s of %s: %s", dc->name,
		         station_room_name(&d->core.station, dc->room), dc->fault);
		json_array_append_new(list, json_string(text));
	}
	json_object_set_new(view, "faults", list);
}

void board_show(struct daemon *d)
{
	if (!d->board || d->shown == d->core.changes)
		return;
	for (int i = 0; i < d->core.station.n_rooms; i++) {
		json_t *view = view_room(&d->core, d->core.station.rooms[i].number);
		put_faults(d, view, d->core.station.rooms[i].number);
		send_object(d, "view", view);
	}
	json_t *status = view_status(&d->core);
	put_faults(d, status, 0);
	send_object(d, "status", status);
	d->shown = d->core.changes;
}

void board_alive(struct daemon *d)
{
	if (d->board)
		send_object(d, "alive", json_true());
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	struct daemon *d = context;
	_cleanup_(json_drop) json_t *o = line ? json_read(line, size, NULL) : NULL;
	const json_t *keyed = json_object_get(o, "keyed"), *listening = json_object_get(o, "listening");
	const char *code = json_text(keyed, "code");
	(void)c;
	if (listening)
		log_line("the board is at http://127.0.0.1:%d/", (int)json_number(listening, "port", 0));
	if (!keyed || !*code)
		return;
	int32_t room = (int32_t)json_number(keyed, "room", 0);
	const struct reply *reply = core_scan(&d->core, &(struct scan){.scanner = "board",
	                                                               .room = room,
	                                                               .aim = "",
	                                                               .data = code,
	                                                               .size = strlen(code),
	                                                               .flags = EVENT_KEYED});
	json_t *answer = json_object();
	json_object_set_new(answer, "id", json_string(json_text(keyed, "id")));
	json_object_set_new(answer, "room", json_integer(room));
	json_object_set_new(answer, "verdict", json_string(verdict_name(reply->verdict)));
	json_object_set_new(answer, "said", json_string(reply->said));
	json_object_set_new(answer, "next", json_string(reply->next));
	send_object(d, "reply", answer);
	board_show(d);
}

static void on_started(void *context, struct child *c)
{
	struct daemon *d = context;
	(void)c;
	d->shown = 0;
	d->core.changes++;
	board_show(d);
}

int board_start(struct daemon *d)
{
	static const struct child_calls calls = {on_line, on_started, NULL};
	char port[12];
	char *const argv[] = {"bandtally-board", "--port", port, NULL};
	if (!d->core.settings.board)
		return 0;
	snprintf(port, sizeof port, "%d", d->core.settings.board_port);
	return child_start(&d->board, d->loop, argv, BOARD_LINE_MAX, 1, &calls, d);
}

void board_stop(struct daemon *d)
{
	child_free(d->board);
	d->board = NULL;
}
