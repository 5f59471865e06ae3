/* The slips of practice on their way to paper: to the printer of the real ones, or into the folder of that practice, which goes
 * with it. Of what does not come nothing is kept but its state in that record: nobody waits for it. */
#ifndef BANDTALLY_RUN_PRACTICE_SLIPS_H
#define BANDTALLY_RUN_PRACTICE_SLIPS_H

#include "run/daemon.h"

#define PRACTICE_JOBS INT64_C(1000000000000) /* their job ids begin here, behind those of every slip */

void practice_slips_look(struct daemon *d); /* each second: hands over what was queued */
void practice_slips_word(struct daemon *d, int64_t id, enum slip_state state, int64_t cups);

#endif
