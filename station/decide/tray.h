/* What a tray brings: the things on its list, which bear no number of their own (rule 4). */
#ifndef BANDTALLY_DECIDE_TRAY_H
#define BANDTALLY_DECIDE_TRAY_H

#include "decide/turn.h"

/* One thing on a tray's list, as it is counted in. */
struct thing tray_part(const struct line *line);

/* 1 where nothing has happened to it since it was counted in. */
int lies_here_whole(const struct item *it);

/* The whole of the tray of the input on the sheet, nothing of it used: how many lines of it, each picked by its number; 0 none lies
 * here; -1 only some. `picked` [ITEMS_MAX + 1]. */
int tray_on_sheet(const struct turn *t, uint8_t picked[]);

#endif
