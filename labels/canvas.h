/* A PDF that is being drawn: pages of whole printer dots, text by pango, rules and boxes by cairo.
 *
 * Lengths are millimetres from the top left corner of the page unless the name says dots; on a page that goes from right to
 * left, from the top right corner: who draws says where things follow each other, and left and right are turned here alone.
 * What is no text (bars, a hand, a tick, digits side by side) is put where its turn is, and looks as it always does. Everything
 * is black on white, because a thermal roll has nothing else. A canvas that failed stays failed; drawing on it does
 * nothing, and canvas_finish() tells.
 */
#ifndef BANDTALLY_LABELS_CANVAS_H
#define BANDTALLY_LABELS_CANVAS_H

#include <stdbool.h>
#include <stddef.h>

#include <cairo.h>
#include <pango/pangocairo.h>

#include "base/buf.h"
#include "base/error.h"
#include "words/language.h"

/* What was drawn where, for tests: a list that the canvas fills and the caller owns. */
enum mark_kind {
	MARK_TEXT = 1, /* the laid-out lines of a text */
	MARK_CODE,     /* a barcode without its quiet zone */
	MARK_QUIET,    /* the same with its quiet zone */
	MARK_SPACE,    /* left free on purpose, for a label that is stuck there */
	MARK_CUT,      /* a line to cut along, where the paper is larger than the page */
};
struct mark {
	enum mark_kind kind;
	int page; /* from 1 */
	double x_mm, y_mm, width_mm, height_mm;
	int x_dots, y_dots, module_dots; /* codes only */
	bool turned;                     /* bars that lie */
	char text[120];                  /* how it begins */
	bool white;                      /* a text on black */
	double size_pt;                  /* of a text's letters */
};
#define TRACE_PAGES 512
struct trace {
	struct mark *marks;
	size_t count, room;
	double page_width_mm[TRACE_PAGES], page_height_mm[TRACE_PAGES]; /* of the first pages, by number */
	int unknown_glyphs; /* characters that the fonts do not have */
};
void trace_deinit(struct trace *t);

enum align { ALIGN_LEFT = 0, ALIGN_CENTRE, ALIGN_RIGHT }; /* left: where a line begins */

struct style {
	double size_pt;
	bool bold, mono, white;
	bool condensed; /* letters of nine tenths of their width */
	enum align align;
	double spacing_pt; /* between letters */
	double leading;    /* of the line, as a factor; 0 as the font has it */
};

struct canvas {
	cairo_surface_t *surface;
	cairo_t *cr;
	PangoLayout *layout;
	PangoFontDescription *font;
	double width_mm, height_mm; /* of the page that is drawn on */
	double sheet_width_mm,
	    sheet_height_mm; /* of larger paper, from whose corner the page is cut; 0 none */
	int dpi, page;
	bool of_dots;    /* a picture of dots: no PDF */
	bool dry;        /* measure only: pages are counted, nothing is drawn or traced */
	bool from_right; /* x counts from the right edge: the language goes so, and no picture is drawn */
	double shift_mm; /* of what is drawn in a picture */
	struct buf *out;
	struct trace *trace;             /* may be NULL */
	const struct language *language; /* of the paper's own words; NULL English. Borrowed */
	struct height_memo *memo;
	int failed; /* negative errno, 0 while all is well */
};

/* Makes the shipped fonts.conf the only one (FONTCONFIG_FILE): $BANDTALLY_FONTS, else where it was installed,
 * else the copy that the build laid beside the folder of this program. Call once before the first canvas. -ENOENT
 * with a sentence when it or its fonts are absent. */
int fonts_open(struct error *e);
const char *fonts_path(void); /* that file; borrowed */

/* Begins a PDF that is appended to `out`. `time` is the document's own time; `title` is what the file says it
 * is. Both are copied. `trace` is filled where not NULL. */
int canvas_init(struct canvas *c, struct buf *out, int dpi, const char *title, const char *time,
                struct trace *trace, struct error *e);
/* Begins an SVG of one picture that is appended to `out` in the same way. */
int canvas_init_picture(struct canvas *c, struct buf *out, double width_mm, double height_mm,
                        struct error *e);
/* Begins a picture of dots, as a printer of `dpi` would have them, of one page: its last, where there are more. It is appended
 * to `out` as PNG when it is finished. */
int canvas_init_dots(struct canvas *c, struct buf *out, int dpi, struct error *e);
/* Whose words the paper says, and so where its lines begin. NULL English. Before the first page. */
void canvas_speak(struct canvas *c, const struct language *language);
int canvas_finish(struct canvas *c, struct error *e); /* writes the end of the file; 0 or negative errno */
void canvas_deinit(struct canvas *c);                 /* without finish the PDF is incomplete */

/* Starts the next page; both sizes are rounded up to whole dots. */
void canvas_page(struct canvas *c, double width_mm, double height_mm);

/* Text within `width_mm`, broken anywhere rather than cut. Both return its height. */
double canvas_text(struct canvas *c, const struct style *s, double x_mm, double y_mm, double width_mm,
                   const char *text);
double canvas_text_height(struct canvas *c, const struct style *s, double width_mm, const char *text);
double canvas_text_width(struct canvas *c, const struct style *s, const char *text); /* on one line */

/* The outline of a word through the middle of the page, rising, as large as there is room for: what is drawn after it is read
 * all the same. */
void canvas_across(struct canvas *c, const struct style *s, const char *word);

void canvas_box(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm); /* filled */
void canvas_clear(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm);
void canvas_frame(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm,
                  double line_mm); /* the line lies inside */
void canvas_dashed(struct canvas *c, double x1_mm, double y1_mm, double x2_mm, double y2_mm);
void canvas_dotted_frame(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm);
/* The double rule that opens and closes a part, as on a paper count sheet: 1.2 mm high. */
void canvas_rule(struct canvas *c, double x_mm, double y_mm, double width_mm);
void canvas_line(struct canvas *c, double x1_mm, double y1_mm, double x2_mm, double y2_mm, double line_mm);

/* Where an edge is drawn that has its black at the higher (lower) side: a hair (1/200 point) inside the whole
 * dot, so that a printer which blackens every dot that is touched blackens these and no more. In points. */
double canvas_edge_low(const struct canvas *c, int dots);
double canvas_edge_high(const struct canvas *c, int dots);

/* What is drawn until the end keeps its left and right, as one piece that is so wide and is put, by whole dots, where its turn is. */
void canvas_picture(struct canvas *c, double x_mm, double width_mm);
void canvas_picture_end(struct canvas *c);
/* Where the left edge of what is so wide stands on the page, for who draws past the functions above, and in marks. */
double canvas_left(const struct canvas *c, double x_mm, double width_mm);
int canvas_left_dots(const struct canvas *c, int x_dots, int width_dots);

int canvas_dots(const struct canvas *c, double mm); /* nearest whole dot */
double canvas_mm(const struct canvas *c, int dots);

/* The paper's own words, in its language; one that has no values is borrowed. */
const char *canvas_said(const struct canvas *c, enum saying saying);
void canvas_say(const struct canvas *c, const struct say *say, char *out, size_t size);

void canvas_mark(struct canvas *c,
                 const struct mark *m); /* as it lies on the page; into the trace, when there is one */

#endif
