#include "tell/slip.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"
#include "code/own-codes.h"

#define OUTCOME_MAX 1200

struct making {
	const struct slip_source *from;
	const struct story *s;
	json_t *o; /* the document */
	enum slip_kind kind;
};

/* Texts are cut at the paper's limits in whole characters, and what may not stand there is replaced: a paper is never kept
 * back for a name. The record keeps them as they are. */
static json_t *text(const char *s, size_t limit)
{
	return name_told(s, limit);
}

static void put(json_t *o, const char *key, const char *s, size_t limit)
{
	if (s[0])
		json_object_set_new(o, key, text(s, limit));
}

/* Each time as it was read in the room. */
static void hm_of(struct moment at, char hm[6])
{
	clock_text_hm(at.wall_ms, at.utc_min, hm);
}

static json_t *hm_text(struct moment at)
{
	char hm[6];
	hm_of(at, hm);
	return json_string(hm);
}

static json_t *day_text(struct moment at)
{
	char date[11], hm[6], both[24];
	clock_text_date(at.wall_ms, at.utc_min, date);
	hm_of(at, hm);
	snprintf(both, sizeof both, "%s %s", date, hm);
	return json_string(both);
}

static const char *name_of(const struct making *m, int32_t number)
{
	return number ? staff_name(&m->from->past->staff, number) : "nobody";
}

/* --- items, digits ------------------------------------------------------------------------------ */

static void item_note(const struct making *m, int number, const struct item *it, char *out, size_t size)
{
	static const char *const places[] = {
	    "",
	    "",
	    "on a digit",
	    "off, not yet accounted for",
	    "",
	    "returned unopened",
	    "isolated: wrong number",
	    "struck: a misread",
	    "EXTRA ITEM, not on the sheet",
	};
	const struct story_item *si = &m->s->items[number - 1];
	char hm[6];
	size_t used = 0;
	out[0] = 0;
#define NOTE(...)                                                                                            \
	used +=                                                                                              \
	    (size_t)snprintf(out + (used < size ? used : size), used < size ? size - used : 0, __VA_ARGS__)
	if (si->added) {
		hm_of(si->in, hm);
		NOTE("added %s", hm);
	}
	if (it->dropped)
		NOTE("%sdropped", used ? ", " : "");
	if (it->thing.unlisted)
		NOTE("%s%s", used ? ", " : "",
		     it->thing.line[0] ? "IMPROVISED, no tourniquet of the catalogue"
		                       : "not listed in the catalogue");
	if (places[it->place][0])
		NOTE("%s%s", used ? ", " : "", places[it->place]);
	if (si->found[0])
		NOTE("%s%s%.100s", used ? ", " : "",
		     it->evidence == EVIDENCE_SHOWN && it->thing.identity_kind == IDENTITY_MARK ? ""
		                                                                                : "found: ",
		     si->found);
	if (it->place != ITEM_ACCOUNTED && item_counts(it) && it->missing)
		NOTE("%sNOT THERE: %d", used ? ", " : "", it->missing);
#undef NOTE
}

static void put_item(const struct making *m, json_t *list, int number)
{
	const struct item *it = sheet_item_const(&m->s->sheet, number);
	json_t *o = json_object();
	char note[400], date[16];
	const char *identity = strchr(it->thing.identity, ':');
	int back = it->place == ITEM_RETURNED || it->place == ITEM_ISOLATED || it->place == ITEM_STRUCK;
	put(o, "line", it->thing.name, 60);
	put(o, "identity", identity ? identity + 1 : it->thing.identity, 60);
	put(o, "lot", it->thing.lot, 20);
	if (it->thing.expiry) {
		snprintf(date, sizeof date, "%04d-%02d-%02d", (int)(it->thing.expiry / 10000 % 10000),
		         (int)(it->thing.expiry / 100 % 100), (int)(it->thing.expiry % 100));
		put(o, "expiry", date, 20);
	}
	json_object_set_new(o, "in", json_integer(it->place == ITEM_EXTRA ? 0 : it->pieces));
	json_object_set_new(o, "out", json_integer(back ? it->pieces : it->shown));
	json_object_set_new(o, "evidence",
	                    json_string(it->evidence == EVIDENCE_MARK    ? "mark scanned"
	                                : it->evidence == EVIDENCE_SHOWN ? "shown to both"
	                                                                 : ""));
	if (m->s->single && it->evidence == EVIDENCE_SHOWN)
		json_object_set_new(o, "evidence", json_string("shown, one person"));
	static const char *const conditions[] = {"", "intact", "cut and complete", "pieces missing"};
	put(o, "condition", conditions[it->condition & 3], 80);
	item_note(m, number, it, note, sizeof note);
	put(o, "note", note, 200);
	json_array_append_new(list, o);
}

static int64_t civil_ms(struct moment at)
{
	return at.wall_ms + at.utc_min * INT64_C(60000);
}

/* No off stands before its on as if that were a time: where the clock on the wall was turned meanwhile, that is said. */
static void off_text(const struct story_stretch *x, char out[40])
{
	char hm[6];
	hm_of(x->off, hm);
	if (x->off.wall_ms < x->on.wall_ms)
		snprintf(out, 40, "(the wall clock was set back)");
	else
		snprintf(out, 40, "%s%s", hm,
		         civil_ms(x->off) < civil_ms(x->on) ? " (the clocks went back)" : "");
}

static void put_stretches(json_t *o, const struct story_digit *d)
{
	json_t *list = json_array();
	for (int i = 0; i < d->n_stretches; i++) {
		const struct story_stretch *x = &d->stretches[i];
		char off[40];
		json_t *s = json_object();
		off_text(x, off);
		json_object_set_new(s, "on", hm_text(x->on));
		if (time_is_set(x->off))
			json_object_set_new(s, "off", json_string(off));
		json_object_set_new(s, "minutes", text(x->minutes[0] ? x->minutes : "0 min", 80));
		json_array_append_new(list, s);
	}
	json_object_set_new(o, "stretches", list);
}

static void put_reminders(const struct making *m, json_t *o, const struct story_digit *d)
{
	json_t *list = json_array();
	for (int i = 0; i < d->n_reminders; i++) {
		const struct story_reminder *r = &d->reminders[i];
		char hm[6], line[120];
		hm_of(r->at, hm);
		if (time_is_set(r->acknowledged))
			snprintf(line, sizeof line, "%d min, %s, acknowledged by %s", (int)r->minutes, hm,
			         name_of(m, r->by));
		else
			snprintf(line, sizeof line, "%d min, %s, not acknowledged", (int)r->minutes, hm);
		json_array_append_new(list, text(line, 100));
	}
	json_object_set_new(o, "reminders", list);
}

static const char *looked_words(const struct sheet *s)
{
	static const char *const words[] = {"",
	                                    "",
	                                    "the patient looked as well",
	                                    "a carer looked as well",
	                                    "a colleague looked as well",
	                                    "nobody else looked"};
	return s->who_looked < sizeof words / sizeof *words ? words[s->who_looked] : "";
}

static const char *thing_name(const struct making *m, int item)
{
	const struct item *it = sheet_item_const(&m->s->sheet, item);
	return it ? it->thing.name : "";
}

static void put_digit(const struct making *m, json_t *list, const struct story_digit *d)
{
	json_t *o = json_object();
	json_object_set_new(o, "name", text(own_digit_name(d->number), 60));
	json_object_set_new(
	    o, "tourniquet",
	    text(d->tourniquet ? thing_name(m, d->tourniquet) : "not said whether one was on", 100));
	put(o, "forceps", thing_name(m, d->forceps), 100);
	put_stretches(o, d);
	json_object_set_new(o, "longest", text(d->longest[0] ? d->longest : "0 min", 80));
	put(o, "total", d->total, 80);
	put_reminders(m, o, d);
	const struct digit *now = sheet_digit_const(&m->s->sheet, d->number);
	if (time_is_set(d->bare) && now && now->seen_bare) {
		json_t *bare = json_object();
		json_object_set_new(bare, "by", text(name_of(m, d->bare_by), 60));
		json_object_set_new(bare, "when", hm_text(d->bare));
		if (m->s->single)
			put(bare, "witness", looked_words(&m->s->sheet), 80);
		json_object_set_new(o, "bare", bare);
	}
	json_array_append_new(list, o);
}

/* --- counts, people, debts ---------------------------------------------------------------------- */

static void put_counts(const struct making *m)
{
	static const char *const kinds[] = {"", "initial", "final", "handover", "added"};
	json_t *list = json_array();
	for (int i = 0; i < m->s->n_counts; i++) {
		const struct story_count *x = &m->s->counts[i];
		json_t *o = json_object(), *names = json_array();
		json_array_append_new(names, text(name_of(m, x->field), 60));
		if (!m->s->single)
			json_array_append_new(names, text(name_of(m, x->circulating), 60));
		json_object_set_new(o, "kind", json_string(kinds[x->kind <= COUNT_ADDED ? x->kind : 0]));
		json_object_set_new(o, "when", hm_text(x->at));
		json_object_set_new(o, "agreed", names);
		json_object_set_new(o, "recorded_by", text(name_of(m, x->recorded_by), 60));
		put(o, "note", x->note, 200);
		json_array_append_new(list, o);
	}
	json_object_set_new(m->o, "counts", list);
}

static void put_people(const struct making *m)
{
	json_t *list = json_array();
	for (int i = 0; i < m->s->n_people; i++) {
		const struct story_person *p = &m->s->people[i];
		json_t *o = json_object();
		json_object_set_new(o, "name", text(p->name, 60));
		json_object_set_new(o, "place",
		                    json_string(m->s->single && p->place == PLACE_FIELD
		                                    ? "operator, alone"
		                                    : place_words((enum team_place)p->place)));
		json_object_set_new(o, "from", hm_text(p->from));
		if (time_is_set(p->to))
			json_object_set_new(o, "to", hm_text(p->to));
		json_array_append_new(list, o);
	}
	json_object_set_new(m->o, "people", list);
}

static void put_debts(const struct making *m)
{
	json_t *list = json_array();
	for (int i = 0; i < m->s->n_debts; i++) {
		const struct story_debt *d = &m->s->debts[i];
		json_t *o = json_object();
		char line[260], hm[6];
		hm_of(d->owed, hm);
		snprintf(line, sizeof line, "%s: %s%s%s", hm,
		         d->debt.digit ? own_digit_name(d->debt.digit) : "", d->debt.digit ? ": " : "",
		         debt_words((enum debt_kind)d->debt.kind));
		json_object_set_new(o, "text", text(line, 200));
		if (time_is_set(d->paid)) {
			hm_of(d->paid, hm);
			snprintf(line, sizeof line, "%s %.160s%s%s", hm, d->how, d->by ? ", " : "",
			         d->by ? name_of(m, d->by) : "");
			json_object_set_new(o, "paid", text(line, 200));
		}
		json_array_append_new(list, o);
	}
	json_object_set_new(m->o, "debts", list);
}

static void put_sign_out(const struct making *m)
{
	const struct policy *p = &m->from->past->settings.policy;
	if (!time_is_set(m->s->signed_at) || m->s->ended == END_UNRESOLVED)
		return;
	json_t *o = json_object(), *points = json_array();
	char by[80];
	if (m->s->witness)
		snprintf(by, sizeof by, "%s, witness %s", name_of(m, m->s->signed_by),
		         name_of(m, m->s->witness));
	else
		snprintf(by, sizeof by, "%s", name_of(m, m->s->signed_by));
	json_object_set_new(o, "by", text(by, 60));
	json_object_set_new(o, "when", hm_text(m->s->signed_at));
	/* Of format 1 a sign-out is kept without its points: the badge answered all that stood then. */
	for (int i = 0; i < (m->s->points_told ? m->s->n_points : p->n_points); i++) {
		const struct story_point *told = m->s->points_told ? &m->s->points[i] : NULL;
		json_t *x = json_object();
		json_object_set_new(x, "text", text(told && told->text[0] ? told->text : p->points[i], 200));
		json_object_set_new(x, "answer", json_string(told && told->answer == 2 ? "no" : "yes"));
		json_array_append_new(points, x);
	}
	json_object_set_new(o, "points", points);
	json_object_set_new(m->o, "sign_out", o);
}

static void put_search(const struct making *m)
{
	const struct policy *p = &m->from->past->settings.policy;
	const struct story *s = m->s;
	if (!time_is_set(s->discrepancy))
		return;
	json_t *o = json_object(), *steps = json_array();
	json_object_set_new(o, "opened", hm_text(s->discrepancy));
	if (time_is_set(s->closed))
		json_object_set_new(o, "closed", hm_text(s->closed));
	json_object_set_new(o, "reason", text(s->missing_text[0] ? s->missing_text : "see the items", 300));
	/* After the end only the steps that were taken; while the search goes on, all, to be ticked by hand.
	 */
	int all = m->kind == SLIP_DISCREPANCY && !s->ended;
	for (int i = 0; i < (all ? p->n_search : s->n_steps); i++) {
		json_t *x = json_object();
		char answer[200] = "";
		if (i < s->n_steps) {
			char hm[6];
			hm_of(s->steps[i].at, hm);
			snprintf(answer, sizeof answer,
			         s->steps[i].done == 1 ? "done %s"
			         : s->steps[i].why[0]  ? "not done %s, because: %.150s"
			                               : "not done %s, because:",
			         hm, s->steps[i].why);
		}
		json_object_set_new(x, "text", text(i < s->n_steps ? s->steps[i].text : p->search[i], 120));
		json_object_set_new(x, "answer", text(answer, 200));
		json_array_append_new(steps, x);
	}
	json_object_set_new(o, "steps", steps);
	if (s->ended == END_UNRESOLVED && strcmp(s->end_text, end_words(END_NUMBER_OWED)) != 0)
		put(o, "incident", s->end_text, 60);
	for (int i = 0; i < s->n_debts; i++)
		if (s->debts[i].debt.kind == DEBT_INCIDENT && time_is_set(s->debts[i].paid))
			put(o, "incident", s->debts[i].how, 60);
	json_object_set_new(m->o, "search", o);
}

/* Times of one stretch that contradict each other: its minutes do not come from them. */
static int went_back(const struct story_digit *d)
{
	for (int i = 0; i < d->n_stretches; i++)
		if (time_is_set(d->stretches[i].off) &&
		    d->stretches[i].off.wall_ms < d->stretches[i].on.wall_ms)
			return 1;
	return 0;
}

static void put_entries(const struct making *m)
{
	json_t *entries = json_array(), *notes = json_array(), *gaps = json_array();
	for (int i = 0; i < m->s->n_entries; i++) {
		json_t *o = json_object();
		json_object_set_new(o, "how", json_string(m->s->entries[i].how));
		json_object_set_new(o, "when", hm_text(m->s->entries[i].at));
		json_object_set_new(o, "text", text(m->s->entries[i].text, 300));
		json_array_append_new(entries, o);
	}
	for (int i = 0; i < m->s->n_notes; i++)
		json_array_append_new(notes, text(m->s->notes[i], 300));
	if (m->s->left_out) {
		char line[200];
		snprintf(line, sizeof line,
		         "%d further entries of this case are in the record alone: they found no place on "
		         "this paper.",
		         m->s->left_out);
		json_array_append_new(notes, text(line, 200));
	}
	for (int i = 0; i < m->s->sheet.n_digits; i++)
		if (m->s->sheet.digits[i].gap) {
			char line[200];
			snprintf(line, sizeof line,
			         "The station had no power for a time while a tourniquet was on the %s: its "
			         "minutes are at least what is printed.",
			         own_digit_name(m->s->sheet.digits[i].number));
			json_array_append_new(gaps, text(line, 200));
		}
	for (int i = 0; i < m->s->n_digits; i++)
		if (went_back(&m->s->digits[i])) {
			char line[200];
			snprintf(line, sizeof line,
			         "The wall clock was set back while a tourniquet was on the %s: when it went "
			         "on and came off "
			         "cannot be trusted, its minutes can.",
			         own_digit_name(m->s->digits[i].number));
			json_array_append_new(gaps, text(line, 200));
		}
	json_object_set_new(m->o, "entries", entries);
	json_object_set_new(m->o, "notes", notes);
	json_object_set_new(m->o, "gaps", gaps);
}

/* --- outcome and head --------------------------------------------------------------------------- */

/* Only what was counted and seen (rule 15): "1 finger tourniquet of 1 shown intact; right index finger seen
 * bare at 10:41". */
static void outcome_words(const struct making *m, char *out, size_t size)
{
	const struct sheet *s = &m->s->sheet;
	size_t used = 0;
#define NOTE(...)                                                                                            \
	do {                                                                                                 \
		if (used < size)                                                                             \
			used += (size_t)snprintf(out + used, size - used, __VA_ARGS__);                      \
	} while (0)
	out[0] = 0;
	if (m->kind == SLIP_DISCREPANCY)
		NOTE("%s", m->s->missing_text);
	for (int i = 0; m->kind != SLIP_DISCREPANCY && i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (!item_counts(it))
			continue;
		NOTE("%s%s: %d of %d %s", used ? "; " : "", it->thing.name, it->shown, it->pieces,
		     it->place != ITEM_ACCOUNTED               ? "NOT ALL ACCOUNTED FOR"
		     : it->condition == CONDITION_INTACT       ? "shown intact"
		     : it->condition == CONDITION_CUT_COMPLETE ? "shown cut and complete"
		     : it->evidence == EVIDENCE_MARK           ? "back, mark scanned"
		                                               : "shown");
	}
	for (int i = 0; m->kind != SLIP_DISCREPANCY && i < m->s->n_digits; i++) {
		const struct story_digit *d = &m->s->digits[i];
		const struct digit *now = sheet_digit_const(s, d->number);
		char hm[6];
		hm_of(d->bare, hm);
		if (now && now->had && now->seen_bare)
			NOTE("%s%s seen bare at %s", used ? "; " : "", own_digit_name(d->number), hm);
		else if (now && now->had)
			NOTE("%s%s NOT SEEN BARE", used ? "; " : "", own_digit_name(d->number));
	}
	if (!used)
		NOTE("nothing was counted in");
#undef SAY
	if (out[0] >= 'a' && out[0] <= 'z')
		out[0] = (char)(out[0] - 'a' + 'A');
}

static const char *heading(const struct story *s, enum slip_kind kind)
{
	if (kind == SLIP_ADDENDUM)
		return "addendum";
	switch ((enum case_end)s->ended) {
	case END_RECONCILED:
		return "reconciled";
	case END_UNRESOLVED:
		return "unresolved";
	case END_CANCELLED:
		return "cancelled";
	}
	return "unresolved";
}

static void put_head(const struct making *m, const char *outcome)
{
	const struct slip_source *from = m->from;
	char code[OWN_CODE_MAX] = "";
	struct own_code own = {.kind = OWN_SLIP,
	                       .number = from->number,
	                       .copy = from->copy,
	                       .station = from->station,
	                       .proof = from->proof,
	                       .old = !from->proof};
	snprintf(own.site, sizeof own.site, "%s", from->past->settings.site);
	own_code_write(&own, code);
	json_object_set_new(m->o, "v", json_integer(1));
	json_object_set_new(m->o, "kind", json_string(m->kind == SLIP_DISCREPANCY ? "discrepancy" : "slip"));
	json_object_set_new(m->o, "time", json_string(from->time));
	json_object_set_new(m->o, "version", text(from->version, 20));
	json_object_set_new(m->o, "site", text(from->past->settings.site_name, 60));
	if (from->language)
		json_object_set_new(m->o, "language", json_string(language_code(from->language)));
	json_object_set_new(m->o, "paper", json_string(from->paper));
	json_object_set_new(m->o, "dpi", json_integer(from->dpi));
	json_object_set_new(m->o, "slip", json_integer(from->number));
	json_object_set_new(m->o, "copy", json_integer(from->copy));
	if (from->station)
		json_object_set_new(m->o, "station", json_integer(from->station));
	json_object_set_new(m->o, "code", json_string(code));
	if (m->kind != SLIP_DISCREPANCY)
		json_object_set_new(m->o, "heading", json_string(heading(m->s, m->kind)));
	if (m->kind == SLIP_ADDENDUM)
		json_object_set_new(m->o, "adds_to",
		                    json_integer(m->s->last_slip ? m->s->last_slip : from->number));
	json_object_set_new(m->o, "outcome", text(outcome, 400));
	json_object_set_new(m->o, "room", text(past_room_name(from->past, m->s->room), 60));
	json_object_set_new(m->o, "case_number", json_integer(m->s->case_no));
	put(m->o, "case_label", m->s->label, 60);
	json_object_set_new(m->o, "opened", day_text(m->s->opened));
	if (time_is_set(m->s->ended_at))
		json_object_set_new(m->o, "ended", day_text(m->s->ended_at));
	json_object_set_new(m->o, "single", json_boolean(m->s->single));
}

json_t *slip_document(const struct slip_source *from)
{
	const struct story *s = from->story;
	char outcome[OUTCOME_MAX];
	struct making m = {.from = from, .s = s, .o = json_object(), .kind = from->kind};
	json_t *items = json_array(), *digits = json_array();
	outcome_words(&m, outcome, sizeof outcome);
	put_head(&m, outcome);
	for (int i = 1; i <= s->sheet.n_items; i++)
		put_item(&m, items, i);
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].n_stretches)
			put_digit(&m, digits, &s->digits[i]);
	json_object_set_new(m.o, "items", items);
	json_object_set_new(m.o, "digits", digits);
	put_counts(&m);
	put_people(&m);
	put_debts(&m);
	put_sign_out(&m);
	put_search(&m);
	put_entries(&m);
	return m.o;
}

json_t *slip_summary(const struct slip_source *from)
{
	const struct making m = {.from = from, .s = from->story, .kind = from->kind};
	char outcome[OUTCOME_MAX];
	json_t *o = json_object();
	outcome_words(&m, outcome, sizeof outcome);
	json_object_set_new(o, "slip", json_integer(from->number));
	json_object_set_new(o, "copy", json_integer(from->copy));
	json_object_set_new(o, "site", json_string(from->past->settings.site));
	json_object_set_new(o, "station", json_integer(from->station));
	json_object_set_new(o, "room", json_integer(m.s->room));
	json_object_set_new(o, "case", json_integer(m.s->case_no));
	json_object_set_new(o, "outcome", text(outcome, 300));
	json_object_set_new(o, "ended_ms", json_integer(m.s->ended_at.wall_ms));
	json_object_set_new(o, "seq", json_integer(from->seq));
	json_object_set_new(o, "chain", json_string(from->chain));
	return o;
}
