/* setup: which site and station this is. */
#include <stdio.h>
#include <string.h>

#include "tool/client.h"
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
	char called[200];
	struct error e = {0};
	setup_value(&s->files, "site", "name", called, sizeof called);
	bool chosen = *called && strcmp(called, UNNAMED) != 0;
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
		if (n != EXIT_OK)
			return n;
	}
	return setup_settle(&s->files, "site", &e) < 0 ? client_fail(&e) : EXIT_OK;
}
