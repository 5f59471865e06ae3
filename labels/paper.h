/* Every document that can be put on paper: its kind, its fields, and the function that makes the PDF.
 *
 * A document is one JSON object. It says what happened in words that are ready for people wherever they
 * depend on the count; layout, headings, cautions and intended use are this folder's. Nothing here knows what
 * a case is, looks at a clock or keeps anything: the same document gives the same bytes.
 *
 * HOW TO READ THE TABLES
 *   text N      UTF-8, 1 to N characters, each of which a name may hold (base/name.h). 'text 0-N' may be "".
 *   int A-B     whole number in that range         bool  true or false
 *   one of      exactly one of the words           [x] N  array of at most N of x; may be empty unless 'n >= 1'
 *   code        text of an own code, as station/code/own-codes.h writes it; refused unless it is whole there
 *   moment      how a time is to be read, text 40, printed as it stands: "10:41", "2026-11-25 10:41"
 *   *           required. Every other field may be left out; null is not the same as left out and is refused.
 * A field that is not listed, of the wrong type, too long or out of range: the document is refused, and one
 * sentence says which field and why. Nothing is ever cut off or left out to make it fit: there are more pages.
 *
 * ALL KINDS
 *   v *         int 1-1
 *   kind *      one of slip discrepancy pack-labels badges digit-cards cards scanner-check
 *   time *      text "2026-11-25T10:41:07+00:00" (RFC 3339): when the document was written. Becomes the
 *               creation date of the PDF, so that the same document is the same file
 *   site *      text 60: hospital, unit
 *   paper       one of roll80 a6 a5 a4. roll80: 80 mm roll, 72 mm printed, one page as long as needed, at most
 *               2,000 mm, then a second. slip, discrepancy: default a5. digit-cards, cards, badges,
 *               scanner-check: a4 only. pack-labels: not allowed, see 'label'
 *   dpi         one of 203 300 600: dots of the printer, for whole-dot bars. Default 203 for roll80 and
 *               pack-labels, 300 otherwise (a multiple prints as well: 600 after 300)
 *
 * slip         the paper of a case that has ended, and any addendum to it
 * discrepancy  the paper that prints at once when a count is not what it should be: its own shape, a thick
 *              frame and a reversed heading
 *   slip *      int 1-9999999: slip number                  copy *      int 1-99
 *   station     int 1-99: which of the site's stations it is of; left out, it is 0, which is not printed
 *   code *      code: the slip's own code, of that slip, copy and station, printed as Code 128 with its text at the
 *               foot of the last page; read back, the slip is 'seen' and its last page is there
 *   heading *   slip only: one of reconciled unresolved cancelled addendum. 'unresolved' has the frame too
 *   outcome *   text 400: the outcome in words, rule 15; printed largest
 *   adds_to     int 1-9999999: the slip that this one adds to; required for heading addendum, else refused
 *   room *      text 60              case_number *  int 1-999999999     case_label  text 60
 *   version     text 20: of the program in whose words it is; printed beside when it was written
 *   opened *    moment               ended          moment
 *   single      bool: single-person count throughout (rule 8); said under the outcome and at each count
 *   items *     [item] 200, in the order of the sheet; the first is item 1
 *   digits *    [digit] 24
 *   counts *    [count] 40
 *   sign_out    sign_out              search   search; required for discrepancy
 *   debts       [debt] 60             people * [person] 40           entries  [entry] 200
 *   gaps        [text 200] 20: one sentence each: 'at least 95 min; by wall clock 140 min: no power 10:02-10:47'
 *   notes       [text 300] 20: anything else that must be on paper ('the patient left the room at 11:02')
 *   cautions    [text 200] 6: local ones, printed after the usual ones
 *   record      text 60: the event of the record up to which it says what was recorded, and the first eight hex digits
 *               of that event's hash: 'event 2345, hash 1a2b3c4d'; printed beside the codes
 *   jws         text 1600 of A-Z a-z 0-9 - _ . : compact JWS, printed as QR; left out, the paper says that it
 *               carries no signature
 *  item
 *   line *      text 60               identity  text 60: as printed on it; left out = 'no identity of its own'
 *   lot         text 20               expiry    text 20
 *   in *        int 0-999             out *     int 0-999: accounted for, or returned unopened
 *   evidence *  text 0-160: 'mark scanned', 'shown'; "" prints a space to be filled by hand
 *   condition   text 80: 'intact', 'cut and complete', 'pieces missing'
 *   note        text 200: 'added 10:12', 'dropped', 'off, not yet accounted for', 'returned unopened'
 *  digit
 *   name *      text 60, in words     tourniquet * text 100             forceps  text 100
 *   stretches * [stretch] 20, n >= 1: { on * moment, off moment (left out: it is still on; in brackets why it
 *               is no time, or stands before on), minutes * text 80 }
 *   longest *   text 80: longest stretch: '32 min', 'at least 95 min; by wall clock 140 min'
 *   total       text 80
 *   reminders   [text 100] 60: '20 min, 10:22, acknowledged by CIRC-1'
 *   bare        { by * text 60, when * moment, witness text 80 }: seen bare; left out prints NOT SEEN BARE
 *   note        text 200
 *   Count evidence (items) and the look (bare) stand in separate blocks and are never merged (rule 11). Each
 *   digit has lines to write on for skin before and after and for colour returned.
 *  count
 *   kind *      one of initial added handover final             when *  moment
 *   agreed *    [text 60] 1-2, n >= 1: two names print 'agreed aloud by A and B, recorded by R'; one name
 *               prints 'single-person count by A, recorded by R'
 *   recorded_by * text 60             note      text 200: 'without full sight', 'not agreed: 1 missing'
 *  sign_out
 *   by *        text 60               when *    moment
 *   points *    [{ text * text 200, answer * one of yes no open }] 20
 *  search
 *   opened *    moment                closed    moment
 *   reason *    text 300: what is missing, extra or in pieces
 *   steps *     [{ text * text 120, answer * text 0-200 }] 30: "" prints boxes and a line to write on
 *   incident    text 60; left out with steps prints 'incident number: number owed' and a line
 *  debt         { text * text 200, paid text 200 }; without paid it prints STILL OWED and a line
 *  person       { name * text 60, place * text 60, from * moment, to moment }
 *  entry        { how * one of late keyed overridden corrected burst, when * moment, text * text 300 }
 *
 * pack-labels  labels that stores stick on packs that bear no code of their own: two an item, in order
 *   label       { width_mm * int 20-120, height_mm * int 12-120 }: size of one label. Default 57 x 32
 *   shape       one of square rectangle: GS1 DataMatrix 16 x 16 (default) or 12 x 26
 *   items *     [label_item] 1000, n >= 1:
 *     line *    text 60     lot   text 20     expiry  text 20     number *  text 20: as people read it
 *     pack      code        bag   code: own item codes, role P and role R; at least one of the two.
 *               'pack' prints the label PACK, 'bag' the label PAPER OR RETURN BAG
 *   Symbol: GS1 DataMatrix (91) + code, X = 3 dots at 203 dpi (0.375 mm), 4 at 300 (0.339), 9 at 600 (0.381).
 *   A text that does not fit its label at the smallest size that can be read (1.6 mm) refuses the document.
 *
 * badges       85.6 x 54 mm, ten a sheet, with cut lines
 *   badges *    [{ name * text 40, role * text 60, registered * bool, code * code }] 200, n >= 1
 *
 * digit-cards  one sheet a room: side 1 the hands and others 21, 22, side 2 the feet and others 23, 24
 *   room *      text 60
 *   cards *     [{ digit * int 1-24, name * text 60, code * code }] 24, n >= 1, each digit once. 1-5 right hand
 *               from the thumb, 6-10 left hand, 11-15 right foot from the great toe, 16-20 left foot, 21-24
 *               others, described. No two codes are nearer than 40 mm, centre to centre, and no straight line
 *               runs through two of them
 *
 * cards        the answer cards of a room, grouped, to cut out
 *   room *      text 60
 *   groups *    [{ title * text 60, cards * [{ words * text 40, use text 100, code * code }] 60, n >= 1 }] 20,
 *               n >= 1. No two codes are nearer than 40 mm, centre to centre
 *
 * scanner-check  one sheet: scanned once from top to bottom it teaches a station how one scanner sends
 *   start *     code, kind 6          end *     code, kind 6
 *   Between them, in this order, the eight samples of PAPER_SAMPLES below, one under the other. The driver
 *   knows what each says, so it learns: layout from LETTERS, DIGITS, SIGNS and LOWER; suffix and prefix from
 *   every one; AIM identifiers from GS1_128 (]C1), EAN13 (]E0) and GS1_DATAMATRIX (]d2), or their absence; how
 *   GS is sent from GS1_128 and GS1_DATAMATRIX. A scanner that reads no two-dimensional code skips the last
 *   two: the end code stands before them and again after them.
 */
#ifndef BANDTALLY_LABELS_PAPER_H
#define BANDTALLY_LABELS_PAPER_H

#include "base/buf.h"
#include "base/error.h"
#include "base/json.h"

enum paper_kind {
	PAPER_SLIP = 1,
	PAPER_DISCREPANCY,
	PAPER_PACK_LABELS,
	PAPER_BADGES,
	PAPER_DIGIT_CARDS,
	PAPER_CARDS,
	PAPER_SCANNER_CHECK,
};

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

/* Whether the document is one of the above, to the letter. 0 and its kind, or -EINVAL and one sentence. */
int paper_check(const json_t *document, enum paper_kind *kind, struct error *e);

/* Checks the document and appends its PDF to `pdf`, which is the caller's. 0 with the number of pages, or
 * negative errno and one sentence: -EINVAL for the document, -ENOMEM, -EIO when drawing failed; `pdf` is then
 * as it was. */
int paper_pdf(const json_t *document, struct buf *pdf, int *pages, struct error *e);

/* The same, and what was drawn where (labels/canvas.h), for tests. */
struct trace;
int paper_pdf_traced(const json_t *document, struct buf *pdf, int *pages, struct trace *trace,
                     struct error *e);

/* What a print system may call the job, and the PDF itself: 'bandtally slip 000123 copy 1', or 'bandtally',
 * the kind and the document's time. Never anything about a patient. The document must have passed
 * paper_check(). */
#define PAPER_TITLE_MAX 80
void paper_title(const json_t *document, char out[PAPER_TITLE_MAX]);

#endif
