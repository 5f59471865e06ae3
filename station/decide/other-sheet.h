/* A thing that is scanned here and stands on another open sheet (rules 4, 24). */
#ifndef BANDTALLY_DECIDE_OTHER_SHEET_H
#define BANDTALLY_DECIDE_OTHER_SHEET_H

#include "decide/turn.h"

/* 1 where it is no item of that case: it turned up there, whose count only asks whether it was opened there. */
int other_sheet_turned_up(const struct station *st, int32_t case_no, const struct thing *th);

/* What is on a digit here stands on no other open sheet (rule 4). One that was used there cannot be the same thing: its number
 * is not believed here, and `th` loses it. Nothing where it stands on no other, or lies there unused. */
void other_sheet_believe(const struct turn *t, struct thing *th);

/* One that lies counted in there, unused, or has turned up there, leaves that sheet, whose room is told. Behind the first event
 * of this case: the step that it begins is what UNDO must not take back alone. */
void other_sheet_take_from(struct turn *t, const struct thing *th);

/* It lies unused on another open sheet, and its code was read here: only a person knows where it is, and is asked. */
enum answered other_sheet_ask_where(struct turn *t);

/* It is found here, or another open sheet looks for it: then it is refused as below. */
enum answered other_sheet_found(struct turn *t);

/* The slip of a case that has not ended answers for nothing: it is refused, and says in which room what was found belongs. */
enum answered other_sheet_is_open(struct turn *t, int32_t case_no);

/* The thing of the input belongs to that case: its room is told, nothing is entered here. */
void other_sheet_refuse(struct turn *t, int32_t other);

#endif
