/* What each key of a keyboard types, for the layouts that scanners can be set to.
 *
 * A scanner in keyboard mode does not send characters: it sends the keys that would type them on a keyboard
 * of the layout it was set to. The tables come from the system's xkb data by way of libxkbcommon and are
 * never typed by hand, so they are as good as what every desktop of the machine uses. Once made, a table is
 * plain memory and needs neither files nor the library.
 */
#ifndef BANDTALLY_DRIVERS_KEYMAP_H
#define BANDTALLY_DRIVERS_KEYMAP_H

#include <stdbool.h>
#include <stdint.h>

#include "base/error.h"

#define LAYOUT_LIST(X) X(us) X(gb) X(de) X(fr) X(ch) X(es) X(it) X(se) X(no) X(dk) X(fi) X(pt)

enum layout {
#define X(name) LAYOUT_##name,
	LAYOUT_LIST(X)
#undef X
	    LAYOUT_COUNT
};
#define LAYOUT_BIT(layout) (1u << (layout))
#define LAYOUT_ALL ((1u << LAYOUT_COUNT) - 1)

/* "us" for LAYOUT_us: the name that xkb gives it. Static. */
const char *layout_name(enum layout layout);
/* The layout of that name, or -ENOENT. */
int layout_find(const char *name);

/* What is held down, as bits; they index a table. */
#define KEYMAP_SHIFT 1u
#define KEYMAP_ALTGR 2u
#define KEYMAP_CAPS 4u /* Caps Lock is on */

#define KEYMAP_KEYS 256         /* evdev key codes 0..255 (linux/input-event-codes.h) */
#define KEYMAP_DEAD 0x80000000u /* it waits for the next key; a space makes it the character itself */

struct keymap {
	/* The Unicode character, with KEYMAP_DEAD where it waits; 0 for none. The keypad types its digits. */
	uint32_t character[KEYMAP_KEYS][8];
};

/* Reads xkb data from the system's files, about 4 ms. 0, -ENOENT where xkb does not know the layout (is
 * xkb-data installed?), -ENOMEM. */
int keymap_init(struct keymap *map, enum layout layout, struct error *e);

/* Whether a scanner of layout `a` can be read as one of layout `b`: every character that a GS1 code can hold
 * (General Specifications, character set 82), and ']', is on the same key where each has it nearest. */
bool keymap_alike(const struct keymap *a, const struct keymap *b);

#endif
