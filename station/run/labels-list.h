/* The numbers of labels that this station gave out, as a signed list for another station of the site, and the taking of such a
 * list: {v 1, key (the public key as a JWK, RFC 7517), jws}. The JWS (RFC 7515) is over
 *   {v 1, site, station, made "2026-11-25T10:41:07+00:00", labels [{first, last, line, lot, expiry}]}
 * and any JOSE library verifies it with that key.
 *
 * Whose key it is, nobody but people can say: the thumbprint (RFC 7638) is told where the list was written, and typed where
 * it is taken.
 */
#ifndef BANDTALLY_RUN_LABELS_LIST_H
#define BANDTALLY_RUN_LABELS_LIST_H

#include "base/json.h"
#include "run/core.h"

#define LABELS_LIST_MAX 5000 /* batches of numbers; the newest */
#define KEY_TYPED_MIN 8      /* letters of the thumbprint */

/* A new reference {list, kid, labels: how many numbers}; NULL with `e`. */
json_t *labels_list_write(struct core *c, struct error *e);

/* Takes a list whose key's thumbprint begins with `typed`: all that is new of it, or nothing. A new reference {station,
 * labels: how many numbers are new, kid}; NULL with `e`: it is not signed by that key, of another site, this station's
 * own, holds a line that the catalogue lacks, or says otherwise of a number that is known. */
json_t *labels_list_take(struct core *c, const json_t *list, const char *typed, struct error *e);

#endif
