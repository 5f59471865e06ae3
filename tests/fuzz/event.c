/* Fuzzing the text of an event: any bytes as a line of the record. What is taken is written back as one
 * canonical text, reads back as the same event, and is then what `audit verify` compares with. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/json.h"
#include "record/event-json.h"
#include "record/event-text.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

/* The quick reader takes nothing that the strict one does not, and makes the same of it. */
static void check_quick(const char *text, size_t size)
{
	static struct event quick, strict;
	if (!event_read_canonical(&quick, text, size))
		return;
	must(event_read_strict(&strict, text, size, NULL) == 0,
	     "the quick reader took what the strict one refuses");
	must(memcmp(&quick, &strict, sizeof quick) == 0, "the two readers differ");
	struct buf again = {0};
	must(event_write(&quick, &again) == 0 && again.size == size && !memcmp(again.data, text, size),
	     "the quick reader took what is not canonical");
	buf_free(&again);
}

/* Against the house's general writer of canonical JSON. */
static void check_canonical(const struct buf *text)
{
	struct buf general = {0};
	json_t *o = json_read(text->data, text->size, NULL);
	must(o && json_write_canonical(o, &general) == 0, "what was written is no JSON");
	must(general.size == text->size && !memcmp(general.data, text->data, text->size),
	     "what was written is not canonical");
	json_decref(o);
	buf_free(&general);
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
	check_quick((const char *)data, size);
	must(e.kind < EV_KINDS && strlen(event_key(&e, room)) < IDENTITY_MAX, "a field");
	must(event_write(&e, &text) == 0, "what was read cannot be written");
	check_canonical(&text);
	check_quick(text.data, text.size);
	must(event_read(&back, text.data, text.size, NULL) == 0, "what was written cannot be read");
	must(event_write(&back, &twice) == 0 && text.size == twice.size &&
	         !memcmp(text.data, twice.data, text.size),
	     "the canonical text changes");
	buf_free(&text);
	buf_free(&twice);
	return 0;
}
