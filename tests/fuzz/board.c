/* Fuzzing both sides of the board: bytes that begin with '{' are lines from the daemon, any others a request
 * over HTTP, to the real server on a port of this machine. The port in it is written 12345.
 *
 * Whatever comes: what a page is sent is whole events of canonical JSON; a request is answered well only by
 * one of the board's names; and what goes to the daemon is a typed code of plain characters, from the board's
 * own page and with the cookie that is let in, or the ticket that is.
 */
#include <arpa/inet.h>
#include <ctype.h>
#include <errno.h>
#include <event2/event.h>
#include <fcntl.h>
#include <netinet/in.h>
#include <signal.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/socket.h>
#include <unistd.h>

#include "board/catalogues.h"
#include "board/server.h"

#define INPUT_MAX 9000
#define ANSWER_MAX ((size_t)1 << 18)
#define COOKIE                                                                                               \
	"cookiecookiecookiecookiecookiecookiecookieA" /* the daemon lets this one in, and this ticket */
#define TICKET "ticket-ticket-ticket-ticket-ticket-ticketBB"
#define OPENS "cookieThatOpensReportsThatOpensReportsOpens"
#define REPORT "<p>what the auditor alone reads</p>" /* a page that was handed over */
#define IDLE_ROUNDS 12                               /* without a byte, and nothing more will come */

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static struct rig {
	struct event_base *base;
	struct hub *hub;
	struct feed *feed;
	struct server *server;
	int to_board, from_board, page; /* `page` follows every room */
	int quiet, stderr_copy;
	char port[6];
} rig;

static void must(int holds, const char *what)
{
	if (holds)
		return;
	dprintf(rig.stderr_copy > 0 ? rig.stderr_copy : 2, "fuzz: %s\n", what);
	abort();
}

/* Lets the board work; what it logs meanwhile is not for this terminal. */
static void work(void)
{
	dup2(rig.quiet, 2);
	event_base_loop(rig.base, EVLOOP_NONBLOCK);
	dup2(rig.stderr_copy, 2);
}

static int connected(void)
{
	struct sockaddr_in at = {.sin_family = AF_INET,
	                         .sin_port = htons((uint16_t)server_port(rig.server)),
	                         .sin_addr.s_addr = htonl(INADDR_LOOPBACK)};
	int fd = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
	must(fd >= 0 && connect(fd, (struct sockaddr *)&at, sizeof at) == 0, "no connection");
	return fd;
}

/* All that comes, up to `most`, until the other side closes or falls silent. */
static size_t listen_to(int fd, char *out, size_t most)
{
	size_t size = 0;
	for (int idle = 0; idle < IDLE_ROUNDS && size < most;) {
		work();
		ssize_t n = recv(fd, out + size, most - size, MSG_DONTWAIT);
		if (n == 0 || (n < 0 && errno != EAGAIN))
			break;
		idle = n < 0 ? idle + 1 : 0;
		size += n > 0 ? (size_t)n : 0;
	}
	out[size] = 0;
	return size;
}

/* Without the wait of a port that was closed in order, or all ports would soon be waiting. */
static void hang_up(int fd)
{
	setsockopt(fd, SOL_SOCKET, SO_LINGER, &(struct linger){.l_onoff = 1}, sizeof(struct linger));
	close(fd);
	work();
}

/* --- what a page is sent --- */

static void whole_event(char *event)
{
	struct error e = {0};
	char *data = strstr(event, "\ndata: ");
	must(strncmp(event, "event: ", 7) == 0 && data && !strchr(data + 1, '\n'), "an event of other lines");
	data += strlen("\ndata: ");
	if (strncmp(event, "event: alive", 12) == 0) {
		must(*data && strspn(data, "-0123456789") == strlen(data), "a heartbeat without its number");
		return;
	}
	_cleanup_(json_drop) json_t *o = json_read(data, strlen(data), &e);
	must(json_is_object(o), "an event that is no JSON");
}

/* One chunk is one event. Returns how many bytes of `text` were whole chunks. */
static size_t look_at_chunks(char *text)
{
	char *at = text;
	for (;;) {
		char *end, *data;
		unsigned long n = strtoul(at, &end, 16);
		if (end == at || strlen(end) < n + 4)
			return (size_t)(at - text);
		data = end + 2;
		must(n > 2 && strncmp(end, "\r\n", 2) == 0 && strncmp(data + n, "\r\n", 2) == 0,
		     "half a chunk");
		must(strncmp(data + n - 2, "\n\n", 2) == 0, "half an event");
		data[n - 2] = 0;
		whole_event(data);
		at = data + n + 2;
	}
}

static void look_at_page(void)
{
	static char text[ANSWER_MAX + 1]; /* begins with what was not whole the last time */
	static size_t kept;
	char more;
	size_t size = kept + listen_to(rig.page, text + kept, ANSWER_MAX - kept);
	must(size < ANSWER_MAX, "a page is sent without end");
	must(recv(rig.page, &more, 1, MSG_DONTWAIT | MSG_PEEK) != 0, "the page was let go");
	size_t whole = look_at_chunks(text);
	kept = size - whole;
	memmove(text, text + whole, kept);
}

static void follow(struct guard *guard)
{
	char ask[100], answer[2048] = "";
	snprintf(ask, sizeof ask, "GET /events?desk=1 HTTP/1.1\r\nHost: 127.0.0.1:%s\r\n\r\n", rig.port);
	rig.page = connected();
	guard_stream(guard, rig.page); /* this end is in the same process */
	must(write(rig.page, ask, strlen(ask)) == (ssize_t)strlen(ask), "cannot ask");
	for (size_t n = 0; !strstr(answer, "\r\n\r\n"); n++)
		must(listen_to(rig.page, answer + n, 1) == 1 && n < sizeof answer - 2, "no page follows");
	must(strncmp(answer, "HTTP/1.1 200 ", 13) == 0, "no page follows");
	look_at_page();
}

/* Again and again: a line of the corpus may have said something else. */
static void let_in(void)
{
	char line[600], ticket[SECRET_HEX + 1], cookie[SECRET_HEX + 1], opens[SECRET_HEX + 1];
	struct secret_hash of_ticket = secret_hash(TICKET), of_cookie = secret_hash(COOKIE),
	                   of_opens = secret_hash(OPENS);
	secret_to_hex(&of_ticket, ticket);
	secret_to_hex(&of_cookie, cookie);
	secret_to_hex(&of_opens, opens);
	int n = snprintf(line, sizeof line,
	                 "{\"v\":1,\"let_in\":{\"tickets\":[\"%s\"],\"cookies\":[{\"hash\":\"%s\",\"room\":1,"
	                 "\"types\":true},{\"hash\":\"%s\",\"room\":0,\"reports\":true}]}}\n"
	                 "{\"v\":1,\"report\":{\"begin\":true}}\n"
	                 "{\"v\":1,\"report\":{\"page\":\"\",\"part\":\"" REPORT "\"}}\n"
	                 "{\"v\":1,\"report\":{\"show\":true}}\n",
	                 ticket, cookie, opens);
	must(write(rig.to_board, line, (size_t)n) == n, "cannot tell the board");
}

static void start(void)
{
	static const char view[] = "{\"v\":1,\"view\":{\"room\":{\"number\":1,\"name\":\"Theatre 1\"}}}\n";
	struct error e = {0};
	int in[2], out[2];
	signal(SIGPIPE, SIG_IGN);
	rig.quiet = open("/dev/null", O_WRONLY | O_CLOEXEC);
	rig.stderr_copy = dup(2);
	must(pipe(in) == 0 && pipe(out) == 0 && fcntl(out[0], F_SETFL, O_NONBLOCK) == 0, "no pipes");
	rig.to_board = in[1];
	rig.from_board = out[0];
	rig.base = event_base_new();
	rig.hub = hub_new(&(struct hub_rules){.typing[HUB_HERE] = true});
	struct waiting *waiting = waiting_new();
	struct reports *reports = reports_new();
	rig.feed = feed_new(rig.base, in[0], out[1], &(struct feed_to){rig.hub, waiting, reports});
	static const struct catalogues none;
	struct server_parts parts = {rig.base, rig.hub, rig.feed, waiting, guard_new(rig.base, 64),
	                             &none,    reports, -1};
	rig.server = server_new(&parts, 0, &e);
	must(rig.feed && rig.server, e.text);
	snprintf(rig.port, sizeof rig.port, "%d", server_port(rig.server));
	must(strlen(rig.port) == 5, "the port has not five digits");
	must(write(rig.to_board, view, sizeof view - 1) == sizeof view - 1, "cannot tell the board");
	let_in();
	work();
	follow(parts.guard);
}

static void from_daemon(const uint8_t *data, size_t size)
{
	/* A report's words come by let_in() alone: a room of that name would be shown to everybody. */
	if (memmem(data, size, REPORT, strlen(REPORT)))
		return;
	must(write(rig.to_board, data, size) == (ssize_t)size && write(rig.to_board, "\n", 1) == 1,
	     "cannot tell the board");
	look_at_page();
}

/* --- what a browser may ask --- */

static int names_board(const char *bytes, size_t size, const char *before)
{
	static const char *const names[] = {"127.0.0.1", "localhost"};
	for (size_t i = 0; i < 2; i++) {
		char wanted[64];
		int n = snprintf(wanted, sizeof wanted, "%s%s:%s", before, names[i], rig.port);
		for (size_t at = 0; at + (size_t)n <= size; at++)
			if (strncasecmp(bytes + at, wanted, (size_t)n) == 0)
				return 1;
	}
	return 0;
}

static int has(const char *bytes, size_t size, const char *text)
{
	return memmem(bytes, size, text, strlen(text)) != NULL;
}

static void look_at_keyed(const json_t *keyed, const char *bytes, size_t size)
{
	const char *code = json_text(keyed, "code");
	must(names_board(bytes, size, "http://"), "a code from a page of another");
	must(has(bytes, size, COOKIE) && strcmp(json_text(keyed, "cookie"), COOKIE) == 0,
	     "a code without the cookie");
	must(json_number(keyed, "room", 0) == 1 && *code && strlen(code) <= FEED_CODE_MAX, "a typed code");
	for (; *code; code++)
		must(isprint((unsigned char)*code), "a typed code that is not plain");
}

/* What came of it to the daemon, which answers. How many codes (16 each) and tickets (1 each). */
static int be_daemon(const char *bytes, size_t size)
{
	static char lines[65536];
	int came = 0;
	ssize_t n = read(rig.from_board, lines, sizeof lines - 1);
	lines[n > 0 ? n : 0] = 0;
	for (char *save = NULL, *l = strtok_r(lines, "\n", &save); l; l = strtok_r(NULL, "\n", &save)) {
		_cleanup_(json_drop) json_t *o = json_read(l, strlen(l), NULL);
		const json_t *keyed = json_object_get(o, "keyed"), *ticket = json_object_get(o, "ticket");
		if (keyed)
			look_at_keyed(keyed, bytes, size);
		must(!ticket || strcmp(json_text(ticket, "ticket"), TICKET) == 0, "another ticket");
		if (keyed)
			dprintf(
			    rig.to_board,
			    "{\"v\":1,\"reply\":{\"id\":\"%s\",\"verdict\":\"accepted\",\"said\":\"\"}}\n",
			    json_text(keyed, "id"));
		if (ticket)
			dprintf(rig.to_board,
			        "{\"v\":1,\"entry\":{\"id\":\"%s\",\"room\":1,\"cookie\":\"" COOKIE "\"}}\n",
			        json_text(ticket, "id"));
		came += keyed ? 16 : ticket ? 1 : 0;
	}
	return came;
}

static void look_at_answer(char *answer, const char *bytes, size_t size, int came)
{
	char *body = strstr(answer, "\r\n\r\n");
	if (!*answer)
		return;
	must(body != NULL, "an answer without an end of its head");
	*body = 0;
	const char *space = strchr(answer, ' '); /* the library answers with the version that was asked for */
	must(strncmp(answer, "HTTP/", 5) == 0 && space, "an answer without a status");
	int status = atoi(space);
	must(status >= 100 && status < 600, "an answer of another status");
	must((strcasestr(answer, "set-cookie") != NULL) == (status == 303), "a cookie");
	must(status != 303 || came & 15, "a cookie without a ticket");
	if (status != 200 && status != 303)
		return;
	must(names_board(bytes, size, ""), "another name was answered");
	const char *policy = strstr(answer, "\nContent-Security-Policy: default-src 'none';");
	must(policy != NULL, "an answer without a policy");
	if (!strstr(body + 4, REPORT))
		return;
	must(has(bytes, size, OPENS), "a report without the cookie that opens it");
	must(!strstr(policy, "script-src"), "a report that may run a script");
}

static void from_browser(const uint8_t *data, size_t size)
{
	static char answer[ANSWER_MAX + 1], bytes[INPUT_MAX];
	memcpy(bytes, data, size);
	for (size_t i = 0; i + 5 <= size; i++)
		if (memcmp(bytes + i, "12345", 5) == 0)
			memcpy(bytes + i, rig.port, 5);
	int fd = connected(), came = 0;
	let_in();
	must(write(fd, bytes, size) == (ssize_t)size, "cannot ask");
	for (int i = 0; i < IDLE_ROUNDS; i++) {
		work();
		came += be_daemon(bytes, size);
	}
	shutdown(fd, SHUT_WR);
	must(listen_to(fd, answer, ANSWER_MAX) < ANSWER_MAX, "an answer without end");
	hang_up(fd);
	look_at_answer(answer, bytes, size, came);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	if (size > INPUT_MAX)
		return 0;
	if (!rig.base)
		start();
	if (size && data[0] == '{')
		from_daemon(data, size);
	else
		from_browser(data, size);
	return 0;
}
