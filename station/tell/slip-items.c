#include <stdio.h>
#include <string.h>

#include "tell/slip-making.h"

/* A row of the table: one item, or those that nobody can tell apart. */
struct group {
	const struct making *m;
	int items[ITEMS_MAX], n;
	int in, out, missing;
};

static const struct item *first_of(const struct group *g)
{
	return sheet_item_const(&g->m->s->sheet, g->items[0]);
}

static const struct story_item *told_of(const struct group *g, int i)
{
	return &g->m->s->items[g->items[i] - 1];
}

static int is_back(const struct item *it)
{
	return it->place == ITEM_RETURNED || it->place == ITEM_ISOLATED;
}

static int is_in_pieces(const struct item *it)
{
	return item_open(it) && it->place != ITEM_EXTRA && it->condition == CONDITION_PIECES_MISSING;
}

/* Slips of the record's first format, which bear no proof, called accounted for what was shown with a piece of it missing. A
 * further copy has the figures of the first (rule 25). */
static int counts_pieces(const struct making *m)
{
	return m->from->number && !m->from->proof; /* a case that is shown, and is no copy, has neither */
}

static int accounted(const struct making *m, const struct item *it)
{
	return counts_pieces(m) ? it->shown : item_accounted(it);
}

static int is_one_row(const struct item *a, const struct item *b)
{
	return item_counts(a) && item_counts(b) && a->place != ITEM_EXTRA && b->place != ITEM_EXTRA &&
	       a->condition != CONDITION_PIECES_MISSING && b->condition != CONDITION_PIECES_MISSING &&
	       a->thing.unlisted == b->thing.unlisted && item_is_alike(a, b);
}

/* --- what tells it apart ------------------------------------------------------------------------- */

static void add_fact(json_t *facts, const char *fact)
{
	if (*fact)
		json_array_append_new(facts, slip_told(fact, 200));
}

static void put_numbers(json_t *facts, const struct group *g)
{
	char numbers[190] = "", text[220];
	const char *identity = first_of(g)->thing.identity, *colon = strchr(identity, ':');
	if (!*identity) {
		add_fact(facts, slip_text(g->m, SAY_SLIP_NO_IDENTITY));
		return;
	}
	if (first_of(g)->thing.identity_kind == IDENTITY_MARK) {
		slip_say(g->m, SAY(SLIP_ITEM_MARK, .text = colon ? colon + 1 : identity), text, sizeof text);
		add_fact(facts, text);
		return;
	}
	for (int i = 0; i < g->n; i++) {
		const char *one = sheet_item_const(&g->m->s->sheet, g->items[i])->thing.identity;
		colon = strchr(one, ':');
		if (strlen(numbers) + strlen(one) + 3 > sizeof numbers) { /* goes on in a fact of its own */
			slip_say(g->m, SAY(SLIP_ITEM_NUMBERS, .text = numbers), text, sizeof text);
			add_fact(facts, text);
			numbers[0] = 0;
		}
		said_join(numbers, sizeof numbers, ", ", colon ? colon + 1 : one);
	}
	slip_say(g->m,
	         g->n == 1 ? SAY(SLIP_ITEM_NUMBER, .text = numbers) : SAY(SLIP_ITEM_NUMBERS, .text = numbers),
	         text, sizeof text);
	add_fact(facts, text);
}

/* Each lot and day once, where those of a row differ. */
static void put_lots(json_t *facts, const struct group *g)
{
	for (int i = 0; i < g->n; i++) {
		const struct thing *t = &sheet_item_const(&g->m->s->sheet, g->items[i])->thing;
		int told = 0;
		char text[80], day[SLIP_DATE];
		for (int k = 0; k < i; k++) {
			const struct thing *o = &sheet_item_const(&g->m->s->sheet, g->items[k])->thing;
			told |= strcmp(o->lot, t->lot) == 0 && o->expiry == t->expiry;
		}
		if (!told && t->lot[0]) {
			slip_say(g->m, SAY(SLIP_LOT, .lot = t->lot), text, sizeof text);
			add_fact(facts, text);
		}
		if (!told && t->expiry) {
			slip_day(g->m, t->expiry, day);
			slip_say(g->m, SAY(SLIP_EXPIRY, .words = day), text, sizeof text);
			add_fact(facts, text);
		}
	}
}

/* --- evidence ------------------------------------------------------------------------------------ */

static enum saying condition_word(uint8_t condition)
{
	switch ((enum condition)condition) {
	case CONDITION_NONE:
		return SAY_NONE;
	case CONDITION_INTACT:
		return SAY_SLIP_INTACT;
	case CONDITION_CUT_COMPLETE:
		return SAY_SLIP_CUT_COMPLETE;
	case CONDITION_PIECES_MISSING:
		return SAY_SLIP_PIECES_MISSING;
	}
	return SAY_NONE;
}

static void place_text(const struct making *m, const struct item *it, char *out, size_t size)
{
	switch ((enum item_place)it->place) {
	case ITEM_HERE:
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_NOT_COUNTED_YET));
		return;
	case ITEM_ON:
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_ON_DIGIT));
		return;
	case ITEM_OFF:
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_OFF_NOT_COUNTED));
		return;
	case ITEM_RETURNED:
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_RETURNED));
		return;
	case ITEM_ISOLATED:
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_ISOLATED));
		return;
	case ITEM_STRUCK:
		snprintf(out, size, "%s", slip_text(m, SAY_SLIP_STRUCK));
		return;
	case ITEM_ACCOUNTED:
	case ITEM_EXTRA:
		return;
	}
}

static void evidence_of(const struct making *m, const struct item *it, char *out, size_t size)
{
	enum saying condition = condition_word(it->condition);
	char shown[120] = "";
	if (it->evidence == EVIDENCE_MARK)
		snprintf(shown, sizeof shown, "%s", slip_text(m, SAY_SLIP_MARK_READ));
	else if (it->evidence == EVIDENCE_SHOWN)
		snprintf(shown, sizeof shown, "%s",
		         slip_text(m, m->s->single ? SAY_SLIP_SHOWN_ONE : SAY_SLIP_SHOWN_BOTH));
	else if (!it->missing)
		place_text(m, it, shown, sizeof shown);
	if (condition != SAY_NONE && *shown && it->condition != CONDITION_PIECES_MISSING)
		slip_say(m, SAY(SLIP_EVIDENCE_OF, .first = shown, .second = slip_text(m, condition)), out,
		         size);
	else
		snprintf(out, size, "%s", shown);
}

/* Of a row of several the evidence is told once where it is one, else with how many there are of each. */
static void put_evidence(json_t *o, const struct group *g)
{
	char text[400] = "", one[160], other[160], some[180];
	for (int i = 0; i < g->n; i++) {
		int same = 0, before = 0;
		evidence_of(g->m, sheet_item_const(&g->m->s->sheet, g->items[i]), one, sizeof one);
		for (int k = 0; k < g->n; k++) {
			evidence_of(g->m, sheet_item_const(&g->m->s->sheet, g->items[k]), other,
			            sizeof other);
			same += strcmp(one, other) == 0;
			before += k < i && strcmp(one, other) == 0;
		}
		if (before || !*one)
			continue;
		slip_say(g->m, SAY(SLIP_EVIDENCE_SOME, .n = same, .words = one), some, sizeof some);
		slip_list(text, sizeof text, same == g->n ? one : some);
	}
	json_object_set_new(o, "evidence", slip_told(text, 160));
}

static void put_flag(json_t *o, const struct group *g)
{
	const struct item *it = first_of(g);
	char text[60];
	int open = 0, n = g->missing ? g->missing : g->in - g->out;
	for (int i = 0; i < g->n; i++)
		open += item_open(sheet_item_const(&g->m->s->sheet, g->items[i]));
	if (it->place == ITEM_EXTRA)
		snprintf(text, sizeof text, "%s", slip_text(g->m, SAY_SLIP_EXTRA));
	else if (is_in_pieces(it))
		snprintf(text, sizeof text, "%s", slip_text(g->m, SAY_SLIP_IN_PIECES));
	else if (g->missing)
		slip_say(g->m, SAY(SLIP_NOT_FOUND, .n = n), text, sizeof text);
	else if (open && g->m->s->ended && g->m->s->ended != END_CANCELLED)
		slip_say(g->m, SAY(SLIP_NOT_ACCOUNTED, .n = n), text, sizeof text);
	else
		return;
	slip_put(o, "amiss", text, 60);
}

static void add_note(json_t *notes, const char *note)
{
	for (size_t i = 0; i < json_array_size(notes); i++)
		if (strcmp(json_string_value(json_array_get(notes, i)), note) == 0)
			return;
	json_array_append_new(notes, slip_told(note, 200));
}

static void put_notes(json_t *o, const struct group *g)
{
	json_t *notes = json_array();
	for (int i = 0; i < g->n; i++) {
		const struct story_item *si = told_of(g, i);
		const struct item *it = sheet_item_const(&g->m->s->sheet, g->items[i]);
		char text[240];
		if (si->added) {
			slip_say(g->m, SAY(SLIP_ADDED, .time = slip_minute(si->in)), text, sizeof text);
			add_note(notes, text);
		}
		if (it->dropped)
			add_note(notes, slip_text(g->m, SAY_SLIP_DROPPED));
		if (role_has(it->thing.role, TRAIT_CONDITION) && it->pieces > 1) {
			slip_say(g->m, SAY(SLIP_ONE_IN_PIECES, .n = it->pieces), text, sizeof text);
			add_note(notes, text);
		}
		if (it->thing.unlisted)
			add_note(notes, slip_text(g->m, it->thing.line[0] ? SAY_SLIP_IMPROVISED
			                                                  : SAY_SLIP_UNLISTED));
		if (si->found[0] && si->where) {
			slip_say(g->m, SAY(SLIP_FOUND_AT, .time = slip_minute(si->shown), .text = si->found),
			         text, sizeof text);
			add_note(notes, text);
		} else if (si->found[0]) {
			add_note(notes, si->found);
		}
	}
	json_object_set_new(o, "notes", notes);
}

/* --- the table ----------------------------------------------------------------------------------- */

static void put_group(json_t *list, const struct group *g)
{
	json_t *o = json_object(), *facts = json_array();
	char name[80];
	snprintf(name, sizeof name, "%s", thing_text_in(g->m->from->language, first_of(g)->thing.name));
	saying_capital(name);
	put_numbers(facts, g);
	put_lots(facts, g);
	slip_put(o, "line", name[0] ? name : slip_text(g->m, SAY_ITEM_NO_NUMBER), 60);
	json_object_set_new(o, "facts", facts);
	json_object_set_new(o, "in", json_integer(g->in));
	json_object_set_new(o, "out", json_integer(g->out));
	put_evidence(o, g);
	put_flag(o, g);
	put_notes(o, g);
	json_array_append_new(list, o);
}

static void take(struct group *g, int item)
{
	const struct item *it = sheet_item_const(&g->m->s->sheet, item);
	g->items[g->n++] = item;
	if (it->place == ITEM_STRUCK) /* it never was here: neither counted in nor accounted for */
		return;
	g->in += it->place == ITEM_EXTRA ? 0 : it->pieces;
	g->out += is_back(it) ? it->pieces : accounted(g->m, it);
	g->missing += item_open(it) ? it->missing : 0;
}

static void put_sum(const struct making *m)
{
	char text[40];
	int extra = 0;
	for (int i = 0; i < m->s->sheet.n_items; i++)
		extra += m->s->sheet.items[i].place == ITEM_EXTRA ? m->s->sheet.items[i].pieces : 0;
	slip_say(m, SAY(SLIP_EXTRAS, .n = extra), text, sizeof text);
	json_object_set_new(m->o, "extra",
	                    slip_told(extra ? text : slip_text(m, SAY_SLIP_NOTHING_EXTRA), 60));
}

void slip_put_items(const struct making *m)
{
	const struct sheet *s = &m->s->sheet;
	uint8_t taken[ITEMS_MAX + 1] = {0};
	json_t *list = json_array();
	for (int i = 1; i <= s->n_items; i++) {
		struct group g = {.m = m};
		if (taken[i])
			continue;
		take(&g, i);
		for (int k = i + 1; k <= s->n_items; k++)
			if (!taken[k] && is_one_row(&s->items[i - 1], &s->items[k - 1])) {
				take(&g, k);
				taken[k] = 1;
			}
		put_group(list, &g);
	}
	json_object_set_new(m->o, "items", list);
	put_sum(m);
}

/* --- in one sentence ----------------------------------------------------------------------------- */

static enum saying outcome_word(const struct making *m, const struct item *it)
{
	return it->place == ITEM_EXTRA                   ? SAY_SLIP_OUTCOME_EXTRA
	       : is_in_pieces(it) && counts_pieces(m)    ? SAY_SLIP_OUTCOME_PIECES_SHOWN
	       : is_in_pieces(it)                        ? SAY_SLIP_OUTCOME_PIECES
	       : it->place != ITEM_ACCOUNTED             ? SAY_SLIP_OUTCOME_NOT
	       : it->condition == CONDITION_INTACT       ? SAY_SLIP_OUTCOME_INTACT
	       : it->condition == CONDITION_CUT_COMPLETE ? SAY_SLIP_OUTCOME_CUT
	       : it->evidence == EVIDENCE_MARK           ? SAY_SLIP_OUTCOME_MARK
	                                                 : SAY_SLIP_OUTCOME_SHOWN;
}

/* Only what was counted and seen (rule 15): "1 of 1 shown intact". What is alike in all that is told of it, together. */
void slip_outcome_items(const struct making *m, char *out, size_t size)
{
	const struct sheet *s = &m->s->sheet;
	uint8_t taken[ITEMS_MAX + 1] = {0};
	for (int i = 1; i <= s->n_items; i++) {
		const struct item *it = &s->items[i - 1];
		int pieces = it->pieces, shown = accounted(m, it);
		char one[200];
		if (!item_counts(it) || taken[i])
			continue;
		for (int k = i + 1; k <= s->n_items; k++)
			if (!taken[k] && is_one_row(it, &s->items[k - 1]) &&
			    outcome_word(m, it) == outcome_word(m, &s->items[k - 1])) {
				pieces += s->items[k - 1].pieces;
				shown += accounted(m, &s->items[k - 1]);
				taken[k] = 1;
			}
		slip_say(
		    m,
		    &(const struct say){
		        .saying = outcome_word(m, it), .item = it->thing.name, .n = shown, .all = pieces},
		    one, sizeof one);
		slip_list(out, size, one);
	}
}
