/* What of the station changes during a walk: taken from a world and put back into it. */
#ifndef BANDTALLY_TESTS_STATES_SNAPSHOT_H
#define BANDTALLY_TESTS_STATES_SNAPSHOT_H

#include "walk.h"

/* Of one case: the digits of a small room, and what is told and called back. */
#define SNAPSHOT_AFTER_MAX 8

struct snapshot {
	uint8_t idle_asked, idle_copy, has_before, has_other;
	int32_t idle_n, idle_last;
	struct step undo;
	struct held held[HELD_ROOM_MAX];
	int n_held;
	struct after_end after[SNAPSHOT_AFTER_MAX];
	int n_after;
	struct sheet sheet;
	struct sheet more[]; /* before the last step, where UNDO can take it back; then the other room's */
};

/* The world as it is now. The caller frees it. */
struct snapshot *snapshot_take(const struct world *w);

/* The world as it was then. */
void snapshot_put(const struct snapshot *s, struct world *w);

/* The beginning of every walk: no case, and a slip of a finished case that waits to be seen. */
void snapshot_begin(struct world *w);

/* Decides and applies, and so for each stored scan that is to be entered then; `out` is of the last. */
void snapshot_scan(struct world *w, const struct input *in, struct outcome *out);

/* Applies what was decided, as the daemon would. `at_end`: the sheet just before the event case-ended; `ended`: 1
 * where there was one. 0, or a negative errno where an event did not fit. */
int snapshot_apply(struct world *w, struct outcome *out, struct sheet *at_end, int *ended);

#endif
