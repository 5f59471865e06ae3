/* What a hospital may set: every number and list that the count uses (config/policy.ini). */
#ifndef BANDTALLY_COUNT_POLICY_H
#define BANDTALLY_COUNT_POLICY_H

#include <stddef.h>
#include <stdint.h>

#include "base/error.h"

#define POLICY_LIST_MAX 16
#define POLICY_TEXT_MAX 121

struct policy {
	int32_t first_reminder_min; /* after the tourniquet went on; 0 never */
	int32_t next_reminder_min;  /* between later ones */
	int32_t nobody_min;         /* without a scan after a reminder, until every board says it; 0 never */
	int32_t repeat_ms;          /* two reads of one code without identity within this are one */
	int32_t room_hold_min;      /* a carried scanner works for the last room card this long */
	int32_t gap_s, burst_ms;    /* scans less than burst_ms apart after gap_s of silence are a burst */
	int32_t alive_s;            /* a mark in time is recorded this often while a tourniquet is on */
	uint8_t both_badges;        /* a count needs both badges */
	uint8_t points_one_by_one;  /* sign-out points are answered one by one */
	int32_t look_step;          /* the step of the search that a digit card answers; 0 none */
	uint8_t n_points, n_search;
	char points[POLICY_LIST_MAX][POLICY_TEXT_MAX]; /* read aloud at the sign-out */
	char search[POLICY_LIST_MAX][POLICY_TEXT_MAX]; /* steps of the search, in order */
};

void policy_default(struct policy *p);

/* Reads a policy file over the defaults. 0, or a negative errno with file, line and reason in `e`. */
int policy_read(struct policy *p, const char *path, struct error *e);

#endif
