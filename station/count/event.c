#include "count/event.h"

#include <errno.h>
#include <string.h>

static const struct {
	const char *name;
	enum event_group group;
	uint32_t fields;
} kinds[EV_KINDS] = {
#define X(name, text, group, lasts, fields) [EV_##name] = {text, EVENTS_OF_##group, fields},
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
	for (int k = 0; k < EV_KINDS; k++)
		if (strcmp(kinds[k].name, name) == 0)
			return k;
	return -EINVAL;
}
