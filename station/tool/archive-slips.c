#include "tool/archive-slips.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/file.h"
#include "record/case-events.h"
#include "tell/slip.h"
#include "tool/print.h"
#include "words/languages.h"

#define GHOSTSCRIPT "/usr/bin/gs"
#define PROFILE "/usr/share/color/icc/ghostscript/srgb.icc"
#define NO_MEMORY "cannot make the slips: out of memory: close other programs"
#define SLIP_DPI 300

int archive_slips_can(struct error *e)
{
	if (access(GHOSTSCRIPT, X_OK) == 0 && access(PROFILE, R_OK) == 0)
		return 0;
	return error_set(e, -ENOENT,
	                 "slips cannot be archived as PDF/A: ghostscript is not here: install the package "
	                 "ghostscript, or leave them out with --no-slips");
}

/* --- one slip ------------------------------------------------------------------------------------------------ */

struct making {
	struct record *r;
	struct seal *seal;
	struct station *st;
	struct languages languages;
	struct case_events events;
	char work[PATH_MAX]; /* a folder of ours */
	const char *name;    /* of the archive */
	int n_files, n_slips;
	struct error *e;
};

static int sign(const void *seal, const json_t *summary, struct buf *jws)
{
	return seal_jws(seal, summary, jws);
}

/* Told up to its own event, as its first copy was. */
static json_t *document_of(struct making *m, const struct event *own, struct story *story, struct past *past,
                           const struct language *language)
{
	char hex[2 * CHAIN_BYTES + 1], when[26];
	struct chain chain = {0};
	int64_t now = clock_now().wall_ms;
	record_hash_at(m->r, own->seq, &chain);
	chain_hex(&chain, hex);
	clock_text_full(now, clock_utc_min(now), when);
	const struct slip_source from = {.story = story,
	                                 .kind = (enum slip_kind)own->what,
	                                 .number = own->n,
	                                 .copy = 1,
	                                 .proof = own->proof,
	                                 .station = own->station,
	                                 .past = past,
	                                 .language = language,
	                                 .now = own->at,
	                                 .paper = "a5",
	                                 .dpi = SLIP_DPI,
	                                 .time = when,
	                                 .version = BANDTALLY_VERSION,
	                                 .seq = own->seq,
	                                 .chain = hex};
	json_t *document = slip_document(&from);
	if (document && slip_sign(&from, station_incarnation(m->st), sign, m->seal, document) < 0) {
		json_decref(document);
		document = NULL;
	}
	return document;
}

static int draw_slip(struct making *m, int at)
{
	const struct event *own = &m->events.list[at];
	const struct language *language = languages_find(&m->languages, own->text);
	struct story *story = NULL;
	struct past past;
	char path[PATH_MAX + 40];
	past_init(&past, own->seq, m->st);
	int n = story_make(&story, language, m->events.list, at + 1, own->at);
	if (n == 0)
		n = record_each_setting(m->r, past_take, &past, m->e);
	_cleanup_(json_drop) json_t *document = n == 0 ? document_of(m, own, story, &past, language) : NULL;
	past_deinit(&past);
	free(story);
	if (!document)
		return error_set(m->e, -ENOMEM, NO_MEMORY);
	snprintf(path, sizeof path, "%s/%06d.pdf", m->work, m->n_files);
	if (print_document(document, "--pdf", path) != 0)
		return error_set(m->e, -EIO, "slip %d cannot be drawn: see what bandtally-print says",
		                 (int)own->n);
	m->n_files++;
	m->n_slips++;
	return 0;
}

static int draw_case(struct making *m, int32_t case_no)
{
	int n = case_events_read(&m->events, m->r, case_no, m->e);
	for (int i = 0; i < m->events.count && n == 0; i++)
		if (m->events.list[i].kind == EV_SLIP_QUEUED && m->events.list[i].other <= 1)
			n = draw_slip(m, i);
	return n;
}

/* --- a month of them, by ghostscript --------------------------------------------------------------------------- */

/* What ghostscript is told: the colours that are meant, and dates that it writes alike into both places, which with a zone of
 * UTC it does not. */
static int write_setup(const struct making *m, int32_t month)
{
	char path[PATH_MAX + 40], text[2000];
	int n =
	    snprintf(text, sizeof text,
	             "%%!\n[ /Title (Slips of %04d-%02d) /CreationDate (D:%04d%02d01000000+00'00') /ModDate "
	             "(D:%04d%02d01000000+00'00') /DOCINFO pdfmark\n"
	             "[/_objdef {icc} /type /stream /OBJ pdfmark\n"
	             "[{icc} << /N 3 >> /PUT pdfmark\n"
	             "[{icc} (" PROFILE ") (r) file /PUT pdfmark\n"
	             "[/_objdef {intent} /type /dict /OBJ pdfmark\n"
	             "[{intent} << /Type /OutputIntent /S /GTS_PDFA1 /DestOutputProfile {icc} "
	             "/OutputConditionIdentifier (sRGB) >> /PUT pdfmark\n"
	             "[{Catalog} << /OutputIntents [ {intent} ] >> /PUT pdfmark\n",
	             (int)(month / 100), (int)(month % 100), (int)(month / 100), (int)(month % 100),
	             (int)(month / 100), (int)(month % 100));
	snprintf(path, sizeof path, "%s/setup.ps", m->work);
	return file_replace_soon(path, 0600, text, (size_t)n);
}

/* The names of a month may be more than a command line takes. */
static int write_list(const struct making *m)
{
	char path[PATH_MAX + 40];
	_cleanup_(buf_free) struct buf text = {0};
	int n = buf_add_text(&text, "setup.ps\n");
	for (int i = 0; i < m->n_files && n == 0; i++)
		n = buf_printf(&text, "%06d.pdf\n", i);
	snprintf(path, sizeof path, "%s/list", m->work);
	return n == 0 ? file_replace_soon(path, 0600, text.data, text.size) : n;
}

/* Nothing of it depends on when or where it is made. Of the two readers of Debian 12's ghostscript the newer one makes of a font
 * with few letters one that lacks its list of them, which PDF/A-1 wants. */
static int run_ghostscript(const struct making *m, int32_t month)
{
	char id[40], uuid[60], instance[60];
	snprintf(id, sizeof id, "00000000-0000-4000-8000-%012d", (int)month);
	snprintf(uuid, sizeof uuid, "-sDocumentUUID=%s", id);
	snprintf(instance, sizeof instance, "-sInstanceUUID=%s", id);
	pid_t pid = fork();
	if (pid == 0) {
		int null = open("/dev/null", O_WRONLY | O_CLOEXEC);
		if (chdir(m->work) < 0 || null < 0 || dup2(null, 1) < 0 || dup2(null, 2) < 0)
			_exit(EXIT_FAILED);
		setenv("SOURCE_DATE_EPOCH", "0", 1);
		execl(GHOSTSCRIPT, "gs", "-q", "-dSAFER", "-dPDFA=1", "-dPDFACompatibilityPolicy=2",
		      "-dNEWPDF=false", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pdfwrite",
		      "-sColorConversionStrategy=RGB", "--permit-file-read=" PROFILE, uuid, instance,
		      "-sOutputFile=month.pdf", "@list", (char *)NULL);
		_exit(EXIT_FAILED);
	}
	int status = 1 << 8;
	if (pid > 0)
		waitpid(pid, &status, 0);
	return WIFEXITED(status) && WEXITSTATUS(status) == 0 ? 0 : -EIO;
}

static int take_over(const struct making *m, const char *folder, int32_t month)
{
	char from[PATH_MAX + 40], to[PATH_MAX + 40];
	snprintf(from, sizeof from, "%s/month.pdf", m->work);
	snprintf(to, sizeof to, "%.3900s/slips-%04d-%02d-of-%.*s.pdf", folder, (int)(month / 100),
	         (int)(month % 100), (int)strcspn(m->name, "."), m->name);
	int fd = open(from, O_RDWR | O_CLOEXEC);
	int n = fd < 0 || fchmod(fd, 0640) < 0 ? -errno : file_force(fd);
	if (n == 0 && rename(from, to) < 0)
		n = -errno;
	if (fd >= 0)
		close(fd);
	return n;
}

static void clear(struct making *m)
{
	static const char *const others[] = {"setup.ps", "list", "month.pdf"};
	char path[PATH_MAX + 40];
	for (int i = 0; i < m->n_files; i++) {
		snprintf(path, sizeof path, "%s/%06d.pdf", m->work, i);
		unlink(path);
	}
	for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
		snprintf(path, sizeof path, "%s/%s", m->work, others[i]);
		unlink(path);
	}
	m->n_files = 0;
}

static int end_month(struct making *m, const char *folder, int32_t month, int *files)
{
	int n = m->n_files ? write_setup(m, month) : 0;
	if (!m->n_files)
		return 0;
	if (n == 0)
		n = write_list(m);
	if (n == 0)
		n = run_ghostscript(m, month);
	if (n == 0)
		n = take_over(m, folder, month);
	clear(m);
	if (n < 0)
		return error_set(m->e, n,
		                 "the slips of a month cannot be archived in %.300s: %s: check the space, "
		                 "and that ghostscript works",
		                 folder, strerror(-n));
	++*files;
	return 0;
}

/* --- all of them ------------------------------------------------------------------------------------------------ */

static int32_t month_of(const struct archive_case *c)
{
	return c->opened_day / 100;
}

static int draw_all(struct making *m, const struct archive *a, const char *folder, int *files)
{
	int32_t month = 0;
	int n = 0;
	for (int i = 0; i < a->n_cases && n == 0; i++) {
		if (a->cases[i].why)
			continue;
		if (month_of(&a->cases[i]) != month)
			n = end_month(m, folder, month, files);
		month = month_of(&a->cases[i]);
		if (n == 0)
			n = draw_case(m, a->cases[i].case_no);
	}
	return n == 0 ? end_month(m, folder, month, files) : n;
}

/* Where they will lie, so that what is whole takes its name there at once. */
static int begin(struct making *m, const char *file, const char *folder, const char *key_folder)
{
	snprintf(m->work, sizeof m->work, "%.4000s/.slips-XXXXXX", folder);
	if (!mkdtemp(m->work)) {
		m->work[0] = 0;
		return error_set(m->e, -errno, "cannot make a folder in %.300s: %s: check its owner", folder,
		                 strerror(errno));
	}
	m->st = calloc(1, sizeof *m->st);
	if (!m->st)
		return error_set(m->e, -ENOMEM, NO_MEMORY);
	languages_read(&m->languages, languages_folder(), m->e);
	int n = record_open_copy(&m->r, file, m->e);
	if (n == 0)
		n = record_load(m->r, m->st, m->e);
	return n == 0 ? seal_open_still(&m->seal, key_folder, m->e) : n;
}

int archive_slips(const struct archive *a, const char *file, const char *folder, const char *key_folder,
                  int *slips, int *files, struct error *e)
{
	const char *slash = strrchr(file, '/');
	struct making m = {.e = e, .name = slash ? slash + 1 : file};
	*files = 0;
	int n = begin(&m, file, folder, key_folder);
	if (n == 0)
		n = draw_all(&m, a, folder, files);
	if (m.work[0]) {
		clear(&m);
		rmdir(m.work);
	}
	*slips = m.n_slips;
	case_events_deinit(&m.events);
	languages_free(&m.languages);
	seal_close(m.seal);
	record_close(m.r);
	if (m.st)
		station_deinit(m.st);
	free(m.st);
	return n;
}
