/* What people see behind each scan of a script, as the daemon would tell it to the board. */
#ifndef BANDTALLY_TESTS_BOARDS_H
#define BANDTALLY_TESTS_BOARDS_H

#include "base/json.h"

struct play;

/* The room's view (tell/view.h) with the last reply, in the language of the play; a new reference. */
json_t *board_shown(const struct play *p);

#endif
