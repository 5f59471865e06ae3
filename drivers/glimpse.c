#include "drivers/glimpse.h"

#include <errno.h>
#include <setjmp.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* jpeglib.h wants stdio.h first. */
#include <jpeglib.h>

/* Never larger than it was, and one pixel at least. */
static void fit(const struct plane *in, int *width, int *height)
{
	int w = in->width, h = in->height;
	if (w > GLIMPSE_WIDTH) {
		h = (int)((long)h * GLIMPSE_WIDTH / w);
		w = GLIMPSE_WIDTH;
	}
	if (h > GLIMPSE_HEIGHT) {
		w = (int)((long)w * GLIMPSE_HEIGHT / h);
		h = GLIMPSE_HEIGHT;
	}
	*width = w > 0 ? w : 1;
	*height = h > 0 ? h : 1;
}

static uint8_t mean(const struct plane *in, int left, int top, int right, int bottom)
{
	long sum = 0, count = (long)(right - left) * (bottom - top);
	for (int y = top; y < bottom; y++)
		for (int x = left; x < right; x++)
			sum += in->pixels[(size_t)y * (size_t)in->width + (size_t)x];
	return (uint8_t)(sum / count);
}

int glimpse_reduce(const struct plane *in, struct plane *out)
{
	int width, height;
	fit(in, &width, &height);
	int r = plane_resize(out, width, height);
	for (int y = 0; r == 0 && y < height; y++)
		for (int x = 0; x < width; x++)
			out->pixels[(size_t)y * (size_t)width + (size_t)x] =
			    mean(in, (int)((long)x * in->width / width), (int)((long)y * in->height / height),
			         (int)((long)(x + 1) * in->width / width),
			         (int)((long)(y + 1) * in->height / height));
	return r;
}

/* libjpeg leaves by exit() unless its error handler jumps. */
struct jump {
	struct jpeg_error_mgr base;
	jmp_buf back;
};

static void fatal(j_common_ptr j)
{
	longjmp(((struct jump *)j->err)->back, 1);
}

static void silent(j_common_ptr j)
{
	(void)j;
}

static void compress(struct jpeg_compress_struct *j, const struct plane *small, int quality)
{
	j->image_width = (JDIMENSION)small->width;
	j->image_height = (JDIMENSION)small->height;
	j->input_components = 1;
	j->in_color_space = JCS_GRAYSCALE;
	jpeg_set_defaults(j);
	jpeg_set_quality(j, quality, TRUE);
	j->optimize_coding = TRUE;
	jpeg_start_compress(j, TRUE);
	while (j->next_scanline < j->image_height) {
		JSAMPROW row = small->pixels + (size_t)j->next_scanline * (size_t)small->width;
		jpeg_write_scanlines(j, &row, 1);
	}
	jpeg_finish_compress(j);
}

/* Into memory that libjpeg takes, which is the caller's to free whatever comes. */
static int write_jpeg(const struct plane *small, int quality, unsigned char **bytes, unsigned long *size)
{
	struct jpeg_compress_struct j;
	struct jump jump;
	j.err = jpeg_std_error(&jump.base);
	jump.base.error_exit = fatal;
	jump.base.output_message = silent;
	if (setjmp(jump.back)) {
		jpeg_destroy_compress(&j);
		return -ENOMEM;
	}
	jpeg_create_compress(&j);
	jpeg_mem_dest(&j, bytes, size);
	compress(&j, small, quality);
	jpeg_destroy_compress(&j);
	return 0;
}

int glimpse_jpeg(const struct plane *small, unsigned char out[GLIMPSE_BYTES_MAX], size_t *size)
{
	static const int qualities[] = {70, 50, 35, 22, 12, 5};
	int r = -EMSGSIZE;
	for (size_t i = 0; r == -EMSGSIZE && i < sizeof qualities / sizeof *qualities; i++) {
		unsigned char *bytes = NULL;
		unsigned long n = 0;
		r = write_jpeg(small, qualities[i], &bytes, &n);
		if (r == 0 && n > GLIMPSE_BYTES_MAX)
			r = -EMSGSIZE;
		if (r == 0) {
			memcpy(out, bytes, n);
			*size = n;
		}
		free(bytes);
	}
	return r;
}

static int thousandth(int at, int of)
{
	long n = of > 0 ? (long)at * 1000 / of : 0;
	return n < 0 ? 0 : n > 1000 ? 1000 : (int)n;
}

struct wire_seen glimpse_place(const struct box *box, const struct plane *picture)
{
	struct box b = box_thick(box);
	return (struct wire_seen){.left = thousandth(b.left, picture->width),
	                          .top = thousandth(b.top, picture->height),
	                          .right = thousandth(b.right, picture->width),
	                          .bottom = thousandth(b.bottom, picture->height)};
}
