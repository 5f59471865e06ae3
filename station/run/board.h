/* The words for bandtally-board, and whether it could serve what they ask for. */
#ifndef BANDTALLY_RUN_BOARD_H
#define BANDTALLY_RUN_BOARD_H

#include "run/settings.h"

/* Lets bandtally-board, beside this program, read the certificate, key and clients of [board elsewhere]; it
 * says on stderr what is wrong. 0 where nothing is, or where none is to be started; -EINVAL where something
 * is; another negative errno where it cannot be asked. */
int board_check(const struct settings *settings);

#endif
