#include "run/loop.h"

#include <errno.h>
#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <event2/event.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/syscall.h>
#include <unistd.h>

#define LINES_A_TURN 32
#define UNSENT_MAX (8u << 20)
#define READ_AHEAD (16u << 10) /* beyond one line */
#define UNREAD_S 10            /* so long a guarded stream may take nothing of what waits for it */

struct watch { /* one event and what it calls; kept in a list so that loop_free() finds all */
	struct watch *next;
	struct loop *loop;
	struct event *event;
	int fd; /* closed with the watch, -1 none */
	loop_fn fn;
	loop_signal_fn on_signal;
	loop_accept_fn on_accept;
	void *context;
	int once;
};

struct loop {
	struct event_base *base;
	struct watch *watches;
};

int loop_new(struct loop **out)
{
	struct loop *l = calloc(1, sizeof *l);
	if (l && (l->base = event_base_new())) {
		*out = l;
		return 0;
	}
	free(l);
	return -ENOMEM;
}

static void watch_free(struct watch *w)
{
	for (struct watch **at = &w->loop->watches; *at; at = &(*at)->next)
		if (*at == w) {
			*at = w->next;
			break;
		}
	if (w->event)
		event_free(w->event);
	if (w->fd >= 0)
		close(w->fd);
	free(w);
}

void loop_free(struct loop *l)
{
	if (!l)
		return;
	while (l->watches)
		watch_free(l->watches);
	event_base_free(l->base);
	free(l);
}

void loop_run(struct loop *l)
{
	event_base_dispatch(l->base);
}

void loop_stop(struct loop *l)
{
	event_base_loopbreak(l->base);
}

static void on_event(evutil_socket_t fd, short what, void *context)
{
	struct watch *w = context;
	(void)what;
	if (w->on_signal) {
		w->on_signal(w->context, (int)fd);
	} else if (w->on_accept) {
		int peer = accept4(w->fd, NULL, NULL, SOCK_CLOEXEC | SOCK_NONBLOCK);
		if (peer >= 0)
			w->on_accept(w->context, peer);
	} else {
		loop_fn fn = w->fn;
		void *theirs = w->context;
		if (w->once)
			watch_free(w);
		fn(theirs);
	}
}

static struct watch *watch_new(struct loop *l, int fd, short what, void *context)
{
	struct watch *w = calloc(1, sizeof *w);
	if (!w)
		return NULL;
	*w = (struct watch){.loop = l, .fd = -1, .context = context, .next = l->watches};
	w->event = event_new(l->base, fd, what, on_event, w);
	if (!w->event) {
		free(w);
		return NULL;
	}
	l->watches = w;
	return w;
}

/* One that cannot be added is none. */
static int add(struct watch *w, const struct timeval *every)
{
	if (event_add(w->event, every) == 0)
		return 0;
	w->fd = -1; /* which stays the caller's */
	watch_free(w);
	return -ENOMEM;
}

static int add_timer(struct loop *l, int32_t ms, loop_fn fn, void *context, int once)
{
	struct watch *w = watch_new(l, -1, once ? 0 : EV_PERSIST, context);
	struct timeval every = {ms / 1000, ms % 1000 * 1000};
	if (!w)
		return -ENOMEM;
	w->fn = fn;
	w->once = once;
	return add(w, &every);
}

int loop_every(struct loop *l, int32_t ms, loop_fn fn, void *context)
{
	return add_timer(l, ms, fn, context, 0);
}

int loop_after(struct loop *l, int32_t ms, loop_fn fn, void *context)
{
	return add_timer(l, ms, fn, context, 1);
}

int loop_on_signal(struct loop *l, int signal, loop_signal_fn fn, void *context)
{
	struct watch *w = watch_new(l, signal, EV_SIGNAL | EV_PERSIST, context);
	if (!w)
		return -ENOMEM;
	w->on_signal = fn;
	return add(w, NULL);
}

int loop_accept(struct loop *l, int listening_fd, loop_accept_fn fn, void *context)
{
	struct watch *w = watch_new(l, listening_fd, EV_READ | EV_PERSIST, context);
	if (!w)
		return -ENOMEM;
	w->fd = listening_fd;
	w->on_accept = fn;
	return add(w, NULL);
}

int loop_on_readable(struct loop *l, int fd, loop_fn fn, void *context)
{
	struct watch *w = watch_new(l, fd, EV_READ | EV_PERSIST, context);
	if (!w)
		return -ENOMEM;
	w->fn = fn;
	return add(w, NULL);
}

int loop_on_exit(struct loop *l, pid_t pid, loop_fn fn, void *context)
{
	int fd = (int)syscall(SYS_pidfd_open, pid, 0);
	if (fd < 0)
		return -errno;
	fcntl(fd, F_SETFD, FD_CLOEXEC);
	struct watch *w = watch_new(l, fd, EV_READ, context);
	if (!w) {
		close(fd);
		return -ENOMEM;
	}
	w->fd = fd;
	w->fn = fn;
	w->once = 1;
	int n = add(w, NULL);
	if (n < 0)
		close(fd);
	return n;
}

void loop_cancel(struct loop *l, const void *context)
{
	struct watch *next;
	for (struct watch *w = l->watches; w; w = next) {
		next = w->next;
		if (w->context == context)
			watch_free(w);
	}
}

/* --- streams ------------------------------------------------------------------------------------ */

struct stream {
	struct bufferevent *bev;
	const struct stream_calls *calls;
	void *context;
	size_t line_max;
	size_t searched; /* of the input: there is no newline before it */
	loop_fn unread;  /* of a guarded stream, else NULL */
	int ending;      /* the other side is gone, its last lines are not all told */
	int skipping;    /* in the middle of a line that is too long */
	int *freed;      /* set when a callback freed the stream */
};

/* Where the first line ends, or -1. What was searched is not searched again: a line may come in many pieces. */
static ssize_t line_end(struct stream *s, struct evbuffer *in)
{
	struct evbuffer_ptr from, at = {.pos = -1};
	if (evbuffer_ptr_set(in, &from, s->searched, EVBUFFER_PTR_SET) == 0)
		at = evbuffer_search(in, "\n", 1, &from);
	s->searched = at.pos < 0 ? evbuffer_get_length(in) : 0;
	return at.pos;
}

/* Takes one line out of the input. 1 a line was told, 0 there is none, -1 the stream was freed. */
static int one_line(struct stream *s, struct evbuffer *in)
{
	int freed = 0;
	ssize_t end = line_end(s, in);
	if (end < 0) {
		if (evbuffer_get_length(in) > s->line_max) {
			evbuffer_drain(in, evbuffer_get_length(in));
			s->searched = 0;
			s->skipping = 1;
		}
		return 0;
	}
	size_t size = (size_t)end;
	char *line = calloc(size + 1, 1);
	if (line)
		evbuffer_copyout(in, line, size);
	evbuffer_drain(in, size + 1);
	/* cppcheck-suppress autoVariables ; it is taken away again below, unless the stream is gone */
	s->freed = &freed;
	if (!line || s->skipping || size > s->line_max) {
		s->skipping = 0;
		s->calls->line(s->context, NULL, 0);
	} else {
		s->calls->line(s->context, line, size);
	}
	free(line);
	if (freed)
		return -1;
	s->freed = NULL;
	return 1;
}

static int does_not_read(const struct stream *s)
{
	return s->unread && evbuffer_get_length(bufferevent_get_output(s->bev)) > 0;
}

static void on_readable(struct bufferevent *bev, void *context)
{
	struct stream *s = context;
	struct evbuffer *in = bufferevent_get_input(bev);
	for (int i = 0; i < LINES_A_TURN; i++) {
		if (does_not_read(s))
			return;
		int told = one_line(s, in);
		if (told == 0 && s->ending)
			s->calls->end(s->context);
		if (told <= 0)
			return;
	}
	/* More may be waiting: let others have their turn first. */
	if (evbuffer_get_length(in) || s->ending)
		bufferevent_trigger(bev, EV_READ, BEV_TRIG_IGNORE_WATERMARKS | BEV_TRIG_DEFER_CALLBACKS);
}

static void on_written(struct bufferevent *bev, void *context)
{
	const struct stream *s = context;
	if (s->unread)
		on_readable(bev, context);
}

static void on_state(struct bufferevent *bev, short what, void *context)
{
	struct stream *s = context;
	if (what & BEV_EVENT_TIMEOUT && s->unread) {
		s->unread(s->context);
	} else if (what & BEV_EVENT_ERROR && s->unread) {
		s->calls->end(s->context);
	} else if (what & (BEV_EVENT_EOF | BEV_EVENT_ERROR)) {
		s->ending = 1;
		on_readable(bev, context);
	}
}

int stream_new(struct stream **out, struct loop *l, int fd, size_t line_max, const struct stream_calls *calls,
               void *context)
{
	struct stream *s = calloc(1, sizeof *s);
	if (!s)
		return -ENOMEM;
	evutil_make_socket_nonblocking(fd);
	*s = (struct stream){.calls = calls, .context = context, .line_max = line_max};
	s->bev = bufferevent_socket_new(l->base, fd, BEV_OPT_CLOSE_ON_FREE);
	if (!s->bev) {
		free(s);
		return -ENOMEM;
	}
	bufferevent_setcb(s->bev, on_readable, on_written, on_state, s);
	bufferevent_setwatermark(s->bev, EV_READ, 0, line_max + READ_AHEAD);
	bufferevent_enable(s->bev, EV_READ | EV_WRITE);
	*out = s;
	return 0;
}

void stream_guard(struct stream *s, loop_fn unread)
{
	struct timeval patience = {.tv_sec = UNREAD_S};
	s->unread = unread;
	bufferevent_set_timeouts(s->bev, NULL, &patience);
}

void stream_free(struct stream *s)
{
	if (!s)
		return;
	if (s->freed)
		*s->freed = 1;
	bufferevent_free(s->bev);
	free(s);
}

/* What the socket takes at once goes at once: a reply does not wait for another turn of the loop. */
static size_t send_now(struct stream *s, const void *bytes, size_t size)
{
	if (evbuffer_get_length(bufferevent_get_output(s->bev)))
		return 0;
	ssize_t n = send(bufferevent_getfd(s->bev), bytes, size, MSG_DONTWAIT | MSG_NOSIGNAL);
	return n > 0 ? (size_t)n : 0;
}

int stream_send(struct stream *s, const void *bytes, size_t size)
{
	struct evbuffer *out = bufferevent_get_output(s->bev);
	if (evbuffer_get_length(out) + size > UNSENT_MAX)
		return -ENOBUFS;
	size_t sent = send_now(s, bytes, size);
	if (sent == size)
		return 0;
	return bufferevent_write(s->bev, (const char *)bytes + sent, size - sent) < 0 ? -ENOMEM : 0;
}

size_t stream_unsent(const struct stream *s)
{
	return evbuffer_get_length(bufferevent_get_output(s->bev));
}
