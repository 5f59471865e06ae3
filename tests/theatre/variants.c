/* Broken variants of the station, one a check at least. They are here and nowhere else. */
#include "variants.h"

#include <stdio.h>
#include <string.h>

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
	size_t i = (size_t)(e - o->events);
	memmove(e, e + 1, sizeof *e * ((size_t)o->count - i - 1));
	o->count--;
}

static void push(struct outcome *o, const struct input *in, int32_t case_no, struct event e)
{
	if (o->count == OUTCOME_EVENTS_MAX || !case_no)
		return;
	e.at = in->at;
	e.room = in->room;
	e.case_no = case_no;
	o->events[o->count++] = e;
}

#define SPOIL(name) static void name(struct outcome *o, const struct input *in, const struct sheet *before)
#define UNUSED (void)in, (void)before

SPOIL(no_is_yes) /* what is not there counts as shown */
{
	UNUSED;
	for (int i = 0; i < o->count; i++) {
		struct event *e = &o->events[i];
		if (e->kind == EV_DISCREPANCY || (e->kind == EV_SLIP_QUEUED && e->what == SLIP_DISCREPANCY))
			drop(o, e), i--;
		else if (e->kind == EV_ITEM_NOT_SHOWN) {
			e->kind = EV_ITEM_SHOWN;
			e->what = EVIDENCE_SHOWN;
			e->other =
			    before->items[e->item - 1].thing.role == ROLE_TOURNIQUET ? CONDITION_INTACT : 0;
		}
	}
}

SPOIL(says_nothing_of_it)
{
	UNUSED;
	if (in->act == ACT_DIGIT || in->act == ACT_THING)
		snprintf(o->reply.said, sizeof o->reply.said, "Theatre 1, Minor injuries: entered.");
}

SPOIL(starts_late)
{
	struct event *e = find(o, EV_DIGIT_ON);
	UNUSED;
	if (e)
		e->at.boot_ms += 240000;
}

SPOIL(starts_early) /* and so 'at least' is too much after a power cut */
{
	struct event *e = find(o, EV_DIGIT_ON);
	UNUSED;
	if (e)
		e->at.boot_ms -= 240000;
}

SPOIL(reminds_never)
{
	UNUSED;
	drop(o, find(o, EV_REMINDED));
}

SPOIL(reminds_of_less)
{
	struct event *e = find(o, EV_REMINDED);
	UNUSED;
	if (e)
		e->n /= 2;
}

SPOIL(card_takes_off) /* the digit card of a tourniquet that is on takes it off */
{
	struct event *e = find(o, EV_ASKED);
	if (!e || e->what != Q_OFF || in->act != ACT_DIGIT)
		return;
	int item = sheet_item_on(before, in->digit, TRAIT_TIMED);
	if (item)
		push(o, in, before->case_no,
		     (struct event){.kind = EV_ITEM_OFF, .item = (uint8_t)item, .digit = (uint8_t)in->digit});
	push(o, in, before->case_no, (struct event){.kind = EV_DIGIT_OFF, .digit = (uint8_t)in->digit});
}

SPOIL(first_the_count) /* no clock before the count is agreed */
{
	if (in->act != ACT_DIGIT || before->initial_agreed || !before->case_no)
		return;
	o->count = 0;
	o->sheet = *before;
	o->reply.verdict = VERDICT_REFUSED;
	snprintf(o->reply.said, sizeof o->reply.said,
	         "Theatre 1, Minor injuries: agree the initial count first.");
}

static void reads_count_again(struct stage *g, struct input *in)
{
	in->repeated = 0;
	for (int i = 0; i < SHEETS_MAX; i++)
		g->st.sheets[i].last_answer = 0;
}

static void forgets_no(struct stage *g, struct input *in)
{
	if (in->act == ACT_CARD && (in->card == CARD_NO || in->card == CARD_MISSING))
		in->card = CARD_AWAKE_PATIENT;
	(void)g;
}

SPOIL(two_sheets) /* what stands on another sheet is counted in here as well */
{
	if (in->act == ACT_THING && before->case_no && in->thing.identity[0] && find(o, EV_REFUSED) &&
	    !sheet_item_by_identity(before, in->thing.identity) && before->final == FINAL_NONE)
		push(o, in, before->case_no,
		     (struct event){.kind = EV_ITEM_IN,
		                    .item = (uint8_t)(before->n_items + 1),
		                    .thing = in->thing,
		                    .n = 1});
}

SPOIL(charges_this_case) /* found of an earlier case, and this one gets the addendum */
{
	struct event *e = find(o, EV_FOUND_AFTER);
	(void)in;
	if (e && before->case_no)
		e->case_no = before->case_no;
}

SPOIL(forgets_its_question)
{
	UNUSED;
	if (o->reply.verdict != VERDICT_QUESTION)
		return;
	drop(o, find(o, EV_ASKED));
	o->sheet.asked = (struct asked){0};
}

SPOIL(no_room)
{
	UNUSED;
	char *colon = strstr(o->reply.said, ": ");
	if (colon)
		memmove(o->reply.said, colon + 2, strlen(colon + 2) + 1);
}

SPOIL(no_condition)
{
	struct event *e = find(o, EV_ITEM_SHOWN);
	UNUSED;
	if (e)
		e->other = CONDITION_NONE;
}

SPOIL(no_next)
{
	UNUSED;
	if (o->reply.verdict == VERDICT_REFUSED)
		o->reply.next.words[0] = 0;
}

SPOIL(unknown_item)
{
	struct event *e = find(o, EV_ITEM_SHOWN);
	UNUSED;
	if (e)
		e->item = 99;
}

const struct variant variants[] = {
    {"no-is-yes", CHECK_TRACED, NULL, no_is_yes},
    {"reply-names-nothing", CHECK_NAMED, NULL, says_nothing_of_it},
    {"clock-starts-late", CHECK_MINUTES, NULL, starts_late},
    {"clock-starts-early", CHECK_MINUTES, NULL, starts_early},
    {"reminds-never", CHECK_REMINDER, NULL, reminds_never},
    {"reminds-of-less", CHECK_REMINDER, NULL, reminds_of_less},
    {"card-takes-off", CHECK_BARE, NULL, card_takes_off},
    {"first-the-count", CHECK_FACTS, NULL, first_the_count},
    {"repeats-count", CHECK_REPEAT, reads_count_again, NULL},
    {"no-is-nothing", CHECK_NO_DEAD_END, forgets_no, NULL},
    {"two-sheets", CHECK_INNOCENCE, NULL, two_sheets},
    {"charges-this-case", CHECK_INNOCENCE, NULL, charges_this_case},
    {"forgets-its-question", CHECK_ONE_QUESTION, NULL, forgets_its_question},
    {"no-room-named", CHECK_ROOM_NAMED, NULL, no_room},
    {"no-condition", CHECK_RULES, NULL, no_condition},
    {"no-next", CHECK_WORDS, NULL, no_next},
    {"unknown-item", CHECK_APPLIES, NULL, unknown_item},
};
const int n_variants = sizeof variants / sizeof *variants;
