/* What is sent that has words in it, read once and kept as the text that is sent: afterwards no file is opened. The sentences
 * of each language, and the two pages, which say before any script of theirs runs that they are not whole: they know no
 * language yet, and say it in every one that is installed.
 */
#ifndef BANDTALLY_BOARD_CATALOGUES_H
#define BANDTALLY_BOARD_CATALOGUES_H

#include "base/buf.h"
#include "words/languages.h"

#define CATALOGUES_PAGES 6 /* each by its address and by its file */

struct told_text {
	char path[LANGUAGE_CODE_MAX + 16]; /* "/words/de.json", "/desk" */
	const char *type;                  /* of its content */
	struct buf text;
};

struct catalogues {
	struct told_text list[LANGUAGES_MAX + CATALOGUES_PAGES];
	int n;
};

/* The pages, and all languages that are installed. What cannot be read is logged, and its rooms are shown in English. */
void catalogues_read(struct catalogues *out);
void catalogues_free(struct catalogues *c);

/* What is sent for a path, or NULL. Borrowed. */
const struct told_text *catalogues_text(const struct catalogues *c, const char *path);

#endif
