/* label digits, cards, badges, scanner-check: the codes of a room and of the people in it. */
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "count/event.h"
#include "tool/client.h"
#include "tool/label.h"
#include "words/languages.h"

enum needed { ALWAYS = 0, TEAM, ALONE }; /* by which kind of room */

struct slot {
	int meaning; /* enum own_card; 0 ends a column */
	enum needed needed;
	enum saying then; /* what is scanned after it, or before it, that is no card */
};

#define SLOT(card)                                                                                           \
	{                                                                                                    \
		CARD_##card, ALWAYS, SAY_NONE                                                                \
	}

static const struct card_page {
	enum saying title, note;
	bool in_order;
	struct slot left[12], right[9], ends[3];
} pages[] = {
    {.title = SAY_CP_EVERY,
     .in_order = true,
     .left = {{CARD_NEW_CASE, TEAM, SAY_CP_THEN_OPEN},
              {CARD_OFF, TEAM, SAY_CP_THEN_OFF},
              {CARD_FINAL_COUNT, TEAM, SAY_NONE},
              {CARD_INTACT, TEAM, SAY_CP_THEN_INTACT},
              {CARD_YES, TEAM, SAY_CP_THEN_YES},
              {CARD_OFF, ALONE, SAY_CP_ALONE_OFF},
              {CARD_INTACT, ALONE, SAY_CP_ALONE_INTACT},
              {CARD_LOOKED_PATIENT, ALONE, SAY_CP_ALONE_LOOKED},
              {CARD_LOOKED_CARER, ALONE, SAY_NONE},
              {CARD_LOOKED_COLLEAGUE, ALONE, SAY_NONE},
              {CARD_LOOKED_NOBODY, ALONE, SAY_NONE}},
     .right = {{CARD_YES, ALONE, SAY_NONE},
               SLOT(NO),
               SLOT(ADD),
               {CARD_HANDOVER, TEAM, SAY_NONE},
               SLOT(UNDO),
               SLOT(NEXT),
               SLOT(MISREAD)},
     .note = SAY_CP_EVERY_NOTE},
    {.title = SAY_CP_MISSING,
     .left = {SLOT(MISSING), SLOT(PIECES_MISSING), SLOT(STEP_DONE), SLOT(NOT_DONE), SLOT(FOUND)},
     .right = {SLOT(DROPPED), SLOT(WRONG_NUMBER_IN_PACK), SLOT(INTERRUPTED), SLOT(CUT_AND_COMPLETE),
               SLOT(OFFCUT)},
     .ends = {SLOT(END_UNRESOLVED)},
     .note = SAY_CP_MISSING_NOTE},
    {.title = SAY_CP_NOW_AND_THEN,
     .left = {SLOT(RETURNED_UNOPENED), SLOT(UNLISTED_TOURNIQUET), SLOT(NO_CODE), SLOT(MARK_UNREADABLE),
              SLOT(FORCEPS_MOVED)},
     .right = {SLOT(DRESSING_ALREADY_ON),
               SLOT(AWAKE_PATIENT),
               {CARD_WITHOUT_FULL_SIGHT, TEAM, SAY_NONE},
               {CARD_FINAL_COUNT, ALONE, SAY_NONE},
               {CARD_HANDOVER, ALONE, SAY_NONE},
               SLOT(SUSPEND)},
     .ends = {SLOT(CANCEL), SLOT(PATIENT_LEAVES)},
     .note = SAY_CP_NOW_AND_THEN_NOTE},
    {.title = SAY_CP_VISITORS,
     .left = {SLOT(SPARE_SCANNER), SLOT(THIS_ROOM), SLOT(SHOW_CAMERA), {CARD_NEW_CASE, ALONE, SAY_NONE}},
     .right = {{CARD_WITHOUT_FULL_SIGHT, ALONE, SAY_NONE},
               SLOT(VISITOR_1),
               SLOT(VISITOR_2),
               SLOT(VISITOR_3),
               SLOT(VISITOR_4)},
     .note = SAY_CP_VISITORS_NOTE},
};
static const enum own_card_group number_groups[] = {CARDS_SHOWN, CARDS_EARLIER};

/* Of papers; what cannot be read is said, and they are in English. */
static const struct language *label_language(struct languages *all, const char *code)
{
	struct error e = {0};
	if (languages_read(all, languages_folder(), &e) < 0)
		log_line("%s", e.text);
	return languages_find(all, code);
}

static bool needs(enum needed needed, const struct label_room *room)
{
	return needed == ALWAYS || (needed == ALONE) == room->alone;
}

/* Left away where no card of it is needed. */
static void put_cards(json_t *page, const char *name, const struct slot *slots, const json_t *status,
                      const struct label_room *room, const struct language *l, bool list)
{
	json_t *cards = json_array();
	for (; slots->meaning; slots++)
		if (needs(slots->needed, room))
			json_array_append_new(cards, label_card(status, room, l, slots->meaning,
			                                        saying_text_in(l, slots->then), list));
	if (json_array_size(cards))
		json_object_set(page, name, cards);
	json_decref(cards);
}

static json_t *page_of(const struct card_page *p, const json_t *status, const struct label_room *room,
                       const struct language *l, bool list)
{
	json_t *page = json_pack("{s:s,s:b,s:s}", "title", saying_text_in(l, p->title), "in_order",
	                         p->in_order, "note", saying_text_in(l, p->note));
	put_cards(page, "left", p->left, status, room, l, list);
	put_cards(page, "right", p->right, status, room, l, list);
	put_cards(page, "ends", p->ends, status, room, l, list);
	return page;
}

static json_t *numbers_of(const json_t *status, const struct label_room *room, const struct language *l,
                          bool list)
{
	json_t *numbers = json_array();
	for (size_t g = 0; g < sizeof number_groups / sizeof *number_groups; g++)
		for (int m = own_card_next(0); m; m = own_card_next(m))
			if (own_card_group(m) == number_groups[g])
				json_array_append_new(numbers, label_card(status, room, l, m, "", list));
	return numbers;
}

static json_t *cards_of(const json_t *status, const struct label_room *room, const struct language *l,
                        bool list)
{
	json_t *doc = label_document("cards", json_text(status, "site_name")), *all = json_array();
	for (size_t i = 0; i < sizeof pages / sizeof *pages; i++)
		json_array_append_new(all, page_of(&pages[i], status, room, l, list));
	json_object_set_new(doc, "room", json_string(room->name));
	json_object_set_new(doc, "single", json_boolean(room->camera));
	json_object_set_new(doc, "pages", all);
	json_object_set_new(doc, "numbers_title", json_string(saying_text_in(l, SAY_CP_NUMBERS)));
	json_object_set_new(doc, "numbers_note", json_string(saying_text_in(l, SAY_CP_NUMBERS_NOTE)));
	json_object_set_new(doc, "numbers", numbers_of(status, room, l, list));
	return doc;
}

/* In the language in which the board asks for them: who is to scan a card must find it by its name. */
int label_cards(const struct words *w, const json_t *status, const struct label_room *room)
{
	struct languages languages;
	const struct language *l = label_language(&languages, room->language);
	bool list = words_given(w, LABEL_OPTIONS, "list");
	json_t *doc =
	    room->stores ? label_stores_cards(status, room, l, list) : cards_of(status, room, l, list);
	if (l)
		json_object_set_new(doc, "language", json_string(language_code(l)));
	languages_free(&languages);
	return label_print(w, doc);
}

int label_digits(const struct words *w, const json_t *status, const struct label_room *room)
{
	struct languages languages;
	const struct language *l = label_language(&languages, room->language);
	bool list = words_given(w, LABEL_OPTIONS, "list");
	json_t *doc = label_document("digit-cards", json_text(status, "site_name")), *cards = json_array();
	for (int d = 1; d <= OWN_DIGITS; d++) {
		char code[OWN_CODE_MAX];
		label_code(code, json_text(status, "site"),
		           (struct own_code){.kind = OWN_DIGIT, .room = room->number, .digit = d});
		if (list)
			printf("%s\t%d\t%s\n", code, room->number, own_digit_name(d));
		json_array_append_new(cards, json_pack("{s:i,s:s,s:s}", "digit", d, "name",
		                                       saying_text_in(l, saying_of_digit(d)), "code", code));
	}
	json_object_set_new(doc, "room", json_string(room->name));
	json_object_set_new(doc, "single", json_boolean(room->camera));
	json_object_set_new(doc, "cards", cards);
	if (l)
		json_object_set_new(doc, "language", json_string(language_code(l)));
	languages_free(&languages);
	return label_print(w, doc);
}

int label_badges(const struct words *w, const json_t *status, const struct label_room *room)
{
	(void)room;
	static const enum saying kinds[] = {SAY_NONE, SAY_BG_PRACTITIONER, SAY_BG_SURGEON, SAY_BG_CHARGE};
	struct error e = {0};

	size_t i;
	json_t *x;
	int list = words_given(w, LABEL_OPTIONS, "list");
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "list-staff"), &e);
	if (!a)
		return client_fail(&e);
	struct languages languages;
	const struct language *l = label_language(&languages, json_text(status, "site_language"));
	json_t *doc = label_document("badges", json_text(status, "site_name")), *badges = json_array();
	json_array_foreach(json_object_get(a, "staff"), i, x)
	{
		char code[OWN_CODE_MAX];
		int kind = (int)json_number(x, "kind", 1);
		if (json_truth(x, "withdrawn"))
			continue;
		label_code(
		    code, json_text(status, "site"),
		    (struct own_code){.kind = OWN_BADGE, .number = (int32_t)json_number(x, "number", 0)});
		if (list)
			printf("%s\t0\t%s\n", code, json_text(x, "name"));
		json_t *badge =
		    json_pack("{s:s,s:s,s:s}", "name", json_text(x, "name"), "role",
		              saying_text_in(l, kinds[kind >= 1 && kind <= 3 ? kind : 0]), "code", code);
		if (kind == STAFF_PRACTITIONER)
			json_object_set_new(badge, "registered", json_boolean(json_truth(x, "registered")));
		json_array_append_new(badges, badge);
	}
	json_object_set_new(doc, "badges", badges);
	if (l)
		json_object_set_new(doc, "language", json_string(language_code(l)));
	languages_free(&languages);
	return label_print(w, doc);
}

int label_scanner_check(const struct words *w, const json_t *status, const struct label_room *room)
{
	(void)room;
	char start[OWN_CODE_MAX], end[OWN_CODE_MAX];
	json_t *doc = label_document("scanner-check", json_text(status, "site_name"));
	label_code(start, json_text(status, "site"),
	           (struct own_code){.kind = OWN_SCANNER_CHECK, .number = OWN_CHECK_START});
	label_code(end, json_text(status, "site"),
	           (struct own_code){.kind = OWN_SCANNER_CHECK, .number = OWN_CHECK_END});
	json_object_set_new(doc, "start", json_string(start));
	json_object_set_new(doc, "end", json_string(end));
	label_put_language(doc, json_text(status, "site_language"));
	return label_print(w, doc);
}
