/* What a bench asks for, with its deeds: the ordinary one first (rule 23 of the count). */
#include <string.h>

#include "code/own-codes.h"
#include "stock/bench.h"

#define CARD(card, why) ((struct deed){.kind = DEED_CARD, .n = CARD_##card, .truth = TRUTH_##why})
#define DO(what, why) ((struct deed){.kind = DEED_##what, .truth = TRUTH_##why})

static enum saying saying_of(enum bench_question question)
{
	switch (question) {
#define X(name, text)                                                                                        \
	case BENCH_##name:                                                                                   \
		return SAY_BENCH_##name;
		BENCH_QUESTIONS(X)
#undef X
	case BENCH_NOTHING:
	case BENCH_QUESTION_KINDS:
		break;
	}
	return SAY_BENCH_IDLE;
}

struct say bench_question_say(const struct station *st, const struct bench_asked *q)
{
	const struct line *l = catalogue_by_key(&st->catalogue, q->batch.line);
	return (struct say){
	    .saying = q->what == BENCH_COUNT_MANY && q->n ? SAY_BENCH_COUNT_WAITING
	                                                  : saying_of((enum bench_question)q->what),
	    .what = q->what != BENCH_PRINT_AGAIN ? SAY_NONE
	            : q->batch.lot[0]            ? SAY_OF_LOT_ALL_EXPIRIES
	                                         : SAY_OF_NO_LOT,
	    .n = q->what == BENCH_HOW_MANY ? q->other : q->n,
	    .item = l ? l->name : q->batch.line,
	    .lot = q->batch.lot,
	    .date = q->batch.expiry,
	    .room = station_room_name(st, q->other),
	    .person = staff_name(&st->staff, q->person),
	};
}

/* Where the last label was read in a room, nobody was asked for the box. */
int bench_waits_for_box(const struct stock *s, int32_t room)
{
	const struct printing *p = stock_printing_at(s, room);
	return stock_bench(s, room)->asked.what == BENCH_NOTHING && p && !printing_open(p);
}

int bench_wants_text(const struct stock *s, int32_t room)
{
	switch ((enum bench_question)stock_bench(s, room)->asked.what) {
	case BENCH_RECEIVE_WHAT:
	case BENCH_LOT:
	case BENCH_EXPIRY:
	case BENCH_HOW_MANY:
	case BENCH_CONFIRM_WHAT:
	case BENCH_PRINT_WHAT:
	case BENCH_PRINT_MANY:
	case BENCH_LABEL_WHICH:
	case BENCH_BOX_AGAIN:
	case BENCH_ISSUE:
	case BENCH_RETURN_WHAT:
	case BENCH_COUNT_WHAT:
	case BENCH_COUNT_MANY:
	case BENCH_WRITE_WHAT:
	case BENCH_WRITE_MANY:
	case BENCH_WRITE_WHY:
	case BENCH_QUARANTINE_WHAT:
	case BENCH_QUARANTINE_WHY:
	case BENCH_NOTICE:
	case BENCH_RELEASE_WHAT:
	case BENCH_FOUND:
		return 1;
	case BENCH_SO_MANY:
	case BENCH_TYPED_BY:
	case BENCH_SECOND:
	case BENCH_RETURN_FROM:
	case BENCH_SEALED:
	case BENCH_QUARANTINE_LOT:
	case BENCH_RELEASE_FIRST:
	case BENCH_RELEASE_SECOND:
	case BENCH_FOUND_OF:
	case BENCH_PRINT_AGAIN:
	case BENCH_QUESTION_KINDS:
		break;
	case BENCH_NOTHING:
		return bench_waits_for_box(s, room);
	}
	return 0;
}

static void add_numbers(struct next *n)
{
	next_add(n, CARD(NUMBER_1, SO));
	next_add(n, CARD(NUMBER_2, SO));
	next_add(n, CARD(NUMBER_5, SO));
	next_add(n, CARD(NUMBER_10, SO));
	next_add(n, DO(TYPE, OTHER_NUMBER));
}

static void add_what(struct next *n, enum truth why)
{
	next_add(n, (struct deed){.kind = DEED_PACK, .truth = (uint8_t)why});
	next_add(n, DO(TYPE, NOT_SCANNED));
}

static void add_deeds(enum bench_question q, struct next *n)
{
	switch (q) {
	case BENCH_RECEIVE_WHAT:
	case BENCH_CONFIRM_WHAT:
	case BENCH_PRINT_WHAT:
	case BENCH_RETURN_WHAT:
	case BENCH_COUNT_WHAT:
	case BENCH_WRITE_WHAT:
	case BENCH_QUARANTINE_WHAT:
	case BENCH_RELEASE_WHAT:
	case BENCH_BOX_AGAIN:
		add_what(n, TRUTH_SO);
		break;
	case BENCH_LOT:
	case BENCH_EXPIRY:
	case BENCH_WRITE_WHY:
	case BENCH_QUARANTINE_WHY:
		next_add(n, DO(TYPE, TYPED));
		break;
	case BENCH_HOW_MANY:
	case BENCH_PRINT_MANY:
	case BENCH_COUNT_MANY:
	case BENCH_WRITE_MANY:
		add_numbers(n);
		break;
	case BENCH_SO_MANY:
		next_add(n, CARD(YES, YES));
		next_add(n, CARD(NO, NO));
		return;
	case BENCH_SEALED:
	case BENCH_QUARANTINE_LOT:
	case BENCH_PRINT_AGAIN:
		next_add(n, CARD(YES, YES));
		next_add(n, CARD(NO, NO));
		break;
	case BENCH_TYPED_BY:
	case BENCH_RELEASE_FIRST:
	case BENCH_RELEASE_SECOND:
		next_add(n, DO(BADGE, SO));
		break;
	case BENCH_SECOND:
		next_add(n, DO(BADGE, SO));
		next_add(n, CARD(NOBODY_TO_CONFIRM, NOBODY_HERE));
		break;
	case BENCH_LABEL_WHICH:
		add_what(n, TRUTH_SO);
		break;
	case BENCH_ISSUE:
		add_what(n, TRUTH_TO_ISSUE);
		next_add(n, CARD(DONE, ALL_DONE));
		return;
	case BENCH_RETURN_FROM:
		next_add(n, (struct deed){.kind = DEED_CARD, .n = CARD_TO_ROOM + 1, .truth = TRUTH_ROOM_OF});
		break;
	case BENCH_NOTICE:
		next_add(n, DO(TYPE, TYPED));
		next_add(n, CARD(NO, NO_NOTICE));
		break;
	case BENCH_FOUND:
		add_what(n, TRUTH_FOUND);
		next_add(n, DO(SLIP, CASE_KNOWN));
		break;
	case BENCH_FOUND_OF:
		next_add(n, DO(SLIP, SO));
		break;
	case BENCH_NOTHING:
	case BENCH_QUESTION_KINDS:
		return;
	}
	next_add(n, CARD(DONE, LEFT));
}

/* Labels that wait come first: a label that nobody read back is on a pack that looks ready. */
static void idle(const struct stock *s, const struct station *st, int32_t room, struct next *n)
{
	const struct printing *p = stock_printing_at(s, room);
	int open = p ? printing_open(p) : 0;
	struct bench_asked about = {0};
	if (p)
		about.batch = p->batch;
	struct say head = bench_question_say(st, &about);
	if (open) {
		head.saying = SAY_BENCH_READ_BACK;
		head.n = open;
		head.what = head.lot[0] ? SAY_OF_LOT_ALL_EXPIRIES : SAY_OF_NO_LOT;
		next_say(n, &head);
		next_add(n, DO(MARK, LABEL));
		next_add(n, CARD(SPOILT_LABEL, ONE_SPOILT));
		next_add(n, CARD(PRINT_LABELS, NOT_OUT));
		return;
	}
	if (p) {
		head.saying = SAY_BENCH_BOX_AGAIN;
		next_say(n, &head);
		next_add(n, DO(PACK, SO));
		return;
	}
	next_say(n, &head);
	next_add(n, DO(PACK, SO));
	next_add(n, CARD(PRINT_LABELS, TO_LABEL));
	next_add(n, CARD(RETURNED_PACK, CAME_BACK));
	next_add(n, CARD(COUNT_SHELF, TO_COUNT));
	next_add(n, CARD(QUARANTINE, NOT_TO_USE));
	next_add(n, CARD(FOUND, FOUND_HERE));
}

void bench_next(const struct stock *s, const struct station *st, int32_t room, struct next *out)
{
	static const struct sheet none;
	const struct bench_asked *q = &stock_bench(s, room)->asked;
	if (q->what) {
		struct say head = bench_question_say(st, q);
		next_say(out, &head);
		add_deeds((enum bench_question)q->what, out);
	} else {
		idle(s, st, room, out);
	}
	next_word(out, &none, 0);
}
