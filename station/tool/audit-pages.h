/* The reports of a year as pages that the board shows at /audit: made of a copy of the record, and handed over at the socket
 * (run/socket.h: "report"). */
#ifndef BANDTALLY_TOOL_AUDIT_PAGES_H
#define BANDTALLY_TOOL_AUDIT_PAGES_H

#include "base/error.h"

/* The year, its quarters and months up to the last event, and, of all rooms (0), the year by room. `year` 0: that of the last
 * event. What it took is said on stderr. 0 or a negative errno with `e`; then the board shows what it showed before. */
int audit_pages_show(int year, int room, struct error *e);

#endif
