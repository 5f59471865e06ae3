#include "drivers/video.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/videodev2.h>
#include <poll.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/mman.h>
#include <unistd.h>

#include "drivers/picture.h"

/* In the order of preference: brightness alone first, then uncompressed, then JPEG. */
static const uint32_t formats[] = {
    V4L2_PIX_FMT_GREY, V4L2_PIX_FMT_NV12,  V4L2_PIX_FMT_YUV420, V4L2_PIX_FMT_YUYV,
    V4L2_PIX_FMT_UYVY, V4L2_PIX_FMT_MJPEG, V4L2_PIX_FMT_JPEG,
};

static int call(int fd, unsigned long request, void *argument)
{
	int r;
	do
		r = ioctl(fd, request, argument);
	while (r < 0 && errno == EINTR);
	return r < 0 ? -errno : 0;
}

static int check_device(int fd, const char *path, struct error *e)
{
	struct v4l2_capability c = {0};
	if (call(fd, VIDIOC_QUERYCAP, &c) < 0)
		return error_set(e, -ENOTTY, "%s: it is no camera: name a /dev/video device", path);
	uint32_t can = c.capabilities & V4L2_CAP_DEVICE_CAPS ? c.device_caps : c.capabilities;
	if (!(can & V4L2_CAP_VIDEO_CAPTURE) || !(can & V4L2_CAP_STREAMING))
		return error_set(e, -ENOTSUP,
		                 "%s: it gives no stream of pictures: name the camera's other device", path);
	return 0;
}

static bool known(uint32_t fourcc)
{
	for (size_t i = 0; i < sizeof formats / sizeof *formats; i++)
		if (formats[i] == fourcc)
			return true;
	return false;
}

/* A driver answers with what it can do nearest, so the answer is what counts. */
static int choose_format(struct video *v, const char *path, int width, int height, struct error *e)
{
	struct v4l2_format f;
	int r = -EINVAL;
	for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
		f = (struct v4l2_format){.type = V4L2_BUF_TYPE_VIDEO_CAPTURE};
		f.fmt.pix.width = (uint32_t)width;
		f.fmt.pix.height = (uint32_t)height;
		f.fmt.pix.pixelformat = formats[i];
		f.fmt.pix.field = V4L2_FIELD_NONE;
		r = call(v->fd, VIDIOC_S_FMT, &f);
		if (r == -EBUSY)
			return error_set(e, r, "%s: another program uses it: end that program", path);
		if (r == 0 && f.fmt.pix.pixelformat == formats[i])
			break;
	}
	if (r < 0 || !known(f.fmt.pix.pixelformat))
		return error_set(e, -ENOTSUP,
		                 "%s: it has no picture format that is read here: use another camera", path);
	if (f.fmt.pix.width > PLANE_SIDE_MAX || f.fmt.pix.height > PLANE_SIDE_MAX)
		return error_set(e, -EFBIG, "%s: its pictures are too large: set it to 1280x720", path);
	v->fourcc = f.fmt.pix.pixelformat;
	v->width = (int)f.fmt.pix.width;
	v->height = (int)f.fmt.pix.height;
	v->stride = (int)f.fmt.pix.bytesperline;
	return 0;
}

static int map_buffers(struct video *v, const char *path, struct error *e)
{
	struct v4l2_requestbuffers q = {
	    .count = VIDEO_BUFFERS_MAX, .type = V4L2_BUF_TYPE_VIDEO_CAPTURE, .memory = V4L2_MEMORY_MMAP};
	int r = call(v->fd, VIDIOC_REQBUFS, &q);
	for (unsigned i = 0; r == 0 && i < q.count && i < VIDEO_BUFFERS_MAX; i++) {
		struct v4l2_buffer b = {
		    .index = i, .type = V4L2_BUF_TYPE_VIDEO_CAPTURE, .memory = V4L2_MEMORY_MMAP};
		r = call(v->fd, VIDIOC_QUERYBUF, &b);
		if (r < 0)
			break;
		void *start = mmap(NULL, b.length, PROT_READ | PROT_WRITE, MAP_SHARED, v->fd, b.m.offset);
		if (start == MAP_FAILED) {
			r = -errno;
			break;
		}
		v->buffer[i].start = start;
		v->buffer[i].size = b.length;
		v->buffers++;
		r = call(v->fd, VIDIOC_QBUF, &b);
	}
	if (r == 0 && v->buffers == 0)
		r = -ENOMEM;
	return r < 0 ? error_set(e, r, "%s: it gives no memory for pictures: %s: plug it in again", path,
	                         strerror(-r))
	             : 0;
}

static int start(struct video *v, const char *path, struct error *e)
{
	int type = V4L2_BUF_TYPE_VIDEO_CAPTURE, r = call(v->fd, VIDIOC_STREAMON, &type);
	return r < 0 ? error_set(e, r, "%s: it does not start: %s: plug it in again", path, strerror(-r)) : 0;
}

int video_open(struct video *v, const char *path, int width, int height, struct error *e)
{
	*v = (struct video)VIDEO_CLOSED;
	v->fd = open(path, O_RDWR | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
	if (v->fd < 0)
		return error_set(e, -errno, "%s: it cannot be opened: %s: look at the camera and its plug",
		                 path, strerror(errno));
	int r = check_device(v->fd, path, e);
	if (r == 0)
		r = choose_format(v, path, width, height, e);
	if (r == 0)
		r = map_buffers(v, path, e);
	if (r == 0)
		r = start(v, path, e);
	if (r < 0)
		video_close(v);
	return r;
}

void video_close(struct video *v)
{
	for (unsigned i = 0; i < v->buffers; i++)
		munmap(v->buffer[i].start, v->buffer[i].size);
	if (v->fd >= 0)
		close(v->fd);
	*v = (struct video)VIDEO_CLOSED;
}

static size_t bytes_per_sample(uint32_t fourcc)
{
	return fourcc == V4L2_PIX_FMT_YUYV || fourcc == V4L2_PIX_FMT_UYVY ? 2 : 1;
}

int video_grey(const struct video *v, const uint8_t *frame, size_t size, struct plane *out)
{
	if (v->fourcc == V4L2_PIX_FMT_MJPEG || v->fourcc == V4L2_PIX_FMT_JPEG)
		return picture_jpeg(frame, size, out, NULL);
	if (!known(v->fourcc))
		return -ENOTSUP;
	size_t step = bytes_per_sample(v->fourcc), first = v->fourcc == V4L2_PIX_FMT_UYVY ? 1 : 0;
	size_t least = (size_t)v->width * step;
	size_t stride = (size_t)v->stride < least ? least : (size_t)v->stride;
	/* The brightness comes first in each of these formats; what colour follows is not needed. */
	if (size < stride * (size_t)(v->height - 1) + least)
		return -EBADMSG;
	int r = plane_resize(out, v->width, v->height);
	for (int y = 0; r == 0 && y < v->height; y++) {
		const uint8_t *from = frame + (size_t)y * stride + first;
		uint8_t *to = out->pixels + (size_t)y * (size_t)v->width;
		if (step == 1)
			memcpy(to, from, (size_t)v->width);
		for (int x = 0; step == 2 && x < v->width; x++)
			to[x] = from[2 * x];
	}
	return r;
}

static int lost(struct error *e, int r)
{
	return error_set(e, r, "the camera is lost: %s: look at the camera and its plug", strerror(-r));
}

/* Returns 1 with the newest filled buffer in `b`, 0 where there is none, or a negative errno. */
static int newest(struct video *v, struct v4l2_buffer *b)
{
	int have = 0;
	for (unsigned i = 0; i < v->buffers; i++) {
		struct v4l2_buffer next = {.type = V4L2_BUF_TYPE_VIDEO_CAPTURE, .memory = V4L2_MEMORY_MMAP};
		int r = call(v->fd, VIDIOC_DQBUF, &next);
		if (r == -EAGAIN)
			break;
		if (r < 0)
			return r;
		if (have && (r = call(v->fd, VIDIOC_QBUF, b)) < 0)
			return r;
		*b = next;
		have = 1;
	}
	return have;
}

int video_frame(struct video *v, int wait_ms, int also_fd, struct plane *out, struct error *e)
{
	struct pollfd p[2] = {{.fd = v->fd, .events = POLLIN}, {.fd = also_fd}};
	int r = poll(p, 2, wait_ms);
	if (r == 0 || (r < 0 && errno == EINTR) || p[1].revents)
		return 0;
	if (r < 0)
		return lost(e, -errno);
	struct v4l2_buffer b;
	r = newest(v, &b);
	if (r < 0)
		return lost(e, r);
	if (r == 0)
		return p[0].revents & (POLLERR | POLLHUP | POLLNVAL) ? lost(e, -ENODEV) : 0;
	size_t used = b.index < v->buffers ? v->buffer[b.index].size : 0;
	if (b.bytesused && b.bytesused < used)
		used = b.bytesused;
	bool good =
	    !(b.flags & V4L2_BUF_FLAG_ERROR) && video_grey(v, v->buffer[b.index].start, used, out) == 0;
	r = call(v->fd, VIDIOC_QBUF, &b);
	return r < 0 ? lost(e, r) : good;
}
