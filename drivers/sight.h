/* Whether a camera sees at all: dark, covered and frozen told apart, each with what to do. Pure.
 *
 * A code that is held before a blind camera is not read, and nothing else would say why. What counts as which is our
 * judgement, tried on made frames; no source gives thresholds:
 *
 *   dark     the mean brightness is below SIGHT_DARK_MEAN, and there is grain or some shape in it: a sensor that tries
 *   covered  the whole frame is one even brightness (its cells differ by less than SIGHT_EVEN_RANGE). Lit surfaces differ by
 *            more, for light falls off to the sides; a lens with light leaking in may look like a scene and is not noticed
 *   frozen   a frame with something in it, bit for bit the same for SIGHT_FROZEN_MS: a sensor that works has grain
 *
 * Dark and covered are told once they have lasted SIGHT_BLIND_MS, so that a hand before the lens is none; that it sees again,
 * after SIGHT_AGAIN_MS. No frame at all, and a camera that was unplugged, are the caller's to tell.
 */
#ifndef BANDTALLY_DRIVERS_SIGHT_H
#define BANDTALLY_DRIVERS_SIGHT_H

#include <stdbool.h>
#include <stdint.h>

#include "drivers/plane.h"

#define SIGHT_DARK_MEAN 24
#define SIGHT_DARK_GRAIN 2
#define SIGHT_EVEN_RANGE 6
#define SIGHT_BLIND_MS 5000
#define SIGHT_FROZEN_MS 10000
#define SIGHT_AGAIN_MS 500

enum sees {
	SEES_WELL,
	SEES_DARK,
	SEES_COVERED,
	SEES_FROZEN,
};

struct sight {
	enum sees told;   /* what holds, as it was last told */
	enum sees seems;  /* of the last frames */
	int64_t seems_ms; /* since when */
	uint64_t print;   /* of the last frame */
	int64_t print_ms; /* when the first frame came that was the same */
	bool begun;       /* a frame was seen */
};

/* What one frame is: SEES_WELL, SEES_DARK or SEES_COVERED. */
enum sees sight_of(const struct plane *frame);

/* Takes one frame at `now_ms`, which never goes back. True where `told` has changed: then it is to be told. An all-zero
 * struct sight has seen nothing. */
bool sight_frame(struct sight *s, const struct plane *frame, int64_t now_ms);

/* The word of a fault line for it, and its sentence. Of SEES_WELL "over" (base/wire.h). */
const char *sight_word(enum sees sees);
const char *sight_text(enum sees sees);

#endif
