/* One barcode as modules, and how it is put on paper: every edge on a whole printer dot, quiet zone kept.
 *
 * Encoding is libzint's; every warning of it is a refusal (a bad check digit is only a warning there).
 * Sizes: GS1 General Specifications, table of symbols for regulated healthcare: DataMatrix X 0.254-0.495 mm,
 * quiet zone 1X; GS1-128 X 0.170-0.495 mm, height 12.7 mm, quiet zone 10X; EAN-13 11X; QR 4X (ISO/IEC 18004).
 */
#ifndef BANDTALLY_LABELS_BARCODE_H
#define BANDTALLY_LABELS_BARCODE_H

#include "labels/canvas.h"

enum symbol_kind {
	SYMBOL_CODE_128 = 1,
	SYMBOL_GS1_128, /* text with its identifiers in brackets: "(10)AB12(21)34CD" */
	SYMBOL_EAN_13,
	SYMBOL_GS1_DATAMATRIX, /* the smallest square that holds it */
	SYMBOL_GS1_DATAMATRIX_16X16,
	SYMBOL_GS1_DATAMATRIX_12X26,
	SYMBOL_QR_CODE,
};

struct barcode {
	enum symbol_kind kind;
	int columns, rows;   /* modules; rows is 1 for bars, columns for bars that were turned */
	int quiet;           /* modules on each side, of bars before and after them only */
	unsigned char *dark; /* columns × rows, row by row */
	char text[64];       /* how the encoded text begins, for the trace */
};

/* 0, or -EINVAL with a sentence: what the encoder says, and nothing was made. */
int barcode_init(struct barcode *b, enum symbol_kind kind, const char *text, struct error *e);
void barcode_deinit(struct barcode *b); /* fits _cleanup_; an all-zero struct is fine */

/* Turns bars by a quarter, so that they lie: where several stand in a row no line across the page runs through two. */
void barcode_turn(struct barcode *b);

/* Dots a module takes at this dpi: the whole number nearest to the target, inside the limits of the kind. */
int barcode_module_dots(enum symbol_kind kind, int dpi);

/* The most that the kind allows. */
int barcode_largest_dots(enum symbol_kind kind, int dpi);

int barcode_width_dots(const struct barcode *b, int module_dots);  /* with quiet zone; 0 for turned bars */
int barcode_height_dots(const struct barcode *b, int module_dots); /* with quiet zone; 0 for bars */

/* Draws with the outer corner of its quiet zone at that dot. `height_dots` is the height of bars, the width of turned
 * ones. */
void barcode_draw(const struct barcode *b, struct canvas *c, int x_dots, int y_dots, int module_dots,
                  int height_dots);

#endif
