/* Events from a hospital's store to whoever keeps a copy of its stations' records (`bandtally audit collect`).
 *
 * On stdin, one line for each copy that there is, up to its end:
 *   {"v":1,"have":{"site":"BC","number":n,"incarnation":i,"seq":s}}
 * On stdout, for each station that the role may read:
 *   {"v":1,"station":{"site":"BC","number":n,"incarnation":i,"after":s,"to":t}}   what follows is behind event s: 0, a copy from
 *                                              the beginning, in the place of whatever there is; incarnation: its last one
 *   {"event":TEXT,"hash":HEX,"seq":s}          base/event-line.h
 *   {"v":1,"gone":{"after":s,"to":t,"hash":HEX}}   events that had left the record before the store heard of them
 * and at the end
 *   {"v":1,"all":{"stations":n}}               or   {"v":1,"state":{"code":word,"why":text}}: some of it is missing
 */
#ifndef BANDTALLY_FORWARD_COPY_H
#define BANDTALLY_FORWARD_COPY_H

#include "forward/hospital-store.h"

#define COPY_STATIONS 1000

/* 0, or a negative errno, which was said on `out`. */
int copy_run(const struct store_place *from, int in, int out);

#endif
