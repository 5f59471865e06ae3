#include "drivers/handheld-device.h"

#include <errno.h>
#include <fcntl.h>
#include <libevdev/libevdev.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "base/clock.h"

struct handheld_device {
	int fd;
	struct libevdev *evdev;
	bool kernel_times; /* events carry CLOCK_BOOTTIME */
};

static void drain(int fd)
{
	struct input_event events[64];
	while (read(fd, events, sizeof events) > 0)
		;
}

/* Caps Lock of some other keyboard lights this device's lamp as well, and many scanners turn letters round
 * when they see it lit. Not every device has lamps: no matter. */
static void lamp_off(struct handheld_device *d)
{
	if (libevdev_has_event_code(d->evdev, EV_LED, LED_CAPSL))
		libevdev_kernel_set_led_value(d->evdev, LED_CAPSL, LIBEVDEV_LED_OFF);
}

static int grab(struct handheld_device *d, const char *path, struct error *e)
{
	if (ioctl(d->fd, EVIOCGRAB, 1) < 0) {
		int r = -errno;
		if (r == -EBUSY)
			return error_set(
			    e, r,
			    "%s: cannot be taken: another program has grabbed it: end that program "
			    "(fuser %s names it)",
			    path, path);
		return error_set(e, r, "%s: cannot be taken: %s: name a scanner's /dev/input/eventN", path,
		                 strerror(-r));
	}
	/* Another clock makes the kernel throw away what waits, and say that events were dropped: first,
	 * then. */
	int clock = CLOCK_BOOTTIME;
	d->kernel_times = ioctl(d->fd, EVIOCSCLOCKID, &clock) == 0;
	drain(d->fd);
	int r = libevdev_new_from_fd(d->fd, &d->evdev);
	if (r < 0)
		return error_set(e, r, "%s: does not answer as an input device: %s: plug it in again", path,
		                 strerror(-r));
	lamp_off(d);
	return 0;
}

int handheld_device_open(const char *path, struct handheld_device **out, struct error *e)
{
	struct handheld_device *d = calloc(1, sizeof *d);
	int r;
	if (!d)
		return error_set(e, -ENOMEM, "%s: no memory: end other programs", path);
	/* Writing is for the lamps only. EPERM: a unit's DeviceAllow that grants reading alone. */
	d->fd = open(path, O_RDWR | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
	if (d->fd < 0 && (errno == EACCES || errno == EROFS || errno == EPERM))
		d->fd = open(path, O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
	if (d->fd < 0)
		r = error_set(e, -errno,
		              "%s: cannot be opened: %s: is the scanner plugged in, and may this user "
		              "read it (config/udev)?",
		              path, strerror(errno));
	else
		r = grab(d, path, e);
	if (r < 0) {
		handheld_device_free(d);
		return r;
	}
	*out = d;
	return 0;
}

void handheld_device_free(struct handheld_device *d)
{
	if (!d)
		return;
	libevdev_free(d->evdev);
	if (d->fd >= 0)
		close(d->fd);
	free(d);
}

int handheld_device_fd(const struct handheld_device *d)
{
	return d->fd;
}

/* libevdev gives the difference between what it knew and what the kernel says; none of it was typed. */
static int resynchronise(struct handheld_device *d)
{
	struct input_event event;
	int r;
	do
		r = libevdev_next_event(d->evdev, LIBEVDEV_READ_FLAG_SYNC, &event);
	while (r == LIBEVDEV_READ_STATUS_SYNC);
	return r == -EAGAIN || r == LIBEVDEV_READ_STATUS_SUCCESS ? HANDHELD_LOST : r;
}

int handheld_device_next(struct handheld_device *d, struct key_event *out)
{
	struct input_event event;
	int r = libevdev_next_event(d->evdev, LIBEVDEV_READ_FLAG_NORMAL, &event);
	if (r == -EAGAIN)
		return 0;
	if (r == LIBEVDEV_READ_STATUS_SYNC)
		return resynchronise(d);
	if (r < 0)
		return r;
	if (event.type == EV_LED && event.code == LED_CAPSL && event.value)
		lamp_off(d);
	int64_t ms = (int64_t)event.input_event_sec * 1000 + event.input_event_usec / 1000;
	*out = (struct key_event){.ms = d->kernel_times && ms > 0 ? ms : clock_now().boot_ms,
	                          .type = event.type,
	                          .code = event.code,
	                          .value = event.value};
	return HANDHELD_EVENT;
}
