/* Fuzzing what of a text goes into a report of a fault: bytes that the station's journal might hold.
 *
 * Whatever comes: no name of a person or a case gets through, nor any word that is not one of the programs' own sentences or of
 * the system's; no number of more digits than an event's; and each line ends where it did.
 */
#include <ctype.h>

#include "tests/fuzz/fuzz.h"
#include "tool/mask.h"

/* In the place of the one that is made of all sources. */
const char *const vocabulary[] = {"cannot", "case", "event", "is", "kept", "of", "opened", "store", "the"};
const size_t vocabulary_size = sizeof vocabulary / sizeof *vocabulary;

static int is_word(const char *at, size_t n, const struct mask *m)
{
	char word[80];
	if (n >= sizeof word)
		return 0;
	snprintf(word, sizeof word, "%.*s", (int)n, at);
	for (size_t i = 0; i < vocabulary_size; i++)
		if (strcmp(word, vocabulary[i]) == 0)
			return !json_object_get(m->names, word);
	return json_object_get(m->system, word) || (n == 1 && strchr("aAch", *word));
}

static void look_at(const struct mask *m, const char *text)
{
	for (const char *at = text; *at;) {
		size_t n = 0, digits = 0;
		while (isalpha((unsigned char)at[n]))
			n++;
		while (isdigit((unsigned char)at[digits]))
			digits++;
		must(!n || is_word(at, n, m), "a word gets through that is not known");
		must(digits <= 9, "a number gets through that is no event's");
		at += n ? n : digits ? digits : 1;
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct mask m;
	struct buf out = {0};
	char *text = malloc(size + 1);
	must(text && mask_init(&m) == 0 && mask_name(&m, "opened Of-Case 17") == 0, "no memory");
	memcpy(text, data, size);
	text[size] = 0;
	must(mask_text(&m, text, &out) == 0, "no memory");
	if (out.data)
		look_at(&m, out.data);
	mask_deinit(&m);
	buf_free(&out);
	free(text);
	return 0;
}
