/* What stores do at a bench, by the command: the steps that somebody would scan and type there, one behind the other in one
 * go, decided and stored as there and marked keyed. */
#ifndef BANDTALLY_RUN_STOCK_STEPS_H
#define BANDTALLY_RUN_STOCK_STEPS_H

#include "base/json.h"
#include "run/core.h"

#define STOCK_STEPS_MAX 512

/* `steps`: a list of objects with one of
 *   {card: "RECEIVE", or its number} {to_room: 2} {badge: 7} {label: 178} {text: "GREEN-M/T26"}: a code as printed as well
 *   {box: "GREEN-M/T26"}: as a text, where labels of that bench wait for their box
 * and with at: "how-many", where the step answers that question alone (count/stock-lists.h) and is left out where something
 * else is asked. A lot or expiry that is left out, since a code said it, and says otherwise is refused before anything is
 * received. What is asked at the end is left, as DONE leaves it, and told.
 *
 * A badge that nobody has, or one that is given for the first and for the second person, is refused before any step.
 *
 * A new reference {verdict: that of the last step, said [each reply], entered: how many of the steps entered something,
 * asked: the question that no step answered, or "", why: the name of the sentence that refused, or ""}. The steps end at the
 * first that is refused; what was accepted before it stays. NULL with `e`: there is no bench, a question is open there, or a
 * step is none; then nothing was done. */
json_t *stock_steps(struct core *c, int32_t room, const json_t *steps, struct error *e);

/* One of them, typed at the bench's page by `scanner`'s name; what is asked then stays asked. Its reply is valid until the
 * next scan; NULL with `e`: it is none. */
const struct reply *stock_step(struct core *c, int32_t room, const char *scanner, const json_t *step,
                               struct error *e);

#endif
