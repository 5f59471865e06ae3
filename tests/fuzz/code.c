/* Fuzzing what a barcode says: any bytes as a scan, with any AIM identifier.
 *
 * A libFuzzer entry; with replay.c, the run of the corpus in ctest. Beyond not crashing it must hold that a
 * fault lies inside the data and reads as a sentence, that nothing half-read is left, and that what is kept
 * of a code reads back as the same code. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/code.h"

#define TODAY 20261125

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

static int printable(const char *text)
{
	for (; *text; text++)
		if ((unsigned char)*text < 0x20 || *text == 0x7f)
			return 0;
	return 1;
}

static void check_fault(const struct code *c, const struct code_fault *f, size_t size)
{
	static const struct code empty;
	must(f->at <= size, "the place of the fault is beyond the data");
	must(f->why[0] && printable(f->why) && strstr(f->why, ": ") != NULL, "the fault is no sentence");
	must(!memcmp(c, &empty, sizeof empty), "something of a wrong code is left");
}

static void check_kept(const struct code *c)
{
	static struct code again;
	char kept[8192], twice[8192];
	struct code_fault f;
	must(code_kept_text(c, kept, sizeof kept) >= 0, "what is kept does not fit");
	/* HIBC is kept without its check character, and half of it is no code alone. */
	if (!kept[0] || c->kind == CODE_HIBC)
		return;
	must(code_read(&again, "", kept, strlen(kept), TODAY, &f) == 0, "what is kept cannot be read");
	must(code_kept_text(&again, twice, sizeof twice) >= 0 && !strcmp(kept, twice),
	     "what is kept changes");
}

static void check_code(const struct code *c, size_t size)
{
	must(c->count >= 0 && c->count <= CODE_ELEMENTS_MAX, "the number of elements");
	must(strlen(c->plain) < CODE_PLAIN_MAX && printable(c->plain), "the plain text");
	for (int i = 0; i < c->count; i++) {
		must(c->elements[i].title != NULL && c->elements[i].at <= size, "an element");
		must(memchr(c->elements[i].value, '\0', CODE_VALUE_MAX) && printable(c->elements[i].value),
		     "a value");
	}
	must(!c->expiry || (c->expiry >= 10000101 && c->expiry <= 99991231), "the date");
	check_kept(c);
	struct code both = *c, reduced = *c;
	code_reduce(&reduced);
	for (int i = 0; i < reduced.count; i++)
		must(reduced.elements[i].kept, "something is kept that may not be");
	code_join(&both, c, NULL);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const char *const aims[] = {"",    "]C1", "]d2", "]Q3", "]e0", "]C0", "]d1", "]E0",
	                                   "]E4", "]E3", "]I1", "]I3", "]A4", "]Q1", "]zz", "]"};
	static struct code code;
	struct code_fault f = {0, ""};
	if (!size)
		return 0;
	const char *aim = aims[data[0] % (sizeof aims / sizeof *aims)];
	if (code_read(&code, aim, data + 1, size - 1, TODAY, &f) < 0)
		check_fault(&code, &f, size - 1);
	else
		check_code(&code, size - 1);
	return 0;
}
