/* Events that wait to be kept, in order and without a gap. A zeroed struct is an empty one behind event 0. */
#ifndef BANDTALLY_FORWARD_QUEUE_H
#define BANDTALLY_FORWARD_QUEUE_H

#include <stddef.h>
#include <stdint.h>

#include "base/buf.h"
#include "forward/line.h"

#define HASH_BYTES 32

struct queue {
	int64_t after; /* the event before the first */
	size_t count;
	struct buf
	    texts; /* behind each other, each with its length before it, as PostgreSQL's binary arrays have them */
	struct buf hashes; /* likewise */
};

void queue_begin(struct queue *q, int64_t after); /* empty, memory kept */
/* 0, -ENOMEM, or -EINVAL where its hash is none. */
int queue_add(struct queue *q, const struct line_event *e);
/* How many of the first ones go into one batch: at most `most` of them and `bytes` of text, and one in any case; and how much
 * room they take in `texts` and `hashes`. */
size_t queue_batch(const struct queue *q, size_t most, size_t bytes, size_t *texts, size_t *hashes);
void queue_drop(struct queue *q, size_t count); /* the first ones are kept: count at most q->count */
/* The hash of the one at `index`. */
const char *queue_hash(const struct queue *q, size_t index);
void queue_free(struct queue *q);

#endif
