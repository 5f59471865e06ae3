/* The rows below the table: a word, and what is said of it in a line or two. What was as it should be is short; what was not
 * stands whole. */
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "tell/slip-making.h"

/* --- counts -------------------------------------------------------------------------------------- */

static enum slip_word count_word(uint8_t kind)
{
	switch ((enum count_kind)kind) {
	case COUNT_INITIAL:
		return SW_COUNT_INITIAL;
	case COUNT_FINAL:
		return SW_COUNT_FINAL;
	case COUNT_HANDOVER:
		return SW_COUNT_HANDOVER;
	case COUNT_ADDED:
		return SW_COUNT_ADDED;
	}
	return SW_COUNT_ADDED;
}

static int are_of_the_same(const struct story_count *a, const struct story_count *b)
{
	return a->field == b->field && a->circulating == b->circulating && a->recorded_by == b->recorded_by &&
	       !a->unseen && !b->unseen;
}

static void agreed(const struct making *m, const struct story_count *x, const char *counts, char *out,
                   size_t size)
{
	char text[500], digits[300];
	const char *const values[] = {"counts",      counts,
	                              "field",       slip_name(m, x->field),
	                              "circulating", slip_name(m, x->circulating),
	                              "person",      slip_name(m, m->s->single ? x->field : x->recorded_by),
	                              NULL};
	slip_part(text, sizeof text, m->s->single ? SW_AGREED_SINGLE : SW_AGREED, values);
	amiss_digits_words(x->unseen, 0, digits, sizeof digits);
	if (x->unseen)
		slip_part(out, size, SW_WITHOUT_SIGHT,
		          (const char *const[]){"text", text, "digits", digits, NULL});
	else
		snprintf(out, size, "%s", text);
}

/* Those that the same people agreed stand together: "initial 10:00, final 10:32: agreed aloud by …". */
static void put_counts(const struct making *m)
{
	char all[ROW_MAX] = "", counts[200] = "", one[900], hm[SLIP_HM];
	for (int i = 0; i < m->s->n_counts; i++) {
		const struct story_count *x = &m->s->counts[i];
		slip_hm(x->at, hm);
		slip_part(one, sizeof one, count_word(x->kind), (const char *const[]){"time", hm, NULL});
		slip_join(counts, sizeof counts, ", ", one);
		if (i + 1 < m->s->n_counts && are_of_the_same(x, x + 1) &&
		    strlen(counts) + 30 < sizeof counts)
			continue;
		agreed(m, x, counts, one, sizeof one);
		slip_row_add(m, SW_ROW_COUNTS, all, one);
		counts[0] = 0;
	}
	slip_row(m, SW_ROW_COUNTS, all[0] ? all : slip_text(SW_NO_COUNT), NULL);
}

/* --- sign-out ------------------------------------------------------------------------------------ */

static int points_yes(const struct making *m, int n)
{
	int yes = 0;
	for (int i = 0; i < n; i++)
		yes += !m->s->points_told || m->s->points[i].answer != POINT_NO;
	return yes;
}

static void put_sign_out(const struct making *m)
{
	const struct story *s = m->s;
	/* Of format 1 a sign-out is kept without its points: the badge answered all that stood then. */
	int n = s->points_told ? s->n_points : m->from->past->settings.policy.n_points,
	    yes = points_yes(m, n);
	char text[ROW_MAX], by[120], hm[SLIP_HM], all[12], ok[12], no[200];
	if (!time_is_set(s->signed_at) || s->ended == END_UNRESOLVED)
		return;
	slip_hm(s->signed_at, hm);
	snprintf(all, sizeof all, "%d", n);
	snprintf(ok, sizeof ok, "%d", yes);
	if (s->witness)
		SLIP_PART(by, WITNESSED, "person", slip_name(m, s->signed_by), "other",
		          slip_name(m, s->witness));
	else
		snprintf(by, sizeof by, "%s", slip_name(m, s->signed_by));
	slip_part(
	    text, sizeof text, yes == n ? SW_ALL_POINTS : SW_SOME_POINTS,
	    (const char *const[]){"n", yes == n ? all : ok, "all", all, "person", by, "time", hm, NULL});
	for (int i = 0; i < n && yes < n; i++)
		if (s->points[i].answer == POINT_NO) {
			SLIP_PART(no, POINT_NO, "text", s->points[i].text);
			slip_list(text, sizeof text, no);
		}
	slip_row(m, SW_ROW_SIGN_OUT, text, NULL);
}

/* --- people -------------------------------------------------------------------------------------- */

static void put_people(const struct making *m)
{
	char all[ROW_MAX] = "", one[200], from[SLIP_HM], to[SLIP_HM];
	for (int i = 0; i < m->s->n_people; i++) {
		const struct story_person *p = &m->s->people[i];
		int alone = m->s->single && p->place == PLACE_FIELD;
		slip_hm(p->from, from);
		slip_hm(p->to, to);
		const char *const values[] = {
		    "place",  alone ? slip_text(SW_OPERATOR_ALONE) : place_words((enum team_place)p->place),
		    "person", p->name,
		    "from",   from,
		    "to",     to,
		    NULL};
		slip_part(one, sizeof one, time_is_set(p->to) ? SW_PERSON_FROM_TO : SW_PERSON_FROM, values);
		slip_row_add(m, SW_ROW_PEOPLE, all, one);
	}
	slip_row(m, SW_ROW_PEOPLE, all, NULL);
}

/* --- what was owed ------------------------------------------------------------------------------- */

static void owed_words(const struct story_debt *d, char *out, size_t size)
{
	char hm[SLIP_HM];
	slip_hm(d->owed, hm);
	const char *const values[] = {"time",  hm,
	                              "digit", own_digit_name(d->debt.digit),
	                              "what",  debt_words((enum debt_kind)d->debt.kind),
	                              NULL};
	slip_part(out, size, d->debt.digit ? SW_OWED_DIGIT : SW_OWED, values);
}

static void put_debts(const struct making *m)
{
	char all[ROW_MAX] = "", owed[300], one[700], hm[SLIP_HM];
	for (int i = 0; i < m->s->n_debts; i++) {
		const struct story_debt *d = &m->s->debts[i];
		if (!slip_tells_all(m) && !d->after)
			continue;
		owed_words(d, owed, sizeof owed);
		slip_hm(d->paid, hm);
		const char *const values[] = {
		    "owed", owed, "how", d->how, "paid", hm, "person", slip_name(m, d->by), NULL};
		if (!time_is_set(d->paid))
			continue;
		slip_part(one, sizeof one, d->by ? SW_OWED_PAID_BY : SW_OWED_PAID, values);
		slip_row_add(m, SW_ROW_OWED, all, one);
	}
	slip_row(m, SW_ROW_OWED, all, NULL);
	for (int i = 0; i < m->s->n_debts && slip_tells_all(m); i++) {
		owed_words(&m->s->debts[i], owed, sizeof owed);
		if (m->s->debts[i].debt.kind == DEBT_INCIDENT && json_object_get(m->o, "search"))
			continue; /* its line stands below the search */
		if (!time_is_set(m->s->debts[i].paid))
			slip_row(m, SW_ROW_STILL_OWED, owed, slip_text(SW_PAID_BY));
	}
}

/* --- entries ------------------------------------------------------------------------------------- */

static int is_told(const struct making *m, const struct story_entry *e)
{
	/* A correction after the end stands at the head of its addendum. */
	return slip_tells_all(m) ? m->kind != SLIP_ADDENDUM || e->how != ENTRY_CORRECTED || !e->after
	                         : e->after && e->how != ENTRY_CORRECTED;
}

static void put_some(const struct making *m, enum story_how how, enum slip_word label)
{
	char all[ROW_MAX] = "", one[300], hm[SLIP_HM];
	for (int i = 0; i < m->s->n_entries; i++) {
		const struct story_entry *e = &m->s->entries[i];
		if (e->how != how || !is_told(m, e))
			continue;
		slip_hm(e->at, hm);
		SLIP_PART(one, ENTRY, "time", hm, "text", e->text);
		slip_row_add(m, label, all, one);
	}
	slip_row(m, label, all, NULL);
}

/* Where all of a case was entered in one way, that is one line. */
static void put_marked(const struct making *m, enum story_how how, int n, enum slip_word all_of,
                       enum slip_word label)
{
	const struct story_steps *x = &m->s->scans;
	char text[300], count[12], sheet[12], from[SLIP_HM], to[SLIP_HM];
	if (n != x->all || n < 2) {
		put_some(m, how, label);
		return;
	}
	snprintf(count, sizeof count, "%d", n);
	slip_hm(x->first, from);
	slip_hm(x->last, to);
	snprintf(sheet, sizeof sheet, "%d", (int)m->s->paper_sheet);
	slip_part(text, sizeof text, all_of,
	          (const char *const[]){"n", count, "sheet", sheet, "from", from, "to", to, NULL});
	slip_row(m, label, text, NULL);
}

static void put_entries(const struct making *m)
{
	const struct story_steps *x = &m->s->scans;
	put_marked(m, ENTRY_LATE, x->late, m->s->paper_sheet ? SW_ALL_FROM_PAPER : SW_ALL_LATE, SW_ROW_LATE);
	put_marked(m, ENTRY_KEYED, x->keyed, SW_ALL_TYPED, SW_ROW_TYPED);
	put_some(m, ENTRY_OVERRIDDEN, SW_ROW_OVERRIDDEN);
	put_some(m, ENTRY_CORRECTED, SW_ROW_CORRECTED);
}

/* --- clocks, notes ------------------------------------------------------------------------------- */

/* Times of one stretch that contradict each other: its minutes do not come from them. */
static int went_back(const struct story_digit *d)
{
	for (int i = 0; i < d->n_stretches; i++)
		if (time_is_set(d->stretches[i].off) &&
		    d->stretches[i].off.wall_ms < d->stretches[i].on.wall_ms)
			return 1;
	return 0;
}

static void clock_row(const struct making *m, enum slip_word word, uint8_t digit)
{
	char text[300];
	slip_part(text, sizeof text, word, (const char *const[]){"digit", own_digit_name(digit), NULL});
	slip_row(m, SW_ROW_CLOCK, text, NULL);
}

static void put_clock(const struct making *m)
{
	for (int i = 0; i < m->s->sheet.n_digits; i++)
		if (m->s->sheet.digits[i].gap)
			clock_row(m, SW_CLOCK_GAP, m->s->sheet.digits[i].number);
	for (int i = 0; i < m->s->n_digits; i++)
		if (went_back(&m->s->digits[i]))
			clock_row(m, SW_CLOCK_BACK, m->s->digits[i].number);
}

static void put_notes(const struct making *m)
{
	char all[ROW_MAX] = "", n[12], text[200];
	for (int i = 0; i < m->s->n_notes; i++) {
		const char *note = m->s->notes[i];
		if (strlen(all) + strlen(note) + 2 > sizeof all) {
			slip_row(m, SW_ROW_NOTES, all, NULL);
			all[0] = 0;
		}
		slip_join(all, sizeof all, " ", note);
	}
	slip_row(m, SW_ROW_NOTES, all, NULL);
	snprintf(n, sizeof n, "%d", m->s->left_out);
	SLIP_SAY(text, NOTE_LEFT_OUT, "n", n);
	if (m->s->left_out)
		slip_row(m, SW_ROW_NOTES, text, NULL);
}

static void put_discrepancies(const struct making *m)
{
	char one[ROW_MAX];
	for (int i = 0; i < m->s->n_discrepancies; i++) {
		const struct story_discrepancy *d = &m->s->discrepancies[i];
		if (!time_is_set(d->closed))
			continue;
		slip_discrepancy_words(m, d, one, sizeof one);
		slip_row(m, SW_ROW_DISCREPANCY, one, NULL);
	}
}

void slip_put_rows(const struct making *m)
{
	if (slip_tells_all(m)) {
		if (json_object_get(m->o, "shout"))
			put_discrepancies(m);
		slip_digit_rows(m);
		put_counts(m);
		put_sign_out(m);
		put_people(m);
	}
	put_debts(m);
	put_entries(m);
	if (slip_tells_all(m)) {
		put_clock(m);
		put_notes(m);
	}
}
