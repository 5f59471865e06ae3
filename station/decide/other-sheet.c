#include "decide/other-sheet.h"

/* It is no item of that case, whose count only asks whether it was opened there. */
int other_sheet_turned_up(const struct station *st, int32_t case_no, const struct thing *th)
{
	int index = station_sheet_of_case(st, case_no);
	const struct sheet *s = index >= 0 ? &st->sheets[index] : NULL;
	return s && sheet_item_const(s, sheet_item_by_identity(s, th->identity))->place == ITEM_EXTRA;
}

/* Says on the board of the room that has this case what was done about it here. */
static void tell_case(struct turn *t, int32_t case_no, const struct say *what)
{
	int index = station_sheet_of_case(t->station, case_no);
	if (index < 0)
		return;
	t->out->told_room = t->station->sheets[index].room;
	said_keep(&t->out->told, what);
}

/* The other open sheet on which it stands, and its number there; NULL none. */
static const struct sheet *stands_on(const struct turn *t, const struct thing *th, int *item)
{
	int32_t other = station_identity_open(t->station, th->identity);
	int index = other && other != t->s->case_no ? station_sheet_of_case(t->station, other) : -1;
	const struct sheet *there = index >= 0 ? &t->station->sheets[index] : NULL;
	*item = there ? sheet_item_by_identity(there, th->identity) : 0;
	return there;
}

static int may_leave(const struct sheet *there, int item)
{
	enum item_place place = sheet_item_const(there, item)->place;
	return place == ITEM_HERE || place == ITEM_EXTRA;
}

void other_sheet_believe(const struct turn *t, struct thing *th)
{
	int item;
	const struct sheet *there = stands_on(t, th, &item);
	if (!there || may_leave(there, item))
		return;
	th->identity[0] = 0;
	th->identity_kind = IDENTITY_NONE;
}

void other_sheet_take_from(struct turn *t, const struct thing *th)
{
	int item;
	const struct sheet *there = stands_on(t, th, &item);
	if (!there || !may_leave(there, item))
		return;
	int32_t other = there->case_no;
	if (there->asked.what == Q_EXTRA && there->asked.item == item)
		EMIT(t, .kind = EV_ASKED, .case_no = other, .what = Q_NONE);
	EMIT(t, .kind = EV_ITEM_STRUCK, .case_no = other, .item = (uint8_t)item, .n = t->s->case_no);
	if (there->discrepancy && sheet_open_items(there) == 1)
		EMIT(t, .kind = EV_DISCREPANCY, .case_no = other, .n = 0);
	tell_case(t, other,
	          SAY(R_IN_USE_THERE, .item = th->name, .case_no = t->s->case_no,
	              .room = station_room_name(t->station, t->in->room), .other_case = other));
}

/* It lies unused on another open sheet, and its code was read here: only a person knows where it is (rule 24). */
enum answered other_sheet_ask_where(struct turn *t)
{
	int32_t other = station_identity_open(t->station, t->in->thing.identity);
	int index = other && other != t->s->case_no ? station_sheet_of_case(t->station, other) : -1;
	if (index < 0)
		return ANSWERED_NOT;
	const struct sheet *there = &t->station->sheets[index];
	int item = sheet_item_by_identity(there, t->in->thing.identity);
	if (sheet_item_const(there, item)->place != ITEM_HERE || there->final == FINAL_ASKING)
		return ANSWERED_NOT;
	turn_ask_saying(t, (struct asked){.what = Q_HERE_NOW, .item = (uint8_t)item, .n = other},
	                SAY(R_HERE_NOW, .item = t->in->thing.name, .case_no = other,
	                    .room = station_room_name(t->station, there->room)));
	return ANSWERED;
}

/* What another open sheet looks for, or FOUND was scanned for here, is answered for there. A wrapper proves only itself: where
 * that is sought, only a person knows. */
enum answered other_sheet_found(struct turn *t)
{
	int item, found = turn_asked(t) == Q_FOUND;
	const struct sheet *there = stands_on(t, &t->in->thing, &item);
	if (!there || (!found && (t->in->thing.identity_kind != IDENTITY_MARK || !there->discrepancy ||
	                          !item_is_sought(sheet_item_const(there, item)))))
		return ANSWERED_NOT;
	if (found && !t->s->asked.item)
		turn_close_question(t);
	other_sheet_refuse(t, there->case_no);
	return ANSWERED;
}

enum answered other_sheet_is_open(struct turn *t, int32_t case_no)
{
	int index = station_sheet_of_case(t->station, case_no);
	if (index < 0)
		return ANSWERED_NOT;
	turn_refuse(t, SAY(CASE_STILL_OPEN, .case_no = case_no));
	turn_say_more(t,
	              SAY(TAKE_IT_TO, .room = station_room_name(t->station, t->station->sheets[index].room)));
	return ANSWERED;
}

/* It stands on another open sheet: that room is told, nothing is entered here. */
void other_sheet_refuse(struct turn *t, int32_t other)
{
	const struct sheet *there = &t->station->sheets[station_sheet_of_case(t->station, other)];
	const char *room = station_room_name(t->station, there->room);
	turn_refuse(t, there->discrepancy
	                   ? SAY(NOT_HERE_SOUGHT, .item = t->in->thing.name, .case_no = other, .room = room)
	                   : SAY(NOT_HERE, .item = t->in->thing.name, .case_no = other, .room = room));
	tell_case(t, other,
	          SAY(R_SCANNED_THERE, .item = t->in->thing.name, .case_no = other,
	              .room = station_room_name(t->station, t->in->room)));
}
