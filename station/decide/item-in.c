#include "decide/item-in.h"

#include <stdio.h>

void item_in(struct turn *t, const struct thing *th, int pieces)
{
	EMIT(t, .kind = EV_ITEM_IN, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = pieces);
}

/* Tourniquets and forceps are single items even when a pack holds several; swabs are counted as a number. */
void item_in_pack(struct turn *t, const struct thing *th, int pieces)
{
	if (role_has(th->role, TRAIT_BY_NUMBER)) {
		item_in(t, th, pieces);
		return;
	}
	struct thing one = *th;
	for (int i = 0; i < pieces; i++) {
		item_in(t, &one, 1);
		if (th->identity_kind == IDENTITY_PACK)
			one.identity[0] = 0; /* one wrapper, one number: it stays with the first */
	}
}

void item_add_unlisted(struct turn *t, enum role role, enum saying called)
{
	struct thing th = {.role = (uint8_t)role, .unlisted = 1, .called = called};
	item_in(t, &th, 1);
	if (role_has(role, TRAIT_TIMED))
		turn_owe(t, DEBT_LISTING, t->s->n_items, 0);
	if (t->s->initial_agreed)
		turn_owe(t, DEBT_ADDED, 0, 0);
}

int thing_size_misfit(const struct turn *t, const struct thing *th, struct say *out)
{
	const struct line *line = catalogue_by_key(&t->station->catalogue, th->line);
	int mm = t->s->size_mm;
	if (!mm || !line || !line->size_min_mm || (mm >= line->size_min_mm && mm <= line->size_max_mm))
		return 0;
	*out = *SAY(R_MISFIT, .n = line->size_min_mm, .all = line->size_max_mm, .item = th->name);
	return 1;
}
