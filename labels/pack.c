/* Labels for packs that bear no code: the symbol at the left, what people read at the right. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/sheets.h"

#define EDGE_MM 2.0     /* label printers do not reach the edge */
#define SMALLEST_PT 6.2 /* capitals of 1.6 mm */
#define LARGEST_PT 8.4

struct label {
	double width_mm, height_mm;
	bool rectangle;
};

struct label_text {
	const char *role, *line, *number;
	char more[96];
};

/* The role stays on one line as long as it can be read there. */
static struct style role_style(struct canvas *c, const struct label_text *t, double size, double width)
{
	struct style role = {.size_pt = size * 1.05, .bold = true, .spacing_pt = 0.3};
	while (role.size_pt > SMALLEST_PT && canvas_text_width(c, &role, t->role) > width - 2)
		role.size_pt -= 0.1;
	return role;
}

static double text_height(struct canvas *c, const struct label_text *t, double size, double width)
{
	struct style strong = {.size_pt = size, .bold = true}, body = {.size_pt = size};
	struct style role = role_style(c, t, size, width);
	return canvas_text_height(c, &role, width - 2, t->role) + 1.4 +
	       canvas_text_height(c, &strong, width, t->line) + canvas_text_height(c, &body, width, t->more) +
	       canvas_text_height(c, &strong, width, t->number) +
	       canvas_text_height(c, &body, width, "hospital use only");
}

static void draw_text(struct canvas *c, const struct label_text *t, double size, double x, double y,
                      double width)
{
	struct style strong = {.size_pt = size, .bold = true}, body = {.size_pt = size};
	struct style role = role_style(c, t, size, width);
	double h = canvas_text_height(c, &role, width - 2, t->role);
	/* The two labels of one item must not be taken for each other: black bar for the pack, frame for the
	 * bag. */
	if (strcmp(t->role, "PACK") == 0) {
		canvas_box(c, x, y, width, h + 0.6);
		role.white = true;
	} else {
		canvas_frame(c, x, y, width, h + 0.6, 0.35);
	}
	canvas_text(c, &role, x + 1, y + 0.3, width - 2, t->role);
	y += h + 1.4;
	y += canvas_text(c, &strong, x, y, width, t->line);
	y += canvas_text(c, &body, x, y, width, t->more);
	y += canvas_text(c, &strong, x, y, width, t->number);
	canvas_text(c, &body, x, y, width, "hospital use only");
}

static int draw_label(struct canvas *c, const struct label *l, const struct label_text *t, const char *code,
                      struct error *e)
{
	char element[64];
	struct barcode b _cleanup_(barcode_deinit) = {0};
	snprintf(element, sizeof element, "(91)%s", code);
	int r = barcode_init(&b, l->rectangle ? SYMBOL_GS1_DATAMATRIX_12X26 : SYMBOL_GS1_DATAMATRIX_16X16,
	                     element, e);
	if (r < 0)
		return r;
	canvas_page(c, l->width_mm, l->height_mm);
	int module = barcode_module_dots(b.kind, c->dpi);
	double code_w = canvas_mm(c, barcode_width_dots(&b, module));
	double code_h = canvas_mm(c, barcode_height_dots(&b, module));
	/* The text stands beside the symbol, or below it on a narrow label. */
	double x = EDGE_MM + code_w + 2.2, width = c->width_mm - EDGE_MM - x, top = EDGE_MM;
	double height = c->height_mm - 2 * EDGE_MM;
	if (width < 22) {
		top = EDGE_MM + code_h + 1.5;
		x = EDGE_MM, width = c->width_mm - 2 * EDGE_MM, height = c->height_mm - EDGE_MM - top;
	}
	double size = LARGEST_PT;
	while (size > SMALLEST_PT && text_height(c, t, size, width) > height)
		size -= 0.2;
	if (size <= SMALLEST_PT && text_height(c, t, SMALLEST_PT, width) > height)
		return error_set(
		    e, -EINVAL,
		    "label for '%.60s': its text does not fit %.0f x %.0f mm in letters that can be read: "
		    "use a larger label or a shorter name",
		    t->line, l->width_mm, l->height_mm);
	double code_y = top > EDGE_MM ? EDGE_MM : EDGE_MM + (height - code_h) / 2;
	barcode_draw(&b, c, canvas_dots(c, EDGE_MM), canvas_dots(c, code_y), module, 0);
	draw_text(c, t, size, x, top + (height - text_height(c, t, size, width)) / 2, width);
	return c->failed;
}

static int draw_item(struct canvas *c, const struct label *l, const json_t *item, struct error *e)
{
	struct label_text t = {.line = json_text(item, "line"), .number = json_text(item, "number")};
	const char *lot = json_text(item, "lot"), *expiry = json_text(item, "expiry");
	snprintf(t.more, sizeof t.more, "%s%s%s%s%s", *lot ? "lot\u00a0" : "", lot,
	         *lot && *expiry ? "   " : "", *expiry ? "exp\u00a0" : "", expiry);
	int r = 0;
	t.role = "PACK";
	if (*json_text(item, "pack"))
		r = draw_label(c, l, &t, json_text(item, "pack"), e);
	t.role = "PAPER OR RETURN BAG";
	if (r == 0 && *json_text(item, "bag"))
		r = draw_label(c, l, &t, json_text(item, "bag"), e);
	return r;
}

static int pack_labels_draw(struct canvas *c, const json_t *document, struct error *e)
{
	const json_t *size = json_object_get(document, "label");
	struct label l = {.width_mm = (double)json_number(size, "width_mm", 57),
	                  .height_mm = (double)json_number(size, "height_mm", 32),
	                  .rectangle = strcmp(json_text(document, "shape"), "rectangle") == 0};
	size_t i;
	json_t *item;
	json_array_foreach(json_object_get(document, "items"), i, item)
	{
		int r = draw_item(c, &l, item, e);
		if (r < 0)
			return r;
	}
	return 0;
}

static const char *const shape_words[] = {"square", "rectangle", NULL};

/* clang-format off */
static const struct field label_fields[] = {
	INT("width_mm", REQUIRED, 20, 120, ""),
	INT("height_mm", REQUIRED, 12, 120, ""),
	END};
static const struct field item_fields[] = {
	TEXT("line", REQUIRED, 1, 60, "a text that does not fit at 1.6 mm refuses the document"),
	TEXT("lot", OPTIONAL, 1, 20, ""),
	TEXT("expiry", OPTIONAL, 1, 20, ""),
	TEXT("number", REQUIRED, 1, 20, "as people read it"),
	CODE("pack", OPTIONAL, OWN_ITEM, "role P: prints the label PACK; at least one of the two"),
	CODE("bag", OPTIONAL, OWN_ITEM, "role R: prints the label PAPER OR RETURN BAG"),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	OBJECT("label", OPTIONAL, label_fields, "size of one label; left out: 57 x 32"),
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
	}
	return 0;
}

const struct paper_kind paper_pack_labels = {
    .kind = "pack-labels",
    .what = "labels that stores stick on packs that bear no code of their own: two an item, in order. GS1 "
            "DataMatrix (91) + code, X = 3 dots at 203 dpi (0.375 mm), 4 at 300 (0.339), 9 at 600 (0.381)",
    .fields = fields,
    .check = check_label_items,
    .draw = pack_labels_draw,
    .dpi = 203,
};
