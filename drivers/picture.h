/* Pictures in files: PNG, JPEG and PGM (raw, P5), as grey over white. */
#ifndef BANDTALLY_DRIVERS_PICTURE_H
#define BANDTALLY_DRIVERS_PICTURE_H

#include <stddef.h>
#include <stdint.h>

#include "base/error.h"
#include "drivers/plane.h"

#define PICTURE_BYTES_MAX (64 * 1024 * 1024)

/* Reads the picture that the descriptor is at the beginning of, which stays the caller's. `name` is for the
 * sentence only. 0, or a negative errno with `e` filled: -EISDIR, -ENODATA (empty), -EFBIG (more than
 * PICTURE_BYTES_MAX bytes or PLANE_PIXELS_MAX pixels), -EBADMSG (damaged, or cut off), -ENOTSUP (no picture
 * of these kinds), -EIO, -ENOMEM. A damaged picture is not read in part. */
int picture_read(int fd, const char *name, struct plane *out, struct error *e);

/* The grey plane of one JPEG in memory (a camera's frame). As above, without a name in the sentence. */
int picture_jpeg(const uint8_t *bytes, size_t size, struct plane *out, struct error *e);

#endif
