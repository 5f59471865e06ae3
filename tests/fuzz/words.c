/* Fuzzing the catalogues of languages: bytes that begin with "nplurals" are the field of a head that says which form is for
 * how many, any others a file of gettext's.
 *
 * Whatever comes: a form is one of those that there are; of a catalogue that is taken each sentence has a text, in UTF-8
 * and with no other values than the English names; and what pages are told of it is JSON.
 */
#include "base/json.h"
#include "base/name.h"
#include "tests/fuzz/folder.h"
#include "words/language.h"
#include "words/page-catalogue.h"
#include "words/plural.h"

static const int64_t numbers[] = {0, 1, 2, 5, 11, 21, 101, 1000000, INT64_MAX, INT64_MIN};

static void read_plural(const uint8_t *data, size_t size)
{
	struct plural p;
	char *field = malloc(size + 1);
	must(field != NULL, "no memory");
	memcpy(field, data, size);
	field[size] = 0;
	for (size_t i = 0; plural_read(&p, field) == 0 && i < sizeof numbers / sizeof *numbers; i++) {
		int form = plural_of(&p, numbers[i]);
		must(p.forms >= 1 && p.forms <= PLURALS_MAX && form >= 0 && form < p.forms,
		     "a form that there is not");
	}
	free(field);
}

static void look_at_text(const char *text)
{
	must(text && *text, "a sentence without a text");
	for (const char *end = text + strlen(text); text < end;)
		must(name_may_hold(name_next(&text, end)), "a letter that no sentence may hold");
}

static void on_refused(void *context, const char *key, const char *why)
{
	(void)context;
	must(*key && *why, "a translation is refused without a reason");
}

static void read_catalogue(const uint8_t *data, size_t size)
{
	struct language *l = NULL;
	struct error e = {0};
	if (language_read(folder_write("xx.mo", data, size), "xx", &l, on_refused, NULL, &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return;
	}
	must(language_lacks(l) >= 0 && language_lacks(l) < SAYING_KINDS, "it lacks more than there is");
	for (int i = 1; i < SAYING_KINDS; i++)
		for (size_t n = 0; n < sizeof numbers / sizeof *numbers; n += 3)
			look_at_text(language_form(l, (enum saying)i, numbers[n]));
	struct buf told = {0};
	json_t *page = language_catalogue(l);
	must(page && json_write_canonical(page, &told) == 0, "what pages are told of it is no JSON");
	json_decref(page);
	buf_free(&told);
	language_free(l);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	if (size >= 8 && memcmp(data, "nplurals", 8) == 0)
		read_plural(data, size);
	else
		read_catalogue(data, size);
	return 0;
}
