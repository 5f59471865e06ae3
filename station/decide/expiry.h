/* Expiry while the wall clock is wrong: nobody but a person who reads the date can judge it (rules 3, 5). */
#ifndef BANDTALLY_DECIDE_EXPIRY_H
#define BANDTALLY_DECIDE_EXPIRY_H

#include "decide/turn.h"

void expiry_owe(struct turn *t, int first,
                int last); /* of these items, while the wall clock cannot be believed */
/* Where it is owed the badge pays it, but not before a tourniquet that nobody listed (rule 19). */
void expiry_read(struct turn *t, int32_t badge);

#endif
