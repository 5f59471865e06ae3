#include "labels/pictures.h"

#include <errno.h>
#include <string.h>

#include "labels/canvas.h"
#include "labels/chart-draw.h"
#include "labels/paper.h"

#define PICTURE_WIDTH_MM 180.0

static int draw_picture(const json_t *chart, struct buf *out, struct error *e)
{
	struct canvas c;
	struct style title = {.size_pt = 10, .bold = true};
	int n = canvas_init_picture(&c, out, PICTURE_WIDTH_MM, CHART_HEIGHT_MM + 8, e);
	if (n < 0)
		return n;
	canvas_text(&c, &title, 2, 1.5, PICTURE_WIDTH_MM - 4, json_text(chart, "title"));
	chart_draw(&c, chart, 1, 8, PICTURE_WIDTH_MM - 2);
	n = canvas_finish(&c, e);
	canvas_deinit(&c);
	return n;
}

int pictures_of(const json_t *document, pictures_fn each, void *context, struct error *e)
{
	size_t i, k;
	const json_t *s, *chart;
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
			n = draw_picture(chart, &svg, e);
			if (n == 0)
				n = each(context, json_text(chart, "name"), &svg);
			if (n < 0)
				return n;
		}
	}
	return 0;
}
