/* draw-symbols FOLDER      pictures for scan-camera, as a camera sees print: turned a little, blurred, with noise
 *
 * Standard input has a line for each: its name, qr, matrix or code128, and the bytes as hexadecimal digits. The picture is
 * FOLDER/NAME, a PGM. Exit 1 where one cannot be drawn.
 */
#include <stdio.h>
#include <string.h>

#include <zint.h>

#include "symbol.h"

#define BYTES_MAX 2000

static bool draw(const char *folder, const char *name, const char *kind, const char *text)
{
	const struct spoiling how = {
	    .module_px = 3.2, .degrees = 2, .blur_px = 0.6, .noise = 8, .black = 30, .white = 220};
	int symbology = strcmp(kind, "qr") == 0       ? BARCODE_QRCODE
	                : strcmp(kind, "matrix") == 0 ? BARCODE_DATAMATRIX
	                                              : BARCODE_CODE128;
	struct plane p = {0};
	char path[512];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *f = symbol_draw(symbology, text, false, &how, 1, &p) ? fopen(path, "w") : NULL;
	bool good = f && fprintf(f, "P5 %d %d 255\n", p.width, p.height) > 0 &&
	            fwrite(p.pixels, (size_t)p.width, (size_t)p.height, f) == (size_t)p.height;
	if (f && fclose(f) != 0)
		good = false;
	plane_free(&p);
	return good;
}

int main(int argc, char **argv)
{
	char name[64], kind[16], hex[2 * BYTES_MAX + 1], text[BYTES_MAX + 1];
	if (argc != 2) {
		fprintf(stderr, "usage: %s FOLDER < names, kinds and bytes\n", argv[0]);
		return 2;
	}
	while (scanf("%63s %15s %4000s", name, kind, hex) == 3) {
		size_t n = strlen(hex) / 2;
		for (size_t i = 0; i < n; i++)
			sscanf(hex + 2 * i, "%2hhx", (unsigned char *)&text[i]);
		text[n] = '\0';
		if (!draw(argv[1], name, kind, text)) {
			fprintf(stderr, "%s cannot be drawn\n", name);
			return 1;
		}
	}
	return 0;
}
