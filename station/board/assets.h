/* The page's files, put into the program when it is built (embed.cmake). Static. */
#ifndef BANDTALLY_BOARD_ASSETS_H
#define BANDTALLY_BOARD_ASSETS_H

#include <stddef.h>

struct asset {
	const char *name; /* "board.css" */
	const unsigned char *bytes;
	size_t size;
};

extern const struct asset assets[];
extern const size_t assets_count;

#endif
