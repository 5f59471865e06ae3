#include "labels/pictures.h"

#include <errno.h>
#include <string.h>

#include "base/base64.h"
#include "labels/canvas.h"
#include "labels/chart-draw.h"
#include "labels/paper.h"

#define PICTURE_WIDTH_MM 180.0

static int draw_picture(const struct language *language, const json_t *chart, struct buf *out,
                        struct error *e)
{
	struct canvas c;
	struct style title = {.size_pt = 10, .bold = true};
	int n = canvas_init_picture(&c, out, PICTURE_WIDTH_MM, CHART_HEIGHT_MM + 8, e);
	if (n < 0)
		return n;
	c.language = language;
	canvas_text(&c, &title, 2, 1.5, PICTURE_WIDTH_MM - 4, json_text(chart, "title"));
	chart_draw(&c, chart, 1, 8, PICTURE_WIDTH_MM - 2);
	n = canvas_finish(&c, e);
	canvas_deinit(&c);
	return n;
}

int pictures_of(const struct languages *languages, const json_t *document, pictures_fn each, void *context,
                struct error *e)
{
	size_t i, k;
	const json_t *s, *chart;
	const struct language *language =
	    languages ? languages_find(languages, json_text(document, "language")) : NULL;
	int n = paper_check(document, e);
	if (n == 0 && strcmp(json_text(document, "kind"), "report") != 0)
		n = error_set(e, -EINVAL, "document field 'kind': only a report has pictures: give one");
	if (n < 0)
		return n;
	json_array_foreach(json_object_get(document, "sections"), i, s)
	{
		json_array_foreach(json_object_get(s, "charts"), k, chart)
		{
			struct buf svg _cleanup_(buf_free) = {0};
			if (!json_array_size(json_object_get(chart, "points")))
				continue;
			n = draw_picture(language, chart, &svg, e);
			if (n == 0)
				n = each(context, json_text(chart, "name"), &svg);
			if (n < 0)
				return n;
		}
	}
	return 0;
}

/* One label of it: the other's code is left out. */
static json_t *picture_of(const struct languages *languages, const json_t *document, const char *without,
                          struct error *e)
{
	struct buf png _cleanup_(buf_free) = {0}, text _cleanup_(buf_free) = {0};
	json_t *one _cleanup_(json_drop) = json_deep_copy(document);
	json_t *items = json_object_get(one, "items"), *told = NULL;
	int dpi, width, height;
	while (json_array_size(items) > 1)
		json_array_remove(items, json_array_size(items) - 1);
	json_object_del(json_array_get(items, 0), without);
	if (paper_dots(languages, one, &png, &dpi, &width, &height, e) < 0)
		return NULL;
	if (base64_write(&text, png.data, png.size) == 0)
		told = json_pack("{s:s,s:i,s:i,s:i}", "png", text.data, "dpi", dpi, "width", width, "height",
		                 height);
	if (!told)
		error_set(e, -ENOMEM, "paper: no memory for a picture: close other programs");
	return told;
}

json_t *pictures_of_label(const struct languages *languages, const json_t *document, struct error *e)
{
	json_t *pack = NULL, *bag = NULL;
	if (strcmp(json_text(document, "kind"), "pack-labels") != 0) {
		error_set(e, -EINVAL, "document field 'kind': only labels of packs are drawn so: give some");
		return NULL;
	}
	pack = picture_of(languages, document, "bag", e);
	bag = pack ? picture_of(languages, document, "pack", e) : NULL;
	json_t *both = bag ? json_pack("[o,o]", pack, bag) : NULL;
	if (!bag)
		json_decref(pack);
	return both;
}
