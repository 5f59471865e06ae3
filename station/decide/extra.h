/* Something turned up that is not on the sheet: a surplus makes the count wrong as well (rules 1, 24). */
#ifndef BANDTALLY_DECIDE_EXTRA_H
#define BANDTALLY_DECIDE_EXTRA_H

#include "decide/turn.h"

void extra_turned_up(struct turn *t); /* the thing of the input, while a count goes on */
void extra_ask(struct turn *t,
               int item); /* was that one opened in this case? Its code asks again, whatever was answered */
/* It was opened in this case. Facts first: one that would have been refused as well, and the surgeon answers for it (rules 3,
 * 5). */
void extra_opened_here(struct turn *t, int item);
/* What was found without a number is of this case, which has ended: it is noted there, and here the extra item, if there is one,
 * is settled (rule 21). Says so. */
void extra_of_case(struct turn *t, int32_t case_no);

#endif
