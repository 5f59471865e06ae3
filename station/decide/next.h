/* The next thing to do: what is wanted (want.h), as a head and the deeds that fit (count/deed.h). Pure. */
#ifndef BANDTALLY_DECIDE_NEXT_H
#define BANDTALLY_DECIDE_NEXT_H

#include "count/deed.h"
#include "count/station.h"

struct outcome;

/* What comes next on this sheet, or in this room where it has none (case_no 0). */
void next_step(const struct station *st, const struct sheet *s, int32_t room, struct moment now,
               struct next *out);

/* A room without a running case, as it will be after this scan. */
struct station_view {
	int32_t room;
	int unseen;                /* slips that no scanner has read back */
	uint8_t asked;             /* enum question */
	int32_t last;              /* station.idle_last */
	int32_t suspended;         /* a case of this room that can be continued, 0 none */
	const struct outcome *out; /* what was decided there and is not applied yet; NULL nothing */
	struct after_end
	    owed; /* what is owed there first to the patient of an ended case; case_no 0: nothing */
};
void next_after(const struct station *st, const struct sheet *s, struct moment now,
                const struct station_view *after, struct next *n);

#endif
