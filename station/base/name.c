#include "base/name.h"

#include <errno.h>
#include <string.h>

#define REPLACEMENT "\xef\xbf\xbd" /* U+FFFD */
#define REPLACEMENT_BYTES 3

/* RFC 3629 section 4: which second byte may follow a first one is what refuses overlong forms and surrogates. */
static int length_of(const unsigned char *p, size_t left)
{
	int more = p[0] < 0x80                   ? 0
	           : p[0] >= 0xc2 && p[0] < 0xe0 ? 1
	           : p[0] >= 0xe0 && p[0] < 0xf0 ? 2
	           : p[0] >= 0xf0 && p[0] < 0xf5 ? 3
	                                         : -1;
	if (more < 0 || (size_t)more >= left)
		return -1;
	for (int i = 1; i <= more; i++)
		if ((p[i] & 0xc0) != 0x80)
			return -1;
	if ((p[0] == 0xe0 && p[1] < 0xa0) || (p[0] == 0xed && p[1] > 0x9f) || (p[0] == 0xf0 && p[1] < 0x90) ||
	    (p[0] == 0xf4 && p[1] > 0x8f))
		return -1;
	return more + 1;
}

int32_t name_next(const char **at, const char *end)
{
	const unsigned char *p = (const unsigned char *)*at;
	int n = length_of(p, (size_t)(end - *at));
	if (n < 0) {
		++*at;
		return -1;
	}
	int32_t c = n == 1 ? p[0] : p[0] & (0x7f >> n);
	for (int i = 1; i < n; i++)
		c = c << 6 | (p[i] & 0x3f);
	*at += n;
	return c;
}

struct range {
	int32_t first, last;
	const char *why;
};

#define CONTROL "a control character"
#define BREAK "a line break"
#define TURNS "which turns the direction of text"
#define UNSEEN "which cannot be seen"
#define NOTHING "which stands for no letter"

/* Unicode 15.0, DerivedGeneralCategory and UAX 9. The last two of each plane are noncharacters: see why_not(). */
static const struct range not [] = {
    {0x0000, 0x0009, CONTROL},    {0x000a, 0x000a, BREAK},     {0x000b, 0x000c, CONTROL},
    {0x000d, 0x000d, BREAK},      {0x000e, 0x001f, CONTROL},   {0x007f, 0x0084, CONTROL},
    {0x0085, 0x0085, BREAK},      {0x0086, 0x009f, CONTROL},   {0x00ad, 0x00ad, UNSEEN},
    {0x034f, 0x034f, UNSEEN},     {0x061c, 0x061c, TURNS},     {0x115f, 0x1160, UNSEEN},
    {0x17b4, 0x17b5, UNSEEN},     {0x180e, 0x180e, UNSEEN},    {0x200b, 0x200b, UNSEEN},
    {0x200e, 0x200f, TURNS},      {0x2028, 0x2029, BREAK},     {0x202a, 0x202e, TURNS},
    {0x2060, 0x2065, UNSEEN},     {0x2066, 0x2069, TURNS},     {0x206a, 0x206f, UNSEEN},
    {0x3164, 0x3164, UNSEEN},     {0xe000, 0xf8ff, NOTHING},   {0xfdd0, 0xfdef, NOTHING},
    {0xfeff, 0xfeff, UNSEEN},     {0xffa0, 0xffa0, UNSEEN},    {0xfff0, 0xfffc, UNSEEN},
    {0x1bca0, 0x1bca3, UNSEEN},   {0x1d173, 0x1d17a, CONTROL}, {0xe0000, 0xe0fff, UNSEEN},
    {0xf0000, 0x10ffff, NOTHING},
};

static const char *why_not(int32_t c)
{
	for (size_t i = 0; i < sizeof not / sizeof *not ; i++)
		if (c >= not [i].first && c <= not [i].last)
			return not [i].why;
	return (c & 0xfffe) == 0xfffe ? NOTHING : NULL;
}

bool name_may_hold(int32_t character)
{
	return (character >= 0x20 && character < 0x7f) || (character >= 0 && !why_not(character));
}

bool name_is_isolate(int32_t c)
{
	return c == 0x2068 || c == 0x2069;
}

bool name_isolates(const char *text, const char *end)
{
	int open = 0;
	while (text < end && open >= 0) {
		int32_t c = name_next(&text, end);
		open += c == 0x2068 ? 1 : c == 0x2069 ? -1 : 0;
	}
	return open == 0;
}

/* Spaces of any width (category Zs), the joiners, and the braille cell without a dot. */
static bool is_blank(int32_t c)
{
	return c == ' ' || c == 0xa0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200d) || c == 0x202f ||
	       c == 0x205f || c == 0x2800 || c == 0x3000;
}

int name_check(const char *what, const char *text, size_t bytes_max, struct error *e)
{
	size_t size = strlen(text);
	const char *end = text + size;
	bool seen = false;
	int place = 1;
	for (const char *at = text; at < end; place++) {
		int32_t c = name_next(&at, end);
		if (c < 0)
			return error_set(e, -EINVAL, "%s is not UTF-8 at its character %d: write it as UTF-8",
			                 what, place);
		if (!name_may_hold(c))
			return error_set(e, -EINVAL, "%s holds U+%04X, %s, as its character %d: leave it out",
			                 what, (unsigned)c, why_not(c), place);
		seen |= !is_blank(c);
	}
	if (size > bytes_max)
		return error_set(e, -EINVAL, "%s has %zu bytes: it must have 1 to %zu bytes: shorten it",
		                 what, size, bytes_max);
	return seen ? 0
	            : error_set(e, -EINVAL, "%s is empty: it must have 1 to %zu bytes: give one", what,
	                        bytes_max);
}

/* Whether `at` begins a letter of which only the first bytes are there: a text that was cut, and no wrong byte. */
static bool is_cut(const char *at, const char *end)
{
	const unsigned char *p = (const unsigned char *)at;
	size_t whole = p[0] >= 0xf0 ? 4 : p[0] >= 0xe0 ? 3 : p[0] >= 0xc2 ? 2 : 0, left = (size_t)(end - at);
	if (p[0] >= 0xf5 || left >= whole)
		return false;
	for (size_t i = 1; i < left; i++)
		if ((p[i] & 0xc0) != 0x80)
			return false;
	return true;
}

/* How many letters of ASCII follow: nearly all that is told is nothing else. */
static size_t ordinary(const char *at, const char *end)
{
	const char *from = at;
	while (at < end && *at >= 0x20 && *at < 0x7f)
		at++;
	return (size_t)(at - from);
}

json_t *name_told(const char *text, size_t bytes_max)
{
	const char *end = text + strnlen(text, bytes_max);
	size_t whole = ordinary(text, end);
	if (text + whole == end)
		return json_stringn_nocheck(text, whole);
	json_malloc_t take; /* jansson's own, so that json_memory_failed() tells of it */
	json_free_t give_back;
	json_get_alloc_funcs(&take, &give_back);
	char *told = take((size_t)(end - text) * REPLACEMENT_BYTES + 1);
	bool isolates = name_isolates(text, end);
	size_t n = 0;
	for (const char *at = text; told && at < end;) {
		size_t plain = ordinary(at, end);
		memcpy(told + n, at, plain);
		n += plain;
		if ((at += plain) == end)
			break;
		const char *from = at;
		int32_t c = name_next(&at, end);
		if (c < 0 && is_cut(from, end))
			break;
		int kept = name_may_hold(c) || (isolates && name_is_isolate(c));
		size_t size = kept ? (size_t)(at - from) : REPLACEMENT_BYTES;
		memcpy(told + n, kept ? from : REPLACEMENT, size);
		n += size;
	}
	json_t *o = told ? json_stringn(told, n) : NULL;
	give_back(told);
	return o;
}

void name_tell_all(json_t *value)
{
	const char *key;
	json_t *each;
	size_t i;
	if (json_is_object(value)) {
		json_object_foreach(value, key, each) name_tell_all(each);
	} else if (json_is_array(value)) {
		json_array_foreach(value, i, each) name_tell_all(each);
	} else if (json_is_string(value)) {
		json_t *told = name_told(json_string_value(value), json_string_length(value));
		if (told)
			json_string_setn(value, json_string_value(told), json_string_length(told));
		json_decref(told);
	}
}

void name_mend(char *text)
{
	const char *end = text + strlen(text);
	char *out = text;
	for (const char *at = text; at < end;) {
		const char *from = at;
		if (name_may_hold(name_next(&at, end))) {
			memmove(out, from, (size_t)(at - from));
			out += at - from;
		} else {
			*out++ = '?';
		}
	}
	*out = '\0';
}
