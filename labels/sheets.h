/* The kinds of document, one const struct each, exported by the file that draws it. A further kind is a file, its struct,
 * and its name in PAPERS below. */
#ifndef BANDTALLY_LABELS_SHEETS_H
#define BANDTALLY_LABELS_SHEETS_H

#include "base/json.h"
#include "labels/canvas.h"
#include "labels/schema.h"

struct paper_kind {
	const char *kind; /* what the document's field 'kind' says */
	const char *what; /* what paper it is, in one sentence of the contract */
	const struct field *fields;
	/* What one field says of another: 0, or -EINVAL with one sentence. NULL: nothing. */
	int (*check)(const json_t *document, struct error *e);
	/* Draws a document that has passed both onto a fresh canvas: 0, or -EINVAL with one sentence where it cannot be
	 * drawn whole; -EMSGSIZE where a label is too small for its symbol. */
	int (*draw)(struct canvas *c, const json_t *document, struct error *e);
	int dpi; /* of its printer, where the document does not say; a roll's is 203 */
};

#define PAPERS(X)                                                                                            \
	X(slip)                                                                                              \
	X(discrepancy)                                                                                       \
	X(pack_labels)                                                                                       \
	X(practice)                                                                                          \
	X(badges)                                                                                            \
	X(digit_cards) X(cards) X(scanner_check) X(test_page) X(count_sheet) X(briefing) X(leaflet) X(report)
#define X(name) extern const struct paper_kind paper_##name;
PAPERS(X)
#undef X

int slip_draw(struct canvas *c, const json_t *document, struct error *e); /* slip and discrepancy */

/* What a document of each kind has. */
/* clang-format off */
#define ALL_KINDS ALL_OF_FORM(1)
#define ALL_OF_FORM(v) \
	INT("v", REQUIRED, v, v, "the form of this table"), \
	TEXT("kind", REQUIRED, 1, 20, "the kind, as it stands at the head of this table"), \
	FIELD("time", TIME, REQUIRED, .says = "when the document was written (RFC 3339): the creation date of the PDF, so that " \
	      "the same document is the same file"), \
	TEXT("site", REQUIRED, 1, 60, "hospital, unit"), \
	TEXT("language", OPTIONAL, 2, 11, "of the paper's own words, as station.ini has it; left out, or not installed: English"), \
	INT("dpi", OPTIONAL, 203, 600, "203, 300 or 600: dots of the printer, for whole-dot bars; left out: 203 for roll80 and " \
	    "pack-labels, else 300")
/* clang-format on */

#define A4_WIDTH_MM 210.0
#define A4_HEIGHT_MM 297.0

#endif
