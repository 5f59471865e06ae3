/* The station's seal: signs the summary that stands on a slip as QR, and the head of the record.
 *
 * A compact JWS (RFC 7515) with EdDSA over Ed25519 (RFC 8037), whose header names the key (`kid`, its thumbprint by
 * RFC 7638). The secret lies in the data folder as `station.key` (32 bytes of seed, mode 0600) and is made where it is
 * absent; the public keys lie beside it (keys.h). Whoever checks needs those only.
 */
#ifndef BANDTALLY_RECORD_SEAL_H
#define BANDTALLY_RECORD_SEAL_H

#include <stddef.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"
#include "base/json.h"
#include "count/event.h"

#define SEAL_FILE "station.key"

struct seal;

/* Takes the key of the folder, or makes one. A key that is no key is kept as station.key-damaged, and a new one made.
 * What was found is told by seal_state(); nothing is told to anybody here. 0, or a negative errno with `e`. */
int seal_open(struct seal **out, const char *folder, struct error *e);

/* The key that is there; makes and writes nothing. -ENOENT where there is none, -EUCLEAN where it is no key, … with `e`. */
int seal_open_still(struct seal **out, const char *folder, struct error *e);

void seal_close(struct seal *s); /* wipes the key; NULL is fine */

unsigned seal_state(const struct seal *s);               /* bits of enum key_state */
const struct public_key *seal_key(const struct seal *s); /* its public part; borrowed */

/* Appends the JWS of the payload, in its canonical form. 0 or negative errno. */
int seal_jws(const struct seal *s, const json_t *payload, struct buf *out);

/* What seals the head of a record: a record_sign_fn (store.h). The context is a struct seal_signing. */
struct chain;
struct seal_signing {
	const struct seal *seal;
	int32_t incarnation; /* of the record */
};
int seal_sign_head(void *context, int64_t seq, const struct chain *head, char *jws);

/* The code that only this station's key can make of these bytes: HMAC-SHA256 (RFC 2104, FIPS 180-4) under a key that is
 * itself HMAC-SHA256(seed, purpose), so that a code made for one purpose says nothing of another. */
#define SEAL_MAC_BYTES 32
void seal_mac(const struct seal *s, const char *purpose, const void *bytes, size_t size,
              uint8_t out[SEAL_MAC_BYTES]);

#endif
