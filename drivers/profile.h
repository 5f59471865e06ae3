/* How one scanner sends: what the scanner-check sheet taught about it, and the file that keeps it.
 *
 * The file is strict `name = value` lines (base/ini.h) under [scanner]:
 *
 *     layout = se no dk fi        the layouts it can be set to, by all that was seen; one is certain, and so
 *                                 are several that type everything a GS1 code can hold alike
 *     case = typed                typed | swapped (as with Caps Lock on) | unknown (capitals and small
 * letters come out the same) gs = ctrl KEY_RIGHTBRACE    the separator 0x1D: modifiers (shift altgr ctrl alt)
 * and a key's name from linux/input-event-codes.h; or: alt 0029 (on the keypad) | text 7c (a character that
 * stands for it, in hex) | dropped | unknown aim = on                    on | off | unknown: whether ]C1 and
 * the like stand before the data prefix = 02                 what stands before everything, and behind the
 * data before the ending key, suffix =                    in hex; empty for nothing; or unknown end = enter
 * enter | tab | none | unknown gap_ms = 150                a silence longer than this is no part of a code,
 * 20 to 2000
 *
 * A scanner without a file is one about which nothing is known (profile_unknown).
 */
#ifndef BANDTALLY_DRIVERS_PROFILE_H
#define BANDTALLY_DRIVERS_PROFILE_H

#include <stdbool.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"
#include "drivers/handheld-typing.h"
#include "drivers/keymap.h"

enum profile_gs {
	PROFILE_GS_UNKNOWN,
	PROFILE_GS_CHORD,   /* one key, with `gs_mods` held */
	PROFILE_GS_ALT,     /* Alt+0029 */
	PROFILE_GS_TEXT,    /* the character `gs_text` */
	PROFILE_GS_DROPPED, /* it is not sent */
};

enum profile_case {
	PROFILE_CASE_TYPED,
	PROFILE_CASE_SWAPPED,
	PROFILE_CASE_UNKNOWN,
};

enum profile_aim {
	PROFILE_AIM_UNKNOWN,
	PROFILE_AIM_ON,
	PROFILE_AIM_OFF,
};

#define PROFILE_AROUND_MAX 16
#define PROFILE_GAP_MIN_MS 20
#define PROFILE_GAP_MAX_MS 2000
#define PROFILE_GAP_MS 150

struct profile {
	unsigned layouts; /* LAYOUT_BIT()s, at least one */
	enum profile_case letters;
	enum profile_gs gs;
	uint16_t gs_key;
	uint8_t gs_mods;
	char gs_text; /* printable ASCII */
	enum profile_aim aim;
	bool around_known;
	char prefix[PROFILE_AROUND_MAX + 1], suffix[PROFILE_AROUND_MAX + 1]; /* no NUL inside */
	enum typing_end end;                                                 /* not RAW */
	unsigned gap_ms;
};

/* The tables of the layouts that somebody needed; an all-zero struct has none. */
struct keymaps {
	struct keymap *of[LAYOUT_COUNT];
};
int keymaps_load(struct keymaps *maps, unsigned layouts, struct error *e); /* 0 or keymap_init's */
void keymaps_deinit(struct keymaps *maps);

/* Nothing is known: any of `layouts`, no form of the separator. */
struct profile profile_unknown(unsigned layouts);

/* 0; -ENOENT where there is no such file; another negative errno. `e` in both cases. */
int profile_read(const char *path, struct profile *out, struct error *e);

/* Appends the file's text. 0 or -ENOMEM. */
int profile_write(const struct profile *p, struct buf *out);

/* Appends what is undecided, in words and separated by "; ". The number of such things, or -ENOMEM. `maps`
 * must hold the profile's layouts. */
int profile_undecided(const struct profile *p, const struct keymaps *maps, struct buf *out);

/* Appends what is known, in words: "layout de; separator as Ctrl+KEY_RIGHTBRACE; …". 0 or -ENOMEM. */
int profile_describe(const struct profile *p, struct buf *out);

/* Whether a GS1 code can hold `c` as data (General Specifications, character set 82). */
bool profile_gs1_character(char c);

#endif
