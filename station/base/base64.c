#include "base/base64.h"

#include <errno.h>
#include <stdint.h>
#include <string.h>

static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

int base64_write(struct buf *out, const void *bytes, size_t size)
{
	const uint8_t *at = bytes;
	int n = 0;
	for (size_t i = 0; n == 0 && i < size; i += 3) {
		size_t left = size - i;
		uint32_t v = (uint32_t)at[i] << 16 | (left > 1 ? (uint32_t)at[i + 1] << 8 : 0) |
		             (left > 2 ? at[i + 2] : 0u);
		char four[4] = {letters[v >> 18], letters[v >> 12 & 63],
		                left > 1 ? letters[v >> 6 & 63] : '=', left > 2 ? letters[v & 63] : '='};
		n = buf_add(out, four, 4);
	}
	return n;
}

static int value_of(char c)
{
	const char *at = c ? strchr(letters, c == '-'               ? '+'
	                                     : c == '_'             ? '/'
	                                     : c == '+' || c == '/' ? '='
	                                                            : c)
	                   : NULL;
	return at ? (int)(at - letters) : -1;
}

int base64url_read(struct buf *out, const char *text, size_t size)
{
	uint32_t v = 0;
	int bits = 0, n = size % 4 == 1 ? -EINVAL : 0;
	for (size_t i = 0; n == 0 && i < size; i++) {
		int part = value_of(text[i]);
		if (part < 0)
			return -EINVAL;
		v = v << 6 | (uint32_t)part;
		bits += 6;
		if (bits < 8)
			continue;
		bits -= 8;
		uint8_t byte = (uint8_t)(v >> bits);
		n = buf_add(out, &byte, 1);
	}
	return n == 0 && v & ((1u << bits) - 1) ? -EINVAL : n; /* what is left over says nothing */
}
