#include "run/shown.h"

#include <signal.h>
#include <string.h>

#include "base/clock.h"
#include "code/own-codes.h"
#include "run/board.h"
#include "run/practice.h"

#define EVERY_MS 100 /* a driver that sends more often is mad */

static bool is_the_card(const struct driver_child *dc, const char *data, size_t size)
{
	struct own_code own;
	return own_code_read(data, size, &own, NULL) == 0 && own.kind == OWN_CARD && !own.practice &&
	       own.meaning == CARD_SHOW_CAMERA && own.room == dc->room &&
	       strcmp(own.site, dc->daemon->core.station.site) == 0;
}

static bool is_shown(const struct driver_child *dc, int64_t now_ms)
{
	return dc->shown.until_ms > now_ms;
}

/* The camera whose picture is shown in this room, or NULL. */
static struct driver_child *shown_in(struct daemon *d, int32_t room, int64_t now_ms)
{
	for (int i = 0; i < d->n_drivers; i++)
		if (is_shown(&d->drivers[i], now_ms) && d->drivers[i].shown.room == room)
			return &d->drivers[i];
	return NULL;
}

static bool is_camera(const struct driver_child *dc, int32_t room)
{
	return dc->pictures && child_running(dc->child) && dc->room == room;
}

/* The one that read the card first. */
static struct driver_child *camera_of(struct driver_child *dc)
{
	struct daemon *d = dc->daemon;
	if (is_camera(dc, dc->room))
		return dc;
	for (int i = 0; i < d->n_drivers; i++)
		if (is_camera(&d->drivers[i], dc->room))
			return &d->drivers[i];
	return NULL;
}

static void answer(const struct driver_child *dc, enum verdict verdict, const struct say *what)
{
	struct core *c = &dc->daemon->core, *practice = practice_in(c, dc->room);
	core_tell(practice ? practice : c, dc->room, verdict, what);
	c->changes++;
}

static void end(struct driver_child *dc)
{
	json_t *none = json_object();
	json_object_set_new(none, "room", json_integer(dc->shown.room));
	board_say(dc->daemon, "picture", none);
	dc->shown.until_ms = 0;
}

static void begin(struct driver_child *dc, const struct driver_child *read_by, int64_t now_ms)
{
	dc->shown.until_ms = now_ms + WIRE_SHOW_MS;
	dc->shown.asked_ms = now_ms;
	dc->shown.room = read_by->room;
	child_signal(dc->child, SIGUSR1);
	answer(read_by, VERDICT_ACCEPTED, SAY(R_CAMERA_SHOWN, .scanner = dc->name, .n = WIRE_SHOW_MS / 1000));
}

bool shown_card(struct driver_child *dc, const char *data, size_t size)
{
	if (!is_the_card(dc, data, size))
		return false;
	int64_t now_ms = clock_now().boot_ms;
	struct driver_child *now = shown_in(dc->daemon, dc->room, now_ms), *camera = camera_of(dc);
	if (now && now_ms - now->shown.asked_ms < dc->daemon->core.station.policy.repeat_ms)
		return true; /* read twice; its answer stands */
	if (now) {
		child_signal(now->child, SIGUSR2);
		end(now);
		answer(dc, VERDICT_ACCEPTED, SAY(R_CAMERA_NOT_SHOWN));
	} else if (camera) {
		begin(camera, dc, now_ms);
	} else {
		answer(dc, VERDICT_REFUSED,
		       SAY(R_NO_CAMERA, .room = station_room_name(&dc->daemon->core.station, dc->room)));
	}
	return true;
}

void shown_picture(struct driver_child *dc, const struct wire_line *picture)
{
	struct daemon *d = dc->daemon;
	int64_t now_ms = clock_now().boot_ms;
	if (!is_shown(dc, now_ms) || now_ms - dc->shown.last_ms < EVERY_MS || child_unsent(d->board))
		return;
	dc->shown.last_ms = now_ms;
	json_t *value = json_object(), *codes = json_array();
	for (size_t i = 0; i < picture->n_seen; i++) {
		const struct wire_seen *s = &picture->seen[i];
		json_array_append_new(
		    codes, json_pack("[i,i,i,i,b]", s->left, s->top, s->right, s->bottom, s->told));
	}
	json_object_set_new(value, "room", json_integer(dc->shown.room));
	json_object_set_new(value, "jpeg", json_stringn(picture->data, picture->data_size));
	json_object_set_new(value, "codes", codes);
	board_say(d, "picture", value);
}

void shown_over(struct driver_child *dc)
{
	if (is_shown(dc, clock_now().boot_ms))
		end(dc);
	dc->pictures = 0;
}
