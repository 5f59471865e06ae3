#include "decide/tray.h"

#include <stdio.h>
#include <string.h>

struct thing tray_part(const struct line *line)
{
	struct thing th = {.role = (uint8_t)line->role,
	                   .single_use = line->single_use != 0,
	                   .shows_on_xray = line->shows_on_xray != 0};
	snprintf(th.line, sizeof th.line, "%s", line->key);
	snprintf(th.name, sizeof th.name, "%s", line->name);
	return th;
}

int lies_here_whole(const struct item *it)
{
	return it->place == ITEM_HERE && !it->digit && !it->dropped && !it->opened;
}

/* One of what a tray brought, which nothing has happened to; the latest first. 0 none. */
static int part_of_tray(const struct turn *t, const struct line *line, int pieces, const uint8_t picked[])
{
	for (int i = t->s->n_items; i >= 1; i--) {
		const struct item *it = sheet_item_const(t->s, i);
		if (!picked[i] && lies_here_whole(it) && it->pieces == pieces && !it->thing.identity[0] &&
		    !it->thing.lot[0] && strcmp(it->thing.line, line->key) == 0)
			return i;
	}
	return 0;
}

int tray_on_sheet(const struct turn *t, uint8_t picked[])
{
	const struct line *tray = t->in->line;
	int found = 0, lacking = 0;
	memset(picked, 0, ITEMS_MAX + 1);
	for (int k = 0; t->in->act == ACT_TRAY && k < LINE_CONTENTS_MAX && tray->contents[k].key[0]; k++) {
		const struct line *line = t->in->parts[k];
		int by_number = line && role_has(line->role, TRAIT_BY_NUMBER);
		lacking += !line; /* what the catalogue knows no longer was counted in once */
		for (int n = line && !by_number ? tray->contents[k].count : 1; line && n > 0; n--) {
			int item = part_of_tray(t, line, by_number ? tray->contents[k].count : 1, picked);
			picked[item] = 1;
			found += item != 0;
			lacking += item == 0;
		}
	}
	return !found ? 0 : lacking ? -1 : found;
}
