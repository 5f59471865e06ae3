#include "board/catalogues.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/json.h"
#include "base/log.h"
#include "board/assets.h"
#include "words/page-catalogue.h"

static struct told_text *further(struct catalogues *out, const char *type)
{
	struct told_text *t = &out->list[out->n];
	*t = (struct told_text){.type = type};
	return t;
}

static int take(struct catalogues *out, const struct language *l)
{
	_cleanup_(json_drop) json_t *told = language_catalogue(l);
	struct told_text *t = further(out, "application/json");
	int n = told ? json_write_canonical(told, &t->text) : -ENOMEM;
	if (n < 0)
		return n;
	snprintf(t->path, sizeof t->path, "/words/%s.json", language_code(l));
	out->n++;
	return 0;
}

/* --- the pages ------------------------------------------------------------------------------------ */

static int add_escaped(struct buf *out, const char *words)
{
	int n = 0;
	for (; *words && n == 0; words++)
		n = *words == '<'   ? buf_add_text(out, "&lt;")
		    : *words == '&' ? buf_add_text(out, "&amp;")
		                    : buf_add(out, words, 1);
	return n;
}

static int add_said(struct buf *out, const struct language *l, enum saying saying)
{
	int n = buf_printf(out, "<span lang=\"%s\" dir=\"%s\">", language_code(l),
	                   language_is_rtl(l) ? "rtl" : "ltr");
	if (n == 0)
		n = add_escaped(out, saying_text_in(l, saying));
	return n < 0 ? n : buf_add_text(out, "</span>");
}

/* In English, and in each language that says it otherwise. */
static int add_in_all(struct buf *out, const struct languages *all, enum saying saying)
{
	int n = add_said(out, NULL, saying);
	for (int i = 0; i < all->n && n == 0; i++)
		if (strcmp(saying_text_in(all->list[i], saying), saying_text(saying)) != 0) {
			n = buf_add_text(out, "<br>");
			if (n == 0)
				n = add_said(out, all->list[i], saying);
		}
	return n;
}

static const struct page {
	const char *path, *asset;
	enum saying unfinished; /* stands in it by its key, in braces */
} pages[CATALOGUES_PAGES] = {{"/", "index.html", SAY_B_NOT_LOADED},
                             {"/index.html", "index.html", SAY_B_NOT_LOADED},
                             {"/desk", "desk.html", SAY_B_DESK_NOT_LOADED},
                             {"/desk.html", "desk.html", SAY_B_DESK_NOT_LOADED},
                             {"/stores", "stores.html", SAY_B_DESK_NOT_LOADED},
                             {"/stores.html", "stores.html", SAY_B_DESK_NOT_LOADED}};

static const struct asset *asset_of(const char *name)
{
	for (size_t i = 0; i < assets_count; i++)
		if (strcmp(assets[i].name, name) == 0)
			return &assets[i];
	return NULL;
}

static int take_page(struct catalogues *out, const struct languages *all, const struct page *page)
{
	const struct asset *a = asset_of(page->asset);
	struct told_text *t = further(out, "text/html; charset=utf-8");
	char key[64];
	size_t size = (size_t)snprintf(key, sizeof key, "{%s}", saying_key(page->unfinished));
	const char *bytes = a ? (const char *)a->bytes : NULL,
	           *at = a ? memmem(bytes, a->size, key, size) : NULL;
	if (!at)
		return -ENOENT;
	size_t before = (size_t)(at - bytes);
	int n = buf_add(&t->text, bytes, before);
	if (n == 0)
		n = add_in_all(&t->text, all, page->unfinished);
	if (n == 0)
		n = buf_add(&t->text, at + size, a->size - before - size);
	if (n < 0)
		return n;
	snprintf(t->path, sizeof t->path, "%s", page->path);
	out->n++;
	return 0;
}

void catalogues_read(struct catalogues *out)
{
	struct languages all;
	struct error e = {0};
	*out = (struct catalogues){0};
	if (languages_read(&all, languages_folder(), &e) < 0)
		log_warn(LOG_BOARD, "%s", e.text);
	for (int i = 0; i < CATALOGUES_PAGES; i++) {
		int n = take_page(out, &all, &pages[i]);
		if (n < 0)
			log_warn_errno(LOG_BOARD, n,
			               "the page %s cannot be made: the board shows nothing there",
			               pages[i].path);
	}
	for (int i = 0; i < all.n; i++) {
		int n = take(out, all.list[i]);
		if (n < 0)
			log_warn_errno(LOG_BOARD, n, "the page has no words of '%s' and is in English",
			               language_code(all.list[i]));
	}
	languages_free(&all);
}

void catalogues_free(struct catalogues *c)
{
	while (c->n)
		buf_free(&c->list[--c->n].text);
}

const struct told_text *catalogues_text(const struct catalogues *c, const char *path)
{
	for (int i = 0; i < c->n; i++)
		if (strcmp(c->list[i].path, path) == 0)
			return &c->list[i];
	return NULL;
}
