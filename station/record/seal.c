#include "record/seal.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <sodium.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define B64 sodium_base64_VARIANT_URLSAFE_NO_PADDING
#define HEADER "{\"alg\":\"EdDSA\",\"typ\":\"JWT\"}"
#define JWS_MAX 4096

struct seal {
	unsigned char public_key[crypto_sign_PUBLICKEYBYTES];
	unsigned char secret_key[crypto_sign_SECRETKEYBYTES];
};

static int read_seed(const char *path, unsigned char *seed)
{
	int fd = open(path, O_RDONLY | O_CLOEXEC);
	if (fd < 0)
		return -errno;
	ssize_t n = read(fd, seed, crypto_sign_SEEDBYTES);
	close(fd);
	return n == crypto_sign_SEEDBYTES ? 0 : -EUCLEAN;
}

static int write_whole(const char *path, mode_t mode, const void *bytes, size_t size)
{
	int fd = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, mode);
	if (fd < 0)
		return -errno;
	int bad = write(fd, bytes, size) != (ssize_t)size || fsync(fd) < 0;
	int error = errno;
	close(fd);
	return bad ? -error : 0;
}

static int write_public(const struct seal *s, const char *path)
{
	char text[64], jwk[160];
	sodium_bin2base64(text, sizeof text, s->public_key, sizeof s->public_key, B64);
	int n = snprintf(jwk, sizeof jwk, "{\"crv\":\"Ed25519\",\"kty\":\"OKP\",\"x\":\"%s\"}\n", text);
	return write_whole(path, 0644, jwk, (size_t)n);
}

int seal_open(struct seal **out, const char *folder, struct error *e)
{
	char key[PATH_MAX], public_key[PATH_MAX];
	unsigned char seed[crypto_sign_SEEDBYTES];
	struct seal *s = calloc(1, sizeof *s);
	if (!s || sodium_init() < 0) {
		free(s);
		return error_set(e, -ENOMEM, "cannot prepare the signature: out of memory: try again");
	}
	snprintf(key, sizeof key, "%s/station.key", folder);
	snprintf(public_key, sizeof public_key, "%s/station.pub.json", folder);
	int n = read_seed(key, seed);
	if (n == -ENOENT) {
		randombytes_buf(seed, sizeof seed);
		n = write_whole(key, 0600, seed, sizeof seed);
	}
	if (n == 0) {
		crypto_sign_seed_keypair(s->public_key, s->secret_key, seed);
		n = write_public(s, public_key);
	}
	sodium_memzero(seed, sizeof seed);
	if (n < 0) {
		seal_close(s);
		return error_set(
		    e, n, "cannot use the station's key %s: %s: check its owner and mode, or restore it", key,
		    strerror(-n));
	}
	*out = s;
	return 0;
}

void seal_close(struct seal *s)
{
	if (s)
		sodium_memzero(s, sizeof *s);
	free(s);
}

static int add_base64(struct buf *out, const void *bytes, size_t size)
{
	char text[sodium_base64_ENCODED_LEN(JWS_MAX, B64)];
	if (size > JWS_MAX)
		return -EMSGSIZE;
	sodium_bin2base64(text, sizeof text, bytes, size, B64);
	return buf_add_text(out, text);
}

int seal_jws(const struct seal *s, const json_t *payload, struct buf *out)
{
	_cleanup_(buf_free) struct buf body = {0}, signed_part = {0};
	unsigned char signature[crypto_sign_BYTES];
	int n = json_write_canonical(payload, &body);
	if (n == 0)
		n = add_base64(&signed_part, HEADER, strlen(HEADER));
	if (n == 0)
		n = buf_add_text(&signed_part, ".");
	if (n == 0)
		n = add_base64(&signed_part, body.data, body.size);
	if (n < 0)
		return n;
	crypto_sign_detached(signature, NULL, (const unsigned char *)signed_part.data, signed_part.size,
	                     s->secret_key);
	n = buf_add(out, signed_part.data, signed_part.size);
	if (n == 0)
		n = buf_add_text(out, ".");
	return n < 0 ? n : add_base64(out, signature, sizeof signature);
}

/* libsodium's secret key begins with the seed (RFC 8032). */
void seal_mac(const struct seal *s, const char *purpose, const void *bytes, size_t size,
              uint8_t out[SEAL_MAC_BYTES])
{
	crypto_auth_hmacsha256_state state;
	unsigned char key[crypto_auth_hmacsha256_BYTES];
	crypto_auth_hmacsha256_init(&state, s->secret_key, crypto_sign_SEEDBYTES);
	crypto_auth_hmacsha256_update(&state, (const unsigned char *)purpose, strlen(purpose));
	crypto_auth_hmacsha256_final(&state, key);
	crypto_auth_hmacsha256_init(&state, key, sizeof key);
	crypto_auth_hmacsha256_update(&state, bytes, size);
	crypto_auth_hmacsha256_final(&state, out);
	sodium_memzero(key, sizeof key);
	sodium_memzero(&state, sizeof state);
}

static int read_public(const char *path, unsigned char *key, struct error *e)
{
	json_error_t why;
	_cleanup_(json_drop) json_t *jwk = json_load_file(path, JSON_REJECT_DUPLICATES, &why);
	const char *x = json_text(jwk, "x");
	size_t size = 0;
	if (!jwk ||
	    sodium_base642bin(key, crypto_sign_PUBLICKEYBYTES, x, strlen(x), NULL, &size, NULL, B64) < 0 ||
	    size != crypto_sign_PUBLICKEYBYTES)
		return error_set(e, -EINVAL,
		                 "%s is not a station's public key: give the file station.pub.json", path);
	return 0;
}

int seal_check(const char *public_file, const char *jws, json_t **payload, struct error *e)
{
	unsigned char key[crypto_sign_PUBLICKEYBYTES], signature[crypto_sign_BYTES], body[JWS_MAX];
	size_t size = 0, body_size = 0;
	if (sodium_init() < 0)
		return error_set(e, -ENOMEM, "cannot check a signature: out of memory: try again");
	int n = read_public(public_file, key, e);
	if (n < 0)
		return n;
	const char *first = strchr(jws, '.'), *second = first ? strchr(first + 1, '.') : NULL;
	if (!second || strchr(second + 1, '.'))
		return error_set(
		    e, -EINVAL,
		    "that is not a signed summary: three parts joined by points are expected: scan the "
		    "slip's QR code whole");
	_cleanup_(buf_free) struct buf header = {0};
	n = add_base64(&header, HEADER, strlen(HEADER));
	if (n < 0)
		return n;
	if ((size_t)(first - jws) != header.size || memcmp(jws, header.data, header.size) != 0)
		return 0;
	if (sodium_base642bin(signature, sizeof signature, second + 1, strlen(second + 1), NULL, &size, NULL,
	                      B64) < 0 ||
	    size != sizeof signature ||
	    crypto_sign_verify_detached(signature, (const unsigned char *)jws, (size_t)(second - jws), key) <
	        0)
		return 0;
	if (sodium_base642bin(body, sizeof body, first + 1, (size_t)(second - first - 1), NULL, &body_size,
	                      NULL, B64) < 0)
		return 0;
	*payload = json_read((const char *)body, body_size, e);
	return *payload ? 1 : -EINVAL;
}
