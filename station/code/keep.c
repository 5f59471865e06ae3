/* Rule 20: what of a code may be stored. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/code.h"

static bool in_list(const char *const *list, const char *ai)
{
	for (; *list; list++)
		if (!strcmp(*list, ai))
			return true;
	return false;
}

bool code_keep(const char *ai)
{
	static const char *const kept[] = {"01",  "03",  "10",  "11",   "17",   "20",   "21",   "22",   "30",
	                                   "240", "241", "250", "7003", "8003", "8004", "8006", "8017", NULL};
	return in_list(kept, ai);
}

bool code_is_patient(const char *ai)
{
	static const char *const patients[] = {"8018", "7250", "7251", "7252", "7257", "7258", "7259", NULL};
	return in_list(patients, ai);
}

void code_reduce(struct code *code)
{
	int kept = 0;
	for (int i = 0; i < code->count; i++)
		if (code->elements[i].kept)
			code->elements[kept++] = code->elements[i];
	/* The rest is overwritten, not only left out: the value may be a name. */
	memset(code->elements + kept, 0, (size_t)(CODE_ELEMENTS_MAX - kept) * sizeof *code->elements);
	code->count = kept;
	if (code->kind == CODE_PLAIN || code->patient)
		memset(code->plain, 0, sizeof code->plain);
}

/* Text that grows in a fixed room; `size` runs on where it no longer fits. */
struct text {
	char *out;
	size_t room, size;
};

static void put(struct text *t, const char *s)
{
	size_t n = strlen(s);
	if (t->size + n < t->room)
		memcpy(t->out + t->size, s, n + 1);
	t->size += n;
}

static void put_gs1(struct text *t, const struct code_element *e)
{
	char one[2] = "";
	put(t, "(");
	put(t, e->ai);
	put(t, ")");
	for (const char *p = e->value; *p; p++) {
		one[0] = *p;
		put(t, *p == '(' ? "\\(" : one); /* so that it can be read back */
	}
}

static const char *hibc_head(const char *ai)
{
	static const char *const heads[][2] = {
	    {"LOT", "/$"}, {"SER", "/S"}, {"MFG", "/16D"}, {"QTY", "/Q"}, {NULL, NULL}};
	for (int i = 0; heads[i][0]; i++)
		if (!strcmp(heads[i][0], ai))
			return heads[i][1];
	return "";
}

/* Labeler, product and unit as they stand; the rest each as a part of its own. */
static void put_hibc(struct text *t, const struct code *c)
{
	char date[24];
	put(t, c->product[0] ? c->product : "+");
	for (int i = 0; i < c->count; i++) {
		const struct code_element *e = &c->elements[i];
		if (!strcmp(e->ai, "EXP")) {
			snprintf(date, sizeof date, "/14D%08d", c->expiry);
			put(t, date);
		} else if (hibc_head(e->ai)[0]) {
			put(t, hibc_head(e->ai));
			put(t, e->value);
		}
	}
}

static void put_own(struct text *t, const struct own_code *own)
{
	char text[OWN_CODE_MAX];
	own_code_write(own, text);
	put(t, own->kind == OWN_ITEM ? "(91)" : "");
	put(t, text);
}

int code_kept_text(const struct code *code, char *out, size_t room)
{
	struct text t = {out, room, 0};
	if (!room)
		return -ENOSPC;
	out[0] = '\0';
	switch (code->kind) {
	case CODE_PLAIN:
		break;
	case CODE_GS1:
		for (int i = 0; i < code->count; i++)
			if (code->elements[i].kept)
				put_gs1(&t, &code->elements[i]);
		break;
	case CODE_TRADE_ITEM:
		put(&t, "(01)");
		put(&t, code->product);
		break;
	case CODE_HIBC:
		if (!code->patient)
			put_hibc(&t, code);
		break;
	case CODE_OWN:
		put_own(&t, &code->own);
		break;
	}
	if (t.size < room)
		return (int)t.size;
	out[0] = '\0';
	return -ENOSPC;
}
