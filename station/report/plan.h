/* A theatre list, for coverage: which finger and toe operations were planned where and when. UTF-8 text, one head line, four
 * columns and no others:
 *
 *     date,room,slot,digit          date YYYY-MM-DD; room a number of station.ini; slot 1 to 99, the place in that room's
 *     2026-03-02,1,2,yes            day; digit yes or no: an operation that may use a digital tourniquet is planned
 *
 * A list of a theatre has names in it, so a further column refuses the whole file, by the name of its head only, and nothing
 * of it is kept. A room and a day without any line is not known, which is not 'none planned'.
 *
 * What was read can be written again, these columns alone, and a later list laid over it.
 */
#ifndef BANDTALLY_REPORT_PLAN_H
#define BANDTALLY_REPORT_PLAN_H

#include <stddef.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"

struct plan_slot {
	int32_t day, room;
	int16_t slot;
	uint8_t digit; /* 1 planned */
};

struct plan {
	struct plan_slot *slots; /* by day, room and slot; the caller's through plan_deinit() */
	size_t count, room;
};

/* Whether a room of that number is known to the station. */
typedef int (*plan_room_fn)(void *context, int32_t room);

/* Reads a whole file. 0; -EINVAL with one sentence, which names the line; -ENOMEM. `p` is empty unless 0. */
int plan_read(struct plan *p, const char *text, size_t size, plan_room_fn known, void *context,
              struct error *e);
/* What `later` says takes the place of what `p` has of its rooms from its first day to its last: what was taken off a list
 * goes, and other rooms and days stay. 0, or -ENOMEM with `e`; then `p` has a part of it. */
int plan_lay_over(struct plan *p, const struct plan *later, struct error *e);
/* As a file that plan_read() takes. 0 or -ENOMEM. */
int plan_write(const struct plan *p, struct buf *out);
void plan_deinit(struct plan *p);

#endif
