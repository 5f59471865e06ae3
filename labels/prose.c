/* Two papers of headings and sentences: the teaching sheet of a room, and the leaflet that a patient takes home. */
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

struct part {
	enum saying heading, lines[6]; /* SAY_NONE ends them */
};

static const struct prose_words {
	enum saying title, lead;
	struct part parts[3];
	enum saying foot[2];
} briefing_words = {SAY_BR_TITLE,
                    SAY_BR_LEAD,
                    {{SAY_BR_WHY, {SAY_BR_WHY_1, SAY_BR_WHY_2, SAY_BR_WHY_3, SAY_BR_WHY_4}},
                     {SAY_BR_DO, {SAY_BR_DO_1, SAY_BR_DO_2, SAY_BR_DO_3, SAY_BR_DO_4, SAY_BR_DO_5}},
                     {SAY_BR_LOOK, {SAY_BR_LOOK_1, SAY_BR_LOOK_2}}},
                    {SAY_BR_FOOT_1, SAY_BR_FOOT_2}},
  leaflet_words = {SAY_LF_TITLE,
                   SAY_LF_LEAD,
                   {{SAY_LF_IF, {SAY_LF_IF_1, SAY_LF_IF_2, SAY_LF_IF_3, SAY_LF_IF_4, SAY_LF_IF_5}},
                    {SAY_LF_WAIT, {SAY_LF_WAIT_1, SAY_LF_WAIT_2, SAY_LF_WAIT_3}},
                    {SAY_LF_ELSE, {SAY_LF_ELSE_1, SAY_LF_ELSE_2}}},
                   {SAY_LF_FOOT, SAY_NONE}};

/* What is on the page; `from` whose it is, `shout` what must be seen first. */
struct prose {
	const struct prose_words *words;
	const char *from, *shout;
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

static void part(struct prose *p, const struct part *part)
{
	struct style heading = styled(p, largest.heading, true), text = styled(p, largest.text, false);
	p->y += 2.2 * p->scale;
	if (p->draw)
		canvas_rule(p->c, EDGE_MM, p->y, p->width_mm);
	p->y += 2;
	put(p, &heading, EDGE_MM, p->width_mm, canvas_said(p->c, part->heading));
	p->y += 0.8;
	for (const enum saying *line = part->lines; *line; line++) {
		double dot = text.size_pt * 0.09;
		if (p->draw)
			canvas_box(p->c, EDGE_MM + 0.5, p->y + text.size_pt * 0.17, dot, dot);
		put(p, &text, EDGE_MM + 5, p->width_mm - 5, canvas_said(p->c, *line));
		p->y += 0.9 * p->scale;
	}
}

static void whole(struct prose *p)
{
	struct style title = styled(p, largest.title, true), room = styled(p, 11, false),
	             lead = styled(p, largest.lead, false),
	             source = {.size_pt = largest.source, .leading = 1};
	p->y = 9;
	put(p, &room, EDGE_MM, p->width_mm, p->from);
	put(p, &title, EDGE_MM, p->width_mm, canvas_said(p->c, p->words->title));
	p->y += 1;
	put(p, &lead, EDGE_MM, p->width_mm, canvas_said(p->c, p->words->lead));
	p->y += 2;
	shout(p, p->shout);
	for (int i = 0; i < 3; i++)
		part(p, &p->words->parts[i]);
	p->y += 3;
	if (p->draw)
		canvas_line(p->c, EDGE_MM, p->y, EDGE_MM + p->width_mm, p->y, 0.25);
	p->y += 1;
	for (int i = 0; i < 2 && p->words->foot[i]; i++)
		put(p, &source, EDGE_MM, p->width_mm, canvas_said(p->c, p->words->foot[i]));
}

/* On one page, as large as it can stand there. */
static int draw(struct prose *p, struct error *e)
{
	p->width_mm = A4_WIDTH_MM - 2 * EDGE_MM;
	p->scale = 1.3;
	canvas_page(p->c, A4_WIDTH_MM, A4_HEIGHT_MM);
	for (whole(p); p->y > A4_HEIGHT_MM - 8; whole(p))
		if ((p->scale -= 0.02) < LEAST)
			return error_set(e, -EINVAL,
			                 "document '%.40s': it does not fit one page in letters that can be "
			                 "read: say less",
			                 p->from);
	p->draw = true;
	whole(p);
	return p->c->failed;
}

static int briefing_draw(struct canvas *c, const json_t *d, struct error *e)
{
	const char *site = json_text(d, "site"), *room = json_text(d, "room");
	char from[200];
	canvas_say(c, SAY(BR_FROM, .text = site, .room = room), from, sizeof from);
	return draw(
	    &(struct prose){
	        .c = c, .words = &briefing_words, .from = from, .shout = canvas_said(c, SAY_BR_SHOUT)},
	    e);
}

/* A number is not broken over two lines. */
static void unbroken(const char *number, char *out, size_t size)
{
	size_t n = 0;
	for (; *number && n + 3 < size; number++)
		n += (size_t)snprintf(out + n, size - n, *number == ' ' ? "\u00a0" : "%c", *number);
}

static int leaflet_draw(struct canvas *c, const json_t *d, struct error *e)
{
	char number[160] = "", call[240];
	unbroken(json_text(d, "telephone"), number, sizeof number);
	canvas_say(c, SAY(LF_SHOUT, .text = number), call, sizeof call);
	return draw(
	    &(struct prose){.c = c, .words = &leaflet_words, .from = json_text(d, "site"), .shout = call}, e);
}

/* clang-format off */
static const struct field briefing_fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("room", REQUIRED, 1, 60, ""),
	END};
static const struct field leaflet_fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("telephone", REQUIRED, 1, 64, "that a patient can call by day and night"),
	END};
/* clang-format on */

const struct paper_kind paper_briefing = {
    .kind = "briefing",
    .what = "the room's teaching sheet: why bands are forgotten, what to do, what to look for. One page",
    .fields = briefing_fields,
    .draw = briefing_draw,
    .dpi = 300,
};

const struct paper_kind paper_leaflet = {
    .kind = "leaflet",
    .what = "what a patient takes home: the signs that need help at once, and whom to call. One page",
    .fields = leaflet_fields,
    .draw = leaflet_draw,
    .dpi = 300,
};
