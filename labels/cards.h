/* A page of cards, which the cards of a room and the practice set are printed on. */
#ifndef BANDTALLY_LABELS_CARDS_H
#define BANDTALLY_LABELS_CARDS_H

#include "base/error.h"
#include "base/json.h"
#include "labels/canvas.h"

/* Two columns of at most six, as the tables of both kinds have them. 0 or a negative errno with one sentence. */
int cards_page(struct canvas *c, const json_t *document, const json_t *page, struct error *e);

#endif
