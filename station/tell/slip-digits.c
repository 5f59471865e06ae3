#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "tell/entry.h"
#include "tell/slip-making.h"

static int is_on(const struct story_digit *d)
{
	return !time_is_set(d->stretches[d->n_stretches - 1].off);
}

int slip_digits_sorted(const struct story *s, const struct story_digit *out[DIGITS_MAX])
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++) {
		const struct story_digit *d = &s->digits[i];
		int at = n;
		if (!d->n_stretches)
			continue;
		for (; at > 0 && out[at - 1]->longest_ms < d->longest_ms; at--)
			out[at] = out[at - 1];
		out[at] = d;
		n++;
	}
	return n;
}

static int64_t civil_ms(struct moment at)
{
	return at.wall_ms + at.utc_min * INT64_C(60000);
}

/* No off stands behind its on as if that were a time: where the clock on the wall was turned meanwhile, that is said. */
static void times_of(const struct story_stretch *x, char *out, size_t size)
{
	char on[SLIP_HM], off[SLIP_HM];
	const char *const values[] = {"on", on, "off", off, NULL};
	slip_hm(x->on, on);
	slip_hm(x->off, off);
	slip_part(out, size,
	          !time_is_set(x->off)                 ? SW_SINCE
	          : x->off.wall_ms < x->on.wall_ms     ? SW_TIMES_SET_BACK
	          : civil_ms(x->off) < civil_ms(x->on) ? SW_TIMES_WENT_BACK
	                                               : SW_TIMES,
	          values);
}

static void stretches_of(const struct story_digit *d, char *out, size_t size)
{
	char list[900] = "", times[80], one[200];
	if (d->n_stretches == 1) {
		times_of(&d->stretches[0], out, size);
		return;
	}
	for (int i = 0; i < d->n_stretches; i++) {
		times_of(&d->stretches[i], times, sizeof times);
		SLIP_PART(one, STRETCH, "times", times, "minutes", d->stretches[i].minutes);
		slip_join(list, sizeof list, ", ", one);
	}
	slip_part(out, size, SW_STRETCHES, (const char *const[]){"list", list, "longest", d->longest, NULL});
}

/* Of one stretch what its clock says; of several their sum. */
static const char *minutes_of(const struct story_digit *d)
{
	return d->n_stretches == 1 && d->stretches[0].minutes[0] ? d->stretches[0].minutes : d->total;
}

/* Entered from a paper count sheet, when the hands had done other things: their times stand there. */
static const char *told_minutes(const struct making *m, const struct story_digit *d, char on_paper[60])
{
	char sheet[12];
	if (!m->s->paper_sheet)
		return minutes_of(d);
	snprintf(sheet, sizeof sheet, "%d", (int)m->s->paper_sheet);
	slip_part(on_paper, 60, SW_MINUTES_ON_PAPER, (const char *const[]){"n", sheet, NULL});
	return on_paper;
}

static int seen_bare(const struct making *m, const struct story_digit *d)
{
	const struct digit *now = sheet_digit_const(&m->s->sheet, d->number);
	return time_is_set(d->bare) && now && now->seen_bare;
}

/* The look is evidence of its own, beside the minutes and never merged with the count (rule 11). */
static void detail_of(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	char times[1000], hm[SLIP_HM];
	enum slip_word also = m->s->single ? entry_looked(m->s->sheet.who_looked) : SW_KINDS;
	if (m->s->paper_sheet)
		snprintf(times, sizeof times, "%s", slip_text(SW_ENTERED_AFTERWARDS));
	else
		stretches_of(d, times, sizeof times);
	slip_hm(d->bare, hm);
	const char *const values[] = {"times",  times,
	                              "time",   hm,
	                              "person", slip_name(m, d->bare_by),
	                              "also",   also == SW_KINDS ? "" : slip_text(also),
	                              NULL};
	if (seen_bare(m, d))
		slip_part(out, size,
		          m->s->paper_sheet
		              ? (also == SW_KINDS ? SW_SEEN_BARE_UNTIMED : SW_SEEN_BARE_UNTIMED_ALSO)
		              : (also == SW_KINDS ? SW_SEEN_BARE : SW_SEEN_BARE_ALSO),
		          values);
	else if (is_on(d))
		snprintf(out, size, "%s", times);
	else
		slip_part(out, size, m->s->ended ? SW_NOT_SEEN_BARE : SW_NOT_YET_BARE, values);
}

static void put_digit(const struct making *m, json_t *list, const struct story_digit *d)
{
	json_t *o = json_object();
	char says[200], detail[1200], hm[SLIP_HM], paper[60];
	const char *const values[] = {"digit", own_digit_name(d->number), "minutes",
	                              told_minutes(m, d, paper), NULL};
	slip_sentence(says, sizeof says,
	              !is_on(d)     ? SW_DIGIT
	              : m->s->ended ? SW_DIGIT_ON
	                            : SW_DIGIT_ON_BRIEF,
	              values);
	detail_of(m, d, detail, sizeof detail);
	json_object_set_new(o, "name", slip_told(own_digit_name(d->number), 60));
	json_object_set_new(o, "says", slip_told(says, 160));
	json_object_set_new(o, "detail", slip_told(detail, 600));
	if (seen_bare(m, d)) {
		slip_hm(d->bare, hm);
		slip_put(o, "bare", m->s->paper_sheet ? slip_text(SW_BARE_ON_PAPER) : hm, 40);
	}
	json_array_append_new(list, o);
}

void slip_put_digits(const struct making *m)
{
	const struct story_digit *digits[DIGITS_MAX];
	int n = slip_digits_sorted(m->s, digits);
	json_t *list = json_array();
	for (int i = 0; i < n && slip_tells_all(m); i++)
		put_digit(m, list, digits[i]);
	json_object_set_new(m->o, "digits", list);
	if (m->s->single)
		slip_put(m->o, "single", slip_text(n ? SW_SINGLE : SW_SINGLE_NO_DIGIT), 160);
}

/* --- in the rows --------------------------------------------------------------------------------- */

static const char *thing_name(const struct making *m, int item)
{
	const struct item *it = sheet_item_const(&m->s->sheet, item);
	return it ? it->thing.name : "";
}

static void on_digit(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	const char *const values[] = {
	    "digit",   own_digit_name(d->number), "tourniquet", thing_name(m, d->tourniquet),
	    "forceps", thing_name(m, d->forceps), NULL};
	slip_part(out, size,
	          !d->tourniquet ? SW_NOT_SAID
	          : d->forceps   ? SW_WITH_FORCEPS
	                         : SW_WITHOUT_FORCEPS,
	          values);
}

/* Those that one badge answered stand together: "20 min at 10:20, 30 min at 10:30: told by CIRC-2". */
static void reminders_of(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	char some[600] = "", one[60], list[700], minutes[12], hm[SLIP_HM];
	for (int i = 0; i < d->n_reminders; i++) {
		const struct story_reminder *r = &d->reminders[i],
		                            *next = i + 1 < d->n_reminders ? r + 1 : NULL;
		int told = time_is_set(r->acknowledged);
		slip_hm(r->at, hm);
		snprintf(minutes, sizeof minutes, "%d", (int)r->minutes);
		SLIP_PART(one, REMINDER, "minutes", minutes, "time", hm);
		slip_join(some, sizeof some, ", ", one);
		if (next && time_is_set(next->acknowledged) == told && next->by == r->by)
			continue;
		if (told)
			SLIP_PART(list, REMINDERS_TOLD, "reminders", some, "person", slip_name(m, r->by));
		else
			SLIP_PART(list, REMINDERS_NOT, "reminders", some);
		slip_list(out, size, list);
		some[0] = 0;
	}
}

void slip_digit_rows(const struct making *m)
{
	const struct story_digit *digits[DIGITS_MAX];
	int n = slip_digits_sorted(m->s, digits);
	char all[ROW_MAX] = "", reminders[ROW_MAX] = "", one[560], named[ROW_MAX - 40];
	/* While it is searched for, the lines above say where what is missing was; how all stood together, the slip of the
	 * case's end says. */
	for (int i = 0; i < n && m->kind != SLIP_DISCREPANCY; i++) {
		on_digit(m, digits[i], one, sizeof one);
		slip_row_add(m, SW_ROW_ON_DIGIT, all, one);
	}
	slip_row(m, SW_ROW_ON_DIGIT, all, NULL);
	for (int i = 0; i < n; i++) {
		one[0] = 0;
		reminders_of(m, digits[i], one, sizeof one);
		if (one[0] && n > 1)
			SLIP_PART(named, OF_DIGIT, "digit", own_digit_name(digits[i]->number), "text", one);
		if (one[0])
			slip_row_add(m, SW_ROW_REMINDERS, reminders, n > 1 ? named : one);
	}
	slip_row(m, SW_ROW_REMINDERS, reminders, NULL);
}

void slip_outcome_digits(const struct making *m, char *out, size_t size)
{
	for (int i = 0; i < m->s->n_digits; i++) {
		const struct story_digit *d = &m->s->digits[i];
		const struct digit *now = sheet_digit_const(&m->s->sheet, d->number);
		char hm[SLIP_HM], one[200], paper[60];
		slip_hm(d->bare, hm);
		const char *const values[] = {
		    "digit", own_digit_name(d->number), "minutes", told_minutes(m, d, paper), "time", hm,
		    NULL};
		if (!now || !now->had || !d->n_stretches)
			continue;
		slip_part(one, sizeof one,
		          !now->seen_bare     ? SW_OUTCOME_NOT_BARE
		          : m->s->paper_sheet ? SW_OUTCOME_BARE_UNTIMED
		                              : SW_OUTCOME_BARE,
		          values);
		slip_list(out, size, one);
	}
}
