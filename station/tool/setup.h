/* What the files of `bandtally setup` share: each step gets its answers from the command line, from what was settled before,
 * or from whoever sits at the terminal, and puts them into the candidates (setup-files.h), which are written once all are there.
 */
#ifndef BANDTALLY_TOOL_SETUP_H
#define BANDTALLY_TOOL_SETUP_H

#include <stdbool.h>

#include "base/scanners.h"
#include "tool/setup-files.h"
#include "tool/words.h"

#define SETUP_OPTIONS                                                                                        \
	"site= name= station= room=+ printer= paper= scanner= sheet= badges= new-letters again yes"

#define SETUP_BADGE_KINDS 4

enum setup_sheet { SHEET_LATER = 0, SHEET_PRINT, SHEET_AT_HAND };

struct setup {
	struct words words;
	bool asks;                           /* somebody sits at the terminal, and may be asked */
	bool takes;                          /* --yes: what is offered is the answer */
	bool again;                          /* what was settled is asked as well */
	int badges[SETUP_BADGE_KINDS];       /* how many are wanted of each kind (setup-badges.c) */
	char scanner[SCANNERS_TEXT_MAX + 1]; /* that was chosen now, and can be taught; "" none */
	enum setup_sheet sheet;
	struct setup_files files;
};

/* Of `value`, the answer in hand, whether it will do: 0 and it is kept, or a negative errno with why not. */
typedef int (*setup_take)(struct setup *s, const void *context, const char *value, struct error *e);

struct setup_question {
	const char *option, *asks; /* "site", and the question as it is put */
	setup_take take;
	const void *context;
};

/* Has the question answered: by the option, else at the terminal, with `offered` ("" nothing) as the answer to an empty line,
 * else, with --yes, by what is offered. 0, or an exit code after a sentence on stderr. */
int setup_answer(struct setup *s, const struct setup_question *q, const char *offered);

/* Why an answer was not taken, without the file and line, of which whoever gave it knows nothing. */
const char *setup_why(const struct error *e);

/* Says that whoever was asked wanted no more. Returns EXIT_FAILED. */
int setup_stopped(void);

/* Whether this part has still to be asked, or was given anew. */
bool setup_due(const struct setup *s, const char *part, const char *option);

/* The steps: 0, or an exit code after a sentence on stderr. */
int setup_site(struct setup *s);
int setup_rooms(struct setup *s);
int setup_printer(struct setup *s);
int setup_scanner(struct setup *s);
int setup_sheet(struct setup *s); /* of a scanner that was chosen */
int setup_badges(struct setup *s);

int setup_first_room(const struct setup *s); /* the number of the first that station.ini has */

/* The station with what was written: started anew where systemd has it and no case is open, else said how. 0, or an exit code. */
int setup_renew(const struct setup *s);

/* Waits until the station runs with what was written, which `what` ("the badges") needs, and which `option` asks for again. 0, or an
 * exit code after a sentence on stderr. */
int setup_wait_for_station(const struct setup *s, const char *what, const char *option);

/* The sheet printed and scanned, where the station runs with what was written. 0, or an exit code. */
int setup_teach(const struct setup *s);

bool setup_wants_badges(const struct setup *s);
/* The badges that are wanted, where the station runs with what was written. 0, or an exit code. */
int setup_make_badges(struct setup *s);

#endif
