/* What a camera sees, on the station's own screen, for WIRE_SHOW_MS after the card SHOW CAMERA of its room.
 *
 * A camera sees patients. So a picture goes through this process unread and is held nowhere: from the driver that was asked
 * to the board's program, which gives it to pages of this machine that were opened with a ticket of that room (board/hub.h).
 * Where the board's program has not taken what came before, the picture is left out. The card is no event: the record, which
 * keeps what was counted, has nothing of it.
 */
#ifndef BANDTALLY_RUN_SHOWN_H
#define BANDTALLY_RUN_SHOWN_H

#include "base/wire.h"
#include "run/daemon.h"

/* True where it is that card, of the room for which the scanner works: then it is done and answered. */
bool shown_card(struct driver_child *dc, const char *data, size_t size);

/* A picture of this camera; whatever nobody asked for is passed over. */
void shown_picture(struct driver_child *dc, const struct wire_line *picture);

/* The camera's program has ended. */
void shown_over(struct driver_child *dc);

#endif
