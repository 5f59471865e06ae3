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
	if (in->act == ACT_THING && in->known.used_in && before->case_no && o->count && find(o, EV_REFUSED))
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
		o->reply.next.words[0] = 0;
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

SPOIL(stored_waits) /* 3: no clock before somebody has said whose the stored card is */
{
	(void)before;
	if (in->act == ACT_STORED)
		drop(o, find(o, EV_DIGIT_MAYBE_ON));
}
SPOIL(stored_unasked) /* 17 */
{
	UNUSED;
	for (int i = 0; i < o->count; i++)
		if (o->events[i].kind == EV_ASKED && o->events[i].what == Q_STORED)
			drop(o, &o->events[i--]);
}
SPOIL(stored_interrupts) /* 19: stored scans take the place of the question that is open */
{
	if (in->act == ACT_STORED && before->asked.what && o->count) {
		push(o, &o->events[0], (struct event){.kind = EV_ASKED, .what = Q_STORED});
		o->events[o->count - 1].case_no = before->case_no;
	}
}

SPOIL(read_twice_entered) /* 22: the same card or badge right after itself is entered again */
{
	if (before->case_no && before->last_answer && !o->count &&
	    before->last_answer == (in->act == ACT_CARD    ? in->card
	                            : in->act == ACT_BADGE ? -in->number
	                                                   : 0))
		push(o, &(struct event){.at = in->at, .room = in->room, .case_no = before->case_no},
		     (struct event){.kind = EV_AWAKE, .n = 1});
}
SPOIL(alike_one_by_one) /* 22: INTACT speaks of one of things alike that are asked for together */
{
	int item = sheet_next_open(before);
	if (in->act == ACT_CARD && in->card == CARD_INTACT && before->final == FINAL_ASKING && item &&
	    sheet_alike_open(before, item) > 1 && o->count)
		push(o, &o->events[0],
		     (struct event){.kind = EV_ITEM_SHOWN,
		                    .item = (uint8_t)item,
		                    .n = 1,
		                    .what = EVIDENCE_SHOWN,
		                    .other = CONDITION_INTACT});
}
SPOIL(refused_without_a_deed) /* 23 */
{
	UNUSED;
	if (o->reply.verdict == VERDICT_REFUSED)
		o->reply.next.n_deeds = 0;
}
static void only_the_ordinary(struct next *n) /* 23: no deed for any other truth */
{
	if (n->n_deeds > 1)
		n->n_deeds = 1;
}
static void never_next(struct next *n) /* 23: the same answer again, and nothing between */
{
	for (int i = 0; i < n->n_deeds; i++)
		if (n->deeds[i].kind == DEED_CARD && n->deeds[i].n == CARD_NEXT && n->deeds[i].then > 0)
			n->deeds[i].n = n->deeds[i].then;
}
SPOIL(charged_elsewhere) /* 24: a pack that is scanned in one room is owed in the other */
{
	(void)before;
	if (in->act != ACT_THING || in->room != 2 || !o->count || !o->events[0].case_no)
		return;
	push(o, &o->events[0], (struct event){.kind = EV_OWED, .what = DEBT_ADDED});
	o->events[o->count - 1].case_no = 3 - o->events[0].case_no;
}
SPOIL(stands_on_both) /* 24: it stays on the sheet that it is taken from */
{
	(void)in;
	for (int i = 0; i < o->count; i++)
		if (o->events[i].kind == EV_ITEM_STRUCK && o->events[i].case_no != before->case_no)
			drop(o, &o->events[i]);
}

const struct saboteur saboteurs[] = {
    {1, "ends with a debt", ends_with_debt, NULL},
    {2, "off counts as accounted for", off_is_accounted, NULL},
    {3, "the clock waits for the count", clock_waits, NULL},
    {3, "nothing is owed for what was missing", nothing_owed, NULL},
    {4, "a single-use item is used again", used_again, NULL},
    {5, "an expired item is counted in", expired_in, NULL},
    {6, "the forceps' mark accounts for the tourniquet", forceps_for_tourniquet, NULL},
    {7, "a roll-on tourniquet is not asked about", roll_not_asked, NULL},
    {8, "one person agrees alone", anyone_agrees, NULL},
    {9, "the look comes before the count", look_early, NULL},
    {10, "a tourniquet without condition", no_condition, NULL},
    {11, "a wrapper proves the item", wrapper_counts, NULL},
    {12, "accepted and not stored", not_stored, NULL},
    {13, "UNDO names nothing", undo_names_nothing, NULL},
    {14, "the clock runs by the wall", by_the_wall, NULL},
    {15, "says safe", says_safe, NULL},
    {16, "ends unresolved without a search", ends_without_search, NULL},
    {17, "a full sheet that does not say: by hand", full_in_silence, NULL},
    {18, "another room's card acts", any_rooms_card, NULL},
    {19, "a question without a next step", silence, NULL},
    {20, "something of a wristband is kept", keeps_wristband, NULL},
    {3, "the clock of a stored digit card waits", stored_waits, NULL},
    {17, "stored scans wait and nobody is asked", stored_unasked, NULL},
    {19, "stored scans take the place of the open question", stored_interrupts, NULL},
    {21, "a found item acts on no case", found_nowhere, NULL},
    {22, "the same answer again is entered again", read_twice_entered, NULL},
    {22, "things alike are answered one by one", alike_one_by_one, NULL},
    {23, "a refusal that asks for nothing", refused_without_a_deed, NULL},
    {23, "only the ordinary deed is asked for", .spoil_next = only_the_ordinary},
    {23, "the same answer is asked for again without NEXT between", .spoil_next = never_next},
    {24, "a pack scanned in one room is owed in the other", charged_elsewhere, NULL},
    {24, "one thing stands on two sheets", stands_on_both, NULL},
};
const int n_saboteurs = sizeof saboteurs / sizeof *saboteurs;
