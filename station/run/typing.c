#include "run/typing.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "run/board.h"
#include "run/daemon.h"

#define CODE_MAX 4096

static int64_t now_ms(void)
{
	return clock_now().boot_ms;
}

void typing_tell(struct daemon *d)
{
	board_say(d, "let_in", tickets_told(&d->tickets));
}

static void keep(struct daemon *d)
{
	int n = cookies_write(&d->tickets, d->core.folder, d->core.boot_id, now_ms());
	if (n < 0)
		log_warn_errno(
		    LOG_BOARD, n,
		    "the pages' cookies cannot be kept: typing needs new tickets once the station restarts");
}

void typing_start(struct daemon *d)
{
	cookies_read(&d->tickets, d->core.folder, d->core.boot_id, now_ms());
	d->tickets.written_ms = now_ms();
}

void typing_look(struct daemon *d)
{
	if (tickets_forget(&d->tickets, now_ms()))
		typing_tell(d);
}

/* --- tickets -------------------------------------------------------------------------------------- */

/* A ticket that would let nobody do anything is not given. */
static int is_of_use(const struct daemon *d, int32_t room, enum ticket_group group, int elsewhere,
                     struct error *e)
{
	const struct settings *s = &d->core.settings;
	const char *section = elsewhere ? " elsewhere" : "";
	if (!s->board || (elsewhere && !s->elsewhere.start))
		return error_set(e, -ENOENT,
		                 "no ticket: this board is not started: see [board%s] in station.ini",
		                 section);
	if (!(elsewhere ? d->elsewhere_port : d->board_port))
		return error_set(
		    e, -EAGAIN,
		    "no ticket: the board does not run: see the station's messages, and try again");
	if (room != ROOM_DESK && !station_room(&d->core.station, room))
		return error_set(e, -ENOENT,
		                 "no ticket: room %d is not in station.ini: see 'bandtally status'",
		                 (int)room);
	if (group == TICKET_REPORTS || (!elsewhere && !s->board_open))
		return 0;
	if (room == ROOM_DESK || group != TICKET_COUNT)
		return error_set(
		    e, -EPERM,
		    "no ticket: all who reach this board may see it, and nothing more could be done "
		    "with one: open its address without");
	if (!(elsewhere ? s->elsewhere.typing : s->board_typing))
		return error_set(
		    e, -EPERM,
		    "no ticket: typing is switched off at this board: see typing in [board%s] of "
		    "station.ini",
		    section);
	return 0;
}

int typing_address(struct daemon *d, int32_t room, enum ticket_group group, int elsewhere,
                   char out[ADDRESS_MAX], struct error *e)
{
	char ticket[SECRET_LETTERS + 1];
	int n = is_of_use(d, room, group, elsewhere, e);
	if (n < 0)
		return n;
	n = ticket_give(&d->tickets, room, group, now_ms(), ticket);
	if (n < 0)
		return error_set(e, n, "no ticket: the system gives no random numbers: %s: try again",
		                 strerror(-n));
	snprintf(out, ADDRESS_MAX, "%s://%s:%d/ticket/%s", elsewhere ? "https" : "http",
	         elsewhere ? d->core.settings.elsewhere.hosts[0] : "127.0.0.1",
	         elsewhere ? d->elsewhere_port : d->board_port, ticket);
	secret_wipe(ticket);
	typing_tell(d);
	return 0;
}

void typing_ticket(struct daemon *d, const json_t *ticket)
{
	struct ticket_taken is;
	json_t *entry = json_object();
	json_object_set_new(entry, "id", json_string(json_text(ticket, "id")));
	if (ticket_take(&d->tickets, json_text(ticket, "ticket"), now_ms(), &is) == 0) {
		json_object_set_new(entry, "room", json_integer(is.room));
		if (is.group == TICKET_REPORTS)
			json_object_set_new(entry, "page", json_string("audit"));
		else if (core_is_bench(&d->core, is.room))
			json_object_set_new(entry, "page", json_string("stores"));
		json_object_set_new(entry, "cookie", json_string(is.cookie));
		secret_wipe(is.cookie);
		keep(d);
		typing_tell(d); /* before the page asks with it */
	}
	board_say(d, "entry", entry);
}

void typing_open(struct daemon *d, const json_t *open)
{
	struct secret_hash hash;
	const char *hex = json_string_value(open);
	if (hex && secret_from_hex(&hash, hex) && cookie_renew(&d->tickets, &hash, now_ms()))
		keep(d);
}

/* --- typed codes ---------------------------------------------------------------------------------- */

static const struct reply *enter(struct daemon *d, int32_t room, const char *code)
{
	return core_scan(&d->core, &(struct scan){.scanner = "board",
	                                          .room = room,
	                                          .aim = "",
	                                          .data = code,
	                                          .size = strlen(code),
	                                          .flags = EVENT_KEYED});
}

int typing_allows(const struct daemon *d, const char *cookie, int32_t room)
{
	return core_room_index(&d->core, room) >= 0 && cookie_types(&d->tickets, cookie, room, now_ms());
}

/* Why a code is not looked at, as the board knows it; NULL: it is. */
static const char *refused(struct daemon *d, const json_t *keyed, int32_t room)
{
	if (!typing_allows(d, json_text(keyed, "cookie"), room))
		return "closed";
	return pace_allows(&d->typed[core_room_index(&d->core, room)], now_ms()) ? NULL : "often";
}

void typing_keyed(struct daemon *d, const json_t *keyed)
{
	const char *code = json_text(keyed, "code");
	int64_t given = json_number(keyed, "room", 0);
	int32_t room = given >= 1 && given <= 99 ? (int32_t)given : 0;
	if (!room || !*code || strlen(code) > CODE_MAX) {
		log_warn(LOG_PROGRAM,
		         "the board's program gave a code for room %lld of %zu bytes: it is not entered",
		         (long long)given, strlen(code));
		return;
	}
	json_t *answer = json_object();
	json_object_set_new(answer, "id", json_string(json_text(keyed, "id")));
	const char *why = refused(d, keyed, room);
	if (why) {
		json_object_set_new(answer, "refused", json_string(why));
	} else {
		const struct reply *reply = enter(d, room, code);
		json_object_set_new(answer, "verdict", json_string(verdict_name(reply->verdict)));
		char said[SAID_MAX];
		reply_words_in(reply, core_language(&d->core, room), said);
		json_object_set_new(answer, "said", name_told(said, sizeof said));
	}
	board_say(d, "reply", answer);
	board_show(d);
}
