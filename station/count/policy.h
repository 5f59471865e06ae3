/* What a hospital may set: every number and list that the count uses (config/policy.ini). */
#ifndef BANDTALLY_COUNT_POLICY_H
#define BANDTALLY_COUNT_POLICY_H

#include <stddef.h>
#include <stdint.h>

#include "base/error.h"

#define POLICY_LIST_MAX 16
#define POLICY_TEXT_MAX 121

/* What stands in policy.ini and, for the papers of its time, in the record (count/recorded.h), as two lists. A further
 * setting is a row, its lines in config/policy.ini, and its use. The first number is the setting's for ever.
 *
 * X(number, NAME, "name in the record", "section", "key", member, WHOLE or YES_NO, lowest, highest, default) */
/* clang-format off */
#define POLICY_NUMBERS(X) \
	/* minutes after the tourniquet went on, 0 never; and between later ones */ \
	X(7, FIRST_REMINDER, "first-reminder-min", "reminders", "first_reminder_min", first_reminder_min, WHOLE, 0, 1440, 20) \
	X(8, NEXT_REMINDER, "next-reminder-min", "reminders", "next_reminder_min", next_reminder_min, WHOLE, 0, 1440, 10) \
	/* without a scan after a reminder, until every board says it; 0 never */ \
	X(9, NOBODY, "nobody-min", "reminders", "nobody_min", nobody_min, WHOLE, 0, 1440, 5) \
	/* two reads of one code without identity within this are one */ \
	X(10, REPEAT, "repeat-ms", "scans", "repeat_ms", repeat_ms, WHOLE, 0, 60000, 2000) \
	/* a carried scanner works for the last room card this long */ \
	X(11, ROOM_HOLD, "room-hold-min", "scans", "room_hold_min", room_hold_min, WHOLE, 1, 1440, 120) \
	/* scans less than burst_ms apart after gap_s of silence are a burst */ \
	X(12, GAP, "gap-s", "scans", "gap_s", gap_s, WHOLE, 1, 3600, 60) \
	X(13, BURST, "burst-ms", "scans", "burst_ms", burst_ms, WHOLE, 0, 5000, 300) \
	/* a mark in time is recorded this often while a tourniquet is on */ \
	X(14, ALIVE, "alive-s", "record", "alive_s", alive_s, WHOLE, 1, 3600, 60) \
	/* the step of the search that a digit card answers; 0 none */ \
	X(15, LOOK_STEP, "look-step", "search", "look_step", look_step, WHOLE, 0, POLICY_LIST_MAX, 3) \
	/* a count needs both badges; sign-out points are answered one by one */ \
	X(16, BOTH_BADGES, "both-badges", "count", "both_badges", both_badges, YES_NO, 0, 1, 0) \
	X(17, ONE_BY_ONE, "one-by-one", "sign-out", "one_by_one", points_one_by_one, YES_NO, 0, 1, 0) \
	/* a pack that is counted in is told where an earlier one lies in stores */ \
	X(18, EARLIER_FIRST, "earlier-first", "stores", "earlier_first", earlier_first, YES_NO, 0, 1, 1) \
	/* the longest of all periods for which a case must be kept; 0 for ever */ \
	X(19, KEEP, "keep-years", "record", "keep_years", keep_years, WHOLE, 0, 100, 0) \
	/* while the hospital's lists are old, stores are asked about recalls of what is counted in */ \
	X(20, ASK_STORES, "ask-stores", "stores", "ask_when_lists_old", ask_when_lists_old, YES_NO, 0, 1, 0)

/* Texts that are numbered from 1. X(number, NAME, "name in the record", "section", member) */
#define POLICY_LISTS(X) \
	X(5, POINT, "point", "sign-out points", points) /* read aloud at the sign-out */ \
	X(6, SEARCH, "search-step", "search", search)   /* steps of the search, in order */
/* clang-format on */

struct policy {
#define X(number, name, text, section, key, member, kind, low, high, unset) int32_t member;
	POLICY_NUMBERS(X)
#undef X
#define X(number, name, text, section, member)                                                               \
	uint8_t n_##member;                                                                                  \
	char member[POLICY_LIST_MAX][POLICY_TEXT_MAX];
	POLICY_LISTS(X)
#undef X
};

/* Where the number lies that is this setting (enum setting), NULL where it is none of them. */
const int32_t *policy_number(const struct policy *p, uint32_t setting);

void policy_default(struct policy *p);

/* Reads a policy file over the defaults. 0, or a negative errno with file, line and reason in `e`. */
int policy_read(struct policy *p, const char *path, struct error *e);

#endif
