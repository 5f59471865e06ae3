/* The rules that hold in every reachable state. Code and tests cite them by number (rule 4).
 *
 * RULES(X) gives number, name and the rule in one sentence; it is the only list. `rule_check` looks at a
 * state, not at how it came about, and says which rule it breaks; the walk over all reachable states calls it
 * after every step.
 */
#ifndef BANDTALLY_COUNT_RULE_H
#define BANDTALLY_COUNT_RULE_H

#include "count/station.h"

#define RULES(X)                                                                                             \
	X(1, ENDS_RECONCILED, "a case ends reconciled only when nothing at all is owed")                     \
	X(2, OFF_IS_NOT_ACCOUNTED, "off is not accounted for; reminders go on until it is")                  \
	X(3, FACTS_FIRST, "what is on a patient is recorded and timed at once; what was missing is a debt")  \
	X(4, ONE_SHEET, "an item is on one open sheet at most; a single-use item is used once")              \
	X(5, REFUSED_AT_COUNT_IN, "what is expired, quarantined, used or unknown is refused by name")        \
	X(6, SEPARATE_LINES, "tourniquet and forceps are separate lines; pairing only describes")            \
	X(7, ROLL_ON, "a tourniquet that rolls on is asked about when its pack is scanned")                  \
	X(8, AGREED_ALOUD, "a count is agreed by two people, one registered, one field, one circulating")    \
	X(9, COUNT_LOOK_DRESSING, "final count, then the look at the bare digit, then the dressing")         \
	X(10, CONDITION, "each tourniquet is declared intact, cut and complete, or with pieces missing")     \
	X(11, EVIDENCE,                                                                                      \
	  "an item is accounted for by its own mark or because it was shown; never by a wrapper")            \
	X(12, ON_DISK, "what the station acknowledged is on disk")                                           \
	X(13, NOTHING_EDITED, "nothing is edited or deleted; a correction is a further event")               \
	X(14, CLOCK, "durations come from a clock that no one can set, and nothing wraps")                   \
	X(15, WORDS, "no message says more than what was counted and seen")                                  \
	X(16, UNRESOLVED, "a case ends unresolved only by the surgeon, each search step answered")           \
	X(17, DISTRUST, "when the station cannot be trusted it says so and says: count by hand")             \
	X(18, ROOM, "cards carry their room; another room's card is announced and asked")                    \
	X(19, ONE_QUESTION, "one open question at a time; a badge answers only what is asked")               \
	X(20, NO_PATIENT, "no patient identifier is stored")                                                 \
	X(21, FOUND_AFTER, "a found item acts on the case that it came from")                                \
	X(22, ONE_READ, "one read is one answer; things alike are answered once, by their number")           \
	X(23, NO_DEAD_END, "each state asks for a deed for every truth, and the deeds end the case")         \
	X(24, INNOCENCE, "no case is held up, charged or printed for what belongs to another")               \
	X(25, PAPER, "a paper says what was recorded up to its own event, and nothing of today's settings")  \
	X(26, ALWAYS_READ, "what is stored can be read back and applied, by this version and every later one")

enum rule {
#define X(number, name, text) RULE_##name = number,
	RULES(X)
#undef X
};
/* Numbered from 1 without a gap. */
#define X(number, name, text) +1
enum { RULE_MAX = 0 RULES(X) };
#undef X

const char *rule_text(enum rule rule);

/* The rules that one open sheet breaks by its own content, as a set of bits (1 << rule); 0 when none. */
uint32_t rule_check(const struct sheet *sheet);

/* The rules that the open sheets break together: what stands on two of them (4, 24), and a question that waits
 * beside an open one (19). As bits, for the station. */
uint32_t rule_check_all(const struct station *st);

/* The same for the scans that are held for a room: asked about in one place, and never waiting unasked while
 * nothing else is asked (rules 17 and 19). */
uint32_t rule_check_stored(const struct station *st, int32_t room);

/* Why this sheet may not end reconciled: the first thing that is owed, as part of a sentence. Texts are the sheet's. */
struct say rule_1_owed(const struct sheet *sheet);

#endif
