/* An event in the trade's words, for people who compare what was decided with what it ought to be.
 *
 *   item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet lot T26 expiry 20280331, n 1
 *   count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2
 *   undone, case 1, ref item-on 2 before
 *
 * Each field that the event's kind has is there, by a name where it has one, unless it is 0 or "". Room and
 * time are there where they are not those of the scan that caused the event; `first`, `late` and `keyed` where
 * the flag is set.
 */
#ifndef BANDTALLY_TESTS_EVENT_WORDS_H
#define BANDTALLY_TESTS_EVENT_WORDS_H

#include "base/buf.h"
#include "decide/decide.h"

struct event_context {
	const struct staff *staff; /* names of badges */
	struct moment now;         /* of the scan */
	int32_t room;              /* of the scan */
	/* The kind of the event with this number, for ref; NULL: the number is told as it is. */
	const char *(*kind_of)(const void *record, int64_t seq);
	const void *record;
};

void event_words(const struct event *e, const struct event_context *c, struct buf *out);

#endif
