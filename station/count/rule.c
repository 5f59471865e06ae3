#include "count/rule.h"

#include <stdio.h>

#include "code/own-codes.h"

const char *rule_text(enum rule rule)
{
	static const char *const texts[RULE_MAX + 1] = {
#define X(number, name, text) [number] = text,
	    RULES(X)
#undef X
	};
	return texts[rule];
}

struct say rule_1_owed(const struct sheet *s)
{
	int digit = sheet_first_digit_on(s), item = sheet_next_open(s);
	if (digit)
		return *SAY(TOURNIQUET_IS_ON, .digit = digit);
	if (s->debts.count)
		return *SAY(OWED, .what = debt_saying((enum debt_kind)s->debts.list[0].kind));
	if (sheet_missing(s))
		return *SAY(ITEMS_NOT_RIGHT, .n = sheet_missing(s));
	if (s->final != FINAL_AGREED && item && s->final == FINAL_ASKING)
		return *SAY(NOT_ACCOUNTED_FOR, .item = sheet_item_const(s, item)->thing.name);
	if (s->final != FINAL_AGREED)
		return *SAY(FINAL_NOT_AGREED);
	if ((digit = sheet_next_look(s)))
		return *SAY(BARE_NOT_LOOKED_AT, .digit = digit);
	if (s->single && s->n_digits && !s->who_looked)
		return *SAY(WHO_LOOKED_NOT_SAID);
	return *SAY(SOMETHING_OWED);
}

static uint32_t bit(enum rule r)
{
	return 1u << r;
}

/* A sheet that is ready for the sign-out, held against rule 1 word by word and by its own reading of the
 * items, not by the function that the decision uses. */
static uint32_t check_ready(const struct sheet *s)
{
	uint32_t broken = 0;
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (it->place == ITEM_HERE || it->place == ITEM_ON || it->place == ITEM_EXTRA)
			broken |= bit(RULE_ENDS_RECONCILED);
		if (it->place == ITEM_OFF)
			broken |= bit(RULE_ENDS_RECONCILED) | bit(RULE_OFF_IS_NOT_ACCOUNTED);
	}
	for (int i = 0; i < s->n_digits; i++) {
		const struct digit *d = &s->digits[i];
		if (digit_is_on(d))
			broken |= bit(RULE_ENDS_RECONCILED);
		if (d->had && !d->seen_bare)
			broken |= bit(RULE_ENDS_RECONCILED) | bit(RULE_COUNT_LOOK_DRESSING);
	}
	if (!s->single && !s->initial_agreed)
		broken |= bit(RULE_AGREED_ALOUD);
	return broken;
}

static uint32_t check_item(const struct sheet *s, const struct item *it)
{
	uint32_t broken = 0;
	const struct digit *d = sheet_digit_const(s, it->digit);
	if (it->place == ITEM_ACCOUNTED && it->evidence == EVIDENCE_NONE)
		broken |= bit(RULE_EVIDENCE);
	if (it->place == ITEM_ACCOUNTED && it->evidence == EVIDENCE_MARK &&
	    it->thing.identity_kind != IDENTITY_MARK)
		broken |= bit(RULE_EVIDENCE);
	if (it->place == ITEM_ACCOUNTED && it->shown != it->pieces)
		broken |= bit(RULE_EVIDENCE);
	if (it->place == ITEM_ACCOUNTED && role_has(it->thing.role, TRAIT_CONDITION) &&
	    it->condition != CONDITION_INTACT && it->condition != CONDITION_CUT_COMPLETE)
		broken |= bit(RULE_CONDITION);
	if (it->place == ITEM_ON && (!d || (d->state != DIGIT_ON && d->state != DIGIT_MAYBE_ON)))
		broken |= bit(RULE_FACTS_FIRST);
	return broken;
}

static uint32_t check_digit(const struct sheet *s, const struct digit *d)
{
	uint32_t broken = 0;
	if (d->state == DIGIT_ON && !sheet_item_on(s, d->number, TRAIT_TIMED))
		broken |= bit(RULE_FACTS_FIRST) | bit(RULE_SEPARATE_LINES);
	if (d->state == DIGIT_ON && !s->initial_agreed && !debts_has(&s->debts, DEBT_COUNT))
		broken |= bit(RULE_FACTS_FIRST);
	if (d->state == DIGIT_MAYBE_ON && !debts_has(&s->debts, DEBT_ON))
		broken |= bit(RULE_FACTS_FIRST);
	if (d->seen_bare && s->final != FINAL_AGREED)
		broken |= bit(RULE_COUNT_LOOK_DRESSING);
	return broken;
}

uint32_t rule_check(const struct sheet *s)
{
	uint32_t broken = 0;
	if (!s->case_no)
		return 0;
	for (int i = 0; i < s->n_items; i++)
		broken |= check_item(s, &s->items[i]);
	for (int i = 0; i < s->n_digits; i++)
		broken |= check_digit(s, &s->digits[i]);
	if (s->final == FINAL_AGREED && sheet_open_items(s))
		broken |= bit(RULE_ENDS_RECONCILED);
	if (s->final != FINAL_NONE && sheet_digits_on(s))
		broken |= bit(RULE_COUNT_LOOK_DRESSING);
	if (ready_to_sign_out(s))
		broken |= check_ready(s);
	return broken;
}

static int stands_elsewhere(const struct station *st, int sheet, const char *identity)
{
	for (int k = sheet + 1; k < SHEETS_MAX; k++) {
		int item = st->sheets[k].case_no ? sheet_item_by_identity(&st->sheets[k], identity) : 0;
		const struct item *it = sheet_item_const(&st->sheets[k], item);
		if (it && it->place != ITEM_RETURNED)
			return 1;
	}
	return 0;
}

uint32_t rule_check_all(const struct station *st)
{
	uint32_t broken = 0;
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i];
		broken |= rule_check(s);
		for (int k = 0; s->case_no && k < s->n_items; k++)
			if (s->items[k].place != ITEM_STRUCK && s->items[k].place != ITEM_RETURNED &&
			    s->items[k].thing.identity[0] &&
			    stands_elsewhere(st, i, s->items[k].thing.identity))
				broken |= bit(RULE_ONE_SHEET) | bit(RULE_INNOCENCE);
	}
	return broken;
}

static int asks_stored(int q)
{
	return q == Q_STORED || q == Q_TWICE;
}

uint32_t rule_check_stored(const struct station *st, int32_t room)
{
	uint32_t broken = 0;
	int held = 0, running = station_sheet_of_room(st, room), suspended = station_suspended_in(st, room);
	int idle = (int)station_idle_asked(st, room),
	    asked = running >= 0 ? st->sheets[running].asked.what : idle;
	for (int i = 0; i < st->n_held; i++)
		held += st->held[i].room == room;
	if (running >= 0 && asks_stored(idle))
		broken |= bit(RULE_ONE_QUESTION);
	if (suspended >= 0 && asks_stored(st->sheets[suspended].asked.what))
		broken |= bit(RULE_ONE_QUESTION);
	if (asks_stored(asked) && !held)
		broken |= bit(RULE_ONE_QUESTION);
	if (held && !asked)
		broken |= bit(RULE_DISTRUST);
	return broken;
}
