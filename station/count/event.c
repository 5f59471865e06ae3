#include "count/event.h"

#include <errno.h>
#include <string.h>

#include "base/eight.h"

static const struct {
	const char *name;
	uint64_t head; /* EIGHT_OF() it */
	enum event_group group;
	uint32_t fields;
} kinds[EV_KINDS] = {
#define X(name, text, group, lasts, fields) [EV_##name] = {text, EIGHT_OF(text), EVENTS_OF_##group, fields},
    EVENTS(X)
#undef X
};

const char *event_name(enum event_kind kind)
{
	return kind < EV_KINDS ? kinds[kind].name : "unreadable";
}

uint32_t event_fields(enum event_kind kind)
{
	return kind < EV_KINDS ? kinds[kind].fields : 0;
}

enum event_group event_group(enum event_kind kind)
{
	return kind < EV_KINDS ? kinds[kind].group : EVENTS_OF_NOTE;
}

int event_from_name(const char *name)
{
	uint64_t head = eight_of(name);
	for (int k = 0; k < EV_KINDS; k++)
		if (kinds[k].head == head && (head >> 56 == 0 || strcmp(kinds[k].name, name) == 0))
			return k;
	return -EINVAL;
}
