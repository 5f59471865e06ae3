#include "record/seal.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"
#include "record/chain.h"
#include "record/jws.h"
#include "record/keys.h"

struct seal {
	struct public_key key;
	unsigned state;
	unsigned char public_key[crypto_sign_PUBLICKEYBYTES];
	unsigned char secret_key[crypto_sign_SECRETKEYBYTES];
};

/* -EUCLEAN where it is no key. A link is followed, so that the station signs, and is told. */
static int read_seed(const char *path, unsigned char *seed, unsigned *state)
{
	struct stat st;
	unsigned char more;
	if (lstat(path, &st) == 0 && S_ISLNK(st.st_mode))
		*state |= KEY_LINK;
	int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
	if (fd < 0)
		return errno == ENOENT && *state & KEY_LINK ? -EUCLEAN : -errno;
	int n = fstat(fd, &st) < 0 ? -errno : 0;
	if (n == 0 && st.st_mode & 077)
		*state |= KEY_OTHERS;
	ssize_t got = n == 0 && S_ISREG(st.st_mode) ? read(fd, seed, crypto_sign_SEEDBYTES) : 0;
	if (got < 0) /* which says nothing of the key */
		n = -errno;
	else if (n == 0 && (got != crypto_sign_SEEDBYTES || read(fd, &more, 1) > 0))
		n = -EUCLEAN;
	close(fd);
	return n;
}

static int make_seed(const char *path, unsigned char *seed, unsigned *state)
{
	*state = (*state & KEY_DAMAGED) | KEY_MADE;
	randombytes_buf(seed, crypto_sign_SEEDBYTES);
	return file_replace(path, 0600, seed, crypto_sign_SEEDBYTES);
}

/* -ENOENT: it is out of the way. */
static int keep_damaged(const char *path, unsigned *state)
{
	char aside[PATH_MAX + 16];
	snprintf(aside, sizeof aside, "%s-damaged", path);
	*state |= KEY_DAMAGED;
	return rename(path, aside) < 0 ? -errno : -ENOENT;
}

static int find_seed(const char *path, unsigned char *seed, unsigned *state)
{
	int n = read_seed(path, seed, state);
	if (n == -EUCLEAN)
		n = keep_damaged(path, state);
	return n == -ENOENT ? make_seed(path, seed, state) : n;
}

static int take_seed(struct seal *s, const unsigned char *seed)
{
	char x[KEY_TEXT_MAX];
	crypto_sign_seed_keypair(s->public_key, s->secret_key, seed);
	sodium_bin2base64(x, sizeof x, s->public_key, sizeof s->public_key, JWS_BASE64);
	return key_make(&s->key, x);
}

static int cannot_use(const char *path, int n, struct error *e)
{
	return error_set(e, n,
	                 "cannot use the station's key %.300s: %s: check its owner and mode, or restore it",
	                 path, n == -EUCLEAN ? "it is no key" : strerror(-n));
}

static int seal_of(struct seal **out, const char *folder,
                   int (*find)(const char *path, unsigned char *seed, unsigned *state), struct error *e)
{
	char path[PATH_MAX];
	unsigned char seed[crypto_sign_SEEDBYTES];
	struct seal *s = calloc(1, sizeof *s);
	if (!s || sodium_init() < 0) {
		free(s);
		return error_set(e, -ENOMEM, "cannot prepare the signature: out of memory: try again");
	}
	snprintf(path, sizeof path, "%.3800s/" SEAL_FILE, folder);
	int n = find(path, seed, &s->state);
	if (n == 0)
		n = take_seed(s, seed);
	sodium_memzero(seed, sizeof seed);
	if (n < 0) {
		seal_close(s);
		return cannot_use(path, n, e);
	}
	*out = s;
	return 0;
}

int seal_open(struct seal **out, const char *folder, struct error *e)
{
	return seal_of(out, folder, find_seed, e);
}

int seal_open_still(struct seal **out, const char *folder, struct error *e)
{
	return seal_of(out, folder, read_seed, e);
}

void seal_close(struct seal *s)
{
	if (s)
		sodium_memzero(s, sizeof *s);
	free(s);
}

unsigned seal_state(const struct seal *s)
{
	return s->state;
}

const struct public_key *seal_key(const struct seal *s)
{
	return &s->key;
}

int seal_jws(const struct seal *s, const json_t *payload, struct buf *out)
{
	_cleanup_(buf_free) struct buf body = {0}, signed_part = {0};
	unsigned char signature[crypto_sign_BYTES];
	int n = json_write_canonical(payload, &body);
	if (n == 0)
		n = jws_header(s->key.kid, &signed_part);
	if (n == 0)
		n = buf_add_text(&signed_part, ".");
	if (n == 0)
		n = jws_add_base64(&signed_part, body.data, body.size);
	if (n < 0)
		return n;
	crypto_sign_detached(signature, NULL, (const unsigned char *)signed_part.data, signed_part.size,
	                     s->secret_key);
	n = buf_add(out, signed_part.data, signed_part.size);
	if (n == 0)
		n = buf_add_text(out, ".");
	return n < 0 ? n : jws_add_base64(out, signature, sizeof signature);
}

int seal_sign_head(void *context, int64_t seq, const struct chain *head, char *jws)
{
	const struct seal_signing *by = context;
	char hex[2 * CHAIN_BYTES + 1];
	_cleanup_(buf_free) struct buf text = {0};
	chain_hex(head, hex);
	_cleanup_(json_drop) json_t *payload = json_pack("{s:s,s:I,s:I}", "chain", hex, "incarnation",
	                                                 (json_int_t)by->incarnation, "seq", (json_int_t)seq);
	int n = payload ? seal_jws(by->seal, payload, &text) : -ENOMEM;
	if (n == 0 && text.size >= SEAL_JWS_MAX)
		n = -EMSGSIZE;
	if (n == 0)
		memcpy(jws, text.data, text.size + 1);
	return n;
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
