#include "count/unfollowed.h"

#include <stdlib.h>
#include <string.h>

/* Kinds that change no state: without one of them everything is as it was. */
static int changes_nothing(const char *kind)
{
	static const enum event_kind kinds[] = {EV_STOPPED,   EV_ALIVE,  EV_SCANNER_FAULT, EV_REFUSED,
	                                        EV_ITEM_USED, EV_SEALED, EV_AWAY};
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(kind, event_name(kinds[i])) == 0)
			return 1;
	return 0;
}

static int is_kind(const struct unfollowed *u, enum event_kind kind)
{
	return strcmp(u->kind, event_name(kind)) == 0;
}

/* A case that the record opened or ended is open or ended, whatever else its event said. */
static void open_or_end(struct station *st, const struct unfollowed *u, int32_t room)
{
	struct event e = {.case_no = u->case_no, .room = room, .seq = u->seq, .at = st->last};
	if (is_kind(u, EV_CASE_OPENED))
		e.kind = EV_CASE_OPENED;
	else if (is_kind(u, EV_CASE_ENDED))
		e.kind = EV_CASE_ENDED;
	else
		return;
	e.what = e.kind == EV_CASE_ENDED ? END_UNRESOLVED : 0;
	station_apply(st, &e);
}

void station_not_followed(struct station *st, const struct unfollowed *u, int32_t room)
{
	if (changes_nothing(u->kind))
		return;
	if (u->case_no)
		open_or_end(st, u, room);
	if (u->case_no > st->last_case_no)
		st->last_case_no = u->case_no;
	int index = station_sheet_of_case(st, u->case_no);
	if (index >= 0)
		st->sheets[index].unfollowed = 1;
	if (st->n_unfollowed == UNFOLLOWED_MAX)
		st->more_unfollowed++;
	else
		st->unfollowed[st->n_unfollowed++] = *u;
}

int unfollowed_has(const struct station *st, int64_t seq)
{
	for (int i = 0; i < st->n_unfollowed; i++)
		if (st->unfollowed[i].seq == seq)
			return 1;
	return st->more_unfollowed > 0;
}

static int is_among(const struct station *st, const struct unfollowed *u, int32_t case_no)
{
	if (u->case_no && station_sheet_of_case(st, u->case_no) < 0)
		return 0;
	return case_no == UNFOLLOWED_ALL ||
	       (case_no == UNFOLLOWED_OF_CASES ? u->case_no != 0 : u->case_no == case_no);
}

#define NAMED_MAX 3
#define EVENT_WORDS_MAX 80

static void name_event(const struct unfollowed *u, const struct language *language, char out[EVENT_WORDS_MAX])
{
	say_part_in(language,
	            &(const struct say){.saying = u->case_no ? SAY_UNFOLLOWED_OF_CASE : SAY_UNFOLLOWED_EVENT,
	                                .event = (int32_t)u->seq,
	                                .text = u->kind,
	                                .case_no = u->case_no},
	            out, EVENT_WORDS_MAX);
}

int station_unfollowed_words(const struct station *st, const struct language *language, enum saying saying,
                             int32_t case_no, char *out, size_t size)
{
	char names[NAMED_MAX + 1][EVENT_WORDS_MAX], list[SAID_LIST_MAX];
	const char *parts[NAMED_MAX + 1] = {names[0], names[1], names[2], names[3]};
	int n = 0, further = !case_no || case_no == UNFOLLOWED_ALL ? st->more_unfollowed : 0;
	out[0] = 0;
	for (int i = 0; i < st->n_unfollowed; i++) {
		if (!is_among(st, &st->unfollowed[i], case_no))
			continue;
		if (n == NAMED_MAX)
			further++;
		else
			name_event(&st->unfollowed[i], language, names[n++]);
	}
	if (!n && !further)
		return 0;
	if (further)
		say_part_in(language, SAY(LIST_FURTHER, .n = further), names[n], EVENT_WORDS_MAX);
	say_list(language, parts, n + (further > 0), list, sizeof list);
	say_part_in(language, &(const struct say){.saying = saying, .list = list}, out, size);
	return n + further;
}
