/* Codes are read: from a scanned code to what the station decides, and what people see of it. */
#include <stdio.h>
#include <string.h>

#include "checks.h"
#include "decide/next.h"
#include "decide/stored-enter.h"
#include "random.h"
#include "stage-inside.h"
#include "tests/states/known.h"
#include "variants.h"

static void look_up(const struct stage *g, struct input *in)
{
	for (int i = 0; in->thing.identity[0] && i < g->n_used; i++) /* the latest counts, as in the record */
		if (strcmp(g->used[i].identity, in->thing.identity) == 0) {
			in->known.used_in = g->used[i].case_no;
			in->known.used_back = g->used[i].back;
		}
	for (int i = 0; in->act == ACT_SLIP && i < g->n_slips; i++)
		if (g->slips[i].number == in->number) {
			in->known.slip_case = g->slips[i].case_no;
			in->known.slip_room = g->slips[i].room;
		}
}

static void read_thing(const struct stage *g, const struct real *r, struct input *in)
{
	const struct line *line = catalogue_by_key(&g->st.catalogue, r->line);
	struct thing *th = &in->thing;
	in->line = line;
	snprintf(th->line, sizeof th->line, "%s", line->key);
	snprintf(th->name, sizeof th->name, "%s", line->name);
	th->role = (uint8_t)line->role;
	th->single_use = (uint8_t)line->single_use;
	th->rolls_on = (uint8_t)line->rolls_on;
	th->shows_on_xray = (uint8_t)line->shows_on_xray;
	th->expiry = r->expiry;
	if (r->number) {
		snprintf(th->identity, sizeof th->identity, "%s:%d", line->key, (int)r->number);
		th->identity_kind = (uint8_t)line->identity;
	}
}

/* The paper that has come out and was not read back yet, or the latest of that operation. */
static void read_slip(struct stage *g, const struct entry *e, struct input *in)
{
	const struct scanned *c = &e->code;
	int32_t none = 9999, *number = e->group >= 0 ? &g->slip_of[e->group] : &none;
	in->copy = 1;
	in->number = *number && e->group >= 0 ? *number : 9999;
	if (in->number != 9999)
		return;
	for (int i = g->n_slips - 1; i >= 0; i--)
		if (g->slips[i].case_no == g->world.operations[c->n].case_no &&
		    (in->number == 9999 || !g->slips[i].seen))
			in->number = g->slips[i].number;
	*number = in->number;
}

static void input_of(struct stage *g, const struct entry *e, struct input *in)
{
	const struct scanned *c = &e->code;
	memset(in, 0, sizeof *in);
	in->act = (enum act)c->act;
	in->at = g->now;
	in->room = stage_works_for(g, e->scanner);
	in->card_room = c->room;
	snprintf(in->scanner, sizeof in->scanner, "%s", scanner_name(e->scanner));
	switch (in->act) {
	case ACT_CARD:
		in->card = c->n;
		break;
	case ACT_DIGIT:
		in->digit = c->n;
		break;
	case ACT_BADGE:
		in->number = c->n;
		break;
	case ACT_SLIP:
		read_slip(g, e, in);
		break;
	case ACT_THING:
		read_thing(g, &g->world.things[c->thing], in);
		break;
	case ACT_TYPED:
		in->flags |= EVENT_KEYED;
		snprintf(in->text, sizeof in->text, c->n ? "INC-7" : "no time for it");
		break;
	case ACT_TICK:
	case ACT_CASE_LABEL:
	case ACT_PAPER_SHEET:
	case ACT_TRAY:
	case ACT_SIGNED:
	case ACT_UNKNOWN:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_HALF:
	case ACT_STORED:
		break;
	}
	look_up(g, in);
}

static int all_at_hand(const struct stage *g, int op)
{
	for (int i = 0; i < g->world.n_things; i++) {
		const struct real *r = &g->world.things[i];
		if (r->of == op && (r->where == LOST || r->where == ON_DIGIT || r->whole != WHOLE))
			return 0;
	}
	return 1;
}

static int is_declaration(const struct scanned *c)
{
	return c->act == ACT_CARD && (c->n == CARD_YES || c->n == CARD_INTACT || c->n >= CARD_SHOWN_1);
}

/* In a shrunk list an answer must still meet the question that it answered, and be as true as it was. */
static void look_at_context(struct stage *g, const struct entry *e)
{
	struct next n;
	struct scanned c;
	const struct operation *o = &g->world.operations[e->operation];
	const struct sheet *s = stage_sheet(g, o->room);
	if (!g->replaying || e->cause)
		return;
	if (!e->asked) {
		g->out_of_context |=
		    e->read == READ_FRESH && is_declaration(&e->code) && !all_at_hand(g, e->operation);
		return;
	}
	next_step(&g->st, s, o->room, g->now, &n);
	for (int i = 0; i < n.n_deeds; i++) {
		const struct deed *d = &n.deeds[i], *a = &e->answers;
		const char *line = d->item ? s->items[d->item - 1].thing.line : "";
		if (d->kind == a->kind && d->truth == a->truth && d->n == a->n && d->digit == a->digit &&
		    d->then == a->then && strcmp(line, e->answers_line) == 0 &&
		    deed_fits(&g->world, e->operation, &g->st, s, d, &c))
			return;
	}
	g->out_of_context = 1;
}

static int count_facts(const struct outcome *o)
{
	int n = 0;
	for (int i = 0; i < o->count; i++)
		n += o->events[i].kind != EV_ASKED && o->events[i].kind != EV_REFUSED &&
		     o->events[i].kind != EV_NEXT && o->events[i].kind != EV_ALIVE &&
		     o->events[i].kind != EV_SCANNER_ROOM;
	return n;
}

static void note_told(struct stage *g, const struct entry *e, int room)
{
	struct told *told = &g->told[room];
	told->entry = e->id;
	told->operation = e->operation;
	told->read = e->read;
	told->verdict = (uint8_t)g->out.reply.verdict;
	told->facts = (uint8_t)count_facts(&g->out);
	memcpy(told->said, g->out.reply.said, sizeof told->said);
	if (e->kind != ENTRY_READ || e->group < 0 || g->out.reply.verdict == VERDICT_REFUSED || !g->out.count)
		return;
	g->last_group[room] = e->group;
	if (e->read == READ_NEIGHBOUR) /* it stands between, and what was meant is still to be scanned */
		return;
	if (g->entered[e->group] != room + 1)
		g->entered_at[e->group] = (struct entered){g->true_ms, e->scanner};
	g->entered[e->group] = (uint8_t)(room + 1);
}

/* The digit card of a digit that has one on tells the station of it. */
static void note_digit_told(struct stage *g, const struct entry *e, int32_t room)
{
	int op = g->current[room_index(room)];
	if (e->code.act != ACT_DIGIT || g->out.reply.verdict == VERDICT_REFUSED || op < 0)
		return;
	struct root *root = &g->world.operations[op].roots[e->code.n];
	if (root->bands && !root->told && e->made_ms >= root->on_ms) {
		root->told = 1;
		root->slack_ms = g->true_ms - root->on_ms;
	}
}

static void note_in_hand(struct stage *g, const struct entry *e)
{
	if (e->code.act == ACT_THING && e->operation >= 0)
		g->world.operations[e->operation].in_hand = e->code.thing;
}

static void ask_station(struct stage *g, struct input *in)
{
	static const struct sheet none;
	if (g->variant && g->variant->before)
		g->variant->before(g, in);
	int index = station_sheet_of_room(&g->st, in->room);
	decide_known(&g->st, in, &g->out);
	if (g->variant && g->variant->spoil)
		g->variant->spoil(&g->out, in, index >= 0 ? &g->st.sheets[index] : &none);
}

static void enter(struct stage *g, const struct entry *e)
{
	for (int i = 0; i < g->out.count; i++)
		stage_keep(g, &g->out.events[i], e);
	stage_learn_items(g);
}

/* What was held and is entered now, one scan after the other, as late. */
static void enter_held(struct stage *g, const struct entry *e, int32_t room, int n)
{
	struct input in;
	while (n-- > 0 && stored_input(&g->st, room, g->now, &in)) {
		in.more = n > 0;
		look_up(g, &in);
		reads_look(&g->reads, &in, g->st.policy.repeat_ms);
		ask_station(g, &in);
		reads_note(&g->reads, &in, g->out.reply.verdict);
		enter(g, e);
	}
}

void stage_read_quietly(struct stage *g, const struct entry *e)
{
	struct input in;
	note_in_hand(g, e);
	input_of(g, e, &in);
	ask_station(g, &in);
	enter(g, e);
	if (g->out.enter)
		enter_held(g, e, in.room, g->out.enter);
}

/* What is scanned into the other room stands there until somebody contradicts. */
static void note_elsewhere(struct stage *g, const struct entry *e, int room)
{
	int32_t home = g->world.operations[e->operation].room;
	if (room_numbers[room] == home || !count_facts(&g->out))
		return;
	for (int i = 0; i < g->world.n_operations; i++)
		if (g->world.operations[i].room == room_numbers[room] && !g->world.operations[i].ended)
			world_cause(&g->world, i, CAUSE_ELSEWHERE);
	world_cause(&g->world, e->operation, CAUSE_ELSEWHERE);
}

/* That it is on was to be told, and the board had begun to ask for the bare look a moment before, or its card had just
 * been read for that. */
static void note_taken_for_a_look(struct stage *g, const struct entry *e, const struct input *in)
{
	int look = in->repeated != 0;
	for (int i = 0; i < g->out.count; i++)
		look |= g->out.events[i].kind == EV_DIGIT_SEEN_BARE;
	const struct root *root = &g->world.operations[e->operation].roots[e->code.n];
	if (!look || e->code.act != ACT_DIGIT || !root->bands)
		return;
	g->world.operations[e->operation].honest = 0;
	world_cause(&g->world, e->operation, CAUSE_TOO_LATE);
}

/* What ends the case cannot be contradicted any more, nor what was entered shortly before its end. */
static void note_ends_by_neighbour(struct stage *g, const struct entry *e)
{
	struct operation *o = &g->world.operations[e->operation];
	if (e->read == READ_NEIGHBOUR && count_facts(&g->out))
		o->to_contradict++;
	else if (o->to_contradict && e->code.act == ACT_CARD && e->code.n == CARD_UNDO)
		o->to_contradict--;
	for (int i = 0; o->to_contradict && i < g->out.count; i++)
		if (g->out.events[i].kind == EV_CASE_ENDED)
			world_cause(&g->world, e->operation, CAUSE_NEIGHBOUR);
}

static int is_doubt(const struct event *v)
{
	return v->kind == EV_DIGIT_MAYBE_ON || v->kind == EV_DIGIT_DOUBTED ||
	       (v->kind == EV_OWED && v->what == DEBT_ON);
}

static int only_doubts(const struct outcome *o)
{
	int n = 0;
	for (int i = 0; i < o->count; i++)
		n += is_doubt(&o->events[i]);
	return n == count_facts(o);
}

/* A card that nobody meant asks a question (the neighbouring one; MISREAD or WRONG NUMBER IN PACK where nothing is wrong; ADD
 * of what is there already), and what is scanned next answers it: nobody has said NO. */
static void note_answers_unmeant(struct stage *g, const struct entry *e, int before)
{
	struct operation *o = &g->world.operations[e->operation];
	int after = g->out.sheet.asked.what, facts = count_facts(&g->out);
	int declared =
	    e->code.act == ACT_CARD && !e->asked && e->read != READ_NEIGHBOUR &&
	    (e->code.n == CARD_WRONG_NUMBER_IN_PACK || e->code.n == CARD_MISREAD || e->code.n == CARD_ADD);
	if ((e->read == READ_NEIGHBOUR || declared) && g->out.reply.verdict == VERDICT_QUESTION && !facts) {
		o->unmeant = (uint8_t)after;
		o->unmeant_cause = declared ? CAUSE_FALSE : CAUSE_NEIGHBOUR;
		return;
	}
	if (!o->unmeant || o->unmeant != before || after == before)
		return;
	if (before == Q_ADD && e->code.act == ACT_THING && !g->world.things[e->code.thing].entered)
		facts = 0; /* it is added, and was not there before */
	if (facts && !only_doubts(&g->out)) {
		world_cause(&g->world, e->operation, (enum cause)o->unmeant_cause);
		o->honest = 0;
	}
	o->unmeant = (uint8_t)(facts ? 0 : after);
}

/* Another question stood on the board when it was scanned: it answers what nobody had read yet. */
static void note_answers_another(struct stage *g, const struct entry *e, int before)
{
	if (!e->asked || e->question == before || !count_facts(&g->out) || only_doubts(&g->out))
		return;
	g->world.operations[e->operation].honest = 0;
	world_cause(&g->world, e->operation, CAUSE_TOO_LATE);
}

/* What was entered here last comes again, or another scanner reads what was entered a moment ago. What comes again after other scans, and
 * later, may have been meant: nobody can know. */
static int is_repeat(const struct stage *g, const struct entry *e, int room, const struct input *in)
{
	if (e->group < 0 || g->entered[e->group] != room + 1)
		return 0;
	if (in->act == ACT_THING && in->thing.identity[0] && !in->known.used_in &&
	    !station_identity_open(&g->st,
	                           in->thing.identity)) /* what it was entered as has been taken back */
		return 0;
	const struct entered *at = &g->entered_at[e->group];
	return g->last_group[room] == e->group ||
	       (at->scanner != e->scanner && g->true_ms - at->ms < g->st.policy.repeat_ms);
}

void stage_read(struct stage *g, const struct entry *e)
{
	struct input in;
	look_at_context(g, e);
	note_in_hand(g, e);
	input_of(g, e, &in);
	int room = room_index(in.room);
	int repeat = is_repeat(g, e, room, &in), asked = stage_sheet(g, in.room)->asked.what;
	reads_look(&g->reads, &in, g->st.policy.repeat_ms);
	ask_station(g, &in);
	reads_note(&g->reads, &in, g->out.reply.verdict);
	g->tally->scans++;
	g->tally->repeats += repeat;
	g->tally->refused += g->out.reply.verdict == VERDICT_REFUSED;
	check_reply(g, e, &in, repeat);
	note_ends_by_neighbour(g, e);
	note_answers_unmeant(g, e, asked);
	note_answers_another(g, e, asked);
	note_taken_for_a_look(g, e, &in);
	enter(g, e);
	note_told(g, e, room);
	if (g->out.enter)
		enter_held(g, e, in.room, g->out.enter);
	if (e->read == READ_NEIGHBOUR)
		g->world.operations[e->operation].honest = 0;
	note_elsewhere(g, e, room);
	note_digit_told(g, e, in.room);
	check_state(g);
	if (g->end_every && !g->failure.check && one_of(g->chance, g->end_every) == 0)
		check_dead_end(g, room);
}

/* --- scans that a scanner had stored --------------------------------------------------------------- */

void stage_store(struct stage *g, const struct entry *e)
{
	int64_t age = g->true_ms - e->made_ms;
	if (g->n_batch == BATCH_MAX)
		return;
	struct input *in = &g->batch[g->n_batch++];
	input_of(g, e, in);
	in->at.boot_ms -= age;
	in->at.wall_ms -= age;
	in->flags = 0;
}

/* A digit card that was stored tells of its digit, with its age. */
static void note_stored_digits(struct stage *g, const struct entry *e, int op)
{
	for (int i = 0; op >= 0 && op == e->operation && i < g->n_batch; i++) {
		struct root *root = &g->world.operations[op].roots[g->batch[i].digit];
		int64_t made = g->true_ms - (g->now.boot_ms - g->batch[i].at.boot_ms);
		if (g->batch[i].act == ACT_DIGIT && root->bands && !root->told && made >= root->on_ms) {
			root->told = 1;
			root->slack_ms = made - root->on_ms;
		}
	}
}

void stage_send(struct stage *g, const struct entry *e)
{
	struct input in = {.act = ACT_STORED,
	                   .at = g->now,
	                   .room = stage_works_for(g, e->scanner),
	                   .stored = g->batch,
	                   .n_stored = g->n_batch};
	int room = room_index(in.room);
	if (!g->n_batch)
		return;
	snprintf(in.scanner, sizeof in.scanner, "%s", scanner_name(e->scanner));
	if (in.room != g->world.operations[e->operation].room) {
		world_cause(&g->world, e->operation, CAUSE_ELSEWHERE);
		world_cause(&g->world, g->current[room], CAUSE_ELSEWHERE);
	}
	g->world.stored_by[room] = e->operation;
	ask_station(g, &in);
	g->tally->scans += g->n_batch;
	check_reply(g, e, &in, 0);
	enter(g, e);
	note_told(g, e, room);
	note_stored_digits(g, e, g->current[room]);
	g->n_batch = 0;
	check_state(g);
}
