#include "drivers/handheld-typing.h"

#include <linux/input-event-codes.h>

enum { SHIFT, ALT_RIGHT, ALT_LEFT, CTRL };

void typing_init(struct typing *t, enum typing_end end, unsigned gap_ms, int64_t now_ms, bool settle)
{
	*t = (struct typing){.end = end, .gap_ms = gap_ms, .last_ms = now_ms, .skipping = settle};
}

void typing_clear(struct typing *t)
{
	t->count = 0;
	t->longest_ms = 0;
}

size_t typing_pending(const struct typing *t)
{
	return t->count + (t->digits > 0);
}

size_t typing_lost(struct typing *t, int64_t now_ms)
{
	size_t thrown = typing_pending(t);
	typing_init(t, t->end, t->gap_ms, now_ms, true);
	return thrown;
}

static int modifier_of(unsigned key)
{
	switch (key) {
	case KEY_LEFTSHIFT:
	case KEY_RIGHTSHIFT:
		return SHIFT;
	case KEY_RIGHTALT:
		return ALT_RIGHT;
	case KEY_LEFTALT:
		return ALT_LEFT;
	case KEY_LEFTCTRL:
	case KEY_RIGHTCTRL:
		return CTRL;
	default:
		return -1;
	}
}

static unsigned held(const struct typing *t)
{
	unsigned mods = (t->down[SHIFT] ? STROKE_SHIFT : 0) | (t->caps ? STROKE_CAPS : 0);
	if (t->down[ALT_RIGHT] || (t->down[ALT_LEFT] && t->down[CTRL]))
		return mods | STROKE_ALTGR;
	return mods | (t->down[ALT_LEFT] ? STROKE_ALT : 0) | (t->down[CTRL] ? STROKE_CTRL : 0);
}

static int keypad_digit(unsigned key)
{
	static const uint16_t keys[10] = {KEY_KP0, KEY_KP1, KEY_KP2, KEY_KP3, KEY_KP4,
	                                  KEY_KP5, KEY_KP6, KEY_KP7, KEY_KP8, KEY_KP9};
	for (int i = 0; i < 10; i++)
		if (keys[i] == key)
			return i;
	return -1;
}

static void push(struct typing *t, struct stroke s)
{
	if (t->count < TYPING_STROKES_MAX)
		t->strokes[t->count] = s;
	if (t->count <= TYPING_STROKES_MAX)
		t->count++;
}

static void alt_released(struct typing *t)
{
	if (t->digits > 0)
		push(t, (struct stroke){.number = (uint8_t)t->number});
	t->digits = t->number = 0;
}

static bool ends(const struct typing *t, unsigned key)
{
	bool enter = key == KEY_ENTER || key == KEY_KPENTER;
	switch (t->end) {
	case TYPING_END_ENTER:
	case TYPING_END_SILENCE:
		return enter;
	case TYPING_END_TAB:
	case TYPING_END_UNKNOWN:
		return enter || key == KEY_TAB;
	case TYPING_END_RAW:
		return false;
	}
	return false;
}

static enum typing_result pressed_while_skipping(struct typing *t, unsigned key)
{
	if (!ends(t, key)) {
		t->skipped++;
		return TYPING_NOTHING;
	}
	t->skipping = false;
	return TYPING_SKIPPED;
}

/* A character that was begun on the keypad and not let go of is none yet: the code may lack its separator. */
static enum typing_result ended(struct typing *t)
{
	bool begun = t->digits > 0;
	alt_released(t);
	if (begun)
		return TYPING_PARTIAL;
	return t->count > 0 ? TYPING_CODE : TYPING_NOTHING;
}

static enum typing_result pressed(struct typing *t, unsigned key)
{
	unsigned mods = held(t);
	int digit = keypad_digit(key);
	if (key == KEY_CAPSLOCK) {
		t->caps = !t->caps;
		return TYPING_NOTHING;
	}
	if (key == KEY_NUMLOCK) /* the keypad's keys are read by their code */
		return TYPING_NOTHING;
	if (t->skipping)
		return pressed_while_skipping(t, key);
	if ((mods & STROKE_ALT) && digit >= 0) {
		t->number = (t->number * 10 + (unsigned)digit) % 256;
		t->digits++;
		return TYPING_NOTHING;
	}
	if (ends(t, key))
		return ended(t);
	/* A line feed behind the Enter that ended the code: Ctrl+J. */
	if (t->count == 0 && key == KEY_J && (mods & STROKE_CTRL) && t->end != TYPING_END_RAW)
		return TYPING_NOTHING;
	push(t, (struct stroke){.key = (uint16_t)key, .mods = (uint8_t)mods});
	return TYPING_NOTHING;
}

enum typing_result typing_key(struct typing *t, unsigned key, int value, int64_t at_ms)
{
	int modifier = modifier_of(key);
	if (value == 2)
		return TYPING_NOTHING;
	if (typing_pending(t) && at_ms - t->last_ms > t->longest_ms)
		t->longest_ms = (unsigned)(at_ms - t->last_ms);
	t->last_ms = at_ms;
	if (modifier >= 0) {
		t->down[modifier] = value == 1;
		if (modifier == ALT_LEFT && value == 0)
			alt_released(t);
		return TYPING_NOTHING;
	}
	return value == 1 && key < UINT16_MAX ? pressed(t, key) : TYPING_NOTHING;
}

static int64_t patience_ms(const struct typing *t)
{
	if (t->skipping)
		return TYPING_SETTLE_MS;
	switch (t->end) {
	case TYPING_END_SILENCE:
	case TYPING_END_RAW:
		return t->gap_ms;
	case TYPING_END_ENTER:
	case TYPING_END_TAB:
	case TYPING_END_UNKNOWN:
		break;
	}
	return t->gap_ms > TYPING_UNFINISHED_MS ? t->gap_ms : TYPING_UNFINISHED_MS;
}

int64_t typing_due_ms(const struct typing *t)
{
	return t->skipping || typing_pending(t) ? t->last_ms + patience_ms(t) : -1;
}

enum typing_result typing_tick(struct typing *t, int64_t now_ms)
{
	int64_t due_ms = typing_due_ms(t);
	if (due_ms < 0 || now_ms < due_ms)
		return TYPING_NOTHING;
	if (t->skipping) {
		t->skipping = false;
		return t->skipped > 0 ? TYPING_SKIPPED : TYPING_NOTHING;
	}
	alt_released(t);
	return t->end == TYPING_END_SILENCE || t->end == TYPING_END_RAW ? TYPING_CODE : TYPING_PARTIAL;
}
