#include "decide/typed.h"

#include <stdio.h>

#include "base/name.h"
#include "decide/answer.h"
#include "decide/item-in.h"

/* The digit's circumference as somebody measured it: held against what the makers state, which says nothing
 * about pressure (section 1 of the design: the station never judges that). */
static void state_size(struct turn *t, int mm)
{
	struct say misfit;
	EMIT(t, .kind = EV_SIZE_STATED, .n = mm);
	turn_say(t, SAY(R_SIZE_STATED, .n = mm));
	for (int i = 0; i < t->s->n_items; i++)
		if (thing_size_misfit(t, &t->s->items[i].thing, &misfit)) {
			turn_say_more(t, &misfit);
			break;
		}
}

/* "case 41: …" where no case is open: what was entered wrongly is corrected by a further event and an
 * addendum slip; nothing is edited (rule 13). */
static enum answered correct_after(struct turn *t)
{
	int case_no = 0, used = 0;
	if (turn_has_case(t) || sscanf(t->in->text, "case %9d: %n", &case_no, &used) != 1 || !used ||
	    !t->in->text[used])
		return ANSWERED_NOT;
	if (case_no < 1 || case_no > t->station->last_case_no ||
	    station_sheet_of_case(t->station, case_no) >= 0) {
		turn_refuse(t, SAY(CASE_NOT_ENDED_HERE, .case_no = case_no));
		return ANSWERED;
	}
	struct event e = {.kind = EV_CORRECTION, .case_no = case_no};
	snprintf(e.text, sizeof e.text, "%s", t->in->text + used);
	turn_emit(t, &e);
	turn_queue_slip(t, SLIP_ADDENDUM, case_no);
	turn_say(t, SAY(R_CORRECTED, .case_no = case_no));
	return ANSWERED;
}

void typed_take(struct turn *t)
{
	struct error why;
	if (name_check("What was typed", t->in->text, EVENT_TEXT_MAX - 1, &why) < 0) {
		turn_refuse_fault(t, SAY(TYPED_NOT_KEPT_FOR, .fault = why.text), SAY(TYPED_NOT_KEPT));
		return;
	}
	if (correct_after(t) == ANSWERED)
		return;
	int mm = 0, used = 0;
	if (turn_has_case(t) && sscanf(t->in->text, "%3d mm%n", &mm, &used) == 1 && used &&
	    !t->in->text[used] && mm >= 20 && mm <= 200) {
		state_size(t, mm);
		return;
	}
	if (answer_typed(t) == ANSWERED)
		return;
	if (turn_has_case(t) && t->s->discrepancy && t->s->search_not_done) {
		struct event e = {.kind = EV_SEARCH_WHY, .n = t->s->search_not_done};
		snprintf(e.text, sizeof e.text, "%s", t->in->text);
		turn_emit(t, &e);
		turn_say(t, SAY(R_WHY_ENTERED, .n = e.n));
		return;
	}
	for (int i = 0; i < t->station->n_owed; i++)
		if (t->station->owed[i].room == t->in->room) {
			int32_t case_no = t->station->owed[i].case_no;
			struct event e = {.kind = EV_PAID, .case_no = case_no, .what = DEBT_INCIDENT};
			snprintf(e.text, sizeof e.text, "%s", t->in->text);
			turn_emit(t, &e);
			turn_queue_slip(t, SLIP_ADDENDUM, case_no);
			turn_say(t, SAY(R_NUMBER_ENTERED, .case_no = case_no));
			return;
		}
	turn_refuse(t, SAY(NO_TEXT_ASKED));
}
