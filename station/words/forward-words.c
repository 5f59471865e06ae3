#include "words/forward-words.h"

#include <string.h>

static const char *const words[] = {"",
#define X(name, word, text) word,
                                    FORWARD_WORDS(X)
#undef X
};

const char *forward_word_name(enum forward_word w)
{
	return words[w];
}

enum forward_word forward_word_named(const char *name)
{
	for (size_t i = 1; i < sizeof words / sizeof *words; i++)
		if (strcmp(words[i], name) == 0)
			return (enum forward_word)i;
	return FORWARD_NOTHING;
}
