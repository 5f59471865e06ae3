/* Counts: the final count line by line, the discrepancy and its search, agreeing aloud (rules 1, 8, 10, 11).
 */
#include <stdio.h>
#include <string.h>

#include "count/turn.h"

void final_begin(struct turn *t)
{
	int on = sheet_first_digit_on(t->s);
	if (!sheet_holds_any(t->s)) {
		refuse(t, "Nothing is on the sheet: there is nothing to count yet.");
		return;
	}
	if (on) {
		refuse(t, "A tourniquet is on the %s: take it off first, scan its digit card and OFF.",
		       own_digit_name(on));
		return;
	}
	if (!t->s->initial_agreed && !t->s->single) {
		refuse(t, "The initial count was not agreed: count aloud what was opened, then the "
		          "circulating badge, "
		          "then FINAL COUNT.");
		return;
	}
	close_question(t);
	EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
	turn_accept(t, t->s->discrepancy ? "Counting again, line by line." : "Final count, line by line.");
	final_progress(t);
}

static void open_discrepancy(struct turn *t)
{
	if (!t->s->discrepancy) {
		EMIT(t, .kind = EV_DISCREPANCY, .n = 1);
		queue_slip(t, SLIP_DISCREPANCY, t->s->case_no);
	}
	int first = t->out->events[t->out->count - 1].kind == EV_SLIP_QUEUED;
	char *said = t->out->reply.said;
	size_t used = strlen(said);
	snprintf(said + used, SAID_MAX - used, "%s%s", used ? " " : "",
	         first ? "DISCREPANCY: say it aloud. The discrepancy slip prints now."
	               : "Still not accounted for: the search goes on.");
}

/* After each answer: is a line still to be asked, is something missing, or can the count be agreed? */
void final_progress(struct turn *t)
{
	if (t->s->final != FINAL_ASKING || sheet_next_open(t->s))
		return;
	if (sheet_missing(t->s)) {
		open_discrepancy(t);
		return;
	}
	if (t->s->discrepancy)
		EMIT(t, .kind = EV_DISCREPANCY, .n = 0);
	state_final(t);
}

/* A lone operator states the final count by answering its last line, once it is known who that is. */
void state_final(struct turn *t)
{
	int32_t who = t->s->team.at[PLACE_FIELD];
	if (t->s->single && who && is_ready_to_agree(t->s))
		EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_FINAL, .person = who, .n = who);
}

static const char *search_place(const struct turn *t)
{
	int step = t->s->search_done;
	return t->s->discrepancy && step < t->station->policy.n_search ? t->station->policy.search[step] : "";
}

static void shown(struct turn *t, int item, int n, enum evidence evidence, enum condition condition,
                  const char *remark)
{
	struct event e = {.kind = EV_ITEM_SHOWN,
	                  .item = (uint8_t)item,
	                  .n = n,
	                  .what = (uint8_t)evidence,
	                  .other = (int32_t)condition};
	int found = sheet_item_const(t->s, item)->missing != 0;
	snprintf(e.text, sizeof e.text, "%s", *remark || !found ? remark : search_place(t));
	close_question(t);
	emit(t, &e);
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place != ITEM_ACCOUNTED)
		turn_accept(t, "%s: %d of %d shown%s.", it->thing.name, it->shown, it->pieces,
		            condition == CONDITION_PIECES_MISSING ? ", pieces missing" : "");
	else
		turn_accept(t, "%s %s: %s, %d of %d.", found ? "Found," : "Accounted for:", it->thing.name,
		            evidence == EVIDENCE_MARK             ? "its mark was read"
		            : condition == CONDITION_CUT_COMPLETE ? "shown cut and complete"
		            : condition == CONDITION_INTACT       ? "shown intact"
		                                                  : "shown to both",
		            it->shown, it->pieces);
	final_progress(t);
}

/* The open item that an answer is about: the one the board asks for, or a missing one that was found. */
static int asked_item(const struct turn *t, int tourniquet)
{
	int next = t->s->asked.what == Q_FOUND ? t->s->asked.item : sheet_next_open(t->s);
	if (next && (sheet_item_const(t->s, next)->thing.role == ROLE_TOURNIQUET) == tourniquet)
		return next;
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = &t->s->items[i - 1];
		if (item_open(it) && it->place != ITEM_EXTRA && it->place != ITEM_ON &&
		    (it->thing.role == ROLE_TOURNIQUET) == tourniquet && (t->s->discrepancy || !it->missing))
			return i;
	}
	return 0;
}

static void answer_missing(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	EMIT(t, .kind = EV_ITEM_NOT_SHOWN, .item = (uint8_t)item, .n = it->pieces - it->shown);
	turn_accept(t, "NOT THERE: %s, %d of %d.", it->thing.name, it->shown, it->pieces);
	final_progress(t);
}

static void answer_condition(struct turn *t, enum condition condition)
{
	int item = asked_item(t, 1);
	if (!item) {
		refuse(t, "No tourniquet is asked for now.");
		return;
	}
	shown(t, item, sheet_item_const(t->s, item)->pieces, EVIDENCE_SHOWN, condition, "");
}

static void answer_number(struct turn *t, int item, int number)
{
	const struct item *it = sheet_item_const(t->s, item);
	if (number > it->pieces) {
		struct thing th = it->thing;
		th.identity[0] = 0;
		EMIT(t, .kind = EV_EXTRA, .item = (uint8_t)(t->s->n_items + 1), .thing = th,
		     .n = number - it->pieces);
		shown(t, item, it->pieces, EVIDENCE_SHOWN, CONDITION_NONE, "");
		return;
	}
	shown(t, item, number, EVIDENCE_SHOWN, CONDITION_NONE, "");
}

/* YES, NO, MISSING, INTACT … and SHOWN n while the final count or a search asks. `number` for SHOWN n. */
void final_answer(struct turn *t, int card, int number)
{
	if (card == CARD_INTACT || card == CARD_CUT_AND_COMPLETE || card == CARD_PIECES_MISSING) {
		answer_condition(t, card == CARD_INTACT             ? CONDITION_INTACT
		                    : card == CARD_CUT_AND_COMPLETE ? CONDITION_CUT_COMPLETE
		                                                    : CONDITION_PIECES_MISSING);
		return;
	}
	int next = sheet_next_open(t->s);
	if (card == CARD_NO || card == CARD_MISSING) {
		if (next)
			answer_missing(t, next);
		else
			refuse(t, "Nothing is asked for now that could be missing.");
		return;
	}
	int item = t->s->asked.what == Q_FOUND && t->s->asked.item ? t->s->asked.item
	           : next                                          ? next
	                                                           : asked_item(t, 0);
	if (!item) {
		refuse(t, "Nothing is asked for now.");
		return;
	}
	const struct item *it = sheet_item_const(t->s, item);
	if (it->thing.role == ROLE_TOURNIQUET)
		refuse(t, "%s: say how it is: scan INTACT, CUT AND COMPLETE or PIECES MISSING.",
		       it->thing.name);
	else if (card == CARD_MARK_UNREADABLE)
		shown(t, item, it->pieces, EVIDENCE_SHOWN, CONDITION_NONE, "mark unreadable");
	else
		answer_number(t, item, card == CARD_YES ? it->pieces : number);
}

/* An item that is on the sheet was scanned while it is being accounted for (rule 11). */
void final_mark(struct turn *t, int item)
{
	const struct item *it = sheet_item_const(t->s, item);
	if (it->place == ITEM_ACCOUNTED) {
		refuse(t, "%s is accounted for already.", it->thing.name);
	} else if (it->thing.identity_kind != IDENTITY_MARK) {
		refuse(t,
		       "That is the wrapper: it proves that a pack was opened, not where the %s is. Show the "
		       "item "
		       "itself.",
		       it->thing.name);
	} else if (it->thing.role == ROLE_TOURNIQUET) {
		refuse(t,
		       "Its mark was read; now say how it is: INTACT, CUT AND COMPLETE or PIECES MISSING.");
	} else if (it->place == ITEM_ON) {
		refuse(t, "%s is on the %s: take it off first.", it->thing.name, own_digit_name(it->digit));
	} else if (it->place == ITEM_EXTRA) {
		refuse(t, "%s is the extra item.", it->thing.name);
	} else {
		shown(t, item, it->pieces, EVIDENCE_MARK, CONDITION_NONE, "");
	}
}

/* --- agreeing aloud ----------------------------------------------------------------------------- */

static void agreed(struct turn *t, enum count_kind kind, int32_t recorded_by, const char *what)
{
	int32_t field = t->s->team.at[PLACE_FIELD], circulating = t->s->team.at[PLACE_CIRCULATING];
	EMIT(t, .kind = EV_COUNT_AGREED, .what = (uint8_t)kind, .person = field, .other = circulating,
	     .n = recorded_by);
	if (debts_has(&t->s->debts, DEBT_ADDED))
		pay(t, DEBT_ADDED, 0, 0, "agreed aloud");
	if (kind == COUNT_INITIAL && debts_has(&t->s->debts, DEBT_COUNT))
		pay(t, DEBT_COUNT, 0, 0, "agreed aloud after the tourniquet went on");
	close_question(t);
	turn_accept(t, "%s agreed aloud by %s and %s, recorded by %s.", what,
	            staff_name(&t->station->staff, field), staff_name(&t->station->staff, circulating),
	            staff_name(&t->station->staff, recorded_by));
}

static enum count_kind pending(const struct sheet *s)
{
	if (is_ready_to_agree(s))
		return COUNT_FINAL;
	if (!s->initial_agreed && s->n_items)
		return COUNT_INITIAL;
	if (debts_has(&s->debts, DEBT_ADDED))
		return COUNT_ADDED;
	return 0;
}

/* A tourniquet that no pack or catalogue lists was named aloud; the badge records that it was. */
void named_aloud(struct turn *t)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	pay(t, DEBT_LISTING, d->item, 0, "named aloud, not in the catalogue");
	close_question(t);
	turn_accept(
	    t,
	    "Noted: the tourniquet that is not listed was named aloud. Write on the paper sheet what it is.");
}

/* The circulating badge, or under a policy of both badges the second of the two. */
void agree(struct turn *t, int32_t badge)
{
	static const char *const names[] = {"", "Initial count", "Final count", "Handover count",
	                                    "What was added"};
	enum count_kind kind = pending(t->s);
	const char *why = team_may_not_agree(&t->s->team, &t->station->staff);
	if (!kind && debts_has(&t->s->debts, DEBT_LISTING)) {
		named_aloud(t);
		return;
	}
	if (!kind) {
		refuse(t, t->s->discrepancy
		              ? "The count cannot be agreed: something is missing, extra or in pieces."
		              : "No count waits for a badge now.");
		return;
	}
	if (why) {
		refuse(t, "The count cannot be agreed: %s.", why);
		return;
	}
	if (t->station->policy.both_badges && t->s->asked.what != Q_FIELD_TOO) {
		ask(t, (struct asked){.what = Q_FIELD_TOO, .n = (int32_t)kind, .person = badge},
		    "%s: circulating badge read.", names[kind]);
		return;
	}
	int32_t recorded = t->s->asked.what == Q_FIELD_TOO ? t->s->asked.person : badge;
	agreed(t, kind, recorded, names[kind]);
}
