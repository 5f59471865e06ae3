#include "count/team.h"

#include <errno.h>
#include <stdlib.h>

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

enum team_place team_place_of(const struct team *t, int32_t number)
{
	for (int place = PLACE_FIELD; number && place < TEAM_PLACES; place++)
		if (t->at[place] == number)
			return (enum team_place)place;
	return 0;
}

const char *team_may_not_agree(const struct team *t, const struct staff *s)
{
	const struct person *field = staff_find(s, t->at[PLACE_FIELD]);
	const struct person *circulating = staff_find(s, t->at[PLACE_CIRCULATING]);
	if (!field)
		return "nobody at the field has badged in: scan the scrub practitioner's badge";
	if (!circulating)
		return "nobody circulating has badged in: scan the circulating practitioner's badge";
	if (field == circulating)
		return "the same person cannot be at the field and circulating: scan the other's badge";
	if (!field->registered && !circulating->registered)
		return "neither of the two is registered: one must be: change over with HANDOVER";
	return NULL;
}

static const struct {
	const char *name, *words;
} places[TEAM_PLACES] = {
    {"none", "not here"},
    [PLACE_FIELD] = {"field", "at the field"},
    [PLACE_CIRCULATING] = {"circulating", "circulating"},
    [PLACE_SURGEON] = {"surgeon", "operating surgeon"},
    [PLACE_CHARGE] = {"charge", "nurse in charge"},
    [PLACE_VISITOR] = {"visitor", "visiting"},
};

const char *place_name(enum team_place place)
{
	return places[place].name;
}

const char *place_words(enum team_place place)
{
	return places[place].words;
}
