/* A copy of a station's record, made event by event from a hospital's store: for whoever audits more than one station.
 *
 * It is a record as store.h describes it, its texts and hashes to the byte as the station made them; only what left the station's
 * record after the store had it is still there, and what left before is missing here as well. Which incarnation of the station it follows stands in the file as its
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

/* The events behind the last one, up to `last`, had left the station's record before the store heard of them; `hash`: of that last
 * one, in hex. As collect_add(). */
int collect_gone(struct record *r, int64_t last, const char *hash, struct error *e);

/* What was added is on the disk, and the next begins behind it. */
int collect_commit(struct record *r, int32_t incarnation, struct error *e);

/* The same, where the copy is whole: -EBADMSG where something else is missing than what the record says that left it. */
int collect_end(struct record *r, int32_t incarnation, struct error *e);

#endif
