/* Settings files, read strictly.
 *
 * A file is `[section]` lines and `name = value` lines; `;` or `#` begins a comment line. Within a line neither
 * does: a value is all that stands behind its sign, without the spaces round it. What the library would pass in
 * silence is refused here with file and line: an indented line (it would become a second value of the name above),
 * a name given twice in a section, and a line over 200 bytes (it would be cut).
 */
#ifndef BANDTALLY_BASE_INI_H
#define BANDTALLY_BASE_INI_H

#include "base/error.h"

#define INI_LINE_MAX 199

/* Called for each value in the order of the file; texts are borrowed for the call. Returns 0, or a negative
 * errno with `e` filled by error_set() ("why: what to do"; file and line are put in front). */
typedef int (*ini_value_fn)(void *context, const char *section, const char *name, const char *value,
                            struct error *e);

/* 0; -ENOENT where the file is absent (e is filled as well); another negative errno, also of what is no regular file. */
int ini_read(const char *path, ini_value_fn each, void *context, struct error *e);

#endif
