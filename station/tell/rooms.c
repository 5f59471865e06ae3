#include "tell/rooms.h"

/* Those with a tourniquet, as a list; "" none. */
static void list_digits(const struct sheet *s, const struct language *language, struct moment now,
                        char list[SAID_LIST_MAX])
{
	char words[DIGITS_MAX][100];
	const char *parts[DIGITS_MAX];
	int n = 0;
	for (int i = 0; i < s->n_digits; i++) {
		struct say say = {.saying = SAY_ROOM_GONE_DIGIT, .digit = s->digits[i].number};
		if (!digit_runs(&s->digits[i]))
			continue;
		say.what = digit_minutes(&s->digits[i], now, &say.minutes, &say.most);
		say_part_in(language, &say, words[n], sizeof words[n]);
		parts[n] = words[n];
		n++;
	}
	say_list(language, parts, n, list, SAID_LIST_MAX);
}

int rooms_gone_words(const struct station *st, const struct language *language, int from, struct moment now,
                     char *out, size_t size)
{
	char list[SAID_LIST_MAX];
	out[0] = 0;
	for (int i = from; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i];
		if (!s->case_no || station_room(st, s->room))
			continue;
		list_digits(s, language, now, list);
		say_sentence_in(
		    language,
		    &(const struct say){.saying = *list ? SAY_FAULT_ROOM_GONE_ON : SAY_FAULT_ROOM_GONE,
		                        .n = s->room,
		                        .case_no = s->case_no,
		                        .list = list},
		    out, size);
		return i + 1;
	}
	return 0;
}
