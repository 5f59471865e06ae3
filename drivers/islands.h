/* Dark islands in a light picture: where a Data Matrix may lie.
 *
 * libzxing looks for a Data Matrix from the rim of the picture inwards and seldom gets past the edge of a
 * white label on a darker table. The symbol's own border, two dark sides that meet, is one connected dark
 * island in the white of its label; cut out, with what reaches further than the cut painted white, it is what
 * libzxing reads well.
 */
#ifndef BANDTALLY_DRIVERS_ISLANDS_H
#define BANDTALLY_DRIVERS_ISLANDS_H

#include "drivers/plane.h"

#define ISLANDS_MAX 12 /* the largest that have the shape; a table holds few */

struct islands;

struct islands *islands_new(void); /* NULL when memory is out */
void islands_free(struct islands *s);

/* Finds the islands that could be a symbol's border: 20 to 240 pixels, not much longer than wide, neither
 * solid nor thin. Their number, largest first, or -ENOMEM. They are known until the next call. */
int islands_find(struct islands *s, const struct plane *p);

/* Writes the cut-out of island `i` of that picture to `out`. `at` is where the cut-out lies; `degrees`, 0 to 89, how
 * far a square symbol with this border is turned: plane_tilt() by minus that sets it upright. 0 or -ENOMEM.
 */
int islands_cut(const struct islands *s, const struct plane *p, int i, struct plane *out, struct box *at,
                int *degrees);

#endif
