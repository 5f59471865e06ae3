/* What a camera sees, small enough for people to aim by and for one line to carry: grey, JPEG. Pure. */
#ifndef BANDTALLY_DRIVERS_GLIMPSE_H
#define BANDTALLY_DRIVERS_GLIMPSE_H

#include "base/wire.h"
#include "drivers/plane.h"

#define GLIMPSE_WIDTH 240 /* at most, and so the height */
#define GLIMPSE_HEIGHT 180
#define GLIMPSE_BYTES_MAX 2850 /* of the JPEG, so that its line stays below WIRE_LINE_MAX */

/* Writes `in` to `out` so small that it fits, its shape kept; each pixel the mean of those that it stands for. A smaller
 * picture stays as it is. 0 or as plane_resize(). */
int glimpse_reduce(const struct plane *in, struct plane *out);

/* The JPEG of it, as good as GLIMPSE_BYTES_MAX allows, in `out`, and its bytes in *size. 0, -EMSGSIZE where the worst is
 * still too large, or -ENOMEM. */
int glimpse_jpeg(const struct plane *small, unsigned char out[GLIMPSE_BYTES_MAX], size_t *size);

/* Where a box of `picture` is, in thousandths of its width and height. */
struct wire_seen glimpse_place(const struct box *box, const struct plane *picture);

#endif
