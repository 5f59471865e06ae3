/* Apart from chain.c, so that the daemon, which hashes one event at a time, is not linked with OpenSSL. */
#include <errno.h>
#include <openssl/evp.h>
#include <stdlib.h>

#include "record/chain.h"

struct chain_run {
	EVP_MD_CTX *context;
	EVP_MD *sha256; /* fetched once: a look-up by name for each event would cost as much as its hash */
};

struct chain_run *chain_run_new(void)
{
	struct chain_run *run = calloc(1, sizeof *run);
	if (!run)
		return NULL;
	run->context = EVP_MD_CTX_new();
	run->sha256 = EVP_MD_fetch(NULL, "SHA256", NULL);
	if (run->context && run->sha256)
		return run;
	chain_run_free(run);
	return NULL;
}

void chain_run_free(struct chain_run *run)
{
	if (!run)
		return;
	EVP_MD_CTX_free(run->context);
	EVP_MD_free(run->sha256);
	free(run);
}

int chain_run_add(struct chain_run *run, struct chain *c, const char *text, size_t size)
{
	EVP_MD_CTX *x = run->context;
	return EVP_DigestInit_ex2(x, run->sha256, NULL) && EVP_DigestUpdate(x, c->hash, sizeof c->hash) &&
	               EVP_DigestUpdate(x, text, size) && EVP_DigestFinal_ex(x, c->hash, NULL)
	           ? 0
	           : -EIO;
}
