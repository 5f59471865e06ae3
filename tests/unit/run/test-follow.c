/* A station starts on every record that was ever written: what it cannot read or apply it notes, and the rest is
 * followed (rule 26). */
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
#include <sqlite3.h>

#include "code/own-codes.h"
#include "count/unfollowed.h"
#include "run/core.h"
#include "tests/unit/record/folder.h"

static struct core core;
static char folder[FOLDER_MAX];
static struct error e;

static void open_station(void)
{
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
}

static int setup(void **state)
{
	(void)state;
	folder_make(folder);
	open_station();
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static void bind_text(sqlite3_stmt *s, int at, const char *text)
{
	sqlite3_bind_text(s, at, text, -1, SQLITE_TRANSIENT);
}

/* Starts anew after an event of an earlier version, with this text, is the last of the record. Its number is returned. */
static int64_t starts_after(const char *kind, int32_t case_no, const char *key, const char *text)
{
	char path[FOLDER_MAX + 16];
	struct chain chain;
	sqlite3 *db;
	sqlite3_stmt *s;
	int64_t seq = record_last(core.record, &chain) + 1;
	core_close(&core);
	snprintf(path, sizeof path, "%s/" RECORD_FILE, folder);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	assert_int_equal(sqlite3_prepare_v2(db, "INSERT INTO event VALUES (?,?,?,?,?,?)", -1, &s, NULL),
	                 SQLITE_OK);
	chain_add(&chain, text, strlen(text));
	sqlite3_bind_int64(s, 1, seq);
	sqlite3_bind_int(s, 2, case_no);
	bind_text(s, 3, kind);
	bind_text(s, 4, key);
	bind_text(s, 5, text);
	sqlite3_bind_blob(s, 6, chain.hash, CHAIN_BYTES, SQLITE_STATIC);
	assert_int_equal(sqlite3_step(s), SQLITE_DONE);
	sqlite3_finalize(s);
	sqlite3_close(db);
	open_station();
	return seq;
}

static void store(struct event event)
{
	if (core_store(&core, &event, 1, &e) < 0)
		fail_msg("%s", e.text);
}

static const struct sheet *sheet_of(int32_t case_no)
{
	int index = station_sheet_of_case(&core.station, case_no);
	if (index < 0)
		fail_msg("case %d is not open", (int)case_no);
	return &core.station.sheets[index];
}

static void what_changes_nothing_is_no_reason_to_count_by_hand(void **state)
{
	(void)state;
	starts_after("refused", 0, "", "{\"kind\":\"refused\",\"room\":-5,\"v\":1}");
	assert_string_equal(core.distrust, "");
}

static void what_the_station_lost_is_said_until_somebody_dealt_with_it(void **state)
{
	char words[64];
	(void)state;
	int64_t seq = starts_after("line-set", 0, "", "no JSON at all");
	snprintf(words, sizeof words, "Event %lld (line-set) could not be followed", (long long)seq);
	assert_non_null(strstr(core.distrust, words));
	store((struct event){.kind = EV_STAFF_SET, .staff = {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0}});
	assert_non_null(strstr(core.distrust, words));
	struct event settled = {.kind = EV_CORRECTION};
	snprintf(settled.text, sizeof settled.text, "event %lld: imported again", (long long)seq);
	store(settled); /* what somebody typed names no event */
	assert_non_null(strstr(core.distrust, words));
	settled.ref = seq;
	store(settled);
	assert_string_equal(core.distrust, "");
	starts_after("stopped", 0, "", "x");
	assert_string_equal(core.distrust, "");
}

static void in_the_first_format_its_text_names_what_was_dealt_with(void **state)
{
	(void)state;
	int64_t seq = starts_after("line-set", 0, "", "no JSON at all");
	struct event settled = {.kind = EV_CORRECTION, .format = 1};
	snprintf(settled.text, sizeof settled.text, "event %lld: imported again", (long long)seq);
	store(settled);
	assert_int_equal(core.station.n_unfollowed, 0);
}

static void more_than_can_be_noted_are_counted(void **state)
{
	(void)state;
	for (int i = 0; i <= UNFOLLOWED_MAX; i++)
		starts_after("staff-set", 0, "", "x");
	assert_non_null(strstr(core.distrust, "and 14 further could not be followed"));
}

static void a_case_whose_opening_cannot_be_read_is_open_and_marked(void **state)
{
	(void)state;
	starts_after("case-opened", 7, "",
	             "{\"case\":7,\"kind\":\"case-opened\",\"n\":\"x\",\"room\":1,\"v\":1}");
	starts_after("case-opened", 9, "", "torn");
	assert_int_equal(sheet_of(7)->room, 1);
	assert_true(sheet_of(7)->unfollowed);
	assert_int_equal(sheet_of(9)->room, 0);
	store((struct event){.kind = EV_DIGIT_MARKED, .case_no = 9, .room = 4, .digit = 2});
	assert_int_equal(sheet_of(9)->room, 4); /* each further event says it */
	assert_int_equal(core.station.last_case_no, 9);
}

static void a_case_whose_end_cannot_be_read_has_ended(void **state)
{
	(void)state;
	store((struct event){.kind = EV_CASE_OPENED, .case_no = 1, .room = 1});
	store((struct event){.kind = EV_DIGIT_MARKED, .case_no = 1, .room = 1, .digit = 2});
	starts_after("case-ended", 1, "", "torn");
	assert_int_equal(station_sheet_of_case(&core.station, 1), -1);
	assert_string_equal(core.distrust, "");
}

static void the_mark_of_a_case_outlives_undo(void **state)
{
	(void)state;
	store((struct event){.kind = EV_CASE_OPENED, .case_no = 1, .room = 1});
	store((struct event){
	    .kind = EV_DIGIT_MARKED, .case_no = 1, .room = 1, .digit = 2, .flags = EVENT_FIRST});
	int64_t first = record_last(core.record, NULL);
	starts_after("item-in", 1, "", "torn");
	store((struct event){.kind = EV_UNDONE, .case_no = 1, .room = 1, .ref = first});
	assert_int_equal(sheet_of(1)->n_digits, 0);
	assert_true(sheet_of(1)->unfollowed);
	assert_string_equal(core.distrust, ""); /* of one case, which says so itself */
}

static void a_number_that_cannot_be_used_otherwise_is_not_given_again(void **state)
{
	(void)state;
	starts_after("labelled", 0, "",
	             "{\"batch\":{\"expiry\":-7,\"first\":1,\"last\":12},\"kind\":\"labelled\",\"v\":1}");
	starts_after("slip-queued", 1, "slip:31", "torn");
	assert_int_equal(core.station.last_item_no, 12);
	assert_int_equal(core.station.last_slip_no, 31);
}

static void a_start_that_cannot_be_read_is_another_boot(void **state)
{
	(void)state;
	int32_t boot = core.station.boot;
	starts_after("started", 0, "", "torn");
	assert_true(core.station.boot > boot);
}

static void an_event_of_a_later_format_is_never_left_out(void **state)
{
	(void)state;
	struct chain chain;
	starts_after("stopped", 0, "", "x");
	int64_t last = record_last(core.record, &chain);
	char path[FOLDER_MAX + 16], change[300], hex[2 * CHAIN_BYTES + 1];
	static const char text[] = "{\"kind\":\"staff-set\",\"later\":true,\"v\":99}";
	sqlite3 *db;
	core_close(&core);
	chain_add(&chain, text, sizeof text - 1);
	chain_hex(&chain, hex);
	snprintf(path, sizeof path, "%s/" RECORD_FILE, folder);
	snprintf(change, sizeof change, "INSERT INTO event VALUES (%lld, 0, 'staff-set', '', '%s', x'%s')",
	         (long long)last + 1, text, hex);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db, change, NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(db);
	assert_int_equal(core_open(&core, folder, &e), -EPROTO);
	assert_non_null(strstr(e.text, "format 99: this program reads formats 1 to "));
}

/* --- what the record cannot be asked ---------------------------------------------------------------- */

static const char *scan(struct own_code own, const char *text)
{
	char code[OWN_CODE_MAX];
	memcpy(own.site, core.station.site, sizeof core.station.site);
	own.room = own.kind == OWN_CARD || own.kind == OWN_DIGIT;
	if (own.kind == OWN_SLIP && !own.old && !own.proof)
		own.proof =
		    slip_proof(core.seal, core.station.site, core.station.number, own.number, own.copy);
	if (!text) {
		assert_int_equal(own_code_write(&own, code), 0);
		text = code;
	}
	return core_scan(&core,
	                 &(struct scan){
	                     .scanner = "hand-1", .room = 1, .aim = "", .data = text, .size = strlen(text)})
	    ->said;
}

#define OWN(...) scan((struct own_code){__VA_ARGS__}, NULL)

static void must_say(const char *said, const char *words)
{
	if (!strstr(said, words))
		fail_msg("not '%s': %s", words, said);
}

static void open_a_case_with(enum identity_kind identity)
{
	struct event line = {.kind = EV_LINE_SET,
	                     .line = {.key = "GREEN-M",
	                              .name = "finger tourniquet, green, M",
	                              .role = ROLE_TOURNIQUET,
	                              .identity = identity,
	                              .marked = 1,
	                              .visible = 1,
	                              .single_use = 1,
	                              .per_pack = 1,
	                              .codes = {"09506000134352"}}};
	store(line);
	must_say(OWN(.kind = OWN_CARD, .meaning = CARD_NEW_CASE), "Case 1 opened");
}

static void a_pack_of_which_the_record_cannot_be_asked_is_not_counted_in(void **state)
{
	static const char pack[] = "(01)09506000134352(17)330331(10)T26(21)S1";
	(void)state;
	open_a_case_with(IDENTITY_PACK);
	starts_after("item-used", 0, "09506000134352:S1", "torn");
	must_say(scan((struct own_code){0}, pack), "could not be asked");
	assert_int_equal(sheet_of(1)->n_items, 0);
	must_say(scan((struct own_code){0}, "(01)09506000134352(17)330331(10)T26(21)S2"), "Counted in");
	must_say(OWN(.kind = OWN_DIGIT, .digit = 2), "the clock runs as 'on?'");
	OWN(.kind = OWN_CARD, .meaning = CARD_OFF);
	assert_int_equal(sheet_of(1)->n_digits, 1);
}

static void a_label_of_which_the_record_cannot_be_asked_is_not_counted_in(void **state)
{
	(void)state;
	open_a_case_with(IDENTITY_PACK);
	store((struct event){.kind = EV_LABELLED,
	                     .batch = {.line = "GREEN-M", .lot = "T1", .first = 1, .last = 9}});
	starts_after("labelled", 0, "", "torn");
	must_say(OWN(.kind = OWN_ITEM, .role = 'P', .number = 5), "Counted in");
	must_say(OWN(.kind = OWN_ITEM, .role = 'P', .number = 12), "could not be asked");
}

static void a_slip_of_which_the_record_cannot_be_asked_is_not_called_foreign(void **state)
{
	(void)state;
	starts_after("slip-queued", 1, "slip:3", "torn");
	must_say(OWN(.kind = OWN_SLIP, .number = 3, .copy = 1), "could not be asked");
	must_say(OWN(.kind = OWN_SLIP, .number = 4, .copy = 1, .proof = 1), "is not ours");
}

/* --- slips that the station remembers no longer ----------------------------------------------------- */

static void write_slips(int count)
{
	for (int i = 1; i <= count; i++) {
		store((struct event){.kind = EV_SLIP_QUEUED,
		                     .case_no = i,
		                     .room = 1,
		                     .n = i,
		                     .what = SLIP_RECONCILIATION,
		                     .other = 1});
		store((struct event){.kind = EV_SLIP_STATE,
		                     .case_no = i,
		                     .room = 1,
		                     .n = i,
		                     .what = i == 2 ? SLIP_QUEUED : SLIP_WRITTEN,
		                     .other = 1});
	}
}

static void a_slip_that_nobody_saw_is_seen_however_old_it_is(void **state)
{
	(void)state;
	write_slips(UNSEEN_MAX + 2);
	assert_null(station_slip(&core.station, 1));
	assert_int_equal(core.station.older_unseen, 2);
	int unseen = core.station.n_unseen;
	must_say(OWN(.kind = OWN_SLIP, .number = 1, .copy = 1), "Slip 0000001 of case 1, copy 1, seen");
	assert_int_equal(core.station.n_unseen, unseen);
	assert_int_equal(core.station.older_unseen, 1);
	OWN(.kind = OWN_CARD, .meaning = CARD_NEXT);
	for (int i = 3; i < 9; i++) /* what was read before counts as another read */
		OWN(.kind = OWN_SLIP, .number = i, .copy = 1);
	struct slip slip;
	struct paper paper;
	assert_int_equal(record_slip_of(core.record, 1, 1, &slip, &paper), 1);
	assert_int_equal(slip.state, SLIP_SEEN);
	core.reads = (struct reads){0};
	must_say(OWN(.kind = OWN_SLIP, .number = 1, .copy = 1), "Slip 0000001, copy 1, was seen before");
	must_say(OWN(.kind = OWN_SLIP, .number = 2, .copy = 1), "was not printed yet");
	store((struct event){
	    .kind = EV_SLIP_QUEUED, /* a further copy of the other: it is among the latest again */
	    .case_no = 2,
	    .room = 1,
	    .n = 2,
	    .what = SLIP_RECONCILIATION,
	    .other = 2});
	assert_non_null(station_slip(&core.station, 2));
	assert_int_equal(core.station.n_unseen + core.station.older_unseen, UNSEEN_MAX + 2 - 1 - 6);
}

/* Rule 16: what is owed is counted where it cannot be listed, and paying any takes it off. */
static void numbers_that_are_owed_are_counted_past_the_list(void **state)
{
	static struct station st;
	struct event opened = {.kind = EV_CASE_OPENED, .room = 1},
	             owes = {.kind = EV_OWED, .room = 1, .what = DEBT_INCIDENT},
	             ended = {.kind = EV_CASE_ENDED, .room = 1, .what = END_UNRESOLVED},
	             paid = {.kind = EV_PAID, .room = 1, .what = DEBT_INCIDENT};
	(void)state;
	memset(&st, 0, sizeof st);
	for (int32_t i = 1; i <= OWED_MAX + 3; i++) {
		opened.case_no = owes.case_no = ended.case_no = i;
		assert_int_equal(station_apply(&st, &opened), 0);
		assert_int_equal(station_apply(&st, &owes), 0);
		assert_int_equal(station_apply(&st, &ended), 0);
	}
	assert_int_equal(st.n_owed, OWED_MAX);
	assert_int_equal(st.more_owed, 3);
	for (int32_t i = OWED_MAX + 3; i; i--) {
		paid.case_no = i;
		assert_int_equal(station_apply(&st, &paid), 0);
		assert_int_equal(st.n_owed + st.more_owed, i - 1);
	}
	station_deinit(&st);
}

int main(void)
{
#define STATION_TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
	    STATION_TEST(numbers_that_are_owed_are_counted_past_the_list),
	    STATION_TEST(what_changes_nothing_is_no_reason_to_count_by_hand),
	    STATION_TEST(what_the_station_lost_is_said_until_somebody_dealt_with_it),
	    STATION_TEST(in_the_first_format_its_text_names_what_was_dealt_with),
	    STATION_TEST(more_than_can_be_noted_are_counted),
	    STATION_TEST(a_case_whose_opening_cannot_be_read_is_open_and_marked),
	    STATION_TEST(a_case_whose_end_cannot_be_read_has_ended),
	    STATION_TEST(the_mark_of_a_case_outlives_undo),
	    STATION_TEST(a_number_that_cannot_be_used_otherwise_is_not_given_again),
	    STATION_TEST(a_start_that_cannot_be_read_is_another_boot),
	    STATION_TEST(an_event_of_a_later_format_is_never_left_out),
	    STATION_TEST(a_pack_of_which_the_record_cannot_be_asked_is_not_counted_in),
	    STATION_TEST(a_label_of_which_the_record_cannot_be_asked_is_not_counted_in),
	    STATION_TEST(a_slip_of_which_the_record_cannot_be_asked_is_not_called_foreign),
	    STATION_TEST(a_slip_that_nobody_saw_is_seen_however_old_it_is),
	};
	setenv("TZ", "UTC", 1);
	if (access("/dev/shm", W_OK) == 0)
		setenv("TMPDIR", "/dev/shm", 0); /* no disk is waited for: durability is tested elsewhere */
	return cmocka_run_group_tests(tests, NULL, NULL);
}
