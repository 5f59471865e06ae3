/* Quarantine and release, and what is found in sterile services. */
#include <stdio.h>
#include <string.h>

#include "stock/bench-turn.h"

#define WHY_MAX 121

/* --- quarantine ------------------------------------------------------------------------------------ */

static struct thing thing_of(const struct bench_turn *t, const struct batch *b)
{
	struct thing th = {0};
	snprintf(th.line, sizeof th.line, "%s", b->line);
	snprintf(th.lot, sizeof th.lot, "%s", b->lot);
	snprintf(th.name, sizeof th.name, "%s", bench_line_name(t, b->line));
	return th;
}

void bench_answer_QUARANTINE_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (bench_means(t, 1, &b) == BENCH_UNFIT)
		return;
	b.first = b.last = 0;
	bench_ask(
	    t,
	    (struct bench_asked){.what = b.lot[0] ? BENCH_QUARANTINE_LOT : BENCH_QUARANTINE_WHY, .batch = b},
	    NULL);
}

void bench_answer_QUARANTINE_LOT(struct bench_turn *t)
{
	struct bench_asked q = *t->asked;
	if (t->in->act != BENCH_CARD || (t->in->card != CARD_YES && t->in->card != CARD_NO)) {
		bench_unfit(t);
		return;
	}
	if (t->in->card == CARD_NO)
		q.batch.lot[0] = 0;
	q.what = BENCH_QUARANTINE_WHY;
	bench_ask(t, q, NULL);
}

void bench_answer_QUARANTINE_WHY(struct bench_turn *t)
{
	struct bench_asked q = *t->asked;
	if (bench_text(t, WHY_MAX) == BENCH_UNFIT)
		return;
	q.what = BENCH_NOTICE;
	snprintf(q.text, sizeof q.text, "%s", t->in->text);
	bench_ask(t, q, NULL);
}

/* What lies where, over all lots that it holds. */
static struct say what_lies_where(const struct bench_turn *t, const struct batch *b)
{
	struct say say = *SAY(STOCK_QUARANTINED, .item = bench_line_name(t, b->line), .n = 0, .most = 0,
	                      .opened = 0, .lot = b->lot, .date = 0, .what = SAY_OF_ANY_LOT);
	if (b->lot[0])
		say.what = SAY_OF_LOT_ALL_EXPIRIES;
	for (size_t i = 0; i < t->s->n_lots; i++) {
		const struct stock_lot *l = &t->s->lots[i];
		if (strcmp(l->line, b->line) != 0)
			continue;
		if (b->lot[0] && lot_is_near(l->lot, b->lot)) {
			say.then = SAY_THEN_NEAR_LOT;
			say.other_lot = l->lot;
		}
		if (b->lot[0] && strcmp(l->lot, b->lot) != 0)
			continue;
		say.n += l->shelf + l->waits;
		say.most += l->in_rooms;
		say.opened += l->opened;
	}
	return say;
}

void bench_answer_NOTICE(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	int none = t->in->act == BENCH_CARD && t->in->card == CARD_NO;
	if (!none && bench_text(t, NOTICE_MAX) == BENCH_UNFIT)
		return;
	struct event e = {.kind = EV_QUARANTINED, .thing = thing_of(t, &q->batch), .person = bench_person(t)};
	memcpy(e.text, q->text, sizeof e.text);
	snprintf(e.notice, sizeof e.notice, "%s", none ? "" : t->in->text);
	bench_close(t);
	bench_emit(t, &e);
	struct say said = what_lies_where(t, &q->batch);
	bench_accept(t, &said);
}

/* --- release --------------------------------------------------------------------------------------- */

void bench_answer_RELEASE_WHAT(struct bench_turn *t)
{
	struct batch b;
	int32_t person = bench_person(t);
	if (bench_means(t, 1, &b) == BENCH_UNFIT)
		return;
	b.first = b.last = 0;
	if (!station_is_held(t->st, b.line, b.lot) && station_is_held(t->st, b.line, ""))
		b.lot[0] = 0; /* the whole line is */
	if (!station_is_held(t->st, b.line, b.lot)) {
		bench_refuse(t, SAY(NOT_IN_QUARANTINE, .item = bench_line_name(t, b.line), LOT_VALUES(&b)));
		return;
	}
	bench_ask(t,
	          (struct bench_asked){.what = person ? BENCH_RELEASE_SECOND : BENCH_RELEASE_FIRST,
	                               .batch = b,
	                               .person = person},
	          NULL);
}

void bench_answer_RELEASE_FIRST(struct bench_turn *t)
{
	struct bench_asked q = *t->asked;
	if (bench_badge(t) == BENCH_UNFIT)
		return;
	q.what = BENCH_RELEASE_SECOND;
	q.person = t->in->number;
	BENCH_EMIT(t, .kind = EV_BENCH_PERSON, .person = t->in->number);
	bench_ask(t, q, NULL);
}

/* Stores rule 5. */
void bench_answer_RELEASE_SECOND(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	if (bench_badge(t) == BENCH_UNFIT)
		return;
	if (t->in->number == q->person) {
		bench_refuse(t, SAY(STOCK_ANOTHER_RELEASES, .person = staff_name(&t->st->staff, q->person)));
		return;
	}
	bench_close(t);
	if (station_is_held(t->st, q->batch.line, q->batch.lot))
		BENCH_EMIT(t, .kind = EV_RELEASED, .thing = thing_of(t, &q->batch), .person = q->person,
		           .other = t->in->number);
	struct say said =
	    *SAY(STOCK_RELEASED, .person = staff_name(&t->st->staff, q->person),
	         .other_person = staff_name(&t->st->staff, t->in->number),
	         .item = bench_line_name(t, q->batch.line), .lot = q->batch.lot, .what = SAY_OF_ANY_LOT);
	if (q->batch.lot[0])
		said.what = SAY_OF_LOT_ALL_EXPIRIES;
	bench_accept(t, &said);
}

/* --- found in sterile services --------------------------------------------------------------------- */

static void queue_addendum(struct bench_turn *t, int32_t case_no)
{
	struct event e = {.kind = EV_SLIP_QUEUED,
	                  .case_no = case_no,
	                  .n = t->st->last_slip_no + 1,
	                  .what = SLIP_ADDENDUM,
	                  .other = 1};
	snprintf(e.text, sizeof e.text, "%s", station_language(t->st, t->in->room));
	bench_emit(t, &e);
}

/* Rule 21 of the count: it acts on the case that it came from, with an addendum slip. */
static void found_for(struct bench_turn *t, int32_t case_no, const struct thing *th)
{
	struct event took = {.kind = EV_CASE_TOOK, .n = 1, .what = TOOK_FOUND, .other = case_no};
	memcpy(took.batch.line, th->line, sizeof took.batch.line);
	bench_close(t);
	BENCH_EMIT(t, .kind = EV_FOUND_AFTER, .case_no = case_no, .thing = *th);
	queue_addendum(t, case_no);
	if (th->identity[0])
		BENCH_EMIT(t, .kind = EV_ITEM_USED, .case_no = case_no, .thing = *th, .n = 1);
	bench_emit(t, &took);
	bench_accept(t, SAY(STOCK_FOUND, .case_no = case_no,
	                    .item = th->name[0] ? th->name : saying_text(th->called)));
}

/* What is found with a lot is none of another lot. */
static int may_be_that(const struct stock_missing *m, const struct thing *th)
{
	return strcmp(m->line, th->line) == 0 && (!th->lot[0] || !m->lot[0] || strcmp(m->lot, th->lot) == 0);
}

/* How many ended cases miss it, and the first. */
static int cases_missing(const struct stock *s, const struct thing *th, int32_t *first)
{
	int cases = 0;
	for (size_t i = 0; i < s->n_missing; i++) {
		const struct stock_missing *m = &s->missing[i];
		int known = !may_be_that(m, th);
		for (size_t k = 0; k < i && !known; k++)
			known = s->missing[k].case_no == m->case_no && may_be_that(&s->missing[k], th);
		if (!known && !cases++)
			*first = m->case_no;
	}
	return cases;
}

/* Stores rule 9. */
static void found_of_line(struct bench_turn *t, const struct thing *th)
{
	int32_t case_no = 0;
	int cases = cases_missing(t->s, th, &case_no);
	if (cases == 1) {
		found_for(t, case_no, th);
		return;
	}
	if (cases > 1) {
		struct bench_asked q = {.what = BENCH_FOUND_OF, .n = cases};
		memcpy(q.batch.line, th->line, sizeof q.batch.line);
		bench_ask(t, q, NULL);
		return;
	}
	struct event took = {.kind = EV_CASE_TOOK, .n = 1, .what = TOOK_FOUND};
	memcpy(took.batch.line, th->line, sizeof took.batch.line);
	bench_close(t);
	bench_emit(t, &took);
	bench_accept(
	    t, th->lot[0] ? SAY(STOCK_FOUND_NO_CASE_OF_LOT, .item = th->name, .key = th->line, .lot = th->lot)
	                  : SAY(STOCK_FOUND_NO_CASE, .item = th->name, .key = th->line));
}

static struct thing thing_of_line(const struct bench_turn *t, const char *key)
{
	struct thing th = {0};
	const struct line *l = bench_line(t, key);
	if (!l) { /* it left the catalogue after a case had it */
		snprintf(th.line, sizeof th.line, "%s", key);
		snprintf(th.name, sizeof th.name, "%s", key);
		return th;
	}
	snprintf(th.line, sizeof th.line, "%s", l->key);
	snprintf(th.name, sizeof th.name, "%s", l->name);
	th.role = (uint8_t)l->role;
	th.single_use = l->single_use != 0;
	th.shows_on_xray = l->shows_on_xray != 0;
	return th;
}

static void found_item(struct bench_turn *t)
{
	const struct thing *th = &t->in->thing;
	int32_t open = station_identity_open(t->st, th->identity);
	int index = open ? station_sheet_of_case(t->st, open) : -1;
	if (index >= 0)
		bench_refuse(t, SAY(FOUND_ON_OPEN_SHEET, .item = th->name, .case_no = open,
		                    .room = station_room_name(t->st, t->st->sheets[index].room)));
	else if (th->identity[0] && th->identity_kind != IDENTITY_MARK)
		bench_refuse(t, SAY(FOUND_PROVES_NO_MORE, .item = th->name, .key = th->line));
	else if (t->in->used_in && !t->in->used_back)
		found_for(t, t->in->used_in, th);
	else
		found_of_line(t, th);
}

/* The line of what this case misses first; "" it misses nothing. */
static const char *missed_by(const struct stock *s, int32_t case_no, const char *line)
{
	for (size_t i = 0; i < s->n_missing; i++)
		if (s->missing[i].case_no == case_no && (!line[0] || strcmp(s->missing[i].line, line) == 0))
			return s->missing[i].line;
	return "";
}

/* Whether it misses things of more than one line. */
static int misses_several(const struct stock *s, int32_t case_no)
{
	const char *first = missed_by(s, case_no, "");
	for (size_t i = 0; i < s->n_missing; i++)
		if (s->missing[i].case_no == case_no && strcmp(s->missing[i].line, first) != 0)
			return 1;
	return 0;
}

static void found_by_slip(struct bench_turn *t)
{
	int32_t case_no = t->in->number;
	const char *line = missed_by(t->s, case_no, t->asked->batch.line);
	if (!case_no || station_sheet_of_case(t->st, case_no) >= 0 || !line[0]) {
		bench_refuse(t, SAY(FOUND_NO_CASE_OF_SLIP, .case_no = case_no));
		return;
	}
	if (!t->asked->batch.line[0] && misses_several(t->s, case_no)) {
		bench_refuse(t, SAY(FOUND_WHICH_OF_CASE, .case_no = case_no));
		return;
	}
	struct thing th = thing_of_line(t, line);
	found_for(t, case_no, &th);
}

void bench_answer_FOUND(struct bench_turn *t)
{
	struct batch b;
	if (t->in->act == BENCH_SLIP) {
		found_by_slip(t);
	} else if (t->asked->what == BENCH_FOUND_OF) {
		bench_unfit(t);
	} else if (t->in->act == BENCH_PACK || t->in->act == BENCH_LABEL) {
		found_item(t);
	} else if (bench_means(t, 1, &b) == BENCH_FIT) {
		struct thing th = thing_of_line(t, b.line);
		memcpy(th.lot, b.lot, sizeof th.lot);
		found_of_line(t, &th);
	}
}

void bench_answer_FOUND_OF(struct bench_turn *t)
{
	bench_answer_FOUND(t);
}
