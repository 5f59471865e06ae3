/* Where a code begins and ends on a serial line, and what a bad byte does to it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "drivers/serial-line.h"

static struct serial_line l;

static void quiet_line(void)
{
	l = (struct serial_line){0};
	serial_line_begin(&l, 0);
	assert_int_equal(serial_line_tick(&l, SERIAL_SETTLE_MS), SERIAL_NOTHING);
}

/* Feeds bytes until one gives a result; how many were taken in `*taken`. */
static enum serial_result feed(const char *bytes, size_t size)
{
	for (size_t i = 0; i < size; i++) {
		enum serial_result r = serial_line_byte(&l, (unsigned char)bytes[i], 1000);
		if (r != SERIAL_NOTHING) {
			l.code[l.size] = '\0';
			return r;
		}
	}
	return SERIAL_NOTHING;
}
#define FEED(text) feed(text, sizeof text - 1)

static void a_carriage_return_or_a_line_feed_ends_a_code(void **state)
{
	(void)state;
	quiet_line();
	assert_int_equal(FEED("10AB\x1d"
	                      "21C\r"),
	                 SERIAL_CODE);
	assert_string_equal(l.code, "10AB\x1d"
	                            "21C");
	serial_line_clear(&l);
	assert_int_equal(FEED("\n"), SERIAL_NOTHING); /* the line feed behind it is no code */
	assert_int_equal(FEED("X\n"), SERIAL_CODE);
}

static void prefix_and_suffix_are_taken_off_and_must_be_there(void **state)
{
	(void)state;
	quiet_line();
	memcpy(l.prefix, "\x02", l.prefix_size = 1);
	memcpy(l.suffix, "\x03\r", l.suffix_size = 2);
	assert_int_equal(FEED("\x02"
	                      "A\rB\x03\r"),
	                 SERIAL_CODE);
	assert_string_equal(l.code, "A\rB");
	serial_line_clear(&l);
	assert_int_equal(FEED("B\x03\r"), SERIAL_BARE);
	serial_line_clear(&l);
	assert_int_equal(FEED("\x02\x03\r"), SERIAL_BARE); /* nothing between them is no code either */
}

static void silence_ends_a_code_where_nothing_else_does(void **state)
{
	(void)state;
	quiet_line();
	l.silence = true;
	assert_int_equal(FEED("A\rB"), SERIAL_NOTHING);
	assert_int_equal(serial_line_tick(&l, 1000 + SERIAL_SILENCE_MS), SERIAL_CODE);
	assert_int_equal(l.size, 3);
}

static void a_code_without_its_end_is_partial(void **state)
{
	(void)state;
	quiet_line();
	assert_int_equal(FEED("AB"), SERIAL_NOTHING);
	assert_int_equal(serial_line_tick(&l, 1000 + SERIAL_UNFINISHED_MS), SERIAL_PARTIAL);
	assert_int_equal(l.size, 2);
}

/* termios(3): with PARMRK a bad byte is \377 \0 byte, a break \377 \0 \0, a real \377 is doubled. */
static void a_bad_byte_takes_the_whole_code_with_it(void **state)
{
	(void)state;
	quiet_line();
	assert_int_equal(FEED("AB\xff\x00"
	                      "C"),
	                 SERIAL_ERROR);
	assert_int_equal(l.size, 2);
	serial_line_clear(&l);
	assert_int_equal(FEED("DE\xff\x00"
	                      "Z\r"),
	                 SERIAL_NOTHING); /* the rest, thrown away without another word */
	assert_int_equal(FEED("WHOLE\r"), SERIAL_CODE);
	assert_string_equal(l.code, "WHOLE");
	serial_line_clear(&l);
	assert_int_equal(FEED("\xff\x00\x00"), SERIAL_BREAK);
	assert_int_equal(serial_line_tick(&l, 1000 + SERIAL_SETTLE_MS), SERIAL_NOTHING);
	assert_int_equal(FEED("\xff\xff\r"), SERIAL_CODE);
	assert_int_equal(l.size, 1);
	assert_int_equal((unsigned char)l.code[0], 0xff);
}

static void what_was_under_way_at_the_opening_is_no_code(void **state)
{
	(void)state;
	l = (struct serial_line){0};
	serial_line_begin(&l, 900);
	assert_int_equal(FEED("end of something\r"), SERIAL_SKIPPED);
	serial_line_clear(&l);
	assert_int_equal(FEED("A\r"), SERIAL_CODE);
}

static void a_bad_byte_in_the_first_code_is_told_as_well(void **state)
{
	(void)state;
	l = (struct serial_line){0};
	serial_line_begin(&l, 900);
	assert_int_equal(FEED("AB\xff\x00"
	                      "C"),
	                 SERIAL_ERROR);
}

static void noise_without_an_end_is_told_once(void **state)
{
	(void)state;
	quiet_line();
	int told = 0;
	for (int i = 0; i < 3 * SERIAL_CODE_MAX; i++)
		if (serial_line_byte(&l, 'A', 1000) == SERIAL_LONG) {
			told++;
			serial_line_clear(&l);
		}
	assert_int_equal(told, 1);
	assert_int_equal(FEED("\r"), SERIAL_NOTHING);
	assert_int_equal(FEED("B\r"), SERIAL_CODE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_carriage_return_or_a_line_feed_ends_a_code),
	    cmocka_unit_test(prefix_and_suffix_are_taken_off_and_must_be_there),
	    cmocka_unit_test(silence_ends_a_code_where_nothing_else_does),
	    cmocka_unit_test(a_code_without_its_end_is_partial),
	    cmocka_unit_test(a_bad_byte_takes_the_whole_code_with_it),
	    cmocka_unit_test(what_was_under_way_at_the_opening_is_no_code),
	    cmocka_unit_test(a_bad_byte_in_the_first_code_is_told_as_well),
	    cmocka_unit_test(noise_without_an_end_is_told_once),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
