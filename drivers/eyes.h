/* Both witnesses before one picture, which can be shown to them in several ways.
 *
 * The ways were chosen by what they add on public photographs (tests/photos): each makes some codes readable
 * to one witness that the plain picture does not, and they err differently.
 */
#ifndef BANDTALLY_DRIVERS_EYES_H
#define BANDTALLY_DRIVERS_EYES_H

#include <stdbool.h>

#include "drivers/plane.h"
#include "drivers/reading.h"

enum view {
	VIEW_PLAIN,
	VIEW_SMOOTH, /* grain: at 8 levels of it libzbar reads nothing in the plain picture */
	VIEW_LEVEL,  /* uneven light and faint print made even */
	VIEW_DOUBLE, /* small modules */
	VIEW_TURNED, /* a code on its side */
	VIEW_SHARP,  /* out of focus */
	VIEW_HALF,   /* noise and grain; a code that is very near */
	VIEW_HALF_SHARP,
	VIEW_DOUBLE_SHARP,
	VIEW_SHARP_DOUBLE,
	VIEW_LEVEL_DOUBLE,
	VIEW_INVERTED,    /* light on dark, as marked on metal */
	VIEW_TILTED_LEFT, /* a code that lies askew */
	VIEW_TILTED_RIGHT,
	VIEW_ISLANDS, /* a small Data Matrix on a label somewhere on a table (islands.h) */
};
#define VIEW_COUNT 15

struct eyes;

struct eyes *eyes_new(symbology_set wanted); /* NULL when memory is out */
void eyes_free(struct eyes *eyes);

enum care {
	CARE_GLANCE,   /* libzxing only: about 10 ms for 1280x720 where there is no symbol */
	CARE_FRAME,    /* both, libzbar on every second row and column */
	CARE_CLOSE,    /* both, libzbar on each */
	CARE_THOROUGH, /* libzbar at several densities, which err differently; for a still picture */
};

/* Adds what the witnesses read in this view of `picture` to `out`, with boxes in pixels of the picture. 0, or
 * -ENOMEM; a view that would be too large or too small to be read is left out. */
int eyes_look(struct eyes *eyes, const struct plane *picture, enum view view, enum care care,
              struct readings *out);

/* Looks at frame `number` of a live camera. As long as nothing is in view (neither witness read anything in
 * the last few frames) every other frame is looked at plain, and the others in turn for islands and at a
 * glance in another view; the views take turns. Once something is, each frame is looked at plain and closely,
 * for islands, smoothed, and in one other view, which is mostly the one that last gave a witness's reading
 * that the plain one did not: what only one view shows must be seen in it frame after frame. As eyes_look().
 */
int eyes_watch(struct eyes *eyes, const struct plane *frame, unsigned long number, bool in_view,
               struct readings *out);

#endif
