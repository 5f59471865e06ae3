/* What a browser shows to be let in, and what of it the daemon lets in.
 *
 * A cookie is called bandtally-PORT-ROOM (the desk is room 0), so that one browser can have several, of several rooms and
 * boards. The daemon tells the hashes of the tickets and cookies that work (run/ticket.h); nothing here is secret, and
 * nothing is kept of what a browser showed but hashes.
 */
#ifndef BANDTALLY_BOARD_COOKIES_H
#define BANDTALLY_BOARD_COOKIES_H

#include "base/json.h"
#include "base/secret.h"

#define COOKIES_LET_IN_MAX 128
#define COOKIES_SHOWN_MAX 16
#define COOKIE_DESK 0

struct let_in {
	int n_tickets, n_cookies;
	struct secret_hash tickets[COOKIES_LET_IN_MAX];
	struct {
		struct secret_hash hash;
		int room;
		bool types, reports; /* opens the auditor's pages */
	} cookies[COOKIES_LET_IN_MAX];
};

struct shown { /* by one browser */
	int n;
	struct {
		struct secret_hash hash;
		int room;
	} cookies[COOKIES_SHOWN_MAX];
};

/* Takes {"tickets":[hash, …],"cookies":[{"hash":…,"room":1,"types":true,"reports":false}, …]}. 0, or -EINVAL: then nobody is let in. */
int let_in_read(struct let_in *l, const json_t *value);

/* The cookies of a board at `port` in the header of that name, which may be NULL. */
void shown_read(struct shown *s, const char *header, int port);
/* The text of one that is shown for the room and let in to type there; false where there is none. */
bool shown_typing(const struct let_in *l, const char *header, int port, int room,
                  char text[SECRET_LETTERS + 1]);

/* Whether one that is shown opens the auditor's pages. */
bool shown_reports(const struct shown *s, const struct let_in *l);

enum pass { PASS_NONE, PASS_OVER, PASS_SEES, PASS_TYPES };
/* What those that are shown let somebody do in `room` (COOKIE_DESK: in all). PASS_OVER: one for it is shown, and does not
 * work any more. One of the desk lets see each room. */
enum pass shown_pass(const struct shown *s, const struct let_in *l, int room);

/* Whether one is shown that was given for this very room, and works. */
bool shown_own_room(const struct shown *s, const struct let_in *l, int room);

bool let_in_ticket(const struct let_in *l, const char *ticket);

#endif
