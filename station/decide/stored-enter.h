/* Held scans are entered one by one, as what they would have been (rule 17). */
#ifndef BANDTALLY_DECIDE_STORED_ENTER_H
#define BANDTALLY_DECIDE_STORED_ENTER_H

#include <stdbool.h>

#include "decide/turn.h"

/* The next of the scans that are held for a room, as an input of the present boot; used_in, used_back, slip_case
 * and slip_room are the caller's. False where none is held. */
bool stored_input(const struct station *st, int32_t room, struct moment now, struct input *in);

/* A held digit card whose clock runs as 'on?' since it came; had it come at its time, the count agreed, it would be on. */
enum answered stored_start(struct turn *t);
void stored_entered(struct turn *t); /* after the turn of a held scan: it is held no longer */

#endif
