/* Who is at the table, by badge. A badge claims; the slip says what was claimed (rule 8). */
#ifndef BANDTALLY_COUNT_TEAM_H
#define BANDTALLY_COUNT_TEAM_H

#include <stddef.h>
#include <stdint.h>

#include "count/event.h"

enum team_place {
	PLACE_FIELD = 1,   /* at the field: the scrub practitioner, or the operator who works alone */
	PLACE_CIRCULATING, /* not scrubbed: scans and records */
	PLACE_SURGEON,
	PLACE_CHARGE,
	PLACE_VISITOR,
	TEAM_PLACES
};

#define VISITORS_MAX 4 /* cards VISITOR 1 to 4 are persons -1 to -4 */

struct team {
	int32_t at[TEAM_PLACES]; /* badge number in each place, 0 nobody yet */
};

struct staff { /* everybody who has a badge here; owns its list */
	struct person *list;
	size_t count, room;
};

void staff_deinit(struct staff *s);
int staff_reserve(struct staff *s, size_t more); /* as many further can be set without memory; 0 or -ENOMEM */
int staff_set(struct staff *s, const struct person *p); /* adds or replaces by number; 0 or -ENOMEM */
const struct person *staff_find(const struct staff *s, int32_t number); /* NULL when unknown */

/* Of a new badge: behind the highest that was ever given; where none is left there, the lowest that never was. 0: none is. */
#define BADGE_NUMBER_MAX 999999 /* six digits in its code */
int32_t staff_new_number(const struct staff *s);
const char *staff_name(const struct staff *s, int32_t number); /* "badge unknown" when unknown */

const char *staff_kind_name(enum staff_kind kind); /* "practitioner", "surgeon", "nurse-in-charge" */
int staff_kind_from_name(const char *name);        /* enum staff_kind, or -EINVAL */

enum team_place team_place_of(const struct team *t, int32_t number); /* 0 when not here */

/* 1 where the surgeon is here with a badge, does not count yet, and can be the one at the field while `wanted` is asked for. */
int team_surgeon_may_count(const struct team *t, enum team_place wanted);
/* Why these two may not agree a count (rule 8), or SAY_NONE when they may. */
enum saying team_may_not_agree(const struct team *t, const struct staff *s);

const char *place_name(enum team_place place); /* "field", … as in the record */
enum saying place_saying(enum team_place place);
const char *place_words(enum team_place place);

#endif
