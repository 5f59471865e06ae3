/* The charts of a report, and a label, alone: as pictures for a screen or another document. */
#ifndef BANDTALLY_LABELS_PICTURES_H
#define BANDTALLY_LABELS_PICTURES_H

#include "base/buf.h"
#include "base/error.h"
#include "base/json.h"

struct languages;

/* Each chart of a report as a picture (SVG), which `each` takes with its name, of a-z and '-'. `each` gives 0 to go on. 0;
 * negative errno and one sentence: -EINVAL for a document that is no report, -ENOMEM, -EIO when drawing failed. */
typedef int (*pictures_fn)(void *context, const char *name, const struct buf *svg);
int pictures_of(const struct languages *languages, const json_t *document, pictures_fn each, void *context,
                struct error *e);

/* The two labels of a document's first item, as its printer would have them: [{png base64, dpi, width, height in dots}], the
 * pack's first. A new reference; NULL and one sentence. */
json_t *pictures_of_label(const struct languages *languages, const json_t *document, struct error *e);

#endif
