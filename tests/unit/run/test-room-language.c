/* What a room is told in its language: through the daemon's heart, with a language that no sentence of English can pass for
 * (every vowel has an accent), and with German as it is shipped. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

static struct core core;
static char folder[FOLDER_MAX];

static void open_with(const char *settings)
{
	char path[FOLDER_MAX + 16];
	struct error e = {0};
	folder_make(folder);
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "we");
	assert_non_null(f);
	fputs(settings, f);
	fclose(f);
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
	assert_string_equal(core.settings_fault, "");
}

static void over(void)
{
	core_close(&core);
	folder_remove(folder);
}

static const struct reply *scan(struct own_code code)
{
	char text[OWN_CODE_MAX];
	snprintf(code.site, sizeof code.site, "%s", core.station.site);
	code.room = code.room ? code.room : 1;
	assert_int_equal(own_code_write(&code, text), 0);
	return core_scan(
	    &core, &(const struct scan){
	               .scanner = "hand", .room = code.room, .aim = "", .data = text, .size = strlen(text)});
}

static const struct reply *card(enum own_card meaning)
{
	return scan((struct own_code){.kind = OWN_CARD, .meaning = (int)meaning});
}

static const struct reply *digit(int number)
{
	return scan((struct own_code){.kind = OWN_DIGIT, .digit = number});
}

/* As the board of room 1 has it; a new reference. */
static json_t *view(void)
{
	return teller_room_in(&core, 1, core_language(&core, 1));
}

static void is_next(const char *next)
{
	json_t *v = view();
	assert_string_equal(json_text(v, "next"), next);
	json_decref(v);
}

static void is_said(const char *said)
{
	json_t *v = view();
	assert_string_equal(json_text(json_array_get(json_object_get(v, "recent"), 0), "said"), said);
	json_decref(v);
}

static void a_room_is_told_in_its_language_and_the_command_line_in_english(void **state)
{
	(void)state;
	open_with("[site]\nletters = BC\nlanguage = de\n[room 1]\nname = Saal 1\n[room 2]\nlanguage = en\n");
	is_next("Nächster Patient: NEUER FALL scannen.");
	assert_string_equal(card(CARD_OFF)->said, "No case is open in Saal 1: OFF has nothing to act on.");
	is_said("In Saal 1 ist kein Fall offen: AB hat nichts, worauf es wirkt.");
	card(CARD_NEW_CASE);
	is_said("Fall 1 in Saal 1 eröffnet.");
	assert_string_equal(digit(2)->next.words, "Right index finger: Is a tourniquet on it now? Scan YES; "
	                                          "NO if none is on it: then it is the marked digit.");
	is_next("Rechter Zeigefinger: Liegt jetzt ein Tourniquet an? JA scannen; NEIN, wenn keines anliegt: "
	        "dann ist es der markierte Finger.");
	json_t *english = teller_room(&core, 1), *other = teller_room_in(&core, 2, core_language(&core, 2));
	assert_string_equal(json_text(english, "next"),
	                    "Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: "
	                    "then it is the marked digit.");
	assert_string_equal(json_text(other, "language"), "en");
	json_decref(english);
	json_decref(other);
	over();
}

/* Letters that are not English: of the pseudo language every word with a vowel has one. */
static int has_accents(const char *text)
{
	for (; *text; text++)
		if ((unsigned char)*text == 0xc3)
			return 1;
	return 0;
}

/* The reply as the board shows it, and what comes next. */
static void is_in_no_english(const struct reply *r)
{
	json_t *v = view();
	const char *said = json_text(json_array_get(json_object_get(v, "recent"), 0), "said");
	if (r->n_parts == 0 || !has_accents(said))
		fail_msg("it is answered '%s', of '%s'", said, r->said);
	if (!has_accents(json_text(v, "next")))
		fail_msg("after '%s' comes '%s'", r->said, json_text(v, "next"));
	json_decref(v);
}

static void nothing_that_is_scanned_is_answered_in_another_language(void **state)
{
	static const enum own_card cards[] = {
	    CARD_OFF, CARD_NEW_CASE, CARD_YES,       CARD_INTACT,      CARD_FINAL_COUNT, CARD_HANDOVER,
	    CARD_NO,  CARD_MISREAD,  CARD_NO,        CARD_ADD,         CARD_NO,          CARD_DROPPED,
	    CARD_NO,  CARD_FOUND,    CARD_STEP_DONE, CARD_1_MINUTE_AGO};
	(void)state;
	setenv("BANDTALLY_WORDS", BANDTALLY_WORDS_OF_TESTS, 1);
	open_with("[site]\nletters = BC\n[room 1]\nname = Saal 1\nlanguage = xx\n");
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		is_in_no_english(card(cards[i]));
	over();
	open_with("[site]\nletters = BC\n[room 1]\nname = Saal 1\nlanguage = xx\n");
	is_in_no_english(card(CARD_NEW_CASE));
	is_in_no_english(digit(3));
	is_in_no_english(card(CARD_YES));
	is_in_no_english(digit(3));
	is_in_no_english(card(CARD_OFF));
	is_in_no_english(card(CARD_AWAKE_PATIENT));
	is_in_no_english(card(CARD_UNDO));
	is_in_no_english(card(CARD_SUSPEND));
	is_in_no_english(card(CARD_SUSPEND));
	is_in_no_english(card(CARD_PATIENT_LEAVES));
	is_in_no_english(card(CARD_YES));
	is_in_no_english(card(CARD_CANCEL));
	is_in_no_english(card(CARD_YES));
	over();
	unsetenv("BANDTALLY_WORDS");
}

/* What a stores bench answers, accepts, asks and refuses, is names and values as a theatre's replies are. */
static void a_stores_bench_answers_in_the_language_of_its_room(void **state)
{
	static const int cards[] = {CARD_NO,   CARD_UNDO,    CARD_RECEIVE,      CARD_NUMBER_1,
	                            CARD_DONE, CARD_CONFIRM, CARD_DONE,         CARD_WRITE_OFF,
	                            CARD_DONE, CARD_RELEASE, CARD_SPOILT_LABEL, CARD_DONE};
	(void)state;
	setenv("BANDTALLY_WORDS", BANDTALLY_WORDS_OF_TESTS, 1);
	open_with("[site]\nletters = BC\n[room 1]\nname = Lager\nkind = stores\nlanguage = xx\n");
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		is_in_no_english(card((enum own_card)cards[i]));
	over();
	unsetenv("BANDTALLY_WORDS");
}

static void doubts_and_faults_are_told_in_the_language_of_the_room(void **state)
{
	(void)state;
	setenv("BANDTALLY_WORDS", BANDTALLY_WORDS_OF_TESTS, 1);
	open_with("[site]\nletters = BC\n[room 1]\nname = Saal 1\nlanguage = xx\n");
	core.doubt.diverged = 9;
	core.doubt.diverged_by = EV_LINE_SET;
	core.head_fault = -EACCES;
	core.station.proof.changed = 7;
	_cleanup_(json_drop) json_t *v = view(), *status = teller_status(&core, NULL), *faults = json_array();
	assert_true(has_accents(json_text(v, "distrust")));
	assert_string_equal(json_text(status, "distrust"),
	                    "The station could not follow its own record at event 9 (line-set). Restart it "
	                    "when no case is open.");
	teller_faults(&core, core_language(&core, 1), faults);
	assert_int_equal(json_array_size(faults), 2);
	for (size_t i = 0; i < json_array_size(faults); i++)
		if (!has_accents(json_string_value(json_array_get(faults, i))))
			fail_msg("it is told '%s'", json_string_value(json_array_get(faults, i)));
	over();
	unsetenv("BANDTALLY_WORDS");
}

/* Whether each digit and each letter of ASCII lies between U+2068 and U+2069: in its own direction. */
static void stands_apart(const char *text)
{
	int inside = 0;
	for (const char *at = text; *at; at++) {
		if (strncmp(at, ISOLATE_BEGIN, ISOLATE_BYTES) == 0)
			inside++;
		else if (strncmp(at, ISOLATE_END, ISOLATE_BYTES) == 0)
			inside--;
		else if (!inside && ((*at >= '0' && *at <= '9') || (*at >= 'A' && *at <= 'Z') ||
		                     (*at >= 'a' && *at <= 'z')))
			fail_msg("'%s' stands in the direction of others in '%s'", at, text);
	}
	assert_int_equal(inside, 0);
}

static void names_and_numbers_keep_their_direction_in_a_language_from_right_to_left(void **state)
{
	(void)state;
	setenv("BANDTALLY_WORDS", BANDTALLY_WORDS_OF_TESTS, 1);
	open_with("[site]\nletters = BC\n[room 1]\nname = Saal 1\nlanguage = he\n");
	card(CARD_OFF);
	card(CARD_NEW_CASE);
	digit(2);
	card(CARD_NO);
	for (int i = 0; i < 3; i++) {
		json_t *v = view(), *recent = json_array_get(json_object_get(v, "recent"), (size_t)i);
		stands_apart(json_text(recent, "said"));
		stands_apart(json_text(v, "next"));
		json_decref(v);
	}
	card(CARD_NEW_CASE);
	is_said("מקרה " ISOLATE_BEGIN "1" ISOLATE_END " פתוח ב" ISOLATE_BEGIN "Saal 1" ISOLATE_END
	        ": לסיים אותו, או לסרוק השהיה או ביטול.");
	over();
	unsetenv("BANDTALLY_WORDS");
}

static void take_language(struct event *e, const char *language)
{
	*e = (struct event){
	    .kind = EV_SLIP_QUEUED, .case_no = 1, .room = 1, .n = 1, .what = SLIP_DISCREPANCY, .other = 1};
	snprintf(e->text, sizeof e->text, "%s", language);
}

static void a_slip_keeps_the_language_that_it_was_queued_in(void **state)
{
	struct event e;
	struct error why = {0};
	char language[LANGUAGE_CODE_MAX];
	(void)state;
	open_with("[site]\nletters = BC\n[room 1]\nname = Saal 1\nlanguage = de\n");
	card(CARD_NEW_CASE);
	take_language(&e, station_language(&core.station, 1));
	if (core_store(&core, &e, 1, &why) < 0)
		fail_msg("%s", why.text);
	core.station.rooms[0].language[0] = 0; /* the room's is another since */
	assert_int_equal(teller_language(&core, 1, 1, language, sizeof language, &why), 0);
	assert_string_equal(language, "de");
	json_t *slip = teller_slip(&core, 1, 1, SLIP_DISCREPANCY, 1, &why);
	assert_string_equal(json_text(slip, "language"), "de");
	json_decref(slip);
	over();
}

static void a_language_that_is_not_installed_is_refused_by_its_name(void **state)
{
	char path[FOLDER_MAX + 16];
	struct settings s;
	static struct station st;
	struct error e = {0};
	(void)state;
	folder_make(folder);
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "we");
	assert_non_null(f);
	fputs("[room 1]\nlanguage = tlh\n", f);
	fclose(f);
	assert_true(settings_read(&s, &st, folder, &e) < 0);
	assert_non_null(strstr(e.text, "language is 'tlh'"));
	folder_remove(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_room_is_told_in_its_language_and_the_command_line_in_english),
	    cmocka_unit_test(nothing_that_is_scanned_is_answered_in_another_language),
	    cmocka_unit_test(a_stores_bench_answers_in_the_language_of_its_room),
	    cmocka_unit_test(doubts_and_faults_are_told_in_the_language_of_the_room),
	    cmocka_unit_test(names_and_numbers_keep_their_direction_in_a_language_from_right_to_left),
	    cmocka_unit_test(a_slip_keeps_the_language_that_it_was_queued_in),
	    cmocka_unit_test(a_language_that_is_not_installed_is_refused_by_its_name),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
