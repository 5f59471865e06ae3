/* A grey picture, 8 bits a pixel, row by row without gaps, and what can be done to it before it is read. */
#ifndef BANDTALLY_DRIVERS_PLANE_H
#define BANDTALLY_DRIVERS_PLANE_H

#include <stddef.h>
#include <stdint.h>

#include "drivers/reading.h"

/* Pixels of the largest picture that is read: enough for any camera's still, and 64 MiB at most. */
#define PLANE_PIXELS_MAX (64 * 1024 * 1024)
#define PLANE_SIDE_MAX 32767

struct plane {
	uint8_t *pixels; /* owned; NULL while empty */
	int width, height;
};

/* Gives `p` room for the size, keeping its memory where it is large enough. 0, -EFBIG or -ENOMEM. */
int plane_resize(struct plane *p, int width, int height);
void plane_free(struct plane *p); /* fits _cleanup_ */

/* Each writes `out` (another plane) from `in`: 0 or as plane_resize(). */
int plane_copy(const struct plane *in, struct plane *out);
int plane_double(const struct plane *in, struct plane *out); /* twice as wide and high, interpolated */
int plane_halve(const struct plane *in, struct plane *out);  /* each pixel the mean of four */
int plane_turn(const struct plane *in, struct plane *out);   /* a quarter turn clockwise */
int plane_invert(const struct plane *in, struct plane *out);
int plane_tilt(const struct plane *in, int degrees, struct plane *out); /* clockwise about the middle */
int plane_smooth(const struct plane *in, struct plane *out);  /* each pixel with its eight neighbours */
int plane_sharpen(const struct plane *in, struct plane *out); /* what is blurred, less so */
int plane_level(const struct plane *in, struct plane *out);   /* each place between its own black and white */

/* Where a place of the picture that plane_tilt() made came from. */
void plane_untilt(const struct plane *in, int degrees, int *x, int *y);

/* Paints the box white. */
void plane_blank(struct plane *p, const struct box *b);

#endif
