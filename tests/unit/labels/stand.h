/* Whether all that was drawn stands on its page, and nothing on anything else. */
#ifndef BANDTALLY_TESTS_LABELS_STAND_H
#define BANDTALLY_TESTS_LABELS_STAND_H

#include "labels/canvas.h"

#define STAND_MAX 400

/* Clear of the edge by `edge_mm`. `language`: of the paper. 0, or -EINVAL and in `why` one sentence. */
int stand_check(const struct trace *t, double edge_mm, const struct language *language, char why[STAND_MAX]);

#endif
