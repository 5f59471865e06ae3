#include "board/reports.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct report_set {
	struct one_report {
		char name[REPORTS_NAME_MAX];
		struct buf text;
	} list[REPORTS_MAX];
	int n;
	size_t bytes;
};

struct reports {
	struct report_set shown, coming;
	bool comes;
};

struct reports *reports_new(void)
{
	return calloc(1, sizeof(struct reports));
}

static void forget(struct report_set *s)
{
	for (int i = 0; i < s->n; i++)
		buf_free(&s->list[i].text);
	*s = (struct report_set){0};
}

void reports_free(struct reports *r)
{
	if (!r)
		return;
	forget(&r->shown);
	forget(&r->coming);
	free(r);
}

static bool is_name(const char *name)
{
	return strlen(name) < REPORTS_NAME_MAX &&
	       name[strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789-")] == 0;
}

static struct one_report *find(const struct report_set *s, const char *name)
{
	for (int i = 0; i < s->n; i++)
		if (strcmp(s->list[i].name, name) == 0)
			return (struct one_report *)&s->list[i];
	return NULL;
}

static int add_part(struct report_set *s, const char *name, const char *part)
{
	size_t size = strlen(part);
	struct one_report *page = find(s, name);
	if (!is_name(name))
		return -EINVAL;
	if ((!page && s->n == REPORTS_MAX) || size > REPORTS_BYTES_MAX - s->bytes)
		return -ENOSPC;
	if (!page) {
		page = &s->list[s->n++];
		snprintf(page->name, sizeof page->name, "%s", name);
	}
	s->bytes += size;
	return buf_add(&page->text, part, size);
}

/* A set without the page that leads to the others could not be looked at. */
static int show(struct reports *r)
{
	if (!find(&r->coming, ""))
		return -EINVAL;
	forget(&r->shown);
	r->shown = r->coming;
	r->coming = (struct report_set){0};
	r->comes = false;
	return 0;
}

int reports_take(struct reports *r, const json_t *told)
{
	const json_t *page = json_object_get(told, "page"), *part = json_object_get(told, "part");
	int n = -EINVAL;
	if (json_truth(told, "begin")) {
		forget(&r->coming);
		r->comes = true;
		return 0;
	}
	if (r->comes && json_truth(told, "show"))
		n = show(r);
	else if (r->comes && json_is_string(page) && json_is_string(part))
		n = add_part(&r->coming, json_string_value(page), json_string_value(part));
	if (n < 0) {
		forget(&r->coming);
		r->comes = false;
	}
	return n;
}

bool reports_path(const char *path)
{
	size_t size = strlen(REPORTS_PATH);
	return strncmp(path, REPORTS_PATH, size) == 0 && (!path[size] || path[size] == '/');
}

const struct buf *reports_text(const struct reports *r, const char *path)
{
	const char *name = reports_path(path) ? path + strlen(REPORTS_PATH) : NULL;
	const struct one_report *page = name ? find(&r->shown, *name == '/' ? name + 1 : name) : NULL;
	return page ? &page->text : NULL;
}
