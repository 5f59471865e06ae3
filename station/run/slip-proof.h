/* The six digits that prove a slip's paper, and whoever tries to guess them.
 *
 * They come from the station's key, so that only what was printed can be read back. They stand in the event that queued the
 * copy; the key is asked again only about a slip that the record does not know. With a million to try, five in a minute at
 * one scanner are no way to find one.
 */
#ifndef BANDTALLY_RUN_SLIP_PROOF_H
#define BANDTALLY_RUN_SLIP_PROOF_H

#include "base/json.h"
#include "count/station.h"
#include "record/seal.h"

/* Of one copy of a slip of this station: 1 to 999999. */
int32_t slip_proof(const struct seal *s, const char *site, int station, int32_t slip, int copy);

#define GUESSES_MAX 20 /* scanners; where more guess, the one that has been quiet longest is forgotten */
#define GUESSES_IN_A_MINUTE 5

struct guesses {
	struct guesser {
		char scanner[33];                         /* "" this place is free */
		struct moment wrong[GUESSES_IN_A_MINUTE]; /* the last ones, oldest first */
		int n;
		struct moment silenced; /* boot 0: it is answered */
	} list[GUESSES_MAX];
};

/* A code that is not ours was read. One too many is the fifth in a minute: from now on it is not answered. */
enum guessed { GUESS_NOTED = 0, GUESS_ONE_TOO_MANY };
enum guessed guesses_note(struct guesses *g, const char *scanner, struct moment now);

/* 1 while slips are not answered at this scanner. */
int guesses_silent(const struct guesses *g, const char *scanner, struct moment now);

/* One sentence for each of them, for the board; how many there are. `list` may be NULL. */
int guesses_words(const struct guesses *g, const struct language *language, struct moment now, json_t *list);

#endif
