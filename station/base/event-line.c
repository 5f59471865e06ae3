#include "base/event-line.h"

#include <string.h>

#define BEFORE "{\"event\":"
#define HASH ",\"hash\":\""
#define SEQ "\",\"seq\":"
#define DIGITS_MAX 16 /* of a number that JSON_INTEGER_MAX bounds */
#define LENGTH(text) (sizeof(text) - 1)

/* The number that ends the line, and where what stands before it ends; 0 where there is none. */
static int64_t last_number(const char *line, size_t size, size_t *before)
{
	int64_t number = 0, place = 1;
	size_t at = size > 0 && line[size - 1] == '}' ? size - 1 : 0, end = at;
	for (; at > 0 && end - at < DIGITS_MAX && line[at - 1] >= '0' && line[at - 1] <= '9'; at--) {
		number += place * (line[at - 1] - '0');
		place *= 10;
	}
	*before = at;
	return number;
}

int line_event(const char *line, size_t size, struct line_event *out)
{
	const size_t tail = LENGTH(HASH) + LINE_HASH + LENGTH(SEQ);
	size_t end;
	int64_t seq = last_number(line, size, &end);
	if (seq < 1 || end < LENGTH(BEFORE) + tail || memcmp(line, BEFORE, LENGTH(BEFORE)) != 0)
		return 0;
	const char *hash = line + end - tail + LENGTH(HASH);
	if (memcmp(line + end - tail, HASH, LENGTH(HASH)) != 0 ||
	    memcmp(hash + LINE_HASH, SEQ, LENGTH(SEQ)) != 0)
		return 0;
	*out = (struct line_event){
	    .text = line + LENGTH(BEFORE), .size = end - tail - LENGTH(BEFORE), .hash = hash, .seq = seq};
	return strspn(hash, "0123456789abcdef") == LINE_HASH;
}
