#include "count/held.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

static int find(const struct held *list, int n, int64_t seq)
{
	for (int i = 0; i < n; i++)
		if (list[i].seq == seq)
			return i;
	return -1;
}

static int answer(struct held *list, int *n, const struct event *e)
{
	int i = find(list, *n, e->ref);
	if (i < 0)
		return -EINVAL;
	if (e->what == HELD_MEANT) {
		list[i].meant = 1;
		return 0;
	}
	--*n;
	memmove(&list[i], &list[i + 1], sizeof *list * (size_t)(*n - i));
	memset(&list[*n], 0, sizeof *list);
	return 0;
}

int held_apply(struct held *list, int *n, int max, const struct event *e)
{
	if (e->kind == EV_HELD_ANSWERED)
		return answer(list, n, e);
	if (e->kind != EV_HELD || e->what < HELD_CARD || e->what > HELD_TRAY)
		return -EINVAL;
	if (*n == max)
		return -ENOSPC;
	struct held *h = &list[(*n)++];
	memset(h, 0, sizeof *h);
	h->seq = e->seq;
	h->made = e->at;
	h->room = e->room;
	h->n = e->n;
	h->other = e->other;
	h->proof = e->proof;
	h->kind = e->what;
	h->digit = e->digit;
	h->place = e->item;
	snprintf(h->scanner, sizeof h->scanner, "%.32s", e->text);
	h->thing = e->thing;
	return 0;
}

void held_event(const struct held *h, struct event *e)
{
	memset(e, 0, sizeof *e);
	e->kind = EV_HELD;
	e->at = h->made;
	e->room = h->room;
	e->n = h->n;
	e->other = h->other;
	e->proof = h->proof;
	e->what = h->kind;
	e->digit = h->digit;
	e->item = h->place;
	snprintf(e->text, sizeof e->text, "%s", h->scanner);
	e->thing = h->thing;
}

int held_same(const struct held *a, const struct held *b)
{
	return b->place == a->place + 1 && strcmp(a->scanner, b->scanner) == 0 && a->kind == b->kind &&
	       a->n == b->n && a->other == b->other && a->proof == b->proof && a->digit == b->digit &&
	       strcmp(a->thing.line, b->thing.line) == 0 &&
	       strcmp(a->thing.identity, b->thing.identity) == 0 && strcmp(a->thing.lot, b->thing.lot) == 0;
}
