/* Goes through the chain of a whole record, in as many parts at once as there are processors: each begins with the hash that
 * stands where it begins, and the part before it shows that this is the one that follows. Only verify.c includes this. */
#ifndef BANDTALLY_RECORD_CHAIN_PARTS_H
#define BANDTALLY_RECORD_CHAIN_PARTS_H

#include "record/store.h"

/* An event that the seals are about. */
struct mark {
	int64_t seq;
	enum event_kind kind;
	int behind; /* of a `sealed`: it stands right behind what it seals */
};

struct marks {
	struct mark *list; /* the caller's to free */
	size_t count, room;
};

/* As record_verify(). `parts`: 0, as many as are worth it. Marks, in order, are filled in where it gives 0 or -EBADMSG. */
int chain_parts(struct record *r, int parts, int64_t *events, struct chain *chain, struct marks *marks,
                struct error *e);

#endif
