/* Fuzzing what a camera sends. The first byte says which form its frames have; the next three how wide and high they are and
 * how long a row; the rest is one frame. 'P' first, and the rest is a picture in a file.
 *
 * Whatever comes: a frame is taken whole or not at all, and each way in which a picture is made readable keeps within it.
 */
#include <linux/videodev2.h>
#include <sys/mman.h>

#include "drivers/islands.h"
#include "drivers/picture.h"
#include "drivers/video.h"
#include "tests/fuzz/fuzz.h"

#define PIXELS_MAX (256 * 256) /* more would say nothing further, slowly */

static const uint32_t forms[] = {V4L2_PIX_FMT_GREY, V4L2_PIX_FMT_YUYV,   V4L2_PIX_FMT_UYVY,
                                 V4L2_PIX_FMT_NV12, V4L2_PIX_FMT_YUV420, V4L2_PIX_FMT_MJPEG,
                                 V4L2_PIX_FMT_JPEG, V4L2_PIX_FMT_RGB24};

static void look_at_plane(const struct plane *p)
{
	unsigned sum = 0;
	must(p->width > 0 && p->height > 0 && p->pixels, "a picture without pixels");
	for (size_t i = 0; i < (size_t)p->width * (size_t)p->height; i++)
		sum += p->pixels[i];
	must(sum <= 255u * (unsigned)p->width * (unsigned)p->height, "brighter than white");
}

static void look_at_islands(const struct plane *p)
{
	static struct islands *s;
	struct plane cut = {0}, upright = {0};
	if (!s)
		s = islands_new();
	int n = s ? islands_find(s, p) : -1;
	must(n >= 0 && n <= ISLANDS_MAX, "more islands than there may be");
	for (int i = 0; i < n; i++) {
		struct box at;
		int degrees = -1;
		must(islands_cut(s, p, i, &cut, &at, &degrees) == 0 && degrees >= 0 && degrees < 90,
		     "an island's turn");
		must(cut.width == at.right - at.left + 1 && cut.height == at.bottom - at.top + 1,
		     "an island that does not lie where it is said to"); /* it may reach beyond the picture */
		must(plane_tilt(&cut, -degrees, &upright) == 0, "no memory");
		look_at_plane(&upright);
	}
	plane_free(&cut);
	plane_free(&upright);
}

static void change(const struct plane *p)
{
	static int (*const ways[])(const struct plane *in, struct plane *out) = {
	    plane_copy,   plane_double, plane_halve,   plane_turn,
	    plane_invert, plane_smooth, plane_sharpen, plane_level};
	struct plane out = {0};
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
		if (ways[i](p, &out) == 0 && out.width && out.height)
			look_at_plane(&out);
	plane_free(&out);
}

static void look(const struct plane *p)
{
	if ((size_t)p->width * (size_t)p->height > PIXELS_MAX)
		return;
	look_at_plane(p);
	change(p);
	look_at_islands(p);
}

static void read_frame(const uint8_t *data, size_t size)
{
	struct plane p = {0};
	struct video v = {.fd = -1,
	                  .fourcc = forms[data[0] % (sizeof forms / sizeof *forms)],
	                  .width = data[1] + 1,
	                  .height = data[2] + 1,
	                  .stride = data[3] * 4};
	if (video_grey(&v, data + 4, size - 4, &p) == 0)
		look(&p);
	plane_free(&p);
}

static void read_picture(const uint8_t *data, size_t size)
{
	struct plane p = {0};
	struct error e = {0};
	int fd = memfd_create("picture", MFD_CLOEXEC);
	must(fd >= 0 && write(fd, data, size) == (ssize_t)size && lseek(fd, 0, SEEK_SET) == 0, "no memory");
	if (picture_read(fd, "picture", &p, &e) == 0)
		look(&p);
	else
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
	plane_free(&p);
	close(fd);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	if (size && data[0] == 'P')
		read_picture(data + 1, size - 1);
	else if (size >= 4)
		read_frame(data, size);
	return 0;
}
