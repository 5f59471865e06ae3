/* The ground everything stands on: JSON in its canonical form, settings read strictly, buffers. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/clock.h"
#include "base/ini.h"
#include "base/json.h"
#include "base/own.h"

static void canonical(const char *in, const char *expected)
{
	struct error e;
	json_t *v = json_read(in, strlen(in), &e);
	assert_non_null(v);
	struct buf out = {0};
	assert_int_equal(json_write_canonical(v, &out), 0);
	assert_string_equal(out.data, expected);
	buf_free(&out);
	json_decref(v);
}

static void canonical_json_sorts_and_escapes_as_rfc_8785_says(void **state)
{
	(void)state;
	canonical("{ \"b\" : 1, \"a\" : [ true , null , \"x\" ] }", "{\"a\":[true,null,\"x\"],\"b\":1}");
	/* RFC 8785 section 3.2.2.2: control characters in lower-case hex, the short forms where they exist.
	 */
	canonical("\"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"/\"",
	          "\"\xe2\x82\xac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"");
	canonical("\"\\u001D\"", "\"\\u001d\"");
	canonical("[0, -1, 10, 9007199254740991, -9007199254740991]",
	          "[0,-1,10,9007199254740991,-9007199254740991]");
	/* RFC 8785 section 3.2.3: the sorting example, by UTF-16 code units (surrogates before U+FB33). */
	canonical(
	    "{\"\\u20ac\":1,\"\\r\":2,\"\\ufb33\":3,\"1\":4,\"\\ud83d\\ude00\":5,\"\\u0080\":6,\"\\u00f6\":"
	    "7}",
	    "{\"\\r\":2,\"1\":4,\"\xc2\x80\":6,\"\xc3\xb6\":7,\"\xe2\x82\xac\":1,\"\xf0\x9f\x98\x80\":5,"
	    "\"\xef\xac\xb3\":3}");
}

static void what_is_not_one_json_value_is_refused(void **state)
{
	(void)state;
	static const char *const bad[] = {"{\"a\":1,\"a\":2}", "{} {}",       "",
	                                  "{\"a\":\"\xff\"}",  "\"\\u0000\"", "[1,"};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct error e = {0};
		assert_null(json_read(bad[i], strlen(bad[i]), &e));
		assert_int_equal(e.code, -EINVAL);
		assert_non_null(strstr(e.text, "JSON"));
	}
	struct buf out = {0};
	json_t *real = json_real(1.5), *large = json_integer(JSON_INTEGER_MAX + 1LL);
	assert_int_equal(json_write_canonical(real, &out), -EINVAL);
	assert_int_equal(json_write_canonical(large, &out), -EINVAL);
	json_decref(real);
	json_decref(large);
	buf_free(&out);
}

static int keep(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	if (strcmp(value, "bad") == 0)
		return error_set(e, -EINVAL, "'%s' is not a number: give a number", name);
	return buf_printf(context, "%s.%s=%s;", section, name, value);
}

static int read_bytes(const char *bytes, size_t size, struct buf *out, struct error *e)
{
	char path[] = "/tmp/bandtally-ini-XXXXXX";
	int fd = mkstemp(path);
	assert_true(fd >= 0);
	assert_int_equal(write(fd, bytes, size), size);
	close(fd);
	int r = ini_read(path, keep, out, e);
	unlink(path);
	return r;
}

static int read_text(const char *text, struct buf *out, struct error *e)
{
	return read_bytes(text, strlen(text), out, e);
}

static void settings_are_read_strictly(void **state)
{
	(void)state;
	struct buf out = {0};
	struct error e = {0};
	assert_int_equal(read_text("# c\n[room]\nname = Theatre 1\n\n[x]\nname=2\n", &out, &e), 0);
	assert_string_equal(out.data, "room.name=Theatre 1;x.name=2;");
	buf_clear(&out);
	assert_int_equal(read_text("[a]\nb = 1\n c = 2\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 3"));
	assert_int_equal(read_text("[a]\nb = 1\nb = 2\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 3: given twice"));
	assert_int_equal(read_text("[a]\nb = bad\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 2: 'b' is not a number"));
	/* also where lines follow that are right, or wrong as well */
	assert_int_equal(read_text("[a]\nb = bad\nc = 3\nd = bad\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 2: 'b' is not a number"));
	char longer[400];
	memset(longer, 'x', sizeof longer);
	memcpy(longer, "[a]\nb = ", 8);
	longer[sizeof longer - 1] = 0;
	assert_int_equal(read_text(longer, &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 2: longer"));
	assert_int_equal(ini_read("/nonexistent/x.ini", keep, &out, &e), -ENOENT);
	buf_free(&out);
}

static void what_a_value_says_behind_a_semicolon_is_kept(void **state)
{
	struct buf out = {0};
	struct error e = {0};
	(void)state;
	assert_int_equal(
	    read_text("; all\n[a] ; here\nb = look at it ; feel it\t; and # too \nc = ; d\n;e = 1\n", &out,
	              &e),
	    0);
	assert_string_equal(out.data, "a.b=look at it ; feel it\t; and # too;a.c=; d;");
	buf_free(&out);
}

/* A form feed is a space to the library, and no editor shows it. */
static void a_settings_line_that_begins_with_any_space_is_refused(void **state)
{
	struct buf out = {0};
	struct error e = {0};
	(void)state;
	assert_int_equal(read_text("[a]\nb = 1\n\fc = 2\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 3: begins with a space"));
	assert_int_equal(read_text("[a]\nb = 1\n\v[c]\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 3: begins with a space"));
	buf_clear(&out);
	assert_int_equal(read_text("[a]\n\f\nb = 1\n", &out, &e), 0);
	buf_free(&out);
}

/* The library would read neither, and say nothing. */
static void a_setting_that_the_library_passes_over_is_refused(void **state)
{
	struct buf out = {0};
	struct error e = {0};
	(void)state;
	assert_int_equal(read_text("[a] b = 1\n", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 1: something stands behind the [section]"));
	assert_int_equal(read_text("# all\r[a]\rb = 1\r", &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 1: its lines end as in no text"));
	buf_clear(&out);
	assert_int_equal(read_text("[a] \t; of this room\r\nb = 1\r\n[c]\t# too\r\nd = 2\r", &out, &e), 0);
	assert_string_equal(out.data, "a.b=1;c.d=2;");
	buf_free(&out);
}

/* The library reads a line up to its first NUL, and would pass over a setting behind it without a word. */
static void a_settings_line_with_a_nul_in_it_is_refused(void **state)
{
	static const char bytes[] = "[a]\nb = 1\n\0c = 2\n", cut[] = "[a]\nb = 1\0 2";
	struct buf out = {0};
	struct error e = {0};
	(void)state;
	assert_int_equal(read_bytes(bytes, sizeof bytes - 1, &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 3: holds a byte that is no letter"));
	assert_int_equal(read_bytes(cut, sizeof cut - 1, &out, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 2: holds a byte that is no letter"));
	buf_free(&out);
}

static void an_error_says_where_it_was_born(void **state)
{
	struct error e = {0};
	struct origin at = {0};
	(void)state;
	int line = __LINE__ + 1;
	assert_int_equal(error_set(&e, -EINVAL, "%d is odd: it cannot be halved: give another", 3), -EINVAL);
	assert_string_equal(e.at.file, "test-base.c");
	assert_int_equal(e.at.line, line);
	assert_int_equal(error_set(NULL, -ENOENT, "nobody asks"), -ENOENT);
	assert_int_equal(ERROR_AT(&at, -ENOSPC), -ENOSPC);
	assert_string_equal(at.file, "test-base.c");
	assert_true(at.line > line);
	assert_int_equal(ERROR_AT(NULL, -ENOSPC), -ENOSPC);
}

static void times_are_written_in_local_civil_time(void **state)
{
	(void)state;
	setenv("TZ", "UTC-1", 1);
	char hm[6], full[26], date[11];
	assert_int_equal(clock_utc_min(1764070867000), 60);
	clock_text_hm(1764070867000, 60, hm);
	clock_text_full(1764070867000, 60, full);
	clock_text_date(1764070867000, 60, date);
	assert_string_equal(hm, "12:41");
	assert_string_equal(full, "2025-11-25T12:41:07+01:00");
	assert_string_equal(date, "2025-11-25");
	assert_int_equal(clock_date_number(1764070867000, 60), 20251125);
	char id[33];
	assert_int_equal(clock_boot_id(id), 0);
	assert_int_equal(strlen(id), 32);
}

static void what_comes_with_a_program_is_found_from_its_own_file(void **state)
{
	(void)state;
	char path[200], small[4];
	assert_int_equal(own_path(path, sizeof path, "test-base"), 0);
	assert_int_equal(access(path, X_OK), 0);
	assert_int_equal(own_path(small, sizeof small, "test-base"), -ENAMETOOLONG);
	assert_string_equal(small, "");
	unsetenv("OWN_OF_TESTS");
	assert_string_equal(own_file("OWN_OF_TESTS", "/etc", "test-base", path, sizeof path), "/etc");
	assert_ptr_equal(own_file("OWN_OF_TESTS", "/nonexistent", "test-base", path, sizeof path), path);
	assert_int_equal(access(path, X_OK), 0);
	setenv("OWN_OF_TESTS", "/elsewhere", 1);
	assert_string_equal(own_file("OWN_OF_TESTS", "/etc", "test-base", path, sizeof path), "/elsewhere");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(canonical_json_sorts_and_escapes_as_rfc_8785_says),
	    cmocka_unit_test(what_is_not_one_json_value_is_refused),
	    cmocka_unit_test(settings_are_read_strictly),
	    cmocka_unit_test(what_a_value_says_behind_a_semicolon_is_kept),
	    cmocka_unit_test(a_settings_line_that_begins_with_any_space_is_refused),
	    cmocka_unit_test(a_setting_that_the_library_passes_over_is_refused),
	    cmocka_unit_test(a_settings_line_with_a_nul_in_it_is_refused),
	    cmocka_unit_test(an_error_says_where_it_was_born),
	    cmocka_unit_test(times_are_written_in_local_civil_time),
	    cmocka_unit_test(what_comes_with_a_program_is_found_from_its_own_file),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
