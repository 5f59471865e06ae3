/* What somebody shows to be let in: 32 random bytes as text, of which only the hash is kept.
 *
 * SHA-256 (FIPS 180-4) of the text, and base64url without padding (RFC 4648, section 5), which goes through an address
 * and a cookie as it is. What was drawn at random needs no slow hash.
 */
#ifndef BANDTALLY_BASE_SECRET_H
#define BANDTALLY_BASE_SECRET_H

#include <stdbool.h>

#define SECRET_HASH_BYTES 32
#define SECRET_LETTERS 43 /* of the text */
#define SECRET_HEX (2 * SECRET_HASH_BYTES)

struct secret_hash {
	unsigned char bytes[SECRET_HASH_BYTES];
};

/* A new one, from the kernel. 0, or a negative errno: then there is none. */
int secret_make(char text[SECRET_LETTERS + 1]);
void secret_wipe(char text[SECRET_LETTERS + 1]); /* where it is no longer needed */
bool secret_has_form(const char *text);          /* as many letters as one has, and only such */

struct secret_hash secret_hash(const char *text);
/* Takes the same time whether they agree or not, and wherever they differ. */
bool secret_same(const struct secret_hash *a, const struct secret_hash *b);

/* The hash in hexadecimal digits, lower case. secret_from_hex() is false where `hex` is none. */
void secret_to_hex(const struct secret_hash *hash, char hex[SECRET_HEX + 1]);
bool secret_from_hex(struct secret_hash *hash, const char *hex);

#endif
