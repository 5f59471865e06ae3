#include "tool/client.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/time.h>
#include <sys/un.h>
#include <unistd.h>

#include "base/file.h"

const char *client_folder = "/var/lib/bandtally";

/* By the lock of its folder, which it holds as long as it works. */
static int is_at_work(void)
{
	char path[PATH_MAX];
	snprintf(path, sizeof path, "%.3900s/lock", client_folder);
	return file_is_locked(path);
}

static int no_way(int why, struct error *e)
{
	int none = why == -ENOENT || why == -ECONNREFUSED;
	if (none && is_at_work())
		return error_set(
		    e, why,
		    "cannot reach the station in %s: it works, but nobody can ask it: its socket is "
		    "gone: when no case is open, end it and start it again",
		    client_folder);
	return error_set(e, why,
	                 "cannot reach the station in %s: %s: start it with 'bandtallyd --data %s', or give "
	                 "its folder with "
	                 "--data",
	                 client_folder, none ? "it is not running" : strerror(-why), client_folder);
}

static int reach(struct error *e)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	struct timeval patience = {.tv_sec = 60};
	int n = snprintf(a.sun_path, sizeof a.sun_path, "%s/socket", client_folder);
	if (n < 0 || (size_t)n >= sizeof a.sun_path)
		return error_set(e, -ENAMETOOLONG,
		                 "cannot reach the station: the path of the data folder is too long: use a "
		                 "shorter one");
	int fd = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
	if (fd < 0 || connect(fd, (struct sockaddr *)&a, sizeof a) < 0) {
		n = -errno;
		if (fd >= 0)
			close(fd);
		return no_way(n, e);
	}
	setsockopt(fd, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
	return fd;
}

static int send_all(int fd, const char *bytes, size_t size)
{
	while (size) {
		ssize_t n = send(fd, bytes, size, MSG_NOSIGNAL);
		if (n < 0 && errno == EINTR)
			continue;
		if (n <= 0)
			return -errno;
		bytes += n;
		size -= (size_t)n;
	}
	return 0;
}

static json_t *read_answer(int fd, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	char part[8192];
	while (!text.size || text.data[text.size - 1] != '\n') {
		ssize_t n = recv(fd, part, sizeof part, 0);
		if (n < 0 && errno == EINTR)
			continue;
		if (n <= 0) {
			error_set(e, -EIO,
			          "the station did not answer: it ended or hangs: see its messages, count by "
			          "hand meanwhile");
			return NULL;
		}
		if (buf_add(&text, part, (size_t)n) < 0) {
			error_set(e, -ENOMEM, "out of memory: try again");
			return NULL;
		}
	}
	return json_read(text.data, text.size, e);
}

static int write_request(json_t *request, struct buf *line, struct error *e)
{
	_cleanup_(json_drop) json_t *q = request;
	if (json_write_canonical(q, line) < 0 || buf_add_text(line, "\n") < 0)
		return error_set(e, -EINVAL,
		                 "the request cannot be written: a text in it is not UTF-8: mend it");
	return 0;
}

static json_t *ask_on(int fd, const struct buf *line, struct error *e)
{
	int n = send_all(fd, line->data, line->size);
	/* Who is turned away is told why before any request is read. */
	json_t *answer = n < 0 && n != -EPIPE ? NULL : read_answer(fd, e);
	if (n < 0 && !answer)
		error_set(e, n, "the station did not take the request: %s: try again", strerror(-n));
	if (answer && !json_truth(answer, "ok")) {
		error_set(e, -EPERM, "%s", json_text(answer, "error"));
		json_decref(answer);
		answer = NULL;
	}
	return answer;
}

json_t *client_ask_again(int fd, json_t *request, struct error *e)
{
	_cleanup_(buf_free) struct buf line = {0};
	return write_request(request, &line, e) < 0 ? NULL : ask_on(fd, &line, e);
}

json_t *client_ask_holding(json_t *request, int *held, struct error *e)
{
	*held = -1;
	_cleanup_(buf_free) struct buf line = {0};
	if (write_request(request, &line, e) < 0)
		return NULL;
	int fd = reach(e);
	if (fd < 0)
		return NULL;
	json_t *answer = ask_on(fd, &line, e);
	if (answer)
		*held = fd;
	else
		close(fd);
	return answer;
}

json_t *client_ask(json_t *request, struct error *e)
{
	int fd;
	json_t *answer = client_ask_holding(request, &fd, e);
	if (fd >= 0)
		close(fd);
	return answer;
}

int client_fail(const struct error *e)
{
	fprintf(stderr, "bandtally: %s\n", e->text);
	return EXIT_FAILED;
}

void print_json(const json_t *v)
{
	struct buf b = {0};
	if (json_write_canonical(v, &b) == 0)
		puts(b.data);
	buf_free(&b);
}

const char *slip_made_for(const json_t *slip)
{
	const char *kind = json_text(slip, "kind");
	return strcmp(kind, "reconciliation") == 0 ? "at its end" : kind;
}

int print_letters(const char *text)
{
	int n = 0;
	for (; *text; text++)
		n += (*text & 0xc0) != 0x80; /* not the further bytes of one letter */
	return n;
}

void print_column(const char *text, int letters)
{
	int more = letters - print_letters(text);
	printf("%s%*s", text, more > 0 ? more + 1 : 1, "");
}

void print_list(const char *title, const json_t *list)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)list, i, x) printf("%s: %s\n", title, json_string_value(x));
}

void print_elsewhere(const json_t *view)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)json_object_get(view, "elsewhere"), i, x)
	    printf("%s%s\n", json_truth(x, "nobody") ? "NOBODY ANSWERS: " : "", json_text(x, "text"));
}
