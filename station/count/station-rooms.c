/* The rooms of a station: which there are, what works in each, and what they are called. */
#include "count/station.h"

const struct room *station_room(const struct station *st, int32_t number)
{
	for (int i = 0; i < st->n_rooms; i++)
		if (st->rooms[i].number == number)
			return &st->rooms[i];
	return NULL;
}

/* Of a case, and of scans that are held: neither comes about in a room of another kind. */
static int has_of_cases(const struct station *st, int32_t room)
{
	for (int i = 0; i < SHEETS_MAX; i++)
		if (st->sheets[i].case_no && st->sheets[i].room == room)
			return 1;
	for (int i = 0; i < st->n_held; i++)
		if (st->held[i].room == room)
			return 1;
	return 0;
}

int station_room_is(const struct station *st, int32_t number, enum room_kind kind)
{
	const struct room *r = station_room(st, number);
	if (r && r->kind != ROOM_OF_CASES && has_of_cases(st, number))
		return kind == ROOM_OF_CASES;
	return r && r->kind == kind;
}

int station_room_index(const struct station *st, int32_t room)
{
	for (int i = 0; i < st->n_rooms; i++)
		if (st->rooms[i].number == room)
			return i;
	return -1;
}

int station_others_have_a_case(const struct station *st, int32_t room)
{
	for (int i = 0; i < SHEETS_MAX; i++)
		if (st->sheets[i].case_no && st->sheets[i].room != room)
			return 1;
	return 0;
}

const char *station_room_name(const struct station *st, int32_t number)
{
	const struct room *r = station_room(st, number);
	return r ? r->name : saying_text(SAY_ROOM_NAMELESS);
}

const char *station_language(const struct station *st, int32_t room)
{
	const struct room *r = station_room(st, room);
	const char *language = r && r->language[0] ? r->language : st->language;
	return language[0] ? language : "en";
}
