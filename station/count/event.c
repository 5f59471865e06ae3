#include "count/event.h"

#include <errno.h>
#include <string.h>

static const struct {
	const char *name;
	uint32_t fields;
} kinds[EV_KINDS] = {
#define X(name, text, fields) [EV_##name] = {text, fields},
    EVENTS(X)
#undef X
};

const char *event_name(enum event_kind kind)
{
	return kinds[kind].name;
}

uint32_t event_fields(enum event_kind kind)
{
	return kinds[kind].fields;
}

int event_from_name(const char *name)
{
	for (int k = 0; k < EV_KINDS; k++)
		if (strcmp(kinds[k].name, name) == 0)
			return k;
	return -EINVAL;
}
