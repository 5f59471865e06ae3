/* setup: which site and station this is. */
#include <stdio.h>
#include <string.h>

#include "tool/client.h"
#include "tool/setup-ask.h"
#include "tool/setup.h"

#define UNNAMED "Site not named" /* as the settings are shipped: nobody chose its letters either */

/* A value of station.ini. */
struct value_place {
	const char *section, *name;
};

static int take_value(struct setup *s, const void *context, const char *value, struct error *e)
{
	const struct value_place *p = context;
	return setup_put(&s->files, p->section, p->name, value, e);
}

static bool has_badges(void)
{
	struct error none;
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "list-staff"), &none);
	return a && json_array_size(json_object_get(a, "staff"));
}

/* The letters that stand in what was given out; "" where nothing was. `chosen`: somebody named the site. */
static void letters_given_out(const struct setup *s, bool chosen, char *out, size_t size)
{
	setup_value(&s->files, "site", "letters", out, size);
	if (!*out) /* the file is fresh, or was lost */
		setup_value_was("site", "letters", out, size);
	else if (!chosen && !setup_settled(&s->files, "site") && !has_badges())
		out[0] = 0;
}

/* What was printed with the old ones is worth nothing then, and nobody would know why. */
static int agree_letters(const struct setup *s, const char *was, const char *is)
{
	char why[400], line[40];
	snprintf(
	    why, sizeof why,
	    "the letters were %.20s and would be %.20s: every badge, card, digit card and label that was "
	    "printed so far is refused then, and must be printed anew",
	    was, is);
	if (words_given(&s->words, SETUP_OPTIONS, "new-letters")) {
		printf("%s\n", why);
		return EXIT_OK;
	}
	if (!s->asks) {
		fprintf(stderr, "bandtally: %s: say --new-letters where that is meant; nothing was changed\n",
		        why);
		return EXIT_QUESTION;
	}
	printf("%s\n", why);
	int n = ask_line("Is that meant? yes or no", "no", line, sizeof line);
	return n == 0 && strcmp(line, "yes") == 0 ? EXIT_OK : setup_stopped();
}

int setup_site(struct setup *s)
{
	static const struct value_place letters = {"site", "letters"}, name = {"site", "name"},
	                                number = {"station", "number"};
	static const struct setup_question questions[] = {
	    {"site",
	     "The hospital's two letters, of B C D E F G H I J K L N O P R S T U V X. They stand in every "
	     "code that it\nprints; choose them once, before anything is printed",
	     take_value, &letters},
	    {"name", "What the site is called on board, slips and cards", take_value, &name},
	    {"station", "Which of the hospital's stations this is, 0 to 99. Each has a number of its own",
	     take_value, &number},
	};
	char called[200], was[200], is[200];
	struct error e = {0};
	setup_value(&s->files, "site", "name", called, sizeof called);
	bool chosen = *called && strcmp(called, UNNAMED) != 0;
	letters_given_out(s, chosen, was, sizeof was);
	for (size_t i = 0; i < sizeof questions / sizeof *questions; i++) {
		const struct value_place *p = questions[i].context;
		char offered[200] = "";
		if (!setup_due(s, "site", questions[i].option))
			continue;
		if (chosen || p == &number)
			setup_value(&s->files, p->section, p->name, offered, sizeof offered);
		if (p == &number && !*offered)
			snprintf(offered, sizeof offered, "0");
		int n = setup_answer(s, &questions[i], offered);
		setup_value(&s->files, letters.section, letters.name, is, sizeof is);
		if (n == EXIT_OK && p == &letters && *was && strcmp(was, is) != 0)
			n = agree_letters(s, was, is);
		if (n != EXIT_OK)
			return n;
	}
	return setup_settle(&s->files, "site", &e) < 0 ? client_fail(&e) : EXIT_OK;
}
