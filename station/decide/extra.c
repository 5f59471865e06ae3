#include "decide/extra.h"

#include "decide/count-in.h"
#include "decide/other-sheet.h"

/* Something turned up at the final count that is not on the sheet: a surplus makes the count wrong as well. What
 * stands on another open sheet is no surplus of this one (rule 24). */
void extra_turned_up(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	int32_t other = station_identity_open(t->station, th->identity);
	if (other && other != t->s->case_no) {
		other_sheet_refuse(t, other);
		return;
	}
	if (t->in->used_in && th->identity_kind != IDENTITY_MARK) {
		turn_refuse(t, SAY(WRAPPER_OF_ANOTHER_CASE, .item = th->name, .case_no = t->in->used_in));
		return;
	}
	struct say why;
	char words[240];
	EMIT(t, .kind = EV_EXTRA, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = 1);
	if (thing_fault(t, th, &why)) {
		say_part(&why, words, sizeof words);
		turn_ask(t, (struct asked){.what = Q_EXTRA, .item = t->s->n_items},
		         "Extra item: %s, beyond what is on the sheet; %s.", th->name, words);
	} else
		turn_ask(t, (struct asked){.what = Q_EXTRA, .item = t->s->n_items},
		         "Extra item: %s, beyond what is on the sheet.", th->name);
}

/* What turned up was opened in this case. Facts first: one that would have been refused as well, and the surgeon answers
 * for it (rules 3, 5). */
void extra_opened_here(struct turn *t, int item)
{
	struct say why;
	char words[240];
	struct thing th = sheet_item_const(t->s, item)->thing;
	int refused = thing_fault(t, &th, &why);
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
	EMIT(t, .kind = EV_ITEM_IN, .item = (uint8_t)(t->s->n_items + 1), .thing = th, .n = 1);
	if (refused) {
		turn_owe(t, DEBT_REASON, t->s->n_items, 0);
		say_part(&why, words, sizeof words);
		turn_accept(t,
		            "Entered late: %s was opened in this case. But %s: the surgeon answers for it.",
		            th.name, words);
	} else
		turn_accept(t, "Entered late: %s was opened in this case.", th.name);
}
