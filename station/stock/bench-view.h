/* What a stores bench shows besides its question, as JSON: what there is, and what is to be done today.
 *
 * { person "" or whose badge stands here,
 *   stock [{key, name, lot, expiry yyyymmdd or 0, days to it or null, shelf, waits, rooms [{room, packs}], received, issued,
 *           back, opened, returned, isolated, written_off, unaccounted, labelled, label_open, label_spoilt,
 *           why "" or why it is not given out: expired quarantine no-line}] those that expire first come
 *           first, at most STOCK_VIEW_MAX,
 *   more how many besides,
 *   low [{key, name, usable, minimum}] below their minimum,
 *   today [{what, key, name, lot, days, n}] what: expired expires-30 expires-90 confirm read-back box-again returned unaccounted,
 *   quarantine [{key, name, lot, why, shelf, waits, rooms [{room, packs}], opened, near [lots that read alike]}],
 *   short [{case, room, key, name, n, trays [{key, name, n how many its list has}]}] instruments among them,
 *   trays [{key, name, contents [{key, name, n}]}] the lists of all trays and pouches,
 *   missing [{case, room, key, name, lot, n}] that cases did not account for and nobody has found,
 *   labels [{first, last, key, name, lot, expiry, open [numbers], place, when "" before after}] that are to be read back }
 */
#ifndef BANDTALLY_STOCK_BENCH_VIEW_H
#define BANDTALLY_STOCK_BENCH_VIEW_H

#include "base/json.h"
#include "stock/stock.h"

#define STOCK_VIEW_MAX 200

json_t *stock_view(const struct stock *s, const struct station *st, int32_t room, int32_t today);

/* The same of one list, whole: for the command and for paper. `line` and `lot`: of those alone; "" all. */
json_t *stock_list(const struct stock *s, const struct station *st, const char *line, const char *lot,
                   int32_t today);

/* {short, missing}, whole. */
json_t *stock_shortfalls(const struct stock *s, const struct station *st);

/* {stock [as above, at most STOCK_VIEW_MAX], more how many besides} of all that lie somewhere: those whose key, name or lot
 * holds `text`, whatever its case; `only` "" all, or due (expired, or within 90 days), waits (not confirmed), withheld (expired
 * or in quarantine), rooms (something lies in one), unaccounted. */
json_t *stock_seek(const struct stock *s, const struct station *st, const char *text, const char *only,
                   int32_t today);

#endif
