/* No memory: the n-th allocation fails, for every n until all is well. Each failure has its words, and nothing is half
 * done: what is refused was not stored, and the station goes on. */
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

#include "count/catalogue-import.h"
#include "run/core.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

/* Of this program and of every library in it. */
void *__libc_malloc(size_t size);
void *__libc_calloc(size_t n, size_t size);
void *__libc_realloc(void *old, size_t size);

static int64_t left = -1; /* allocations that still succeed; -1 all do */
static int failed;

static int fails(void)
{
	if (left < 0 || left-- > 0)
		return 0;
	left = -1; /* the one; what is tried afterwards must get on */
	failed = 1;
	errno = ENOMEM;
	return 1;
}

__attribute__((visibility("default"))) void *malloc(size_t size)
{
	return fails() ? NULL : __libc_malloc(size);
}

__attribute__((visibility("default"))) void *calloc(size_t n, size_t size)
{
	return fails() ? NULL : __libc_calloc(n, size);
}

__attribute__((visibility("default"))) void *realloc(void *old, size_t size)
{
	return fails() ? NULL : __libc_realloc(old, size);
}

static struct core core;
static char folder[FOLDER_MAX];

static int open_new(void)
{
	struct error e = {0};
	folder_make(folder);
	int n = core_open(&core, folder, &e);
	if (n < 0)
		fail_msg("%s", e.text);
	return n;
}

static int setup(void **state)
{
	(void)state;
	return open_new();
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static void has_words(const char *what, int64_t n, const struct error *e)
{
	if (!strstr(e->text, ": "))
		fail_msg("%s: allocation %lld failed, and it says: '%s'", what, (long long)n, e->text);
}

static void is_whole(int64_t events)
{
	struct error e = {0};
	struct chain chain;
	int64_t found;
	if (record_verify(core.record, &found, &chain, &e) < 0)
		fail_msg("%s", e.text);
	assert_int_equal(found, events);
	assert_int_equal(core.doubt.diverged, 0);
}

static struct event line_event(const char *key)
{
	struct event set = {.kind = EV_LINE_SET, .line = {.role = ROLE_OTHER, .per_pack = 1}};
	snprintf(set.line.key, sizeof set.line.key, "%s", key);
	snprintf(set.line.name, sizeof set.line.name, "line \"%s\"",
	         key); /* which only the strict reader reads */
	return set;
}

/* Stores all of them or nothing, whatever fails. */
static void storing_is_whole_or_not_at_all(void **state)
{
	int done = 0;
	(void)state;
	for (int64_t n = 0; !done; n++) {
		struct error e = {0};
		struct event events[] = {
		    line_event("A"),
		    {.kind = EV_STAFF_SET, .staff = {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0}},
		    {.kind = EV_QUARANTINED, .thing = {.line = "A"}, .text = "recalled"},
		    {.kind = EV_CASE_OPENED, .case_no = 1, .room = 1}};
		int64_t before = record_last(core.record, NULL);
		failed = 0;
		left = n;
		int r = core_store(&core, events, 4, &e);
		left = -1;
		done = !failed;
		if (r < 0) {
			has_words("storing", n, &e);
			assert_int_equal(core.station.catalogue.count, 0);
			assert_int_equal(core.station.staff.count, 0);
			assert_int_equal(core.station.n_quarantines, 0);
		}
		is_whole(r < 0 ? before : before + 4);
		if (r == 0 && !done) { /* it could do without; anew, for those that come after */
			teardown(NULL);
			open_new();
		}
	}
	assert_int_equal(core.station.catalogue.count, 1);
}

static void a_start_fails_in_words_and_leaves_the_record_as_it_was(void **state)
{
	struct event some[] = {line_event("A"), {.kind = EV_CASE_OPENED, .case_no = 1, .room = 1}};
	struct error e = {0};
	char as_it_was[FOLDER_MAX];
	int done = 0;
	(void)state;
	assert_int_equal(core_store(&core, some, 2, &e), 0);
	core_close(&core);
	folder_make(as_it_was);
	folder_copy(folder, as_it_was);
	for (int64_t n = 0; !done; n++) {
		core_close(&core);
		folder_remove(folder);
		folder_make(folder);
		folder_copy(as_it_was, folder);
		failed = 0;
		e = (struct error){0};
		left = n;
		int r = core_open(&core, folder, &e);
		left = -1;
		done = !failed;
		if (r == 0) {
			assert_string_equal(core.doubt.aside, "");
			assert_int_equal(core.station.n_unfollowed, 0);
			assert_int_equal(core.station.catalogue.count, 1);
			continue;
		}
		has_words("starting", n, &e);
		if (core_open(&core, folder, &e) < 0)
			fail_msg("after allocation %lld failed it does not start: %s", (long long)n, e.text);
		assert_string_equal(core.doubt.aside, "");
	}
	folder_remove(as_it_was);
}

static void a_slip_is_made_or_the_reason_is_said(void **state)
{
	struct event some[] = {{.kind = EV_CASE_OPENED, .case_no = 1, .room = 1},
	                       {.kind = EV_DIGIT_ON, .case_no = 1, .room = 1, .digit = 2},
	                       {.kind = EV_SLIP_QUEUED,
	                        .case_no = 1,
	                        .room = 1,
	                        .n = 1,
	                        .what = SLIP_RECONCILIATION,
	                        .other = 1}};
	struct error e = {0};
	int done = 0;
	(void)state;
	assert_int_equal(core_store(&core, some, 3, &e), 0);
	_cleanup_(json_drop) json_t *right = teller_slip(&core, 1, 1, SLIP_RECONCILIATION, 1, &e);
	assert_non_null(right);
	for (int64_t n = 0; !done; n++) {
		failed = 0;
		e = (struct error){0};
		left = n;
		_cleanup_(json_drop) json_t *slip = teller_slip(&core, 1, 1, SLIP_RECONCILIATION, 1, &e);
		left = -1;
		done = !failed;
		if (!slip)
			has_words("making a slip", n, &e);
		else if (json_object_size(slip) != json_object_size(right) ||
		         !json_equal(json_object_get(slip, "digits"), json_object_get(right, "digits")))
			fail_msg("allocation %lld failed, and the slip lacks something", (long long)n);
	}
}

static void a_catalogue_file_is_taken_whole_or_refused_in_words(void **state)
{
	static const char csv[] = "key,name,role,codes\nA,first,other,1\nB,second,other,2\n";
	struct error e = {0};
	int done = 0;
	(void)state;
	struct event set = line_event("A");
	assert_int_equal(core_store(&core, &set, 1, &e), 0);
	for (int64_t n = 0; !done; n++) {
		struct catalogue_import im = {0};
		failed = 0;
		e = (struct error){0};
		left = n;
		int r = catalogue_import_init(&im, &core.station.catalogue, csv, sizeof csv - 1, 1, &e);
		left = -1;
		done = !failed;
		if (r < 0)
			has_words("reading a catalogue", n, &e);
		else
			assert_int_equal(im.file.count, 2);
		catalogue_import_deinit(&im);
	}
}

int main(void)
{
#define STATION_TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
	    STATION_TEST(storing_is_whole_or_not_at_all),
	    STATION_TEST(a_start_fails_in_words_and_leaves_the_record_as_it_was),
	    STATION_TEST(a_slip_is_made_or_the_reason_is_said),
	    STATION_TEST(a_catalogue_file_is_taken_whole_or_refused_in_words),
	};
	setenv("TZ", "UTC", 1);
	json_watch_memory();
	if (access("/dev/shm", W_OK) == 0)
		setenv("TMPDIR", "/dev/shm", 0); /* no disk is waited for: durability is tested elsewhere */
	return cmocka_run_group_tests(tests, NULL, NULL);
}
