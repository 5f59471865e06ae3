/* Broken variants of the count, one a rule at least: each spoils what was decided, and the walk must find it.
 * They are here and nowhere else. */
#include <stdio.h>
#include <string.h>

#include "walk.h"

static struct event *find(struct outcome *o, enum event_kind kind)
{
	for (int i = 0; i < o->count; i++)
		if (o->events[i].kind == kind)
			return &o->events[i];
	return NULL;
}

static void drop(struct outcome *o, struct event *e)
{
	if (!e)
		return;
	int i = (int)(e - o->events);
	memmove(e, e + 1, sizeof *e * (size_t)(o->count - i - 1));
	o->count--;
}

static void push(struct outcome *o, const struct event *like, struct event e)
{
	if (o->count == OUTCOME_EVENTS_MAX)
		return;
	e.at = like->at;
	e.room = like->room;
	e.case_no = like->case_no;
	o->events[o->count++] = e;
}

#define SPOIL(name) static void name(struct outcome *o, const struct input *in, const struct sheet *before)
#define UNUSED (void)in, (void)before

SPOIL(ends_with_debt) /* 1: the surgeon's badge ends whatever is owed */
{
	if (in->act == ACT_BADGE && in->number == 1 && before->case_no && o->count && !find(o, EV_CASE_ENDED))
		push(o, &o->events[0], (struct event){.kind = EV_CASE_ENDED, .what = END_RECONCILED});
}
SPOIL(off_is_accounted) /* 2 */
{
	struct event *e = find(o, EV_ITEM_OFF);
	UNUSED;
	if (e)
		push(o, e,
		     (struct event){.kind = EV_ITEM_SHOWN,
		                    .item = e->item,
		                    .n = 1,
		                    .what = EVIDENCE_SHOWN,
		                    .other = CONDITION_INTACT});
}
SPOIL(clock_waits) /* 3: no clock before the count is agreed */
{
	UNUSED;
	drop(o, find(o, EV_DIGIT_MAYBE_ON));
	drop(o, find(o, EV_DIGIT_ON));
}
SPOIL(nothing_owed) /* 3 */
{
	struct event *e = find(o, EV_OWED);
	UNUSED;
	if (e && (e->what == DEBT_COUNT || e->what == DEBT_ON))
		drop(o, e);
}
SPOIL(used_again) /* 4 */
{
	if (in->act == ACT_THING && in->used_in && before->case_no && o->count && find(o, EV_REFUSED))
		push(o, &o->events[0],
		     (struct event){.kind = EV_ITEM_IN,
		                    .item = (uint8_t)(before->n_items + 1),
		                    .thing = in->thing,
		                    .n = 1});
}
SPOIL(expired_in) /* 5 */
{
	if (in->act == ACT_THING && in->thing.expiry == 20190101 && before->case_no && find(o, EV_REFUSED))
		push(o, &o->events[0],
		     (struct event){.kind = EV_ITEM_IN,
		                    .item = (uint8_t)(before->n_items + 1),
		                    .thing = in->thing,
		                    .n = 1});
}
SPOIL(forceps_for_tourniquet) /* 6: the forceps' mark accounts for the next line, whatever it is */
{
	struct event *e = find(o, EV_ITEM_SHOWN);
	int next = sheet_next_open(before);
	if (e && in->act == ACT_THING && next && next != e->item)
		e->item = (uint8_t)next;
}
SPOIL(roll_not_asked) /* 7 */
{
	struct event *e = find(o, EV_ASKED);
	UNUSED;
	if (e && e->what == Q_ROLLS_ON)
		drop(o, e);
}
SPOIL(anyone_agrees) /* 8: the field agrees alone */
{
	struct event *e = find(o, EV_COUNT_AGREED);
	UNUSED;
	if (e)
		e->other = e->person;
}
SPOIL(look_early) /* 9 */
{
	if (in->act == ACT_DIGIT && before->final == FINAL_ASKING && o->count)
		push(o, &o->events[0],
		     (struct event){.kind = EV_DIGIT_SEEN_BARE, .digit = (uint8_t)in->digit});
}
SPOIL(no_condition) /* 10 */
{
	struct event *e = find(o, EV_ITEM_SHOWN);
	UNUSED;
	if (e)
		e->other = CONDITION_NONE;
}
SPOIL(wrapper_counts) /* 11 */
{
	int item = in->act == ACT_THING ? sheet_item_by_identity(before, in->thing.identity) : 0;
	if (item && before->final == FINAL_ASKING && in->thing.role == ROLE_TOURNIQUET && o->count)
		push(o, &o->events[0],
		     (struct event){.kind = EV_ITEM_SHOWN,
		                    .item = (uint8_t)item,
		                    .n = 1,
		                    .what = EVIDENCE_MARK,
		                    .other = CONDITION_INTACT});
}
SPOIL(not_stored) /* 12 */
{
	UNUSED;
	if (o->reply.verdict == VERDICT_ACCEPTED && find(o, EV_ITEM_IN))
		o->count = 0;
}
SPOIL(undo_names_nothing) /* 13 */
{
	struct event *e = find(o, EV_UNDONE);
	UNUSED;
	if (e)
		e->ref = 0;
}
SPOIL(by_the_wall) /* 14: the clock starts by the wall clock */
{
	struct event *e = find(o, EV_DIGIT_ON);
	UNUSED;
	if (e)
		e->at.boot_ms = e->at.wall_ms;
}
SPOIL(says_safe) /* 15 */
{
	UNUSED;
	if (find(o, EV_CASE_ENDED))
		snprintf(o->reply.said, sizeof o->reply.said, "All counted. The patient is safe.");
}
SPOIL(ends_without_search) /* 16 */
{
	if (in->act == ACT_CARD && in->card == CARD_NOT_DONE && before->discrepancy && !before->search_done &&
	    o->count)
		push(o, &o->events[0], (struct event){.kind = EV_CASE_ENDED, .what = END_UNRESOLVED});
}
SPOIL(full_in_silence) /* 17 */
{
	UNUSED;
	if (strstr(o->reply.said, "sheet is full"))
		snprintf(o->reply.said, sizeof o->reply.said, "The sheet is full.");
}
SPOIL(any_rooms_card) /* 18 */
{
	if (in->act == ACT_CARD && in->card_room != in->room && o->count && before->case_no)
		push(o, &o->events[0], (struct event){.kind = EV_DRESSING_ON, .n = 1});
}
SPOIL(silence) /* 19 */
{
	UNUSED;
	if (o->reply.verdict == VERDICT_QUESTION)
		o->reply.next[0] = 0;
}
SPOIL(keeps_wristband) /* 20 */
{
	(void)before;
	if (in->act == ACT_PATIENT && o->count)
		push(o, &o->events[0], (struct event){.kind = EV_SCANNER_FAULT, .text = "wristband"});
}
SPOIL(found_nowhere) /* 21 */
{
	struct event *e = find(o, EV_FOUND_AFTER);
	UNUSED;
	if (e)
		e->case_no = 0;
}

const struct saboteur saboteurs[] = {
    {1, "ends with a debt", ends_with_debt},
    {2, "off counts as accounted for", off_is_accounted},
    {3, "the clock waits for the count", clock_waits},
    {3, "nothing is owed for what was missing", nothing_owed},
    {4, "a single-use item is used again", used_again},
    {5, "an expired item is counted in", expired_in},
    {6, "the forceps' mark accounts for the tourniquet", forceps_for_tourniquet},
    {7, "a roll-on tourniquet is not asked about", roll_not_asked},
    {8, "one person agrees alone", anyone_agrees},
    {9, "the look comes before the count", look_early},
    {10, "a tourniquet without condition", no_condition},
    {11, "a wrapper proves the item", wrapper_counts},
    {12, "accepted and not stored", not_stored},
    {13, "UNDO names nothing", undo_names_nothing},
    {14, "the clock runs by the wall", by_the_wall},
    {15, "says safe", says_safe},
    {16, "ends unresolved without a search", ends_without_search},
    {17, "a full sheet that does not say: by hand", full_in_silence},
    {18, "another room's card acts", any_rooms_card},
    {19, "a question without a next step", silence},
    {20, "something of a wristband is kept", keeps_wristband},
    {21, "a found item acts on no case", found_nowhere},
};
const int n_saboteurs = sizeof saboteurs / sizeof *saboteurs;
