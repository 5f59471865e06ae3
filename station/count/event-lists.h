/* The enums of an event, each with the name by which the record keeps it.
 *
 * What stands in a record stays for ever, so a name is never changed and never given to anything else. Records of
 * format 1 hold the numbers instead: those that stand here do not move either, and what is new comes at the end of its
 * enum (tests/unit/record/test-format holds every name with its number).
 */
#ifndef BANDTALLY_COUNT_EVENT_LISTS_H
#define BANDTALLY_COUNT_EVENT_LISTS_H

#include <stdint.h>

enum event_list {
	LIST_NONE = 0,    /* no enum: a number */
	LIST_BOUND,       /* enum carried_how */
	LIST_SLIP_KIND,   /* enum slip_kind */
	LIST_SLIP_STATE,  /* enum slip_state */
	LIST_CASE_END,    /* enum case_end */
	LIST_PLACE,       /* enum team_place */
	LIST_EVIDENCE,    /* enum evidence */
	LIST_CONDITION,   /* enum condition */
	LIST_ON_OFF,      /* enum stretch_end */
	LIST_LOOKED,      /* enum who_looked */
	LIST_COUNT,       /* enum count_kind */
	LIST_DONE,        /* enum step_answer */
	LIST_YES_NO,      /* enum point_answer */
	LIST_DEBT,        /* enum debt_kind */
	LIST_QUESTION,    /* enum question */
	LIST_HELD,        /* enum held_kind */
	LIST_HELD_ANSWER, /* enum held_answer */
	LIST_ROLE,        /* enum role */
	LIST_IDENTITY,    /* enum identity_kind */
	LIST_STAFF,       /* enum staff_kind */
	LIST_SETTING,     /* enum setting */
	LIST_HOW,         /* enum paid_how */
	LIST_END_WHY,     /* enum end_why */
	LIST_INCARNATION, /* enum incarnation_why */
	LIST_RECEIVED,    /* enum received_how */
	LIST_LABEL,       /* enum label_fate */
	LIST_TOOK,        /* enum case_took */
	LIST_WRITTEN,     /* enum written_why */
	LIST_BENCH,       /* enum bench_question */
	LIST_AWAY,        /* enum away */
	LIST_COUNTED,     /* enum counted_what */
	LIST_SAYING,      /* enum saying; no record holds its numbers */
	EVENT_LISTS
};

/* The name of a number of the list; NULL where it has none: 0 never has. */
const char *event_list_name(enum event_list list, int64_t number);

/* The number of a name of the list, or -EINVAL. */
int event_list_number(enum event_list list, const char *name);

#endif
