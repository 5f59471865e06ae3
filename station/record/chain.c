#include "record/chain.h"

#include <string.h>

#include <sodium.h>

_Static_assert(CHAIN_BYTES == crypto_hash_sha256_BYTES, "the chain is SHA-256");

void chain_add(struct chain *c, const char *text, size_t size)
{
	crypto_hash_sha256_state s;
	crypto_hash_sha256_init(&s);
	crypto_hash_sha256_update(&s, c->hash, sizeof c->hash);
	crypto_hash_sha256_update(&s, (const unsigned char *)text, size);
	crypto_hash_sha256_final(&s, c->hash);
}

void chain_hex(const struct chain *c, char out[2 * CHAIN_BYTES + 1])
{
	sodium_bin2hex(out, 2 * CHAIN_BYTES + 1, c->hash, sizeof c->hash);
}

bool chain_from_hex(struct chain *c, const char *hex)
{
	const char *end = NULL;
	size_t n = 0;
	return sodium_hex2bin(c->hash, sizeof c->hash, hex, strlen(hex), NULL, &n, &end) == 0 &&
	       n == sizeof c->hash && !*end;
}
