/* The events of one case, held together so that a story can be told of them. */
#ifndef BANDTALLY_RECORD_CASE_EVENTS_H
#define BANDTALLY_RECORD_CASE_EVENTS_H

#include "record/store.h"

/* The events of one case, in order, as record_each() has them; all zero before the first. Each read forgets the case before. */
struct case_events {
	struct event *list;
	int count, room;
};
int case_events_read(struct case_events *all, struct record *r, int32_t case_no, struct error *e);
void case_events_deinit(struct case_events *all);

#endif
