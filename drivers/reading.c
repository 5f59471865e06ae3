#include "drivers/reading.h"

#include <string.h>

struct box box_round(const struct place corner[4])
{
	struct box b = {corner[0].x, corner[0].y, corner[0].x, corner[0].y};
	for (int i = 1; i < 4; i++)
		box_widen(&b, &(struct box){corner[i].x, corner[i].y, corner[i].x, corner[i].y});
	return b;
}

struct box box_thick(const struct box *b)
{
	struct box t = *b;
	int across = b->right - b->left, down = b->bottom - b->top;
	int lacking_down = across / 4 - down, lacking_across = down / 4 - across;
	if (lacking_down > 0) {
		t.top -= lacking_down / 2;
		t.bottom += lacking_down / 2;
	}
	if (lacking_across > 0) {
		t.left -= lacking_across / 2;
		t.right += lacking_across / 2;
	}
	return t;
}

static bool holds_middle(const struct box *a, const struct box *of)
{
	struct box t = box_thick(a);
	int x = (of->left + of->right) / 2, y = (of->top + of->bottom) / 2;
	return x >= t.left && x <= t.right && y >= t.top && y <= t.bottom;
}

bool boxes_meet(const struct box *a, const struct box *b)
{
	return holds_middle(a, b) || holds_middle(b, a);
}

bool reading_same_code(const struct reading *a, const struct reading *b)
{
	return a->symbology == b->symbology && a->size == b->size && memcmp(a->data, b->data, a->size) == 0 &&
	       strcmp(a->aim, b->aim) == 0;
}

void box_widen(struct box *b, const struct box *by)
{
	b->left = by->left < b->left ? by->left : b->left;
	b->right = by->right > b->right ? by->right : b->right;
	b->top = by->top < b->top ? by->top : b->top;
	b->bottom = by->bottom > b->bottom ? by->bottom : b->bottom;
}

void readings_add(struct readings *to, const struct reading *r)
{
	for (size_t i = 0; i < to->count; i++) {
		struct reading *have = &to->item[i];
		if (have->witness != r->witness || have->in_part != r->in_part ||
		    !reading_same_code(have, r) || !boxes_meet(&have->box, &r->box))
			continue;
		have->times += r->times;
		box_widen(&have->box, &r->box);
		return;
	}
	if (to->count < READINGS_MAX)
		to->item[to->count++] = *r;
}

void readings_add_all(struct readings *to, const struct readings *from)
{
	for (size_t i = 0; i < from->count; i++)
		readings_add(to, &from->item[i]);
}
