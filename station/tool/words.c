#include "tool/words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/error.h"

enum takes { TAKES_NOTHING = 0, TAKES_VALUE, TAKES_SEVERAL };

/* The place of a name in the list, and what it takes; -1 where it is not there. */
static int place_of(const char *options, const char *name, size_t size, int *takes)
{
	int place = 0;
	for (const char *p = options; *p; place++) {
		size_t n = strcspn(p, " "), own = strcspn(p, " =");
		if (own == size && strncmp(p, name, size) == 0) {
			*takes = own == n ? TAKES_NOTHING : n - own == 1 ? TAKES_VALUE : TAKES_SEVERAL;
			return place;
		}
		p += n + strspn(p + n, " ");
	}
	return -1;
}

int words_read(struct words *w, int argc, char **argv, const char *options, const char *usage)
{
	*w = (struct words){0};
	int only_rest = 0;
	for (int i = 1; i < argc; i++) {
		const char *a = argv[i];
		if (only_rest || strncmp(a, "--", 2) != 0) {
			if (w->n_rest == WORDS_MAX) {
				fprintf(stderr, "bandtally: too many words: give fewer\n%s", usage);
				return -1;
			}
			w->rest[w->n_rest++] = a;
			continue;
		}
		if (!a[2]) {
			only_rest = 1;
			continue;
		}
		if (strcmp(a, "--help") == 0) {
			fputs(usage, stdout);
			return WORDS_HELP;
		}
		size_t n = strcspn(a + 2, "=");
		int takes = 0, place = place_of(options, a + 2, n, &takes);
		const char *value = a[2 + n] == '=' ? a + 3 + n : NULL;
		if (place >= 0 && takes && !value && i + 1 < argc)
			value = argv[++i];
		if (place < 0 || (takes && !value) || (!takes && value)) {
			fprintf(stderr, "bandtally: %s: %s: see below\n%s", a,
			        place < 0 ? "no such option"
			        : takes   ? "it needs a value"
			                  : "it takes no value",
			        usage);
			return -1;
		}
		if (value && w->given[place] && takes != TAKES_SEVERAL) {
			fprintf(stderr, "bandtally: --%.*s is given twice: give it once: see below\n%s",
			        (int)n, a + 2, usage);
			return -1;
		}
		if (value && w->n_each == WORDS_MAX) {
			fprintf(stderr, "bandtally: too many words: give fewer\n%s", usage);
			return -1;
		}
		if (value) {
			w->each[w->n_each].place = place;
			w->each[w->n_each++].value = value;
		}
		w->values[place] = value;
		w->given[place] = 1;
	}
	return 0;
}

const char *words_value(const struct words *w, const char *options, const char *name)
{
	int takes, place = place_of(options, name, strlen(name), &takes);
	return place < 0 ? NULL : w->values[place];
}

const char *words_each(const struct words *w, const char *options, const char *name, int *at)
{
	int takes, place = place_of(options, name, strlen(name), &takes);
	while (*at < w->n_each)
		if (w->each[(*at)++].place == place)
			return w->each[*at - 1].value;
	return NULL;
}

int words_only(const struct words *w, const char *options, const char *allowed, const char *usage)
{
	int place = 0, takes;
	for (const char *p = options; *p; place++) {
		size_t n = strcspn(p, " "), own = strcspn(p, " =");
		if (w->given[place] && place_of(allowed, p, own, &takes) < 0) {
			fprintf(stderr,
			        "bandtally: --%.*s does not belong to '%s': leave it out: see below\n%s",
			        (int)own, p, w->rest[0], usage);
			return EXIT_USAGE;
		}
		p += n + strspn(p + n, " ");
	}
	return 0;
}

int words_given(const struct words *w, const char *options, const char *name)
{
	int takes, place = place_of(options, name, strlen(name), &takes);
	return place >= 0 && w->given[place];
}

int words_number(const char *name, const char *value, int low, int high, int *out, const char *usage)
{
	if (!value)
		return 0;
	size_t n = strlen(value);
	long number = n && n <= 9 && strspn(value, "0123456789") == n ? strtol(value, NULL, 10) : -1;
	if (number < low || number > high) {
		fprintf(stderr,
		        "bandtally: %s is '%.40s': it must be a whole number from %d to %d: see below\n%s",
		        name, value, low, high, usage);
		return -1;
	}
	*out = (int)number;
	return 0;
}

int words_missing(const char *what, const char *usage)
{
	fprintf(stderr, "bandtally: %s is missing: see below\n%s", what, usage);
	return EXIT_USAGE;
}

int words_not(const char *name, const char *value, const char *must, const char *usage)
{
	fprintf(stderr, "bandtally: %s is '%.40s': it must be %s: see below\n%s", name, value, must, usage);
	return EXIT_USAGE;
}

int words_choose(const char *of, const char *usage)
{
	fprintf(stderr, "bandtally: %s: see below\n%s", of, usage);
	return EXIT_USAGE;
}

int words_beyond(const char *word, const char *usage)
{
	fprintf(stderr,
	        "bandtally: '%.40s' is a word too many (one with spaces stands in quotes): see below\n%s",
	        word, usage);
	return EXIT_USAGE;
}
