/* labels.ini in the data folder: what lies in the label printers. One section a medium, a roll or a sheet of labels:
 *
 *   [medium small]             its name, for 'label pack --medium small'
 *   dpi = 203                  of its printer: 203, 300 or 600
 *   label_mm = 57 x 32         of one label, whole millimetres: 20 x 12 to 120 x 120
 *   shape = square             of the symbol: square (16 x 16 modules) or rectangle (12 x 26)
 *   sheet_mm = 210 x 297       only of sheets, here and below
 *   labels = 3 x 8             across and down
 *   first_mm = 7.5 x 15.5      from the sheet's corner to that of the first label
 *   step_mm = 65.0 x 33.5      from one label's corner to the next's
 *
 * Read when labels are made, so that a change needs no start. A label that would lie beyond its sheet or on its neighbour is
 * refused by name.
 */
#ifndef BANDTALLY_RUN_MEDIA_H
#define BANDTALLY_RUN_MEDIA_H

#include "base/error.h"
#include "base/json.h"

#define MEDIA_FILE "labels.ini"

/* The medium as a document of bandtally-print has it: {dpi, shape, label {width_mm, height_mm}, sheet {width_um, height_um,
 * across, down, first_x_um, first_y_um, step_x_um, step_y_um}}. A new reference; NULL with `e`: there is none of that name,
 * or the file is not right. */
json_t *media_find(const char *folder, const char *name, struct error *e);

/* Whether each of the file is right. 0, also where there is no file; or negative errno with `e`. */
int media_check(const char *folder, struct error *e);

#endif
