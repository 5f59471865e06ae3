/* How long paper takes, beside a bare cairo PDF with as many pango lines of the same length, measured in the
 * same run. Each slip is made in a process of its own, so that loading fonts counts. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <cairo-pdf.h>

#include "labels/canvas.h"
#include "labels/paper.h"

#define RUNS 15
#define LABELS 1000

static double now_ms(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static json_t *load(const char *folder, const char *name)
{
	char path[512];
	snprintf(path, sizeof path, "%s/%s.json", folder, name);
	json_t *d = json_load_file(path, 0, NULL);
	if (!d) {
		fprintf(stderr, "bench-paper: %s cannot be read: give the folder labels/samples\n", path);
		exit(1);
	}
	return d;
}

static void made(const json_t *d, struct trace *t)
{
	struct buf pdf = {0};
	struct error e;
	int pages;
	if (paper_pdf_traced(NULL, d, &pdf, &pages, t, &e) < 0) {
		fprintf(stderr, "bench-paper: %s\n", e.text);
		exit(1);
	}
	buf_free(&pdf);
}

static cairo_status_t drop(void *closure, const unsigned char *data, unsigned int length)
{
	(void)closure;
	(void)data;
	(void)length;
	return CAIRO_STATUS_SUCCESS;
}

/* The reference: the same texts on as many pages, and nothing else. */
static void bare(const struct trace *t)
{
	cairo_surface_t *s = cairo_pdf_surface_create_for_stream(drop, NULL, 420, 595);
	cairo_t *cr = cairo_create(s);
	PangoLayout *layout = pango_cairo_create_layout(cr);
	PangoFontDescription *font = pango_font_description_from_string("DejaVu Sans 8");
	int page = 1;
	pango_layout_set_font_description(layout, font);
	for (size_t i = 0; i < t->count; i++) {
		if (t->marks[i].kind != MARK_TEXT)
			continue;
		for (; page < t->marks[i].page; page++)
			cairo_show_page(cr);
		pango_layout_set_text(layout, t->marks[i].text, -1);
		cairo_move_to(cr, 20, 20);
		pango_cairo_show_layout(cr, layout);
	}
	cairo_show_page(cr);
	pango_font_description_free(font);
	g_object_unref(layout);
	cairo_destroy(cr);
	cairo_surface_destroy(s);
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

/* Median of a first page in a new process: the slip, or the reference. */
static double first_ms(const json_t *d, const struct trace *t)
{
	double all[RUNS];
	for (int i = 0; i < RUNS; i++) {
		int ends[2];
		if (pipe(ends) < 0)
			exit(1);
		pid_t child = fork();
		if (child == 0) {
			struct error e;
			double start = now_ms();
			if (fonts_open(&e) < 0)
				_exit(1);
			if (t)
				bare(t);
			else
				made(d, NULL);
			double took = now_ms() - start;
			_exit(write(ends[1], &took, sizeof took) == sizeof took ? 0 : 1);
		}
		close(ends[1]);
		if (child < 0 || read(ends[0], &all[i], sizeof all[i]) != sizeof all[i])
			exit(1);
		close(ends[0]);
		waitpid(child, NULL, 0);
	}
	qsort(all, RUNS, sizeof *all, by_value);
	return all[RUNS / 2];
}

/* The texts of a document, found in a child so that this process stays without fonts. */
static void trace_in_child(const json_t *d, struct trace *t)
{
	int ends[2];
	if (pipe(ends) < 0)
		exit(1);
	pid_t child = fork();
	if (child == 0) {
		struct error e;
		if (fonts_open(&e) < 0)
			_exit(1);
		made(d, t);
		FILE *f = fdopen(ends[1], "w");
		fwrite(&t->count, sizeof t->count, 1, f);
		fwrite(t->marks, sizeof *t->marks, t->count, f);
		fclose(f);
		_exit(0);
	}
	close(ends[1]);
	FILE *f = fdopen(ends[0], "r");
	if (!f || fread(&t->count, sizeof t->count, 1, f) != 1 ||
	    !(t->marks = calloc(t->count, sizeof *t->marks)) ||
	    fread(t->marks, sizeof *t->marks, t->count, f) != t->count)
		exit(1);
	fclose(f);
	waitpid(child, NULL, 0);
}

static void item(const char *name, double value, const char *unit, double reference, const char *goal,
                 int met, int last)
{
	printf("{\"name\":\"%s\",\"value\":%.2f,\"unit\":\"%s\",\"reference\":%.2f,\"ratio\":%.2f,\"goal\":"
	       "\"%s\",\"met\":%s}%s\n",
	       name, value, unit, reference, value / reference, goal, met ? "true" : "false",
	       last ? "" : ",");
}

int main(int count, char **words)
{
	const char *folder = count > 1 && words[1][0] != '-' ? words[1] : "labels/samples";
	struct trace slip_texts = {0}, label_texts = {0};
	struct error e;
	json_t *slip = load(folder, "slip-a5"), *labels = load(folder, "pack-labels");
	json_t *items = json_object_get(labels, "items"), *first = json_incref(json_array_get(items, 0));
	json_array_clear(items);
	for (int i = 0; i < LABELS / 2; i++)
		json_array_append(items, first);
	json_decref(first);
	trace_in_child(slip, &slip_texts);
	double slip_ms = first_ms(slip, NULL), bare_ms = first_ms(NULL, &slip_texts);
	if (fonts_open(&e) < 0)
		return 1;
	made(labels, &label_texts);
	double start = now_ms();
	made(labels, NULL);
	double labels_s = LABELS * 1e3 / (now_ms() - start);
	start = now_ms();
	bare(&label_texts);
	double bare_s = LABELS * 1e3 / (now_ms() - start);
	printf("[");
	item("slip PDF, first in its process", slip_ms, "ms", bare_ms, "<= 60 ms", slip_ms <= 60, 0);
	item("pack labels", labels_s, "labels/s", bare_s, ">= 200 labels/s", labels_s >= 200, 1);
	printf("]\n");
	trace_deinit(&slip_texts);
	trace_deinit(&label_texts);
	json_decref(slip);
	json_decref(labels);
	return 0;
}
