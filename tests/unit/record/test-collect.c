/* A copy that is made event by event is the record it is a copy of, and takes nothing that does not follow. */
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

#include "record/chain.h"
#include "record/collect.h"
#include "tests/unit/record/folder.h"

#define STARTED "{\"boot\":1,\"boot_ms\":1,\"kind\":\"started\",\"n\":1,\"seq\":1,\"v\":2,\"wall_ms\":5}"
#define ALIVE(seq) "{\"boot\":1,\"boot_ms\":2,\"kind\":\"alive\",\"seq\":" seq ",\"v\":2,\"wall_ms\":6}"
#define LATER                                                                                                \
	"{\"boot\":1,\"boot_ms\":3,\"case\":7,\"kind\":\"of-a-later-version\",\"seq\":3,\"v\":9,\"wall_"     \
	"ms\":7}"

static char folder[FOLDER_MAX], file[FOLDER_MAX + 16];
static struct record *r;
static struct chain chain; /* of what was added */

static struct line_event line_of(int64_t seq, const char *text)
{
	static char hex[2 * CHAIN_BYTES + 1];
	chain_add(&chain, text, strlen(text));
	chain_hex(&chain, hex);
	return (struct line_event){.text = text, .size = strlen(text), .hash = hex, .seq = seq};
}

static int add(int64_t seq, const char *text, struct error *e)
{
	struct line_event line = line_of(seq, text);
	return collect_add(r, &line, e);
}

static void open_again(int32_t incarnation, int64_t last)
{
	struct error e = {0};
	int32_t had = -1;
	record_close(r);
	r = NULL;
	if (collect_open(&r, file, &had, &e) < 0)
		fail_msg("%s", e.text);
	assert_int_equal(had, incarnation);
	assert_int_equal(record_last(r, &chain), last);
}

static int begin(void **state)
{
	(void)state;
	folder_make(folder);
	snprintf(file, sizeof file, "%s/BC-01.db", folder);
	memset(&chain, 0, sizeof chain);
	return 0;
}

static int end(void **state)
{
	(void)state;
	record_close(r);
	r = NULL;
	folder_remove(folder);
	return 0;
}

static void what_was_committed_is_there_and_nothing_else(void **state)
{
	struct error e = {0};
	(void)state;
	open_again(0, 0);
	assert_int_equal(add(1, STARTED, &e), 0);
	assert_int_equal(add(2, ALIVE("2"), &e), 0);
	assert_int_equal(collect_commit(r, 3, &e), 0);
	assert_int_equal(add(3, ALIVE("3"), &e), 0);
	open_again(3, 2);
	struct event ev;
	assert_int_equal(record_event_at(r, 1, &ev), 0);
	assert_int_equal(ev.kind, EV_STARTED);
	assert_int_equal(record_event_at(r, 3, &ev), -ENOENT);
	assert_int_equal(add(3, ALIVE("3"), &e), 0);
	assert_int_equal(collect_commit(r, 4, &e), 0);
	open_again(4, 3);
	int64_t events = 0;
	assert_int_equal(record_verify(r, &events, &chain, &e), 0);
	assert_int_equal(events, 3);
}

/* A station of a later version: its record has that event, and so has the copy. */
static void what_cannot_be_read_is_kept_as_it_is(void **state)
{
	struct error e = {0};
	struct event ev;
	(void)state;
	open_again(0, 0);
	assert_int_equal(add(1, STARTED, &e), 0);
	assert_int_equal(add(2, ALIVE("2"), &e), 0);
	assert_int_equal(add(3, LATER, &e), 0);
	assert_int_equal(add(4, ALIVE("4"), &e), 0);
	assert_int_equal(collect_commit(r, 1, &e), 0);
	open_again(1, 4);
	assert_true(record_event_at(r, 3, &ev) < 0);
	assert_int_equal(record_event_at(r, 4, &ev), 0);
}

static void what_does_not_follow_is_not_taken(void **state)
{
	struct error e = {0};
	(void)state;
	open_again(0, 0);
	assert_int_equal(add(1, STARTED, &e), 0);
	assert_int_equal(collect_commit(r, 1, &e), 0);
	struct chain at = chain;
	assert_int_equal(add(3, ALIVE("3"), &e), -EBADMSG);
	assert_non_null(strstr(e.text, "event 3 of the store does not follow"));
	chain = at;
	struct line_event changed = line_of(2, ALIVE("2"));
	changed.text = ALIVE("8");
	assert_int_equal(collect_add(r, &changed, &e), -EBADMSG);
	assert_non_null(strstr(e.text, "bt.broken()"));
	open_again(1, 1);
	assert_int_equal(add(2, ALIVE("2"), &e), 0);
}

static void what_is_no_copy_is_said(void **state)
{
	struct error e = {0};
	int32_t had = 0;
	(void)state;
	FILE *f = fopen(file, "we");
	assert_non_null(f);
	fputs("a list of instruments, and no record at all: long enough to be looked at as one", f);
	for (int i = 0; i < 600; i++)
		fputs(" and more of it", f);
	fclose(f);
	assert_int_equal(collect_open(&r, file, &had, &e), -EUCLEAN);
	assert_null(r);
	snprintf(file, sizeof file, "%s/none/BC-01.db", folder);
	assert_int_equal(collect_open(&r, file, &had, &e), -EACCES);
}

static void a_copy_of_another_version_is_said(void **state)
{
	struct error e = {0};
	struct record *own = NULL;
	int32_t had = 0;
	char other[FOLDER_MAX + 24];
	(void)state;
	assert_int_equal(record_open(&own, folder, &e), 0); /* a record that was only begun: schema 1 */
	record_close(own);
	snprintf(other, sizeof other, "%s/" RECORD_FILE, folder);
	assert_int_equal(rename(other, file), 0);
	assert_int_equal(collect_open(&r, file, &had, &e), -EUCLEAN);
	assert_non_null(strstr(e.text, "another version"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup_teardown(what_was_committed_is_there_and_nothing_else, begin, end),
	    cmocka_unit_test_setup_teardown(what_cannot_be_read_is_kept_as_it_is, begin, end),
	    cmocka_unit_test_setup_teardown(what_does_not_follow_is_not_taken, begin, end),
	    cmocka_unit_test_setup_teardown(what_is_no_copy_is_said, begin, end),
	    cmocka_unit_test_setup_teardown(a_copy_of_another_version_is_said, begin, end),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
