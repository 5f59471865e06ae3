#include "tell/slip.h"

#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "tell/slip-making.h"

/* --- outcome ------------------------------------------------------------------------------------- */

/* Only what was counted and seen (rule 15). */
static void outcome_words(const struct making *m, char *out, size_t size)
{
	char missing[400], digits[400];
	uint32_t where = 0;
	out[0] = 0;
	if (m->kind != SLIP_DISCREPANCY) {
		slip_outcome_items(m, out, size);
		slip_outcome_digits(m, out, size);
		return;
	}
	for (int i = 0; i < m->n_amiss; i++)
		if (m->amiss[i].timed)
			where |= m->amiss[i].digits;
	amiss_words(m->from->language, &m->s->sheet, missing, sizeof missing);
	amiss_digits_words(m->from->language, where, 1, digits, sizeof digits);
	if (where)
		slip_say(m, SAY(SLIP_MAY_BE_ON, .words = missing, .list = digits), out, size);
	else
		snprintf(out, size, "%s", missing);
}

static const char *heading(const struct making *m)
{
	if (m->kind == SLIP_ADDENDUM)
		return "addendum";
	switch ((enum case_end)m->s->ended) {
	case END_RECONCILED:
		return "reconciled";
	case END_UNRESOLVED:
		return "unresolved";
	case END_CANCELLED:
		return "cancelled";
	}
	return "open";
}

/* 'Reconciled' is a word for the auditor; what was counted and seen stands beside it. */
static void put_heading(const struct making *m)
{
	const char *why = m->s->end_text;
	char text[300];
	if (m->kind == SLIP_DISCREPANCY || m->s->ended == END_UNRESOLVED || m->s->n_found)
		return; /* it shouts instead */
	if (m->kind == SLIP_ADDENDUM)
		snprintf(text, sizeof text, "%s", json_text(m->o, "adds_words"));
	else if (m->s->ended == END_CANCELLED && why[0])
		slip_say(m, SAY(SLIP_CANCELLED_WHY, .reason = why), text, sizeof text);
	else
		snprintf(text, sizeof text, "%s",
		         slip_text(m, m->s->ended == END_RECONCILED  ? SAY_SLIP_RECONCILED
		                      : m->s->ended == END_CANCELLED ? SAY_SLIP_CANCELLED
		                                                     : SAY_SLIP_NOT_ENDED));
	saying_capital(text);
	slip_put(m->o, "heading_words", text, 300);
}

static void put_after(const struct making *m)
{
	json_t *after = json_array();
	char text[ROW_MAX];
	for (int i = 0; i < m->s->n_discrepancies && !json_object_get(m->o, "shout") && slip_tells_all(m);
	     i++) {
		slip_discrepancy_words(m, &m->s->discrepancies[i], text, sizeof text);
		json_array_append_new(after, slip_told(text, 400));
	}
	json_object_set_new(m->o, "after", after);
}

/* Where nothing is to be told of items: of a case that left the record, where they are. */
static void nothing_words(const struct making *m, char *out, size_t size)
{
	if (m->s->archive[0])
		slip_say(m, SAY(SLIP_ARCHIVED, .text = m->s->archive), out, size);
	else
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_NOTHING_IN));
}

static void put_outcome(const struct making *m)
{
	char text[OUTCOME_MAX] = "";
	put_heading(m);
	if (slip_tells_all(m))
		slip_outcome_items(m, text, sizeof text);
	saying_capital(text);
	if (!text[0] && slip_tells_all(m))
		nothing_words(m, text, sizeof text);
	slip_put(m->o, "outcome", text, 600);
	put_after(m);
}

/* --- where and when ------------------------------------------------------------------------------ */

static void put_when(const struct making *m)
{
	char day[SLIP_DATE], other[SLIP_DATE], text[60];
	int ended = time_is_set(m->s->ended_at);
	struct moment end = ended ? m->s->ended_at : m->from->now;
	slip_day(m, slip_date(m->s->opened), day);
	slip_day(m, slip_date(end), other);
	const struct say hours = {.saying = m->s->paper_sheet && ended ? SAY_SLIP_HOURS_OF_ENTRY
	                                    : slip_date(end) != slip_date(m->s->opened)
	                                        ? SAY_SLIP_HOURS_TO_DAY
	                                    : ended ? SAY_SLIP_HOURS
	                                            : SAY_SLIP_OPEN_AT,
	                          .from = slip_minute(m->s->opened),
	                          .to = slip_minute(end),
	                          .words = other};
	slip_say(m, &hours, text, sizeof text);
	slip_put(m->o, "day", day, 40);
	slip_put(m->o, "hours", text, 60);
}

static void put_place(const struct making *m)
{
	char text[60];
	slip_say(m, SAY(SLIP_CASE, .case_no = m->s->case_no), text, sizeof text);
	json_object_set_new(m->o, "room",
	                    slip_told(past_room_name(m->from->past, m->from->language, m->s->room), 60));
	json_object_set_new(m->o, "case_number", json_integer(m->s->case_no));
	slip_put(m->o, "case", text, 60);
	if (m->s->paper_sheet) {
		slip_say(m, SAY(SLIP_FROM_PAPER, .n = m->s->paper_sheet), text, sizeof text);
		slip_put(m->o, "case_label", text, 60);
	} else if (m->s->label[0]) {
		slip_say(m, SAY(SLIP_LABELLED, .text = m->s->label), text, sizeof text);
		slip_put(m->o, "case_label", text, 60);
	}
	put_when(m);
}

static void put_head(const struct making *m)
{
	const struct slip_source *from = m->from;
	char code[OWN_CODE_MAX] = "";
	struct own_code own = {.kind = OWN_SLIP,
	                       .number = from->number,
	                       .copy = from->copy,
	                       .station = from->station,
	                       .proof = from->proof,
	                       .practice = from->practice != 0,
	                       .old = !from->proof};
	snprintf(own.site, sizeof own.site, "%s", from->past->settings.site);
	own_code_write(&own, code);
	json_object_set_new(m->o, "v", json_integer(2));
	json_object_set_new(m->o, "kind", json_string(m->kind == SLIP_DISCREPANCY ? "discrepancy" : "slip"));
	json_object_set_new(m->o, "time", json_string(from->time));
	json_object_set_new(m->o, "version", slip_told(from->version, 20));
	json_object_set_new(m->o, "site", slip_told(from->past->settings.site_name, 60));
	if (from->language)
		json_object_set_new(m->o, "language", json_string(language_code(from->language)));
	json_object_set_new(m->o, "paper", json_string(from->paper));
	json_object_set_new(m->o, "dpi", json_integer(from->dpi));
	if (from->label_width_mm)
		json_object_set_new(m->o, "patient_label",
		                    json_pack("{s:i,s:i}", "width_mm", from->label_width_mm, "height_mm",
		                              from->label_height_mm));
	json_object_set_new(m->o, "slip", json_integer(from->number));
	json_object_set_new(m->o, "copy", json_integer(from->copy));
	if (from->station)
		json_object_set_new(m->o, "station", json_integer(from->station));
	json_object_set_new(m->o, "code", json_string(code));
	if (m->kind != SLIP_DISCREPANCY)
		json_object_set_new(m->o, "heading", json_string(heading(m)));
	if (m->kind == SLIP_ADDENDUM)
		json_object_set_new(m->o, "adds_to",
		                    json_integer(m->s->last_slip ? m->s->last_slip : from->number));
}

/* --- the whole ----------------------------------------------------------------------------------- */

static struct making making_of(const struct slip_source *from)
{
	struct making m = {.from = from, .s = from->story, .kind = from->kind};
	m.n_amiss = amiss_list(&m.s->sheet, m.kind != SLIP_DISCREPANCY, m.amiss);
	return m;
}

json_t *slip_document(const struct slip_source *from)
{
	struct making m = making_of(from);
	m.o = json_object();
	m.rows = json_array();
	put_head(&m);
	slip_put_amiss(&m);
	put_outcome(&m);
	put_place(&m);
	slip_put_digits(&m);
	if (slip_tells_all(&m))
		slip_put_items(&m);
	slip_put_search(&m);
	slip_put_rows(&m);
	json_object_set_new(m.o, "rows", m.rows);
	return m.o;
}

json_t *slip_summary(const struct slip_source *from)
{
	const struct making m = making_of(from);
	char outcome[OUTCOME_MAX];
	json_t *o = json_object();
	outcome_words(&m, outcome, sizeof outcome);
	saying_capital(outcome);
	if (!outcome[0])
		nothing_words(&m, outcome, sizeof outcome);
	json_object_set_new(o, "slip", json_integer(from->number));
	json_object_set_new(o, "copy", json_integer(from->copy));
	json_object_set_new(o, "site", json_string(from->past->settings.site));
	json_object_set_new(o, "station", json_integer(from->station));
	json_object_set_new(o, "room", json_integer(m.s->room));
	json_object_set_new(o, "case", json_integer(m.s->case_no));
	json_object_set_new(o, "outcome", slip_told(outcome, 300));
	json_object_set_new(o, "ended_ms", json_integer(m.s->ended_at.wall_ms));
	json_object_set_new(o, "seq", json_integer(from->seq));
	json_object_set_new(o, "chain", json_string(from->chain));
	return o;
}

int slip_sign(const struct slip_source *from, int32_t incarnation, slip_sign_fn sign, const void *by,
              json_t *document)
{
	_cleanup_(buf_free) struct buf jws = {0};
	char record[80], hash[9];
	_cleanup_(json_drop) json_t *summary = slip_summary(from);
	json_object_set_new(summary, "incarnation", json_integer(incarnation));
	snprintf(hash, sizeof hash, "%.8s", from->chain);
	say_part_in(from->language, SAY(RECORD_AT, .event = (int32_t)from->seq, .code = hash), record,
	            sizeof record);
	json_object_set_new(document, "record", json_string(record));
	int n = sign(by, summary, &jws);
	if (n == 0)
		json_object_set_new(document, "jws", json_string(jws.data));
	return n;
}
