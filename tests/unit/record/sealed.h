/* What a station signs of its record, as the daemon does it (station/run/prove.c, teller.c). */
#ifndef BANDTALLY_TESTS_RECORD_SEALED_H
#define BANDTALLY_TESTS_RECORD_SEALED_H

#include "record/seal.h"
#include "record/store.h"

struct sealer {
	const struct seal *seal;
	int32_t incarnation;
};

/* A record_sign_fn; the context is a struct sealer. */
int sealed_sign(void *context, int64_t seq, const struct chain *head, char *jws);

/* The first copy of a slip, under the event that the record ends with. 0 or a negative errno. */
int sealed_slip(const struct seal *seal, struct record *r, int case_no, int slip, char jws[SEAL_JWS_MAX]);

#endif
