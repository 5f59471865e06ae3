#include "checks.h"

#include <stdio.h>
#include <string.h>

#include "count/rule.h"

static const struct {
	const char *name, *words;
} checks[CHECK_KINDS] = {
#define X(name, text, words) [CHECK_##name] = {text, words},
    CHECKS(X)
#undef X
};

const char *check_name(enum check c)
{
	return checks[c].name;
}

const char *check_words(enum check c)
{
	return checks[c].words;
}

static void looked(struct stage *g, enum check c)
{
	g->tally->held[c]++;
}

#define FAIL(g, check, ...) stage_fail((g), checks[CHECK_##check].name, __VA_ARGS__)

/* --- the reply ---------------------------------------------------------------------------------- */

static int is_fact(const struct event *v)
{
	switch (v->kind) {
	case EV_ASKED:
	case EV_REFUSED:
	case EV_NEXT:
	case EV_ALIVE:
	case EV_SCANNER_ROOM:
		return 0;
	default:
		return 1;
	}
}

/* A clock that runs as 'on?' is a question; what is owed with it is its answer. */
static int is_doubt(const struct event *v)
{
	return v->kind == EV_DIGIT_MAYBE_ON || v->kind == EV_DIGIT_DOUBTED ||
	       (v->kind == EV_OWED && v->what == DEBT_ON);
}

static void check_repeat(struct stage *g, const struct input *in)
{
	looked(g, CHECK_REPEAT);
	for (int i = 0; i < g->out.count; i++)
		if (is_fact(&g->out.events[i]) && !is_doubt(&g->out.events[i])) {
			FAIL(g, REPEAT, "a repeat of %s entered '%s': %s",
			     in->act == ACT_CARD    ? own_card_name(in->card)
			     : in->act == ACT_DIGIT ? own_digit_name(in->digit)
			     : in->act == ACT_BADGE ? "a badge"
			                            : in->thing.line,
			     event_name(g->out.events[i].kind), g->out.reply.said);
			return;
		}
}

static int has_words(const char *said, const char *words)
{
	size_t n = strlen(words);
	for (; *said; said++)
		if (strncasecmp(said, words, n) == 0)
			return 1;
	return 0;
}

/* Only a reply that names what was read lets people see that it was the neighbour. */
static void check_named(struct stage *g, const struct input *in)
{
	const char *name = in->act == ACT_DIGIT ? own_digit_name(in->digit) : in->thing.name;
	int facts = 0;
	if (in->act != ACT_DIGIT && in->act != ACT_THING)
		return;
	for (int i = 0; i < g->out.count; i++)
		facts += is_fact(&g->out.events[i]);
	looked(g, CHECK_NAMED);
	if (facts && !has_words(g->out.reply.said, name))
		FAIL(g, NAMED, "%s was read and entered, and the reply does not name it: %s", name,
		     g->out.reply.said);
}

static int rooms_with_a_case(const struct stage *g)
{
	int n = 0;
	for (int r = 0; r < ROOMS; r++)
		n += stage_sheet(g, room_numbers[r])->case_no != 0;
	return n;
}

static void check_room_named(struct stage *g, const struct input *in)
{
	const struct room *room = station_room(&g->st, in->room);
	for (int i = 0; i < g->out.count; i++) /* THIS ROOM speaks of where it works from now on */
		if (g->out.events[i].kind == EV_SCANNER_ROOM)
			room = station_room(&g->st, g->out.events[i].n);
	if (rooms_with_a_case(g) < 2)
		return;
	looked(g, CHECK_ROOM_NAMED);
	if (!strstr(g->out.reply.said, room->name))
		FAIL(g, ROOM_NAMED, "two rooms have a case, and the reply in %s does not name it: %s",
		     room->name, g->out.reply.said);
}

static void check_question(struct stage *g, const struct input *in)
{
	int asked = g->out.sheet.asked.what;
	for (int i = 0; !g->out.sheet.case_no && i < g->out.count; i++)
		asked |= g->out.events[i].kind == EV_ASKED && g->out.events[i].what;
	if (!g->out.sheet.case_no && room_index(in->room) >= 0)
		asked |= g->st.idle_asked[station_room_index(&g->st, in->room)];
	looked(g, CHECK_ONE_QUESTION);
	if (g->out.reply.verdict == VERDICT_QUESTION && !asked)
		FAIL(g, ONE_QUESTION, "a question that nothing remembers: %s", g->out.reply.said);
	if (g->out.sheet.asked.what && g->out.sheet.suspended)
		return;
	if (g->out.sheet.asked.what && g->out.reply.next.n_deeds == 0)
		FAIL(g, ONE_QUESTION, "a question without a deed that answers it: %s",
		     g->out.reply.next.words);
}

static int case_of_event(const struct stage *g, const struct event *v)
{
	return world_of_case(&g->world, v->case_no);
}

/* A case is charged, held up or printed for its own things only (rule 24). */
static void check_charged(struct stage *g, const struct entry *e, const struct input *in)
{
	const struct real *r =
	    e->kind == ENTRY_READ && e->code.act == ACT_THING ? &g->world.things[e->code.thing] : NULL;
	looked(g, CHECK_INNOCENCE);
	for (int i = 0; r && r->number && i < g->out.count; i++) {
		const struct event *v = &g->out.events[i];
		int op = case_of_event(g, v);
		if (v->kind == EV_EXTRA &&
		    (in->known.used_back || !station_identity_open(&g->st, in->thing.identity)) &&
		    (in->known.used_back || !in->known.used_in))
			continue; /* it stands on no sheet, and no case misses it: nobody can know whose it is */
		int charges = v->kind == EV_EXTRA || (v->kind == EV_DISCREPANCY && v->n == 1) ||
		              (v->kind == EV_FOUND_AFTER && v->case_no != in->known.used_in);
		if (charges && op >= 0 && op != r->of)
			FAIL(g, INNOCENCE, "%s:%d belongs to case %d, and case %d is charged (%s): %s",
			     r->line, (int)r->number, (int)g->world.operations[r->of].case_no,
			     (int)v->case_no, event_name(v->kind), g->out.reply.said);
	}
}

/* The station may refuse a permission, never a fact (rule 3); another room's card it must. */
static void check_facts(struct stage *g, const struct entry *e, const struct input *in)
{
	int op = g->current[room_index(in->room)];
	if (in->act != ACT_DIGIT || in->card_room != in->room || op < 0 || op != e->operation)
		return;
	const struct root *root = &g->world.operations[op].roots[in->digit];
	if (!root->bands || root->told)
		return;
	looked(g, CHECK_FACTS);
	if (g->out.reply.verdict == VERDICT_REFUSED)
		FAIL(g, FACTS, "a tourniquet is on the %s, and its card is refused: %s",
		     own_digit_name(in->digit), g->out.reply.said);
}

void check_reply(struct stage *g, const struct entry *e, const struct input *in, int is_repeat)
{
	looked(g, CHECK_WORDS);
	if (!g->out.reply.said[0] || !g->out.reply.next.words[0])
		FAIL(g, WORDS, "said '%s', next '%s'", g->out.reply.said, g->out.reply.next.words);
	if (is_repeat)
		check_repeat(g, in);
	check_named(g, in);
	if (e->kind == ENTRY_READ)
		check_facts(g, e, in);
	check_room_named(g, in);
	check_question(g, in);
	check_charged(g, e, in);
}

/* --- the state ---------------------------------------------------------------------------------- */

static void check_rules(struct stage *g)
{
	uint32_t broken = rule_check_all(&g->st);
	for (int i = 0; i < ROOMS; i++)
		broken |= rule_check_stored(&g->st, room_numbers[i]);
	looked(g, CHECK_RULES);
	for (int r = 1; broken && r <= RULE_MAX; r++)
		if (broken >> r & 1)
			FAIL(g, RULES, "rule %d is broken: %s", r, rule_text((enum rule)r));
}

static int stands_here(const struct item *it)
{
	return it->place != ITEM_STRUCK && it->place != ITEM_RETURNED;
}

static void check_one_sheet(struct stage *g)
{
	for (int i = 0; i < g->world.n_things; i++) {
		const struct real *r = &g->world.things[i];
		char identity[IDENTITY_MAX];
		int sheets = 0;
		snprintf(identity, sizeof identity, "%.24s:%d", r->line, (int)r->number);
		for (int k = 0; r->number && k < SHEETS_MAX; k++) {
			const struct sheet *s = &g->st.sheets[k];
			int item = s->case_no ? sheet_item_by_identity(s, identity) : 0;
			sheets += item && stands_here(&s->items[item - 1]);
		}
		if (sheets > 1)
			FAIL(g, INNOCENCE, "%s stands on %d open sheets", identity, sheets);
	}
}

static void check_bare(struct stage *g, const struct operation *o, const struct sheet *s, int digit)
{
	const struct digit *d = sheet_digit_const(s, digit);
	looked(g, CHECK_BARE);
	if (!d || !digit_runs(d))
		FAIL(g, BARE, "case %d: a tourniquet is on the %s, and the sheet has it as %s",
		     (int)s->case_no, own_digit_name(digit), !d || !d->had ? "never on" : "off");
	else if (d->seen_bare &&
	         !d->doubted) /* in doubt the look stands until somebody answers, and the clock runs */
		FAIL(g, BARE, "case %d: a tourniquet is on the %s, which is 'seen bare'", (int)s->case_no,
		     own_digit_name(digit));
	(void)o;
}

static void check_running(struct stage *g, const struct sheet *s, const struct root *root, int digit)
{
	const struct digit *d = sheet_digit_const(s, digit);
	if (!d || !digit_runs(d))
		return;
	int64_t is = g->true_ms - root->on_ms, says = digit_stretch_ms(d, g->now);
	looked(g, CHECK_MINUTES);
	if (d->doubted ? d->doubt_gap : d->gap) {
		if (says > is)
			FAIL(g, MINUTES, "%s: 'at least %lld s', and it is %lld s", own_digit_name(digit),
			     (long long)(says / 1000), (long long)(is / 1000));
	} else if (says < is - root->slack_ms) {
		FAIL(g, MINUTES, "%s: %lld s are shown as exact, and it is %lld s", own_digit_name(digit),
		     (long long)(says / 1000), (long long)(is / 1000));
	}
}

static void check_stopped(struct stage *g, const struct sheet *s, const struct root *root, int digit)
{
	const struct digit *d = sheet_digit_const(s, digit);
	if (!d || d->state != DIGIT_OFF || d->doubted || root->station_off_ms < root->off_ms || !root->told)
		return;
	int64_t was = root->off_ms - root->on_ms, says = d->known_ms;
	looked(g, CHECK_MINUTES);
	if (d->gap && says > was + root->end_slack_ms)
		FAIL(g, MINUTES, "%s, off: 'at least %lld s', and it was %lld s", own_digit_name(digit),
		     (long long)(says / 1000), (long long)(was / 1000));
	if (!d->gap && says < was - root->slack_ms)
		FAIL(g, MINUTES, "%s, off: %lld s are shown as exact, and it was %lld s",
		     own_digit_name(digit), (long long)(says / 1000), (long long)(was / 1000));
}

static void check_digits(struct stage *g, const struct operation *o)
{
	int index = station_sheet_of_case(&g->st, o->case_no);
	for (int d = 1; index >= 0 && d <= DIGIT_NUMBER_MAX; d++) {
		const struct root *root = &o->roots[d];
		if (root->bands && root->told) {
			check_bare(g, o, &g->st.sheets[index], d);
			check_running(g, &g->st.sheets[index], root, d);
		} else if (root->ever && !root->bands) {
			check_stopped(g, &g->st.sheets[index], root, d);
		}
	}
}

void check_state(struct stage *g)
{
	check_rules(g);
	check_one_sheet(g);
	for (int i = 0; i < g->world.n_operations; i++)
		if (g->world.operations[i].case_no && g->world.operations[i].honest &&
		    !g->world.operations[i].ended)
			check_digits(g, &g->world.operations[i]);
}

/* --- reminders ---------------------------------------------------------------------------------- */

static void check_figure(struct stage *g, const struct event *v)
{
	int op = case_of_event(g, v);
	if (op < 0 || !g->world.operations[op].honest || g->world.operations[op].wall_set)
		return;
	const struct root *root = &g->world.operations[op].roots[v->digit];
	int64_t is = (g->true_ms - root->on_ms - root->slack_ms) / 60000;
	looked(g, CHECK_REMINDER);
	if (root->bands && root->told && v->n < is)
		FAIL(g, REMINDER, "%s: the reminder says %d min, and it is %lld min",
		     own_digit_name(v->digit), (int)v->n, (long long)is);
}

/* Asked after the last tick of a moment: nothing is due that was not told. */
static void check_due(struct stage *g, const struct operation *o, const struct sheet *s, int digit)
{
	const struct root *root = &o->roots[digit];
	const struct digit *d = sheet_digit_const(s, digit);
	int64_t is = (g->true_ms - root->on_ms - root->slack_ms) / 60000;
	const struct policy *p = &g->st.policy;
	if (!d || !digit_runs(d))
		return;
	int64_t due = d->reminded_min ? d->reminded_min + p->next_reminder_min : p->first_reminder_min;
	looked(g, CHECK_REMINDER);
	if (is >= due + 1)
		FAIL(g, REMINDER, "%s: it is %lld min, and the reminder of %lld min has not come",
		     own_digit_name(digit), (long long)is, (long long)due);
}

void check_tick(struct stage *g)
{
	for (int i = 0; i < g->out.count; i++)
		if (g->out.events[i].kind == EV_REMINDED)
			check_figure(g, &g->out.events[i]);
	for (int i = 0; !g->out.count && i < g->world.n_operations; i++) {
		const struct operation *o = &g->world.operations[i];
		int index = station_sheet_of_case(&g->st, o->case_no);
		for (int d = 1; index >= 0 && o->honest && !o->wall_set && d <= DIGIT_NUMBER_MAX; d++)
			if (o->roots[d].bands && o->roots[d].told)
				check_due(g, o, &g->st.sheets[index], d);
	}
}

/* --- the end of a case -------------------------------------------------------------------------- */

struct findings {
	int count;
	char first[200];
};

static void untrue(struct findings *f, const char *format, const char *what, int n)
{
	if (!f->count++)
		snprintf(f->first, sizeof f->first, format, what, n);
}

static void look_at_item(const struct stage *g, int op, const struct sheet *s, int item, struct findings *f)
{
	const struct item *it = &s->items[item - 1];
	struct at_hand h = world_at_hand(&g->world, op, s, item);
	int cut = it->condition == CONDITION_CUT_COMPLETE;
	if (it->place == ITEM_ACCOUNTED && it->thing.role != ROLE_TOURNIQUET)
		h.intact += h.cut; /* of nothing else the station asks whether it is whole */
	if (it->place == ITEM_ACCOUNTED && (cut ? h.cut : h.intact) < it->shown)
		untrue(f,
		       cut ? "%s is accounted for as cut and complete, and is not"
		           : "%s is accounted for (%d), and is not here",
		       it->thing.name, it->shown);
	if (item_counts(it) && it->place != ITEM_ACCOUNTED && it->place != ITEM_EXTRA && it->missing &&
	    h.intact + h.cut > it->shown && !h.in_pieces)
		untrue(f, "%s is missing on the sheet (%d), and it is here", it->thing.name, it->missing);
}

/* More on the sheet than ever came into the room. */
static void look_for_phantoms(const struct stage *g, int op, const struct sheet *s, struct findings *f)
{
	for (int l = 0; l < (int)g->st.catalogue.count; l++) {
		const char *line = g->st.catalogue.lines[l].key;
		int listed = 0, real = 0;
		for (int i = 0; i < s->n_items; i++)
			listed += item_counts(&s->items[i]) && s->items[i].place != ITEM_EXTRA &&
			          strcmp(s->items[i].thing.line, line) == 0;
		for (int i = 0; i < g->world.n_things; i++)
			real += g->world.things[i].of == op && strcmp(g->world.things[i].line, line) == 0;
		if (listed > real)
			untrue(f, "%s is on the sheet more often (%d) than it came into the room", line,
			       listed);
	}
}

static void look_at_digits(const struct stage *g, int op, const struct sheet *s, enum case_end how,
                           struct findings *f)
{
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++) {
		const struct root *root = &g->world.operations[op].roots[d];
		const struct digit *entered = sheet_digit_const(s, d);
		int had = entered && entered->had;
		if (root->bands && how != END_UNRESOLVED)
			untrue(f, "the case has ended, and a tourniquet is on the %s (%d)", own_digit_name(d),
			       root->bands);
		if (root->ever && !had)
			untrue(f, "a tourniquet was on the %s, and the sheet does not have it%.0d",
			       own_digit_name(d), 0);
		if (!root->ever && had)
			untrue(f, "no tourniquet was on the %s, and the sheet has one%.0d", own_digit_name(d),
			       0);
	}
}

void check_ended(struct stage *g, int op, const struct sheet *s, enum case_end how)
{
	struct operation *o = &g->world.operations[op];
	struct findings f = {0, ""};
	for (int i = 1; i <= s->n_items; i++)
		look_at_item(g, op, s, i, &f);
	look_for_phantoms(g, op, s, &f);
	look_at_digits(g, op, s, how, &f);
	looked(g, CHECK_TRACED);
	g->tally->ended[how]++;
	int cause = world_has_cause(o);
	if (!f.count) {
		g->tally->clean_cases += !cause;
		return;
	}
	g->tally->false_cases++;
	g->tally->false_facts[cause] += f.count;
	if (!cause)
		FAIL(g, TRACED,
		     "case %d ended %s, nothing false was said or left out, and it is not true: %s",
		     (int)s->case_no,
		     how == END_RECONCILED   ? "reconciled"
		     : how == END_UNRESOLVED ? "unresolved"
		                             : "cancelled",
		     f.first);
}
