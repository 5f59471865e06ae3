/* Bytes as text (RFC 4648): base64 with '=' at its end, and what a JWS has, base64url without. */
#ifndef BANDTALLY_BASE_BASE64_H
#define BANDTALLY_BASE_BASE64_H

#include "base/buf.h"

int base64_write(struct buf *out, const void *bytes, size_t size); /* 0 or -ENOMEM */

/* Appends what the base64url text says. 0, -EINVAL where it is none, or -ENOMEM. */
int base64url_read(struct buf *out, const char *text, size_t size);

#endif
