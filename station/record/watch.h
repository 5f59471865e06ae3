/* Looks at the seals while a record is gone through: what verify.c and nobody else includes.
 *
 * The record names the key that signs (event `key`) and which incarnation of the record it is (event `incarnation`). The
 * last seal of each of these stretches vouches, by the chain, for everything before it, so that the earlier ones need no
 * look. Each start, stop and end of a case after the first `key` must have a seal behind it.
 */
#ifndef BANDTALLY_RECORD_WATCH_H
#define BANDTALLY_RECORD_WATCH_H

#include "record/chain-parts.h"
#include "record/keys.h"
#include "record/verify.h"

struct watch {
	const struct verify_how *how;
	struct verified *v;
	struct record *r;
	struct keys own; /* that the record names */
	struct public_key key;
	int32_t incarnation;
	int64_t unsealed; /* a start, stop or end that waits for its seal; 0 none */
	enum event_kind unsealed_kind;
	int64_t seal;                   /* the last seal of this stretch that was not looked at, 0 none */
	char gone[2 * CHAIN_BYTES + 1]; /* the hash of what its tables say that left; "": not asked yet */
	int64_t gone_rows;
	int gone_is_said; /* by one of the events that say what left */
	struct event ev;  /* the one that is looked at */
};

void watch_begin(struct watch *w, const struct verify_how *how, struct verified *v, struct record *r);

/* One event, in order; and after the last. 0, or a negative errno where the record could not be asked. */
int watch_mark(struct watch *w, const struct mark *m);
int watch_end(struct watch *w);

/* Tells one thing that is not as it should be. */
void watch_found(struct watch *w, const char *format, ...) __attribute__((format(printf, 2, 3)));

#endif
