#include "drivers/picture.h"

#include <errno.h>
#include <setjmp.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* jpeglib.h wants stdio.h first. */
#include <jpeglib.h>
#include <png.h>

#include "base/buf.h"

static int too_large(struct error *e, int r)
{
	if (r == -EFBIG)
		return error_set(e, r, "the picture is too large: make it at most %d million pixels",
		                 PLANE_PIXELS_MAX / 1024 / 1024);
	return error_set(e, r, "no memory: make the picture smaller");
}

static int damaged(struct error *e, const char *kind, const char *why)
{
	return error_set(e, -EBADMSG, "the %s is damaged (%s): take the picture again", kind, why);
}

/* libjpeg leaves by exit() unless its error handler jumps. */
struct jpeg_jump {
	struct jpeg_error_mgr base;
	jmp_buf back;
	char why[JMSG_LENGTH_MAX];
	bool warned;
};

static void jpeg_fatal(j_common_ptr j)
{
	struct jpeg_jump *jump = (struct jpeg_jump *)j->err;
	j->err->format_message(j, jump->why);
	longjmp(jump->back, 1);
}

/* A warning means that pixels were made up for missing data. */
static void jpeg_warned(j_common_ptr j, int level)
{
	struct jpeg_jump *jump = (struct jpeg_jump *)j->err;
	if (level < 0 && !jump->warned) {
		j->err->format_message(j, jump->why);
		jump->warned = true;
	}
}

static int jpeg_rows(struct jpeg_decompress_struct *j, struct plane *out, struct error *e)
{
	jpeg_read_header(j, TRUE);
	j->out_color_space = JCS_GRAYSCALE;
	if (j->image_width > PLANE_SIDE_MAX || j->image_height > PLANE_SIDE_MAX)
		return too_large(e, -EFBIG);
	int r = plane_resize(out, (int)j->image_width, (int)j->image_height);
	if (r < 0)
		return too_large(e, r);
	jpeg_start_decompress(j);
	while (j->output_scanline < j->output_height) {
		JSAMPROW row = out->pixels + (size_t)j->output_scanline * j->output_width;
		jpeg_read_scanlines(j, &row, 1);
	}
	jpeg_finish_decompress(j);
	return 0;
}

int picture_jpeg(const uint8_t *bytes, size_t size, struct plane *out, struct error *e)
{
	struct jpeg_decompress_struct j;
	struct jpeg_jump jump = {.warned = false};
	j.err = jpeg_std_error(&jump.base);
	jump.base.error_exit = jpeg_fatal;
	jump.base.emit_message = jpeg_warned;
	if (setjmp(jump.back)) {
		jpeg_destroy_decompress(&j);
		return damaged(e, "JPEG", jump.why);
	}
	jpeg_create_decompress(&j);
	jpeg_mem_src(&j, bytes, size);
	int r = jpeg_rows(&j, out, e);
	jpeg_destroy_decompress(&j);
	if (r == 0 && jump.warned)
		return damaged(e, "JPEG", jump.why);
	return r;
}

static int read_png(const struct buf *file, struct plane *out, struct error *e)
{
	png_image image = {.version = PNG_IMAGE_VERSION};
	if (!png_image_begin_read_from_memory(&image, file->data, file->size))
		return damaged(e, "PNG", image.message);
	if (image.width > PLANE_SIDE_MAX || image.height > PLANE_SIDE_MAX) {
		png_image_free(&image);
		return too_large(e, -EFBIG);
	}
	int r = plane_resize(out, (int)image.width, (int)image.height);
	if (r < 0) {
		png_image_free(&image);
		return too_large(e, r);
	}
	image.format = PNG_FORMAT_GRAY;
	png_color white = {255, 255, 255};
	if (!png_image_finish_read(&image, &white, out->pixels, (png_int_32)image.width, NULL))
		return damaged(e, "PNG", image.message);
	return 0;
}

/* The next number of a PGM header, after white space and comments; -1 where there is none. */
static long pgm_number(const struct buf *file, size_t *at)
{
	while (*at < file->size && strchr(" \t\r\n#", file->data[*at]) && file->data[*at]) {
		if (file->data[*at] == '#')
			while (*at < file->size && file->data[*at] != '\n')
				++*at;
		else
			++*at;
	}
	long n = -1;
	for (; *at < file->size && file->data[*at] >= '0' && file->data[*at] <= '9'; ++*at) {
		n = (n < 0 ? 0 : n) * 10 + (file->data[*at] - '0');
		if (n > PLANE_PIXELS_MAX)
			return PLANE_PIXELS_MAX;
	}
	return n;
}

static int read_pgm(const struct buf *file, struct plane *out, struct error *e)
{
	size_t at = 2;
	long width = pgm_number(file, &at), height = pgm_number(file, &at), most = pgm_number(file, &at);
	if (width <= 0 || height <= 0 || most <= 0 || most > 65535)
		return damaged(e, "PGM", "its header has no size");
	if (width > PLANE_SIDE_MAX || height > PLANE_SIDE_MAX)
		return too_large(e, -EFBIG);
	if (most != 255)
		return error_set(e, -ENOTSUP, "a PGM with %ld levels is not read: save it with 255", most);
	at++; /* one white space ends the header */
	size_t size = (size_t)width * (size_t)height;
	if (at > file->size || file->size - at < size)
		return damaged(e, "PGM", "it ends too early");
	int r = plane_resize(out, (int)width, (int)height);
	if (r < 0)
		return too_large(e, r);
	memcpy(out->pixels, file->data + at, size);
	return 0;
}

static int read_all(int fd, struct buf *file, struct error *e)
{
	char part[65536];
	ssize_t n;
	while ((n = read(fd, part, sizeof part)) != 0) {
		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			return error_set(e, -errno, "it cannot be read: %s: name a picture", strerror(errno));
		if (file->size + (size_t)n > PICTURE_BYTES_MAX)
			return error_set(e, -EFBIG, "the file is too large: make it at most %d MiB",
			                 PICTURE_BYTES_MAX / 1024 / 1024);
		if (buf_add(file, part, (size_t)n) < 0)
			return error_set(e, -ENOMEM, "no memory: make the picture smaller");
	}
	return file->size ? 0 : error_set(e, -ENODATA, "the file is empty: take the picture again");
}

static int read_by_kind(int fd, struct plane *out, struct error *e)
{
	_cleanup_(buf_free) struct buf file = {0};
	int r = read_all(fd, &file, e);
	if (r < 0)
		return r;
	if (file.size >= 8 && memcmp(file.data, "\x89PNG\r\n\x1a\n", 8) == 0)
		return read_png(&file, out, e);
	if (file.size >= 3 && memcmp(file.data, "\xff\xd8\xff", 3) == 0)
		return picture_jpeg((const uint8_t *)file.data, file.size, out, e);
	if (file.size >= 2 && memcmp(file.data, "P5", 2) == 0)
		return read_pgm(&file, out, e);
	return error_set(e, -ENOTSUP, "it is no PNG, JPEG or raw PGM: name a picture of these kinds");
}

int picture_read(int fd, const char *name, struct plane *out, struct error *e)
{
	struct error why = {0};
	int r = read_by_kind(fd, out, &why);
	return r < 0 ? error_set(e, r, "%.200s: %.300s", name, why.text) : 0;
}
