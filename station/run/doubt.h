/* Why the station cannot be trusted now (rule 17), as people read it. */
#ifndef BANDTALLY_RUN_DOUBT_H
#define BANDTALLY_RUN_DOUBT_H

#include "run/core.h"

/* Whole sentences; "" where it can be trusted. Whoever shows them says besides: count by hand. case_no: of which case, or
 * UNFOLLOWED_OF_CASES, it is told as well what could not be followed; 0 none: what is not known of one case makes nobody
 * count another by hand (rule 24). */
void core_distrust_in(const struct core *c, const struct language *language, int32_t case_no,
                      char out[DISTRUST_MAX]);

#endif
