#include "board/feed.h"

#include <errno.h>
#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <event2/event.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/log.h"
#include "base/name.h"

#define OPEN_EVERY_BEATS 600

struct feed {
	struct event_base *base;
	struct bufferevent *in;
	struct feed_to to;
	int out;
	int beats; /* since it was last told which cookies pages are open with */
	uint32_t last_id;
	bool skipping;                                      /* within a line that is too long */
	void (*take_tls)(void *context, const json_t *tls); /* NULL: nobody */
	void *context;
};

static void say_open(void *feed, const struct secret_hash *cookie)
{
	feed_open(feed, cookie);
}

static int beat(struct feed *f, const json_t *line)
{
	if (!json_truth(line, "alive"))
		return -EINVAL;
	hub_alive(f->to.hub, json_number(line, "seq", 0));
	f->beats = (f->beats + 1) % OPEN_EVERY_BEATS;
	if (!f->beats)
		hub_each_open(f->to.hub, say_open, f);
	return 0;
}

static int take(struct feed *f, const json_t *line)
{
	json_t *view = json_object_get(line, "view"), *status = json_object_get(line, "status");
	const json_t *reply = json_object_get(line, "reply"), *entry = json_object_get(line, "entry");
	const json_t *let_in = json_object_get(line, "let_in"), *tls = json_object_get(line, "tls");
	const json_t *answer = json_object_get(line, "answer"), *report = json_object_get(line, "report");
	const json_t *picture = json_object_get(line, "picture");
	if (json_number(line, "v", 0) != 1)
		return -EINVAL;
	if (view)
		return hub_view(f->to.hub, view);
	if (status)
		return hub_status(f->to.hub, status);
	if (let_in)
		return hub_let_in(f->to.hub, let_in);
	if (reply)
		return waiting_reply(f->to.waiting, reply);
	if (answer)
		return waiting_answer(f->to.waiting, answer);
	if (report)
		return reports_take(f->to.reports, report);
	if (entry)
		return waiting_entry(f->to.waiting, entry);
	if (picture)
		return hub_picture(f->to.hub, picture);
	if (tls && f->take_tls) {
		f->take_tls(f->context, tls);
		return 0;
	}
	return beat(f, line);
}

static void read_line(struct feed *f, const char *text, size_t size)
{
	_cleanup_(json_drop) json_t *line = json_read(text, size, NULL);
	int r = line ? take(f, line) : -EINVAL;
	if (!line)
		log_warn(LOG_PROGRAM,
		         "from the daemon: a line of %zu bytes that is no JSON: it is passed over", size);
	else if (r < 0)
		log_warn_errno(LOG_PROGRAM, r,
		               "from the daemon: a line that says nothing that is known here");
}

static void on_read(struct bufferevent *in, void *context)
{
	struct feed *f = context;
	struct evbuffer *bytes = bufferevent_get_input(in);
	size_t size;
	char *text;
	while ((text = evbuffer_readln(bytes, &size, EVBUFFER_EOL_LF))) {
		if (!f->skipping)
			read_line(f, text, size);
		f->skipping = false;
		free(text);
	}
	if (evbuffer_get_length(bytes) > FEED_LINE_MAX) {
		log_warn(LOG_PROGRAM, "from the daemon: a line of more than %zu bytes: it is passed over",
		         FEED_LINE_MAX);
		f->skipping = true;
	}
	if (f->skipping)
		evbuffer_drain(bytes, evbuffer_get_length(bytes));
}

static void on_end(struct bufferevent *in, short what, void *context)
{
	struct feed *f = context;
	(void)in;
	(void)what;
	event_base_loopexit(f->base, NULL);
}

struct feed *feed_new(struct event_base *base, int in, int out, const struct feed_to *to)
{
	struct feed *f = calloc(1, sizeof *f);
	if (!f)
		return NULL;
	*f = (struct feed){.base = base, .to = *to, .out = out};
	evutil_make_socket_nonblocking(in);
	evutil_make_socket_nonblocking(out);
	f->in = bufferevent_socket_new(base, in, 0);
	if (!f->in) {
		free(f);
		return NULL;
	}
	bufferevent_setcb(f->in, on_read, NULL, on_end, f);
	if (bufferevent_enable(f->in, EV_READ) < 0) {
		feed_free(f);
		return NULL;
	}
	return f;
}

void feed_free(struct feed *f)
{
	if (!f)
		return;
	bufferevent_free(f->in);
	free(f);
}

void feed_on_tls(struct feed *f, void (*fn)(void *context, const json_t *tls), void *context)
{
	f->take_tls = fn;
	f->context = context;
}

/* Lines are shorter than PIPE_BUF, so a pipe takes each whole or not at all. */
static int say(struct feed *f, const char *key, json_t *value)
{
	_cleanup_(json_drop) json_t *line = json_object();
	_cleanup_(buf_free) struct buf text = {0};
	json_object_set_new(line, "v", json_integer(1));
	json_object_set_new(line, key, value);
	int r = json_write_canonical(line, &text);
	if (r == 0)
		r = buf_add_text(&text, "\n");
	if (r == 0 && text.size > PIPE_BUF)
		r = -EMSGSIZE;
	if (r < 0)
		return r;
	ssize_t n = write(f->out, text.data, text.size);
	if (n < 0)
		return -errno;
	return (size_t)n == text.size ? 0 : -EAGAIN;
}

int feed_listening(struct feed *f, int port, int elsewhere)
{
	json_t *o = json_object();
	json_object_set_new(o, "port", json_integer(port));
	if (elsewhere > 0)
		json_object_set_new(o, "elsewhere", json_integer(elsewhere));
	return say(f, "listening", o);
}

int feed_amiss(struct feed *f, const char *text)
{
	return say(f, "amiss", name_told(text, ERROR_TEXT_MAX));
}

void feed_id(struct feed *f, char id[WAITING_ID_BYTES])
{
	snprintf(id, WAITING_ID_BYTES, "t%u", ++f->last_id);
}

int feed_ticket(struct feed *f, const char *id, const char *ticket)
{
	json_t *o = json_object();
	json_object_set_new(o, "id", json_string(id));
	json_object_set_new(o, "ticket", json_string(ticket));
	return say(f, "ticket", o);
}

int feed_keyed(struct feed *f, const char *id, int room, const char *code, const char *cookie)
{
	json_t *o = json_object();
	json_object_set_new(o, "id", json_string(id));
	json_object_set_new(o, "room", json_integer(room));
	json_object_set_new(o, "code", json_string(code));
	json_object_set_new(o, "cookie", json_string(cookie));
	return say(f, "keyed", o);
}

int feed_ask(struct feed *f, const char *id, int room, const json_t *ask, const char *cookie)
{
	json_t *o = json_object();
	json_object_set_new(o, "id", json_string(id));
	json_object_set_new(o, "room", json_integer(room));
	json_object_set_new(o, "ask", json_incref((json_t *)ask));
	json_object_set_new(o, "cookie", json_string(cookie));
	return say(f, "ask", o);
}

int feed_open(struct feed *f, const struct secret_hash *cookie)
{
	char hex[SECRET_HEX + 1];
	secret_to_hex(cookie, hex);
	return say(f, "open", json_string(hex));
}
