/* Codes before a camera, or in pictures. */
#include <errno.h>
#include <fcntl.h>
#include <getopt.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"
#include "drivers/driver.h"
#include "drivers/eyes.h"
#include "drivers/picture.h"
#include "drivers/show.h"
#include "drivers/sight.h"
#include "drivers/steady.h"
#include "drivers/video.h"

#define FRAME_WIDTH 1280
#define FRAME_HEIGHT 720
/* A camera that gives no picture for this long is lost, whatever it says. */
#define SILENCE_MAX_MS 5000
/* What the witnesses said in so many frames is weighed together: one may read a frame that the other cannot.
 */
#define FRAMES_TOGETHER 4
/* Cards that are apart for less than this are the same two. */
#define ASKED_FOR_ONE_MS 3000
/* Descriptors that stay for the process itself. */
#define DESCRIPTORS_KEPT 16

enum {
	OPTION_DEVICE = 256,
	OPTION_IMAGE,
	OPTION_ALSO,
	OPTION_FRAMES,
	OPTION_AWAY,
};

static const struct option options[] = {
    {"device", required_argument, NULL, OPTION_DEVICE}, {"image", no_argument, NULL, OPTION_IMAGE},
    {"also", required_argument, NULL, OPTION_ALSO},     {"frames", required_argument, NULL, OPTION_FRAMES},
    {"away", required_argument, NULL, OPTION_AWAY},     {0}};

static const struct {
	const char *name;
	enum symbology symbology;
	size_t least; /* a shorter code is as likely to be no code at all */
} extras[] = {
    {"itf", SYMBOLOGY_ITF, 6},
    {"code39", SYMBOLOGY_CODE39, 4},
    {"codabar", SYMBOLOGY_CODABAR, 6},
    {"databar", SYMBOLOGY_DATABAR, 16},
    {"databar-expanded", SYMBOLOGY_DATABAR_EXPANDED, 16},
};

struct picture_file {
	const char *path; /* borrowed from the command line */
	int fd;           /* -1 where it could not be opened */
	int error;        /* then why, a negative errno */
};

struct camera {
	const char *path; /* of the device; NULL with --image */
	bool image;
	symbology_set wanted;
	struct witness_rules rules;
	struct steady_rules steady_rules;

	struct picture_file *file; /* `files` of them */
	size_t files;
	struct video video;

	struct eyes *eyes;
	struct plane picture;
	struct readings together; /* of one picture, or of the last frames */
	struct readings frame[FRAMES_TOGETHER];
	struct steady steady;
	struct sight sight;
	struct show show;
	int64_t two_ms; /* when two cards were last in view together, 0 never */
};

static void *camera_new(void)
{
	struct camera *c = calloc(1, sizeof *c);
	if (!c)
		return NULL;
	c->video = (struct video)VIDEO_CLOSED;
	c->wanted = SYMBOLOGIES_USUAL;
	c->steady_rules = (struct steady_rules){.frames = 3, .away_ms = 1500, .still_px = FRAME_WIDTH / 40};
	return c;
}

static void camera_free(void *state)
{
	struct camera *c = state;
	for (size_t i = 0; i < c->files; i++)
		if (c->file[i].fd >= 0)
			close(c->file[i].fd);
	free(c->file);
	video_close(&c->video);
	eyes_free(c->eyes);
	plane_free(&c->picture);
	show_free(&c->show);
	free(c);
}

static int take_number(const char *name, const char *argument, long least, long most, long *out,
                       struct error *e)
{
	char *end;
	errno = 0;
	*out = strtol(argument, &end, 10);
	if (end == argument || *end || errno || *out < least || *out > most)
		return error_set(e, -EINVAL, "%s %.60s: no number from %ld to %ld: write one", name, argument,
		                 least, most);
	return 0;
}

static int take_extra(struct camera *c, const char *argument, struct error *e)
{
	size_t name = strcspn(argument, ":");
	for (size_t i = 0; i < sizeof extras / sizeof *extras; i++) {
		if (strlen(extras[i].name) != name || strncmp(extras[i].name, argument, name) != 0)
			continue;
		long least = 0;
		int r = take_number("--also", argument[name] ? argument + name + 1 : "",
		                    (long)extras[i].least, READING_DATA_MAX, &least, e);
		c->wanted |= SYMBOLOGY_BIT(extras[i].symbology);
		c->rules.least[extras[i].symbology] = (size_t)least;
		return r;
	}
	return error_set(
	    e, -EINVAL,
	    "--also %.60s: no such symbology: write itf, code39, codabar, databar or databar-expanded, "
	    "a colon and the least length",
	    argument);
}

static int camera_option(void *state, int val, const char *argument, struct error *e)
{
	struct camera *c = state;
	long n = 0;
	int r = 0;
	switch (val) {
	case OPTION_DEVICE:
		c->path = argument;
		break;
	case OPTION_IMAGE:
		c->image = true;
		break;
	case OPTION_ALSO:
		r = take_extra(c, argument, e);
		break;
	case OPTION_FRAMES:
		r = take_number("--frames", argument, 1, 100, &n, e);
		c->steady_rules.frames = (int)n;
		break;
	case OPTION_AWAY:
		r = take_number("--away", argument, 100, 60000, &n, e);
		c->steady_rules.away_ms = n;
		break;
	}
	return r;
}

static int open_file(struct picture_file *f, const char *path)
{
	struct stat st;
	f->path = path;
	/* Not to wait for a writer where the name is a pipe's. */
	f->fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
	if (f->fd < 0) {
		f->error = -errno;
		return f->error == -EMFILE || f->error == -ENFILE ? f->error : 0;
	}
	if (fstat(f->fd, &st) == 0 && !S_ISREG(st.st_mode)) {
		f->error = S_ISDIR(st.st_mode) ? -EISDIR : -EINVAL;
		close(f->fd);
		f->fd = -1;
	}
	return 0;
}

/* All are opened before the sandbox closes, so that no picture can open another file. */
static int open_files(struct camera *c, size_t count, char *const *words, struct error *e)
{
	struct rlimit l;
	if (getrlimit(RLIMIT_NOFILE, &l) == 0 && l.rlim_cur < count + DESCRIPTORS_KEPT) {
		l.rlim_cur = l.rlim_max < count + DESCRIPTORS_KEPT ? l.rlim_max : count + DESCRIPTORS_KEPT;
		setrlimit(RLIMIT_NOFILE, &l);
	}
	c->file = calloc(count, sizeof *c->file);
	if (!c->file)
		return error_set(e, -ENOMEM, "no memory for %zu pictures: name fewer at once", count);
	for (size_t i = 0; i < count; i++) {
		int r = open_file(&c->file[c->files++], words[i]);
		if (r < 0)
			return error_set(e, r, "%zu pictures: too many to open at once: name fewer at once",
			                 count);
	}
	return 0;
}

static int camera_open(void *state, int count, char *const *words, struct error *e)
{
	struct camera *c = state;
	if (!c->image == !c->path || (c->image && count == 0) || (!c->image && count > 0)) {
		error_set(e, -EINVAL,
		          "it is not clear what to read: use either --device PATH or --image FILE…");
		return DRIVER_USAGE;
	}
	int r = show_listen();
	if (r < 0)
		return error_set(e, r, "the station's signals cannot be heard: %s: start the driver again",
		                 strerror(-r));
	c->eyes = eyes_new(c->wanted);
	if (!c->eyes)
		return error_set(e, -ENOMEM, "no memory for the decoders: end other programs");
	if (c->image)
		return open_files(c, (size_t)count, words, e);
	return video_open(&c->video, c->path, FRAME_WIDTH, FRAME_HEIGHT, e);
}

static const char *camera_device(const void *state)
{
	const struct camera *c = state;
	return c->image ? "pictures" : c->path;
}

/* `ms`: when the frame was taken, which is earlier than it was read; 0 for a picture in a file. */
static int send_codes(struct wire *out, const struct codes *codes, const char *file, int64_t ms,
                      struct error *e)
{
	for (size_t i = 0; i < codes->count; i++) {
		const struct reading *r = codes->item[i];
		struct wire_scan scan = {
		    .aim = r->aim, .data = r->data, .size = r->size, .file = file, .ms = ms};
		int status = wire_scan(out, &scan);
		if (status < 0)
			return error_set(e, status, "a code was not sent: %s: start the driver again",
			                 strerror(-status));
	}
	return 0;
}

static int load(struct camera *c, const struct picture_file *f, struct error *e)
{
	if (f->fd < 0)
		return error_set(e, f->error, "%.200s: it cannot be read: %s: name a picture", f->path,
		                 strerror(-f->error));
	return picture_read(f->fd, f->path, &c->picture, e);
}

/* 0, DRIVER_FAULTS where this file is no picture, or a negative errno. */
static int read_file(struct camera *c, const struct picture_file *f, struct wire *out, struct error *e)
{
	struct error why;
	struct codes codes;
	int r = load(c, f, &why);
	if (r < 0) {
		log_line("%s", why.text);
		r = wire_fault(out, "unreadable", why.text);
		return r < 0
		           ? error_set(e, r, "a fault was not sent: %s: start the driver again", strerror(-r))
		           : DRIVER_FAULTS;
	}
	c->together.count = 0;
	for (int view = 0; view < VIEW_COUNT; view++) {
		r = eyes_look(c->eyes, &c->picture, (enum view)view, CARE_THOROUGH, &c->together);
		if (r < 0)
			return error_set(e, r, "%.200s: no memory to read it: make the picture smaller",
			                 f->path);
	}
	witness_judge(&c->together, &c->rules, &codes);
	if (codes.count == 0)
		log_line("%s: no code was read", f->path);
	return send_codes(out, &codes, f->path, 0, e);
}

static int read_files(struct camera *c, struct wire *out, struct error *e)
{
	int result = 0;
	for (size_t i = 0; i < c->files; i++) {
		int r = read_file(c, &c->file[i], out, e);
		if (r < 0)
			return r;
		if (r == DRIVER_FAULTS)
			result = DRIVER_FAULTS;
	}
	return result;
}

static int look_at_frame(struct camera *c, unsigned long number, struct codes *codes)
{
	struct readings *now = &c->frame[number % FRAMES_TOGETHER];
	now->count = 0;
	int r = eyes_watch(c->eyes, &c->picture, number, c->together.count > 0, now);
	c->together.count = 0;
	for (size_t i = 0; i < FRAMES_TOGETHER; i++)
		readings_add_all(&c->together, &c->frame[i]);
	witness_judge(&c->together, &c->rules, codes);
	return r;
}

/* A code that the last frames agree on, but that is no longer in this one, is not in view now. */
static void only_in_view(const struct readings *now, struct codes *codes)
{
	size_t kept = 0;
	for (size_t i = 0; i < codes->count; i++)
		for (size_t k = 0; k < now->count; k++)
			if (reading_same_code(codes->item[i], &now->item[k])) {
				codes->item[kept++] = codes->item[i];
				break;
			}
	codes->count = kept;
}

/* Once for each time that two are shown together. */
static int ask_for_one(struct camera *c, struct wire *out, int64_t now_ms, struct error *e)
{
	bool anew = c->steady.two_cards && (!c->two_ms || now_ms - c->two_ms > ASKED_FOR_ONE_MS);
	if (c->steady.two_cards)
		c->two_ms = now_ms;
	int r = anew ? wire_fault(out, "two-cards",
	                          "two cards are in view and neither is entered: show one alone")
	             : 0;
	return r < 0 ? error_set(e, r, "a fault was not sent: %s: start the driver again", strerror(-r)) : 0;
}

/* Whether it sees at all, when that has changed. */
static int tell_sight(struct camera *c, struct wire *out, int64_t now_ms, struct error *e)
{
	if (!sight_frame(&c->sight, &c->picture, now_ms))
		return 0;
	int r = wire_fault(out, sight_word(c->sight.told), sight_text(c->sight.told));
	return r < 0 ? error_set(e, r, "a fault was not sent: %s: start the driver again", strerror(-r)) : 0;
}

static int watch(struct camera *c, struct wire *out, struct error *e)
{
	int64_t picture_ms = clock_now().boot_ms;
	for (unsigned long number = 0; !wire_reader_gone(out);) {
		int r = video_frame(&c->video, 500, out->fd, &c->picture, e);
		int64_t now_ms = clock_now().boot_ms;
		if (r == 0 && now_ms - picture_ms > SILENCE_MAX_MS)
			return error_set(e, -ETIMEDOUT,
			                 "%s: no picture for %d seconds: pull the camera's plug and plug it "
			                 "in again",
			                 c->path, SILENCE_MAX_MS / 1000);
		if (r < 0)
			return r;
		if (r == 0)
			continue;
		struct codes codes, tell;
		picture_ms = now_ms;
		r = look_at_frame(c, number, &codes);
		if (r < 0)
			return error_set(e, r, "%s: no memory to read a picture: end other programs",
			                 c->path);
		only_in_view(&c->frame[number % FRAMES_TOGETHER], &codes);
		steady_frame(&c->steady, &c->steady_rules, &codes, now_ms, &tell);
		r = tell_sight(c, out, now_ms, e);
		if (r == 0)
			r = ask_for_one(c, out, now_ms, e);
		if (r == 0)
			r = send_codes(out, &tell, NULL, now_ms, e);
		if (r == 0 && (r = show_frame(&c->show, out, &c->picture, &c->steady, now_ms)) < 0)
			error_set(e, r, "a picture was not sent: %s: start the driver again", strerror(-r));
		if (r < 0)
			return r;
		number++;
	}
	return 0;
}

static int camera_run(void *state, struct wire *out, struct error *e)
{
	struct camera *c = state;
	return c->image ? read_files(c, out, e) : watch(c, out, e);
}

const struct driver this_driver = {
    .name = "camera",
    .usage =
        "--device PATH [--frames N] [--away MS] [--also NAME:LEAST]…\n"
        "       scan-camera --image FILE… [--also NAME:LEAST]…\n"
        "Reads EAN-13, UPC, EAN-8, Code 128, QR and Data Matrix codes and writes driver lines.\n"
        "  --device PATH      watch this V4L2 camera (/dev/video0) until it is lost\n"
        "  --image FILE…      read these pictures (PNG, JPEG, raw PGM) instead; a picture without a\n"
        "                     code is no error, one that cannot be read is a fault line and exit code 1\n"
        "  --frames N         a code must stand still in N frames to be a scan (3)\n"
        "  --away MS          a code that was out of view so long is a new scan (1500)\n"
        "  --also NAME:LEAST  read this symbology too, when both decoders agree, from LEAST characters:\n"
        "                     itf, code39, codabar, databar, databar-expanded. They give false codes\n"
        "                     more easily; a damaged databar can end the driver, which is then restarted\n"
        "example: scan-camera --image slip.png --also itf:14\n",
    .options = options,
    .ioctl_type = 'V',
    .pictures = true,
    .new = camera_new,
    .free = camera_free,
    .option = camera_option,
    .open = camera_open,
    .device = camera_device,
    .run = camera_run,
};
