/* The first witness: libzbar. */
#ifndef BANDTALLY_DRIVERS_READER_ZBAR_H
#define BANDTALLY_DRIVERS_READER_ZBAR_H

#include "drivers/plane.h"
#include "drivers/reading.h"

struct zbar_reader;

struct zbar_reader *zbar_reader_new(symbology_set wanted); /* NULL when memory is out */
void zbar_reader_free(struct zbar_reader *r);

/* Adds what is read in `p` to `out`, with boxes in pixels of `p`. `density` n looks at every n-th row and
 * column. 0 or -ENOMEM. */
int zbar_reader_read(struct zbar_reader *r, const struct plane *p, int density, struct readings *out);

#endif
