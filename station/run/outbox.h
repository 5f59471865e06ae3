/* Slips on their way to paper. A slip is queued by an event in the same transaction as what caused it;
 * everything after that is recorded as a further event, so that a restart knows what was under way. 'reported
 * done' is not 'seen': only the slip's own code, read back, says that the paper exists. */
#ifndef BANDTALLY_RUN_OUTBOX_H
#define BANDTALLY_RUN_OUTBOX_H

#include "run/daemon.h"

int outbox_start(struct daemon *d);
void outbox_stop(struct daemon *d);
void outbox_stored(struct daemon *d, const struct event *events, int count);
void outbox_look(struct daemon *d); /* each second: finds slips that had no place, a few at a time */
int outbox_retry(struct daemon *d, int32_t slip, struct error *e); /* prints a further copy */

#endif
