/* An entry of the hospital's lists (schema.sql says of which kinds there are), as an event of this station. */
#ifndef BANDTALLY_RUN_HOSPITAL_LISTS_H
#define BANDTALLY_RUN_HOSPITAL_LISTS_H

#include "base/json.h"
#include "run/core.h"

/* Takes it over: stores what it changes here, and tells the rooms what they must know. 0 also where nothing is changed by it;
 * -EINVAL where it cannot be followed, with `e`; another negative errno where it could not be stored: it comes again. */
int hospital_take_entry(struct core *c, const json_t *entry, struct error *e);

#endif
