/* Scans that a scanner had stored: they came in a burst or long after they were made, and are held for their
 * room until a person says whether they were made there (rule 17).
 *
 * Made from events alone. Of a code no more is held than an entry of it would keep (rule 20).
 */
#ifndef BANDTALLY_COUNT_HELD_H
#define BANDTALLY_COUNT_HELD_H

#include "count/event.h"

#ifndef HELD_ROOM_MAX    /* the walk over all states is built with fewer */
#define HELD_ROOM_MAX 24 /* of one room */
#endif

/* What a held scan is. The numbers stand in the record. */
enum held_kind {
	HELD_CARD = 1,   /* n: its meaning */
	HELD_DIGIT,      /* digit */
	HELD_BADGE,      /* n: its number */
	HELD_CASE_LABEL, /* n: its number */
	HELD_SLIP,       /* n: its number, other: copy, proof */
	HELD_THING,      /* thing */
	HELD_TRAY,       /* thing */
};

/* What became of it. The numbers stand in the record. */
enum held_answer {
	HELD_ENTERED = 1, /* its turn came; what it did, or why it was refused, stands beside it */
	HELD_THROWN,      /* not of this room or case, or one scan too many */
	HELD_MEANT,       /* the same code came before it, and that was meant: it stays held */
};

struct held {
	int64_t seq; /* of its event; 0 before that is stored */
	struct moment made;
	int32_t room;     /* that it is held for */
	int32_t n, other; /* other, cards and digits: the room of the card */
	int32_t proof;
	uint8_t kind; /* enum held_kind */
	uint8_t digit;
	uint8_t place; /* in its batch, from 1 */
	uint8_t meant; /* 1: not asked about again because its neighbour is the same */
	uint8_t
	    outlived; /* 1: the station has started again since, and no longer knows what was scanned meanwhile */
	char scanner[33];
	struct thing thing;
};

/* Changes a list by EV_HELD or EV_HELD_ANSWERED. 0; -ENOSPC where it is full, -EINVAL where the event does not
 * fit; changes nothing then. */
int held_apply(struct held *list, int *n, int max, const struct event *e);

/* The event that holds it; time, room and kind of the event are filled in. */
void held_event(const struct held *h, struct event *e);

/* 1 where b came right behind a in one batch and is the same code. */
int held_same(const struct held *a, const struct held *b);

#endif
