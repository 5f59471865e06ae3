/* Showing people what the camera sees, for a while, when the station asks (base/wire.h, "picture").
 *
 * The station asks by a signal, SIGUSR1, and takes that back by SIGUSR2: so a driver needs no input, and what asks cannot say
 * anything else. A picture is made only while somebody asked for it, and ends by itself after WIRE_SHOW_MS, whatever becomes of
 * the station. It is sent only where the pipe has room for it and for scans besides; otherwise it is left out.
 */
#ifndef BANDTALLY_DRIVERS_SHOW_H
#define BANDTALLY_DRIVERS_SHOW_H

#include "drivers/plane.h"
#include "drivers/steady.h"
#include "drivers/wire-writer.h"

#define SHOW_EVERY_MS 200

struct show {
	int64_t until_ms; /* 0: nobody asked */
	int64_t last_ms;  /* when the last picture was made */
	struct plane small;
};

/* From now on the signals are heard. 0 or a negative errno. */
int show_listen(void);

/* Takes one frame at `now_ms`, and what was read in it. 0, or a negative errno: the line could not be sent. */
int show_frame(struct show *s, struct wire *out, const struct plane *frame, const struct steady *steady,
               int64_t now_ms);

void show_free(struct show *s);

#endif
