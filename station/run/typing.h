/* Typing at the page, on the daemon's side: tickets for those who ask at the socket, and what the board hands in.
 *
 * The board is told which tickets and cookies work, as hashes, so that it can turn away by itself what comes without one,
 * and needs no word of the daemon for it. It decides nothing: each ticket and each typed code comes here with what was
 * shown, and is looked at again.
 */
#ifndef BANDTALLY_RUN_TYPING_H
#define BANDTALLY_RUN_TYPING_H

#include "base/json.h"
#include "run/ticket.h"

struct daemon;

#define ADDRESS_MAX 200

void typing_start(struct daemon *d); /* reads the cookies of this boot */

/* An address with a ticket for a page of `room` (ROOM_DESK: of the desk), on this machine or `elsewhere`. 0, or a negative
 * errno with `e` filled: typing is switched off, there is no such room, or no such board. */
int typing_address(struct daemon *d, int32_t room, enum ticket_group group, int elsewhere,
                   char out[ADDRESS_MAX], struct error *e);

/* From the board (board/feed.h): a ticket to be changed, a typed code, the hash of a cookie with which a page is open. */
void typing_ticket(struct daemon *d, const json_t *ticket);
void typing_keyed(struct daemon *d, const json_t *keyed);
void typing_open(struct daemon *d, const json_t *open);

/* Whether the page that shows this cookie may enter something in the room now. */
int typing_allows(const struct daemon *d, const char *cookie, int32_t room);

void typing_tell(struct daemon *d); /* which tickets and cookies work, to a board that has just started */
void typing_look(struct daemon *d); /* each second: forgets what is over */

#endif
