/* A file of everybody who has a badge, beside those who have one here: what it would change, and what is to be stored for it.
 *
 * The file (base/csv.h) has the columns
 *   name,kind,number,registered
 * kind: practitioner, surgeon or nurse-in-charge; registered: yes or no; number: that of the badge, or nothing for a new one, which
 * is then given the next. It is the whole list: whoever is not in it has left, and is withdrawn. Somebody who was
 * withdrawn and stands in it with that number has come back. Pure, and the same for a preview.
 */
#ifndef BANDTALLY_COUNT_STAFF_FILE_H
#define BANDTALLY_COUNT_STAFF_FILE_H

#include "base/buf.h"
#include "base/error.h"
#include "count/team.h"

#define STAFF_FILE_MAX 5000 /* people */

enum person_change_kind {
	PERSON_STAYS = 0,
	PERSON_ADDED,
	PERSON_CHANGED,
	PERSON_CAME_BACK,
	PERSON_WITHDRAWN
};

struct person_change {
	enum person_change_kind kind;
	int line;                 /* of the file; 0 it has none of this person */
	struct person is;         /* PERSON_WITHDRAWN: as known until now */
	const struct person *was; /* NULL nobody yet */
};

struct staff_import {
	struct person_change *changes; /* of the file in its order, then who is withdrawn */
	size_t n_changes;
	struct event *events; /* to be stored in this order */
	size_t n_events;
};

/* `there` must stay as it is until the import was stored or deinited. 0, or -EINVAL, -ENOSPC or -ENOMEM with `e`, and nothing
 * to free. */
int staff_import_init(struct staff_import *im, const struct staff *there, const char *text, size_t size,
                      struct error *e);
void staff_import_deinit(struct staff_import *im); /* fits _cleanup_ */

size_t staff_import_count(const struct staff_import *im, enum person_change_kind kind);

/* The same file of those who are not withdrawn. 0 or -ENOMEM. */
int staff_write_csv(const struct staff *s, struct buf *out);

#endif
