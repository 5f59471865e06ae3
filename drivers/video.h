/* Grey frames from a V4L2 capture device.
 *
 * Written against the kernel's interface (linux/videodev2.h) instead of a library's: the device is opened and
 * its buffers are mapped before the sandbox, afterwards only ioctl() of type 'V' on the open device is
 * needed, and each way in which a camera goes away has its own sentence. Frames may come as grey, planar or
 * packed YUV, or JPEG; the brightness is taken as it is.
 */
#ifndef BANDTALLY_DRIVERS_VIDEO_H
#define BANDTALLY_DRIVERS_VIDEO_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/error.h"
#include "drivers/plane.h"

#define VIDEO_BUFFERS_MAX 4

struct video {
	int fd; /* -1 while closed */
	uint32_t fourcc;
	int width, height, stride; /* of the device's frames, which the device chose; stride in bytes */
	struct {
		uint8_t *start;
		size_t size;
	} buffer[VIDEO_BUFFERS_MAX];
	unsigned buffers;
};

#define VIDEO_CLOSED                                                                                         \
	{                                                                                                    \
		.fd = -1                                                                                     \
	}

/* Opens the device and starts it, asking for about `width` x `height`. 0, or a negative errno with `e`. */
int video_open(struct video *v, const char *path, int width, int height, struct error *e);
void video_close(struct video *v);

/* Waits at most `wait_ms` for a frame, throws away all but the newest, and writes it to `out`. 1 a frame, 0
 * none (nothing came, or it was damaged), or a negative errno with `e` filled: the device is lost. `also_fd`
 * is watched meanwhile, and a hang-up there ends the wait with 0. */
int video_frame(struct video *v, int wait_ms, int also_fd, struct plane *out, struct error *e);

/* The grey plane of a raw frame of `size` bytes; `width`, `height`, `stride` and `fourcc` as in struct video.
 * 0, -EBADMSG where it is too short or damaged, -ENOTSUP for another fourcc, or as plane_resize(). */
int video_grey(const struct video *v, const uint8_t *frame, size_t size, struct plane *out);

#endif
