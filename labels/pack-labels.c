/* Labels for packs that bear no code. In the order of use in the stores: which of the two labels, until when, the size, what it
 * is; then the code, and how it is typed. */
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "code/date.h"
#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/sheets.h"

#define EDGE_MM 2.0     /* label printers do not reach the edge */
#define SMALLEST_PT 6.2 /* capitals of 1.6 mm */
#define SCALE_LEAST 0.61
#define BESIDE_MM 15 /* of text beside the code, at least */

struct label {
	double width_mm, height_mm;
	bool rectangle;
};

/* Where the next label goes: a page of its own, or a place on a sheet. */
struct places {
	const struct label *label;
	double sheet_width_mm, sheet_height_mm; /* 0: each label is a page */
	double first_x_mm, first_y_mm, step_x_mm, step_y_mm;
	int across, down, used; /* used: of the sheet that is drawn */
	double x_mm, y_mm; /* the corner where its lines begin, of the label that is drawn; a whole dot */
};

static void next_place(struct canvas *c, struct places *p)
{
	bool sheet = p->sheet_width_mm > 0;
	if (!sheet || p->used == p->across * p->down)
		p->used = 0;
	if (!p->used)
		canvas_page(c, sheet ? p->sheet_width_mm : p->label->width_mm,
		            sheet ? p->sheet_height_mm : p->label->height_mm);
	int column = sheet ? p->used % p->across : 0, row = sheet ? p->used / p->across : 0;
	/* Labels stick where they stick: their places on a sheet are turned for nobody. */
	double x_mm = sheet ? canvas_left(c, p->first_x_mm + column * p->step_x_mm, p->label->width_mm) : 0;
	p->x_mm = canvas_mm(c, canvas_dots(c, x_mm));
	p->y_mm = canvas_mm(c, canvas_dots(c, p->first_y_mm + row * p->step_y_mm));
	p->used++;
}

struct label_text {
	const char *role, *which, *expiry, *line, *size, *said;
	char more[96], code[OWN_CODE_SHOWN_MAX];
	bool pack;
};

/* Everything on a label grows and shrinks together; nothing becomes smaller than can be read. */
static double sized(double pt, double scale)
{
	return pt * scale < SMALLEST_PT ? SMALLEST_PT : pt * scale;
}

struct fit {
	double scale, width_mm; /* of the text */
	double code_mm, code_high_mm;
	int module_dots;
};

static struct style style_of(double pt, const struct fit *f, bool bold)
{
	return (struct style){.size_pt = sized(pt, f->scale), .bold = bold};
}

/* --- what is read: expiry, line and lot at the left, the size alone at the right --------------- */

static double size_box_mm(struct canvas *c, const struct label_text *t, const struct fit *f)
{
	struct style letter = style_of(26, f, true);
	return *t->size ? canvas_text_width(c, &letter, t->size) + 3 : 0;
}

/* `draw` false measures. Returns the height. */
static double facts(struct canvas *c, const struct label_text *t, const struct fit *f, double x, double y,
                    bool draw)
{
	struct style expiry = style_of(10.5, f, true), line = style_of(8.6, f, true),
	             more = style_of(7.6, f, false);
	double box = size_box_mm(c, t, f), width = f->width_mm - (box > 0 ? box + 1.5 : 0), start = y;
	const struct {
		const struct style *style;
		const char *text;
	} all[] = {{&expiry, t->expiry}, {&line, t->line}, {&more, t->more}};
	for (size_t i = 0; i < sizeof all / sizeof *all; i++)
		y += draw ? canvas_text(c, all[i].style, x, y, width, all[i].text)
		          : canvas_text_height(c, all[i].style, width, all[i].text);
	struct style letter = style_of(26, f, true);
	letter.align = ALIGN_CENTRE;
	double high = *t->size ? canvas_text_height(c, &letter, box, t->size) * 0.86 : 0;
	if (draw && box > 0) {
		canvas_frame(c, x + f->width_mm - box, start + 0.5, box, high, 0.6);
		canvas_text(c, &letter, x + f->width_mm - box, start + 0.5 - high * 0.08, box, t->size);
	}
	return y - start > high + 1 ? y - start : high + 1;
}

/* --- the code, and beside it how it is typed ------------------------------------------------------ */

static double typed(struct canvas *c, const struct label_text *t, const struct fit *f, double x, double y,
                    bool draw)
{
	struct style mono = style_of(9.6, f, true), small = style_of(6.8, f, false);
	double width = f->width_mm - f->code_mm - 1.5, start = y;
	mono.mono = true;
	while (mono.size_pt > SMALLEST_PT && canvas_text_width(c, &mono, t->code) > width)
		mono.size_pt -= 0.2;
	y +=
	    draw ? canvas_text(c, &mono, x, y, width, t->code) : canvas_text_height(c, &mono, width, t->code);
	y += draw ? canvas_text(c, &small, x, y, width, t->said)
	          : canvas_text_height(c, &small, width, t->said);
	return y - start;
}

static double bar_height(struct canvas *c, const struct label_text *t, const struct fit *f)
{
	struct style role = style_of(9, f, true);
	return canvas_text_height(c, &role, -1, t->role) + 0.6;
}

/* The two labels of one item must not be taken for each other: black bar for the pack, frame for the bag. */
static void draw_bar(struct canvas *c, const struct label_text *t, const struct fit *f, double x, double y)
{
	struct style role = style_of(9, f, true), which = style_of(7.6, f, false);
	double h = bar_height(c, t, f), w = canvas_text_width(c, &which, t->which), of;
	which.align = ALIGN_RIGHT;
	for (; (of = canvas_text_width(c, &role, t->role)) + w + 4 > f->width_mm;
	     w = canvas_text_width(c, &which, t->which)) {
		if (role.size_pt <= SMALLEST_PT && which.size_pt <= SMALLEST_PT)
			break;
		role.size_pt = role.size_pt - 0.2 > SMALLEST_PT ? role.size_pt - 0.2 : SMALLEST_PT;
		which.size_pt = which.size_pt - 0.2 > SMALLEST_PT ? which.size_pt - 0.2 : SMALLEST_PT;
	}
	if (t->pack)
		canvas_box(c, x, y, f->width_mm, h);
	else
		canvas_frame(c, x, y, f->width_mm, h, 0.35);
	role.white = which.white = t->pack;
	double role_h = canvas_text_height(c, &role, -1, t->role),
	       which_h = canvas_text_height(c, &which, -1, t->which);
	canvas_text(c, &role, x + 1, y + (h - role_h) / 2, -1, t->role);
	if (of + w + 4 <= f->width_mm)
		canvas_text(c, &which, x + f->width_mm - w - 2, y + (h - which_h) / 2, w + 1, t->which);
}

static double needed(struct canvas *c, const struct label_text *t, const struct fit *f)
{
	double beside = typed(c, t, f, 0, 0, false);
	return bar_height(c, t, f) + 0.8 + facts(c, t, f, 0, 0, false) + 0.6 +
	       (beside > f->code_high_mm ? beside : f->code_high_mm);
}

/* The code as large as is lawful and leaves the text room; the text before it becomes small. */
static bool find_fit(struct canvas *c, const struct barcode *b, const struct label_text *t, double height_mm,
                     struct fit *f)
{
	int least = barcode_module_dots(b->kind, c->dpi);
	for (f->scale = 1.3; f->scale >= SCALE_LEAST; f->scale -= 0.04)
		for (f->module_dots = barcode_largest_dots(b->kind, c->dpi); f->module_dots >= least;
		     f->module_dots--) {
			f->code_mm = canvas_mm(c, barcode_width_dots(b, f->module_dots));
			f->code_high_mm = canvas_mm(c, barcode_height_dots(b, f->module_dots));
			if (f->width_mm - f->code_mm > BESIDE_MM && needed(c, t, f) <= height_mm)
				return true;
		}
	return false;
}

static int make_symbol(struct barcode *b, const struct label *l, const char *code, struct error *e)
{
	char element[64];
	snprintf(element, sizeof element, "(91)%s", code);
	return barcode_init(b, l->rectangle ? SYMBOL_GS1_DATAMATRIX_12X26 : SYMBOL_GS1_DATAMATRIX_16X16,
	                    element, e);
}

static void draw_at(struct canvas *c, const struct places *p, const struct barcode *b,
                    const struct label_text *t, const struct fit *f, double height_mm)
{
	double x = p->x_mm + EDGE_MM, y = p->y_mm + EDGE_MM, bottom = y + height_mm;
	draw_bar(c, t, f, x, y);
	facts(c, t, f, x, y + bar_height(c, t, f) + 0.8, true);
	barcode_draw(b, c, canvas_dots(c, x), (int)((bottom - f->code_high_mm) / 25.4 * c->dpi),
	             f->module_dots, 0);
	typed(c, t, f, x + f->code_mm + 1.5, bottom - typed(c, t, f, 0, 0, false), true);
}

/* -ENOSPC: it does not fit. */
static int draw_label(struct canvas *c, struct places *p, const struct label_text *t, const char *code,
                      struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	int r = make_symbol(&b, p->label, code, e);
	if (r < 0)
		return r;
	next_place(c, p);
	bool sheet = p->sheet_width_mm > 0; /* a page is rounded up to whole dots */
	double width = sheet ? p->label->width_mm : c->width_mm,
	       height = (sheet ? p->label->height_mm : c->height_mm) - 2 * EDGE_MM;
	struct fit f = {.width_mm = width - 2 * EDGE_MM};
	if (!find_fit(c, &b, t, height, &f))
		return -ENOSPC;
	draw_at(c, p, &b, t, &f, height);
	return c->failed;
}

/* The smallest label of at least this width on which the symbol keeps its size and the text can be read. */
static int grow(struct canvas *c, const struct label *l, const struct label_text *t, const char *code,
                struct label *least, struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	struct fit f = {.scale = SCALE_LEAST};
	int r = make_symbol(&b, l, code, e);
	if (r < 0)
		return r;
	f.module_dots = barcode_module_dots(b.kind, c->dpi);
	f.code_mm = canvas_mm(c, barcode_width_dots(&b, f.module_dots));
	f.code_high_mm = canvas_mm(c, barcode_height_dots(&b, f.module_dots));
	double width = ceil(f.code_mm + BESIDE_MM + 0.1 + 2 * EDGE_MM);
	least->width_mm = width > least->width_mm ? width : least->width_mm;
	f.width_mm = least->width_mm - 2 * EDGE_MM;
	double height = ceil(needed(c, t, &f) + 2 * EDGE_MM + 0.1);
	least->height_mm = height > least->height_mm ? height : least->height_mm;
	return 0;
}

struct item {
	struct label_text text;
	const char *pack, *bag;
	char expiry[60];
};

static void read_item(const struct canvas *c, const json_t *x, struct item *out)
{
	const char *lot = json_text(x, "lot");
	int32_t until = (int32_t)json_number(x, "expiry", 0);
	*out = (struct item){.pack = json_text(x, "pack"), .bag = json_text(x, "bag")};
	out->text = (struct label_text){
	    .line = json_text(x, "line"), .size = json_text(x, "size"), .expiry = out->expiry};
	const char *number = json_text(x, "number");
	canvas_say(c, *lot ? SAY(PL_LOT_NUMBER, .lot = lot, .text = number) : SAY(PL_NUMBER, .text = number),
	           out->text.more, sizeof out->text.more);
	if (until)
		canvas_say(c, SAY(PL_USE_BY, .date = until), out->expiry, sizeof out->expiry);
}

/* The item's label for its pack, or the one for its bag; "" where it has none. */
static const char *side_of(const struct canvas *c, struct item *i, bool pack)
{
	struct label_text *t = &i->text;
	const char *code = pack ? i->pack : i->bag, *other = pack ? i->bag : i->pack;
	t->pack = pack;
	t->role = canvas_said(c, pack ? SAY_PL_PACK : SAY_PL_BAG);
	t->which = !*other ? "" : canvas_said(c, pack ? SAY_PL_ON_POUCH : SAY_PL_SECOND);
	t->said = canvas_said(c, pack ? SAY_PL_HOSPITAL : SAY_PL_NOT_PROOF);
	own_code_shown(code, t->code);
	return code;
}

/* What all labels of the document need, in one size. */
static int tell_size(struct canvas *c, const struct label *l, const json_t *document, struct error *e)
{
	struct label least = {.width_mm = l->width_mm};
	struct item item;
	size_t i;
	json_t *x;
	int r = 0;
	json_array_foreach(json_object_get(document, "items"), i, x)
	{
		read_item(c, x, &item);
		for (int side = 0; side < 2 && r == 0; side++) {
			const char *code = side_of(c, &item, side == 0);
			r = *code ? grow(c, l, &item.text, code, &least, e) : 0;
		}
	}
	return r < 0
	           ? r
	           : error_set(e, -EMSGSIZE,
	                       "label %.0f x %.0f mm: the symbol in a size that scanners read and the law "
	                       "allows (modules of %.3f mm) and text that can be read do not fit on it: use "
	                       "labels of at least %.0f x %.0f mm, or shorter names",
	                       l->width_mm, l->height_mm,
	                       canvas_mm(c, barcode_module_dots(SYMBOL_GS1_DATAMATRIX_16X16, c->dpi)),
	                       least.width_mm, least.height_mm);
}

static double um(const json_t *o, const char *name)
{
	return (double)json_number(o, name, 0) / 1000;
}

static struct places places_of(const json_t *document, const struct label *l)
{
	const json_t *s = json_object_get(document, "sheet");
	return (struct places){.label = l,
	                       .sheet_width_mm = um(s, "width_um"),
	                       .sheet_height_mm = um(s, "height_um"),
	                       .first_x_mm = um(s, "first_x_um"),
	                       .first_y_mm = um(s, "first_y_um"),
	                       .step_x_mm = um(s, "step_x_um"),
	                       .step_y_mm = um(s, "step_y_um"),
	                       .across = (int)json_number(s, "across", 1),
	                       .down = (int)json_number(s, "down", 1)};
}

static int pack_labels_draw(struct canvas *c, const json_t *document, struct error *e)
{
	const json_t *size = json_object_get(document, "label");
	struct label l = {.width_mm = (double)json_number(size, "width_mm", 57),
	                  .height_mm = (double)json_number(size, "height_mm", 32),
	                  .rectangle = strcmp(json_text(document, "shape"), "rectangle") == 0};
	struct places places = places_of(document, &l);
	struct item item;
	size_t i;
	json_t *x;
	int r = 0;
	json_array_foreach(json_object_get(document, "items"), i, x)
	{
		read_item(c, x, &item);
		for (int side = 0; side < 2 && r == 0; side++) {
			const char *code = side_of(c, &item, side == 0);
			r = *code ? draw_label(c, &places, &item.text, code, e) : 0;
		}
		if (r < 0)
			return r == -ENOSPC ? tell_size(c, &l, document, e) : r;
	}
	return 0;
}

static const char *const shape_words[] = {"square", "rectangle", NULL};

/* clang-format off */
static const struct field label_fields[] = {
	INT("width_mm", REQUIRED, 20, 120, ""),
	INT("height_mm", REQUIRED, 12, 120, ""),
	END};
static const struct field sheet_fields[] = {
	INT("width_um", REQUIRED, 20000, 420000, ""),
	INT("height_um", REQUIRED, 20000, 420000, ""),
	INT("across", REQUIRED, 1, 40, "labels side by side"),
	INT("down", REQUIRED, 1, 40, "labels below each other"),
	INT("first_x_um", REQUIRED, 0, 420000, "from the sheet's corner to that of the first label"),
	INT("first_y_um", REQUIRED, 0, 420000, ""),
	INT("step_x_um", REQUIRED, 12000, 420000, "from the corner of one label to that of the next"),
	INT("step_y_um", REQUIRED, 12000, 420000, ""),
	END};
static const struct field item_fields[] = {
	TEXT("line", REQUIRED, 1, 60, "a text that does not fit at 1.6 mm refuses the document"),
	TEXT("size", OPTIONAL, 1, 4, "a letter, large; the line is then without it"),
	TEXT("lot", OPTIONAL, 1, 20, ""),
	INT("expiry", OPTIONAL, 20000101, 21991231, "a day as yyyymmdd, printed as the language writes it"),
	TEXT("number", REQUIRED, 1, 20, "as people read it"),
	CODE("pack", OPTIONAL, OWN_ITEM, "role P: prints the label PACK; at least one of the two"),
	CODE("bag", OPTIONAL, OWN_ITEM, "role R: prints the label PAPER OR RETURN BAG"),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	OBJECT("label", OPTIONAL, label_fields, "size of one label; left out: 57 x 32"),
	OBJECT("sheet", OPTIONAL, sheet_fields, "labels on sheets; left out: each is a page, as on a roll"),
	WORD("shape", OPTIONAL, shape_words, "GS1 DataMatrix 16 x 16, as where it is left out, or 12 x 26"),
	OBJECTS("items", REQUIRED, 1, 1000, item_fields, ""),
	END};
/* clang-format on */

static int check_label_items(const json_t *d, struct error *e)
{
	size_t i;
	json_t *item;
	json_array_foreach(json_object_get(d, "items"), i, item)
	{
		const char *pack = json_text(item, "pack"), *bag = json_text(item, "bag");
		if (!*pack && !*bag)
			return error_set(
			    e, -EINVAL,
			    "document field 'items[%zu]': it has no code: give 'pack', 'bag' or both", i);
		if ((*pack && *pack != 'P') || (*bag && *bag != 'R'))
			return error_set(
			    e, -EINVAL,
			    "document field 'items[%zu]': the role letter of a code is not that of its "
			    "label: give P for 'pack' and R for 'bag'",
			    i);
		int32_t expiry = (int32_t)json_number(item, "expiry", 0);
		if (expiry && !date_make(expiry / 10000, expiry / 100 % 100, expiry % 100))
			return error_set(
			    e, -EINVAL,
			    "document field 'items[%zu].expiry': there is no such day: give one as "
			    "yyyymmdd",
			    i);
	}
	return 0;
}

const struct paper_kind paper_pack_labels = {
    .kind = "pack-labels",
    .what = "labels that stores stick on packs that bear no code of their own: two an item, in order. GS1 "
            "DataMatrix (91) + code, X as large as the label allows: at most 3 dots at 203 dpi (0.375 mm), 5 "
            "at 300 (0.423), "
            "11 at 600 (0.466)",
    .fields = fields,
    .check = check_label_items,
    .draw = pack_labels_draw,
    .dpi = 203,
};
