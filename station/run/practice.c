#include "run/practice.h"

#include <errno.h>
#include <ftw.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/log.h"
#include "run/core-internal.h"

#define QUIET_MS (30 * 60 * 1000)
#define FILES_AT_ONCE 8

/* --- its folder ------------------------------------------------------------------------------------ */

static int remove_one(const char *path, const struct stat *file, int kind, struct FTW *where)
{
	(void)file, (void)kind, (void)where;
	if (remove(path) < 0 && errno != ENOENT)
		log_warn_errno(LOG_STORE, -errno, "what was practised cannot be removed: %s", path);
	return 0;
}

static void remove_all(const char *path)
{
	nftw(path, remove_one, FILES_AT_ONCE, FTW_DEPTH | FTW_PHYS);
}

static void folder_of(const struct core *c, int32_t room, char out[PATH_MAX])
{
	int used = snprintf(out, PATH_MAX, "%s/practice", c->folder);
	if (room)
		snprintf(out + used, PATH_MAX - (size_t)used, "/%d", (int)room);
}

void practice_clear(const struct core *c)
{
	char path[PATH_MAX];
	folder_of(c, 0, path);
	remove_all(path);
}

/* --- what is in the set ---------------------------------------------------------------------------- */

static int add_packs(struct core *p, const struct language *language, struct error *e)
{
	char csv[600];
	struct line *lines = NULL;
	size_t count = 0;
	snprintf(csv, sizeof csv,
	         "key,name,role,codes,marked,visible,single_use,identity\n"
	         "PRACTICE-T,\"%s\",tourniquet,tray:%06d,yes,yes,yes,none\n"
	         "PRACTICE-F,\"%s\",forceps,tray:%06d,no,no,no,none\n",
	         saying_text_in(language, SAY_PRACTICE_TOURNIQUET), PRACTICE_TOURNIQUET,
	         saying_text_in(language, SAY_PRACTICE_FORCEPS), PRACTICE_FORCEPS);
	int n = catalogue_read_csv(csv, strlen(csv), &lines, &count, e);
	for (size_t i = 0; i < count && n == 0; i++)
		n = core_store(p, &(struct event){.kind = EV_LINE_SET, .line = lines[i]}, 1, e);
	free(lines);
	return n;
}

static int add_people(struct core *p, const struct language *language, struct error *e)
{
	static const struct {
		int32_t number; /* enum practice_badge */
		enum saying name;
		enum staff_kind kind;
	} people[] = {{PRACTICE_FIELD, SAY_PRACTICE_FIELD, STAFF_PRACTITIONER},
	              {PRACTICE_CIRCULATING, SAY_PRACTICE_CIRCULATING, STAFF_PRACTITIONER},
	              {PRACTICE_SURGEON, SAY_PRACTICE_SURGEON, STAFF_SURGEON},
	              {PRACTICE_ALONE, SAY_PRACTICE_ALONE, STAFF_SURGEON}};
	int n = 0;
	for (size_t i = 0; i < sizeof people / sizeof *people && n == 0; i++) {
		struct person is = {
		    .number = people[i].number, .kind = (uint8_t)people[i].kind, .registered = 1};
		snprintf(is.name, sizeof is.name, "%s", saying_text_in(language, people[i].name));
		n = core_store(p, &(struct event){.kind = EV_STAFF_SET, .staff = is}, 1, e);
	}
	return n;
}

/* --- its beginning and end ------------------------------------------------------------------------- */

static struct practice *at(const struct core *c, int32_t room)
{
	int i = c->station.practice ? -1 : core_room_index(c, room);
	return i < 0 ? NULL : c->practice[i];
}

struct core *practice_in(const struct core *c, int32_t room)
{
	struct practice *p = at(c, room);
	return p ? &p->core : NULL;
}

static int start(struct practice *p, const struct core *c, int32_t room, struct error *e)
{
	char path[PATH_MAX];
	folder_of(c, 0, path);
	mkdir(path, 0750);
	folder_of(c, room, path);
	remove_all(path);
	int n = strlen(path) < sizeof p->core.folder
	            ? core_start_practice(&p->core, path, c, e)
	            : error_set(e, -ENAMETOOLONG, "practice: the path is too long");
	if (n < 0)
		return n;
	n = add_packs(&p->core, core_language(c, room), e);
	if (n == 0)
		n = add_people(&p->core, core_language(c, room), e);
	if (n < 0)
		core_close_practice(&p->core);
	return n;
}

static void finish(struct core *c, int32_t room)
{
	char path[PATH_MAX];
	struct practice **p = &c->practice[core_room_index(c, room)];
	core_close_practice(&(*p)->core);
	free(*p);
	*p = NULL;
	folder_of(c, room, path);
	remove_all(path);
	c->changes++;
}

static void end(struct core *c, int32_t room)
{
	finish(c, room);
	core_tell(c, room, VERDICT_QUESTION, SAY(R_PRACTICE_OVER));
}

void practice_end_all(struct core *c)
{
	for (int i = 0; i < c->station.n_rooms; i++)
		if (c->practice[i])
			finish(c, c->station.rooms[i].number);
	practice_clear(c);
}

static struct practice *begin(struct core *c, int32_t room)
{
	struct error e = {0};
	struct practice *p = calloc(1, sizeof *p);
	if (p && start(p, c, room, &e) == 0) {
		c->practice[core_room_index(c, room)] = p;
		return p;
	}
	log_warn(LOG_STORE, "practice cannot begin in room %d: %s", (int)room, p ? e.text : "out of memory");
	free(p);
	return NULL;
}

/* --- scans ----------------------------------------------------------------------------------------- */

enum whose { WHOSE_NOBODYS = 0, WHOSE_PRACTICE, WHOSE_REAL };

static enum whose whose(const struct core *c, const struct scan *s, struct own_code *own)
{
	struct code code;
	struct code_fault fault;
	if (code_read(&code, s->aim, s->data, s->size, core_today(c), &fault) < 0)
		return WHOSE_NOBODYS;
	*own = code.own;
	return code.kind == CODE_OWN && own->practice && strcmp(own->site, c->station.site) == 0
	           ? WHOSE_PRACTICE
	           : WHOSE_REAL;
}

/* Of several: real where one of them is. */
static enum whose whose_all(const struct core *c, const struct scan *scans, int n, struct own_code *first)
{
	struct own_code own;
	enum whose all = WHOSE_NOBODYS;
	for (int i = n - 1; i >= 0; i--) {
		enum whose one = whose(c, &scans[i], &own);
		all = one > all ? one : all;
		if (i == 0)
			*first = own;
	}
	return all;
}

/* A room is of the kind that the exercise begins with: one alone with a badge of its own, two with NEW CASE. */
static void set_kind(struct practice *p, int32_t room, const struct own_code *own)
{
	struct station *st = &p->core.station;
	int i = station_room_index(st, room);
	if (station_sheet_of_room(st, room) >= 0)
		return;
	if (own->kind == OWN_BADGE && own->number == PRACTICE_ALONE)
		st->rooms[i].single = 1;
	else if (own->kind == OWN_CARD && own->meaning == CARD_NEW_CASE)
		st->rooms[i].single = 0;
}

struct core *practice_takes(struct core *c, const struct scan *scans, int n)
{
	struct own_code own = {0};
	int32_t room = scans[0].room;
	struct practice *p = at(c, room);
	if (c->station.practice || core_room_index(c, room) < 0)
		return NULL;
	if (!p && !station_may_practise(&c->station, room))
		return NULL; /* the usual scan, in a case: it is read once, where it counts */
	enum whose is = whose_all(c, scans, n, &own);
	if (p && is == WHOSE_REAL) {
		end(c, room);
		return NULL;
	}
	if (!p && is == WHOSE_PRACTICE)
		p = begin(c, room);
	if (!p)
		return NULL;
	set_kind(p, room, &own);
	p->last = core_now(&p->core);
	c->changes++;
	return &p->core;
}

/* --- time ------------------------------------------------------------------------------------------ */

static void pass(struct core *c, int32_t room, struct practice *p)
{
	if (moment_between_ms(p->last, core_now(&p->core)) > QUIET_MS ||
	    !station_may_practise(&c->station, room)) {
		end(c, room);
		return;
	}
	while (core_tick(&p->core))
		;
	c->changes += p->changes != p->core.changes;
	p->changes = p->core.changes;
}

void practice_tick(struct core *c)
{
	for (int i = 0; i < c->station.n_rooms; i++)
		if (c->practice[i])
			pass(c, c->station.rooms[i].number, c->practice[i]);
}
