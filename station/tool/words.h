/* The words of a command after its name: options with and without a value, and the rest in order. */
#ifndef BANDTALLY_TOOL_WORDS_H
#define BANDTALLY_TOOL_WORDS_H

#define WORDS_MAX 64
#define OPTIONS_MAX 24
#define ROOM_NUMBER_MAX 99      /* as on its cards */
#define SLIP_NUMBER_MAX 9999999 /* seven; cases as well */

enum { WORDS_READ = 0, WORDS_HELP = 1 };

struct words {
	const char *rest[WORDS_MAX]; /* words that are no options */
	int n_rest;
	const char *values[OPTIONS_MAX]; /* by the option's place in `options` */
	int given[OPTIONS_MAX];
	struct {
		int place;
		const char *value;
	} each[WORDS_MAX]; /* every option with a value, in order */
	int n_each;
};

/* `options`: "room= line=+ json" — a name with '=' takes a value (--room 1 or --room=1), once; with '=+' it may be given several
 * times, for words_each(). WORDS_READ; -1 after a
 * sentence on stderr that ends in `usage`; WORDS_HELP where --help was given, and the usage printed on stdout. */
int words_read(struct words *w, int argc, char **argv, const char *options, const char *usage);

const char *words_value(const struct words *w, const char *options, const char *name); /* NULL: not given */
/* Each value of an option that may be given several times, in order, from `*at` 0 on; NULL behind the last. */
const char *words_each(const struct words *w, const char *options, const char *name, int *at);
/* 0 where all options that were given are among the names in `allowed` ("room json"), those of what the first word asks for; else
 * EXIT_USAGE after a sentence on stderr that ends in `usage`. */
int words_only(const struct words *w, const char *options, const char *allowed, const char *usage);
int words_given(const struct words *w, const char *options, const char *name);

/* The whole number that an option or a word of that name gives. 0 and `out`, which stays as it was where `value` is NULL;
 * -1 after a sentence on stderr that names it, says what it may be and ends in `usage`. */
int words_number(const char *name, const char *value, int low, int high, int *out, const char *usage);

/* Says on stderr that a word is missing, or that there is one too many, and ends in `usage`. Returns EXIT_USAGE. */
int words_missing(const char *what, const char *usage);
int words_beyond(const char *word, const char *usage);
/* The same of a value that is not as it must be, and of options of which one sentence says how they go together. */
int words_not(const char *name, const char *value, const char *must, const char *usage);
int words_choose(const char *sentence, const char *usage);

#endif
