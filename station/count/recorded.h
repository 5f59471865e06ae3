/* The settings that count, as the record says that they were: what a paper or a report of that day goes by, whatever the
 * files say now.
 *
 * Each start records those that are otherwise than the record has them (EV_SETTING). The station itself goes by its
 * files; nothing here changes what it decides.
 */
#ifndef BANDTALLY_COUNT_RECORDED_H
#define BANDTALLY_COUNT_RECORDED_H

#include "count/event.h"
#include "count/policy.h"
#include "words/language.h"

#define ROOMS_MAX 16
#define SITE_MAX 3
#define SITE_NAME_MAX 65
#define ROOM_NAME_MAX 33
#define ZONE_MAX 65

struct station;

enum room_kind {
	ROOM_OF_CASES = 0, /* where operations are */
	ROOM_OF_STORES,    /* a stores bench (station/stock) */
	ROOM_OF_AUDIT, /* an auditor's desk, where slips are read and nothing is counted (decide/audit-desk.h) */
};

struct room {
	int32_t number; /* 1..99 as on its cards */
	char name[ROOM_NAME_MAX];
	uint8_t single; /* a room where one operator works alone */
	char language
	    [LANGUAGE_CODE_MAX]; /* of its board and papers, "" the site's; no event has it, for each slip has its own */
	uint8_t kind;            /* enum room_kind */
};

/* X(number, NAME, "name in the record"): what is none of the policy's (count/policy.h has those)
 * n: its number, text: its text, other: which room, point or step; "" or 0 there no longer */
#define SITE_SETTINGS(X)                                                                                     \
	X(1, SITE, "site")           /* text: its two letters */                                             \
	X(2, SITE_NAME, "site-name") /* text */                                                              \
	X(3, ZONE, "zone")           /* text: the name of its time zone */                                   \
	X(4, ROOM, "room")           /* text: its name; n: 1 a room, 2 of a single operator */

enum setting {
	SETTING_NONE = 0,
#define X(number, name, ...) SETTING_##name = number,
	SITE_SETTINGS(X) POLICY_LISTS(X) POLICY_NUMBERS(X)
#undef X
#define X(number, name, ...) +1
	    SETTING_KINDS = 1 SITE_SETTINGS(X) POLICY_LISTS(X) POLICY_NUMBERS(X)
#undef X
};

struct recorded {
	uint32_t known; /* 1 << enum setting: the record has said it */
	char site[SITE_MAX], site_name[SITE_NAME_MAX], zone[ZONE_MAX];
	struct room rooms[ROOMS_MAX];
	int n_rooms;
	struct policy policy;
};

/* As a station's files and its computer say now. `known` is all. */
void recorded_now(struct recorded *out, const struct station *st, const char *zone);

/* Changes it by one EV_SETTING; one of a setting that has no place here changes nothing. */
void recorded_apply(struct recorded *r, const struct event *e);

/* The events, of no case and without a time, that make `was` what `is` is. At most RECORDED_CHANGES_MAX; how many. */
#define RECORDED_CHANGES_MAX (SETTING_KINDS + 2 * ROOMS_MAX + 2 * POLICY_LIST_MAX)
int recorded_changes(const struct recorded *was, const struct recorded *is,
                     struct event out[RECORDED_CHANGES_MAX]);

const struct room *recorded_room(const struct recorded *r, int32_t number); /* NULL where there is none */

#endif
