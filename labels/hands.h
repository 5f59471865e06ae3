/* One hand or foot seen from its back (nail side up), as the board draws it: the same lines, in a box of 100 by 124, so
 * that nobody has to turn a picture in the mind. tests/unit/labels/same-drawing holds the two to each other. */
#ifndef BANDTALLY_LABELS_HANDS_H
#define BANDTALLY_LABELS_HANDS_H

#include "labels/canvas.h"

enum limb { RIGHT_HAND = 0, LEFT_HAND, RIGHT_FOOT, LEFT_FOOT, LIMBS };

/* The digit (1 to 20, as digits.c numbers them) that is number `place` of it, 0 the thumb or great toe. */
int limb_digit(enum limb limb, int place);

/* Where digit `place` stands from left to right, 0 to 4: the thumb of a right hand is the leftmost. */
int limb_order(enum limb limb, int place);

/* Draws it `width_mm` wide, the digit `place` black (-1: none). Returns its height. The drawing stands out of this box by a
 * tenth at the side of the little finger. */
double limb_draw(struct canvas *c, enum limb limb, int place, double x_mm, double y_mm, double width_mm);

#endif
