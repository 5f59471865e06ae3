/* What a decision gives: events to store and then to apply, and a reply to people. Plain values. */
#ifndef BANDTALLY_DECIDE_OUTCOME_H
#define BANDTALLY_DECIDE_OUTCOME_H

#include "count/deed.h"
#include "count/station.h"

#define OUTCOME_EVENTS_MAX 160
#define SAID_MAX 401

enum verdict { VERDICT_ACCEPTED = 0, VERDICT_REFUSED, VERDICT_QUESTION };

#define REPLY_PARTS 8

struct reply {
	enum verdict verdict;
	char said[SAID_MAX];            /* what happened, in English */
	struct said parts[REPLY_PARTS]; /* the same as sentences, in their order */
	int n_parts;                    /* 0: it has no other words than the English */
	struct next next;               /* the next thing to do */
};

/* What happened, in a language: as it is told to people in a room. */
void reply_words_in(const struct reply *r, const struct language *language, char out[SAID_MAX]);

/* An event that did not fit the sheet, so that nothing of the scan is kept: for the journal. */
struct misfit {
	int code; /* negative errno; 0 none */
	enum event_kind kind;
	struct origin at;
};

struct outcome {
	struct event events[OUTCOME_EVENTS_MAX];
	int count;
	struct reply reply;
	int enter; /* so many held scans of the room are to be entered now, each by stored_input() and decide() */
	struct sheet sheet; /* the case's sheet as it will be; case_no 0 where there is none */
	struct misfit misfit;
	int32_t told_room; /* another room whose board says `told`; 0 none */
	char told[SAID_MAX];
};

#endif
