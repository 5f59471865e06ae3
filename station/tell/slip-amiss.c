/* What a slip says first where something is amiss: what is missing, where it may be, and what to do now, in this order. */
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "tell/slip-making.h"

static void line(const struct making *m, enum saying label, const char *text, const char *note)
{
	json_t *o = json_object(), *list = json_object_get(m->o, "amiss");
	slip_put(o, "label", slip_text(m, label), 40);
	slip_put(o, "text", text, 300);
	slip_put(o, "note", note, 300);
	json_array_append_new(list, o);
}

static int count_of(uint32_t digits)
{
	return __builtin_popcount(digits);
}

/* --- what is missing, and where it may be -------------------------------------------------------- */

static enum saying label_of(enum amiss_how how)
{
	switch (how) {
	case AMISS_MISSING:
		return SAY_SLIP_ROW_NOT_FOUND;
	case AMISS_OPEN:
		return SAY_SLIP_ROW_OPEN;
	case AMISS_PIECES:
		return SAY_SLIP_ROW_IN_PIECES;
	case AMISS_EXTRA:
		return SAY_SLIP_ROW_EXTRA;
	}
	return SAY_SLIP_ROW_NOT_FOUND;
}

static void what(const struct making *m, const struct amiss *a)
{
	char text[160], note[80];
	int n = a->how == AMISS_MISSING || a->how == AMISS_OPEN ? a->missing : a->pieces;
	const struct item *it = sheet_item_const(&m->s->sheet, a->item);
	const int offcuts = role_has(it->thing.role, TRAIT_CONDITION) && it->pieces > 1;
	slip_say(m,
	         &(const struct say){.saying = offcuts ? SAY_SLIP_PIECES_OF : SAY_SLIP_COUNTED,
	                             .n = n,
	                             .item = it->thing.name},
	         text, sizeof text);
	if (a->how == AMISS_PIECES)
		snprintf(note, sizeof note, "%s", slip_text(m, SAY_SLIP_PIECE_MISSING));
	else
		slip_say(m, SAY(SLIP_OF_SHOWN, .n = a->shown, .all = a->pieces), note, sizeof note);
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

/* Which of the digits that stand there nobody has looked at, beside them. */
static void bare_note(const struct making *m, uint32_t digits, char *out, size_t size)
{
	uint32_t open = digits & digits_not_bare(m);
	char some[300];
	amiss_digits_words(m->from->language, open, 0, some, sizeof some);
	out[0] = 0;
	if (open == digits)
		snprintf(out, size, "%s",
		         slip_text(m, m->s->ended ? SAY_SLIP_NOTE_END_NOT_BARE : SAY_SLIP_NOTE_NOT_BARE));
	else if (open)
		slip_say(m,
		         &(const struct say){.saying = m->s->ended ? SAY_SLIP_NOTE_END_SOME_NOT_BARE
		                                                   : SAY_SLIP_NOTE_SOME_NOT_BARE,
		                             .list = some},
		         out, size);
}

static void where(const struct making *m)
{
	int timed = loses_tourniquet(m);
	uint32_t digits = digits_of(m, timed);
	char text[400], note[400];
	amiss_digits_words(m->from->language, digits, timed, text, sizeof text);
	bare_note(m, digits, note, sizeof note);
	if (digits)
		line(m, timed ? SAY_SLIP_ROW_MAY_BE_ON : SAY_SLIP_ROW_WAS_ON, text, note);
	else if (timed)
		line(m, SAY_SLIP_ROW_MAY_BE_ON, slip_text(m, SAY_SLIP_ANY_DIGIT),
		     slip_text(m, SAY_SLIP_NO_DIGIT_ENTERED));
}

/* --- what to do ---------------------------------------------------------------------------------- */

static void digits_words(const struct making *m, uint32_t digits, char *out, size_t size)
{
	int count = count_of(digits);
	if (count == 1)
		amiss_digits_words(m->from->language, digits, 0, out, size);
	else if (count > 2)
		slip_say(m, SAY(SLIP_EACH_DIGIT, .n = count), out, size);
	else
		snprintf(out, size, "%s", slip_text(m, count ? SAY_SLIP_BOTH_DIGITS : SAY_SLIP_ANY_DIGIT));
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
	struct say say = {.list = digits, .step = step};
	int ended = m->s->ended != 0;
	digits_words(m, digits_of(m, 1), digits, sizeof digits);
	if (loses_tourniquet(m))
		say.saying = ended                     ? SAY_SLIP_DO_LOOK_END
		             : m->s->sheet.dressing_on ? SAY_SLIP_DO_LOOK_UNDER
		                                       : SAY_SLIP_DO_LOOK;
	else if (*step)
		say.saying = ended ? SAY_SLIP_DO_STEP_END : SAY_SLIP_DO_STEP;
	else
		say.saying = ended ? SAY_SLIP_DO_TELL_ALL : SAY_SLIP_DO_DECIDE;
	slip_say(m, &say, text, sizeof text);
	saying_capital(text);
	line(m, SAY_SLIP_ROW_NOW, text, "");
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

static void deed_of_digits(const struct making *m, enum saying word, uint32_t digits)
{
	char text[400], which[200];
	digits_words(m, digits, which, sizeof which);
	slip_say(m, &(const struct say){.saying = word, .list = which}, text, sizeof text);
	line(m, SAY_SLIP_ROW_NOW, text, "");
}

static void unresolved(const struct making *m)
{
	uint32_t on = digits_on(m), bare = digits_not_bare(m);
	char text[400];
	for (int i = 0; i < m->n_amiss; i++)
		if (!on || !m->amiss[i].timed || m->amiss[i].how != AMISS_OPEN)
			what(m, &m->amiss[i]);
	amiss_digits_words(m->from->language, on, 0, text, sizeof text);
	if (on)
		line(m, SAY_SLIP_ROW_ON_NOW, text, "");
	else if (m->n_amiss)
		where(m);
	amiss_digits_words(m->from->language, bare, 0, text, sizeof text);
	if (bare && !m->n_amiss)
		line(m, SAY_SLIP_ROW_NOT_BARE, text, "");
	if (m->s->sheet.unfollowed)
		line(m, SAY_SLIP_ROW_WHY, m->s->end_text, "");
	if (on)
		deed_of_digits(m, SAY_SLIP_DO_OFF, on);
	else if (m->n_amiss)
		deed(m);
	else if (bare)
		deed_of_digits(m, SAY_SLIP_DO_BARE, bare);
	else if (m->s->sheet.unfollowed)
		line(m, SAY_SLIP_ROW_NOW, slip_text(m, SAY_SLIP_DO_COUNT), "");
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

/* Where what was found was, or may have been: where somebody saw it, else by its name, else by what was missing, else each digit that had a tourniquet. */
static uint32_t digits_of_found(const struct making *m, const struct story_found *f)
{
	uint32_t digits = f->digit ? 1u << f->digit : 0;
	for (int i = 1; i <= m->s->sheet.n_items && !f->digit; i++)
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
			json_array_append_new(list, slip_told(slip_text(m, saying_of_digit(d)), 60));
	json_object_set_new(m->o, "looked", list);
}

static void deed_of_found(const struct making *m, uint32_t digits)
{
	char text[400], which[200];
	if (count_of(digits) == 1)
		snprintf(which, sizeof which, "%s", slip_text(m, saying_of_digit(__builtin_ctz(digits))));
	else if (count_of(digits) > 2)
		slip_say(m, SAY(SLIP_N_DIGITS, .n = count_of(digits)), which, sizeof which);
	else
		snprintf(which, sizeof which, "%s",
		         slip_text(m, digits ? SAY_SLIP_TWO_DIGITS : SAY_SLIP_DIGITS_OPERATED));
	slip_say(m, SAY(SLIP_DO_LOOK_FOUND, .list = which), text, sizeof text);
	line(m, SAY_SLIP_ROW_NOW, text, "");
}

static void found(const struct making *m)
{
	uint32_t digits = 0, on = 0;
	char text[400], hm[SLIP_HM];
	int other = 1; /* nothing that goes on a digit */
	for (int i = 0; i < m->s->n_found; i++) {
		const struct story_found *f = &m->s->found[i];
		const char *name = f->thing.called ? slip_text(m, f->thing.called) : f->thing.name;
		slip_hm(f->at, hm);
		on |= f->digit ? 1u << f->digit : 0;
		if (f->digit)
			slip_say(
			    m,
			    SAY(SLIP_OF_ITEM, .item = name, .text = slip_text(m, saying_of_digit(f->digit))),
			    text, sizeof text);
		else if (f->text[0] && strcmp(f->text, name) != 0)
			slip_say(m, SAY(SLIP_OF_ITEM, .item = name, .text = f->text), text, sizeof text);
		else
			snprintf(text, sizeof text, "%s", name[0] ? name : slip_text(m, SAY_ITEM_NO_NUMBER));
		line(m, SAY_SLIP_ROW_FOUND, text, hm);
		digits |= digits_of_found(m, f);
		other &= f->thing.role && !role_has(f->thing.role, TRAIT_ON_DIGIT);
	}
	amiss_digits_words(m->from->language, digits, 1, text, sizeof text);
	if (!other && digits && !on)
		line(m, SAY_SLIP_ROW_WAS_ON, text, "");
	if (on)
		deed_of_digits(m, SAY_SLIP_DO_OFF_FOUND, on);
	else if (other)
		line(m, SAY_SLIP_ROW_NOW, slip_text(m, SAY_SLIP_DO_TELL_FOUND), "");
	else
		deed_of_found(m, digits);
	put_looked(m, digits);
}

/* --- an addendum --------------------------------------------------------------------------------- */

static void slip_named(const struct making *m, const struct story_slip *x, char *out, size_t size)
{
	static const enum saying ends[] = {SAY_SLIP_NOT_ENDED, SAY_SLIP_END_RECONCILED,
	                                   SAY_SLIP_END_UNRESOLVED, SAY_SLIP_END_CANCELLED};
	const struct say say = {.saying = x->kind == SLIP_DISCREPANCY ? SAY_SLIP_NAMED_DISCREPANCY
	                                  : x->kind == SLIP_ADDENDUM  ? SAY_SLIP_NAMED_ADDENDUM
	                                                              : SAY_SLIP_NAMED_ENDED,
	                        .slip = x->number,
	                        .time = slip_minute(x->at),
	                        .what = ends[m->s->ended & 3]};
	slip_say(m, &say, out, size);
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
		const struct say joined = {
		    .saying = i == last ? SAY_LIST_LAST : SAY_LIST_MORE, .first = before, .second = one};
		if (before[0])
			slip_say(m, &joined, list, sizeof list);
		else
			snprintf(list, sizeof list, "%s", one);
	}
	slip_say(m, SAY(SLIP_ELSEWHERE, .list = list), text, sizeof text);
	if (list[0])
		slip_put(m->o, "elsewhere", text, 700);
}

static void corrections(const struct making *m)
{
	char note[60];
	for (int i = 0; i < m->s->n_entries; i++) {
		const struct story_entry *e = &m->s->entries[i];
		if (e->how != ENTRY_CORRECTED || !e->after)
			continue;
		slip_say(m, SAY(SLIP_CORRECTED_AT, .time = slip_minute(e->at)), note, sizeof note);
		line(m, SAY_SLIP_ROW_CORRECTED, e->text, note);
	}
}

/* Whose decision it was, and when; of what the station ended by itself, when. */
static void end_words(const struct making *m, char *out, size_t size)
{
	const struct story *s = m->s;
	char by[80];
	slip_say(m,
	         &(const struct say){.saying = s->witness ? SAY_SLIP_WITNESSED : SAY_SLIP_SIGNED,
	                             .person = slip_name(m, s->signed_by),
	                             .other_person = slip_name(m, s->witness)},
	         by, sizeof by);
	slip_say(m,
	         &(const struct say){.saying = s->signed_by ? SAY_SLIP_ENDED_BY : SAY_SLIP_ENDED_AT,
	                             .time = slip_minute(s->ended_at),
	                             .person = by},
	         out, size);
}

static void put_shout(const struct making *m, enum saying word, const char *note)
{
	slip_put(m->o, "shout", slip_text(m, word), 40);
	slip_put(m->o, "shout_note", note, 80);
}

static void addendum(const struct making *m)
{
	char text[80];
	slip_say(m,
	         m->s->last_slip ? SAY(SLIP_ADDS_TO, .slip = m->s->last_slip, .case_no = m->s->case_no)
	                         : SAY(SLIP_ADDS_TO_CASE, .case_no = m->s->case_no),
	         text, sizeof text);
	slip_put(m->o, "adds_words", text, 80);
	if (m->s->n_found) {
		put_shout(m, SAY_SLIP_FOUND_LATER, text);
		found(m);
	}
	corrections(m);
	put_elsewhere(m);
}

void slip_put_amiss(const struct making *m)
{
	char text[120];
	json_object_set_new(m->o, "amiss", json_array());
	if (m->kind == SLIP_ADDENDUM) {
		addendum(m);
	} else if (m->kind == SLIP_DISCREPANCY) {
		put_shout(m, SAY_SLIP_DISCREPANCY, m->s->ended ? "" : slip_text(m, SAY_SLIP_CASE_OPEN));
		for (int i = 0; i < m->n_amiss; i++)
			what(m, &m->amiss[i]);
		where(m);
		deed(m);
	} else if (m->s->ended == END_UNRESOLVED) {
		end_words(m, text, sizeof text);
		put_shout(m, SAY_SLIP_UNRESOLVED, text);
		unresolved(m);
	}
	if (m->kind == SLIP_RECONCILIATION && m->s->n_found) { /* no paper: the case as it stands today */
		if (m->s->ended != END_UNRESOLVED)
			put_shout(m, SAY_SLIP_FOUND_LATER, "");
		found(m);
	}
}

/* --- how it was searched for --------------------------------------------------------------------- */

static int is_within(struct moment at, const struct story_discrepancy *d)
{
	return time_is_set(at) && at.wall_ms >= d->opened.wall_ms && at.wall_ms <= d->closed.wall_ms;
}

/* The gravest place of all is named, wherever people found it. */
static enum saying then_word(const struct story_item *it, const struct story_discrepancy *d, int one)
{
	if (is_within(it->seen_on, d))
		return one ? SAY_SLIP_THEN_ON_DIGIT : SAY_SLIP_THEN_ON_DIGIT_ITEM;
	if (it->where)
		return one ? SAY_SLIP_THEN_FOUND : SAY_SLIP_THEN_FOUND_ITEM;
	return one ? SAY_SLIP_THEN_SHOWN : SAY_SLIP_THEN_SHOWN_ITEM;
}

static void found_words(const struct making *m, const struct story_discrepancy *d, char *out, size_t size)
{
	int n = 0;
	for (int i = 0; i < m->s->sheet.n_items; i++)
		n += is_within(m->s->items[i].shown, d);
	for (int i = 0; i < m->s->sheet.n_items; i++) {
		const struct story_item *it = &m->s->items[i];
		char one[400];
		const struct say say = {.saying = then_word(it, d, n == 1),
		                        .item = m->s->sheet.items[i].thing.name,
		                        .time = slip_minute(it->shown),
		                        .digit = it->on,
		                        .text = it->found};
		if (!is_within(it->shown, d))
			continue;
		slip_say(m, &say, one, sizeof one);
		slip_list(out, size, one);
	}
}

/* When it was opened, and on which slip that stands. */
static void opened_words(const struct making *m, const struct story_discrepancy *d, char *out, size_t size)
{
	slip_hm(d->opened, out);
	for (int i = 0; i < m->s->n_slips; i++) {
		const struct story_slip *x = &m->s->slips[i];
		if (x->kind == SLIP_DISCREPANCY && x->number != m->from->number &&
		    x->at.wall_ms >= d->opened.wall_ms &&
		    (!time_is_set(d->closed) || x->at.wall_ms <= d->closed.wall_ms)) {
			slip_say(m, SAY(SLIP_TIME_ON_SLIP, .time = slip_minute(d->opened), .slip = x->number),
			         out, size);
			return;
		}
	}
}

void slip_discrepancy_words(const struct making *m, const struct story_discrepancy *d, char *out, size_t size)
{
	char then[600] = "", when[80];
	opened_words(m, d, when, sizeof when);
	const struct say say = {.saying = time_is_set(d->closed) ? SAY_SLIP_AFTER_DISCREPANCY_FOUND
	                                                         : SAY_SLIP_AFTER_DISCREPANCY,
	                        .first = when,
	                        .words = d->what,
	                        .second = then};
	found_words(m, d, then, sizeof then);
	if (!then[0])
		slip_say(m, SAY(SLIP_THEN_CLOSED, .time = slip_minute(d->closed)), then, sizeof then);
	slip_say(m, &say, out, size);
}

static void put_step(const struct making *m, json_t *list, const char *text, const char *state,
                     const char *says, int write)
{
	json_t *o = json_object();
	json_object_set_new(o, "text", slip_told(shipped_text_in(m->from->language, text), 120));
	json_object_set_new(o, "state", json_string(state));
	slip_put(o, "says", says, 220);
	if (write)
		json_object_set_new(o, "write", json_true());
	json_array_append_new(list, o);
}

static void put_taken(const struct making *m, json_t *list, const struct story_step *step)
{
	char says[300];
	slip_say(m,
	         &(const struct say){.saying = step->done == STEP_DONE ? SAY_SLIP_STEP_DONE
	                                       : step->why[0]          ? SAY_SLIP_STEP_NOT_DONE_WHY
	                                                               : SAY_SLIP_STEP_NOT_DONE,
	                             .time = slip_minute(step->at),
	                             .reason = step->why},
	         says, sizeof says);
	put_step(m, list, step->text, step->done == STEP_DONE ? "done" : "not done", says,
	         step->done != STEP_DONE && !step->why[0]);
}

/* After the end only the steps that were taken, and the one that found it; while the search goes on all, to be ticked. */
static void put_steps(const struct making *m, json_t *search)
{
	const struct policy *p = &m->from->past->settings.policy;
	const struct story *s = m->s;
	json_t *list = json_array();
	for (int i = 0; i < s->n_steps; i++)
		put_taken(m, list, &s->steps[i]);
	for (int i = s->n_steps; i < p->n_search && m->kind == SLIP_DISCREPANCY && !s->ended; i++)
		put_step(m, list, p->search[i], "open", "", 0);
	for (int i = 0; i < s->sheet.n_items; i++) {
		char says[60];
		if (!s->items[i].where || !s->n_discrepancies ||
		    !is_within(s->items[i].shown, &s->discrepancies[s->n_discrepancies - 1]))
			continue;
		slip_say(m, SAY(SLIP_STEP_FOUND, .time = slip_minute(s->items[i].shown)), says, sizeof says);
		put_step(m, list, s->items[i].found, "found", says, 0);
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
	         : s->ended == END_UNRESOLVED && number[0] && s->end_why != END_NOT_FOLLOWED &&
	               s->end_why != END_NUMBER_OWED) {
		slip_say(m, SAY(SLIP_INCIDENT_IS, .text = number), text, sizeof text);
		saying_capital(text);
		slip_put(search, "incident", text, 120);
	} else if (debt || (s->ended == END_UNRESOLVED && s->end_why == END_NUMBER_OWED)) {
		slip_put(search, "write", slip_text(m, SAY_SLIP_INCIDENT_OWED), 60);
	} else if (!s->ended) {
		slip_put(search, "write", slip_text(m, SAY_SLIP_INCIDENT), 60);
	}
}

void slip_put_search(const struct making *m)
{
	const struct story *s = m->s;
	char title[120];
	if (!s->n_discrepancies || !slip_tells_all(m))
		return;
	const struct story_discrepancy *last = &s->discrepancies[s->n_discrepancies - 1];
	json_t *search = json_object();
	slip_say(m,
	         &(const struct say){.saying = time_is_set(last->closed)     ? SAY_SLIP_SEARCH_CLOSED
	                                       : m->kind == SLIP_DISCREPANCY ? SAY_SLIP_SEARCH_OPEN
	                                                                     : SAY_SLIP_SEARCH_ENDED,
	                             .from = slip_minute(last->opened),
	                             .to = slip_minute(last->closed)},
	         title, sizeof title);
	slip_put(search, "title", title, 120);
	put_steps(m, search);
	put_incident(m, search);
	json_object_set_new(m->o, "search", search);
}
