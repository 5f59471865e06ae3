/* The day, as a start finds it in the record (tell/day.h). */
#ifndef BANDTALLY_RUN_DAY_LOAD_H
#define BANDTALLY_RUN_DAY_LOAD_H

#include "record/store.h"
#include "tell/day.h"

/* Takes the last DAY_CASES cases up to `last_case` from the record. 0, or a negative errno with `e`. */
int day_load(struct day *d, struct record *r, int32_t last_case, struct error *e);

#endif
