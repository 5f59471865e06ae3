/* An event as text: one JSON object in canonical form (RFC 8785), which is what is stored and hashed.
 *
 *   {"boot":1,"boot_ms":…,"case":12,"digit":2,"kind":"digit-on","room":1,"seq":34,"utc":60,"v":2,"wall_ms":…}
 *
 * kind: a name of count/event.h, which states the further fields of each kind. boot, boot_ms, wall_ms: when; utc: how
 * many minutes civil time was ahead of UTC. late, keyed, first: true where the flag is set, absent otherwise. Fields that
 * are 0 or "" are left out. An enum stands by its name (count/event-lists.h).
 *
 * v: the format. Format 1, of version 0.1.0, had numbers for enums and no utc. Every format that was ever written is read
 * for ever (event-table.h); an event that was read is written again in its own format, a new one in the latest.
 */
#ifndef BANDTALLY_RECORD_EVENT_JSON_H
#define BANDTALLY_RECORD_EVENT_JSON_H

#include "base/buf.h"
#include "count/event.h"

/* Appends the text, in the format that the event was read from, or the latest. 0, -ENOMEM, or -EINVAL where a number is
 * too large. What is out of its range is written so that no reader takes it. */
int event_write(const struct event *e, struct buf *out);

/* Reads one back. 0, or -EINVAL with `why`: not JSON, a later format, an unknown kind, a field out of range.
 */
int event_read(struct event *e, const char *text, size_t size, struct error *why);

/* What the record finds this event by: the identity of an item, the number of a slip; "" for most. Borrowed
 * from the event or from `room`. */
const char *event_key(const struct event *e, char room[24]);

#endif
