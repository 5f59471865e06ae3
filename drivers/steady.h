/* From codes in frames to presentations: one code that is held before the camera is one scan. Pure.
 *
 * A code is told once it was seen in `frames` frames while it stood still, and not again while it stays in
 * view; after it was away for `away_ms`, and for two frames, it is a new presentation. Two copies of one code
 * that are in view together are one presentation.
 *
 * Of two cards of ours (answer, digit, badge) in view together nobody knows which is meant: neither is told until one of them
 * was out of view for a moment. Packs and instruments may lie side by side.
 */
#ifndef BANDTALLY_DRIVERS_STEADY_H
#define BANDTALLY_DRIVERS_STEADY_H

#include <stdbool.h>
#include <stdint.h>

#include "drivers/witness.h"

#define STEADY_CODES_MAX 16

struct steady_rules {
	int frames;      /* 1 or more */
	int64_t away_ms; /* after this long out of view it is presented anew */
	int still_px;    /* its middle may move so far from frame to frame, sideways or down */
};

struct steady {
	struct presentation {
		struct reading code; /* as it was last seen */
		int frames;          /* in which it stood still */
		int64_t seen_ms;     /* when it was last seen */
		int misses;          /* frames since */
		bool told;
	} item[STEADY_CODES_MAX];
	size_t count;
	bool two_cards; /* in the last frame: people are to be asked for one */
};

/* Takes the codes of one frame at `now_ms`, which never goes back. Writes to `tell` those that count as
 * scanned now: borrowed from `codes`. An all-zero struct steady has seen nothing. */
void steady_frame(struct steady *s, const struct steady_rules *rules, const struct codes *codes,
                  int64_t now_ms, struct codes *tell);

#endif
