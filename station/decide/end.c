#include "decide/end.h"

#include <stdio.h>

#include "count/rule.h"
#include "decide/joining.h"
#include "decide/owed-after-end.h"
#include "decide/phrases.h"

/* Each item is marked used in its case, so that a later scan of it can be answered (rules 4, 21). */
static void mark_used(struct turn *t)
{
	for (int i = 1; i <= t->s->n_items; i++) {
		const struct item *it = &t->s->items[i - 1];
		if (it->thing.identity[0] && (item_counts(it) || it->place == ITEM_ISOLATED))
			EMIT(t, .kind = EV_ITEM_USED, .item = (uint8_t)i, .thing = it->thing,
			     .n = it->place == ITEM_ACCOUNTED || it->place == ITEM_ISOLATED);
	}
}

void turn_end_case(struct turn *t, enum case_end how, enum end_why why, const char *typed)
{
	int32_t case_no = t->s->case_no;
	mark_used(t);
	struct event e = {.kind = EV_CASE_ENDED, .what = (uint8_t)how, .other = (int32_t)why};
	snprintf(e.text, sizeof e.text, "%s", typed);
	turn_emit(t, &e);
	turn_queue_slip(t, SLIP_RECONCILIATION, case_no);
}

static void emit_point(struct turn *t, int point, int yes)
{
	struct event e = {.kind = EV_POINT, .n = point, .what = (uint8_t)(yes ? POINT_YES : POINT_NO)};
	snprintf(e.text, sizeof e.text, "%s", t->station->policy.points[point - 1]);
	turn_emit(t, &e);
}

/* The badge answers together what was not answered one by one; each is kept as it stood on the board. */
static void answer_the_rest(struct turn *t)
{
	for (int point = t->s->points_yes + 1; point <= t->station->policy.n_points; point++)
		emit_point(t, point, 1);
}

/* Said while the sheet is there. */
static void say_ended(struct turn *t, enum saying how)
{
	turn_say(t, &(const struct say){.saying = how, .case_no = t->s->case_no});
	say_accounted(t);
	say_seen_bare(t);
}

static void finish(struct turn *t, int32_t badge, int32_t witness)
{
	EMIT(t, .kind = EV_SIGNED_OUT, .person = badge, .other = witness);
	answer_the_rest(t);
	if (t->s->unfollowed) { /* the station does not know all of it (rule 26) */
		say_ended(t, SAY_R_ENDED_BY_HAND);
		turn_end_case(t, END_UNRESOLVED, END_NOT_FOLLOWED, "");
	} else if (t->s->cancelled) {
		say_ended(t, SAY_R_ENDED_CANCELLED);
		turn_end_case(t, END_CANCELLED, END_TYPED, "");
	} else {
		say_ended(t, SAY_R_ENDED_RECONCILED);
		turn_end_case(t, END_RECONCILED, END_TYPED, "");
	}
}

static void ask_point(struct turn *t, int32_t badge, int point)
{
	turn_ask_saying(t, (struct asked){.what = Q_POINT, .person = badge, .n = point},
	                SAY(R_POINT, .n = point, .all = t->station->policy.n_points,
	                    .step = t->station->policy.points[point - 1]));
}

/* NO where the points are to be answered together: then they are asked one by one, and the badge comes after.
 */
void sign_out_ask_points(struct turn *t)
{
	ask_point(t, 0, 1);
}

/* A visiting surgeon's card is no badge: the circulating badge is its witness, and the slip says so. */
static void sign(struct turn *t, int32_t badge)
{
	if (badge < 0 && !t->s->single)
		turn_ask_saying(t, (struct asked){.what = Q_WITNESS, .person = badge},
		                SAY(R_SIGNS_OUT, .person = staff_name(&t->station->staff, badge)));
	else
		finish(t, badge, 0);
}

void sign_out_witnessed(struct turn *t, int32_t witness)
{
	int32_t visitor = t->s->asked.person;
	turn_close_question(t);
	finish(t, visitor, witness);
}

void sign_out_begin(struct turn *t, int32_t badge)
{
	if (!ready_to_sign_out(t->s)) {
		struct say why = rule_1_owed(t->s);
		why.why = why.saying;
		why.saying = SAY_NOT_YET_SIGN_OUT;
		turn_refuse(t, &why);
		return;
	}
	if (t->station->policy.points_one_by_one && t->station->policy.n_points &&
	    t->s->points_yes != t->station->policy.n_points)
		ask_point(t, badge, 1);
	else
		sign(t, badge);
}

void sign_out_again(struct turn *t)
{
	int32_t badge = t->s->asked.person;
	turn_close_question(t);
	if (badge)
		sign_out_begin(t, badge);
	else
		sign_out_ask_points(t);
}

/* YES or NO to a sign-out point. A NO holds the sign-out; it then begins again from the first. */
void sign_out_point(struct turn *t, int yes)
{
	int point = t->s->asked.n;
	int32_t badge = t->s->asked.person;
	emit_point(t, point, yes);
	turn_close_question(t);
	if (!yes)
		turn_say(t, SAY(R_HELD_AT, .n = point, .step = t->station->policy.points[point - 1]));
	else if (point < t->station->policy.n_points)
		ask_point(t, badge, point + 1);
	else if (!badge)
		turn_say(t, SAY(R_POINTS_YES));
	else
		sign(t, badge);
}

void case_cancel(struct turn *t)
{
	int32_t case_no = t->s->case_no;
	turn_close_question(t);
	if (sheet_holds_any(t->s)) {
		EMIT(t, .kind = EV_CANCELLED);
		turn_say(t, SAY(R_CANCELLED, .case_no = case_no));
		bool open = say_open(t);
		turn_say_more(t, open ? SAY(R_COUNT_STILL_OWED) : SAY(R_COUNT_OWED_OPENED));
		return;
	}
	EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_NOTHING_OPENED);
	turn_say(t, SAY(R_ENDED_EMPTY, .case_no = case_no));
}

void case_end_unresolved(struct turn *t, const char *number)
{
	struct after_unresolved after = after_of_sheet(t->s);
	int32_t case_no = t->s->case_no, surgeon = t->s->asked.person, witness = t->s->asked.n;
	turn_say(t, *number ? SAY(R_ENDED_UNRESOLVED, .case_no = case_no, .typed = number)
	                    : SAY(R_ENDED_NUMBER_OWED, .case_no = case_no));
	say_accounted(t);
	turn_close_question(t);
	turn_owe(t, DEBT_INCIDENT, 0, 0);
	if (*number)
		turn_pay_typed(t, DEBT_INCIDENT, number);
	EMIT(t, .kind = EV_SIGNED_OUT, .person = surgeon, .other = witness);
	turn_end_case(t, END_UNRESOLVED, *number ? END_TYPED : END_NUMBER_OWED, number);
	after_end_unresolved(t, &after);
}

enum answered case_surgeon_ends(struct turn *t, const struct person *p, enum team_place place)
{
	/* a digit card opened it, and nobody has badged in yet */
	int nobody =
	    t->s->single && !place && !t->s->team.at[PLACE_FIELD] && p->registered && p->kind != STAFF_CHARGE;
	int alone = nobody || (t->s->single && place == PLACE_FIELD);
	int visiting = p->number < 0 && place == PLACE_SURGEON;
	int32_t field = t->s->team.at[PLACE_FIELD];
	if (p->kind != STAFF_SURGEON && t->s->single && field && !alone && !visiting) {
		person_refuse_for(t, p->number, SAY(ALONE_ENDS_UNRESOLVED, .person = turn_name_of(t, field)));
		return ANSWERED;
	}
	if (p->kind != STAFF_SURGEON && !alone && !visiting) {
		turn_refuse(t, SAY(SURGEON_ENDS_UNRESOLVED));
		return ANSWERED;
	}
	if (!place)
		person_join(t, p->number, nobody ? PLACE_FIELD : PLACE_SURGEON);
	turn_ask_saying(t, (struct asked){.what = Q_INCIDENT, .person = p->number},
	                SAY(R_ENDS_UNRESOLVED, .person = p->name));
	return ANSWERED;
}
