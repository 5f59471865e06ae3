#include "drivers/steady.h"

#include <stdlib.h>
#include <string.h>

/* Out of view for this long, a code that was not yet told has to stand still anew. */
#define FLICKER_MS 400
/* On a slow machine frames are far apart: one in which a code was not read proves no absence. */
#define MISSES_LEAST 2
/* A card that was read so lately is still in view, though the last frames missed it. */
#define TOGETHER_MS 300

static void drop(struct steady *s, size_t i)
{
	s->item[i] = s->item[--s->count];
}

/* Counts the frame as missed by each code that it did not show, and forgets the ones that have gone. */
static void forget(struct steady *s, const struct steady_rules *rules, int64_t now_ms)
{
	for (size_t i = s->count; i-- > 0;) {
		struct presentation *p = &s->item[i];
		if (p->seen_ms == now_ms)
			continue;
		p->misses++;
		if (p->misses >= MISSES_LEAST &&
		    now_ms - p->seen_ms >= (p->told ? rules->away_ms : FLICKER_MS))
			drop(s, i);
	}
}

static bool still(const struct box *a, const struct box *b, int still_px)
{
	int dx = (a->left + a->right) / 2 - (b->left + b->right) / 2;
	int dy = (a->top + a->bottom) / 2 - (b->top + b->bottom) / 2;
	return abs(dx) <= still_px && abs(dy) <= still_px;
}

static struct presentation *find(struct steady *s, const struct reading *r)
{
	for (size_t i = 0; i < s->count; i++)
		if (reading_same_code(&s->item[i].code, r))
			return &s->item[i];
	return NULL;
}

/* With its list full a further code waits: what is in view now is not forgotten for it. */
static struct presentation *begin(struct steady *s)
{
	if (s->count == STEADY_CODES_MAX)
		return NULL;
	struct presentation *p = &s->item[s->count++];
	*p = (struct presentation){0};
	return p;
}

static void see(struct presentation *p, const struct steady_rules *rules, const struct reading *r,
                int64_t now_ms)
{
	bool second_copy = p->frames > 0 && p->seen_ms == now_ms;
	if (second_copy)
		return;
	p->frames = p->frames > 0 && still(&p->code.box, &r->box, rules->still_px) ? p->frames + 1 : 1;
	p->code = *r;
	p->seen_ms = now_ms;
	p->misses = 0;
}

/* An answer, a digit or a badge of this house: BT or BX, two letters of the site, 1 to 3, digits (station/code/own-codes.h). */
static bool is_card(const struct reading *r)
{
	if (r->size < 11 || r->data[0] != 'B' || (r->data[1] != 'T' && r->data[1] != 'X') ||
	    r->data[4] < '1' || r->data[4] > '3')
		return false;
	for (size_t i = 5; i < r->size; i++)
		if (r->data[i] < '0' || r->data[i] > '9')
			return false;
	return true;
}

static int cards_since(const struct steady *s, int64_t from_ms)
{
	int cards = 0;
	for (size_t i = 0; i < s->count; i++)
		cards += s->item[i].seen_ms >= from_ms && is_card(&s->item[i].code);
	return cards;
}

void steady_frame(struct steady *s, const struct steady_rules *rules, const struct codes *codes,
                  int64_t now_ms, struct codes *tell)
{
	tell->count = 0;
	for (size_t i = 0; i < codes->count; i++) {
		struct presentation *p = find(s, codes->item[i]);
		if (!p)
			p = begin(s);
		if (p)
			see(p, rules, codes->item[i], now_ms);
	}
	bool one_card = cards_since(s, now_ms - TOGETHER_MS) < 2;
	s->two_cards = cards_since(s, now_ms) > 1;
	for (size_t i = 0; i < codes->count; i++) {
		struct presentation *p = find(s, codes->item[i]);
		if (!p || p->told || p->frames < rules->frames || (!one_card && is_card(&p->code)))
			continue;
		p->told = true;
		tell->item[tell->count++] = codes->item[i];
	}
	forget(s, rules, now_ms);
}
