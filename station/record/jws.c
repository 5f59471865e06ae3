#include "record/jws.h"

#include <errno.h>
#include <stdio.h>

#include "record/keys.h"

int jws_add_base64(struct buf *out, const void *bytes, size_t size)
{
	char text[sodium_base64_ENCODED_LEN(JWS_MAX, JWS_BASE64)];
	if (size > JWS_MAX)
		return -EMSGSIZE;
	sodium_bin2base64(text, sizeof text, bytes, size, JWS_BASE64);
	return buf_add_text(out, text);
}

int jws_header(const char *kid, struct buf *out)
{
	char header[KEY_TEXT_MAX + 48];
	int n =
	    kid ? snprintf(header, sizeof header, "{\"alg\":\"EdDSA\",\"kid\":\"%s\",\"typ\":\"JWT\"}", kid)
	        : snprintf(header, sizeof header, "{\"alg\":\"EdDSA\",\"typ\":\"JWT\"}");
	return jws_add_base64(out, header, (size_t)n);
}
