#include "drivers/profile.h"

#include <errno.h>
#include <libevdev/libevdev.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/ini.h"

int keymaps_load(struct keymaps *maps, unsigned layouts, struct error *e)
{
	for (int i = 0; i < LAYOUT_COUNT; i++) {
		if (!(layouts & LAYOUT_BIT(i)) || maps->of[i])
			continue;
		maps->of[i] = calloc(1, sizeof *maps->of[i]);
		if (!maps->of[i])
			return error_set(e, -ENOMEM, "no memory for keyboard layouts: end other programs");
		int r = keymap_init(maps->of[i], (enum layout)i, e);
		if (r < 0)
			return r;
	}
	return 0;
}

void keymaps_deinit(struct keymaps *maps)
{
	for (int i = 0; i < LAYOUT_COUNT; i++)
		free(maps->of[i]);
	*maps = (struct keymaps){0};
}

struct profile profile_unknown(unsigned layouts)
{
	return (struct profile){
	    .layouts = layouts, .around_known = true, .end = TYPING_END_UNKNOWN, .gap_ms = PROFILE_GAP_MS};
}

bool profile_gs1_character(char c)
{
	return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
	       (c && strchr("!\"%&'()*+,-./:;<=>?_", c));
}

/* Words of a value, by number. */
static const char *const gs_words[] = {[PROFILE_GS_UNKNOWN] = "unknown", [PROFILE_GS_DROPPED] = "dropped"};
static const char *const case_words[] = {"typed", "swapped", "unknown"};
static const char *const aim_words[] = {"unknown", "on", "off"};
static const char *const end_words[] = {"enter", "tab", "none", "unknown"};
static const struct {
	const char *word;
	uint8_t bit;
} mod_words[] = {
    {"shift", STROKE_SHIFT}, {"altgr", STROKE_ALTGR}, {"ctrl", STROKE_CTRL}, {"alt", STROKE_ALT}};

static int find(const char *const *words, int count, const char *value, const char *wanted, struct error *e)
{
	for (int i = 0; i < count; i++)
		if (words[i] && strcmp(words[i], value) == 0)
			return i;
	return error_set(e, -EINVAL, "\"%.60s\" is not known here: write %s", value, wanted);
}

static int read_layouts(struct profile *p, const char *value, struct error *e)
{
	char copy[80], *rest = copy, *word;
	snprintf(copy, sizeof copy, "%s", value);
	p->layouts = 0;
	while ((word = strsep(&rest, " "))) {
		int i = layout_find(word);
		if (*word && i < 0)
			return error_set(
			    e, -EINVAL,
			    "no layout \"%.20s\": write some of us gb de fr ch es it se no dk fi pt", word);
		if (*word)
			p->layouts |= LAYOUT_BIT(i);
	}
	return p->layouts ? 0 : error_set(e, -EINVAL, "no layout: name one");
}

/* Two hex digits for each byte, at most `room` - 1 of them, none of them 00. */
static int read_hex(const char *value, char *out, size_t room, struct error *e)
{
	size_t n = strlen(value) / 2;
	unsigned byte;
	if (strlen(value) % 2 || n >= room)
		return error_set(e, -EINVAL,
		                 "\"%.60s\": write two hexadecimal digits for each of at most %zu bytes",
		                 value, room - 1);
	for (size_t i = 0; i < n; i++) {
		char two[3] = {value[2 * i], value[2 * i + 1], '\0'};
		if (strspn(two, "0123456789abcdef") != 2 || sscanf(two, "%x", &byte) != 1 || byte == 0)
			return error_set(e, -EINVAL,
			                 "\"%.60s\": write hexadecimal digits 0-9 and a-f, not 00", value);
		out[i] = (char)byte;
	}
	out[n] = '\0';
	return 0;
}

static int read_chord(struct profile *p, const char *value, struct error *e)
{
	char copy[80], *rest = copy, *word;
	snprintf(copy, sizeof copy, "%s", value);
	p->gs_mods = 0;
	while ((word = strsep(&rest, " "))) {
		int key = rest ? -1 : libevdev_event_code_from_name(EV_KEY, word);
		size_t i = 0, n = sizeof mod_words / sizeof *mod_words;
		while (rest && i < n && strcmp(mod_words[i].word, word))
			i++;
		if ((rest && i == n) || (!rest && (key <= 0 || key > KEY_MAX)))
			return error_set(
			    e, -EINVAL,
			    "\"%.60s\" is no separator: write e.g. \"ctrl KEY_RIGHTBRACE\", \"KEY_F8\", "
			    "\"alt 0029\", \"text 7c\", \"dropped\" or \"unknown\"",
			    value);
		if (rest)
			p->gs_mods |= mod_words[i].bit;
		else
			p->gs_key = (uint16_t)key;
	}
	p->gs = PROFILE_GS_CHORD;
	return 0;
}

static int read_gs(struct profile *p, const char *value, struct error *e)
{
	char text[2] = "";
	for (enum profile_gs i = PROFILE_GS_UNKNOWN; i <= PROFILE_GS_DROPPED; i++)
		if (gs_words[i] && strcmp(gs_words[i], value) == 0) {
			p->gs = i;
			return 0;
		}
	if (strcmp(value, "alt 0029") == 0) {
		p->gs = PROFILE_GS_ALT;
		return 0;
	}
	if (strncmp(value, "text ", 5) != 0)
		return read_chord(p, value, e);
	int r = read_hex(value + 5, text, sizeof text, e);
	if (r == 0 && (text[0] <= 0x20 || text[0] > 0x7e))
		r = error_set(e, -EINVAL, "\"%.60s\": write a character that can be seen, 21 to 7e", value);
	p->gs = PROFILE_GS_TEXT;
	p->gs_text = text[0];
	return r;
}

static int read_around(struct profile *p, const char *value, char out[PROFILE_AROUND_MAX + 1],
                       struct error *e)
{
	*out = '\0';
	if (strcmp(value, "unknown") == 0) {
		p->around_known = false;
		return 0;
	}
	return read_hex(value, out, PROFILE_AROUND_MAX + 1, e);
}

static int read_gap(struct profile *p, const char *value, struct error *e)
{
	char *end;
	unsigned long v = strtoul(value, &end, 10);
	if (*end || strspn(value, "0123456789") == 0 || v < PROFILE_GAP_MIN_MS || v > PROFILE_GAP_MAX_MS)
		return error_set(e, -EINVAL, "\"%.60s\": write whole milliseconds, %d to %d", value,
		                 PROFILE_GAP_MIN_MS, PROFILE_GAP_MAX_MS);
	p->gap_ms = (unsigned)v;
	return 0;
}

static int on_value(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct profile *p = context;
	int r;
	if (strcmp(section, "scanner") != 0)
		return error_set(e, -EINVAL, "section [%.40s] is not known here: write [scanner]", section);
	if (strcmp(name, "layout") == 0)
		return read_layouts(p, value, e);
	if (strcmp(name, "gs") == 0)
		return read_gs(p, value, e);
	if (strcmp(name, "prefix") == 0)
		return read_around(p, value, p->prefix, e);
	if (strcmp(name, "suffix") == 0)
		return read_around(p, value, p->suffix, e);
	if (strcmp(name, "gap_ms") == 0)
		return read_gap(p, value, e);
	if (strcmp(name, "case") == 0) {
		r = find(case_words, 3, value, "typed, swapped or unknown", e);
		p->letters = r < 0 ? p->letters : (enum profile_case)r;
	} else if (strcmp(name, "aim") == 0) {
		r = find(aim_words, 3, value, "on, off or unknown", e);
		p->aim = r < 0 ? p->aim : (enum profile_aim)r;
	} else if (strcmp(name, "end") == 0) {
		r = find(end_words, 4, value, "enter, tab, none or unknown", e);
		p->end = r < 0 ? p->end : (enum typing_end)r;
	} else {
		r = error_set(
		    e, -EINVAL,
		    "\"%.40s\" is not known here: write layout, case, gs, aim, prefix, suffix, end or "
		    "gap_ms",
		    name);
	}
	return r < 0 ? r : 0;
}

int profile_read(const char *path, struct profile *out, struct error *e)
{
	*out = profile_unknown(LAYOUT_ALL);
	return ini_read(path, on_value, out, e);
}

static int write_hex(struct buf *out, const char *name, bool known, const char *text)
{
	int r = buf_printf(out, "%s = %s", name, known ? "" : "unknown");
	for (; known && *text && r == 0; text++)
		r = buf_printf(out, "%02x", (unsigned char)*text);
	return r ? r : buf_add_text(out, "\n");
}

static int write_chord(struct buf *out, const struct profile *p, const char *between)
{
	int r = 0;
	const char *key = libevdev_event_code_get_name(EV_KEY, p->gs_key);
	for (size_t i = 0; i < sizeof mod_words / sizeof *mod_words && r == 0; i++)
		if (p->gs_mods & mod_words[i].bit)
			r = buf_printf(out, "%s%s", mod_words[i].word, between);
	return r ? r : buf_add_text(out, key ? key : "KEY_UNKNOWN");
}

static int write_gs(struct buf *out, const struct profile *p)
{
	switch (p->gs) {
	case PROFILE_GS_CHORD:
		return write_chord(out, p, " ");
	case PROFILE_GS_ALT:
		return buf_add_text(out, "alt 0029");
	case PROFILE_GS_TEXT:
		return buf_printf(out, "text %02x", (unsigned char)p->gs_text);
	case PROFILE_GS_UNKNOWN:
	case PROFILE_GS_DROPPED:
		return buf_add_text(out, gs_words[p->gs]);
	}
	return -EINVAL;
}

static int write_layouts(struct buf *out, unsigned layouts)
{
	int r = 0;
	for (int i = 0; i < LAYOUT_COUNT && r == 0; i++)
		if (layouts & LAYOUT_BIT(i))
			r = buf_printf(out, "%s%s", layouts & (LAYOUT_BIT(i) - 1) ? " " : "",
			               layout_name((enum layout)i));
	return r;
}

int profile_write(const struct profile *p, struct buf *out)
{
	int r = buf_add_text(out, "[scanner]\nlayout = ");
	if (r == 0)
		r = write_layouts(out, p->layouts);
	if (r == 0)
		r = buf_printf(out, "\ncase = %s\ngs = ", case_words[p->letters]);
	if (r == 0)
		r = write_gs(out, p);
	if (r == 0)
		r = buf_printf(out, "\naim = %s\n", aim_words[p->aim]);
	if (r == 0)
		r = write_hex(out, "prefix", p->around_known, p->prefix);
	if (r == 0)
		r = write_hex(out, "suffix", p->around_known, p->suffix);
	return r ? r : buf_printf(out, "end = %s\ngap_ms = %u\n", end_words[p->end], p->gap_ms);
}

static int say(struct buf *out, int *count, bool undecided, const char *words)
{
	if (!undecided)
		return 0;
	return buf_printf(out, "%s%s", (*count)++ ? "; " : "", words);
}

static bool layouts_alike(const struct profile *p, const struct keymaps *maps)
{
	for (int a = 0; a < LAYOUT_COUNT; a++)
		for (int b = a + 1; b < LAYOUT_COUNT; b++)
			if ((p->layouts & LAYOUT_BIT(a)) && (p->layouts & LAYOUT_BIT(b)) &&
			    !keymap_alike(maps->of[a], maps->of[b]))
				return false;
	return true;
}

int profile_undecided(const struct profile *p, const struct keymaps *maps, struct buf *out)
{
	bool in_data = p->gs == PROFILE_GS_TEXT && profile_gs1_character(p->gs_text);
	int count = 0;
	int r = say(out, &count, !layouts_alike(p, maps), "which keyboard layout it types");
	if (r == 0)
		r = say(out, &count, p->letters == PROFILE_CASE_UNKNOWN,
		        "whether a letter is a capital or a small one");
	if (r == 0)
		r = say(out, &count, p->gs == PROFILE_GS_UNKNOWN, "how it sends the separator GS");
	if (r == 0)
		r = say(out, &count, p->gs == PROFILE_GS_DROPPED,
		        "where a separator GS stood, for it leaves them out");
	if (r == 0)
		r = say(
		    out, &count, in_data,
		    "whether a separator GS or a character of the data was meant, for it sends one that data "
		    "can hold");
	if (r == 0)
		r = say(out, &count, p->aim == PROFILE_AIM_UNKNOWN, "whether it sends the identifier (]C1)");
	if (r == 0)
		r = say(out, &count, !p->around_known, "what it sends before and behind the data");
	if (r == 0)
		r = say(out, &count, p->end == TYPING_END_UNKNOWN, "how it ends a code");
	return r < 0 ? r : count;
}

int profile_describe(const struct profile *p, struct buf *out)
{
	static const char *const ends[] = {"ends with Enter", "ends with Tab", "ends with silence",
	                                   "its end is unknown"};
	int r = buf_add_text(out, "layout ");
	if (r == 0)
		r = write_layouts(out, p->layouts);
	if (r == 0)
		r = buf_printf(out, "; case %s; separator ", case_words[p->letters]);
	if (r == 0)
		r = write_gs(out, p);
	return r ? r : buf_printf(out, "; identifier %s; %s", aim_words[p->aim], ends[p->end]);
}
