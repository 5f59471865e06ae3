/* The words of a command after its name: options with and without a value, and the rest in order. */
#ifndef BANDTALLY_TOOL_WORDS_H
#define BANDTALLY_TOOL_WORDS_H

#define WORDS_MAX 64

struct words {
	const char *rest[WORDS_MAX]; /* words that are no options */
	int n_rest;
	const char *values[16]; /* by the option's place in `options` */
	int given[16];
};

/* `options`: "room= json late" — a name with '=' takes a value (--room 1 or --room=1). 0, or -1 after a
 * sentence on stderr that ends in `usage`. --help prints the usage on stdout and gives 1. */
int words_read(struct words *w, int argc, char **argv, const char *options, const char *usage);

const char *words_value(const struct words *w, const char *options, const char *name); /* NULL: not given */
int words_given(const struct words *w, const char *options, const char *name);

#endif
