/* What seal.c and keys.c share of a compact JWS (RFC 7515). Nobody else includes it. */
#ifndef BANDTALLY_RECORD_JWS_H
#define BANDTALLY_RECORD_JWS_H

#include <sodium.h>

#include "base/buf.h"

#define JWS_BASE64 sodium_base64_VARIANT_URLSAFE_NO_PADDING
#define JWS_MAX 4096 /* bytes of one part before they are encoded */

int jws_add_base64(struct buf *out, const void *bytes, size_t size); /* 0, -ENOMEM, -EMSGSIZE */

/* Appends the first part, which names the key; NULL: as versions wrote it that named none. */
int jws_header(const char *kid, struct buf *out);

#endif
