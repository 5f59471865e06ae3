#include "forward/queue.h"

#include <arpa/inet.h>
#include <errno.h>
#include <string.h>

#define LENGTH_BYTES 4
#define HASH_ENTRY (LENGTH_BYTES + HASH_BYTES)

void queue_begin(struct queue *q, int64_t after)
{
	q->after = after;
	q->count = 0;
	buf_clear(&q->texts);
	buf_clear(&q->hashes);
}

static int add_entry(struct buf *to, const void *bytes, size_t size)
{
	uint32_t length = htonl((uint32_t)size);
	int n = buf_add(to, &length, sizeof length);
	return n < 0 ? n : buf_add(to, bytes, size);
}

static int nibble(char c)
{
	static const char digits[] = "0123456789abcdef";
	const char *at = c ? strchr(digits, c) : NULL;
	return at ? (int)(at - digits) : -1;
}

int queue_add(struct queue *q, const struct line_event *e)
{
	unsigned char hash[HASH_BYTES];
	size_t texts = q->texts.size;
	for (size_t i = 0; i < sizeof hash; i++) {
		int high = nibble(e->hash[2 * i]), low = nibble(e->hash[2 * i + 1]);
		if (high < 0 || low < 0)
			return -EINVAL;
		hash[i] = (unsigned char)(high << 4 | low);
	}
	if (e->size > INT32_MAX / 2)
		return -EINVAL;
	int n = add_entry(&q->texts, e->text, e->size);
	if (n == 0)
		n = add_entry(&q->hashes, hash, sizeof hash);
	if (n < 0) {
		q->texts.size = texts;
		q->hashes.size = q->count * HASH_ENTRY;
		return n;
	}
	q->count++;
	return 0;
}

static size_t entry_size(const struct queue *q, size_t at)
{
	uint32_t length;
	memcpy(&length, q->texts.data + at, sizeof length);
	return LENGTH_BYTES + ntohl(length);
}

size_t queue_batch(const struct queue *q, size_t most, size_t bytes, size_t *texts, size_t *hashes)
{
	size_t n = 0, at = 0;
	while (n < q->count && n < most && (n == 0 || at + entry_size(q, at) <= bytes)) {
		at += entry_size(q, at);
		n++;
	}
	*texts = at;
	*hashes = n * HASH_ENTRY;
	return n;
}

void queue_drop(struct queue *q, size_t count)
{
	size_t texts = 0;
	for (size_t i = 0; i < count; i++)
		texts += entry_size(q, texts);
	buf_drop(&q->texts, texts);
	buf_drop(&q->hashes, count * HASH_ENTRY);
	q->count -= count;
	q->after += (int64_t)count;
}

const char *queue_hash(const struct queue *q, size_t index)
{
	return q->hashes.data + index * HASH_ENTRY + LENGTH_BYTES;
}

void queue_free(struct queue *q)
{
	buf_free(&q->texts);
	buf_free(&q->hashes);
	*q = (struct queue){0};
}
