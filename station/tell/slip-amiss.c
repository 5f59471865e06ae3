/* What a slip says first where something is amiss: what is missing, where it may be, and what to do now, in this order. */
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "tell/slip-making.h"

static void line(const struct making *m, enum slip_word label, const char *text, const char *note)
{
	json_t *o = json_object(), *list = json_object_get(m->o, "amiss");
	slip_put(o, "label", slip_text(label), 40);
	slip_put(o, "text", text, 300);
	slip_put(o, "note", note, 120);
	json_array_append_new(list, o);
}

static int count_of(uint32_t digits)
{
	return __builtin_popcount(digits);
}

/* --- what is missing, and where it may be -------------------------------------------------------- */

static enum slip_word label_of(enum amiss_how how)
{
	switch (how) {
	case AMISS_MISSING:
		return SW_ROW_NOT_FOUND;
	case AMISS_OPEN:
		return SW_ROW_OPEN;
	case AMISS_PIECES:
		return SW_ROW_IN_PIECES;
	case AMISS_EXTRA:
		return SW_ROW_EXTRA;
	}
	return SW_ROW_NOT_FOUND;
}

static void what(const struct making *m, const struct amiss *a)
{
	char text[160], note[80], n[12], shown[12], pieces[12];
	snprintf(n, sizeof n, "%d", a->how == AMISS_MISSING || a->how == AMISS_OPEN ? a->missing : a->pieces);
	snprintf(shown, sizeof shown, "%d", a->shown);
	snprintf(pieces, sizeof pieces, "%d", a->pieces);
	SLIP_PART(text, COUNTED, "n", n, "item", sheet_item_const(&m->s->sheet, a->item)->thing.name);
	SLIP_PART(note, OF_SHOWN, "shown", shown, "pieces", pieces);
	line(m, label_of(a->how), text, a->how == AMISS_EXTRA ? "" : note);
}

static int is_lost(const struct amiss *a)
{
	return a->how != AMISS_EXTRA;
}

static uint32_t digits_of(const struct making *m, int timed)
{
	uint32_t digits = 0;
	for (int i = 0; i < m->n_amiss; i++)
		if (is_lost(&m->amiss[i]) && m->amiss[i].timed == timed)
			digits |= m->amiss[i].digits;
	return digits;
}

static int loses_tourniquet(const struct making *m)
{
	for (int i = 0; i < m->n_amiss; i++)
		if (is_lost(&m->amiss[i]) && m->amiss[i].timed)
			return 1;
	return 0;
}

static void where(const struct making *m)
{
	int timed = loses_tourniquet(m);
	uint32_t digits = digits_of(m, timed);
	char text[400];
	amiss_digits_words(digits, timed, text, sizeof text);
	if (digits)
		line(m, timed ? SW_ROW_MAY_BE_ON : SW_ROW_WAS_ON, text, "");
	else if (timed)
		line(m, SW_ROW_MAY_BE_ON, slip_text(SW_ANY_DIGIT), slip_text(SW_NO_DIGIT_ENTERED));
}

/* --- what to do ---------------------------------------------------------------------------------- */

static void digits_words(uint32_t digits, char *out, size_t size)
{
	char n[12];
	int count = count_of(digits);
	snprintf(n, sizeof n, "%d", count);
	if (count == 1)
		amiss_digits_words(digits, 0, out, size);
	else if (count > 2)
		slip_part(out, size, SW_EACH_DIGIT, (const char *const[]){"n", n, NULL});
	else
		snprintf(out, size, "%s", slip_text(count ? SW_BOTH_DIGITS : SW_ANY_DIGIT));
}

/* The first step that nobody has answered; of a case that has ended, the first that was not done. "" where there is none. */
static const char *open_step(const struct making *m)
{
	const struct policy *p = &m->from->past->settings.policy;
	const struct story *s = m->s;
	for (int i = 0; i < s->n_steps && s->ended; i++)
		if (s->steps[i].done != STEP_DONE)
			return s->steps[i].text;
	return !s->ended && s->n_steps < p->n_search ? p->search[s->n_steps] : "";
}

static void deed(const struct making *m)
{
	char text[400], digits[200];
	const char *step = open_step(m);
	int ended = m->s->ended != 0;
	digits_words(digits_of(m, 1), digits, sizeof digits);
	if (loses_tourniquet(m))
		slip_part(text, sizeof text,
		          ended                     ? SW_DO_LOOK_END
		          : m->s->sheet.dressing_on ? SW_DO_LOOK_UNDER
		                                    : SW_DO_LOOK,
		          (const char *const[]){"digits", digits, NULL});
	else if (*step)
		slip_sentence(text, sizeof text, ended ? SW_DO_STEP_END : SW_DO_STEP,
		              (const char *const[]){"step", step, NULL});
	else
		snprintf(text, sizeof text, "%s", slip_text(ended ? SW_DO_TELL_ALL : SW_DO_DECIDE));
	line(m, SW_ROW_NOW, text, "");
}

/* --- a case that ended unresolved ---------------------------------------------------------------- */

static uint32_t digits_on(const struct making *m)
{
	uint32_t digits = 0;
	for (int i = 0; i < m->s->sheet.n_digits; i++)
		if (digit_is_on(&m->s->sheet.digits[i]))
			digits |= 1u << m->s->sheet.digits[i].number;
	return digits;
}

static uint32_t digits_not_bare(const struct making *m)
{
	uint32_t digits = 0;
	for (int i = 0; i < m->s->sheet.n_digits; i++) {
		const struct digit *d = &m->s->sheet.digits[i];
		if (d->had && !d->seen_bare && !digit_is_on(d))
			digits |= 1u << d->number;
	}
	return digits;
}

static void deed_of_digits(const struct making *m, enum slip_word word, uint32_t digits)
{
	char text[400], which[200];
	if (count_of(digits) == 1)
		amiss_digits_words(digits, 0, which, sizeof which);
	else
		digits_words(digits, which, sizeof which);
	slip_part(text, sizeof text, word, (const char *const[]){"digits", which, NULL});
	line(m, SW_ROW_NOW, text, "");
}

static void unresolved(const struct making *m)
{
	uint32_t on = digits_on(m), bare = digits_not_bare(m);
	char text[400];
	for (int i = 0; i < m->n_amiss; i++)
		if (!on || !m->amiss[i].timed || m->amiss[i].how != AMISS_OPEN)
			what(m, &m->amiss[i]);
	amiss_digits_words(on, 0, text, sizeof text);
	if (on)
		line(m, SW_ROW_ON_NOW, text, "");
	else if (m->n_amiss)
		where(m);
	amiss_digits_words(bare, 0, text, sizeof text);
	if (bare && !m->n_amiss)
		line(m, SW_ROW_NOT_BARE, text, "");
	if (m->s->sheet.unfollowed)
		line(m, SW_ROW_WHY, m->s->end_text, "");
	if (on)
		deed_of_digits(m, SW_DO_OFF, on);
	else if (m->n_amiss)
		deed(m);
	else if (bare)
		deed_of_digits(m, SW_DO_BARE, bare);
	else if (m->s->sheet.unfollowed)
		line(m, SW_ROW_NOW, slip_text(SW_DO_COUNT), "");
}

/* --- found after the end ------------------------------------------------------------------------- */

static uint32_t digits_had(const struct making *m)
{
	uint32_t digits = 0;
	for (int i = 0; i < m->s->sheet.n_digits; i++)
		if (m->s->sheet.digits[i].had)
			digits |= 1u << m->s->sheet.digits[i].number;
	return digits;
}

/* Where what was found may have been: by its name, else by what was missing, else each digit that had a tourniquet. */
static uint32_t digits_of_found(const struct making *m, const struct story_found *f)
{
	uint32_t digits = 0;
	for (int i = 1; i <= m->s->sheet.n_items; i++)
		if (f->thing.name[0] && strcmp(m->s->sheet.items[i - 1].thing.name, f->thing.name) == 0)
			digits |= amiss_digits(&m->s->sheet, i);
	if (!digits)
		digits = digits_of(m, 1);
	return digits ? digits : digits_had(m);
}

static void put_looked(const struct making *m, uint32_t digits)
{
	json_t *list = json_array();
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++)
		if (digits >> d & 1)
			json_array_append_new(list, slip_told(own_digit_name(d), 60));
	json_object_set_new(m->o, "looked", list);
}

static void deed_of_found(const struct making *m, uint32_t digits)
{
	char text[400], which[200], n[12];
	snprintf(n, sizeof n, "%d", count_of(digits));
	if (count_of(digits) == 1)
		snprintf(which, sizeof which, "%s", own_digit_name(__builtin_ctz(digits)));
	else if (count_of(digits) > 2)
		SLIP_PART(which, N_DIGITS, "n", n);
	else
		snprintf(which, sizeof which, "%s", slip_text(digits ? SW_TWO_DIGITS : SW_DIGITS_OPERATED));
	SLIP_PART(text, DO_LOOK_FOUND, "digits", which);
	line(m, SW_ROW_NOW, text, "");
}

static void found(const struct making *m)
{
	uint32_t digits = 0;
	char text[400], hm[SLIP_HM];
	int other = 1; /* nothing that goes on a digit */
	for (int i = 0; i < m->s->n_found; i++) {
		const struct story_found *f = &m->s->found[i];
		const char *name = f->thing.called ? saying_text(f->thing.called) : f->thing.name;
		slip_hm(f->at, hm);
		if (f->text[0] && strcmp(f->text, name) != 0)
			SLIP_PART(text, OF_DIGIT, "digit", name, "text", f->text);
		else
			snprintf(text, sizeof text, "%s", name[0] ? name : saying_text(SAY_ITEM_NO_NUMBER));
		line(m, SW_ROW_FOUND, text, hm);
		digits |= digits_of_found(m, f);
		other &= f->thing.role && !role_has(f->thing.role, TRAIT_ON_DIGIT);
	}
	amiss_digits_words(digits, 1, text, sizeof text);
	if (!other && digits)
		line(m, SW_ROW_WAS_ON, text, "");
	if (other)
		line(m, SW_ROW_NOW, slip_text(SW_DO_TELL_FOUND), "");
	else
		deed_of_found(m, digits);
	put_looked(m, digits);
}

/* --- an addendum --------------------------------------------------------------------------------- */

static void slip_named(const struct making *m, const struct story_slip *x, char *out, size_t size)
{
	static const enum slip_word ends[] = {SW_NOT_ENDED, SW_END_RECONCILED, SW_END_UNRESOLVED,
	                                      SW_END_CANCELLED};
	char number[SLIP_NUMBER_TEXT], hm[SLIP_HM];
	slip_number(x->number, number);
	slip_hm(x->at, hm);
	const char *const values[] = {"slip", number, "time", hm, "outcome", slip_text(ends[m->s->ended & 3]),
	                              NULL};
	slip_part(out, size,
	          x->kind == SLIP_DISCREPANCY ? SW_SLIP_DISCREPANCY
	          : x->kind == SLIP_ADDENDUM  ? SW_SLIP_ADDENDUM
	                                      : SW_SLIP_ENDED,
	          values);
}

/* Nothing is repeated: the earlier slips are named. */
static void put_elsewhere(const struct making *m)
{
	char list[600] = "", before[600], one[120], text[700];
	int last = -1;
	for (int i = 0; i < m->s->n_slips; i++)
		if (m->s->slips[i].number != m->from->number)
			last = i;
	for (int i = 0; i <= last; i++) {
		if (m->s->slips[i].number == m->from->number)
			continue;
		slip_named(m, &m->s->slips[i], one, sizeof one);
		snprintf(before, sizeof before, "%s", list);
		if (before[0] && i == last)
			SLIP_PART(list, AND, "list", before, "last", one);
		else
			slip_join(list, sizeof list, ", ", one);
	}
	SLIP_PART(text, ELSEWHERE, "slips", list);
	if (list[0])
		slip_put(m->o, "elsewhere", text, 700);
}

static void corrections(const struct making *m)
{
	char hm[SLIP_HM], note[60];
	for (int i = 0; i < m->s->n_entries; i++) {
		const struct story_entry *e = &m->s->entries[i];
		if (e->how != ENTRY_CORRECTED || !e->after)
			continue;
		slip_hm(e->at, hm);
		SLIP_PART(note, CORRECTED_AT, "time", hm);
		line(m, SW_ROW_CORRECTED, e->text, note);
	}
}

static void put_shout(const struct making *m, enum slip_word word, const char *note)
{
	slip_put(m->o, "shout", slip_text(word), 40);
	slip_put(m->o, "shout_note", note, 80);
}

static void addendum(const struct making *m)
{
	char text[80], slip[SLIP_NUMBER_TEXT], number[16];
	slip_number(m->s->last_slip, slip);
	snprintf(number, sizeof number, "%d", (int)m->s->case_no);
	if (m->s->last_slip)
		SLIP_PART(text, ADDS_TO, "slip", slip, "case", number);
	else
		SLIP_PART(text, ADDS_TO_CASE, "case", number);
	slip_put(m->o, "adds_words", text, 80);
	if (m->s->n_found) {
		put_shout(m, SW_FOUND_LATER, text);
		found(m);
	}
	corrections(m);
	put_elsewhere(m);
}

void slip_put_amiss(const struct making *m)
{
	json_object_set_new(m->o, "amiss", json_array());
	if (m->kind == SLIP_ADDENDUM) {
		addendum(m);
	} else if (m->kind == SLIP_DISCREPANCY) {
		put_shout(m, SW_DISCREPANCY, m->s->ended ? "" : slip_text(SW_CASE_OPEN));
		for (int i = 0; i < m->n_amiss; i++)
			what(m, &m->amiss[i]);
		where(m);
		deed(m);
	} else if (m->s->ended == END_UNRESOLVED) {
		put_shout(m, SW_UNRESOLVED, "");
		unresolved(m);
	}
}

/* --- how it was searched for --------------------------------------------------------------------- */

static int is_within(struct moment at, const struct story_discrepancy *d)
{
	return time_is_set(at) && at.wall_ms >= d->opened.wall_ms && at.wall_ms <= d->closed.wall_ms;
}

static enum slip_word then_word(const struct story_item *it, int one)
{
	if (it->where)
		return one ? SW_THEN_FOUND : SW_THEN_FOUND_ITEM;
	return one ? SW_THEN_SHOWN : SW_THEN_SHOWN_ITEM;
}

static void found_words(const struct making *m, const struct story_discrepancy *d, char *out, size_t size)
{
	int n = 0;
	for (int i = 0; i < m->s->sheet.n_items; i++)
		n += is_within(m->s->items[i].shown, d);
	for (int i = 0; i < m->s->sheet.n_items; i++) {
		const struct story_item *it = &m->s->items[i];
		char one[400], hm[SLIP_HM];
		slip_hm(it->shown, hm);
		const char *const values[] = {
		    "item", m->s->sheet.items[i].thing.name, "time", hm, "where", it->found, NULL};
		if (!is_within(it->shown, d))
			continue;
		slip_part(one, sizeof one, then_word(it, n == 1), values);
		slip_list(out, size, one);
	}
}

void slip_discrepancy_words(const struct making *m, const struct story_discrepancy *d, char *out, size_t size)
{
	char then[600] = "", hm[SLIP_HM], closed[SLIP_HM];
	slip_hm(d->opened, hm);
	slip_hm(d->closed, closed);
	found_words(m, d, then, sizeof then);
	if (!then[0])
		SLIP_PART(then, THEN_CLOSED, "time", closed);
	slip_part(out, size, time_is_set(d->closed) ? SW_AFTER_DISCREPANCY_FOUND : SW_AFTER_DISCREPANCY,
	          (const char *const[]){"time", hm, "what", d->what, "found", then, NULL});
}

static void put_step(json_t *list, const char *text, const char *state, const char *says, int write)
{
	json_t *o = json_object();
	json_object_set_new(o, "text", slip_told(text, 120));
	json_object_set_new(o, "state", json_string(state));
	slip_put(o, "says", says, 220);
	if (write)
		json_object_set_new(o, "write", json_true());
	json_array_append_new(list, o);
}

static void put_taken(json_t *list, const struct story_step *step)
{
	char hm[SLIP_HM], says[300];
	slip_hm(step->at, hm);
	slip_part(says, sizeof says,
	          step->done == STEP_DONE ? SW_STEP_DONE
	          : step->why[0]          ? SW_STEP_NOT_DONE_WHY
	                                  : SW_STEP_NOT_DONE,
	          (const char *const[]){"time", hm, "why", step->why, NULL});
	put_step(list, step->text, step->done == STEP_DONE ? "done" : "not done", says,
	         step->done != STEP_DONE && !step->why[0]);
}

/* After the end only the steps that were taken, and the one that found it; while the search goes on all, to be ticked. */
static void put_steps(const struct making *m, json_t *search)
{
	const struct policy *p = &m->from->past->settings.policy;
	const struct story *s = m->s;
	json_t *list = json_array();
	for (int i = 0; i < s->n_steps; i++)
		put_taken(list, &s->steps[i]);
	for (int i = s->n_steps; i < p->n_search && m->kind == SLIP_DISCREPANCY && !s->ended; i++)
		put_step(list, p->search[i], "open", "", 0);
	for (int i = 0; i < s->sheet.n_items; i++) {
		char hm[SLIP_HM], says[60];
		if (!s->items[i].where || !s->n_discrepancies ||
		    !is_within(s->items[i].shown, &s->discrepancies[s->n_discrepancies - 1]))
			continue;
		slip_hm(s->items[i].shown, hm);
		SLIP_PART(says, STEP_FOUND, "time", hm);
		put_step(list, s->items[i].found, "found", says, 0);
	}
	json_object_set_new(search, "steps", list);
}

/* A number is said to be owed only where one is. */
static void put_incident(const struct making *m, json_t *search)
{
	const struct story *s = m->s;
	const struct story_debt *debt = NULL;
	char text[260];
	for (int i = 0; i < s->n_debts; i++)
		if (s->debts[i].debt.kind == DEBT_INCIDENT)
			debt = &s->debts[i];
	const char *number = debt ? debt->how : s->end_text;
	if (debt ? time_is_set(debt->paid)
	         : s->ended == END_UNRESOLVED && number[0] &&
	               strcmp(number, end_words(END_NOT_FOLLOWED)) != 0 &&
	               strcmp(number, end_words(END_NUMBER_OWED)) != 0) {
		SLIP_SAY(text, INCIDENT_IS, "number", number);
		slip_put(search, "incident", text, 120);
	} else if (debt || (s->ended == END_UNRESOLVED && strcmp(number, end_words(END_NUMBER_OWED)) == 0)) {
		slip_put(search, "write", slip_text(SW_INCIDENT_OWED), 60);
	} else if (!s->ended) {
		slip_put(search, "write", slip_text(SW_INCIDENT), 60);
	}
}

void slip_put_search(const struct making *m)
{
	const struct story *s = m->s;
	char from[SLIP_HM], to[SLIP_HM], title[120];
	if (!s->n_discrepancies || !slip_tells_all(m))
		return;
	const struct story_discrepancy *last = &s->discrepancies[s->n_discrepancies - 1];
	json_t *search = json_object();
	slip_hm(last->opened, from);
	slip_hm(last->closed, to);
	slip_part(title, sizeof title,
	          time_is_set(last->closed)     ? SW_SEARCH_CLOSED
	          : m->kind == SLIP_DISCREPANCY ? SW_SEARCH_OPEN
	                                        : SW_SEARCH_ENDED,
	          (const char *const[]){"from", from, "to", to, NULL});
	slip_put(search, "title", title, 120);
	put_steps(m, search);
	put_incident(m, search);
	json_object_set_new(m->o, "search", search);
}
