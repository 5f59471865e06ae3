/* label cards, of a stores bench. */
#include <string.h>

#include "tool/label.h"

#define SIDE_MAX 7 /* cards in a column */

static const struct bench_page {
	enum saying title, note;
	int left[SIDE_MAX], right[SIDE_MAX];
} pages[] = {
    {SAY_CP_STORES_IN,
     SAY_CP_STORES_IN_NOTE,
     {CARD_RECEIVE, CARD_CONFIRM, CARD_NOBODY_TO_CONFIRM, CARD_YES, CARD_NO, CARD_DONE},
     {CARD_PRINT_LABELS, CARD_SPOILT_LABEL, CARD_DESTROYED_LABEL}},
    {SAY_CP_STORES_SHELF,
     SAY_CP_STORES_SHELF_NOTE,
     {CARD_RETURNED_PACK, CARD_COUNT_SHELF, CARD_WRITE_OFF},
     {CARD_QUARANTINE, CARD_RELEASE, CARD_FOUND, CARD_THIS_ROOM, CARD_SPARE_SCANNER}},
};

static json_t *page_made(const struct language *l, enum saying title, enum saying note, json_t *left,
                         json_t *right)
{
	json_t *page = json_pack("{s:s,s:b,s:s}", "title", saying_text_in(l, title), "in_order", 0, "note",
	                         saying_text_in(l, note));
	json_object_set_new(page, "left", left);
	if (json_array_size(right))
		json_object_set(page, "right", right);
	json_decref(right);
	return page;
}

static json_t *side(const json_t *status, const struct label_room *room, const struct language *l,
                    const int *cards, bool list)
{
	json_t *all = json_array();
	for (int i = 0; i < SIDE_MAX && cards[i]; i++)
		json_array_append_new(all, label_card(status, room, l, cards[i], "", list));
	return all;
}

/* A card for each room where operations are, as many pages as they take. */
static void put_rooms(json_t *all, const json_t *status, const struct label_room *room,
                      const struct language *l, bool list)
{
	size_t i, n = 0;
	json_t *x, *sides[2] = {json_array(), json_array()};
	json_array_foreach(json_object_get(status, "rooms"), i, x)
	{
		if (json_truth(x, "stores"))
			continue;
		if (n == (size_t)2 * SIDE_MAX) {
			json_array_append_new(all, page_made(l, SAY_CP_STORES_ROOM, SAY_CP_STORES_ROOM_NOTE,
			                                     sides[0], sides[1]));
			sides[0] = json_array();
			sides[1] = json_array();
			n = 0;
		}
		json_array_append_new(sides[n++ / SIDE_MAX],
		                      label_card(status, room, l,
		                                 CARD_TO_ROOM + (int)json_number(x, "number", 0),
		                                 json_text(x, "name"), list));
	}
	json_array_append_new(all,
	                      page_made(l, SAY_CP_STORES_ROOM, SAY_CP_STORES_ROOM_NOTE, sides[0], sides[1]));
}

json_t *label_stores_cards(const json_t *status, const struct label_room *room, const struct language *l,
                           bool list)
{
	json_t *doc = label_document("cards", json_text(status, "site_name")), *all = json_array(),
	       *numbers = json_array();
	for (size_t i = 0; i < sizeof pages / sizeof *pages; i++) {
		json_t *left = side(status, room, l, pages[i].left, list);
		json_array_append_new(all, page_made(l, pages[i].title, pages[i].note, left,
		                                     side(status, room, l, pages[i].right, list)));
	}
	put_rooms(all, status, room, l, list);
	for (int m = own_stores_card_next(0); m; m = own_stores_card_next(m))
		if (own_card_group(m) == CARDS_NUMBERS)
			json_array_append_new(numbers, label_card(status, room, l, m, "", list));
	json_object_set_new(doc, "room", json_string(room->name));
	json_object_set_new(doc, "single", json_boolean(room->camera));
	json_object_set_new(doc, "pages", all);
	json_object_set_new(doc, "numbers_title", json_string(saying_text_in(l, SAY_CP_HOW_MANY)));
	json_object_set_new(doc, "numbers_note", json_string(saying_text_in(l, SAY_CP_HOW_MANY_NOTE)));
	json_object_set_new(doc, "numbers", numbers);
	return doc;
}
