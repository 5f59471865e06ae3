/* Handheld scanners in keyboard mode: takes one event node for itself, and sends what was meant by the keys.
 */
#include <errno.h>
#include <fcntl.h>
#include <getopt.h>
#include <linux/input-event-codes.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"
#include "drivers/driver.h"
#include "drivers/handheld-device.h"
#include "drivers/handheld-meaning.h"
#include "drivers/handheld-typing.h"
#include "drivers/profile-learn.h"

/* A learning run ends so long after the first of the two end codes, and so long after its beginning whatever is read:
 * nothing of what a scanner reads meanwhile is counted. */
#define LEARN_END_MS 20000
#define LEARN_MAX_MS 120000

enum {
	OPTION_DEVICE = 256,
	OPTION_PROFILE,
	OPTION_LAYOUT,
	OPTION_LEARN,
	OPTION_RECORD,
	OPTION_EVENTS,
};

static const struct option options[] = {{"device", required_argument, NULL, OPTION_DEVICE},
                                        {"profile", required_argument, NULL, OPTION_PROFILE},
                                        {"layout", required_argument, NULL, OPTION_LAYOUT},
                                        {"learn", required_argument, NULL, OPTION_LEARN},
                                        {"record", required_argument, NULL, OPTION_RECORD},
                                        {"events", required_argument, NULL, OPTION_EVENTS},
                                        {0}};

struct handheld {
	/* borrowed from the command line, NULL where not given */
	const char *device_path, *profile_path, *learn_path, *record_path, *events_path;
	unsigned layouts;

	struct handheld_device *device;
	FILE *events;
	int record_fd, learn_fd;

	struct profile profile;
	struct keymaps maps;
	struct buf undecided;
	struct typing typing;
	bool told; /* why keys are being passed over */
	int64_t record_from_ms;

	struct learner learner;
	int ends_heard;
	bool cut_short; /* by a card, badge or digit: people are at work */
	int64_t learn_until_ms;

	struct meant meant;
};

static void *handheld_new(void)
{
	struct handheld *h = calloc(1, sizeof *h);
	if (h) {
		h->record_fd = h->learn_fd = -1;
		h->layouts = LAYOUT_ALL;
	}
	return h;
}

static void handheld_free(void *state)
{
	struct handheld *h = state;
	handheld_device_free(h->device);
	if (h->events)
		fclose(h->events);
	if (h->record_fd >= 0)
		close(h->record_fd);
	if (h->learn_fd >= 0)
		close(h->learn_fd);
	keymaps_deinit(&h->maps);
	buf_free(&h->undecided);
	free(h);
}

static int handheld_option(void *state, int val, const char *argument, struct error *e)
{
	struct handheld *h = state;
	int layout;
	switch (val) {
	case OPTION_DEVICE:
		h->device_path = argument;
		return 0;
	case OPTION_PROFILE:
		h->profile_path = argument;
		return 0;
	case OPTION_LEARN:
		h->learn_path = argument;
		return 0;
	case OPTION_RECORD:
		h->record_path = argument;
		return 0;
	case OPTION_EVENTS:
		h->events_path = argument;
		return 0;
	default: /* OPTION_LAYOUT */
		layout = layout_find(argument);
		if (layout < 0)
			return error_set(
			    e, -EINVAL,
			    "--layout %.20s: not known here: write one of us gb de fr ch es it se no "
			    "dk fi pt",
			    argument);
		h->layouts = LAYOUT_BIT(layout);
		return 0;
	}
}

static int open_profile(struct handheld *h, struct error *e)
{
	int r = -ENOENT;
	h->profile = profile_unknown(h->layouts);
	if (h->profile_path)
		r = profile_read(h->profile_path, &h->profile, e);
	if (r == -ENOENT) /* not learned yet */
		h->profile = profile_unknown(h->layouts);
	else if (r < 0)
		return r;
	r = keymaps_load(&h->maps, h->learn_path ? LAYOUT_ALL : h->profile.layouts, e);
	if (r < 0 || h->learn_path)
		return r;
	r = profile_undecided(&h->profile, &h->maps, &h->undecided);
	if (r > 0)
		r = buf_add_text(&h->undecided,
		                 ": scan the scanner-check sheet (bandtally label scanner-check)");
	return r < 0 ? error_set(e, r, "no memory: end other programs") : 0;
}

static int open_for_writing(const char *path, int flags, int *fd, struct error *e)
{
	if (!path)
		return 0;
	*fd = open(path, O_WRONLY | O_CREAT | O_CLOEXEC | flags, 0644);
	return *fd >= 0
	           ? 0
	           : error_set(e, -errno, "%s: cannot be written: %s: name a file in a folder that exists",
	                       path, strerror(errno));
}

static int open_input(struct handheld *h, struct error *e)
{
	if (h->device_path)
		return handheld_device_open(h->device_path, &h->device, e);
	h->events = fopen(h->events_path, "re");
	return h->events ? 0
	                 : error_set(e, -errno, "%s: cannot be opened: %s: name a recording that exists",
	                             h->events_path, strerror(errno));
}

static int handheld_open(void *state, int count, char *const *words, struct error *e)
{
	struct handheld *h = state;
	if (count != 0 || !h->device_path == !h->events_path) {
		error_set(
		    e, -EINVAL,
		    "%s: one scanner is read at a time: give --device /dev/input/eventN or --events FILE",
		    count ? words[0] : "scanner");
		return DRIVER_USAGE;
	}
	int r = open_input(h, e);
	if (r == 0)
		r = open_profile(h, e);
	if (r == 0)
		r = open_for_writing(h->record_path, O_TRUNC, &h->record_fd, e);
	/* The old profile stays until there is a new one; there is no fsync() inside the sandbox. */
	if (r == 0)
		r = open_for_writing(h->learn_path, O_DSYNC, &h->learn_fd, e);
	return r;
}

static const char *handheld_name(const void *state)
{
	const struct handheld *h = state;
	return h->device_path ? h->device_path : h->events_path;
}

static const char *handheld_uncertain(const void *state)
{
	const struct handheld *h = state;
	return h->undecided.size ? h->undecided.data : NULL;
}

/* Faults: `code` and a sentence; the data themselves are never in it, for they may be a patient's. */
static int fault(struct wire *out, const char *code, const char *format, size_t keys, const char *why)
{
	char text[WIRE_TEXT_MAX + 1];
	snprintf(text, sizeof text, "%zu key%s %s: %s", keys, keys == 1 ? "" : "s", format, why);
	return wire_fault(out, code, text);
}

static int send_code(struct handheld *h, struct wire *out)
{
	char text[WIRE_TEXT_MAX + 1];
	struct typing *t = &h->typing;
	if (t->count > TYPING_STROKES_MAX)
		return fault(out, "too-long", "came without an end", t->count,
		             "more than any code that can be sent: use a shorter code");
	if (!meaning_read(&h->profile, &h->maps, t->strokes, t->count, &h->meant)) {
		snprintf(text, sizeof text,
		         "a code of %zu keys was not sent: %.300s: scan the scanner-check sheet, or key the "
		         "code in",
		         t->count, h->meant.why);
		return wire_fault(out, "uncertain", text);
	}
	return wire_scan(
	    out, &(struct wire_scan){
	             .aim = h->meant.aim, .data = h->meant.text, .size = h->meant.size, .ms = t->last_ms});
}

static int learn_code(struct handheld *h, struct wire *out)
{
	struct typing *t = &h->typing;
	switch (learner_add(&h->learner, &h->maps, t->strokes, t->count, t->longest_ms)) {
	case LEARNER_END:
		h->ends_heard++;
		if (t->last_ms + LEARN_END_MS < h->learn_until_ms)
			h->learn_until_ms = t->last_ms + LEARN_END_MS;
		return 0;
	case LEARNER_BEGIN:
		log_line("scanner check: begun");
		return 0;
	case LEARNER_OTHER:
		return 0;
	case LEARNER_OURS:
		break;
	}
	h->cut_short = true;
	return wire_scan(
	    out, &(struct wire_scan){
	             .aim = "", .data = h->learner.ours, .size = strlen(h->learner.ours), .ms = t->last_ms});
}

/* What the machine that finds beginnings and ends has to say. */
static int deal_with(struct handheld *h, enum typing_result what, struct wire *out)
{
	struct typing *t = &h->typing;
	int r = 0;
	switch (what) {
	case TYPING_NOTHING:
		return 0;
	case TYPING_CODE:
		r = h->learn_path ? learn_code(h, out) : send_code(h, out);
		break;
	case TYPING_PARTIAL:
		r = h->profile.end == TYPING_END_UNKNOWN
		        ? fault(
		              out, "uncertain", "came without an ending key and were thrown away", t->count,
		              "it is not known whether this scanner sends one: scan the scanner-check sheet")
		        : fault(out, "partial", "came without their end and were thrown away", t->count,
		                "the code was cut off: scan it again");
		break;
	case TYPING_SKIPPED:
		if (!h->told)
			r = fault(out, "partial",
			          "were under way when the scanner was opened, and were ignored", t->skipped,
			          "they are the end of a code: scan it again");
		h->told = false;
		t->skipped = 0;
		break;
	}
	typing_clear(t);
	return r < 0 ? r : 0;
}

static int lost_events(struct handheld *h, int64_t now_ms, struct wire *out)
{
	char text[WIRE_TEXT_MAX + 1];
	size_t keys = typing_lost(&h->typing, now_ms);
	h->told = true;
	snprintf(text, sizeof text,
	         "keys were lost, because the system was too slow to take them: the code (%zu keys of it had "
	         "come) "
	         "was thrown away: scan it again",
	         keys);
	return wire_fault(out, "dropped", text);
}

static int take_event(struct handheld *h, const struct key_event *event, struct wire *out)
{
	if (event->type == EV_SYN && event->code == SYN_DROPPED)
		return lost_events(h, event->ms, out);
	if (event->type != EV_KEY)
		return 0;
	int r = deal_with(h, typing_tick(&h->typing, event->ms), out);
	return r < 0 ? r : deal_with(h, typing_key(&h->typing, event->code, event->value, event->ms), out);
}

static int record(struct handheld *h, struct key_event event)
{
	if (h->record_fd < 0)
		return 0;
	if (h->record_from_ms == 0)
		h->record_from_ms = event.ms;
	event.ms -= h->record_from_ms;
	return key_event_write(h->record_fd, &event);
}

/* Everything that is there now. */
static int read_device(struct handheld *h, struct wire *out, struct error *e)
{
	struct key_event event;
	int r;
	while ((r = handheld_device_next(h->device, &event)) > 0) {
		if (r == HANDHELD_LOST)
			event = (struct key_event){clock_now().boot_ms, EV_SYN, SYN_DROPPED, 0};
		int written = record(h, event);
		if (written < 0)
			return error_set(e, written, "%s: cannot be written: %s: make room", h->record_path,
			                 strerror(-written));
		written = take_event(h, &event, out);
		if (written < 0)
			return written;
	}
	return r;
}

static int gone(struct handheld *h, int r, struct wire *out, struct error *e)
{
	size_t keys = typing_pending(&h->typing);
	if (keys > 0)
		fault(out, "partial", "of a code were thrown away", keys,
		      "the scanner was unplugged in the middle of it: scan it again");
	return error_set(e, r, "%s: the scanner has gone: %s: plug it in again", h->device_path,
	                 strerror(-r));
}

static int wait_ms(const struct handheld *h, int64_t now_ms)
{
	int64_t due_ms = typing_due_ms(&h->typing);
	if (h->learn_path && (due_ms < 0 || h->learn_until_ms < due_ms))
		due_ms = h->learn_until_ms;
	if (due_ms < 0)
		return -1;
	return due_ms > now_ms ? (int)(due_ms - now_ms) : 0;
}

static bool learning_ended(const struct handheld *h, int64_t now_ms)
{
	return h->learn_path && (h->cut_short || h->ends_heard >= 2 || now_ms >= h->learn_until_ms);
}

static int follow_device(struct handheld *h, struct wire *out, struct error *e)
{
	struct pollfd fds[] = {{.fd = handheld_device_fd(h->device), .events = POLLIN}, {.fd = out->fd}};
	int r = 0;
	while (r >= 0 && !learning_ended(h, clock_now().boot_ms)) {
		if (poll(fds, 2, wait_ms(h, clock_now().boot_ms)) < 0 && errno != EINTR)
			return error_set(e, -errno, "%s: cannot be waited for: %s: plug it in again",
			                 h->device_path, strerror(errno));
		if (fds[1].revents)
			return -EPIPE;
		if (fds[0].revents)
			r = read_device(h, out, e);
		if (r == -EPIPE || (r < 0 && e->code == r))
			return r;
		if (r == 0 && (fds[0].revents & (POLLERR | POLLHUP | POLLNVAL)))
			r = -ENODEV;
		if (r < 0)
			return gone(h, r, out, e);
		r = deal_with(h, typing_tick(&h->typing, clock_now().boot_ms), out);
	}
	return r;
}

static void free_text(char **text)
{
	free(*text);
}

/* A recording is played as fast as it can be read: its own times are the clock. */
static int follow_events(struct handheld *h, struct wire *out, struct error *e)
{
	_cleanup_(free_text) char *line = NULL;
	size_t room = 0;
	ssize_t n;
	int64_t last_ms = 0;
	int r = 0;
	for (unsigned number = 1; r >= 0 && (n = getline(&line, &room, h->events)) >= 0; number++) {
		struct key_event event;
		struct error why = {0};
		if (n > 0 && line[n - 1] == '\n')
			line[n - 1] = '\0';
		r = key_event_read(line, last_ms, &event, &why);
		if (r < 0)
			return error_set(e, r, "%s line %u: %s", h->events_path, number, why.text);
		if (r > 0)
			continue;
		last_ms = event.ms;
		r = take_event(h, &event, out);
		if (learning_ended(h, last_ms))
			return r;
	}
	return r < 0 ? r : deal_with(h, typing_tick(&h->typing, INT64_MAX), out);
}

/* One write on a file opened with O_DSYNC; what a longer profile left behind becomes empty lines. */
static int store_profile(struct handheld *h, const struct profile *p, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	struct stat old;
	int r = profile_write(p, &text);
	if (r == 0 && fstat(h->learn_fd, &old) < 0)
		r = -errno;
	while (r == 0 && old.st_size > 0 && text.size < (size_t)old.st_size)
		r = buf_add_text(&text, "\n");
	if (r == 0 && write(h->learn_fd, text.data, text.size) != (ssize_t)text.size)
		r = -EIO;
	return r == 0 ? 0
	              : error_set(e, r, "%s: the profile was not written: %s: scan the sheet again",
	                          h->learn_path, strerror(-r));
}

static int say_learned(struct handheld *h, const struct profile *p, struct wire *out)
{
	_cleanup_(buf_free) struct buf words = {0}, undecided = {0}, still = {0};
	int open = profile_undecided(p, &h->maps, &undecided);
	int r = open < 0 ? open : profile_describe(p, &words);
	if (r == 0 && open > 0)
		r = buf_printf(&still,
		               "undecided: %s: set the scanner up by its manual and scan the sheet again",
		               undecided.data);
	if (r == 0 && open > 0)
		r = buf_printf(&words, "; %s", still.data);
	if (r == 0)
		r = wire_fault_uncertain(out, open ? "uncertain" : "learned", words.data, still.data);
	return r;
}

static int learned(struct handheld *h, struct wire *out, struct error *e)
{
	struct profile p;
	size_t keys = typing_pending(&h->typing);
	if (keys > 0)
		fault(out, "partial", "of a code were thrown away", keys,
		      "the time for the scanner check was over: scan it again");
	int r =
	    h->cut_short
	        ? error_set(e, -ECANCELED,
	                    "nothing was learned: a card, badge or digit ended the check and was entered: "
	                    "scan the sheet again from 1 downwards when nobody counts")
	        : learner_result(&h->learner, &h->maps, &p, e);
	if (r == 0)
		r = store_profile(h, &p, e);
	if (r < 0) {
		/* Not the device is lost, so main.c's word for it would be the wrong one. */
		wire_fault(out, "uncertain", e->text);
		log_warn(LOG_SCANNER, "%s", e->text);
		return DRIVER_FAULTS;
	}
	return say_learned(h, &p, out);
}

static int handheld_run(void *state, struct wire *out, struct error *e)
{
	struct handheld *h = state;
	int64_t now_ms = h->device ? clock_now().boot_ms : 0;
	if (h->learn_path)
		typing_init(&h->typing, TYPING_END_RAW, LEARN_GAP_MS, now_ms, h->device != NULL);
	else
		typing_init(&h->typing, h->profile.end, h->profile.gap_ms, now_ms, h->device != NULL);
	h->learn_until_ms = now_ms + LEARN_MAX_MS;
	int r = h->device ? follow_device(h, out, e) : follow_events(h, out, e);
	return r >= 0 && h->learn_path ? learned(h, out, e) : r;
}

const struct driver this_driver = {
    .name = "handheld",
    .usage = "--device /dev/input/eventN [--profile FILE | --layout NAME] [--learn FILE] [--record FILE]\n"
             "       scan-handheld --events FILE [--profile FILE | --layout NAME] [--learn FILE]\n"
             "Reads one scanner in keyboard mode and keeps its keys from everything else on the machine.\n"
             "  --device PATH    the scanner's event node\n"
             "  --profile FILE   how this scanner sends (absent: nothing is known, and what would have to be "
             "guessed "
             "is not sent)\n"
             "  --layout NAME    without a profile: the layout it is set to (us gb de fr ch es it se no dk "
             "fi pt)\n"
             "  --learn FILE     learn from one pass over the scanner-check sheet, write FILE, and end\n"
             "  --record FILE    write down every event, for --events\n"
             "  --events FILE    read a recording instead of a device, as fast as it can be read\n"
             "example: scan-handheld --device /dev/input/event5 --layout de\n",
    .options = options,
    .ioctl_type = 'E',
    .new = handheld_new,
    .free = handheld_free,
    .option = handheld_option,
    .open = handheld_open,
    .device = handheld_name,
    .uncertain = handheld_uncertain,
    .run = handheld_run,
};
