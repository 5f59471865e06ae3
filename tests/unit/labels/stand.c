#include "stand.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

static int meet(const struct mark *a, const struct mark *b)
{
	const double slack = 0.08; /* a line's box is higher than its ink */
	return a->x_mm + a->width_mm > b->x_mm + slack && b->x_mm + b->width_mm > a->x_mm + slack &&
	       a->y_mm + a->height_mm > b->y_mm + slack && b->y_mm + b->height_mm > a->y_mm + slack;
}

static int is_within(const struct trace *t, const struct mark *m, double edge_mm)
{
	return m->x_mm >= edge_mm - 0.01 && m->y_mm >= edge_mm - 0.01 &&
	       m->x_mm + m->width_mm <= t->page_width_mm[m->page] - edge_mm + 0.01 &&
	       m->y_mm + m->height_mm <= t->page_height_mm[m->page] - edge_mm + 0.01;
}

/* It names the space that it stands in. */
static int names_the_space(const struct mark *text, const struct mark *space, const struct language *l)
{
	return space->kind == MARK_SPACE && strcmp(text->text, saying_text_in(l, SAY_P_PATIENT)) == 0;
}

static int may_meet(const struct mark *a, const struct mark *b, const struct language *l)
{
	return a->kind == MARK_CODE || b->kind == MARK_CODE || /* its quiet zone is looked at instead */
	       names_the_space(a, b, l) || names_the_space(b, a, l);
}

int stand_check(const struct trace *t, double edge_mm, const struct language *language, char why[STAND_MAX])
{
	for (size_t i = 0; i < t->count; i++) {
		const struct mark *m = &t->marks[i];
		if (m->page >= TRACE_PAGES || (m->kind != MARK_QUIET && !is_within(t, m, edge_mm))) {
			snprintf(why, STAND_MAX,
			         "page %d: '%s' is not within the page: %.1f, %.1f, %.1f x %.1f mm", m->page,
			         m->text, m->x_mm, m->y_mm, m->width_mm, m->height_mm);
			return -EINVAL;
		}
		for (size_t k = i + 1; k < t->count && t->marks[k].page == m->page; k++)
			if (!may_meet(m, &t->marks[k], language) && meet(m, &t->marks[k])) {
				snprintf(why, STAND_MAX, "page %d: '%s' lies on '%s'", m->page, m->text,
				         t->marks[k].text);
				return -EINVAL;
			}
	}
	return 0;
}
