/* What can be asked of a stock. */
#include <ctype.h>
#include <string.h>

#include "stock/stock.h"

const struct stock_place *stock_place_next(const struct stock *s, const struct stock_lot *lot,
                                           const struct stock_place *before)
{
	uint32_t next = before ? before->next : lot->places;
	return next ? &s->places[next - 1] : NULL;
}

int32_t stock_in_room(const struct stock *s, const struct stock_lot *lot, int32_t room)
{
	for (const struct stock_place *p = NULL; (p = stock_place_next(s, lot, p));)
		if (p->room == room)
			return p->packs;
	return 0;
}

int32_t stock_at(const struct stock *s, const struct stock_lot *lot, int32_t place)
{
	return place ? stock_in_room(s, lot, place) : lot->shelf;
}

const struct bench *stock_bench(const struct stock *s, int32_t room)
{
	static const struct bench none;
	for (int i = 0; i < ROOMS_MAX; i++)
		if (s->benches[i].room == room && room)
			return &s->benches[i];
	return &none;
}

static int printing_index(const struct stock *s, int64_t number)
{
	for (int i = 0; i < s->n_printings; i++)
		if (s->printings[i].batch.first <= number && number <= s->printings[i].batch.last)
			return i;
	return -1;
}

struct printing *stock_printing_of(struct stock *s, int64_t number)
{
	int i = printing_index(s, number);
	return i < 0 ? NULL : &s->printings[i];
}

const struct printing *stock_printing_with(const struct stock *s, int64_t number)
{
	int i = printing_index(s, number);
	return i < 0 ? NULL : &s->printings[i];
}

int label_is_on_pack(enum label_fate fate)
{
	return fate == LABEL_READ || fate == LABEL_OPENED;
}

int printing_open(const struct printing *p)
{
	int open = 0;
	for (int64_t i = 0; i <= p->batch.last - p->batch.first; i++)
		open += !p->fate[i];
	return open;
}

const struct printing *stock_printing_at(const struct stock *s, int32_t room)
{
	const struct printing *first = NULL;
	for (int i = 0; i < s->n_printings; i++) {
		const struct printing *p = &s->printings[i];
		if (p->room == room && printing_open(p))
			return p;
		if (p->room == room && !first)
			first = p;
	}
	return first;
}

int32_t stock_missing_of(const struct stock *s, const char *line, int32_t case_no)
{
	int32_t packs = 0;
	for (size_t i = 0; i < s->n_missing; i++)
		if ((!case_no || s->missing[i].case_no == case_no) && strcmp(s->missing[i].line, line) == 0)
			packs += s->missing[i].packs;
	return packs;
}

enum saying stock_withheld(const struct station *st, const struct stock_lot *lot, int32_t today)
{
	if (lot->expiry && lot->expiry < today)
		return SAY_STOCK_EXPIRED;
	if (station_quarantined(st, lot->line, lot->lot))
		return SAY_STOCK_IN_QUARANTINE;
	return catalogue_by_key(&st->catalogue, lot->line) ? SAY_NONE : SAY_STOCK_NO_LINE;
}

int stock_knows(const struct stock *s, const struct station *st, const char *key)
{
	int known = catalogue_by_key(&st->catalogue, key) != NULL;
	for (size_t i = 0; !known && i < s->n_lots; i++)
		known = strcmp(s->lots[i].line, key) == 0;
	for (size_t i = 0; !known && i < st->n_quarantines; i++)
		known = strcmp(st->quarantines[i].line, key) == 0;
	for (size_t i = 0; !known && i < s->n_missing; i++)
		known = strcmp(s->missing[i].line, key) == 0;
	return known;
}

int32_t stock_lying(const struct stock *s, const char *key)
{
	int32_t packs = 0;
	for (size_t i = 0; i < s->n_lots; i++) {
		const struct stock_lot *l = &s->lots[i];
		if (strcmp(l->line, key) == 0)
			packs += l->shelf + l->waits + (l->in_rooms > 0 ? l->in_rooms : 0);
	}
	return packs;
}

/* One without an expiry never comes before one that has one. */
static int expires_before(int32_t a, int32_t b)
{
	return a && (!b || a < b);
}

const struct stock_lot *stock_earlier(const struct stock *s, const struct station *st, const char *line,
                                      int32_t expiry, int32_t today)
{
	const struct stock_lot *first = NULL;
	for (size_t i = 0; i < s->n_lots; i++) {
		const struct stock_lot *l = &s->lots[i];
		if (l->shelf > 0 && strcmp(l->line, line) == 0 && expires_before(l->expiry, expiry) &&
		    (!first || expires_before(l->expiry, first->expiry)) && !stock_withheld(st, l, today))
			first = l;
	}
	return first;
}

int32_t stock_usable(const struct stock *s, const struct station *st, const char *line, int32_t today)
{
	int32_t packs = 0;
	for (size_t i = 0; i < s->n_lots; i++)
		if (strcmp(s->lots[i].line, line) == 0 && !stock_withheld(st, &s->lots[i], today))
			packs += s->lots[i].shelf;
	return packs;
}

/* --- lots that read alike ------------------------------------------------------------------------- */

/* As somebody who types it from a notice might have it: letters and digits alone, in capitals, without zeros in front. */
static void plain_lot(const char *lot, char out[LOT_MAX])
{
	size_t n = 0;
	int in_number = 0;
	for (; *lot; lot++) {
		if (!isalnum((unsigned char)*lot))
			continue;
		if (*lot == '0' && !in_number && isalnum((unsigned char)lot[1]))
			continue;
		in_number = isdigit((unsigned char)*lot) != 0;
		out[n++] = (char)toupper((unsigned char)*lot);
	}
	out[n] = 0;
}

int lot_is_near(const char *a, const char *b)
{
	char x[LOT_MAX], y[LOT_MAX];
	plain_lot(a, x);
	plain_lot(b, y);
	return strcmp(a, b) != 0 && strcmp(x, y) == 0;
}

/* --- days ----------------------------------------------------------------------------------------- */

/* Days since 1 March of year 0, by the Gregorian calendar. */
static int32_t day_number(int32_t yyyymmdd)
{
	int32_t y = yyyymmdd / 10000, m = yyyymmdd / 100 % 100, d = yyyymmdd % 100;
	y -= m < 3;
	m += m < 3 ? 9 : -3;
	return 365 * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + d;
}

int32_t stock_days(int32_t from, int32_t to)
{
	return day_number(to) - day_number(from);
}
