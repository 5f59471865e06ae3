/* The languages of the page, read once and kept as the text that is sent: afterwards no file is opened. */
#ifndef BANDTALLY_BOARD_CATALOGUES_H
#define BANDTALLY_BOARD_CATALOGUES_H

#include "base/buf.h"
#include "words/languages.h"

struct catalogues {
	struct {
		char path[LANGUAGE_CODE_MAX + 16]; /* "/words/de.json" */
		struct buf text;
	} list[LANGUAGES_MAX];
	int n;
};

/* All that are installed. What cannot be read is logged, and its rooms are shown in English. */
void catalogues_read(struct catalogues *out);
void catalogues_free(struct catalogues *c);

/* The text at a path, or NULL. Borrowed. */
const char *catalogues_text(const struct catalogues *c, const char *path);

#endif
