/* The second witness: libzxing 1.4, behind a header that C can read.
 *
 * Debian's build keeps its asserts, and reading several linear codes at once can end the process in one. So
 * it is asked for one code at a time, and for DataBar only where a setting asks for it; over 2,191 public
 * pictures that never ended it. Data Matrix is read by this witness alone.
 */
#ifndef BANDTALLY_DRIVERS_ZXING_H
#define BANDTALLY_DRIVERS_ZXING_H

#ifdef __cplusplus
extern "C" {
#endif

#include "drivers/plane.h"
#include "drivers/reading.h"

/* Adds at most one reading of the `wanted` symbologies in `p` to `out`, with its corners in pixels of `p`.
 * 1 read, 0 nothing read, or -ENOMEM. Throws nothing. */
int zxing_read(const struct plane *p, symbology_set wanted, struct readings *out);

#ifdef __cplusplus
}
#endif

#endif
