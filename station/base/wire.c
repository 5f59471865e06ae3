#include "base/wire.h"

#include <ctype.h>
#include <errno.h>
#include <string.h>

#include "base/hex.h"
#include "base/json.h"

static int refuse(struct error *e, const char *what, const char *wanted)
{
	return error_set(e, -EINVAL, "driver line: %s: %s", what, wanted);
}

bool wire_aim_valid(const char *aim)
{
	return strlen(aim) == WIRE_AIM_SIZE && aim[0] == ']' && isascii(aim[1]) && isalpha(aim[1]) &&
	       isascii(aim[2]) && isalnum(aim[2]);
}

static bool word_valid(const char *s)
{
	return *s && s[strspn(s, "abcdefghijklmnopqrstuvwxyz0123456789-")] == '\0';
}

/* Copies a text member. Absent is 0 with an empty text where `optional`. */
static int take(const json_t *object, const char *key, bool optional, char *out, size_t room, struct error *e)
{
	const json_t *v = json_object_get(object, key);
	*out = '\0';
	if (!v && optional)
		return 0;
	if (!json_is_string(v))
		return error_set(e, -EINVAL, "driver line: \"%s\" is absent or no text: write it as a string",
		                 key);
	size_t n = json_string_length(v);
	if (n >= room)
		return error_set(e, -EINVAL, "driver line: \"%s\" has %zu bytes: at most %zu are taken", key,
		                 n, room - 1);
	memcpy(out, json_string_value(v), n + 1);
	return 0;
}

static int take_hex(const json_t *v, struct wire_line *out, struct error *e)
{
	const char *s = json_string_value(v);
	size_t n = json_string_length(v);
	if (n % 2 || n / 2 >= sizeof out->data)
		return refuse(e, "\"hex\" has an odd or too large number of digits",
		              "write two digits a byte");
	for (size_t i = 0; i < n; i += 2) {
		int high = hex_value(s[i]), low = hex_value(s[i + 1]);
		if (high < 0 || low < 0)
			return refuse(e, "\"hex\" holds what is no hexadecimal digit",
			              "use 0-9 and a-f only");
		out->data[i / 2] = (char)(high << 4 | low);
	}
	out->data_size = n / 2;
	out->data[out->data_size] = '\0';
	return 0;
}

static int read_data(const json_t *scan, struct wire_line *out, struct error *e)
{
	const json_t *data = json_object_get(scan, "data"), *hex = json_object_get(scan, "hex");
	if (!data == !hex)
		return refuse(e, "a scan without exactly one of \"data\" and \"hex\"", "write one of them");
	if (!json_is_string(data ? data : hex))
		return refuse(e, "\"data\" or \"hex\" is no text", "write it as a string");
	int r;
	if (hex) {
		r = take_hex(hex, out, e);
	} else {
		r = take(scan, "data", false, out->data, sizeof out->data, e);
		out->data_size = strlen(out->data);
	}
	if (r == 0 && out->data_size == 0)
		r = refuse(e, "a scan of nothing", "leave it out");
	return r;
}

static int read_time(const json_t *scan, struct wire_line *out, struct error *e)
{
	const json_t *ms = json_object_get(scan, "ms");
	out->ms = ms ? json_number(scan, "ms", -1) : -1;
	return ms && out->ms < 0 ? refuse(e, "\"ms\" is no whole number from 0 up",
	                                  "write the milliseconds of CLOCK_BOOTTIME, or leave it out")
	                         : 0;
}

static int read_scan(const json_t *scan, struct wire_line *out, struct error *e)
{
	int r = take(scan, "aim", true, out->aim, sizeof out->aim, e);
	if (r == 0 && json_object_get(scan, "aim") && !wire_aim_valid(out->aim))
		r = refuse(e, "\"aim\" is no symbology identifier",
		           "write ']', a letter and one more, or leave it out");
	if (r == 0)
		r = read_data(scan, out, e);
	if (r == 0)
		r = read_time(scan, out, e);
	return r ? r : take(scan, "file", true, out->file, sizeof out->file, e);
}

static int read_hello(const json_t *hello, struct wire_line *out, struct error *e)
{
	int r = take(hello, "driver", false, out->driver, sizeof out->driver, e);
	if (r == 0 && !word_valid(out->driver))
		r = refuse(e, "\"driver\" is no plain word", "use a-z, 0-9 and '-'");
	if (r == 0)
		r = take(hello, "uncertain", true, out->uncertain, sizeof out->uncertain, e);
	out->pictures = json_truth(hello, "pictures");
	return r ? r : take(hello, "device", true, out->device, sizeof out->device, e);
}

static int read_fault(const json_t *fault, struct wire_line *out, struct error *e)
{
	int r = take(fault, "code", false, out->code, sizeof out->code, e);
	if (r == 0 && !word_valid(out->code))
		r = refuse(e, "\"code\" is no plain word", "use a-z, 0-9 and '-'");
	if (r == 0)
		r = take(fault, "uncertain", true, out->uncertain, sizeof out->uncertain, e);
	return r ? r : take(fault, "text", false, out->text, sizeof out->text, e);
}

/* What stands in a place of `code`, or -1. */
static int thousandth(const json_t *code, size_t place)
{
	const json_t *v = json_array_get(code, place);
	json_int_t n = json_is_integer(v) ? json_integer_value(v) : -1;
	return n >= 0 && n <= 1000 ? (int)n : -1;
}

static int read_seen(const json_t *code, struct wire_seen *out, struct error *e)
{
	const json_t *told = json_array_get(code, 4);
	*out = (struct wire_seen){thousandth(code, 0), thousandth(code, 1), thousandth(code, 2),
	                          thousandth(code, 3), json_is_true(told)};
	if (json_array_size(code) != 5 || !json_is_boolean(told) || out->left < 0 || out->top < 0 ||
	    out->right < out->left || out->bottom < out->top)
		return refuse(e, "a code's place in a picture has no form",
		              "write left, top, right and bottom in thousandths, and true or false");
	return 0;
}

static int read_picture(const json_t *picture, struct wire_line *out, struct error *e)
{
	static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
	const json_t *codes = json_object_get(picture, "codes"), *code;
	size_t i;
	int r = take(picture, "jpeg", false, out->data, sizeof out->data, e);
	out->data_size = strlen(out->data);
	size_t plain = strspn(out->data, letters);
	if (r == 0 &&
	    (!plain || out->data_size % 4 || strspn(out->data + plain, "=") != out->data_size - plain))
		r = refuse(e, "\"jpeg\" is no base64", "write it with '=' at its end (RFC 4648)");
	if (r == 0 && (!json_is_array(codes) || json_array_size(codes) > WIRE_SEEN_MAX))
		r = refuse(e, "\"codes\" is no list, or too long", "write those that are read first");
	if (r < 0)
		return r;
	json_array_foreach((json_t *)codes, i, code) r =
	    r < 0 ? r : read_seen(code, &out->seen[out->n_seen++], e);
	return r;
}

static int read_value(const json_t *line, struct wire_line *out, struct error *e)
{
	static int (*const readers[])(const json_t *, struct wire_line *,
	                              struct error *) = {[WIRE_HELLO] = read_hello,
	                                                 [WIRE_SCAN] = read_scan,
	                                                 [WIRE_FAULT] = read_fault,
	                                                 [WIRE_PICTURE] = read_picture};
	static const char *const names[] = {
	    [WIRE_HELLO] = "hello", [WIRE_SCAN] = "scan", [WIRE_FAULT] = "fault", [WIRE_PICTURE] = "picture"};
	const json_t *body = NULL;
	int found = 0;

	if (!json_is_object(line))
		return refuse(e, "it is no JSON object", "write {\"v\":1,…}");
	if (json_number(line, "v", 0) != 1)
		return refuse(e, "\"v\" is not 1", "only version 1 is known here");
	for (enum wire_kind k = WIRE_HELLO; k <= WIRE_PICTURE; k++) {
		const json_t *b = json_object_get(line, names[k]);
		if (!b)
			continue;
		found++;
		body = b;
		out->kind = k;
	}
	if (found != 1 || !json_is_object(body))
		return refuse(e, "it has not exactly one of \"hello\", \"scan\", \"fault\" and \"picture\"",
		              "write one of them, as an object");
	return readers[out->kind](body, out, e);
}

int wire_read_line(const char *line, size_t size, struct wire_line *out, struct error *e)
{
	*out = (struct wire_line){0};
	if (size > WIRE_LINE_MAX)
		return error_set(e, -EMSGSIZE, "driver line: %zu bytes: at most %d are taken", size,
		                 WIRE_LINE_MAX);
	struct error why = {0};
	_cleanup_(json_drop) json_t *v = json_read(line, size, &why);
	if (!v)
		return error_set(e, why.code, "driver line: %s", why.text);
	return read_value(v, out, e);
}
