#include "decide/extra.h"

#include <string.h>

#include "decide/count-in.h"
#include "decide/final-count.h"
#include "decide/other-sheet.h"
#include "decide/owed-after-end.h"

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
	if (t->in->known.used_in && th->identity_kind != IDENTITY_MARK) {
		turn_refuse(t,
		            SAY(WRAPPER_OF_ANOTHER_CASE, .item = th->name, .case_no = t->in->known.used_in));
		return;
	}
	if (t->in->known.elsewhere && th->single_use) {
		turn_refuse(t, SAY(OF_ANOTHER_STATION, .item = th->name, .case_no = t->in->known.elsewhere,
		                   .station = t->in->known.elsewhere_station));
		return;
	}
	EMIT(t, .kind = EV_EXTRA, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = 1);
	extra_ask(t, t->s->n_items);
}

void extra_ask(struct turn *t, int item)
{
	struct say why;
	const struct thing *th = &sheet_item_const(t->s, item)->thing;
	const struct asked q = {.what = Q_EXTRA, .item = (uint8_t)item};
	if (thing_fault(t, th, &why)) {
		why.why = why.saying;
		why.saying = SAY_R_EXTRA_WHY;
		turn_ask_saying(t, q, &why);
	} else
		turn_ask_saying(t, q, SAY(R_EXTRA, .item = th->name));
}

/* What turned up was opened in this case. Facts first: one that would have been refused as well, and the surgeon answers
 * for it (rules 3, 5). */
void extra_opened_here(struct turn *t, int item)
{
	struct say why;
	struct thing th = sheet_item_const(t->s, item)->thing;
	int refused = thing_fault(t, &th, &why), unnamed = sheet_without_mark(t->s, &th);
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
	if (unnamed) { /* of a tray: it was counted in, and nobody could say which it is */
		EMIT(t, .kind = EV_ITEM_LISTED, .item = (uint8_t)unnamed, .thing = th);
		if (refused)
			turn_owe_reason(t, unnamed, &why);
		turn_say(t, SAY(R_IS_ONE_OF_THOSE, .item = th.name));
		return;
	}
	EMIT(t, .kind = EV_ITEM_IN, .item = (uint8_t)(t->s->n_items + 1), .thing = th, .n = 1);
	if (refused) {
		turn_owe_reason(t, t->s->n_items, &why);
		why.why = why.saying;
		why.saying = SAY_R_OPENED_LATE_WHY;
		turn_say(t, &why);
	} else
		turn_say(t, SAY(R_OPENED_LATE, .item = th.name));
}

void extra_of_case(struct turn *t, int32_t case_no)
{
	int extra = sheet_first_extra(t->s);
	struct thing what = {.called = SAY_ITEM_NO_NUMBER};
	if (extra)
		what = sheet_item_const(t->s, extra)->thing;
	turn_found_after(t, case_no, &what);
	after_end_found(t, case_no);
	if (extra) { /* it is settled by that: it is none of this case */
		EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)extra, .n = case_no);
		final_progress(t);
	}
	turn_say(t, SAY(R_FOUND_FOR_CASE, .case_no = case_no));
}
