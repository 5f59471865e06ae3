#include "tool/mask.h"

#include <ctype.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define TOKEN_MAX 64
#define SMALL_DIGITS 3
#define EVENT_DIGITS 9
static const char letters[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
static const char digits[] = "0123456789";
static const char between[] = " \t\r\n()[]{}<>,;:!?'\"|\\";

/* --- which words there are ----------------------------------------------------------------------- */

static int take_words(json_t *set, const char *text)
{
	char word[TOKEN_MAX];
	for (const char *at = text; *(at += strcspn(at, letters));) {
		size_t n = strspn(at, letters);
		snprintf(word, sizeof word, "%.*s", (int)n, at);
		if (json_object_set_new(set, word, json_true()) < 0)
			return -ENOMEM;
		at += n;
	}
	return 0;
}

int mask_init(struct mask *m)
{
	*m = (struct mask){json_object(), json_object()};
	int r = m->system && m->names ? 0 : -ENOMEM;
	for (int i = 1; r == 0 && strerrordesc_np(i); i++) {
		r = take_words(m->system, strerrordesc_np(i));
		if (r == 0 && strerrorname_np(i))
			r = take_words(m->system, strerrorname_np(i));
	}
	return r;
}

void mask_deinit(struct mask *m)
{
	json_decref(m->system);
	json_decref(m->names);
}

/* As it stands, and as it might be written elsewhere. */
int mask_name(struct mask *m, const char *name)
{
	char small[512];
	snprintf(small, sizeof small, "%s", name);
	for (char *c = small; *c; c++)
		*c = (char)tolower((unsigned char)*c);
	int r = take_words(m->names, name);
	return r < 0 ? r : take_words(m->names, small);
}

static int compare(const void *a, const void *b)
{
	return strcmp(a, *(const char *const *)b);
}

static int is_known(const struct mask *m, const char *word)
{
	if (json_object_get(m->names, word))
		return 0;
	if (!word[1]) /* "a code", "store.c" */
		return strchr("aAch", word[0]) != NULL;
	return json_object_get(m->system, word) ||
	       bsearch(word, vocabulary, vocabulary_size, sizeof *vocabulary, compare);
}

/* --- a text --------------------------------------------------------------------------------------- */

/* Words with something between them, as in "bandtally-print" and "/var/lib". */
static int words_pass(const struct mask *m, const char *token)
{
	char copy[TOKEN_MAX], *rest = copy;
	snprintf(copy, sizeof copy, "%s", token);
	for (char *word = strsep(&rest, "-/._="); word; word = strsep(&rest, "-/._="))
		if (*word && (word[strspn(word, letters)] || !is_known(m, word)))
			return 0;
	return 1;
}

static int number_passes(const char *token, const char *before)
{
	static const char *const small[] = {"code", "signal", "incarnation", "format", "schema"};
	size_t n = strlen(token), ends = strlen(before);
	if (token[strspn(token, digits)])
		return 0;
	if (strcmp(before, "event") == 0)
		return n <= EVENT_DIGITS;
	for (size_t i = 0; i < sizeof small / sizeof *small; i++)
		if (strcmp(before, small[i]) == 0)
			return n <= SMALL_DIGITS;
	return ends > 2 && strcmp(before + ends - 2, ".c") == 0 && n <= SMALL_DIGITS + 1;
}

int mask_text(const struct mask *m, const char *text, struct buf *out)
{
	char token[TOKEN_MAX], before[TOKEN_MAX] = "";
	int hidden = 0, r = 0;
	while (r == 0 && *text) {
		size_t gap = strspn(text, between), n = strcspn(text + gap, between), end = n;
		while (end && text[gap + end - 1] == '.')
			end--;
		snprintf(token, sizeof token, "%.*s", (int)end, text + gap);
		int passes =
		    !n || (end < sizeof token && (words_pass(m, token) || number_passes(token, before)));
		if (passes || !hidden)
			r = buf_add(out, text, gap);
		if (r == 0 && (passes || !hidden))
			r = passes ? buf_add(out, text + gap, n) : buf_add_text(out, "…");
		hidden = !passes;
		snprintf(before, sizeof before, "%s", passes ? token : "");
		text += gap + n;
	}
	return r;
}
