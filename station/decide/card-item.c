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
	turn_say(t, SAY(R_UNLISTED));
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
	turn_say(t, before ? SAY(R_FORCEPS_MORE) : SAY(R_FORCEPS_IN));
}

/* How many digits have forceps on their tourniquet, and one of them: the one that is asked about before any other. */
static int digits_clamped(const struct sheet *s, int *digit)
{
	int n = 0;
	*digit = 0;
	for (int i = 0; i < s->n_digits; i++) {
		const int number = s->digits[i].number;
		if (!sheet_item_on(s, number, TRAIT_CLAMPS))
			continue;
		n++;
		if (!*digit || (s->asked.what == Q_OFF && s->asked.digit == number))
			*digit = number;
	}
	return n;
}

/* Of several, the one whose card was scanned: the station takes none by itself. */
void card_forceps_moved(struct turn *t)
{
	int digit;
	const int n = digits_clamped(t->s, &digit);
	if (!n) {
		turn_refuse(t, SAY(NO_FORCEPS_IS_ON));
		return;
	}
	if (n > 1 && !(t->s->asked.what == Q_OFF && t->s->asked.digit == digit)) {
		turn_refuse(t, SAY(FORCEPS_ON_SEVERAL, .card = t->in->card));
		return;
	}
	EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)sheet_item_on(t->s, digit, TRAIT_CLAMPS));
	turn_say(t, SAY(R_FORCEPS_MOVED, .digit = digit));
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
	turn_say(t, SAY(R_OFFCUT, .item = it->thing.name, .n = it->pieces));
	if (agreed)
		turn_say_more(t, SAY(R_FINAL_AGAIN));
}
