/* Which form of a sentence is for how many: the expression behind "plural=" in a catalogue's head, an expression of C over n
 * with ?: || && == != < > <= >= + - * / % ! and brackets (GNU gettext manual, 'Additional functions for plural forms').
 */
#ifndef BANDTALLY_WORDS_PLURAL_H
#define BANDTALLY_WORDS_PLURAL_H

#include <stdint.h>

#define PLURALS_MAX 6
#define PLURAL_TEXT_MAX 400

struct plural {
	int forms;                  /* 1 to PLURALS_MAX */
	char text[PLURAL_TEXT_MAX]; /* the expression, which has been read once as a whole */
};

/* From "nplurals=2; plural=(n != 1);". 0, or -EINVAL where it is none. */
int plural_read(struct plural *out, const char *field);

/* From 0 to forms - 1; what the expression makes out of range is 0. `n` below 0 is taken without its sign. */
int plural_of(const struct plural *p, int64_t n);

#endif
