/* What a start finds out about the proof of its record, and what it writes beside it (count/proof.h, record/seal.h). */
#ifndef BANDTALLY_RUN_PROVE_H
#define BANDTALLY_RUN_PROVE_H

#include <stdbool.h>

#include "run/core.h"

/* Fills the event that says which key signs from here on. False where the record says so already: none is needed. */
bool prove_key(const struct core *c, struct event *ev);

/* Where these events are a start, a stop or the end of a case: what seals the head behind them, to be filled in by
 * seal_sign_head(). False where they are none of these. */
bool prove_seals(const struct event *events, int count, struct event *seal);

/* Finds the folder where it is noted how far the record has come, and makes it where it is absent. `otherwise`: where the
 * settings name none; NULL: in the data folder. */
void prove_place(struct core *c, const char *otherwise);

/* Compares the record with what was noted: it is the one, or an older or another one, and `ev` says so; or a negative errno
 * with `e`. */
enum prove_found { PROVE_AS_NOTED = 0, PROVE_ANOTHER };
int prove_record(struct core *c, struct event *ev, struct error *e);

/* The event that begins a new incarnation, because a paper of this station is newer than its record: an older one was put
 * back together with what was noted beside it. Numbers go on behind that slip. */
void prove_newer(const struct core *c, int32_t slip, struct event *ev);

/* After these events are durable, and before anything that they cause leaves the station: notes how far the record has come,
 * where they are sealed or gave out a number. What fails stands on the board (core.head_fault). */
void prove_note(struct core *c, const struct event *events, int count, int sealed);

/* Writes the public keys beside the record: the one that signs, and every earlier one of file and record. What fails is
 * logged: the record holds them all. */
void prove_publish(struct core *c);

#endif
