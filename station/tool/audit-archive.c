/* audit archive: lets what is old and over leave the record, for an archive of its own; audit keep: what must never leave. */
#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/file.h"
#include "code/own-codes.h"
#include "record/archive.h"
#include "report/days.h"
#include "tool/archive-slips.h"
#include "tool/audit-language.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/document.h"
#include "tool/print.h"
#include "tool/words.h"

/* --- archive ------------------------------------------------------------------------------------------------- */

static const char options[] = "check file= no-slips";
static const char usage[] =
    "usage: bandtally audit archive FOLDER [--no-slips]     the station must have ended\n"
    "       bandtally audit archive --check [--file RECORD] only says what would leave, and touches nothing\n"
    "Cases that were over longer ago than keep_years of policy.ini leave the record, once the whole of it "
    "lies in\n"
    "FOLDER, was read back from its first event to its last, and is sealed. What is missing, owed, "
    "unresolved, not\n"
    "seen, found later or kept for something ('bandtally audit keep') never leaves; nor do numbers that were "
    "given out,\n"
    "keys, withdrawn badges, and where a thing that is found, or a slip that is read, belongs to.\n"
    "FOLDER, best on another disk, then has: the archive, the slips that left (PDF/A-1b, one file a month; "
    "--no-slips\n"
    "leaves them out, and needs no ghostscript), and a certificate of what left, as PDF and JSON. Where a "
    "full "
    "disk\n"
    "or a power cut was before the certificate, the same command makes it and the slips again, and nothing "
    "else.\n"
    "For root and the station's user.\n"
    "Exit codes: 0 done, or nothing is to leave; 1 failed: the record is as it was, or the sentence says "
    "that "
    "the\n"
    "archive is there; 2 wrong usage.\n";

static enum saying stays_saying(enum stays_why why)
{
	switch (why) {
	case STAYS_NOT:
		return SAY_RW_ARCHIVE_LEAVES;
	case STAYS_OPEN:
		return SAY_RW_ARCHIVE_OPEN;
	case STAYS_YOUNG:
		return SAY_RW_ARCHIVE_YOUNG;
	case STAYS_UNRESOLVED:
		return SAY_RW_ARCHIVE_UNRESOLVED;
	case STAYS_OWED:
		return SAY_RW_ARCHIVE_OWED;
	case STAYS_FOUND:
		return SAY_RW_ARCHIVE_FOUND;
	case STAYS_NAMED:
		return SAY_RW_ARCHIVE_NAMED;
	case STAYS_UNREAD:
		return SAY_RW_ARCHIVE_UNREAD;
	case STAYS_UNSENT:
		return SAY_RW_ARCHIVE_UNSENT;
	case STAYS_LEFT:
		return SAY_RW_ARCHIVE_LEFT;
	case STAYS_COUNT:
		break;
	}
	return SAY_NONE;
}

static void count_whys(const struct archive *a, int counts[STAYS_COUNT])
{
	memset(counts, 0, STAYS_COUNT * sizeof *counts);
	for (int i = 0; i < a->n_cases; i++)
		counts[a->cases[i].why]++;
}

static void day_of(int64_t wall_ms, char out[11])
{
	clock_text_date(wall_ms, clock_utc_min(wall_ms), out);
}

static void print_chosen(const struct archive *a)
{
	int counts[STAYS_COUNT];
	char day[11];
	count_whys(a, counts);
	day_of(a->before_ms, day);
	printf("cases that were over before %s, %d years ago, may leave: %d do, with %" PRId64 " events\n",
	       day, (int)a->years, a->leave, a->events_leave);
	for (int i = 1; i < STAYS_COUNT; i++)
		if (counts[i])
			printf("%6d %s\n", counts[i], saying_text(stays_saying((enum stays_why)i)));
}

static int check_only(const char *file, struct error *e)
{
	struct archive a = {0};
	struct record *r = NULL;
	char path[PATH_MAX];
	int held = -1, n = audit_record(&r, file, path, &held, e);
	if (n == 0)
		n = archive_choose(&a, r, client_folder, clock_now().wall_ms, e);
	if (n == 0)
		print_chosen(&a);
	archive_deinit(&a);
	audit_done(r, held);
	return n < 0 ? client_fail(e) : EXIT_OK;
}

/* --- its certificate ------------------------------------------------------------------------------------------- */

struct certified {
	const struct archive *a;
	const struct backup *archive;
	const struct language *language;
	const char *name; /* of the archive */
	int slips, files;
};

static void certify_figures(struct document *d, const struct certified *c)
{
	int counts[STAYS_COUNT];
	char hex[2 * CHAIN_BYTES + 1], day[11];
	count_whys(c->a, counts);
	chain_hex(&c->archive->chain, hex);
	day_of(c->a->before_ms, day);
	document_section(d, "left", SAY(RW_ARCHIVE_SECTION));
	document_figure(d, "archive", SAY_RW_ARCHIVE_FILE, c->name);
	document_number(d, "events", SAY_RW_ARCHIVE_LAST, c->archive->events);
	document_figure(d, "hash", SAY_RW_ARCHIVE_HASH, hex);
	document_figure(d, "before", SAY_RW_ARCHIVE_BEFORE, day);
	document_number(d, "years", SAY_RW_ARCHIVE_YEARS, c->a->years);
	document_number(d, "cases", SAY_RW_ARCHIVE_CASES, c->a->leave);
	document_number(d, "events-left", SAY_RW_ARCHIVE_EVENTS, c->a->events_leave);
	document_number(d, "slips", SAY_RW_ARCHIVE_SLIPS, c->slips);
	document_number(d, "slip-files", SAY_RW_ARCHIVE_SLIP_FILES, c->files);
	document_section(d, "stays", SAY(RW_ARCHIVE_STAYS_SECTION));
	for (int i = STAYS_OPEN; i < STAYS_LEFT; i++)
		document_number(d, "stays", stays_saying((enum stays_why)i), counts[i]);
	document_says(d, SAY(RW_ARCHIVE_STAYS_OF));
}

static void certify_cases(struct document *d, const struct archive *a)
{
	int shown = 0;
	char number[16], day[11], slips[16];
	document_section(d, "cases", SAY(RW_ARCHIVE_LIST));
	json_t *rows = document_table(
	    d, "cases", HEADS(SAY_RW_ARCHIVE_CASE, SAY_RW_ARCHIVE_DAY, SAY_RW_ARCHIVE_ITS_SLIPS));
	for (int i = 0; i < a->n_cases; i++) {
		if (a->cases[i].why || ++shown > DOCUMENT_ROWS_MAX)
			continue;
		json_t *cells = document_row(rows);
		snprintf(number, sizeof number, "%d", (int)a->cases[i].case_no);
		snprintf(slips, sizeof slips, "%d", a->cases[i].n_slips);
		day_text(a->cases[i].opened_day, day);
		document_cell(cells, number);
		document_cell(cells, day);
		document_cell(cells, slips);
	}
	if (a->leave > DOCUMENT_ROWS_MAX)
		document_says(d, SAY(RW_ARCHIVE_MORE, .n = a->leave - DOCUMENT_ROWS_MAX));
}

static json_t *certificate(const struct certified *c, const char *file, struct error *e)
{
	struct document d = {0};
	struct record *r = NULL;
	struct recorded *settings = calloc(1, sizeof *settings);
	int n = settings ? record_open_copy(&r, file, e) : -ENOMEM;
	if (n == 0)
		n = audit_settings(r, settings, e);
	record_close(r);
	if (n == 0)
		n = document_begin(
		    &d, &(struct document_of){c->language,
		                              *settings->site_name ? settings->site_name : settings->site,
		                              SAY_RW_ARCHIVE_TITLE, SAY(RW_ARCHIVE_OF, .text = c->name)});
	if (n == 0) {
		document_about(&d, SAY(RW_ARCHIVE_ABOUT));
		certify_figures(&d, c);
		certify_cases(&d, c->a);
	}
	free(settings);
	return d.whole;
}

static int write_certificate(const struct certified *c, const char *folder, const char *file,
                             const char *stem, struct error *e)
{
	char path[PATH_MAX + 80];
	_cleanup_(buf_free) struct buf text = {0};
	_cleanup_(json_drop) json_t *doc = certificate(c, file, e);
	int n = doc ? json_write_canonical(doc, &text) : -ENOMEM;
	snprintf(path, sizeof path, "%s/%s-certificate.json", folder, stem);
	if (n == 0)
		n = file_replace(path, 0640, text.data, text.size);
	snprintf(path, sizeof path, "%s/%s-certificate.pdf", folder, stem);
	if (n == 0 && print_document(doc, "--pdf", path) != 0)
		n = -EIO;
	return n < 0 ? error_set(e, n,
	                         "the certificate cannot be written in %.300s: %s: the archive is there: "
	                         "make room, and give the same command again",
	                         folder, strerror(-n))
	             : 0;
}

/* --- all of it -------------------------------------------------------------------------------------------------- */

struct shelf {                           /* where it goes */
	const struct language *language; /* of its certificate */
	const char *folder;
	char file[PATH_MAX + 80], stem[60]; /* the archive, and its name without .db */
	int with_slips;
};

static void name_archive(struct shelf *s, const char *stem)
{
	snprintf(s->stem, sizeof s->stem, "%s", stem);
	snprintf(s->file, sizeof s->file, "%.4000s/%s.db", s->folder, s->stem);
}

/* By the day; a further one of a day has a number behind it. */
static void name_by_day(struct shelf *s, int64_t now)
{
	char stem[60], day[11];
	day_of(now, day);
	snprintf(stem, sizeof stem, "archive-%s", day);
	name_archive(s, stem);
	for (int i = 2; access(s->file, F_OK) == 0 && i < 100; i++) {
		snprintf(stem, sizeof stem, "archive-%s-%d", day, i);
		name_archive(s, stem);
	}
}

/* What lies beside an archive: written again, it is the same again. */
static int write_beside(const struct shelf *s, const struct archive *a, const struct backup *b,
                        struct error *e)
{
	struct certified c = {
	    .a = a, .archive = b, .language = s->language, .name = strrchr(s->file, '/') + 1};
	int n =
	    s->with_slips ? archive_slips(a, s->file, s->folder, client_folder, &c.slips, &c.files, e) : 0;
	if (n == 0)
		n = write_certificate(&c, s->folder, s->file, s->stem, e);
	if (n == 0)
		printf("%s has all that there was, to event %" PRId64
		       "; %d slips in %d files; %s-certificate.pdf\n",
		       s->file, b->events, c.slips, c.files, s->stem);
	return n;
}

static int has_certificate(const struct shelf *s)
{
	static const char *const forms[] = {"json", "pdf"};
	char path[PATH_MAX + 80];
	struct stat st;
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		snprintf(path, sizeof path, "%.4000s/%s-certificate.%s", s->folder, s->stem, forms[i]);
		if (stat(path, &st) < 0 || !S_ISREG(st.st_mode))
			return 0;
	}
	return 1;
}

struct unfinished {
	struct shelf *shelf;
	struct event archived;
};

static int look_at_shelf(void *context, const struct event *e)
{
	struct unfinished *u = context;
	char stem[60];
	snprintf(stem, sizeof stem, "%.*s", (int)strcspn(e->text, "."), e->text);
	name_archive(u->shelf, stem);
	if (access(u->shelf->file, F_OK) < 0 || has_certificate(u->shelf))
		return 0;
	u->archived = *e;
	return 1;
}

/* Something left, and a full disk or a power cut was before its certificate: 1 where it is made now, 0 where there is none such,
 * or a negative errno with `e`. */
static int finish(struct shelf *s, struct error *e)
{
	struct unfinished u = {.shelf = s};
	struct record *live = NULL;
	struct archive a = {0};
	struct backup b = {0};
	char path[PATH_MAX];
	snprintf(path, sizeof path, "%.3900s/" RECORD_FILE, client_folder);
	int n = access(path, F_OK) == 0 ? record_open(&live, client_folder, e) : 0;
	if (!live) /* which archive_make() says */
		return n;
	if (n == 0)
		n = record_each_station(live, EV_ARCHIVED, look_at_shelf, &u, e);
	if (n == 0 && u.archived.seq) {
		printf("%s has no certificate: it is made now, and nothing further leaves\n", s->file);
		n = archive_again(&a, live, &u.archived, client_folder, s->file, &b, e);
		if (n == 0)
			n = write_beside(s, &a, &b, e);
		n = n < 0 ? n : 1;
	}
	archive_deinit(&a);
	record_close(live);
	return n;
}

static int let_go(struct shelf *s, struct error *e)
{
	struct archive a = {0};
	struct backup b = {0};
	int64_t now = clock_now().wall_ms;
	int n = s->with_slips ? archive_slips_can(e) : 0;
	if (n == 0)
		n = finish(s, e);
	if (n == 0) {
		name_by_day(s, now);
		n = archive_make(&a, client_folder, s->file, now, &b, e);
		if (n == 0)
			print_chosen(&a);
		if (n == 0 && a.leave)
			n = write_beside(s, &a, &b, e);
	}
	archive_deinit(&a);
	return n < 0 ? client_fail(e) : EXIT_OK;
}

int audit_archive(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct stat st;
	int r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (words_given(&w, options, "check"))
		return w.n_rest ? words_beyond(w.rest[0], usage)
		                : check_only(words_value(&w, options, "file"), &e);
	if (w.n_rest != 1)
		return w.n_rest ? words_beyond(w.rest[1], usage) : words_missing("FOLDER", usage);
	if (stat(w.rest[0], &st) < 0 || !S_ISDIR(st.st_mode)) {
		error_set(&e, -ENOTDIR, "%.300s is no folder: make it, best on another disk", w.rest[0]);
		return client_fail(&e);
	}
	struct shelf shelf = {.folder = w.rest[0], .with_slips = !words_given(&w, options, "no-slips")};
	struct audit_language language;
	audit_language(&language, NULL, NULL, &e); /* asks for none by name: it finds one */
	shelf.language = language.is;
	r = let_go(&shelf, &e);
	audit_language_end(&language);
	return r;
}

/* --- keep --------------------------------------------------------------------------------------------------------- */

static const char keep_options[] = "for= over=";
static const char keep_usage[] =
    "usage: bandtally audit keep CASE --for WHAT    it never leaves the record: an incident, a claim, an "
    "inquest\n"
    "       bandtally audit keep CASE --over WHY    that is over: it may leave when it is old enough\n"
    "example: bandtally audit keep 41 --for 'claim 2026-7'\n";

int audit_keep(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int case_no = 0, r = words_read(&w, argc, argv, keep_options, keep_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	const char *what = words_value(&w, keep_options, "for"),
	           *over = words_value(&w, keep_options, "over");
	if (w.n_rest != 1)
		return w.n_rest ? words_beyond(w.rest[1], keep_usage)
		                : words_missing("CASE, its number,", keep_usage);
	if (words_number("CASE", w.rest[0], 1, SLIP_NUMBER_MAX, &case_no, keep_usage) < 0)
		return EXIT_USAGE;
	if (!what == !over)
		return words_choose("give one of --for WHAT and --over WHY", keep_usage);
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i,s:b,s:s}", "do", "keep", "case", case_no, "on", what != NULL,
	                         "what", what ? what : over),
	               &e);
	if (!a)
		return client_fail(&e);
	if (what)
		printf("case %d stays in the record: %s\n", case_no, what);
	else
		printf("case %d may leave the record when it is old enough: %s\n", case_no, over);
	return EXIT_OK;
}
