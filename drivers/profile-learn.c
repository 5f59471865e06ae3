#include "drivers/profile-learn.h"

#include <ctype.h>
#include <errno.h>
#include <string.h>

#include "base/wire.h"
#include "drivers/handheld-meaning.h"

static const char *const samples[] = {
#define X(name, symbol, text) text,
    LEARN_SAMPLES(X)
#undef X
};
#define SAMPLES (sizeof samples / sizeof *samples)
#define GAP_SAFETY 3 /* times the slowest key seen */
#define GS '\x1d'
#define NO_CHARACTER UINT32_MAX
#define GS_KEYS_MAX 6

/* One code in one layout: a character for each stroke, NO_CHARACTER where it has none. */
struct reading {
	uint32_t text[LEARN_STROKES_MAX];
	size_t count;
};

/* Where a sample lies in a code. */
struct place {
	size_t sample;     /* SAMPLES: the start or end code */
	size_t first, end; /* strokes [first, end) are the sample */
	size_t gs, gs_end; /* strokes of the separator, for samples with one */
};

static void read_in(const struct keymap *map, const struct learner_code *code, bool swapped,
                    struct reading *out)
{
	out->count = code->count;
	for (size_t i = 0; i < code->count; i++) {
		uint32_t c = stroke_character(map, code->strokes[i], swapped);
		out->text[i] = c && !(c & KEYMAP_DEAD) ? c : NO_CHARACTER;
	}
}

static bool text_at(const struct reading *r, size_t at, const char *text, size_t size)
{
	for (size_t i = 0; i < size; i++)
		if (at + i >= r->count || r->text[at + i] != (unsigned char)text[i])
			return false;
	return true;
}

/* BT, two letters of the site, 6, the step, two check digits. The step, or -1. */
static int step_at(const struct reading *r, size_t at)
{
	static const char shape[] = "BTAA60000";
	if (at + 9 > r->count)
		return -1;
	for (size_t i = 0; i < 9; i++) {
		uint32_t c = r->text[at + i];
		bool good = shape[i] == 'A'   ? c >= 'A' && c <= 'Z'
		            : shape[i] == '0' ? c >= '0' && c <= '9'
		                              : c == (unsigned char)shape[i];
		if (!good)
			return -1;
	}
	return (int)(r->text[at + 5] - '0') * 10 + (int)(r->text[at + 6] - '0');
}

static bool find_sample(const struct reading *r, size_t sample, struct place *out)
{
	const char *text = samples[sample], *gs = strchr(text, GS);
	size_t head = gs ? (size_t)(gs - text) : strlen(text), tail = gs ? strlen(gs + 1) : 0;
	for (size_t at = 0; at < r->count; at++) {
		if (!text_at(r, at, text, head))
			continue;
		size_t most = gs ? GS_KEYS_MAX : 0;
		for (size_t keys = 0; keys <= most; keys++)
			if (text_at(r, at + head + keys, gs ? gs + 1 : "", tail)) {
				*out = (struct place){sample, at, at + head + keys + tail, at + head,
				                      at + head + keys};
				return true;
			}
	}
	return false;
}

/* The step of a start or end code, 0 for a sample, -1 for what this layout does not explain. */
static int explain(const struct reading *r, struct place *out)
{
	for (size_t at = 0; at + 9 <= r->count; at++) {
		int step = step_at(r, at);
		if (step == 1 || step == 2) {
			*out = (struct place){.sample = SAMPLES, .first = at, .end = at + 9};
			return step;
		}
	}
	for (size_t s = 0; s < SAMPLES; s++)
		if (find_sample(r, s, out))
			return 0;
	return -1;
}

/* ISO/IEC 7064 MOD 97-10, letters as A=10 … Z=35. */
static bool check_digits_hold(const char *text)
{
	unsigned rest = 0;
	for (; *text; text++)
		rest = (isdigit((unsigned char)*text) ? rest * 10 + (unsigned)(*text - '0')
		                                      : rest * 100 + (unsigned)(*text - 'A') + 10) %
		       97;
	return rest == 1;
}

/* BT, two letters of the site, the kind (1 card, 2 digit, 3 badge), digits. */
static bool ours_at(const struct reading *r, size_t at, char out[LEARN_OURS_MAX + 1])
{
	static const size_t sizes[] = {['1'] = 12, ['2'] = 11, ['3'] = 13};
	uint32_t kind = at + 5 <= r->count ? r->text[at + 4] : 0;
	size_t size = kind >= '1' && kind <= '3' ? sizes[kind] : 0;
	if (!size || at + size > r->count || !text_at(r, at, "BT", 2))
		return false;
	for (size_t i = 0; i < size; i++) {
		uint32_t c = r->text[at + i];
		if (i < 4 ? c < 'A' || c > 'Z' : c < '0' || c > '9')
			return false;
		out[i] = (char)c;
	}
	out[size] = '\0';
	return check_digits_hold(out);
}

static enum learner_heard hear(const struct keymaps *maps, const struct learner_code *code,
                               char ours[LEARN_OURS_MAX + 1])
{
	bool found = false;
	for (int i = 0; i < LAYOUT_COUNT * 2; i++) {
		struct reading r;
		struct place where;
		read_in(maps->of[i / 2], code, i % 2, &r);
		int step = explain(&r, &where);
		if (step > 0)
			return step == 1 ? LEARNER_BEGIN : LEARNER_END;
		for (size_t at = 0; !found && at < r.count; at++)
			found = ours_at(&r, at, ours);
	}
	return found ? LEARNER_OURS : LEARNER_OTHER;
}

enum learner_heard learner_add(struct learner *l, const struct keymaps *maps, const struct stroke *strokes,
                               size_t count, unsigned longest_ms)
{
	struct learner_code code = {.count = count};
	if (count == 0 || count > LEARN_STROKES_MAX)
		return LEARNER_OTHER;
	memcpy(code.strokes, strokes, count * sizeof *strokes);
	enum learner_heard heard = hear(maps, &code, l->ours);
	if (heard == LEARNER_OURS || l->count == LEARN_CODES_MAX)
		return heard;
	l->codes[l->count++] = code;
	if (longest_ms > l->longest_ms)
		l->longest_ms = longest_ms;
	return heard;
}

/* How many codes behind the start code a layout explains; -1 where it does not know the start code. `seen`
 * gets a bit for each sample. */
static int score(const struct learner *l, const struct keymap *map, bool swapped, unsigned *seen)
{
	int known = -1;
	*seen = 0;
	for (size_t i = 0; i < l->count; i++) {
		struct reading r;
		struct place where;
		read_in(map, &l->codes[i], swapped, &r);
		int step = explain(&r, &where);
		if (known < 0 && step != 1)
			continue;
		known += known < 0 ? 1 : step >= 0;
		if (step == 0)
			*seen |= 1u << where.sample;
	}
	return known;
}

/* What the codes say beyond their layout, gathered code by code. */
struct gathered {
	struct profile *p;
	bool first;
	bool gs_seen;
	int with_aim, without_aim;
};

static void disagree_gs(struct gathered *g, enum profile_gs gs, struct stroke s, char text)
{
	struct profile *p = g->p;
	bool same = p->gs == gs && p->gs_key == s.key && p->gs_mods == s.mods && p->gs_text == text;
	if (g->gs_seen && !same) {
		p->gs = PROFILE_GS_UNKNOWN;
		p->gs_key = p->gs_mods = 0;
		p->gs_text = 0;
	} else if (!g->gs_seen) {
		p->gs = gs;
		p->gs_key = s.key;
		p->gs_mods = s.mods;
		p->gs_text = text;
	}
	g->gs_seen = true;
}

static void gather_gs(struct gathered *g, const struct learner_code *code, const struct reading *r,
                      const struct place *where)
{
	struct stroke none = {0}, s = code->strokes[where->gs];
	size_t keys = where->gs_end - where->gs;
	uint32_t c = keys == 1 ? r->text[where->gs] : NO_CHARACTER;
	s.mods &= (uint8_t)~STROKE_CAPS;
	if (keys == 0)
		disagree_gs(g, PROFILE_GS_DROPPED, none, 0);
	else if (keys > 1)
		disagree_gs(g, PROFILE_GS_UNKNOWN, none, 0);
	else if (s.key == 0)
		disagree_gs(g, s.number == GS ? PROFILE_GS_ALT : PROFILE_GS_UNKNOWN, none, 0);
	else if (c > 0x20 && c < 0x7f)
		disagree_gs(g, PROFILE_GS_TEXT, none, (char)c);
	else
		disagree_gs(g, PROFILE_GS_CHORD, s, 0);
}

/* Copies strokes [from, to) as bytes; false where they are no plain text or too long. */
static bool copy(const struct reading *r, size_t from, size_t to, char out[PROFILE_AROUND_MAX + 1])
{
	if (to - from > PROFILE_AROUND_MAX)
		return false;
	for (size_t i = from; i < to; i++) {
		if (r->text[i] == 0 || r->text[i] >= 0x80)
			return false;
		out[i - from] = (char)r->text[i];
	}
	out[to - from] = '\0';
	return true;
}

static bool is_return(uint32_t c)
{
	return c == '\r' || c == '\n';
}

static enum typing_end cut_end(const struct reading *r, size_t from, size_t *to)
{
	size_t n = *to;
	while (n > from && is_return(r->text[n - 1]))
		n--;
	if (n < *to) {
		*to = n;
		return TYPING_END_ENTER;
	}
	if (n > from && r->text[n - 1] == '\t') {
		*to = n - 1;
		return TYPING_END_TAB;
	}
	return TYPING_END_SILENCE;
}

static void gather_around(struct gathered *g, const struct reading *r, const struct place *where)
{
	struct profile *p = g->p;
	char prefix[PROFILE_AROUND_MAX + 1] = "", suffix[PROFILE_AROUND_MAX + 1] = "";
	char aim[PROFILE_AROUND_MAX + 1] = "";
	size_t from = 0, before = where->first, to = r->count;
	while (from < before && is_return(r->text[from]))
		from++;
	if (before - from >= 3 && copy(r, before - 3, before, aim) && wire_aim_valid(aim)) {
		g->with_aim++;
		before -= 3;
	} else {
		g->without_aim++;
	}
	enum typing_end end = cut_end(r, where->end, &to);
	bool plain = copy(r, from, before, prefix) && copy(r, where->end, to, suffix);
	if (g->first) {
		memcpy(p->prefix, prefix, sizeof prefix);
		memcpy(p->suffix, suffix, sizeof suffix);
		p->around_known = plain;
		p->end = end;
		g->first = false;
	}
	p->around_known =
	    p->around_known && plain && !strcmp(prefix, p->prefix) && !strcmp(suffix, p->suffix);
	if (end != p->end)
		p->end = TYPING_END_UNKNOWN;
}

static void gather(const struct learner *l, const struct keymap *map, struct profile *p)
{
	struct gathered g = {.p = p, .first = true};
	bool begun = false;
	for (size_t i = 0; i < l->count; i++) {
		struct reading r;
		struct place where;
		read_in(map, &l->codes[i], p->letters == PROFILE_CASE_SWAPPED, &r);
		int step = explain(&r, &where);
		begun = begun || step == 1;
		if (!begun || step < 0)
			continue;
		gather_around(&g, &r, &where);
		if (step == 0 && strchr(samples[where.sample], GS))
			gather_gs(&g, &l->codes[i], &r, &where);
	}
	p->aim = g.without_aim == 0 ? PROFILE_AIM_ON
	         : g.with_aim == 0  ? PROFILE_AIM_OFF
	                            : PROFILE_AIM_UNKNOWN;
}

/* The layouts that explain the most, with Caps Lock as `letters` says. */
static int best_layouts(const struct learner *l, const struct keymaps *maps, struct profile *p,
                        unsigned *seen)
{
	int best = -1;
	for (int i = 0; i < LAYOUT_COUNT * 2; i++) {
		unsigned s, bit = LAYOUT_BIT(i % LAYOUT_COUNT);
		bool swapped = i >= LAYOUT_COUNT;
		int n = score(l, maps->of[i % LAYOUT_COUNT], swapped, &s);
		if (n > best) {
			best = n;
			p->layouts = bit;
			p->letters = swapped ? PROFILE_CASE_SWAPPED : PROFILE_CASE_TYPED;
			*seen = s;
		} else if (n == best && n >= 0 && swapped == (p->letters == PROFILE_CASE_SWAPPED)) {
			p->layouts |= bit;
		}
	}
	return best;
}

static unsigned gap_of(unsigned longest_ms)
{
	unsigned gap_ms = longest_ms * GAP_SAFETY;
	return gap_ms < PROFILE_GAP_MS       ? PROFILE_GAP_MS
	       : gap_ms > PROFILE_GAP_MAX_MS ? PROFILE_GAP_MAX_MS
	                                     : gap_ms;
}

int learner_result(const struct learner *l, const struct keymaps *maps, struct profile *out, struct error *e)
{
	enum { LETTERS, DIGITS, SIGNS, LOWER };
	unsigned seen = 0;
	int first = 0;
	*out = profile_unknown(LAYOUT_ALL);
	if (best_layouts(l, maps, out, &seen) < 1 || !seen)
		return error_set(e, -ENODATA,
		                 "nothing was learned: the start code and a code below it were not "
		                 "both read: scan the sheet again from 1 downwards");
	while (!(out->layouts & LAYOUT_BIT(first)))
		first++;
	gather(l, maps->of[first], out);
	if (!(seen & 1u << LETTERS) || !(seen & 1u << LOWER))
		out->letters = PROFILE_CASE_UNKNOWN;
	out->gap_ms = gap_of(l->longest_ms);
	return 0;
}
