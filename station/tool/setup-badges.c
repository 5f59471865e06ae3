/* setup: the first badges, by role codes alone: who has which is for the site to know. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "count/team.h"
#include "tool/client.h"
#include "tool/label.h"
#include "tool/setup-ask.h"
#include "tool/setup.h"
#include "tool/tool.h"

#define NONE "none"
#define MANY_MAX 50

static const struct kind {
	const char *word, *code;
	enum staff_kind kind;
	bool registered;
} kinds[SETUP_BADGE_KINDS] = {
    {"registered", "PRACT", STAFF_PRACTITIONER, true},
    {"practitioner", "SUPPORT", STAFF_PRACTITIONER, false},
    {"surgeon", "SURG", STAFF_SURGEON, true},
    {"nurse-in-charge", "CHARGE", STAFF_CHARGE, true},
};

/* "surgeon=2" of `size` bytes. */
static int take_one(int many[SETUP_BADGE_KINDS], const char *text, size_t size)
{
	for (int i = 0; i < SETUP_BADGE_KINDS; i++) {
		size_t n = strlen(kinds[i].word);
		size_t digits = size > n + 1 ? strspn(text + n + 1, "0123456789") : 0;
		if (size > n + 1 && strncmp(text, kinds[i].word, n) == 0 && text[n] == '=' &&
		    digits == size - n - 1 && digits <= 2 && atoi(text + n + 1) <= MANY_MAX) {
			many[i] = atoi(text + n + 1);
			return 0;
		}
	}
	return -EINVAL;
}

static int take_badges(struct setup *s, const void *context, const char *value, struct error *e)
{
	(void)context;
	memset(s->badges, 0, sizeof s->badges);
	for (const char *at = value; *at && strcmp(value, NONE) != 0; at += *at == ',') {
		size_t n = strcspn(at, ",");
		if (take_one(s->badges, at, n) < 0)
			return error_set(e, -EINVAL,
			                 "'%.60s' does not say how many: give registered=N, practitioner=N, "
			                 "surgeon=N, nurse-in-charge=N (up to %d, with commas between them), "
			                 "or " NONE,
			                 at, MANY_MAX);
		at += n;
	}
	return 0;
}

bool setup_wants_badges(const struct setup *s)
{
	for (int i = 0; i < SETUP_BADGE_KINDS; i++)
		if (s->badges[i])
			return true;
	return false;
}

int setup_badges(struct setup *s)
{
	static const char asks[] = "The first badges, by role codes: how many, as "
	                           "registered=4,practitioner=1,surgeon=2,nurse-in-charge=1\n"
	                           "(registered, or another practitioner), or " NONE;
	struct error e = {0};
	if (!setup_due(s, "badges", "badges"))
		return EXIT_OK;
	int n = setup_answer(s, &(struct setup_question){"badges", asks, take_badges, NULL},
	                     s->takes ? NONE : "");
	if (n != EXIT_OK || setup_wants_badges(s))
		return n;
	return setup_settle(&s->files, "badges", &e) < 0 ? client_fail(&e) : EXIT_OK;
}

static bool has_badge(const json_t *staff, const char *name)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)staff, i, x)
	{
		if (strcmp(json_text(x, "name"), name) == 0)
			return true;
	}
	return false;
}

/* One that is there, or was withdrawn, is made no second time. */
static int add_badge(const json_t *staff, const struct kind *k, int number)
{
	struct error e = {0};
	char name[16];
	snprintf(name, sizeof name, "%s-%d", k->code, number);
	if (has_badge(staff, name))
		return EXIT_OK;
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:s,s:i,s:b}", "do", "staff", "name", name, "kind", k->kind,
	                         "registered", k->registered),
	               &e);
	if (!a)
		return client_fail(&e);
	printf("badge %06d: %s\n", (int)json_number(a, "number", 0), name);
	return EXIT_OK;
}

/* Sheets of badges are A4. */
static int print_badges(const struct setup *s)
{
	char printer[200], paper[16];
	setup_value(&s->files, "printer", "queue", printer, sizeof printer);
	setup_value(&s->files, "printer", "paper", paper, sizeof paper);
	if (!*printer || strcmp(paper, "a4") != 0) {
		puts("'bandtally label badges --pdf badges.pdf' puts them on paper (A4).");
		return EXIT_OK;
	}
	char *argv[] = {"label", "badges", "--printer", printer, NULL};
	fflush(stdout);
	return tool_label(4, argv);
}

int setup_make_badges(struct setup *s)
{
	struct error e = {0};
	if (!setup_wants_badges(s))
		return EXIT_OK;
	int n = setup_wait_for_station(s, "the badges", "badges");
	if (n != EXIT_OK)
		return n;
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "list-staff"), &e);
	if (!a)
		return client_fail(&e);
	for (int i = 0; i < SETUP_BADGE_KINDS && n == EXIT_OK; i++)
		for (int k = 1; k <= s->badges[i] && n == EXIT_OK; k++)
			n = add_badge(json_object_get(a, "staff"), &kinds[i], k);
	if (n != EXIT_OK)
		return n;
	/* It may be long since they were written, and another hand may have been at them. */
	setup_files_close(&s->files);
	if (setup_files_open(&s->files, &e) < 0 || setup_settle(&s->files, "badges", &e) < 0 ||
	    setup_write(&s->files, &e) < 0)
		return client_fail(&e);
	return print_badges(s);
}
