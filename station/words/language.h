/* One language: a catalogue of gettext's (CODE.mo), read whole and then only asked.
 *
 * libintl chooses by environment and by locales that the machine need not have, for the whole process at once; here a language
 * is an argument of each call, so that two rooms can have two. The file's format is that of the GNU gettext manual, 'The
 * Format of GNU MO Files', its plural forms those of 'Additional functions for plural forms' (plural.h).
 *
 * A sentence is found by its key (msgctxt) together with its English (msgid): a translation of an English that has changed
 * since is not found, and the English is said. So it is where a translation lacks a value that the English names, or names
 * another: that is refused at build (words-check.c), and here once more, for a file can come from elsewhere.
 *
 * Header fields of ours: X-Direction (rtl; else it is ltr), X-Read-By (who has read it), Language-Name (in itself).
 */
#ifndef BANDTALLY_WORDS_LANGUAGE_H
#define BANDTALLY_WORDS_LANGUAGE_H

#include <stdbool.h>

#include "base/error.h"
#include "words/said.h"

#define LANGUAGE_CODE_MAX 12 /* "pt-BR" and its like, with the NUL (RFC 5646) */

/* U+2068 FIRST STRONG ISOLATE and U+2069 POP DIRECTIONAL ISOLATE. */
#define ISOLATE_BEGIN "\xe2\x81\xa8"
#define ISOLATE_END "\xe2\x81\xa9"
#define ISOLATE_BYTES 3

/* Told of each translation that is not taken: its key, and why. */
typedef void language_refused(void *context, const char *key, const char *why);

/* Reads a catalogue. `refused` may be NULL. 0, or a negative errno and a sentence with the path. */
int language_read(const char *path, const char *code, struct language **out, language_refused *refused,
                  void *context, struct error *e);
void language_free(struct language *language); /* NULL is fine */

/* All of them take NULL, which is English. */
const char *language_code(const struct language *language); /* "en" */
bool language_is_rtl(const struct language *language);
const char *language_read_by(const struct language *language); /* "" nobody is named */
int language_lacks(const struct language *language);           /* how many sentences it says in English */

/* The text of a sentence, with its values in braces, in the form for `n`; English where there is none. */
const char *language_form(const struct language *language, enum saying saying, int64_t n);

/* Which of the forms is for `n`, and form `i` (from 0), NULL behind the last. */
int language_plural(const struct language *language, int64_t n);
const char *language_form_at(const struct language *language, enum saying saying, int i);

/* Whether a letter in it goes from right to left (Unicode bidi classes R and AL, by their blocks). */
bool text_has_rtl(const char *text);

#endif
