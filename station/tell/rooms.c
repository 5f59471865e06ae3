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

/* What is said of a case there; SAY_NONE: its room is one of cases. */
static enum saying fault_of(const struct room *r, int on)
{
	if (!r)
		return on ? SAY_FAULT_ROOM_GONE_ON : SAY_FAULT_ROOM_GONE;
	switch ((enum room_kind)r->kind) {
	case ROOM_OF_CASES:
		break;
	case ROOM_OF_STORES:
		return on ? SAY_FAULT_ROOM_STORES_ON : SAY_FAULT_ROOM_STORES;
	case ROOM_OF_AUDIT:
		return on ? SAY_FAULT_ROOM_AUDIT_ON : SAY_FAULT_ROOM_AUDIT;
	}
	return SAY_NONE;
}

int rooms_gone_words(const struct station *st, const struct language *language, int from, struct moment now,
                     char *out, size_t size)
{
	char list[SAID_LIST_MAX];
	out[0] = 0;
	for (int i = from; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i];
		if (!s->case_no)
			continue;
		list_digits(s, language, now, list);
		enum saying fault = fault_of(station_room(st, s->room), *list != 0);
		if (fault == SAY_NONE)
			continue;
		say_sentence_in(
		    language,
		    &(const struct say){.saying = fault, .n = s->room, .case_no = s->case_no, .list = list},
		    out, size);
		return i + 1;
	}
	return 0;
}
