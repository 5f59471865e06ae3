/* bandtally stock receive, confirm, issue, return, count, write-off, spoilt, destroyed, close, came-back: what a stores bench
 * does with cards, by the command. */
#ifndef BANDTALLY_TOOL_STOCK_BENCH_H
#define BANDTALLY_TOOL_STOCK_BENCH_H

#include "tool/words.h"

#define STOCK_BENCH_USAGE                                                                                    \
	"       bandtally stock receive LINE|--code CODE --packs N [--lot LOT|none] [--expiry "              \
	"YYYY-MM-DD|none] [--by "                                                                            \
	"BADGE] "                                                                                            \
	"[--and BADGE] [--sure]\n"                                                                           \
	"       bandtally stock confirm LINE [--lot LOT] [--expiry DAY] --and BADGE\n"                       \
	"       bandtally stock issue --room ROOM LINE [--lot LOT] [--expiry DAY] [--packs N] | --labels "   \
	"FIRST-LAST\n"                                                                                       \
	"       bandtally stock return --sealed yes|no LINE [--lot LOT] [--expiry DAY] --room ROOM | "       \
	"--labels FIRST-LAST\n"                                                                              \
	"       bandtally stock count LINE [--lot LOT] [--expiry DAY] --packs N\n"                           \
	"       bandtally stock write-off LINE [--lot LOT] [--expiry DAY] --packs N --why TEXT\n"            \
	"       bandtally stock spoilt|destroyed --labels FIRST-LAST\n"                                      \
	"       bandtally stock print-again\n"                                                               \
	"       bandtally stock close LINE|--code CODE\n"                                                    \
	"       bandtally stock came-back LINE [--lot LOT] | --slip CODE\n"

/* Whether `word` is one of them, and where it is, what it does: an exit code. */
int stock_bench_knows(const char *word);
int stock_bench(const struct words *w, const char *options, const char *usage);

#endif
