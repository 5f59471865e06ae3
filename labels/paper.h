/* Every document that can be put on paper: whether it is one, and the function that makes the PDF.
 *
 * A document is one JSON object. It says what happened in words that are ready for people wherever they
 * depend on the count; layout, headings, cautions and intended use are this folder's. Nothing here knows what
 * a case is, looks at a clock or keeps anything: the same document gives the same bytes.
 *
 * Its fields are those of the table of its kind, which stands beside the function that draws it (sheets.h) and is printed
 * by `bandtally-print --fields [KIND]`:
 *   text A-B    UTF-8, A to B characters, each of which a name may hold (base/name.h)
 *   int A-B     whole number in that range         bool  true or false        x or y  exactly one of the words
 *   [x] A-B     array of A to B of x               object, [object]: the fields below it, further in
 *   code        text of an own code, as station/code/own-codes.h writes it, whole and of the kind that belongs there
 *   time        as in "2026-11-25T10:41:07+00:00"
 *   *           required. Every other field may be left out; null is not the same as left out and is refused.
 * A field that is not listed, of the wrong type, too long or out of range: the document is refused, and one
 * sentence says which field and why. Nothing is ever cut off or left out to make it fit: there are more pages.
 *
 * scanner-check: between its two codes stand, in this order, the eight samples of PAPER_SAMPLES below, one under the
 * other. The driver knows what each says, so it learns: layout from LETTERS, DIGITS, SIGNS and LOWER; suffix and prefix
 * from every one; AIM identifiers from GS1_128 (]C1), EAN13 (]E0) and GS1_DATAMATRIX (]d2), or their absence; how GS is
 * sent from GS1_128 and GS1_DATAMATRIX. A scanner that reads no two-dimensional code skips the last two: the end code
 * stands before them and again after them.
 */
#ifndef BANDTALLY_LABELS_PAPER_H
#define BANDTALLY_LABELS_PAPER_H

#include "base/buf.h"
#include "base/error.h"
#include "base/json.h"
#include "words/languages.h"

/* What scanner-check prints between its start and end codes: X(NAME, symbol, text that is sent).
 * In the two GS1 samples \x1d is the separator as the scanner means it; a leading FNC1 is not part of the
 * text. (10) AB12 is a lot, (21) 34CD a serial number: 10AB12 GS 2134CD. */
#define PAPER_SAMPLES(X)                                                                                     \
	X(LETTERS, CODE_128, "ABCDEFGHIJKLMNOPQRSTUVWXYZ")                                                   \
	X(DIGITS, CODE_128, "0123456789")                                                                    \
	X(SIGNS, CODE_128, "-./+$% :*()=&#")                                                                 \
	X(LOWER, CODE_128, "abcdefghijklmnopqrstuvwxyz")                                                     \
	X(GS1_128, GS1_128,                                                                                  \
	  "10AB12\x1d"                                                                                       \
	  "2134CD")                                                                                          \
	X(EAN13, EAN_13, "9506000134352")                                                                    \
	X(GS1_DATAMATRIX, GS1_DATAMATRIX,                                                                    \
	  "10AB12\x1d"                                                                                       \
	  "2134CD")                                                                                          \
	X(QR, QR_CODE, "bandtally check ]Q1")

/* Whether the document is of one of the kinds, to the letter. 0, or -EINVAL and one sentence. */
int paper_check(const json_t *document, struct error *e);

/* Appends the tables of all kinds, or of the one of this name. 0, -EINVAL where there is no such kind, or -ENOMEM. */
int paper_fields(const char *kind, struct buf *out, struct error *e);

/* Checks the document and appends its PDF to `pdf`, which is the caller's. Its 'language' is looked for in `languages`, which
 * may be NULL; where it is not there the paper's own words are English. 0 with the number of pages, or
 * negative errno and one sentence: -EINVAL for the document, -ENOMEM, -EIO when drawing failed; `pdf` is then
 * as it was. */
int paper_pdf(const struct languages *languages, const json_t *document, struct buf *pdf, int *pages,
              struct error *e);

/* The document's page as dots of its printer, appended to `png`: for a screen. Of several pages the last. `dpi`, and its size
 * in dots, are filled. 0 or negative errno and one sentence, as paper_pdf(). */
int paper_dots(const struct languages *languages, const json_t *document, struct buf *png, int *dpi,
               int *width, int *height, struct error *e);

/* The same on other paper than the document's, as it lies in a printer: a page is drawn in the upper left corner of a larger
 * sheet, with a line to cut along, and a slip is told again on the largest of its papers that the sheet has room for. Where
 * it has room for none, or the size is 0, as paper_pdf(). */
struct sheet_size {
	double width_mm, height_mm;
};
struct trace;
int paper_pdf_on(const struct languages *languages, const json_t *document, struct sheet_size sheet,
                 struct buf *pdf, int *pages, struct trace *trace,
                 struct error *e); /* trace: for tests, or NULL */

/* As paper_pdf(), and what was drawn where (labels/canvas.h), for tests. */
int paper_pdf_traced(const struct languages *languages, const json_t *document, struct buf *pdf, int *pages,
                     struct trace *trace, struct error *e);

/* What a print system may call the job, and the PDF itself: 'bandtally slip 0000123 copy 1', or 'bandtally',
 * the kind and the document's time. Never anything about a patient. The document must have passed
 * paper_check(). */
#define PAPER_TITLE_MAX 80
void paper_title(const json_t *document, char out[PAPER_TITLE_MAX]);

#endif
