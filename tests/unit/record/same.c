#include "tests/unit/record/same.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "tests/unit/record/history.h"

static void same_lists(const struct station *a, const struct station *b)
{
	assert_int_equal(a->catalogue.count, b->catalogue.count);
	assert_memory_equal(a->catalogue.lines, b->catalogue.lines,
	                    a->catalogue.count * sizeof *a->catalogue.lines);
	assert_int_equal(a->staff.count, b->staff.count);
	assert_memory_equal(a->staff.list, b->staff.list, a->staff.count * sizeof *a->staff.list);
	assert_int_equal(a->n_quarantines, b->n_quarantines);
	if (a->n_quarantines)
		assert_memory_equal(a->quarantines, b->quarantines,
		                    a->n_quarantines * sizeof *a->quarantines);
	assert_int_equal(a->n_unseen, b->n_unseen);
	assert_memory_equal(a->unseen, b->unseen, (size_t)a->n_unseen * sizeof *a->unseen);
	assert_int_equal(a->n_owed, b->n_owed);
	assert_memory_equal(a->owed, b->owed, (size_t)a->n_owed * sizeof *a->owed);
	assert_int_equal(a->n_after, b->n_after);
	for (int i = 0; i < a->n_after;
	     i++) { /* not the bytes between fields, which a compiler may leave as they are */
		assert_int_equal(a->after[i].wall_ms, b->after[i].wall_ms);
		assert_int_equal(a->after[i].case_no, b->after[i].case_no);
		assert_int_equal(a->after[i].room, b->after[i].room);
		assert_int_equal(a->after[i].what, b->after[i].what);
		assert_int_equal(a->after[i].digit, b->after[i].digit);
	}
	assert_int_equal(a->n_carried, b->n_carried);
	for (int i = 0; i < a->n_carried; i++) {
		assert_string_equal(a->carried[i].scanner, b->carried[i].scanner);
		assert_int_equal(a->carried[i].room, b->carried[i].room);
		assert_int_equal(a->carried[i].bound, b->carried[i].bound);
		assert_int_equal(a->carried[i].since.boot_ms, b->carried[i].since.boot_ms);
	}
}

static void same_sheet(const struct sheet *a, const struct sheet *b)
{
	struct sheet x = history_scrubbed(a), y = history_scrubbed(b);
	assert_memory_equal(&x, &y, sizeof x);
}

static void same_step(const struct step *a, const struct step *b)
{
	assert_int_equal(a->seq, b->seq);
	assert_int_equal(a->kind, b->kind);
	assert_int_equal(a->item, b->item);
	assert_int_equal(a->digit, b->digit);
}

void same_station(const struct station *a, const struct station *b)
{
	for (int i = 0; i < SHEETS_MAX; i++) {
		assert_int_equal(a->sheets[i].case_no, b->sheets[i].case_no);
		if (!a->sheets[i].case_no)
			continue;
		same_sheet(&a->sheets[i], &b->sheets[i]);
		same_step(&a->undo[i], &b->undo[i]);
		if (a->undo[i].seq)
			same_sheet(&a->before[i], &b->before[i]);
	}
	same_lists(a, b);
	assert_int_equal(a->last_case_no, b->last_case_no);
	assert_int_equal(a->last_slip_no, b->last_slip_no);
	assert_int_equal(a->last_item_no, b->last_item_no);
	assert_int_equal(a->backup_seq, b->backup_seq);
	assert_int_equal(a->backup_ms, b->backup_ms);
	assert_memory_equal(a->idle_asked, b->idle_asked, sizeof a->idle_asked);
	assert_memory_equal(a->idle_last, b->idle_last, sizeof a->idle_last);
	assert_memory_equal(a->papers, b->papers, sizeof a->papers);
	assert_int_equal(a->boot, b->boot);
	/* `last` is when the station was last known to live: what a power cut is measured from. */
	assert_int_equal(a->last.boot, b->last.boot);
	assert_int_equal(a->last.boot_ms, b->last.boot_ms);
}

static void same_moment(struct moment a, struct moment b)
{
	assert_int_equal(a.boot, b.boot);
	assert_int_equal(a.boot_ms, b.boot_ms);
	assert_int_equal(a.wall_ms, b.wall_ms);
}

void same_to_the_last(const struct station *a, const struct station *b)
{
	same_station(a, b);
	assert_int_equal(a->n_held, b->n_held);
	for (int i = 0; i < a->n_held; i++) {
		assert_int_equal(a->held[i].seq, b->held[i].seq);
		assert_int_equal(a->held[i].room, b->held[i].room);
		assert_string_equal(a->held[i].scanner, b->held[i].scanner);
	}
	assert_memory_equal(a->idle_n, b->idle_n, sizeof a->idle_n);
	assert_int_equal(a->n_unfollowed, b->n_unfollowed);
	assert_int_equal(a->more_unfollowed, b->more_unfollowed);
	same_moment(a->last, b->last);
	assert_int_equal(a->wall_ms, b->wall_ms);
	assert_int_equal(a->clock_wrong, b->clock_wrong);
	for (int i = 0; i < ROOMS_MAX; i++) {
		same_moment(a->heard[i].scan, b->heard[i].scan);
		same_moment(a->heard[i].reminder, b->heard[i].reminder);
	}
}
