/* What the board is shown: lines to bandtally-board, whether it runs (run/board-program.h) or not. */
#ifndef BANDTALLY_RUN_BOARD_H
#define BANDTALLY_RUN_BOARD_H

#include "run/daemon.h"

void board_show(struct daemon *d); /* sends what changed */
void board_alive(struct daemon *d);
void board_renew(struct daemon *d); /* hands it the files of the board elsewhere, read again */
void board_say(struct daemon *d, const char *key, json_t *value); /* one line; `value` is taken */
/* Adds to `list` what keeps labels that this bench numbered from their paper; room 0: of all benches. */
void board_slip_faults(const struct daemon *d, int32_t room, const struct language *language, json_t *list);
void board_label_faults(const struct daemon *d, int32_t room, const struct language *language, json_t *list);
/* The answer to what a page asked under `id` (run/asked.h): why it was not looked at, or `told`, which is taken. */
void board_answer(struct daemon *d, const char *id, const char *refused, json_t *told);

#endif
