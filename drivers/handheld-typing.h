/* Where a code begins and ends in the keys that a scanner types. Pure: times are arguments.
 *
 * Keys go in one by one; a code comes out as strokes: each key with what was held down while it was pressed.
 * What they mean is handheld-meaning.h's. A code ends with its ending key (Enter or Tab) or, for a scanner
 * that is known to send none, with silence. Keys without their end are never a code: they are a partial one,
 * which is thrown away and said.
 */
#ifndef BANDTALLY_DRIVERS_HANDHELD_TYPING_H
#define BANDTALLY_DRIVERS_HANDHELD_TYPING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define STROKE_SHIFT 1u /* as KEYMAP_SHIFT, _ALTGR, _CAPS */
#define STROKE_ALTGR 2u /* the right Alt key, or Ctrl and the left one */
#define STROKE_CAPS 4u
#define STROKE_CTRL 8u
#define STROKE_ALT 16u

struct stroke {
	uint16_t key;   /* evdev key code; 0: `number` was typed on the keypad while Alt was down */
	uint8_t mods;   /* STROKE_… */
	uint8_t number; /* Alt+0029 is 29 */
};

enum typing_end {
	TYPING_END_ENTER,
	TYPING_END_TAB,
	TYPING_END_SILENCE, /* the scanner sends no ending key */
	TYPING_END_UNKNOWN, /* Enter and Tab both end a code; silence does not */
	TYPING_END_RAW,     /* for learning: every key is a stroke, silence ends */
};

#define TYPING_STROKES_MAX 4200   /* longer than a driver's line can carry */
#define TYPING_UNFINISHED_MS 1000 /* a code whose end has not come by then is a partial one */
#define TYPING_SETTLE_MS 250      /* silence that must be seen before keys are believed */

enum typing_result {
	TYPING_NOTHING,
	TYPING_CODE,    /* `strokes` are a whole code */
	TYPING_PARTIAL, /* `strokes` are the beginning of a code whose end did not come */
	TYPING_SKIPPED, /* `skipped` keys were passed over until a code could begin */
};

struct typing {
	enum typing_end end;
	unsigned gap_ms; /* silence that ends a code, for SILENCE and RAW */

	struct stroke strokes[TYPING_STROKES_MAX];
	size_t count;        /* more than TYPING_STROKES_MAX were typed where `count` says so */
	int64_t last_ms;     /* of the last key that went down or up */
	unsigned longest_ms; /* the longest time between two keys of this code */
	size_t skipped;

	bool skipping;
	bool down[4]; /* Shift, right Alt, left Alt, Ctrl: one of them */
	bool caps;
	unsigned digits, number; /* typed on the keypad while Alt is down */
};

/* Begins to listen at `now_ms`. Keys that come before TYPING_SETTLE_MS of silence are the end of something
 * that began before, and are passed over; with `settle` false every key counts from the first. */
void typing_init(struct typing *t, enum typing_end end, unsigned gap_ms, int64_t now_ms, bool settle);

/* A key went down (1), up (0) or was repeated (2, passed over). Call typing_tick() with the same time first.
 * TYPING_NOTHING, TYPING_CODE, TYPING_SKIPPED, or TYPING_PARTIAL where Alt was still down at the ending key. */
enum typing_result typing_key(struct typing *t, unsigned key, int value, int64_t at_ms);

/* The time is now `now_ms`. Anything but TYPING_KEY's own results. */
enum typing_result typing_tick(struct typing *t, int64_t now_ms);

/* When typing_tick() has to be called next if no key comes, -1 for never. */
int64_t typing_due_ms(const struct typing *t);

/* The strokes have been dealt with. */
void typing_clear(struct typing *t);

/* Keys were lost at `now_ms`: everything up to the next ending key or silence is thrown away. Returns how
 * many strokes of a code were thrown away at once. */
size_t typing_lost(struct typing *t, int64_t now_ms);

/* How many keys of an unfinished code are held. */
size_t typing_pending(const struct typing *t);

#endif
