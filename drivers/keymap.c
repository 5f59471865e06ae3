#include "drivers/keymap.h"

#include <errno.h>
#include <string.h>
#include <xkbcommon/xkbcommon.h>

/* xkb counts keys from 8 for historical reasons. */
#define XKB_FIRST 8

static const char *const names[] = {
#define X(name) #name,
    LAYOUT_LIST(X)
#undef X
};

const char *layout_name(enum layout layout)
{
	return names[layout];
}

int layout_find(const char *name)
{
	for (int i = 0; i < LAYOUT_COUNT; i++)
		if (strcmp(names[i], name) == 0)
			return i;
	return -ENOENT;
}

static uint32_t dead_character(xkb_keysym_t sym)
{
	switch (sym) {
	case XKB_KEY_dead_grave:
		return '`';
	case XKB_KEY_dead_circumflex:
		return '^';
	case XKB_KEY_dead_tilde:
		return '~';
	case XKB_KEY_dead_acute:
		return 0xb4;
	case XKB_KEY_dead_diaeresis:
		return 0xa8;
	case XKB_KEY_dead_cedilla:
		return 0xb8;
	default:
		return 0;
	}
}

static uint32_t character_of(xkb_keysym_t sym)
{
	uint32_t dead = dead_character(sym);
	return dead ? dead | KEYMAP_DEAD : xkb_keysym_to_utf32(sym);
}

/* Mod2 is Num Lock and Mod5 the third level in every layout of the evdev rules. */
static void fill(struct keymap *map, struct xkb_keymap *xkb, struct xkb_state *state)
{
	static const char *const modifiers[] = {XKB_MOD_NAME_SHIFT, "Mod5", XKB_MOD_NAME_CAPS};
	xkb_mod_mask_t bit[3], num = 1u << xkb_keymap_mod_get_index(xkb, XKB_MOD_NAME_NUM);
	for (int i = 0; i < 3; i++)
		bit[i] = 1u << xkb_keymap_mod_get_index(xkb, modifiers[i]);
	for (unsigned held = 0; held < 8; held++) {
		xkb_mod_mask_t down = (held & KEYMAP_SHIFT ? bit[0] : 0) | (held & KEYMAP_ALTGR ? bit[1] : 0);
		xkb_mod_mask_t locked = num | (held & KEYMAP_CAPS ? bit[2] : 0);
		xkb_state_update_mask(state, down, 0, locked, 0, 0, 0);
		for (unsigned key = 0; key < KEYMAP_KEYS; key++) {
			xkb_keysym_t sym = xkb_state_key_get_one_sym(state, key + XKB_FIRST);
			map->character[key][held] = character_of(sym);
		}
	}
}

int keymap_init(struct keymap *map, enum layout layout, struct error *e)
{
	struct xkb_rule_names rules = {
	    .rules = "evdev", .model = "pc105", .layout = names[layout], .variant = "", .options = ""};
	struct xkb_context *context = xkb_context_new(XKB_CONTEXT_NO_ENVIRONMENT_NAMES);
	struct xkb_keymap *xkb =
	    context ? xkb_keymap_new_from_names(context, &rules, XKB_KEYMAP_COMPILE_NO_FLAGS) : NULL;
	struct xkb_state *state = xkb ? xkb_state_new(xkb) : NULL;
	int r = 0;
	*map = (struct keymap){0};
	if (state)
		fill(map, xkb, state);
	else
		r = error_set(e, -ENOENT, "keyboard layout %s: cannot be read: install the package xkb-data",
		              names[layout]);
	xkb_state_unref(state);
	xkb_keymap_unref(xkb);
	xkb_context_unref(context);
	return r;
}

/* The key that types `character` with the fewest modifiers, and its entry in the other table. */
static bool same_place(const struct keymap *a, const struct keymap *b, uint32_t character)
{
	static const unsigned nearest[] = {0, KEYMAP_SHIFT, KEYMAP_ALTGR, KEYMAP_SHIFT | KEYMAP_ALTGR};
	for (size_t i = 0; i < sizeof nearest / sizeof *nearest; i++)
		for (unsigned key = 0; key < KEYMAP_KEYS; key++)
			if (a->character[key][nearest[i]] == character)
				return b->character[key][nearest[i]] == character;
	return true; /* a scanner of this layout cannot type it */
}

bool keymap_alike(const struct keymap *a, const struct keymap *b)
{
	static const char set[] = "!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_"
	                          "abcdefghijklmnopqrstuvwxyz]";
	for (const char *c = set; *c; c++)
		if (!same_place(a, b, (uint32_t)*c) || !same_place(b, a, (uint32_t)*c))
			return false;
	return true;
}
