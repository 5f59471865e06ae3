/* What stores ask of the whole record, as JSON. All cases of it are looked through: for a command, never for a scan. */
#ifndef BANDTALLY_RUN_STOCK_LISTS_H
#define BANDTALLY_RUN_STOCK_LISTS_H

#include "base/json.h"
#include "run/core.h"

/* The ended cases that opened a pack of this line, of this lot where `of` has one, on the day `since` or later (yyyymmdd; 0
 * ever): {cases [{case, room, name, day yyyymmdd, lot, packs, slip, or 0 it has none}] in order, told_since the day of the
 * first case that told stores what it took, 0 none did: a station without a bench keeps nothing of it}. A new reference, NULL
 * with `e`. */
json_t *stock_used(struct core *c, const struct batch *of, int32_t since, struct error *e);

/* What trays lack, what was found, and which cases may miss one: {short, missing [as stock_shortfalls()], found [{day
 * yyyymmdd, room where it was entered, key, name, case, or 0: none missed one, slip of that case or 0}] on the day `since` or
 * later, the last first}. A new reference, NULL with `e`. */
json_t *stock_found(struct core *c, int32_t since, struct error *e);

/* All that a recall asks of line and lot: {stock [as stock_list()], near [lots that read alike], open [{case, room, name}]
 * whose sheet has one, cases and told_since as stock_used(), held true where it is in quarantine, silent [{room, name, day, or 0 none
 * ever}] rooms in which nothing was scanned since then}. A new reference, NULL with `e`. */
json_t *stock_recall_list(struct core *c, const struct batch *of, struct error *e);

#endif
