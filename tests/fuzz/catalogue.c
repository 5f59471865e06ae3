/* Fuzzing a catalogue file: any bytes as CSV. A fault names its line; what is taken obeys rule 5. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "count/catalogue.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

static void same_when_written(const struct catalogue *taken)
{
	struct buf csv = {0};
	struct catalogue again = {0};
	struct error e = {0};
	must(catalogue_write_csv(taken, &csv) == 0, "no file could be written");
	must(catalogue_read_csv(csv.data, csv.size, &again.lines, &again.count, &e) == 0 &&
	         again.count == taken->count &&
	         (!again.count || memcmp(again.lines, taken->lines, again.count * sizeof *again.lines) == 0),
	     "the file that was written is not the one that was read");
	buf_free(&csv);
	catalogue_deinit(&again);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct line *lines = NULL;
	struct catalogue taken = {0};
	struct error e = {0};
	size_t count = 0;
	if (catalogue_read_csv((const char *)data, size, &lines, &count, &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return 0;
	}
	for (size_t i = 0; i < count; i++) {
		const struct line *l = &lines[i];
		must(l->key[0] && memchr(l->key, 0, sizeof l->key) && memchr(l->name, 0, sizeof l->name),
		     "a text of a line");
		must(l->per_pack >= 1 && role_from_name(role_name(l->role)) == (int)l->role,
		     "a number of a line");
		must(l->role != ROLE_TOURNIQUET || (l->marked && l->visible),
		     "an unmarked tourniquet was taken");
		must(catalogue_set(&taken, l, &e) == 0 && catalogue_by_key(&taken, l->key),
		     "a line that was taken is none");
	}
	same_when_written(&taken);
	free(lines);
	catalogue_deinit(&taken);
	return 0;
}
