/* The queues that the print server of this machine offers. */
#ifndef BANDTALLY_LABELS_QUEUES_H
#define BANDTALLY_LABELS_QUEUES_H

#include "base/buf.h"

/* A line each: its name, a tab, "default" or nothing, a tab, and what is said of it. Those whose name a job could not be sent to
 * (send.h) are left out. Waits for the server as libcups does, some seconds at most. 0 or -ENOMEM. */
int queues_tell(struct buf *out);

#endif
