/* Children of the daemon: drivers, the board, the printer's program. Each is started again when it ends,
 * after a wait that doubles from half a second to half a minute; one that ran for a minute starts afresh at
 * half a second.
 */
#ifndef BANDTALLY_RUN_SUPERVISE_H
#define BANDTALLY_RUN_SUPERVISE_H

#include "run/loop.h"

struct child;

struct child_calls {
	/* A line that the child wrote; NULL for one that was too long. */
	void (*line)(void *context, struct child *c, const char *line, size_t size);
	/* It started (again), or it ended and all its lines were told; `status` is wait()'s. Either may be
	 * NULL, and `ended` may free the child. */
	void (*started)(void *context, struct child *c);
	void (*ended)(void *context, struct child *c, int status);
};

/* `argv` is copied; argv[0] without '/' is looked for beside this program. `line_max` bounds its lines;
 * `talks` says that it gets input from child_send() (else its stdin is /dev/null). */
int child_start(struct child **out, struct loop *l, char *const *argv, size_t line_max, int talks,
                const struct child_calls *calls, void *context);
/* `wanted` is asked before each further start; where it answers 0, the child stays away until child_free().
 */
void child_ask(struct child *c, int (*wanted)(void *context, struct child *c));
void child_free(struct child *c); /* ends it (SIGTERM, SIGKILL after two seconds) and waits; NULL is fine */
int child_send(struct child *c, const char *line, size_t size); /* -EPIPE while it is not running */
int child_running(const struct child *c);

#endif
