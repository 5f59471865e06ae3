/* The document of a slip: what the record says of one case, in the form that labels/paper.h states. */
#ifndef BANDTALLY_RUN_SLIP_H
#define BANDTALLY_RUN_SLIP_H

#include "run/core.h"

/* Makes the document of slip number `slip` of kind `kind`, copy `copy`. A new reference, or NULL with `e`. */
json_t *slip_document(struct core *c, int32_t case_no, int32_t slip, enum slip_kind kind, int copy,
                      struct error *e);

#endif
