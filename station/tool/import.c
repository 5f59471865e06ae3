#include "tool/import.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "tool/client.h"

#define FILE_MAX (1u << 20)

int import_read_file(const char *path, struct buf *out, struct error *e)
{
	char part[65536];
	FILE *f = fopen(path, "re");
	if (!f)
		return error_set(e, -errno, "cannot read %s: %s: check the path", path, strerror(errno));
	size_t n;
	int r = 0;
	while (r == 0 && (n = fread(part, 1, sizeof part, f)) > 0)
		r = out->size + n > FILE_MAX ? error_set(e, -EFBIG, "%s is longer than 1 MiB: split it", path)
		                             : buf_add(out, part, n);
	if (r == 0 && ferror(f))
		r = error_set(e, -EIO, "cannot read %s: it is not a file that can be read: give a CSV file",
		              path);
	fclose(f);
	return r;
}

static json_t *with_path(const char *path, struct error *e)
{
	char why[ERROR_TEXT_MAX];
	snprintf(why, sizeof why, "%s", e->text);
	error_set(e, e->code, "%s: %.400s", path, why);
	return NULL;
}

json_t *import_send(json_t *request, const char *path, const struct buf *text, struct error *e)
{
	json_t *csv = json_stringn(text->data ? text->data : "", text->size);
	if (!csv) {
		json_decref(request);
		error_set(e, -EINVAL, "the file is not UTF-8: save it as CSV in UTF-8");
		return with_path(path, e);
	}
	json_object_set_new(request, "csv", csv);
	json_t *a = client_ask(request, e);
	return a || e->code != -EPERM ? a : with_path(path, e);
}

static void print_place(const json_t *change)
{
	int line = (int)json_number(change, "line", 0);
	if (line)
		printf("line %-4d ", line);
	else
		printf("%-10s", "");
	printf("%-9s ", json_text(change, "what"));
}

static int many(const json_t *answer, const char *what)
{
	return (int)json_number(answer, what, 0);
}

/* --- the catalogue --------------------------------------------------------------------------------- */

static void print_line(const json_t *change)
{
	size_t i;
	json_t *x;
	print_place(change);
	printf("%s: %s", json_text(change, "key"), json_text(change, "name"));
	json_array_foreach(json_object_get(change, "columns"), i, x)
	    printf("; %s was '%s', is '%s'", json_text(x, "column"), json_text(x, "was"), json_text(x, "is"));
	putchar('\n');
}

/* Of lines that the catalogue loses. */
static void print_left(const json_t *changes)
{
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)changes, i, x)
	{
		const char *key = json_text(x, "key");
		if (many(x, "packs"))
			printf("%s is not in the file, and packs of it lie in stores or rooms (%d): without "
			       "its line none is issued; 'bandtally stock list %s' has them, and its key "
			       "recalls, counts and writes them off\n",
			       key, many(x, "packs"), key);
	}
}

void import_print_lines(const json_t *answer, int preview)
{
	size_t i;
	json_t *x;
	if (preview)
		json_array_foreach(json_object_get(answer, "changes"), i, x) print_line(x);
	printf("%d lines %s: %d added, %d changed, %d as they were, %d removed\n", many(answer, "count"),
	       preview ? "read and none taken" : "taken into the catalogue", many(answer, "added"),
	       many(answer, "changed"), many(answer, "stay"), many(answer, "removed"));
	print_left(json_object_get(answer, "changes"));
	if (many(answer, "absent"))
		printf("%d lines of the catalogue are not in the file and stay (--whole: they are removed)\n",
		       many(answer, "absent"));
}

/* --- staff ----------------------------------------------------------------------------------------- */

static void print_person(const json_t *change)
{
	const json_t *was = json_object_get(change, "was");
	print_place(change);
	printf("%06d %s, %s%s", many(change, "number"), json_text(change, "name"), json_text(change, "kind"),
	       json_truth(change, "registered") ? ", registered" : "");
	if (was && strcmp(json_text(change, "what"), "withdrawn") != 0)
		printf("; was %s, %s%s", json_text(was, "name"), json_text(was, "kind"),
		       json_truth(was, "registered") ? ", registered" : "");
	putchar('\n');
}

void import_print_people(const json_t *answer, int preview)
{
	size_t i;
	json_t *x;
	json_array_foreach(json_object_get(answer, "changes"), i, x) print_person(x);
	printf("%d people %s: %d added, %d changed, %d come back, %d as they were, %d withdrawn\n",
	       many(answer, "count"), preview ? "read and none taken" : "taken", many(answer, "added"),
	       many(answer, "changed"), many(answer, "back"), many(answer, "stay"),
	       many(answer, "withdrawn"));
}
