/* What core.c shares with stored.c and core-scan.c, and nobody else. */
#ifndef BANDTALLY_RUN_CORE_INTERNAL_H
#define BANDTALLY_RUN_CORE_INTERNAL_H

#include "run/core.h"

/* As core_open_noting(), which asks besides about what is held. */
int core_start(struct core *c, const char *folder, const char *head, struct error *e);

/* Decides, stores, applies, and remembers the reply for the board. `*stored` (may be NULL): 1 where the record
 * took it. */
const struct reply *core_carry_out(struct core *c, struct input *in, int *stored);

/* What a scan says, as an input; in->at is set. 1 where it was joined to the half of a pack that came before. */
int core_read(struct core *c, const struct scan *s, struct input *in);

/* Enters what was decided to be entered: n scans that are held for the room, each in a turn of its own. What it
 * says of all stands in the last outcome's reply. */
void core_enter_held(struct core *c, int32_t room, int n);

#endif
