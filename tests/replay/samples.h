/* The samples of slips in labels/samples: each is a slip that a script prints, as it goes to the printer's program. */
#ifndef BANDTALLY_TESTS_SAMPLES_H
#define BANDTALLY_TESTS_SAMPLES_H

#include "base/json.h"

struct sample {
	const char *name;   /* labels/samples/NAME.json */
	const char *script; /* tests/replay/SCRIPT.t */
	int slip;           /* its number in the script; copy 1 */
	const char *paper;
	int dpi;
};

extern const struct sample samples[]; /* the last has no name */

/* The whole document, from what its script printed (slips.h): on its paper, and signed with a key that anyone knows.
 * A new reference. */
json_t *sample_document(const struct sample *s, const json_t *printed);

#endif
