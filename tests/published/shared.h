/* Checks against data that others published and that this project does not contain.
 *
 * The data lie in a folder beside the project, ../shared/data, or in $BANDTALLY_SHARED/data. Where they are
 * absent a test says 'skipped: …' and ends with 77, which ctest shows as skipped.
 *
 * Each test is a tally: rows that passed, rows that are left out with the reason, rows that failed. It ends
 * badly when one failed, or when none passed (a check that reads nothing proves nothing).
 */
#ifndef BANDTALLY_TESTS_PUBLISHED_SHARED_H
#define BANDTALLY_TESTS_PUBLISHED_SHARED_H

#include <jansson.h>
#include <stdbool.h>

#include "code/code.h"

#define TODAY 20261125 /* so that years like 20 and 25 are of this century */

/* Opens data/NAME for reading, or ends the test as skipped. */
FILE *shared_open(const char *name);

void tally_pass(void);
void tally_fail(const char *format, ...) __attribute__((format(printf, 1, 2)));
void tally_leave(const char *group); /* `group` is static: the reason, in words */
int tally_end(const char *name);     /* prints, and gives the exit code */

/* Calls `row` for each line of data/NAME, which is a JSON object with "line" and "args". */
void each_row(const char *name, void (*row)(const json_t *args, long line, const char *call));
const char *arg(const json_t *args, size_t n); /* "" where there is none */

/* "(10)AB(17)270331" of the elements, for comparing. `out` holds 4,096 bytes. */
void elements_text(const struct code *code, char *out);
/* The published form with '^' for FNC1, read as a GS1 symbol; then elements_text. False where it is wrong. */
bool caret_elements(const char *caret, char *out);

#endif
