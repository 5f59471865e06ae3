#include "texts.h"

#include <string.h>

static void add(struct buf *known, const char *text)
{
	buf_add_text(known, text);
	buf_add_text(known, "\n");
}

void texts_of_station(struct buf *known, const struct station *st)
{
	add(known, st->site_name);
	for (int i = 0; i < st->n_rooms; i++)
		add(known, st->rooms[i].name);
	for (int i = 0; i < st->policy.n_points; i++)
		add(known, st->policy.points[i]);
	for (int i = 0; i < st->policy.n_search; i++)
		add(known, st->policy.search[i]);
	for (size_t i = 0; i < st->staff.count; i++)
		add(known, st->staff.list[i].name);
	for (size_t i = 0; i < st->catalogue.count; i++) {
		add(known, st->catalogue.lines[i].name);
		add(known, st->catalogue.lines[i].instead);
	}
	for (int visitor = 1; visitor <= VISITORS_MAX; visitor++)
		add(known, staff_name(&st->staff, -visitor));
}

static const char *unknown(const struct buf *known, const char *text)
{
	return strchr(text, ' ') && (!known->data || !strstr(known->data, text)) ? text : NULL;
}

const char *texts_unknown(const struct buf *known, const struct event *e)
{
	uint32_t has = event_fields(e->kind);
	const char *found = has & F_TEXT ? unknown(known, e->text) : NULL;
#define LOOK(field, text)                                                                                    \
	if (!found && has & (field))                                                                         \
	found = unknown(known, text)
	LOOK(F_THING, e->thing.name);
	LOOK(F_THING, e->thing.line);
	LOOK(F_THING, e->thing.identity);
	LOOK(F_THING, e->thing.lot);
	LOOK(F_STAFF, e->staff.name);
	LOOK(F_LINE, e->line.name);
	LOOK(F_LINE, e->line.instead);
#define LOOK_TEXT(member) LOOK(F_SAID, e->said.member);
#define LOOK_NUMBER(member)
#define LOOK_DIGITS(member)
#define LOOK_DIGIT(member)
#define LOOK_CARD(member)
#define LOOK_DATE(member)
#define LOOK_TIME(member)
#define LOOK_SAYING(member)
#define LOOK_PERSON(member) LOOK_TEXT(member)
#define LOOK_SHIPPED(member) LOOK_TEXT(member)
#define LOOK_THING(member) LOOK_TEXT(member)
#define X(type, member, name, size) LOOK_##type(member)
	VALUES(X)
	return found;
}
