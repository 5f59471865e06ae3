#include "count/debt.h"

#include <string.h>

static const struct {
	const char *name;
	enum saying saying;
} kinds[DEBT_KINDS] = {[DEBT_NONE] = {"none", SAY_NONE},
#define X(name, text) [DEBT_##name] = {text, SAY_DEBT_##name},
                       DEBTS(X)
#undef X
};

static int same(const struct debt *a, struct debt b)
{
	return a->kind == b.kind && a->item == b.item && a->digit == b.digit;
}

int debts_owes(const struct debts *d, struct debt debt)
{
	for (int i = 0; i < d->count; i++)
		if (same(&d->list[i], debt))
			return 1;
	return 0;
}

void debts_owe(struct debts *d, struct debt debt)
{
	/* A decision that would owe more is refused (turn.c); an old record may hold one. */
	if (!debts_owes(d, debt) && d->count < DEBTS_MAX)
		d->list[d->count++] = debt;
}

void debts_pay(struct debts *d, struct debt debt)
{
	for (int i = 0; i < d->count; i++)
		if (same(&d->list[i], debt)) {
			memmove(&d->list[i], &d->list[i + 1], sizeof *d->list * (size_t)(d->count - i - 1));
			d->count--;
			d->list[d->count] = (struct debt){0};
			return;
		}
}

int debts_has(const struct debts *d, enum debt_kind kind)
{
	int n = 0;
	for (int i = 0; i < d->count; i++)
		n += d->list[i].kind == kind;
	return n;
}

const struct debt *debts_find(const struct debts *d, enum debt_kind kind)
{
	for (int i = 0; i < d->count; i++)
		if (d->list[i].kind == kind)
			return &d->list[i];
	return NULL;
}

const char *debt_name(enum debt_kind kind)
{
	return kinds[kind].name;
}

enum saying debt_saying(enum debt_kind kind)
{
	return kinds[kind].saying;
}

const char *debt_words(enum debt_kind kind)
{
	return saying_text(kinds[kind].saying);
}

enum saying paid_saying(enum paid_how how)
{
	static const enum saying sayings[PAID_KINDS] = {[PAID_TYPED] = SAY_NONE,
#define X(name, text) [PAID_##name] = SAY_PAID_##name,
	                                                PAID_HOWS(X)
#undef X
	};
	return how < PAID_KINDS ? sayings[how] : SAY_NONE;
}
