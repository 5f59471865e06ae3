/* An auditor's desk: a scanner reads slips one after the other, and each is told whether the record holds it.
 *
 * Two codes stand on a slip. The square one with the signed summary says whether what was signed is what the record holds; the
 * one that a room reads back says that the paper was made here. Nothing is counted at a desk and no slip becomes seen by it.
 */
#ifndef BANDTALLY_DECIDE_AUDIT_DESK_H
#define BANDTALLY_DECIDE_AUDIT_DESK_H

#include "decide/turn.h"

/* Whatever is scanned there is answered, and no event but a refusal comes of it. */
void audit_desk_take(struct turn *t);

#endif
