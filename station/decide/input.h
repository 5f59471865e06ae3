/* From what a barcode says to what was scanned here: own codes by their kind, everything else by the
 * catalogue.
 *
 * Pure. What only the record knows is passed in (a stores' batch) or filled in by the caller afterwards
 * (used_in, used_back, slip_case, slip_room).
 */
#ifndef BANDTALLY_DECIDE_INPUT_H
#define BANDTALLY_DECIDE_INPUT_H

#include "code/code.h"
#include "decide/decide.h"

/* Fills act and what belongs to it; room, time, flags and scanner are the caller's. `batch` is the one that
 * holds code->own.number for a stores' item label, NULL where the record has none, and is not looked at
 * otherwise. */
void input_from_code(struct input *in, const struct station *st, const struct code *code,
                     const struct batch *batch);

/* A code that code_read() refused. */
void input_from_fault(struct input *in, const struct code_fault *fault);

/* Whether two symbols may be waited for: this code is one half of a pack's data. */
int code_is_half(const struct code *code);

#endif
