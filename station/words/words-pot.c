/* words-pot: writes the list of sentences as a template for translators (.pot); with --pseudo as a translation into no
 * language at all, longer and with accents, so that a test sees what is cut and what was never translated; with --page as
 * the English of the board's page. A tool of the build.
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
		int twice = *text >= 'A' && letters++ % 5 < 2;
		used += (size_t)snprintf(out + used, size - used, "%s%s", letter, twice ? letter : "");
		text++;
	}
	out[used < size ? used : size - 1] = 0;
}

static void put_translation(enum saying s, int makes_pseudo)
{
	char one[2048] = "", many[2048] = "";
	if (makes_pseudo) {
		pseudo(saying_english(s, 0), one, sizeof one);
		pseudo(saying_english(s, 1), many, sizeof many);
	}
	put_line(saying_counts(s) ? "msgstr[0]" : "msgstr", one);
	if (saying_counts(s))
		put_line("msgstr[1]", many);
	putchar('\n');
}

static void put_sentence(enum saying s, int makes_pseudo)
{
	if (strchr(saying_english(s, 1), '{'))
		printf("#, python-brace-format\n");
	put_line("msgctxt", saying_key(s));
	put_line("msgid", saying_english(s, 0));
	if (saying_counts(s))
		put_line("msgid_plural", saying_english(s, 1));
	put_translation(s, makes_pseudo);
}

static int put_template(int makes_pseudo)
{
	printf("msgid \"\"\nmsgstr \"\"\n"
	       "\"Project-Id-Version: bandtally\\n\"\n"
	       "\"Content-Type: text/plain; charset=UTF-8\\n\"\n"
	       "\"Content-Transfer-Encoding: 8bit\\n\"\n"
	       "\"Plural-Forms: nplurals=2; plural=(n != 1);\\n\"\n"
	       "\"X-Direction: ltr\\n\"\n"
	       "\"X-Read-By: %s\\n\"\n\n",
	       makes_pseudo ? "nobody: no language" : "not yet read by a practitioner");
	for (int s = 1; s < SAYING_KINDS; s++)
		put_sentence((enum saying)s, makes_pseudo);
	return 0;
}

static int put_page(void)
{
	_cleanup_(buf_free) struct buf text = {0};
	_cleanup_(json_drop) json_t *english = language_catalogue(NULL);
	if (json_write_canonical(english, &text) < 0)
		return 1;
	printf("// Made from station/words by the build.\nexport default %s;\n", text.data);
	return 0;
}

int main(int argc, char **argv)
{
	if (argc == 1 || (argc == 2 && strcmp(argv[1], "--pseudo") == 0))
		return put_template(argc == 2);
	if (argc == 2 && strcmp(argv[1], "--page") == 0)
		return put_page();
	fprintf(stderr, "words-pot: '%s': only --pseudo or --page is known\n", argv[1]);
	return 2;
}
