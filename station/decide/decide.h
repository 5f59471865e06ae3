/* The count: state + what was scanned + time -> what happened, and a reply.
 *
 * Pure: the caller reads the code, looks up what the record knows of it, and passes both in. decide() changes
 * nothing; it returns events, which the caller stores and then applies with station_apply(). Every input gets
 * a reply that says what happened and what to do next.
 */
#ifndef BANDTALLY_DECIDE_DECIDE_H
#define BANDTALLY_DECIDE_DECIDE_H

#include "decide/input.h"
#include "decide/outcome.h"

/* Always fills `out`. A tick without anything due gives no events and an empty `said`. */
void decide(const struct station *st, const struct input *in, struct outcome *out);

#endif
