/* What the board knows, in memory only, and who looks at it.
 *
 * It keeps the last view of each room and the last status as the daemon sent them, and hands each change to
 * every page that follows that room. One message is one block of bytes that all pages share. A page for which
 * too much waits gets nothing more until it has caught up, and then what holds at that time; one that stays
 * behind is dropped, so that it costs nobody else anything.
 */
#ifndef BANDTALLY_BOARD_HUB_H
#define BANDTALLY_BOARD_HUB_H

#include <stdbool.h>
#include <stdint.h>

#include "base/json.h"
#include "board/cookies.h"

struct evhttp_request;
struct hub;

#define HUB_PAGES_MAX 128                   /* pages on this machine that may follow at one time */
#define HUB_PAGES_ELSEWHERE_MAX 32          /* and beside them pages elsewhere */
#define HUB_UNSENT_MAX ((size_t)256 * 1024) /* bytes that may wait for one page */
#define HUB_ROOM_MAX 99                     /* rooms are numbered 1 to 99, as on their cards */
#define HUB_ROOM_EACH COOKIE_DESK           /* a page that follows every room (the desk) */
#define HUB_ROOM_FIRST (-1) /* a page that was asked for without a room: the first that is known */

enum hub_place { HUB_HERE, HUB_ELSEWHERE, HUB_PLACES }; /* where a page is looked at */

struct hub_rules {
	bool typing[HUB_PLACES]; /* codes may be typed there, with a ticket */
	bool closed[HUB_PLACES]; /* nothing is seen there without one either */
};

struct hub *hub_new(const struct hub_rules *rules); /* NULL: no memory */
void hub_free(struct hub *hub); /* NULL is fine; the pages must be gone (evhttp_free() first) */

/* Begins an event stream as the answer to `req`, which then belongs to the hub. It says first whether codes may be typed
 * with what is shown, and again when that changes: hello {"typing":"yes"}, "no" where no cookie is shown for its room,
 * "over" where one is that does not work, "off" where nobody may type. 0, -EACCES where nothing is to be seen with what
 * is shown, -EBUSY where as many pages of that place follow as may, or -ENOMEM; then the request is still the caller's. */
int hub_follow(struct hub *hub, struct evhttp_request *req, int room, enum hub_place place,
               const struct shown *shown);

/* What is wrong with the board itself: it stands among the faults of every view and status that comes. */
void hub_fault(struct hub *hub, const char *text);

/* From the daemon. Each is borrowed; views and statuses get the board's own fault. 0, -EINVAL where a field
 * is wrong, -ENOMEM. */
int hub_view(struct hub *hub, json_t *view);
int hub_status(struct hub *hub, json_t *status);
int hub_let_in(struct hub *hub, const json_t *let_in); /* cookies.h */
/* A picture of a room's camera, which sees patients: it goes to pages of this machine that follow that room and were opened
 * with a ticket of it, to no other, and is not kept for one that comes later. A page that has not taken what came before
 * does without. */
int hub_picture(struct hub *hub, const json_t *picture);
void hub_alive(struct hub *hub, int64_t seq);

bool hub_typing(const struct hub *hub, enum hub_place place);
const struct let_in *hub_lets_in(const struct hub *hub);
/* Each cookie with which a page is open now, once or more. */
void hub_each_open(const struct hub *hub, void (*say)(void *context, const struct secret_hash *cookie),
                   void *context);
bool hub_knows_room(const struct hub *hub, int room);

#endif
