/* The codes of this house: what is printed can be read, and what is misread is refused. */
#include "cmocka-all.h"

#include <ctype.h>
#include <errno.h>
#include <stdio.h>

#include "code/check-digit.h"
#include "code/code.h"

static const struct own_code samples[] = {
    {.kind = OWN_CARD, .site = "BC", .room = 1, .meaning = CARD_OFF},
    {.kind = OWN_CARD, .site = "XX", .room = 99, .meaning = CARD_SHOWN_10},
    {.kind = OWN_DIGIT, .site = "BC", .room = 7, .digit = 2},
    {.kind = OWN_DIGIT, .site = "BC", .room = 0, .digit = 24},
    {.kind = OWN_BADGE, .site = "LN", .number = 4711},
    {.kind = OWN_SLIP, .site = "BC", .station = 7, .number = 41, .copy = 1, .proof = 842153},
    {.kind = OWN_SLIP, .site = "BC", .station = 99, .number = 9999999, .copy = 99, .proof = 999999},
    {.kind = OWN_CASE, .site = "BC", .station = 7, .number = 41},
    {.kind = OWN_SCANNER_CHECK, .site = "BC", .number = 3},
    {.kind = OWN_TRAY, .site = "BC", .number = 12},
    {.kind = OWN_ITEM, .site = "BC", .station = 7, .role = 'P', .number = 41},
    {.kind = OWN_ITEM, .site = "BC", .station = 99, .role = 'R', .number = 99999999},
    /* the practice set */
    {.kind = OWN_CARD, .practice = true, .site = "BC", .room = 1, .meaning = CARD_OFF},
    {.kind = OWN_DIGIT, .practice = true, .site = "BC", .room = 7, .digit = 2},
    {.kind = OWN_BADGE, .practice = true, .site = "LN", .number = 4711},
    {.kind = OWN_SLIP,
     .practice = true,
     .site = "BC",
     .station = 7,
     .number = 41,
     .copy = 1,
     .proof = 842153},
    {.kind = OWN_TRAY, .practice = true, .site = "BC", .number = 12},
    /* as earlier versions wrote them */
    {.kind = OWN_SLIP, .site = "BC", .number = 41, .copy = 1, .old = true},
    {.kind = OWN_CASE, .site = "BC", .number = 41, .old = true},
    {.kind = OWN_ITEM, .site = "BC", .role = 'P', .number = 1, .old = true},
};
#define SAMPLES (sizeof samples / sizeof *samples)

static void same(const struct own_code *is, const struct own_code *should)
{
	assert_int_equal(is->kind, should->kind);
	assert_string_equal(is->site, should->site);
	assert_int_equal(is->room, should->room);
	assert_int_equal(is->meaning, should->meaning);
	assert_int_equal(is->digit, should->digit);
	assert_int_equal(is->number, should->number);
	assert_int_equal(is->copy, should->copy);
	assert_int_equal(is->role, should->role);
	assert_int_equal(is->station, should->station);
	assert_int_equal(is->proof, should->proof);
	assert_int_equal(is->old, should->old);
	assert_int_equal(is->practice, should->practice);
}

static void what_is_written_is_read_back_in_capitals_and_small_letters(void **state)
{
	(void)state;
	static const size_t lengths[] = {12, 12, 11, 11, 13, 24, 24, 16, 9,  13,
	                                 15, 15, 12, 11, 13, 24, 13, 16, 14, 13};
	for (size_t i = 0; i < SAMPLES; i++) {
		char text[OWN_CODE_MAX];
		struct own_code back;
		assert_int_equal(own_code_write(&samples[i], text), 0);
		assert_int_equal(strlen(text), lengths[i]);
		assert_int_equal(own_code_read(text, strlen(text), &back, NULL), 0);
		same(&back, &samples[i]);
		for (char *p = text; *p; p++)
			*p = (char)tolower((unsigned char)*p);
		assert_int_equal(own_code_read(text, strlen(text), &back, NULL), 0);
		same(&back, &samples[i]);
	}
}

static void the_printed_form_does_not_change(void **state)
{
	(void)state;
	/* Cards hang on walls for years. The check digits were computed with big integers elsewhere: 98 -
	 * (digits and "00" mod 97). */
	static const struct {
		size_t sample;
		const char *text;
	} kept[] = {{0, "BTBC10104051"},      {5, "BTBC40700000410184215324"},
	            {7, "BTBC507000004120"},  {10, "PBC070000004103"},
	            {17, "BTBC400000410114"}, {18, "BTBC5000004137"},
	            {19, "PBC0000000157"},    {12, "BXBC10104045"}};
	for (size_t i = 0; i < sizeof kept / sizeof *kept; i++) {
		char text[OWN_CODE_MAX];
		assert_int_equal(own_code_write(&samples[kept[i].sample], text), 0);
		assert_string_equal(text, kept[i].text);
	}
}

/* Nothing that an earlier version wrote names a station or proves a paper. */
static void what_earlier_versions_wrote_is_of_station_0(void **state)
{
	(void)state;
	struct own_code out;
	assert_int_equal(own_code_read("PBC0000000157", 13, &out, NULL), 0);
	assert_int_equal(out.station, 0);
	assert_true(out.old);
	assert_int_equal(own_code_read("BTBC400000410114", 16, &out, NULL), 0);
	assert_int_equal(out.station + out.proof, 0);
	assert_int_equal(out.number, 41);
	assert_true(out.old);
	assert_int_equal(own_code_read("BTBC5000004137", 14, &out, NULL), 0);
	assert_int_equal(out.number, 41);
	assert_true(out.old);
	assert_int_equal(own_code_read("PBC070000004103", 15, &out, NULL), 0);
	assert_int_equal(out.station, 7);
	assert_false(out.old);
}

static void no_slip_has_six_zeros_for_its_proof(void **state)
{
	(void)state;
	struct own_code out;
	struct code_fault f = {0, ""};
	assert_int_equal(own_code_read("BTBC40700000410100000021", 24, &out, &f), -EINVAL);
	assert_non_null(strstr(f.why, "six digits"));
	assert_int_equal(f.at, 16);
}

/* Every other character in every place, and every swap of neighbours: none may become another code of ours,
 * and none may pass for plain text. */
static void no_single_error_and_no_swap_becomes_another_code(void **state)
{
	(void)state;
	static const char keys[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
	long changed = 0;
	for (size_t s = 0; s < SAMPLES; s++) {
		char right[OWN_CODE_MAX], text[OWN_CODE_MAX];
		struct own_code out;
		own_code_write(&samples[s], right);
		size_t n = strlen(right);
		for (size_t i = 0; i < n; i++)
			for (const char *k = keys; *k; k++) {
				strcpy(text, right);
				text[i] = *k;
				changed += *k != right[i];
				assert_int_equal(own_code_read(text, n, &out, NULL) == 0, *k == right[i]);
			}
		for (size_t i = 0; i + 1 < n; i++) {
			strcpy(text, right);
			text[i] = right[i + 1];
			text[i + 1] = right[i];
			assert_int_equal(own_code_read(text, n, &out, NULL) == 0, text[i] == text[i + 1]);
		}
		/* A wrong digit keeps the shape, so it must be called wrong. */
		strcpy(text, right);
		text[n - 1] = text[n - 1] == '9' ? '0' : (char)(text[n - 1] + 1);
		struct code_fault f = {0, ""};
		struct code code;
		assert_int_equal(own_code_read(text, n, &out, &f), -EINVAL);
		assert_non_null(strstr(f.why, "check digits"));
		assert_int_equal(code_read(&code, "", text, n, TODAY, &f), -EINVAL);
	}
	assert_true(changed > 4000);
}

/* A practice code in which the letter of its set is misread is none of a room's, and the other way round; what begins as
 * one and is of a kind that the set has not, is refused. */
static void no_code_of_the_practice_set_is_read_as_a_rooms(void **state)
{
	(void)state;
	struct own_code out;
	struct code_fault f = {0, ""};
	for (size_t s = 0; s < SAMPLES; s++) {
		char text[OWN_CODE_MAX];
		own_code_write(&samples[s], text);
		if (text[0] != 'B')
			continue;
		text[1] = text[1] == 'T' ? 'X' : 'T';
		assert_int_equal(own_code_read(text, strlen(text), &out, NULL), -EINVAL);
		assert_int_equal(out.kind, OWN_NONE);
	}
	static const char check[] = "BXBC60152"; /* with its right check digits */
	assert_int_equal(check_mod97(check, 9), 1);
	assert_int_equal(own_code_read(check, 9, &out, &f), -EINVAL);
	assert_non_null(strstr(f.why, "practice set"));
}

static void a_code_cut_short_says_so(void **state)
{
	(void)state;
	struct own_code out;
	struct code_fault f = {0, ""};
	assert_int_equal(own_code_read("BTBC1010405", 11, &out, &f), -EINVAL);
	assert_non_null(strstr(f.why, "cut short"));
	assert_int_equal(own_code_read("BTBC101040511", 13, &out, &f), -EINVAL);
	assert_int_equal(f.at, 12);
	assert_int_equal(own_code_read("HELLO WORLD", 11, &out, &f), -ENOENT);
	assert_int_equal(own_code_read("BT", 2, &out, &f), -ENOENT);
}

static void fields_that_do_not_fit_are_not_printed(void **state)
{
	(void)state;
	static const struct own_code bad[] = {
	    {.kind = OWN_CARD, .site = "BC", .room = 100, .meaning = CARD_OFF},
	    {.kind = OWN_CARD, .site = "BC", .room = 1, .meaning = 1000},
	    {.kind = OWN_CARD, .site = "AB", .room = 1, .meaning = 1}, /* A is Q in France */
	    {.kind = OWN_CARD, .site = "B", .room = 1, .meaning = 1},
	    {.kind = OWN_DIGIT, .site = "BC", .room = 1, .digit = 25},
	    {.kind = OWN_BADGE, .site = "BC", .number = 1000000},
	    {.kind = OWN_BADGE, .site = "BC", .number = -1},
	    {.kind = OWN_ITEM, .site = "BC", .role = 'Q', .number = 1},
	    {.kind = OWN_SLIP, .site = "BC", .number = 1, .copy = 1},
	    {.kind = OWN_SLIP, .site = "BC", .number = 1, .copy = 1, .proof = 1000000},
	    {.kind = OWN_CASE, .site = "BC", .station = 100, .number = 1},
	    {.kind = OWN_NONE, .site = "BC"},
	    /* the practice set has none of these */
	    {.kind = OWN_ITEM, .practice = true, .site = "BC", .role = 'P', .number = 1},
	    {.kind = OWN_SCANNER_CHECK, .practice = true, .site = "BC", .number = 1},
	    {.kind = OWN_CASE, .practice = true, .site = "BC", .number = 1, .old = true},
	};
	char text[OWN_CODE_MAX];
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		assert_int_equal(own_code_write(&bad[i], text), -EINVAL);
		assert_string_equal(text, "");
	}
}

/* What stands on the paper beside the words: a group, what the card is for, and the number that its words end in. */
static void every_card_says_where_it_belongs_and_what_it_is_for(void **state)
{
	(void)state;
	int seen[CARDS_GROUPS] = {0};
	for (int m = own_card_next(0); m; m = own_card_next(m)) {
		const char *name = own_card_name(m), *digits = strpbrk(name, "0123456789");
		size_t use = strlen(own_card_use(m));
		assert_true(use > 0 && use <= 100); /* labels/paper.h */
		assert_int_equal(own_card_says(m), digits ? atoi(digits) : 0);
		if (digits)
			assert_int_equal(own_card_saying(own_card_group(m), own_card_says(m)), m);
		seen[own_card_group(m)]++;
	}
	assert_int_equal(seen[CARDS_NONE], 0);
	for (int g = CARDS_NONE + 1; g < CARDS_GROUPS; g++)
		assert_true(seen[g] && own_card_group_title((enum own_card_group)g)[0]);
	assert_int_equal(seen[CARDS_SHOWN], 10);
	assert_int_equal(own_card_saying(CARDS_SHOWN, 11), 0);
	assert_int_equal(own_card_saying(CARDS_EARLIER, 5), CARD_5_MINUTES_AGO);
	assert_string_equal(own_card_group_title(CARDS_NONE), "");
	assert_string_equal(own_card_group_title(CARDS_ALL_GROUPS), "");
}

static void the_cards_of_a_stores_bench_are_others_than_those_of_a_room(void **state)
{
	(void)state;
	int cards = 0;
	for (int m = own_stores_card_next(0); m; m = own_stores_card_next(m), cards++) {
		assert_true(own_card_is_of_stores(m) && own_card_name(m)[0] && own_card_use(m)[0]);
		assert_true(own_card_group_title(own_card_group(m))[0]);
		for (int k = own_card_next(0); k; k = own_card_next(k)) {
			assert_false(own_card_is_of_stores(k));
			assert_string_not_equal(own_card_name(m), own_card_name(k));
		}
		if (own_card_group(m) == CARDS_NUMBERS)
			assert_int_equal(own_card_saying(CARDS_NUMBERS, own_card_says(m)), m);
	}
	assert_int_equal(cards, 23);
	for (int room = 1; room <= CARD_TO_ROOM_MAX; room++) {
		char name[16];
		snprintf(name, sizeof name, "TO ROOM %d", room);
		assert_string_equal(own_card_name(CARD_TO_ROOM + room), name);
		assert_int_equal(own_card_says(CARD_TO_ROOM + room), room);
	}
	assert_string_equal(own_card_name(CARD_TO_ROOM), "");
	assert_string_equal(own_card_name(CARD_TO_ROOM + CARD_TO_ROOM_MAX + 1), "");
}

static void every_card_and_digit_has_its_own_words(void **state)
{
	(void)state;
	int cards = 0;
	for (int m = own_card_next(0); m; m = own_card_next(m), cards++) {
		assert_true(m > 0 && m < 1000 && own_card_name(m)[0]);
		for (int k = own_card_next(m); k; k = own_card_next(k))
			assert_string_not_equal(own_card_name(m), own_card_name(k));
	}
	assert_int_equal(cards, 59);
	assert_string_equal(own_card_name(CARD_OFF), "OFF");
	assert_string_equal(own_card_name(6), "");
	assert_string_equal(own_card_use(6), "");
	assert_int_equal(own_card_group(6), CARDS_NONE);
	for (int a = 1; a <= OWN_DIGITS; a++)
		for (int b = a + 1; b <= OWN_DIGITS; b++)
			assert_string_not_equal(own_digit_name(a), own_digit_name(b));
	assert_string_equal(own_digit_name(2), "right index finger");
	assert_string_equal(own_digit_name(16), "left great (big) toe");
	assert_string_equal(own_digit_name(0), "");
	assert_string_equal(own_digit_name(25), "");
}

/* A scanner that types in another layout: the letters that the layouts exchange are not in our alphabet. */
static void no_letter_of_ours_moves_between_keyboards(void **state)
{
	(void)state;
	for (const char *p = "AQWZMY"; *p; p++) /* French A-Q, Z-W and M; German and Swiss Y-Z */
		assert_null(strchr(OWN_SITE_LETTERS, *p));
	for (const char *p = "BTXPR"; *p; p++)
		assert_non_null(strchr(OWN_SITE_LETTERS, *p));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_is_written_is_read_back_in_capitals_and_small_letters),
	    cmocka_unit_test(the_printed_form_does_not_change),
	    cmocka_unit_test(what_earlier_versions_wrote_is_of_station_0),
	    cmocka_unit_test(no_slip_has_six_zeros_for_its_proof),
	    cmocka_unit_test(no_single_error_and_no_swap_becomes_another_code),
	    cmocka_unit_test(no_code_of_the_practice_set_is_read_as_a_rooms),
	    cmocka_unit_test(a_code_cut_short_says_so),
	    cmocka_unit_test(fields_that_do_not_fit_are_not_printed),
	    cmocka_unit_test(every_card_says_where_it_belongs_and_what_it_is_for),
	    cmocka_unit_test(the_cards_of_a_stores_bench_are_others_than_those_of_a_room),
	    cmocka_unit_test(every_card_and_digit_has_its_own_words),
	    cmocka_unit_test(no_letter_of_ours_moves_between_keyboards),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
