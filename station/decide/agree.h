/* Counts that are agreed aloud, or stated by a lone operator (rule 8). Needs a case. */
#ifndef BANDTALLY_DECIDE_AGREE_H
#define BANDTALLY_DECIDE_AGREE_H

#include "decide/turn.h"

/* The count that waits to be agreed, recorded by this badge: the circulating one, or under a policy of both badges the
 * second of the two. */
void count_agree(struct turn *t, int32_t badge);
/* A handover count that was begun is owed until it is agreed. */
void handover_agree(struct turn *t, int32_t badge);
/* A lone operator's badge states the count that is owed ('single-person' throughout); the second: the final count, whose
 * last line was answered in another way than by the operator's scan. */
void count_state_alone(struct turn *t, enum debt_kind kind);
void count_state_final(struct turn *t, int32_t badge);
/* Pays the listing of a tourniquet that no pack or catalogue lists: the badge records that it was named aloud. */
void listing_named_aloud(struct turn *t);

#endif
