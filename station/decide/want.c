#include "decide/want.h"

int sheet_is_counting(const struct sheet *s)
{
	return s->final == FINAL_ASKING || (s->discrepancy && s->final != FINAL_AGREED);
}

int sheet_is_ready_to_agree(const struct sheet *s)
{
	return s->final == FINAL_ASKING && !sheet_next_open(s) && !sheet_missing(s);
}

static int any_had(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].had)
			return 1;
	return 0;
}

static int reminded_digit(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].reminded)
			return s->digits[i].number;
	return 0;
}

static enum team_place place_wanted(const struct sheet *s)
{
	if (!s->team.at[PLACE_FIELD])
		return PLACE_FIELD;
	return !s->single && !s->team.at[PLACE_CIRCULATING] ? PLACE_CIRCULATING : 0;
}

enum team_place debt_payer(const struct sheet *s, enum debt_kind kind)
{
	switch (kind) {
	case DEBT_REASON:
	case DEBT_SURGEON:
		return s->single ? PLACE_FIELD : PLACE_SURGEON;
	case DEBT_COUNT:
	case DEBT_LISTING:
	case DEBT_ADDED:
	case DEBT_NAME:
	case DEBT_HANDOVER:
	case DEBT_EXPIRY_READ:
	case DEBT_STORES_ASKED:
		return s->single ? PLACE_FIELD : PLACE_CIRCULATING;
	case DEBT_NONE:
	case DEBT_TEAM:
	case DEBT_ON:
	case DEBT_ROLLS_ON:
	case DEBT_MARKED_DIGIT:
	case DEBT_INCIDENT:
	case DEBT_CALLED:
	case DEBT_LOOK:
	case DEBT_WARD:
	case DEBT_KINDS:
		break;
	}
	return 0;
}

static struct want final_want(const struct sheet *s)
{
	struct want w = {0};
	if (s->final == FINAL_ASKING) {
		w.item = sheet_next_open(s);
		w.place = place_wanted(s);
		w.kind = w.item ? WANT_ITEM : w.place ? WANT_TEAM : WANT_FINAL_AGREED;
		return w;
	}
	w.digit = sheet_next_look(s);
	if (w.digit) {
		w.kind = WANT_LOOK;
	} else if (s->debts.count) {
		w.kind = WANT_DEBT;
		w.debt = s->debts.list[0];
	} else {
		w.kind = s->single && s->n_digits && !s->who_looked ? WANT_WHO_LOOKED : WANT_SIGN_OUT;
	}
	return w;
}

static struct want search_want(const struct station *st, const struct sheet *s)
{
	return (struct want){.kind = s->search_done < st->policy.n_search ? WANT_SEARCH : WANT_SEARCH_END};
}

struct want sheet_wants(const struct station *st, const struct sheet *s)
{
	struct want w = {0};
	if (!s->case_no)
		return w;
	if (s->suspended)
		return (struct want){.kind = WANT_RESUME};
	if (s->asked.what)
		return (struct want){.kind = WANT_ANSWER};
	if (s->discrepancy && !sheet_digits_on(s) && !sheet_next_open(s) && sheet_missing(s))
		return search_want(st, s);
	if (s->final != FINAL_NONE)
		return final_want(s);
	if ((w.digit = reminded_digit(s))) {
		w.kind = WANT_REMINDER;
	} else if ((w.place = place_wanted(s))) {
		w.kind = WANT_TEAM;
	} else if ((sheet_holds_any(s) ? !s->initial_agreed : !s->cancelled) && !any_had(s) &&
	           !(s->single && s->debts.count)) {
		w.kind = WANT_COUNT_IN;
	} else if (s->debts.count) {
		w.kind = WANT_DEBT;
		w.debt = s->debts.list[0];
	} else if ((w.digit = sheet_first_digit_on(s))) {
		w.kind = WANT_OFF;
	} else {
		w.kind = any_had(s) || s->cancelled ? WANT_FINAL : WANT_ON;
	}
	return w;
}
