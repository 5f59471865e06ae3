/* How far the record had come, noted in a second place: a small file that no backup of the record takes along, so that an
 * older or another record is noticed when it is put back.
 *
 *   {"case":41,"hash":"…","incarnation":1,"item":120,"seq":2345,"slip":17,"v":1}
 *
 * seq and hash: of the last event; case, slip, item: the last numbers that were given out. It is written after the events
 * are durable and before the paper that they cause leaves the station, so that no paper is newer than it.
 */
#ifndef BANDTALLY_RECORD_HEAD_H
#define BANDTALLY_RECORD_HEAD_H

#include "base/error.h"
#include "count/event.h"
#include "record/store.h"

#define HEAD_FILE "head.json"

struct noted {
	struct head head;
	int32_t incarnation;
};

/* Its folder: the one that the settings name (""), else `otherwise` (NULL), else one in the data folder. */
#define HEAD_PLACE_MAX 300
void head_place(char out[HEAD_PLACE_MAX], const char *folder, const char *otherwise, const char *named);

/* 0; -ENOENT where there is none; -EINVAL where it cannot be read, … with `e`. */
int head_read(struct noted *out, const char *file, struct error *e);

/* `durable`: waits for the disk. 0 or a negative errno. */
int head_write(const struct noted *head, const char *file, int durable);

/* What the record is beside it. */
enum head_found {
	HEAD_HELD = 1, /* it has come as far or further, and holds that event */
	HEAD_BEHIND,   /* it ends before it */
	HEAD_OTHER,    /* it holds another event there */
};
int head_compare(struct record *r, const struct head *head); /* or a negative errno */

#endif
