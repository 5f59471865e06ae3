/* A list of entries that breaks a check, made as short as it goes, and told as a script for tests/replay. */
#ifndef BANDTALLY_TESTS_THEATRE_SHRINK_H
#define BANDTALLY_TESTS_THEATRE_SHRINK_H

#include <stdio.h>

#include "stage.h"

/* Plays g->list (of a failed run) again and again with less of it, as long as the same check fails. The shortest is
 * left in g->list with its failure; 0 where the list does not fail when it is played again. */
int shrink(struct stage *g, const struct station *built);

/* The script, with the truth as comments. */
void tell_script(const struct stage *g, const struct station *built, FILE *out);

void scanned_words(const struct world *w, const struct scanned *c, char out[120]);

#endif
