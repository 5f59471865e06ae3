#include "labels/paper.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "labels/flow.h"
#include "labels/sheets.h"

static const struct paper_kind *const kinds[] = {
#define X(name) &paper_##name,
    PAPERS(X)
#undef X
};
#define X(name) +1
enum { KINDS = 0 PAPERS(X) };
#undef X

/* NULL, with one sentence that names those that there are. */
static const struct paper_kind *kind_of(const char *name, struct error *e)
{
	char list[200] = "";
	for (int i = 0; i < KINDS; i++) {
		if (strcmp(kinds[i]->kind, name) == 0)
			return kinds[i];
		size_t used = strlen(list);
		snprintf(list + used, sizeof list - used, "%s%s",
		         i == 0           ? ""
		         : i + 1 == KINDS ? " or "
		                          : ", ",
		         kinds[i]->kind);
	}
	error_set(e, -EINVAL, "document field 'kind': '%.40s' is no kind of document: give %s", name, list);
	return NULL;
}

static int check(const json_t *d, const struct paper_kind **kind, struct error *e)
{
	const char *name = json_text(d, "kind");
	if (!json_is_object(d) || !*name)
		return error_set(
		    e, -EINVAL, "document: it has no field 'kind': give one JSON object with 'v' and 'kind'");
	*kind = kind_of(name, e);
	int r = *kind ? schema_check(d, (*kind)->fields, e) : -EINVAL;
	json_int_t dpi = json_number(d, "dpi", 300);
	if (r == 0 && dpi != 203 && dpi != 300 && dpi != 600)
		r = error_set(e, -EINVAL,
		              "document field 'dpi': it is none that is known here: give 203, 300 or 600");
	return r == 0 && (*kind)->check ? (*kind)->check(d, e) : r;
}

int paper_check(const json_t *d, struct error *e)
{
	const struct paper_kind *kind;
	return check(d, &kind, e);
}

int paper_fields(const char *name, struct buf *out, struct error *e)
{
	const struct paper_kind *only = name ? kind_of(name, e) : NULL;
	int r = name && !only ? -EINVAL : 0;
	for (int i = 0; i < KINDS && r == 0; i++) {
		if (only && kinds[i] != only)
			continue;
		r = buf_printf(out, "%s%s: %s\n", out->size ? "\n" : "", kinds[i]->kind, kinds[i]->what);
		r = r < 0 ? r : schema_tell(kinds[i]->fields, 1, out);
	}
	return r == -ENOMEM ? error_set(e, r, "cannot tell the fields: out of memory: try again") : r;
}

void paper_title(const json_t *d, char out[PAPER_TITLE_MAX])
{
	if (json_object_get(d, "slip"))
		snprintf(out, PAPER_TITLE_MAX, "bandtally slip %07lld copy %lld",
		         (long long)json_number(d, "slip", 0), (long long)json_number(d, "copy", 0));
	else
		snprintf(out, PAPER_TITLE_MAX, "bandtally %.20s %.25s", json_text(d, "kind"),
		         json_text(d, "time"));
}

static int dpi_of(const json_t *d, const struct paper_kind *kind)
{
	bool roll = strcmp(json_text(d, "paper"), "roll80") == 0;
	return (int)json_number(d, "dpi", roll ? 203 : kind->dpi);
}

/* Whether a page of that paper can be cut from the sheet. */
static bool has_room(const char *paper, struct sheet_size sheet)
{
	const struct look *l = look_of(paper);
	return l && !l->roll && l->width_mm <= sheet.width_mm + 0.5 && l->height_mm <= sheet.height_mm + 0.5;
}

/* The paper that a document is drawn on; NULL: the sheet has room for none of them, or nothing is known of it. */
static const char *paper_on(const json_t *d, struct sheet_size sheet)
{
	static const char *const smaller[] = {"a5", "a6"};
	const char *own = json_text(d, "paper");
	if (!json_object_get(d, "slip"))
		return NULL;
	own = *own ? own : "a5";
	if (has_room(own, sheet) || look_of(own)->roll)
		return look_of(own)->roll ? NULL : own;
	for (size_t i = 0; i < sizeof smaller / sizeof *smaller; i++)
		if (has_room(smaller[i], sheet))
			return smaller[i];
	return NULL;
}

static int draw(const struct languages *languages, const json_t *d, const struct paper_kind *kind,
                struct sheet_size sheet, struct buf *pdf, int *pages, struct trace *trace, struct error *e)
{
	char title[PAPER_TITLE_MAX];
	struct canvas c;
	paper_title(d, title);
	int r = canvas_init(&c, pdf, dpi_of(d, kind), title, json_text(d, "time"), trace, e);
	if (r < 0)
		return r;
	canvas_speak(&c, languages ? languages_find(languages, json_text(d, "language")) : NULL);
	c.sheet_width_mm = sheet.width_mm;
	c.sheet_height_mm = sheet.height_mm;
	r = kind->draw(&c, d, e);
	int finished = canvas_finish(&c, r < 0 ? NULL : e);
	*pages = c.page;
	canvas_deinit(&c);
	return r < 0 ? r : finished;
}

int paper_dots(const struct languages *languages, const json_t *d, struct buf *png, int *dpi, int *width,
               int *height, struct error *e)
{
	const struct paper_kind *kind = NULL;
	struct canvas c;
	int r = check(d, &kind, e);
	if (r == 0)
		r = canvas_init_dots(&c, png, *dpi = dpi_of(d, kind), e);
	if (r < 0)
		return r;
	canvas_speak(&c, languages ? languages_find(languages, json_text(d, "language")) : NULL);
	r = kind->draw(&c, d, e);
	*width = canvas_dots(&c, c.width_mm);
	*height = canvas_dots(&c, c.height_mm);
	int finished = r < 0 ? r : canvas_finish(&c, e);
	canvas_deinit(&c);
	return finished;
}

int paper_pdf_on(const struct languages *languages, const json_t *d, struct sheet_size sheet, struct buf *pdf,
                 int *pages, struct trace *trace, struct error *e)
{
	const struct paper_kind *kind = NULL;
	size_t before = pdf->size;
	int r = check(d, &kind, e);
	if (r < 0)
		return r;
	const char *paper = paper_on(d, sheet);
	if (!paper)
		sheet = (struct sheet_size){0};
	_cleanup_(json_drop) json_t *on = paper ? json_copy((json_t *)d) : json_incref((json_t *)d);
	if (paper)
		json_object_set_new(on, "paper", json_string(paper));
	r = draw(languages, on, kind, sheet, pdf, pages, trace, e);
	if (r < 0) {
		pdf->size = before;
		if (pdf->data)
			pdf->data[before] = '\0';
	}
	return r;
}

int paper_pdf_traced(const struct languages *languages, const json_t *d, struct buf *pdf, int *pages,
                     struct trace *trace, struct error *e)
{
	return paper_pdf_on(languages, d, (struct sheet_size){0}, pdf, pages, trace, e);
}

int paper_pdf(const struct languages *languages, const json_t *d, struct buf *pdf, int *pages,
              struct error *e)
{
	return paper_pdf_traced(languages, d, pdf, pages, NULL, e);
}
