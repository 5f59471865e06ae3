/* All languages that this installation has: each CODE.mo of the folder of catalogues, read before the program confines
 * itself. English needs no file.
 */
#ifndef BANDTALLY_WORDS_LANGUAGES_H
#define BANDTALLY_WORDS_LANGUAGES_H

#include "words/language.h"

#define LANGUAGES_MAX 32

struct languages {
	struct language *list[LANGUAGES_MAX]; /* by their codes */
	int n;
};

/* BANDTALLY_WORDS of the environment, else where they are installed, else where they are built: words/ beside the folder
 * of this program. Borrowed. */
const char *languages_folder(void);

/* Reads them all. What cannot be read is left out and told in `e`: 0, or the negative errno of the last; the others are
 * there. */
int languages_read(struct languages *out, const char *folder, struct error *e);
void languages_free(struct languages *l);

/* NULL is English: of "en", of "", and of one that is not there. */
const struct language *languages_find(const struct languages *l, const char *code);

/* Whether a language of this name is installed, without reading it; "en" always is. */
bool language_is_installed(const char *code);

#endif
