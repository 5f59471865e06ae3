#include "drivers/handheld-events.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

int key_event_read(const char *line, int64_t last_ms, struct key_event *out, struct error *e)
{
	int end = 0;
	if (*line == '#' || *line == '\0')
		return KEY_EVENT_NONE;
	if (sscanf(line, "%" SCNd64 " %5u %5u %11d%n", &out->ms, &out->type, &out->code, &out->value, &end) !=
	        4 ||
	    line[end] != '\0')
		return error_set(e, -EINVAL, "\"%.40s\" is no event: write time, type, code and value", line);
	if (out->ms < last_ms)
		return error_set(e, -EINVAL, "the time goes back: keep the events in order");
	return KEY_EVENT_READ;
}

int key_event_write(int fd, const struct key_event *event)
{
	char line[80];
	int n = snprintf(line, sizeof line, "%" PRId64 " %u %u %d\n", event->ms, event->type, event->code,
	                 event->value);
	return write(fd, line, (size_t)n) == n ? 0 : errno ? -errno : -EIO;
}
