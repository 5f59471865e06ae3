/* A report of a fault: what a developer needs, in one text that names nobody. Each part adds its own to `out` below a title,
 * and says in one line what could not be had. What is no number of a known meaning and no word of ours goes through the mask.
 */
#ifndef BANDTALLY_TOOL_FAULT_H
#define BANDTALLY_TOOL_FAULT_H

#include "base/buf.h"
#include "base/error.h"
#include "tool/mask.h"

struct fault {
	struct buf out;
	struct mask mask;
};

void fault_title(struct fault *f, const char *title);
void fault_masked(struct fault *f, const char *before, const char *text); /* a line of its own */

/* Whether it is whole, and how many events it has of each kind. The names in it go into the mask, so that it comes before all
 * else. -EPERM with `e` where the station says that the user may not; else 0. */
int fault_record(struct fault *f, struct error *e);
void fault_status(struct fault *f);
void fault_settings(struct fault *f);
/* Of the journal, or where `file` is not NULL its last lines. */
void fault_messages(struct fault *f, const char *file);

#endif
