/* Labels of one station at another: its signed list, what is refused of one, and what a label says before and after. */
#include "tests/unit/code/cmocka-all.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "run/labels-list.h"
#include "tests/unit/record/folder.h"

static struct core here, there; /* station 0 takes what station 7 wrote */
static char folder_here[FOLDER_MAX], folder_there[FOLDER_MAX];
static struct error e;

static void must(int n)
{
	if (n < 0)
		fail_msg("%s", e.text);
}

static void open_station(struct core *c, char folder[FOLDER_MAX], int number)
{
	char path[FOLDER_MAX + 20];
	folder_make(folder);
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	fprintf(f,
	        "[site]\nletters = BC\n[station]\nnumber = %d\n[room 1]\nname = Theatre 1\n[room 9]\nname = "
	        "Stores\nkind = stores\n",
	        number);
	fclose(f);
	must(core_open(c, folder, &e));
}

static void add_line(struct core *c, const char *key)
{
	struct event ev = {.kind = EV_LINE_SET,
	                   .line = {.role = ROLE_TOURNIQUET,
	                            .marked = 1,
	                            .visible = 1,
	                            .single_use = 1,
	                            .per_pack = 1,
	                            .label = LABEL_AFTER_STERILISING,
	                            .label_place = "film side"}};
	snprintf(ev.line.key, sizeof ev.line.key, "%s", key);
	snprintf(ev.line.name, sizeof ev.line.name, "finger tourniquet %s", key);
	must(core_store(c, &ev, 1, &e));
}

static void number_labels(struct core *c, const char *line, const char *lot, int first, int last)
{
	struct event ev = {.kind = EV_LABELLED, .batch = {.first = first, .last = last, .expiry = 20330331}};
	snprintf(ev.batch.line, sizeof ev.batch.line, "%s", line);
	snprintf(ev.batch.lot, sizeof ev.batch.lot, "%s", lot);
	must(core_store(c, &ev, 1, &e));
}

static int setup(void **state)
{
	(void)state;
	e = (struct error){0};
	open_station(&here, folder_here, 0);
	open_station(&there, folder_there, 7);
	add_line(&there, "GREEN-M");
	add_line(&here, "GREEN-M");
	number_labels(&there, "GREEN-M", "T26", 1, 4);
	number_labels(&there, "GREEN-M", "T27", 5, 6);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&here);
	core_close(&there);
	folder_remove(folder_here);
	folder_remove(folder_there);
	return 0;
}

static const char *scan(struct core *c, int32_t room, const char *text)
{
	return core_scan(c, &(struct scan){.scanner = "hand",
	                                   .room = room,
	                                   .aim = "",
	                                   .data = text,
	                                   .size = strlen(text),
	                                   .flags = EVENT_KEYED})
	    ->said;
}

static const char *own(struct core *c, int32_t room, struct own_code code)
{
	char text[OWN_CODE_MAX], all[40];
	memcpy(code.site, "BC", 3);
	code.room = code.kind == OWN_CARD ? room : 0;
	assert_int_equal(own_code_write(&code, text), 0);
	snprintf(all, sizeof all, "%s%s", code.kind == OWN_ITEM ? "(91)" : "", text);
	return scan(c, room, all);
}

static const char *label(int32_t room, int number)
{
	return own(&here, room,
	           (struct own_code){.kind = OWN_ITEM, .role = 'P', .station = 7, .number = number});
}

static void must_say(const char *said, const char *words)
{
	if (!strstr(said, words))
		fail_msg("'%s' does not say '%s'", said, words);
}

static json_t *written(void)
{
	json_t *a = labels_list_write(&there, &e);
	if (!a)
		fail_msg("%s", e.text);
	return a;
}

static void take(const json_t *written_there, int64_t labels)
{
	json_t *a = labels_list_take(&here, json_object_get(written_there, "list"),
	                             json_text(written_there, "kid"), &e);
	if (!a)
		fail_msg("%s", e.text);
	assert_int_equal(json_number(a, "station", 0), 7);
	assert_int_equal(json_number(a, "labels", -1), labels);
	json_decref(a);
}

static void a_label_of_another_station_is_counted_in_once_its_list_is_taken(void **state)
{
	(void)state;
	own(&here, 1, (struct own_code){.kind = OWN_CARD, .meaning = CARD_NEW_CASE});
	must_say(label(1, 3),
	         "Labelled at station 07: fetch its list, or count the pack by its maker's code.");
	must_say(label(9, 3), "Labelled at station 07");
	assert_int_equal(here.station.sheets[0].n_items, 0);
	json_t *list = written();
	assert_int_equal(json_number(list, "labels", 0), 6);
	take(list, 6);
	int64_t before = record_last(here.record, NULL);
	take(list, 0); /* the same once more is nothing new */
	assert_int_equal(record_last(here.record, NULL), before);
	json_decref(list);
	core_close(&here);
	must(core_open(&here, folder_here, &e));
	must_say(label(1, 3), "Counted in");
	const struct thing *t = &here.station.sheets[0].items[0].thing;
	assert_string_equal(t->line, "GREEN-M");
	assert_string_equal(t->lot, "T26");
	assert_int_equal(t->expiry, 20330331);
	must_say(label(1, 7), "Labelled at station 07"); /* numbered after the list was written */
	/* the same number of this station is another label */
	number_labels(&here, "GREEN-M", "H1", 3, 3);
	must_say(own(&here, 1, (struct own_code){.kind = OWN_ITEM, .role = 'P', .number = 3}), "Counted in");
	assert_string_equal(here.station.sheets[0].items[1].thing.lot, "H1");
}

static void a_pack_that_was_labelled_elsewhere_is_received_at_the_bench(void **state)
{
	(void)state;
	json_t *list = written();
	take(list, 6);
	json_decref(list);
	must_say(label(9, 5), "How many packs came");
	must_say(scan(&here, 9, "2"), "Received: 2 packs of finger tourniquet GREEN-M, lot T27");
}

static void a_later_list_brings_what_is_new(void **state)
{
	(void)state;
	json_t *list = written();
	take(list, 6);
	json_decref(list);
	number_labels(&there, "GREEN-M", "T28", 7, 9);
	list = written();
	take(list, 3);
	json_decref(list);
}

static void is_refused(json_t *list, const char *key, const char *words)
{
	int64_t before = record_last(here.record, NULL);
	json_t *a = labels_list_take(&here, list, key, &e);
	if (a || !strstr(e.text, words))
		fail_msg("%s: %s", words, a ? "taken" : e.text);
	assert_int_equal(record_last(here.record, NULL), before);
}

static void what_is_not_that_stations_list_is_refused_whole(void **state)
{
	(void)state;
	json_t *all = written(), *list = json_object_get(all, "list");
	const char *key = json_text(all, "kid");
	char *jws;
	is_refused(list, "", "that is not what was typed");
	is_refused(list, "AAAAAAAA", "ask at the station that wrote it");
	is_refused(json_object_get(all, "labels"), key, "this is no list of labels");
	/* one letter of what is signed */
	jws = strdup(json_text(list, "jws"));
	char *dot = strchr(jws, '.');
	dot[5] = dot[5] == 'A' ? 'B' : 'A';
	json_t *changed = json_copy(list);
	json_object_set_new(changed, "jws", json_string(jws));
	is_refused(changed, key, "");
	assert_true(strstr(e.text, "signature") || strstr(e.text, "not taken") || *e.text);
	json_decref(changed);
	free(jws);
	json_t *own_list = labels_list_write(&here, &e);
	assert_null(own_list);
	must_say(e.text, "has given out no label yet");
	number_labels(&here, "GREEN-M", "H1", 1, 1);
	own_list = labels_list_write(&here, &e);
	assert_non_null(own_list);
	is_refused(json_object_get(own_list, "list"), json_text(own_list, "kid"), "this station's own list");
	json_decref(own_list);
	json_decref(all);
	add_line(&there, "BLUE-S");
	number_labels(&there, "BLUE-S", "B1", 7, 8);
	all = written();
	is_refused(json_object_get(all, "list"), json_text(all, "kid"), "has no line BLUE-S");
	json_decref(all);
}

static void a_list_that_says_otherwise_of_a_number_is_refused(void **state)
{
	(void)state;
	struct event was = {.kind = EV_LABELS_TAKEN,
	                    .batch = {.line = "GREEN-M", .lot = "OLD", .first = 4, .last = 5},
	                    .other = 7};
	must(core_store(&here, &was, 1, &e));
	json_t *all = written();
	is_refused(json_object_get(all, "list"), json_text(all, "kid"),
	           "of label 00000004 another line, lot or expiry");
	json_decref(all);
}

int main(void)
{
#define T(test) cmocka_unit_test_setup_teardown(test, setup, teardown)
	const struct CMUnitTest tests[] = {
	    T(a_label_of_another_station_is_counted_in_once_its_list_is_taken),
	    T(a_pack_that_was_labelled_elsewhere_is_received_at_the_bench),
	    T(a_later_list_brings_what_is_new),
	    T(what_is_not_that_stations_list_is_refused_whole),
	    T(a_list_that_says_otherwise_of_a_number_is_refused),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
