/* An event as text: one JSON object in canonical form (RFC 8785), which is what is stored and hashed.
 *
 *   {"boot":1,"boot_ms":…,"case":12,"digit":2,"kind":"digit-on","room":1,"seq":34,"v":1,"wall_ms":…}
 *
 * v 1. kind: a name of count/event.h, which states the further fields of each kind. boot, boot_ms, wall_ms:
 * when. late, keyed, first: true where the flag is set, absent otherwise. Fields that are 0 or "" are left
 * out.
 */
#ifndef BANDTALLY_RECORD_EVENT_H
#define BANDTALLY_RECORD_EVENT_H

#include "base/buf.h"
#include "count/event.h"

/* Appends the text. 0 or -ENOMEM, -EINVAL. */
int event_write(const struct event *e, struct buf *out);

/* Reads one back. 0, or -EINVAL with `why`: not JSON, another version, an unknown kind, a field out of range.
 */
int event_read(struct event *e, const char *text, size_t size, struct error *why);

/* What the record finds this event by: the identity of an item, the number of a slip; "" for most. Borrowed
 * from the event or from `room`. */
const char *event_key(const struct event *e, char room[24]);

#endif
