#include "report/plan.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/name.h"
#include "report/days.h"

#define COLUMNS 4
#define FIELD_MAX 64
#define ROOM_MAX 99

static const char *const heads[COLUMNS] = {"date", "room", "slot", "digit"};

/* One line of a file, field by field. */
struct reading {
	const char *at, *end;
	int line;
	char field[COLUMNS][FIELD_MAX];
	int n; /* fields that were there, those that did not fit included */
};

static int wrong(const struct reading *r, struct error *e, const char *what)
{
	return error_set(e, -EINVAL,
	                 "theatre list, line %d: %s: nothing of it was kept; mend it and give it again",
	                 r->line, what);
}

/* A field in quotes or without; what is too long is cut, and then is none of what is asked for. */
static int read_field(struct reading *r, char *out, struct error *e)
{
	int quoted = r->at < r->end && *r->at == '"';
	size_t n = 0;
	r->at += quoted;
	for (;; r->at++) {
		if (r->at == r->end && quoted)
			return wrong(r, e, "a quote that does not end");
		if (r->at == r->end)
			break;
		if (quoted && *r->at == '"') {
			r->at++;
			if (r->at == r->end || *r->at != '"')
				break;
		} else if (!quoted && (*r->at == ',' || *r->at == '\n')) {
			break;
		}
		if (n + 1 < FIELD_MAX)
			out[n++] = *r->at;
	}
	if (n && out[n - 1] == '\r')
		n--;
	out[n] = 0;
	if (quoted && r->at < r->end && *r->at == '\r')
		r->at++;
	if (r->at < r->end && *r->at != ',' && *r->at != '\n')
		return wrong(r, e, "text behind a closing quote");
	return 0;
}

/* 1 a line, 0 the end. */
static int read_line(struct reading *r, struct error *e)
{
	char beyond[FIELD_MAX] = "";
	if (r->at == r->end)
		return 0;
	r->line++;
	for (r->n = 0;;) {
		int n = read_field(r, r->n < COLUMNS ? r->field[r->n] : beyond, e);
		if (n < 0)
			return n;
		r->n++;
		if (r->at == r->end || *r->at++ == '\n')
			return 1;
	}
}

/* Of the fifth head the name is told, so that people know which column to leave out; of its lines nothing. */
static int read_heads(struct reading *r, struct error *e)
{
	static const char strict[] = "a theatre list has the heads date,room,slot,digit and no other";
	const char *from = r->at;
	int n = read_line(r, e);
	if (n <= 0)
		return n < 0 ? n : error_set(e, -EINVAL, "theatre list: it is empty: %s", strict);
	for (int i = 0; i < COLUMNS && i < r->n; i++)
		if (strcmp(r->field[i], heads[i]) != 0)
			return error_set(e, -EINVAL,
			                 "theatre list: its first line has no head '%s' in place %d: %s",
			                 heads[i], i + 1, strict);
	if (r->n < COLUMNS)
		return error_set(e, -EINVAL, "theatre list: column %s is missing: %s", heads[r->n], strict);
	if (r->n == COLUMNS)
		return 0;
	char name[FIELD_MAX] = "";
	for (int commas = 0; from < r->end && *from != '\n' && commas < COLUMNS; from++)
		commas += *from == ',';
	size_t size = strcspn(from, ",\r\n");
	memcpy(name, from, size < FIELD_MAX ? size : FIELD_MAX - 1);
	name_mend(name);
	return error_set(e, -EINVAL,
	                 "theatre list: it has a column '%s': %s, so that no name gets in: nothing of it was "
	                 "kept; leave that column out",
	                 name, strict);
}

/* Digits alone; -1 where it is no number from `low` to `high`. */
static int32_t number(const char *text, int32_t low, int32_t high)
{
	int32_t n = 0;
	size_t size = strspn(text, "0123456789");
	if (!size || size > 8 || text[size])
		return -1;
	for (size_t i = 0; i < size; i++)
		n = 10 * n + (text[i] - '0');
	return n >= low && n <= high ? n : -1;
}

static int32_t date(const char *text)
{
	char digits[9];
	if (strlen(text) != 10 || text[4] != '-' || text[7] != '-')
		return -1;
	memcpy(digits, text, 4);
	memcpy(digits + 4, text + 5, 2);
	memcpy(digits + 6, text + 8, 3);
	return number(digits, 0, 99999999);
}

static int by_place(const struct plan_slot *a, const struct plan_slot *b)
{
	return a->day != b->day     ? a->day - b->day
	       : a->room != b->room ? a->room - b->room
	                            : a->slot - b->slot;
}

static int read_slot(const struct reading *r, plan_room_fn known, void *context, struct plan_slot *s,
                     struct error *e)
{
	s->day = date(r->field[0]);
	s->room = number(r->field[1], 1, ROOM_MAX);
	s->slot = (int16_t)number(r->field[2], 1, 99);
	if (r->n > COLUMNS)
		return wrong(r, e, "more fields than the four heads");
	if (r->n < COLUMNS)
		return wrong(r, e, "fewer fields than the four heads");
	if (s->day < 0)
		return wrong(r, e, "date must be YYYY-MM-DD");
	if (!day_exists(s->day))
		return wrong(r, e, "no such day");
	if (s->room < 0 || !known(context, s->room))
		return wrong(r, e, "its room is not in station.ini");
	if (s->slot < 0)
		return wrong(r, e, "slot is a whole number from 1 to 99");
	s->digit = strcmp(r->field[3], "yes") == 0;
	return s->digit || strcmp(r->field[3], "no") == 0
	           ? 0
	           : wrong(r, e, "digit is yes or no, and empty is not no");
}

static int make_room(struct plan *p, struct error *e)
{
	size_t room = p->room ? 2 * p->room : 256;
	if (p->count < p->room)
		return 0;
	struct plan_slot *more = realloc(p->slots, room * sizeof *more);
	if (!more)
		return error_set(e, -ENOMEM, "theatre list: no memory: close other programs");
	p->slots = more;
	p->room = room;
	return 0;
}

/* Kept in order, so that what stands twice is found where it would go. 0, 1 where it is there already, or -ENOMEM. */
static int put(struct plan *p, const struct plan_slot *s, struct error *e)
{
	size_t low = 0, high = p->count;
	while (low < high) {
		size_t middle = (low + high) / 2;
		int order = by_place(&p->slots[middle], s);
		if (order == 0)
			return 1;
		if (order < 0)
			low = middle + 1;
		else
			high = middle;
	}
	if (make_room(p, e) < 0)
		return -ENOMEM;
	memmove(p->slots + low + 1, p->slots + low, (p->count - low) * sizeof *s);
	p->slots[low] = *s;
	p->count++;
	return 0;
}

static int add(struct plan *p, const struct reading *r, const struct plan_slot *s, struct error *e)
{
	int n = put(p, s, e);
	return n > 0 ? wrong(r, e, "date, room and slot are there already") : n;
}

int plan_read(struct plan *p, const char *text, size_t size, plan_room_fn known, void *context,
              struct error *e)
{
	struct reading r = {.at = text, .end = text + size};
	*p = (struct plan){0};
	int n = read_heads(&r, e);
	while (n == 0 && (n = read_line(&r, e)) > 0) {
		struct plan_slot s;
		n = read_slot(&r, known, context, &s, e);
		if (n == 0)
			n = add(p, &r, &s, e);
	}
	if (n < 0)
		plan_deinit(p);
	return n;
}

int plan_lay_over(struct plan *p, const struct plan *later, struct error *e)
{
	uint8_t has[ROOM_MAX + 1] = {0};
	size_t stay = 0;
	int n = 0;
	if (!later->count)
		return 0;
	for (size_t i = 0; i < later->count; i++)
		has[later->slots[i].room] = 1;
	int32_t first = later->slots[0].day, last = later->slots[later->count - 1].day;
	for (size_t i = 0; i < p->count; i++) {
		const struct plan_slot *s = &p->slots[i];
		if (!has[s->room] || s->day < first || s->day > last)
			p->slots[stay++] = *s;
	}
	p->count = stay;
	for (size_t i = 0; n >= 0 && i < later->count; i++)
		n = put(p, &later->slots[i], e);
	return n < 0 ? n : 0;
}

int plan_write(const struct plan *p, struct buf *out)
{
	int n = buf_printf(out, "%s,%s,%s,%s\n", heads[0], heads[1], heads[2], heads[3]);
	for (size_t i = 0; n == 0 && i < p->count; i++) {
		const struct plan_slot *s = &p->slots[i];
		n = buf_printf(out, "%04d-%02d-%02d,%d,%d,%s\n", s->day / 10000, s->day / 100 % 100,
		               s->day % 100, s->room, s->slot, s->digit ? "yes" : "no");
	}
	return n;
}

void plan_deinit(struct plan *p)
{
	free(p->slots);
	*p = (struct plan){0};
}
