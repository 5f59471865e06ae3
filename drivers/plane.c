#include "drivers/plane.h"

#include <errno.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "base/error.h"

int plane_resize(struct plane *p, int width, int height)
{
	if (width <= 0 || height <= 0 || width > PLANE_SIDE_MAX || height > PLANE_SIDE_MAX ||
	    (int64_t)width * height > PLANE_PIXELS_MAX)
		return -EFBIG;
	if (p->pixels && (int64_t)width * height <= (int64_t)p->width * p->height) {
		p->width = width;
		p->height = height;
		return 0;
	}
	uint8_t *pixels = realloc(p->pixels, (size_t)width * (size_t)height);
	if (!pixels)
		return -ENOMEM;
	p->pixels = pixels;
	p->width = width;
	p->height = height;
	return 0;
}

void plane_free(struct plane *p)
{
	free(p->pixels);
	*p = (struct plane){0};
}

int plane_copy(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, in->width, in->height);
	if (r == 0)
		memcpy(out->pixels, in->pixels, (size_t)in->width * (size_t)in->height);
	return r;
}

static const uint8_t *row(const struct plane *p, int y)
{
	int inside = y < 0 ? 0 : y >= p->height ? p->height - 1 : y;
	return p->pixels + (size_t)inside * (size_t)p->width;
}

/* A new pixel lies a quarter of an old one from the nearer of its two neighbours: weights 3 and 1. */
static void double_row(const uint8_t *near, const uint8_t *far, int width, uint8_t *out)
{
	for (int x = 0; x < width; x++) {
		int left = x > 0 ? x - 1 : 0, right = x + 1 < width ? x + 1 : x;
		int here = 3 * near[x] + far[x];
		out[2 * x] = (uint8_t)((3 * here + 3 * near[left] + far[left] + 8) / 16);
		out[2 * x + 1] = (uint8_t)((3 * here + 3 * near[right] + far[right] + 8) / 16);
	}
}

int plane_double(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, 2 * in->width, 2 * in->height);
	for (int y = 0; r == 0 && y < out->height; y++)
		double_row(row(in, y / 2), row(in, y % 2 ? y / 2 + 1 : y / 2 - 1), in->width,
		           out->pixels + (size_t)y * (size_t)out->width);
	return r;
}

int plane_halve(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, in->width / 2, in->height / 2);
	for (int y = 0; r == 0 && y < out->height; y++) {
		const uint8_t *a = row(in, 2 * y), *b = row(in, 2 * y + 1);
		uint8_t *to = out->pixels + (size_t)y * (size_t)out->width;
		for (int x = 0; x < out->width; x++)
			to[x] = (uint8_t)((a[2 * x] + a[2 * x + 1] + b[2 * x] + b[2 * x + 1] + 2) / 4);
	}
	return r;
}

int plane_turn(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, in->height, in->width);
	for (int y = 0; r == 0 && y < in->height; y++) {
		const uint8_t *from = row(in, y);
		uint8_t *to = out->pixels + (in->height - 1 - y);
		for (int x = 0; x < in->width; x++)
			to[(size_t)x * (size_t)out->width] = from[x];
	}
	return r;
}

int plane_invert(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, in->width, in->height);
	size_t size = (size_t)in->width * (size_t)in->height;
	for (size_t i = 0; r == 0 && i < size; i++)
		out->pixels[i] = (uint8_t)(255 - in->pixels[i]);
	return r;
}

static uint8_t clamp(int v)
{
	return (uint8_t)(v < 0 ? 0 : v > 255 ? 255 : v);
}

int plane_smooth(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, in->width, in->height);
	for (int y = 0; r == 0 && y < in->height; y++) {
		const uint8_t *a = row(in, y - 1), *b = row(in, y), *c = row(in, y + 1);
		uint8_t *to = out->pixels + (size_t)y * (size_t)in->width;
		for (int x = 0; x < in->width; x++) {
			int l = x > 0 ? x - 1 : 0, m = x + 1 < in->width ? x + 1 : x;
			int left = a[l] + 2 * b[l] + c[l], here = a[x] + 2 * b[x] + c[x];
			int right = a[m] + 2 * b[m] + c[m];
			to[x] = (uint8_t)((left + 2 * here + right + 8) / 16);
		}
	}
	return r;
}

int plane_sharpen(const struct plane *in, struct plane *out)
{
	int r = plane_resize(out, in->width, in->height);
	for (int y = 0; r == 0 && y < in->height; y++) {
		const uint8_t *a = row(in, y - 1), *b = row(in, y), *c = row(in, y + 1);
		uint8_t *to = out->pixels + (size_t)y * (size_t)in->width;
		for (int x = 0; x < in->width; x++) {
			int l = x > 0 ? x - 1 : 0, m = x + 1 < in->width ? x + 1 : x;
			int round = a[l] + a[x] + a[m] + b[l] + b[m] + c[l] + c[x] + c[m];
			to[x] = clamp(b[x] + (8 * b[x] - round) / 4);
		}
	}
	return r;
}

/* Black and white are looked for this far to each side: about six modules of a code that can be read. */
#define LEVEL_REACH 20
/* What differs less from its surroundings than this is paper. */
#define LEVEL_LEAST 12

/* Darkest or brightest of each window of a line of `n` pixels. The running values from both
 * ends of each window-long block give the window's in three looks a pixel, whatever its length. */
struct extremes {
	uint8_t *ahead, *back, *low, *high; /* one line each */
};

static void run_extreme(const uint8_t *in, int n, bool high, struct extremes *x, uint8_t *out)
{
	const int window = 2 * LEVEL_REACH + 1;
	for (int i = 0; i < n; i++) {
		uint8_t v = in[i];
		bool fresh = i % window == 0;
		x->ahead[i] = fresh || (v > x->ahead[i - 1]) == high ? v : x->ahead[i - 1];
	}
	for (int i = n - 1; i >= 0; i--) {
		uint8_t v = in[i];
		bool fresh = i == n - 1 || i % window == window - 1;
		x->back[i] = fresh || (v > x->back[i + 1]) == high ? v : x->back[i + 1];
	}
	for (int i = 0; i < n; i++) {
		uint8_t a = x->back[i < LEVEL_REACH ? 0 : i - LEVEL_REACH];
		uint8_t b = x->ahead[i + LEVEL_REACH < n ? i + LEVEL_REACH : n - 1];
		out[i] = high == (a > b) ? a : b;
	}
}

int plane_level(const struct plane *in, struct plane *out)
{
	_cleanup_(plane_free) struct plane lines = {0};
	int r = plane_resize(out, in->width, in->height);
	if (r == 0)
		r = plane_resize(&lines, in->width, 4);
	if (r < 0)
		return r;
	size_t width = (size_t)in->width;
	struct extremes x = {lines.pixels, lines.pixels + width, lines.pixels + 2 * width,
	                     lines.pixels + 3 * width};
	/* A division for each pixel would take longer than all the rest. */
	int share[256] = {0}, white[256];
	for (int range = 0; range < 256; range++) {
		white[range] = range < LEVEL_LEAST ? 255 << 16 : 0;
		if (range >= LEVEL_LEAST)
			share[range] = (255 << 16) / range + 1;
	}
	for (int y = 0; y < in->height; y++) {
		const uint8_t *from = row(in, y);
		uint8_t *to = out->pixels + (size_t)y * width;
		run_extreme(from, in->width, false, &x, x.low);
		run_extreme(from, in->width, true, &x, x.high);
		for (int i = 0; i < in->width; i++) {
			int range = x.high[i] - x.low[i];
			to[i] = (uint8_t)(((from[i] - x.low[i]) * share[range] + white[range]) >> 16);
		}
	}
	return 0;
}

/* Sine and cosine in 16.16 fixed point, and the size of what holds the tilted picture. */
struct tilt {
	int64_t c, s;
	int width, height;
};

static struct tilt tilt_of(const struct plane *in, int degrees)
{
	double turn = degrees * M_PI / 180, c = cos(turn), s = sin(turn);
	return (struct tilt){
	    .c = lround(c * 65536),
	    .s = lround(s * 65536),
	    .width = (int)ceil(fabs(in->width * c) + fabs(in->height * s)),
	    .height = (int)ceil(fabs(in->width * s) + fabs(in->height * c)),
	};
}

/* The place in the picture, in 1/65536 pixel, that (x, y) of the tilted one shows. */
static void came_from(const struct plane *in, const struct tilt *t, int x, int y, int64_t *fx, int64_t *fy)
{
	int64_t dx = 2 * x - t->width + 1, dy = 2 * y - t->height + 1;
	*fx = (t->c * dx + t->s * dy) / 2 + (int64_t)(in->width - 1) * 32768;
	*fy = (-t->s * dx + t->c * dy) / 2 + (int64_t)(in->height - 1) * 32768;
}

void plane_untilt(const struct plane *in, int degrees, int *x, int *y)
{
	struct tilt t = tilt_of(in, degrees);
	int64_t fx, fy;
	came_from(in, &t, *x, *y, &fx, &fy);
	*x = (int)(fx >> 16);
	*y = (int)(fy >> 16);
}

int plane_tilt(const struct plane *in, int degrees, struct plane *out)
{
	struct tilt t = tilt_of(in, degrees);
	int r = plane_resize(out, t.width, t.height);
	for (int y = 0; r == 0 && y < out->height; y++) {
		uint8_t *to = out->pixels + (size_t)y * (size_t)out->width;
		for (int x = 0; x < out->width; x++) {
			int64_t fx, fy;
			came_from(in, &t, x, y, &fx, &fy);
			int left = (int)(fx >> 16), top = (int)(fy >> 16);
			int across = (int)(fx & 65535) >> 8, down = (int)(fy & 65535) >> 8;
			bool inside = left >= 0 && top >= 0 && left + 1 < in->width && top + 1 < in->height;
			const uint8_t *a =
			    in->pixels + (inside ? (size_t)top * (size_t)in->width + (size_t)left : 0);
			const uint8_t *b = a + (inside ? in->width : 0);
			int high = a[0] * (256 - across) + a[inside] * across;
			int low = b[0] * (256 - across) + b[inside] * across;
			to[x] = inside ? (uint8_t)((high * (256 - down) + low * down + 32768) >> 16) : 255;
		}
	}
	return r;
}

void plane_blank(struct plane *p, const struct box *b)
{
	int left = b->left < 0 ? 0 : b->left, right = b->right >= p->width ? p->width - 1 : b->right;
	int top = b->top < 0 ? 0 : b->top, bottom = b->bottom >= p->height ? p->height - 1 : b->bottom;
	for (int y = top; y <= bottom && right >= left; y++)
		memset(p->pixels + (size_t)y * (size_t)p->width + left, 255, (size_t)(right - left + 1));
}
