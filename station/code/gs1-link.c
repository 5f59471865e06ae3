/* GS1 Digital Link: element strings as the path and query of a web address, in a plain QR code or Data
 * Matrix.
 *
 *     https://example.com/some/where/01/09506000134352/10/ABC123?17=270331
 *                                   |                  |         |
 *                     the last key in the path  its qualifiers  attributes
 *
 * Source: GS1 Digital Link Standard, URI syntax. Compressed links and words in place of numbers ('/gtin/')
 * are not read: the first were withdrawn, the second never became common. */
#include "code/gs1.h"

#include <errno.h>
#include <string.h>

#include "base/hex.h"

#define AGAIN "scan it again; if it stays so, use another code on this pack"
#define PAIRS_MAX 8 /* a key and its qualifiers; no key has more than 3 */

struct text {
	const char *p;
	size_t n;
};

/* The address, its parts and what was read from it. */
struct link {
	const char *whole;
	int32_t today;
	struct code *out;
	struct code_fault *fault;
};

static bool starts(const struct text *t, const char *with)
{
	size_t n = strlen(with);
	for (size_t i = 0; i < n; i++) {
		char c = i < t->n ? t->p[i] : '\0';
		if (c >= 'A' && c <= 'Z')
			c = (char)(c - 'A' + 'a');
		if (c != with[i])
			return false;
	}
	return true;
}

/* Undoes %2F; '+' is a space in a query only. -EINVAL for a broken escape, -ENOSPC where it does not fit. */
static int unescape(const struct text *in, bool query, char *out, size_t room, size_t *size)
{
	size_t n = 0;
	for (size_t i = 0; i < in->n; i++) {
		char c = in->p[i];
		if (c == '%') {
			int high = i + 2 < in->n ? hex_value(in->p[i + 1]) : -1;
			int low = high >= 0 ? hex_value(in->p[i + 2]) : -1;
			if (low < 0)
				return -EINVAL;
			c = (char)(high * 16 + low);
			i += 2;
		} else if (c == '+' && query) {
			c = ' ';
		}
		if (n == room)
			return -ENOSPC;
		out[n++] = c;
	}
	*size = n;
	return 0;
}

/* Fills a short GTIN up to 14 digits; everything else stays. */
static void fill_gtin(const struct gs1_ai *ai, char *value, size_t *size)
{
	if (strcmp(ai->first, "01") || (*size != 8 && *size != 12 && *size != 13))
		return;
	size_t zeros = 14 - *size;
	memmove(value + zeros, value, *size);
	memset(value, '0', zeros);
	*size = 14;
}

static int add_pair(struct link *l, const struct gs1_ai *ai, const struct text *key, const struct text *in,
                    bool query)
{
	char value[CODE_VALUE_MAX + 14]; /* room to fill a short GTIN */
	size_t size = 0, at = (size_t)(in->p - l->whole);
	struct code_fault why = {0, ""};
	if (unescape(in, query, value, CODE_VALUE_MAX - 1, &size) < 0)
		return fault_set(l->fault, at, "the value of (%s) is too long or has a broken '%%': " AGAIN,
		                 ai->first);
	fill_gtin(ai, value, &size);
	if (gs1_value(ai, value, size, l->today, &why) < 0)
		return fault_set(l->fault, at, "(%.*s) %s, %.80s: " AGAIN, (int)key->n, key->p, ai->title,
		                 why.why);
	if (l->out->count == CODE_ELEMENTS_MAX)
		return fault_set(l->fault, at, "it has more than %d elements: use another code on this pack",
		                 CODE_ELEMENTS_MAX);
	struct code_element *to = &l->out->elements[l->out->count++];
	*to = (struct code_element){.title = ai->title, .at = at};
	memcpy(to->ai, key->p, key->n);
	memcpy(to->value, value, size);
	to->kept = code_keep(to->ai);
	return 0;
}

/* Whether these qualifiers follow `way` ("22,10,21") in its order, each at most once. */
static bool in_order(const char *way, size_t size, const struct text *keys, size_t count)
{
	size_t k = 0;
	for (const char *p = way, *end = way + size; p < end && k < count;) {
		size_t one = strcspn(p, ",|");
		if (one == keys[k].n && !memcmp(p, keys[k].p, one))
			k++;
		p += one + 1;
	}
	return k == count;
}

static bool any_order(const char *path, const struct text *keys, size_t count)
{
	if (!count)
		return true;
	for (const char *p = path; *p; p += strcspn(p, "|"), p += *p == '|')
		if (in_order(p, strcspn(p, "|"), keys, count))
			return true;
	return false;
}

/* Cuts the last '/…' off the path; false where none is left. */
static bool last_segment(struct text *path, struct text *segment)
{
	if (!path->n)
		return false;
	size_t at = path->n;
	while (at && path->p[at - 1] != '/')
		at--;
	if (!at)
		return false;
	*segment = (struct text){path->p + at, path->n - at};
	path->n = at - 1;
	return true;
}

/* Finds the key nearest to the end, and the pairs behind it in order of reading. 0 or -ENOENT. */
static int find_key(struct text path, struct text keys[PAIRS_MAX], struct text values[PAIRS_MAX],
                    size_t *count)
{
	for (size_t n = 0; n < PAIRS_MAX; n++) {
		struct text value, key;
		if (!last_segment(&path, &value) || !last_segment(&path, &key) || !value.n)
			return -ENOENT;
		const struct gs1_ai *ai = gs1_ai(key.p, key.n);
		if (!ai)
			return -ENOENT;
		memmove(keys + 1, keys, n * sizeof *keys);
		memmove(values + 1, values, n * sizeof *values);
		keys[0] = key;
		values[0] = value;
		*count = n + 1;
		if (ai->path && any_order(ai->path, keys + 1, n))
			return 0;
	}
	return -ENOENT;
}

static bool all_digits(const struct text *t)
{
	for (size_t i = 0; i < t->n; i++)
		if (t->p[i] < '0' || t->p[i] > '9')
			return false;
	return t->n > 0;
}

/* An attribute must not be what the path already says, nor a qualifier that belongs into the path. */
static int misplaced(struct link *l, const struct text *key, const struct text keys[PAIRS_MAX], size_t count)
{
	size_t at = (size_t)(key->p - l->whole);
	char ai[CODE_AI_MAX] = "";
	memcpy(ai, key->p, key->n);
	for (int i = 0; i < l->out->count; i++)
		if (!strcmp(l->out->elements[i].ai, ai))
			return fault_set(l->fault, at, "(%s) stands in this address twice: " AGAIN, ai);
	const struct gs1_ai *main = gs1_ai(keys[0].p, keys[0].n);
	for (size_t place = 1; place <= count; place++) {
		struct text with[PAIRS_MAX + 1];
		memcpy(with, keys + 1, (place - 1) * sizeof *with);
		with[place - 1] = *key;
		memcpy(with + place, keys + place, (count - place) * sizeof *with);
		if (any_order(main->path, with, count))
			return fault_set(l->fault, at, "(%s) belongs into the path of this address: " AGAIN,
			                 ai);
	}
	return 0;
}

static int read_query(struct link *l, struct text query, const struct text keys[PAIRS_MAX], size_t count)
{
	while (query.n) {
		const char *amp = memchr(query.p, '&', query.n);
		struct text one = {query.p, amp ? (size_t)(amp - query.p) : query.n};
		size_t used = one.n + (amp ? 1 : 0);
		query = (struct text){query.p + used, query.n - used};
		const char *equals = memchr(one.p, '=', one.n);
		struct text key = {one.p, equals ? (size_t)(equals - one.p) : one.n};
		if (!equals || !all_digits(&key))
			continue; /* somebody else's: linkType=…, utm_source=… */
		const struct gs1_ai *ai = gs1_ai(key.p, key.n);
		if (!ai || !ai->attribute)
			return fault_set(l->fault, (size_t)(key.p - l->whole),
			                 "'%.*s' is no identifier that may stand behind '?': " AGAIN,
			                 key.n > 8 ? 8 : (int)key.n, key.p);
		int r = misplaced(l, &key, keys, count);
		struct text value = {equals + 1, one.n - key.n - 1};
		if (r == 0)
			r = add_pair(l, ai, &key, &value, true);
		if (r < 0)
			return r;
	}
	return 0;
}

/* The characters of an address by RFC 3986, '%' included. */
static bool in_address(char c)
{
	return c > ' ' && c < 0x7f && !strchr("\"<>\\^`{|}", c);
}

static bool in_host(const struct text *host)
{
	for (size_t i = 0; i < host->n; i++) {
		char c = host->p[i];
		bool word = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
		if (!word && !strchr("-.:[]_@", c))
			return false;
	}
	return host->n > 0;
}

/* Cuts `t` at the first `mark`; what stood behind it is returned. */
static struct text cut(struct text *t, char mark)
{
	const char *at = memchr(t->p, mark, t->n);
	struct text rest = {t->p + t->n, 0};
	if (at) {
		rest = (struct text){at + 1, t->n - (size_t)(at - t->p) - 1};
		t->n = (size_t)(at - t->p);
	}
	return rest;
}

int gs1_split_link(struct code *out, const char *text, size_t size, int32_t today, struct code_fault *fault)
{
	struct text all = {text, size}, keys[PAIRS_MAX], values[PAIRS_MAX];
	struct link l = {text, today, out, fault};
	size_t count = 0, scheme = starts(&all, "https://") ? 8 : starts(&all, "http://") ? 7 : 0;
	if (!scheme)
		return -ENOENT;
	for (size_t i = 0; i < size; i++)
		if (!in_address(text[i]))
			return -ENOENT;
	struct text host = {text + scheme, size - scheme};
	cut(&host, '#');
	struct text query = cut(&host, '?');
	struct text path = cut(&host, '/');
	if (!path.n || !in_host(&host))
		return -ENOENT;
	path = (struct text){path.p - 1, path.n + 1};
	if (find_key(path, keys, values, &count) < 0)
		return -ENOENT;
	for (size_t i = 0; i < count; i++) {
		int r = add_pair(&l, gs1_ai(keys[i].p, keys[i].n), &keys[i], &values[i], false);
		if (r < 0)
			return r;
	}
	return read_query(&l, query, keys, count);
}
