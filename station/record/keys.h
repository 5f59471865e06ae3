/* The public keys of one station, which is all that whoever checks slips and seals needs.
 *
 * `station.pub.json` in the data folder is a JWK Set (RFC 7517 section 5) of Ed25519 keys (RFC 8037), the one that signs
 * now first and every earlier one behind it; each bears its thumbprint (RFC 7638) as `kid`. Versions that knew one key
 * only wrote that as a single JWK, which is read as well.
 */
#ifndef BANDTALLY_RECORD_KEYS_H
#define BANDTALLY_RECORD_KEYS_H

#include "base/error.h"
#include "base/json.h"
#include "count/event.h"

#define KEYS_FILE "station.pub.json"
#define KEYS_MAX 64 /* a station has one for as long as nothing happens to it */

struct keys {
	struct public_key list[KEYS_MAX];
	int count;
	int single; /* read from a single JWK */
};

/* The key of which `x` (RFC 8037 section 2) is the public part. 0, or -EINVAL where that is no key. */
int key_make(struct public_key *k, const char *x);

/* At the end, unless it is there. 0, or -ENOSPC. */
int keys_add(struct keys *all, const struct public_key *k);
int keys_find(const struct keys *all, const char *kid); /* its place, or -1 */

/* 0, or -EINVAL, -ENOENT, … with `e`. */
int keys_read(struct keys *all, const char *file, struct error *e);

/* Writes the set, but only where it is another than the one that is there. 0 or a negative errno. */
int keys_write(const struct keys *all, const char *file);

/* Checks a compact JWS (RFC 7515, EdDSA). Signed by one of the keys: `payload` is a new reference, and `which` (or
 * NULL) the key's place; negative errno with `e` where it is no JWS at all. One whose header has no
 * `kid`, as earlier versions wrote it, is tried with each key. */
enum keys_signed { KEYS_SIGNED_NOT = 0, KEYS_SIGNED };
int keys_check(const struct keys *all, const char *jws, json_t **payload, int *which, struct error *e);

/* The same with the keys of a file. */
int seal_check(const char *file, const char *jws, json_t **payload, struct error *e);

#endif
