/* What the page of stores asks, on the daemon's side. It decides nothing itself: each thing is a request of the socket's
 * (run/socket.h: lines, stock, recall, used, shortfalls), with the rights of bandtally-stores that its cookie was given for, or one of
 *
 *   {"do":"step","step":{"card":"RECEIVE"}}        what would be scanned or typed at this bench (run/stock-steps.h); the
 *                                                  answer as a typed code's: verdict, said in the room's language
 *   {"do":"file","at":0,"part":"a2V5…"}            a part of a file (base64url), from the byte `at` on; {"size":n} so far
 *   {"do":"import","preview":true,"whole":false}   that file as the catalogue: the answer of "catalogue"
 *   {"do":"preview","line":…,"lot":…,"expiry":"2028-03-31","medium":…}   one label as it would be printed: {"pictures":
 *                                                  [{"png" base64,"dpi","width","height" in dots} of pack and of bag]}
 *
 * A file belongs to the page that sends it, by its cookie: what was shown in the preview is what is taken. There is one at a
 * time, of at most ASKED_FILE_MAX bytes; who begins another replaces it.
 */
#ifndef BANDTALLY_RUN_ASKED_H
#define BANDTALLY_RUN_ASKED_H

#include "base/json.h"

struct daemon;

#define ASKED_FILE_MAX (1u << 20)

void asked_at_page(struct daemon *d, const json_t *ask); /* board/feed.h */

#endif
