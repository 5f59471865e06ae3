/* The next thing to do, in words, and the cards that fit now: one question, one step (rule 19). */
#include <stdio.h>
#include <string.h>

#include "count/turn.h"

static void ask_item(const struct sheet *s, int item, char *out)
{
	const struct item *it = sheet_item_const(s, item);
	if (it->thing.role == ROLE_TOURNIQUET && it->pieces > 1)
		snprintf(out, NEXT_MAX,
		         "Show all %d pieces of the %s: scan CUT AND COMPLETE or PIECES MISSING; NO if it is "
		         "not there.",
		         it->pieces, it->thing.name);
	else if (it->thing.role == ROLE_TOURNIQUET)
		snprintf(
		    out, NEXT_MAX,
		    "Show the %s: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.",
		    it->thing.name);
	else if (it->thing.identity_kind == IDENTITY_MARK)
		snprintf(out, NEXT_MAX,
		         "Show the %s: scan its mark, or YES when both have seen it; NO if it is not there.",
		         it->thing.name);
	else if (it->pieces > 1)
		snprintf(out, NEXT_MAX,
		         "Lay the %s side by side: YES for all %d, or SHOWN and the number; NO for none.",
		         it->thing.name, it->pieces);
	else
		snprintf(out, NEXT_MAX, "Show the %s: YES when both have seen it; NO if it is not there.",
		         it->thing.name);
}

static int search_step(const struct station *st, const struct sheet *s, char *out)
{
	if (!s->discrepancy || sheet_next_open(s) || !sheet_missing(s))
		return 0;
	if (s->search_done < st->policy.n_search)
		snprintf(out, NEXT_MAX, "Search %d of %d: %s. Scan STEP DONE, NOT DONE, or FOUND.",
		         s->search_done + 1, st->policy.n_search, st->policy.search[s->search_done]);
	else
		snprintf(out, NEXT_MAX,
		         "The search is complete. FOUND, FINAL COUNT to count again, or END UNRESOLVED by "
		         "the surgeon.");
	return 1;
}

static int open_question(const struct station *st, const struct sheet *s, char *out)
{
	if (!s->asked.what)
		return 0;
	if (s->asked.what == Q_POINT)
		snprintf(out, NEXT_MAX, "Sign-out %d of %d: %s Scan YES or NO.", (int)s->asked.n,
		         st->policy.n_points, st->policy.points[s->asked.n - 1]);
	else if (s->asked.what == Q_FOUND && s->asked.item)
		snprintf(out, NEXT_MAX, "Is it the %s? %s; NO if it is something else.",
		         sheet_item_const(s, s->asked.item)->thing.name,
		         sheet_item_const(s, s->asked.item)->thing.role == ROLE_TOURNIQUET
		             ? "Scan INTACT, CUT AND COMPLETE or PIECES MISSING"
		             : "Scan its mark, or YES");
	else if (s->asked.digit)
		snprintf(out, NEXT_MAX, "%s: %s.", own_digit_name(s->asked.digit),
		         question_words((enum question)s->asked.what));
	else
		snprintf(out, NEXT_MAX, "%s.", question_words((enum question)s->asked.what));
	capital(out);
	return 1;
}

static int reminder(const struct sheet *s, struct moment now, char *out)
{
	char min[80];
	for (int i = 0; i < s->n_digits; i++) {
		const struct digit *d = &s->digits[i];
		if (!d->reminded)
			continue;
		digit_minutes_text(d, now, min, sizeof min);
		if (d->state == DIGIT_OFF)
			snprintf(out, NEXT_MAX,
			         "Account for the tourniquet of the %s. Scan any badge to acknowledge.",
			         own_digit_name(d->number));
		else
			snprintf(
			    out, NEXT_MAX,
			    "Tourniquet on the %s for %s: tell the surgeon. Scan any badge to acknowledge.",
			    own_digit_name(d->number), min);
		return 1;
	}
	return 0;
}

static int team_step(const struct sheet *s, char *out)
{
	if (!s->team.at[PLACE_FIELD])
		snprintf(out, NEXT_MAX,
		         s->single ? "Scan the operator's badge."
		                   : "Scan the badge of the one at the field, before scrubbing.");
	else if (!s->single && !s->team.at[PLACE_CIRCULATING])
		snprintf(out, NEXT_MAX, "Scan the badge of the circulating practitioner.");
	else
		return 0;
	return 1;
}

static int debt_step(const struct sheet *s, char *out)
{
	if (!s->debts.count)
		return 0;
	const struct debt *d = &s->debts.list[0];
	snprintf(out, NEXT_MAX, "Owed%s%s: %s.", d->digit ? ", " : "",
	         d->digit ? own_digit_name(d->digit) : "", debt_words((enum debt_kind)d->kind));
	return 1;
}

static int any_had(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].had)
			return 1;
	return 0;
}

static void counting_in_step(const struct sheet *s, char *out)
{
	if (s->single)
		snprintf(out, NEXT_MAX,
		         s->n_items ? "When the tourniquet goes on: scan the digit card, then glove."
		                    : "Scan the tourniquet pack, and each instrument.");
	else
		snprintf(out, NEXT_MAX,
		         s->n_items
		             ? "Scan further packs and instruments. When both have counted aloud: scan "
		               "the circulating badge."
		             : "Scan each pack and instrument as it is counted in.");
}

static void final_step(const struct station *st, const struct sheet *s, char *out)
{
	int item = sheet_next_open(s), look = sheet_next_look(s);
	if (s->final == FINAL_ASKING && item)
		ask_item(s, item, out);
	else if (s->final == FINAL_ASKING && team_step(s, out))
		return;
	else if (s->final == FINAL_ASKING)
		snprintf(out, NEXT_MAX, "Agree the final count aloud, then scan the circulating badge.");
	else if (look)
		snprintf(out, NEXT_MAX,
		         "%sLook at the bare %s before the dressing, then scan its digit card.",
		         s->dressing_on ? "Take the dressing down. " : "", own_digit_name(look));
	else if (debt_step(s, out))
		return;
	else if (s->single && s->n_digits && !s->who_looked)
		snprintf(out, NEXT_MAX, "%s.", question_words(Q_WHO_LOOKED));
	else if (s->point_no)
		snprintf(out, NEXT_MAX, "Sign-out held: point %d is NO. Resolve it, then scan the %s badge.",
		         (int)s->point_no, s->single ? "operator's" : "surgeon's");
	else if (s->points_yes && s->points_yes == st->policy.n_points)
		snprintf(out, NEXT_MAX, "Each point is answered YES. Sign-out: scan the %s badge.",
		         s->single ? "operator's" : "surgeon's");
	else
		snprintf(out, NEXT_MAX,
		         s->single ? "Read the sign-out points aloud. If all are so, scan the operator's "
		                     "badge; if one is not, NO."
		                   : "Read the sign-out points aloud. If all are so, scan the surgeon's "
		                     "badge; if one is not, NO.");
}

void idle_step(int unseen, char *out)
{
	snprintf(out, NEXT_MAX,
	         unseen ? "When the paper is in your hand: scan the code on the slip. Next patient: scan NEW "
	                  "CASE."
	                : "Next patient: scan NEW CASE.");
}

void next_step(const struct station *st, const struct sheet *s, struct moment now, char out[NEXT_MAX])
{
	int on = s->case_no ? sheet_first_digit_on(s) : 0;
	if (!s->case_no)
		idle_step(st->n_unseen, out);
	else if (s->suspended)
		snprintf(out, NEXT_MAX,
		         "Case %d is suspended: SUSPEND continues it. Another patient: scan NEW CASE.",
		         (int)s->case_no);
	else if (open_question(st, s, out) || search_step(st, s, out))
		return;
	else if (s->final != FINAL_NONE)
		final_step(st, s, out);
	else if (reminder(s, now, out))
		return;
	else if (team_step(s, out))
		return;
	else if (!s->initial_agreed && !any_had(s))
		counting_in_step(s, out);
	else if (debt_step(s, out))
		return;
	else if (on)
		snprintf(out, NEXT_MAX, "When the tourniquet is off the %s: scan its digit card, then OFF.",
		         own_digit_name(on));
	else if (any_had(s) || s->cancelled)
		snprintf(out, NEXT_MAX, "Before the dressing: scan FINAL COUNT.");
	else
		snprintf(out, NEXT_MAX, "When the tourniquet is on: scan the digit card.");
}

struct fitting {
	int *cards, count;
};

static void fit(struct fitting *f, int card)
{
	for (int i = 0; i < f->count; i++)
		if (f->cards[i] == card)
			return;
	if (f->count < FITTING_MAX - 1)
		f->cards[f->count++] = card;
}

static void fit_question(struct fitting *f, enum question q)
{
	switch (q) {
	case Q_OFF:
		fit(f, CARD_OFF);
		fit(f, CARD_ADD);
		fit(f, CARD_NO);
		return;
	case Q_WHO_LOOKED:
		fit(f, CARD_LOOKED_PATIENT);
		fit(f, CARD_LOOKED_CARER);
		fit(f, CARD_LOOKED_COLLEAGUE);
		fit(f, CARD_LOOKED_NOBODY);
		return;
	case Q_FOUND:
		fit(f, CARD_INTACT);
		fit(f, CARD_CUT_AND_COMPLETE);
		fit(f, CARD_YES);
		fit(f, CARD_NO);
		return;
	case Q_INCIDENT:
		fit(f, CARD_NOT_DONE);
		return;
	case Q_HANDOVER_SEEN:
		fit(f, CARD_WITHOUT_FULL_SIGHT);
		return;
	case Q_IS_ON:
	case Q_ROLLS_ON:
	case Q_RIGHT_DIGIT:
	case Q_NO_CODE:
	case Q_EXTRA:
	case Q_CANCEL:
	case Q_LEAVES:
	case Q_POINT:
		fit(f, CARD_YES);
		fit(f, CARD_NO);
		return;
	case Q_NONE:
	case Q_WHICH_OFF:
	case Q_MOVE_TO:
	case Q_ADD:
	case Q_RETURNED:
	case Q_ISOLATE:
	case Q_DROPPED:
	case Q_HANDOVER_OUT:
	case Q_HANDOVER_IN:
	case Q_HANDOVER_AGREE:
	case Q_SURGEON_ENDS:
	case Q_VISITOR:
	case Q_FIELD_TOO:
	case QUESTION_KINDS:
		fit(f, CARD_NO);
		return;
	}
}

static void fit_final(struct fitting *f, const struct sheet *s)
{
	const struct item *it = sheet_item_const(s, sheet_next_open(s));
	if (it && it->thing.role == ROLE_TOURNIQUET) {
		fit(f, CARD_INTACT);
		fit(f, CARD_CUT_AND_COMPLETE);
		fit(f, CARD_PIECES_MISSING);
		fit(f, CARD_NO);
	} else if (it) {
		fit(f, CARD_YES);
		fit(f, CARD_NO);
		if (it->thing.identity_kind == IDENTITY_MARK)
			fit(f, CARD_MARK_UNREADABLE);
	}
	fit(f, CARD_INTERRUPTED);
}

int fitting_cards(const struct station *st, const struct sheet *s, int cards[FITTING_MAX])
{
	struct fitting f = {.cards = cards};
	memset(cards, 0, sizeof *cards * FITTING_MAX);
	if (!s->case_no) {
		fit(&f, CARD_NEW_CASE);
		return f.count;
	}
	if (s->asked.what) {
		fit_question(&f, (enum question)s->asked.what);
		return f.count;
	}
	if (s->discrepancy && !sheet_next_open(s) && sheet_missing(s)) {
		fit(&f, CARD_STEP_DONE);
		fit(&f, CARD_NOT_DONE);
		fit(&f, CARD_FOUND);
		fit(&f, CARD_FINAL_COUNT);
		if (s->search_done >= st->policy.n_search)
			fit(&f, CARD_END_UNRESOLVED);
	} else if (s->final == FINAL_ASKING) {
		fit_final(&f, s);
	} else if (sheet_digits_on(s)) {
		fit(&f, CARD_OFF);
		fit(&f, CARD_FORCEPS_MOVED);
		fit(&f, CARD_HANDOVER);
	} else {
		fit(&f, CARD_ADD);
		if (s->final == FINAL_NONE && s->n_items)
			fit(&f, CARD_FINAL_COUNT);
		fit(&f, CARD_HANDOVER);
	}
	if (ready_to_sign_out(s) && st->policy.n_points)
		fit(&f, CARD_NO);
	fit(&f, CARD_UNDO);
	return f.count;
}
