/* What the room of telling is asked for by the living station: slips, views and the day, made from the core's
 * state, record, settings and clock. Only here do those four and station/tell meet. */
#ifndef BANDTALLY_RUN_TELLER_H
#define BANDTALLY_RUN_TELLER_H

#include "base/json.h"
#include "run/core.h"

/* The signed document of copy `copy` of slip `slip`, of the kind `kind`: what the record said when it was first queued. A
 * new reference, or NULL with `e`. */
/* The language of a slip, which each copy keeps. 0 or negative errno with `e` filled. */
int teller_language(const struct core *c, int32_t case_no, int32_t slip, char *out, size_t size,
                    struct error *e);

json_t *teller_slip(const struct core *c, int32_t case_no, int32_t slip, enum slip_kind kind, int copy,
                    struct error *e);

/* A case as the record stands now, told as on a slip but for what names or seals one. A new reference, or NULL with `e`. */
json_t *teller_case(const struct core *c, int32_t case_no, struct error *e);

/* As tell/view.h states them. New references; NULL where there is no such room. */
json_t *teller_room(const struct core *c, int32_t room); /* in English */
json_t *teller_room_in(const struct core *c, int32_t room, const struct language *language);
json_t *teller_status(const struct core *c, const struct language *language);

/* What is wrong besides, for every board and the status: the settings, and cases in rooms that are in them no more. */
void teller_faults(const struct core *c, const struct language *language, json_t *list);

#endif
