/* What the parts of a slip share. Only slip*.c include this. */
#ifndef BANDTALLY_LABELS_SLIP_H
#define BANDTALLY_LABELS_SLIP_H

#include "base/json.h"
#include "labels/barcode.h"
#include "labels/flow.h"

struct slip {
	struct flow flow;
	const json_t *document;
	struct look look;   /* of the paper, with the margin that a frame needs */
	double frame_mm;    /* thickness of the frame, 0 none */
	const char *banner; /* reversed heading; NULL where the slip has a plain one */
	struct barcode own, jws;
	bool has_jws;
};

/* Slip-parts, in the order in which they are printed. Each draws nothing where the document has none. */
void slip_items(struct slip *s);
void slip_digits(struct slip *s);
void slip_counts(struct slip *s);
void slip_sign_out(struct slip *s);
void slip_search(struct slip *s);
void slip_debts(struct slip *s);
void slip_people(struct slip *s);
void slip_entries(struct slip *s);
void slip_gaps_and_notes(struct slip *s);
void slip_cautions(struct slip *s);
void slip_codes(struct slip *s, struct error *e);

#endif
