/* From a document to a job, and to a file. The way to a printer is in send.c. */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/file.h"
#include "labels/printer-answer.h"
#include "labels/send.h"

#define PART_MAX 4096

/* PWG 5101.1 names. The size of a roll or a label is what its queue says. */
static const char *media_of(const json_t *document)
{
	static const struct {
		const char *paper, *media;
	} all[] = {{"a4", "iso_a4_210x297mm"},
	           {"a5", "iso_a5_148x210mm"},
	           {"a6", "iso_a6_105x148mm"},
	           {"roll80", ""}};
	const char *kind = json_text(document, "kind"), *paper = json_text(document, "paper");
	if (strcmp(kind, "pack-labels") == 0)
		return "";
	if (!*paper)
		paper = json_object_get(document, "slip") ? "a5" : "a4";
	for (size_t i = 0; i < sizeof all / sizeof *all; i++)
		if (strcmp(all[i].paper, paper) == 0)
			return all[i].media;
	return "";
}

int job_make(struct job *j, const struct languages *languages, const json_t *document, struct error *e)
{
	int r = paper_pdf(languages, document, &j->pdf, &j->pages, e);
	if (r < 0)
		return r;
	j->document = json_incref((json_t *)document);
	j->languages = languages;
	paper_title(document, j->title);
	snprintf(j->media, sizeof j->media, "%s", media_of(document));
	return 0;
}

void job_lay_on(struct job *j, const char *media)
{
	struct sheet_size sheet;
	struct buf pdf = {0};
	struct error e;
	answer_media_size(media, &sheet.width_mm, &sheet.height_mm);
	if (sheet.width_mm <= 0 || !json_object_get(j->document, "slip"))
		return;
	if (paper_pdf_on(j->languages, j->document, sheet, &pdf, &j->pages, NULL, &e) < 0) {
		buf_free(&pdf);
		return; /* what was made before is printed */
	}
	buf_free(&j->pdf);
	j->pdf = pdf;
	snprintf(j->media, sizeof j->media, "%s", media);
}

static int write_all(int fd, const char *data, size_t size)
{
	while (size > 0) {
		ssize_t n = write(fd, data, size);
		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			return -errno;
		data += n;
		size -= (size_t)n;
	}
	int n = file_force(fd);
	return n == -EINVAL ? 0 : n; /* a file system that cannot be asked to */
}

/* Beside its place, and only where that is free or holds a PDF. A descriptor or negative errno. */
static int begin_file(const char *path, char part[PART_MAX])
{
	if (snprintf(part, PART_MAX, "%s.part-%d", path, (int)getpid()) >= PART_MAX)
		return -ENAMETOOLONG;
	int r = file_is_ours(path, "%PDF-");
	if (r < 0)
		return r;
	int fd = open(part, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0640);
	return fd < 0 ? -errno : fd;
}

static int cannot_write(const char *title, const char *path, int why, char *out, size_t size)
{
	snprintf(out, size,
	         "%.80s: %.200s cannot be written: %s: give a folder that has room and may be written to",
	         title, path, file_words(why));
	return why;
}

int job_may_write(const char *title, const char *path, struct error *e)
{
	char part[PART_MAX], text[ERROR_TEXT_MAX];
	int fd = begin_file(path, part);
	if (fd < 0)
		return error_set(e, cannot_write(title, path, fd, text, sizeof text), "%s", text);
	close(fd);
	unlink(part);
	return 0;
}

/* It appears under its name only when it is whole. */
static int write_file(const char *path, const struct buf *pdf)
{
	char part[PART_MAX];
	int fd = begin_file(path, part), r;
	if (fd < 0)
		return fd;
	r = write_all(fd, pdf->data, pdf->size);
	if (close(fd) < 0 && r == 0)
		r = -errno;
	if (r == 0 && rename(part, path) < 0)
		r = -errno;
	if (r < 0)
		unlink(part);
	return r;
}

void job_write(struct job *j, const char *path)
{
	int r = write_file(path, &j->pdf);
	j->state = r < 0 ? JOB_FAILED : JOB_WRITTEN;
	j->why = r < 0 ? SAY_PRINTER_NOT_KEPT : SAY_NONE;
	if (r < 0)
		cannot_write(j->title, path, r, j->text, sizeof j->text);
	else
		snprintf(j->text, sizeof j->text, "%.80s: written as %.300s, %d %s", j->title, path, j->pages,
		         j->pages == 1 ? "page" : "pages");
}
