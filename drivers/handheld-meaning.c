#include "drivers/handheld-meaning.h"

#include <ctype.h>
#include <libevdev/libevdev.h>
#include <stdio.h>
#include <string.h>

#define GS '\x1d'

uint32_t stroke_character(const struct keymap *map, struct stroke s, bool swapped)
{
	unsigned mods = s.mods & (KEYMAP_SHIFT | KEYMAP_ALTGR | KEYMAP_CAPS);
	if (s.key == 0)
		return s.number >= 0x80 && s.number < 0xa0 ? 0 : s.number;
	if (s.key >= KEYMAP_KEYS || (s.mods & STROKE_ALT))
		return 0;
	if (s.mods & STROKE_CTRL) {
		uint32_t c = map->character[s.key][mods & ~KEYMAP_CAPS];
		bool letter = c < 0x80 && isalpha((int)c);
		return letter || (c >= '@' && c <= '_') ? c & 0x1f : 0;
	}
	return map->character[s.key][swapped ? mods ^ KEYMAP_CAPS : mods];
}

static bool is_gs(const struct profile *p, struct stroke s)
{
	if (s.key == 0)
		return s.number == GS;
	if (p->gs == PROFILE_GS_CHORD)
		return s.key == p->gs_key && (s.mods & ~STROKE_CAPS) == p->gs_mods;
	/* The key right of P with Ctrl is what most scanners send, in whatever layout. */
	return p->gs == PROFILE_GS_UNKNOWN && s.key == KEY_RIGHTBRACE &&
	       (s.mods & ~STROKE_CAPS) == STROKE_CTRL;
}

static size_t put_utf8(char *out, uint32_t c)
{
	if (c < 0x80) {
		out[0] = (char)c;
		return 1;
	}
	if (c < 0x800) {
		out[0] = (char)(0xc0 | c >> 6);
		out[1] = (char)(0x80 | (c & 0x3f));
		return 2;
	}
	if (c < 0x10000) {
		out[0] = (char)(0xe0 | c >> 12);
		out[1] = (char)(0x80 | (c >> 6 & 0x3f));
		out[2] = (char)(0x80 | (c & 0x3f));
		return 3;
	}
	return 0;
}

static bool unknown_key(struct stroke s, struct meant *out)
{
	const char *name = s.key ? libevdev_event_code_get_name(EV_KEY, s.key) : "a number on the keypad";
	snprintf(out->why, sizeof out->why, "it holds a key that stands for nothing known: %s%s%s%s",
	         s.mods & STROKE_CTRL ? "Ctrl+" : "", s.mods & STROKE_ALT ? "Alt+" : "",
	         s.mods & STROKE_ALTGR ? "AltGr+" : "", name ? name : "one without a name");
	return false;
}

static bool translate(const struct profile *p, const struct keymap *map, const struct stroke *strokes,
                      size_t count, struct meant *out)
{
	out->size = 0;
	for (size_t i = 0; i < count; i++) {
		bool swapped = p->letters == PROFILE_CASE_SWAPPED;
		uint32_t c = is_gs(p, strokes[i]) ? GS : stroke_character(map, strokes[i], swapped);
		if (c & KEYMAP_DEAD) {
			bool space = i + 1 < count && stroke_character(map, strokes[i + 1], false) == ' ';
			c = space ? c & ~KEYMAP_DEAD : 0;
			i += space;
		}
		size_t n = c ? put_utf8(out->text + out->size, c) : 0;
		if (n == 0)
			return unknown_key(strokes[i], out);
		out->size += n;
	}
	out->text[out->size] = '\0';
	return true;
}

static bool digits_at(const char *text, size_t size, size_t at, size_t count)
{
	for (size_t i = at; i < at + count; i++)
		if (i >= size || !isdigit((unsigned char)text[i]))
			return false;
	return true;
}

static bool letters_at(const char *text, size_t size, size_t at, size_t count)
{
	for (size_t i = at; i < at + count; i++)
		if (i >= size || text[i] < 'A' || text[i] > 'Z')
			return false;
	return true;
}

/* BT or BX, site, kind and numbers of station/code/own-codes.h, or an item label under (91). */
static bool own_shape(const char *text, size_t size)
{
	if (size > 3 && text[0] == ']' && wire_aim_valid((char[]){text[0], text[1], text[2], '\0'})) {
		text += 3;
		size -= 3;
	}
	if (size >= 9 && size <= 16 && text[0] == 'B' && (text[1] == 'T' || text[1] == 'X'))
		return letters_at(text, size, 2, 2) && digits_at(text, size, 4, size - 4);
	return size == 15 && memcmp(text, "91", 2) == 0 && (text[2] == 'P' || text[2] == 'R') &&
	       letters_at(text, size, 3, 2) && digits_at(text, size, 5, 10);
}

static bool ascii(const char *text, size_t size)
{
	for (size_t i = 0; i < size; i++)
		if ((unsigned char)text[i] >= 0x80)
			return false;
	return true;
}

/* The rank of a reading among several: the highest counts if only one text has it. */
static int rank(const struct meant *m)
{
	return own_shape(m->text, m->size) ? 2 : ascii(m->text, m->size);
}

static bool agree(const struct profile *p, const struct keymaps *maps, const struct stroke *strokes,
                  size_t count, struct meant *out)
{
	struct meant other = {0};
	int best = -1;
	bool alone = false;
	for (int i = 0; i < LAYOUT_COUNT; i++) {
		if (!(p->layouts & LAYOUT_BIT(i)))
			continue;
		if (!translate(p, maps->of[i], strokes, count, &other)) {
			if (best < 0)
				memcpy(out->why, other.why, sizeof out->why);
			continue;
		}
		int r = rank(&other);
		if (r > best) {
			best = r;
			alone = true;
			*out = other;
		} else if (r == best &&
		           (other.size != out->size || memcmp(other.text, out->text, out->size) != 0)) {
			alone = false;
		}
	}
	if (best >= 0 && !alone)
		snprintf(out->why, sizeof out->why,
		         "the keyboard layout of this scanner is not known, and layouts differ in this code");
	return best >= 0 && alone;
}

/* Whole length of an element by its first two digits, 0 for variable (GS1 General Specifications 7.8.5). */
static size_t fixed_length(const char *two)
{
	static const struct {
		char first[3], last[3];
		size_t length;
	} table[] = {{"00", "00", 20}, {"01", "02", 16}, {"03", "03", 16}, {"04", "04", 18},
	             {"11", "19", 8},  {"20", "20", 4},  {"31", "36", 10}, {"41", "41", 16}};
	for (size_t i = 0; i < sizeof table / sizeof *table; i++)
		if (memcmp(two, table[i].first, 2) >= 0 && memcmp(two, table[i].last, 2) <= 0)
			return table[i].length;
	return 0;
}

/* Whether identifiers of variable length begin so (GS1 Barcode Syntax Dictionary). */
static bool family_exists(const char *two)
{
	static const char *const first[] = {"10", "21", "22", "23", "24", "25", "30", "37", "39", "40",
	                                    "42", "43", "70", "71", "72", "80", "81", "82", "90", "91",
	                                    "92", "93", "94", "95", "96", "97", "98", "99"};
	for (size_t i = 0; i < sizeof first / sizeof *first; i++)
		if (memcmp(two, first[i], 2) == 0)
			return true;
	return false;
}

static bool could_begin_element(const char *text, size_t size, size_t at)
{
	if (!digits_at(text, size, at, 2))
		return false;
	size_t fixed = fixed_length(text + at);
	if (!fixed && !family_exists(text + at))
		return false;
	return fixed ? digits_at(text, size, at, fixed) : at + 3 <= size;
}

static bool date_at(const char *text, size_t size, size_t at)
{
	return digits_at(text, size, at, 6) && memcmp(text + at + 2, "01", 2) >= 0 &&
	       memcmp(text + at + 2, "12", 2) <= 0 && memcmp(text + at + 4, "31", 2) <= 0;
}

static bool announces_gs1(const char *text, size_t size)
{
	if (!digits_at(text, size, 0, 2))
		return false;
	if (memcmp(text, "00", 2) == 0 || memcmp(text, "01", 2) == 0 || memcmp(text, "02", 2) == 0)
		return digits_at(text, size, 0, fixed_length(text));
	return (memcmp(text, "11", 2) == 0 || memcmp(text, "17", 2) == 0) && date_at(text, size, 2) &&
	       size > 8;
}

bool meaning_may_have_lost_gs(const char *text, size_t size, bool gs1)
{
	size_t at = 0, fixed;
	if (memchr(text, GS, size) || (!gs1 && !announces_gs1(text, size)) || own_shape(text, size))
		return false;
	while (digits_at(text, size, at, 2) && (fixed = fixed_length(text + at)) > 0 && at + fixed <= size)
		at += fixed;
	/* The identifier has two digits or more and its value one character or more. */
	for (at += 3; at < size; at++)
		if (could_begin_element(text, size, at))
			return true;
	return false;
}

static bool drop_around(const struct profile *p, struct meant *m)
{
	size_t before = strlen(p->prefix), behind = strlen(p->suffix);
	if (!p->around_known) {
		snprintf(m->why, sizeof m->why, "it is not known what this scanner sends round the data");
		return own_shape(m->text, m->size);
	}
	if (m->size < before + behind || memcmp(m->text, p->prefix, before) != 0 ||
	    memcmp(m->text + m->size - behind, p->suffix, behind) != 0) {
		snprintf(m->why, sizeof m->why,
		         "what this scanner always sends before or behind a code is absent: it may be cut");
		return false;
	}
	m->size -= before + behind;
	memmove(m->text, m->text + before, m->size);
	m->text[m->size] = '\0';
	return true;
}

static bool take_aim(const struct profile *p, struct meant *m)
{
	char head[WIRE_AIM_SIZE + 1] = "";
	if (m->size >= WIRE_AIM_SIZE)
		memcpy(head, m->text, WIRE_AIM_SIZE);
	if (p->aim == PROFILE_AIM_OFF)
		return true;
	if (wire_aim_valid(head)) {
		m->size -= WIRE_AIM_SIZE;
		memcpy(m->aim, head, sizeof head);
		memmove(m->text, m->text + WIRE_AIM_SIZE, m->size + 1);
		return true;
	}
	snprintf(
	    m->why, sizeof m->why,
	    "this scanner always sends an identifier (]C1), and here it is absent: the beginning may be cut");
	return p->aim == PROFILE_AIM_UNKNOWN;
}

/* ISO/IEC 15424: FNC1 in the first place, or DataBar. */
static bool gs1_symbol(const char *aim)
{
	static const char *const gs1[] = {"]C1", "]d2", "]Q3", "]e0", "]J1"};
	for (size_t i = 0; i < sizeof gs1 / sizeof *gs1; i++)
		if (strcmp(aim, gs1[i]) == 0)
			return true;
	return false;
}

static bool put_separators(const struct profile *p, struct meant *m)
{
	bool gs1 = gs1_symbol(m->aim) || (!m->aim[0] && announces_gs1(m->text, m->size));
	if (p->gs == PROFILE_GS_TEXT && gs1) {
		char *found = memchr(m->text, p->gs_text, m->size);
		if (found && profile_gs1_character(p->gs_text)) {
			snprintf(m->why, sizeof m->why,
			         "this scanner sends for the separator a character that data can hold");
			return false;
		}
		for (; found; found = memchr(found, p->gs_text, m->size - (size_t)(found - m->text)))
			*found = GS;
	}
	bool silent = p->gs == PROFILE_GS_DROPPED || p->gs == PROFILE_GS_UNKNOWN;
	if (silent && meaning_may_have_lost_gs(m->text, m->size, gs1_symbol(m->aim))) {
		snprintf(
		    m->why, sizeof m->why,
		    "it is a GS1 code in which a separator may have been left out, so that one element runs "
		    "into the next");
		return false;
	}
	return true;
}

static bool has_letter(const struct meant *m)
{
	for (size_t i = 0; i < m->size; i++)
		if (isalpha((unsigned char)m->text[i]))
			return true;
	return false;
}

bool meaning_read(const struct profile *p, const struct keymaps *maps, const struct stroke *strokes,
                  size_t count, struct meant *out)
{
	*out = (struct meant){0};
	if (!agree(p, maps, strokes, count, out) || !drop_around(p, out) || !take_aim(p, out))
		return false;
	if (out->size == 0) {
		snprintf(out->why, sizeof out->why, "nothing stands behind its identifier");
		return false;
	}
	if (p->letters == PROFILE_CASE_UNKNOWN && has_letter(out) && !own_shape(out->text, out->size)) {
		snprintf(out->why, sizeof out->why, "this scanner makes capitals and small letters the same");
		return false;
	}
	return put_separators(p, out);
}
