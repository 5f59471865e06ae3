/* What the station knows of its own proof: which key signs, and what people must be told of it until somebody has dealt
 * with it. station.h includes this; the rest of what proves the record is the record's (seal.h, keys.h). */
#ifndef BANDTALLY_COUNT_PROOF_H
#define BANDTALLY_COUNT_PROOF_H

#include "count/event.h"

struct proof {
	char kid[KEY_TEXT_MAX]; /* of the key that signs; "" where the record names none yet */
	uint8_t exposed;        /* KEY_OTHERS, KEY_LINK: as it was found last */
	uint8_t changed_how;    /* KEY_MADE, KEY_DAMAGED, KEY_CHANGED */
	int64_t changed;        /* the event that says so; 0 none, or somebody dealt with it */
	int64_t begun;          /* the event that began a new incarnation, in the same way */
	uint8_t begun_why;      /* enum incarnation_why */
	int64_t begun_head;     /* up to which event the record that is not here had come; 0 not known */
};

void proof_apply(struct proof *p, const struct event *e);

/* Whether somebody must still say that this event was dealt with; and that somebody did. */
int proof_waits(const struct proof *p, int64_t seq);
void proof_settle(struct proof *p, int64_t seq);

/* What people must be told, one sentence a call: `from` is 0 at first, then what the last call returned; 0 no more. */
int proof_words(const struct proof *p, const struct language *language, int from, char *out, size_t size);

/* Why the station cannot be trusted until somebody has dealt with it; 0 and "" where nothing is. */
int proof_doubt(const struct proof *p, const struct language *language, char *out, size_t size);

#endif
