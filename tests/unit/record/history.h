/* Cases that never were, told to a record: by the book, or by people who scan whatever lies at hand.
 *
 * Time is the history's own, so that hours and power cuts cost nothing, and the same seed tells the same
 * story. Also for the crash tests and the bench.
 */
#ifndef BANDTALLY_TESTS_RECORD_HISTORY_H
#define BANDTALLY_TESTS_RECORD_HISTORY_H

#include "decide/decide.h"
#include "record/store.h"

#define HISTORY_PENDING 4096

struct history {
	struct station st; /* made by applying every event as it was stored */
	struct record *record;
	struct moment now;
	struct outcome out;
	uint64_t random;
	int32_t next_identity;
	int mixed, in_script; /* others go on scanning while a case is played by the book */
	int32_t played_in;
	int batch; /* events that are kept back to be stored in one transaction; 0: each step is one */
	struct event *pending;
	int n_pending;
	struct error error;
};

/* Records a start, the catalogue of tests/replay and seven badges: 1 and 5 scrub, 2 circulating, 3 surgeon, 6
 * in charge, 4 and 7 not registered. Rooms 1 to 3; 3 has a single operator. The record is borrowed. */
#define HISTORY_BEGINS_MS INT64_C(1795600800000) /* 2026-11-25 10:00 UTC */
int history_init(struct history *h, struct record *record, uint64_t seed, int batch);
int history_init_at(struct history *h, struct record *record, uint64_t seed, int batch, int64_t wall_ms);
void history_deinit(struct history *h);

/* One input, decided, stored and applied. */
int history_take(struct history *h, struct input *in);
int history_store(struct history *h, struct event *events, int count);
int history_flush(struct history *h); /* stores what a batch keeps back */

/* Zeroes the bytes between the fields, which the compiler may fill with anything, so that memcmp() can tell.
 */
void history_scrub(struct moment *m);
struct sheet history_scrubbed(const struct sheet *s);

/* One scan: cN card with meaning N (enum own_card), bN badge, dN digit, g a tourniquet and f forceps of this case's number,
 * wN minutes pass, t an incident number is typed, s the last slip is read back. */
int history_word(struct history *h, int32_t room, const char *word, int32_t identity);

/* One finger, tourniquet and forceps, two people: sixteen scans in 40 minutes, to the slip that was seen. */
int history_case(struct history *h, int32_t room);

/* The last slip was printed and read back, whatever the history made of it: else a station would go on to print it. */
int history_seen(struct history *h);

/* Anything: a card that fits or does not, a pack, a badge, time that passes, a power cut, stores at work. */
int history_step(struct history *h);

#endif
