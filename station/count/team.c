#include "count/team.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

void staff_deinit(struct staff *s)
{
	free(s->list);
	*s = (struct staff){0};
}

int staff_reserve(struct staff *s, size_t more)
{
	size_t room = s->count + more;
	if (room <= s->room)
		return 0;
	struct person *list = realloc(s->list, room * sizeof *list);
	if (!list)
		return -ENOMEM;
	s->list = list;
	s->room = room;
	return 0;
}

int staff_set(struct staff *s, const struct person *p)
{
	for (size_t i = 0; i < s->count; i++)
		if (s->list[i].number == p->number) {
			s->list[i] = *p;
			return 0;
		}
	if (staff_reserve(s, 1) < 0)
		return -ENOMEM;
	s->list[s->count++] = *p;
	return 0;
}

/* Visitors have no badge of this site: card VISITOR n is person -n, whose name stands on paper. */
static const struct person visitors[VISITORS_MAX] = {
    {.number = -1, .name = "visitor 1", .kind = STAFF_PRACTITIONER},
    {.number = -2, .name = "visitor 2", .kind = STAFF_PRACTITIONER},
    {.number = -3, .name = "visitor 3", .kind = STAFF_PRACTITIONER},
    {.number = -4, .name = "visitor 4", .kind = STAFF_PRACTITIONER},
};

int32_t staff_new_number(const struct staff *s)
{
	int32_t n = 0;
	for (size_t i = 0; i < s->count; i++)
		if (s->list[i].number > n)
			n = s->list[i].number;
	if (n++ < BADGE_NUMBER_MAX)
		return n;
	for (n = 1; n <= BADGE_NUMBER_MAX && staff_find(s, n);)
		n++;
	return n <= BADGE_NUMBER_MAX ? n : 0;
}

const struct person *staff_find(const struct staff *s, int32_t number)
{
	if (number < 0 && number >= -VISITORS_MAX)
		return &visitors[-number - 1];
	for (size_t i = 0; i < s->count; i++)
		if (s->list[i].number == number)
			return &s->list[i];
	return NULL;
}

const char *staff_name(const struct staff *s, int32_t number)
{
	const struct person *p = staff_find(s, number);
	return p ? p->name : "badge unknown";
}

static const char *const kind_names[] = {
    [STAFF_PRACTITIONER] = "practitioner", [STAFF_SURGEON] = "surgeon", [STAFF_CHARGE] = "nurse-in-charge"};

const char *staff_kind_name(enum staff_kind kind)
{
	return kind >= STAFF_PRACTITIONER && kind <= STAFF_CHARGE ? kind_names[kind] : "unknown";
}

int staff_kind_from_name(const char *name)
{
	for (int k = STAFF_PRACTITIONER; k <= STAFF_CHARGE; k++)
		if (strcmp(kind_names[k], name) == 0)
			return k;
	return strcmp(name, "charge") == 0 ? STAFF_CHARGE : -EINVAL; /* as earlier lists have it */
}

enum team_place team_place_of(const struct team *t, int32_t number)
{
	for (int place = PLACE_FIELD; number && place < TEAM_PLACES; place++)
		if (t->at[place] == number)
			return (enum team_place)place;
	return 0;
}

int team_surgeon_may_count(const struct team *t, enum team_place wanted)
{
	const int32_t surgeon = t->at[PLACE_SURGEON], field = t->at[PLACE_FIELD];
	return surgeon > 0 && surgeon != field &&
	       (wanted == PLACE_FIELD || (wanted == PLACE_CIRCULATING && field > 0));
}

enum saying team_may_not_agree(const struct team *t, const struct staff *s)
{
	const struct person *field = staff_find(s, t->at[PLACE_FIELD]);
	const struct person *circulating = staff_find(s, t->at[PLACE_CIRCULATING]);
	if (!field)
		return SAY_NOBODY_AT_FIELD;
	if (!circulating)
		return SAY_NOBODY_CIRCULATING;
	if (field == circulating)
		return SAY_SAME_PERSON;
	if (!field->registered && !circulating->registered)
		return SAY_NEITHER_OF_THE_TWO;
	return SAY_NONE;
}

static const struct {
	const char *name;
	enum saying saying;
} places[TEAM_PLACES] = {
    {"none", SAY_PLACE_NONE},
    [PLACE_FIELD] = {"field", SAY_PLACE_FIELD},
    [PLACE_CIRCULATING] = {"circulating", SAY_PLACE_CIRCULATING},
    [PLACE_SURGEON] = {"surgeon", SAY_PLACE_SURGEON},
    [PLACE_CHARGE] = {"charge", SAY_PLACE_CHARGE},
    [PLACE_VISITOR] = {"visitor", SAY_PLACE_VISITOR},
};

const char *place_name(enum team_place place)
{
	return places[place].name;
}

enum saying place_saying(enum team_place place)
{
	return places[place].saying;
}

const char *place_words(enum team_place place)
{
	return saying_text(places[place].saying);
}
