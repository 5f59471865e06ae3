/* The rows below the table: a word, and what is said of it in a line or two. What was as it should be is short; what was not
 * stands whole. */
#include <stdio.h>
#include <string.h>

#include "tell/slip-making.h"

/* --- counts -------------------------------------------------------------------------------------- */

/* A time of day is that of the room; what was entered from paper has its times there. */
static enum saying count_word(const struct making *m, uint8_t kind)
{
	int paper = m->s->paper_sheet != 0;
	switch ((enum count_kind)kind) {
	case COUNT_INITIAL:
		return paper ? SAY_SLIP_PAPER_INITIAL : SAY_SLIP_COUNT_INITIAL;
	case COUNT_FINAL:
		return paper ? SAY_SLIP_PAPER_FINAL : SAY_SLIP_COUNT_FINAL;
	case COUNT_HANDOVER:
		return paper ? SAY_SLIP_PAPER_HANDOVER : SAY_SLIP_COUNT_HANDOVER;
	case COUNT_ADDED:
		break;
	}
	return paper ? SAY_SLIP_PAPER_ADDED : SAY_SLIP_COUNT_ADDED;
}

static enum saying agreed_word(const struct making *m)
{
	if (m->s->paper_sheet)
		return m->s->single ? SAY_SLIP_PAPER_AGREED_SINGLE : SAY_SLIP_PAPER_AGREED;
	return m->s->single ? SAY_SLIP_AGREED_SINGLE : SAY_SLIP_AGREED;
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
	const struct say say = {.saying = agreed_word(m),
	                        .list = counts,
	                        .person = slip_name(m, x->field),
	                        .other_person = slip_name(m, x->circulating),
	                        .recorder = slip_name(m, x->recorded_by)};
	slip_say(m, &say, text, sizeof text);
	amiss_digits_words(m->from->language, x->unseen, 0, digits, sizeof digits);
	if (x->unseen)
		slip_say(m, SAY(SLIP_WITHOUT_SIGHT, .words = text, .list = digits), out, size);
	else
		snprintf(out, size, "%s", text);
}

/* Those that the same people agreed stand together: "initial 10:00, final 10:32: agreed aloud by …". */
static void put_counts(const struct making *m)
{
	char all[ROW_MAX] = "", counts[200] = "", one[900];
	for (int i = 0; i < m->s->n_counts; i++) {
		const struct story_count *x = &m->s->counts[i];
		slip_say(m, &(const struct say){.saying = count_word(m, x->kind), .time = slip_minute(x->at)},
		         one, sizeof one);
		said_join(counts, sizeof counts, ", ", one);
		if (i + 1 < m->s->n_counts && are_of_the_same(x, x + 1) &&
		    strlen(counts) + 30 < sizeof counts)
			continue;
		agreed(m, x, counts, one, sizeof one);
		slip_row_add(m, SAY_SLIP_ROW_COUNTS, all, one);
		counts[0] = 0;
	}
	slip_row(m, SAY_SLIP_ROW_COUNTS, all[0] ? all : slip_text(m, SAY_SLIP_NO_COUNT), NULL);
}

/* --- sign-out ------------------------------------------------------------------------------------ */

static int points_yes(const struct making *m, int n)
{
	int yes = 0;
	for (int i = 0; i < n; i++)
		yes += !m->s->points_told || m->s->points[i].answer != POINT_NO;
	return yes;
}

static enum saying points_word(const struct making *m, int all)
{
	if (m->s->paper_sheet)
		return all ? SAY_SLIP_PAPER_ALL_POINTS : SAY_SLIP_PAPER_SOME_POINTS;
	return all ? SAY_SLIP_ALL_POINTS : SAY_SLIP_SOME_POINTS;
}

static void put_sign_out(const struct making *m)
{
	const struct story *s = m->s;
	/* Of format 1 a sign-out is kept without its points: the badge answered all that stood then. */
	int n = s->points_told ? s->n_points : m->from->past->settings.policy.n_points,
	    yes = points_yes(m, n);
	char text[ROW_MAX], by[120], no[200];
	if (!time_is_set(s->signed_at) || s->ended == END_UNRESOLVED)
		return;
	const struct say signed_by = {.saying = s->witness ? SAY_SLIP_WITNESSED : SAY_SLIP_SIGNED,
	                              .person = slip_name(m, s->signed_by),
	                              .other_person = slip_name(m, s->witness)};
	slip_say(m, &signed_by, by, sizeof by);
	const struct say points = {.saying = points_word(m, yes == n),
	                           .n = yes,
	                           .all = n,
	                           .words = by,
	                           .time = slip_minute(s->signed_at)};
	slip_say(m, &points, text, sizeof text);
	for (int i = 0; i < n && yes < n; i++)
		if (s->points[i].answer == POINT_NO) {
			slip_say(m, SAY(SLIP_POINT_NO, .step = s->points[i].text), no, sizeof no);
			slip_list(text, sizeof text, no);
		}
	for (int i = 0; i < n && s->points_told; i++)
		if (s->points[i].answer != POINT_NO && time_is_set(s->points[i].no)) {
			slip_say(m,
			         SAY(SLIP_POINT_WAS_NO, .step = s->points[i].text,
			             .time = slip_minute(s->points[i].no)),
			         no, sizeof no);
			slip_list(text, sizeof text, no);
		}
	slip_row(m, SAY_SLIP_ROW_SIGN_OUT, text, NULL);
}

/* --- people -------------------------------------------------------------------------------------- */

static void put_people(const struct making *m)
{
	char all[ROW_MAX] = "", one[200];
	for (int i = 0; i < m->s->n_people; i++) {
		const struct story_person *p = &m->s->people[i];
		int alone = m->s->single && p->place == PLACE_FIELD;
		const struct say say = {.saying = m->s->paper_sheet    ? SAY_SLIP_PAPER_PERSON
		                                  : time_is_set(p->to) ? SAY_SLIP_PERSON_FROM_TO
		                                                       : SAY_SLIP_PERSON_FROM,
		                        .place = alone ? SAY_SLIP_OPERATOR_ALONE
		                                       : place_saying((enum team_place)p->place),
		                        .person = p->name,
		                        .from = slip_minute(p->from),
		                        .to = slip_minute(p->to)};
		slip_say(m, &say, one, sizeof one);
		slip_row_add(m, SAY_SLIP_ROW_PEOPLE, all, one);
	}
	slip_row(m, SAY_SLIP_ROW_PEOPLE, all, NULL);
}

/* --- what was owed ------------------------------------------------------------------------------- */

static void owed_words(const struct making *m, const struct story_debt *d, char *out, size_t size)
{
	const struct say say = {.saying = d->debt.digit ? SAY_SLIP_OWED_DIGIT
	                                  : d->why[0]   ? SAY_SLIP_OWED_WHY
	                                                : SAY_SLIP_OWED,
	                        .text = d->why,
	                        .time = slip_minute(d->owed),
	                        .digit = d->debt.digit,
	                        .what = debt_saying((enum debt_kind)d->debt.kind)};
	slip_say(m, &say, out, size);
}

static void put_debts(const struct making *m)
{
	char all[ROW_MAX] = "", owed[300], one[700];
	for (int i = 0; i < m->s->n_debts; i++) {
		const struct story_debt *d = &m->s->debts[i];
		if (!slip_tells_all(m) && !d->after)
			continue;
		if (!time_is_set(d->paid))
			continue;
		owed_words(m, d, owed, sizeof owed);
		slip_say(m,
		         &(const struct say){.saying = d->by ? SAY_SLIP_OWED_PAID_BY : SAY_SLIP_OWED_PAID,
		                             .words = owed,
		                             .text = d->how,
		                             .time = slip_minute(d->paid),
		                             .person = slip_name(m, d->by)},
		         one, sizeof one);
		slip_row_add(m, SAY_SLIP_ROW_OWED, all, one);
	}
	slip_row(m, SAY_SLIP_ROW_OWED, all, NULL);
	for (int i = 0; i < m->s->n_debts && slip_tells_all(m); i++) {
		owed_words(m, &m->s->debts[i], owed, sizeof owed);
		if (m->s->debts[i].debt.kind == DEBT_INCIDENT && json_object_get(m->o, "search"))
			continue; /* its line stands below the search */
		if (!time_is_set(m->s->debts[i].paid))
			slip_row(m, SAY_SLIP_ROW_STILL_OWED, owed, slip_text(m, SAY_SLIP_PAID_BY));
	}
}

/* --- entries ------------------------------------------------------------------------------------- */

static int is_told(const struct making *m, const struct story_entry *e)
{
	/* A correction after the end stands at the head of its addendum. */
	return slip_tells_all(m) ? m->kind != SLIP_ADDENDUM || e->how != ENTRY_CORRECTED || !e->after
	                         : e->after && e->how != ENTRY_CORRECTED;
}

static void put_some(const struct making *m, enum story_how how, enum saying label)
{
	char all[ROW_MAX] = "", one[300];
	for (int i = 0; i < m->s->n_entries; i++) {
		const struct story_entry *e = &m->s->entries[i];
		if (e->how != how || !is_told(m, e))
			continue;
		slip_say(m, SAY(SLIP_ENTRY, .time = slip_minute(e->at), .words = e->text), one, sizeof one);
		slip_row_add(m, label, all, one);
	}
	slip_row(m, label, all, NULL);
}

/* Where all of a case was entered in one way, that is one line. */
static void put_marked(const struct making *m, enum story_how how, int n, enum saying all_of,
                       enum saying label)
{
	const struct story_steps *x = &m->s->scans;
	char text[300];
	if (n != x->all || n < 2) {
		put_some(m, how, label);
		return;
	}
	slip_say(m,
	         &(const struct say){.saying = all_of,
	                             .n = n,
	                             .sheet = m->s->paper_sheet,
	                             .from = slip_minute(x->first),
	                             .to = slip_minute(x->last)},
	         text, sizeof text);
	slip_row(m, label, text, NULL);
}

static void put_entries(const struct making *m)
{
	const struct story_steps *x = &m->s->scans;
	put_marked(m, ENTRY_LATE, x->late, m->s->paper_sheet ? SAY_SLIP_ALL_FROM_PAPER : SAY_SLIP_ALL_LATE,
	           SAY_SLIP_ROW_LATE);
	put_marked(m, ENTRY_KEYED, x->keyed, SAY_SLIP_ALL_TYPED, SAY_SLIP_ROW_TYPED);
	put_some(m, ENTRY_OVERRIDDEN, SAY_SLIP_ROW_OVERRIDDEN);
	put_some(m, ENTRY_CORRECTED, SAY_SLIP_ROW_CORRECTED);
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

static void clock_row(const struct making *m, enum saying word, uint8_t digit)
{
	char text[300];
	slip_say(m, &(const struct say){.saying = word, .digit = digit}, text, sizeof text);
	slip_row(m, SAY_SLIP_ROW_CLOCK, text, NULL);
}

static void put_clock(const struct making *m)
{
	for (int i = 0; i < m->s->sheet.n_digits; i++)
		if (m->s->sheet.digits[i].gap)
			clock_row(m, SAY_SLIP_CLOCK_GAP, m->s->sheet.digits[i].number);
	for (int i = 0; i < m->s->n_digits; i++)
		if (went_back(&m->s->digits[i]))
			clock_row(m, SAY_SLIP_CLOCK_BACK, m->s->digits[i].number);
}

static void put_notes(const struct making *m)
{
	char all[ROW_MAX] = "", text[200];
	for (int i = 0; i < m->s->n_notes; i++) {
		const char *note = m->s->notes[i];
		if (strlen(all) + strlen(note) + 2 > sizeof all) {
			slip_row(m, SAY_SLIP_ROW_NOTES, all, NULL);
			all[0] = 0;
		}
		said_join(all, sizeof all, " ", note);
	}
	slip_row(m, SAY_SLIP_ROW_NOTES, all, NULL);
	slip_say(m, SAY(SLIP_NOTE_LEFT_OUT, .n = m->s->left_out), text, sizeof text);
	if (m->s->left_out)
		slip_row(m, SAY_SLIP_ROW_NOTES, text, NULL);
}

static void put_discrepancies(const struct making *m)
{
	char one[ROW_MAX];
	for (int i = 0; i < m->s->n_discrepancies; i++) {
		const struct story_discrepancy *d = &m->s->discrepancies[i];
		if (!time_is_set(d->closed))
			continue;
		slip_discrepancy_words(m, d, one, sizeof one);
		slip_row(m, SAY_SLIP_ROW_DISCREPANCY, one, NULL);
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
