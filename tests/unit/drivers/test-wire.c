/* The lines between a driver and the daemon: what is refused, and that what is written is read back. */
#include <errno.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/wire.h"
#include "drivers/wire-writer.h"

static struct wire_line seen;
static struct error why;

static int read_text(const char *line)
{
	return wire_read_line(line, strlen(line), &seen, &why);
}

static void a_scan_keeps_its_separators_and_its_identifier(void **state)
{
	(void)state;
	assert_int_equal(read_text("{\"v\":1,\"scan\":{\"aim\":\"]C1\",\"data\":\"10AB\\u001d21X\"}}\n"), 0);
	assert_int_equal(seen.kind, WIRE_SCAN);
	assert_string_equal(seen.aim, "]C1");
	assert_int_equal(seen.data_size, 8);
	assert_memory_equal(seen.data,
	                    "10AB\x1d"
	                    "21X",
	                    8);
	assert_int_equal(read_text("{\"v\":1,\"scan\":{\"hex\":\"00fFa0\",\"more\":7}}"), 0);
	assert_int_equal(seen.data_size, 3);
	assert_memory_equal(seen.data, "\x00\xff\xa0", 3);
	assert_string_equal(seen.aim, "");
}

static void hello_and_fault_are_read(void **state)
{
	(void)state;
	assert_int_equal(read_text("{\"v\":1,\"hello\":{\"driver\":\"camera\",\"device\":\"/dev/video0\"}}"),
	                 0);
	assert_int_equal(seen.kind, WIRE_HELLO);
	assert_string_equal(seen.device, "/dev/video0");
	assert_int_equal(read_text("{\"v\":1,\"fault\":{\"code\":\"too-long\",\"text\":\"a: b: c\"}}"), 0);
	assert_int_equal(seen.kind, WIRE_FAULT);
	assert_string_equal(seen.code, "too-long");
	assert_string_equal(seen.uncertain, "");
	assert_int_equal(
	    read_text("{\"v\":1,\"fault\":{\"code\":\"uncertain\",\"text\":\"layout de; which: say it\","
	              "\"uncertain\":\"which: say it\"}}"),
	    0);
	assert_string_equal(seen.uncertain, "which: say it");
	assert_string_equal(seen.text, "layout de; which: say it");
}

static void every_other_line_is_refused_with_a_sentence(void **state)
{
	(void)state;
	static const char *const bad[] = {
	    "",
	    "{}",
	    "[1]",
	    "{\"v\":2,\"scan\":{\"data\":\"1\"}}",
	    "{\"v\":\"1\",\"scan\":{\"data\":\"1\"}}",
	    "{\"v\":1}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\"},\"fault\":{\"code\":\"x\",\"text\":\"\"}}",
	    "{\"v\":1,\"scan\":\"1\"}",
	    "{\"v\":1,\"scan\":{}}",
	    "{\"v\":1,\"scan\":{\"data\":\"\"}}",
	    "{\"v\":1,\"scan\":{\"hex\":\"\"}}",
	    "{\"v\":1,\"scan\":{\"data\":1}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\",\"hex\":\"31\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\",\"data\":\"2\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"a\\u0000b\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"\xff\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"\xc0\xaf\"}}",
	    "{\"v\":1,\"scan\":{\"hex\":\"3\"}}",
	    "{\"v\":1,\"scan\":{\"hex\":\"3g\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\",\"aim\":\"C1\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\",\"aim\":\"\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\",\"aim\":\"]C12\"}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\",\"file\":2}}",
	    "{\"v\":1,\"hello\":{\"driver\":\"\"}}",
	    "{\"v\":1,\"hello\":{\"driver\":\"Two Words\"}}",
	    "{\"v\":1,\"fault\":{\"code\":\"lost\"}}",
	    "{\"v\":1,\"fault\":{\"code\":\"\",\"text\":\"x\"}}",
	    "{\"v\":1,\"fault\":{\"code\":\"lost\",\"text\":\"x\",\"uncertain\":1}}",
	    "{\"v\":1,\"scan\":{\"data\":\"1\"}} x",
	    "{\"v\":1,\"scan\":{\"data\":\"1\"}}{\"v\":1}",
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		why.text[0] = '\0';
		if (read_text(bad[i]) != -EINVAL)
			fail_msg("taken: %s", bad[i]);
		assert_true(strlen(why.text) > 20);
	}
}

static void a_line_of_4096_bytes_is_read_and_one_more_is_not(void **state)
{
	(void)state;
	char line[WIRE_LINE_MAX + 2];
	int head = sprintf(line, "{\"v\":1,\"scan\":{\"data\":\"");
	memset(line + head, 'x', sizeof line - (size_t)head);
	memcpy(line + WIRE_LINE_MAX - 4, "\"}}\n", 4);
	assert_int_equal(wire_read_line(line, WIRE_LINE_MAX, &seen, &why), 0);
	assert_int_equal(seen.data_size, WIRE_LINE_MAX - 4 - (size_t)head);
	memcpy(line + WIRE_LINE_MAX - 4, "x\"}}\n", 5);
	assert_int_equal(wire_read_line(line, WIRE_LINE_MAX + 1, &seen, &why), -EMSGSIZE);
}

/* What was written to a pipe by `w`, at most one line. */
static size_t written(int fd, char *line)
{
	ssize_t n = read(fd, line, 2 * WIRE_LINE_MAX);
	return n > 0 ? (size_t)n : 0;
}

static void whatever_the_bytes_of_a_code_they_arrive_unchanged(void **state)
{
	(void)state;
	int end[2];
	char line[2 * WIRE_LINE_MAX], data[1500];
	assert_int_equal(pipe(end), 0);
	struct wire w = {.fd = end[1]};
	srand(17);
	for (int round = 0; round < 4000; round++) {
		size_t size = 1 + (size_t)rand() % (round % 10 ? 40 : sizeof data);
		int most = round % 3 == 0 ? 256 : round % 3 == 1 ? 128 : 4;
		for (size_t i = 0; i < size; i++)
			data[i] = (char)(rand() % most);
		struct wire_scan scan = {.aim = "]d2", .data = data, .size = size};
		if (round % 2)
			scan.file = "a \"name\"\xff.png";
		assert_int_equal(wire_scan(&w, &scan), 0);
		size_t n = written(end[0], line);
		assert_true(n <= WIRE_LINE_MAX && line[n - 1] == '\n');
		assert_int_equal(wire_read_line(line, n, &seen, &why), 0);
		assert_int_equal(seen.data_size, size);
		assert_memory_equal(seen.data, data, size);
		assert_string_equal(seen.file, round % 2 ? "a \"name\"?.png" : "");
	}
	close(end[0]);
	close(end[1]);
}

static void what_a_driver_does_not_know_yet_arrives_beside_its_sentence(void **state)
{
	(void)state;
	int end[2];
	char line[2 * WIRE_LINE_MAX];
	assert_int_equal(pipe(end), 0);
	struct wire w = {.fd = end[1]};
	assert_int_equal(wire_fault_uncertain(&w, "uncertain", "layout de; GS: not sent", "GS: not sent"), 0);
	assert_int_equal(wire_read_line(line, written(end[0], line), &seen, &why), 0);
	assert_string_equal(seen.text, "layout de; GS: not sent");
	assert_string_equal(seen.uncertain, "GS: not sent");
	assert_int_equal(wire_fault(&w, "learned", "layout de"), 0);
	assert_int_equal(wire_read_line(line, written(end[0], line), &seen, &why), 0);
	assert_string_equal(seen.uncertain, "");
	close(end[0]);
	close(end[1]);
}

static void a_code_too_long_for_a_line_is_a_fault_and_never_cut(void **state)
{
	(void)state;
	int end[2], longest = 0;
	char line[2 * WIRE_LINE_MAX], data[5000];
	assert_int_equal(pipe(end), 0);
	struct wire w = {.fd = end[1]};
	for (size_t size = 1900; size < sizeof data; size++) {
		memset(data, size % 2 ? 'x' : '\xfe', sizeof data);
		int r = wire_scan(&w, &(struct wire_scan){.aim = "]Q1", .data = data, .size = size});
		size_t n = written(end[0], line);
		assert_int_equal(wire_read_line(line, n, &seen, &why), 0);
		if (r == 0) {
			assert_int_equal(seen.data_size, size);
			longest = (int)size;
		} else {
			assert_int_equal(r, WIRE_TOO_LONG);
			assert_int_equal(seen.kind, WIRE_FAULT);
			assert_string_equal(seen.code, "too-long");
		}
	}
	assert_in_range(longest, 4040, 4070);
	close(end[0]);
	close(end[1]);
}

static void a_reader_that_has_gone_is_an_answer(void **state)
{
	(void)state;
	int end[2];
	assert_int_equal(pipe(end), 0);
	struct wire w = {.fd = end[1]};
	assert_false(wire_reader_gone(&w));
	close(end[0]);
	assert_true(wire_reader_gone(&w));
	assert_int_equal(wire_fault(&w, "lost", "x"), -EPIPE);
	close(end[1]);
}

static void a_picture_arrives_with_the_places_of_its_codes(void **state)
{
	(void)state;
	int end[2];
	char line[WIRE_LINE_MAX];
	assert_int_equal(pipe(end), 0);
	struct wire w = {.fd = end[1]};
	const struct wire_seen codes[] = {{100, 200, 300, 400, true}, {0, 0, 1000, 1000, false}};
	assert_int_equal(wire_picture(&w, "\xff\xd8\xff", 3, codes, 2), 0);
	ssize_t n = read(end[0], line, sizeof line);
	assert_int_equal(wire_read_line(line, (size_t)n, &seen, &why), 0);
	assert_int_equal(seen.kind, WIRE_PICTURE);
	assert_string_equal(seen.data, "/9j/");
	assert_int_equal(seen.n_seen, 2);
	assert_true(seen.seen[0].left == 100 && seen.seen[0].top == 200 && seen.seen[0].right == 300);
	assert_true(seen.seen[0].bottom == 400 && seen.seen[0].told && !seen.seen[1].told);
	close(end[0]);
	close(end[1]);
}

static void a_picture_without_its_form_is_refused(void **state)
{
	(void)state;
	static const char *const wrong[] = {
	    "{\"v\":1,\"picture\":{\"jpeg\":\"\",\"codes\":[]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"abc\",\"codes\":[]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"<b>=\",\"codes\":[]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"a==b\",\"codes\":[]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"abcd\"}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"abcd\",\"codes\":[[1,2,3,4]]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"abcd\",\"codes\":[[1,2,3,4,5]]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"abcd\",\"codes\":[[1,2,3,1001,true]]}}",
	    "{\"v\":1,\"picture\":{\"jpeg\":\"abcd\",\"codes\":[[3,2,1,4,true]]}}",
	    ("{\"v\":1,\"picture\":{\"jpeg\":\"abcd\",\"codes\":[[1,2,3,4,true],[1,2,3,4,true],[1,2,3,4,true]"
	     ","
	     "[1,2,3,4,true],[1,2,3,4,true]]}}"),
	};
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
		assert_int_equal(read_text(wrong[i]), -EINVAL);
	assert_int_equal(read_text("{\"v\":1,\"picture\":{\"jpeg\":\"abc=\",\"codes\":[[1,2,3,4,true]]}}"),
	                 0);
	assert_int_equal(
	    read_text("{\"v\":1,\"hello\":{\"driver\":\"camera\",\"device\":\"\",\"pictures\":true}}"), 0);
	assert_true(seen.pictures);
}

static void one_line_passes_on_and_two_in_one_do_not(void **state)
{
	(void)state;
	struct wire w = {.fd = -1};
	static const char two[] = "{\"v\":1,\n\"scan\":{\"data\":\"1\"}}";
	assert_int_equal(wire_pass_on(&w, two, strlen(two), &why), -EINVAL);
	assert_int_equal(wire_hello(&w, "No Word", ""), -EINVAL);
}

int main(void)
{
	signal(SIGPIPE, SIG_IGN);
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_scan_keeps_its_separators_and_its_identifier),
	    cmocka_unit_test(hello_and_fault_are_read),
	    cmocka_unit_test(every_other_line_is_refused_with_a_sentence),
	    cmocka_unit_test(a_line_of_4096_bytes_is_read_and_one_more_is_not),
	    cmocka_unit_test(whatever_the_bytes_of_a_code_they_arrive_unchanged),
	    cmocka_unit_test(what_a_driver_does_not_know_yet_arrives_beside_its_sentence),
	    cmocka_unit_test(a_code_too_long_for_a_line_is_a_fault_and_never_cut),
	    cmocka_unit_test(a_reader_that_has_gone_is_an_answer),
	    cmocka_unit_test(a_picture_arrives_with_the_places_of_its_codes),
	    cmocka_unit_test(a_picture_without_its_form_is_refused),
	    cmocka_unit_test(one_line_passes_on_and_two_in_one_do_not),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
