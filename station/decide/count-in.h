/* Counting in: what is refused and why, and what is listed late because it is on already (rules 3, 4, 5, 7). Needs a case. */
#ifndef BANDTALLY_DECIDE_COUNT_IN_H
#define BANDTALLY_DECIDE_COUNT_IN_H

#include "decide/turn.h"

/* What is wrong with the thing itself, as part of a sentence; 0 nothing. Rule 5. */
int thing_fault(const struct turn *t, const struct thing *th, struct say *why);

/* What is wrong with something on the list of the tray of the input: `part`, and why; 0 nothing, or it is no tray. */
int tray_fault(const struct turn *t, struct thing *part, struct say *why);

/* The tourniquet whose listing is owed, which its pack will list; 0 none. */
int sheet_owes_listing(const struct sheet *s);

/* The thing of the input comes onto the sheet, or is refused with its reason, or its place is asked for. */
void count_in_thing(struct turn *t);

/* A pack of which nothing is wrong. */
void count_in_pack(struct turn *t, const struct thing *th, int pieces);

/* The pack of a tourniquet that was put on before it was listed. Facts first: even one that would have been refused is
 * listed as what it is, and the refusal `why` (NULL: none) becomes a debt (rules 3 and 5). */
void count_in_list_late(struct turn *t, const struct thing *what, int item, const struct say *why);

#endif
