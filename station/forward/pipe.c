#include "forward/pipe.h"

#include <errno.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

#define READ_BYTES (256u << 10)

int pipe_read(struct pipe_lines *p, int fd)
{
	static char bytes[READ_BYTES];
	struct pollfd is = {.fd = fd, .events = POLLIN};
	buf_drop(&p->in, p->taken);
	p->taken = 0;
	if (poll(&is, 1, 0) <= 0)
		return PIPE_NOTHING;
	ssize_t n = read(fd, bytes, sizeof bytes);
	if (n < 0)
		return errno == EINTR || errno == EAGAIN ? PIPE_NOTHING : -errno;
	return n == 0 ? -EPIPE : buf_add(&p->in, bytes, (size_t)n);
}

const char *pipe_line(struct pipe_lines *p, size_t *size)
{
	const char *from = p->in.data ? p->in.data + p->taken : NULL;
	char *end = from ? memchr(from, '\n', p->in.size - p->taken) : NULL;
	if (!end)
		return NULL;
	*end = 0;
	*size = (size_t)(end - from);
	p->taken += *size + 1;
	return from;
}

void pipe_wait(int fd, int ms)
{
	poll(&(struct pollfd){.fd = fd, .events = POLLIN}, 1, ms);
}

json_t *pipe_value(const char *text)
{
	_cleanup_(buf_free) struct buf line = {0};
	json_t *value = json_read(text, strlen(text), NULL);
	if (value && json_write_canonical(value, &line) == 0)
		return value;
	json_decref(value);
	return json_object();
}

int pipe_say(int fd, const char *key, json_t *value)
{
	_cleanup_(json_drop) json_t *o = json_pack("{s:i,s:o}", "v", 1, key, value);
	_cleanup_(buf_free) struct buf line = {0};
	int n = o ? json_write_canonical(o, &line) : -ENOMEM;
	if (n == 0)
		n = buf_add_text(&line, "\n");
	for (size_t at = 0; n == 0 && at < line.size;) {
		ssize_t w = write(fd, line.data + at, line.size - at);
		if (w < 0 && errno != EINTR)
			n = -errno;
		else if (w > 0)
			at += (size_t)w;
	}
	return n;
}
