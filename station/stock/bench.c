/* The turn of a scan at a bench: what answers it. */
#include "stock/bench.h"

#include "stock/bench-turn.h"

/* --- what answers ---------------------------------------------------------------------------------- */

/* Where NO is no answer, it leaves the question as DONE does. */
static int no_answers(enum bench_question q)
{
	return q == BENCH_SEALED || q == BENCH_QUARANTINE_LOT || q == BENCH_NOTICE || q == BENCH_PRINT_AGAIN;
}

static int leaves(const struct bench_turn *t)
{
	return t->in->act == BENCH_CARD &&
	       (t->in->card == CARD_DONE ||
	        (t->in->card == CARD_NO && !no_answers((enum bench_question)t->asked->what)));
}

static void answer(struct bench_turn *t)
{
	switch ((enum bench_question)t->asked->what) {
#define X(name, text)                                                                                        \
	case BENCH_##name:                                                                                   \
		bench_answer_##name(t);                                                                      \
		return;
		BENCH_QUESTIONS(X)
#undef X
	case BENCH_NOTHING:
	case BENCH_QUESTION_KINDS:
		break;
	}
}

static void leave(struct bench_turn *t)
{
	bench_close(t);
	if (t->asked->what == BENCH_ISSUE)
		bench_accept(t, SAY(STOCK_IS_DONE));
	else
		bench_accept(t, SAY(STOCK_LEFT));
}

static void start(struct bench_turn *t)
{
	static const struct {
		int card;
		enum bench_question asks;
		int32_t n;
	} cards[] = {
	    {CARD_RECEIVE, BENCH_RECEIVE_WHAT, 0},
	    {CARD_CONFIRM, BENCH_CONFIRM_WHAT, 0},
	    {CARD_SPOILT_LABEL, BENCH_LABEL_WHICH, LABEL_SPOILT},
	    {CARD_DESTROYED_LABEL, BENCH_LABEL_WHICH, LABEL_DESTROYED},
	    {CARD_RETURNED_PACK, BENCH_RETURN_WHAT, 0},
	    {CARD_COUNT_SHELF, BENCH_COUNT_WHAT, 0},
	    {CARD_WRITE_OFF, BENCH_WRITE_WHAT, 0},
	    {CARD_QUARANTINE, BENCH_QUARANTINE_WHAT, 0},
	    {CARD_RELEASE, BENCH_RELEASE_WHAT, 0},
	    {CARD_FOUND, BENCH_FOUND, 0},
	};
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		if (cards[i].card == t->in->card) {
			bench_ask(t, (struct bench_asked){.what = (uint8_t)cards[i].asks, .n = cards[i].n},
			          NULL);
			return;
		}
	if (t->in->card == CARD_PRINT_LABELS)
		label_card(t);
	else if (own_card_group(t->in->card) == CARDS_TO_ROOM)
		shelf_card(t);
	else if (own_card_name(t->in->card)[0])
		bench_refuse(t, SAY(CARD_ANSWERS_NOTHING, .card = t->in->card));
	else
		bench_refuse(t, SAY(STOCK_NO_USE));
}

static void idle(struct bench_turn *t)
{
	switch (t->in->act) {
	case BENCH_CARD:
		start(t);
		return;
	case BENCH_BADGE:
		if (bench_badge(t) == BENCH_UNFIT)
			return;
		BENCH_EMIT(t, .kind = EV_BENCH_PERSON, .person = t->in->number);
		bench_accept(t, SAY(STOCK_PERSON, .person = staff_name(&t->st->staff, t->in->number)));
		return;
	case BENCH_PACK:
		receive_pack(t, &t->in->batch, t->in->packs, 0);
		return;
	case BENCH_LABEL:
		label_scanned(t);
		return;
	case BENCH_TYPED:
		if (bench_waits_for_box(t->s, t->in->room))
			bench_answer_BOX_AGAIN(t);
		else
			bench_refuse(t, SAY(NO_TEXT_ASKED));
		return;
	case BENCH_SLIP:
	case BENCH_OTHER:
		bench_refuse(t, SAY(STOCK_NO_USE));
		return;
	}
}

void bench_decide(const struct stock *s, const struct station *st, const struct bench_input *in,
                  struct bench_outcome *out)
{
	const struct bench *bench = stock_bench(s, in->room);
	struct bench_turn t = {s, st, in, bench, &bench->asked, out};
	out->count = 0;
	out->said[0] = 0;
	out->what = (struct said){0};
	if (in->again)
		bench_accept(&t, SAY(STOCK_READ_TWICE));
	else if (in->act == BENCH_CARD && in->card == CARD_UNDO)
		bench_refuse(&t, SAY(STOCK_NO_UNDO));
	else if (t.asked->what && leaves(&t))
		leave(&t);
	else if (t.asked->what)
		answer(&t);
	else
		idle(&t);
}
