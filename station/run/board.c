/* Feeding the board: a whole view of a room at each change, the station's status, and a heartbeat. It is
 * given views and gives back typed codes; it knows nothing else. */
#include "run/board.h"

#include "base/name.h"
#include "base/pem.h"
#include "count/unanswered.h"
#include "run/teller.h"

/* `value` goes as it is; send_object() is for what people read. */
static int send_line(struct daemon *d, const char *key, json_t *value)
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

static int send_object(struct daemon *d, const char *key, json_t *value)
{
	name_tell_all(value);
	return send_line(d, key, value);
}

static void put_fault(json_t *list, const struct language *language, const struct say *what)
{
	char text[400];
	say_sentence_in(language, what, text, sizeof text);
	json_array_append_new(list, name_told(text, sizeof text));
}

/* In English in the driver's own words, which say more; in other languages in ours where there are any for it. */
static void put_driver(const struct driver_child *dc, const struct room *of, const struct language *language,
                       json_t *list)
{
	const char *room = of ? of->name : "";
	if (language && dc->unplaced)
		put_fault(list, language, SAY(SCANNER_WITHOUT_ROOM, .scanner = dc->name));
	else if (language && of && dc->fault_says)
		put_fault(list, language,
		          SAY(SCANNER_TOLD, .scanner = dc->name, .room = room, .what = dc->fault_says,
		              .time = dc->fault_minute));
	else if (of)
		put_fault(list, language,
		          SAY(FAULT_SCANNER, .scanner = dc->name, .room = room, .fault = dc->fault));
	else
		put_fault(list, language,
		          SAY(FAULT_SCANNER_NO_ROOM, .scanner = dc->name, .fault = dc->fault));
}

void board_slip_faults(const struct daemon *d, int32_t room, const struct language *language, json_t *list)
{
	for (int i = 0; i < UNSEEN_MAX; i++) {
		const struct outbox_entry *x = &d->outbox[i];
		if (x->slip && x->why && (!room || x->room == room))
			put_fault(list, language, SAY(FAULT_PRINTING, .slip = x->slip, .why = x->why));
	}
}

/* Of labels that are closed or replaced nothing is wrong any more, unless they still may come. */
void board_label_faults(const struct daemon *d, int32_t room, const struct language *language, json_t *list)
{
	for (int i = 0; i < PRINTINGS_MAX; i++) {
		const struct label_job *j = &d->labels[i];
		const struct printing *p = j->first ? stock_printing_with(&d->core.stock, j->first) : NULL;
		if (j->why && (!room || j->room == room) && (j->unwanted || (p && printing_open(p))))
			put_fault(list, language,
			          SAY(FAULT_LABELS, .item_number = (int32_t)j->first,
			              .last_number = (int32_t)j->last, .why = j->why));
	}
}

/* A camera may stand in the dark then. */
static bool no_case(const struct daemon *d, int32_t room)
{
	return station_sheet_of_room(&d->core.station, room) < 0;
}

static void put_faults(const struct daemon *d, json_t *view, int32_t room, const struct language *language)
{
	json_t *list = json_array();
	teller_faults(&d->core, language, list);
	for (int i = 0; i < d->n_drivers; i++) {
		const struct driver_child *dc = &d->drivers[i];
		const struct room *of = station_room(&d->core.station, dc->room);
		if (dc->fault[0] && !(dc->fault_says == SAY_SCANNER_DARK && no_case(d, dc->room)) &&
		    (!room || !of || of->number == room))
			put_driver(dc, of, language, list);
	}
	board_slip_faults(d, room, language, list);
	board_label_faults(d, room, language, list);
	json_object_set_new(view, "faults", list);
}

/* What a page could see: the changes, whether it is within the quiet hours, and the minutes of reminders that nobody
 * answers. */
static uint64_t to_show(const struct daemon *d)
{
	static struct unanswered list[UNANSWERED_MAX];
	struct moment now = core_now(&d->core);
	uint64_t minute =
	    station_unanswered(&d->core.station, now, list) ? (uint64_t)now.boot_ms / 60000 + 1 : 0;
	return (minute << 40) + d->core.changes * 2 + (uint64_t)core_quiet(&d->core);
}

void board_show(struct daemon *d)
{
	uint64_t now = to_show(d);
	if (!d->board || d->shown == now)
		return;
	int failed = 0;
	for (int i = 0; i < d->core.station.n_rooms; i++) {
		int32_t room = d->core.station.rooms[i].number;
		const struct language *language = core_language(&d->core, room);
		json_t *view = teller_room_in(&d->core, room, language);
		put_faults(d, view, room, language);
		failed |= send_object(d, "view", view) < 0;
	}
	const struct language *language = languages_find(&d->core.languages, d->core.station.language);
	json_t *status = teller_status(&d->core, language);
	put_faults(d, status, 0, language);
	failed |= send_object(d, "status", status) < 0;
	/* Where its program does not run it is shown all when it starts. */
	if (!failed || !child_running(d->board))
		d->shown = now;
}

void board_say(struct daemon *d, const char *key, json_t *value)
{
	if (d->board)
		send_line(d, key, value);
	else
		json_decref(value);
}

void board_answer(struct daemon *d, const char *id, const char *refused, json_t *told)
{
	json_t *answer = json_object();
	json_object_set_new(answer, "id", json_string(id));
	if (refused)
		json_object_set_new(answer, "refused", json_string(refused));
	else
		json_object_set_new(answer, "answer", told);
	board_say(d, "answer", answer);
}

void board_alive(struct daemon *d)
{
	if (d->board)
		send_object(d, "alive", json_true());
}

/* The board's program may open no file by now. */
void board_renew(struct daemon *d)
{
	const struct elsewhere_setting *s = &d->core.settings.elsewhere;
	struct pem_files files = {
	    .path = {s->certificate, s->key, s->clients, s->revoked[0] ? s->revoked : NULL}};
	struct error e = {0};
	if (!d->board || !s->start)
		return;
	json_t *texts = json_object();
	if (pem_read(&files, &e) < 0)
		json_object_set_new(texts, "fault", json_string(e.text));
	for (int i = 0; i < PEM_COUNT && !e.code; i++)
		if (files.text[i].data)
			json_object_set_new(texts, pem_word((enum pem)i), json_string(files.text[i].data));
	pem_forget(&files);
	send_line(d, "tls", texts);
	d->core.changes++; /* what is wrong with them stands among the faults of a view */
	board_show(d);
}
