#include "record/case-events.h"

#include <errno.h>
#include <stdlib.h>

static int keep(void *context, const struct event *e)
{
	struct case_events *all = context;
	if (all->count == all->room) {
		int room = all->room ? 2 * all->room : 256;
		struct event *more = realloc(all->list, (size_t)room * sizeof *more);
		if (!more)
			return -ENOMEM;
		all->list = more;
		all->room = room;
	}
	all->list[all->count++] = *e;
	return 0;
}

int case_events_read(struct case_events *all, struct record *r, int32_t case_no, struct error *e)
{
	all->count = 0;
	return record_each(r, case_no, keep, all, e);
}

void case_events_deinit(struct case_events *all)
{
	free(all->list);
	*all = (struct case_events){0};
}
