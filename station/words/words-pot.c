/* words-pot: writes the list of sentences as a template for translators (.pot); with --pseudo as a translation into no
 * language at all, longer and with accents, so that a test sees what is cut and what was never translated; with --hebrew as
 * one into Hebrew letters, by their sound, so that every sentence goes from right to left; with --page as the English of the
 * board's page, with --page-stores as that of the page of stores alone. A tool of the build.
 */
#include <stdio.h>
#include <string.h>

#include "base/json.h"
#include "words/page-catalogue.h"

static void put_quoted(const char *text)
{
	putchar('"');
	for (; *text; text++) {
		if (*text == '"' || *text == '\\')
			putchar('\\');
		putchar(*text);
	}
	printf("\"\n");
}

static void put_line(const char *word, const char *text)
{
	printf("%s ", word);
	put_quoted(text);
}

/* What stands in braces stays as it is. Four letters of ten are doubled: 40 % longer. */
static void pseudo(const char *text, char *out, size_t size)
{
	static const char plain[] = "aceinouyACEINOUY";
	static const char *const accented[] = {
	    "\xc3\xa1", "\xc3\xa7", "\xc3\xa9", "\xc3\xad", "\xc3\xb1", "\xc3\xb3", "\xc3\xba", "\xc3\xbd",
	    "\xc3\x81", "\xc3\x87", "\xc3\x89", "\xc3\x8d", "\xc3\x91", "\xc3\x93", "\xc3\x9a", "\xc3\x9d"};
	size_t used = 0, letters = 0;
	while (*text && used + 8 < size) {
		size_t braces;
		if (saying_value(text, &braces) >= 0) {
			used += (size_t)snprintf(out + used, size - used, "%.*s", (int)braces, text);
			text += braces;
			continue;
		}
		const char *at = strchr(plain, *text);
		char one[2] = {*text, 0};
		const char *letter = at ? accented[at - plain] : one;
		int twice = *text >= 'A' && (unsigned char)*text < 0x80 && letters++ % 5 < 2;
		used += (size_t)snprintf(out + used, size - used, "%s%s", letter, twice ? letter : "");
		text++;
	}
	out[used < size ? used : size - 1] = 0;
}

/* As long as the English; Hebrew itself is shorter. */
static void hebrew(const char *text, char *out, size_t size)
{
	static const char *const letters[26] = {
	    "\xd7\x90", "\xd7\x91", "\xd7\xa6", "\xd7\x93", "\xd7\xa2", "\xd7\xa4", "\xd7\x92",
	    "\xd7\x94", "\xd7\x99", "\xd7\x92", "\xd7\x9b", "\xd7\x9c", "\xd7\x9e", "\xd7\xa0",
	    "\xd7\x95", "\xd7\xa4", "\xd7\xa7", "\xd7\xa8", "\xd7\xa1", "\xd7\xaa", "\xd7\x95",
	    "\xd7\x95", "\xd7\xa9", "\xd7\x97", "\xd7\x99", "\xd7\x96"};
	size_t used = 0;
	while (*text && used + 8 < size) {
		size_t braces;
		int capital = *text >= 'A' && *text <= 'Z', small = *text >= 'a' && *text <= 'z';
		if (saying_value(text, &braces) >= 0) {
			used += (size_t)snprintf(out + used, size - used, "%.*s", (int)braces, text);
			text += braces;
		} else if (capital || small) {
			used += (size_t)snprintf(out + used, size - used, "%s",
			                         letters[*text++ - (capital ? 'A' : 'a')]);
		} else {
			out[used++] = *text++;
		}
	}
	out[used < size ? used : size - 1] = 0;
}

/* What a translation is made by, and how many plural forms it has. */
struct making {
	const char *option;
	void (*make)(const char *text, char *out, size_t size); /* NULL: it is left to people */
	int forms;
	const char *plural, *direction, *read_by;
};

static const struct making makings[] = {
    {"", NULL, 2, "nplurals=2; plural=(n != 1);", "ltr", "not yet read by a practitioner"},
    {"--pseudo", pseudo, 2, "nplurals=2; plural=(n != 1);", "ltr", "nobody: no language"},
    {"--hebrew", hebrew, 3, "nplurals=3; plural=(n==1 ? 0 : n==2 ? 1 : 2);", "rtl", "nobody: no language"}};

static void put_translation(enum saying s, const struct making *m)
{
	char forms[2][2048] = {"", ""}; /* of one, of many */
	for (int i = 0; i < 2 && m->make; i++)
		m->make(saying_english(s, i), forms[i], sizeof forms[i]);
	put_line(saying_counts(s) ? "msgstr[0]" : "msgstr", forms[0]);
	for (int i = 1; i < m->forms && saying_counts(s); i++) {
		printf("msgstr[%d] ", i);
		put_quoted(forms[1]);
	}
	putchar('\n');
}

static void put_sentence(enum saying s, const struct making *m)
{
	if (strchr(saying_english(s, 1), '{'))
		printf("#, python-brace-format\n");
	put_line("msgctxt", saying_key(s));
	put_line("msgid", saying_english(s, 0));
	if (saying_counts(s))
		put_line("msgid_plural", saying_english(s, 1));
	put_translation(s, m);
}

static int put_template(const struct making *m)
{
	printf("msgid \"\"\nmsgstr \"\"\n"
	       "\"Project-Id-Version: bandtally\\n\"\n"
	       "\"Content-Type: text/plain; charset=UTF-8\\n\"\n"
	       "\"Content-Transfer-Encoding: 8bit\\n\"\n"
	       "\"Plural-Forms: %s\\n\"\n"
	       "\"X-Direction: %s\\n\"\n"
	       "\"X-Read-By: %s\\n\"\n\n",
	       m->plural, m->direction, m->read_by);
	for (int s = 1; s < SAYING_KINDS; s++)
		put_sentence((enum saying)s, m);
	return 0;
}

/* The wall's page has what says how sentences are made as well; the others take it from there. */
static int put_page(enum words_page page)
{
	_cleanup_(buf_free) struct buf text = {0};
	_cleanup_(json_drop) json_t *english = language_catalogue(NULL),
	                            *words = language_page_words(NULL, page);
	json_object_set(english, "words", words);
	if (json_write_canonical(page == PAGE_WALL ? english : words, &text) < 0)
		return 1;
	printf("// Made from station/words by the build.\nexport default %s;\n", text.data);
	return 0;
}

int main(int argc, char **argv)
{
	const char *option = argc > 1 ? argv[1] : "";
	for (size_t i = 0; argc <= 2 && i < sizeof makings / sizeof *makings; i++)
		if (strcmp(option, makings[i].option) == 0)
			return put_template(&makings[i]);
	if (argc == 2 && strcmp(option, "--page") == 0)
		return put_page(PAGE_WALL);
	if (argc == 2 && strcmp(option, "--page-stores") == 0)
		return put_page(PAGE_STORES);
	fprintf(stderr, "words-pot: '%s': only --pseudo, --hebrew, --page or --page-stores is known\n",
	        option);
	return 2;
}
