/* Two papers of headings and sentences: the teaching sheet of a room, and the leaflet that a patient takes home. What they
 * say is in the document; here is only how it stands on the page, and that all of it does. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "labels/sheets.h"

#define EDGE_MM 15.0

struct size { /* in points, at the largest that is tried */
	double title, lead, heading, text, source;
};
/* To be read on a wall by people who stand; held in the hand, by people who may have lost their glasses. */
static const struct size largest = {30, 17, 17, 14, 8.5};
#define LEAST 0.72 /* of that: smaller is not printed */

struct prose {
	struct canvas *c;
	double width_mm, y, scale;
	bool draw;
};

static struct style styled(const struct prose *p, double pt, bool bold)
{
	return (struct style){.size_pt = pt * p->scale, .bold = bold, .leading = 1};
}

static void put(struct prose *p, const struct style *s, double x, double width, const char *text)
{
	p->y +=
	    p->draw ? canvas_text(p->c, s, x, p->y, width, text) : canvas_text_height(p->c, s, width, text);
}

/* A box of words that must be seen first; white on black. */
static void shout(struct prose *p, const char *words)
{
	struct style s = styled(p, largest.lead, true);
	double h = canvas_text_height(p->c, &s, p->width_mm - 6, words);
	if (!*words)
		return;
	if (p->draw)
		canvas_box(p->c, EDGE_MM, p->y, p->width_mm, h + 4);
	s.white = true;
	p->y += 2;
	put(p, &s, EDGE_MM + 3, p->width_mm - 6, words);
	p->y += 4;
}

static void part(struct prose *p, const json_t *part)
{
	struct style heading = styled(p, largest.heading, true), text = styled(p, largest.text, false);
	size_t i;
	json_t *line;
	p->y += 2.2 * p->scale;
	if (p->draw)
		canvas_rule(p->c, EDGE_MM, p->y, p->width_mm);
	p->y += 2;
	put(p, &heading, EDGE_MM, p->width_mm, json_text(part, "heading"));
	p->y += 0.8;
	json_array_foreach(json_object_get(part, "lines"), i, line)
	{
		double dot = text.size_pt * 0.09;
		if (p->draw)
			canvas_box(p->c, EDGE_MM + 0.5, p->y + text.size_pt * 0.17, dot, dot);
		put(p, &text, EDGE_MM + 5, p->width_mm - 5, json_string_value(line));
		p->y += 0.9 * p->scale;
	}
}

static void whole(struct prose *p, const json_t *d)
{
	struct style title = styled(p, largest.title, true), room = styled(p, 11, false),
	             lead = styled(p, largest.lead, false),
	             source = {.size_pt = largest.source, .leading = 1};
	size_t i;
	json_t *each;
	p->y = 9;
	put(p, &room, EDGE_MM, p->width_mm, json_text(d, "from"));
	put(p, &title, EDGE_MM, p->width_mm, json_text(d, "title"));
	p->y += 1;
	put(p, &lead, EDGE_MM, p->width_mm, json_text(d, "lead"));
	p->y += 2;
	shout(p, json_text(d, "shout"));
	json_array_foreach(json_object_get(d, "parts"), i, each) part(p, each);
	p->y += 3;
	if (p->draw)
		canvas_line(p->c, EDGE_MM, p->y, EDGE_MM + p->width_mm, p->y, 0.25);
	p->y += 1;
	json_array_foreach(json_object_get(d, "foot"), i, each)
	    put(p, &source, EDGE_MM, p->width_mm, json_string_value(each));
}

/* On one page, as large as it can stand there. */
static int draw(struct canvas *c, const json_t *d, double width_mm, double height_mm, struct error *e)
{
	struct prose p = {.c = c, .width_mm = width_mm - 2 * EDGE_MM, .scale = 1.3};
	canvas_page(c, width_mm, height_mm);
	for (whole(&p, d); p.y > height_mm - 8; whole(&p, d))
		if ((p.scale -= 0.02) < LEAST)
			return error_set(e, -EINVAL,
			                 "document '%.40s': it does not fit one page in letters that can be "
			                 "read: say less",
			                 json_text(d, "title"));
	p.draw = true;
	whole(&p, d);
	return c->failed;
}

static int briefing_draw(struct canvas *c, const json_t *d, struct error *e)
{
	return draw(c, d, A4_WIDTH_MM, A4_HEIGHT_MM, e);
}

static int leaflet_draw(struct canvas *c, const json_t *d, struct error *e)
{
	return draw(c, d, A4_WIDTH_MM, A4_HEIGHT_MM, e);
}

/* clang-format off */
static const struct field part_fields[] = {
	TEXT("heading", REQUIRED, 1, 80, ""),
	TEXTS("lines", REQUIRED, 1, 12, 240, "a sentence or two each"),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("from", REQUIRED, 1, 120, "room or site, and for whom"),
	TEXT("title", REQUIRED, 1, 80, ""),
	TEXT("lead", OPTIONAL, 1, 300, ""),
	TEXT("shout", OPTIONAL, 1, 300, "what must be seen first"),
	OBJECTS("parts", REQUIRED, 1, 8, part_fields, ""),
	TEXTS("foot", REQUIRED, 1, 8, 400, "sources and cautions"),
	END};
/* clang-format on */

const struct paper_kind paper_briefing = {
    .kind = "briefing",
    .what = "the room's teaching sheet: why bands are forgotten, what to do, what to look for. One page",
    .fields = fields,
    .draw = briefing_draw,
    .dpi = 300,
};

const struct paper_kind paper_leaflet = {
    .kind = "leaflet",
    .what = "what a patient takes home: the signs that need help at once, and whom to call. One page",
    .fields = fields,
    .draw = leaflet_draw,
    .dpi = 300,
};
