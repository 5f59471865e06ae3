/* What stood at one event of the record: the settings and the people with a badge, by whose names a paper of that time is
 * told (rule 25). Folded from record_each_setting()'s events; nothing of today goes in but what no event ever said.
 */
#ifndef BANDTALLY_TELL_PAST_H
#define BANDTALLY_TELL_PAST_H

#include "count/station.h"

struct past {
	int64_t to; /* events up to this one, and that one */
	struct recorded settings;
	struct staff staff;
	uint32_t known;      /* settings that had been recorded by then */
	struct moment later; /* when the record first said what it had not said by then; boot 0: not yet */
};

/* `now`: whose settings stand where the record never says any, which is before format 2. */
void past_init(struct past *p, int64_t to, const struct station *now);
void past_deinit(struct past *p);

/* Takes one event, in the order of the record. A setting that was not recorded by then is taken from the start that first
 * recorded it: it is nearest. 0 or -ENOMEM. */
int past_take(void *past, const struct event *e);

const char *past_room_name(const struct past *p, const struct language *language, int32_t room);

#endif
