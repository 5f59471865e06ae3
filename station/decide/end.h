/* The sign-out and the ends of a case (rules 1, 15, 16). Needs a case. */
#ifndef BANDTALLY_DECIDE_END_H
#define BANDTALLY_DECIDE_END_H

#include "decide/turn.h"

/* Refused with what is owed; or the points are asked one by one, a witness is asked for, or the case ends (rule 1). */
void sign_out_begin(struct turn *t, int32_t badge);
void sign_out_witnessed(struct turn *t, int32_t witness); /* of the visiting surgeon who is asked about */
/* NO where the points are to be answered together: then they are asked one by one, and the badge comes after. */
void sign_out_ask_points(struct turn *t);
void sign_out_again(struct turn *t);          /* INTERRUPTED: it begins again from the first point */
void sign_out_point(struct turn *t, int yes); /* to the point that is asked: NO holds the sign-out */

/* Each item is marked used in its case, and its slip is queued. `typed`: what people gave as the reason, with END_TYPED. */
void turn_end_case(struct turn *t, enum case_end how, enum end_why why, const char *typed);
void case_cancel(struct turn *t); /* YES to Q_CANCEL: what was opened is still to be counted */
enum answered case_surgeon_ends(struct turn *t, const struct person *p,
                                enum team_place place);       /* at Q_SURGEON_ENDS */
void case_end_unresolved(struct turn *t, const char *number); /* at Q_INCIDENT; "": the number is owed */

#endif
