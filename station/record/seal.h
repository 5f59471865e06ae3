/* The station's seal: signs the summary that stands on a slip as QR.
 *
 * A compact JWS (RFC 7515) with EdDSA over Ed25519 (RFC 8037). The key pair lies in the data folder as
 * `station.key` (32 bytes of seed, mode 0600) and `station.pub.json` (the public key as JWK); both are made at the
 * first start. Whoever checks slips needs the public file only.
 */
#ifndef BANDTALLY_RECORD_SEAL_H
#define BANDTALLY_RECORD_SEAL_H

#include <stddef.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"
#include "base/json.h"

struct seal;

int seal_open(struct seal **out, const char *folder, struct error *e);
void seal_close(struct seal *s); /* wipes the key; NULL is fine */

/* Appends the JWS of the payload, in its canonical form. 0 or negative errno. */
int seal_jws(const struct seal *s, const json_t *payload, struct buf *out);

/* The code that only this station's key can make of these bytes: HMAC-SHA256 (RFC 2104, FIPS 180-4) under a key that is
 * itself HMAC-SHA256(seed, purpose), so that a code made for one purpose says nothing of another. */
#define SEAL_MAC_BYTES 32
void seal_mac(const struct seal *s, const char *purpose, const void *bytes, size_t size,
              uint8_t out[SEAL_MAC_BYTES]);

/* Checks a JWS against the public key file. 1 right, 0 not, negative errno with `e`; the payload is a new
 * reference when 1. */
int seal_check(const char *public_file, const char *jws, json_t **payload, struct error *e);

#endif
