/* What core.c shares with core-start.c, stored.c and core-scan.c, and nobody else. */
#ifndef BANDTALLY_RUN_CORE_INTERNAL_H
#define BANDTALLY_RUN_CORE_INTERNAL_H

#include "run/core.h"

/* Says on the board what it cannot be trusted in now, and why no longer. */
void core_weigh(struct core *c);

/* As core_open_noting(), which asks besides about what is held. */
int core_start(struct core *c, const char *folder, const char *head, struct error *e);

/* A core of practice in `folder`, which is fresh: with the site, rooms, policy and languages of `real`, whose languages it
 * borrows, and a record and a key of its own. */
int core_start_practice(struct core *c, const char *folder, const struct core *real, struct error *e);
void core_close_practice(struct core *c);

/* The room that the scanner of this scan works for. */
int32_t core_room_of(const struct core *c, const struct scan *s, struct moment now);

/* Decides, stores, applies, and remembers the reply for the board. `*stored` (may be NULL): 1 where the record
 * took it. */
const struct reply *core_carry_out(struct core *c, struct input *in, int *stored);

/* What a scan says, as an input; in->at is set. HALVES_JOINED: to the half of a pack that came before. */
enum halves_join core_read(struct core *c, const struct scan *s, struct input *in);

/* Enters what was decided to be entered: n scans that are held for the room, each in a turn of its own. What it
 * says of all stands in the last outcome's reply. */
void core_enter_stored(struct core *c, int32_t room, int n);

/* --- core-settings.c -------------------------------------------------------------------------------------- */

/* The settings of its folder, or those that were sound last. */
void core_settings_read(struct core *c);

/* With the record read: whose station it is, what is said of its settings, and those that are used are kept. */
void core_settings_settle(struct core *c);

/* --- core-bench.c ----------------------------------------------------------------------------------------- */

/* What follows the record besides the station: read at a start behind the event `after`. 0 or a negative errno with `e`. */
int stock_read(struct core *c, int64_t after, struct error *e);

/* As decide(), for a scan at a stores bench; and what is asked there by the time its events are stored. */
void bench_turn(struct core *c, const struct input *in);

/* What was scanned, where it was typed at a bench that asks for text. */
void bench_read(const struct core *c, const struct scan *s, struct input *in);

/* What stores must know of this outcome of a room with cases: added to it, before it is stored. */
void stock_takes(struct core *c, struct outcome *o);

/* After the outcome was stored: what a bench asks next, and what a room must know of what lies in stores. */
void stock_tells(struct core *c, const struct input *in);

#endif
