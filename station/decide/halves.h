/* Two symbols of one pack. What a scanner reads of the first waits for the second, each scanner by itself.
 *
 * Half a pack is nothing that happened: it is neither stored nor kept over a restart, and whoever scans the other symbol
 * then is told that the first is missing. Pure: time comes with the call.
 */
#ifndef BANDTALLY_DECIDE_HALVES_H
#define BANDTALLY_DECIDE_HALVES_H

#include "code/code.h"
#include "count/event.h"

#define HALVES_MAX 32
#define HALF_WAIT_MS 30000 /* the second symbol comes within half a minute, or the first is forgotten */

struct half { /* the first symbol of a pack whose data come in two; scanner "": a free place */
	char scanner[33];
	int32_t room;
	struct code code;
	struct moment at;
};

struct halves { /* all zero: none waits */
	struct half list[HALVES_MAX];
};

enum halves_join {
	HALVES_WHOLE,  /* the code says all by itself */
	HALVES_JOINED, /* it was completed by the half that waited */
	HALVES_WAITS,  /* it waits itself now */
};

/* `code` is what `scanner` of `room` read at `now`, and the whole pack afterwards where it was joined. `*forgotten`: the half
 * that had to give way because too many wait, its scanner "" where none had: its room must be told. */
enum halves_join halves_take(struct halves *h, const char *scanner, int32_t room, struct code *code,
                             struct moment now, struct half *forgotten);

#endif
