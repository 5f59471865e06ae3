#include "count/catalogue.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/code.h"

#define GTIN_DIGITS 14

void catalogue_deinit(struct catalogue *c)
{
	free(c->lines);
	*c = (struct catalogue){0};
}

int catalogue_reserve(struct catalogue *c, size_t more)
{
	size_t room = c->count + more;
	if (room <= c->room)
		return 0;
	struct line *lines = realloc(c->lines, room * sizeof *lines);
	if (!lines)
		return -ENOMEM;
	c->lines = lines;
	c->room = room;
	return 0;
}

int catalogue_copy(struct catalogue *to, const struct catalogue *from)
{
	*to = (struct catalogue){0};
	int n = catalogue_reserve(to, from->count);
	if (n < 0)
		return n;
	if (from->count)
		memcpy(to->lines, from->lines, from->count * sizeof *to->lines);
	to->count = from->count;
	return 0;
}

const struct line *catalogue_by_key(const struct catalogue *c, const char *key)
{
	for (size_t i = 0; i < c->count; i++)
		if (strcmp(c->lines[i].key, key) == 0)
			return &c->lines[i];
	return NULL;
}

/* How much of a code names the product, and how many packs it stands for: "09506000134567*10" is the code of a box of ten.
 * What is no product number may bear a star of its own. */
static size_t code_base(const char *wanted, int32_t *packs)
{
	size_t n = strcspn(wanted, "*");
	int product = wanted[0] == '+' || (n == GTIN_DIGITS && strspn(wanted, "0123456789") == n);
	char *end;
	long many = product && wanted[n] && wanted[n + 1] ? strtol(wanted + n + 1, &end, 10) : 0;
	*packs = 1;
	if (many < 1 || many > LINE_UNITS_MAX || *end)
		return strlen(wanted);
	*packs = (int32_t)many;
	return n;
}

/* "8004:95060001*" matches every asset whose number begins so. */
static int code_matches(const char *wanted, const char *text, size_t length, int32_t *packs)
{
	size_t n = code_base(wanted, packs);
	if (n && wanted[n - 1] == '*')
		return length >= n - 1 && strncmp(wanted, text, n - 1) == 0;
	return n == length && strncmp(wanted, text, n) == 0;
}

static const struct line *by_text(const struct catalogue *c, const char *text, size_t length, int32_t *packs)
{
	for (size_t i = 0; length && i < c->count; i++)
		for (int k = 0; k < LINE_CODES_MAX && c->lines[i].codes[k][0]; k++)
			if (code_matches(c->lines[i].codes[k], text, length, packs))
				return &c->lines[i];
	return NULL;
}

const struct line *catalogue_packs_by_code(const struct catalogue *c, const struct code *code, int32_t *packs)
{
	char text[CODE_VALUE_MAX + 8];
	switch (code->kind) {
	case CODE_GS1:
		if (code->giai[0]) {
			snprintf(text, sizeof text, "8004:%s", code->giai);
			return by_text(c, text, strlen(text), packs);
		}
		if (code->grai[0]) {
			snprintf(text, sizeof text, "8003:%s", code->grai);
			return by_text(c, text, strlen(text), packs);
		}
		return by_text(c, code->product, strlen(code->product), packs);
	case CODE_HIBC:
	case CODE_TRADE_ITEM:
		return by_text(c, code->product, strlen(code->product), packs);
	case CODE_OWN:
		return NULL;
	case CODE_PLAIN:
		return by_text(c, code->plain, strlen(code->plain), packs);
	}
	return NULL;
}

const struct line *catalogue_by_code(const struct catalogue *c, const struct code *code)
{
	int32_t packs;
	return catalogue_packs_by_code(c, code, &packs);
}

const struct line *catalogue_owner(const struct catalogue *c, const struct line *line, const char **code)
{
	int32_t packs;
	for (int k = 0; k < LINE_CODES_MAX && line->codes[k][0]; k++) {
		const char *text = line->codes[k];
		const struct line *other = by_text(c, text, code_base(text, &packs), &packs);
		if (!other || strcmp(other->key, line->key) == 0)
			continue;
		if (code)
			*code = text;
		return other;
	}
	return NULL;
}

static enum line_column faulty_column(const struct line *line)
{
	if (!line->key[0])
		return COL_KEY;
	if (!line->name[0])
		return COL_NAME;
	if (role_has(line->role, TRAIT_CE) && !line->marked)
		return COL_MARKED;
	if (role_has(line->role, TRAIT_VISIBLE) && !line->visible)
		return COL_VISIBLE;
	if (role_has(line->role, TRAIT_REFUSED) && !line->instead[0])
		return COL_INSTEAD;
	if (line->label != LABEL_NEVER && !line->label_place[0])
		return COL_LABEL_PLACE;
	return line->per_pack < 1 ? COL_PER_PACK : LINE_COLUMNS;
}

/* Rule 5: what may be called a tourniquet, and what no catalogue may say. */
int line_check(const struct line *line, enum line_column *where, struct error *e)
{
	const char *kind = role_name(line->role);
	*where = faulty_column(line);
	switch (*where) {
	case LINE_COLUMNS:
		return 0;
	case COL_MARKED:
		return error_set(
		    e, -EINVAL,
		    "line '%s': a %s must bear a regulator's mark (CE, UKCA or the local equivalent): do "
		    "not catalogue one that does not",
		    line->key, kind);
	case COL_VISIBLE:
		return error_set(
		    e, -EINVAL,
		    "line '%s': a %s must be visible (bright, or tagged): do not catalogue one that is not",
		    line->key, kind);
	case COL_INSTEAD:
		return error_set(
		    e, -EINVAL,
		    "line '%s': a %s line must say what to use instead: fill the column 'instead'", line->key,
		    kind);
	case COL_LABEL_PLACE:
		return error_set(
		    e, -EINVAL,
		    "line '%s': it is labelled, and nothing says where: fill the column 'label_place' "
		    "(film side, clear of the seal, the peel corner, the indicator and the maker's text)",
		    line->key);
	case COL_PER_PACK:
		return error_set(e, -EINVAL, "line '%s': per_pack must be 1 or more", line->key);
	case COL_KEY:
	case COL_NAME:
	case COL_ROLE:
	case COL_CODES:
	case COL_SINGLE_USE:
	case COL_IDENTITY:
	case COL_ROLLS_ON:
	case COL_XRAY:
	case COL_SIZE:
	case COL_CONTENTS:
	case COL_LABEL:
	case COL_MINIMUM:
		break;
	}
	return error_set(e, -EINVAL, "line '%s': a line needs a key and a name: give both", line->key);
}

void catalogue_remove(struct catalogue *c, const char *key)
{
	for (size_t i = 0; i < c->count; i++)
		if (strcmp(c->lines[i].key, key) == 0) {
			c->count--;
			memmove(&c->lines[i], &c->lines[i + 1], (c->count - i) * sizeof *c->lines);
			return;
		}
}

int catalogue_set(struct catalogue *c, const struct line *line, struct error *e)
{
	enum line_column where;
	int r = line_check(line, &where, e);
	if (r < 0)
		return r;
	if (catalogue_owner(c, line, NULL))
		return error_set(
		    e, -EINVAL,
		    "line '%s': a code of it already finds another line: each code may stand once",
		    line->key);
	struct line *old = (struct line *)catalogue_by_key(c, line->key);
	if (old) {
		*old = *line;
		return 0;
	}
	if (c->count == CATALOGUE_LINES_MAX)
		return error_set(e, -ENOSPC, "line '%s': the catalogue is full (%d lines): remove some",
		                 line->key, CATALOGUE_LINES_MAX);
	if (catalogue_reserve(c, 1) < 0)
		return error_set(e, -ENOMEM, "line '%s': out of memory: try again", line->key);
	c->lines[c->count++] = *line;
	return 0;
}

static const char *const identity_names[] = {
    [IDENTITY_NONE] = "none",
    [IDENTITY_PACK] = "pack",
    [IDENTITY_MARK] = "mark",
};

const char *identity_name(enum identity_kind kind)
{
	return kind >= IDENTITY_NONE && kind <= IDENTITY_MARK ? identity_names[kind] : "unknown";
}

int identity_from_name(const char *name)
{
	for (int k = IDENTITY_NONE; k <= IDENTITY_MARK; k++)
		if (strcmp(identity_names[k], name) == 0)
			return k;
	return -EINVAL;
}
