/* A case in one row (report/source.h): the fold that a report stands on. As a story tells a case, and leaves out what was
 * taken back; but counts and minutes alone, so that many cases can be gone through. Pure.
 */
#ifndef BANDTALLY_TELL_OUTLINE_H
#define BANDTALLY_TELL_OUTLINE_H

#include "count/event.h"
#include "report/source.h"

/* Raised with every change that makes another row of the same events: summaries of before are then thrown away. */
#define OUTLINE_FOLD 4

/* Signs of a work-around, which prove nothing. Each is counted where the time between two scans, by the clock that no one
 * can set, is shorter. */
#define OUTLINE_ANSWER_MS 1000 /* a thing was answered as shown so soon after the scan before it */
#define OUTLINE_LOOK_MS 5000   /* a digit was looked at so soon after the final count was agreed */
#define OUTLINE_BADGES_MS 3000 /* two people's badges were so close together */
#define OUTLINE_BURST 5        /* so many keyed entries within … */
#define OUTLINE_BURST_MS 10000
#define OUTLINE_EVEN 5 /* so many scans one after another with intervals that differ by … at most */
#define OUTLINE_EVEN_MS 50

struct outline;                    /* working memory, for any number of cases; one thread at a time */
struct outline *outline_new(void); /* NULL without memory */
void outline_free(struct outline *o);

/* The row of one case: its events as record_each() gives them, at least one; until when the clocks run of a case that is
 * still open; and the first reminder, in minutes, that the policy of its day had. */
int outline_make(struct outline *o, const struct event *events, int count, struct moment now,
                 int first_reminder_min, struct case_row *row); /* 0 or -ENOMEM */

#endif
