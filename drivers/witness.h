/* When a reading counts as a code. Pure.
 *
 * A wrong code on a count sheet is worse than none, for none is scanned again. What was measured on public
 * photographs: each decoder alone misreads EAN and UPC with a valid check digit, and repeating one decoder
 * repeats its error, but the two never agreed on a wrong text. So
 *
 *   QR, Data Matrix  their own error correction (Reed-Solomon) is strong: one witness is enough.
 *   all others       one check character or none: both witnesses must read the same, and each must have read
 *                    it more often than anything else in that place. Code 128 needs both as well: libzbar
 *                    passes over FNC4 and would give other letters without a sign of it.
 *
 * Nothing counts where a part of a larger message, or a code that programs scanners, was read in its place.
 * Symbologies that give false short codes where there is none (ITF, Code 39, Codabar, DataBar) are looked for
 * only when a setting asks for them with a least length.
 */
#ifndef BANDTALLY_DRIVERS_WITNESS_H
#define BANDTALLY_DRIVERS_WITNESS_H

#include "drivers/reading.h"

/* What is looked for unless a setting says more. */
#define SYMBOLOGIES_USUAL                                                                                    \
	(SYMBOLOGY_BIT(SYMBOLOGY_EAN) | SYMBOLOGY_BIT(SYMBOLOGY_EAN8) | SYMBOLOGY_BIT(SYMBOLOGY_CODE128) |   \
	 SYMBOLOGY_BIT(SYMBOLOGY_QR) | SYMBOLOGY_BIT(SYMBOLOGY_DATAMATRIX))

#define CODES_MAX 16

struct witness_rules {
	size_t least[SYMBOLOGY_COUNT]; /* bytes; 0 where any length is taken */
};

struct codes {
	const struct reading *item[CODES_MAX]; /* borrowed from the readings; each code once, however often it
	                                          is printed there */
	size_t count;
};

/* `seen` holds everything that was read in one picture, or in the last few frames of one camera. */
void witness_judge(const struct readings *seen, const struct witness_rules *rules, struct codes *out);

#endif
