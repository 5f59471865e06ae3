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
static void times_of(const struct making *m, const struct story_stretch *x, char *out, size_t size)
{
	enum saying saying = !time_is_set(x->off)                 ? SAY_SLIP_SINCE
	                     : x->off.wall_ms < x->on.wall_ms     ? SAY_SLIP_TIMES_SET_BACK
	                     : civil_ms(x->off) < civil_ms(x->on) ? SAY_SLIP_TIMES_WENT_BACK
	                                                          : SAY_SLIP_TIMES;
	slip_say(m,
	         &(const struct say){.saying = saying, .from = slip_minute(x->on), .to = slip_minute(x->off)},
	         out, size);
}

static void stretches_of(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	char list[900] = "", times[80], one[200];
	if (d->n_stretches == 1) {
		times_of(m, &d->stretches[0], out, size);
		return;
	}
	for (int i = 0; i < d->n_stretches; i++) {
		times_of(m, &d->stretches[i], times, sizeof times);
		slip_say(m, SAY(SLIP_STRETCH, .first = times, .second = d->stretches[i].minutes), one,
		         sizeof one);
		said_join(list, sizeof list, ", ", one);
	}
	slip_say(m, SAY(SLIP_STRETCHES, .list = list, .words = d->longest), out, size);
}

/* Of one stretch what its clock says; of several their sum. */
static const char *minutes_of(const struct story_digit *d)
{
	return d->n_stretches == 1 && d->stretches[0].minutes[0] ? d->stretches[0].minutes : d->total;
}

/* Entered from a paper count sheet, when the hands had done other things: their times stand there. */
static const char *told_minutes(const struct making *m, const struct story_digit *d, char on_paper[60])
{
	if (!m->s->paper_sheet)
		return minutes_of(d);
	slip_say(m, SAY(SLIP_MINUTES_ON_PAPER, .n = m->s->paper_sheet), on_paper, 60);
	return on_paper;
}

static int count_ended(const struct story *s)
{
	for (int i = 0; i < s->n_counts; i++)
		if (s->counts[i].kind == COUNT_FINAL)
			return 1;
	return 0;
}

static enum saying not_bare(const struct story *s)
{
	return !s->ended        ? SAY_SLIP_NOT_YET_BARE
	       : count_ended(s) ? SAY_SLIP_NOT_SEEN_BARE
	                        : SAY_SLIP_NOT_SEEN_BARE_NO_COUNT;
}

static int seen_bare(const struct making *m, const struct story_digit *d)
{
	const struct digit *now = sheet_digit_const(&m->s->sheet, d->number);
	return time_is_set(d->bare) && now && now->seen_bare;
}

/* The look is evidence of its own, beside the minutes and never merged with the count (rule 11). */
static void detail_of(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	char times[1000];
	enum saying also = m->s->single ? entry_looked(m->s->sheet.who_looked) : SAY_NONE;
	struct say say = {
	    .words = times, .time = slip_minute(d->bare), .person = slip_name(m, d->bare_by), .what = also};
	if (m->s->paper_sheet)
		snprintf(times, sizeof times, "%s", slip_text(m, SAY_SLIP_ENTERED_AFTERWARDS));
	else
		stretches_of(m, d, times, sizeof times);
	if (seen_bare(m, d) && m->s->paper_sheet)
		say.saying = also ? SAY_SLIP_SEEN_BARE_UNTIMED_ALSO : SAY_SLIP_SEEN_BARE_UNTIMED;
	else if (seen_bare(m, d))
		say.saying = also ? SAY_SLIP_SEEN_BARE_ALSO : SAY_SLIP_SEEN_BARE;
	else
		say.saying = not_bare(m->s);
	if (!seen_bare(m, d) && is_on(d))
		snprintf(out, size, "%s", times);
	else
		slip_say(m, &say, out, size);
}

static enum saying first_words(const struct making *m, const struct story_digit *d)
{
	if (is_on(d))
		return m->s->ended ? SAY_SLIP_DIGIT_ON : SAY_SLIP_DIGIT_ON_BRIEF;
	if (m->s->paper_sheet)
		return SAY_SLIP_OF_DIGIT;
	return d->time_moved ? SAY_SLIP_DIGIT_CORRECTED : SAY_SLIP_DIGIT;
}

static void put_digit(const struct making *m, json_t *list, const struct story_digit *d)
{
	json_t *o = json_object();
	char says[200], detail[1200], hm[SLIP_HM], paper[60];
	const struct say say = {
	    .saying = first_words(m, d), .digit = d->number, .words = told_minutes(m, d, paper)};
	slip_say(m, &say, says, sizeof says);
	saying_capital(says);
	detail_of(m, d, detail, sizeof detail);
	json_object_set_new(o, "name", slip_told(slip_text(m, saying_of_digit(d->number)), 60));
	json_object_set_new(o, "says", slip_told(says, 160));
	json_object_set_new(o, "detail", slip_told(detail, 600));
	if (seen_bare(m, d)) {
		slip_hm(d->bare, hm);
		slip_put(o, "bare", m->s->paper_sheet ? slip_text(m, SAY_SLIP_BARE_ON_PAPER) : hm, 40);
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
		slip_put(m->o, "single", slip_text(m, n ? SAY_SLIP_SINGLE : SAY_SLIP_SINGLE_NO_DIGIT), 160);
}

/* --- in the rows --------------------------------------------------------------------------------- */

static const char *thing_name(const struct making *m, int item)
{
	const struct item *it = sheet_item_const(&m->s->sheet, item);
	return it ? it->thing.name : "";
}

/* What is on it, or was on it and has not gone to another since, alike ones together; else the last that was. */
static void tourniquets_of(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	const struct sheet *s = &m->s->sheet;
	const struct item *all[ITEMS_MAX];
	char one[120];
	int n = 0;
	out[0] = 0;
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (it->digit == d->number && role_has(it->thing.role, TRAIT_TIMED) && item_counts(it) &&
		    (it->place == ITEM_ON || !is_on(d)))
			all[n++] = it;
	}
	for (int i = 0; i < n; i++) {
		int same = 0, before = 0;
		for (int k = 0; k < n; k++) {
			const int alike = strcmp(all[k]->thing.name, all[i]->thing.name) == 0;
			same += alike;
			before += alike && k < i;
		}
		if (before)
			continue;
		slip_say(m, SAY(SLIP_COUNTED, .n = same, .item = all[i]->thing.name), one, sizeof one);
		said_join(out, size, ", ", same > 1 ? one : all[i]->thing.name);
	}
	if (!n)
		snprintf(out, size, "%s", thing_name(m, d->tourniquet));
}

static void on_digit(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	char tourniquets[400];
	tourniquets_of(m, d, tourniquets, sizeof tourniquets);
	const struct say say = {.saying = !d->tourniquet ? SAY_SLIP_NOT_SAID
	                                  : d->forceps   ? SAY_SLIP_WITH_FORCEPS
	                                                 : SAY_SLIP_WITHOUT_FORCEPS,
	                        .digit = d->number,
	                        .item = tourniquets,
	                        .other_item = thing_name(m, d->forceps)};
	slip_say(m, &say, out, size);
}

/* Of the digits that have their tourniquet on still, or of those that had it. */
static void put_together(const struct making *m, const struct story_digit *const digits[DIGITS_MAX], int n,
                         int on, enum saying label)
{
	char all[ROW_MAX] = "", one[560];
	for (int i = 0; i < n; i++) {
		if (is_on(digits[i]) != on)
			continue;
		on_digit(m, digits[i], one, sizeof one);
		slip_row_add(m, label, all, one);
	}
	slip_row(m, label, all, NULL);
}

/* It goes on until what came off is accounted for; its minutes are since it went on, and not how long it was on. */
static int was_off(const struct story_digit *d, struct moment at)
{
	for (int i = d->n_stretches - 1; i >= 0; i--) {
		const struct story_stretch *x = &d->stretches[i];
		if (moment_between_ms(x->on, at) >= 0)
			return time_is_set(x->off) && moment_between_ms(x->off, at) >= 0;
	}
	return 0;
}

/* Those that one badge answered stand together: "20 min at 10:20, 30 min at 10:30: told by CIRC-2". */
static void reminders_of(const struct making *m, const struct story_digit *d, char *out, size_t size)
{
	char some[600] = "", one[90], list[700];
	for (int i = 0; i < d->n_reminders; i++) {
		const struct story_reminder *r = &d->reminders[i],
		                            *next = i + 1 < d->n_reminders ? r + 1 : NULL;
		int told = time_is_set(r->acknowledged);
		slip_say(m,
		         was_off(d, r->at)
		             ? SAY(SLIP_REMINDER_OFF, .minutes = r->minutes, .time = slip_minute(r->at))
		             : SAY(SLIP_REMINDER, .minutes = r->minutes, .time = slip_minute(r->at)),
		         one, sizeof one);
		said_join(some, sizeof some, ", ", one);
		if (next && time_is_set(next->acknowledged) == told && next->by == r->by)
			continue;
		slip_say(m,
		         told ? SAY(SLIP_REMINDERS_TOLD, .list = some, .person = slip_name(m, r->by))
		              : SAY(SLIP_REMINDERS_NOT, .list = some),
		         list, sizeof list);
		slip_list(out, size, list);
		some[0] = 0;
	}
}

void slip_digit_rows(const struct making *m)
{
	const struct story_digit *digits[DIGITS_MAX];
	int n = slip_digits_sorted(m->s, digits);
	char reminders[ROW_MAX] = "", one[560], named[ROW_MAX - 40];
	/* While it is searched for, the lines above say where what is missing was; how all stood together, the slip of the
	 * case's end says. */
	if (m->kind != SLIP_DISCREPANCY) {
		put_together(m, digits, n, 1, SAY_SLIP_ROW_ON_DIGIT);
		put_together(m, digits, n, 0, SAY_SLIP_ROW_WAS_ON);
	}
	for (int i = 0; i < n; i++) {
		one[0] = 0;
		reminders_of(m, digits[i], one, sizeof one);
		if (one[0] && n > 1)
			slip_say(m, SAY(SLIP_OF_DIGIT, .digit = digits[i]->number, .words = one), named,
			         sizeof named);
		if (one[0])
			slip_row_add(m, SAY_SLIP_ROW_REMINDERS, reminders, n > 1 ? named : one);
	}
	slip_row(m, SAY_SLIP_ROW_REMINDERS, reminders, NULL);
}

void slip_outcome_digits(const struct making *m, char *out, size_t size)
{
	for (int i = 0; i < m->s->n_digits; i++) {
		const struct story_digit *d = &m->s->digits[i];
		const struct digit *now = sheet_digit_const(&m->s->sheet, d->number);
		char one[200], paper[60];
		if (!now || !now->had || !d->n_stretches)
			continue;
		const struct say say = {.saying = !now->seen_bare     ? SAY_SLIP_OUTCOME_NOT_BARE
		                                  : m->s->paper_sheet ? SAY_SLIP_OUTCOME_BARE_UNTIMED
		                                                      : SAY_SLIP_OUTCOME_BARE,
		                        .digit = d->number,
		                        .words = told_minutes(m, d, paper),
		                        .time = slip_minute(d->bare)};
		slip_say(m, &say, one, sizeof one);
		slip_list(out, size, one);
	}
}
