/* Scanners on a serial line or a USB one that behaves like it (ttyACM, ttyUSB): bytes as they are, GS
 * included. */
#include <errno.h>
#include <fcntl.h>
#include <getopt.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <termios.h>
#include <unistd.h>

#include "base/clock.h"
#include "drivers/driver.h"
#include "drivers/serial-line.h"

enum {
	OPTION_DEVICE = 256,
	OPTION_BAUD,
	OPTION_BITS,
	OPTION_PARITY,
	OPTION_STOP,
	OPTION_PREFIX,
	OPTION_SUFFIX,
};

static const struct option options[] = {
    {"device", required_argument, NULL, OPTION_DEVICE}, {"baud", required_argument, NULL, OPTION_BAUD},
    {"bits", required_argument, NULL, OPTION_BITS},     {"parity", required_argument, NULL, OPTION_PARITY},
    {"stop", required_argument, NULL, OPTION_STOP},     {"prefix", required_argument, NULL, OPTION_PREFIX},
    {"suffix", required_argument, NULL, OPTION_SUFFIX}, {0}};

struct serial {
	const char *path; /* borrowed from the command line */
	int fd;
	speed_t speed;
	tcflag_t frame; /* CS7 CS8 PARENB PARODD CSTOPB */
	struct serial_line line;
};

static void *serial_new(void)
{
	struct serial *s = calloc(1, sizeof *s);
	if (s) {
		s->fd = -1;
		s->speed = B9600;
		s->frame = CS8;
	}
	return s;
}

static void serial_free(void *state)
{
	struct serial *s = state;
	if (s->fd >= 0)
		close(s->fd);
	free(s);
}

static int take_speed(struct serial *s, const char *argument, struct error *e)
{
	static const struct {
		const char *text;
		speed_t speed;
	} speeds[] = {{"300", B300},      {"600", B600},       {"1200", B1200},     {"2400", B2400},
	              {"4800", B4800},    {"9600", B9600},     {"19200", B19200},   {"38400", B38400},
	              {"57600", B57600},  {"115200", B115200}, {"230400", B230400}, {"460800", B460800},
	              {"921600", B921600}};
	for (size_t i = 0; i < sizeof speeds / sizeof *speeds; i++)
		if (strcmp(speeds[i].text, argument) == 0) {
			s->speed = speeds[i].speed;
			return 0;
		}
	return error_set(e, -EINVAL, "--baud %.20s: no speed of a serial line: write e.g. 9600 or 115200",
	                 argument);
}

/* Sets `bits` of `mask` by the word's place in `words`. */
static int take_frame(struct serial *s, const char *option, const char *argument, const char *const words[3],
                      const tcflag_t bits[3], tcflag_t mask, struct error *e)
{
	for (int i = 0; i < 3 && words[i]; i++)
		if (strcmp(words[i], argument) == 0) {
			s->frame = (s->frame & ~mask) | bits[i];
			return 0;
		}
	return error_set(e, -EINVAL, "--%s %.20s: not known here: write %s, %s%s%s", option, argument,
	                 words[0], words[1], words[2] ? " or " : "", words[2] ? words[2] : "");
}

static int take_around(const char *option, const char *argument, char *out, size_t *size, struct error *e)
{
	size_t n = strlen(argument) / 2;
	unsigned byte;
	if (strlen(argument) % 2 || n == 0 || n > SERIAL_AROUND_MAX ||
	    strspn(argument, "0123456789abcdefABCDEF") != n * 2)
		return error_set(
		    e, -EINVAL,
		    "--%s %.20s: write two hexadecimal digits for each of 1 to %d bytes, e.g. 0d0a", option,
		    argument, SERIAL_AROUND_MAX);
	for (size_t i = 0; i < n && sscanf(argument + 2 * i, "%2x", &byte) == 1; i++)
		out[i] = (char)byte;
	*size = n;
	return 0;
}

static int serial_option(void *state, int val, const char *argument, struct error *e)
{
	static const char *const parities[3] = {"none", "even", "odd"}, *const widths[3] = {"7", "8"},
	                         *const stops[3] = {"1", "2"};
	static const tcflag_t parity_bits[3] = {0, PARENB, PARENB | PARODD}, width_bits[3] = {CS7, CS8},
	                      stop_bits[3] = {0, CSTOPB};
	struct serial *s = state;
	switch (val) {
	case OPTION_DEVICE:
		s->path = argument;
		return 0;
	case OPTION_BAUD:
		return take_speed(s, argument, e);
	case OPTION_BITS:
		return take_frame(s, "bits", argument, widths, width_bits, CSIZE, e);
	case OPTION_PARITY:
		return take_frame(s, "parity", argument, parities, parity_bits, PARENB | PARODD, e);
	case OPTION_STOP:
		return take_frame(s, "stop", argument, stops, stop_bits, CSTOPB, e);
	case OPTION_PREFIX:
		return take_around("prefix", argument, s->line.prefix, &s->line.prefix_size, e);
	default: /* OPTION_SUFFIX */
		s->line.silence = strcmp(argument, "none") == 0;
		return s->line.silence
		           ? 0
		           : take_around("suffix", argument, s->line.suffix, &s->line.suffix_size, e);
	}
}

static int set_up(struct serial *s, struct error *e)
{
	struct termios t;
	if (tcgetattr(s->fd, &t) < 0)
		return error_set(e, -errno,
		                 "%s: is no serial line: %s: name the scanner's /dev/ttyACM0 or the like",
		                 s->path, strerror(errno));
	cfmakeraw(&t);
	t.c_iflag = PARMRK | (s->frame & PARENB ? INPCK : 0u);
	t.c_cflag = CREAD | CLOCAL | s->frame;
	cfsetispeed(&t, s->speed);
	cfsetospeed(&t, s->speed);
	if (tcsetattr(s->fd, TCSANOW, &t) < 0)
		return error_set(e, -errno,
		                 "%s: its speed or frame cannot be set: %s: look at --baud, --bits, --parity",
		                 s->path, strerror(errno));
	/* A second reader would take bytes out of the middle of codes. */
	if (ioctl(s->fd, TIOCEXCL) < 0)
		return error_set(e, -errno,
		                 "%s: cannot be taken for this program alone: %s: end other programs on it",
		                 s->path, strerror(errno));
	/* What came before is nobody's scan now. */
	tcflush(s->fd, TCIFLUSH);
	return 0;
}

static int serial_open(void *state, int count, char *const *words, struct error *e)
{
	struct serial *s = state;
	if (count != 0 || !s->path) {
		error_set(e, -EINVAL, "%s: one line is read at a time: give --device /dev/ttyX",
		          count ? words[0] : "scanner");
		return DRIVER_USAGE;
	}
	s->fd = open(s->path, O_RDWR | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
	if (s->fd < 0 && errno == EBUSY)
		return error_set(
		    e, -EBUSY,
		    "%s: cannot be taken: another program has it: end that program (fuser %s names it)",
		    s->path, s->path);
	if (s->fd < 0)
		return error_set(
		    e, -errno,
		    "%s: cannot be opened: %s: is the scanner plugged in, and may this user read it "
		    "(config/udev)?",
		    s->path, strerror(errno));
	return set_up(s, e);
}

static const char *serial_name(const void *state)
{
	return ((const struct serial *)state)->path;
}

static int fault(struct wire *out, const char *code, size_t bytes, const char *what)
{
	char text[WIRE_TEXT_MAX + 1];
	snprintf(text, sizeof text, "%zu byte%s %s", bytes, bytes == 1 ? "" : "s", what);
	return wire_fault(out, code, text);
}

/* Bytes begin with the identifier where the scanner sends it (ISO/IEC 15424). */
static int send_code(const struct serial_line *l, struct wire *out)
{
	char aim[WIRE_AIM_SIZE + 1] = "";
	size_t head = 0;
	if (l->size > WIRE_AIM_SIZE) {
		memcpy(aim, l->code, WIRE_AIM_SIZE);
		head = wire_aim_valid(aim) ? WIRE_AIM_SIZE : 0;
	}
	return wire_scan(out, &(struct wire_scan){.aim = head ? aim : NULL,
	                                          .data = l->code + head,
	                                          .size = l->size - head,
	                                          .ms = l->last_ms});
}

static int deal_with(struct serial_line *l, enum serial_result what, struct wire *out)
{
	int r = 0;
	switch (what) {
	case SERIAL_NOTHING:
		return 0;
	case SERIAL_CODE:
		r = send_code(l, out);
		break;
	case SERIAL_PARTIAL:
		r = fault(out, "partial", l->size,
		          "came without their end and were thrown away: the code was cut off, or the scanner "
		          "sends another end than --suffix says: scan it again");
		break;
	case SERIAL_SKIPPED:
		r = fault(out, "partial", l->size,
		          "were under way when the line was opened, and were ignored: scan that code again");
		break;
	case SERIAL_ERROR:
		r = fault(
		    out, "garbled", l->size,
		    "and one with a framing or parity error were thrown away: scan it again; if it comes "
		    "back, compare --baud, --bits and --parity with the scanner's manual");
		break;
	case SERIAL_BREAK:
		r = fault(out, "garbled", l->size,
		          "and a break of the line were thrown away: look at the plug, then scan it again");
		break;
	case SERIAL_LONG:
		r = fault(out, "too-long", l->size,
		          "came without an end, more than any code that can be sent: use a shorter code, or "
		          "compare --suffix with the scanner's manual");
		break;
	case SERIAL_BARE:
		r = fault(
		    out, "partial", l->size,
		    "came without the prefix that this scanner sends: the code may be cut: scan it again");
		break;
	}
	serial_line_clear(l);
	return r < 0 ? r : 0;
}

/* Everything that is there now: 0, -EIO where the line has gone, or an error of the pipe in `*pipe_error`. */
static int read_line(struct serial *s, struct wire *out, int *pipe_error)
{
	unsigned char bytes[512];
	ssize_t n;
	while ((n = read(s->fd, bytes, sizeof bytes)) > 0) {
		int64_t now_ms = clock_now().boot_ms;
		*pipe_error = deal_with(&s->line, serial_line_tick(&s->line, now_ms), out);
		for (ssize_t i = 0; i < n && *pipe_error == 0; i++)
			*pipe_error = deal_with(&s->line, serial_line_byte(&s->line, bytes[i], now_ms), out);
		if (*pipe_error < 0)
			return 0;
	}
	if (n == 0)
		return -EIO;
	return errno == EAGAIN || errno == EINTR ? 0 : -errno;
}

static int gone(struct serial *s, int r, struct wire *out, struct error *e)
{
	if (s->line.size > 0 && !s->line.skipping)
		fault(out, "partial", s->line.size,
		      "of a code were thrown away: the scanner was unplugged in the middle of it: scan it "
		      "again");
	return error_set(e, r, "%s: the scanner has gone: %s: plug it in again", s->path, strerror(-r));
}

static int serial_run(void *state, struct wire *out, struct error *e)
{
	struct serial *s = state;
	struct pollfd fds[] = {{.fd = s->fd, .events = POLLIN}, {.fd = out->fd}};
	int r = 0, pipe_error = 0;
	serial_line_begin(&s->line, clock_now().boot_ms);
	while (pipe_error == 0) {
		int64_t due_ms = serial_line_due_ms(&s->line), left_ms = due_ms - clock_now().boot_ms;
		int wait_ms = due_ms < 0 ? -1 : left_ms > 0 ? (int)left_ms : 0;
		if (poll(fds, 2, wait_ms) < 0 && errno != EINTR)
			return error_set(e, -errno, "%s: cannot be waited for: %s: plug it in again", s->path,
			                 strerror(errno));
		if (fds[1].revents)
			return -EPIPE;
		if (fds[0].revents)
			r = read_line(s, out, &pipe_error);
		if (r == 0 && !(fds[0].revents & POLLIN) && (fds[0].revents & (POLLHUP | POLLERR | POLLNVAL)))
			r = -EIO;
		if (r < 0)
			return gone(s, r, out, e);
		if (pipe_error == 0)
			pipe_error =
			    deal_with(&s->line, serial_line_tick(&s->line, clock_now().boot_ms), out);
	}
	return error_set(e, pipe_error, "%s: a code was not sent: %s: start the driver again", s->path,
	                 strerror(-pipe_error));
}

const struct driver this_driver = {
    .name = "serial",
    .usage = "--device /dev/ttyX [--baud N] [--bits 7|8] [--parity none|even|odd] [--stop 1|2]\n"
             "                   [--prefix HEX] [--suffix HEX|none]\n"
             "Reads a scanner on a serial line, or on USB as one.\n"
             "  --device PATH    the line\n"
             "  --baud N         9600 unless set; USB scanners take any\n"
             "  --bits, --parity, --stop    8, none, 1 unless set\n"
             "  --prefix HEX     what it sends before each code, as hexadecimal digits: 02\n"
             "  --suffix HEX     what it sends behind each code: 0d0a; none: silence ends a code;\n"
             "                   unless set, a carriage return or a line feed ends it\n"
             "example: scan-serial --device /dev/ttyACM0 --baud 115200\n",
    .options = options,
    .new = serial_new,
    .free = serial_free,
    .option = serial_option,
    .open = serial_open,
    .device = serial_name,
    .run = serial_run,
};
