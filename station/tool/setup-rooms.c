/* setup: the rooms. One that is there keeps its number, for its cards bear it; none is taken away. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "tool/client.h"
#include "tool/setup-ask.h"
#include "tool/setup.h"

#define SECTION "room "

struct rooms {
	int number[ROOM_NUMBER_MAX];
	char name[ROOM_NUMBER_MAX][200];
	int n;
};

static int on_value(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct rooms *r = context;
	int number = strncmp(section, SECTION, strlen(SECTION)) == 0 ? atoi(section + strlen(SECTION)) : 0, i;
	(void)e;
	if (number < 1 || number > ROOM_NUMBER_MAX)
		return 0;
	for (i = 0; i < r->n && r->number[i] != number; i++)
		;
	if (i == r->n) {
		r->number[r->n++] = number;
		snprintf(r->name[i], sizeof r->name[i], "Room %d", number);
	}
	if (strcmp(name, "name") == 0)
		snprintf(r->name[i], sizeof r->name[i], "%s", value);
	return 0;
}

static void read_rooms(const struct setup *s, struct rooms *r)
{
	struct error e;
	r->n = 0;
	setup_each(&s->files, SETUP_STATION, on_value, r, &e);
}

int setup_first_room(const struct setup *s)
{
	struct rooms r;
	read_rooms(s, &r);
	return r.n ? r.number[0] : 1;
}

static int number_of(const struct rooms *r, const char *name)
{
	for (int i = 0; i < r->n; i++)
		if (strcmp(r->name[i], name) == 0)
			return r->number[i];
	return 0;
}

static int free_number(const struct rooms *r)
{
	for (int number = 1; number <= ROOM_NUMBER_MAX; number++) {
		int taken = 0;
		for (int i = 0; i < r->n; i++)
			taken |= r->number[i] == number;
		if (!taken)
			return number;
	}
	return 0;
}

static int name_room(struct setup *s, int number, const char *name, struct error *e)
{
	char section[16];
	snprintf(section, sizeof section, SECTION "%d", number);
	return setup_put(&s->files, section, "name", name, e);
}

/* A room that is called so is there already; the one that the settings are shipped with gets the first name. */
static int give_room(struct setup *s, const char *name, struct error *e)
{
	struct rooms r;
	read_rooms(s, &r);
	if (number_of(&r, name))
		return 0;
	int number = !setup_settled(&s->files, "rooms") ? number_of(&r, "Room 1") : 0;
	if (!number)
		number = free_number(&r);
	return number ? name_room(s, number, name, e)
	              : error_set(e, -ENOSPC, "no number is left for a further room: give fewer");
}

static int give_rooms(struct setup *s)
{
	struct error e = {0};
	const char *name;
	for (int at = 0; (name = words_each(&s->words, SETUP_OPTIONS, "room", &at));)
		if (give_room(s, name, &e) < 0) {
			fprintf(stderr, "bandtally: --room: %s; nothing was changed\n", setup_why(&e));
			return EXIT_USAGE;
		}
	return EXIT_OK;
}

static int take_name(struct setup *s, const void *context, const char *value, struct error *e)
{
	const int *number = context;
	struct rooms r;
	read_rooms(s, &r);
	int has = number_of(&r, value);
	if (has && has != *number)
		return error_set(e, -EEXIST, "room %d is called so: give another name", has);
	return name_room(s, *number, value, e);
}

/* The same, where there may be none. */
static int take_further(struct setup *s, const void *context, const char *value, struct error *e)
{
	return *value ? take_name(s, context, value, e) : 0;
}

static int ask_rooms(struct setup *s)
{
	static const char further[] = "The name of a further room, or nothing where there is none";
	struct rooms r;
	char asks[48];
	read_rooms(s, &r);
	int known = r.n ? r.n : 1, number, before;
	for (int i = 0; i < known; i++) {
		number = r.n ? r.number[i] : 1;
		snprintf(asks, sizeof asks, "What room %d is called", number);
		int n = setup_answer(s, &(struct setup_question){"room", asks, take_name, &number},
		                     r.n ? r.name[i] : "Room 1");
		if (n != EXIT_OK)
			return n;
	}
	do {
		read_rooms(s, &r);
		before = r.n;
		number = free_number(&r);
		if (!s->asks || !number)
			break;
		int n = setup_answer(s, &(struct setup_question){"room", further, take_further, &number}, "");
		if (n != EXIT_OK)
			return n;
		read_rooms(s, &r);
	} while (r.n > before);
	return EXIT_OK;
}

int setup_rooms(struct setup *s)
{
	struct error e = {0};
	if (!setup_due(s, "rooms", "room"))
		return EXIT_OK;
	int n = words_given(&s->words, SETUP_OPTIONS, "room") ? give_rooms(s) : ask_rooms(s);
	if (n != EXIT_OK)
		return n;
	return setup_settle(&s->files, "rooms", &e) < 0 ? client_fail(&e) : EXIT_OK;
}
