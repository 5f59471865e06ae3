/* The slips of cases that leave the record, kept on paper that any reader of later years can show: PDF/A-1b (ISO 19005-1), one file
 * a month of the day on which the case was opened.
 *
 * Each slip is told from the archive, up to its own event, in the language that it had, and signed as it was, so that
 * `bandtally audit slip` and any JOSE library say the same of it. bandtally-print draws it; ghostscript, called as a program,
 * makes the month of them. What is claimed is 'b', that it looks the same; it is not tagged.
 */
#ifndef BANDTALLY_TOOL_ARCHIVE_SLIPS_H
#define BANDTALLY_TOOL_ARCHIVE_SLIPS_H

#include "record/archive.h"

/* Whether ghostscript is here. 0, or -ENOENT with `e`. */
int archive_slips_can(struct error *e);

/* Writes slips-YYYY-MM-of-NAME.pdf into `folder` from the archive `file`, whose NAME.db it is, for the cases of `a` that left;
 * `key_folder` holds the station's key. Other cases of a month may leave with a later archive, whose slips are another file.
 * `*slips` and `*files`: how many. 0 or a negative errno with `e`. */
int archive_slips(const struct archive *a, const char *file, const char *folder, const char *key_folder,
                  int *slips, int *files, struct error *e);

#endif
