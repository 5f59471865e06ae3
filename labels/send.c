#include "labels/send.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include <cups/cups.h>

#include "base/clock.h"

#define CONNECT_MS 3000
#define SILENCE_S 4.0
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

static int give_up(http_t *http, void *data)
{
	(void)http;
	(void)data;
	return 0;
}

static void http_drop(http_t **h)
{
	if (*h)
		httpClose(*h);
}

static void ipp_drop(ipp_t **i)
{
	ippDelete(*i);
}

static http_t *connect_to(const struct printer *p)
{
	http_t *h = httpConnect2(p->host, p->port, NULL, AF_UNSPEC,
	                         p->encrypted ? HTTP_ENCRYPTION_ALWAYS : HTTP_ENCRYPTION_IF_REQUESTED, 1,
	                         CONNECT_MS, NULL);
	if (h)
		httpSetTimeout(h, SILENCE_S, give_up, NULL);
	return h;
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
static void say_trouble(struct job *j, ipp_status_t status)
{
	if (status == IPP_STATUS_ERROR_NOT_ACCEPTING_JOBS)
		say(j, JOB_WAITING, "%s: the %s does not accept jobs: let it accept them again (cupsaccept)",
		    j->title, whose(j));
	else if (status == IPP_STATUS_ERROR_NOT_FOUND)
		say(j, JOB_FAILED, "%s: there is no such %s: check the printer's name in the settings",
		    j->title, whose(j));
	else if (status == IPP_STATUS_ERROR_BUSY)
		say(j, JOB_WAITING, "%s: the printer is busy with another job: it is tried again", j->title);
	else if (status == IPP_STATUS_ERROR_DOCUMENT_FORMAT_NOT_SUPPORTED)
		say(j, JOB_FAILED, "%s: the printer takes no PDF: set up a queue for it that does", j->title);
	else if (status == IPP_STATUS_ERROR_INTERNAL || status == IPP_STATUS_ERROR_SERVICE_UNAVAILABLE ||
	         status == IPP_STATUS_ERROR_TIMEOUT || status == IPP_STATUS_ERROR_DEVICE)
		say(j, JOB_WAITING, "%s: the printer does not answer: check power, cable and network",
		    j->title);
	else
		say(j, JOB_FAILED, "%s: the %s refuses the job: %s: ask whoever looks after printing",
		    j->title, whose(j), ippErrorString(status));
}

/* The state of the job under its number, or under its title where the number is not known.
 * 1 with the attributes in *found, 0 when the printer has no such job, negative errno when it cannot be
 * asked. */
static int ask_job(struct job *j, http_t *h, ipp_t **found)
{
	static const char *const wanted[] = {"job-id", "job-name", "job-state", "job-state-reasons",
	                                     "job-printer-state-message"};
	ipp_t *r = request(j, IPP_OP_GET_JOB_ATTRIBUTES);
	ippAddStrings(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes", 5, NULL, wanted);
	ipp_t *a = cupsDoRequest(h, r, j->printer.resource);
	ipp_status_t status = cupsLastError();
	if (status == IPP_STATUS_ERROR_NOT_FOUND) {
		ippDelete(a);
		return 0;
	}
	if (status > IPP_STATUS_OK_CONFLICTING) {
		ippDelete(a);
		return -EIO;
	}
	/* Another job can have the number after a print server was set up anew. */
	const char *name = ippGetString(ippFindAttribute(a, "job-name", IPP_TAG_NAME), 0, NULL);
	if (name && strcmp(name, j->title) != 0) {
		ippDelete(a);
		return 0;
	}
	*found = a;
	return 1;
}

/* RFC 8011 section 5.3.2: a job's number is 1 or more. A printer that says otherwise has not said which it is: 0. */
static int job_number(ipp_attribute_t *at)
{
	int id = at && ippGetValueTag(at) == IPP_TAG_INTEGER ? ippGetInteger(at, 0) : 0;
	return id > 0 ? id : 0;
}

/* Looks for the title among the jobs that are `which`; sets j->cups. A job that ended without paper is none.
 */
static int find_title(struct job *j, http_t *h, const char *which)
{
	static const char *const wanted[] = {"job-id", "job-name", "job-state"};
	ipp_t *r = request(j, IPP_OP_GET_JOBS);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "which-jobs", NULL, which);
	ippAddStrings(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes", 3, NULL, wanted);
	ipp_t *a _cleanup_(ipp_drop) = cupsDoRequest(h, r, j->printer.resource);
	ipp_status_t status = cupsLastError();
	if (status == IPP_STATUS_ERROR_NOT_FOUND)
		return 0;
	if (status > IPP_STATUS_OK_CONFLICTING)
		return -EIO;
	int id = 0, state = 0, same = 0;
	for (ipp_attribute_t *at = ippFirstAttribute(a); at; at = ippNextAttribute(a)) {
		const char *name = ippGetName(at);
		if (!name || ippGetGroupTag(at) != IPP_TAG_JOB) {
			id = state = same = 0; /* between two jobs */
			continue;
		}
		if (strcmp(name, "job-id") == 0)
			id = job_number(at);
		if (strcmp(name, "job-state") == 0)
			state = ippGetInteger(at, 0);
		if (strcmp(name, "job-name") == 0)
			same = strcmp(ippGetString(at, 0, NULL), j->title) == 0;
		if (id && state && same && state != IPP_JSTATE_CANCELED && state != IPP_JSTATE_ABORTED) {
			j->cups = id;
			return 1;
		}
	}
	return 0;
}

/* Whether the printer has the job from an earlier attempt: 1, 0 or negative errno. */
static int had_before(struct job *j, http_t *h)
{
	if (j->cups) {
		ipp_t *a _cleanup_(ipp_drop) = NULL;
		int r = ask_job(j, h, &a);
		if (r < 0)
			return r;
		int state = r ? ippGetInteger(ippFindAttribute(a, "job-state", IPP_TAG_ENUM), 0) : 0;
		if (r && state != IPP_JSTATE_CANCELED && state != IPP_JSTATE_ABORTED)
			return 1;
		j->cups = 0;
	}
	int r = find_title(j, h, "not-completed");
	return r ? r : find_title(j, h, "completed");
}

/* A size or a way of scaling that the printer does not name would have the whole job refused. Asking first
 * also finds out that a printer hangs before anything is sent to it. */
static ipp_status_t ask_wishes(struct job *j, http_t *h, bool *sized, bool *scales)
{
	static const char *const wanted[] = {"media-supported", "print-scaling-supported"};
	ipp_t *r = request(j, IPP_OP_GET_PRINTER_ATTRIBUTES);
	ippAddStrings(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes", 2, NULL, wanted);
	ipp_t *a _cleanup_(ipp_drop) = cupsDoRequest(h, r, j->printer.resource);
	*sized = *j->media && ippContainsString(ippFindAttribute(a, wanted[0], IPP_TAG_ZERO), j->media);
	*scales = ippContainsString(ippFindAttribute(a, wanted[1], IPP_TAG_ZERO), "auto-fit");
	return cupsLastError();
}

static ipp_t *job_request(const struct job *j, bool sized, bool scales)
{
	ipp_t *r = request(j, IPP_OP_PRINT_JOB);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_NAME, "job-name", NULL, j->title);
	ippAddString(r, IPP_TAG_OPERATION, IPP_TAG_MIMETYPE, "document-format", NULL, "application/pdf");
	if (sized)
		ippAddString(r, IPP_TAG_JOB, IPP_TAG_KEYWORD, "media", NULL, j->media);
	/* Smaller only where the paper is: nothing is cut off, and otherwise dots stay whole dots. */
	if (scales)
		ippAddString(r, IPP_TAG_JOB, IPP_TAG_KEYWORD, "print-scaling", NULL, "auto-fit");
	return r;
}

static ipp_status_t print_job(struct job *j, http_t *h)
{
	bool sized, scales;
	ipp_status_t status = ask_wishes(j, h, &sized, &scales);
	if (status > IPP_STATUS_OK_EVENTS_COMPLETE)
		return status;
	ipp_t *r = job_request(j, sized, scales);
	/* From here on an answer that is lost does not mean that nothing arrived. */
	j->look_first = true;
	http_status_t s = cupsSendRequest(h, r, j->printer.resource, ippLength(r) + j->pdf.size);
	ippDelete(r);
	if (s == HTTP_STATUS_CONTINUE)
		s = cupsWriteRequestData(h, j->pdf.data, j->pdf.size);
	ipp_t *a _cleanup_(ipp_drop) = cupsGetResponse(h, j->printer.resource);
	status = cupsLastError();
	if (!a && status <= IPP_STATUS_OK_CONFLICTING)
		status = IPP_STATUS_ERROR_SERVICE_UNAVAILABLE;
	if (a)
		j->cups = job_number(ippFindAttribute(a, "job-id", IPP_TAG_INTEGER));
	return status;
}

static void send_it(struct job *j, http_t *h)
{
	if (j->look_first) {
		int had = had_before(j, h);
		if (had < 0) {
			say_trouble(j, cupsLastError());
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
	ipp_status_t status = print_job(j, h);
	if (status > IPP_STATUS_OK_CONFLICTING || !j->cups)
		say_trouble(j, status);
	else
		say(j, JOB_SENT, "%s: sent as job %d", j->title, j->cups);
	j->sent = j->state == JOB_SENT;
	j->sent_ms = clock_now().boot_ms;
}

/* X(reason as it begins, what people read) of the printer's state reasons, RFC 8011 section 5.4.12. */
#define REASONS(X)                                                                                           \
	X("media-empty", "the printer is out of paper: put paper in, it goes on by itself")                  \
	X("media-needed", "the printer asks for paper: put paper in, it goes on by itself")                  \
	X("media-jam", "paper is jammed in the printer: clear it")                                           \
	X("door-open", "the printer is open: close it")                                                      \
	X("cover-open", "the printer is open: close it")                                                     \
	X("toner-empty", "the printer is out of toner: change it")                                           \
	X("marker-supply-empty", "the printer is out of ink or ribbon: change it")                           \
	X("offline", "the printer does not answer: check power, cable and network")                          \
	X("connecting-to-device", "the printer does not answer yet: check power, cable and network")         \
	X("timed-out", "the printer does not answer: check power, cable and network")                        \
	X("paused", "the queue is paused: let it go on (cupsenable)")                                        \
	X("stopped", "the printer is stopped: look at its display")

static const char *printer_trouble(struct job *j, http_t *h)
{
	static const struct {
		const char *reason, *words;
	} all[] = {
#define X(reason, words) {reason, words},
	    REASONS(X)
#undef X
	};
	static const char *const wanted[] = {"printer-state", "printer-state-reasons"};
	ipp_t *r = request(j, IPP_OP_GET_PRINTER_ATTRIBUTES);
	ippAddStrings(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes", 2, NULL, wanted);
	ipp_t *a _cleanup_(ipp_drop) = cupsDoRequest(h, r, j->printer.resource);
	ipp_attribute_t *reasons = ippFindAttribute(a, "printer-state-reasons", IPP_TAG_KEYWORD);
	for (size_t k = 0; k < sizeof all / sizeof *all; k++)
		for (int i = 0; i < ippGetCount(reasons); i++)
			if (strncmp(ippGetString(reasons, i, NULL), all[k].reason, strlen(all[k].reason)) ==
			    0)
				return all[k].words;
	if (ippGetInteger(ippFindAttribute(a, "printer-state", IPP_TAG_ENUM), 0) == IPP_PSTATE_STOPPED)
		return "the printer is stopped: look at its display";
	return NULL;
}

/* A print server that never learnt what became of the job reports it completed all the same. */
static bool history_is_missing(ipp_t *job, struct job *j, http_t *h)
{
	static const char *const wanted[] = {"printer-state-reasons"};
	ipp_attribute_t *own = ippFindAttribute(job, "job-state-reasons", IPP_TAG_KEYWORD);
	if (ippContainsString(own, "cups-ipp-missing-job-history"))
		return true;
	ipp_t *r = request(j, IPP_OP_GET_PRINTER_ATTRIBUTES);
	ippAddStrings(r, IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes", 1, NULL, wanted);
	ipp_t *a _cleanup_(ipp_drop) = cupsDoRequest(h, r, j->printer.resource);
	return ippContainsString(ippFindAttribute(a, "printer-state-reasons", IPP_TAG_KEYWORD),
	                         "cups-ipp-missing-job-history");
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

/* While CUPS tries to reach a printer it sets no state reason, only its backend's message (cups 2.4). In
 * another language the sentence about time still comes. */
static bool queue_cannot_reach(ipp_t *job)
{
	const char *m =
	    ippGetString(ippFindAttribute(job, "job-printer-state-message", IPP_TAG_TEXT), 0, NULL);
	return m && (strstr(m, "unavailable at this time") || strstr(m, "Connecting to printer") ||
	             strstr(m, "not responding"));
}

static void follow(struct job *j, http_t *h)
{
	ipp_t *a _cleanup_(ipp_drop) = NULL;
	int r = ask_job(j, h, &a);
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
	int state = ippGetInteger(ippFindAttribute(a, "job-state", IPP_TAG_ENUM), 0);
	if (state == IPP_JSTATE_COMPLETED) {
		say_done(j, history_is_missing(a, j, h));
	} else if (state == IPP_JSTATE_CANCELED || state == IPP_JSTATE_ABORTED) {
		say(j, JOB_FAILED,
		    "%s: the printer ended job %d without finishing it: look at the printer, then print "
		    "again",
		    j->title, j->cups);
	} else {
		const char *trouble = printer_trouble(j, h);
		if (!trouble && state == IPP_JSTATE_HELD)
			trouble = "the job is held: release it (lp -H resume)";
		if (!trouble && state == IPP_JSTATE_STOPPED)
			trouble = "the job is stopped: look at the printer";
		if (!trouble && queue_cannot_reach(a))
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
	http_t *h _cleanup_(http_drop) = connect_to(&j->printer);
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
