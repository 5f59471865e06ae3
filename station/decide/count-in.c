#include "decide/count-in.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "decide/expiry.h"
#include "decide/item-in.h"
#include "decide/old-lists.h"
#include "decide/other-sheet.h"
#include "decide/tray.h"

/* What is wrong with the thing itself, as part of a sentence; 0 nothing. Rule 5. */
int thing_fault(const struct turn *t, const struct thing *th, struct say *why)
{
	const struct line *line = catalogue_by_key(&t->station->catalogue, th->line);
	const char *quarantined = station_quarantined(t->station, th->line, th->lot);
	if (role_has(th->role, TRAIT_REFUSED) && line)
		*why = *SAY(MAY_NOT_BE_USED, .item = th->name, .instead = line->instead);
	else if (role_has(th->role, TRAIT_REFUSED))
		*why = *SAY(MAY_NOT_BE_USED_UNLISTED, .item = th->name);
	else if (th->expiry && th->expiry < clock_date_number(t->in->at.wall_ms, t->in->at.utc_min))
		*why = *SAY(EXPIRED, .item = th->name, .date = th->expiry);
	else if (quarantined)
		*why = *SAY(IN_QUARANTINE, .item = th->name, .reason = quarantined);
	else
		return 0;
	return 1;
}

int tray_fault(const struct turn *t, struct thing *part, struct say *why)
{
	for (int i = 0; t->in->act == ACT_TRAY && i < LINE_CONTENTS_MAX; i++) {
		if (!t->in->line->contents[i].key[0] || !t->in->parts[i])
			continue;
		*part = tray_part(t->in->parts[i]);
		if (thing_fault(t, part, why))
			return 1;
	}
	return 0;
}

int sheet_owes_listing(const struct sheet *s)
{
	const struct debt *d = debts_find(&s->debts, DEBT_LISTING);
	return d ? d->item : 0;
}

/* Why this thing may not be counted in, as part of a sentence; 0 when it may. Rules 4 and 5. */
static int refusal(const struct turn *t, struct say *why)
{
	const struct thing *th = &t->in->thing;
	int32_t other = station_identity_open(t->station, th->identity);
	if (thing_fault(t, th, why))
		return 1;
	if (t->in->known.used_in && th->single_use)
		*why = *SAY(USED_BEFORE, .item = th->name, .case_no = t->in->known.used_in);
	else if (t->in->known.elsewhere && th->single_use)
		*why = *SAY(USED_ELSEWHERE, .item = th->name, .case_no = t->in->known.elsewhere,
		            .station = t->in->known.elsewhere_station);
	else if (other && other != t->s->case_no &&
	         !(sheet_owes_listing(t->s) && other_sheet_turned_up(t->station, other, th)))
		*why =
		    *SAY(ON_OTHER_SHEET, .item = th->name, .case_no = other,
		         .room = station_room_name(
		             t->station, t->station->sheets[station_sheet_of_case(t->station, other)].room));
	else
		return 0;
	return 1;
}

static void list_late(struct turn *t, const struct thing *what, int item, const struct say *why)
{
	struct thing th = *what;
	int improvised = role_has(th.role, TRAIT_REFUSED);
	if (improvised) { /* it is used as one, and printed as what it is */
		th.role = ROLE_TOURNIQUET;
		th.unlisted = 1;
	}
	other_sheet_believe(t, &th);
	EMIT(t, .kind = EV_ITEM_LISTED, .item = (uint8_t)item, .thing = th);
	other_sheet_take_from(t, &th);
	if (t->s->asked.what == Q_ADD)
		turn_close_question(t);
	turn_pay(t, DEBT_LISTING, item, 0, improvised ? PAID_IMPROVISED : PAID_PACK);
	if (!why) {
		turn_say(t, sheet_item_const(t->s, item)->place == ITEM_ON ? SAY(R_LISTED_ON, .item = th.name)
		                                                           : SAY(R_LISTED, .item = th.name));
		return;
	}
	turn_owe_reason(t, item, why);
	int on = sheet_item_const(t->s, item)->place == ITEM_ON;
	struct say say = *why;
	say.why = why->saying;
	say.item = th.name;
	if (improvised)
		say.saying = on ? SAY_R_LISTED_IMPROVISED_ON : SAY_R_LISTED_IMPROVISED;
	else
		say.saying = on ? SAY_R_LISTED_AS_ON : SAY_R_LISTED_AS;
	turn_say(t, &say);
}

/* The pack of a tourniquet that was put on before it was listed. Facts first: even one that would have been
 * refused is listed as what it is, and the refusal becomes a debt (rules 3 and 5). */
void count_in_list_late(struct turn *t, const struct thing *what, int item, const struct say *why)
{
	list_late(t, what, item, why);
	if (what->rolls_on && role_has(what->role, TRAIT_TIMED))
		turn_owe(t, DEBT_ROLLS_ON, item, 0);
	expiry_owe(t, item, item);
	old_lists_owe(t);
}

/* What else is known of a thing that was counted in. */
static void say_besides(struct turn *t, const struct thing *th)
{
	struct say misfit;
	if (!th->identity[0] && role_has(th->role, TRAIT_ON_DIGIT))
		turn_say_more(t, SAY(R_NO_OWN_NUMBER));
	if (thing_size_misfit(t, th, &misfit))
		turn_say_more(t, &misfit);
}

/* `n` of it, or of the instruments on its list where it is a tray. */
static void after_counting_in(struct turn *t, const struct thing *th, const struct line *tray, int n)
{
	struct say say = {.n = n, .lot = th->lot, .date = th->expiry};
	say.item = tray ? tray->name : th->name;
	if (t->s->initial_agreed)
		turn_owe(t, DEBT_ADDED, 0, 0);
	if (th->lot[0])
		say.more = th->expiry ? SAY_R_LOT_EXPIRY : SAY_R_LOT;
	if (t->s->initial_agreed)
		say.saying = tray ? SAY_R_ADDED_TRAY : SAY_R_ADDED;
	else
		say.saying = tray ? SAY_R_IN_TRAY : SAY_R_IN;
	int item = t->s->n_items;
	if (th->rolls_on && role_has(th->role, TRAIT_TIMED)) {
		turn_owe(t, DEBT_ROLLS_ON, item, 0);
		turn_ask_saying(t, (struct asked){.what = Q_ROLLS_ON, .item = (uint8_t)item}, &say);
	} else {
		if (question_of_pack((enum question)t->s->asked.what))
			turn_close_question(t);
		turn_say(t, &say);
	}
	say_besides(t, th);
}

static void count_in_tray(struct turn *t)
{
	const struct line *tray = t->in->line;
	int total = 0;
	for (int i = 0; i < LINE_CONTENTS_MAX && tray->contents[i].key[0]; i++) {
		const struct line *line = t->in->parts[i];
		if (!line) {
			t->out->count = 0;
			turn_refuse(
			    t, SAY(TRAY_LISTS_UNKNOWN, .item = tray->name, .key = tray->contents[i].key));
			return;
		}
		const struct thing th = tray_part(line);
		item_in_pack(t, &th, tray->contents[i].count);
		total += tray->contents[i].count;
	}
	after_counting_in(t, &t->in->thing, tray, total);
}

/* The item of a pack without a number of its own that stands on the sheet: only ADD says that this is a further
 * one. 0 none. */
static int needs_add(const struct turn *t)
{
	const struct thing *th = &t->in->thing;
	if (th->identity[0] || t->s->asked.what == Q_ADD)
		return 0;
	for (int i = 0; i < t->s->n_items; i++)
		if (t->s->items[i].place != ITEM_STRUCK && t->s->items[i].place != ITEM_RETURNED &&
		    strcmp(t->s->items[i].thing.line, th->line) == 0 &&
		    strcmp(t->s->items[i].thing.lot, th->lot) == 0)
			return i + 1;
	return 0;
}

/* How one that is refused, and is on a digit all the same, is entered (rule 3). */
static enum saying if_on(const struct turn *t)
{
	if (!role_has(t->in->thing.role, TRAIT_TIMED | TRAIT_REFUSED))
		return SAY_NONE;
	return t->s->asked.what == Q_IS_ON ? SAY_IF_ON_YES : SAY_IF_ON_UNLISTED;
}

void count_in_pack(struct turn *t, const struct thing *th, int pieces)
{
	int first = t->s->n_items + 1;
	item_in_pack(t, th, pieces);
	after_counting_in(t, th, NULL, pieces);
	expiry_owe(t, first, t->s->n_items);
	old_lists_owe(t);
}

static void list_now(struct turn *t, int item, const struct say *why)
{
	int like = needs_add(t);
	if (like) {
		turn_ask_saying(t, (struct asked){.what = Q_LISTED_ALREADY, .item = (uint8_t)like},
		                SAY(R_ONE_IS_LISTED, .item = t->in->thing.name));
		return;
	}
	count_in_list_late(t, &t->in->thing, item, why);
}

/* A tray goes as a whole, with what is wrong with one thing on its list. */
static int refuse_tray(struct turn *t)
{
	struct say why;
	struct thing part;
	uint8_t picked[ITEMS_MAX + 1];
	if (t->s->asked.what != Q_ADD && tray_on_sheet(t, picked)) { /* read once more, or a further one */
		turn_refuse(t, SAY(SCAN_ADD_FIRST, .item = t->in->line->name));
		return 1;
	}
	if (!tray_fault(t, &part, &why))
		return 0;
	why.why = why.saying;
	why.saying = SAY_TRAY_NOT_COUNTED_IN;
	turn_refuse(t, &why);
	if (t->s->asked.what == Q_ADD) /* what it pushed away may be owed */
		turn_close_question(t);
	return 1;
}

void count_in_thing(struct turn *t)
{
	struct say why;
	if (refuse_tray(t))
		return;
	const struct thing *th = &t->in->thing;
	int refused = refusal(t, &why), late = sheet_owes_listing(t->s);
	if (late && role_has(th->role, TRAIT_TIMED | TRAIT_REFUSED))
		list_now(t, late, refused ? &why : NULL);
	else if (refused && other_sheet_ask_where(t) == ANSWERED)
		return;
	else if (refused) {
		why.why = why.saying;
		why.saying = SAY_NOT_COUNTED_IN;
		why.then = if_on(t);
		turn_refuse(t, &why);
		if (t->s->asked.what == Q_ADD) /* what it pushed away may be owed */
			turn_close_question(t);
	} else if (needs_add(t))
		turn_refuse(t, SAY(SCAN_ADD_FIRST, .item = th->name));
	else if (t->s->asked.what != Q_ADD && sheet_without_mark(t->s, th))
		turn_refuse(t, SAY(MARK_OF_COUNTED, .item = th->name));
	else if (t->in->act == ACT_TRAY)
		count_in_tray(t);
	else
		count_in_pack(t, th, t->in->line ? t->in->line->per_pack : 1);
}
