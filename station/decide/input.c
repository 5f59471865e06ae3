#include "decide/input.h"

#include <stdio.h>
#include <string.h>

static void thing_of_line(struct input *in, const struct station *st, const struct line *line)
{
	struct thing *th = &in->thing;
	in->act = role_has(line->role, TRAIT_LIST) ? ACT_TRAY : ACT_THING;
	in->line = line;
	snprintf(th->line, sizeof th->line, "%s", line->key);
	snprintf(th->name, sizeof th->name, "%s", line->name);
	th->role = (uint8_t)line->role;
	th->single_use = line->single_use != 0;
	th->rolls_on = line->rolls_on != 0;
	th->shows_on_xray = line->shows_on_xray != 0;
	th->identity_kind = (uint8_t)line->identity;
	for (int i = 0; i < LINE_CONTENTS_MAX && line->contents[i].key[0]; i++)
		in->parts[i] = catalogue_by_key(&st->catalogue, line->contents[i].key);
}

/* What tells this item from every other of its line, where the code says. */
static void identity_of(struct thing *th, const struct code *code)
{
	if (code->giai[0])
		snprintf(th->identity, sizeof th->identity, "8004:%s", code->giai);
	else if (code->grai[0])
		snprintf(th->identity, sizeof th->identity, "8003:%s", code->grai);
	else if (code->serial[0])
		snprintf(th->identity, sizeof th->identity, "%s:%s", code->product, code->serial);
	else if (code->kind == CODE_PLAIN && th->identity_kind == IDENTITY_MARK)
		snprintf(th->identity, sizeof th->identity, "%.*s", IDENTITY_MAX - 1, code->plain);
	if (!th->identity[0])
		th->identity_kind = IDENTITY_NONE;
	else if (th->identity_kind == IDENTITY_NONE)
		th->identity_kind = IDENTITY_PACK; /* a serial number that the catalogue does not speak of */
}

static void from_item_label(struct input *in, const struct station *st, const struct code *code,
                            const struct batch *batch)
{
	const struct line *line = batch ? catalogue_by_key(&st->catalogue, batch->line) : NULL;
	if (!line) {
		in->act = ACT_UNKNOWN;
		in->what = SAY_CODE_OF_STORES;
		return;
	}
	thing_of_line(in, st, line);
	snprintf(in->thing.lot, sizeof in->thing.lot, "%s", batch->lot);
	in->thing.expiry = batch->expiry;
	in->thing.identity_kind = IDENTITY_PACK; /* a label on the wrapper, whatever the line has itself */
	if (code->own.station == st->number)
		snprintf(in->thing.identity, sizeof in->thing.identity, "item:%08d", (int)code->own.number);
	else
		snprintf(in->thing.identity, sizeof in->thing.identity, "item-of-%02d:%08d",
		         code->own.station, (int)code->own.number);
}

static int is_of_one_station(enum own_kind kind)
{
	return kind == OWN_SLIP || kind == OWN_CASE || kind == OWN_ITEM;
}

static void from_own(struct input *in, const struct station *st, const struct code *code,
                     const struct batch *batch)
{
	const struct own_code *own = &code->own;
	in->card_room = own->room;
	in->number = own->number;
	in->copy = own->copy;
	in->proof = own->proof;
	if (strcmp(own->site, st->site) != 0) {
		in->act = ACT_FOREIGN;
		snprintf(in->text, sizeof in->text, "%s", own->site);
		return;
	}
	if (own->practice && !st->practice) {
		in->act = ACT_FOREIGN;
		in->what = SAY_SCAN_OF_PRACTICE;
		return;
	}
	/* What it is called here may be something else there: only its station's list can say what a label is. */
	if (is_of_one_station(own->kind) && own->station != st->number && !(own->kind == OWN_ITEM && batch)) {
		in->act = ACT_FOREIGN;
		in->number = own->station;
		in->what = own->kind == OWN_ITEM ? SAY_CODE_OF_STORES : SAY_NONE;
		return;
	}
	switch (own->kind) {
	case OWN_CARD:
		in->act = own_card_name(own->meaning)[0] ? ACT_CARD : ACT_UNKNOWN;
		in->card = own->meaning;
		in->what = in->act == ACT_UNKNOWN ? SAY_CODE_OF_NO_CARD : SAY_NONE;
		return;
	case OWN_DIGIT:
		in->act = ACT_DIGIT;
		in->digit = own->digit;
		return;
	case OWN_BADGE:
		in->act = ACT_BADGE;
		return;
	case OWN_SLIP:
		in->act = ACT_SLIP;
		return;
	case OWN_CASE:
		in->act = ACT_CASE_LABEL;
		return;
	case OWN_ITEM:
		from_item_label(in, st, code, batch);
		return;
	case OWN_TRAY: {
		char text[24];
		struct code tray = {.kind = CODE_PLAIN};
		snprintf(text, sizeof text, "tray:%06d", (int)own->number);
		memcpy(tray.plain, text, sizeof text);
		const struct line *line = catalogue_by_code(&st->catalogue, &tray);
		if (line) {
			thing_of_line(in, st, line);
			return;
		}
		in->act = ACT_UNKNOWN;
		in->what = SAY_CODE_OF_TRAY;
		return;
	}
	case OWN_PAPER_SHEET:
		in->act = ACT_PAPER_SHEET;
		return;
	case OWN_SCANNER_CHECK:
		in->act = ACT_UNKNOWN;
		in->what = SAY_CODE_OF_CHECK;
		return;
	case OWN_NONE:
		break;
	}
	in->act = ACT_UNKNOWN;
}

int code_is_half(const struct code *code)
{
	return code->wants[0] && (!code->product[0] || code->kind == CODE_HIBC);
}

void input_from_code(struct input *in, const struct station *st, const struct code *code,
                     const struct batch *batch)
{
	if (code->patient) {
		in->act = ACT_PATIENT;
		return;
	}
	if (code->kind == CODE_OWN) {
		from_own(in, st, code, batch);
		return;
	}
	const struct line *line = catalogue_packs_by_code(&st->catalogue, code, &in->packs);
	if (line) {
		thing_of_line(in, st, line);
		memcpy(in->thing.lot, code->lot, sizeof in->thing.lot);
		in->thing.expiry = code->expiry;
		identity_of(&in->thing, code);
		return;
	}
	if (code->wants[0] && !code->product[0]) {
		in->act = ACT_HALF;
		snprintf(in->text, sizeof in->text, "%s", code->wants);
		return;
	}
	in->act = ACT_UNKNOWN;
	if (code_kept_text(code, in->text, sizeof in->text) <= 0)
		in->text[0] = 0; /* it may be anybody's: nothing of it is repeated (rule 20) */
}

void input_from_fault(struct input *in, const struct code_fault *fault)
{
	in->act = ACT_BROKEN;
	snprintf(in->text, sizeof in->text, "%s", fault->why);
}
