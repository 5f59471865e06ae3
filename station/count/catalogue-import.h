/* A catalogue file beside the catalogue that is there: what it would change, line by line, and what is to be stored for it.
 *
 * Pure, and the same for a preview and for the import itself. A file gives lines by their key: those that are there
 * already are changed or stay, others are added. A line that the file lacks stays as well, unless the file is the whole
 * catalogue: then it is removed, which is refused where a tray of the file still holds it. A code may move to another
 * line only where the file gives both lines. What stands on a sheet keeps what was known of it when it was counted in.
 */
#ifndef BANDTALLY_COUNT_CATALOGUE_IMPORT_H
#define BANDTALLY_COUNT_CATALOGUE_IMPORT_H

#include "count/catalogue.h"
#include "count/event.h"

enum line_change_kind { LINE_STAYS = 0, LINE_ADDED, LINE_CHANGED, LINE_REMOVED, LINE_NOT_IN_FILE };

struct line_change {
	enum line_change_kind kind;
	int number;                  /* on which line of the file; 0 the file has none of it */
	const struct line *was, *is; /* NULL where there is none; of the catalogue and of `file` */
	uint32_t columns;            /* LINE_CHANGED: bit 1 << enum line_column of each that differs */
};

struct catalogue_import {
	struct line_change *changes; /* of the file's lines in their order, then of those that it lacks */
	size_t n_changes;
	struct event *events; /* to be stored in this order */
	size_t n_events;
	struct catalogue file;
};

/* `there` must stay as it is until the import was stored, or is deinited. 0, or -EINVAL, -ENOSPC or -ENOMEM with `e`, and
 * nothing to free. */
int catalogue_import_init(struct catalogue_import *im, const struct catalogue *there, const char *text,
                          size_t size, int whole, struct error *e);
void catalogue_import_deinit(struct catalogue_import *im); /* fits _cleanup_ */

/* Whether each tray of the file lists what the file or `there` has, and not itself: 0, or -EINVAL with `e`. `beside`, where not
 * NULL, becomes the first line of the file whose list needs `there`, or NULL. Not of what a hospital publishes line by line: a
 * tray may come before what is on it, and is refused at the table until then. */
int catalogue_import_lists(const struct catalogue_import *im, const struct catalogue *there,
                           const struct line **beside, struct error *e);

size_t catalogue_import_count(const struct catalogue_import *im, enum line_change_kind kind);

#endif
