/* What a file in the second place says of a record, and that anything else says nothing. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "record/head.h"
#include "record/hospital-file.h"
#include "tests/unit/record/folder.h"

#define HASH "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"
#define HEAD(first, hash, rest) "{\"case\":" first ",\"hash\":\"" hash "\",\"incarnation\":1," rest "}"

static char folder[FOLDER_MAX], file[FOLDER_MAX + 16];

static void write_text(const char *text)
{
	FILE *f = fopen(file, "we");
	assert_non_null(f);
	fputs(text, f);
	assert_int_equal(fclose(f), 0);
}

static void what_is_no_head_is_refused(void **state)
{
	static const char *const bad[] = {
	    "",
	    "{}",
	    "[1]",
	    HEAD("1", HASH, "\"item\":1,\"seq\":1,\"slip\":1"),
	    HEAD("1", HASH, "\"item\":1,\"seq\":1,\"slip\":1,\"v\":2"),
	    HEAD("1", HASH, "\"item\":1,\"seq\":0,\"slip\":1,\"v\":1"),
	    HEAD("1", HASH, "\"item\":1,\"seq\":\"1\",\"slip\":1,\"v\":1"),
	    HEAD("1", HASH, "\"item\":100000000,\"seq\":1,\"slip\":1,\"v\":1"),
	    HEAD("1", HASH, "\"item\":1,\"seq\":1,\"slip\":2147483648,\"v\":1"),
	    HEAD("1", HASH, "\"item\":1,\"seq\":1,\"slip\":-1,\"v\":1"),
	    HEAD("2147483648", HASH, "\"item\":1,\"seq\":1,\"slip\":1,\"v\":1"),
	    HEAD("1", HASH "0", "\"item\":1,\"seq\":1,\"slip\":1,\"v\":1"),
	    HEAD("1", "0011", "\"item\":1,\"seq\":1,\"slip\":1,\"v\":1"),
	    HEAD("1", "0011223344556677x899aabbccddeeff00112233445566778899aabbccddeeff",
	         "\"item\":1,\"seq\":1,\"slip\":1,\"v\":1"),
	    "{\"case\":1,\"hash\":\"" HASH "\",\"incarnation\":0,\"item\":1,\"seq\":1,\"slip\":1,\"v\":1}",
	};
	struct noted head;
	struct error e = {0};
	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		write_text(bad[i]);
		memset(&head, 7, sizeof head);
		if (head_read(&head, file, &e) != -EINVAL)
			fail_msg("taken for a head: %s", bad[i]);
		assert_int_equal(head.head.seq, 0);
		assert_int_equal(head.incarnation, 0);
		assert_non_null(strstr(e.text, "is not a record's head"));
	}
	write_text(HEAD("41", HASH, "\"item\":120,\"seq\":2345,\"slip\":17,\"v\":1"));
	assert_int_equal(head_read(&head, file, &e), 0);
	assert_int_equal(head.head.seq, 2345);
	assert_int_equal(head.head.case_no, 41);
	assert_int_equal(head.head.slip, 17);
	assert_int_equal(head.head.item, 120);
	assert_string_equal(head.head.hash, HASH);
}

static void it_lies_where_it_is_named_or_where_it_always_did(void **state)
{
	char out[HEAD_PLACE_MAX];
	(void)state;
	head_place(out, "/data", NULL, "");
	assert_string_equal(out, "/data/head");
	head_place(out, "/data", "/other", "");
	assert_string_equal(out, "/other");
	head_place(out, "/data", "/other", "/named");
	assert_string_equal(out, "/named");
	head_place(out, "/data", NULL, "/named");
	assert_string_equal(out, "/named");
}

static void a_record_is_held_behind_or_another(void **state)
{
	struct error e = {0};
	struct record *r = NULL;
	struct chain chain;
	struct head head = {.seq = 2};
	struct event events[] = {{.kind = EV_ALIVE}, {.kind = EV_ALIVE}, {.kind = EV_ALIVE}};
	(void)state;
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, events, 2, &e), 0);
	record_last(r, &chain);
	chain_hex(&chain, head.hash);
	assert_int_equal(head_compare(r, &head), HEAD_HELD);
	assert_int_equal(record_append(r, &events[2], 1, &e), 0);
	assert_int_equal(head_compare(r, &head), HEAD_HELD); /* it has gone on */
	head.seq = 3;
	assert_int_equal(head_compare(r, &head), HEAD_OTHER);
	head.seq = 4;
	assert_int_equal(head_compare(r, &head), HEAD_BEHIND);
	record_close(r);
}

/* Else it could not be written again either, and what the store keeps would be lost at each start. */
static void what_is_noted_of_a_store_and_out_of_range_was_not_said(void **state)
{
	struct hospital_noted noted;
	char path[FOLDER_MAX + 24];
	(void)state;
	snprintf(path, sizeof path, "%s/hospital.json", folder);
	FILE *f = fopen(path, "we");
	assert_non_null(f);
	fputs("{\"contact\":17666666666660000,\"kept\":17,\"lists\":-1,\"timeline\":4294967297}", f);
	assert_int_equal(fclose(f), 0);
	assert_int_equal(hospital_read(&noted, folder), 0);
	assert_int_equal(noted.kept, 17);
	assert_int_equal(noted.contact_ms, 0);
	assert_int_equal(noted.lists, 0);
	assert_int_equal(noted.timeline, 0);
	assert_int_equal(hospital_write(&noted, folder), 0);
	/* 64 bytes fit, and the 64th is the first half of a letter. */
	f = fopen(path, "we");
	assert_non_null(f);
	fputs("{\"hash\":\"", f);
	for (int i = 0; i < 63; i++)
		fputc('0', f);
	fputs("\xc3\xa4\",\"kept\":18,\"server\":\"0123456789012345678901234567\"}", f);
	assert_int_equal(fclose(f), 0);
	assert_int_equal(hospital_read(&noted, folder), 0);
	assert_int_equal(noted.kept, 18);
	assert_string_equal(noted.hash, "");
	assert_string_equal(noted.server, "");
	assert_int_equal(hospital_write(&noted, folder), 0);
}

static int set_up(void **state)
{
	(void)state;
	folder_make(folder);
	snprintf(file, sizeof file, "%s/" HEAD_FILE, folder);
	return 0;
}

static int tear_down(void **state)
{
	(void)state;
	folder_remove(folder);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_is_no_head_is_refused),
	    cmocka_unit_test(what_is_noted_of_a_store_and_out_of_range_was_not_said),
	    cmocka_unit_test(it_lies_where_it_is_named_or_where_it_always_did),
	    cmocka_unit_test(a_record_is_held_behind_or_another),
	};
	return cmocka_run_group_tests(tests, set_up, tear_down);
}
