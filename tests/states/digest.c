#include "digest.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "event-words.h"

static void take_in(uint64_t *digest, const void *bytes, size_t size)
{
	for (const unsigned char *at = bytes; size--; at++)
		*digest = (*digest ^ *at) * 1099511628211u;
}

void digest_outcome(uint64_t *digest, const struct station *st, const struct input *in,
                    const struct outcome *out)
{
	static const char *const verdicts[] = {"accepted", "refused", "question"};
	static struct buf words;
	struct event_context c = {.staff = &st->staff, .now = in->at, .room = in->room};
	buf_clear(&words);
	for (int i = 0; i < out->count; i++) {
		event_words(&out->events[i], &c, &words);
		buf_add_text(&words, "\n");
	}
	buf_add_text(&words, verdicts[out->reply.verdict]);
	buf_add_text(&words, out->reply.said);
	buf_add_text(&words, "\n");
	buf_add_text(&words, out->reply.next.words);
	take_in(digest, words.data, words.size);
}

void digest_line(struct buf *lines, uint64_t digest, const char *room)
{
	buf_printf(lines, "%016" PRIx64 " %s\n", digest, room);
}

static int tell_difference(const char *now, FILE *then)
{
	char line[256];
	int differ = 0;
	while (*now || !feof(then)) {
		int size = (int)strcspn(now, "\n");
		if (!fgets(line, sizeof line, then))
			line[0] = 0;
		line[strcspn(line, "\n")] = 0;
		if ((int)strlen(line) != size || strncmp(line, now, (size_t)size) != 0) {
			printf("decided or said otherwise:\n  now:      %.*s\n  expected: %s\n", size, now,
			       line);
			differ = 1;
		}
		now += size + (now[size] != 0);
	}
	return differ;
}

int digest_compare(const char *file, int update, const struct buf *lines)
{
	FILE *f = fopen(file, update ? "we" : "re");
	int differ = !f;
	if (!f)
		perror(file);
	else if (update)
		differ = fwrite(lines->data, 1, lines->size, f) != lines->size;
	else
		differ = tell_difference(lines->data ? lines->data : "", f);
	if (f && fclose(f) != 0)
		differ = 1;
	return differ;
}
