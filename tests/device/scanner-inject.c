/* Inside the emulated machine: a scanner of the kernel's own making, with ids of its own.
 *
 *   scanner-inject uinput FIFO     through /dev/uinput: keys go straight into the input core
 *   scanner-inject uhid FIFO       through /dev/uhid: reports go through the kernel's HID keyboard driver
 *   scanner-inject gadget FIFO     through /dev/hidg0: reports cross a USB bus first, as a real one's do
 *   scanner-inject descriptor      writes the report descriptor that such a gadget is made with
 *
 * Types each line that comes out of FIFO (digits and capitals, then Enter), a key each 2 ms; one that begins
 * with '!' without any pause. '<FILE' plays the recorded events of FILE (drivers/handheld-events.h) in their
 * own time; uinput only. It unplugs itself when FIFO closes; the gadget is plugged in
 * and out by whoever made it. */
#include <fcntl.h>
#include <linux/uhid.h>
#include <linux/uinput.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#define VENDOR 0x1209
#define PRODUCT 0xb0c0

static int fd;

/* A boot keyboard: modifiers, one reserved byte, six keys (HID 1.11, appendix B.1), without lamps. */
static const unsigned char descriptor[] = {0x05, 1, 0x09, 6, 0xa1, 1,    0x05, 7, 0x19, 0xe0, 0x29, 0xe7,
                                           0x15, 0, 0x25, 1, 0x75, 1,    0x95, 8, 0x81, 2,    0x95, 1,
                                           0x75, 8, 0x81, 1, 0x95, 6,    0x75, 8, 0x15, 0,    0x25, 0x65,
                                           0x05, 7, 0x19, 0, 0x29, 0x65, 0x81, 0, 0xc0};

static bool put(const void *bytes, size_t size)
{
	return write(fd, bytes, size) == (ssize_t)size;
}

static bool plug_uinput(void)
{
	struct uinput_setup s = {.id = {BUS_USB, VENDOR, PRODUCT, 1}, .name = "Example Code Reader U"};
	fd = open("/dev/uinput", O_RDWR);
	if (fd < 0 || ioctl(fd, UI_SET_EVBIT, EV_KEY) < 0)
		return false;
	for (int i = 1; i < 128; i++)
		ioctl(fd, UI_SET_KEYBIT, i);
	return ioctl(fd, UI_DEV_SETUP, &s) == 0 && ioctl(fd, UI_DEV_CREATE) == 0;
}

static bool plug_uhid(void)
{
	struct uhid_event e = {.type = UHID_CREATE2};
	struct uhid_create2_req *c = &e.u.create2;
	snprintf((char *)c->name, sizeof c->name, "Example Code Reader H");
	snprintf((char *)c->uniq, sizeof c->uniq, "SN0077");
	memcpy(c->rd_data, descriptor, sizeof descriptor);
	c->rd_size = sizeof descriptor;
	c->bus = BUS_USB;
	c->vendor = VENDOR;
	c->product = PRODUCT + 1;
	fd = open("/dev/uhid", O_RDWR);
	return fd >= 0 && put(&e, sizeof e);
}

static bool open_gadget(void)
{
	fd = open("/dev/hidg0", O_RDWR);
	return fd >= 0;
}

static void event(unsigned type, unsigned code, int value)
{
	struct input_event e = {.type = (__u16)type, .code = (__u16)code, .value = value};
	put(&e, sizeof e);
}

static void stroke_uinput(char c)
{
	static const char row[] = "\x1b"
	                          "1234567890-=\b\tQWERTYUIOP[]\n\x11"
	                          "ASDFGHJKL;'`\x12\\ZXCVBNM";
	const char *at = strchr(row, c);
	if (!c || !at)
		return;
	bool capital = c >= 'A' && c <= 'Z';
	if (capital)
		event(EV_KEY, KEY_LEFTSHIFT, 1);
	event(EV_KEY, (unsigned)(at - row) + KEY_ESC, 1);
	event(EV_SYN, SYN_REPORT, 0);
	event(EV_KEY, (unsigned)(at - row) + KEY_ESC, 0);
	if (capital)
		event(EV_KEY, KEY_LEFTSHIFT, 0);
	event(EV_SYN, SYN_REPORT, 0);
}

static void report_uhid(const unsigned char keys[8])
{
	struct uhid_event e = {.type = UHID_INPUT2};
	e.u.input2.size = 8;
	memcpy(e.u.input2.data, keys, 8);
	put(&e, sizeof e);
}

static void report_gadget(const unsigned char keys[8])
{
	put(keys, 8); /* waits until the host has fetched the one before */
}

static void (*send)(const unsigned char keys[8]);

static void report(unsigned char mods, unsigned char usage)
{
	const unsigned char keys[8] = {[0] = mods, [2] = usage};
	send(keys);
}

static void stroke_hid(char c)
{
	if (c >= 'A' && c <= 'Z')
		report(2, (unsigned char)(0x04 + c - 'A'));
	else if (c >= '1' && c <= '9')
		report(0, (unsigned char)(0x1e + c - '1'));
	else if (c == '0' || c == '\n')
		report(0, c == '0' ? 0x27 : 0x28);
	report(0, 0);
}

/* A recording, in its own time. */
static void play(char *path)
{
	long last_ms = 0, ms;
	unsigned type, code;
	int value;
	path[strcspn(path, "\n")] = '\0';
	FILE *f = fopen(path, "r");
	if (!f)
		perror(path);
	while (f && fscanf(f, "%ld %u %u %d", &ms, &type, &code, &value) == 4) {
		usleep((useconds_t)(ms - last_ms) * 1000);
		last_ms = ms;
		event(type, code, value);
		event(EV_SYN, SYN_REPORT, 0);
	}
	if (f)
		fclose(f);
}

static void type_line(const char *line)
{
	bool pause = line[0] != '!';
	for (const char *c = pause ? line : line + 1; *c; c++) {
		send ? stroke_hid(*c) : stroke_uinput(*c);
		if (pause)
			usleep(2000);
	}
}

static bool plug(const char *kind)
{
	if (strcmp(kind, "uhid") == 0) {
		send = report_uhid;
		return plug_uhid();
	}
	if (strcmp(kind, "gadget") == 0) {
		send = report_gadget;
		return open_gadget();
	}
	return strcmp(kind, "uinput") == 0 && plug_uinput();
}

int main(int argc, char **argv)
{
	static char line[8192];
	if (argc == 2 && strcmp(argv[1], "descriptor") == 0)
		return fwrite(descriptor, sizeof descriptor, 1, stdout) != 1;
	if (argc != 3 || !plug(argv[1])) {
		perror("scanner-inject");
		return 1;
	}
	FILE *in = fopen(argv[2], "r");
	if (!in)
		perror(argv[2]);
	while (in && fgets(line, sizeof line, in)) {
		if (line[0] == '<' && !send)
			play(line + 1);
		else
			type_line(line);
	}
	close(fd);
	return 0;
}
