/* How it goes on.
 *
 *   no station   until the station has said who it is
 *   away         no connection: tried again, after a wait that doubles up to LAST_WAIT_MS
 *   stopped      connected, and nothing may be sent: the store refuses what it is offered, or the server is one that was
 *                replaced. It is asked again every STOPPED_MS, since somebody may have settled it
 *   at work      what the station has is asked for, a window ahead, and sent in batches
 *
 * The store says how far it has come (hello). What is sent then begins with the very event that it has last, so that the append
 * function itself compares the two: a station whose record was put back is found by that. An incarnation that the store does
 * not know begins behind the last event that both have, which is looked for by hashes, HASHES_MAX at once.
 *
 * Events come down the pipe in order. After a new `want` one of the old may still come: what is not the next is passed over.
 */
#include "forward/sender.h"

#include <errno.h>
#include <inttypes.h>
#include <poll.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "forward/pipe.h"

#define BATCH 2000
#define BATCH_BYTES (4u << 20)
#define WINDOW 8000             /* events that are asked for ahead */
#define QUEUE_BYTES (16u << 20) /* then nothing is read from the pipe */
#define FIRST_WAIT_MS 500
#define LAST_WAIT_MS 15000
#define STOPPED_MS 5000
#define IDLE_MS 8000 /* then the lists are read without a notice; and hello said each STALE_MS */
#define STALE_MS 24000
#define SLOW_MS 10000
#define GIVE_UP_MS 60000 /* an answer that is only slow, and for no known reason */
#define CLOCK_OFF_MS 60000

enum state { NO_STATION, AWAY, STOPPED, AT_WORK };

struct sender {
	struct store_place place;
	int in, out;
	struct pipe_lines lines;
	enum state state;
	struct store *store;
	char rooms[600]; /* the names of all its rooms: 543 bytes at most */
	struct store_station who;
	struct store_at kept;         /* the last that the station was told is kept */
	int64_t lists, applied, told; /* versions: read, taken over by the station, told to the store */
	struct queue queue;
	int64_t wanted;       /* events were asked for up to this one */
	size_t sending;       /* how many of the queue are on their way; 0 none */
	struct store_at gone; /* up to this it left the record behind the queue; seq 0: nothing did */
	int64_t sent_ms;
	int said_slow, new_station;
	int64_t again_ms, wait_ms, hello_ms, lists_ms;
	enum forward_word said; /* to the station */
	char said_why[ERROR_TEXT_MAX];
	json_t *hashes; /* that the station has answered with; NULL none */
};

static int64_t now_ms(void)
{
	return clock_now().boot_ms;
}

static void say(struct sender *s, const char *key, json_t *value)
{
	int n = pipe_say(s->out, key, value);
	if (n < 0)
		log_warn_errno(LOG_PROGRAM, n, "the station cannot be told anything");
}

static void say_state(struct sender *s, enum forward_word word, const char *why)
{
	if (s->said == word && strcmp(s->said_why, why) == 0)
		return;
	s->said = word;
	snprintf(s->said_why, sizeof s->said_why, "%s", why);
	const char *code = forward_word_name(word);
	if (word)
		log_warn(LOG_HOSPITAL, "%s: %s", code, why);
	say(s, "state", json_pack("{s:s,s:o}", "code", code, "why", name_told(why, strlen(why))));
}

/* --- from the station ------------------------------------------------------------------------------- */

static void take_station(struct sender *s, const json_t *o)
{
	snprintf(s->rooms, sizeof s->rooms, "%s", json_text(o, "rooms"));
	s->who = (struct store_station){.number = (int32_t)json_number(o, "number", 0),
	                                .incarnation = (int32_t)json_number(o, "incarnation", 1),
	                                .seq = json_number(o, "seq", 0),
	                                .rooms = s->rooms};
	s->kept = (struct store_at){.seq = json_number(o, "kept", 0),
	                            .timeline = (int32_t)json_number(o, "timeline", 0)};
	snprintf(s->kept.hash, sizeof s->kept.hash, "%s", json_text(o, "hash"));
	snprintf(s->kept.server, sizeof s->kept.server, "%s", json_text(o, "server"));
	s->lists = s->applied = s->told = json_number(o, "lists", 0);
	s->new_station = 1;
}

static void take_line(struct sender *s, const char *line, size_t size)
{
	struct line_event e;
	if (line_event(line, size, &e)) {
		int next = s->state == AT_WORK && e.seq == s->queue.after + (int64_t)s->queue.count + 1;
		if (next && queue_add(&s->queue, &e) < 0)
			log_warn(LOG_PROGRAM, "event %" PRId64 " cannot be taken: out of memory", e.seq);
		if (s->who.seq < e.seq)
			s->who.seq = e.seq;
		return;
	}
	_cleanup_(json_drop) json_t *o = json_read(line, size, NULL);
	const json_t *station = json_object_get(o, "station"), *gone = json_object_get(o, "gone");
	json_t *hashes = json_object_get(o, "hashes");
	if (station)
		take_station(s, station);
	if (gone && s->state == AT_WORK &&
	    json_number(gone, "after", -1) == s->queue.after + (int64_t)s->queue.count) {
		s->gone.seq = json_number(gone, "to", 0);
		snprintf(s->gone.hash, sizeof s->gone.hash, "%s", json_text(gone, "hash"));
	}
	if (json_is_array(hashes)) {
		json_decref(s->hashes);
		s->hashes = json_incref(hashes);
	}
	if (json_object_get(o, "took"))
		s->applied = json_number(o, "took", s->applied);
}

/* What is there. 0, or a negative errno where the station is gone. */
static int listen_to(struct sender *s)
{
	int n = pipe_read(&s->lines, s->in);
	size_t size;
	for (const char *line; (line = pipe_line(&s->lines, &size));)
		take_line(s, line, size);
	return n < 0 ? n : 0;
}

/* --- the connection --------------------------------------------------------------------------------- */

static void leave(struct sender *s)
{
	store_close(s->store);
	s->store = NULL;
	s->sending = 0;
	s->state = AWAY;
	s->wait_ms = s->wait_ms ? s->wait_ms * 2 : FIRST_WAIT_MS;
	if (s->wait_ms > LAST_WAIT_MS)
		s->wait_ms = LAST_WAIT_MS;
	/* Stations that lost one server at one moment do not come back at one moment. */
	s->again_ms = now_ms() + s->wait_ms + (int64_t)((uint32_t)s->who.number * 37 % 500);
}

static void fail(struct sender *s, const struct store_fault *f)
{
	say_state(s, f->word, f->why);
	leave(s);
}

static void stop(struct sender *s, enum forward_word word, const char *why)
{
	say_state(s, word, why);
	s->state = STOPPED;
	s->again_ms = now_ms() + STOPPED_MS;
}

static void stop_at(struct sender *s, enum forward_word word, int64_t seq)
{
	char why[60];
	snprintf(why, sizeof why, "event %" PRId64, seq);
	stop(s, word, why);
}

static void want(struct sender *s)
{
	int64_t next = s->queue.after + (int64_t)s->queue.count;
	if (s->wanted - next > WINDOW / 2)
		return;
	s->wanted = next + WINDOW;
	say(s, "want", json_pack("{s:I,s:I}", "after", (json_int_t)next, "to", (json_int_t)s->wanted));
}

/* Behind `after`, which is kept. */
static void begin_work(struct sender *s, int64_t after)
{
	queue_begin(&s->queue, after);
	s->gone.seq = 0;
	s->wanted = 0;
	s->state = AT_WORK;
	want(s);
}

static void tell_kept(struct sender *s, const struct store_at *at)
{
	s->kept = *at;
	say(s, "kept",
	    json_pack("{s:I,s:s,s:s,s:i}", "seq", (json_int_t)at->seq, "hash", at->hash, "server", at->server,
	              "timeline", (int)at->timeline));
}

/* --- an incarnation that the store does not know ---------------------------------------------------- */

/* The hashes of these events, from the station. 0 or a negative errno. */
static int hashes_of(struct sender *s, int64_t *seqs, char (*hashes)[LINE_HASH + 1], int *count)
{
	json_t *list = json_array();
	int64_t end = now_ms() + STORE_PATIENCE_MS;
	for (int i = 0; i < *count; i++)
		json_array_append_new(list, json_integer(seqs[i]));
	json_decref(s->hashes);
	s->hashes = NULL;
	say(s, "hashes", list);
	while (!s->hashes && now_ms() < end) {
		pipe_wait(s->in, 100);
		int n = listen_to(s);
		if (n < 0)
			return n;
	}
	*count = 0;
	for (size_t i = 0; i < json_array_size(s->hashes) && i < HASHES_MAX; i++) {
		const json_t *pair = json_array_get(s->hashes, i);
		const char *hash = json_string_value(json_array_get(pair, 1));
		if (!hash || strlen(hash) != LINE_HASH)
			continue;
		seqs[*count] = json_integer_value(json_array_get(pair, 0));
		memcpy(hashes[(*count)++], hash, LINE_HASH + 1);
	}
	return s->hashes ? 0 : -ETIMEDOUT;
}

/* The last event that both have, 0 none, by narrowing it down; and its hash. */
static int find_common(struct sender *s, int64_t *seq, char hash[LINE_HASH + 1], struct store_fault *f)
{
	static char hashes[HASHES_MAX][LINE_HASH + 1];
	int64_t low = 0, high = s->who.seq, seqs[HASHES_MAX];
	int n = 0;
	memset(hash, '0', LINE_HASH);
	hash[LINE_HASH] = 0;
	while (n == 0 && low < high) {
		int64_t span = high - low, found = 0;
		int count = (int)(span < HASHES_MAX ? span : HASHES_MAX);
		for (int i = 0; i < count; i++)
			seqs[i] = low + span / count * (i + 1) + span % count * (i + 1) / count;
		n = hashes_of(s, seqs, hashes, &count);
		if (n < 0)
			snprintf(f->why, sizeof f->why, "the station does not say the hashes of its events");
		else
			n = store_common(s->store, s->who.number, seqs, (const char(*)[LINE_HASH + 1]) hashes,
			                 count, &found, f);
		if (n == 0 && !count) /* they left the station's record */
			break;
		for (int i = 0; n == 0 && i < count; i++) {
			if (seqs[i] == found && found > low) {
				low = found;
				memcpy(hash, hashes[i], LINE_HASH + 1);
			} else if (seqs[i] > (found > low ? found : low) && seqs[i] - 1 < high) {
				high = seqs[i] - 1;
			}
		}
	}
	*seq = low;
	return n;
}

static void begin_incarnation(struct sender *s)
{
	struct store_fault f = {.word = FORWARD_OTHER};
	enum store_status status;
	char hash[LINE_HASH + 1];
	int64_t seq;
	int n = find_common(s, &seq, hash, &f);
	if (n == 0)
		n = store_begin(s->store, &s->who, seq, hash, &status, &f);
	if (n < 0)
		fail(s, &f);
	else if (status != STORE_OK)
		stop_at(s, FORWARD_FORK, seq);
	else
		begin_work(s, seq);
}

/* --- hello ------------------------------------------------------------------------------------------ */

/* What stands in the way of nothing, but must be known. */
static void say_remarks(struct sender *s, const struct store_hello *h)
{
	char why[60];
	int64_t off = h->clock_off_ms < 0 ? -h->clock_off_ms : h->clock_off_ms;
	snprintf(why, sizeof why, "%" PRId64 " min", off / 60000);
	if (h->incident[0])
		say_state(s, FORWARD_INCIDENT, h->incident);
	else if (off > CLOCK_OFF_MS)
		say_state(s, FORWARD_CLOCK, why);
	else if (s->said == FORWARD_INCIDENT || s->said == FORWARD_CLOCK)
		say_state(s, FORWARD_NOTHING, "");
}

/* Something was kept, or everything is: what was wrong is over, and the next wait is short again. */
static void is_well(struct sender *s)
{
	s->wait_ms = 0;
	if (s->said != FORWARD_INCIDENT && s->said != FORWARD_CLOCK)
		say_state(s, FORWARD_NOTHING, "");
}

/* The store has less than it said before: it was put back. It is told so, and gets all of it again. */
static int tell_lost(struct sender *s, const struct store_hello *h, struct store_fault *f)
{
	if (h->status == STORE_BEHIND || !s->kept.seq || h->last.seq >= s->kept.seq)
		return 0;
	log_warn(LOG_HOSPITAL,
	         "the store had kept event %" PRId64 " and has %" PRId64 " now: it is sent again from there",
	         s->kept.seq, h->last.seq);
	return store_tell_lost(s->store, &s->who, &s->kept, f);
}

static void greet(struct sender *s)
{
	struct store_fault f = {0};
	struct store_hello h = {0};
	s->hello_ms = now_ms();
	s->new_station = 0;
	if (store_say_hello(s->store, &s->who, &h, &f) < 0) {
		fail(s, &f);
		return;
	}
	if (strcmp(h.last.server, s->kept.server) == 0 && h.last.timeline < s->kept.timeline) {
		char why[60];
		snprintf(why, sizeof why, "timeline %d, and %d was seen", (int)h.last.timeline,
		         (int)s->kept.timeline);
		say_state(s, FORWARD_OLD_SERVER, why);
		s->place.first = (s->place.first + 1) % s->place.n_hosts; /* another one may be it */
		leave(s);
		return;
	}
	if (tell_lost(s, &h, &f) < 0) {
		fail(s, &f);
	} else if (h.status == STORE_BEHIND) {
		stop_at(s, FORWARD_BEHIND, h.last.seq);
		say(s, "fork", json_pack("{s:I,s:s}", "seq", (json_int_t)h.last.seq, "hash", h.last.hash));
	} else if (s->state != AT_WORK) {
		say_remarks(s, &h);
		if (h.status == STORE_BEGIN)
			begin_incarnation(s);
		else /* the last one once more: the append function compares the two */
			begin_work(s, h.last.seq ? h.last.seq - 1 : 0);
	} else {
		say_remarks(s, &h);
	}
}

static void connect_store(struct sender *s)
{
	struct store_fault f = {0};
	if (store_open(&s->store, &s->place, &f) < 0) {
		fail(s, &f);
		return;
	}
	s->state = STOPPED;
	s->lists_ms = 0;
	greet(s);
}

/* --- sending ---------------------------------------------------------------------------------------- */

static void send_batch(struct sender *s)
{
	struct store_fault f = {0};
	size_t texts, hashes, n = queue_batch(&s->queue, BATCH, BATCH_BYTES, &texts, &hashes);
	if (store_append(s->store, &s->who, &s->queue, n, texts, hashes, &f) < 0) {
		fail(s, &f);
		return;
	}
	s->sending = n;
	s->sent_ms = now_ms();
	s->said_slow = 0;
}

static void refused(struct sender *s, const struct store_append *a)
{
	int64_t first = s->queue.after + 1;
	if (a->status == STORE_FORK) {
		stop_at(s, FORWARD_FORK, first);
		say(s, "fork", json_pack("{s:I,s:s}", "seq", (json_int_t)first, "hash", a->last.hash));
	} else if (a->status == STORE_CHANGED) {
		stop_at(s, FORWARD_CHANGED, a->last.seq + 1);
	} else if (a->status == STORE_GAP) {
		begin_work(s, a->last.seq); /* it was put back while we were connected */
	} else {
		s->state = STOPPED;
		s->again_ms = now_ms();
	}
}

static void take_answer(struct sender *s)
{
	struct store_fault f = {0};
	struct store_append a;
	int n = store_answer(s->store, &a, &f);
	if (n == STORE_NOT_YET)
		return;
	if (n < 0) {
		fail(s, &f);
		return;
	}
	size_t sent = s->sending;
	s->sending = 0;
	if (a.status != STORE_OK) {
		refused(s, &a);
		return;
	}
	queue_drop(&s->queue, sent);
	tell_kept(s, &a.last);
	is_well(s);
}

/* Once all that is before it is kept. */
static void skip(struct sender *s)
{
	struct store_fault f = {0};
	struct store_append a;
	if (store_skip(s->store, &s->who, s->queue.after, &s->gone, &a, &f) < 0) {
		fail(s, &f);
	} else if (a.status != STORE_OK) {
		refused(s, &a);
	} else {
		begin_work(s, a.last.seq);
		is_well(s);
	}
}

static void look_slow(struct sender *s)
{
	int64_t ms = now_ms() - s->sent_ms;
	if (!s->sending || ms < SLOW_MS * (s->said_slow + 1))
		return;
	char why[40];
	enum forward_word word = store_why_slow(s->store, &s->place);
	snprintf(why, sizeof why, "for %d s", (int)(ms / 1000));
	s->said_slow++;
	say_state(s, word, word == FORWARD_STANDBY ? "" : why);
	if (word == FORWARD_SLOW && ms > GIVE_UP_MS)
		leave(s);
}

/* --- the lists -------------------------------------------------------------------------------------- */

static void pass_on(void *context, const struct store_entry *e)
{
	struct sender *s = context;
	s->lists = e->version;
	say(s, "list",
	    json_pack("{s:I,s:s,s:s,s:o}", "version", (json_int_t)e->version, "origin", e->origin, "kind",
	              e->kind, "body", pipe_value(e->body)));
}

static void read_lists(struct sender *s)
{
	struct store_fault f = {0};
	int64_t last = 0;
	int n = store_lists(s->store, s->who.number, s->lists, pass_on, s, &last, &f);
	s->lists_ms = now_ms();
	if (n < 0) {
		fail(s, &f);
		return;
	}
	if (last <
	    s->lists) /* the store was put back: all of them once more, which changes nothing where they are the same */
		s->lists = s->applied = s->told = 0;
	else if (n == 0)
		say(s, "lists", json_pack("{s:I}", "version", (json_int_t)last));
	if (n)
		s->lists_ms = 0; /* there may be more */
	else if (!s->queue.count)
		is_well(s);
}

static void tell_took(struct sender *s)
{
	struct store_fault f = {0};
	if (s->told == s->applied)
		return;
	if (store_took(s->store, s->who.number, s->applied, &f) < 0)
		fail(s, &f);
	else
		s->told = s->applied;
}

/* --- the loop --------------------------------------------------------------------------------------- */

/* One question at a time: only while no batch is on its way. */
static void at_work(struct sender *s, int quiet)
{
	struct store_fault f = {0};
	int64_t now = now_ms();
	if (s->sending)
		return;
	int news = store_has_news(s->store, &f);
	if (news < 0) {
		fail(s, &f);
		return;
	}
	if (s->new_station || now - s->hello_ms > STALE_MS) {
		s->state = s->new_station ? STOPPED : s->state;
		greet(s);
	} else if (news || now - s->lists_ms > IDLE_MS) {
		read_lists(s);
	} else if (s->told != s->applied && (s->applied == s->lists || quiet)) {
		tell_took(s); /* once for all that was read: each is a commit there */
	} else if (s->queue.count >= BATCH || (quiet && s->queue.count)) {
		send_batch(s);
	} else if (s->gone.seq && !s->queue.count) {
		skip(s);
	}
	if (s->state == AT_WORK && !s->gone.seq)
		want(s);
}

static void stopped(struct sender *s)
{
	if (s->new_station || now_ms() >= s->again_ms) {
		s->again_ms = now_ms() + STOPPED_MS;
		greet(s);
	}
}

static int wait_ms(const struct sender *s)
{
	if (s->state == NO_STATION)
		return -1;
	if (s->state == AWAY || s->state == STOPPED) {
		int64_t left = s->again_ms - now_ms();
		return left < 0 ? 0 : left > 1000 ? 1000 : (int)left;
	}
	return 500;
}

/* Waits for the station, the store or the time. 1 where nothing came from the station. */
static int wait_for_any(struct sender *s)
{
	struct pollfd p[2] = {
	    {.fd = s->queue.texts.size < QUEUE_BYTES ? s->in : -1, .events = POLLIN},
	    {.fd = s->store ? store_socket(s->store) : -1,
	     .events = (short)(POLLIN | (s->store && store_writing(s->store) ? POLLOUT : 0))}};
	/* What is whole in the queue goes at once, unless more is in the pipe already. */
	int idle =
	    s->state == AT_WORK && !s->sending && (s->queue.count || s->told != s->applied || !s->lists_ms);
	poll(p, 2, idle ? 0 : wait_ms(s));
	return !(p[0].revents & (POLLIN | POLLHUP)) && p[0].fd >= 0;
}

static void go_on(struct sender *s, int quiet)
{
	switch (s->state) {
	case NO_STATION:
		if (s->new_station)
			s->state = AWAY;
		break;
	case AWAY:
		if (now_ms() >= s->again_ms)
			connect_store(s);
		break;
	case STOPPED:
		stopped(s);
		break;
	case AT_WORK:
		if (s->sending) {
			take_answer(s);
			look_slow(s);
		}
		if (s->state == AT_WORK)
			at_work(s, quiet);
		break;
	}
}

int sender_run(const struct store_place *place, int in, int out)
{
	static struct sender s;
	int n = 0;
	s = (struct sender){.place = *place, .in = in, .out = out};
	while (n == 0) {
		int quiet = wait_for_any(&s);
		if (s.queue.texts.size < QUEUE_BYTES)
			n = listen_to(&s);
		if (n == 0)
			go_on(&s, quiet);
	}
	store_close(s.store);
	queue_free(&s.queue);
	buf_free(&s.lines.in);
	json_decref(s.hashes);
	return n == -EPIPE ? 0 : n;
}
