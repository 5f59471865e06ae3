/* Packs and instruments: counting in, refusing, returning, isolating (rules 3, 4, 5, 7, 11). */
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "count/turn.h"

static void date_text(int32_t yyyymmdd, char out[16])
{
	snprintf(out, 16, "%04d-%02d-%02d", (int)(yyyymmdd / 10000 % 10000), (int)(yyyymmdd / 100 % 100),
	         (int)(yyyymmdd % 100));
}

/* Why this thing may not be counted in, as a reply; 0 when it may. Rules 4 and 5. */
static int refusal(const struct turn *t, char *why, size_t size)
{
	const struct thing *th = &t->in->thing;
	char date[16];
	int32_t other = station_identity_open(t->station, th->identity);
	const char *quarantined = station_quarantined(t->station, th->line, th->lot);
	if (th->role == ROLE_REFUSED)
		return snprintf(why, size, "%s may not be used as a tourniquet; use %s", th->name,
		                t->in->line ? t->in->line->instead : "a listed one");
	if (th->expiry && th->expiry < clock_date_number(t->in->at.wall_ms)) {
		date_text(th->expiry, date);
		return snprintf(why, size, "%s expired on %s: take it off the field and use another",
		                th->name, date);
	}
	if (quarantined)
		return snprintf(why, size, "%s is in quarantine (%.80s)", th->name, quarantined);
	if (t->in->used_in && th->single_use)
		return snprintf(why, size, "this %s was used before, in case %d, and is used once only",
		                th->name, (int)t->in->used_in);
	if (other && other != t->s->case_no)
		return snprintf(why, size, "this %s is on the open sheet of case %d", th->name, (int)other);
	return 0;
}

static int unlisted_on_digit(const struct turn *t)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	return d ? d->item : 0;
}

/* The pack of a tourniquet that was put on before it was listed. Facts first: even one that would have been
 * refused is listed as what it is, and the refusal becomes a debt (rules 3 and 5). */
static void list_late(struct turn *t, int item, const char *why)
{
	EMIT(t, .kind = EV_ITEM_LISTED, .item = (uint8_t)item, .thing = t->in->thing);
	pay(t, DEBT_LISTING, item, 0, "its pack was scanned");
	if (!why) {
		turn_accept(t, "Listed: the tourniquet that is on is %s.", t->in->thing.name);
		return;
	}
	owe(t, DEBT_REASON, item, 0);
	turn_accept(t, "Listed as what it is, because it is already on. But %s: the surgeon answers for it.",
	            why);
}

static void emit_in(struct turn *t, const struct thing *th, int pieces)
{
	EMIT(t, .kind = EV_ITEM_IN, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = pieces);
}

/* Tourniquets and forceps are single items even when a pack holds several; swabs are counted as a number. */
static void emit_pack(struct turn *t, const struct thing *th, int pieces)
{
	if (th->role == ROLE_OTHER) {
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

static void after_counting_in(struct turn *t, const char *what)
{
	const struct thing *th = &t->in->thing;
	char detail[96] = "";
	char date[16];
	if (t->s->initial_agreed)
		owe(t, DEBT_ADDED, 0, 0);
	if (th->lot[0] && th->expiry) {
		date_text(th->expiry, date);
		snprintf(detail, sizeof detail, " (lot %s, expires %s)", th->lot, date);
	} else if (th->lot[0]) {
		snprintf(detail, sizeof detail, " (lot %s)", th->lot);
	}
	const char *unknown = !th->identity[0] && (th->role == ROLE_TOURNIQUET || th->role == ROLE_FORCEPS)
	                          ? " It bears no number of its own: the station cannot tell it from another."
	                          : "";
	char misfit[160] = "";
	size_misfit(t, th, misfit, sizeof misfit);
	int item = t->s->n_items;
	if (th->rolls_on && th->role == ROLE_TOURNIQUET) {
		ask(t, (struct asked){.what = Q_ROLLS_ON, .item = (uint8_t)item},
		    "%s: %s%s.%s%s It rolls on.", t->s->initial_agreed ? "Added" : "Counted in", what, detail,
		    unknown, misfit);
		return;
	}
	close_question(t);
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
			refuse(t, "the tray '%s' lists '%s', which the catalogue does not know: tell stores",
			       tray->name, tray->contents[i].key);
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
	after_counting_in(t, what);
}

/* Two reads of one pack that bears no number of its own (section 4). */
static int read_twice(const struct turn *t)
{
	const struct thing *th = &t->in->thing;
	char code[LAST_CODE_MAX];
	if (th->identity[0] || t->s->asked.what == Q_ADD)
		return 0;
	item_last_code(th, code);
	for (int i = 0; i < t->s->n_items; i++)
		if (t->s->items[i].place != ITEM_STRUCK && t->s->items[i].place != ITEM_RETURNED &&
		    strcmp(t->s->items[i].thing.line, th->line) == 0 &&
		    strcmp(t->s->items[i].thing.lot, th->lot) == 0)
			return strcmp(t->s->last_code, code) == 0 &&
			               moment_between_ms(t->s->last_code_at, t->in->at) <
			                   t->station->policy.repeat_ms
			           ? 1
			           : 2;
	return 0;
}

void count_in(struct turn *t)
{
	char why[240];
	const struct thing *th = &t->in->thing;
	int refused = refusal(t, why, sizeof why), late = unlisted_on_digit(t);
	if (late && th->role == ROLE_TOURNIQUET) {
		list_late(t, late, refused ? why : NULL);
		return;
	}
	if (refused) {
		refuse(t, "Not counted in: %s. Take it off the field and use another.%s", why,
		       th->role == ROLE_TOURNIQUET || th->role == ROLE_REFUSED
		           ? " If it is already on the digit, scan UNLISTED TOURNIQUET."
		           : "");
		return;
	}
	int twice = read_twice(t);
	if (twice) {
		refuse(t,
		       twice == 1
		           ? "Read twice, counted once: %s. For a second pack scan ADD first."
		           : "%s is already on the sheet and bears no number: for a further pack scan ADD "
		             "first.",
		       th->name);
		return;
	}
	if (t->in->act == ACT_TRAY) {
		count_in_tray(t);
		return;
	}
	int pieces = t->in->line ? t->in->line->per_pack : 1;
	char what[LINE_NAME_MAX + 16];
	snprintf(what, sizeof what, "%d %s", pieces, th->name);
	emit_pack(t, th, pieces);
	after_counting_in(t, what);
}

void add_unlisted(struct turn *t, enum role role, const char *name)
{
	struct thing th = {.role = (uint8_t)role, .unlisted = 1};
	snprintf(th.name, sizeof th.name, "%s", name);
	emit_in(t, &th, 1);
	if (role == ROLE_TOURNIQUET)
		owe(t, DEBT_LISTING, t->s->n_items, 0);
	if (t->s->initial_agreed)
		owe(t, DEBT_ADDED, 0, 0);
}

/* Something turned up at the final count that is not on the sheet: a surplus makes the count wrong as well.
 */
static void turned_up(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	EMIT(t, .kind = EV_EXTRA, .item = (uint8_t)(t->s->n_items + 1), .thing = *th, .n = 1);
	if (t->in->used_in)
		found_after(t, t->in->used_in, "");
	ask(t, (struct asked){.what = Q_EXTRA, .item = t->s->n_items},
	    "Extra item: %s is not on this sheet.%s", th->name,
	    t->in->used_in ? " It comes from an earlier case: look at that patient's digit now." : "");
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
		refuse(t, "%s cannot go back unopened: it is not lying here as counted in.",
		       it ? it->thing.name : t->in->thing.name);
		return;
	}
	EMIT(t, .kind = EV_ITEM_RETURNED, .item = (uint8_t)item);
	close_question(t);
	turn_accept(t, "Returned unopened: %s. It may be used in another case.", it->thing.name);
	final_progress(t);
}

static void isolate(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (known && known->place != ITEM_HERE) {
		refuse(t, "%s cannot be isolated: it is not lying here as counted in.", known->thing.name);
		return;
	}
	if (!item) {
		emit_in(t, &t->in->thing, 1);
		item = t->s->n_items;
	}
	EMIT(t, .kind = EV_ITEM_ISOLATED, .item = (uint8_t)item);
	close_question(t);
	turn_accept(t, "Isolated, not in the count: %s. Keep the whole pack in the room, tell stores.",
	            sheet_item(t->s, item)->thing.name);
	final_progress(t);
}

/* What is looked for is never struck: nothing that is missing may leave the sheet as a misread. */
static void strike(struct turn *t, int item)
{
	struct item *it = sheet_item(t->s, item);
	if (!it || it->place != ITEM_HERE || it->missing || t->s->final == FINAL_ASKING) {
		refuse(t, "That item was used, is being counted or is not on the sheet: it cannot be struck "
		          "as a misread.");
		return;
	}
	EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
	if (t->s->initial_agreed)
		owe(t, DEBT_ADDED, 0, 0);
	close_question(t);
	turn_accept(t, "Struck as a misread: %s. The record keeps it.", it->thing.name);
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
		if (!item)
			return 0;
		EMIT(t, .kind = EV_ITEM_DROPPED, .item = (uint8_t)item);
		close_question(t);
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
	default:
		return 0;
	}
}

/* A code that stands on the sheet already. */
static void seen_again(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place == ITEM_ISOLATED) {
		refuse(t, "%s is isolated (wrong number in its pack): use another pack.", it->thing.name);
	} else if (t->s->final == FINAL_ASKING || t->s->discrepancy) {
		final_mark(t, item);
	} else if (it->place == ITEM_ON) {
		refuse(t, "%s is on the %s; its wrapper proves nothing more.", it->thing.name,
		       own_digit_name(it->digit));
	} else {
		refuse(t, "%s is on the sheet already and was not counted twice.", it->thing.name);
	}
}

static void without_case(struct turn *t)
{
	const struct thing *th = &t->in->thing;
	int room = 0;
	while (room < t->station->n_rooms && t->station->rooms[room].number != t->in->room)
		room++;
	int finding = room < t->station->n_rooms && t->station->idle_asked[room] == Q_FOUND;
	if (t->in->used_in && (finding || !t->in->used_back)) { /* rule 21 */
		EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
		found_after(t, t->in->used_in, "");
		turn_accept(
		    t,
		    "Found after the end: %s comes from case %d%s. Look at that patient's digit now and tell "
		    "the surgeon.",
		    th->name, (int)t->in->used_in,
		    t->in->used_back ? ", which counted it as accounted for" : ", where it was missing");
		return;
	}
	if (finding && !t->in->used_in) {
		EMIT(t, .kind = EV_ASKED, .what = Q_NONE);
		refuse(
		    t,
		    "This code does not tell which case %s comes from: scan FOUND, then the slip of the case "
		    "you think of.",
		    th->name[0] ? th->name : "it");
		return;
	}
	refuse(t, "No case is open in %s: scan NEW CASE, then this again.",
	       station_room_name(t->station, t->in->room));
}

void on_thing(struct turn *t)
{
	if (!has_case(t)) {
		without_case(t);
		return;
	}
	int item = known_item(t);
	if (answers(t, item))
		return;
	int by_identity = sheet_item_by_identity(t->s, t->in->thing.identity);
	if (by_identity && sheet_item_const(t->s, by_identity)->place != ITEM_RETURNED) {
		seen_again(t, by_identity);
		return;
	}
	if (t->s->final == FINAL_ASKING || (t->s->discrepancy && t->s->final != FINAL_AGREED)) {
		if (item)
			final_mark(t, item);
		else
			turned_up(t);
		return;
	}
	count_in(t);
}
