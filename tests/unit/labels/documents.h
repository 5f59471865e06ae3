/* Documents for the tests: the committed samples, which are what the station makes (but limits-*, which only the
 * contract allows), and the fullest slip that the contract allows. */
#ifndef BANDTALLY_TESTS_LABELS_DOCUMENTS_H
#define BANDTALLY_TESTS_LABELS_DOCUMENTS_H

#include "base/json.h"

json_t *sample(const char *name); /* labels/samples/NAME.json; stops the test when it cannot be read */
char **sample_names(void);        /* every one that lies there; ends in NULL; borrowed */

/* Every text as long as it may be, several of everything, on many pages. */
json_t *fullest_slip(const char *kind, const char *paper);

#endif
