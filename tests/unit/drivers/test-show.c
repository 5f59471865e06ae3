/* The small picture of what a camera sees: what is in its line, and that it is made only while it was asked for. */
#include <errno.h>
#include <fcntl.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "drivers/glimpse.h"
#include "drivers/picture.h"
#include "drivers/sandbox.h"
#include "drivers/show.h"

#define WIDE 1280
#define HIGH 720

static uint8_t pixels[WIDE * HIGH];
static const struct plane frame = {pixels, WIDE, HIGH};
static struct wire_line line;

static void draw(int noise)
{
	uint32_t dice = 7;
	for (int i = 0; i < WIDE * HIGH; i++) {
		dice = dice * 1664525u + 1013904223u;
		int light = i % WIDE > 400 && i % WIDE < 800 ? 200 : 90;
		pixels[i] = (uint8_t)(noise ? (int)(dice >> 24) : light);
	}
}

static void the_picture_keeps_its_shape_and_is_small(void **state)
{
	(void)state;
	_cleanup_(plane_free) struct plane small = {0};
	draw(0);
	assert_int_equal(glimpse_reduce(&frame, &small), 0);
	assert_int_equal(small.width, 240);
	assert_int_equal(small.height, 135);
	assert_int_equal(small.pixels[0], 90);
	assert_int_equal(small.pixels[120], 200);
	assert_int_equal(glimpse_reduce(&(struct plane){pixels, 90, 1200}, &small), 0);
	assert_true(small.width == 13 && small.height == 180);
	assert_int_equal(glimpse_reduce(&(struct plane){pixels, 3, 2}, &small), 0);
	assert_true(small.width == 3 && small.height == 2);
}

static void whatever_is_seen_fits_a_line_and_is_a_jpeg(void **state)
{
	(void)state;
	_cleanup_(plane_free) struct plane small = {0}, again = {0};
	unsigned char jpeg[GLIMPSE_BYTES_MAX];
	for (int noise = 0; noise < 2; noise++) {
		size_t size = 0;
		draw(noise);
		assert_int_equal(glimpse_reduce(&frame, &small), 0);
		assert_int_equal(glimpse_jpeg(&small, jpeg, &size), 0);
		assert_in_range(size, 100, GLIMPSE_BYTES_MAX);
		assert_int_equal(picture_jpeg(jpeg, size, &again, NULL), 0);
		assert_true(again.width == small.width && again.height == small.height);
	}
}

static void a_place_is_in_thousandths_and_never_outside(void **state)
{
	(void)state;
	struct wire_seen s = glimpse_place(&(struct box){128, 72, 640, 360}, &frame);
	assert_true(s.left == 100 && s.top == 100 && s.right == 500 && s.bottom == 500);
	s = glimpse_place(&(struct box){-40, 700, 1400, 700}, &frame); /* one scan line */
	assert_true(s.left == 0 && s.right == 1000 && s.top < 972 && s.bottom == 1000);
}

/* --- asked for, and not ---------------------------------------------------------------------------- */

static int ends[2];
static struct wire out;
static struct show show;
static struct steady steady;

static int connected(void **state)
{
	(void)state;
	assert_int_equal(socketpair(AF_UNIX, SOCK_STREAM, 0, ends), 0);
	fcntl(ends[0], F_SETFL, O_NONBLOCK);
	out.fd = ends[1];
	show = (struct show){0};
	steady = (struct steady){0};
	draw(0);
	return show_listen();
}

static int parted(void **state)
{
	(void)state;
	show_free(&show);
	close(ends[0]);
	close(ends[1]);
	return 0;
}

static void frame_at(int64_t ms)
{
	assert_int_equal(show_frame(&show, &out, &frame, &steady, ms), 0);
}

/* How many lines came; the last one is read into `line`. */
static int came(void)
{
	static char text[1 << 20];
	ssize_t n = read(ends[0], text, sizeof text);
	int lines = 0;
	for (char *at = text, *end; n > 0 && (end = memchr(at, '\n', (size_t)(text + n - at)));
	     at = end + 1) {
		assert_int_equal(wire_read_line(at, (size_t)(end - at), &line, NULL), 0);
		assert_int_equal(line.kind, WIRE_PICTURE);
		lines++;
	}
	return lines;
}

static void nothing_is_made_that_nobody_asked_for(void **state)
{
	(void)state;
	for (int ms = 1000; ms < 60000; ms += 33)
		frame_at(ms);
	assert_int_equal(came(), 0);
	assert_null(show.small.pixels);
}

static void once_asked_for_it_ends_by_itself(void **state)
{
	(void)state;
	int lines = 0;
	raise(SIGUSR1);
	for (int ms = 1000; ms < 1000 + 2 * WIRE_SHOW_MS; ms += 50) {
		frame_at(ms);
		lines += came();
	}
	assert_int_equal(lines, WIRE_SHOW_MS / SHOW_EVERY_MS);
	assert_int_equal(show.small.pixels[120], 0); /* and no pixel stays */
}

static void it_can_be_taken_back_and_asked_for_again(void **state)
{
	(void)state;
	raise(SIGUSR1);
	frame_at(1000);
	assert_int_equal(came(), 1);
	raise(SIGUSR2);
	frame_at(2000);
	assert_int_equal(came(), 0);
	raise(SIGUSR1);
	frame_at(3000);
	assert_int_equal(came(), 1);
}

static void codes_of_this_frame_are_outlined_and_no_others(void **state)
{
	(void)state;
	steady.count = 2;
	steady.item[0] =
	    (struct presentation){.code.box = {128, 72, 640, 360}, .seen_ms = 1000, .told = true};
	steady.item[1] = (struct presentation){.code.box = {0, 0, 50, 50}, .seen_ms = 900};
	raise(SIGUSR1);
	frame_at(1000);
	assert_int_equal(came(), 1);
	assert_int_equal(line.n_seen, 1);
	assert_true(line.seen[0].told && line.seen[0].left == 100 && line.seen[0].bottom == 500);
}

/* The reader sleeps: pictures are left out, nothing waits, and a scan behind them comes through. */
static void what_is_not_taken_is_left_out_and_a_scan_is_not(void **state)
{
	(void)state;
	struct wire_scan scan = {.data = "LOC-0042", .size = 8};
	raise(SIGUSR1);
	for (int ms = 1000; ms < WIRE_SHOW_MS; ms += SHOW_EVERY_MS)
		frame_at(ms);
	assert_false(wire_has_room(&out));
	alarm(5);
	assert_int_equal(wire_scan(&out, &scan), 0);
	alarm(0);
	static char text[1 << 20];
	ssize_t n = read(ends[0], text, sizeof text - 1);
	assert_in_range(n, 100, 128 * 1024);
	text[n] = '\0';
	assert_non_null(strstr(text, "LOC-0042"));
}

/* As the driver does it: what is taken away is not needed for it. */
static void it_is_heard_and_sent_in_the_sandbox(void **state)
{
	(void)state;
	int status = -1;
	pid_t child = fork();
	if (child == 0) {
		struct error e;
		if (sandbox_enter('V', &e) < 0)
			_exit(2);
		raise(SIGUSR1);
		_exit(show_frame(&show, &out, &frame, &steady, 1000) == 0 ? 0 : 3);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_int_equal(status, 0);
	assert_int_equal(came(), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(the_picture_keeps_its_shape_and_is_small),
	    cmocka_unit_test(whatever_is_seen_fits_a_line_and_is_a_jpeg),
	    cmocka_unit_test(a_place_is_in_thousandths_and_never_outside),
	    cmocka_unit_test_setup_teardown(nothing_is_made_that_nobody_asked_for, connected, parted),
	    cmocka_unit_test_setup_teardown(once_asked_for_it_ends_by_itself, connected, parted),
	    cmocka_unit_test_setup_teardown(it_can_be_taken_back_and_asked_for_again, connected, parted),
	    cmocka_unit_test_setup_teardown(codes_of_this_frame_are_outlined_and_no_others, connected,
	                                    parted),
	    cmocka_unit_test_setup_teardown(it_is_heard_and_sent_in_the_sandbox, connected, parted),
	    cmocka_unit_test_setup_teardown(what_is_not_taken_is_left_out_and_a_scan_is_not, connected,
	                                    parted),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
