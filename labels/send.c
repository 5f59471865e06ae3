#include "labels/send.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "labels/exchange.h"

#define LIST_MAX 500   /* jobs that are looked through for ours */
#define PROMPT_MS 8000 /* a slip that takes longer is worth a look at the printer */

const char *job_state_name(enum job_state state)
{
	switch (state) {
	case JOB_NEW:
	case JOB_WAITING:
		return "waiting";
	case JOB_WRITTEN:
		return "written";
	case JOB_SENT:
		return "sent";
	case JOB_DONE:
		return "done";
	case JOB_FAILED:
		return "failed";
	}
	return "failed";
}

void job_deinit(struct job *j)
{
	buf_free(&j->pdf);
	json_decref(j->document);
	j->document = NULL;
}

bool job_is_over(const struct job *j)
{
	return j->state == JOB_WRITTEN || j->state == JOB_DONE || j->state == JOB_FAILED;
}

static int read_queue(const char *name, struct printer *p, struct error *e)
{
	size_t n = strlen(name);
	if (n == 0 || n > 127 ||
	    strspn(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-.") != n)
		return error_set(
		    e, -EINVAL,
		    "printer '%.60s': it is no queue's name and no ipp:// address: give one (lpstat -e "
		    "lists the queues)",
		    name);
	snprintf(p->resource, sizeof p->resource, "/printers/%.127s", name);
	snprintf(p->uri, sizeof p->uri, "ipp://localhost/printers/%.127s", name);
	snprintf(p->host, sizeof p->host, "%s", cupsServer());
	p->port = ippPort();
	p->queue = true;
	return 0;
}

int printer_read(const char *text, struct printer *p, struct error *e)
{
	char scheme[16], user[64];
	memset(p, 0, sizeof *p);
	if (!strstr(text, "://"))
		return read_queue(text, p, e);
	if (strlen(text) >= sizeof p->uri ||
	    httpSeparateURI(HTTP_URI_CODING_ALL, text, scheme, sizeof scheme, user, sizeof user, p->host,
	                    sizeof p->host, &p->port, p->resource, sizeof p->resource) < HTTP_URI_STATUS_OK ||
	    (strcmp(scheme, "ipp") != 0 && strcmp(scheme, "ipps") != 0))
		return error_set(
		    e, -EINVAL,
		    "printer '%.60s': it is no ipp:// or ipps:// address: give one, or a queue's name", text);
	snprintf(p->uri, sizeof p->uri, "%s", text);
	p->encrypted = strcmp(scheme, "ipps") == 0;
	return 0;
}

static void http_drop(http_t **h)
{
	if (*h)
		httpClose(*h);
}

static ipp_t *request(const struct job *j, ipp_op_t op)
{
	ipp_t *r = ippNewRequest(op);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_URI, "printer-uri", NULL, j->printer.uri);
	if (op == IPP_OP_GET_JOB_ATTRIBUTES)
		ippAddInteger(r, IPP_TAG_OPERATION, IPP_TAG_INTEGER, "job-id", j->cups);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_NAME, "requesting-user-name", NULL, "bandtally");
	return r;
}

static bool is_good(int status)
{
	return status >= 0 && status <= 0xff;
}

static void say(struct job *j, enum job_state state, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
static void say(struct job *j, enum job_state state, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	vsnprintf(j->text, sizeof j->text, format, args);
	va_end(args);
	j->state = state;
}

static const char *whose(const struct job *j)
{
	return j->printer.queue ? "queue" : "printer";
}

/* What the last request's failure means for people. */
static void say_trouble(struct job *j, int status)
{
	if (status == -EPROTO)
		say(j, JOB_WAITING,
		    "%s: what answers there cannot be read: see that the printer's address in the settings "
		    "is right; "
		    "if it is, print through a queue",
		    j->title);
	else if (is_good(status))
		say(j, JOB_FAILED,
		    "%s: the %s took it and gave it no number: look for the paper, and print again if it is "
		    "not there",
		    j->title, whose(j));
	else if (status == IPP_STATUS_ERROR_NOT_ACCEPTING_JOBS)
		say(j, JOB_WAITING, "%s: the %s does not accept jobs: let it accept them again (cupsaccept)",
		    j->title, whose(j));
	else if (status == IPP_STATUS_ERROR_NOT_FOUND)
		say(j, JOB_FAILED, "%s: there is no such %s: check the printer's name in the settings",
		    j->title, whose(j));
	else if (status == IPP_STATUS_ERROR_BUSY)
		say(j, JOB_WAITING, "%s: the printer is busy with another job: it is tried again", j->title);
	else if (status == IPP_STATUS_ERROR_DOCUMENT_FORMAT_NOT_SUPPORTED)
		say(j, JOB_FAILED, "%s: the printer takes no PDF: set up a queue for it that does", j->title);
	else if (status < 0 || status == IPP_STATUS_ERROR_INTERNAL ||
	         status == IPP_STATUS_ERROR_SERVICE_UNAVAILABLE || status == IPP_STATUS_ERROR_TIMEOUT ||
	         status == IPP_STATUS_ERROR_DEVICE)
		say(j, JOB_WAITING, "%s: the printer does not answer: check power, cable and network",
		    j->title);
	else
		say(j, JOB_FAILED, "%s: the %s refuses the job: %s: ask whoever looks after printing",
		    j->title, whose(j), ippErrorString((ipp_status_t)status));
}

static int ask(const struct job *j, http_t *h, ipp_t *request, const char *const *wanted, int count,
               struct buf *answer)
{
	ippAddStrings(request, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes", count, NULL,
	              wanted);
	return exchange(h, &j->printer, request, NULL, answer);
}

/* The state of the job under its number: 1, 0 when the printer has no such job, negative when it cannot be asked; then
 * *status says why. */
static int ask_job(const struct job *j, http_t *h, struct job_said *said, int *status)
{
	static const char *const wanted[] = {"job-id", "job-name", "job-state", "job-state-reasons",
	                                     "job-printer-state-message"};
	struct buf answer _cleanup_(buf_free) = {0};
	size_t at = 0;
	*said = (struct job_said){0};
	*status = ask(j, h, request(j, IPP_OP_GET_JOB_ATTRIBUTES), wanted, 5, &answer);
	if (*status == IPP_STATUS_ERROR_NOT_FOUND)
		return 0;
	if (!is_good(*status))
		return -EIO;
	answer_next_job(&answer, &at, j->title, said);
	/* Another job can have the number after a print server was set up anew. */
	return !said->named || said->ours;
}

static bool ended_without_paper(const struct job_said *said)
{
	return said->state == IPP_JSTATE_CANCELED || said->state == IPP_JSTATE_ABORTED;
}

/* Looks for the title among the jobs that are `which`; sets j->cups. A job that ended without paper is none. As
 * ask_job(). */
static int find_title(struct job *j, http_t *h, const char *which, int *status)
{
	static const char *const wanted[] = {"job-id", "job-name", "job-state"};
	struct buf answer _cleanup_(buf_free) = {0};
	struct job_said said;
	ipp_t *r = request(j, IPP_OP_GET_JOBS);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "which-jobs", NULL, which);
	ippAddInteger(r, IPP_TAG_OPERATION, IPP_TAG_INTEGER, "limit", LIST_MAX);
	*status = ask(j, h, r, wanted, 3, &answer);
	if (*status == IPP_STATUS_ERROR_NOT_FOUND)
		return 0;
	if (!is_good(*status))
		return -EIO;
	for (size_t at = 0; answer_next_job(&answer, &at, j->title, &said);)
		if (said.id && said.state && said.ours && !ended_without_paper(&said)) {
			j->cups = said.id;
			return 1;
		}
	return 0;
}

/* Whether the printer has the job from an earlier attempt. As ask_job(). */
static int had_before(struct job *j, http_t *h, int *status)
{
	if (j->cups) {
		struct job_said said;
		int r = ask_job(j, h, &said, status);
		if (r < 0 || (r && !ended_without_paper(&said)))
			return r;
		j->cups = 0;
	}
	int r = find_title(j, h, "not-completed", status);
	return r ? r : find_title(j, h, "completed", status);
}

/* A size or a way of scaling that the printer does not name would have the whole job refused. Asking first
 * also finds out that a printer hangs before anything is sent to it. */
static int ask_printer(const struct job *j, http_t *h, struct printer_said *said)
{
	static const char *const wanted[] = {"printer-state",   "printer-state-reasons",
	                                     "media-supported", "media-ready",
	                                     "media-default",   "print-scaling-supported"};
	struct buf answer _cleanup_(buf_free) = {0};
	int status = ask(j, h, request(j, IPP_OP_GET_PRINTER_ATTRIBUTES), wanted,
	                 sizeof wanted / sizeof *wanted, &answer);
	*said = (struct printer_said){0};
	if (is_good(status))
		answer_printer(&answer, j->media, said);
	return status;
}

static ipp_t *job_request(const struct job *j, const struct printer_said *said)
{
	ipp_t *r = request(j, IPP_OP_PRINT_JOB);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_NAME, "job-name", NULL, j->title);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_MIMETYPE, "document-format", NULL, "application/pdf");
	if (said->has_media)
		ippAddString(r, IPP_TAG_JOB, IPP_TAG_KEYWORD, "media", NULL, j->media);
	/* Smaller only where the paper is: nothing is cut off, and otherwise dots stay whole dots. */
	if (said->fits)
		ippAddString(r, IPP_TAG_JOB, IPP_TAG_KEYWORD, "print-scaling", NULL, "auto-fit");
	return r;
}

/* Sends it, and sets j->cups to the number that the printer gave it, 0 none. */
static int print_job(struct job *j, http_t *h)
{
	struct buf answer _cleanup_(buf_free) = {0};
	struct printer_said printer;
	struct job_said said = {0};
	size_t at = 0;
	int status = ask_printer(j, h, &printer);
	if (!is_good(status))
		return status;
	/* Other paper in the tray is used from its corner, and never the middle. */
	if (j->media[0] && printer.other[0] &&
	    (printer.says_ready ? !printer.is_ready : !printer.has_media)) {
		job_lay_on(j, printer.other);
		printer.has_media = strcmp(j->media, printer.other) == 0;
	}
	/* From here on an answer that is lost does not mean that nothing arrived. */
	j->look_first = true;
	status = exchange(h, &j->printer, job_request(j, &printer), &j->pdf, &answer);
	if (is_good(status))
		answer_next_job(&answer, &at, j->title, &said);
	j->cups = said.id;
	return status;
}

static void send_it(struct job *j, http_t *h)
{
	if (j->look_first) {
		int status, had = had_before(j, h, &status);
		if (had < 0) {
			say_trouble(j, status);
			return;
		}
		if (had > 0) {
			j->sent = true;
			j->sent_ms = clock_now().boot_ms;
			say(j, JOB_SENT, "%s: the printer has it already as job %d: not sent again", j->title,
			    j->cups);
			return;
		}
	}
	int status = print_job(j, h);
	if (!is_good(status) || !j->cups)
		say_trouble(j, status);
	else
		say(j, JOB_SENT, "%s: sent as job %d", j->title, j->cups);
	j->sent = j->state == JOB_SENT;
	j->sent_ms = clock_now().boot_ms;
}

static void say_done(struct job *j, bool missing)
{
	if (missing)
		say(j, JOB_DONE,
		    "%s: reported done, but the printer was restarted meanwhile and may have lost it: look "
		    "for the paper",
		    j->title);
	else
		say(j, JOB_DONE, "%s: the printer reports it done: look that every page is there", j->title);
}

static void follow(struct job *j, http_t *h)
{
	struct job_said said;
	struct printer_said printer;
	int status, r = ask_job(j, h, &said, &status);
	if (r < 0) {
		say(j, JOB_WAITING,
		    "%s: sent as job %d, and the printer does not answer: check power, cable and network",
		    j->title, j->cups);
		return;
	}
	if (r == 0) {
		say(j, JOB_FAILED,
		    "%s: the printer no longer knows job %d: look for the paper, and print again if it is "
		    "not there",
		    j->title, j->cups);
		return;
	}
	if (said.state == IPP_JSTATE_COMPLETED) {
		/* A print server that never learnt what became of the job reports it completed all the same. */
		say_done(j, said.history_is_missing ||
		                (is_good(ask_printer(j, h, &printer)) && printer.history_is_missing));
	} else if (ended_without_paper(&said)) {
		say(j, JOB_FAILED,
		    "%s: the printer ended job %d without finishing it: look at the printer, then print "
		    "again",
		    j->title, j->cups);
	} else {
		const char *trouble = is_good(ask_printer(j, h, &printer)) ? printer.trouble : NULL;
		if (!trouble && said.state == IPP_JSTATE_HELD)
			trouble = "the job is held: release it (lp -H resume)";
		if (!trouble && said.state == IPP_JSTATE_STOPPED)
			trouble = "the job is stopped: look at the printer";
		if (!trouble && said.cannot_reach)
			trouble = "the queue has it, and the printer does not answer: check power, cable and "
			          "network";
		if (!trouble && clock_now().boot_ms - j->sent_ms > PROMPT_MS)
			trouble = "the printer has it and is not finished yet: look at the printer";
		if (trouble)
			say(j, JOB_WAITING, "%s: %s", j->title, trouble);
		else
			say(j, JOB_SENT, "%s: sent as job %d", j->title, j->cups);
	}
}

bool job_step(struct job *j)
{
	char before_text[ERROR_TEXT_MAX];
	enum job_state before = j->state;
	if (job_is_over(j))
		return false;
	memcpy(before_text, j->text, sizeof before_text);
	http_t *h _cleanup_(http_drop) = exchange_open(&j->printer);
	if (!h && j->sent)
		say(j, JOB_WAITING,
		    "%s: sent as job %d, and the printer does not answer: check power, cable and network",
		    j->title, j->cups);
	else if (!h)
		say(j, JOB_WAITING, "%s: the printer does not answer: check power, cable and network",
		    j->title);
	else if (j->sent)
		follow(j, h);
	else
		send_it(j, h);
	return before != j->state || strcmp(before_text, j->text) != 0;
}
