/* What the parts of a slip share. Only slip*.c include this. */
#ifndef BANDTALLY_LABELS_SLIP_DRAW_H
#define BANDTALLY_LABELS_SLIP_DRAW_H

#include "base/json.h"
#include "labels/barcode.h"
#include "labels/flow.h"

struct slip {
	struct flow flow;
	const json_t *document;
	struct look look;     /* of the paper, with the margin that a frame needs */
	double frame_mm;      /* thickness of the frame of what shouts, 0 none */
	bool alone;           /* it has one page */
	int tight;            /* enum tight: how much gives way, so that it has one page */
	unsigned label_again; /* bit n: page n, from 2, has a space for the patient's label */
	struct barcode own, jws;
	bool has_jws;
};

/* Each with what stands before it. */
enum tight {
	TIGHT_NOT = 0,
	TIGHT_LARGE,  /* what is large is less so */
	TIGHT_TEXT,   /* letters are those of smaller paper */
	TIGHT_SEARCH, /* steps of the search that were done stand in one line, one behind the other */
};

/* Parts, in the order in which they are printed. Each draws nothing where the document has none. */
void slip_lines(
    struct slip *s); /* slip-head.c: the digits and their minutes, or what is missing and what to do */
void slip_place_again(struct slip *s);    /* the space for the patient's label alone, on a further page */
void slip_place(struct slip *s);          /* room, case and time beside the space for the patient's label */
void slip_items(struct slip *s);          /* slip-table.c */
void slip_blanks(struct slip *s);         /* slip-draw-rows.c: lines to write on */
void slip_shouted_digits(struct slip *s); /* the digits of a slip that shouts */
void slip_rows(struct slip *s);
void slip_foot(struct slip *s, struct error *e); /* slip-end.c: the search, the cautions and both codes */

/* The steps of the search (slip-draw-rows.c), at x in a column of that width; returns its height, draws nothing where `dry`. */
double slip_search_at(struct slip *s, double x, double width, bool dry);
void slip_search(struct slip *s); /* over the whole width, on as many pages as it takes */

#endif
