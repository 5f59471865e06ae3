#include "decide/card-item.h"

#include "decide/final-count.h"
#include "decide/item-in.h"

/* The tourniquet that is on, or will go on, without being in the catalogue. */
void card_unlisted(struct turn *t)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	const struct item *it = d ? sheet_item_const(t->s, d->item) : NULL;
	if (it && it->place == ITEM_ON) { /* that is the one: it was entered with its digit card */
		turn_refuse(t, SAY(LISTED_AS_UNLISTED, .digit = it->digit));
		return;
	}
	item_add_unlisted(t, ROLE_TOURNIQUET, SAY_TOURNIQUET_NOT_LISTED);
	turn_close_question(t);
	turn_accept(
	    t, "Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.");
}

void card_unreadable(struct turn *t)
{
	if (t->s->final == FINAL_ASKING) {
		final_answer(t, CARD_MARK_UNREADABLE, 0);
		return;
	}
	int before = t->s->initial_agreed;
	item_add_unlisted(t, ROLE_FORCEPS, SAY_FORCEPS_UNREADABLE);
	turn_close_question(t);
	turn_accept(
	    t, before ? "Added: 1 further artery forceps, mark unreadable. If it is counted in already: UNDO."
	              : "Counted in: 1 artery forceps, mark unreadable. At the end it is shown.");
}

void card_forceps_moved(struct turn *t)
{
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = &t->s->items[i - 1];
		if (role_has(it->thing.role, TRAIT_CLAMPS) && it->place == ITEM_ON) {
			int digit = it->digit;
			EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)i);
			turn_accept(
			    t, "Forceps moved away: tourniquet without forceps on the %s. The clock runs.",
			    own_digit_name(digit));
			return;
		}
	}
	turn_refuse(t, SAY(NO_FORCEPS_IS_ON));
}

/* The one that was cut: one that is still asked for before one that was accounted for, the latest first. */
static int item_of_offcut(const struct sheet *s)
{
	for (int accounted = 0; accounted < 2; accounted++)
		for (int i = s->n_items; i >= 1; i--) {
			const struct item *it = &s->items[i - 1];
			if (role_has(it->thing.role, TRAIT_CONDITION) &&
			    (accounted ? it->place == ITEM_ACCOUNTED : item_open(it)))
				return i;
		}
	return 0;
}

/* An offcut that turns up contradicts what was accounted for before: it is counted again (rule 10). */
void card_offcut(struct turn *t)
{
	int i = item_of_offcut(t->s), agreed = t->s->final == FINAL_AGREED;
	const struct item *it = sheet_item_const(t->s, i);
	if (!it) {
		turn_refuse(t, SAY(NO_OFFCUT_WITHOUT_ONE));
		return;
	}
	if (agreed)
		EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
	else if (it->place == ITEM_ACCOUNTED)
		EMIT(t, .kind = EV_COUNT_AGAIN, .item = (uint8_t)i);
	EMIT(t, .kind = EV_ITEM_MORE, .item = (uint8_t)i, .n = 1);
	turn_accept(t, "Offcut counted: %s, now %d pieces.%s", it->thing.name, it->pieces,
	            agreed ? " The final count starts again." : "");
}
