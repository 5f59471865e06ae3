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
	case JOB_WITHDRAWN:
		return "withdrawn";
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
	return j->state == JOB_WRITTEN || j->state == JOB_DONE || j->state == JOB_FAILED ||
	       j->state == JOB_WITHDRAWN;
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
	if (op == IPP_OP_GET_JOB_ATTRIBUTES || op == IPP_OP_CANCEL_JOB)
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
	j->why = SAY_NONE;
}

/* What is in the way, by name, and for command line and journal in English. */
static void blame(struct job *j, enum job_state state, enum saying why)
{
	say(j, state, "%s: %s", j->title, saying_text(why));
	j->why = why;
}

static enum saying why_of(int status)
{
	switch (status) {
	case -EPROTO:
		return SAY_PRINTER_NOT_READ;
	case IPP_STATUS_ERROR_NOT_ACCEPTING_JOBS:
		return SAY_PRINTER_TAKES_NONE;
	case IPP_STATUS_ERROR_NOT_FOUND:
		return SAY_PRINTER_NOT_THERE;
	case IPP_STATUS_ERROR_BUSY:
		return SAY_PRINTER_BUSY;
	case IPP_STATUS_ERROR_DOCUMENT_FORMAT_NOT_SUPPORTED:
		return SAY_PRINTER_NO_PDF;
	case IPP_STATUS_ERROR_INTERNAL:
	case IPP_STATUS_ERROR_SERVICE_UNAVAILABLE:
	case IPP_STATUS_ERROR_TIMEOUT:
	case IPP_STATUS_ERROR_DEVICE:
		return SAY_PRINTER_SILENT;
	}
	return is_good(status) ? SAY_PRINTER_NO_NUMBER
	       : status < 0    ? SAY_PRINTER_SILENT
	                       : SAY_PRINTER_REFUSES;
}

/* Whether it can come yet without anybody's setting something right first. */
static bool may_pass(enum saying why)
{
	return why == SAY_PRINTER_NOT_READ || why == SAY_PRINTER_TAKES_NONE || why == SAY_PRINTER_BUSY ||
	       why == SAY_PRINTER_SILENT;
}

/* What the last request's failure means for people. */
static void say_trouble(struct job *j, int status)
{
	enum saying why = why_of(status);
	blame(j, may_pass(why) ? JOB_WAITING : JOB_FAILED, why);
	if (why == SAY_PRINTER_REFUSES)
		snprintf(j->text, sizeof j->text, "%s: %s (%s)", j->title, saying_text(why),
		         ippErrorString((ipp_status_t)status));
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

int printer_reach(const struct printer *p, const char *name, struct error *e)
{
	const struct job j = {.printer = *p};
	struct printer_said said;
	http_t *h _cleanup_(http_drop) = exchange_open(p);
	int status = h ? ask_printer(&j, h, &said) : -EIO;
	if (status == IPP_STATUS_ERROR_NOT_FOUND)
		return error_set(e, -ENOENT,
		                 "printer '%.60s': there is no such queue or printer: 'bandtally-print "
		                 "--queues' lists those of this machine",
		                 name);
	if (status < 0 && status != -EPROTO)
		return error_set(e, -EIO,
		                 "printer '%.60s': nothing answers there: check its name (bandtally-print "
		                 "--queues), power, cable and network, and that CUPS runs",
		                 name);
	return 0;
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

static enum saying why_unfinished(const struct job *j, const struct job_said *said)
{
	if (said->state == IPP_JSTATE_HELD)
		return SAY_PRINTER_HELD;
	if (said->state == IPP_JSTATE_STOPPED)
		return SAY_PRINTER_JOB_STOPPED;
	if (said->cannot_reach)
		return SAY_PRINTER_SILENT;
	return clock_now().boot_ms - j->sent_ms > PROMPT_MS ? SAY_PRINTER_SLOW : SAY_NONE;
}

static void follow(struct job *j, http_t *h)
{
	struct job_said said;
	struct printer_said printer;
	int status, r = ask_job(j, h, &said, &status);
	if (r <= 0) {
		blame(j, r < 0 ? JOB_WAITING : JOB_FAILED, r < 0 ? SAY_PRINTER_SILENT : SAY_PRINTER_FORGOT);
		return;
	}
	if (said.state == IPP_JSTATE_COMPLETED) {
		/* A print server that never learnt what became of the job reports it completed all the same. */
		say_done(j, said.history_is_missing ||
		                (is_good(ask_printer(j, h, &printer)) && printer.history_is_missing));
	} else if (ended_without_paper(&said)) {
		blame(j, JOB_FAILED, SAY_PRINTER_ENDED);
	} else {
		enum saying why = is_good(ask_printer(j, h, &printer)) ? printer.trouble : SAY_NONE;
		why = why ? why : why_unfinished(j, &said);
		if (why)
			blame(j, JOB_WAITING, why);
		else
			say(j, JOB_SENT, "%s: sent as job %d", j->title, j->cups);
	}
}

static void say_withdrawn(struct job *j)
{
	say(j, JOB_WITHDRAWN, "%s: withdrawn: the printer does not have it any more", j->title);
}

/* What the printer would not give back is followed until it is over, and asked for again. */
static void cancel(struct job *j, http_t *h)
{
	struct buf answer _cleanup_(buf_free) = {0};
	if (is_good(exchange(h, &j->printer, request(j, IPP_OP_CANCEL_JOB), NULL, &answer)))
		say_withdrawn(j);
	else
		blame(j, JOB_WAITING, SAY_PRINTER_KEEPS);
}

static void take_back(struct job *j, http_t *h)
{
	struct job_said said = {0};
	int status, r = j->cups ? ask_job(j, h, &said, &status) : find_title(j, h, "not-completed", &status);
	if (r < 0)
		blame(j, JOB_WAITING, SAY_PRINTER_SILENT);
	else if (r == 0 || ended_without_paper(&said))
		say_withdrawn(j);
	else if (said.state == IPP_JSTATE_COMPLETED)
		say_done(j, said.history_is_missing);
	else
		cancel(j, h);
}

/* Whether the printer cannot have anything of it. */
static bool never_left(const struct job *j)
{
	return !j->sent && !j->look_first;
}

bool job_step(struct job *j)
{
	char before_text[ERROR_TEXT_MAX];
	enum job_state before = j->state;
	if (job_is_over(j))
		return false;
	memcpy(before_text, j->text, sizeof before_text);
	bool nowhere = j->unwanted && never_left(j);
	http_t *h _cleanup_(http_drop) = nowhere ? NULL : exchange_open(&j->printer);
	if (nowhere)
		say_withdrawn(j);
	else if (!h)
		blame(j, JOB_WAITING, SAY_PRINTER_SILENT);
	else if (j->unwanted)
		take_back(j, h);
	else if (j->sent)
		follow(j, h);
	else
		send_it(j, h);
	return before != j->state || strcmp(before_text, j->text) != 0;
}
