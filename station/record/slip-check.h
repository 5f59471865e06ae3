/* Whether a slip is the station's, and says what the record says. */
#ifndef BANDTALLY_RECORD_SLIP_CHECK_H
#define BANDTALLY_RECORD_SLIP_CHECK_H

#include "record/keys.h"
#include "record/store.h"

enum slip_check {
	SLIP_HELD = 1, /* signed, and the record holds what was signed */
	SLIP_OTHER,    /* signed, but the record holds something else */
	SLIP_UNSIGNED, /* not signed by any key of this station */
};

#define SLIP_CHECK_WORDS 300

/* Looks at one compact JWS. A positive enum slip_check with its sentence, and what was signed as a new reference (NULL for
 * SLIP_UNSIGNED); a negative errno with `e` where it is no JWS, or the record could not be asked. */
int slip_check(struct record *r, const struct keys *keys, const char *jws, char words[SLIP_CHECK_WORDS],
               json_t **payload, struct error *e);

#endif
