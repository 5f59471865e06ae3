#include "drivers/wire-writer.h"

#include <errno.h>
#include <poll.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/base64.h"
#include "base/json.h"

static int write_all(int fd, const char *bytes, size_t size)
{
	while (size > 0) {
		ssize_t n = write(fd, bytes, size);
		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			return -errno;
		bytes += n;
		size -= (size_t)n;
	}
	return 0;
}

int wire_pass_on(struct wire *w, const char *line, size_t size, struct error *e)
{
	struct wire_line seen;
	char out[WIRE_LINE_MAX];
	if (size > 0 && line[size - 1] == '\n')
		size--;
	if (size + 1 > sizeof out)
		return error_set(e, -EMSGSIZE, "driver line: %zu bytes: at most %d are sent", size + 1,
		                 WIRE_LINE_MAX);
	/* Read as JSON it would still be one value; sent as a line it would be two. */
	if (memchr(line, '\n', size))
		return error_set(e, -EINVAL, "driver line: it holds a newline: write one line at a time");
	int r = wire_read_line(line, size, &seen, e);
	if (r < 0)
		return r;
	memcpy(out, line, size);
	out[size] = '\n';
	r = write_all(w->fd, out, size + 1);
	return r < 0 ? error_set(e, r, "driver line: not sent: %s: start the driver again", strerror(-r)) : 0;
}

/* `body` is consumed, and NULL stands for memory that ran out. */
static int send(struct wire *w, const char *kind, json_t *body)
{
	_cleanup_(json_drop) json_t *line = json_pack("{s:i,s:o}", "v", 1, kind, body);
	char text[WIRE_LINE_MAX];
	if (!line)
		return -ENOMEM;
	size_t n = json_dumpb(line, text, sizeof text, JSON_COMPACT);
	if (n == 0)
		return -EINVAL;
	if (n + 1 > sizeof text)
		return -EMSGSIZE;
	return wire_pass_on(w, text, n, NULL);
}

/* A JSON text of at most `room` bytes of `s`, with '?' for each byte that is no UTF-8. */
static json_t *plain_text(const char *s, size_t room)
{
	char copy[WIRE_LINE_MAX];
	size_t n = strnlen(s, room < sizeof copy ? room : sizeof copy - 1);
	memcpy(copy, s, n);
	copy[n] = '\0';
	json_t *v = json_stringn(copy, n);
	for (size_t i = 0; !v && i < n; i++) {
		if ((unsigned char)copy[i] < 0x80)
			continue;
		size_t length = 1;
		json_t *one = NULL;
		while (!one && length <= 4 && i + length <= n)
			one = json_stringn(copy + i, length++);
		if (one)
			i += length - 2;
		else
			copy[i] = '?';
		json_decref(one);
	}
	return v ? v : json_stringn(copy, n);
}

static json_t *hex_text(const char *bytes, size_t size)
{
	static const char digits[] = "0123456789abcdef";
	char text[WIRE_LINE_MAX];
	if (size * 2 >= sizeof text)
		return NULL;
	for (size_t i = 0; i < size; i++) {
		text[2 * i] = digits[(unsigned char)bytes[i] >> 4];
		text[2 * i + 1] = digits[bytes[i] & 15];
	}
	return json_stringn(text, size * 2);
}

int wire_hello_whole(struct wire *w, const struct wire_hello *hello)
{
	json_t *body = json_pack("{s:o,s:o}", "driver", plain_text(hello->driver, WIRE_WORD_MAX), "device",
	                         plain_text(hello->device, WIRE_DEVICE_MAX));
	if (hello->uncertain)
		json_object_set_new(body, "uncertain", plain_text(hello->uncertain, WIRE_TEXT_MAX));
	if (hello->pictures)
		json_object_set_new(body, "pictures", json_true());
	return send(w, "hello", body);
}

int wire_hello(struct wire *w, const char *driver, const char *device)
{
	return wire_hello_whole(w, &(struct wire_hello){.driver = driver, .device = device});
}

int wire_fault_uncertain(struct wire *w, const char *code, const char *sentence, const char *uncertain)
{
	json_t *body = json_pack("{s:o,s:o}", "code", plain_text(code, WIRE_WORD_MAX), "text",
	                         plain_text(sentence, WIRE_TEXT_MAX));
	if (uncertain)
		json_object_set_new(body, "uncertain", plain_text(uncertain, WIRE_TEXT_MAX));
	return send(w, "fault", body);
}

int wire_fault(struct wire *w, const char *code, const char *sentence)
{
	return wire_fault_uncertain(w, code, sentence, NULL);
}

static int too_long(struct wire *w, const struct wire_scan *scan)
{
	char sentence[WIRE_TEXT_MAX + 1];
	snprintf(sentence, sizeof sentence,
	         "a code of %zu bytes was read%s%.200s: a line carries %d bytes: use a shorter code",
	         scan->size, scan->file ? " in " : "", scan->file ? scan->file : "", WIRE_LINE_MAX);
	int r = wire_fault(w, "too-long", sentence);
	return r < 0 ? r : WIRE_TOO_LONG;
}

int wire_scan(struct wire *w, const struct wire_scan *scan)
{
	if (scan->size >= WIRE_LINE_MAX)
		return too_long(w, scan);
	json_t *body = json_object();
	if (scan->aim && *scan->aim)
		json_object_set_new(body, "aim", plain_text(scan->aim, WIRE_AIM_SIZE));
	json_t *text = memchr(scan->data, '\0', scan->size) ? NULL : json_stringn(scan->data, scan->size);
	if (text)
		json_object_set_new(body, "data", text);
	else
		json_object_set_new(body, "hex", hex_text(scan->data, scan->size));
	if (scan->file)
		json_object_set_new(body, "file", plain_text(scan->file, WIRE_LINE_MAX));
	if (scan->ms > 0)
		json_object_set_new(body, "ms", json_integer(scan->ms));
	/* A member that could not be made is absent, and the check before sending would call the line wrong.
	 */
	bool whole = json_object_get(body, "data") || json_object_get(body, "hex");
	int r = send(w, "scan", body);
	return r == -EMSGSIZE || (r < 0 && !whole) ? too_long(w, scan) : r;
}

int wire_picture(struct wire *w, const void *jpeg, size_t size, const struct wire_seen *codes, size_t count)
{
	_cleanup_(buf_free) struct buf text = {0};
	json_t *list = json_array();
	int r = base64_write(&text, jpeg, size);
	for (size_t i = 0; i < count; i++)
		json_array_append_new(list, json_pack("[i,i,i,i,b]", codes[i].left, codes[i].top,
		                                      codes[i].right, codes[i].bottom, codes[i].told));
	json_t *body = json_pack("{s:o,s:o}", "jpeg", json_string(r == 0 ? text.data : ""), "codes", list);
	return send(w, "picture", body);
}

/* A Unix socket says that it can be written to while at most a quarter of its room is taken. */
bool wire_has_room(const struct wire *w)
{
	struct pollfd p = {.fd = w->fd, .events = POLLOUT};
	return poll(&p, 1, 0) > 0 && (p.revents & POLLOUT);
}

bool wire_reader_gone(const struct wire *w)
{
	struct pollfd p = {.fd = w->fd};
	return poll(&p, 1, 0) > 0 && (p.revents & (POLLERR | POLLHUP | POLLNVAL));
}
