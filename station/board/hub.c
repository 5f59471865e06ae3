#include "board/hub.h"

#include <errno.h>
#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <event2/event.h>
#include <event2/http.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/time.h>

#include "base/clock.h"
#include "base/log.h"

#define WRITE_PATIENCE_S 10
#define BEHIND_PATIENCE_MS 3000

/* The bytes of one server-sent event, shared by everyone they still have to reach. */
struct message {
	int holders;
	struct buf bytes;
};

struct page {
	struct page *next;
	struct hub *hub;
	struct evhttp_request *req;
	int room;
	enum hub_place place;
	struct shown shown;
	const char *typing; /* as it was told */
	int64_t behind_ms;  /* since when too much waits for it, 0 while it keeps up */
};

struct kept {
	struct buf text; /* canonical JSON, empty while nothing is known */
	int64_t since_ms;
};

struct hub {
	struct hub_rules rules;
	struct let_in let_in;
	char fault[ERROR_TEXT_MAX]; /* "" none */
	struct kept rooms[HUB_ROOM_MAX + 1];
	struct kept status;
	struct page *pages;
	int n_pages[HUB_PLACES];
};

static const int most_pages[HUB_PLACES] = {HUB_PAGES_MAX, HUB_PAGES_ELSEWHERE_MAX};

struct hub *hub_new(const struct hub_rules *rules)
{
	struct hub *h = calloc(1, sizeof *h);
	if (h)
		h->rules = *rules;
	return h;
}

void hub_free(struct hub *h)
{
	if (!h)
		return;
	for (int i = 0; i <= HUB_ROOM_MAX; i++)
		buf_free(&h->rooms[i].text);
	buf_free(&h->status.text);
	free(h);
}

bool hub_knows_room(const struct hub *h, int room)
{
	return room >= 1 && room <= HUB_ROOM_MAX && h->rooms[room].text.size;
}

bool hub_typing(const struct hub *h, enum hub_place place)
{
	return h->rules.typing[place];
}

const struct let_in *hub_lets_in(const struct hub *h)
{
	return &h->let_in;
}

static void let_go(struct message *m)
{
	if (m && --m->holders == 0) {
		buf_free(&m->bytes);
		free(m);
	}
}

static void sent(const void *data, size_t size, void *message)
{
	(void)data;
	(void)size;
	let_go(message);
}

static struct message *message_new(const char *event, const char *data)
{
	struct message *m = calloc(1, sizeof *m);
	if (m)
		m->holders = 1;
	if (m && buf_printf(&m->bytes, "event: %s\ndata: %s\n\n", event, data) < 0) {
		let_go(m);
		return NULL;
	}
	return m;
}

static void give(struct page *p, struct message *m)
{
	struct evbuffer *chunk = evbuffer_new();
	if (!chunk)
		return;
	m->holders++;
	if (evbuffer_add_reference(chunk, m->bytes.data, m->bytes.size, sent, m) < 0)
		m->holders--; /* the caller holds one itself */
	else
		evhttp_send_reply_chunk(p->req, chunk);
	evbuffer_free(chunk);
}

static bool too_slow(const struct page *p)
{
	struct evhttp_connection *c = evhttp_request_get_connection(p->req);
	struct bufferevent *b = evhttp_connection_get_bufferevent(c);
	return evbuffer_get_length(bufferevent_get_output(b)) > HUB_UNSENT_MAX;
}

static void give_kept(struct page *p, const char *event, const struct kept *k)
{
	_cleanup_(buf_free) struct buf data = {0};
	if (!k->text.size ||
	    buf_printf(&data, "{\"age_ms\":%lld,\"%s\":%s}", (long long)(clock_now().boot_ms - k->since_ms),
	               event, k->text.data) < 0)
		return;
	struct message *m = message_new(event, data.data);
	if (m)
		give(p, m);
	let_go(m);
}

static enum pass pass_of(const struct page *p)
{
	return shown_pass(&p->shown, &p->hub->let_in, p->room);
}

static bool may_see(const struct page *p)
{
	return !p->hub->rules.closed[p->place] || pass_of(p) >= PASS_SEES;
}

static const char *typing_of(const struct page *p)
{
	static const char *const words[] = {
	    [PASS_NONE] = "no", [PASS_OVER] = "over", [PASS_SEES] = "no", [PASS_TYPES] = "yes"};
	return p->hub->rules.typing[p->place] ? words[pass_of(p)] : "off";
}

static void give_hello(struct page *p)
{
	char data[32];
	p->typing = typing_of(p);
	snprintf(data, sizeof data, "{\"typing\":\"%s\"}", p->typing);
	struct message *m = message_new("hello", data);
	if (m)
		give(p, m);
	let_go(m);
}

static void give_start(struct page *p)
{
	struct hub *h = p->hub;
	give_hello(p);
	give_kept(p, "status", &h->status);
	for (int i = 1; i <= HUB_ROOM_MAX; i++) {
		if (p->room == i || p->room == HUB_ROOM_EACH)
			give_kept(p, "view", &h->rooms[i]);
	}
}

/* What a page missed while it was behind is not sent late: it gets what holds now. */
static bool keeps_up(struct page *p, int64_t now_ms)
{
	if (!too_slow(p)) {
		if (p->behind_ms)
			give_start(p);
		p->behind_ms = 0;
		return true;
	}
	if (!p->behind_ms)
		p->behind_ms = now_ms;
	return false;
}

static void give_all(struct hub *h, int room, struct message *m)
{
	int64_t now_ms = clock_now().boot_ms;
	struct page *next;
	for (struct page *p = h->pages; m && p; p = next) {
		next = p->next;
		if (room && p->room != room && p->room != HUB_ROOM_EACH)
			continue;
		if (keeps_up(p, now_ms)) {
			give(p, m);
		} else if (now_ms - p->behind_ms > BEHIND_PATIENCE_MS) {
			log_line("a page does not take what it is sent: it is dropped, and may come back");
			evhttp_connection_free(evhttp_request_get_connection(p->req));
		}
	}
	let_go(m);
}

/* The page has left, or was dropped. Where the peer left, the request has lost its connection and is ours to
 * end; where we freed the connection, that frees the request too. */
static void on_close(struct evhttp_connection *c, void *context)
{
	struct page *p = context;
	(void)c;
	for (struct page **at = &p->hub->pages; *at; at = &(*at)->next)
		if (*at == p) {
			*at = p->next;
			p->hub->n_pages[p->place]--;
			break;
		}
	if (!evhttp_request_get_connection(p->req))
		evhttp_send_reply_end(p->req);
	free(p);
}

static int first_room(const struct hub *h)
{
	for (int i = 1; i <= HUB_ROOM_MAX; i++)
		if (hub_knows_room(h, i))
			return i;
	return HUB_ROOM_FIRST;
}

int hub_follow(struct hub *h, struct evhttp_request *req, int room, enum hub_place place,
               const struct shown *shown)
{
	struct page is = {
	    .next = h->pages, .hub = h, .req = req, .room = room, .place = place, .shown = *shown};
	if (room == HUB_ROOM_FIRST)
		is.room = first_room(h);
	if (!may_see(&is))
		return -EACCES;
	bool full = h->n_pages[place] >= most_pages[place];
	struct page *p = full ? NULL : malloc(sizeof *p);
	if (!p)
		return full ? -EBUSY : -ENOMEM;
	*p = is;
	h->pages = p;
	h->n_pages[place]++;
	struct evhttp_connection *c = evhttp_request_get_connection(req);
	struct bufferevent *b = evhttp_connection_get_bufferevent(c);
	/* A page says nothing more, so only writing has a time limit, and what it says anyway is not hoarded.
	 */
	bufferevent_set_timeouts(b, NULL, &(struct timeval){.tv_sec = WRITE_PATIENCE_S});
	bufferevent_setwatermark(b, EV_READ, 0, 1024);
	/* Each event goes out at once; it would wait for the other side's word on the one before. */
	setsockopt(bufferevent_getfd(b), IPPROTO_TCP, TCP_NODELAY, &(int){1}, sizeof(int));
	evhttp_connection_set_closecb(c, on_close, p);
	evhttp_send_reply_start(req, 200, "OK");
	give_start(p);
	return 0;
}

static int keep(struct kept *k, const json_t *value)
{
	struct buf text = {0};
	int r = json_write_canonical(value, &text);
	if (r < 0) {
		buf_free(&text);
		return r;
	}
	buf_free(&k->text);
	k->text = text;
	k->since_ms = clock_now().boot_ms;
	return 0;
}

static void tell(struct hub *h, int room, const char *event, const struct kept *k)
{
	_cleanup_(buf_free) struct buf data = {0};
	if (buf_printf(&data, "{\"age_ms\":0,\"%s\":%s}", event, k->text.data) == 0)
		give_all(h, room, message_new(event, data.data));
}

void hub_fault(struct hub *h, const char *text)
{
	snprintf(h->fault, sizeof h->fault, "%s", text);
}

static int put_fault(const struct hub *h, json_t *value)
{
	json_t *faults = json_object_get(value, "faults");
	if (!h->fault[0])
		return 0;
	if (json_is_array(faults))
		return json_array_append_new(faults, json_string(h->fault)) < 0 ? -ENOMEM : 0;
	return json_object_set_new(value, "faults", json_pack("[s]", h->fault)) < 0 ? -ENOMEM : 0;
}

/* What may be done with what a page showed has changed, or which room it follows. */
static void look_again(struct hub *h)
{
	struct page *next;
	for (struct page *p = h->pages; p; p = next) {
		next = p->next;
		if (!may_see(p))
			evhttp_connection_free(evhttp_request_get_connection(p->req));
		else if (strcmp(p->typing, typing_of(p)) != 0)
			give_hello(p);
	}
}

int hub_view(struct hub *h, json_t *view)
{
	int64_t room = json_number(json_object_get(view, "room"), "number", 0);
	if (room < 1 || room > HUB_ROOM_MAX)
		return -EINVAL;
	int r = put_fault(h, view);
	if (r == 0)
		r = keep(&h->rooms[room], view);
	if (r < 0)
		return r;
	for (struct page *p = h->pages; p; p = p->next)
		if (p->room == HUB_ROOM_FIRST)
			p->room = (int)room;
	look_again(h);
	tell(h, (int)room, "view", &h->rooms[room]);
	return 0;
}

int hub_status(struct hub *h, json_t *status)
{
	int r = json_is_object(status) ? put_fault(h, status) : -EINVAL;
	if (r == 0)
		r = keep(&h->status, status);
	if (r == 0)
		tell(h, 0, "status", &h->status);
	return r;
}

int hub_let_in(struct hub *h, const json_t *let_in)
{
	int r = let_in_read(&h->let_in, let_in);
	look_again(h);
	return r;
}

static bool is_own_screen(const struct page *p, int room)
{
	return p->place == HUB_HERE && p->room == room && shown_own_room(&p->shown, &p->hub->let_in, room);
}

static bool has_taken_all(const struct page *p)
{
	struct evhttp_connection *c = evhttp_request_get_connection(p->req);
	return evbuffer_get_length(bufferevent_get_output(evhttp_connection_get_bufferevent(c))) == 0;
}

int hub_picture(struct hub *h, const json_t *picture)
{
	_cleanup_(buf_free) struct buf data = {0};
	int64_t room = json_number(picture, "room", 0);
	const bool over = !json_object_get(picture, "jpeg");
	int r = room < 1 || room > HUB_ROOM_MAX ? -EINVAL : json_write_canonical(picture, &data);
	struct message *m = r == 0 ? message_new("picture", data.data) : NULL;
	for (struct page *p = h->pages; m && p; p = p->next)
		if (is_own_screen(p, (int)room) && (over || has_taken_all(p)))
			give(p, m);
	let_go(m);
	return r;
}

void hub_each_open(const struct hub *h, void (*say)(void *context, const struct secret_hash *cookie),
                   void *context)
{
	for (const struct page *p = h->pages; p; p = p->next)
		for (int i = 0; pass_of(p) >= PASS_SEES && i < p->shown.n; i++)
			if (p->shown.cookies[i].room == p->room || p->shown.cookies[i].room == COOKIE_DESK)
				say(context, &p->shown.cookies[i].hash);
}

void hub_alive(struct hub *h, int64_t seq)
{
	char data[24];
	snprintf(data, sizeof data, "%lld", (long long)seq);
	give_all(h, 0, message_new("alive", data));
}
