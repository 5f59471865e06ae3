#include "board/catalogues.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/json.h"
#include "base/log.h"
#include "words/page-catalogue.h"

static int take(struct catalogues *out, const struct language *l)
{
	_cleanup_(json_drop) json_t *told = language_catalogue(l);
	struct buf *text = &out->list[out->n].text;
	int n = told ? json_write_canonical(told, text) : -ENOMEM;
	if (n < 0)
		return n;
	snprintf(out->list[out->n].path, sizeof out->list[out->n].path, "/words/%s.json", language_code(l));
	out->n++;
	return 0;
}

void catalogues_read(struct catalogues *out)
{
	struct languages all;
	struct error e = {0};
	*out = (struct catalogues){0};
	if (languages_read(&all, languages_folder(), &e) < 0)
		log_line("%s", e.text);
	for (int i = 0; i < all.n; i++) {
		int n = take(out, all.list[i]);
		if (n < 0)
			log_errno(n, "the page has no words of '%s' and is in English",
			          language_code(all.list[i]));
	}
	languages_free(&all);
}

void catalogues_free(struct catalogues *c)
{
	while (c->n)
		buf_free(&c->list[--c->n].text);
}

const char *catalogues_text(const struct catalogues *c, const char *path)
{
	for (int i = 0; i < c->n; i++)
		if (strcmp(c->list[i].path, path) == 0)
			return c->list[i].text.data;
	return NULL;
}
