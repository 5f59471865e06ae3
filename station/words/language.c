#include "words/language.h"

#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/buf.h"
#include "base/file.h"
#include "base/name.h"
#include "words/plural.h"

#define MO_MAGIC 0x950412deu
#define MO_HEAD 20 /* magic, version, how many, where the originals and where the translations are listed */
#define KEY_MAX 1200

struct language {
	char code[LANGUAGE_CODE_MAX];
	char read_by[80];
	bool rtl;
	int lacks;
	struct plural plural;
	struct buf file; /* the forms are in it */
	const char *forms[SAYING_KINDS][PLURALS_MAX];
};

/* --- the file ------------------------------------------------------------------------------------- */

struct mo {
	const struct buf *file;
	uint32_t count, originals, translations;
};

/* In the order of this machine's bytes: msgfmt writes the order of the machine that it runs on. */
static uint32_t number_at(const struct buf *file, size_t at)
{
	uint32_t n = 0;
	if (at + sizeof n <= file->size)
		memcpy(&n, file->data + at, sizeof n);
	return n;
}

/* Entry i of a list: a text with a NUL behind it, and its length without; NULL where the file lies. */
static const char *text_at(const struct mo *mo, uint32_t list, uint32_t i, uint32_t *length)
{
	size_t entry = (size_t)list + (size_t)i * 8;
	uint32_t from = number_at(mo->file, entry + 4);
	*length = number_at(mo->file, entry);
	if (entry + 8 > mo->file->size || (size_t)from + *length >= mo->file->size ||
	    mo->file->data[(size_t)from + *length])
		return NULL;
	return mo->file->data + from;
}

/* The translation of an original of `size` bytes, which are in order. */
static const char *find(const struct mo *mo, const char *key, size_t size, uint32_t *length)
{
	uint32_t low = 0, high = mo->count, n;
	while (low < high) {
		uint32_t middle = low + (high - low) / 2;
		const char *text = text_at(mo, mo->originals, middle, &n);
		if (!text)
			return NULL;
		/* of one with two forms the first counts: the second stands behind its NUL */
		size_t first = strlen(text);
		int order = memcmp(text, key, first < size ? first : size);
		if (order == 0 && first == size)
			return text_at(mo, mo->translations, middle, length);
		if (order < 0 || (order == 0 && first < size))
			low = middle + 1;
		else
			high = middle;
	}
	return NULL;
}

/* What stands behind "Name: " in the head, up to the end of its line; "" where there is none. */
static void field_of(const char *head, const char *name, char *out, size_t size)
{
	const char *at = head;
	size_t length = strlen(name);
	out[0] = 0;
	while (at && (strncmp(at, name, length) != 0 || strncmp(at + length, ": ", 2) != 0))
		at = strchr(at, '\n') ? strchr(at, '\n') + 1 : NULL;
	if (at)
		snprintf(out, size, "%.*s", (int)strcspn(at + length + 2, "\n"), at + length + 2);
}

/* --- translations --------------------------------------------------------------------------------- */

static bool holds(const char *text, const char *braces, size_t size)
{
	for (const char *at = text; (at = strchr(at, '{')); at++)
		if (strncmp(at, braces, size) == 0)
			return true;
	return false;
}

/* Each value that `text` names is one that `in` names; {n} may always be left out: 'one forceps'. */
static bool names_only(const char *text, const char *in, bool but_n)
{
	for (const char *at = text; (at = strchr(at, '{')); at++) {
		size_t size;
		if (saying_value(at, &size) < 0 ||
		    (!holds(in, at, size) && !(but_n && strncmp(at, "{n}", 3) == 0)))
			return false;
	}
	return true;
}

static const char *why_not(const char *text, const char *english, bool counts)
{
	const char *end = text + strlen(text);
	for (const char *at = text; at < end;)
		if (!name_may_hold(name_next(&at, end)))
			return "it holds what is no letter of UTF-8, or a control character";
	if (!*text)
		return "one of its forms is empty";
	if (!names_only(text, english, false))
		return "it names in braces what the English does not, or no value at all";
	return names_only(english, text, counts) ? NULL : "it lacks a value that the English names in braces";
}

/* The forms of one sentence: one, or one for each of the plural's. Why they are not taken, or NULL. */
static const char *take_forms(struct language *l, int saying, const char *text, uint32_t length)
{
	const char *english = saying_english((enum saying)saying, 1), *end = text + length;
	bool counts = saying_counts((enum saying)saying);
	int wanted = counts ? l->plural.forms : 1;
	const char *forms[PLURALS_MAX] = {0}, *why = NULL;
	for (int i = 0; i < wanted && !why; i++) {
		if (text > end)
			return "it has too few forms";
		forms[i] = text;
		why = why_not(text, english, counts);
		text += strlen(text) + 1;
	}
	if (!why && text <= end)
		why = "it has too many forms";
	if (!why)
		memcpy(l->forms[saying], forms, sizeof forms);
	return why;
}

static void take_all(struct language *l, const struct mo *mo, language_refused *refused, void *context)
{
	char key[KEY_MAX];
	for (int i = 1; i < SAYING_KINDS; i++) {
		uint32_t length = 0;
		int n = snprintf(key, sizeof key, "%s\4%s", saying_key(i), saying_english((enum saying)i, 0));
		const char *text = n < (int)sizeof key ? find(mo, key, (size_t)n, &length) : NULL;
		const char *why = text ? take_forms(l, i, text, length) : NULL;
		l->lacks += !text || why;
		if (why && refused)
			refused(context, saying_key(i), why);
	}
}

static int take_head(struct language *l, const struct mo *mo)
{
	char field[PLURAL_TEXT_MAX + 40];
	uint32_t length = 0;
	const char *head = find(mo, "", 0, &length);
	if (!head)
		return -EINVAL;
	field_of(head, "Content-Type", field, sizeof field);
	if (!strstr(field, "charset=UTF-8"))
		return -EINVAL;
	field_of(head, "X-Direction", field, sizeof field);
	l->rtl = strcmp(field, "rtl") == 0;
	field_of(head, "X-Read-By", l->read_by, sizeof l->read_by);
	name_mend(l->read_by);
	field_of(head, "Plural-Forms", field, sizeof field);
	return plural_read(&l->plural, field);
}

int language_read(const char *path, const char *code, struct language **out, language_refused *refused,
                  void *context, struct error *e)
{
	struct language *l = calloc(1, sizeof *l);
	*out = NULL;
	if (!l)
		return error_set(e, -ENOMEM, "%s: not read: no memory: close other programs", path);
	int n = file_read(path, &l->file);
	struct mo mo = {.file = &l->file,
	                .count = number_at(&l->file, 8),
	                .originals = number_at(&l->file, 12),
	                .translations = number_at(&l->file, 16)};
	if (n < 0)
		error_set(e, n, "%s: not read: %s: install the station again", path, strerror(-n));
	else if (l->file.size < MO_HEAD || number_at(&l->file, 0) != MO_MAGIC ||
	         number_at(&l->file, 4) >> 16 || take_head(l, &mo) < 0)
		n = error_set(e, -EINVAL,
		              "%s: no catalogue of gettext's in UTF-8 with its plural forms: make it with "
		              "msgfmt on this kind of machine",
		              path);
	if (n < 0) {
		language_free(l);
		return n;
	}
	snprintf(l->code, sizeof l->code, "%s", code);
	take_all(l, &mo, refused, context);
	*out = l;
	return 0;
}

void language_free(struct language *l)
{
	if (l)
		buf_free(&l->file);
	free(l);
}

/* --- what is asked of it -------------------------------------------------------------------------- */

const char *language_code(const struct language *l)
{
	return l ? l->code : "en";
}

bool language_is_rtl(const struct language *l)
{
	return l && l->rtl;
}

const char *language_read_by(const struct language *l)
{
	return l ? l->read_by : "";
}

int language_lacks(const struct language *l)
{
	return l ? l->lacks : 0;
}

int language_plural(const struct language *l, int64_t n)
{
	return l ? plural_of(&l->plural, n) : n != 1;
}

const char *language_form_at(const struct language *l, enum saying saying, int i)
{
	if (l && l->forms[saying][0])
		return i < PLURALS_MAX ? l->forms[saying][i] : NULL;
	return i < 1 + saying_counts(saying) ? saying_english(saying, i) : NULL;
}

const char *language_form(const struct language *l, enum saying saying, int64_t n)
{
	if (l && l->forms[saying][0])
		return l->forms[saying][saying_counts(saying) ? plural_of(&l->plural, n) : 0];
	return saying_english(saying, n != 1);
}

bool text_has_rtl(const char *text)
{
	const char *end = text + strlen(text);
	while (text < end) {
		int32_t c = name_next(&text, end);
		if ((c >= 0x590 && c <= 0x8ff) || (c >= 0xfb1d && c <= 0xfdff) ||
		    (c >= 0xfe70 && c <= 0xfeff) || (c >= 0x10800 && c <= 0x10fff) ||
		    (c >= 0x1e800 && c <= 0x1efff))
			return true;
	}
	return false;
}
