#include "tests/unit/run/stores-station.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "tests/unit/code/cmocka-all.h"
#include "tests/unit/record/folder.h"

struct core core;
static char folder[FOLDER_MAX];

static void open_core(void)
{
	struct error e = {0};
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
}

/* As a power cut would: nothing is written at the end. */
void again(void)
{
	core_close(&core);
	open_core();
}

static void write_settings(void)
{
	char path[FOLDER_MAX + 20];
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	fputs("[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n"
	      "[room 9]\nname = Stores\nkind = stores\n",
	      f);
	fclose(f);
}

static void fill(void)
{
	static const char csv[] =
	    "key,name,role,codes,marked,visible,single_use,identity,label,label_place,minimum\n"
	    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352 "
	    "09506000134369*10,yes,yes,yes,pack,no,,4\n"
	    "PLAIN-M,\"finger tourniquet, orange, M\",tourniquet,09506000134376,yes,yes,yes,none,after,film "
	    "side,\n";
	static const struct person people[] = {{1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},
	                                       {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	                                       {3, "SURG-3", STAFF_SURGEON, 1, 0}};
	struct line *lines = NULL;
	size_t count = 0;
	struct error e = {0};
	if (catalogue_read_csv(csv, sizeof csv - 1, &lines, &count, &e) < 0)
		fail_msg("%s", e.text);
	for (size_t i = 0; i < count; i++)
		assert_int_equal(
		    core_store(&core, &(struct event){.kind = EV_LINE_SET, .line = lines[i]}, 1, &e), 0);
	free(lines);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		assert_int_equal(
		    core_store(&core, &(struct event){.kind = EV_STAFF_SET, .staff = people[i]}, 1, &e), 0);
}

int stores_setup(void **state)
{
	(void)state;
	folder_make(folder);
	write_settings();
	open_core();
	fill();
	return 0;
}

int stores_teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

/* Typed, since one who types means each code. */
const char *scan(int32_t room, const char *text)
{
	return core_scan(&core, &(struct scan){.scanner = "hand",
	                                       .room = room,
	                                       .aim = "",
	                                       .data = text,
	                                       .size = strlen(text),
	                                       .flags = EVENT_KEYED})
	    ->said;
}

const char *own(int32_t room, struct own_code code)
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, core.station.site, 3);
	code.room = code.kind == OWN_CARD || code.kind == OWN_DIGIT ? room : 0;
	assert_int_equal(own_code_write(&code, text), 0);
	return scan(room, text);
}

const char *card(int32_t room, int meaning)
{
	return own(room, (struct own_code){.kind = OWN_CARD, .meaning = meaning});
}

const char *badge(int32_t room, int number)
{
	return own(room, (struct own_code){.kind = OWN_BADGE, .number = number});
}

const char *label_text(int number)
{
	static char text[40];
	char code[OWN_CODE_MAX];
	struct own_code own = {.kind = OWN_ITEM, .role = 'P', .number = number};
	memcpy(own.site, core.station.site, 3);
	assert_int_equal(own_code_write(&own, code), 0);
	snprintf(text, sizeof text, "(91)%s", code);
	return text;
}

const char *label(int32_t room, int number)
{
	return scan(room, label_text(number));
}

void must_say(const char *said, const char *words)
{
	if (!strstr(said, words))
		fail_msg("'%s' does not say '%s'", said, words);
}

const struct stock_lot *lot(const char *line, const char *text, int32_t expiry)
{
	struct batch b = {.expiry = expiry};
	snprintf(b.line, sizeof b.line, "%s", line);
	snprintf(b.lot, sizeof b.lot, "%s", text);
	const struct stock_lot *l = stock_lot_of(&core.stock, &b);
	assert_non_null(l);
	return l;
}

void print_labels(void)
{
	card(9, CARD_RECEIVE);
	scan(9, "PLAIN-M/A7");
	must_say(scan(9, "2033-03-31"), "How many packs came");
	must_say(scan(9, "4"), "Who typed");
	badge(9, 1);
	must_say(badge(9, 2), "Received: 4 packs of finger tourniquet, orange, M, lot A7");
	card(9, CARD_PRINT_LABELS);
	scan(9, "PLAIN-M");
	must_say(scan(9, "4"), "Labels 00000001 to 00000004");
}

/* An ordinary case with one pack. */
void operate_in(int32_t room, const char *pack)
{
	card(room, CARD_NEW_CASE);
	badge(room, 1);
	badge(room, 2);
	must_say(scan(room, pack), "Counted in");
}

void operate(const char *pack)
{
	operate_in(1, pack);
}

json_t *steps(const char *list, int code)
{
	struct error e = {0};
	json_t *all = json_read(list, strlen(list), &e);
	if (!all)
		fail_msg("%s: %s", list, e.text);
	e = (struct error){0};
	json_t *o = stock_steps(&core, 9, all, &e);
	json_decref(all);
	assert_int_equal(o ? 0 : e.code, code);
	return o;
}

void must_end(json_t *o, const char *verdict, const char *said, const char *asked)
{
	json_t *list = json_object_get(o, "said");
	assert_string_equal(json_text(o, "verdict"), verdict);
	must_say(json_string_value(json_array_get(list, json_array_size(list) - 1)), said);
	if (*asked)
		must_say(json_text(o, "asked"), asked);
	else
		assert_string_equal(json_text(o, "asked"), "");
	json_decref(o);
}
