#include "base/scanners.h"

#include <ctype.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/ini.h"

static bool word_valid(const char *s, size_t most)
{
	size_t n = strlen(s);
	return n > 0 && n <= most && strspn(s, "abcdefghijklmnopqrstuvwxyz0123456789-") == n;
}

static int take_id(char out[5], const char *value, struct error *e)
{
	if (strlen(value) != 4 || strspn(value, "0123456789abcdefABCDEF") != 4)
		return error_set(e, -EINVAL,
		                 "\"%.40s\" is no number of a maker: write four hexadecimal digits", value);
	for (int i = 0; i < 5; i++)
		out[i] = (char)tolower((unsigned char)value[i]);
	return 0;
}

static int take_text(char out[SCANNERS_TEXT_MAX + 1], const char *value, struct error *e)
{
	size_t n = strlen(value);
	if (n == 0 || n > SCANNERS_TEXT_MAX)
		return error_set(e, -EINVAL, "%zu bytes: write 1 to %d, or leave the line out", n,
		                 SCANNERS_TEXT_MAX);
	memcpy(out, value, n + 1);
	return 0;
}

static int take_number(int32_t *out, const char *value, long least, long most, struct error *e)
{
	char *end;
	long v = strtol(value, &end, 10);
	if (end == value || *end || !isdigit((unsigned char)*value) || v < least || v > most)
		return error_set(e, -EINVAL, "\"%.40s\": write a whole number from %ld to %ld", value, least,
		                 most);
	*out = (int32_t)v;
	return 0;
}

/* The place of a word in a list that NULL ends, or -EINVAL. */
static int take_word(const char *const *words, const char *value, const char *wanted, struct error *e)
{
	for (int i = 0; words[i]; i++)
		if (strcmp(words[i], value) == 0)
			return i;
	return error_set(e, -EINVAL, "\"%.40s\" is not known here: write %s", value, wanted);
}

/* What stands round each code, as scan-serial takes it. */
static int take_around(char out[17], const char *value, bool none, struct error *e)
{
	size_t n = strlen(value);
	if (!(none && strcmp(value, "none") == 0) &&
	    (n == 0 || n > 16 || n % 2 || strspn(value, "0123456789abcdefABCDEF") != n))
		return error_set(e, -EINVAL, "\"%.40s\": write 1 to 8 bytes as pairs of hexadecimal digits%s",
		                 value, none ? ", or none" : "");
	memcpy(out, value, n + 1);
	return 0;
}

static int take_port_setting(struct scanner_setting *s, const char *name, const char *value, struct error *e)
{
	static const char *const parities[] = {"none", "even", "odd", NULL};
	if (strcmp(name, "baud") == 0)
		return take_number(&s->baud, value, 300, 921600, e);
	if (strcmp(name, "bits") == 0)
		return take_number(&s->bits, value, 7, 8, e);
	if (strcmp(name, "stop") == 0)
		return take_number(&s->stop, value, 1, 2, e);
	if (strcmp(name, "prefix") == 0)
		return take_around(s->prefix, value, false, e);
	if (strcmp(name, "suffix") == 0)
		return take_around(s->suffix, value, true, e);
	if (strcmp(name, "parity") != 0)
		return error_set(
		    e, -EINVAL,
		    "\"%.40s\" is not known here: write vendor, product, serial, port, room, mode, "
		    "layout, baud, bits, parity, stop, prefix or suffix",
		    name);
	int r = take_word(parities, value, "none, even or odd", e);
	if (r >= 0)
		snprintf(s->parity, sizeof s->parity, "%s", parities[r]);
	return r < 0 ? r : 0;
}

static int take_value(struct scanner_setting *s, const char *name, const char *value, struct error *e)
{
	static const char *const modes[] = {
	    [SCANNER_KEYBOARD] = "keyboard", [SCANNER_SERIAL] = "serial", NULL};
	static const char *const layouts[] = {"us", "gb", "de", "fr", "ch", "es", "it",
	                                      "se", "no", "dk", "fi", "pt", NULL};
	int r;
	if (strcmp(name, "vendor") == 0)
		return take_id(s->vendor, value, e);
	if (strcmp(name, "product") == 0)
		return take_id(s->product, value, e);
	if (strcmp(name, "serial") == 0)
		return take_text(s->serial, value, e);
	if (strcmp(name, "port") == 0)
		return take_text(s->port, value, e);
	if (strcmp(name, "room") == 0)
		return take_number(&s->room, value, 1, 99, e);
	if (strcmp(name, "mode") == 0) {
		r = take_word(modes, value, "keyboard or serial", e);
		s->mode = r < 0 ? s->mode : (enum scanner_mode)r;
		return r < 0 ? r : 0;
	}
	if (strcmp(name, "layout") == 0) {
		r = take_word(layouts, value, "one of us gb de fr ch es it se no dk fi pt", e);
		if (r >= 0)
			memcpy(s->layout, layouts[r], sizeof s->layout);
		return r < 0 ? r : 0;
	}
	return take_port_setting(s, name, value, e);
}

/* The section's place, begun where it is new. */
static int section_of(struct scanners *s, const char *section, struct error *e)
{
	const char *name = section + 8;
	if (strncmp(section, "scanner ", 8) != 0 || !word_valid(name, sizeof s->list[0].name - 1))
		return error_set(e, -EINVAL,
		                 "section [%.60s]: write [scanner NAME] with a name of a-z, 0-9 and '-'",
		                 section);
	for (int i = 0; i < s->count; i++)
		if (strcmp(s->list[i].name, name) == 0)
			return i;
	if (s->count == SCANNERS_MAX)
		return error_set(e, -E2BIG, "more than %d scanners: remove some", SCANNERS_MAX);
	s->list[s->count] = (struct scanner_setting){0};
	snprintf(s->list[s->count].name, sizeof s->list[0].name, "%s", name);
	return s->count++;
}

static int on_value(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct scanners *s = context;
	int i = section_of(s, section, e);
	return i < 0 ? i : take_value(&s->list[i], name, value, e);
}

static int check(const char *path, const struct scanner_setting *s, struct error *e)
{
	if (!s->vendor[0] || !s->product[0])
		return error_set(
		    e, -EINVAL,
		    "%s: [scanner %s] has no vendor or no product: a keyboard could be taken for it: "
		    "write both (udevadm info names them)",
		    path, s->name);
	if (s->room == 0)
		return error_set(e, -EINVAL, "%s: [scanner %s] has no room: write room = 1 or its number",
		                 path, s->name);
	if (s->mode == SCANNER_KEYBOARD
	        ? s->baud || s->bits || s->stop || s->parity[0] || s->prefix[0] || s->suffix[0]
	        : s->layout[0] != '\0')
		return error_set(
		    e, -EINVAL,
		    "%s: [scanner %s] has settings of the other mode: layout is for keyboard, baud, "
		    "bits, parity, stop, prefix and suffix are for serial",
		    path, s->name);
	return 0;
}

int scanners_read(const char *path, struct scanners *out, struct error *e)
{
	*out = (struct scanners){0};
	int r = ini_read(path, on_value, out, e);
	for (int i = 0; i < out->count && r == 0; i++)
		r = check(path, &out->list[i], e);
	return r;
}

static bool same(const char *a, const char *b)
{
	return strcmp(a ? a : "", b ? b : "") == 0;
}

/* "…-usb-0:1.2" is the port of "…-usb-0:1.2" and of its interfaces "…-usb-0:1.2:1.0", not of "…-usb-0:1.23".
 */
static bool port_matches(const char *port, const char *path)
{
	size_t n = strlen(port);
	return path && strncmp(port, path, n) == 0 && (path[n] == '\0' || path[n] == ':');
}

/* How many fields match; 0 where one does not. */
static int matches(const struct scanner_setting *s, const struct scanner_device *d, enum scanner_mode mode)
{
	if (s->mode != mode || !same(s->vendor, d->vendor) || !same(s->product, d->product))
		return 0;
	if (s->serial[0] && !same(s->serial, d->serial))
		return 0;
	if (s->port[0] && !port_matches(s->port, d->path))
		return 0;
	return 2 + (s->serial[0] != '\0') + (s->port[0] != '\0');
}

static bool is_candidate(const struct scanner_device *d, enum scanner_mode *mode)
{
	const char *last = d->node ? strrchr(d->node, '/') : NULL;
	*mode = same(d->subsystem, "tty") ? SCANNER_SERIAL : SCANNER_KEYBOARD;
	if (*mode == SCANNER_SERIAL)
		return last != NULL;
	return same(d->subsystem, "input") && last && strncmp(last, "/event", 6) == 0 &&
	       same(d->has_keys, "1");
}

static void name_by_ids(const struct scanner_device *d, struct scanner_found *out)
{
	snprintf(out->name, sizeof out->name, "usb-%.4s-%.4s", d->vendor ? d->vendor : "",
	         d->product ? d->product : "");
}

static enum scanner_decision by_udev(const struct scanner_device *d, struct scanner_found *out,
                                     struct error *e)
{
	if (!same(d->tag, "1"))
		return SCANNER_NO;
	name_by_ids(d, out);
	out->room = 1;
	struct error why = {0};
	if (d->room && *d->room && take_number(&out->room, d->room, 1, 99, &why) < 0) {
		out->room = 0;
		error_set(e, -EINVAL, "%s: udev's ID_BANDTALLY_ROOM: %.200s", d->node, why.text);
		return SCANNER_TELL;
	}
	return SCANNER_YES;
}

enum scanner_decision scanners_decide(const struct scanners *s, const struct scanner_device *d,
                                      struct scanner_found *out, struct error *e)
{
	int best = 0, rival = -1, one_room = 1;
	*out = (struct scanner_found){0};
	if (!is_candidate(d, &out->mode))
		return SCANNER_NO;
	for (int i = 0; i < s->count; i++) {
		int n = matches(&s->list[i], d, out->mode);
		if (n > best) {
			best = n;
			rival = -1;
			one_room = 1;
			out->setting = &s->list[i];
		} else if (n > 0 && n == best) {
			rival = i;
			one_room = one_room && s->list[i].room == out->setting->room;
		}
	}
	if (!out->setting)
		return by_udev(d, out, e);
	if (rival >= 0) {
		name_by_ids(d, out);
		out->room = one_room ? out->setting->room : 0;
		error_set(
		    e, -EINVAL,
		    "%s: [scanner %s] and [scanner %s] fit it equally well: give one of them its serial or "
		    "port in scanners.ini",
		    d->node, out->setting->name, s->list[rival].name);
		return SCANNER_TELL;
	}
	snprintf(out->name, sizeof out->name, "%s", out->setting->name);
	out->room = out->setting->room;
	return SCANNER_YES;
}

void scanner_profile_name(const struct scanner_device *d, char out[SCANNER_PROFILE_NAME_MAX])
{
	int n = snprintf(out, SCANNER_PROFILE_NAME_MAX, "%.4s-%.4s-%.120s", d->vendor ? d->vendor : "",
	                 d->product ? d->product : "", d->serial ? d->serial : "");
	for (int i = 0; i < n; i++)
		if (!isascii((unsigned char)out[i]) ||
		    (!isalnum((unsigned char)out[i]) && !strchr("._-", out[i])))
			out[i] = '_';
	memcpy(out + n, ".ini", 5);
}

int scanners_section(const struct scanner_device *d, const char *name, int32_t room, struct buf *out)
{
	if (!d->vendor || !d->product || !*d->vendor || !*d->product)
		return -ENODATA;
	int r = buf_printf(out, "[scanner %s]\nvendor = %s\nproduct = %s\n", name, d->vendor, d->product);
	if (r == 0 && d->serial && *d->serial)
		r = buf_printf(out, "serial = %s\n", d->serial);
	if (r == 0)
		r = buf_printf(out, "room = %d\n", room);
	if (r == 0 && same(d->subsystem, "tty"))
		r = buf_add_text(out, "mode = serial\n");
	return r;
}
