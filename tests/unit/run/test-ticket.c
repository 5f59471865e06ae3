/* Tickets and cookies: what works, for which room, until when, and what is kept of it. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>

#include "base/file.h"
#include "run/ticket.h"
#include "tests/unit/record/folder.h"

#define NOW 7000000
#define BOOT "46eaf860367b44c5999b25ff46c60506"

static struct tickets t;
static char ticket[SECRET_LETTERS + 1], cookie[SECRET_LETTERS + 1], other[SECRET_LETTERS + 1];

static int setup(void **state)
{
	(void)state;
	t = (struct tickets){0};
	return 0;
}

/* Its room, and its text in `cookie`; or a negative errno. */
static int take(const char *what, int64_t now_ms)
{
	struct ticket_taken is = {0};
	int n = ticket_take(&t, what, now_ms, &is);
	if (n < 0)
		return n;
	memcpy(cookie, is.cookie, sizeof cookie);
	return is.room;
}

static void give_cookie(int32_t room, enum ticket_group group, int64_t now_ms)
{
	assert_int_equal(ticket_give(&t, room, group, now_ms, ticket), 0);
	assert_int_equal(take(ticket, now_ms), room);
}

static void a_ticket_works_once(void **state)
{
	(void)state;
	give_cookie(2, TICKET_COUNT, NOW);
	assert_true(secret_has_form(ticket) && secret_has_form(cookie));
	assert_string_not_equal(ticket, cookie);
	assert_int_equal(take(ticket, NOW), -ENOENT);
	assert_int_equal(take(cookie, NOW), -ENOENT);
	assert_int_equal(take("", NOW), -ENOENT);
}

static void a_ticket_works_within_a_minute(void **state)
{
	(void)state;
	assert_int_equal(ticket_give(&t, 1, TICKET_COUNT, NOW, ticket), 0);
	assert_int_equal(ticket_give(&t, 1, TICKET_COUNT, NOW, other), 0);
	assert_string_not_equal(ticket, other);
	assert_int_equal(take(ticket, NOW + TICKET_LASTS_MS - 1), 1);
	assert_int_equal(take(other, NOW + TICKET_LASTS_MS), -ENOENT);
}

static void a_cookie_types_in_its_room_alone(void **state)
{
	(void)state;
	give_cookie(2, TICKET_COUNT, NOW);
	assert_int_equal(cookie_types(&t, cookie, 2, NOW), 1);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW), 0);
	assert_int_equal(cookie_types(&t, ticket, 2, NOW), 0);
	cookie[SECRET_LETTERS - 1] ^= 4;
	assert_int_equal(cookie_types(&t, cookie, 2, NOW), 0);
	give_cookie(ROOM_DESK, TICKET_COUNT, NOW);
	assert_int_equal(cookie_types(&t, cookie, ROOM_DESK, NOW), 0);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW), 0);
	give_cookie(1, TICKET_AUDIT, NOW);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW), 0);
}

static void a_cookie_lasts_a_day_from_when_its_page_was_last_open(void **state)
{
	(void)state;
	give_cookie(1, TICKET_COUNT, NOW);
	struct secret_hash hash = secret_hash(cookie), of_other = secret_hash(ticket);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW + COOKIE_LASTS_MS - 1), 1);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW + COOKIE_LASTS_MS), 0);
	cookie_renew(&t, &of_other, NOW + 1000);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW + COOKIE_LASTS_MS), 0);
	cookie_renew(&t, &hash, NOW + 1000);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW + COOKIE_LASTS_MS + 999), 1);
	cookie_renew(&t, &hash, NOW + 1000 + COOKIE_LASTS_MS);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW + 1000 + COOKIE_LASTS_MS), 0);
}

static void what_is_over_is_forgotten(void **state)
{
	(void)state;
	give_cookie(1, TICKET_COUNT, NOW);
	assert_int_equal(ticket_give(&t, 1, TICKET_COUNT, NOW, ticket), 0);
	assert_int_equal(tickets_forget(&t, NOW + TICKET_LASTS_MS - 1), 0);
	assert_int_equal(tickets_forget(&t, NOW + TICKET_LASTS_MS), 1);
	assert_int_equal(tickets_forget(&t, NOW + COOKIE_LASTS_MS), 1);
	assert_int_equal(tickets_forget(&t, NOW + COOKIE_LASTS_MS), 0);
}

static void of_too_many_the_one_that_ends_first_gives_way(void **state)
{
	char first[SECRET_LETTERS + 1];
	(void)state;
	assert_int_equal(ticket_give(&t, 1, TICKET_COUNT, NOW, first), 0);
	for (int i = 1; i < TICKETS_MAX; i++)
		assert_int_equal(ticket_give(&t, 1, TICKET_COUNT, NOW + i, ticket), 0);
	assert_int_equal(ticket_give(&t, 1, TICKET_COUNT, NOW + 100, other), 0);
	assert_int_equal(take(first, NOW + 100), -ENOENT);
	assert_int_equal(take(ticket, NOW + 100), 1);
	assert_int_equal(take(other, NOW + 100), 1);
	for (int i = 0; i < COOKIES_MAX; i++)
		give_cookie(1, TICKET_COUNT, NOW + 200 + i);
	assert_int_equal(cookie_types(&t, cookie, 1, NOW + 1000), 1);
}

static void the_board_is_told_hashes_and_rooms(void **state)
{
	char hex[SECRET_HEX + 1];
	struct buf text = {0};
	(void)state;
	give_cookie(2, TICKET_COUNT, NOW);
	struct secret_hash hash = secret_hash(cookie);
	secret_to_hex(&hash, hex);
	assert_int_equal(ticket_give(&t, 1, TICKET_AUDIT, NOW, ticket), 0);
	json_t *told = tickets_told(&t);
	assert_int_equal(json_write_canonical(told, &text), 0);
	assert_null(strstr(text.data, cookie));
	assert_null(strstr(text.data, ticket));
	const json_t *c = json_array_get(json_object_get(told, "cookies"), 0);
	assert_string_equal(json_text(c, "hash"), hex);
	assert_int_equal(json_number(c, "room", 0), 2);
	assert_int_equal(json_truth(c, "types"), 1);
	assert_int_equal(json_truth(c, "reports"), 0);
	assert_int_equal(json_array_size(json_object_get(told, "tickets")), 1);
	buf_free(&text);
	json_decref(told);
}

static void reports_are_opened_by_their_own_tickets_alone(void **state)
{
	static const enum ticket_group groups[] = {TICKET_COUNT, TICKET_AUDIT, TICKET_REPORTS};
	(void)state;
	for (int i = 0; i < 3; i++) {
		t = (struct tickets){0};
		give_cookie(ROOM_DESK, groups[i], NOW);
		json_t *told = tickets_told(&t);
		const json_t *c = json_array_get(json_object_get(told, "cookies"), 0);
		assert_int_equal(json_truth(c, "reports"), groups[i] == TICKET_REPORTS);
		assert_int_equal(json_truth(c, "types"), 0);
		json_decref(told);
	}
}

static void cookies_outlive_the_station_in_their_boot_alone(void **state)
{
	char folder[FOLDER_MAX], path[FOLDER_MAX + 16], audit[SECRET_LETTERS + 1];
	struct buf text = {0};
	struct stat file;
	(void)state;
	folder_make(folder);
	snprintf(path, sizeof path, "%s/cookies", folder);
	give_cookie(1, TICKET_AUDIT, NOW);
	memcpy(audit, cookie, sizeof audit);
	give_cookie(ROOM_DESK, TICKET_REPORTS, NOW);
	give_cookie(2, TICKET_COUNT, NOW);
	assert_int_equal(ticket_give(&t, 2, TICKET_COUNT, NOW, ticket), 0);
	assert_int_equal(cookies_write(&t, folder, BOOT, NOW), 0);
	assert_int_equal(stat(path, &file), 0);
	assert_int_equal(file.st_mode & 0777, 0600);
	assert_int_equal(file_read(path, &text), 0);
	assert_null(strstr(text.data, cookie));
	assert_null(strstr(text.data, audit));

	t = (struct tickets){0};
	cookies_read(&t, folder, BOOT, NOW + 5000);
	assert_int_equal(cookie_types(&t, cookie, 2, NOW + 5000), 1);
	assert_int_equal(cookie_types(&t, cookie, 2, NOW + COOKIE_LASTS_MS), 0);
	assert_int_equal(cookie_types(&t, audit, 1, NOW + 5000), 0);
	json_t *told = tickets_told(&t);
	size_t i, reports = 0;
	json_t *c;
	json_array_foreach(json_object_get(told, "cookies"), i, c) reports +=
	    (size_t)json_truth(c, "reports");
	assert_int_equal(reports, 1);
	json_decref(told);
	assert_int_equal(take(ticket, NOW + 5000), -ENOENT);

	t = (struct tickets){0};
	cookies_read(&t, folder, "00000000000000000000000000000000", NOW + 5000);
	assert_int_equal(cookie_types(&t, cookie, 2, NOW + 5000), 0);
	/* A clock that stands before the cookies were given is another boot's, whatever the file says. */
	cookies_read(&t, folder, BOOT, NOW - 1);
	assert_int_equal(cookie_types(&t, cookie, 2, NOW - 1), 0);
	cookies_read(&t, folder, BOOT, NOW + COOKIE_LASTS_MS);
	assert_int_equal(cookie_types(&t, cookie, 2, NOW), 0);
	buf_free(&text);
	folder_remove(folder);
}

static void a_damaged_file_lets_nobody_in(void **state)
{
	static const char *const bad[] = {
	    "",
	    "[]",
	    "{",
	    "{\"boot\":\"" BOOT "\"}",
	    "{\"boot\":\"" BOOT "\",\"cookies\":{}}",
	    "{\"boot\":\"" BOOT
	    "\",\"cookies\":[7,{},{\"hash\":\"00\",\"room\":1,\"group\":\"bandtally-count\","
	    "\"until_ms\":7001000},{\"hash\":"
	    "\"0000000000000000000000000000000000000000000000000000000000000000\","
	    "\"room\":1,\"group\":\"wheel\",\"until_ms\":7001000},{\"hash\":"
	    "\"0000000000000000000000000000000000000000000000000000000000000000\",\"room\":100,\"group\":"
	    "\"bandtally-count\",\"until_ms\":7001000}]}"};
	char folder[FOLDER_MAX], path[FOLDER_MAX + 16];
	(void)state;
	folder_make(folder);
	snprintf(path, sizeof path, "%s/cookies", folder);
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		assert_int_equal(file_replace_soon(path, 0600, bad[i], strlen(bad[i])), 0);
		cookies_read(&t, folder, BOOT, NOW);
		for (int k = 0; k < COOKIES_MAX; k++)
			assert_int_equal(t.cookies[k].until_ms, 0);
	}
	folder_remove(folder);
}

static void the_file_follows_once_an_hour(void **state)
{
	char folder[FOLDER_MAX];
	(void)state;
	folder_make(folder);
	give_cookie(1, TICKET_COUNT, NOW);
	struct secret_hash hash = secret_hash(cookie);
	assert_int_equal(cookies_write(&t, folder, BOOT, NOW), 0);
	assert_int_equal(cookie_renew(&t, &hash, NOW + 3599999), 0);
	assert_int_equal(cookie_renew(&t, &hash, NOW + 3600000), 1);
	assert_int_equal(cookies_write(&t, folder, BOOT, NOW + 3600000), 0);
	assert_int_equal(cookie_renew(&t, &hash, NOW + 3700000), 0);
	folder_remove(folder);
}

static void five_codes_a_second_are_typed_in_a_room(void **state)
{
	struct pace p = {0};
	int taken = 0;
	(void)state;
	for (int i = 0; i < 100; i++) /* each 10 ms */
		taken += pace_allows(&p, NOW + i * 10);
	assert_int_equal(taken, 5);
	assert_int_equal(pace_allows(&p, NOW + 1000), 1);
	for (int i = 0; i < 100; i++) /* as people type */
		assert_int_equal(pace_allows(&p, NOW + 3000 + i * 200), 1);
}

static void a_hash_is_sha_256_and_its_text_comes_back(void **state)
{
	char hex[SECRET_HEX + 1];
	struct secret_hash back, h = secret_hash("abc"); /* FIPS 180-4's own example */
	(void)state;
	secret_to_hex(&h, hex);
	assert_string_equal(hex, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
	assert_true(secret_from_hex(&back, hex) && secret_same(&back, &h));
	back.bytes[31] ^= 1;
	assert_false(secret_same(&back, &h));
	hex[0] = 'g';
	assert_false(secret_from_hex(&back, hex));
	assert_false(secret_from_hex(&back, "ba"));
	assert_false(secret_has_form("abc"));
	assert_false(secret_has_form("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA+"));
	assert_false(secret_has_form("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(a_ticket_works_once, setup),
	    cmocka_unit_test_setup(a_ticket_works_within_a_minute, setup),
	    cmocka_unit_test_setup(a_cookie_types_in_its_room_alone, setup),
	    cmocka_unit_test_setup(a_cookie_lasts_a_day_from_when_its_page_was_last_open, setup),
	    cmocka_unit_test_setup(what_is_over_is_forgotten, setup),
	    cmocka_unit_test_setup(of_too_many_the_one_that_ends_first_gives_way, setup),
	    cmocka_unit_test_setup(the_board_is_told_hashes_and_rooms, setup),
	    cmocka_unit_test_setup(reports_are_opened_by_their_own_tickets_alone, setup),
	    cmocka_unit_test_setup(cookies_outlive_the_station_in_their_boot_alone, setup),
	    cmocka_unit_test_setup(a_damaged_file_lets_nobody_in, setup),
	    cmocka_unit_test_setup(the_file_follows_once_an_hour, setup),
	    cmocka_unit_test_setup(five_codes_a_second_are_typed_in_a_room, setup),
	    cmocka_unit_test(a_hash_is_sha_256_and_its_text_comes_back),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
