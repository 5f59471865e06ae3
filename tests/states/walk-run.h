/* A walk that goes on: walk.c, its steps (step.c) and its samples (same-key.c); walk-all.c says which walks there are. */
#ifndef BANDTALLY_TESTS_STATES_WALK_RUN_H
#define BANDTALLY_TESTS_STATES_WALK_RUN_H

#include "ends.h"
#include "key.h"
#include "snapshot.h"
#include "walk.h"

struct node {
	struct node *later;
	struct snapshot *state;
	uint32_t parent; /* in `path`, for telling how the state was reached */
};

struct path_step {
	uint32_t parent;
	uint8_t input;
};

struct walk {
	struct world world;
	struct keys visited;
	struct keys samples;
	struct snapshot **sampled;
	uint32_t n_sampled;
	uint64_t compared;
	struct node *first, *last;
	struct path_step *path;
	uint32_t n_path;
	uint64_t steps, limit;
	uint32_t broken; /* rules found broken, as bits */
	const struct saboteur *saboteur;
	struct ends *ends; /* where no dead end is looked for, NULL */
	uint64_t *digest;  /* of all that is decided, or NULL */
	int quiet;
};

/* Visits everything, or stops at the limit or, with a saboteur, when his rule is found broken. 1: everything. */
int walk_run(struct walk *w, const struct room_plan *plan);
void walk_free(struct walk *w);

/* The way to a state: its number, from that of the state before and the scan. */
uint32_t walk_remember(struct walk *w, uint32_t parent, int input);
void walk_tell_path(const struct walk *w, uint32_t at);
void walk_push(struct walk *w, uint32_t parent); /* the world's state, to be visited */

/* Notes the rules, as bits, and tells each once with the way to it, unless the walk is quiet. */
void walk_fail(struct walk *w, uint32_t broken, uint32_t parent, int input, const struct outcome *out);

int walk_step(struct walk *w, const struct node *from, int input);
void walk_restart(struct walk *w, const struct node *from); /* after a power cut */
void walk_sample(struct walk *w, struct key key, int is_new,
                 uint32_t parent); /* the world's state, of that key */

int key_is_same(struct key a, struct key b);
void world_settle_rooms(struct world *w);

#endif
