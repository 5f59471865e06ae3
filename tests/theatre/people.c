/* People: they know what the board says and what lies before them, and do the deed that fits. What they do besides (doubt,
 * run on, say what is not so) comes from the seed.
 */
#include <string.h>

#include "checks.h"
#include "decide/next.h"
#include "hands.h"

#define SCANS_MAX 260 /* in one operation; who scans more is lost */

/* --- scanning -------------------------------------------------------------------------------------- */

static void scan(struct play *p, struct actor *a, const struct scanned *c, const struct deed *asked,
                 int reports)
{
	int group = p->next_group++;
	if (group >= GROUPS_MAX)
		return;
	a->pending = *c;
	a->awaiting = group;
	a->tries = 0;
	a->scans++;
	struct intent in = {
	    .code = *c, .asked = asked, .group = group, .reports = reports, .at_ms = p->stage->true_ms};
	scan_by(p, a, &in);
	hands_later(p, a, 1200, 7000);
	if (p->troubles & TROUBLE_AGAIN && c->act != ACT_TYPED && in_hundred(&p->chance, 8)) {
		in.at_ms += between(&p->chance, 2000, 30000); /* in doubt, before anything else */
		in.kind = READ_AGAIN;
		scan_by(p, a, &in);
		a->wake_ms = in.at_ms + between(&p->chance, 600, 4000);
	}
}

static void scan_again(struct play *p, struct actor *a)
{
	a->tries++;
	struct intent in = {.code = a->pending,
	                    .kind = READ_AGAIN,
	                    .group = a->awaiting,
	                    .reports = -1,
	                    .at_ms = p->stage->true_ms};
	scan_by(p, a, &in);
	hands_later(p, a, 2500, 9000);
}

static void scan_this_room(struct play *p, struct actor *a)
{
	struct intent in = {.code = scan_card(&p->stage->world, a->op, CARD_THIS_ROOM),
	                    .group = p->next_group++,
	                    .reports = -1,
	                    .at_ms = p->stage->true_ms};
	scan_by(p, a, &in);
	hands_later(p, a, 1500, 4000);
	a->tries = 0;
}

/* What the board showed of the last scan. 1 where people have dealt with it, and nothing further is done now. */
static int look_at_board(struct play *p, struct actor *a)
{
	const struct told *told = &p->stage->told[hands_room(p, a)];
	if (a->awaiting < 0)
		return 0;
	int answered = p->heard[a->awaiting] == hands_room(p, a) + 1;
	int elsewhere = stage_works_for(p->stage, a->scanner) != hands_operation(p, a)->room;
	if (answered && told->verdict == VERDICT_REFUSED && strstr(told->said, "scan THIS ROOM of")) {
		scan_this_room(p, a);
		p->heard[a->awaiting] = 0;
		return 1;
	}
	if (!answered && elsewhere) {
		scan_this_room(p, a);
		return 1;
	}
	if (!answered && a->tries < 12) {
		if (p->troubles & TROUBLE_MISSED && !a->tries && in_hundred(&p->chance, 50)) {
			hands_cause(p, a, CAUSE_MISSED, a->pending.act == ACT_THING ? a->pending.thing : -1);
			a->awaiting = -1;
			return 0;
		}
		scan_again(p, a);
		return 1;
	}
	a->awaiting = -1;
	return 0;
}

/* The board shows what nobody here scanned, or not what was meant: it is contradicted at once. */
static int contradicts(struct play *p, struct actor *a)
{
	struct told *told = &p->stage->told[hands_room(p, a)];
	int foreign = told->operation >= 0 && told->operation != a->op && told->facts;
	int neighbour = a->undo && told->facts && told->read == READ_NEIGHBOUR;
	if (a->undo && !neighbour) /* it is too late to see it on the board */
		hands_cause(p, a, CAUSE_NEIGHBOUR, -1);
	a->undo = 0;
	if (!foreign && !neighbour)
		return 0;
	told->operation = (int8_t)a->op;
	if (neighbour && a->pending.act == ACT_DIGIT) /* what was meant is told once more */
		a->report_on = a->reported;
	struct scanned c = scan_card(&p->stage->world, a->op, CARD_UNDO);
	a->undoing = foreign ? 2 : 1;
	scan(p, a, &c, NULL, -1);
	return 1;
}

static void after_undo(struct play *p, struct actor *a)
{
	const struct told *told = &p->stage->told[hands_room(p, a)];
	int failed = told->verdict == VERDICT_REFUSED || !told->facts;
	if (a->undoing == 1 && failed)
		hands_cause(p, a, CAUSE_NEIGHBOUR, -1);
	else if (a->undoing == 2 && !failed)
		hands_change(p, a->op, CHANGE_CONTRADICTED, 0);
	a->undoing = 0;
}

/* What was lost in an earlier operation turns up here: its mark is scanned, or FOUND and the slip. */
static int finds_anothers(struct play *p, struct actor *a)
{
	for (int i = 0; i < p->stage->world.n_operations; i++) {
		struct plan *other = &p->plans[i];
		if (other->turns_up_in != a->op || !p->stage->world.operations[i].ended || other->lose >= -1)
			continue;
		int thing = -2 - other->lose;
		struct scanned c = {.act = ACT_THING, .thing = (int8_t)thing};
		other->turns_up_in = -1;
		if (!p->stage->world.things[thing].by_mark || !p->stage->world.things[thing].entered ||
		    !p->stage->world.things[thing].readable)
			return 0;
		scan(p, a, &c, NULL, -1);
		return 1;
	}
	return 0;
}

/* --- scans that nobody asked for ---------------------------------------------------------------------- */

static int another_order(struct play *p, struct actor *a)
{
	static const int cards[] = {
	    CARD_FINAL_COUNT, CARD_AWAKE_PATIENT,  CARD_INTERRUPTED,          CARD_FOUND,
	    CARD_MISREAD,     CARD_CANCEL,         CARD_RETURNED_UNOPENED,    CARD_DROPPED,
	    CARD_HANDOVER,    CARD_SUSPEND,        CARD_DRESSING_ALREADY_ON,  CARD_ADD,
	    CARD_NEXT,        CARD_PATIENT_LEAVES, CARD_WRONG_NUMBER_IN_PACK, CARD_STEP_DONE};
	struct operation *o = hands_operation(p, a);
	struct scanned c;
	if (!(p->troubles & TROUBLE_ORDER) || !in_hundred(&p->chance, 6))
		return 0;
	int which = one_of(&p->chance, 24), on = hands_one_on(p, a);
	const struct sheet *s = hands_sheet(p, a);
	if ((which >= 18 && which <= 20 && !s->team.at[hands_room(p, a) ? PLACE_FIELD : PLACE_CIRCULATING]) ||
	    (which < 16 && cards[which] == CARD_MISREAD && s->asked.what)) /* it would be an answer */
		return 0;
	if (which < 16)
		c = scan_card(&p->stage->world, a->op, cards[which]);
	else if (which < 18 && on >= 0)
		c = scan_digit(&p->stage->world, a->op, p->stage->world.things[on].digit);
	else if (which < 20)
		c = scan_badge(o->field);
	else if (which == 20)
		c = scan_badge(hands_room(p, a) ? 2 : 6);
	else if (which == 21)
		c = (struct scanned){.act = ACT_PATIENT, .thing = -1};
	else if (p->stage->world.n_things && p->stage->world.things[0].of == a->op &&
	         !p->stage->world.things[0].no_code)
		c = (struct scanned){.act = ACT_THING, .thing = 0};
	else
		return 0;
	scan(p, a, &c, NULL, -1);
	return 1;
}

static void run_on(struct play *p, struct actor *a, struct intent *in)
{
	in->group = p->next_group++;
	scan_by(p, a, in);
	in->at_ms += between(&p->chance, 400, 900);
}

/* Answers to all that is asked, one after the other, without looking up; a badge lies beside the page. Only where all
 * is there: who runs answers while something is missing says what is not so. */
static int answers_in_a_row(struct play *p, struct actor *a)
{
	const struct sheet *s = hands_sheet(p, a);
	struct operation *o = hands_operation(p, a);
	if (!(p->troubles & TROUBLE_HASTE) || s->final != FINAL_ASKING || s->asked.what ||
	    !in_hundred(&p->chance, 40))
		return 0;
	for (int i = 0; i < p->stage->world.n_things; i++)
		if (p->stage->world.things[i].of == a->op &&
		    (p->stage->world.things[i].where == LOST || p->stage->world.things[i].where == ON_DIGIT ||
		     p->stage->world.things[i].whole != WHOLE))
			return 0;
	struct intent in = {.reports = -1, .at_ms = p->stage->true_ms};
	for (int i = 1; i <= s->n_items && p->n_queue < QUEUE_MAX - 8; i++) {
		const struct item *it = &s->items[i - 1];
		if (!sheet_is_asked(s, i))
			continue;
		int number = sheet_alike_open(s, i);
		if (world_at_hand(&p->stage->world, a->op, s, i).intact < number)
			continue;
		int card = number > 1 && number <= 10          ? CARD_SHOWN_1 - 1 + number
		           : it->thing.role == ROLE_TOURNIQUET ? CARD_INTACT
		                                               : CARD_YES;
		in.code = scan_card(&p->stage->world, a->op, card);
		run_on(p, a, &in);
		in.code = scan_badge(o->circulating ? o->circulating : o->field);
		if (in_hundred(&p->chance, 30))
			run_on(p, a, &in);
	}
	a->awaiting = -1;
	a->scans++;
	a->wake_ms = in.at_ms + between(&p->chance, 1000, 4000);
	return 1;
}

static int relief(struct play *p, struct actor *a)
{
	struct plan *plan = &p->plans[a->op];
	struct operation *o = hands_operation(p, a);
	const struct sheet *s = hands_sheet(p, a);
	if (o->comes && team_place_of(&s->team, o->comes)) {
		hands_change(p, a->op, CHANGE_RELIEVED, 0);
		return 0;
	}
	if (!plan->relief || a->scans < plan->relief || s->final != FINAL_NONE || s->asked.what ||
	    !s->initial_agreed)
		return 0;
	plan->relief = 0;
	struct scanned c = scan_card(&p->stage->world, a->op, CARD_HANDOVER);
	hands_change(p, a->op, CHANGE_LEAVES, one_of(&p->chance, 2) ? o->field : o->circulating);
	scan(p, a, &c, NULL, -1);
	return 1;
}

/* --- going by the board -------------------------------------------------------------------------------- */

static int lies(struct play *p, struct actor *a, const struct next *n, int fits, struct scanned *c)
{
	const struct deed *d = &n->deeds[0];
	int shown = d->truth == TRUTH_INTACT || d->truth == TRUTH_SHOWN || d->truth == TRUTH_SHOWN_ALONE ||
	            d->truth == TRUTH_ALL_INTACT || d->truth == TRUTH_ALL_SHOWN || d->truth == TRUTH_OFF;
	if (!(p->troubles & TROUBLE_FALSE) || fits <= 0 || !shown || d->kind != DEED_CARD ||
	    !in_hundred(&p->chance, 50))
		return 0;
	*c = scan_card(&p->stage->world, a->op, d->n);
	hands_cause(p, a, CAUSE_FALSE, -1);
	return 1;
}

static int waits_to_go_on(const struct next *n)
{
	for (int i = 0; i < n->n_deeds; i++)
		if (n->deeds[i].kind == DEED_DIGIT && n->deeds[i].truth == TRUTH_ON)
			return 1;
	return 0;
}

/* The sheet has one on that is off: that is told first. */
static int owes_an_off(struct play *p, const struct actor *a)
{
	const struct sheet *s = hands_sheet(p, a);
	for (int i = 0; i < s->n_digits; i++)
		if (digit_runs(&s->digits[i]) && !hands_operation(p, a)->roots[s->digits[i].number].bands)
			return 1;
	return 0;
}

static int goes_on_now(struct play *p, struct actor *a, const struct next *n)
{
	struct plan *plan = &p->plans[a->op];
	const struct sheet *s = hands_sheet(p, a);
	if (plan->puts_done == plan->n_puts || owes_an_off(p, a) || s->suspended)
		return 0;
	if (plan->puts_done == 0)
		return waits_to_go_on(n) || (plan->early && a->scans >= one_of(&p->chance, 5)) ||
		       (s->final == FINAL_NONE && s->n_digits && !s->asked.what);
	return hands_one_on(p, a) >= 0 ? in_hundred(&p->chance, 25)
	                               : waits_to_go_on(n) || s->final == FINAL_NONE;
}

/* It bleeds: the tourniquet goes on once more, at the count, the look or the sign-out. */
static int goes_on_again(struct play *p, struct actor *a)
{
	struct plan *plan = &p->plans[a->op];
	const struct sheet *s = hands_sheet(p, a);
	int now = plan->again == 1   ? s->final == FINAL_NONE
	          : plan->again == 2 ? s->final == FINAL_ASKING
	          : plan->again == 3 ? s->final == FINAL_AGREED && sheet_next_look(s)
	                             : s->final == FINAL_AGREED && !sheet_next_look(s);
	if (!plan->again || owes_an_off(p, a) || plan->puts_done < plan->n_puts || hands_one_on(p, a) >= 0 ||
	    !now || !sheet_digits_had(s))
		return 0;
	const struct put *put = &plan->puts[0];
	plan->again = 0;
	a->reports = hands_move(p, a, put->thing, ON_DIGIT, put->digit, WHOLE);
	a->report_on = put->digit;
	a->off_ms = p->stage->true_ms + between(&p->chance, 1, 12) * 60000;
	hands_later(p, a, 800, 15000);
	return 1;
}

/* The case does not end. Where scans of the other room stand on the sheet that nobody contradicted, the board cannot
 * know better, and people fetch each other; those runs are only counted. */
static void stuck(struct play *p, const struct actor *a, const char *how)
{
	p->given_up = 1;
	if (!hands_operation(p, a)->causes[CAUSE_ELSEWHERE])
		stage_fail(p->stage, check_name(CHECK_NO_DEAD_END),
		           "people are stuck, and nothing fits what is so: %s", how);
}

static void wait_or_move(struct play *p, struct actor *a, const struct next *n)
{
	int on = hands_one_on(p, a);
	if (on >= 0 && (p->stage->true_ms >= a->off_ms || a->idle > 60)) {
		hands_take_off(p, a, on);
	} else if (on >= 0) {
		int64_t left = a->off_ms - p->stage->true_ms;
		a->idle++;
		hands_later(p, a, left < 240000 ? left : 60000, left < 240000 ? left : 240000);
	} else if (++a->idle > 6) {
		stuck(p, a, n->words);
	} else {
		hands_later(p, a, 3000, 20000);
	}
}

static void go_by_the_board(struct play *p, struct actor *a)
{
	struct next n;
	struct scanned c;
	const struct sheet *s = hands_sheet(p, a);
	next_step(&p->stage->st, s, hands_operation(p, a)->room, p->stage->now, &n);
	if (!a->report_on && goes_on_now(p, a, &n)) {
		hands_put_on(p, a);
		return;
	}
	int fits = first_that_fits(&p->stage->world, a->op, &p->stage->st, s, &n, &c);
	if (fits >= 0 && p->plans[a->op].skip_on && n.deeds[fits].truth == TRUTH_ON)
		fits = -1;
	if (fits < 0) {
		wait_or_move(p, a, &n);
		return;
	}
	a->idle = 0;
	if (lies(p, a, &n, fits, &c))
		scan(p, a, &c, NULL, -1);
	else
		scan(p, a, &c, &n.deeds[fits], -1);
}

/* Facts first: its digit card, or what the board asks where that tells the same. */
static void tell_that_it_is_on(struct play *p, struct actor *a)
{
	struct next n;
	struct scanned c;
	const struct sheet *s = hands_sheet(p, a);
	int digit = a->report_on;
	a->report_on = 0;
	a->reported = digit;
	next_step(&p->stage->st, s, hands_operation(p, a)->room, p->stage->now, &n);
	const struct deed *d = that_it_is_on(&p->stage->world, a->op, &p->stage->st, s, &n, digit, &c);
	scan(p, a, &c, d, a->reports);
}

/* A case that a scanner of the other room opened here. */
static int cancels_what_is_not_theirs(struct play *p, struct actor *a)
{
	const struct sheet *s = hands_sheet(p, a);
	if (!s->case_no || world_of_case(&p->stage->world, s->case_no) >= 0)
		return 0;
	if (s->cancelled) { /* and what lies on that sheet is not theirs to count */
		p->given_up = 1;
		return 1;
	}
	struct scanned c =
	    scan_card(&p->stage->world, a->op, s->asked.what == Q_CANCEL ? CARD_YES : CARD_CANCEL);
	scan(p, a, &c, NULL, -1);
	return 1;
}

/* --- one after the other -------------------------------------------------------------------------------- */

static int next_operation(struct play *p, int room)
{
	struct actor *a = &p->people[room];
	for (int i = 0; i < p->stage->world.n_operations; i++)
		if (p->plans[i].room == room && i > a->op) {
			a->op = i;
			a->scans = a->idle = a->report_on = a->reported = a->refused = 0;
			a->awaiting = -1;
			hands_change(p, i, CHANGE_CURRENT, i);
			hands_later(p, a, 500, 60000);
			return 1;
		}
	a->wake_ms = INT64_MAX;
	return 0;
}

/* A pack that was refused is put aside; what is on a digit already is told first. */
static void put_aside(struct play *p, struct actor *a)
{
	const struct told *told = &p->stage->told[hands_room(p, a)];
	if (a->pending.act == ACT_THING && told->verdict == VERDICT_REFUSED && told->operation == a->op &&
	    p->stage->world.things[a->pending.thing].where == ON_DIGIT &&
	    strstr(told->said, "on a digit already")) { /* the reply says what comes first */
		p->plans[a->op].skip_on = 0;
		a->unlisted = 1;
		a->report_on = p->stage->world.things[a->pending.thing].digit;
	}
	if (a->pending.act == ACT_THING && told->verdict == VERDICT_REFUSED && told->operation == a->op &&
	    p->stage->world.things[a->pending.thing].where != ON_DIGIT &&
	    !p->stage->world.things[a->pending.thing].entered && !strstr(told->said, "ADD") &&
	    strstr(told->said, "Take it off the field") &&
	    (!strstr(told->said, "on the open sheet of") || ++a->refused > 3))
		hands_move(p, a, a->pending.thing, AWAY, 0, WHOLE);
	if (a->pending.act == ACT_THING && told->operation == a->op && strstr(told->said, "NEXT, then this"))
		a->next_between = 1;
	if (a->pending.act == ACT_BADGE && told->verdict == VERDICT_REFUSED && told->operation == a->op &&
	    strstr(told->said, "scan HANDOVER, then this badge"))
		a->takes_over = 1;
	a->pending.act = ACT_TICK;
}

static int is_over(struct play *p, const struct actor *a)
{
	const struct operation *o = hands_operation(p, a);
	return o->ended && (o->slips <= 0 || !station_unseen_in(&p->stage->st, o->room));
}

void people_act(struct play *p, int room)
{
	struct actor *a = &p->people[room];
	a->wake_ms = p->stage->true_ms + 1000;
	if (a->op < 0 || is_over(p, a)) {
		next_operation(p, room);
		return;
	}
	if (a->scans > SCANS_MAX) {
		stuck(p, a, "the scans do not end");
		return;
	}
	if (look_at_board(p, a))
		return;
	if (a->undoing)
		after_undo(p, a);
	if (a->next_between) {
		struct scanned c = scan_card(&p->stage->world, a->op, CARD_NEXT);
		a->next_between = 0;
		scan(p, a, &c, NULL, -1);
		return;
	}
	if (a->takes_over) {
		struct scanned c = scan_card(&p->stage->world, a->op, CARD_HANDOVER);
		a->takes_over = 0;
		scan(p, a, &c, NULL, -1);
		return;
	}
	if (a->unlisted) {
		struct scanned c = scan_card(&p->stage->world, a->op, CARD_UNLISTED_TOURNIQUET);
		a->unlisted = 0;
		scan(p, a, &c, NULL, -1);
		return;
	}
	if (contradicts(p, a))
		return;
	put_aside(p, a);
	hands_lose_or_find(p, a);
	if (cancels_what_is_not_theirs(p, a))
		return;
	if (hands_sheet(p, a)->suspended) {
		go_by_the_board(p, a);
		return;
	}
	if (a->report_on && hands_sheet(p, a)->asked.what != Q_MOVE_TO) {
		tell_that_it_is_on(p, a);
		return;
	}
	if (goes_on_again(p, a) || relief(p, a) || finds_anothers(p, a) || another_order(p, a) ||
	    answers_in_a_row(p, a))
		return;
	go_by_the_board(p, a);
}
