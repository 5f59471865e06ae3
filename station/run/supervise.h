/* Children of the daemon: drivers, the board, the printer's program. Each is started again when it ends,
 * after a wait that doubles from half a second to half a minute; one that ran for a minute starts afresh at
 * half a second.
 */
#ifndef BANDTALLY_RUN_SUPERVISE_H
#define BANDTALLY_RUN_SUPERVISE_H

#include "run/loop.h"

struct child;

/* All of them, those that are still ending too. Zeroed but for its loop. */
struct children {
	struct loop *loop;
	struct child *first;
	int waited_for; /* children_wait() is waiting */
};

/* Returns once all that were freed have ended: at most some two seconds. The loop runs meanwhile. */
void children_wait(struct children *all);

/* From now on what a child started and left without a parent is this process's child (run/peer.h asks whose a program is);
 * the second, now and then, takes leave of those of them that ended. */
void children_adopt(void);
void children_bury(const struct children *all);

/* Now and then: one that somebody stopped (SIGSTOP) is ended, so that it starts again. */
void children_look(const struct children *all);

struct child_calls {
	/* A line that the child wrote; NULL for one that was too long. */
	void (*line)(void *context, struct child *c, const char *line, size_t size);
	/* It started (again), or it ended and all its lines were told; `status` is wait()'s. Either may be
	 * NULL, and `ended` may free the child. */
	void (*started)(void *context, struct child *c);
	void (*ended)(void *context, struct child *c, int status);
};

#define CHILD_HANDED 3
#define CHILD_HANDED_TEXT "3"

/* `argv` is copied; argv[0] without '/' is looked for beside this program. `line_max` bounds its lines;
 * `talks` says that it gets input from child_send() (else its stdin is /dev/null); `handed` is a descriptor
 * that it gets as its CHILD_HANDED, and stays the caller's, -1 none. Where one that was freed has the same
 * `context` and still holds what this one wants, this one starts when that has ended. 0 or -ENOMEM; a program that cannot
 * be started is tried again later. */
int child_start(struct child **out, struct children *all, char *const *argv, size_t line_max, int talks,
                int handed, const struct child_calls *calls, void *context);
/* `wanted` is asked before each further start; where it answers 0, the child stays away until child_free().
 */
void child_ask(struct child *c, int (*wanted)(void *context, struct child *c));
/* Ends it, SIGTERM now and SIGKILL after two seconds, and waits for neither; it is heard of no more. NULL is fine. */
void child_free(struct child *c);
/* 0, -EPIPE while it is not running; where it does not read, -ENOBUFS or -ENOMEM, and it is started anew. */
int child_send(struct child *c, const char *line, size_t size);
size_t child_unsent(const struct child *c); /* bytes that it has not taken yet */
int child_running(const struct child *c);
void child_signal(const struct child *c, int signal_number); /* nothing where it is not running */

#endif
