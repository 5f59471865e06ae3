#include "base/secret.h"

#include <errno.h>
#include <sodium.h>
#include <string.h>
#include <sys/random.h>

static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

int secret_make(char text[SECRET_LETTERS + 1])
{
	unsigned char bytes[SECRET_HASH_BYTES];
	if (getrandom(bytes, sizeof bytes, 0) != (ssize_t)sizeof bytes)
		return errno ? -errno : -EIO;
	sodium_bin2base64(text, SECRET_LETTERS + 1, bytes, sizeof bytes,
	                  sodium_base64_VARIANT_URLSAFE_NO_PADDING);
	sodium_memzero(bytes, sizeof bytes);
	return 0;
}

void secret_wipe(char text[SECRET_LETTERS + 1])
{
	sodium_memzero(text, SECRET_LETTERS + 1);
}

bool secret_has_form(const char *text)
{
	return strspn(text, letters) == SECRET_LETTERS && !text[SECRET_LETTERS];
}

struct secret_hash secret_hash(const char *text)
{
	struct secret_hash h;
	crypto_hash_sha256(h.bytes, (const unsigned char *)text, strlen(text));
	return h;
}

bool secret_same(const struct secret_hash *a, const struct secret_hash *b)
{
	return sodium_memcmp(a->bytes, b->bytes, sizeof a->bytes) == 0;
}

void secret_to_hex(const struct secret_hash *h, char hex[SECRET_HEX + 1])
{
	sodium_bin2hex(hex, SECRET_HEX + 1, h->bytes, sizeof h->bytes);
}

bool secret_from_hex(struct secret_hash *h, const char *hex)
{
	size_t n = 0;
	return strlen(hex) == SECRET_HEX &&
	       sodium_hex2bin(h->bytes, sizeof h->bytes, hex, SECRET_HEX, NULL, &n, NULL) == 0 &&
	       n == sizeof h->bytes;
}
