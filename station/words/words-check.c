/* words-check CODE FILE.mo: whether the station takes each translation of a catalogue as it stands. A tool of the build: a
 * catalogue with one that is refused is not built. What is not translated yet is counted, and said in English.
 */
#include <stdio.h>

#include "words/language.h"

static void tell(void *context, const char *key, const char *why)
{
	fprintf(stderr, "words-check: '%s': refused: %s\n", key, why);
	++*(int *)context;
}

int main(int argc, char **argv)
{
	struct language *l;
	struct error e = {0};
	int refused = 0;
	if (argc != 3) {
		fprintf(stderr, "words-check CODE FILE.mo\n");
		return 2;
	}
	if (language_read(argv[2], argv[1], &l, tell, &refused, &e) < 0) {
		fprintf(stderr, "words-check: %s\n", e.text);
		return 1;
	}
	if (language_lacks(l))
		fprintf(stderr, "%s: %d of %d sentences are said in English\n", argv[1], language_lacks(l),
		        SAYING_KINDS - 1);
	language_free(l);
	return refused ? 1 : 0;
}
