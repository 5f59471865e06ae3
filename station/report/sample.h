/* A sample that anybody can draw again: the same seed, number and population give the same ones, on every machine. */
#ifndef BANDTALLY_REPORT_SAMPLE_H
#define BANDTALLY_REPORT_SAMPLE_H

#include <stdint.h>

/* Draws `count` different numbers from 0 to population - 1, each set as likely as any other, into `out`, in rising order.
 * count <= population. */
void sample_draw(uint64_t seed, int32_t population, int32_t count, int32_t *out);

#endif
