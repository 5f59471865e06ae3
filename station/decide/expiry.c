#include "decide/expiry.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"

/* More debts than this are not told apart, so that there is always room for what is owed about the patient. */
#define APART_MAX (DEBTS_MAX / 2)

static int judged(const struct turn *t, int32_t expiry)
{
	/* A wrong clock stands before the right one: what has expired by it has expired. */
	return !t->station->clock_wrong || !expiry ||
	       expiry < clock_date_number(t->in->at.wall_ms, t->in->at.utc_min);
}

void expiry_owe(struct turn *t, int first, int last)
{
	int owed = 0;
	for (int i = first; i <= last; i++) {
		if (judged(t, sheet_item_const(t->s, i)->thing.expiry))
			continue;
		turn_owe(t, DEBT_EXPIRY_READ, t->s->debts.count < APART_MAX ? i : 0, 0);
		owed = 1;
	}
	if (owed)
		turn_say_more(t, SAY(R_EXPIRY_UNJUDGED));
}

/* A tourniquet that nobody listed comes first where the board asks for it first (rule 19). */
void expiry_read(struct turn *t, int32_t badge)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_EXPIRY_READ);
	if (!d || (debts_has(&t->s->debts, DEBT_LISTING) && t->s->debts.list[0].kind == DEBT_LISTING))
		return;
	for (; d; d = debts_find(&t->s->debts, DEBT_EXPIRY_READ))
		turn_pay(t, DEBT_EXPIRY_READ, d->item, 0, PAID_READ);
	turn_close_question(t);
	turn_say(t, SAY(R_EXPIRY_READ, .person = staff_name(&t->station->staff, badge)));
}
