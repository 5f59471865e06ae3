/* bandtally-print: everything on paper. It reads documents (labels/paper.h), knows nothing of cases, opens no
 * record and may be killed at any time: what it had not reported is asked about again. */
#include <errno.h>
#include <getopt.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/file.h"
#include "base/log.h"
#include "base/name.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "labels/pictures.h"
#include "labels/print-confined.h"
#include "labels/queues.h"
#include "labels/send.h"
#include "labels/serve.h"

#define DOCUMENT_MAX (1024 * 1024)
#define PATIENCE_S 60

static const char help[] =
    "bandtally-print --pdf FILE < document.json             make a PDF\n"
    "bandtally-print --svg FOLDER < document.json          each chart of a report as a picture, NAME.svg\n"
    "bandtally-print --printer NAME [--wait S] < document.json\n"
    "                                                       print, and follow the job for S seconds (60)\n"
    "bandtally-print --check [--printer NAME | --pdf FILE] < document.json\n"
    "                                                       only say whether the document is right, and "
    "fits; and whether that printer answers, or that file may be written\n"
    "bandtally-print --serve FOLDER                         job lines on stdin, state lines on stdout; files "
    "are\n"
    "                                                       written beneath FOLDER alone\n"
    "bandtally-print --queues                               the queues of this machine's CUPS, a line each: "
    "name, 'default', words\n"
    "bandtally-print --fields [KIND]                        the fields of each kind of document, or of one\n"
    "bandtally-print --help | --version\n"
    "\n"
    "NAME is a CUPS queue or an ipp:// or ipps:// address. Exit 0: written, or the printer reports it done; "
    "1: failed, or not done in that time; "
    "2: wrong\n"
    "usage. 'Done' is what the printer says: the slip's own code, read by a scanner, shows that the paper is "
    "there.\n"
    "example: bandtally-print --pdf cards.pdf < cards.json\n";

struct wish {
	const char *pdf, *svg, *printer, *serve;
	int wait_s;
	bool check;
};

static int read_document(json_t **document, struct error *e)
{
	struct buf text _cleanup_(buf_free) = {0};
	char chunk[65536];
	ssize_t n;
	while ((n = read(STDIN_FILENO, chunk, sizeof chunk)) != 0) {
		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			return error_set(e, -errno, "document: stdin cannot be read: %s: give a file",
			                 strerror(errno));
		if (text.size + (size_t)n > DOCUMENT_MAX)
			return error_set(e, -EFBIG,
			                 "document: it is longer than 1 MiB: print fewer labels at a time");
		if (buf_add(&text, chunk, (size_t)n) < 0)
			return error_set(e, -ENOMEM, "document: no memory: close other programs");
	}
	*document = json_read(text.data ? text.data : "", text.size, e);
	return *document ? 0 : -EINVAL;
}

static int print_and_follow(struct job *j, const struct wish *w, struct error *e)
{
	int r = printer_read(w->printer, &j->printer, e);
	if (r < 0)
		return r;
	int64_t end_ms = clock_now().boot_ms + (int64_t)w->wait_s * 1000;
	for (;;) {
		if (job_step(j)) {
			printf("%s: %s\n", job_state_name(j->state), j->text);
			fflush(stdout);
		}
		if (job_is_over(j))
			break;
		if (clock_now().boot_ms >= end_ms)
			return error_set(e, -ETIMEDOUT,
			                 "%s: not done after %d s: look at the printer; it may still come",
			                 j->title, w->wait_s);
		nanosleep(&(struct timespec){.tv_nsec = 400000000}, NULL);
	}
	return j->state == JOB_DONE ? 0 : error_set(e, -EIO, "%s", j->text);
}

static int write_picture(void *context, const char *name, const struct buf *svg)
{
	char path[PATH_MAX];
	int n = snprintf(path, sizeof path, "%s/%s.svg", (const char *)context, name);
	if (n >= (int)sizeof path)
		return -ENAMETOOLONG;
	n = file_is_ours(path, "<?xml");
	return n < 0 ? n : file_replace_soon(path, 0640, svg->data, svg->size);
}

static int draw_pictures(const struct languages *languages, const json_t *document, const char *folder,
                         struct error *e)
{
	struct error why = {0};
	int r = pictures_of(languages, document, write_picture, (void *)folder, &why);
	if (r < 0 && !*why.text)
		return error_set(
		    e, r,
		    "%.300s: a picture cannot be written: %s: give a folder that has room and may be "
		    "written to",
		    folder, file_words(r));
	return r < 0 ? error_set(e, r, "%s", why.text) : 0;
}

/* Whether it is right, fits on its paper, and can come there. */
static int check_document(const struct languages *languages, const json_t *document, const struct wish *w,
                          struct error *e)
{
	const char *to = w->printer;
	struct buf pdf _cleanup_(buf_free) = {0};
	struct printer p;
	int pages, r = paper_pdf(languages, document, &pdf, &pages, e);
	if (r == 0 && to)
		r = printer_read(to, &p, e);
	if (r == 0 && to)
		r = printer_reach(&p, to, e);
	return r == 0 && w->pdf ? job_may_write(json_text(document, "kind"), w->pdf, e) : r;
}

static int run(const struct wish *w, const struct languages *languages, struct error *e)
{
	json_t *document _cleanup_(json_drop) = NULL;
	struct job j _cleanup_(job_deinit) = {0};
	int r = read_document(&document, e);
	name_tell_all(document);
	if (r == 0 && w->check)
		return check_document(languages, document, w, e);
	if (r == 0 && w->svg)
		return draw_pictures(languages, document, w->svg, e);
	if (r == 0)
		r = job_make(&j, languages, document, e);
	if (r < 0)
		return r;
	if (w->printer)
		return print_and_follow(&j, w, e);
	job_write(&j, w->pdf);
	if (j.state == JOB_FAILED)
		return error_set(e, -EIO, "%s", j.text);
	return 0;
}

static int tell_fields(const char *kind)
{
	struct buf out _cleanup_(buf_free) = {0};
	struct error e = {0};
	if (paper_fields(kind, &out, &e) < 0) {
		log_line("%s", e.text);
		return EXIT_FAILED;
	}
	fputs(out.data, stdout);
	return EXIT_OK;
}

static int tell_queues(void)
{
	struct buf out _cleanup_(buf_free) = {0};
	if (queues_tell(&out) < 0) {
		log_line("cannot tell the queues: out of memory: try again");
		return EXIT_FAILED;
	}
	fputs(out.data ? out.data : "", stdout);
	return EXIT_OK;
}

static int usage(const char *what)
{
	fprintf(stderr,
	        "bandtally-print: %s: give one of --pdf FILE, --svg FOLDER, --printer NAME, --check and "
	        "--serve FOLDER "
	        "(--help)\n",
	        what);
	return EXIT_USAGE;
}

static int read_words(int count, char **words, struct wish *w)
{
	static const struct option options[] = {{"pdf", required_argument, NULL, 'f'},
	                                        {"svg", required_argument, NULL, 'g'},
	                                        {"printer", required_argument, NULL, 'p'},
	                                        {"wait", required_argument, NULL, 'w'},
	                                        {"check", no_argument, NULL, 'c'},
	                                        {"serve", required_argument, NULL, 's'},
	                                        {"fields", no_argument, NULL, 'l'},
	                                        {"help", no_argument, NULL, 'h'},
	                                        {"queues", no_argument, NULL, 'q'},
	                                        {"version", no_argument, NULL, 'v'},
	                                        {0}};
	char *end;
	long wait_s;
	for (int o; (o = getopt_long(count, words, "", options, NULL)) != -1;) {
		switch (o) {
		case 'f':
			w->pdf = optarg;
			break;
		case 'g':
			w->svg = optarg;
			break;
		case 'p':
			w->printer = optarg;
			break;
		case 'w':
			wait_s = strtol(optarg, &end, 10);
			if (*end || !*optarg || wait_s < 0 || wait_s > 86400)
				return usage("--wait takes whole seconds, 0 to 86400");
			w->wait_s = (int)wait_s;
			break;
		case 'c':
			w->check = true;
			break;
		case 's':
			w->serve = optarg;
			break;
		case 'l':
			if (optind + 1 < count)
				return usage("--fields takes one kind");
			exit(tell_fields(words[optind]));
		case 'q':
			exit(tell_queues());
		case 'h':
			fputs(help, stdout);
			exit(EXIT_OK);
		case 'v':
			puts("bandtally-print " BANDTALLY_VERSION);
			exit(EXIT_OK);
		default:
			return usage("the words of the command are wrong");
		}
	}
	if (optind < count || (w->pdf && w->printer) ||
	    ((w->pdf || w->printer) && !w->check) + !!w->svg + w->check + !!w->serve != 1)
		return usage("the words of the command are wrong");
	return EXIT_OK;
}

int main(int count, char **words)
{
	struct wish w = {.wait_s = PATIENCE_S};
	struct error e = {0};
	struct languages languages;
	log_open("bandtally-print");
	int r = read_words(count, words, &w);
	if (r != EXIT_OK)
		return r;
	signal(SIGPIPE, SIG_IGN);
	if (languages_read(&languages, languages_folder(), &e) < 0)
		log_warn(LOG_BOARD, "%s", e.text); /* what is not there is printed in English */
	r = w.serve ? confine_print(w.serve, &e) : 0;
	if (r == 0)
		r = fonts_open(&e);
	if (r == 0 && w.serve) {
		r = serve(STDIN_FILENO, STDOUT_FILENO, &languages);
		if (r < 0)
			error_set(
			    &e, r,
			    "serve: the lines to the daemon cannot be written or read: %s: it starts this "
			    "program again",
			    strerror(-r));
	} else if (r == 0) {
		r = run(&w, &languages, &e);
	}
	if (r < 0)
		log_warn(LOG_PROGRAM, "%s", e.text);
	languages_free(&languages);
	return r < 0 ? EXIT_FAILED : EXIT_OK;
}
