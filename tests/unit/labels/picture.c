#include "picture.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static char folder[64];

static int run(const char *format, ...) __attribute__((format(printf, 1, 2)));
static int run(const char *format, ...)
{
	char command[600];
	va_list args;
	va_start(args, format);
	vsnprintf(command, sizeof command, format, args);
	va_end(args);
	return system(command);
}

int pictures_open(void)
{
	strcpy(folder, "/tmp/bandtally-paper-XXXXXX");
	return mkdtemp(folder) ? 0 : -1;
}

void pictures_close(void)
{
	assert_int_equal(run("rm -rf %s", folder), 0);
}

struct picture picture_of_page(const struct buf *pdf, int page, int dpi)
{
	char path[100];
	struct picture p = {0};
	snprintf(path, sizeof path, "%s/paper.pdf", folder);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	assert_int_equal(fwrite(pdf->data, 1, pdf->size, f), pdf->size);
	fclose(f);
	assert_int_equal(run("pdftoppm -r %d -gray -aa no -aaVector no -f %d -l %d -singlefile %s %s/page",
	                     dpi, page, page, path, folder),
	                 0);
	snprintf(path, sizeof path, "%s/page.pgm", folder);
	f = fopen(path, "r");
	assert_non_null(f);
	assert_int_equal(fscanf(f, "P5 %d %d 255", &p.width, &p.height), 2);
	fgetc(f);
	size_t size = (size_t)p.width * (size_t)p.height;
	p.grey = malloc(size);
	assert_int_equal(fread(p.grey, 1, size, f), size);
	fclose(f);
	return p;
}

static double dot(const struct picture *p, double x, double y)
{
	if (x < 0 || y < 0 || x >= p->width || y >= p->height)
		return 90; /* the table */
	return p->grey[(size_t)y * (size_t)p->width + (size_t)x];
}

/* The mean over what one pixel sees, and half a pixel around it: not quite in focus. */
static double seen(const struct picture *page, const struct view_of_page *v, double per_pixel, double px,
                   double py)
{
	double sum = 0, sine = sin(v->degrees * M_PI / 180), cosine = cos(v->degrees * M_PI / 180);
	const int fine = 6;
	for (int i = 0; i < fine * fine; i++) {
		double x = px + (i % fine + 0.5) / fine * 1.8 - 0.9 - v->width / 2.0;
		double y = py + (i / fine + 0.5) / fine * 1.8 - 0.9 - v->height / 2.0;
		double far = 1 - v->lean * y / v->height;
		double u = (x * cosine + y * sine) * far, w = (y * cosine - x * sine) * far;
		sum += dot(page, u * per_pixel + v->x_mm, w * per_pixel + v->y_mm);
	}
	return sum / (fine * fine);
}

struct picture picture_seen(const struct picture *page, int dpi, const struct view_of_page *view)
{
	struct picture p = {.width = view->width, .height = view->height};
	struct view_of_page in_dots = *view;
	in_dots.x_mm = view->x_mm / 25.4 * dpi, in_dots.y_mm = view->y_mm / 25.4 * dpi;
	double per_pixel = view->width_mm / 25.4 * dpi / view->width;
	uint32_t grain = 1;
	p.grey = malloc((size_t)p.width * (size_t)p.height);
	for (int y = 0; y < p.height; y++)
		for (int x = 0; x < p.width; x++) {
			grain = grain * 1664525 + 1013904223;
			/* Paper is not white and ink not black before a camera. */
			double level = 40 + seen(page, &in_dots, per_pixel, x, y) * 170 / 255 + (grain >> 28);
			p.grey[(size_t)y * (size_t)p.width + (size_t)x] = (unsigned char)level;
		}
	return p;
}
