/* A summary is what going through the whole record would give, whatever file lies where it is kept. */
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
#include <unistd.h>

#include <cmocka.h>

#include "record/summary.h"
#include "tell/outline.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

static void *begin_fold(void)
{
	return outline_new();
}
static void end_fold(void *own)
{
	outline_free(own);
}
static int row_fold(void *own, const struct event *events, int count, struct moment now, int first,
                    struct case_row *row)
{
	return outline_make(own, events, count, now, first, row);
}
static const struct summary_fold fold = {OUTLINE_FOLD, begin_fold, end_fold, row_fold};
static const struct summary_fold later_fold = {OUTLINE_FOLD + 1, begin_fold, end_fold, row_fold};

struct scene {
	char folder[FOLDER_MAX], copy[FOLDER_MAX + 16], cache[FOLDER_MAX + 16];
	struct record *record, *read;
	struct history h;
	struct error e;
};

static int begin(void **state)
{
	struct scene *s = calloc(1, sizeof *s);
	*state = s;
	folder_make(s->folder);
	snprintf(s->copy, sizeof s->copy, "%s/copy.db", s->folder);
	snprintf(s->cache, sizeof s->cache, "%s/summary", s->folder);
	assert_int_equal(record_open(&s->record, s->folder, &s->e), 0);
	assert_int_equal(history_init(&s->h, s->record, 5, 500), 0);
	return 0;
}

static int end(void **state)
{
	struct scene *s = *state;
	record_close(s->read);
	history_deinit(&s->h);
	record_close(s->record);
	folder_remove(s->folder);
	free(s);
	return 0;
}

static void go_on(struct scene *s, int steps)
{
	for (int i = 0; i < steps; i++)
		if (history_step(&s->h) < 0)
			fail_msg("step %d: %s", i, s->h.error.text);
	assert_int_equal(history_flush(&s->h), 0);
	record_close(s->read);
	s->read = NULL;
	unlink(s->copy);
	assert_int_equal(record_copy_start(s->record, s->copy, &s->e), 0);
	int n;
	while ((n = record_copy_step(s->record, 100, &s->e)) > 0)
		;
	assert_int_equal(n, 0);
	assert_int_equal(record_open_copy(&s->read, s->copy, &s->e), 0);
}

static struct summary get(struct scene *s, const char *cache, const struct summary_fold *by)
{
	struct summary got;
	int n = summary_get(&got, s->read, s->copy, cache, by, &s->e);
	if (n < 0)
		fail_msg("%s", s->e.text);
	return got;
}

/* As it is without any file. */
static void is_whole(struct scene *s, const struct summary *got)
{
	struct summary anew = get(s, "", &fold);
	assert_int_equal(got->count, anew.count);
	assert_int_equal(got->seq, record_end(s->read));
	assert_memory_equal(got->rows, anew.rows, anew.count * sizeof *anew.rows);
	assert_int_equal(got->n_stops, anew.n_stops);
	if (anew.n_stops)
		assert_memory_equal(got->stops, anew.stops, anew.n_stops * sizeof *anew.stops);
	summary_deinit(&anew);
}

static void it_grows_with_the_record(void **state)
{
	struct scene *s = *state;
	int64_t told_first = 0;
	for (int round = 0; round < 4; round++) {
		go_on(s, 400);
		struct summary got = get(s, s->cache, &fold);
		assert_null(got.anew);
		is_whole(s, &got);
		if (round == 0)
			told_first = got.told;
		else
			assert_true(got.kept > 0 && got.told < 3 * told_first);
		assert_true(got.count > 3);
		for (size_t i = 1; i < got.count; i++)
			assert_true(got.rows[i - 1].first_seq < got.rows[i].first_seq);
		summary_deinit(&got);
	}
	struct summary again = get(s, s->cache, &fold);
	is_whole(s, &again);
	summary_deinit(&again);
}

static int count_stop(void *context, const struct event *e)
{
	assert_int_equal(e->kind, EV_QUARANTINED);
	++*(int *)context;
	return 0;
}

static int count_all(void *context, const struct event *e)
{
	*(int *)context += e->kind == EV_QUARANTINED;
	return 0;
}

static void it_knows_what_was_stopped(void **state)
{
	struct scene *s = *state;
	for (int round = 0; round < 2; round++) {
		int stops = 0, want = 0;
		go_on(s, 700);
		struct summary got = get(s, s->cache, &fold);
		assert_int_equal(summary_each_stop(&got, EV_QUARANTINED, count_stop, &stops, &s->e), 0);
		assert_int_equal(record_each(s->read, 0, count_all, &want, &s->e), 0);
		assert_true(want > 0);
		assert_int_equal(stops, want);
		is_whole(s, &got);
		summary_deinit(&got);
	}
}

/* Nothing was scanned meanwhile, but time went on. */
static void the_clock_of_an_open_case_runs_on(void **state)
{
	struct scene *s = *state;
	struct event alive = {.kind = EV_ALIVE};
	int open = 0;
	go_on(s, 300);
	struct summary got = get(s, s->cache, &fold);
	for (size_t i = 0; i < got.count; i++)
		open += got.rows[i].end == CASE_OPEN && got.rows[i].n_digits && got.rows[i].digits[0].on;
	assert_true(open > 0);
	summary_deinit(&got);
	s->h.now.boot_ms += 3600000;
	s->h.now.wall_ms += 3600000;
	alive.at = s->h.now;
	assert_int_equal(history_store(&s->h, &alive, 1), 0);
	go_on(s, 0);
	got = get(s, s->cache, &fold);
	is_whole(s, &got);
	summary_deinit(&got);
}

/* One byte of the file otherwise: at each place it is either thrown away or of no meaning. */
static void a_damaged_file_is_thrown_away(void **state)
{
	struct scene *s = *state;
	struct stat st;
	go_on(s, 300);
	struct summary got = get(s, s->cache, &fold);
	summary_deinit(&got);
	assert_int_equal(stat(s->cache, &st), 0);
	for (off_t at = 0; at < st.st_size; at += at < 200 ? 1 : 997) {
		int fd = open(s->cache, O_RDWR | O_CLOEXEC);
		char byte;
		assert_int_equal(pread(fd, &byte, 1, at), 1);
		byte = (char)(byte ^ 0x41);
		assert_int_equal(pwrite(fd, &byte, 1, at), 1);
		close(fd);
		got = get(s, s->cache, &fold);
		assert_non_null(got.anew);
		is_whole(s, &got);
		summary_deinit(&got);
		if (at >= 6)
			continue;
		/* what does not begin as a summary may be anything, and is not written over */
		got = get(s, s->cache, &fold);
		assert_string_equal(got.anew, "it is no summary");
		summary_deinit(&got);
		assert_int_equal(unlink(s->cache), 0);
		got = get(s, s->cache, &fold);
		summary_deinit(&got);
	}
	assert_int_equal(truncate(s->cache, st.st_size - 1), 0);
	got = get(s, s->cache, &fold);
	assert_string_equal(got.anew, "it is damaged");
	summary_deinit(&got);
}

static void that_of_another_record_or_version_is_thrown_away(void **state)
{
	struct scene *s = *state;
	go_on(s, 300);
	struct summary got = get(s, s->cache, &later_fold);
	summary_deinit(&got);
	got = get(s, s->cache, &fold);
	assert_string_equal(got.anew, "another version made it");
	summary_deinit(&got);
	struct scene other;
	void *p = NULL;
	begin(&p);
	other = *(struct scene *)p;
	other.h.random = 99;
	*(struct scene *)p = other;
	go_on(p, 500);
	struct summary of_other = get(p, s->cache, &fold);
	assert_string_equal(of_other.anew, "it is of another record, or of what this one was before");
	is_whole(p, &of_other);
	summary_deinit(&of_other);
	end(&p);
}

static void where_it_cannot_be_kept_it_is_made_all_the_same(void **state)
{
	struct scene *s = *state;
	struct summary got;
	go_on(s, 200);
	assert_int_equal(summary_get(&got, s->read, s->copy, "/proc/none/summary", &fold, &s->e), 1);
	assert_non_null(strstr(s->e.text, "cannot be kept"));
	is_whole(s, &got);
	summary_deinit(&got);
}

static int count_row(void *to, const struct case_row *row)
{
	assert_int_equal(row->room, 1);
	++*(int *)to;
	return 0;
}

static int count_batch(void *to, const struct pack_batch *batch)
{
	*(int *)to += batch->count;
	return 0;
}

static void it_answers_by_day_and_room(void **state)
{
	struct scene *s = *state;
	int rows = 0, want = 0, packs = 0;
	go_on(s, 600);
	struct summary got = get(s, "", &fold);
	struct source from = summary_source(&got);
	int32_t first = got.rows[0].day, last = got.rows[got.count - 1].day;
	for (size_t i = 0; i < got.count; i++)
		want += got.rows[i].room == 1 && got.rows[i].day <= last;
	assert_int_equal(
	    from.cases(from.context, (struct source_span){first, last}, 1, count_row, &rows, &s->e), 0);
	assert_int_equal(rows, want);
	assert_true(want > 0);
	rows = 0;
	from.cases(from.context, (struct source_span){last + 1, last + 2}, 1, count_row, &rows, &s->e);
	from.cases(from.context, (struct source_span){first - 2, first - 1}, 1, count_row, &rows, &s->e);
	assert_int_equal(rows, 0);
	assert_int_equal(
	    from.batches(from.context, (struct source_span){first, last}, count_batch, &packs, &s->e), 0);
	assert_int_equal(packs, s->h.st.last_item_no);
	summary_deinit(&got);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup_teardown(it_grows_with_the_record, begin, end),
	    cmocka_unit_test_setup_teardown(it_knows_what_was_stopped, begin, end),
	    cmocka_unit_test_setup_teardown(the_clock_of_an_open_case_runs_on, begin, end),
	    cmocka_unit_test_setup_teardown(a_damaged_file_is_thrown_away, begin, end),
	    cmocka_unit_test_setup_teardown(that_of_another_record_or_version_is_thrown_away, begin, end),
	    cmocka_unit_test_setup_teardown(where_it_cannot_be_kept_it_is_made_all_the_same, begin, end),
	    cmocka_unit_test_setup_teardown(it_answers_by_day_and_room, begin, end),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
