/* setup: how one question is answered. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "tool/setup-ask.h"
#include "tool/setup.h"

const char *setup_why(const struct error *e)
{
	static const char line[] = ".ini line ";
	const char *sentence = e->text, *at = strstr(sentence, line), *end = at ? strstr(at, ": ") : NULL;
	return end && strcspn(sentence, " ") == (size_t)(at - sentence) + strlen(".ini") ? end + 2 : sentence;
}

int setup_stopped(void)
{
	fputs("bandtally: stopped: nothing was changed\n", stderr);
	return EXIT_FAILED;
}

int setup_answer(struct setup *s, const struct setup_question *q, const char *offered)
{
	struct error e = {0};
	char line[200];
	const char *given = words_value(&s->words, SETUP_OPTIONS, q->option);
	if (given || (!s->asks && s->takes && *offered)) {
		if (q->take(s, q->context, given ? given : offered, &e) == 0)
			return EXIT_OK;
		fprintf(stderr, "bandtally: --%s: %s; nothing was changed\n", q->option, setup_why(&e));
		return EXIT_USAGE;
	}
	if (!s->asks) {
		fprintf(stderr,
		        "bandtally: --%s is missing, and nobody can be asked: give it; nothing was changed\n",
		        q->option);
		return EXIT_QUESTION;
	}
	for (;;) {
		int n = ask_line(q->asks, offered, line, sizeof line);
		if (n == -ECANCELED)
			return setup_stopped();
		if (n == 0 && q->take(s, q->context, line, &e) == 0)
			return EXIT_OK;
		printf("  %s\n", n < 0 ? "That is too long: give less." : setup_why(&e));
	}
}

bool setup_due(const struct setup *s, const char *part, const char *option)
{
	return s->again || words_given(&s->words, SETUP_OPTIONS, option) || !setup_settled(&s->files, part);
}
