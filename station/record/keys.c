#include "record/keys.h"

#include <errno.h>
#include <sodium.h>
#include <stdio.h>
#include <string.h>

#include "base/file.h"
#include "record/jws.h"

static int decode(const char *text, size_t length, unsigned char *out, size_t room, size_t *size)
{
	return sodium_base642bin(out, room, text, length, NULL, size, NULL, JWS_BASE64);
}

/* RFC 7638: SHA-256 of the required members alone, in order; for Ed25519 those of RFC 8037 section 2. */
int key_make(struct public_key *k, const char *x)
{
	unsigned char key[crypto_sign_PUBLICKEYBYTES], hash[crypto_hash_sha256_BYTES];
	char members[sizeof k->x + 48];
	size_t size = 0;
	if (strlen(x) >= sizeof k->x || decode(x, strlen(x), key, sizeof key, &size) < 0 ||
	    size != sizeof key)
		return -EINVAL;
	snprintf(k->x, sizeof k->x, "%s", x);
	int n = snprintf(members, sizeof members, "{\"crv\":\"Ed25519\",\"kty\":\"OKP\",\"x\":\"%s\"}", x);
	crypto_hash_sha256(hash, (const unsigned char *)members, (unsigned long long)n);
	sodium_bin2base64(k->kid, sizeof k->kid, hash, sizeof hash, JWS_BASE64);
	return 0;
}

int keys_find(const struct keys *all, const char *kid)
{
	for (int i = 0; i < all->count; i++)
		if (strcmp(all->list[i].kid, kid) == 0)
			return i;
	return -1;
}

int keys_add(struct keys *all, const struct public_key *k)
{
	if (keys_find(all, k->kid) >= 0)
		return 0;
	if (all->count == KEYS_MAX)
		return -ENOSPC;
	all->list[all->count++] = *k;
	return 0;
}

static int take(struct keys *all, const json_t *jwk)
{
	struct public_key k;
	int n = key_make(&k, json_text(jwk, "x"));
	return n == 0 ? keys_add(all, &k) : n;
}

int keys_read(struct keys *all, const char *file, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	size_t i;
	json_t *jwk;
	*all = (struct keys){0};
	int n = file_read(file, &text);
	if (n < 0)
		return error_set(e, n, "cannot read the public key %.300s: %s: give the station's " KEYS_FILE,
		                 file, strerror(-n));
	_cleanup_(json_drop) json_t *o = json_read(text.data ? text.data : "", text.size, NULL);
	const json_t *list = json_object_get(o, "keys");
	all->single = !list;
	if (!list)
		n = take(all, o);
	json_array_foreach(list, i, jwk) if (n == 0) n = take(all, jwk);
	if (n < 0 || !all->count)
		return error_set(e, n < 0 ? n : -EINVAL,
		                 "%.300s is not a station's public key: give the file " KEYS_FILE, file);
	return 0;
}

static json_t *jwk_of(const struct public_key *k)
{
	return json_pack("{s:s,s:s,s:s,s:s}", "crv", "Ed25519", "kid", k->kid, "kty", "OKP", "x", k->x);
}

int keys_write(const struct keys *all, const char *file)
{
	_cleanup_(buf_free) struct buf text = {0}, there = {0};
	_cleanup_(json_drop) json_t *set = json_pack("{s:[]}", "keys");
	for (int i = 0; i < all->count; i++)
		if (json_array_append_new(json_object_get(set, "keys"), jwk_of(&all->list[i])) < 0)
			return -ENOMEM;
	int n = json_write_canonical(set, &text);
	if (n == 0)
		n = buf_add_text(&text, "\n");
	if (n < 0)
		return n;
	if (file_read(file, &there) == 0 && there.size == text.size &&
	    memcmp(there.data, text.data, text.size) == 0)
		return 0;
	return file_replace(file, 0644, text.data, text.size);
}

struct parts {
	const char *header, *body, *signature;
	size_t header_size, body_size;
};

static int split(const char *jws, struct parts *p)
{
	const char *first = strchr(jws, '.'), *second = first ? strchr(first + 1, '.') : NULL;
	if (!second || strchr(second + 1, '.'))
		return -EINVAL;
	*p = (struct parts){jws, first + 1, second + 1, (size_t)(first - jws), (size_t)(second - first - 1)};
	return 0;
}

/* Only the two headers that this house writes: nothing else is a signature of it, whatever it says. */
static int is_header(const struct parts *p, const char *kid)
{
	_cleanup_(buf_free) struct buf text = {0};
	return jws_header(kid, &text) == 0 && text.size == p->header_size &&
	       memcmp(text.data, p->header, text.size) == 0;
}

static int signed_by(const struct parts *p, const struct public_key *k)
{
	unsigned char key[crypto_sign_PUBLICKEYBYTES], signature[crypto_sign_BYTES];
	size_t size = 0, key_size = 0;
	if (decode(p->signature, strlen(p->signature), signature, sizeof signature, &size) < 0 ||
	    size != sizeof signature || decode(k->x, strlen(k->x), key, sizeof key, &key_size) < 0)
		return 0;
	return crypto_sign_verify_detached(signature, (const unsigned char *)p->header,
	                                   p->header_size + 1 + p->body_size, key) == 0;
}

int keys_check(const struct keys *all, const char *jws, json_t **payload, int *which, struct error *e)
{
	struct parts p;
	unsigned char body[JWS_MAX];
	size_t size = 0;
	int by = -1;
	if (sodium_init() < 0)
		return error_set(e, -ENOMEM, "cannot check a signature: out of memory: try again");
	if (split(jws, &p) < 0)
		return error_set(
		    e, -EINVAL,
		    "that is not a signed summary: three parts joined by points are expected: scan the "
		    "slip's QR code whole");
	int any = is_header(&p, NULL);
	for (int i = 0; by < 0 && i < all->count; i++)
		if ((any || is_header(&p, all->list[i].kid)) && signed_by(&p, &all->list[i]))
			by = i;
	if (by < 0 || decode(p.body, p.body_size, body, sizeof body, &size) < 0)
		return KEYS_SIGNED_NOT;
	if (which)
		*which = by;
	*payload = json_read((const char *)body, size, e);
	return *payload ? KEYS_SIGNED : -EINVAL;
}

int seal_check(const char *file, const char *jws, json_t **payload, struct error *e)
{
	struct keys keys;
	int n = keys_read(&keys, file, e);
	return n < 0 ? n : keys_check(&keys, jws, payload, NULL, e);
}
