/* The whole look through a record: `bandtally audit verify`. */
#ifndef BANDTALLY_RECORD_VERIFY_H
#define BANDTALLY_RECORD_VERIFY_H

#include "record/keys.h"
#include "record/store.h"

struct verify_how {
	const struct keys
	    *keys;     /* of the station; NULL: those that the record itself names, which shows less */
	int each_seal; /* not only the last of each key and incarnation */
	int indexes;   /* whether they agree with the events: takes as long again */
	int parts;     /* at once; 0: as many as are worth it */
	/* Called for each thing beyond the chain that is not as it should be: one sentence. */
	void (*found)(void *context, const char *what);
	void *context;
};

struct verified {
	int64_t events;
	struct chain chain; /* the hash of the last */
	int found;          /* how often found() was called */
	int64_t sealed_to;  /* the last event that a seal which holds vouches for; 0 none */
	int seals, seals_checked;
	int32_t incarnation;
};

/* As record_verify(), and besides the pages, the schema with its triggers and the seals: what is wrong with these is told by found()
 * and goes on. */
int record_verify_all(struct record *r, const struct verify_how *how, struct verified *v, struct error *e);

#endif
