/* bandtally-board: its words, its life, and what it says. */
#ifndef BANDTALLY_RUN_BOARD_PROGRAM_H
#define BANDTALLY_RUN_BOARD_PROGRAM_H

#include "run/daemon.h"

int board_start(struct daemon *d);
void board_stop(struct daemon *d);

/* Lets bandtally-board, beside this program, read the certificate, key and clients of [board elsewhere]; it
 * says on stderr what is wrong. 0 where nothing is, or where none is to be started; -EINVAL where something
 * is; another negative errno where it cannot be asked. */
int board_check(const struct settings *settings);

#endif
