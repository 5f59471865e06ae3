/* scan-handheld on an event node of umockdev: plugged in, unplugged in the middle of a code, 10,000 codes at
 * once.
 *
 *   handheld-mock DRIVER         checks, one sentence each
 *   handheld-mock DRIVER --json     the figures only, as a list for tests/bench
 *
 * umockdev's limits: a grab always succeeds, and events are never dropped by themselves; vm-scanner has
 * those. */
#include <errno.h>
#include <linux/input.h>
#include <poll.h>
#include <signal.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <umockdev.h>
#include <unistd.h>

#include "base/wire.h"

#define CODES 10000
#define LATENCIES 500
#define SYSFS "/devices/pci0000:00/0000:00:14.0/usb1/1-1/1-1:1.0/0003:1209:B0C0.0001/input"

static bool quiet;
static int failures;

static void check(bool good, const char *sentence)
{
	failures += !good;
	if (!quiet || !good)
		printf("%s %s\n", good ? "ok    " : "FAILED", sentence);
	fflush(stdout);
}

/* --- the device: umockdev answers an ioctl only when its size is what libevdev asks with */

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

static int plug(UMockdevTestbed *bed, int number)
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
	char *device = g_strdup_printf("P: " SYSFS "/input%d/event%d\nN: input/event%d\nE: DEVNAME=%s\n"
	                               "E: ID_INPUT=1\nE: ID_INPUT_KEY=1\nE: MAJOR=13\nE: MINOR=%d\n"
	                               "E: SUBSYSTEM=input\nA: dev=13:%d\n\n",
	                               number, number, number, node, 64 + number, 64 + number);
	good = good && umockdev_testbed_add_from_string(bed, device, NULL);
	g_free(device);
	return good ? umockdev_testbed_get_dev_fd(bed, node) : -1;
}

/* --- its keys */

static void event(struct input_event *e, unsigned type, unsigned code, int value)
{
	struct timespec now;
	clock_gettime(CLOCK_BOOTTIME, &now);
	*e = (struct input_event){.type = (uint16_t)type, .code = (uint16_t)code, .value = value};
	e->input_event_sec = now.tv_sec;
	e->input_event_usec = now.tv_nsec / 1000;
}

static void key(int fd, unsigned code)
{
	struct input_event e[4];
	event(&e[0], EV_KEY, code, 1);
	event(&e[1], EV_SYN, SYN_REPORT, 0);
	event(&e[2], EV_KEY, code, 0);
	event(&e[3], EV_SYN, SYN_REPORT, 0);
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

static void digits(int fd, const char *text)
{
	for (; *text; text++)
		key(fd, *text == '0' ? KEY_0 : KEY_1 + (unsigned)(*text - '1'));
}

static void code(int fd, const char *text)
{
	digits(fd, text);
	key(fd, KEY_ENTER);
}

/* --- the driver */

struct driver {
	pid_t pid;
	FILE *lines;
};

static struct driver start(const char *program, const char *node)
{
	int ends[2];
	struct driver d = {-1, NULL};
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

static bool next_line(struct driver *d, struct wire_line *out)
{
	static char line[WIRE_LINE_MAX + 2];
	alarm(20); /* a driver that says nothing more ends the test, red */
	bool good = fgets(line, sizeof line, d->lines) && wire_read_line(line, strlen(line), out, NULL) == 0;
	alarm(0);
	return good;
}

static bool is_scan(const struct wire_line *l, const char *data)
{
	return l->kind == WIRE_SCAN && strcmp(l->data, data) == 0;
}

static bool is_fault(const struct wire_line *l, const char *word)
{
	return l->kind == WIRE_FAULT && strcmp(l->code, word) == 0;
}

static void settle(void)
{
	usleep(350000); /* more than TYPING_SETTLE_MS */
}

static void number_of(int i, char out[14])
{
	snprintf(out, 14, "95060%07d%d", i, i % 10);
}

static double seconds(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static bool expect_number(struct driver *d, int i)
{
	static struct wire_line l;
	char text[14];
	number_of(i, text);
	return next_line(d, &l) && is_scan(&l, text);
}

/* In order and whole. Two codes are under way at a time: umockdev's node is a terminal, which cuts events in
 * pieces when its 4 KiB are full, as no kernel's event node does. The codes that came as they should. */
static int ten_thousand(struct driver *d, int fd, double *codes_per_s)
{
	char text[14];
	int right = 0;
	double from = seconds();
	for (int i = 0; i < CODES; i++) {
		number_of(i, text);
		code(fd, text);
		right += i > 0 && expect_number(d, i - 1);
	}
	right += expect_number(d, CODES - 1);
	*codes_per_s = CODES / (seconds() - from);
	return right;
}

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

/* From the last key's writing to the line at this end of the pipe. */
static void latency(struct driver *d, int fd, double *median_ms, double *p99_ms)
{
	static struct wire_line l;
	static double ms[LATENCIES];
	for (int i = 0; i < LATENCIES; i++) {
		digits(fd, "9506000134352");
		usleep(2000);
		double from = seconds();
		key(fd, KEY_ENTER);
		if (!next_line(d, &l))
			return;
		ms[i] = (seconds() - from) * 1000;
	}
	qsort(ms, LATENCIES, sizeof *ms, by_size);
	*median_ms = ms[LATENCIES / 2];
	*p99_ms = ms[LATENCIES * 99 / 100];
}

static void figures(struct driver *d, int fd, bool json)
{
	double rate = 0, median = 0, p99 = 0;
	int right = ten_thousand(d, fd, &rate);
	latency(d, fd, &median, &p99);
	if (json)
		printf("[{\"name\":\"handheld codes right of "
		       "10000\",\"value\":%d,\"unit\":\"codes\",\"reference\":%d,"
		       "\"ratio\":%.4f,\"goal\":1.0,\"met\":%s},\n"
		       " {\"name\":\"handheld last key to line, "
		       "median\",\"value\":%.3f,\"unit\":\"ms\",\"reference\":null,"
		       "\"ratio\":null,\"goal\":null,\"met\":null},\n"
		       " {\"name\":\"handheld last key to line, "
		       "p99\",\"value\":%.3f,\"unit\":\"ms\",\"reference\":null,"
		       "\"ratio\":null,\"goal\":null,\"met\":null}]\n",
		       right, CODES, (double)right / CODES, right == CODES ? "true" : "false", median, p99);
	else
		printf("       %d codes, %.0f a second; last key to line %.3f ms median, %.3f ms p99\n",
		       CODES, rate, median, p99);
	check(right == CODES, "10,000 codes one upon the other: none lost, none changed, none out of order");
}

static void in_order(UMockdevTestbed *bed, struct driver *d, int fd)
{
	static struct wire_line l;
	settle();
	code(fd, "9506000134352");
	check(next_line(d, &l) && is_scan(&l, "9506000134352") && l.ms > 0,
	      "a code is one scan, with the time of its last key");
	digits(fd, "95");
	usleep(1300000);
	check(next_line(d, &l) && l.kind == WIRE_FAULT, "a code without its end is said, not sent");
	figures(d, fd, false);
	digits(fd, "950");
	usleep(100000);
	close(fd); /* the node hangs up before udev says anything, as a real one does */
	umockdev_testbed_uevent(bed, "/sys" SYSFS "/input7/event7", "remove");
	umockdev_testbed_remove_device(bed, "/sys" SYSFS "/input7/event7");
	check(next_line(d, &l) && is_fault(&l, "partial"),
	      "unplugged in the middle of a code: the part is thrown away and said");
	check(next_line(d, &l) && is_fault(&l, "lost"), "and the scanner is lost");
	int status = 0;
	waitpid(d->pid, &status, 0);
	check(WIFEXITED(status) && WEXITSTATUS(status) == 1, "and the driver ends with 1");
}

static void a_second_scanner(int fd, const char *program)
{
	static struct wire_line l;
	struct driver d = start(program, "/dev/input/event8");
	check(next_line(&d, &l) && l.kind == WIRE_HELLO, "a second scanner has a driver of its own");
	digits(fd, "111");
	usleep(20000);
	code(fd, "222");
	check(next_line(&d, &l) && is_fault(&l, "partial"), "a code under way at the opening is no code");
	code(fd, "950");
	check(next_line(&d, &l) && is_scan(&l, "950"), "and the next one is");
	kill(d.pid, SIGTERM);
	waitpid(d.pid, NULL, 0);
	fclose(d.lines);
}

int main(int argc, char **argv)
{
	static struct wire_line l;
	bool json = argc == 3 && strcmp(argv[2], "--json") == 0;
	quiet = json;
	UMockdevTestbed *bed = umockdev_testbed_new();
	if (argc < 2 || !umockdev_in_mock_environment()) {
		fprintf(stderr, "handheld-mock: run it through handheld-mock.sh\n");
		return 2;
	}
	/* umockdev takes no further device once one is gone. */
	int fd = plug(bed, 7), second = plug(bed, 8);
	check(fd >= 0 && second >= 0, "two scanners are plugged in");
	struct driver d = start(argv[1], "/dev/input/event7");
	check(next_line(&d, &l) && l.kind == WIRE_HELLO, "the driver says hello");
	check(strstr(l.uncertain, "separator") != NULL, "and what it does not know of this scanner");
	if (json) {
		settle();
		figures(&d, fd, true);
		kill(d.pid, SIGTERM);
		waitpid(d.pid, NULL, 0);
	} else {
		in_order(bed, &d, fd);
		a_second_scanner(second, argv[1]);
	}
	fclose(d.lines);
	g_object_unref(bed);
	return failures ? 1 : 0;
}
