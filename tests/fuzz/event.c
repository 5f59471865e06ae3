/* Fuzzing the text of an event: any bytes as a line of the record. What is taken is written back as one
 * canonical text, reads back as the same event, and is then what `audit verify` compares with. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "record/event.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct event e, back;
	struct error why = {0};
	struct buf text = {0}, twice = {0};
	char room[24];
	if (event_read(&e, (const char *)data, size, &why) < 0) {
		must(strstr(why.text, ": ") != NULL, "the fault is no sentence");
		return 0;
	}
	must(e.kind < EV_KINDS && strlen(event_key(&e, room)) < IDENTITY_MAX, "a field");
	must(event_write(&e, &text) == 0, "what was read cannot be written");
	must(event_read(&back, text.data, text.size, NULL) == 0, "what was written cannot be read");
	must(event_write(&back, &twice) == 0 && text.size == twice.size &&
	         !memcmp(text.data, twice.data, text.size),
	     "the canonical text changes");
	buf_free(&text);
	buf_free(&twice);
	return 0;
}
