/* make-record FOLDER CASES STEPS [DAYS]: a record of so many ordinary cases in rooms 1 and 2, and so many steps of people who scan
 * whatever lies at hand; so many days earlier. The same each time. */
#include <stdio.h>
#include <stdlib.h>

#include "tests/unit/record/history.h"

/* As a start records them. */
static int set(struct history *h)
{
	struct event e[] = {
	    {.kind = EV_SETTING, .what = SETTING_SITE_NAME, .text = "Invented hospital"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 1, .n = 1, .text = "Theatre 1"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 2, .n = 1, .text = "Theatre 2"},
	    {.kind = EV_SETTING, .what = SETTING_ROOM, .other = 3, .n = 2, .text = "Minor surgery"},
	    {.kind = EV_SETTING, .what = SETTING_FIRST_REMINDER, .n = 20},
	    {.kind = EV_SETTING, .what = SETTING_SEARCH, .other = 1, .text = "Say it aloud"},
	};
	for (size_t i = 0; i < sizeof e / sizeof *e; i++)
		e[i].at = h->now;
	return history_store(h, e, sizeof e / sizeof *e);
}

int main(int argc, char **argv)
{
	struct record *r = NULL;
	struct history h;
	struct error e = {0};
	int days = argc == 5 ? atoi(argv[4]) : 0;
	if (argc < 4 || argc > 5 || record_open(&r, argv[1], &e) < 0 ||
	    history_init_at(&h, r, 7, 2000, HISTORY_BEGINS_MS - days * INT64_C(86400000)) < 0) {
		fprintf(stderr, "make-record: %s\n",
		        argc < 4 || argc > 5 ? "FOLDER CASES STEPS [DAYS]"
		        : r                  ? h.error.text
		                             : e.text);
		return 1;
	}
	int n = set(&h);
	for (int i = 0; n == 0 && i < atoi(argv[2]); i++) {
		n = history_case(&h, 1 + i % 2);
		if (n == 0 && i % 5)
			n = history_seen(&h);
		n = n < 0 ? n : 0;
	}
	for (int i = 0; n >= 0 && i < atoi(argv[3]); i++)
		n = history_step(&h);
	n = n < 0 ? n : history_flush(&h);
	if (n < 0)
		fprintf(stderr, "make-record: %s\n", h.error.text);
	history_deinit(&h);
	record_close(r);
	return n < 0;
}
