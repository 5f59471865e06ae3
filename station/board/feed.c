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

struct feed {
	struct event_base *base;
	struct bufferevent *in;
	struct hub *hub;
	int out;
	uint32_t last_id;
	bool skipping;                                      /* within a line that is too long */
	void (*take_tls)(void *context, const json_t *tls); /* NULL: nobody */
	void *context;
};

static int take(struct feed *f, const json_t *line)
{
	json_t *view = json_object_get(line, "view"), *status = json_object_get(line, "status");
	const json_t *reply = json_object_get(line, "reply"), *tls = json_object_get(line, "tls");
	if (json_number(line, "v", 0) != 1)
		return -EINVAL;
	if (view)
		return hub_view(f->hub, view);
	if (status)
		return hub_status(f->hub, status);
	if (reply)
		return hub_reply(f->hub, reply);
	if (tls && f->take_tls) {
		f->take_tls(f->context, tls);
		return 0;
	}
	if (!json_truth(line, "alive"))
		return -EINVAL;
	hub_alive(f->hub, json_number(line, "seq", 0));
	return 0;
}

static void read_line(struct feed *f, const char *text, size_t size)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *line = json_read(text, size, &e);
	int r = line ? take(f, line) : -EINVAL;
	if (!line)
		log_line("from the daemon: %s: the line is passed over", e.text);
	else if (r < 0)
		log_errno(r, "from the daemon: a line without a view, a status, a reply or a heartbeat");
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
		log_line("from the daemon: a line of more than %zu bytes: it is passed over", FEED_LINE_MAX);
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

struct feed *feed_new(struct event_base *base, int in, int out, struct hub *hub)
{
	struct feed *f = calloc(1, sizeof *f);
	if (!f)
		return NULL;
	*f = (struct feed){.base = base, .hub = hub, .out = out};
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

int feed_keyed(struct feed *f, int room, const char *code, char id[16])
{
	json_t *o = json_object();
	snprintf(id, 16, "k%u", ++f->last_id);
	json_object_set_new(o, "id", json_string(id));
	json_object_set_new(o, "room", json_integer(room));
	json_object_set_new(o, "code", json_string(code));
	return say(f, "keyed", o);
}
