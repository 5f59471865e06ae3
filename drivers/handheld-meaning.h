/* What the keys of one code mean, or why that cannot be said. Pure.
 *
 * Nothing is guessed. Where a profile leaves several layouts, the code is read in each; it counts when all
 * give the same text, and otherwise only in two cases that cannot mislead:
 *   - one reading has the shape of a code that this house prints (station/code/own-codes.h: BT, two letters,
 *     digits; or the item label 91P…, 91R…), whose check digits the daemon then checks;
 *   - all others hold characters beyond ASCII, which no GS1, HIBC or house code can.
 * Where the separator may have been left out and the text is GS1, it is not sent if it could be split in more
 * than one way.
 */
#ifndef BANDTALLY_DRIVERS_HANDHELD_MEANING_H
#define BANDTALLY_DRIVERS_HANDHELD_MEANING_H

#include <stdbool.h>
#include <stddef.h>

#include "base/wire.h"
#include "drivers/profile.h"

struct meant {
	char aim[WIRE_AIM_SIZE + 1]; /* empty where none was sent */
	char text[TYPING_STROKES_MAX * 4];
	size_t size;
	char why[WIRE_TEXT_MAX + 1]; /* where it cannot be said: a reason, never the data */
};

/* `maps` holds the profile's layouts. True: `aim`, `text` and `size` are what was meant. False: `why`. */
bool meaning_read(const struct profile *p, const struct keymaps *maps, const struct stroke *strokes,
                  size_t count, struct meant *out);

/* The character of one stroke in a layout, with KEYMAP_DEAD where it waits for the next; 0 for none. Ctrl
 * with a letter or one of @[\]^_ is a control character. `swapped`: as with Caps Lock on. */
uint32_t stroke_character(const struct keymap *map, struct stroke s, bool swapped);

/* Whether GS1 data without any separator may have lost one: behind an element of variable length, further
 * text could be the next element. `gs1`: the symbol says that it is GS1; otherwise only what announces itself
 * (00, 01, 02 with their digits, or two dates) is looked at. Lengths: GS1 General Specifications, section
 * 7.8.5, 'element strings with predefined length using application identifiers'. */
bool meaning_may_have_lost_gs(const char *text, size_t size, bool gs1);

#endif
