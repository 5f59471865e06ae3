/* The chain: each event's hash covers its text and the hash before it, so that nothing can be changed, left
 * out or put in between without every later hash being wrong.
 *
 *   hash(n) = SHA-256(hash(n-1) || text(n));  hash(0) is 32 zero bytes.         SHA-256: FIPS 180-4
 */
#ifndef BANDTALLY_RECORD_CHAIN_H
#define BANDTALLY_RECORD_CHAIN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define CHAIN_BYTES 32

struct chain {
	uint8_t hash[CHAIN_BYTES];
};

void chain_add(struct chain *c, const char *text, size_t size);
/* The same for whole records, by the processor's own instructions where it has them. */
void chain_run_add(struct chain *c, const char *text, size_t size);

void chain_hex(const struct chain *c, char out[2 * CHAIN_BYTES + 1]);
bool chain_from_hex(struct chain *c, const char *hex); /* false where `hex` is none */

#endif
