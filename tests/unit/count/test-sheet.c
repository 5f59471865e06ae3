/* What does not fit a sheet is refused and changes nothing; what a sheet must not hold breaks its rule by number. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/held.h"
#include "count/rule.h"
#include "count/sheet.h"

static struct sheet s, before;

static int begin(void **state)
{
	(void)state;
	memset(&s, 0, sizeof s);
	s.case_no = s.room = 1;
	s.initial_agreed = 1;
	s.n_items = 2;
	s.items[0] = (struct item){.place = ITEM_HERE,
	                           .pieces = 1,
	                           .thing = {.role = ROLE_TOURNIQUET, .line = "GREEN-M", .name = "band"}};
	s.items[1] = (struct item){
	    .place = ITEM_HERE, .pieces = 1, .thing = {.role = ROLE_FORCEPS, .line = "FORCEPS"}};
	s.n_digits = 2;
	s.digits[0].number = 2;
	s.digits[1] = (struct digit){.number = 7, .state = DIGIT_OFF, .had = 1};
	return 0;
}

static void what_does_not_fit_changes_nothing(void **state)
{
	static const struct event bad[] = {
	    {.kind = EV_ITEM_ON, .item = 3, .digit = 2},
	    {.kind = EV_ITEM_ON, .item = 0, .digit = 2},
	    {.kind = EV_ITEM_SHOWN, .item = 9, .n = 1},
	    {.kind = EV_FORCEPS_MOVED, .item = 3},
	    {.kind = EV_COUNT_AGAIN, .item = 3},
	    {.kind = EV_ITEM_MORE, .item = 3, .n = 1},
	    {.kind = EV_DIGIT_ON, .digit = 0},
	    {.kind = EV_DIGIT_ON, .digit = DIGIT_NUMBER_MAX + 1},
	    {.kind = EV_DIGIT_NEVER_ON, .digit = 2},
	    {.kind = EV_DIGIT_STILL_ON, .digit = 2},
	    {.kind = EV_DIGIT_EARLIER, .digit = 3, .n = 5, .what = 1},
	    {.kind = EV_DIGIT_MOVED, .digit = 2, .other = 2},
	    {.kind = EV_DIGIT_MOVED, .digit = 2, .other = 7}, /* which had one of its own */
	    {.kind = EV_DIGIT_MOVED, .digit = 2, .other = DIGIT_NUMBER_MAX + 1},
	    {.kind = EV_REMINDED, .digit = 3, .n = 20},
	    {.kind = EV_ACKNOWLEDGED, .digit = 3, .person = 1},
	};
	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct origin at = {0};
		begin(NULL);
		before = s;
		int n = sheet_apply(&s, &bad[i], &at);
		if (n != -EINVAL || memcmp(&s, &before, sizeof s) != 0)
			fail_msg("event %d (%s): %d", (int)i, event_name(bad[i].kind), n);
		assert_int_equal(sheet_apply(&s, &bad[i], NULL), n); /* nobody asks where */
	}
}

/* Whatever was there before: more, less, or nothing. */
static void a_copy_is_the_sheet_byte_for_byte(void **state)
{
	static struct sheet full, none, copy;
	(void)state;
	full = s;
	full.n_items = ITEMS_MAX;
	full.n_digits = DIGITS_MAX;
	memset(full.items, 0x11, sizeof full.items);
	memset(full.digits, 0x22, sizeof full.digits);
	const struct sheet *all[] = {&none, &s, &full};
	for (int was = 0; was < 3; was++)
		for (int is = 0; is < 3; is++) {
			memcpy(&copy, all[was], sizeof copy);
			sheet_copy(&copy, all[is]);
			if (memcmp(&copy, all[is], sizeof copy) != 0)
				fail_msg("%d over %d", is, was);
		}
	sheet_clear(&copy);
	assert_memory_equal(&copy, &none, sizeof copy);
}

static void a_full_sheet_takes_nothing_more(void **state)
{
	(void)state;
	s.n_items = ITEMS_MAX;
	struct event more = {.kind = EV_ITEM_IN, .item = (uint8_t)(ITEMS_MAX + 1), .n = 1};
	before = s;
	assert_int_equal(sheet_apply(&s, &more, NULL), -ENOSPC);
	assert_memory_equal(&s, &before, sizeof s);
	for (int i = 0; i < DIGITS_MAX; i++)
		s.digits[i].number = (uint8_t)(i + 1);
	s.n_digits = DIGITS_MAX;
	before = s;
	assert_int_equal(sheet_apply(&s, &(struct event){.kind = EV_DIGIT_ON, .digit = DIGITS_MAX + 1}, NULL),
	                 -ENOSPC);
	assert_memory_equal(&s, &before, sizeof s);
}

/* The sheet is made ready for the sign-out; then one thing of it is as it must not be. */
static void ready(void)
{
	begin(NULL);
	for (int i = 0; i < s.n_items; i++) {
		s.items[i].place = ITEM_ACCOUNTED;
		s.items[i].evidence = EVIDENCE_SHOWN;
		s.items[i].shown = 1;
	}
	s.items[0].condition = CONDITION_INTACT;
	s.digits[1].seen_bare = 1;
	s.final = FINAL_AGREED;
}

#define BIT(name) (1u << RULE_##name)

static void each_rule_is_broken_by_its_own_fault(void **state)
{
	(void)state;
	ready();
	assert_int_equal(rule_check(&s), 0);
	s.case_no = 0;
	s.items[0].evidence = EVIDENCE_NONE;
	assert_int_equal(rule_check(&s), 0); /* nobody's sheet */

	ready();
	s.items[0].evidence = EVIDENCE_NONE;
	assert_int_equal(rule_check(&s), BIT(EVIDENCE));
	ready();
	s.items[1].evidence = EVIDENCE_MARK; /* that it does not bear */
	assert_int_equal(rule_check(&s), BIT(EVIDENCE));
	s.items[1].thing.identity_kind = IDENTITY_MARK;
	assert_int_equal(rule_check(&s), 0);
	ready();
	s.items[1].pieces = 2;
	assert_int_equal(rule_check(&s), BIT(EVIDENCE));
	ready();
	s.items[0].condition = CONDITION_PIECES_MISSING;
	assert_true(rule_check(&s) & BIT(CONDITION));
	s.items[0].condition = CONDITION_CUT_COMPLETE;
	assert_int_equal(rule_check(&s), 0);

	ready();
	s.items[0].place = ITEM_OFF;
	assert_true(rule_check(&s) & BIT(ENDS_RECONCILED));
	ready();
	s.initial_agreed = 0;
	assert_int_equal(rule_check(&s), BIT(AGREED_ALOUD));
	s.single = 1;
	s.who_looked = LOOKED_TEAM;
	assert_int_equal(rule_check(&s), 0);
	ready();
	s.final = FINAL_NONE;
	assert_int_equal(rule_check(&s), BIT(COUNT_LOOK_DRESSING)); /* seen bare before the count */

	begin(NULL);
	s.items[0].place = ITEM_ON; /* on no digit */
	assert_int_equal(rule_check(&s), BIT(FACTS_FIRST));
	s.items[0].digit = 2; /* on one that has none */
	assert_int_equal(rule_check(&s), BIT(FACTS_FIRST));
	s.digits[0].state = DIGIT_ON;
	assert_int_equal(rule_check(&s), 0);
	s.initial_agreed = 0;
	assert_int_equal(rule_check(&s), BIT(FACTS_FIRST));
	debts_owe(&s.debts, (struct debt){.kind = DEBT_COUNT});
	assert_int_equal(rule_check(&s), 0);
	s.final = FINAL_ASKING;
	assert_int_equal(rule_check(&s), BIT(COUNT_LOOK_DRESSING));
	begin(NULL);
	s.digits[0].state = DIGIT_ON; /* without a tourniquet */
	assert_int_equal(rule_check(&s), BIT(FACTS_FIRST) | BIT(SEPARATE_LINES));
	s.digits[0].state = DIGIT_MAYBE_ON;
	assert_int_equal(rule_check(&s), BIT(FACTS_FIRST));
	debts_owe(&s.debts, (struct debt){.kind = DEBT_ON, .digit = 2});
	assert_int_equal(rule_check(&s), 0);
	s.final = FINAL_AGREED;
	assert_true(rule_check(&s) & BIT(ENDS_RECONCILED)); /* agreed while an item is open */
	for (int i = 1; i <= RULE_MAX; i++)
		assert_true(strlen(rule_text((enum rule)i)) > 20);
}

static void an_item_stands_on_one_sheet_of_all(void **state)
{
	static struct station st;
	(void)state;
	snprintf(s.items[0].thing.identity, sizeof s.items[0].thing.identity, "GREEN-M:7");
	st.sheets[0] = st.sheets[2] = s;
	st.sheets[2].case_no = 2;
	assert_int_equal(rule_check_all(&st), BIT(ONE_SHEET) | BIT(INNOCENCE));
	st.sheets[2].items[0].place = ITEM_RETURNED;
	assert_int_equal(rule_check_all(&st), 0);
	st.sheets[2].items[0].place = ITEM_HERE;
	st.sheets[0].items[0].place = ITEM_STRUCK;
	assert_int_equal(rule_check_all(&st), 0);
	st.sheets[0].items[0].place = ITEM_HERE;
	st.sheets[2].case_no = 0;
	assert_int_equal(rule_check_all(&st), 0);
}

static void a_scan_that_is_held_is_asked_about_alone(void **state)
{
	static struct station st;
	(void)state;
	memset(&st, 0, sizeof st);
	st.rooms[0].number = 1;
	st.n_rooms = 1;
	assert_int_equal(rule_check_stored(&st, 1), 0);
	st.held[0].room = 1;
	st.n_held = 1;
	assert_int_equal(rule_check_stored(&st, 1), BIT(DISTRUST));
	st.idle_asked[0] = Q_STORED;
	assert_int_equal(rule_check_stored(&st, 1), 0);
	st.n_held = 0;
	assert_int_equal(rule_check_stored(&st, 1), BIT(ONE_QUESTION));
	st.n_held = 1;
	st.sheets[0] = s;
	st.sheets[0].asked.what = Q_TWICE;
	assert_int_equal(rule_check_stored(&st, 1), BIT(ONE_QUESTION)); /* asked in two places */
	st.idle_asked[0] = Q_NONE;
	assert_int_equal(rule_check_stored(&st, 1), 0);
	st.sheets[1] = st.sheets[0];
	st.sheets[1].case_no = 2;
	st.sheets[1].suspended = 1;
	assert_int_equal(rule_check_stored(&st, 1), BIT(ONE_QUESTION));
}

static void where_things_alike_may_be_is_each_digit_that_had_one(void **state)
{
	(void)state;
	assert_false(sheet_may_be_on(&s, 1, 2));
	s.items[0].digit = 2;
	assert_true(sheet_may_be_on(&s, 1, 2));
	assert_false(sheet_may_be_on(&s, 1, 7));
	s.items[2] = s.items[0];
	s.items[2].digit = 7;
	s.n_items = 3;
	assert_true(sheet_may_be_on(&s, 1, 2) && sheet_may_be_on(&s, 1, 7));
	assert_false(sheet_may_be_on(&s, 1, 12));
	s.items[2].place = ITEM_STRUCK;
	assert_false(sheet_may_be_on(&s, 1, 7));
}

static void only_a_scan_that_is_there_can_be_answered(void **state)
{
	static const struct event bad[] = {
	    {.kind = EV_HELD_ANSWERED, .ref = 9, .what = HELD_THROWN},
	    {.kind = EV_ALIVE, .what = HELD_CARD},
	    {.kind = EV_HELD, .what = 0},
	    {.kind = EV_HELD, .what = HELD_TRAY + 1},
	};
	struct held list[2], was[2];
	int n = 0;
	(void)state;
	memset(list, 0, sizeof list);
	struct event held = {
	    .kind = EV_HELD, .seq = 3, .what = HELD_CARD, .n = 40, .item = 1, .room = 1, .text = "hand-1"};
	assert_int_equal(held_apply(list, &n, 2, &held), 0);
	held.seq = 4;
	held.item = 2;
	assert_int_equal(held_apply(list, &n, 2, &held), 0);
	memcpy(was, list, sizeof was);
	assert_int_equal(held_apply(list, &n, 2, &held), -ENOSPC);
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
		assert_int_equal(held_apply(list, &n, 2, &bad[i]), -EINVAL);
	assert_memory_equal(list, was, sizeof was);
	assert_int_equal(n, 2);

	assert_true(held_same(&list[0], &list[1]));
	assert_false(held_same(&list[1], &list[0])); /* the one before */
#define OTHER(change)                                                                                        \
	memcpy(was, list, sizeof was);                                                                       \
	was[1].change;                                                                                       \
	assert_false(held_same(&was[0], &was[1]))
	OTHER(scanner[0] = 'x');
	OTHER(kind = HELD_BADGE);
	OTHER(n = 41);
	OTHER(other = 2);
	OTHER(proof = 1);
	OTHER(digit = 2);
	OTHER(thing.line[0] = 'x');
	OTHER(thing.identity[0] = 'x');
	OTHER(thing.lot[0] = 'x');
	struct event answer = {.kind = EV_HELD_ANSWERED, .ref = 3, .what = HELD_MEANT};
	assert_int_equal(held_apply(list, &n, 2, &answer), 0);
	assert_int_equal(list[0].meant, 1);
	answer.what = HELD_ENTERED;
	assert_int_equal(held_apply(list, &n, 2, &answer), 0);
	assert_int_equal(n, 1);
	assert_int_equal(list[0].seq, 4);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(what_does_not_fit_changes_nothing, begin),
	    cmocka_unit_test_setup(a_copy_is_the_sheet_byte_for_byte, begin),
	    cmocka_unit_test_setup(a_full_sheet_takes_nothing_more, begin),
	    cmocka_unit_test(each_rule_is_broken_by_its_own_fault),
	    cmocka_unit_test_setup(an_item_stands_on_one_sheet_of_all, begin),
	    cmocka_unit_test_setup(a_scan_that_is_held_is_asked_about_alone, begin),
	    cmocka_unit_test_setup(where_things_alike_may_be_is_each_digit_that_had_one, begin),
	    cmocka_unit_test(only_a_scan_that_is_there_can_be_answered),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
