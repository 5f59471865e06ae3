/* What a decision gives: events to store and then to apply, and a reply to people. Plain values.
 *
 * A reply is sentences by name, each with its values: it is made where it is read, in the language of the room. What a sentence
 * lists ({list}) stands behind it, a part a thing, and is said within it.
 */
#ifndef BANDTALLY_DECIDE_OUTCOME_H
#define BANDTALLY_DECIDE_OUTCOME_H

#include "count/deed.h"
#include "count/station.h"

#define OUTCOME_EVENTS_MAX 160
#define SAID_MAX 401

enum verdict { VERDICT_ACCEPTED = 0, VERDICT_REFUSED, VERDICT_QUESTION };

#define REPLY_PARTS 24

struct reply {
	enum verdict verdict;
	char said[SAID_MAX];            /* what happened, in English */
	struct said parts[REPLY_PARTS]; /* the same as sentences, in their order */
	uint8_t listed[REPLY_PARTS];    /* 1: of the {list} of the sentence before */
	int n_parts;                    /* 0: it has no other words than the English */
	struct next next;               /* the next thing to do */
};

/* Begins: what was said before is forgotten. */
void reply_say(struct reply *r, enum verdict verdict, const struct say *what);
/* One sentence more. */
void reply_add(struct reply *r, const struct say *what);
/* One thing more in the {list} of the last sentence (said_list_add()). */
void reply_list(struct reply *r, const struct say *thing);

/* What happened, in a language: as it is told to people in a room. What does not fit is cut, and that is seen. */
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
	struct said told;
};

#endif
