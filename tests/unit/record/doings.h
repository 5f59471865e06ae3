/* What the record is asked to do, each on a copy of the same small record, and what it told then. test-failing asks it while
 * the world fails. */
#ifndef BANDTALLY_TESTS_RECORD_DOINGS_H
#define BANDTALLY_TESTS_RECORD_DOINGS_H

#include <stddef.h>

#include "base/error.h"

enum opened { NOTHING, THE_RECORD, A_COPY };
enum trait {
	WORDLESS = 1,  /* its code is all that the caller gets */
	MAY_DOUBT = 2, /* it may find fault with what is right, never pass over what it ordinarily finds */
	ONCE =
	    4, /* what it had begun shows the next time: restoring names a file by the second, a key is there */
};

struct doing {
	const char *what;
	int (*run)(struct error *e); /* 0 or a negative errno */
	enum opened opened;
	int traits;
	int adds; /* events */
};

#define TOLD_MAX 2000

struct told {
	char text[TOLD_MAX];
	int doubts; /* what the look through a record, or at a slip, finds fault with */
};

extern const struct doing all_doings[];
extern const size_t n_doings;
const struct doing *doing_of(const char *what);

/* cmocka's set-up and tear-down of a group: the record that all of it is tried on. */
int doings_make_whole(void **state);
int doings_drop_whole(void **state);

/* Around one attempt: a copy of that record, with what the doing needs open; nothing told yet. */
void doing_set_up(const struct doing *a);
void doing_tear_down(void);

/* What was told since the set-up, or since it was forgotten. */
const struct told *doing_told(void);
void doing_forget(void);

/* The record verifies, and has `more` events than it had before; the test ends where not. Closes it. */
void doing_is_whole(const struct doing *a, const char *failed, int more);

#endif
