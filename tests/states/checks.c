/* The rules, held against a step from outside: what the count decided is looked at as events and words, not
 * with the functions that decided it. */
#include <string.h>
#include <strings.h>

#include "walk.h"

static uint32_t bit(int rule)
{
	return 1u << rule;
}

static const struct event *find(const struct outcome *o, enum event_kind kind)
{
	for (int i = 0; i < o->count; i++)
		if (o->events[i].kind == kind)
			return &o->events[i];
	return NULL;
}

/* Rule 1, word for word, on the sheet as it was when the case ended. */
static uint32_t check_reconciled(const struct sheet *s)
{
	int bad = s->final != FINAL_AGREED || s->debts.count || s->discrepancy;
	for (int i = 0; i < s->n_items; i++) {
		int place = s->items[i].place;
		bad |= place == ITEM_HERE || place == ITEM_ON || place == ITEM_OFF || place == ITEM_EXTRA;
	}
	for (int i = 0; i < s->n_digits; i++) {
		bad |= s->digits[i].state == DIGIT_ON || s->digits[i].state == DIGIT_MAYBE_ON;
		bad |= s->digits[i].had && !s->digits[i].seen_bare;
	}
	return bad || !s->signed_out ? bit(RULE_ENDS_RECONCILED) : 0;
}

static uint32_t check_end(const struct step_taken *s)
{
	const struct event *end = find(s->out, EV_CASE_ENDED);
	if (!end || !s->at_end)
		return 0;
	if (end->what == END_RECONCILED)
		return check_reconciled(s->at_end);
	if (end->what == END_UNRESOLVED) {
		const struct event *signed_out = find(s->out, EV_SIGNED_OUT);
		const struct person *p =
		    signed_out ? staff_find(&s->world->station.staff, signed_out->person) : NULL;
		int surgeon = p && (p->kind == STAFF_SURGEON || s->before->single);
		if (!s->before->discrepancy || s->before->search_done < s->world->station.policy.n_search ||
		    !surgeon)
			return bit(RULE_UNRESOLVED);
	}
	if (end->what == END_CANCELLED && sheet_open_items(s->at_end))
		return bit(RULE_ENDS_RECONCILED);
	return 0;
}

/* Rule 2: the tourniquet leaves 'off' only by being shown, going on again, or being returned, struck or
 * isolated. */
static uint32_t check_off(const struct step_taken *s)
{
	if (s->before->case_no != s->after->case_no || find(s->out, EV_UNDONE))
		return 0;
	for (int i = 0; i < s->before->n_items; i++) {
		const struct item *was = &s->before->items[i], *is = &s->after->items[i];
		if ((was->place != ITEM_OFF && was->place != ITEM_ON) || is->place != ITEM_ACCOUNTED ||
		    was->thing.role != ROLE_TOURNIQUET)
			continue;
		int shown = 0;
		for (int k = 0; k < s->out->count; k++)
			shown |= s->out->events[k].kind == EV_ITEM_SHOWN && s->out->events[k].item == i + 1;
		if (!shown || s->in->act == ACT_TICK || (s->in->act == ACT_CARD && s->in->card == CARD_OFF))
			return bit(RULE_OFF_IS_NOT_ACCOUNTED);
	}
	return 0;
}

/* Rule 3: a digit card is never refused while that digit could bear a tourniquet, and starts its clock, asks,
 * or answers what was asked; nothing but OFF (or an answer NO, MISREAD, UNDO, the end) stops one. */
static uint32_t check_facts(const struct step_taken *s)
{
	uint32_t broken = 0;
	int moving = s->before->asked.what == Q_MOVE_TO || s->before->asked.what == Q_HANDOVER_SEEN;
	if (s->in->act == ACT_DIGIT && s->in->card_room == s->in->room && !moving) {
		const struct digit *d = sheet_digit_const(s->after, s->in->digit);
		if (s->out->reply.verdict == VERDICT_REFUSED && s->after->n_digits < DIGITS_MAX &&
		    s->after->n_items < ITEMS_MAX)
			broken |= bit(RULE_FACTS_FIRST);
		if (!d && s->after->n_digits < DIGITS_MAX && s->after->n_items < ITEMS_MAX)
			broken |= bit(RULE_FACTS_FIRST);
	}
	if (s->before->case_no != s->after->case_no)
		return broken;
	for (int i = 0; i < s->before->n_digits; i++) {
		const struct digit *was = &s->before->digits[i],
		                   *is = sheet_digit_const(s->after, was->number);
		int ran = was->state == DIGIT_ON, runs = is && is->state == DIGIT_ON;
		int may = s->in->act == ACT_CARD && (s->in->card == CARD_OFF || s->in->card == CARD_UNDO);
		may |= s->before->asked.what == Q_WHICH_OFF || s->before->asked.what == Q_MOVE_TO;
		if (ran && !runs && !may)
			broken |= bit(RULE_FACTS_FIRST);
	}
	return broken;
}

/* Rules 4, 5, 7, 11 at counting in and at accounting for. */
static uint32_t check_items(const struct step_taken *s)
{
	uint32_t broken = 0;
	const struct thing *th = &s->in->thing;
	int scanned = s->in->act == ACT_THING;
	for (int i = 0; i < s->out->count; i++) {
		const struct event *e = &s->out->events[i];
		if (e->kind == EV_ITEM_IN && scanned && s->before->asked.what != Q_ISOLATE) {
			if (s->in->known.used_in && th->single_use)
				broken |= bit(RULE_ONE_SHEET);
			int on = sheet_item_by_identity(s->before, th->identity);
			if (on && s->before->items[on - 1].place != ITEM_RETURNED)
				broken |= bit(RULE_ONE_SHEET);
			if ((th->expiry && th->expiry < 20200101) || th->role == ROLE_REFUSED)
				broken |= bit(RULE_REFUSED_AT_COUNT_IN);
			if (th->rolls_on && s->after->asked.what != Q_ROLLS_ON)
				broken |= bit(RULE_ROLL_ON);
		}
		if (e->kind == EV_ITEM_SHOWN && scanned && th->identity_kind != IDENTITY_MARK)
			broken |= bit(RULE_EVIDENCE);
		if (e->kind == EV_ITEM_SHOWN) {
			const struct item *it = sheet_item_const(s->before, e->item);
			if (it && it->thing.role == ROLE_TOURNIQUET && !e->other)
				broken |= bit(RULE_CONDITION);
			/* Forceps never count for the tourniquet, nor the other way about. */
			if (it && scanned && strcmp(it->thing.identity, th->identity) != 0)
				broken |= bit(RULE_SEPARATE_LINES);
		}
	}
	if (s->in->act == ACT_UNKNOWN &&
	    (find(s->out, EV_ITEM_IN) || s->out->reply.verdict != VERDICT_REFUSED))
		broken |= bit(RULE_REFUSED_AT_COUNT_IN);
	return broken;
}

/* Rule 8. */
static uint32_t check_agreed(const struct step_taken *s)
{
	uint32_t broken = 0;
	for (int i = 0; i < s->out->count; i++) {
		const struct event *e = &s->out->events[i];
		if (e->kind != EV_COUNT_AGREED)
			continue;
		const struct person *field = staff_find(&s->world->station.staff, e->person);
		const struct person *circulating = staff_find(&s->world->station.staff, e->other);
		if (s->after->single || s->before->single) {
			if (!field || e->other)
				broken |= bit(RULE_AGREED_ALOUD);
			continue;
		}
		if (!field || !circulating || field == circulating ||
		    (!field->registered && !circulating->registered) || s->in->act != ACT_BADGE)
			broken |= bit(RULE_AGREED_ALOUD);
		if (s->world->station.policy.both_badges && e->what != COUNT_HANDOVER &&
		    s->in->number != e->person)
			broken |= bit(RULE_AGREED_ALOUD);
	}
	return broken;
}

static uint32_t check_look(const struct step_taken *s)
{
	if (find(s->out, EV_DIGIT_SEEN_BARE) && s->before->final != FINAL_AGREED)
		return bit(RULE_COUNT_LOOK_DRESSING);
	return 0;
}

/* Rules 12, 13, 14: accepted means that something goes to disk; nothing goes by another clock. */
static uint32_t check_record(const struct step_taken *s)
{
	uint32_t broken = 0;
	int again = strstr(s->out->reply.said, "ntered once") != NULL; /* rule 22 */
	if (s->in->act != ACT_TICK && s->out->count == 0 && !again)
		broken |= bit(RULE_ON_DISK);
	for (int i = 0; i < s->out->count; i++) {
		const struct event *e = &s->out->events[i];
		if (e->kind == EV_UNDONE && !e->ref)
			broken |= bit(RULE_NOTHING_EDITED);
		if (e->at.boot != s->in->at.boot || e->at.boot_ms > s->in->at.boot_ms)
			broken |= bit(RULE_CLOCK);
	}
	for (int i = 0; i < s->after->n_digits; i++) {
		const struct digit *d = &s->after->digits[i];
		struct moment later = s->in->at, set = later;
		later.boot_ms = set.boot_ms = d->since.boot_ms + 90 * 60000;
		set.wall_ms -= 86400000; /* somebody sets the wall clock back by a day */
		if (d->state == DIGIT_ON && (digit_stretch_ms(d, later) != d->known_ms + 90 * 60000 ||
		                             digit_stretch_ms(d, set) != digit_stretch_ms(d, later)))
			broken |= bit(RULE_CLOCK);
	}
	return broken;
}

static int has_word(const char *text, const char *word)
{
	size_t n = strlen(word);
	for (const char *p = text; *p; p++)
		if (strncasecmp(p, word, n) == 0)
			return 1;
	return 0;
}

/* Rules 15, 17, 19, 20: the words. */
static uint32_t check_words(const struct step_taken *s)
{
	const struct reply *r = &s->out->reply;
	uint32_t broken = 0;
	if (s->in->act == ACT_TICK && !s->out->count)
		return 0;
	if (s->in->act == ACT_TICK && !r->said[0])
		return 0; /* a mark in time says nothing */
	if (has_word(r->said, "safe") || has_word(r->said, "all clear") || has_word(r->next.words, "safe"))
		broken |= bit(RULE_WORDS);
	if (!r->said[0] || !r->next.words[0])
		broken |= bit(RULE_ONE_QUESTION);
	if (has_word(r->said, "sheet is full") && !has_word(r->said, "by hand"))
		broken |= bit(RULE_DISTRUST);
	if (s->in->act == ACT_PATIENT)
		for (int i = 0; i < s->out->count; i++)
			if (s->out->events[i].kind != EV_REFUSED && s->out->events[i].kind != EV_RESUMED)
				broken |= bit(RULE_NO_PATIENT);
	return broken;
}

static uint32_t check_rooms(const struct step_taken *s)
{
	uint32_t broken = 0;
	if (s->in->act == ACT_CARD && s->in->card_room != s->in->room)
		for (int i = 0; i < s->out->count; i++)
			if (s->out->events[i].kind != EV_REFUSED && s->out->events[i].kind != EV_RESUMED)
				broken |= bit(RULE_ROOM);
	for (int i = 0; i < s->out->count; i++) {
		const struct event *e = &s->out->events[i];
		if (e->kind == EV_FOUND_AFTER && (!e->case_no || e->case_no == s->before->case_no))
			broken |= bit(RULE_FOUND_AFTER);
	}
	return broken;
}

/* Rules 3, 17 and 19 for scans that a scanner had stored: their digit's clock runs at once, nothing else is entered
 * and no open question is closed before the room has said whose they are; and no other answer ends their wait. */
static uint32_t check_stored(const struct step_taken *s)
{
	uint32_t broken = 0;
	int running = s->before->case_no && !s->before->suspended;
	int about = s->before->asked.what == Q_STORED || s->before->asked.what == Q_TWICE;
	if (running && !about && !s->in->held && s->held_after < s->held_before)
		broken |= bit(RULE_ONE_QUESTION);
	if (s->in->act != ACT_STORED)
		return broken;
	if (s->held_after < s->held_before || s->after->n_items != s->before->n_items)
		broken |= bit(RULE_DISTRUST);
	int void_now =
	    s->before->final == FINAL_AGREED && s->after->final != FINAL_AGREED; /* its questions too */
	if (running && s->before->asked.what && s->after->asked.what != s->before->asked.what && !void_now)
		broken |= bit(RULE_ONE_QUESTION);
	for (int i = 0; i < s->in->n_stored; i++) {
		const struct digit *d = sheet_digit_const(s->after, s->in->stored[i].digit);
		if (s->in->stored[i].act == ACT_DIGIT && (!d || (!digit_is_on(d) && !d->had)))
			broken |= bit(RULE_FACTS_FIRST);
	}
	return broken;
}

uint32_t step_check(const struct step_taken *s)
{
	return rule_check(s->after) | check_end(s) | check_off(s) | check_facts(s) | check_items(s) |
	       check_agreed(s) | check_look(s) | check_record(s) | check_words(s) | check_rooms(s) |
	       check_stored(s);
}
