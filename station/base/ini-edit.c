#include "base/ini-edit.h"

#include <ctype.h>
#include <errno.h>
#include <stdbool.h>
#include <string.h>

/* Some editors put it before the first line; who reads settings passes it over. */
static const char BYTE_ORDER_MARK[] = "\xef\xbb\xbf";

struct line {
	const char *at;
	size_t size; /* without its end */
};

/* Where a value goes: `from` to `to` of the text is replaced. */
struct place {
	size_t from, to;
	bool found;
};

static bool next_line(const struct buf *text, size_t *at, struct line *l)
{
	if (*at >= text->size)
		return false;
	if (*at == 0 && strncmp(text->data, BYTE_ORDER_MARK, strlen(BYTE_ORDER_MARK)) == 0)
		*at = strlen(BYTE_ORDER_MARK);
	const char *end = memchr(text->data + *at, '\n', text->size - *at);
	l->at = text->data + *at;
	l->size = end ? (size_t)(end - l->at) : text->size - *at;
	*at += l->size + (end != NULL);
	return true;
}

static bool is_section(const struct line *l, const char *section)
{
	size_t n = strlen(section);
	return l->size >= n + 2 && l->at[0] == '[' && strncmp(l->at + 1, section, n) == 0 &&
	       l->at[n + 1] == ']';
}

static bool is_kin(const struct line *l, const char *section)
{
	size_t n = strcspn(section, " ");
	return l->at[0] == '[' && section[n] && l->size > n + 1 && strncmp(l->at + 1, section, n + 1) == 0;
}

/* "name =" or "name:", or with `mark` "#name =" */
static bool is_value(const struct line *l, const char *mark, const char *name)
{
	size_t m = strlen(mark), n = strlen(name), at = m + n;
	if (l->size <= at || strncmp(l->at, mark, m) != 0 || strncmp(l->at + m, name, n) != 0)
		return false;
	while (at < l->size && isspace((unsigned char)l->at[at]))
		at++;
	return at < l->size && (l->at[at] == '=' || l->at[at] == ':');
}

static bool is_setting(const struct line *l)
{
	return l->size && !strchr("#;[ \t\r", l->at[0]);
}

/* The place within the section, or `found` false and `to` where a new section would go. */
static struct place find(const struct buf *text, const char *section, const char *name)
{
	struct place p = {.from = text->size, .to = text->size};
	size_t kin = 0, at = 0;
	bool inside = false, with_kin = false, hinted = false;
	struct line l;
	while (next_line(text, &at, &l)) {
		if (l.size && l.at[0] == '[') {
			inside = is_section(&l, section);
			with_kin = is_kin(&l, section);
			if (inside)
				p = (struct place){at, at, true};
		} else if (inside && is_value(&l, "", name)) {
			return (struct place){(size_t)(l.at - text->data), at, true};
		} else if (inside && is_value(&l, "#", name)) {
			p.from = p.to = at;
			hinted = true;
		} else if (inside && !hinted && is_setting(&l)) {
			p.from = p.to = at;
		}
		if (with_kin && (is_setting(&l) || l.at[0] == '['))
			kin = at;
	}
	if (!p.found && kin)
		p.from = p.to = kin;
	return p;
}

int ini_put(struct buf *text, const char *section, const char *name, const char *value)
{
	struct buf made = {0};
	struct place p = find(text, section, name);
	int n = buf_add(&made, text->data ? text->data : "", p.from);
	if (n == 0 && made.size && made.data[made.size - 1] != '\n')
		n = buf_add_text(&made, "\n");
	if (n == 0 && !p.found)
		n = buf_printf(&made, "%s[%s]\n", made.size ? "\n" : "", section);
	if (n == 0)
		n = buf_printf(&made, "%s = %s\n", name, value);
	if (n == 0 && p.to < text->size)
		n = buf_add(&made, text->data + p.to, text->size - p.to);
	if (n < 0) {
		buf_free(&made);
		return -ENOMEM;
	}
	buf_free(text);
	*text = made;
	return 0;
}

void ini_drop(struct buf *text, const char *section, const char *name)
{
	struct place p = find(text, section, name);
	if (!p.found || p.from == p.to)
		return;
	memmove(text->data + p.from, text->data + p.to, text->size - p.to + 1);
	text->size -= p.to - p.from;
}
