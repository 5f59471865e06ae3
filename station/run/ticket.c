#include "run/ticket.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/file.h"
#include "base/log.h"

#define COOKIES_FILE "cookies"
#define WRITTEN_EVERY_MS (3600 * 1000) /* so that a restart takes at most an hour from a cookie */
#define ROOM_MAX 99

static const char *const group_names[] = {[TICKET_COUNT] = "bandtally-count",
                                          [TICKET_AUDIT] = "bandtally-audit",
                                          [TICKET_REPORTS] = "bandtally-audit/reports"};

/* The place that is free, or else the one that ends first. */
static struct grant *place(struct grant *list, int n)
{
	struct grant *first = &list[0];
	for (int i = 1; i < n; i++)
		if (list[i].until_ms < first->until_ms)
			first = &list[i];
	return first;
}

/* Looks at every place, wherever it is found, so that the time tells nothing. */
static struct grant *find(struct grant *list, int n, const struct secret_hash *hash, int64_t now_ms)
{
	struct grant *found = NULL;
	for (int i = 0; i < n; i++)
		if (secret_same(&list[i].hash, hash) && list[i].until_ms > now_ms)
			found = &list[i];
	return found;
}

static int put(struct grant *at, const struct grant *what, char text[SECRET_LETTERS + 1])
{
	int n = secret_make(text);
	if (n < 0)
		return n;
	*at = *what;
	at->hash = secret_hash(text);
	return 0;
}

int ticket_give(struct tickets *t, int32_t room, enum ticket_group group, int64_t now_ms,
                char ticket[SECRET_LETTERS + 1])
{
	struct grant g = {.until_ms = now_ms + TICKET_LASTS_MS, .room = room, .group = group};
	return put(place(t->tickets, TICKETS_MAX), &g, ticket);
}

int ticket_take(struct tickets *t, const char *ticket, int64_t now_ms, struct ticket_taken *out)
{
	struct secret_hash hash = secret_hash(ticket);
	struct grant *old = find(t->tickets, TICKETS_MAX, &hash, now_ms);
	if (!old)
		return -ENOENT;
	struct grant g = {.until_ms = now_ms + COOKIE_LASTS_MS, .room = old->room, .group = old->group};
	*old = (struct grant){0};
	out->room = g.room;
	out->group = g.group;
	return put(place(t->cookies, COOKIES_MAX), &g, out->cookie);
}

int cookie_types(const struct tickets *t, const char *cookie, int32_t room, int64_t now_ms)
{
	struct secret_hash hash = secret_hash(cookie);
	const struct grant *g = find((struct grant *)t->cookies, COOKIES_MAX, &hash, now_ms);
	return g && g->group == TICKET_COUNT && g->room == room && room != ROOM_DESK;
}

int cookie_renew(struct tickets *t, const struct secret_hash *hash, int64_t now_ms)
{
	struct grant *g = find(t->cookies, COOKIES_MAX, hash, now_ms);
	if (!g)
		return 0;
	g->until_ms = now_ms + COOKIE_LASTS_MS;
	return now_ms - t->written_ms >= WRITTEN_EVERY_MS;
}

static int forget(struct grant *list, int n, int64_t now_ms)
{
	int gone = 0;
	for (int i = 0; i < n; i++)
		if (list[i].until_ms && list[i].until_ms <= now_ms) {
			list[i] = (struct grant){0};
			gone++;
		}
	return gone;
}

int tickets_forget(struct tickets *t, int64_t now_ms)
{
	return forget(t->tickets, TICKETS_MAX, now_ms) + forget(t->cookies, COOKIES_MAX, now_ms);
}

/* --- for the board, and for the next start -------------------------------------------------------- */

static json_t *hash_json(const struct grant *g)
{
	char hex[SECRET_HEX + 1];
	secret_to_hex(&g->hash, hex);
	return json_string(hex);
}

static json_t *told(const struct grant *g)
{
	json_t *o = json_object();
	json_object_set_new(o, "hash", hash_json(g));
	json_object_set_new(o, "room", json_integer(g->room));
	json_object_set_new(o, "reports", json_boolean(g->group == TICKET_REPORTS));
	json_object_set_new(o, "types", json_boolean(g->group == TICKET_COUNT && g->room != ROOM_DESK));
	return o;
}

json_t *tickets_told(const struct tickets *t)
{
	json_t *o = json_object(), *tickets = json_array(), *cookies = json_array();
	for (int i = 0; i < TICKETS_MAX; i++)
		if (t->tickets[i].until_ms)
			json_array_append_new(tickets, hash_json(&t->tickets[i]));
	for (int i = 0; i < COOKIES_MAX; i++)
		if (t->cookies[i].until_ms)
			json_array_append_new(cookies, told(&t->cookies[i]));
	json_object_set_new(o, "tickets", tickets);
	json_object_set_new(o, "cookies", cookies);
	return o;
}

static int group_of(const char *name)
{
	for (int i = 0; i <= TICKET_REPORTS; i++)
		if (strcmp(group_names[i], name) == 0)
			return i;
	return -1;
}

static void read_one(struct tickets *t, const json_t *o, int64_t now_ms)
{
	struct grant g = {.until_ms = json_number(o, "until_ms", 0)};
	int64_t room = json_number(o, "room", -1);
	int group = group_of(json_text(o, "group"));
	if (group < 0 || room < ROOM_DESK || room > ROOM_MAX || g.until_ms <= now_ms ||
	    g.until_ms > now_ms + COOKIE_LASTS_MS || !secret_from_hex(&g.hash, json_text(o, "hash")))
		return;
	g.room = (int32_t)room;
	g.group = (enum ticket_group)group;
	*place(t->cookies, COOKIES_MAX) = g;
}

static void path_of(char path[PATH_MAX], const char *folder)
{
	snprintf(path, PATH_MAX, "%.4000s/" COOKIES_FILE, folder);
}

void cookies_read(struct tickets *t, const char *folder, const char *boot_id, int64_t now_ms)
{
	char path[PATH_MAX];
	_cleanup_(buf_free) struct buf text = {0};
	path_of(path, folder);
	int n = file_read(path, &text);
	_cleanup_(json_drop) json_t *all = n == 0 && text.size ? json_read(text.data, text.size, NULL) : NULL;
	if (n == -ENOENT || (all && strcmp(json_text(all, "boot"), boot_id) != 0))
		return;
	if (!json_is_array(json_object_get(all, "cookies")))
		log_warn(LOG_BOARD, "%s cannot be read: typing at the pages needs new tickets", path);
	size_t i;
	const json_t *o;
	json_array_foreach(json_object_get(all, "cookies"), i, o) read_one(t, o, now_ms);
}

int cookies_write(struct tickets *t, const char *folder, const char *boot_id, int64_t now_ms)
{
	char path[PATH_MAX];
	_cleanup_(buf_free) struct buf text = {0};
	_cleanup_(json_drop) json_t *all = json_object();
	json_t *list = json_array();
	for (int i = 0; i < COOKIES_MAX; i++) {
		const struct grant *g = &t->cookies[i];
		if (!g->until_ms)
			continue;
		json_t *o = json_object();
		json_object_set_new(o, "hash", hash_json(g));
		json_object_set_new(o, "room", json_integer(g->room));
		json_object_set_new(o, "group", json_string(group_names[g->group]));
		json_object_set_new(o, "until_ms", json_integer(g->until_ms));
		json_array_append_new(list, o);
	}
	json_object_set_new(all, "boot", json_string(boot_id));
	json_object_set_new(all, "cookies", list);
	path_of(path, folder);
	t->written_ms = now_ms;
	int n = json_write_canonical(all, &text);
	return n < 0 ? n : file_replace_soon(path, 0600, text.data, text.size);
}

/* --- how often ------------------------------------------------------------------------------------ */

int pace_allows(struct pace *p, int64_t now_ms)
{
	if (p->at_ms[p->next] && now_ms - p->at_ms[p->next] < 1000)
		return 0;
	p->at_ms[p->next] = now_ms;
	p->next = (p->next + 1) % TYPED_A_SECOND;
	return 1;
}
