/* Two hands or two feet seen from the back, pointing right, drawn by lines of our own. The tips stand in rows
 * of one pitch, in the order in which the digits lie side by side on a pair of hands held out: left little
 * finger first, left thumb, right thumb, right little finger last. */
#ifndef BANDTALLY_LABELS_HANDS_H
#define BANDTALLY_LABELS_HANDS_H

#include "labels/canvas.h"

#define HANDS_DIGITS 10

/* The digit (1-20, as paper.h numbers them) of row 0-9 on the side of the hands or of the feet. */
int hands_digit(bool feet, int row);

/* Draws both within 100 mm from `x_mm`. `tip_y_mm` gives the height of each row's tip; the widths of the
 * drawing follow `pitch_mm`. Writes where each tip ends. */
void hands_draw(struct canvas *c, bool feet, double x_mm, const double tip_y_mm[HANDS_DIGITS],
                double pitch_mm, double tip_x_mm[HANDS_DIGITS]);

#endif
