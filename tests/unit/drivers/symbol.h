/* Pictures of barcodes, made by libzint and spoilt as a camera spoils them. */
#ifndef BANDTALLY_TESTS_DRIVERS_SYMBOL_H
#define BANDTALLY_TESTS_DRIVERS_SYMBOL_H

#include <stdbool.h>

#include "drivers/plane.h"

struct spoiling {
	double module_px; /* width of one module, need not be whole */
	int degrees;      /* turned clockwise about the middle */
	double blur_px;   /* radius of a box blur, twice */
	int noise;        /* each pixel lighter or darker by up to this */
	int black, white; /* 0, 255 in print */
};
#define SPOTLESS(module)                                                                                     \
	{                                                                                                    \
		.module_px = (module), .black = 0, .white = 255                                              \
	}

/* `kind` is a BARCODE_ of <zint.h>, `text` is UTF-8, `gs1` reads brackets in it as application identifiers. False where
 * libzint refuses. The picture has its quiet zone and a white rim. */
bool symbol_draw(int kind, const char *text, bool gs1, const struct spoiling *how, unsigned seed,
                 struct plane *out);

#endif
