/* One card of a room, as a document of labels has it. */
#include <stdio.h>

#include "base/log.h"
#include "tool/label.h"

json_t *label_card(const json_t *status, const struct label_room *room, const struct language *l, int meaning,
                   const char *then, bool list)
{
	char code[OWN_CODE_MAX];
	label_code(code, json_text(status, "site"),
	           (struct own_code){.kind = OWN_CARD, .room = room->number, .meaning = meaning});
	if (list)
		printf("%s\t%d\t%s\n", code, room->number, own_card_name(meaning));
	json_t *card = json_pack("{s:s,s:s,s:s}", "words", saying_text_in(l, saying_of_card(meaning)), "use",
	                         saying_text_in(l, saying_of_use(meaning)), "code", code);
	if (then)
		json_object_set_new(card, "then", json_string(then));
	return card;
}
