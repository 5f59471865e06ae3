#include "base/scanners.h"

#include <ctype.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/ini.h"

const struct scanner_family scanner_families[SCANNER_MODES] = {
#define X(name, mode, subsystem, node, with_keys, driver, learns)                                            \
	[SCANNER_##name] = {mode, subsystem, node, with_keys, driver, learns},
    SCANNER_FAMILIES(X)
#undef X
};

static const struct option {
	const char *key;
	enum scanner_mode mode;
	enum { NUMBER, WORD, BYTES } form;
	int32_t low, high;
	const char *words; /* separated by spaces; of BYTES: what may stand instead */
} options[SCANNER_OPTION_KINDS] = {
#define X(name, family, key, form, low, high, words)                                                         \
	[SCANNER_OPTION_##name] = {key, SCANNER_##family, form, low, high, words},
    SCANNER_OPTIONS(X)
#undef X
};

const char *scanner_option_key(enum scanner_option option)
{
	return options[option].key;
}

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

static bool is_word_of(const char *words, const char *value)
{
	size_t n = strlen(value);
	for (const char *at = words; *at; at += strcspn(at, " "), at += *at == ' ')
		if (n && strcspn(at, " ") == n && strncmp(at, value, n) == 0)
			return true;
	return false;
}

static int take_option(char out[SCANNER_OPTION_MAX], const struct option *o, const char *value,
                       struct error *e)
{
	size_t n = strlen(value);
	int32_t number = 0;
	int r = 0;
	switch (o->form) {
	case NUMBER:
		if ((r = take_number(&number, value, o->low, o->high, e)) == 0)
			snprintf(out, SCANNER_OPTION_MAX, "%d", number);
		return r;
	case WORD:
		if (!is_word_of(o->words, value))
			return error_set(e, -EINVAL, "\"%.40s\" is not known here: write one of %s", value,
			                 o->words);
		break;
	case BYTES: /* what stands round each code, as its driver takes it */
		if (!is_word_of(o->words, value) &&
		    (n == 0 || n > 16 || n % 2 || strspn(value, "0123456789abcdefABCDEF") != n))
			return error_set(e, -EINVAL,
			                 "\"%.40s\": write 1 to 8 bytes as pairs of hexadecimal digits%s%s",
			                 value, *o->words ? ", or " : "", o->words);
		break;
	}
	snprintf(out, SCANNER_OPTION_MAX, "%s", value);
	return 0;
}

static int take_mode(enum scanner_mode *mode, const char *value, struct error *e)
{
	char modes[80] = "";
	for (int m = 0; m < SCANNER_MODES; m++) {
		if (strcmp(scanner_families[m].mode, value) == 0) {
			*mode = (enum scanner_mode)m;
			return 0;
		}
		size_t used = strlen(modes);
		snprintf(modes + used, sizeof modes - used, "%s%s", used ? " or " : "",
		         scanner_families[m].mode);
	}
	return error_set(e, -EINVAL, "\"%.40s\" is not known here: write %s", value, modes);
}

static int take_value(struct scanner_setting *s, const char *name, const char *value, struct error *e)
{
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
	if (strcmp(name, "mode") == 0)
		return take_mode(&s->mode, value, e);
	for (int i = 0; i < SCANNER_OPTION_KINDS; i++)
		if (strcmp(name, options[i].key) == 0)
			return take_option(s->options[i], &options[i], value, e);
#define X(name, family, key, ...) ", " key
	return error_set(e, -EINVAL,
	                 "\"%.40s\" is not known here: write one of vendor, product, serial, port, room, "
	                 "mode" SCANNER_OPTIONS(X),
	                 name);
#undef X
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
	for (int i = 0; i < SCANNER_OPTION_KINDS; i++)
		if (s->options[i][0] && options[i].mode != s->mode)
			return error_set(e, -EINVAL,
			                 "%s: [scanner %s] has %s, which is for mode = %s: leave it out, or "
			                 "write that mode",
			                 path, s->name, options[i].key,
			                 scanner_families[options[i].mode].mode);
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

bool scanners_could_be(const struct scanner_device *d, enum scanner_mode *mode)
{
	const char *slash = d->node ? strrchr(d->node, '/') : NULL;
	for (int m = 0; m < SCANNER_MODES && slash; m++) {
		const struct scanner_family *f = &scanner_families[m];
		if (same(d->subsystem, f->subsystem) && strncmp(slash + 1, f->node, strlen(f->node)) == 0 &&
		    (!f->with_keys || same(d->has_keys, "1"))) {
			*mode = (enum scanner_mode)m;
			return true;
		}
	}
	return false;
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
	if (!scanners_could_be(d, &out->mode))
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
	for (int m = SCANNER_KEYBOARD + 1; m < SCANNER_MODES && r == 0; m++)
		if (same(d->subsystem, scanner_families[m].subsystem))
			r = buf_printf(out, "mode = %s\n", scanner_families[m].mode);
	return r;
}
