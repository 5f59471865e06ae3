/* The drivers as programs: what they write, how they end, and what they make of bad input. */
#include <errno.h>
#include <fcntl.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>
#include <png.h>
#include <zint.h>

#include "base/clock.h"
#include "base/wire.h"
#include "symbol.h"

#define LINES_MAX 32

static char folder[] = "/tmp/bandtally-drivers-XXXXXX";

/* What a program wrote on stdout, line by line as the daemon reads it, and how it ended. */
static struct {
	struct wire_line line[LINES_MAX];
	size_t lines;
	int64_t at_ms[LINES_MAX]; /* since it was started */
	int code;
	char complaint[8192]; /* stderr */
} run;

static void take_output(FILE *out, int64_t start_ms)
{
	char text[WIRE_LINE_MAX + 2];
	struct error e;
	while (fgets(text, sizeof text, out)) {
		assert_true(run.lines < LINES_MAX);
		run.at_ms[run.lines] = clock_now().boot_ms - start_ms;
		if (wire_read_line(text, strlen(text), &run.line[run.lines++], &e) < 0)
			fail_msg("%s: %s", e.text, text);
	}
}

/* `words` after the program's name, ended by NULL. */
static void run_driver(const char *name, const char *const *words)
{
	const char *bin = getenv("BANDTALLY_BIN"), *argv[32] = {0};
	char path[512], errors[512];
	int ends[2], status;
	snprintf(path, sizeof path, "%s/%s", bin ? bin : "build/release/bin", name);
	snprintf(errors, sizeof errors, "%s/stderr", folder);
	argv[0] = path;
	for (int i = 0; words[i]; i++)
		argv[i + 1] = words[i];
	memset(&run, 0, sizeof run);
	assert_int_equal(pipe(ends), 0);
	int64_t start_ms = clock_now().boot_ms;
	pid_t pid = fork();
	if (pid == 0) {
		dup2(ends[1], 1);
		dup2(open(errors, O_CREAT | O_TRUNC | O_WRONLY, 0600), 2);
		dup2(open("/dev/null", O_RDONLY), 0);
		close(ends[0]);
		execv(path, (char **)(size_t)argv);
		_exit(127);
	}
	close(ends[1]);
	FILE *out = fdopen(ends[0], "r");
	take_output(out, start_ms);
	fclose(out);
	waitpid(pid, &status, 0);
	run.code = WIFEXITED(status) ? WEXITSTATUS(status) : 1000 + WTERMSIG(status);
	FILE *f = fopen(errors, "r");
	run.complaint[fread(run.complaint, 1, sizeof run.complaint - 1, f)] = '\0';
	fclose(f);
}

static const char *in_folder(const char *name)
{
	static char paths[16][512];
	static int next;
	char *path = paths[next++ % 16];
	snprintf(path, 512, "%s/%s", folder, name);
	return path;
}

static const char *write_file(const char *name, const void *bytes, size_t size)
{
	const char *path = in_folder(name);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, size, f), size);
	fclose(f);
	return path;
}

static const char *write_png(const char *name, const struct plane *p)
{
	const char *path = in_folder(name);
	png_image image = {.version = PNG_IMAGE_VERSION,
	                   .width = (png_uint_32)p->width,
	                   .height = (png_uint_32)p->height,
	                   .format = PNG_FORMAT_GRAY};
	assert_true(png_image_write_to_file(&image, path, 0, p->pixels, 0, NULL));
	return path;
}

static const char *write_pgm(const char *name, const struct plane *p)
{
	const char *path = in_folder(name);
	FILE *f = fopen(path, "w");
	fprintf(f, "P5 # a comment\n%d %d\n255\n", p->width, p->height);
	fwrite(p->pixels, 1, (size_t)p->width * (size_t)p->height, f);
	fclose(f);
	return path;
}

static const char *cut(const char *name, const char *whole, double part)
{
	static char bytes[1 << 20];
	FILE *f = fopen(whole, "r");
	size_t n = fread(bytes, 1, sizeof bytes, f);
	fclose(f);
	return write_file(name, bytes, (size_t)((double)n * part));
}

static const char *good_png(const char *name)
{
	_cleanup_(plane_free) struct plane p = {0};
	struct spoiling how = SPOTLESS(4);
	assert_true(symbol_draw(BARCODE_QRCODE, "BTBC10104051", false, &how, 1, &p));
	return write_png(name, &p);
}

static void every_bad_picture_is_one_fault_and_the_good_ones_are_still_read(void **state)
{
	(void)state;
	/* A PNG that says it is 60,000 pixels wide and high: 3.6 thousand million. */
	static const unsigned char huge[] =
	    "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\xea\x60\0\0\xea\x60\x08\0\0\0\0"
	    "\x74\x14\x8a\x4b";
	const char *whole = good_png("whole.png");
	mkdir(in_folder("folder.png"), 0700);
	mkfifo(in_folder("pipe.png"), 0600);
	const char *words[] = {"--image",
	                       good_png("first.png"),
	                       in_folder("none.png"),
	                       in_folder("folder.png"),
	                       in_folder("pipe.png"),
	                       write_file("empty.png", "", 0),
	                       write_file("text.png", "not a picture\n", 14),
	                       write_file("huge.png", huge, sizeof huge - 1),
	                       cut("cut.png", whole, 0.6),
	                       cut("head.png", whole, 0.1),
	                       write_file("head.pgm", "P5\n", 3),
	                       write_file("short.pgm", "P5 20 20 255\nxxx", 16),
	                       write_file("huge.pgm", "P5 99999999999999999999 2 255\n", 30),
	                       write_file("negative.pgm", "P5 -3 2 255\nxxxxxx", 18),
	                       write_file("cut.jpg", "\xff\xd8\xff\xe0\0\x10JFIF", 10),
	                       good_png("last.png"),
	                       NULL};
	run_driver("scan-camera", words);
	assert_int_equal(run.code, 1);
	assert_int_equal(run.lines, 1 + 15);
	assert_int_equal(run.line[0].kind, WIRE_HELLO);
	for (size_t i = 1; i < run.lines; i++) {
		bool good = i == 1 || i == 15;
		const struct wire_line *l = &run.line[i];
		if (l->kind != (good ? WIRE_SCAN : WIRE_FAULT))
			fail_msg("%s: kind %d: %s", words[i], l->kind, l->text);
		if (good) {
			assert_string_equal(l->file, words[i]);
			assert_string_equal(l->data, "BTBC10104051");
			continue;
		}
		assert_string_equal(l->code, "unreadable");
		assert_non_null(strstr(l->text, words[i]));
		/* what: why: what to do */
		assert_non_null(strstr(strstr(l->text, words[i]) + strlen(words[i]), ": "));
		assert_non_null(strstr(run.complaint, l->text));
	}
}

static void a_picture_without_a_code_is_no_error(void **state)
{
	(void)state;
	_cleanup_(plane_free) struct plane p = {0};
	assert_int_equal(plane_resize(&p, 320, 240), 0);
	memset(p.pixels, 200, 320 * 240);
	const char *words[] = {"--image", write_pgm("blank.pgm", &p), NULL};
	run_driver("scan-camera", words);
	assert_int_equal(run.code, 0);
	assert_int_equal(run.lines, 1);
	assert_non_null(strstr(run.complaint, "no code was read"));
}

static void a_pgm_and_a_colour_free_png_give_the_same_code(void **state)
{
	(void)state;
	_cleanup_(plane_free) struct plane p = {0};
	struct spoiling how = SPOTLESS(3);
	assert_true(symbol_draw(BARCODE_GS1_128, "(10)AB12(21)SER9", true, &how, 1, &p));
	const char *words[] = {"--image", write_pgm("a.pgm", &p), write_png("a.png", &p), NULL};
	run_driver("scan-camera", words);
	assert_int_equal(run.code, 0);
	assert_int_equal(run.lines, 3);
	for (int i = 1; i < 3; i++) {
		assert_string_equal(run.line[i].aim, "]C1");
		assert_string_equal(run.line[i].data, "10AB12\x1d"
		                                      "21SER9");
	}
}

static void itf_is_read_only_when_asked_for_and_long_enough(void **state)
{
	(void)state;
	_cleanup_(plane_free) struct plane p = {0};
	struct spoiling how = SPOTLESS(3);
	assert_true(symbol_draw(BARCODE_C25INTER, "19506000134359", false, &how, 1, &p));
	const char *path = write_png("itf.png", &p);
	const char *off[] = {"--image", path, NULL}, *on[] = {"--also", "itf:14", "--image", path, NULL},
	           *longer[] = {"--also", "itf:16", "--image", path, NULL};
	run_driver("scan-camera", off);
	assert_int_equal(run.lines, 1);
	run_driver("scan-camera", longer);
	assert_int_equal(run.lines, 1);
	run_driver("scan-camera", on);
	assert_int_equal(run.lines, 2);
	assert_string_equal(run.line[1].data, "19506000134359");
}

static void wrong_words_are_answered_with_2_and_nothing_on_stdout(void **state)
{
	(void)state;
	static const char *const bad[][4] = {
	    {NULL},
	    {"--image", NULL},
	    {"--nothing", NULL},
	    {"--device", NULL},
	    {"x.png", NULL},
	    {"--device", "/dev/video0", "x.png", NULL},
	    {"--also", "itf", "--image", NULL},
	    {"--also", "pdf417:3", "--image", NULL},
	    {"--frames", "0", "--image", NULL},
	    {"--away", "soon", "--image", NULL},
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		run_driver("scan-camera", bad[i]);
		assert_int_equal(run.code, 2);
		assert_int_equal(run.lines, 0);
		assert_true(strlen(run.complaint) > 20);
	}
}

static void a_device_that_is_no_camera_is_a_fault_before_it_ends(void **state)
{
	(void)state;
	const char *absent[] = {"--device", "/dev/video-none", NULL},
	           *null[] = {"--device", "/dev/null", NULL};
	run_driver("scan-camera", absent);
	assert_int_equal(run.code, 1);
	assert_int_equal(run.lines, 1);
	assert_string_equal(run.line[0].code, "open");
	run_driver("scan-camera", null);
	assert_int_equal(run.code, 1);
	assert_string_equal(run.line[0].code, "open");
	assert_non_null(strstr(run.line[0].text, "no camera"));
}

static void the_smallest_driver_sends_each_line_as_a_code(void **state)
{
	(void)state;
	const char *words[] = {write_file("codes",
	                                  "AB\x1d"
	                                  "1\n\n\xff\0z",
	                                  9),
	                       NULL};
	run_driver("scan-template", words);
	assert_int_equal(run.code, 0);
	assert_int_equal(run.lines, 3);
	assert_string_equal(run.line[0].driver, "template");
	assert_string_equal(run.line[1].data, "AB\x1d"
	                                      "1");
	assert_int_equal(run.line[2].data_size, 3);
}

static void a_log_is_played_at_its_times(void **state)
{
	(void)state;
	static const char log[] = "# a session\n"
	                          "+0 {\"v\":1,\"hello\":{\"driver\":\"handheld\",\"device\":\"x\"}}\n"
	                          "+400 {\"v\":1,\"scan\":{\"data\":\"A\"}}\n"
	                          "{\"v\":1,\"scan\":{\"data\":\"B\"}}\n"
	                          "+800 {\"v\":1,\"fault\":{\"code\":\"lost\",\"text\":\"x\"}}\n";
	const char *path = write_file("session.log", log, sizeof log - 1);
	const char *as_recorded[] = {path, NULL}, *faster[] = {"--speed", "4", path, NULL},
	           *at_once[] = {"--speed", "0", path, NULL};
	run_driver("scan-replay", as_recorded);
	assert_int_equal(run.code, 0);
	assert_int_equal(run.lines, 4); /* its own hello, and not the log's */
	assert_string_equal(run.line[0].driver, "replay");
	assert_in_range(run.at_ms[1], 390, 700);
	assert_in_range(run.at_ms[2], run.at_ms[1], run.at_ms[1] + 100);
	assert_in_range(run.at_ms[3], 790, 1200);
	run_driver("scan-replay", faster);
	assert_in_range(run.at_ms[3], 190, 500);
	run_driver("scan-replay", at_once);
	assert_in_range(run.at_ms[3], 0, 150);
}

static void a_log_with_a_wrong_line_stops_there_with_its_number(void **state)
{
	(void)state;
	static const char *const bad[] = {
	    "{\"v\":1,\"scan\":{\"data\":\"A\"}}\n{\"v\":1}\n",
	    "{\"v\":1,\"scan\":{\"data\":\"A\"}}\n+x {\"v\":1,\"scan\":{\"data\":\"B\"}}\n",
	    "+5 {\"v\":1,\"scan\":{\"data\":\"A\"}}\n+4 {\"v\":1,\"scan\":{\"data\":\"B\"}}\n",
	};
	for (size_t i = 0; i < 3; i++) {
		const char *words[] = {"--speed", "0", write_file("bad.log", bad[i], strlen(bad[i])), NULL};
		run_driver("scan-replay", words);
		assert_int_equal(run.code, 1);
		assert_int_equal(run.lines, 3);
		assert_int_equal(run.line[2].kind, WIRE_FAULT);
		assert_non_null(strstr(run.line[2].text, "bad.log:2: "));
	}
}

static int make_folder(void **state)
{
	(void)state;
	return mkdtemp(folder) ? 0 : -1;
}

static int remove_folder(void **state)
{
	(void)state;
	char command[128];
	snprintf(command, sizeof command, "rm -r %s", folder);
	return system(command);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(every_bad_picture_is_one_fault_and_the_good_ones_are_still_read),
	    cmocka_unit_test(a_picture_without_a_code_is_no_error),
	    cmocka_unit_test(a_pgm_and_a_colour_free_png_give_the_same_code),
	    cmocka_unit_test(itf_is_read_only_when_asked_for_and_long_enough),
	    cmocka_unit_test(wrong_words_are_answered_with_2_and_nothing_on_stdout),
	    cmocka_unit_test(a_device_that_is_no_camera_is_a_fault_before_it_ends),
	    cmocka_unit_test(the_smallest_driver_sends_each_line_as_a_code),
	    cmocka_unit_test(a_log_is_played_at_its_times),
	    cmocka_unit_test(a_log_with_a_wrong_line_stops_there_with_its_number),
	};
	return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
