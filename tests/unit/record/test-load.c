/* A station that starts again knows what it knew: reading the record, ended cases left out, gives the same
 * state as applying every event that ever was. */
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

#include "code/own-codes.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"
#include "tests/unit/record/same.h"

#define SEEDS 6
#define STEPS 800
#define LOOK_EVERY 60

static void look(struct history *h)
{
	struct station again = {.n_rooms = h->st.n_rooms, .policy = h->st.policy};
	struct error e = {0};
	memcpy(again.rooms, h->st.rooms, sizeof again.rooms);
	if (record_load(h->record, &again, &e) < 0)
		fail_msg("%s", e.text);
	same_station(&h->st, &again);
	station_deinit(&again);
}

static int count_end(void *context, const struct event *e)
{
	int *ends = context;
	if (e->kind == EV_CASE_ENDED)
		ends[e->what]++;
	return 0;
}

static void a_station_that_starts_again_knows_what_it_knew(void **state)
{
	int ends[4] = {0};
	(void)state;
	for (uint64_t seed = 1; seed <= SEEDS; seed++) {
		char folder[FOLDER_MAX];
		struct error e = {0};
		struct record *r = NULL;
		struct history h;
		folder_make(folder);
		assert_int_equal(record_open(&r, folder, &e), 0);
		assert_int_equal(history_init(&h, r, seed, 0), 0);
		for (int i = 0; i < STEPS; i++) {
			if (history_step(&h) < 0)
				fail_msg("seed %d step %d: %s", (int)seed, i, h.error.text);
			if (i % LOOK_EVERY == 0)
				look(&h);
		}
		look(&h);
		int64_t events;
		struct chain chain, last;
		assert_int_equal(record_verify(r, &events, &chain, &e), 0);
		assert_int_equal(events, record_last(r, &last));
		assert_memory_equal(&chain, &last, sizeof chain);
		assert_int_equal(record_each_case_edge(r, count_end, ends, &e), 0);
		history_deinit(&h);
		record_close(r);
		folder_remove(folder);
	}
	/* The histories must reach what they are for. */
	print_message("ended: %d reconciled, %d unresolved, %d cancelled\n", ends[1], ends[2], ends[3]);
	assert_true(ends[END_RECONCILED] && ends[END_UNRESOLVED] && ends[END_CANCELLED]);
}

static int count_kind(void *context, const struct event *e)
{
	(void)e;
	++*(int *)context;
	return 0;
}

/* Rule 14: 'at least' must not shrink because the case next door has ended meanwhile. */
static void a_power_cut_is_measured_from_the_last_event_of_any_case(void **state)
{
	(void)state;
	char folder[FOLDER_MAX];
	struct error e = {0};
	struct record *r = NULL;
	struct history h;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(history_init(&h, r, 1, 0), 0);
	struct input on = {.act = ACT_DIGIT, .room = 1, .card_room = 1, .digit = 2};
	assert_int_equal(history_take(&h, &on), 0);
	assert_int_equal(history_case(&h, 2), 0);
	int alive = 0;
	assert_int_equal(record_each_station(r, EV_ALIVE, count_kind, &alive, &e), 0);
	assert_true(alive > 30);
	/* Room 2 goes on until half a minute after the last mark in time. The power fails; then its case
	 * ends. */
	struct input opens = {.act = ACT_CARD, .room = 2, .card_room = 2, .card = CARD_NEW_CASE};
	struct input joins = {.act = ACT_BADGE, .room = 2, .number = 2};
	struct input cancels = {.act = ACT_CARD, .room = 2, .card_room = 2, .card = CARD_CANCEL};
	struct input yes = {.act = ACT_CARD, .room = 2, .card_room = 2, .card = CARD_YES};
	assert_int_equal(history_take(&h, &opens), 0);
	h.now.boot_ms += 30000;
	h.now.wall_ms += 30000;
	assert_int_equal(history_take(&h, &joins), 0);
	h.now = (struct moment){.boot = 2, .boot_ms = 5000, .wall_ms = h.now.wall_ms + 600000};
	assert_int_equal(history_store(&h, &(struct event){.kind = EV_STARTED, .n = 2, .text = "boot-2"}, 1),
	                 0);
	assert_int_equal(history_take(&h, &cancels), 0);
	assert_int_equal(history_take(&h, &yes), 0);
	assert_int_equal(station_sheet_of_room(&h.st, 2), -1);
	look(&h);
	history_deinit(&h);
	record_close(r);
	folder_remove(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_station_that_starts_again_knows_what_it_knew),
	    cmocka_unit_test(a_power_cut_is_measured_from_the_last_event_of_any_case),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
