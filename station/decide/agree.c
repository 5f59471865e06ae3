#include "decide/agree.h"

#include "decide/final-count.h"
#include "decide/joining.h"
#include "decide/want.h"

static void say_agreed(struct turn *t, enum count_kind kind, int32_t field, int32_t circulating,
                       int32_t recorder)
{
	static const enum saying sayings[] = {[COUNT_INITIAL] = SAY_R_AGREED_INITIAL,
	                                      [COUNT_FINAL] = SAY_R_AGREED_FINAL,
	                                      [COUNT_HANDOVER] = SAY_R_AGREED_HANDOVER,
	                                      [COUNT_ADDED] = SAY_R_AGREED_ADDED};
	turn_say(t, &(const struct say){.saying = sayings[kind],
	                                .person = turn_name_of(t, field),
	                                .other_person = turn_name_of(t, circulating),
	                                .recorder = turn_name_of(t, recorder)});
}

static void agreed(struct turn *t, enum count_kind kind, int32_t recorded_by)
{
	int32_t field = t->s->team.at[PLACE_FIELD], circulating = t->s->team.at[PLACE_CIRCULATING];
	if (kind == COUNT_FINAL && t->s->discrepancy) /* what was missing has left this sheet */
		EMIT(t, .kind = EV_DISCREPANCY, .n = 0);
	EMIT(t, .kind = EV_COUNT_AGREED, .what = (uint8_t)kind, .person = field, .other = circulating,
	     .n = recorded_by);
	if (debts_has(&t->s->debts, DEBT_ADDED))
		turn_pay(t, DEBT_ADDED, 0, 0, PAID_AGREED);
	if (kind == COUNT_INITIAL && debts_has(&t->s->debts, DEBT_COUNT))
		turn_pay(t, DEBT_COUNT, 0, 0, PAID_AGREED_LATE);
	turn_close_question(t);
	say_agreed(t, kind, field, circulating, recorded_by);
}

/* The count that the board asks for (want.c). */
static enum count_kind pending(const struct turn *t)
{
	struct want w = sheet_wants(t->station, t->s);
	if (t->s->asked.what == Q_FIELD_TOO)
		return (enum count_kind)t->s->asked.n;
	if (w.kind == WANT_FINAL_AGREED)
		return COUNT_FINAL;
	if (w.kind == WANT_COUNT_IN && t->s->n_items)
		return COUNT_INITIAL;
	if (w.kind == WANT_DEBT && w.debt.kind == DEBT_COUNT)
		return COUNT_INITIAL;
	if (w.kind == WANT_DEBT && w.debt.kind == DEBT_HANDOVER)
		return COUNT_HANDOVER;
	return w.kind == WANT_DEBT && w.debt.kind == DEBT_ADDED ? COUNT_ADDED : 0;
}

/* A tourniquet that no pack or catalogue lists was named aloud; the badge records that it was. */
void listing_named_aloud(struct turn *t)
{
	const struct debt *d = debts_find(&t->s->debts, DEBT_LISTING);
	turn_pay(t, DEBT_LISTING, d->item, 0, PAID_NAMED);
	turn_close_question(t);
	turn_say(t, SAY(R_NAMED_ALOUD));
}

/* The circulating badge, or under a policy of both badges the second of the two. */
void count_agree(struct turn *t, int32_t badge)
{
	enum count_kind kind = pending(t);
	enum saying why = team_may_not_agree(&t->s->team, &t->station->staff);
	if (kind == COUNT_HANDOVER) {
		handover_agree(t, badge);
		return;
	}
	if (!kind) {
		turn_refuse(t, SAY(NOTHING_COUNTED_IN));
		return;
	}
	if (why) {
		turn_refuse(t, SAY(COUNT_NOT_AGREED, .why = why));
		return;
	}
	if (kind == COUNT_FINAL && !sheet_is_ready_to_agree(t->s)) {
		turn_refuse(t, SAY(FINAL_UNFINISHED));
		return;
	}
	if (t->station->policy.both_badges && t->s->asked.what != Q_FIELD_TOO) {
		turn_ask_saying(t, (struct asked){.what = Q_FIELD_TOO, .n = (int32_t)kind, .person = badge},
		                kind == COUNT_INITIAL ? SAY(R_READ_INITIAL)
		                : kind == COUNT_FINAL ? SAY(R_READ_FINAL)
		                                      : SAY(R_READ_ADDED));
		return;
	}
	int32_t recorded = t->s->asked.what == Q_FIELD_TOO ? t->s->asked.person : badge;
	agreed(t, kind, recorded);
}

/* A lone operator's badge states the count that is owed (rule 8: 'single-person' throughout). */
void count_state_alone(struct turn *t, enum debt_kind kind)
{
	int32_t who = t->s->team.at[PLACE_FIELD];
	int which = kind == DEBT_ADDED ? 1 : kind == DEBT_HANDOVER ? 2 : 0;
	EMIT(t, .kind = EV_COUNT_AGREED,
	     .what = which == 1   ? COUNT_ADDED
	             : which == 2 ? COUNT_HANDOVER
	                          : COUNT_INITIAL,
	     .person = who, .n = who);
	turn_pay(t, kind, 0, 0, which ? PAID_BY_OPERATOR : PAID_BY_OPERATOR_LATE);
	turn_say(t, which == 1   ? SAY(R_ALONE_ADDED, .person = turn_name_of(t, who))
	            : which == 2 ? SAY(R_ALONE_HANDOVER, .person = turn_name_of(t, who))
	                         : SAY(R_ALONE_INITIAL, .person = turn_name_of(t, who)));
}

/* Its last line was answered in another way than by the operator's scan. */
void count_state_final(struct turn *t, int32_t badge)
{
	final_state_alone(t);
	if (t->s->final == FINAL_AGREED)
		turn_say(t, SAY(R_ALONE_FINAL, .person = turn_name_of(t, badge)));
	else
		turn_refuse(t, SAY(FINAL_UNFINISHED));
}

/* A handover count that was begun is owed until it is agreed. */
void handover_agree(struct turn *t, int32_t badge)
{
	int32_t field = t->s->team.at[PLACE_FIELD], records = t->s->team.at[PLACE_CIRCULATING];
	enum saying why = t->s->single ? SAY_NONE : team_may_not_agree(&t->s->team, &t->station->staff);
	if (why) {
		turn_refuse(t, SAY(HANDOVER_NOT_AGREED, .why = why));
		return;
	}
	if (t->s->single && badge != field) {
		person_refuse_for(t, badge, SAY(WORKS_ALONE_COUNTS, .person = turn_name_of(t, field)));
		return;
	}
	if (t->s->single) {
		turn_close_question(t);
		count_state_alone(t, DEBT_HANDOVER);
		return;
	}
	if (badge != records) {
		person_refuse_for(t, badge, SAY(RECORDS_HANDOVER, .person = turn_name_of(t, records)));
		return;
	}
	EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_HANDOVER, .person = field, .other = badge, .n = badge);
	turn_pay(t, DEBT_HANDOVER, 0, 0, PAID_AGREED);
	turn_close_question(t);
	say_agreed(t, COUNT_HANDOVER, field, badge, badge);
}
