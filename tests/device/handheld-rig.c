#include "handheld-rig.h"

#include <errno.h>
#include <linux/input.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

/* umockdev answers an ioctl only when its size is what libevdev asks with */

static void add_hex(GString *s, const unsigned char *bytes, size_t n)
{
	for (size_t i = 0; i < n; i++)
		g_string_append_printf(s, "%02X", bytes[i]);
	g_string_append_c(s, '\n');
}

static void add_text(GString *s, const char *request, const char *text)
{
	unsigned char padded[255] = {0};
	memcpy(padded, text, strlen(text));
	g_string_append_printf(s, "%s %zu ", request, strlen(text) + 1);
	add_hex(s, padded, sizeof padded);
}

static void add_bits(GString *s, const char *request, size_t size, const unsigned *bits, size_t n)
{
	unsigned char bytes[96] = {0};
	for (size_t i = 0; i < n; i++)
		bytes[bits[i] / 8] |= (unsigned char)(1u << bits[i] % 8);
	g_string_append_printf(s, "%s %zu ", request, size);
	add_hex(s, bytes, size);
}

static GString *ioctls(const char *node)
{
	static const unsigned types[] = {EV_SYN, EV_KEY, EV_MSC, EV_LED, EV_REP}, lamps[] = {0, 1, 2},
	                      scan[] = {4};
	unsigned keys[120];
	GString *s = g_string_new(NULL);
	for (unsigned i = 0; i < 120; i++)
		keys[i] = i + 1;
	g_string_append_printf(s, "@DEV %s\n", node);
	add_bits(s, "EVIOCGBIT(0)", 8, types, 5);
	add_text(s, "EVIOCGNAME(0)", "Example Code Reader");
	add_text(s, "EVIOCGPHYS(0)", "usb-x/input0");
	add_text(s, "EVIOCGUNIQ(0)", "SN0001");
	g_string_append(s, "EVIOCGID 0 03000912C0B01001\nEVIOCGVERSION 0 01000100\n");
	add_bits(s, "EVIOCGPROP(0)", 8, NULL, 0);
	add_bits(s, "EVIOCGBIT(1)", 96, keys, 120);
	add_bits(s, "EVIOCGBIT(2)", 8, NULL, 0);
	add_bits(s, "EVIOCGBIT(3)", 8, NULL, 0);
	add_bits(s, "EVIOCGBIT(4)", 8, scan, 1);
	add_bits(s, "EVIOCGBIT(5)", 8, NULL, 0);
	add_bits(s, "EVIOCGBIT(17)", 8, lamps, 3);
	add_bits(s, "EVIOCGBIT(18)", 8, NULL, 0);
	add_bits(s, "EVIOCGBIT(21)", 16, NULL, 0);
	add_bits(s, "EVIOCGKEY(0)", 96, NULL, 0);
	add_bits(s, "EVIOCGLED(0)", 8, NULL, 0);
	add_bits(s, "EVIOCGSND(0)", 8, NULL, 0);
	add_bits(s, "EVIOCGSW(0)", 8, NULL, 0);
	g_string_append(s, "EVIOCGREP 0 FA00000021000000\n");
	return s;
}

int rig_plug(UMockdevTestbed *bed, int number)
{
	char node[40], path[] = "/tmp/handheld-ioctl-XXXXXX";
	snprintf(node, sizeof node, "/dev/input/event%d", number);
	GString *tree = ioctls(node);
	int fd = mkstemp(path);
	if (fd < 0 || write(fd, tree->str, tree->len) != (ssize_t)tree->len)
		return -1;
	close(fd);
	/* The answers first: adding the device announces it. */
	bool good = umockdev_testbed_load_ioctl(bed, node, path, NULL);
	unlink(path);
	g_string_free(tree, TRUE);
	char *device =
	    g_strdup_printf("P: " RIG_SYSFS "/input%d/event%d\nN: input/event%d\nE: DEVNAME=%s\n"
	                    "E: ID_INPUT=1\nE: ID_INPUT_KEY=1\nE: ID_VENDOR_ID=1209\n"
	                    "E: ID_MODEL_ID=b0c0\nE: ID_SERIAL_SHORT=SN0001\nE: MAJOR=13\nE: MINOR=%d\n"
	                    "E: SUBSYSTEM=input\nA: dev=13:%d\n\n",
	                    number, number, number, node, 64 + number, 64 + number);
	good = good && umockdev_testbed_add_from_string(bed, device, NULL);
	g_free(device);
	return good ? umockdev_testbed_get_dev_fd(bed, node) : -1;
}

static void event(struct input_event *e, unsigned type, unsigned code, int value)
{
	struct timespec now;
	clock_gettime(CLOCK_BOOTTIME, &now);
	*e = (struct input_event){.type = (uint16_t)type, .code = (uint16_t)code, .value = value};
	e->input_event_sec = now.tv_sec;
	e->input_event_usec = now.tv_nsec / 1000;
}

static void press(int fd, unsigned code, int value)
{
	struct input_event e[2];
	event(&e[0], EV_KEY, code, value);
	event(&e[1], EV_SYN, SYN_REPORT, 0);
	const char *at = (const char *)e;
	for (size_t left = sizeof e; left > 0;) {
		ssize_t n = write(fd, at, left);
		if (n < 0 && errno != EAGAIN && errno != EINTR)
			return;
		if (n > 0) {
			at += n;
			left -= (size_t)n;
		} else {
			poll(&(struct pollfd){.fd = fd, .events = POLLOUT}, 1, 10);
		}
	}
}

void rig_key(int fd, unsigned code)
{
	press(fd, code, 1);
	press(fd, code, 0);
}

/* The key of a US layout: capitals and digits are all that cards and numbers need. */
static void type_one(int fd, char c)
{
	static const char letters[] = "QWERTYUIOP....ASDFGHJKL.....ZXCVBNM"; /* from KEY_Q on */
	const char *at = c >= 'A' && c <= 'Z' ? strchr(letters, c) : NULL;
	if (!at) {
		rig_key(fd, c == '0' ? KEY_0 : KEY_1 + (unsigned)(c - '1'));
		return;
	}
	press(fd, KEY_LEFTSHIFT, 1);
	rig_key(fd, KEY_Q + (unsigned)(at - letters));
	press(fd, KEY_LEFTSHIFT, 0);
}

void rig_type(int fd, const char *text)
{
	for (; *text; text++)
		type_one(fd, *text);
}

void rig_code(int fd, const char *text)
{
	rig_type(fd, text);
	rig_key(fd, KEY_ENTER);
}

struct rig_driver rig_start(const char *program, const char *node)
{
	int ends[2];
	struct rig_driver d = {-1, NULL};
	if (pipe(ends) < 0)
		return d;
	d.pid = fork();
	if (d.pid == 0) {
		dup2(ends[1], 1);
		/* The other end of the node is among them, which would then never hang up. */
		close_range(3, ~0u, 0);
		execl(program, program, "--device", node, "--layout", "us", (char *)NULL);
		_exit(127);
	}
	close(ends[1]);
	d.lines = fdopen(ends[0], "r");
	return d;
}

bool rig_next(struct rig_driver *d, struct wire_line *out)
{
	static char line[WIRE_LINE_MAX + 2];
	alarm(20); /* a driver that says nothing more ends the test, red */
	bool good = fgets(line, sizeof line, d->lines) && wire_read_line(line, strlen(line), out, NULL) == 0;
	alarm(0);
	return good;
}

bool rig_is_scan(const struct wire_line *l, const char *data)
{
	return l->kind == WIRE_SCAN && strcmp(l->data, data) == 0;
}

double rig_seconds(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

#define NUMBER_MAX 24

static void number_of(int i, char out[NUMBER_MAX])
{
	snprintf(out, NUMBER_MAX, "95060%07d%d", i, i % 10);
}

static bool expect_number(struct rig_driver *d, int i)
{
	static struct wire_line l;
	char text[NUMBER_MAX];
	number_of(i, text);
	return rig_next(d, &l) && rig_is_scan(&l, text);
}

int rig_many(struct rig_driver *d, int fd, int codes, double *codes_per_s)
{
	char text[NUMBER_MAX];
	int right = 0;
	double from = rig_seconds();
	for (int i = 0; i < codes; i++) {
		number_of(i, text);
		rig_code(fd, text);
		right += i > 0 && expect_number(d, i - 1);
	}
	right += expect_number(d, codes - 1);
	*codes_per_s = codes / (rig_seconds() - from);
	return right;
}
