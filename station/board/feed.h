/* The two pipes to the daemon, JSON lines.
 *
 * daemon → board:  {"v":1,"seq":12,"view":{…}}      one room as tell/view.h states it, whole, at each change
 *                  {"v":1,"seq":13,"status":{…}}    the station, likewise
 *                  {"v":1,"seq":14,"alive":true}    once a second
 *                  {"v":1,"seq":15,"let_in":{"tickets":[hash, …],"cookies":[{"hash":…,"room":1,"types":true}, …]}}
 *                                                   which work; whole, at each change; a cookie with "reports":true opens
 *                                                   the auditor's pages
 *                  {"v":1,"seq":16,"entry":{"id":"t1","room":1,"page":"stores","cookie":"…"}}   for a ticket; without a
 *                                                   cookie: it is none; without a page: the room's board; the page "audit": the auditor's
 *                  {"v":1,"seq":17,"reply":{"id":"t2","verdict":…,"said":…}}    to a typed code; or "refused":
 *                                                   "closed", its cookie does not work, or "often"
 *                  {"v":1,"seq":17,"answer":{"id":"t3","answer":{…}}}   to what a page asked; or "refused", as above
 *                  {"v":1,"seq":17,"report":{"page":"2026-10","part":"…"}}   the auditor's pages (reports.h)
 *                  {"v":1,"seq":17,"picture":{"room":1,"jpeg":…,"codes":[…]}}   what a camera sees (hub.h); without a
 *                  jpeg: it is over
 *                  {"v":1,"seq":18,"tls":{"certificate":…,"key":…,"clients":…,"revoked":…}}   the texts of the board
 *                  elsewhere's files, read again; or {"fault":"…"}, why they cannot be
 * board → daemon:  {"v":1,"listening":{"port":8417}}   once, first; "elsewhere": its port, where that is
 * served
 *                  {"v":1,"amiss":"…"}              what is wrong with the board elsewhere; "": nothing any more
 *                  {"v":1,"ticket":{"id":"t1","ticket":"…"}}
 *                  {"v":1,"keyed":{"id":"t2","room":1,"code":"…","cookie":"…"}}
 *                  {"v":1,"ask":{"id":"t3","room":9,"ask":{…},"cookie":"…"}}    of the stores' page (run/asked.h)
 *                  {"v":1,"open":hash}              a page is open with this cookie; at once, and now and then
 *
 * A line that is wrong is logged and passed over; the next one counts. The end of the input ends the board.
 */
#ifndef BANDTALLY_BOARD_FEED_H
#define BANDTALLY_BOARD_FEED_H

#include "board/hub.h"
#include "board/reports.h"
#include "board/waiting.h"

struct event_base;
struct feed;

#define FEED_LINE_MAX ((size_t)512 * 1024) /* bytes of one line; a longer one is passed over whole */
#define FEED_CODE_MAX 128                  /* bytes of a typed code */

struct feed_to { /* whom what comes is for; all borrowed */
	struct hub *hub;
	struct waiting *waiting;
	struct reports *reports;
};

/* Reads `in` and writes `out`, both already open; `out` is made non-blocking. NULL: no memory, or `in` cannot
 * be waited for. */
struct feed *feed_new(struct event_base *base, int in, int out, const struct feed_to *to);
void feed_free(struct feed *feed);
/* Who takes what a line has under "tls"; without it such a line is wrong. */
void feed_on_tls(struct feed *feed, void (*fn)(void *context, const json_t *tls), void *context);

/* 0, -EINVAL where it is no canonical JSON text, -EAGAIN where the daemon does not read. */
int feed_listening(struct feed *feed, int port, int elsewhere); /* `elsewhere` 0 or less: not served */
/* What is wrong with the board elsewhere, "" nothing any more. */
int feed_amiss(struct feed *feed, const char *text);
/* A name under which the daemon's answer to the next line will come. */
void feed_id(struct feed *feed, char id[WAITING_ID_BYTES]);
int feed_ticket(struct feed *feed, const char *id, const char *ticket);
int feed_keyed(struct feed *feed, const char *id, int room, const char *code, const char *cookie);
int feed_ask(struct feed *feed, const char *id, int room, const json_t *ask, const char *cookie);
int feed_open(struct feed *feed, const struct secret_hash *cookie);

#endif
