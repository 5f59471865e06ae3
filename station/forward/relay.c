#include "forward/relay.h"

#include <errno.h>
#include <inttypes.h>
#include <poll.h>
#include <stdlib.h>

#include "base/log.h"

#define BATCH 2000
#define BATCH_BYTES (4u << 20)

struct relay {
	struct store *from, *to;
	struct store_head heads[RELAY_STATIONS];
	struct queue queue;
	int64_t sent;
	int refused; /* stations that stay behind */
};

static int wait_for_answer(struct store *to, struct store_append *a, struct store_fault *f)
{
	int n;
	while ((n = store_answer(to, a, f)) == STORE_NOT_YET) {
		struct pollfd p = {.fd = store_socket(to),
		                   .events = (short)(POLLIN | (store_writing(to) ? POLLOUT : 0))};
		if (poll(&p, 1, STORE_PATIENCE_MS) == 0) {
			f->word = FORWARD_SLOW;
			return -ETIMEDOUT;
		}
	}
	return n;
}

/* What the region says of a station that it does not take. The others go on. */
static int leave_station(struct relay *r, const struct store_head *h, const char *why, int64_t seq)
{
	log_warn(LOG_HOSPITAL,
	         "station %d, incarnation %d: the region %s at event %" PRId64
	         ": it gets nothing further of it until somebody there has looked",
	         (int)h->number, (int)h->incarnation, why, seq);
	r->refused++;
	return 0;
}

/* The region has a later state than the hospital, or has not heard of it yet. 1 go on behind queue.after, 0 nothing is to be
 * sent, negative errno. */
static int agree(struct relay *r, const struct store_head *h, struct store_fault *f)
{
	struct store_station who = {h->number, h->incarnation, h->last_seq, ""};
	struct store_hello hello = {0};
	enum store_status status = STORE_OK;
	int n = store_say_hello(r->to, &who, &hello, f);
	if (n < 0)
		return n;
	if (hello.status == STORE_BEHIND)
		return leave_station(r, h, "has more than the hospital", hello.last.seq);
	if (hello.status == STORE_BEGIN) {
		n = store_begin(r->to, &who, h->base_seq, h->base_hash, &status, f);
		if (n < 0)
			return n;
		if (status != STORE_OK)
			return leave_station(r, h, "does not take its beginning", h->base_seq);
	}
	int64_t last = hello.status == STORE_BEGIN ? h->base_seq : hello.last.seq;
	/* The last one once more, where there is one of this incarnation: the append function compares the two. */
	queue_begin(&r->queue, last > h->base_seq ? last - 1 : last);
	return h->last_seq > r->queue.after;
}

/* What had left the station's record before the hospital heard of it: the region is told the same. 1 told, 0 nothing left
 * there or, with its answer in `a`, not taken; negative errno. */
static int tell_gone(struct relay *r, const struct store_head *h, struct store_append *a,
                     struct store_fault *f)
{
	struct store_station who = {h->number, h->incarnation, h->last_seq, ""};
	struct store_at to = {0};
	int n = store_gone(r->from, h, r->queue.after, &to, f);
	if (n > 0)
		n = store_skip(r->to, &who, r->queue.after, &to, a, f);
	if (n < 0 || a->status != STORE_OK)
		return n < 0 ? n : 0;
	queue_begin(&r->queue, to.seq);
	return 1;
}

static int send_batch(struct relay *r, const struct store_head *h, struct store_append *a,
                      struct store_fault *f)
{
	struct store_station who = {h->number, h->incarnation, h->last_seq, ""};
	size_t texts, hashes, count = queue_batch(&r->queue, BATCH, BATCH_BYTES, &texts, &hashes);
	int n = store_append(r->to, &who, &r->queue, count, texts, hashes, f);
	if (n == 0)
		n = wait_for_answer(r->to, a, f);
	if (n < 0 || a->status != STORE_OK)
		return n < 0 ? n : 0;
	queue_drop(&r->queue, count);
	r->sent += (int64_t)count;
	return 1;
}

/* 0, or a negative errno where a store is lost. */
static int relay_station(struct relay *r, const struct store_head *h, struct store_fault *f)
{
	int n = agree(r, h, f);
	while (n > 0 && (r->queue.count || r->queue.after < h->last_seq)) {
		struct store_append a = {0};
		n = r->queue.count ? 0 : tell_gone(r, h, &a, f);
		if (n == 0 && !a.status && !r->queue.count)
			n = store_read(r->from, h, &r->queue, BATCH, f);
		if (n >= 0 && !a.status)
			n = send_batch(r, h, &a, f);
		if (n == 0)
			return leave_station(r, h, a.status == STORE_FORK ? "has another" : "refuses it",
			                     r->queue.after + 1);
	}
	return n < 0 ? n : 0;
}

static int once(struct relay *r, struct store_fault *f)
{
	r->sent = r->refused = 0;
	int n = store_heads(r->from, r->heads, RELAY_STATIONS, f), count = n;
	for (int i = 0; n >= 0 && i < count; i++)
		n = relay_station(r, &r->heads[i], f);
	if (r->sent > count)
		log_line("%" PRId64 " events of %d stations were sent", r->sent, count);
	return n < 0 ? n : r->refused ? -EPROTO : 0;
}

static void leave(struct relay *r)
{
	store_close(r->from);
	store_close(r->to);
	r->from = r->to = NULL;
}

int relay_run(const struct store_place *from, const struct store_place *to, int every_ms)
{
	struct relay *r = calloc(1, sizeof *r);
	int n = r ? 0 : -ENOMEM;
	while (r) {
		struct store_fault f = {0};
		n = r->from ? 0 : store_open(&r->from, from, &f);
		if (n == 0 && !r->to)
			n = store_open(&r->to, to, &f);
		if (n == 0)
			n = once(r, &f);
		if (n < 0 && n != -EPROTO) {
			log_warn(LOG_HOSPITAL, "%s: %s", forward_word_name(f.word), f.why);
			leave(r);
		}
		if (!every_ms)
			break;
		poll(NULL, 0, every_ms);
	}
	if (r) {
		leave(r);
		queue_free(&r->queue);
	}
	free(r);
	return n;
}
