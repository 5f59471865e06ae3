/* What goes to rooms and comes back, what is counted on the shelf, and what is thrown away. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "stock/bench-turn.h"

#define REASON_MAX 81

/* --- to a room ------------------------------------------------------------------------------------- */

void shelf_card(struct bench_turn *t)
{
	int32_t room = own_card_says(t->in->card);
	if (!station_room_is(t->st, room, ROOM_OF_CASES))
		bench_refuse(t, SAY(STOCK_NO_ROOM, .n = room));
	else
		bench_ask(t, (struct bench_asked){.what = BENCH_ISSUE, .other = room}, NULL);
}

/* `lot`: NULL there is none. What waits lies there, so that no count finds a difference. */
static void refuse_few(struct bench_turn *t, const struct batch *b, const struct stock_lot *lot, int32_t n)
{
	const char *name = bench_line_name(t, b->line);
	int32_t most = lot ? lot->shelf : 0;
	if (lot && lot->waits)
		bench_refuse(t, SAY(STOCK_WAITS, .n = lot->waits, .most = most, .item = name, LOT_VALUES(b)));
	else
		bench_refuse(t, SAY(STOCK_TOO_FEW, .most = most, .n = n, .item = name, LOT_VALUES(b)));
}

/* Stores rule 3. */
static void issue(struct bench_turn *t, const struct batch *b, int32_t packs)
{
	const struct stock_lot *lot = stock_lot_of(t->s, b);
	const char *name = bench_line_name(t, b->line);
	enum saying why = lot ? stock_withheld(t->st, lot, t->in->today) : SAY_NONE;
	if (why) {
		bench_refuse(t, SAY(STOCK_WITHHELD, .item = name, .why = why, LOT_VALUES(b)));
		return;
	}
	if (!lot || lot->shelf < packs) {
		refuse_few(t, b, lot, packs);
		return;
	}
	const struct stock_lot *earlier = stock_earlier(t->s, t->st, b->line, b->expiry, t->in->today);
	BENCH_EMIT(t, .kind = EV_ISSUED, .batch = *b, .n = packs, .other = t->asked->other,
	           .person = bench_person(t));
	struct say said = *SAY(STOCK_ISSUED, .room = station_room_name(t->st, t->asked->other), .n = packs,
	                       .item = name, LOT_VALUES(b));
	if (earlier) {
		said.then = SAY_THEN_EARLIER;
		said.other_lot = earlier->lot;
		said.other_date = earlier->expiry;
	}
	bench_accept(t, &said);
}

static void issue_label(struct bench_turn *t)
{
	int32_t number = (int32_t)t->in->batch.first;
	if (label_usable(t) == BENCH_UNFIT)
		return;
	if (t->in->label.state == LABEL_PRINTED)
		bench_refuse(t, SAY(LABEL_NOT_READ, .item_number = number));
	else if (t->in->label.state == LABEL_ISSUED_TO && t->in->label.room == t->asked->other)
		bench_refuse(t, SAY(LABEL_ISSUED_ALREADY, .item_number = number,
		                    .room = station_room_name(t->st, t->asked->other)));
	else if (t->in->label.state == LABEL_ISSUED_TO)
		bench_refuse(t, SAY(LABEL_IN_ROOM, .item_number = number,
		                    .other_room = station_room_name(t->st, t->in->label.room)));
	else
		issue(t, &t->in->batch, 1);
}

void bench_answer_ISSUE(struct bench_turn *t)
{
	struct batch b;
	if (t->in->act == BENCH_CARD && own_card_group(t->in->card) == CARDS_TO_ROOM) {
		shelf_card(t);
		return;
	}
	if (t->in->act == BENCH_LABEL) {
		issue_label(t);
		return;
	}
	if (bench_means(t, 0, &b) == BENCH_UNFIT)
		return;
	const struct line *l = bench_line(t, b.line);
	if (l && l->label != LABEL_NEVER)
		bench_refuse(t, SAY(ISSUED_BY_LABEL, .item = l->name));
	else
		issue(t, &b, t->in->act == BENCH_PACK ? t->in->packs : 1);
}

/* --- back from a room ------------------------------------------------------------------------------ */

void bench_answer_RETURN_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (t->in->act == BENCH_LABEL) {
		if (label_usable(t) == BENCH_UNFIT)
			return;
		if (t->in->label.state != LABEL_ISSUED_TO)
			bench_refuse(
			    t, SAY(STOCK_OF_THIS_ROOM_ONLY, .item_number = (int32_t)t->in->batch.first));
		else
			label_scanned(t);
		return;
	}
	if (bench_means(t, 0, &b) == BENCH_FIT)
		bench_ask(t, (struct bench_asked){.what = BENCH_RETURN_FROM, .batch = b, .n = 1}, NULL);
}

void bench_answer_RETURN_FROM(struct bench_turn *t)
{
	int32_t room = t->in->act == BENCH_CARD && own_card_group(t->in->card) == CARDS_TO_ROOM
	                   ? own_card_says(t->in->card)
	                   : 0;
	struct bench_asked q = *t->asked;
	if (!room) {
		bench_unfit(t);
		return;
	}
	if (!station_room_is(t->st, room, ROOM_OF_CASES)) {
		bench_refuse(t, SAY(STOCK_NO_ROOM, .n = room));
		return;
	}
	q.what = BENCH_SEALED;
	q.other = room;
	bench_ask(t, q, NULL);
}

/* It counts as there; what is not issued does not lie among what is. */
static void put_back(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	const struct stock_lot *lot = stock_lot_of(t->s, &q->batch);
	const char *name = bench_line_name(t, q->batch.line);
	enum saying why = lot ? stock_withheld(t->st, lot, t->in->today) : SAY_NONE;
	BENCH_EMIT(t, .kind = EV_PUT_BACK, .batch = q->batch, .n = q->n, .other = q->other,
	           .person = bench_person(t));
	if (why)
		bench_accept(t, SAY(STOCK_BACK_APART, .item = name, .why = why, LOT_VALUES(&q->batch)));
	else
		bench_accept(t, SAY(STOCK_PUT_BACK, .item = name, LOT_VALUES(&q->batch)));
}

/* Stores rule 6. What is not sealed, dry and clean is thrown away there. */
void bench_answer_SEALED(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	const char *name = bench_line_name(t, q->batch.line);
	if (t->in->act != BENCH_CARD || (t->in->card != CARD_YES && t->in->card != CARD_NO)) {
		bench_unfit(t);
		return;
	}
	bench_close(t);
	if (t->in->card == CARD_YES) {
		put_back(t);
		return;
	}
	BENCH_EMIT(t, .kind = EV_WRITTEN_OFF, .batch = q->batch, .n = q->n, .what = WRITTEN_NOT_SEALED,
	           .other = q->other, .person = bench_person(t));
	bench_accept(t, SAY(STOCK_NOT_SEALED, .item = name, LOT_VALUES(&q->batch)));
}

/* --- the shelf counted ----------------------------------------------------------------------------- */

void bench_answer_COUNT_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (bench_means(t, 0, &b) == BENCH_UNFIT)
		return;
	b.first = b.last = 0;
	const struct stock_lot *lot = stock_lot_of(t->s, &b);
	bench_ask(t, (struct bench_asked){.what = BENCH_COUNT_MANY, .batch = b, .n = lot ? lot->waits : 0},
	          NULL);
}

void bench_answer_COUNT_MANY(struct bench_turn *t)
{
	const struct batch *b = &t->asked->batch;
	const struct stock_lot none = {0}, *lot = stock_lot_of(t->s, b);
	int32_t n = bench_number(t, BENCH_PACKS_MAX);
	if (n < 0)
		return;
	if (!lot)
		lot = &none;
	int32_t most = lot->shelf + lot->waits;
	bench_close(t);
	BENCH_EMIT(t, .kind = EV_STOCK_COUNTED, .batch = *b, .n = n, .what = COUNTED_WITH_WAITING,
	           .person = bench_person(t));
	struct say said =
	    *SAY(STOCK_COUNTED, .n = n, .item = bench_line_name(t, b->line), .most = most,
	         .received = lot->received, .labelled = lot->labelled, .issued = lot->issued,
	         .opened = lot->opened, .returned = lot->returned, .written_off = lot->written_off,
	         .unaccounted = lot->unaccounted + most - n, LOT_VALUES(b));
	if (lot->waits && n)
		said.then = SAY_THEN_WAIT;
	bench_accept(t, &said);
}

/* --- thrown away ----------------------------------------------------------------------------------- */

static void ask_why(struct bench_turn *t, const struct batch *b, int32_t n, int32_t place)
{
	bench_ask(t, (struct bench_asked){.what = BENCH_WRITE_WHY, .batch = *b, .n = n, .other = place},
	          NULL);
}

void bench_answer_WRITE_WHAT(struct bench_turn *t)
{
	struct batch b;
	if (t->in->act == BENCH_LABEL) {
		if (label_usable(t) == BENCH_FIT)
			ask_why(t, &t->in->batch, 1,
			        t->in->label.state == LABEL_ISSUED_TO ? t->in->label.room : 0);
		return;
	}
	if (bench_means(t, 0, &b) == BENCH_UNFIT)
		return;
	bench_ask(t, (struct bench_asked){.what = BENCH_WRITE_MANY, .batch = b}, NULL);
}

void bench_answer_WRITE_MANY(struct bench_turn *t)
{
	const struct batch *b = &t->asked->batch;
	const struct stock_lot *lot = stock_lot_of(t->s, b);
	int32_t n = bench_number(t, BENCH_PACKS_MAX);
	if (n < 0)
		return;
	if (n == 0) {
		bench_close(t);
		bench_accept(t, SAY(STOCK_LEFT));
	} else if (!lot || lot->shelf < n) {
		refuse_few(t, b, lot, n);
	} else {
		ask_why(t, b, n, 0);
	}
}

void bench_answer_WRITE_WHY(struct bench_turn *t)
{
	const struct bench_asked *q = t->asked;
	const struct stock_lot *lot = stock_lot_of(t->s, &q->batch);
	if (bench_text(t, REASON_MAX) == BENCH_UNFIT)
		return;
	if (!q->other && (!lot || lot->shelf < q->n)) { /* taken at another bench meanwhile */
		refuse_few(t, &q->batch, lot, q->n);
		bench_close(t);
		return;
	}
	struct event e = {.kind = EV_WRITTEN_OFF,
	                  .what = WRITTEN_SAID,
	                  .batch = q->batch,
	                  .n = q->n,
	                  .other = q->other,
	                  .person = bench_person(t)};
	snprintf(e.text, sizeof e.text, "%s", t->in->text);
	bench_close(t);
	bench_emit(t, &e);
	bench_accept(t, SAY(STOCK_WRITTEN_OFF, .n = q->n, .item = bench_line_name(t, q->batch.line),
	                    .reason = t->in->text, LOT_VALUES(&q->batch)));
}
