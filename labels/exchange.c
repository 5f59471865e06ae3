#include "labels/exchange.h"

#include <errno.h>
#include <signal.h>
#include <string.h>
#include <strings.h>
#include <sys/socket.h>
#include <unistd.h>

#include "base/clock.h"

#define CONNECT_MS 3000
#define CONNECT_S 8 /* with what TLS says first */
#define SILENCE_MS 4000
#define SEND_S 60
#define ANSWER_S 8
#define TRIES 2 /* the second in TLS, where the printer wants that */

/* A read within libcups ends only with the connection: it goes on for as long as a byte comes now and then. `late` where
 * either clock ran out. */
static http_t *volatile connection;
static volatile sig_atomic_t late;
static int64_t begun_ms; /* what is waited for now, by CLOCK_BOOTTIME */

static void on_alarm(int signal)
{
	(void)signal;
	late = 1;
	int fd = connection ? httpGetFd(connection) : -1; /* which libcups changes where it connects again */
	if (fd >= 0)
		shutdown(fd, SHUT_RDWR);
}

static void end_after(http_t *h, unsigned seconds)
{
	static const struct sigaction action = {.sa_handler = on_alarm};
	connection = h;
	begun_ms = clock_now().boot_ms;
	sigaction(SIGALRM, &action, NULL);
	alarm(seconds);
}

/* Asked after a silence, and at once where a record of TLS held nothing for HTTP, as a ticket for another session does. */
static int go_on(http_t *http, void *data)
{
	(void)http;
	(void)data;
	if (clock_now().boot_ms - begun_ms < SILENCE_MS - 10)
		return 1;
	late = 1;
	return 0;
}

static bool connect_again(http_t *h)
{
	end_after(h, CONNECT_S);
	return httpReconnect2(h, CONNECT_MS, NULL) == 0;
}

http_t *exchange_open(const struct printer *p)
{
	http_t *h = httpConnect2(p->host, p->port, NULL, AF_UNSPEC,
	                         p->encrypted ? HTTP_ENCRYPTION_ALWAYS : HTTP_ENCRYPTION_IF_REQUESTED, 1, 0,
	                         NULL); /* 0: not yet */
	if (!h)
		return NULL;
	httpSetTimeout(h, SILENCE_MS / 1000.0, go_on, NULL);
	bool good = connect_again(h);
	end_after(NULL, 0);
	if (good)
		return h;
	httpClose(h);
	return NULL;
}

static bool is_over(http_t *h)
{
	http_status_t last = httpGetStatus(h);
	return last == HTTP_STATUS_ERROR || last >= HTTP_STATUS_MULTIPLE_CHOICES ||
	       strcasecmp(httpGetField(h, HTTP_FIELD_CONNECTION), "close") == 0;
}

static bool send_all(http_t *h, const struct printer *p, ipp_t *request, const struct buf *document)
{
	ipp_state_t state;
	if (is_over(h) && !connect_again(h))
		return false;
	end_after(h, SEND_S);
	httpClearFields(h);
	httpSetField(h, HTTP_FIELD_CONTENT_TYPE, "application/ipp");
	httpSetLength(h, ippLength(request) + (document ? document->size : 0));
	ippSetState(request, IPP_STATE_IDLE);
	if (httpPost(h, p->resource) < 0)
		return false;
	while ((state = ippWrite(h, request)) != IPP_STATE_DATA)
		if (state == IPP_STATE_ERROR)
			return false;
	/* A printer that refuses may stop listening before all is sent: its answer says why. */
	if (document)
		httpWrite2(h, document->data, document->size);
	httpFlushWrite(h);
	return true;
}

static http_status_t read_head(http_t *h)
{
	http_status_t s;
	end_after(h, ANSWER_S);
	do
		s = httpUpdate(h);
	while (s == HTTP_STATUS_CONTINUE);
	return s;
}

/* 0, -EIO where it breaks off, -EPROTO where it has no end. */
static int read_body(http_t *h, struct buf *answer)
{
	char part[8192];
	ssize_t n;
	while ((n = httpRead2(h, part, sizeof part)) > 0) {
		if (answer->size + (size_t)n > ANSWER_BYTES_MAX)
			return -EPROTO;
		if (buf_add(answer, part, (size_t)n) < 0)
			return -ENOMEM;
	}
	return n < 0 ? -EIO : 0;
}

static int status_of_http(http_status_t s)
{
	if (s == HTTP_STATUS_ERROR)
		return -EIO;
	if (s == HTTP_STATUS_UNAUTHORIZED || s == HTTP_STATUS_FORBIDDEN)
		return IPP_STATUS_ERROR_FORBIDDEN;
	if (s == HTTP_STATUS_NOT_FOUND)
		return IPP_STATUS_ERROR_NOT_FOUND;
	return s >= HTTP_STATUS_BAD_REQUEST && s < HTTP_STATUS_SERVER_ERROR
	           ? IPP_STATUS_ERROR_BAD_REQUEST
	           : IPP_STATUS_ERROR_SERVICE_UNAVAILABLE;
}

static bool wants_tls(http_t *h, http_status_t s)
{
	return s == HTTP_STATUS_UPGRADE_REQUIRED && connect_again(h) &&
	       httpEncryption(h, HTTP_ENCRYPTION_REQUIRED) == 0;
}

int exchange(http_t *h, const struct printer *p, ipp_t *request, const struct buf *document,
             struct buf *answer)
{
	int r = -EIO;
	late = 0;
	for (int i = 0; i < TRIES; i++) {
		http_status_t s = send_all(h, p, request, document) ? read_head(h) : HTTP_STATUS_ERROR;
		if (wants_tls(h, s))
			continue;
		r = s == HTTP_STATUS_OK ? read_body(h, answer) : status_of_http(s);
		break;
	}
	ippDelete(request);
	/* What is left of an answer that has no end is no answer to the next request. */
	if (r == -EPROTO)
		connect_again(h);
	end_after(NULL, 0);
	if (late)
		return -EIO;
	return r == 0 ? answer_status(answer) : r;
}
