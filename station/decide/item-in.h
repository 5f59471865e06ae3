/* How items come onto the sheet, whatever brought them. Needs a case; says nothing to people. */
#ifndef BANDTALLY_DECIDE_ITEM_IN_H
#define BANDTALLY_DECIDE_ITEM_IN_H

#include "decide/turn.h"

void item_in(struct turn *t, const struct thing *th, int pieces);
/* What a pack holds: single items, or a number where its kind is counted by number (TRAIT_BY_NUMBER). */
void item_in_pack(struct turn *t, const struct thing *th, int pieces);
/* One more that no pack stands for, and what it is called; a tourniquet's listing is owed from then on. */
void item_add_unlisted(struct turn *t, enum role role, enum saying called);

/* Whether the stated circumference is outside what the maker states; the sentence begins with a space. */
int thing_size_misfit(const struct turn *t, const struct thing *th, struct say *out);

#endif
