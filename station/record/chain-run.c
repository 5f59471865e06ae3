/* Apart from chain.c, so that the daemon, which hashes one event at a time, is not linked with OpenSSL.
 *
 * Its older functions: one event is three blocks of SHA-256, and the newer ones take longer to begin and to end than to
 * hash them. */
#define OPENSSL_API_COMPAT 0x10101000L
#include <openssl/sha.h>

#include "record/chain.h"

_Static_assert(CHAIN_BYTES == SHA256_DIGEST_LENGTH, "the chain is SHA-256");

void chain_run_add(struct chain *c, const char *text, size_t size)
{
	SHA256_CTX s;
	SHA256_Init(&s);
	SHA256_Update(&s, c->hash, sizeof c->hash);
	SHA256_Update(&s, text, size);
	SHA256_Final(c->hash, &s);
}
