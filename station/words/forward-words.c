#include "words/forward-words.h"

#include <string.h>

static const struct {
	const char *name, *text;
} words[] = {{"", ""},
#define X(name, word, text) {word, text},
             FORWARD_WORDS(X)
#undef X
};

const char *forward_word_name(enum forward_word w)
{
	return words[w].name;
}

const char *forward_word_text(enum forward_word w)
{
	return words[w].text;
}

enum forward_word forward_word_named(const char *name)
{
	for (size_t i = 1; i < sizeof words / sizeof *words; i++)
		if (strcmp(words[i].name, name) == 0)
			return (enum forward_word)i;
	return FORWARD_NOTHING;
}
