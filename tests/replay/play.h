/* A station of three rooms on which a script is played: pure decisions, a clock that the script sets, a record in memory. */
#ifndef BANDTALLY_TESTS_PLAY_H
#define BANDTALLY_TESTS_PLAY_H

#include "base/buf.h"
#include "base/json.h"
#include "decide/outcome.h"
#include "decide/reads.h"
#include "tell/day.h"

struct play {
	struct station st;
	struct outcome out;
	struct moment now;
	int32_t room;
	struct event *events; /* all so far: number n is the n-th */
	int n_events, events_room;
	json_t *printed; /* slips.h */
	json_t *boards;  /* what the board of the room shows behind each scan (boards.h); NULL not wanted */
	struct day day;
	const struct language *language; /* of slips and boards; NULL English */
	struct reads reads;
	int printer_off, lists_old;
	struct {
		char identity[IDENTITY_MAX];
		int32_t case_no, station;
	} elsewhere; /* an item that the hospital says was used there; "" none */
	struct buf said;
	struct buf known; /* every text that people or settings gave (texts.h) */
	struct {
		char identity[IDENTITY_MAX];
		int32_t case_no;
		int back;
	} used[64];
	int n_used;
	struct input *batch; /* where scans go that came at once, NULL: each is decided on */
	int n_batch;
	int entering; /* further held scans follow */
};

const char *play_verdict_name(enum verdict verdict);

/* Says it and ends the program. */
_Noreturn void play_die(const char *what, const char *why);

/* With the catalogue of the scripts' folder, people and rooms; `p` is zero but for `printed`. */
void play_set_up(struct play *p, const char *folder);

/* An event that nobody decided: it is kept and applied as it is. */
void play_keep(struct play *p, struct event e);

/* Decides on it now, in the present room; of the handheld there where it names no scanner. Adds to `said`. */
void play_take(struct play *p, struct input *in);

void play_set_wall(struct play *p, int64_t wall_ms); /* with the civil time that TZ says */
void play_pass(struct play *p, int64_t ms);          /* on both clocks, and what is due then */

int32_t play_proof(int32_t slip, int32_t copy); /* in place of the digits that a station's key makes */
void play_put_on_paper(struct play *p);         /* the printer writes each slip at once, unless printer_off */
void play_print_again(struct play *p, const char *number);
void play_print_open_cases(struct play *p); /* each at the end, into `printed` */

void play_show(struct play *p); /* adds the sheet to `said`: items, digits, debts */

#endif
