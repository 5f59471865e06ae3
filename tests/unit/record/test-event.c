/* An event as text: what is written is read back, is canonical, and nothing else is taken for an event. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "base/json.h"
#include "record/event-json.h"
#include "record/event-table.h"
#include "record/event-text.h"

/* Fills a text to its last byte, so that a field that is a byte too short is seen. */
static void fill(char *text, size_t size, char with)
{
	memset(text, with, size - 1);
	text[size - 1] = 0;
}

static void fill_line(struct line *l, int format)
{
	fill(l->key, sizeof l->key, 'K');
	fill(l->name, sizeof l->name, 'N');
	fill(l->instead, sizeof l->instead, 'I');
	l->role = ROLE_TRAY;
	l->identity = IDENTITY_MARK;
	l->marked = l->visible = l->single_use = l->rolls_on = l->shows_on_xray = 1;
	l->per_pack = 500;
	if (format > 1) {
		l->minimum = LINE_MINIMUM_MAX;
		l->label = LABEL_AFTER_STERILISING;
		fill(l->label_place, sizeof l->label_place, 'P');
	}
	l->size_min_mm = 45;
	l->size_max_mm = 9999;
	for (int i = 0; i < LINE_CODES_MAX; i++)
		fill(l->codes[i], sizeof l->codes[i], (char)('a' + i));
	for (int i = 0; i < LINE_CONTENTS_MAX; i++) {
		fill(l->contents[i].key, sizeof l->contents[i].key, (char)('A' + i));
		l->contents[i].count = (int16_t)(i + 1);
	}
}

static void fill_said(struct said *said)
{
	const enum saying longest_saying = SAY_YES_IS_NO_SIGN_OUT_SINGLE;
#define FILL_NUMBER(member) said->member = INT32_MIN;
#define FILL_DIGITS(member) FILL_NUMBER(member)
#define FILL_DIGIT(member) FILL_NUMBER(member)
#define FILL_CARD(member) FILL_NUMBER(member)
#define FILL_DATE(member) FILL_NUMBER(member)
#define FILL_TIME(member) FILL_NUMBER(member)
#define FILL_SAYING(member) said->member = longest_saying;
#define FILL_TEXT(member) fill(said->member, sizeof said->member, 'W');
#define FILL_PERSON(member) FILL_TEXT(member)
#define FILL_SHIPPED(member) FILL_TEXT(member)
#define FILL_THING(member) FILL_TEXT(member)
#define X(type, member, name, size) FILL_##type(member)
	VALUES(X)
#undef X
}

static void fill_thing(struct thing *t, int format)
{
	fill(t->line, sizeof t->line, 'L');
	fill(t->name, sizeof t->name, 'N');
	fill(t->identity, sizeof t->identity, 'D');
	fill(t->lot, sizeof t->lot, 'T');
	t->called = format == 1 ? SAY_NONE : SAY_TOURNIQUET_NOT_LISTED_YET;
	t->expiry = 99999999;
	t->role = ROLE_REFUSED;
	t->identity_kind = IDENTITY_MARK;
	t->single_use = t->rolls_on = t->unlisted = t->shows_on_xray = 1;
}

/* The number of a list whose name is longest; in format 1 any number that fits. */
static int longest(enum event_list list, int format, int any_number)
{
	int number = 0;
	size_t length = 0;
	if (list == LIST_NONE || format == 1)
		return any_number;
	for (int i = 0; i < 256; i++) {
		const char *name = event_list_name(list, i);
		if (name && strlen(name) > length) {
			length = strlen(name);
			number = i;
		}
	}
	assert_true(number > 0);
	return number;
}

/* The fullest event of a kind: each field that it names at its limit. Every byte between the fields is zero,
 * so that two events can be compared whole. */
static void fill_event(struct event *e, enum event_kind kind, int format)
{
	uint32_t f = event_fields_in(format, kind);
	const enum event_list what = f >> F_LIST_OF_WHAT & 63, other = f >> F_LIST_OF_OTHER & 63;
	memset(e, 0, sizeof *e);
	e->kind = kind;
	e->format = (uint8_t)format;
	e->flags = EVENT_LATE | EVENT_KEYED | EVENT_FIRST;
	e->seq = JSON_INTEGER_MAX;
	e->at.boot = INT32_MAX;
	e->at.boot_ms = JSON_INTEGER_MAX;
	e->at.wall_ms = -JSON_INTEGER_MAX;
	e->at.utc_min = format == 1 ? 0 : -840;
	e->station = format == 1 ? 0 : 99;
	e->room = e->case_no = e->answer = INT32_MAX;
	e->item = f & F_ITEM ? 255 : 0;
	e->digit = f & F_DIGIT ? DIGIT_NUMBER_MAX : 0;
	e->person = f & F_PERSON ? INT32_MIN : 0;
	e->other = f & F_OTHER ? longest(other, format, INT32_MAX) : 0;
	e->n = f & F_N ? INT32_MIN : 0;
	e->what = (uint8_t)(f & F_WHAT ? longest(what, format, 255) : 0);
	e->ref = f & F_REF ? JSON_INTEGER_MAX : 0;
	e->proof = f & F_PROOF ? 999999 : 0;
	if (f & F_TEXT) {
		fill(e->text, sizeof e->text, 'x');
		memcpy(e->text, "\xc3\xb6\"\\\n\x1d", 6);
	}
	if (f & F_LINE)
		fill_line(&e->line, format);
	if (f & F_THING)
		fill_thing(&e->thing, format);
	if (f & F_STAFF) {
		e->staff.number = INT32_MAX;
		e->staff.kind = STAFF_CHARGE;
		e->staff.registered = 1;
		fill(e->staff.name, sizeof e->staff.name, 'S');
	}
	if (f & F_HEAD) {
		e->head.seq = JSON_INTEGER_MAX;
		fill(e->head.hash, sizeof e->head.hash, 'f');
		e->head.case_no = e->head.slip = INT32_MAX;
		e->head.item = 99999999;
	}
	if (f & F_SAID)
		fill_said(&e->said);
	if (f & F_SEAL)
		fill(e->seal.jws, sizeof e->seal.jws, 'S');
	if (f & F_KEY) {
		fill(e->key.kid, sizeof e->key.kid, 'K');
		fill(e->key.x, sizeof e->key.x, 'X');
	}
	if (f & F_NOTICE)
		fill(e->notice, sizeof e->notice, 'N');
	if (f & F_BATCH) {
		e->batch.expiry = 20280331;
		e->batch.first = 1;
		e->batch.last = 99999999;
		fill(e->batch.line, sizeof e->batch.line, 'L');
		fill(e->batch.lot, sizeof e->batch.lot, 'T');
	}
}

static void read_back(const struct event *e)
{
	struct buf text = {0}, again = {0};
	struct event back;
	struct error why = {0};
	assert_int_equal(event_write(e, &text), 0);
	/* Against the house's general writer of canonical JSON, and each of the two readers against the
	 * other. */
	json_t *o = json_read(text.data, text.size, &why);
	assert_non_null(o);
	assert_int_equal(json_write_canonical(o, &again), 0);
	assert_string_equal(again.data, text.data);
	json_decref(o);
	buf_clear(&again);
	if (event_read_canonical(&back, text.data, text.size) && memcmp(e, &back, sizeof back) != 0)
		fail_msg("the quick reader differs: %s", text.data);
	if (event_read_strict(&back, text.data, text.size, &why) < 0 || memcmp(e, &back, sizeof back) != 0)
		fail_msg("the strict reader differs: %s: %s", why.text, text.data);
	if (event_read(&back, text.data, text.size, &why) < 0)
		fail_msg("%s: %s: %s", event_name(e->kind), why.text, text.data);
	assert_int_equal(event_write(&back, &again), 0);
	assert_string_equal(again.data, text.data);
	if (memcmp(e, &back, sizeof back) != 0)
		fail_msg("%s is not the same when it is read back: %s", event_name(e->kind), text.data);
	buf_free(&text);
	buf_free(&again);
}

static void every_kind_reads_back_as_it_was_written(void **state)
{
	(void)state;
	for (int format = 1; format <= FORMAT_VERSION; format++)
		for (int k = 0; k < EV_KINDS; k++) {
			struct event e;
			fill_event(&e, (enum event_kind)k, format);
			read_back(&e);
		}
}

/* Those that fill_event() forgot would be read back as well: as nothing. */
static void must_be_there(const json_t *o, const struct field *fields, uint32_t named, const char *kind)
{
	for (const struct field *f = fields; f->name; f++) {
		const json_t *value = json_object_get(o, f->name);
		if (f->only && !(f->only & named))
			continue;
		if (!value)
			fail_msg("%s has no %s: it is not filled here", kind, f->name);
		if (f->part)
			must_be_there(value, f->part, named, f->name);
	}
}

static void the_fullest_event_has_each_field_of_its_kind(void **state)
{
	(void)state;
	for (int k = 0; k < EV_KINDS; k++) {
		struct event e;
		struct buf text = {0};
		fill_event(&e, (enum event_kind)k, FORMAT_VERSION);
		assert_int_equal(event_write(&e, &text), 0);
		json_t *o = json_read(text.data, text.size, NULL);
		must_be_there(o, event_table(FORMAT_VERSION), event_fields(e.kind), event_name(e.kind));
		json_decref(o);
		buf_free(&text);
	}
}

/* What stands in the record day by day goes through the quick reader; it must take nearly all kinds. */
static void the_quick_reader_takes_what_is_common(void **state)
{
	int taken = 0;
	(void)state;
	for (int k = 0; k < EV_KINDS; k++) {
		struct event e = {.kind = (enum event_kind)k,
		                  .format = (uint8_t)(1 + k % FORMAT_VERSION),
		                  .flags = EVENT_FIRST,
		                  .seq = 9,
		                  .at = {.boot = 1, .boot_ms = 2}};
		struct buf text = {0};
		struct event back;
		if (event_fields(e.kind) & F_THING)
			snprintf(e.thing.name, sizeof e.thing.name, "finger tourniquet, gr\xc3\xbcn");
		if (event_fields(e.kind) & F_STAFF)
			e.staff = (struct person){.number = 1, .kind = STAFF_SURGEON};
		assert_int_equal(event_write(&e, &text), 0);
		taken += event_read_canonical(&back, text.data, text.size);
		buf_free(&text);
	}
	assert_true(taken >= EV_KINDS - 2);
}

/* A sentence that was cut in the middle of a letter: the rest of it is kept. */
static void a_text_that_is_no_utf_8_is_kept_but_for_those_bytes(void **state)
{
	static const struct {
		const char *text, *kept;
	} cut[] = {{"cut \xc3", "cut ?"},
	           {"\xff\xfe x", "?? x"},
	           {"a\xe2\x82", "a??"},
	           {"\xed\xa0\x80", "???"},
	           {"\xc0\x80", "??"},
	           {"\xf4\x90\x80\x80", "????"},
	           {"\xe2\x82\xac", "\xe2\x82\xac"},
	           {"\xed\x9f\xbf", "\xed\x9f\xbf"}, /* the last before what belongs to UTF-16 */
	           {"\xf0\x9f\x98\x80", "\xf0\x9f\x98\x80"}};
	(void)state;
	for (size_t i = 0; i < sizeof cut / sizeof *cut; i++) {
		struct event e = {.kind = EV_REFUSED, .seq = 1}, back;
		struct buf text = {0};
		snprintf(e.text, sizeof e.text, "%s", cut[i].text);
		assert_int_equal(event_write(&e, &text), 0);
		assert_int_equal(event_read_strict(&back, text.data, text.size, NULL), 0);
		assert_string_equal(back.text, cut[i].kept);
		buf_free(&text);
	}
}

static void a_field_that_a_kind_does_not_name_is_not_written(void **state)
{
	(void)state;
	for (int k = 0; k < EV_KINDS; k++) {
		struct event e;
		fill_event(&e, (enum event_kind)k, FORMAT_VERSION);
		uint32_t named = event_fields(e.kind);
		/* Everything that is no part of the union is set, whether the kind names it or not. */
		e.item = e.digit = 3;
		e.what = 1;
		e.other = 1;
		e.person = e.n = 5;
		e.ref = 7;
		memcpy(e.text, "text", 5);
		struct buf text = {0};
		assert_int_equal(event_write(&e, &text), 0);
		json_t *o = json_read(text.data, text.size, NULL);
		for (const struct field *f = event_table(FORMAT_VERSION); f->name; f++)
			if (f->only && (json_object_get(o, f->name) != NULL) != ((named & f->only) != 0))
				fail_msg("%s and its field %s: %s", event_name(e.kind), f->name, text.data);
		json_decref(o);
		buf_free(&text);
	}
}

/* What the quick reader takes is not written anew to compare it, so it must know each kind's fields itself. */
static void a_field_that_a_kind_does_not_name_is_not_canonical(void **state)
{
	static const char text[] = "{\"boot\":1,\"digit\":2,\"kind\":\"digit-on\",\"seq\":1,\"v\":2}";
	static const char other[] = "{\"boot\":1,\"digit\":2,\"kind\":\"suspended\",\"seq\":1,\"v\":2}";
	struct event e;
	(void)state;
	assert_int_equal(event_read_canonical(&e, text, sizeof text - 1), 1);
	assert_int_equal(event_read_canonical(&e, other, sizeof other - 1), 0);
}

static void zero_and_empty_are_left_out(void **state)
{
	(void)state;
	struct event e = {.kind = EV_DIGIT_ON, .seq = 1};
	struct buf text = {0};
	assert_int_equal(event_write(&e, &text), 0);
	assert_string_equal(text.data, "{\"kind\":\"digit-on\",\"seq\":1,\"v\":2}");
	buf_free(&text);
	e = (struct event){.kind = EV_DIGIT_ON,
	                   .flags = EVENT_KEYED,
	                   .seq = 34,
	                   .room = 1,
	                   .case_no = 12,
	                   .digit = 2,
	                   .at = {.boot = 1, .boot_ms = 5, .wall_ms = 6, .utc_min = -90}};
	assert_int_equal(event_write(&e, &text), 0);
	/* By hand from RFC 8785: keys in order, no spaces. */
	assert_string_equal(text.data,
	                    "{\"boot\":1,\"boot_ms\":5,\"case\":12,\"digit\":2,\"keyed\":true,"
	                    "\"kind\":\"digit-on\",\"room\":1,\"seq\":34,\"utc\":-90,\"v\":2,\"wall_ms\":6}");
	buf_free(&text);
}

static void what_is_no_event_is_refused_with_a_reason(void **state)
{
	(void)state;
	static const char *const bad[] = {
	    "",
	    "{",
	    "[]",
	    "null",
	    "{}",
	    "{\"v\":1}",
	    "{\"kind\":\"digit-on\",\"v\":3,\"seq\":1}",
	    "{\"kind\":\"digit-on\",\"v\":0,\"seq\":1}",
	    "{\"kind\":\"digit-on\",\"v\":2,\"seq\":0}",
	    "{\"kind\":\"digit-on\",\"seq\":1,\"utc\":841,\"v\":2}",
	    "{\"kind\":\"digit-on\",\"seq\":1,\"utc\":\"60\",\"v\":2}",
	    "{\"kind\":\"who-looked\",\"seq\":1,\"v\":2,\"what\":2}",
	    "{\"kind\":\"who-looked\",\"seq\":1,\"v\":2,\"what\":\"somebody\"}",
	    "{\"kind\":\"who-looked\",\"seq\":1,\"v\":2,\"what\":\"\"}",
	    "{\"kind\":\"item-shown\",\"other\":1,\"seq\":1,\"v\":2}",
	    "{\"kind\":\"item-in\",\"seq\":1,\"thing\":{\"role\":1},\"v\":2}",
	    "{\"kind\":\"item-in\",\"seq\":1,\"thing\":{\"role\":\"glove\"},\"v\":2}",
	    "{\"kind\":\"staff-set\",\"seq\":1,\"staff\":{\"kind\":1},\"v\":2}",
	    "{\"kind\":\"digit-no\",\"v\":1,\"seq\":1}",
	    "{\"kind\":7,\"v\":1,\"seq\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":0,\"v\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":-1,\"v\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":1.5,\"v\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":\"1\",\"v\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":9007199254740992,\"v\":1}",
	    "{\"digit\":25,\"kind\":\"digit-on\",\"seq\":1,\"v\":1}",
	    "{\"digit\":-1,\"kind\":\"digit-on\",\"seq\":1,\"v\":1}",
	    "{\"item\":256,\"kind\":\"item-on\",\"seq\":1,\"v\":1}",
	    "{\"kind\":\"who-looked\",\"seq\":1,\"v\":1,\"what\":256}",
	    "{\"case\":2147483648,\"kind\":\"digit-on\",\"seq\":1,\"v\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":1,\"seq\":2,\"v\":1}",
	    "{\"kind\":\"digit-on\",\"seq\":1,\"v\":1} x",
	    "{\"kind\":\"refused\",\"seq\":1,\"text\":7,\"v\":1}",
	    "{\"kind\":\"refused\",\"seq\":1,\"text\":\"\\u0000\",\"v\":1}",
	    "{\"kind\":\"refused\",\"seq\":1,\"text\":\"\xff\",\"v\":1}",
	    "{\"kind\":\"item-in\",\"seq\":1,\"v\":1}",
	    "{\"kind\":\"item-in\",\"seq\":1,\"thing\":{\"role\":6},\"v\":1}",
	    "{\"kind\":\"item-in\",\"seq\":1,\"thing\":[],\"v\":1}",
	    "{\"kind\":\"line-set\",\"line\":{},\"seq\":1,\"v\":1}",
	    "{\"kind\":\"line-set\",\"line\":{\"role\":\"none\"},\"seq\":1,\"v\":1}",
	    "{\"kind\":\"line-set\",\"line\":{\"codes\":[1],\"per_pack\":1,\"role\":\"other\"},\"seq\":1,"
	    "\"v\":1}",
	    "{\"kind\":\"line-set\",\"line\":{\"contents\":{\"A\":\"2\"},\"per_pack\":1,\"role\":\"tray\"},"
	    "\"seq\":1,"
	    "\"v\":1}",
	    "{\"kind\":\"line-set\",\"line\":{\"contents\":{\"A\":99999},\"per_pack\":1,\"role\":\"tray\"},"
	    "\"seq\":1,"
	    "\"v\":1}",
	    "{\"kind\":\"staff-set\",\"seq\":1,\"staff\":{\"kind\":4},\"v\":1}",
	    "{\"kind\":\"line-set\",\"line\":{\"codes\":\"1\",\"per_pack\":1,\"role\":\"other\"},\"seq\":1,"
	    "\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"codes\":[\"1\",\"2\",\"3\",\"4\",\"5\",\"6\",\"7\",\"8\","
	    "\"9\",\"10\",\"11\",\"12\",\"13\",\"14\",\"15\",\"16\",\"17\"],\"per_pack\":1,\"role\":"
	    "\"other\"},\"seq\":1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"codes\":["
	    "\"1234567890123456789012345678901234567890123456789012345678901234567890123456789012345678901234"
	    "567890\"],\"per_pack\":1,\"role\":\"other\"},\"seq\":1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"contents\":[\"A\"],\"per_pack\":1,\"role\":\"tray\"},\"seq\":"
	    "1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"contents\":{\"A\":-1},\"per_pack\":1,\"role\":\"tray\"},"
	    "\"seq\":1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"contents\":{\"A\":0},\"per_pack\":1,\"role\":\"tray\"},"
	    "\"seq\":1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"contents\":{"
	    "\"A234567890123456789012345678901234567890123456789012345678901234567890\":1},\"per_pack\":1,"
	    "\"role\":\"tray\"},\"seq\":1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"identity\":7,\"per_pack\":1,\"role\":\"other\"},\"seq\":1,"
	    "\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"identity\":\"face\",\"per_pack\":1,\"role\":\"other\"},"
	    "\"seq\":1,\"v\":2}",
	    "{\"kind\":\"line-set\",\"line\":{\"name\":7,\"per_pack\":1,\"role\":\"other\"},\"seq\":1,\"v\":"
	    "2}",
	    "{\"kind\":\"line-set\",\"line\":{\"per_pack\":\"1\",\"role\":\"other\"},\"seq\":1,\"v\":2}",
	    "{\"batch\":{\"first\":100000000},\"kind\":\"labelled\",\"seq\":1,\"v\":1}",
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct event e;
		struct error why = {0};
		if (event_read(&e, bad[i], strlen(bad[i]), &why) != -EINVAL)
			fail_msg("taken for an event: %s", bad[i]);
		assert_non_null(strstr(why.text, ": "));
	}
}

static void a_text_that_is_a_byte_too_long_is_refused(void **state)
{
	(void)state;
	char text[400], filling[EVENT_TEXT_MAX + 1];
	fill(filling, sizeof filling, 'x');
	int n =
	    snprintf(text, sizeof text, "{\"kind\":\"refused\",\"seq\":1,\"text\":\"%s\",\"v\":1}", filling);
	struct event e;
	assert_int_equal(event_read(&e, text, (size_t)n, NULL), -EINVAL);
}

static void the_record_finds_items_by_identity_and_slips_by_number(void **state)
{
	(void)state;
	char room[24];
	struct event used = {.kind = EV_ITEM_USED, .thing = {.identity = "GREEN-M:101"}};
	struct event queued = {.kind = EV_SLIP_QUEUED, .n = 17};
	struct event in = {.kind = EV_ITEM_IN, .thing = {.identity = "GREEN-M:101"}};
	assert_string_equal(event_key(&used, room), "GREEN-M:101");
	assert_string_equal(event_key(&queued, room), "slip:17");
	assert_string_equal(event_key(&in, room), "");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(every_kind_reads_back_as_it_was_written),
	    cmocka_unit_test(the_fullest_event_has_each_field_of_its_kind),
	    cmocka_unit_test(the_quick_reader_takes_what_is_common),
	    cmocka_unit_test(a_text_that_is_no_utf_8_is_kept_but_for_those_bytes),
	    cmocka_unit_test(a_field_that_a_kind_does_not_name_is_not_written),
	    cmocka_unit_test(a_field_that_a_kind_does_not_name_is_not_canonical),
	    cmocka_unit_test(zero_and_empty_are_left_out),
	    cmocka_unit_test(what_is_no_event_is_refused_with_a_reason),
	    cmocka_unit_test(a_text_that_is_a_byte_too_long_is_refused),
	    cmocka_unit_test(the_record_finds_items_by_identity_and_slips_by_number),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
