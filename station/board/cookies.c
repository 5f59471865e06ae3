#include "board/cookies.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#define ROOM_MAX 99

/* --- what works ----------------------------------------------------------------------------------- */

static int read_ticket(struct let_in *l, const json_t *hex)
{
	const char *text = json_string_value(hex);
	if (!text || l->n_tickets == COOKIES_LET_IN_MAX || !secret_from_hex(&l->tickets[l->n_tickets], text))
		return -EINVAL;
	l->n_tickets++;
	return 0;
}

static int read_cookie(struct let_in *l, const json_t *o)
{
	int64_t room = json_number(o, "room", -1);
	if (l->n_cookies == COOKIES_LET_IN_MAX || room < COOKIE_DESK || room > ROOM_MAX ||
	    !secret_from_hex(&l->cookies[l->n_cookies].hash, json_text(o, "hash")))
		return -EINVAL;
	l->cookies[l->n_cookies].room = (int)room;
	l->cookies[l->n_cookies].types = json_truth(o, "types");
	l->cookies[l->n_cookies].reports = json_truth(o, "reports");
	l->n_cookies++;
	return 0;
}

int let_in_read(struct let_in *l, const json_t *value)
{
	const json_t *tickets = json_object_get(value, "tickets"),
	             *cookies = json_object_get(value, "cookies"), *x;
	size_t i;
	int n = json_is_array(tickets) && json_is_array(cookies) ? 0 : -EINVAL;
	*l = (struct let_in){0};
	json_array_foreach((json_t *)tickets, i, x) n = n < 0 ? n : read_ticket(l, x);
	json_array_foreach((json_t *)cookies, i, x) n = n < 0 ? n : read_cookie(l, x);
	if (n < 0)
		*l = (struct let_in){0};
	return n;
}

bool let_in_ticket(const struct let_in *l, const char *ticket)
{
	struct secret_hash hash = secret_hash(ticket);
	bool found = false;
	for (int i = 0; i < l->n_tickets; i++)
		found |= secret_same(&l->tickets[i], &hash);
	return found;
}

/* Looks at each, so that the time tells nothing. */
static enum pass pass_of(const struct let_in *l, const struct secret_hash *hash, int room)
{
	enum pass found = PASS_OVER;
	for (int i = 0; i < l->n_cookies; i++)
		if (secret_same(&l->cookies[i].hash, hash) && l->cookies[i].room == room)
			found = l->cookies[i].types ? PASS_TYPES : PASS_SEES;
	return found;
}

/* --- what is shown -------------------------------------------------------------------------------- */

/* The next cookie of ours at *at, which is moved behind it: its room, and its value in `text`; -1 no more. */
static int next_cookie(const char **at, int port, char text[SECRET_LETTERS + 1])
{
	while (**at) {
		int its_port = -1, room = -1, used = 0;
		const char *here = *at + strspn(*at, " ;");
		size_t size = strcspn(here, ";");
		*at = here + size;
		if (sscanf(here, "bandtally-%5d-%2d=%n", &its_port, &room, &used) != 2 || !used ||
		    its_port != port || room < COOKIE_DESK || size != (size_t)used + SECRET_LETTERS)
			continue;
		memcpy(text, here + used, SECRET_LETTERS);
		text[SECRET_LETTERS] = 0;
		if (secret_has_form(text))
			return room;
	}
	return -1;
}

void shown_read(struct shown *s, const char *header, int port)
{
	char text[SECRET_LETTERS + 1];
	const char *at = header ? header : "";
	s->n = 0;
	for (int room; s->n < COOKIES_SHOWN_MAX && (room = next_cookie(&at, port, text)) >= 0; s->n++) {
		s->cookies[s->n].hash = secret_hash(text);
		s->cookies[s->n].room = room;
	}
}

/* Looks at each as well. */
bool shown_reports(const struct shown *s, const struct let_in *l)
{
	bool found = false;
	for (int i = 0; i < s->n; i++)
		for (int k = 0; k < l->n_cookies; k++)
			found |= secret_same(&l->cookies[k].hash, &s->cookies[i].hash) &&
			         l->cookies[k].reports && l->cookies[k].room == s->cookies[i].room;
	return found;
}

bool shown_typing(const struct let_in *l, const char *header, int port, int room,
                  char text[SECRET_LETTERS + 1])
{
	const char *at = header ? header : "";
	for (int its; (its = next_cookie(&at, port, text)) >= 0;) {
		struct secret_hash hash = secret_hash(text);
		if (its == room && pass_of(l, &hash, room) == PASS_TYPES)
			return true;
	}
	return false;
}

bool shown_own_room(const struct shown *s, const struct let_in *l, int room)
{
	bool found = false;
	for (int i = 0; i < s->n; i++)
		found |= s->cookies[i].room == room && pass_of(l, &s->cookies[i].hash, room) >= PASS_SEES;
	return found;
}

enum pass shown_pass(const struct shown *s, const struct let_in *l, int room)
{
	enum pass best = PASS_NONE;
	for (int i = 0; i < s->n; i++) {
		int its = s->cookies[i].room;
		enum pass p =
		    its == room || its == COOKIE_DESK ? pass_of(l, &s->cookies[i].hash, its) : PASS_NONE;
		if (its != room && p == PASS_OVER)
			p = PASS_NONE;
		best = p > best ? p : best;
	}
	return best;
}
