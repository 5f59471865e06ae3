#include "record/head.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/file.h"
#include "base/json.h"

static int take(const json_t *o, const char *key, int64_t low, int64_t high, int64_t *out)
{
	*out = json_number(o, key, -1);
	return *out >= low && *out <= high;
}

void head_place(char out[HEAD_PLACE_MAX], const char *folder, const char *otherwise, const char *named)
{
	if (named[0] || otherwise)
		snprintf(out, HEAD_PLACE_MAX, "%.255s", named[0] ? named : otherwise);
	else
		snprintf(out, HEAD_PLACE_MAX, "%.255s/head", folder);
}

int head_read(struct noted *out, const char *file, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	int64_t seq, incarnation, case_no, slip, item, version;
	int n = file_read(file, &text);
	*out = (struct noted){0};
	if (n < 0)
		return error_set(e, n, "cannot read %.300s: %s: check the path", file, strerror(-n));
	_cleanup_(json_drop) json_t *o = json_read(text.data ? text.data : "", text.size, NULL);
	const char *hash = json_text(o, "hash");
	if (!take(o, "v", 1, 1, &version) || !take(o, "seq", 1, JSON_INTEGER_MAX, &seq) ||
	    !take(o, "incarnation", 1, INT32_MAX, &incarnation) || !take(o, "case", 0, INT32_MAX, &case_no) ||
	    !take(o, "slip", 0, INT32_MAX, &slip) || !take(o, "item", 0, 99999999, &item) ||
	    strlen(hash) != sizeof out->head.hash - 1 || strspn(hash, "0123456789abcdef") != strlen(hash))
		return error_set(e, -EINVAL, "%.300s is not a record's head: it is damaged or another file",
		                 file);
	*out = (struct noted){
	    .head = {.seq = seq, .case_no = (int32_t)case_no, .slip = (int32_t)slip, .item = item},
	    .incarnation = (int32_t)incarnation};
	memcpy(out->head.hash, hash, sizeof out->head.hash);
	return 0;
}

int head_write(const struct noted *head, const char *file, int durable)
{
	const struct head *h = &head->head;
	char text[300];
	int n =
	    snprintf(text, sizeof text,
	             "{\"case\":%d,\"hash\":\"%s\",\"incarnation\":%d,\"item\":%lld,\"seq\":%lld,\"slip\":%d,"
	             "\"v\":1}\n",
	             (int)h->case_no, h->hash, (int)head->incarnation, (long long)h->item, (long long)h->seq,
	             (int)h->slip);
	return (durable ? file_replace : file_replace_soon)(file, 0644, text, (size_t)n);
}

int head_compare(struct record *r, const struct head *head)
{
	char hex[2 * CHAIN_BYTES + 1];
	struct chain there;
	int n = record_hash_at(r, head->seq, &there);
	if (n < 0)
		return n;
	chain_hex(&there, hex);
	return n == RECORD_HAS_NONE ? HEAD_BEHIND : strcmp(hex, head->hash) == 0 ? HEAD_HELD : HEAD_OTHER;
}
