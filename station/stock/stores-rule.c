#include "stock/stores-rule.h"

#include <errno.h>

const char *rule_stock_text(int number)
{
	switch ((enum stores_rule)number) {
#define X(n, name, text)                                                                                     \
	case STORES_RULE_##name:                                                                             \
		return text;
		STOCK_RULES(X)
#undef X
	case STORES_RULE_NONE:
		break;
	}
	return "";
}

static enum stores_rule lot_broken(const struct stock *s, const struct stock_lot *l, struct error *e)
{
	int32_t in_rooms = 0;
	for (size_t i = 0; i < s->n_places; i++)
		in_rooms += s->places[i].lot == (uint32_t)(l - s->lots) ? s->places[i].packs : 0;
	int64_t known = (int64_t)l->waits + l->shelf + in_rooms + l->opened + l->isolated + l->written_off +
	                l->unaccounted;
	if (known != l->received || in_rooms != l->in_rooms) {
		error_set(e, -EILSEQ, "line %s, lot %s: the packs do not add up to those received", l->line,
		          l->lot);
		return STORES_RULE_IN_ONE_PLACE;
	}
	if (l->shelf < 0 || l->waits < 0) {
		error_set(e, -EILSEQ, "line %s, lot %s: less than nothing lies there", l->line, l->lot);
		return STORES_RULE_NEVER_BELOW;
	}
	if (l->printed < 0 || l->labelled < 0 || l->spoilt < 0) {
		error_set(e, -EILSEQ, "line %s, lot %s: a label was taken twice", l->line, l->lot);
		return STORES_RULE_EACH_LABEL_ONCE;
	}
	return STORES_RULE_NONE;
}

static enum stores_rule printing_broken(const struct stock *s, const struct printing *p, struct error *e)
{
	int32_t open = 0;
	const struct stock_lot *l = stock_lot_of(s, &p->batch);
	for (int i = 0; i < s->n_printings; i++) {
		const struct batch *b = &s->printings[i].batch;
		if (&s->printings[i] != p && b->first <= p->batch.last && p->batch.first <= b->last) {
			error_set(e, -EILSEQ, "line %s, lot %s: one number stands in two printings", b->line,
			          b->lot);
			return STORES_RULE_EACH_LABEL_ONCE;
		}
		if (stock_lot_of(s, b) == l)
			open += printing_open(&s->printings[i]);
	}
	if (l && l->printed == open)
		return STORES_RULE_NONE;
	error_set(e, -EILSEQ, "line %s, lot %s: the labels that are open do not add up", p->batch.line,
	          p->batch.lot);
	return STORES_RULE_EACH_LABEL_ONCE;
}

static enum stores_rule missing_broken(const struct stock_missing *m, struct error *e)
{
	if (m->packs > 0)
		return STORES_RULE_NONE;
	error_set(e, -EILSEQ, "line %s: case %d misses nothing and is charged", m->line, (int)m->case_no);
	return STORES_RULE_NOBODY_CHARGED;
}

enum stores_rule rule_stock_broken(const struct stock *s, struct error *e)
{
	enum stores_rule r = STORES_RULE_NONE;
	for (size_t i = 0; i < s->n_lots && !r; i++)
		r = lot_broken(s, &s->lots[i], e);
	for (int i = 0; i < s->n_printings && !r; i++)
		r = printing_broken(s, &s->printings[i], e);
	for (size_t i = 0; i < s->n_missing && !r; i++)
		r = missing_broken(&s->missing[i], e);
	return r;
}
