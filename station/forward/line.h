/* What the station and bandtally-forward say to each other, one JSON object a line.
 *
 * The station says
 *   {"v":1,"station":{"number":n,"incarnation":i,"seq":s,"rooms":text,"lists":v,"kept":s,"hash":hex,
 *                     "server":id,"timeline":t}}
 *        who it is and how far its record has come; up to which version it has the hospital's lists; the last event that it was
 *        told is kept, and where (0 and "" none). First, and whenever its incarnation is another.
 *   {"event":TEXT,"hash":HEX,"seq":s}   one event (base/event-line.h). In order.
 *   {"gone":{"after":s,"to":t,"hash":HEX}}   in the place of events that left its record for an archive: HEX is of t, and nothing
 *                                further comes until it is wanted
 *   {"hashes":[[seq,hex],…]}     of the events that were asked for, at most HASHES_MAX
 *   {"took":v}                   it has taken over the lists up to this version
 *
 * bandtally-forward says
 *   {"want":{"after":s,"to":t}}  events from s + 1 up to t, as soon as there are such; takes the place of what was wanted before
 *   {"hashes":[seq,…]}
 *   {"kept":{"seq":s,"hash":hex,"server":id,"timeline":t}}   the append function has answered that this event is kept
 *   {"state":{"code":word,"why":text}}   what is wrong, by its name in words/forward-words.h; "" nothing
 *   {"fork":{"seq":s,"hash":hex}}        the store has another event under this number
 *   {"list":{"version":v,"origin":text,"kind":word,"body":object}}   the next entry of the lists
 *   {"lists":{"version":v}}              that was the last one; v is how far the store's lists have come
 */
#ifndef BANDTALLY_FORWARD_LINE_H
#define BANDTALLY_FORWARD_LINE_H

#include "base/event-line.h"

#define HASHES_MAX 30

#endif
