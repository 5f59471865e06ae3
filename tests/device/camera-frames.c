/* Writes one 640x480 grey frame with a symbol in it to stdout, for a camera in emulation to show.
 *   camera-frames TEXT     (application identifiers in brackets: GS1 DataMatrix, else Code 128; "": no
 * symbol) */
#include <stdio.h>
#include <string.h>
#include <zint.h>

#include "symbol.h"

int main(int argc, char **argv)
{
	static uint8_t frame[480][640];
	struct plane p = {0};
	struct spoiling how = {.module_px = 4, .blur_px = 0.6, .noise = 8, .black = 40, .white = 210};
	const char *text = argc > 1 ? argv[1] : "";
	bool gs1 = text[0] == '(';
	memset(frame, 120, sizeof frame);
	if (*text && !symbol_draw(gs1 ? BARCODE_DATAMATRIX : BARCODE_CODE128, text, gs1, &how, 1, &p))
		return 1;
	for (int y = 0; y < p.height && y < 330; y++)
		memcpy(&frame[y + 100][60], p.pixels + y * p.width, (size_t)(p.width < 580 ? p.width : 580));
	plane_free(&p);
	return fwrite(frame, sizeof frame, 1, stdout) != 1;
}
