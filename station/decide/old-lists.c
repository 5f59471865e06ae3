#include "decide/old-lists.h"

void old_lists_owe(struct turn *t)
{
	if (!t->station->policy.ask_when_lists_old || !t->in->known.lists_old)
		return;
	if (!debts_has(&t->s->debts, DEBT_STORES_ASKED))
		turn_owe(t, DEBT_STORES_ASKED, 0, 0);
	turn_say_more(t, SAY(R_LISTS_OLD));
}

void old_lists_asked(struct turn *t, int32_t badge)
{
	turn_pay(t, DEBT_STORES_ASKED, 0, 0, PAID_ASKED_STORES);
	turn_say(t, SAY(R_STORES_ASKED, .person = staff_name(&t->station->staff, badge)));
}
