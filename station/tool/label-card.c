/* One card of a room, as a document of labels has it. */
#include <stdio.h>

#include "tool/label.h"
#include "words/said.h"

#define CARD_WORDS_MAX 200

json_t *label_card(const json_t *status, const struct label_room *room, const struct language *l, int meaning,
                   const char *then, bool list)
{
	char code[OWN_CODE_MAX];
	label_code(code, json_text(status, "site"),
	           (struct own_code){.kind = OWN_CARD, .room = room->number, .meaning = meaning});
	if (list)
		printf("%s\t%d\t%s\n", code, room->number, own_card_name(meaning));
	char words[CARD_WORDS_MAX], use[CARD_WORDS_MAX];
	const int to_room = own_card_group(meaning) == CARDS_TO_ROOM;
	const struct say name = {.saying = to_room ? SAY_CARD_OF_ROOM : saying_of_card(meaning),
	                         .n = own_card_says(meaning)};
	const struct say what = {.saying = to_room ? SAY_USE_OF_ROOM : saying_of_use(meaning)};
	say_part_in(l, &name, words, sizeof words);
	say_part_in(l, &what, use, sizeof use);
	json_t *card = json_pack("{s:s,s:s,s:s}", "words", words, "use", use, "code", code);
	if (*then)
		json_object_set_new(card, "then", json_string(then));
	return card;
}
