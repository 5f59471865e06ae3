/* A hexadecimal digit. */
#ifndef BANDTALLY_BASE_HEX_H
#define BANDTALLY_BASE_HEX_H

/* 0 to 15, of either case; -1 it is none. */
static inline int hex_value(char c)
{
	if (c >= '0' && c <= '9')
		return c - '0';
	if (c >= 'a' && c <= 'f')
		return c - 'a' + 10;
	return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

#endif
