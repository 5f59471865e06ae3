/* Packs and instruments: counting in, refusing, returning, isolating (rules 3, 4, 5, 7, 11). */
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "decide/turn.h"

static void date_text(int32_t yyyymmdd, char out[16])
{
	snprintf(out, 16, "%04d-%02d-%02d", (int)(yyyymmdd / 10000 % 10000), (int)(yyyymmdd / 100 % 100),
	         (int)(yyyymmdd % 100));
}

/* What is wrong with the thing itself, as part of a sentence; 0 nothing. Rule 5. */
static int fault_of(const struct turn *t, const struct thing *th, struct say *why)
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

static int unlisted_on_digit(const struct turn *t)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	return d ? d->item : 0;
}

/* It is no item of that case, whose count only asks whether it was opened there. */
static int turned_up_there(const struct station *st, int32_t case_no, const struct thing *th)
{
	int index = station_sheet_of_case(st, case_no);
	const struct sheet *s = index >= 0 ? &st->sheets[index] : NULL;
	return s && sheet_item_const(s, sheet_item_by_identity(s, th->identity))->place == ITEM_EXTRA;
}

/* Why this thing may not be counted in, as part of a sentence; 0 when it may. Rules 4 and 5. */
static int refusal(const struct turn *t, struct say *why)
{
	const struct thing *th = &t->in->thing;
	int32_t other = station_identity_open(t->station, th->identity);
	if (fault_of(t, th, why))
		return 1;
	if (t->in->used_in && th->single_use)
		*why = *SAY(USED_BEFORE, .item = th->name, .case_no = t->in->used_in);
	else if (other && other != t->s->case_no &&
	         !(unlisted_on_digit(t) && turned_up_there(t->station, other, th)))
		*why =
		    *SAY(ON_OTHER_SHEET, .item = th->name, .case_no = other,
		         .room = station_room_name(
		             t->station, t->station->sheets[station_sheet_of_case(t->station, other)].room));
	else
		return 0;
	return 1;
}

/* Says on the board of the room that has this case what was done about it here. */
static void tell_case(struct turn *t, int32_t case_no, const char *said)
{
	int index = station_sheet_of_case(t->station, case_no);
	if (index < 0)
		return;
	t->out->told_room = t->station->sheets[index].room;
	snprintf(t->out->told, sizeof t->out->told, "%s", said);
}

/* Rule 4: what is on a digit here stands on no other open sheet. One that lies counted in there, unused, or has turned up
 * there, leaves that sheet; one that was used there cannot be the same thing, so that its number is not believed here. */
static void take_from_other_sheet(struct turn *t, struct thing *th)
{
	char said[SAID_MAX];
	int32_t other = station_identity_open(t->station, th->identity);
	int index = other && other != t->s->case_no ? station_sheet_of_case(t->station, other) : -1;
	if (index < 0)
		return;
	const struct sheet *there = &t->station->sheets[index];
	int item = sheet_item_by_identity(there, th->identity);
	enum item_place place = sheet_item_const(there, item)->place;
	if (place != ITEM_HERE && place != ITEM_EXTRA) {
		th->identity[0] = 0;
		th->identity_kind = IDENTITY_NONE;
		return;
	}
	if (there->asked.what == Q_EXTRA && there->asked.item == item)
		EMIT(t, .kind = EV_ASKED, .case_no = other, .what = Q_NONE);
	EMIT(t, .kind = EV_ITEM_STRUCK, .case_no = other, .item = (uint8_t)item);
	if (there->discrepancy && sheet_open_items(there) == 1)
		EMIT(t, .kind = EV_DISCREPANCY, .case_no = other, .n = 0);
	snprintf(said, sizeof said, "%s is in use in case %d, %s: it is no longer on the sheet of case %d.",
	         th->name, (int)t->s->case_no, station_room_name(t->station, t->in->room), (int)other);
	tell_case(t, other, said);
}

/* The pack of a tourniquet that was put on before it was listed. Facts first: even one that would have been
 * refused is listed as what it is, and the refusal becomes a debt (rules 3 and 5). */
static void list_late(struct turn *t, const struct thing *what, int item, const struct say *why)
{
	char words[240];
	struct thing th = *what;
	int improvised = role_has(th.role, TRAIT_REFUSED);
	if (improvised) { /* it is used as one, and printed as what it is */
		th.role = ROLE_TOURNIQUET;
		th.unlisted = 1;
	}
	take_from_other_sheet(t, &th);
	EMIT(t, .kind = EV_ITEM_LISTED, .item = (uint8_t)item, .thing = th);
	if (t->s->asked.what == Q_ADD)
		turn_close_question(t);
	turn_pay(t, DEBT_LISTING, item, 0, improvised ? PAID_IMPROVISED : PAID_PACK);
	if (!why) {
		turn_accept(t, "Listed: the tourniquet%s is %s.",
		            sheet_item_const(t->s, item)->place == ITEM_ON ? " that is on" : "", th.name);
		return;
	}
	turn_owe(t, DEBT_REASON, item, 0);
	say_part(why, words, sizeof words);
	turn_accept(t, "Listed as what it is%s: %s%s. But %s: the surgeon answers for it.",
	            sheet_item_const(t->s, item)->place == ITEM_ON ? ", because it is already on" : "",
	            improvised ? "IMPROVISED, " : "", th.name, words);
}

static void emit_in(struct turn *t, const struct thing *th, int pieces)
{
	EMIT(t, .kind = EV_ITEM_IN, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = pieces);
}

/* Tourniquets and forceps are single items even when a pack holds several; swabs are counted as a number. */
static void emit_pack(struct turn *t, const struct thing *th, int pieces)
{
	if (role_has(th->role, TRAIT_BY_NUMBER)) {
		emit_in(t, th, pieces);
		return;
	}
	struct thing one = *th;
	for (int i = 0; i < pieces; i++) {
		emit_in(t, &one, 1);
		if (th->identity_kind == IDENTITY_PACK)
			one.identity[0] = 0; /* one wrapper, one number: it stays with the first */
	}
}

/* Whether a further pack in the hand leaves nothing of what is asked: every other question stands until it is answered. */
static int is_about_pack(enum question q)
{
	switch (q) {
	case Q_ROLLS_ON:
	case Q_ADD:
	case Q_RETURNED:
	case Q_ISOLATE:
	case Q_DROPPED:
	case Q_NO_CODE:
	case Q_EXTRA:
	case Q_FOUND:
	case Q_COUNTED_IN:
	case Q_LISTED_ALREADY:
	case Q_HERE_NOW:
		return 1;
	case Q_NONE:
	case Q_OFF:
	case Q_IS_ON:
	case Q_WHICH_OFF:
	case Q_RIGHT_DIGIT:
	case Q_MOVE_TO:
	case Q_CANCEL:
	case Q_WHO_LOOKED:
	case Q_POINT:
	case Q_HANDOVER_OUT:
	case Q_HANDOVER_IN:
	case Q_HANDOVER_SEEN:
	case Q_HANDOVER_AGREE:
	case Q_HANDOVER_STAYS:
	case Q_SURGEON_ENDS:
	case Q_INCIDENT:
	case Q_VISITOR:
	case Q_VISITOR_IS_SURGEON:
	case Q_LEAVES:
	case Q_FIELD_TOO:
	case Q_WITNESS:
	case Q_SLIP_HERE:
	case Q_STORED:
	case Q_TWICE:
	case QUESTION_KINDS:
		return 0;
	}
	return 0;
}

static void after_counting_in(struct turn *t, const struct thing *th, const char *what)
{
	char detail[96] = "";
	char date[16];
	if (t->s->initial_agreed)
		turn_owe(t, DEBT_ADDED, 0, 0);
	if (th->lot[0] && th->expiry) {
		date_text(th->expiry, date);
		snprintf(detail, sizeof detail, " (lot %s, expires %s)", th->lot, date);
	} else if (th->lot[0]) {
		snprintf(detail, sizeof detail, " (lot %s)", th->lot);
	}
	const char *unknown = !th->identity[0] && role_has(th->role, TRAIT_ON_DIGIT)
	                          ? " It bears no number of its own: the station cannot tell it from another."
	                          : "";
	char misfit[160] = "";
	size_misfit(t, th, misfit, sizeof misfit);
	int item = t->s->n_items;
	if (th->rolls_on && role_has(th->role, TRAIT_TIMED)) {
		turn_ask(t, (struct asked){.what = Q_ROLLS_ON, .item = (uint8_t)item}, "%s: %s%s.%s%s",
		         t->s->initial_agreed ? "Added" : "Counted in", what, detail, unknown, misfit);
		return;
	}
	if (is_about_pack((enum question)t->s->asked.what))
		turn_close_question(t);
	turn_accept(t, "%s: %s%s.%s%s", t->s->initial_agreed ? "Added" : "Counted in", what, detail, unknown,
	            misfit);
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
		struct thing th = {.role = (uint8_t)line->role,
		                   .single_use = line->single_use != 0,
		                   .shows_on_xray = line->shows_on_xray != 0};
		snprintf(th.line, sizeof th.line, "%s", line->key);
		snprintf(th.name, sizeof th.name, "%s", line->name);
		emit_pack(t, &th, tray->contents[i].count);
		total += tray->contents[i].count;
	}
	char what[LINE_NAME_MAX + 40];
	snprintf(what, sizeof what, "%s, %d instruments from its list", tray->name, total);
	after_counting_in(t, &t->in->thing, what);
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

static void count_in_pack(struct turn *t, const struct thing *th, int pieces)
{
	char what[LINE_NAME_MAX + 16];
	int first = t->s->n_items + 1;
	snprintf(what, sizeof what, "%d %s", pieces, th->name);
	emit_pack(t, th, pieces);
	after_counting_in(t, th, what);
	expiry_owe(t, first, t->s->n_items);
}

/* It lies unused on another open sheet, and its code was read here: only a person knows where it is (rule 24). 1 where
 * that is asked. */
static int asks_where(struct turn *t)
{
	int32_t other = station_identity_open(t->station, t->in->thing.identity);
	int index = other && other != t->s->case_no ? station_sheet_of_case(t->station, other) : -1;
	if (index < 0)
		return 0;
	const struct sheet *there = &t->station->sheets[index];
	int item = sheet_item_by_identity(there, t->in->thing.identity);
	if (sheet_item_const(there, item)->place != ITEM_HERE || there->final == FINAL_ASKING)
		return 0;
	turn_ask(t, (struct asked){.what = Q_HERE_NOW, .item = (uint8_t)item, .n = other},
	         "%s is on the open sheet of case %d in %s.", t->in->thing.name, (int)other,
	         station_room_name(t->station, there->room));
	return 1;
}

void answer_here_now(struct turn *t, int yes)
{
	struct asked q = t->s->asked;
	int index = station_sheet_of_case(t->station, q.n);
	const struct item *it = index >= 0 ? sheet_item_const(&t->station->sheets[index], q.item) : NULL;
	turn_close_question(t);
	if (!yes || !it || it->place != ITEM_HERE) {
		turn_accept(t, "Left as it is.");
		return;
	}
	struct thing th = it->thing;
	take_from_other_sheet(t, &th);
	count_in_pack(t, &th, it->pieces);
}

/* A pack of the same line and lot, without a number, while another tourniquet is not listed: it may be the same pack
 * read again. The thing itself is told by the item that it is like. */
void answer_listed_already(struct turn *t, int yes)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	struct thing th = sheet_item_const(t->s, t->s->asked.item)->thing;
	int item = d ? d->item : 0;
	turn_close_question(t);
	if (yes || !item) {
		turn_accept(t, "Listed once: %s.", th.name);
		return;
	}
	list_late(t, &th, item, NULL);
	expiry_owe(t, item, item);
}

static void list_now(struct turn *t, int item, const struct say *why)
{
	int like = needs_add(t);
	if (like) {
		turn_ask(t, (struct asked){.what = Q_LISTED_ALREADY, .item = (uint8_t)like},
		         "%s: one is listed.", t->in->thing.name);
		return;
	}
	list_late(t, &t->in->thing, item, why);
	expiry_owe(t, item, item);
}

void pack_count_in(struct turn *t)
{
	struct say why;
	const struct thing *th = &t->in->thing;
	int refused = refusal(t, &why), late = unlisted_on_digit(t);
	if (late && role_has(th->role, TRAIT_TIMED | TRAIT_REFUSED))
		list_now(t, late, refused ? &why : NULL);
	else if (refused && asks_where(t))
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
	else if (t->in->act == ACT_TRAY)
		count_in_tray(t);
	else
		count_in_pack(t, th, t->in->line ? t->in->line->per_pack : 1);
}

void item_add_unlisted(struct turn *t, enum role role, enum saying called)
{
	struct thing th = {.role = (uint8_t)role, .unlisted = 1, .called = called};
	emit_in(t, &th, 1);
	if (role_has(role, TRAIT_TIMED))
		turn_owe(t, DEBT_LISTING, t->s->n_items, 0);
	if (t->s->initial_agreed)
		turn_owe(t, DEBT_ADDED, 0, 0);
}

/* It stands on another open sheet: that room is told, nothing is entered here. */
static void belongs_elsewhere(struct turn *t, int32_t other)
{
	char said[SAID_MAX];
	const struct sheet *there = &t->station->sheets[station_sheet_of_case(t->station, other)];
	const char *room = station_room_name(t->station, there->room);
	snprintf(said, sizeof said, "%s of case %d was scanned in %s: fetch it from there.",
	         t->in->thing.name, (int)other, station_room_name(t->station, t->in->room));
	turn_refuse(t, there->discrepancy
	                   ? SAY(NOT_HERE_SOUGHT, .item = t->in->thing.name, .case_no = other, .room = room)
	                   : SAY(NOT_HERE, .item = t->in->thing.name, .case_no = other, .room = room));
	tell_case(t, other, said);
}

/* Something turned up at the final count that is not on the sheet: a surplus makes the count wrong as well. What
 * stands on another open sheet is no surplus of this one (rule 24). */
static void turned_up(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	int32_t other = station_identity_open(t->station, th->identity);
	if (other && other != t->s->case_no) {
		belongs_elsewhere(t, other);
		return;
	}
	if (t->in->used_in && th->identity_kind != IDENTITY_MARK) {
		turn_refuse(t, SAY(WRAPPER_OF_ANOTHER_CASE, .item = th->name, .case_no = t->in->used_in));
		return;
	}
	struct say why;
	char words[240];
	EMIT(t, .kind = EV_EXTRA, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = 1);
	if (fault_of(t, th, &why)) {
		say_part(&why, words, sizeof words);
		turn_ask(t, (struct asked){.what = Q_EXTRA, .item = t->s->n_items},
		         "Extra item: %s, beyond what is on the sheet; %s.", th->name, words);
	} else
		turn_ask(t, (struct asked){.what = Q_EXTRA, .item = t->s->n_items},
		         "Extra item: %s, beyond what is on the sheet.", th->name);
}

/* What turned up was opened in this case. Facts first: one that would have been refused as well, and the surgeon answers
 * for it (rules 3, 5). */
void extra_opened_here(struct turn *t, int item)
{
	struct say why;
	char words[240];
	struct thing th = sheet_item_const(t->s, item)->thing;
	int refused = fault_of(t, &th, &why);
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
	EMIT(t, .kind = EV_ITEM_IN, .item = (uint8_t)(t->s->n_items + 1), .thing = th, .n = 1);
	if (refused) {
		turn_owe(t, DEBT_REASON, t->s->n_items, 0);
		say_part(&why, words, sizeof words);
		turn_accept(t,
		            "Entered late: %s was opened in this case. But %s: the surgeon answers for it.",
		            th.name, words);
	} else
		turn_accept(t, "Entered late: %s was opened in this case.", th.name);
}

/* A pack that is on the sheet without a number of its own; 0 none. */
static int item_of_line(const struct sheet *s, const struct thing *th)
{
	for (int i = s->n_items; i >= 1; i--) {
		const struct item *it = &s->items[i - 1];
		if (item_counts(it) && strcmp(it->thing.line, th->line) == 0 &&
		    (!th->lot[0] || strcmp(it->thing.lot, th->lot) == 0))
			return i;
	}
	return 0;
}

static int known_item(const struct turn *t)
{
	const struct thing *th = &t->in->thing;
	int item = sheet_item_by_identity(t->s, th->identity);
	if (!item && !th->identity[0] && th->line[0])
		item = item_of_line(t->s, th);
	return item;
}

static void give_back(struct turn *t, int item)
{
	struct item *it = sheet_item(t->s, item);
	if (!it || it->place != ITEM_HERE) {
		turn_refuse(t, SAY(NOT_RETURNED, .item = it ? it->thing.name : t->in->thing.name));
		return;
	}
	EMIT(t, .kind = EV_ITEM_RETURNED, .item = (uint8_t)item);
	turn_close_question(t);
	turn_accept(t, "Returned unopened: %s. It may be used in another case.", it->thing.name);
	final_progress(t);
}

static void isolated(struct turn *t, int item)
{
	char still[LINE_NAME_MAX + 40] = "nothing of it";
	const struct item *it = sheet_item_const(t->s, item);
	int counted = 0;
	EMIT(t, .kind = EV_ITEM_ISOLATED, .item = (uint8_t)item);
	turn_close_question(t);
	for (int i = 0; i < t->s->n_items; i++)
		if (item_counts(&t->s->items[i]) && item_is_alike(&t->s->items[i], it))
			counted += t->s->items[i].pieces;
	if (counted)
		snprintf(still, sizeof still, "%d %s", counted, it->thing.name);
	turn_accept(t,
	            "Isolated, not in the count: %s. Still counted in: %s. Keep the whole pack in the room, "
	            "tell stores.",
	            it->thing.name, still);
	final_progress(t);
}

/* WRONG NUMBER IN PACK takes the pack that is in the hand. Without a number of its own nobody but a person knows
 * whether that one was counted in. */
static void isolate(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (known && !t->in->thing.identity[0] && known->place == ITEM_HERE) {
		turn_ask(t, (struct asked){.what = Q_COUNTED_IN, .item = (uint8_t)item},
		         "%s: one is on the sheet.", known->thing.name);
		return;
	}
	if (known && known->place != ITEM_HERE && t->in->thing.identity[0]) {
		turn_refuse(t, SAY(NOT_ISOLATED, .item = known->thing.name));
		return;
	}
	if (!known || known->place != ITEM_HERE) {
		struct thing th = t->in->thing;
		take_from_other_sheet(t, &th);
		emit_in(t, &th, 1);
		item = t->s->n_items;
	}
	isolated(t, item);
}

/* What is missing or being counted is asked for, and a code that is read may be an answer. */
static int is_counting(const struct sheet *s)
{
	return s->final == FINAL_ASKING || (s->discrepancy && s->final != FINAL_AGREED);
}

void answer_counted_in(struct turn *t, int yes)
{
	int item = t->s->asked.item, adds = t->s->asked.n == CARD_ADD;
	const struct item *known = sheet_item_const(t->s, item);
	struct thing th = known->thing;
	if (adds) {
		const struct line *line = catalogue_by_key(&t->station->catalogue, th.line);
		int pieces = line ? line->per_pack : known->pieces;
		turn_close_question(t);
		if (yes)
			turn_accept(t, "Left as it is: %s.", th.name);
		else
			count_in_pack(t, &th, pieces);
		return;
	}
	if (!yes) {
		emit_in(t, &th, 1);
		item = t->s->n_items;
	}
	isolated(t, item);
}

/* What is looked for is never struck: nothing that is missing may leave the sheet as a misread. */
static void strike(struct turn *t, int item)
{
	struct item *it = sheet_item(t->s, item);
	int extra = it && it->place == ITEM_EXTRA; /* it never was here: the neighbour's code was read */
	if (!it || (!extra && (it->place != ITEM_HERE || it->missing || t->s->final == FINAL_ASKING))) {
		turn_refuse(t, SAY(NOT_STRUCK));
		return;
	}
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
	if (t->s->initial_agreed && !extra)
		turn_owe(t, DEBT_ADDED, 0, 0);
	turn_close_question(t);
	turn_accept(t, "Struck as a misread: %s. The record keeps it.", it->thing.name);
	final_progress(t);
}

/* ADD, and what stands on the sheet. With a number it is that one. Without, while a count goes on, it may be the
 * wrapper of what is counted, or a further pack: only a person knows. 1 where this was the answer. */
static int adds_again(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (!known || unlisted_on_digit(t))
		return 0;
	if (!t->in->thing.identity[0]) {
		if (!is_counting(t->s))
			return 0;
		turn_ask(t, (struct asked){.what = Q_COUNTED_IN, .item = (uint8_t)item, .n = CARD_ADD},
		         "%s: one is on the sheet.", known->thing.name);
		return 1;
	}
	turn_close_question(t);
	return 0;
}

/* Questions that a pack or an instrument answers. 1 where it did. */
static int answers(struct turn *t, int item)
{
	switch ((enum question)t->s->asked.what) {
	case Q_RETURNED:
		give_back(t, item);
		return 1;
	case Q_ISOLATE:
		isolate(t, item);
		return 1;
	case Q_DROPPED:
		if (!item && !unlisted_on_digit(t)) {
			turn_refuse(t, SAY(NOT_DROPPED, .item = t->in->thing.name));
			return 1;
		}
		if (!item)
			return 0;
		EMIT(t, .kind = EV_ITEM_DROPPED, .item = (uint8_t)item);
		turn_close_question(t);
		turn_accept(t, "Dropped: %s. It stays in the room and in the count.",
		            sheet_item(t->s, item)->thing.name);
		return 1;
	case Q_MOVE_TO:
		strike(t, item);
		return 1;
	case Q_FOUND:
		if (!item)
			return 0;
		final_mark(t, item);
		return 1;
	case Q_ADD:
		return adds_again(t, item);
	default:
		return 0;
	}
}

/* A code that stands on the sheet already. */
static void seen_again(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place == ITEM_ISOLATED) {
		turn_refuse(t, SAY(IS_ISOLATED, .item = it->thing.name));
	} else if (t->s->final == FINAL_ASKING || t->s->discrepancy) {
		final_mark(t, item);
	} else if (it->place == ITEM_ON && role_has(it->thing.role, TRAIT_CLAMPS)) {
		turn_refuse(t, SAY(FORCEPS_ON_ALREADY, .item = it->thing.name, .digit = it->digit));
	} else if (it->place == ITEM_ON) {
		turn_refuse(t, SAY(WRAPPER_PROVES_NO_MORE, .item = it->thing.name, .digit = it->digit));
	} else {
		turn_refuse(t, SAY(NOT_COUNTED_TWICE, .item = it->thing.name));
	}
}

/* What an ended case looks for, or counted as back, and lies here now (rule 21). */
static int comes_from_ended_case(const struct turn *t)
{
	const struct input *in = t->in;
	return in->used_in &&
	       (!in->used_back || (in->thing.identity_kind == IDENTITY_MARK && in->thing.single_use));
}

/* It acts on its own case, whatever is open here; nothing of it is entered on this sheet. */
static void found_of_ended_case(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	int32_t case_no = t->in->used_in;
	if (t->in->thing.identity_kind !=
	    IDENTITY_MARK) { /* a label or wrapper proves only itself (rule 11) */
		turn_refuse(t, SAY(WRAPPER_OF_MISSING, .item = th->name, .case_no = case_no));
		return;
	}
	if (turn_asked(t) == Q_FOUND)
		EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
	turn_found_after(t, case_no, th);
	EMIT(t, .kind = EV_ITEM_USED, .case_no = case_no, .thing = *th, .n = 1);
	turn_accept(t,
	            "FOUND: %s comes from case %d%s. Look at that patient's digit now and tell the surgeon. "
	            "Keep it out "
	            "of this field.",
	            th->name, (int)case_no,
	            t->in->used_back ? ", which counted it as accounted for" : ", where it was missing");
}

static void without_case(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	if (turn_asked(t) == Q_FOUND) {
		EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
		if (t->in->used_in)
			turn_refuse(t, SAY(WRAPPER_OF_ENDED, .item = th->name, .case_no = t->in->used_in));
		else
			turn_refuse(t, th->name[0] ? SAY(WHICH_CASE_OF, .item = th->name) : SAY(WHICH_CASE));
		return;
	}
	int suspended = station_suspended_in(t->station, t->in->room);
	if (suspended >= 0)
		turn_refuse(t, SAY(SUSPENDED_THEN_THIS, .case_no = t->station->sheets[suspended].case_no,
		                   .room = station_room_name(t->station, t->in->room)));
	else
		turn_refuse(t, SAY(NO_CASE_THEN_THIS, .room = station_room_name(t->station, t->in->room)));
}

void thing_take(struct turn *t)
{
	int on_this_sheet = turn_has_case(t) ? sheet_item_by_identity(t->s, t->in->thing.identity) : 0;
	int late = turn_has_case(t) && unlisted_on_digit(t) && role_has(t->in->thing.role, TRAIT_TIMED);
	if (!on_this_sheet && !late && t->in->unasked) {
		turn_refuse_unasked(t);
		return;
	}
	if (!on_this_sheet && !late && comes_from_ended_case(t)) {
		found_of_ended_case(t);
		return;
	}
	if (!turn_has_case(t)) {
		without_case(t);
		return;
	}
	int item = known_item(t);
	if (answers(t, item))
		return;
	int extra = on_this_sheet && sheet_item_const(t->s, on_this_sheet)->place == ITEM_EXTRA;
	if (late && extra) { /* what turned up is what is on */
		turn_close_question(t);
		EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)on_this_sheet);
	}
	if ((late && (extra || !on_this_sheet)) || (t->s->asked.what == Q_ADD && !item)) {
		pack_count_in(t);
		return;
	}
	if (on_this_sheet && sheet_item_const(t->s, on_this_sheet)->place != ITEM_RETURNED) {
		seen_again(t, on_this_sheet);
		return;
	}
	if (is_counting(t->s)) {
		if (item)
			final_mark(t, item);
		else
			turned_up(t);
		return;
	}
	pack_count_in(t);
}
