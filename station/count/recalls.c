#include <string.h>

#include "count/station.h"

/* What went back unopened lies in the room still. */
static const struct item *recalled_on(const struct sheet *s, const struct event *q)
{
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (strcmp(it->thing.line, q->thing.line) == 0 &&
		    (!q->thing.lot[0] || strcmp(it->thing.lot, q->thing.lot) == 0) &&
		    (item_counts(it) || it->place == ITEM_RETURNED))
			return it;
	}
	return NULL;
}

int station_recalls(const struct station *st, const struct event *q, struct event recalled[SHEETS_MAX])
{
	int n = 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i];
		const struct item *it = s->case_no ? recalled_on(s, q) : NULL;
		if (!it)
			continue;
		struct event *e = &recalled[n++];
		*e = (struct event){.kind = EV_RECALLED,
		                    .at = q->at,
		                    .station = st->number,
		                    .room = s->room,
		                    .case_no = s->case_no};
		memcpy(e->thing.line, q->thing.line, sizeof e->thing.line);
		memcpy(e->thing.lot, q->thing.lot, sizeof e->thing.lot);
		memcpy(e->thing.name, it->thing.name, sizeof e->thing.name);
		memcpy(e->text, q->text, sizeof e->text);
	}
	return n;
}
