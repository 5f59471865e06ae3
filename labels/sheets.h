/* One function a kind of document. Each draws a document that has passed paper_check() onto a fresh canvas
 * and returns 0, or -EINVAL with one sentence where it cannot be drawn whole. */
#ifndef BANDTALLY_LABELS_SHEETS_H
#define BANDTALLY_LABELS_SHEETS_H

#include "base/json.h"
#include "labels/canvas.h"

int slip_draw(struct canvas *c, const json_t *document, struct error *e); /* slip and discrepancy */
int pack_labels_draw(struct canvas *c, const json_t *document, struct error *e);
int badges_draw(struct canvas *c, const json_t *document, struct error *e);
int digit_cards_draw(struct canvas *c, const json_t *document, struct error *e);
int cards_draw(struct canvas *c, const json_t *document, struct error *e);
int scanner_check_draw(struct canvas *c, const json_t *document, struct error *e);

#define A4_WIDTH_MM 210.0
#define A4_HEIGHT_MM 297.0

#endif
