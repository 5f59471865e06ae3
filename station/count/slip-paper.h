/* A paper that somebody holds, and what the record says of it.
 *
 * The code of a slip names one copy and bears six digits that were made from the station's key when that copy was queued,
 * and stand in that event: nobody can work them out, so that whoever has them has, or had, the paper. Papers of record
 * format 1 bear none.
 *
 * Pure, and made from events alone; whoever reads the record follows the slip's events from the first to the last.
 */
#ifndef BANDTALLY_COUNT_SLIP_PAPER_H
#define BANDTALLY_COUNT_SLIP_PAPER_H

#include "count/station.h"

struct paper {
	int32_t copy;   /* of the slip; which one is asked about */
	int32_t proof;  /* its six digits, 1 to 999999; 0 of format 1 */
	int station;    /* whose number its code bears; 0 of format 1 */
	uint8_t queued; /* 1: the record has this copy */
	uint8_t made;   /* 1: it was written, or handed to the printer */
	uint8_t seen;   /* the copy of this slip that was read back first, 0 none was */
};

/* Takes an event; it does nothing unless it is of the slip `slip->number`. The slip stays seen once it was. */
void paper_follow(struct slip *slip, struct paper *paper, const struct event *e);

/* Whether the digits on it are those that the station gave it. */
int paper_is_ours(const struct paper *paper, int32_t proof);

#endif
