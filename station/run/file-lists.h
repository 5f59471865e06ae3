/* Lists that stores and whoever looks after the station keep as files, taken whole or not at all: catalogue and staff. */
#ifndef BANDTALLY_RUN_FILE_LISTS_H
#define BANDTALLY_RUN_FILE_LISTS_H

#include "base/json.h"
#include "run/core.h"

/* What the file changes, and unless `preview` is set it is stored. A new reference:
 *   {count: lines in the file, added, changed, stay, removed, absent: how many,
 *    changes [{what added changed removed absent, line, key, name, columns [{column, was, is}], packs of a removed one: how
 *    many of it lie in stores or rooms}]}
 * line: of the file, 0 none. `whole`: a line of the catalogue that the file lacks is removed. NULL with `e` where the file
 * is refused or the record cannot be written. */
json_t *import_catalogue(struct core *c, const char *csv, size_t size, int whole, int preview,
                         struct error *e);

/* The same of everybody who has a badge:
 *   {count, added, changed, stay, back, withdrawn,
 *    changes [{what added changed back withdrawn, line, number, name, kind, registered, was {name, kind, registered}}]} */
json_t *import_staff(struct core *c, const char *csv, size_t size, int preview, struct error *e);

/* Whether the badge may bear this name now: no other than until now while its person is in an open case, whose sheet and slip
 * would name both. 0, or -EBUSY with `e`. */
int badge_may_be(const struct core *c, const struct person *is, struct error *e);

#endif
