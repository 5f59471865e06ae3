/* setup: the printer of the slips. At a terminal it has to prove itself by a page whose code is scanned or typed back. */
#include <ctype.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/random.h>

#include "tool/client.h"
#include "tool/label.h"
#include "tool/print.h"
#include "tool/setup-ask.h"
#include "tool/setup-run.h"
#include "tool/setup.h"

#define NONE "none"
#define QUEUES_MAX 40
#define STEP_FIRST 10 /* of the codes on a test page: the scanner-check sheet has those before */
#define STEPS 90

struct queues {
	char name[QUEUES_MAX][128];
	char said[QUEUES_MAX][128];
	int n, usual; /* the default's place, or -1 */
};

static void read_queues(struct queues *q)
{
	char *argv[] = {"bandtally-print", "--queues", NULL}, mark[16];
	_cleanup_(buf_free) struct buf said = {0};
	*q = (struct queues){.usual = -1};
	if (run_own("bandtally-print", argv, 0, &said) != 0 || !said.size)
		return;
	for (char *at = said.data; *at && q->n < QUEUES_MAX; at += strcspn(at, "\n"), at += *at == '\n') {
		mark[0] = q->said[q->n][0] = 0;
		size_t name = strcspn(at, "\t\n");
		snprintf(q->name[q->n], sizeof *q->name, "%.*s", (int)name, at);
		const char *behind = at + name + (at[name] == '\t');
		size_t n = strcspn(behind, "\t\n");
		snprintf(mark, sizeof mark, "%.*s", (int)n, behind);
		behind += n + (behind[n] == '\t');
		snprintf(q->said[q->n], sizeof *q->said, "%.*s", (int)strcspn(behind, "\n"), behind);
		if (strcmp(mark, "default") == 0)
			q->usual = q->n;
		q->n++;
	}
}

static void list_queues(const struct queues *q)
{
	if (!q->n)
		puts("CUPS of this machine offers no printer (lpadmin, or its page at "
		     "http://localhost:631/, makes a queue).");
	else
		puts("CUPS of this machine offers:");
	for (int i = 0; i < q->n; i++)
		printf("  %d  %s%s%s\n", i + 1, q->name[i], *q->said[i] ? ": " : "", q->said[i]);
}

static int take_printer(struct setup *s, const void *context, const char *value, struct error *e)
{
	const struct queues *q = context;
	int number = value[0] && strspn(value, "0123456789") == strlen(value) ? atoi(value) : 0, at = 0;
	if (number >= 1 && number <= q->n && s->asks)
		value = q->name[number - 1];
	if (strcmp(value, NONE) == 0)
		return setup_drop(&s->files, "printer", "queue", e);
	while (at < q->n && strcmp(q->name[at], value) != 0)
		at++;
	if (at == q->n && !strstr(value, "://")) {
		if (s->asks)
			return error_set(e, -ENOENT,
			                 "CUPS offers no queue '%.60s': give one of those, or " NONE, value);
		fprintf(stderr, "bandtally: CUPS has no queue '%.60s' now: slips wait until it has\n", value);
	}
	return setup_put(&s->files, "printer", "queue", value, e);
}

static int take_paper(struct setup *s, const void *context, const char *value, struct error *e)
{
	(void)context;
	return setup_put(&s->files, "printer", "paper", value, e);
}

/* A page with a code that was on none before it, as far as anybody can remember. */
static int print_page(const struct setup *s, const char *printer, char code[OWN_CODE_MAX])
{
	char name[200], letters[8], paper[16], language[16];
	unsigned random = 0;
	if (getrandom(&random, sizeof random, 0) < 0)
		random = 0;
	setup_value(&s->files, "site", "name", name, sizeof name);
	setup_value(&s->files, "site", "letters", letters, sizeof letters);
	setup_value(&s->files, "site", "language", language, sizeof language);
	setup_value(&s->files, "printer", "paper", paper, sizeof paper);
	label_code(
	    code, letters,
	    (struct own_code){.kind = OWN_SCANNER_CHECK, .number = STEP_FIRST + (int)(random % STEPS)});
	_cleanup_(json_drop) json_t *doc = label_document("test-page", name);
	json_object_set_new(doc, "paper", json_string(paper));
	json_object_set_new(doc, "code", json_string(code));
	label_put_language(doc, language);
	fflush(stdout);
	return print_document(doc, "--printer", printer);
}

/* As it was scanned, or typed with its spaces and in small letters. */
static bool is_code(const char *answer, const char *code)
{
	for (; *answer; answer++)
		if (*answer != ' ' && toupper((unsigned char)*answer) != *code++)
			return false;
	return !*code;
}

/* 1 the page is there, 0 it did not come; or an exit code below 0. */
static int prove(const struct setup *s, const char *printer)
{
	char code[OWN_CODE_MAX], answer[64];
	if (print_page(s, printer, code) != EXIT_OK)
		return 0;
	for (;;) {
		int n =
		    ask_line("Scan the code on the page that comes out now, or type what stands below it; "
		             "'no' where none comes",
		             "", answer, sizeof answer);
		if (n == -ECANCELED)
			return n;
		if (n == 0 && strcmp(answer, "no") == 0)
			return 0;
		if (n == 0 && is_code(answer, code))
			return 1;
		puts("  That is not the code of this page.");
	}
}

static int ask_printer(struct setup *s, const struct queues *q)
{
	static const char asks[] =
	    "The printer of the slips: one of these by number or name, an address (ipp…), or " NONE;
	char offered[200], paper[16];
	setup_value(&s->files, "printer", "queue", offered, sizeof offered);
	setup_value(&s->files, "printer", "paper", paper, sizeof paper);
	if (!*offered)
		snprintf(offered, sizeof offered, "%s", q->usual >= 0 && s->asks ? q->name[q->usual] : NONE);
	int n = EXIT_OK;
	if (setup_due(s, "printer", "printer"))
		n = setup_answer(s, &(struct setup_question){"printer", asks, take_printer, q}, offered);
	setup_value(&s->files, "printer", "queue", offered, sizeof offered);
	if (n != EXIT_OK || (!s->asks && !words_given(&s->words, SETUP_OPTIONS, "paper")))
		return n;
	return setup_answer(
	    s, &(struct setup_question){"paper", "Its paper: roll80, a6, a5 or a4", take_paper, NULL},
	    *paper ? paper : "a5");
}

int setup_printer(struct setup *s)
{
	static struct queues q; /* 10 kB; one thread */
	char printer[200];
	struct error e = {0};
	if (!setup_due(s, "printer", "printer") && !words_given(&s->words, SETUP_OPTIONS, "paper"))
		return EXIT_OK;
	read_queues(&q);
	for (int proven = 0; !proven;) {
		if (s->asks && !words_given(&s->words, SETUP_OPTIONS, "printer"))
			list_queues(&q);
		int n = ask_printer(s, &q);
		if (n != EXIT_OK)
			return n;
		setup_value(&s->files, "printer", "queue", printer, sizeof printer);
		proven = !s->asks || !*printer ? 1 : prove(s, printer);
		if (proven < 0)
			return setup_stopped();
		if (!proven && words_given(&s->words, SETUP_OPTIONS, "printer")) {
			fputs("bandtally: --printer: the test page did not come; nothing was changed\n",
			      stderr);
			return EXIT_FAILED;
		}
	}
	return setup_settle(&s->files, "printer", &e) < 0 ? client_fail(&e) : EXIT_OK;
}
