/* label paper-sheet, briefing, leaflet: what a room counts on, learns from and hands out. Their words stand at the head of
 * this file. Each fact is given with its source on the paper; what has none is said to be common practice. */
#include <stdio.h>
#include <string.h>

#include "tool/client.h"
#include "tool/label.h"

struct part {
	const char *heading;
	const char *lines[8];
};

/* clang-format off */
static const char afterwards[] =
	"When the station is back: scan this code, then enter the sheet from top to bottom. What is entered stays marked late.";

static const char briefing_title[] = "Count the band";
static const char briefing_lead[] = "A finger or toe tourniquet is small, and a dressing hides it. Left on, it costs the digit.";
static const char briefing_shout[] = "Final count, then look at the bare digit, then the dressing. In this order, each time.";
static const struct part briefing[] = {
	{"Why it is forgotten", {
		"It is taken for part of the glove or dressing, above all where it has the colour of skin. (2)",
		"The artery forceps come back and the count looks complete, while the band stays. They are two items, counted apart. (3)",
		"People change, the list is long, the phone rings: whoever put it on is not always whoever dresses. (5)",
		"In England and Wales 15 serious incidents were reported in four years: 10 further operations, 2 amputations. (1)"}},
	{"What to do", {
		"Use a bright or tagged band that is made and marked for this. Never a glove finger or a drain. (1, 4)",
		"Count it in before it goes on, and say aloud: which digit, and when.",
		"Scan the digit's card when it goes on, and card and OFF when it comes off. Tell the surgeon the minutes.",
		"At the end show band and forceps to both of you. Then both look at the bare digit: colour, warmth, nothing round it.",
		"If anything is missing: say so, stop, look at and feel the digit first, under the dressing too."}},
	{"What to look for afterwards", {
		"Pain that grows, a pale, blue or cold digit, no feeling in it: take the dressing down and look. At once, not at the "
		"next round.",
		"An X-ray may not show a band. (5)"}},
};
static const char *const briefing_foot[] = {
	"(1) BMJ 2010;340:c1981. (2) Injury 2002;33:76-77. (3) AHRQ PSNet WebM&M, 26 August 2020. (4) British Orthopaedic "
	"Association, standard on intraoperative tourniquets, 2021: regulator-approved devices, highly visible or put on with "
	"instruments that are counted. (5) Common practice, no source; so is what stands here without a number.",
	"No published limit for the time of a finger or toe tourniquet was found: the times of the reminders are local policy. Hang "
	"this where patients cannot read it. It supports the team's own judgement and local policy, and replaces neither."};

static const char leaflet_title[] = "After the operation on your finger or toe";
static const char leaflet_lead[] =
	"During your operation a tight band was used for a short time, so that the surgeon could see well. It comes off before the "
	"dressing goes on; the team counts it, and looks at the finger or toe. Please look at yours as well, as soon as you can.";
static const char leaflet_shout[] = "Call at once";
static const struct part leaflet[] = {
	{"By day or night, if your finger or toe", {
		"hurts more and more, or much more than you were told to expect, and the tablets do not help;",
		"is white, grey, blue or black, or stays cold when the others are warm;",
		"stays numb longer than you were told, or you cannot move it as before;",
		"swells so that the dressing becomes tight, or bleeds through it;",
		"or if you see or feel something tight round it that nobody told you about."}},
	{"Do not wait for your next appointment", {
		"If nobody answers, go to the nearest emergency department and show this paper.",
		"Ask them to take the dressing down and to look at the whole finger or toe, to its root.",
		"Hold the hand or foot up on the way."}},
	{"Otherwise", {
		"Keep the dressing dry and on for as long as you were told. Keep the hand or foot up, above the heart where you can.",
		"Take the tablets as your team said. Follow what your own team told you wherever it differs from this paper."}},
};
static const char *const leaflet_foot[] = {
	"The signs are common practice in the care of hands and feet, without a source of their own. Why they matter: a forgotten band "
	"has cost people a finger or a toe (BMJ 2010;340:c1981). This paper does not replace the advice of your own team."};
/* clang-format on */

static json_t *parts_of(const struct part *parts, size_t count)
{
	json_t *all = json_array();
	for (size_t i = 0; i < count; i++) {
		json_t *lines = json_array();
		for (size_t k = 0; k < sizeof parts->lines / sizeof *parts->lines && parts[i].lines[k]; k++)
			json_array_append_new(lines, json_string(parts[i].lines[k]));
		json_array_append_new(all,
		                      json_pack("{s:s,s:o}", "heading", parts[i].heading, "lines", lines));
	}
	return all;
}

static json_t *texts_of(const char *const *texts, size_t count)
{
	json_t *all = json_array();
	for (size_t i = 0; i < count; i++)
		json_array_append_new(all, json_string(texts[i]));
	return all;
}

#define COUNT(list) (sizeof(list) / sizeof *(list))

int label_briefing(const struct words *w, const json_t *status, const struct label_room *room)
{
	json_t *doc = label_document("briefing", json_text(status, "site_name"));
	char from[120];
	snprintf(from, sizeof from, "%s, %s: for the team", json_text(status, "site_name"), room->name);
	json_object_set_new(doc, "from", json_string(from));
	json_object_set_new(doc, "title", json_string(briefing_title));
	json_object_set_new(doc, "lead", json_string(briefing_lead));
	json_object_set_new(doc, "shout", json_string(briefing_shout));
	json_object_set_new(doc, "parts", parts_of(briefing, COUNT(briefing)));
	json_object_set_new(doc, "foot", texts_of(briefing_foot, COUNT(briefing_foot)));
	return label_print(w, doc);
}

/* Without a number to call it is not printed: a patient who is worried must reach somebody. */
int label_leaflet(const struct words *w, const json_t *status)
{
	const char *telephone = json_text(status, "telephone");
	char shout[200];
	if (!*telephone) {
		fprintf(stderr, "bandtally: cannot print the leaflet: no telephone number is named: give one "
		                "as telephone in "
		                "[site] of station.ini\n");
		return EXIT_FAILED;
	}
	size_t n = (size_t)snprintf(shout, sizeof shout, "%s: ", leaflet_shout);
	for (; *telephone && n + 3 < sizeof shout; telephone++) /* a number is not broken over two lines */
		n += (size_t)snprintf(shout + n, sizeof shout - n, *telephone == ' ' ? "\u00a0" : "%c",
		                      *telephone);
	json_t *doc = label_document("leaflet", json_text(status, "site_name"));
	json_object_set_new(doc, "from", json_string(json_text(status, "site_name")));
	json_object_set_new(doc, "title", json_string(leaflet_title));
	json_object_set_new(doc, "lead", json_string(leaflet_lead));
	json_object_set_new(doc, "shout", json_string(shout));
	json_object_set_new(doc, "parts", parts_of(leaflet, COUNT(leaflet)));
	json_object_set_new(doc, "foot", texts_of(leaflet_foot, COUNT(leaflet_foot)));
	return label_print(w, doc);
}

int label_paper_sheet(const struct words *w, const json_t *status, const struct label_room *room, int first,
                      int count)
{
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
	json_object_set_new(doc, "afterwards", json_string(afterwards));
	json_object_set(doc, "search", json_object_get(status, "search"));
	json_object_set_new(doc, "sheets", sheets);
	return label_print(w, doc);
}
