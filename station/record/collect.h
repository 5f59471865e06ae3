/* A copy of a station's record, made event by event from a hospital's store: for whoever audits more than one station.
 *
 * It is a record as store.h describes it, its texts and hashes to the byte as the station made them; only what left the station's
 * record after the store had it is still there. Which incarnation of the station it follows stands in the file as its
 * application_id. Nothing is kept of what was added until collect_commit().
 */
#ifndef BANDTALLY_RECORD_COLLECT_H
#define BANDTALLY_RECORD_COLLECT_H

#include "base/event-line.h"
#include "record/store.h"

/* Opens the copy, or makes an empty one; `incarnation`: 0 of an empty one. record_last() says how far it has come. 0, or a
 * negative errno with `e`: -EUCLEAN where it is none, or damaged. */
int collect_open(struct record **out, const char *file, int32_t *incarnation, struct error *e);

/* The next event. 0, or a negative errno with `e`: -EBADMSG where its number or its hash does not follow. */
int collect_add(struct record *r, const struct line_event *line, struct error *e);

/* What was added is on the disk, and the next begins behind it. */
int collect_commit(struct record *r, int32_t incarnation, struct error *e);

#endif
