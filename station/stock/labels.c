/* Labels: numbered, read back, spoilt, closed. Each number is accounted for once (stores rule 4). */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stock/bench-turn.h"

#define ITEM_NUMBER_MAX 99999999 /* eight digits in its code */

struct label_known label_known_by(const struct event *last)
{
	if (!last)
		return (struct label_known){.state = LABEL_PRINTED};
	switch (last->kind) {
	case EV_LABEL_FATE:
		if (label_is_on_pack((enum label_fate)last->what))
			return (struct label_known){.state = LABEL_ON_SHELF};
		return (struct label_known){.state = LABEL_GONE, .fate = (enum label_fate)last->what};
	case EV_ISSUED:
		return (struct label_known){.state = LABEL_ISSUED_TO, .room = last->other};
	case EV_WRITTEN_OFF:
		return (struct label_known){.state = LABEL_THROWN};
	default: /* it was put back, or counted: where it was read back to */
		return (struct label_known){.state = LABEL_ON_SHELF};
	}
}

/* --- numbering ------------------------------------------------------------------------------------- */

/* Where labels of this bench are not read back, it is asked first whether these are to be replaced: paper runs out. */
void label_card(struct bench_turn *t)
{
	const struct printing *p = stock_printing_at(t->s, t->in->room);
	int open = p ? printing_open(p) : 0;
	struct bench_asked q = {.what = BENCH_PRINT_WHAT};
	if (open)
		q = (struct bench_asked){.what = BENCH_PRINT_AGAIN, .batch = p->batch, .n = open};
	bench_ask(t, q, NULL);
}

void bench_answer_PRINT_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (bench_means(t, 0, &b) == BENCH_UNFIT)
		return;
	const struct line *l = bench_line(t, b.line);
	b.first = b.last = 0;
	if (!l || l->label == LABEL_NEVER)
		bench_refuse(t, SAY(STOCK_NOT_LABELLED, .item = bench_line_name(t, b.line)));
	else
		bench_ask(t, (struct bench_asked){.what = BENCH_PRINT_MANY, .batch = b}, NULL);
}

/* Packs of the lot that stand for no label yet. */
static int32_t unlabelled(const struct bench_turn *t, const struct batch *b)
{
	const struct stock_lot *lot = stock_lot_of(t->s, b);
	return lot ? lot->received - lot->labelled - lot->printed : 0;
}

static void number_labels(struct bench_turn *t, int32_t n)
{
	struct batch b = t->asked->batch;
	const struct line *l = bench_line(t, b.line);
	b.first = t->st->last_item_no + 1;
	b.last = b.first + n - 1;
	bench_close(t);
	BENCH_EMIT(t, .kind = EV_LABELLED, .batch = b, .n = 1);
	bench_accept(t, SAY(LABELS_NUMBERED, .item_number = (int32_t)b.first, .last_number = (int32_t)b.last,
	                    .item = l->name, .where = l->label_place,
	                    .then = l->label == LABEL_BEFORE_STERILISING ? SAY_BEFORE_STERILISING
	                                                                 : SAY_AFTER_STERILISING,
	                    LOT_VALUES(&b)));
}

void bench_answer_PRINT_MANY(struct bench_turn *t)
{
	const struct batch *b = &t->asked->batch;
	int32_t n = bench_number(t, PRINT_MAX), most = unlabelled(t, b);
	if (n < 0)
		return;
	if (n == 0) {
		bench_close(t);
		bench_accept(t, SAY(STOCK_LEFT));
	} else if (n > most) {
		bench_refuse(t, SAY(STOCK_NO_LABELS_LEFT, .most = most > 0 ? most : 0, .n = n,
		                    .item = bench_line_name(t, b->line), LOT_VALUES(b)));
	} else if (t->s->n_printings == PRINTINGS_MAX) {
		bench_refuse(t, SAY(STOCK_PRINTINGS_OPEN, .n = t->s->n_printings));
	} else if (t->st->last_item_no + n > ITEM_NUMBER_MAX) {
		bench_refuse(t, SAY(STOCK_NUMBERS_OVER));
	} else {
		number_labels(t, n);
	}
}

/* --- reading back ---------------------------------------------------------------------------------- */

static void put_fate(struct bench_turn *t, const struct batch *of, int64_t number, enum label_fate fate,
                     enum label_fate was)
{
	struct batch b = *of;
	b.first = b.last = number;
	BENCH_EMIT(t, .kind = EV_LABEL_FATE, .batch = b, .what = (uint8_t)fate, .other = (int32_t)was,
	           .person = bench_person(t));
}

/* Labels of the printing that are open once `done` more are not. */
static int open_after(const struct printing *p, int done)
{
	return p ? printing_open(p) - done : 0;
}

static const struct printing *printing_with(const struct bench_turn *t, int64_t number)
{
	return stock_printing_with(t->s, number);
}

/* The first labels that are open are spoilt, as many as go at once. How many. */
static int spoil_open(struct bench_turn *t, const struct printing *p)
{
	int n = 0;
	for (int64_t i = p->batch.first; i <= p->batch.last && n < BENCH_LABELS_MAX; i++)
		if (!p->fate[i - p->batch.first]) {
			put_fate(t, &p->batch, i, LABEL_SPOILT, (enum label_fate)0);
			n++;
		}
	return n;
}

/* The box is compared once, with the labels that replace them. */
static void replace(struct bench_turn *t, const struct printing *p)
{
	struct batch b = p->batch;
	bench_close(t);
	int n = spoil_open(t, p);
	if (!open_after(p, n))
		BENCH_EMIT(t, .kind = EV_LABELS_CLOSED, .batch = p->batch, .person = bench_person(t));
	b.first = t->st->last_item_no + 1;
	b.last = b.first + n - 1;
	BENCH_EMIT(t, .kind = EV_LABELLED, .batch = b, .n = 1);
	bench_accept(
	    t, SAY(LABELS_REPLACED, .n = n, .item_number = (int32_t)b.first, .last_number = (int32_t)b.last));
}

void bench_answer_PRINT_AGAIN(struct bench_turn *t)
{
	const struct printing *p = printing_with(t, t->asked->batch.first);
	int open = open_after(p, 0);
	if (t->in->act != BENCH_CARD || (t->in->card != CARD_YES && t->in->card != CARD_NO)) {
		bench_unfit(t);
	} else if (t->in->card == CARD_NO) {
		bench_ask(t, (struct bench_asked){.what = BENCH_PRINT_WHAT}, NULL);
	} else if (!open) { /* they were read back at another bench meanwhile */
		bench_close(t);
		bench_accept(t, SAY(STOCK_IS_DONE));
	} else if (t->s->n_printings == PRINTINGS_MAX) {
		bench_refuse(t, SAY(STOCK_PRINTINGS_OPEN, .n = t->s->n_printings));
	} else if (t->st->last_item_no + open > ITEM_NUMBER_MAX) {
		bench_refuse(t, SAY(STOCK_NUMBERS_OVER));
	} else {
		replace(t, p);
	}
}

static void ask_box(struct bench_turn *t, const struct printing *p)
{
	bench_ask(t, (struct bench_asked){.what = BENCH_BOX_AGAIN, .batch = p->batch},
	          SAY(LABELS_ALL_THERE, .item = bench_line_name(t, p->batch.line),
	              .item_number = (int32_t)p->batch.first, .last_number = (int32_t)p->batch.last,
	              LOT_VALUES(&p->batch)));
}

static void read_back(struct bench_turn *t)
{
	const struct printing *p = printing_with(t, t->in->batch.first);
	int open = open_after(p, 1);
	put_fate(t, &t->in->batch, t->in->batch.first, LABEL_READ, (enum label_fate)0);
	if (p && !open)
		ask_box(t, p);
	else
		bench_accept(t, SAY(LABEL_READ_BACK, .item_number = (int32_t)t->in->batch.first, .n = open));
}

static void on_shelf(struct bench_turn *t)
{
	const struct batch *b = &t->in->batch;
	const struct stock_lot *lot = stock_lot_of(t->s, b);
	enum saying why = lot ? stock_withheld(t->st, lot, t->in->today) : SAY_NONE;
	if (printing_with(t, b->first))
		bench_refuse(t, SAY(LABEL_READ_ALREADY, .item_number = (int32_t)b->first));
	else if (why)
		bench_accept(t, SAY(STOCK_LABEL_APART, .item_number = (int32_t)b->first,
		                    .item = bench_line_name(t, b->line), .why = why, LOT_VALUES(b)));
	else
		bench_accept(t, SAY(STOCK_LABEL_HERE, .item_number = (int32_t)b->first,
		                    .item = bench_line_name(t, b->line), LOT_VALUES(b)));
}

static void comes_back(struct bench_turn *t)
{
	bench_ask(t,
	          (struct bench_asked){
	              .what = BENCH_SEALED, .batch = t->in->batch, .n = 1, .other = t->in->label.room},
	          NULL);
}

enum bench_fitness label_usable(struct bench_turn *t)
{
	int32_t number = (int32_t)t->in->batch.first;
	if (t->in->label.state == LABEL_NOT_KNOWN)
		bench_refuse(t, SAY(LABEL_NOT_OF_RECORD, .item_number = number));
	else if (t->in->used_in)
		bench_refuse(t, SAY(LABEL_USED, .item_number = number, .case_no = t->in->used_in));
	else if (t->in->label.state == LABEL_GONE)
		bench_refuse(t, SAY(LABEL_IS_SPOILT, .item_number = number));
	else if (t->in->label.state == LABEL_THROWN)
		bench_refuse(t, SAY(LABEL_WRITTEN_OFF, .item_number = number));
	else
		return BENCH_FIT;
	return BENCH_UNFIT;
}

void label_scanned(struct bench_turn *t)
{
	if (label_usable(t) == BENCH_UNFIT)
		return;
	if (t->in->label.state == LABEL_PRINTED)
		read_back(t);
	else if (t->in->label.state == LABEL_ISSUED_TO)
		comes_back(t);
	else
		on_shelf(t);
}

/* --- spoilt and destroyed -------------------------------------------------------------------------- */

/* "41" or "41-44". */
static enum bench_fitness typed_range(struct bench_turn *t, int64_t *first, int64_t *last)
{
	int used = 0;
	const char *text = t->in->text;
	long long a = 0, b = 0;
	int n = strlen(text) < 20 ? sscanf(text, "%8lld-%8lld%n", &a, &b, &used) : 0;
	if (n == 1 && sscanf(text, "%8lld%n", &a, &used) == 1)
		b = a;
	if (n >= 1 && !text[used] && a >= 1 && a <= b && b - a < BENCH_LABELS_MAX) {
		*first = a;
		*last = b;
		return BENCH_FIT;
	}
	bench_refuse(t, SAY(LABELS_NOT_SO, .code = text, .most = BENCH_LABELS_MAX));
	return BENCH_UNFIT;
}

/* A label of an open printing whose fate may become this one: one that was read may still be torn up, but not one that a
 * case read with its pack. */
static int may_become(const struct printing *p, int64_t number)
{
	enum label_fate was = p ? (enum label_fate)p->fate[number - p->batch.first] : LABEL_SPOILT;
	return !was || was == LABEL_READ;
}

static void spoil(struct bench_turn *t, int64_t first, int64_t last)
{
	const struct printing *p = printing_with(t, first);
	int newly = 0;
	for (int64_t i = first; i <= last; i++) {
		if (printing_with(t, i) != p || !may_become(p, i)) {
			bench_refuse(t, SAY(LABEL_NOT_SO, .item_number = (int32_t)i));
			return;
		}
		newly += !p->fate[i - p->batch.first];
		put_fate(t, &p->batch, i, (enum label_fate)t->asked->n,
		         (enum label_fate)p->fate[i - p->batch.first]);
	}
	if (!open_after(p, newly)) {
		ask_box(t, p);
		return;
	}
	bench_close(t);
	bench_accept(t, SAY(LABELS_ARE_SPOILT, .item_number = (int32_t)first, .last_number = (int32_t)last,
	                    .n = open_after(p, newly)));
}

void bench_answer_LABEL_WHICH(struct bench_turn *t)
{
	int64_t first = t->in->batch.first, last = first;
	if (t->in->act != BENCH_TYPED && t->in->act != BENCH_LABEL)
		bench_unfit(t);
	else if (t->in->act == BENCH_LABEL || typed_range(t, &first, &last) == BENCH_FIT)
		spoil(t, first, last);
}

/* --- the box again --------------------------------------------------------------------------------- */

/* What its code does not say is not compared. */
static int is_of(const struct batch *labels, const struct batch *box)
{
	return strcmp(labels->line, box->line) == 0 && (!box->lot[0] || strcmp(labels->lot, box->lot) == 0) &&
	       (!box->expiry || labels->expiry == box->expiry);
}

static void close_with(struct bench_turn *t, const struct printing *p, const struct batch *box)
{
	if (!is_of(&p->batch, box)) {
		bench_refuse(
		    t, SAY(BOX_IS_ANOTHER, .item = bench_line_name(t, p->batch.line), LOT_VALUES(&p->batch)));
		return;
	}
	bench_close(t);
	BENCH_EMIT(t, .kind = EV_LABELS_CLOSED, .batch = p->batch, .person = bench_person(t));
	bench_accept(t, SAY(STOCK_IS_DONE));
}

void bench_answer_BOX_AGAIN(struct bench_turn *t)
{
	struct batch b;
	const struct printing *p =
	    t->asked->what ? printing_with(t, t->asked->batch.first) : stock_printing_at(t->s, t->in->room);
	if (!p) { /* it was closed at another bench */
		bench_close(t);
		bench_accept(t, SAY(STOCK_IS_DONE));
	} else if (t->in->act == BENCH_LABEL) {
		bench_unfit(t);
	} else if (bench_means(t, 1, &b) == BENCH_FIT) {
		close_with(t, p, &b);
	}
}
