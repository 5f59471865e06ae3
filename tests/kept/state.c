#include "tests/kept/state.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "code/own-codes.h"

/* Words of our own for each enum, by name and without a default: a place that is added later is asked for
 * here, and a number that moves changes nothing. */
static const char *item_place_word(enum item_place p)
{
	switch (p) {
	case ITEM_HERE:
		return "on the field";
	case ITEM_ON:
		return "on";
	case ITEM_OFF:
		return "off, not yet accounted for";
	case ITEM_ACCOUNTED:
		return "accounted for";
	case ITEM_RETURNED:
		return "returned unopened";
	case ITEM_ISOLATED:
		return "isolated";
	case ITEM_STRUCK:
		return "struck";
	case ITEM_EXTRA:
		return "extra";
	}
	return "nowhere";
}

static const char *evidence_word(enum evidence e)
{
	switch (e) {
	case EVIDENCE_NONE:
		return "";
	case EVIDENCE_MARK:
		return ", mark scanned";
	case EVIDENCE_SHOWN:
		return ", shown";
	}
	return ", other evidence";
}

static const char *condition_word(enum condition c)
{
	switch (c) {
	case CONDITION_NONE:
		return "";
	case CONDITION_INTACT:
		return ", intact";
	case CONDITION_CUT_COMPLETE:
		return ", cut and complete";
	case CONDITION_PIECES_MISSING:
		return ", pieces missing";
	}
	return ", other condition";
}

static const char *digit_word(enum digit_state s)
{
	switch (s) {
	case DIGIT_BARE:
		return "bare";
	case DIGIT_MAYBE_ON:
		return "on?";
	case DIGIT_ON:
		return "on";
	case DIGIT_OFF:
		return "off";
	}
	return "other";
}

static const char *slip_word(enum slip_state s)
{
	switch (s) {
	case SLIP_QUEUED:
		return "queued";
	case SLIP_WRITTEN:
		return "written";
	case SLIP_SENT:
		return "sent";
	case SLIP_DONE:
		return "reported done";
	case SLIP_WAITING:
		return "waiting";
	case SLIP_FAILED:
		return "failed";
	case SLIP_SEEN:
		return "seen";
	}
	return "other";
}

static const char *slip_kind_word(enum slip_kind k)
{
	switch (k) {
	case SLIP_RECONCILIATION:
		return "reconciliation";
	case SLIP_DISCREPANCY:
		return "discrepancy";
	case SLIP_ADDENDUM:
		return "addendum";
	}
	return "other";
}

static const char *final_word(enum final_state f)
{
	switch (f) {
	case FINAL_NONE:
		return "not begun";
	case FINAL_ASKING:
		return "going on";
	case FINAL_AGREED:
		return "agreed";
	}
	return "other";
}

static const char *who_word(enum who_looked w)
{
	switch (w) {
	case LOOKED_TEAM:
		return "team";
	case LOOKED_PATIENT:
		return "patient";
	case LOOKED_CARER:
		return "carer";
	case LOOKED_COLLEAGUE:
		return "colleague";
	case LOOKED_NOBODY:
		return "nobody";
	}
	return "not asked";
}

static const char *staff_word(enum staff_kind k)
{
	switch (k) {
	case STAFF_PRACTITIONER:
		return "practitioner";
	case STAFF_SURGEON:
		return "surgeon";
	case STAFF_CHARGE:
		return "in charge";
	}
	return "other";
}

static const char *if_so(int so, const char *words)
{
	return so ? words : "";
}

static void item_text(const struct item *it, int number, struct buf *out)
{
	const struct thing *t = &it->thing;
	buf_printf(out, "  item %d: %s", number, t->name);
	if (t->line[0])
		buf_printf(out, " [%s]", t->line);
	if (t->identity[0])
		buf_printf(out, ", identity %s", t->identity);
	if (t->lot[0])
		buf_printf(out, ", lot %s", t->lot);
	if (t->expiry)
		buf_printf(out, ", expires %d", (int)t->expiry);
	buf_printf(out, ", %s", item_place_word((enum item_place)it->place));
	if (it->digit)
		buf_printf(out, " (%s)", own_digit_name(it->digit));
	buf_printf(out, ", %d of %d", it->shown, it->pieces);
	if (it->missing)
		buf_printf(out, ", %d missing", it->missing);
	buf_printf(out, "%s%s%s%s%s\n", evidence_word((enum evidence)it->evidence),
	           condition_word((enum condition)it->condition), if_so(it->added, ", added"),
	           if_so(it->dropped, ", dropped"), if_so(t->unlisted, ", unlisted"));
}

static void digit_text(const struct digit *d, struct moment at, struct buf *out)
{
	buf_printf(
	    out, "  %s: %s%s%s%s%s%s, longest %" PRId64 " ms, total %" PRId64 " ms, now %" PRId64 " ms",
	    own_digit_name(d->number), digit_word((enum digit_state)d->state), if_so(d->marked, ", marked"),
	    if_so(d->had, ", had a tourniquet"), if_so(d->seen_bare, ", seen bare"),
	    if_so(d->gap, ", at least"), if_so(d->reminded, ", reminder not acknowledged"),
	    digit_longest_ms(d, at), digit_total_ms(d, at), digit_stretch_ms(d, at));
	if (d->reminded_min)
		buf_printf(out, ", reminded at %d min", (int)d->reminded_min);
	buf_add_text(out, "\n");
}

static void team_text(const struct station *st, const struct team *team, struct buf *out)
{
	for (int p = PLACE_FIELD; p < TEAM_PLACES; p++)
		if (team->at[p] > 0)
			buf_printf(out, "  %s: %s\n", place_name((enum team_place)p),
			           staff_name(&st->staff, team->at[p]));
		else if (team->at[p])
			buf_printf(out, "  %s: visitor %d\n", place_name((enum team_place)p),
			           (int)-team->at[p]);
}

static void sheet_text(const struct station *st, const struct sheet *s, struct buf *out)
{
	buf_printf(out, "case %d in %s: open%s%s%s%s%s%s\n", (int)s->case_no, station_room_name(st, s->room),
	           if_so(s->suspended, ", suspended"), if_so(s->single, ", single-person"),
	           if_so(s->awake, ", awake patient"), if_so(s->cancelled, ", cancelled, a count is owed"),
	           if_so(s->patient_left, ", patient left"), if_so(s->dressing_on, ", dressing on"));
	buf_printf(out, "  initial count: %s; final count: %s\n", s->initial_agreed ? "agreed" : "not agreed",
	           final_word((enum final_state)s->final));
	if (s->discrepancy)
		buf_printf(out, "  DISCREPANCY, search steps answered: %d\n", s->search_done);
	if (s->points_yes || s->point_no || s->signed_out)
		buf_printf(out, "  sign-out: %d points yes, no at %d%s\n", s->points_yes, s->point_no,
		           if_so(s->signed_out, ", signed out"));
	if (s->who_looked)
		buf_printf(out, "  who else looked: %s\n", who_word((enum who_looked)s->who_looked));
	if (s->size_mm)
		buf_printf(out, "  circumference stated: %d mm\n", s->size_mm);
	team_text(st, &s->team, out);
	for (int i = 0; i < s->n_items; i++)
		item_text(&s->items[i], i + 1, out);
	for (int i = 0; i < s->n_digits; i++)
		digit_text(&s->digits[i], st->last, out);
	for (int i = 0; i < s->debts.count; i++) {
		const struct debt *d = &s->debts.list[i];
		buf_printf(out, "  owed: %s", debt_name((enum debt_kind)d->kind));
		if (d->item)
			buf_printf(out, ", item %d", d->item);
		buf_printf(out, "%s%s\n", d->digit ? ", " : "", d->digit ? own_digit_name(d->digit) : "");
	}
	if (s->asked.what)
		buf_printf(out, "  asked: %s%s%s\n", question_name((enum question)s->asked.what),
		           s->asked.digit ? ", " : "", s->asked.digit ? own_digit_name(s->asked.digit) : "");
}

static void sheets_text(const struct station *st, struct buf *out)
{
	for (int32_t done = 0, next;; done = next) {
		const struct sheet *first = NULL;
		for (int i = 0; i < SHEETS_MAX; i++)
			if (st->sheets[i].case_no > done &&
			    (!first || st->sheets[i].case_no < first->case_no))
				first = &st->sheets[i];
		if (!first)
			return;
		next = first->case_no;
		sheet_text(st, first, out);
	}
}

static void stores_text(const struct station *st, struct buf *out)
{
	for (size_t i = 0; i < st->catalogue.count; i++)
		buf_printf(out, "line %s: %s\n", st->catalogue.lines[i].key, st->catalogue.lines[i].name);
	for (size_t i = 0; i < st->staff.count; i++) {
		const struct person *p = &st->staff.list[i];
		buf_printf(out, "badge %d: %s, %s%s%s\n", (int)p->number, p->name,
		           staff_word((enum staff_kind)p->kind), if_so(p->registered, ", registered"),
		           if_so(p->withdrawn, ", withdrawn"));
	}
	for (size_t i = 0; i < st->n_quarantines; i++)
		buf_printf(out, "quarantine: %s %s: %s\n", st->quarantines[i].line,
		           st->quarantines[i].lot[0] ? st->quarantines[i].lot : "every lot",
		           st->quarantines[i].why);
}

void state_text(const struct station *st, struct buf *out)
{
	buf_printf(out, "site %s; boot %d; last case %d, last slip %d, last item %" PRId64 "\n", st->site,
	           (int)st->boot, (int)st->last_case_no, (int)st->last_slip_no, st->last_item_no);
	stores_text(st, out);
	for (int i = 0; i < st->n_rooms; i++) {
		const struct room *r = &st->rooms[i];
		buf_printf(out, "room %d: %s%s%s%s\n", (int)r->number, r->name,
		           if_so(r->single, ", single operator"), st->idle_asked[i] ? ", asked: " : "",
		           st->idle_asked[i] ? question_name((enum question)st->idle_asked[i]) : "");
	}
	for (int i = 0; i < st->n_carried; i++)
		buf_printf(out, "scanner %s: room %d%s\n", st->carried[i].scanner, (int)st->carried[i].room,
		           if_so(st->carried[i].bound, ", a spare of it"));
	sheets_text(st, out);
	for (int i = 0; i < st->n_unseen; i++) {
		const struct slip *s = &st->unseen[i];
		buf_printf(out, "slip %d not seen: %s of case %d, copy %d, %s", (int)s->number,
		           slip_kind_word((enum slip_kind)s->kind), (int)s->case_no, s->copy,
		           slip_word((enum slip_state)s->state));
		if (s->job)
			buf_printf(out, ", print job %d", (int)s->job);
		buf_add_text(out, "\n");
	}
	for (int i = 0; i < st->n_owed; i++)
		buf_printf(out, "incident number owed: case %d\n", (int)st->owed[i].case_no);
}
