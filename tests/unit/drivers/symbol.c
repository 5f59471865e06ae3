#include "symbol.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <zint.h>

#define LINEAR_HEIGHT 30 /* modules */
#define QUIET 10

static bool dark(const struct zint_symbol *z, double x, double y)
{
	if (x < 0 || y < 0 || x >= z->width)
		return false;
	int column = (int)x, row = z->rows == 1 ? 0 : (int)y;
	if (row >= z->rows || (z->rows == 1 && y >= LINEAR_HEIGHT))
		return false;
	return z->encoded_data[row][column / 8] >> (column % 8) & 1;
}

/* Each pixel is the mean of 16 points in it, as a sensor sees it. */
static void draw(const struct zint_symbol *z, const struct spoiling *how, struct plane *out)
{
	double turn = how->degrees * M_PI / 180, c = cos(turn), s = sin(turn);
	double width = z->width, height = z->rows == 1 ? LINEAR_HEIGHT : z->rows;
	for (int y = 0; y < out->height; y++) {
		for (int x = 0; x < out->width; x++) {
			int hits = 0;
			for (int k = 0; k < 16; k++) {
				double px = (x + (k % 4 + 0.5) / 4 - out->width / 2.0) / how->module_px;
				double py = (y + (k / 4 + 0.5) / 4 - out->height / 2.0) / how->module_px;
				hits += dark(z, c * px + s * py + width / 2, -s * px + c * py + height / 2);
			}
			out->pixels[y * out->width + x] =
			    (uint8_t)(how->white - (how->white - how->black) * hits / 16);
		}
	}
}

/* One pass along lines that are `step` apart within, with a radius that need not be whole. */
static void blur(struct plane *p, double radius)
{
	int whole = (int)radius;
	double edge = radius - whole;
	for (int pass = 0; pass < 4; pass++) {
		bool down = pass % 2;
		int lines = down ? p->width : p->height, length = down ? p->height : p->width;
		int step = down ? p->width : 1, next = down ? 1 : p->width;
		double *was = malloc(sizeof *was * (size_t)length);
		for (int l = 0; l < lines; l++) {
			uint8_t *line = p->pixels + (size_t)l * (size_t)next;
			for (int i = 0; i < length; i++)
				was[i] = line[(size_t)i * (size_t)step];
			for (int i = 0; i < length; i++) {
				double sum = 0, weight = 0;
				for (int k = -whole - 1; k <= whole + 1; k++) {
					double w = abs(k) <= whole ? 1 : edge;
					int at = i + k < 0 ? 0 : i + k >= length ? length - 1 : i + k;
					sum += w * was[at];
					weight += w;
				}
				line[(size_t)i * (size_t)step] = (uint8_t)lround(sum / weight);
			}
		}
		free(was);
	}
}

static void add_noise(struct plane *p, int noise, unsigned seed)
{
	for (int i = 0; noise && i < p->width * p->height; i++) {
		seed = seed * 1103515245U + 12345U;
		int v = p->pixels[i] + (int)(seed >> 16) % (2 * noise + 1) - noise;
		p->pixels[i] = (uint8_t)(v < 0 ? 0 : v > 255 ? 255 : v);
	}
}

bool symbol_draw(int kind, const char *text, bool gs1, const struct spoiling *how, unsigned seed,
                 struct plane *out)
{
	struct zint_symbol *z = ZBarcode_Create();
	z->symbology = kind;
	z->input_mode = gs1 ? GS1_MODE | GS1PARENS_MODE : UNICODE_MODE;
	z->option_3 = kind == BARCODE_DATAMATRIX ? DM_SQUARE : 0;
	int said = ZBarcode_Encode(z, (const unsigned char *)text, 0);
	bool good = said == 0 || said == ZINT_WARN_USES_ECI;
	if (good) {
		double turn = how->degrees * M_PI / 180, c = fabs(cos(turn)), s = fabs(sin(turn));
		double w = z->width + 2 * QUIET, h = (z->rows == 1 ? LINEAR_HEIGHT : z->rows) + 2 * QUIET;
		good = plane_resize(out, (int)ceil((w * c + h * s) * how->module_px),
		                    (int)ceil((w * s + h * c) * how->module_px)) == 0;
	}
	if (good) {
		draw(z, how, out);
		if (how->blur_px > 0)
			blur(out, how->blur_px);
		add_noise(out, how->noise, seed);
	}
	ZBarcode_Delete(z);
	return good;
}
