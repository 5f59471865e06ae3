/* The first eight bytes of a text as one number, the first in the lowest bits and zeros behind a shorter text, so that
 * most texts are told apart by one comparison. */
#ifndef BANDTALLY_BASE_EIGHT_H
#define BANDTALLY_BASE_EIGHT_H

#include <endian.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

/* Of a literal: a constant. And which bits of it are the text's. */
#define EIGHT_OF(text) EIGHT(text, EIGHT_BYTE)
#define EIGHT_MASK(text) EIGHT(text, EIGHT_FULL)
#define EIGHT(text, of)                                                                                      \
	(of(text, 0) | of(text, 1) | of(text, 2) | of(text, 3) | of(text, 4) | of(text, 5) | of(text, 6) |   \
	 of(text, 7))
#define EIGHT_BYTE(text, i) ((uint64_t)(uint8_t)(text "\0\0\0\0\0\0\0")[i] << 8 * (i))
#define EIGHT_FULL(text, i) ((text "\0\0\0\0\0\0\0")[i] ? (uint64_t)0xff << 8 * (i) : 0)

/* Of eight bytes that are there. */
static inline uint64_t eight_at(const char *bytes)
{
	uint64_t n;
	memcpy(&n, bytes, sizeof n);
	return le64toh(n);
}

/* Of a text that ends with a NUL. */
static inline uint64_t eight_of(const char *text)
{
	uint64_t n = 0;
	for (unsigned i = 0; i < sizeof n && text[i]; i++)
		n |= (uint64_t)(uint8_t)text[i] << 8 * i;
	return n;
}

#endif
