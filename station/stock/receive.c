/* What comes in, and how it is known what it is. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/name.h"
#include "stock/bench-turn.h"

#define SOON_DAYS 30
#define LATER_DAYS 90

/* The word behind a fact: what it means for these packs. */
static enum saying meaning_of(const struct bench_turn *t, const struct batch *b, struct say *say)
{
	const char *why = station_quarantined(t->st, b->line, b->lot);
	if (why) {
		say->reason = why;
		return SAY_THEN_QUARANTINE;
	}
	if (b->expiry && b->expiry < t->in->today)
		return SAY_THEN_EXPIRED;
	for (size_t i = 0; i < t->s->n_lots; i++)
		if (strcmp(t->s->lots[i].line, b->line) == 0 && lot_is_near(t->s->lots[i].lot, b->lot)) {
			say->other_lot = t->s->lots[i].lot;
			return SAY_THEN_NEAR_LOT;
		}
	if (!b->expiry)
		return SAY_NONE;
	int32_t days = stock_days(t->in->today, b->expiry);
	return days <= SOON_DAYS ? SAY_THEN_EXPIRES_30 : days <= LATER_DAYS ? SAY_THEN_EXPIRES_90 : SAY_NONE;
}

static void received(struct bench_turn *t, const struct batch *b, int32_t packs, enum received_how how,
                     int32_t person, int32_t second)
{
	bench_close(t);
	BENCH_EMIT(t, .kind = EV_RECEIVED, .batch = *b, .n = packs, .what = (uint8_t)how, .person = person,
	           .other = second);
	struct say said =
	    how == RECEIVED_NOT_CONFIRMED
	        ? *SAY(STOCK_RECEIVED_OPEN, .n = packs, .item = bench_line_name(t, b->line), LOT_VALUES(b))
	        : *SAY(STOCK_RECEIVED, .n = packs, .item = bench_line_name(t, b->line), LOT_VALUES(b));
	said.then = meaning_of(t, b, &said);
	bench_accept(t, &said);
}

/* n: 1 where line, lot or expiry did not come from its code; other: packs in one. */
static void ask_about(struct bench_turn *t, enum bench_question what, const struct batch *b, int32_t packs,
                      int typed)
{
	bench_ask(t, (struct bench_asked){.what = (uint8_t)what, .batch = *b, .n = typed, .other = packs},
	          NULL);
}

/* Whether the box closes labels that are all accounted for. */
static int closes_labels(const struct bench_turn *t, const struct batch *b)
{
	const struct printing *p = stock_printing_at(t->s, t->in->room);
	return p && !printing_open(p) && strcmp(p->batch.line, b->line) == 0;
}

void receive_pack(struct bench_turn *t, const struct batch *what, int32_t packs, int typed)
{
	if (!typed && !t->asked->what && closes_labels(t, what)) {
		bench_answer_BOX_AGAIN(t);
		return;
	}
	if (!typed && role_has(t->in->thing.role, TRAIT_LIST)) {
		bench_refuse(t, SAY(STOCK_NO_USE));
		return;
	}
	if (!what->lot[0])
		ask_about(t, BENCH_LOT, what, packs, 1);
	else if (!what->expiry)
		ask_about(t, BENCH_EXPIRY, what, packs, 1);
	else
		ask_about(t, BENCH_HOW_MANY, what, packs, typed);
}

static int is_none(const char *text)
{
	return strcmp(text, "none") == 0;
}

void bench_answer_RECEIVE_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (t->in->act == BENCH_PACK) {
		receive_pack(t, &t->in->batch, t->in->packs, 0);
		return;
	}
	if (bench_means(t, 1, &b) == BENCH_UNFIT)
		return;
	if (!bench_line(t, b.line)) { /* what is left of it is removed; nothing comes in */
		bench_refuse(t, SAY(STOCK_NOT_KNOWN, .key = b.line));
		return;
	}
	b.first = b.last = 0;
	receive_pack(t, &b, 1, 1);
}

void bench_answer_LOT(struct bench_turn *t)
{
	struct error e;
	struct batch b = t->asked->batch;
	if (t->in->act == BENCH_TYPED && !is_none(t->in->text) &&
	    name_check("", t->in->text, LOT_MAX - 1, &e) < 0) {
		bench_refuse(t, SAY(STOCK_NO_LOT_TEXT, .code = t->in->text));
		return;
	}
	if (bench_text(t, EVENT_TEXT_MAX) == BENCH_UNFIT)
		return;
	snprintf(b.lot, sizeof b.lot, "%.30s", is_none(t->in->text) ? "" : t->in->text);
	ask_about(t, b.expiry ? BENCH_HOW_MANY : BENCH_EXPIRY, &b, t->asked->other, 1);
}

void bench_answer_EXPIRY(struct bench_turn *t)
{
	struct batch b = t->asked->batch;
	int32_t day = t->in->act == BENCH_TYPED ? bench_day(t->in->text) : 0;
	if (day < 0) {
		bench_refuse(t, SAY(STOCK_NO_DAY, .code = t->in->text));
		return;
	}
	if (bench_text(t, EVENT_TEXT_MAX) == BENCH_UNFIT)
		return;
	b.expiry = day;
	ask_about(t, BENCH_HOW_MANY, &b, t->asked->other, 1);
}

static void came(struct bench_turn *t, int32_t packs, int typed)
{
	int32_t person = bench_person(t);
	if (!typed) {
		received(t, &t->asked->batch, packs, RECEIVED_CODED, person, 0);
		return;
	}
	bench_ask(t,
	          (struct bench_asked){.what = person ? BENCH_SECOND : BENCH_TYPED_BY,
	                               .batch = t->asked->batch,
	                               .n = packs,
	                               .person = person},
	          NULL);
}

void bench_answer_HOW_MANY(struct bench_turn *t)
{
	int32_t each = t->asked->other > 0 ? t->asked->other : 1, n = bench_number(t, BENCH_PACKS_MAX / each);
	if (n < 0)
		return;
	if (n == 0) {
		bench_close(t);
		bench_accept(t, SAY(STOCK_LEFT));
		return;
	}
	if (n * each < BENCH_PACKS_ASKED) {
		came(t, n * each, t->asked->n);
		return;
	}
	struct bench_asked q = *t->asked;
	q.what = BENCH_SO_MANY;
	q.other = q.n;
	q.n = n * each;
	bench_ask(t, q, NULL);
}

void bench_answer_SO_MANY(struct bench_turn *t)
{
	if (t->in->act == BENCH_CARD && t->in->card == CARD_YES)
		came(t, t->asked->n, t->asked->other);
	else
		bench_unfit(t);
}

void bench_answer_TYPED_BY(struct bench_turn *t)
{
	if (bench_badge(t) == BENCH_UNFIT)
		return;
	struct bench_asked q = *t->asked;
	q.what = BENCH_SECOND;
	q.person = t->in->number;
	BENCH_EMIT(t, .kind = EV_BENCH_PERSON, .person = t->in->number);
	bench_ask(t, q, NULL);
}

/* n 0: what waits of it is confirmed. */
static void confirmed(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	const struct stock_lot *lot = stock_lot_of(t->s, &q->batch);
	if (q->n) {
		received(t, &q->batch, q->n, RECEIVED_CONFIRMED, q->person, t->in->number);
		return;
	}
	if (!lot || lot->waits < 1) { /* somebody did it at another bench meanwhile */
		bench_refuse(t, SAY(STOCK_NOTHING_WAITS, .item = bench_line_name(t, q->batch.line),
		                    LOT_VALUES(&q->batch)));
		bench_close(t);
		return;
	}
	bench_close(t);
	BENCH_EMIT(t, .kind = EV_CONFIRMED, .batch = q->batch, .n = lot->waits, .person = q->person,
	           .other = t->in->number);
	struct say said =
	    *SAY(STOCK_CONFIRMED, .other_person = staff_name(&t->st->staff, t->in->number), .n = lot->waits,
	         .item = bench_line_name(t, q->batch.line), LOT_VALUES(&q->batch));
	said.then = meaning_of(t, &q->batch, &said);
	bench_accept(t, &said);
}

void bench_answer_SECOND(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	if (t->in->act == BENCH_CARD && t->in->card == CARD_NOBODY_TO_CONFIRM) {
		if (q->n) {
			received(t, &q->batch, q->n, RECEIVED_NOT_CONFIRMED, q->person, 0);
		} else {
			bench_close(t);
			bench_accept(t, SAY(STOCK_LEFT));
		}
		return;
	}
	if (bench_badge(t) == BENCH_UNFIT)
		return;
	if (t->in->number == q->person)
		bench_refuse(t, SAY(STOCK_ANOTHER_BADGE, .person = staff_name(&t->st->staff, q->person)));
	else
		confirmed(t);
}

void bench_answer_CONFIRM_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (bench_means(t, 0, &b) == BENCH_UNFIT)
		return;
	b.first = b.last = 0;
	const struct stock_lot *lot = stock_lot_of(t->s, &b);
	if (!lot || lot->waits < 1)
		bench_refuse(t, SAY(STOCK_NOTHING_WAITS, .item = bench_line_name(t, b.line), LOT_VALUES(&b)));
	else
		bench_ask(t, (struct bench_asked){.what = BENCH_SECOND, .batch = b, .person = lot->typed_by},
		          NULL);
}
