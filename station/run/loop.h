/* The event loop, as the daemon sees it. Only loop.c knows the library behind it. One thread; every callback
 * runs from loop_run(). */
#ifndef BANDTALLY_RUN_LOOP_H
#define BANDTALLY_RUN_LOOP_H

#include <stddef.h>
#include <stdint.h>
#include <sys/types.h>

struct loop;
struct stream;

typedef void (*loop_fn)(void *context);
typedef void (*loop_signal_fn)(void *context, int signal);
typedef void (*loop_accept_fn)(void *context, int fd); /* the fd is the callee's */

int loop_new(struct loop **out); /* 0 or -ENOMEM */
void loop_free(struct loop *l);
void loop_run(struct loop *l); /* returns after loop_stop() */
void loop_stop(struct loop *l);

int loop_every(struct loop *l, int32_t ms, loop_fn fn, void *context);
int loop_after(struct loop *l, int32_t ms, loop_fn fn, void *context); /* once */
int loop_on_signal(struct loop *l, int signal, loop_signal_fn fn, void *context);
int loop_accept(struct loop *l, int listening_fd, loop_accept_fn fn, void *context); /* takes the fd */
int loop_on_readable(struct loop *l, int fd, loop_fn fn, void *context); /* the fd stays the caller's */
int loop_on_exit(struct loop *l, pid_t pid, loop_fn fn, void *context);  /* once, through a pidfd */

void loop_cancel(struct loop *l,
                 const void *context); /* forgets all of the above that were given this context */

/* A stream of lines. `line` is without its newline and is followed by a NUL; one longer than `line_max` is
 * thrown away whole and told as line NULL. A peer that floods gets a bounded number of lines a turn, also those that it
 * left behind. `end` is called once, when the other side is gone and its lines are told; the stream may be freed in any
 * callback. */
struct stream_calls {
	void (*line)(void *context, const char *line, size_t size);
	void (*end)(void *context);
};
int stream_new(struct stream **out, struct loop *l, int fd, size_t line_max, const struct stream_calls *calls,
               void *context); /* takes the fd, -1 not: writing only is fine too */
/* For a peer that nobody vouches for: while it does not take what was sent, no line of it is told; once it has taken
 * nothing for ten seconds, `unread` is called instead of `end`; where it cannot be sent anything that is its end. What it
 * left behind is not told then. */
void stream_guard(struct stream *s, loop_fn unread);
void stream_free(struct stream *s); /* at once; NULL is fine */
/* Queued. -ENOBUFS past 8 MiB unsent, or -ENOMEM: a part may have gone, so nothing more can be said on it. */
int stream_send(struct stream *s, const void *bytes, size_t size);
size_t stream_unsent(const struct stream *s); /* bytes that were queued and not taken yet */

#endif
