/* Takes away from the board what serving pages does not need.
 *
 * To be called once it listens. Afterwards it can take connections on the socket that listens, read and write
 * what is open, wait, tell the time, use memory and end. No file can be opened, no other socket made or
 * connected, no program started, no memory made executable. Forbidden calls fail with EPERM.
 *
 * base/confine.h says how.
 */
#ifndef BANDTALLY_BOARD_BOARD_CONFINED_H
#define BANDTALLY_BOARD_BOARD_CONFINED_H

#include "base/error.h"

/* 0, or a negative errno with `e` filled: then the process must not go on. */
int confine_board(struct error *e);

#endif
