/* What a start finds out about the proof of its record, and what it writes beside it (count/proof.h, record/seal.h). */
#ifndef BANDTALLY_RUN_PROVE_H
#define BANDTALLY_RUN_PROVE_H

#include "run/core.h"

/* Fills the event that says which key signs from here on. 1 where one is needed, 0 where the record says so already. */
int prove_key(const struct core *c, struct event *ev);

/* Writes the public keys beside the record: the one that signs, and every earlier one of file and record. What fails is
 * logged: the record holds them all. */
void prove_publish(struct core *c);

#endif
