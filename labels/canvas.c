#include "labels/canvas.h"

#include <errno.h>
#include <limits.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include "base/own.h"

#define POINTS_PER_MM (72.0 / 25.4)

/* Most texts are measured three or four times before they are drawn, and laying out is what costs. Heights
 * are remembered under a 64-bit hash of everything that decides them. */
#define MEMO_SIZE 1024
struct height_memo {
	struct {
		uint64_t key; /* 0 empty */
		double height_mm;
	} slot[MEMO_SIZE];
};

static double pt(double mm)
{
	return mm * POINTS_PER_MM;
}

void trace_deinit(struct trace *t)
{
	free(t->marks);
	memset(t, 0, sizeof *t);
}

void canvas_mark(struct canvas *c, const struct mark *m)
{
	struct trace *t = c->trace;
	if (!t || c->dry)
		return;
	if (t->count == t->room) {
		size_t room = t->room ? t->room * 2 : 256;
		struct mark *marks = realloc(t->marks, room * sizeof *marks);
		if (!marks) {
			c->failed = -ENOMEM;
			return;
		}
		t->marks = marks;
		t->room = room;
	}
	t->marks[t->count] = *m;
	t->marks[t->count++].page = c->page;
}

static bool font_is_there(void)
{
	PangoFontMap *map = pango_cairo_font_map_get_default();
	PangoFontFamily **families = NULL;
	int count = 0, found = 0;
	pango_font_map_list_families(map, &families, &count);
	for (int i = 0; i < count; i++) {
		const char *name = pango_font_family_get_name(families[i]);
		found += strcmp(name, "DejaVu Sans") == 0 || strcmp(name, "DejaVu Sans Mono") == 0;
	}
	g_free(families);
	return found == 2;
}

const char *fonts_path(void)
{
	static char built[PATH_MAX]; /* the same each time */
	return own_file("BANDTALLY_FONTS", BANDTALLY_FONTS_INSTALLED, "../fonts/fonts.conf", built,
	                sizeof built);
}

int fonts_open(struct error *e)
{
	const char *path = fonts_path();
	if (access(path, R_OK) < 0)
		return error_set(e, -ENOENT,
		                 "fonts: %s cannot be read: install the station again or set BANDTALLY_FONTS",
		                 path);
	if (setenv("FONTCONFIG_FILE", path, 1) < 0)
		return error_set(e, -ENOMEM, "fonts: no memory: close other programs");
	if (!font_is_there())
		return error_set(
		    e, -ENOENT,
		    "fonts: DejaVu Sans is not where %s looks: install the package fonts-dejavu-core", path);
	return 0;
}

#ifdef __SANITIZE_ADDRESS__
/* What the font libraries keep to the end is theirs. To make them give it back (FcFini, cairo's reset) while a
 * thread of pango's still looks for fonts ends the program with a failed assertion, about once in fifty times. */
const char *__lsan_default_suppressions(void);
const char *__lsan_default_suppressions(void)
{
	return "leak:libfontconfig\nleak:libpango\nleak:libcairo\n";
}
#endif

static cairo_status_t write_bytes(void *closure, const unsigned char *data, unsigned int length)
{
	struct canvas *c = closure;
	return buf_add(c->out, data, length) < 0 ? CAIRO_STATUS_WRITE_ERROR : CAIRO_STATUS_SUCCESS;
}

static void open_layout(struct canvas *c)
{
	c->layout = pango_cairo_create_layout(c->cr);
	PangoContext *context = pango_layout_get_context(c->layout);
	pango_cairo_context_set_resolution(context, 72); /* one unit is one point */
	pango_context_set_round_glyph_positions(context, FALSE);
	cairo_font_options_t *o = cairo_font_options_create();
	cairo_font_options_set_hint_style(o, CAIRO_HINT_STYLE_NONE);
	cairo_font_options_set_hint_metrics(o, CAIRO_HINT_METRICS_OFF);
	pango_cairo_context_set_font_options(context, o);
	cairo_font_options_destroy(o);
	pango_layout_set_wrap(c->layout, PANGO_WRAP_WORD_CHAR);
	/* A hyphen that nobody typed must not appear in an identity that is broken over two lines. */
	PangoAttrList *attributes = pango_attr_list_new();
	pango_attr_list_insert(attributes, pango_attr_insert_hyphens_new(FALSE));
	pango_layout_set_attributes(c->layout, attributes);
	pango_attr_list_unref(attributes);
	pango_layout_set_auto_dir(c->layout, FALSE);
	c->font = pango_font_description_new();
}

int canvas_init(struct canvas *c, struct buf *out, int dpi, const char *title, const char *time,
                struct trace *trace, struct error *e)
{
	memset(c, 0, sizeof *c);
	c->out = out;
	c->dpi = dpi;
	c->trace = trace;
	c->memo = calloc(1, sizeof *c->memo);
	c->surface = cairo_pdf_surface_create_for_stream(write_bytes, c, 100, 100);
	c->cr = cairo_create(c->surface);
	if (!c->memo || cairo_status(c->cr) != CAIRO_STATUS_SUCCESS) {
		canvas_deinit(c);
		return error_set(e, -ENOMEM, "paper: no memory for a page: close other programs");
	}
	cairo_pdf_surface_set_metadata(c->surface, CAIRO_PDF_METADATA_TITLE, title);
	cairo_pdf_surface_set_metadata(c->surface, CAIRO_PDF_METADATA_CREATOR, "bandtally");
	cairo_pdf_surface_set_metadata(c->surface, CAIRO_PDF_METADATA_CREATE_DATE, time);
	open_layout(c);
	return 0;
}

int canvas_init_picture(struct canvas *c, struct buf *out, double width_mm, double height_mm, struct error *e)
{
	memset(c, 0, sizeof *c);
	c->out = out;
	c->dpi = 600; /* of nothing: it has no dots */
	c->width_mm = width_mm;
	c->height_mm = height_mm;
	c->memo = calloc(1, sizeof *c->memo);
	c->surface = cairo_svg_surface_create_for_stream(write_bytes, c, pt(width_mm), pt(height_mm));
	c->cr = cairo_create(c->surface);
	if (!c->memo || cairo_status(c->cr) != CAIRO_STATUS_SUCCESS) {
		canvas_deinit(c);
		return error_set(e, -ENOMEM, "paper: no memory for a picture: close other programs");
	}
	open_layout(c);
	cairo_set_source_rgb(c->cr, 1, 1, 1);
	cairo_paint(c->cr);
	cairo_set_source_rgb(c->cr, 0, 0, 0);
	return 0;
}

/* A surface of this size instead of the one before. */
static void lay_dots(struct canvas *c, int width, int height)
{
	g_clear_object(&c->layout);
	if (c->font)
		pango_font_description_free(c->font);
	if (c->cr)
		cairo_destroy(c->cr);
	if (c->surface)
		cairo_surface_destroy(c->surface);
	c->surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
	c->cr = cairo_create(c->surface);
	cairo_scale(c->cr, c->dpi / 72.0, c->dpi / 72.0);
	open_layout(c);
	cairo_set_source_rgb(c->cr, 1, 1, 1);
	cairo_paint(c->cr);
	cairo_set_source_rgb(c->cr, 0, 0, 0);
}

int canvas_init_dots(struct canvas *c, struct buf *out, int dpi, struct error *e)
{
	memset(c, 0, sizeof *c);
	c->out = out;
	c->dpi = dpi;
	c->of_dots = true;
	c->memo = calloc(1, sizeof *c->memo);
	lay_dots(c, 1, 1); /* for what is measured before there is a page */
	if (c->memo && cairo_status(c->cr) == CAIRO_STATUS_SUCCESS)
		return 0;
	canvas_deinit(c);
	return error_set(e, -ENOMEM, "paper: no memory for a picture: close other programs");
}

void canvas_deinit(struct canvas *c)
{
	g_clear_object(&c->layout);
	if (c->font)
		pango_font_description_free(c->font);
	c->font = NULL;
	if (c->cr)
		cairo_destroy(c->cr);
	if (c->surface)
		cairo_surface_destroy(c->surface);
	c->cr = NULL;
	c->surface = NULL;
	free(c->memo);
	c->memo = NULL;
}

int canvas_finish(struct canvas *c, struct error *e)
{
	if (c->page > 0)
		cairo_show_page(c->cr);
	if (c->of_dots &&
	    cairo_surface_write_to_png_stream(c->surface, write_bytes, c) != CAIRO_STATUS_SUCCESS)
		c->failed = -EIO;
	cairo_surface_finish(c->surface);
	if (!c->failed && cairo_status(c->cr) != CAIRO_STATUS_SUCCESS)
		c->failed = -EIO;
	if (!c->failed && cairo_surface_status(c->surface) != CAIRO_STATUS_SUCCESS)
		c->failed = -EIO;
	if (c->failed)
		return error_set(e, c->failed, "paper: the page could not be drawn: %s: try again",
		                 cairo_status_to_string(cairo_surface_status(c->surface)));
	return 0;
}

static void cut_along(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm)
{
	canvas_dashed(c, x_mm, y_mm, x_mm + width_mm, y_mm + height_mm);
	canvas_mark(
	    c,
	    &(const struct mark){
	        .kind = MARK_CUT, .x_mm = x_mm, .y_mm = y_mm, .width_mm = width_mm, .height_mm = height_mm});
}

/* Where the paper is larger, a line to cut along; the page lies in its left corner in every language. */
static void cut_marks(struct canvas *c, double width_mm, double height_mm)
{
	bool right = width_mm > c->width_mm + 2, below = height_mm > c->height_mm + 2;
	canvas_picture(c, 0, c->width_mm);
	if (right)
		cut_along(c, c->width_mm, 0, 0, below ? c->height_mm : height_mm);
	if (below)
		cut_along(c, 0, c->height_mm, right ? c->width_mm : width_mm, 0);
	canvas_picture_end(c);
}

void canvas_page(struct canvas *c, double width_mm, double height_mm)
{
	if (c->page > 0 && !c->dry)
		cairo_show_page(c->cr);
	c->page++;
	c->width_mm = ceil(width_mm / 25.4 * c->dpi - 1e-6) * 25.4 / c->dpi;
	c->height_mm = ceil(height_mm / 25.4 * c->dpi - 1e-6) * 25.4 / c->dpi;
	if (c->dry)
		return;
	if (c->of_dots) {
		lay_dots(c, canvas_dots(c, c->width_mm), canvas_dots(c, c->height_mm));
		return;
	}
	double width = fmax(c->width_mm, c->sheet_width_mm), height = fmax(c->height_mm, c->sheet_height_mm);
	cairo_pdf_surface_set_size(c->surface, pt(width), pt(height));
	cairo_set_source_rgb(c->cr, 0, 0, 0);
	cut_marks(c, width, height);
	if (c->trace && c->page < TRACE_PAGES) {
		c->trace->page_width_mm[c->page] = width;
		c->trace->page_height_mm[c->page] = height;
	}
}

/* --- where a line begins -------------------------------------------------------------------------- */

void canvas_speak(struct canvas *c, const struct language *language)
{
	c->language = language;
	c->from_right = language_is_rtl(language);
}

double canvas_left(const struct canvas *c, double x_mm, double width_mm)
{
	return c->from_right ? c->width_mm - x_mm - width_mm : x_mm + c->shift_mm;
}

int canvas_left_dots(const struct canvas *c, int x_dots, int width_dots)
{
	return c->from_right ? canvas_dots(c, c->width_mm) - x_dots - width_dots
	                     : x_dots + canvas_dots(c, c->shift_mm);
}

void canvas_picture(struct canvas *c, double x_mm, double width_mm)
{
	c->shift_mm = canvas_mm(c, canvas_dots(c, canvas_left(c, x_mm, width_mm) - x_mm));
	c->from_right = false;
}

void canvas_picture_end(struct canvas *c)
{
	c->shift_mm = 0;
	c->from_right = language_is_rtl(c->language);
}

/* Of a paper from right to left whatever has such a letter begins at the right; a code, a number and a time never do. */
static void set_direction(struct canvas *c, const char *text)
{
	PangoContext *context = pango_layout_get_context(c->layout);
	bool turned = language_is_rtl(c->language) && text_has_rtl(text);
	pango_context_set_base_dir(context, turned ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
	pango_layout_context_changed(c->layout);
}

static void set_style(struct canvas *c, const struct style *s, double width_mm, const char *text)
{
	pango_font_description_set_family_static(c->font, s->mono ? "DejaVu Sans Mono" : "DejaVu Sans");
	pango_font_description_set_weight(c->font, s->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
	pango_font_description_set_stretch(c->font, s->condensed ? PANGO_STRETCH_SEMI_CONDENSED
	                                                         : PANGO_STRETCH_NORMAL);
	pango_font_description_set_absolute_size(c->font, s->size_pt * PANGO_SCALE);
	pango_layout_set_font_description(c->layout, c->font);
	PangoAttrList *attributes = pango_layout_get_attributes(c->layout);
	pango_attr_list_change(attributes, pango_attr_letter_spacing_new((int)(s->spacing_pt * PANGO_SCALE)));
	pango_layout_set_line_spacing(c->layout, (float)s->leading);
	static const PangoAlignment aligns[] = {PANGO_ALIGN_LEFT, PANGO_ALIGN_CENTER, PANGO_ALIGN_RIGHT};
	pango_layout_set_alignment(c->layout, aligns[c->from_right ? ALIGN_RIGHT - s->align : s->align]);
	set_direction(c, text);
	pango_layout_set_width(c->layout, width_mm < 0 ? -1 : (int)(pt(width_mm) * PANGO_SCALE));
	pango_layout_set_text(c->layout, text, -1);
}

static double layout_height(struct canvas *c)
{
	int height;
	pango_layout_get_size(c->layout, NULL, &height);
	return height / (double)PANGO_SCALE / POINTS_PER_MM;
}

static double layout_width(struct canvas *c)
{
	int width;
	pango_layout_get_size(c->layout, &width, NULL);
	return width / (double)PANGO_SCALE / POINTS_PER_MM;
}

static uint64_t hash(uint64_t h, const void *data, size_t size) /* FNV-1a */
{
	for (const unsigned char *p = data; size > 0; p++, size--)
		h = (h ^ *p) * 1099511628211u;
	return h;
}

static uint64_t memo_key(const struct style *s, double width_mm, const char *text)
{
	const double numbers[] = {s->size_pt, s->spacing_pt, s->leading,  width_mm,
	                          s->bold,    s->mono,       s->condensed};
	uint64_t h = hash(14695981039346656037u, numbers, sizeof numbers);
	return hash(h, text, strlen(text)) | 1;
}

double canvas_text_height(struct canvas *c, const struct style *s, double width_mm, const char *text)
{
	if (!*text)
		return 0;
	uint64_t key = memo_key(s, width_mm, text);
	double *height_mm = &c->memo->slot[key / 2 % MEMO_SIZE].height_mm;
	if (c->memo->slot[key / 2 % MEMO_SIZE].key == key)
		return *height_mm;
	set_style(c, s, width_mm, text);
	c->memo->slot[key / 2 % MEMO_SIZE].key = key;
	return *height_mm = layout_height(c);
}

double canvas_text_width(struct canvas *c, const struct style *s, const char *text)
{
	set_style(c, s, -1, text);
	return layout_width(c);
}

static void mark_text(struct canvas *c, double x_mm, double y_mm, const struct style *s, const char *text)
{
	PangoRectangle box;
	pango_layout_get_extents(c->layout, NULL, &box);
	const double unit = PANGO_SCALE * POINTS_PER_MM;
	struct mark m = {.kind = MARK_TEXT,
	                 .white = s->white,
	                 .size_pt = s->size_pt,
	                 .x_mm = x_mm + box.x / unit,
	                 .y_mm = y_mm + box.y / unit,
	                 .width_mm = box.width / unit,
	                 .height_mm = box.height / unit};
	strncpy(m.text, text, sizeof m.text - 1);
	canvas_mark(c, &m);
	c->trace->unknown_glyphs += pango_layout_get_unknown_glyphs_count(c->layout);
}

double canvas_text(struct canvas *c, const struct style *s, double x_mm, double y_mm, double width_mm,
                   const char *text)
{
	if (!*text)
		return 0;
	if (c->dry)
		return canvas_text_height(c, s, width_mm, text);
	set_style(c, s, width_mm, text);
	if (s->white)
		cairo_set_source_rgb(c->cr, 1, 1, 1);
	x_mm = canvas_left(c, x_mm, width_mm < 0 ? layout_width(c) : width_mm);
	cairo_move_to(c->cr, pt(x_mm), pt(y_mm));
	pango_cairo_show_layout(c->cr, c->layout);
	if (s->white)
		cairo_set_source_rgb(c->cr, 0, 0, 0);
	if (c->trace)
		mark_text(c, x_mm, y_mm, s, text);
	return layout_height(c);
}

void canvas_across(struct canvas *c, const struct style *s, const char *word)
{
	if (c->dry)
		return;
	const double steepest = 0.95, fills = 0.72, line_mm = 0.4;
	double angle = fmin(atan2(c->height_mm, c->width_mm), steepest);
	struct style large = *s;
	double wide = canvas_text_width(c, s, word);
	large.size_pt *= fills * fmin(c->width_mm / cos(angle), c->height_mm / sin(angle)) / wide;
	set_style(c, &large, -1, word);
	cairo_save(c->cr);
	cairo_translate(c->cr, pt(c->width_mm / 2), pt(c->height_mm / 2));
	cairo_rotate(c->cr, -angle);
	cairo_move_to(c->cr, pt(-layout_width(c) / 2), pt(-layout_height(c) / 2));
	pango_cairo_layout_path(c->cr, c->layout);
	cairo_restore(c->cr);
	cairo_set_line_width(c->cr, pt(line_mm));
	cairo_stroke(c->cr);
}

void canvas_box(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm)
{
	if (c->dry)
		return;
	cairo_rectangle(c->cr, pt(canvas_left(c, x_mm, width_mm)), pt(y_mm), pt(width_mm), pt(height_mm));
	cairo_fill(c->cr);
}

void canvas_clear(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm)
{
	cairo_set_source_rgb(c->cr, 1, 1, 1);
	canvas_box(c, x_mm, y_mm, width_mm, height_mm);
	cairo_set_source_rgb(c->cr, 0, 0, 0);
}

void canvas_frame(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm,
                  double line_mm)
{
	if (c->dry)
		return;
	x_mm = canvas_left(c, x_mm, width_mm);
	cairo_set_line_width(c->cr, pt(line_mm));
	cairo_rectangle(c->cr, pt(x_mm + line_mm / 2), pt(y_mm + line_mm / 2), pt(width_mm - line_mm),
	                pt(height_mm - line_mm));
	cairo_stroke(c->cr);
}

void canvas_line(struct canvas *c, double x1_mm, double y1_mm, double x2_mm, double y2_mm, double line_mm)
{
	if (c->dry)
		return;
	cairo_set_line_width(c->cr, pt(line_mm));
	cairo_move_to(c->cr, pt(canvas_left(c, x1_mm, 0)), pt(y1_mm));
	cairo_line_to(c->cr, pt(canvas_left(c, x2_mm, 0)), pt(y2_mm));
	cairo_stroke(c->cr);
}

void canvas_rule(struct canvas *c, double x_mm, double y_mm, double width_mm)
{
	canvas_line(c, x_mm, y_mm + 0.3, x_mm + width_mm, y_mm + 0.3, 0.6);
	canvas_line(c, x_mm, y_mm + 1.1, x_mm + width_mm, y_mm + 1.1, 0.2);
}

void canvas_dashed(struct canvas *c, double x1_mm, double y1_mm, double x2_mm, double y2_mm)
{
	const double dashes[] = {pt(1.6), pt(1.2)};
	cairo_set_dash(c->cr, dashes, 2, 0);
	canvas_line(c, x1_mm, y1_mm, x2_mm, y2_mm, 0.15);
	cairo_set_dash(c->cr, NULL, 0, 0);
}

void canvas_dotted_frame(struct canvas *c, double x_mm, double y_mm, double width_mm, double height_mm)
{
	const double dashes[] = {pt(0.9), pt(0.9)};
	cairo_set_dash(c->cr, dashes, 2, 0);
	canvas_frame(c, x_mm, y_mm, width_mm, height_mm, 0.25);
	cairo_set_dash(c->cr, NULL, 0, 0);
}

int canvas_dots(const struct canvas *c, double mm)
{
	return (int)lround(mm / 25.4 * c->dpi);
}

double canvas_mm(const struct canvas *c, int dots)
{
	return dots * 25.4 / c->dpi;
}

/* cairo keeps a path in 1/256 point and writes it with three decimals; one such step further in than the edge
 * stays inside it through both roundings. */
static double inside_low(double points)
{
	return ceil(points * 256 + 0.5) / 256;
}
static double inside_high(double points)
{
	return floor(points * 256 - 0.5) / 256;
}

double canvas_edge_low(const struct canvas *c, int dots)
{
	return inside_low(dots * 72.0 / c->dpi);
}

double canvas_edge_high(const struct canvas *c, int dots)
{
	return inside_high(dots * 72.0 / c->dpi);
}

const char *canvas_said(const struct canvas *c, enum saying saying)
{
	return saying_text_in(c->language, saying);
}

void canvas_say(const struct canvas *c, const struct say *say, char *out, size_t size)
{
	say_part_in(c->language, say, out, size);
}
