/* label paper-sheet, briefing, leaflet: what a room counts on, learns from and hands out. */
#include <stdio.h>
#include <string.h>

#include "tool/client.h"
#include "tool/label.h"

void label_put_language(json_t *doc, const char *language)
{
	if (*language && strcmp(language, "en") != 0)
		json_object_set_new(doc, "language", json_string(language));
}

int label_briefing(const struct words *w, const json_t *status, const struct label_room *room)
{
	json_t *doc = label_document("briefing", json_text(status, "site_name"));
	json_object_set_new(doc, "room", json_string(room->name));
	label_put_language(doc, room->language);
	return label_print(w, doc);
}

/* Without a number to call it is not printed: a patient who is worried must reach somebody. */
int label_leaflet(const struct words *w, const json_t *status, const struct label_room *room)
{
	(void)room;
	const char *telephone = json_text(status, "telephone");
	if (!*telephone) {
		fprintf(stderr, "bandtally: cannot print the leaflet: no telephone number is named: give one "
		                "as telephone in "
		                "[site] of station.ini\n");
		return EXIT_FAILED;
	}
	json_t *doc = label_document("leaflet", json_text(status, "site_name"));
	json_object_set_new(doc, "telephone", json_string(telephone));
	label_put_language(doc, json_text(status, "site_language"));
	return label_print(w, doc);
}

int label_paper_sheets(const struct words *w, const json_t *status, const struct label_room *room)
{
	int first = 1, count = 10;
	if (words_number("--first", words_value(w, LABEL_OPTIONS, "first"), 1, 99900, &first, label_usage) <
	        0 ||
	    words_number("--count", words_value(w, LABEL_OPTIONS, "count"), 1, 100, &count, label_usage) < 0)
		return EXIT_USAGE;
	json_t *doc = label_document("count-sheet", json_text(status, "site_name")), *sheets = json_array();
	for (int n = first; n < first + count; n++) {
		char code[OWN_CODE_MAX];
		label_code(code, json_text(status, "site"),
		           (struct own_code){.kind = OWN_PAPER_SHEET, .room = room->number, .number = n});
		if (words_given(w, LABEL_OPTIONS, "list"))
			printf("%s\t%d\tpaper count sheet %d\n", code, room->number, n);
		json_array_append_new(sheets, json_pack("{s:i,s:s}", "number", n, "code", code));
	}
	json_object_set_new(doc, "room", json_string(room->name));
	json_object_set_new(doc, "alone", json_boolean(room->alone));
	json_object_set(doc, "search", json_object_get(status, "search"));
	json_object_set(doc, "points", json_object_get(status, "points"));
	label_put_language(doc, room->language);
	json_object_set_new(doc, "sheets", sheets);
	return label_print(w, doc);
}
