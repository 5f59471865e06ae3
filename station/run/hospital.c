/* What the program that goes to the hospital's store is told, and what it says, which is checked as a stranger's.
 *
 * Events go down its pipe as it wants them: at most EVENTS_A_TURN in a turn of the loop, and only while the pipe has taken most
 * of what came before, so that a backlog of any size delays a scan by one such turn at most. What was stored is not sent where
 * it was stored, but in a turn of its own: nobody at the table waits for it. */
#include "run/hospital.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "record/elsewhere.h"
#include "record/hospital-file.h"
#include "record/texts.h"
#include "run/board.h"
#include "run/hospital-lists.h"
#include "run/prove.h"
#include "words/forward-words.h"

#define LINE_MAX_BYTES (1u << 20)
#define EVENTS_A_TURN 200
#define UNTAKEN_MAX (256u << 10) /* bytes that the pipe may hold back */
#define TURN_MS 1
#define NOTE_MS 10000
#define HASHES_MAX 30
#define HOUR_MS 3600000
#define DAY_MS 86400000

struct hospital {
	struct daemon *d;
	struct child *child;
	int64_t sent, wanted; /* events: sent to it, and wanted by it, up to these */
	int planned;          /* a turn is */
	struct hospital_noted noted;
	int changed; /* of what is noted */
	int64_t noted_ms;
	int begun_anew; /* since this start */
	enum forward_word word;
	char why[200];
};

static int say(struct hospital *h, const char *key, json_t *value)
{
	_cleanup_(json_drop) json_t *o = json_pack("{s:i,s:o}", "v", 1, key, value);
	_cleanup_(buf_free) struct buf line = {0};
	int n = o ? json_write_canonical(o, &line) : -ENOMEM;
	if (n == 0)
		n = buf_add_text(&line, "\n");
	return n < 0 ? n : child_send(h->child, line.data, line.size);
}

/* --- events ----------------------------------------------------------------------------------------- */

/* What left the record before this event: what is behind it comes when it is wanted. 1, or a negative errno. */
static int send_gone(struct hospital *h, int64_t seq)
{
	struct chain hash;
	char hex[2 * CHAIN_BYTES + 1];
	int n = record_gone_before(h->d->core.record, seq, &hash);
	if (n != RECORD_FOUND)
		return n < 0 ? n : -EUCLEAN;
	chain_hex(&hash, hex);
	n = say(
	    h, "gone",
	    json_pack("{s:I,s:I,s:s}", "after", (json_int_t)h->sent, "to", (json_int_t)seq - 1, "hash", hex));
	h->wanted = h->sent;
	return n < 0 ? n : 1;
}

static int send_event(void *context, int64_t seq, const char *text, size_t size, const struct chain *hash)
{
	struct hospital *h = context;
	char hex[2 * CHAIN_BYTES + 1], end[128];
	if (seq != h->sent + 1)
		return send_gone(h, seq);
	_cleanup_(buf_free) struct buf line = {0};
	chain_hex(hash, hex);
	int length = snprintf(end, sizeof end, ",\"hash\":\"%s\",\"seq\":%lld}\n", hex, (long long)seq);
	int n = buf_add_text(&line, "{\"event\":");
	if (n == 0)
		n = buf_add(&line, text, size);
	if (n == 0)
		n = buf_add(&line, end, (size_t)length);
	if (n == 0)
		n = child_send(h->child, line.data, line.size);
	if (n == 0)
		h->sent = seq;
	return n;
}

static void turn(void *context);

static void plan(struct hospital *h)
{
	if (!h->planned && child_running(h->child))
		h->planned = loop_after(h->d->loop, TURN_MS, turn, h) == 0;
}

static void turn(void *context)
{
	struct hospital *h = context;
	h->planned = 0;
	if (!child_running(h->child) || h->sent >= h->wanted)
		return;
	if (child_unsent(h->child) > UNTAKEN_MAX) {
		plan(h);
		return;
	}
	int n = record_each_text(h->d->core.record, h->sent, h->wanted, EVENTS_A_TURN, send_event, h);
	if (n < 0)
		log_warn_errno(LOG_HOSPITAL, n, "events cannot be handed to bandtally-forward");
	else if (n == EVENTS_A_TURN)
		plan(h);
}

static void take_want(struct hospital *h, const json_t *o)
{
	int64_t after = json_number(o, "after", -1), to = json_number(o, "to", -1);
	if (after < 0 || to < after)
		return;
	h->sent = after;
	h->wanted = to;
	plan(h);
}

static void take_hashes(struct hospital *h, const json_t *list)
{
	json_t *told = json_array();
	for (size_t i = 0; i < json_array_size(list) && i < HASHES_MAX; i++) {
		struct chain hash;
		char hex[2 * CHAIN_BYTES + 1];
		json_int_t seq = json_integer_value(json_array_get(list, i));
		if (record_hash_at(h->d->core.record, seq, &hash) != RECORD_FOUND)
			continue;
		chain_hex(&hash, hex);
		json_array_append_new(told, json_pack("[I,s]", seq, hex));
	}
	say(h, "hashes", told);
}

/* 1 where this record has this event. */
static int is_ours(const struct hospital *h, int64_t seq, const char *hash)
{
	struct chain is;
	char hex[2 * CHAIN_BYTES + 1];
	if (seq < 1 || record_hash_at(h->d->core.record, seq, &is) != RECORD_FOUND)
		return 0;
	chain_hex(&is, hex);
	return strcmp(hex, hash) == 0;
}

/* It is said again to the program and kept in a file: printable ASCII that fits, or none. */
static const char *server_of(const struct hospital *h, const json_t *o)
{
	const char *server = json_text(o, "server"), *at = server;
	while (*at > ' ' && *at < 0x7f)
		at++;
	return *at || (size_t)(at - server) >= sizeof h->noted.server ? "" : server;
}

static void take_kept(struct hospital *h, const json_t *o)
{
	int64_t seq = json_number(o, "seq", 0);
	if (!is_ours(h, seq, json_text(o, "hash"))) {
		if (seq)
			log_warn(LOG_HOSPITAL,
			         "the hospital's store is said to keep event %lld, which this record has "
			         "otherwise: "
			         "passed over",
			         (long long)seq);
		return;
	}
	h->noted.kept = seq;
	int64_t timeline = json_number(o, "timeline", 0);
	h->noted.timeline = timeline > 0 && timeline <= INT32_MAX ? (int32_t)timeline : 0;
	snprintf(h->noted.hash, sizeof h->noted.hash, "%s", json_text(o, "hash"));
	snprintf(h->noted.server, sizeof h->noted.server, "%s", server_of(h, o));
	h->changed = 1;
}

static void introduce(struct hospital *h)
{
	const struct core *c = &h->d->core;
	char rooms[ROOMS_MAX * (ROOM_NAME_MAX + 1)]; /* all of them, each with ", " before the next */
	size_t used = 0;
	rooms[0] = 0;
	for (int i = 0; i < c->station.n_rooms && used < sizeof rooms; i++)
		used += (size_t)snprintf(rooms + used, sizeof rooms - used, "%s%s", i ? ", " : "",
		                         c->station.rooms[i].name);
	h->sent = h->wanted = 0;
	say(h, "station",
	    json_pack("{s:i,s:i,s:I,s:s,s:I,s:I,s:s,s:s,s:i}", "number", (int)c->station.number,
	              "incarnation", (int)station_incarnation(&c->station), "seq",
	              (json_int_t)record_last(c->record, NULL), "rooms", rooms, "lists",
	              (json_int_t)h->noted.lists, "kept", (json_int_t)h->noted.kept, "hash", h->noted.hash,
	              "server", h->noted.server, "timeline", (int)h->noted.timeline));
}

/* This record was put back, and nobody noticed: its numbers may have been given out already. Once in a start: two stations with
 * one certificate would go on with it for ever. */
static void take_fork(struct hospital *h, const json_t *o)
{
	struct core *c = &h->d->core;
	struct event ev;
	struct error e = {0};
	int64_t seq = json_number(o, "seq", 0);
	const char *hash = json_text(o, "hash");
	if (h->begun_anew || seq < 1 || strlen(hash) != 2 * CHAIN_BYTES || is_ours(h, seq, hash))
		return;
	prove_newer(c, 0, &ev);
	ev.what = seq > record_last(c->record, NULL) ? INCARNATION_BEHIND : INCARNATION_OTHER;
	ev.head.seq = seq;
	snprintf(ev.head.hash, sizeof ev.head.hash, "%s", hash);
	log_warn(LOG_OLDER,
	         "the hospital's store has another event %lld of this station: a further incarnation begins, "
	         "and numbers "
	         "go on behind those that may have been given out",
	         (long long)seq);
	if (core_store(c, &ev, 1, &e) < 0) {
		log_warn(LOG_STORE, "%s", e.text);
		return;
	}
	h->begun_anew = 1;
	h->noted = (struct hospital_noted){.lists = h->noted.lists, .contact_ms = h->noted.contact_ms};
	h->changed = 1;
	introduce(h);
}

/* --- lists ------------------------------------------------------------------------------------------ */

static void take_list(struct hospital *h, const json_t *o)
{
	struct error e = {0};
	int64_t version = json_number(o, "version", 0);
	if (version < 1 || version > JSON_INTEGER_MAX) {
		log_warn(
		    LOG_PROGRAM,
		    "an entry of the hospital's lists has version %lld, which none can have: passed over",
		    (long long)version);
		return;
	}
	int n = hospital_take_entry(&h->d->core, o, &e);
	if (n < 0)
		log_warn(LOG_LISTS, "entry %lld of the hospital's lists is not taken over: %s",
		         (long long)version, e.text);
	if (n < 0 && n != -EINVAL)
		return; /* it comes again when the program is started anew */
	h->noted.lists = version;
	h->changed = 1;
	say(h, "took", json_integer(version));
	board_show(h->d);
}

static void take_lists(struct hospital *h, const json_t *o)
{
	(void)o;
	h->noted.contact_ms = clock_now().wall_ms;
	h->changed = 1;
}

/* --- what people are told --------------------------------------------------------------------------- */

/* How old its lists are, where that is to be said; `*hours` 0 else. */
static enum saying lists_say(const struct hospital *h, int32_t *hours)
{
	const struct hospital_setting *s = &h->d->core.settings.hospital;
	int64_t age = (clock_now().wall_ms - h->noted.contact_ms) / HOUR_MS;
	*hours = 0;
	if (!h->noted.contact_ms)
		return SAY_FAULT_LISTS_NEVER;
	if (age < s->lists_hours || h->d->core.station.clock_wrong)
		return SAY_NONE;
	*hours = (int32_t)(age < 99999 ? age : 99999);
	return SAY_FAULT_LISTS_OLD;
}

static void tell(struct hospital *h)
{
	struct core *c = &h->d->core;
	int32_t hours;
	enum saying says = saying_of_forward((int)h->word), lists = lists_say(h, &hours);
	if (says == c->hospital_says && strcmp(h->why, c->hospital_why) == 0 && lists == c->lists_say &&
	    hours == c->lists_hours)
		return;
	c->hospital_says = says;
	memcpy(c->hospital_why, h->why, sizeof c->hospital_why);
	c->lists_say = lists;
	c->lists_hours = hours;
	c->changes++;
}

static void take_state(struct hospital *h, const json_t *o)
{
	h->word = forward_word_named(json_text(o, "code"));
	snprintf(h->why, sizeof h->why, "%s", json_text(o, "why"));
	tell(h);
	board_show(h->d);
}

/* --- the program ------------------------------------------------------------------------------------ */

static void note(struct hospital *h)
{
	int n = hospital_write(&h->noted, h->d->core.folder);
	if (n < 0)
		log_warn_errno(LOG_HOSPITAL, n, "hospital.json cannot be written in the data folder");
	h->changed = 0;
	h->noted_ms = clock_now().boot_ms;
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	static const struct {
		const char *key;
		void (*take)(struct hospital *h, const json_t *value);
	} kinds[] = {{"want", take_want},   {"hashes", take_hashes}, {"kept", take_kept},
	             {"state", take_state}, {"fork", take_fork},     {"list", take_list},
	             {"lists", take_lists}};
	struct hospital *h = context;
	_cleanup_(json_drop) json_t *o = line ? json_read(line, size, NULL) : NULL;
	(void)c;
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (json_object_get(o, kinds[i].key))
			kinds[i].take(h, json_object_get(o, kinds[i].key));
}

static void on_started(void *context, struct child *c)
{
	(void)c;
	introduce(context);
}

static void on_ended(void *context, struct child *c, int status)
{
	struct hospital *h = context;
	(void)c;
	(void)status;
	h->word = FORWARD_ENDED;
	h->why[0] = 0;
	tell(h);
}

/* Without it the count goes on: the store finds an item in two cases all the same. */
static void open_elsewhere(struct core *c)
{
	struct error e = {0};
	if (elsewhere_open(&c->elsewhere, c->folder, (int32_t)(clock_now().wall_ms / DAY_MS), &e) < 0)
		log_error(LOG_LISTS, &e);
}

int hospital_start(struct daemon *d)
{
	static const struct child_calls calls = {on_line, on_started, on_ended};
	const struct hospital_setting *s = &d->core.settings.hospital;
	const struct station *st = &d->core.station;
	char user[24];
	const char *words[2 * HOSTS_MAX + 12] = {"bandtally-forward"};
	int n = 1;
	if (!s->start)
		return 0;
	struct hospital *h = calloc(1, sizeof *h);
	if (!h)
		return -ENOMEM;
	d->hospital = h;
	h->d = d;
	if (hospital_read(&h->noted, d->core.folder) == -ENOENT)
		note(h); /* from now on nothing leaves the record that the store does not keep */
	snprintf(user, sizeof user, "station-%c%c-%02d", st->site[0] | 32, st->site[1] | 32, st->number);
	for (int i = 0; i < s->n_hosts; i++) {
		words[n++] = "--host";
		words[n++] = s->hosts[i];
	}
	const char *const named[] = {"--database",   s->database, "--user", user,          "--certificate",
	                             s->certificate, "--key",     s->key,   "--authority", s->authority};
	memcpy(words + n, named, sizeof named);
	open_elsewhere(&d->core);
	tell(h);
	return child_start(&h->child, &d->children, (char *const *)words, LINE_MAX_BYTES, 1, -1, &calls, h);
}

void hospital_stop(struct daemon *d)
{
	struct hospital *h = d->hospital;
	if (!h)
		return;
	loop_cancel(d->loop, h);
	child_free(h->child);
	note(h);
	elsewhere_close(d->core.elsewhere);
	d->core.elsewhere = NULL;
	free(h);
	d->hospital = NULL;
}

void hospital_stored(struct daemon *d)
{
	if (d->hospital && d->hospital->sent < d->hospital->wanted)
		plan(d->hospital);
}

void hospital_look(struct daemon *d)
{
	struct hospital *h = d->hospital;
	if (!h)
		return;
	tell(h);
	if (h->changed && clock_now().boot_ms - h->noted_ms > NOTE_MS)
		note(h);
}
