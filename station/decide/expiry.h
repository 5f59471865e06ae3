/* Expiry while the wall clock is wrong: nobody but a person who reads the date can judge it (rules 3, 5). */
#ifndef BANDTALLY_DECIDE_EXPIRY_H
#define BANDTALLY_DECIDE_EXPIRY_H

#include "decide/turn.h"

void expiry_owe(struct turn *t, int first,
                int last); /* of these items, while the wall clock cannot be believed */
/* 1 where it was owed: the badge pays it. 0 also where a tourniquet that nobody listed is asked for first (rule 19). */
int expiry_read(struct turn *t, int32_t badge);

#endif
