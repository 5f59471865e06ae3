#include "decide/answer.h"

#include <string.h>

#include "decide/agree.h"
#include "decide/count-in.h"
#include "decide/deeds.h"
#include "decide/digit-clock.h"
#include "decide/end.h"
#include "decide/extra.h"
#include "decide/final-count.h"
#include "decide/handover.h"
#include "decide/item-in.h"
#include "decide/item-out.h"
#include "decide/other-sheet.h"
#include "decide/owed-after-end.h"
#include "decide/phrases.h"
#include "decide/search.h"
#include "decide/stored-answer.h"
#include "decide/visitor.h"
#include "decide/want.h"

/* --- what any question is answered with --------------------------------------------------------- */

static void leave(struct turn *t)
{
	turn_close_question(t);
	turn_say(t, SAY(R_LEFT_AS_IT_IS));
}

/* The question stands; the fact on the card is lost to nobody: it is refused in words. */
static void no_answer(struct turn *t)
{
	enum saying asked = question_saying(turn_asked(t));
	const char *words = saying_text(asked);
	turn_refuse(t, *words && words[strlen(words) - 1] == '?'
	                   ? SAY(NOT_AN_ANSWER, .card = t->in->card, .question = asked)
	                   : SAY(NOT_AN_ANSWER_STATED, .card = t->in->card, .question = asked));
}

/* --- a tourniquet and its digit ----------------------------------------------------------------- */

static void off_yes(struct turn *t)
{
	turn_refuse(t, SAY(YES_STOPS_NO_CLOCK));
}

static void off_no(struct turn *t)
{
	const struct digit *d = sheet_digit_const(t->s, t->s->asked.digit);
	turn_close_question(t);
	if (d && d->state == DIGIT_ON) /* no OFF is moved to before this */
		EMIT(t, .kind = EV_DIGIT_SEEN_ON, .digit = d->number, .n = SEEN_SAID);
	turn_say(t, SAY(R_STILL_ON));
}

static void off_off(struct turn *t)
{
	digit_take_off(t, t->s->asked.digit);
}

/* ADD instead of OFF: a second tourniquet on that digit. */
static void off_add(struct turn *t)
{
	digit_second_on(t, t->s->asked.digit);
}

static enum answered which_off_digit(struct turn *t)
{
	const struct digit *d = sheet_digit_const(t->s, t->in->digit);
	if (!d || (d->state != DIGIT_ON && d->state != DIGIT_MAYBE_ON))
		return ANSWERED_NOT;
	digit_take_off_as_asked(t, d->number);
	return ANSWERED;
}

/* It is timed from the scan that asked, not from the answer. */
static void is_on_yes(struct turn *t)
{
	int digit = t->s->asked.digit;
	turn_pay(t, DEBT_ON, 0, digit, PAID_IS_ON);
	digit_start_on(t, digit);
}

static void is_on_no(struct turn *t)
{
	digit_not_on(t, t->s->asked.digit);
}

static void is_on_misread(struct turn *t)
{
	const struct digit *d = sheet_digit_const(t->s, t->s->asked.digit);
	if (d && d->state == DIGIT_OFF)
		digit_never_off(t, d->number);
	else /* the wrong card was read: its clock belongs to another digit */
		turn_ask_saying(t, (struct asked){.what = Q_MOVE_TO, .digit = t->s->asked.digit},
		                SAY(R_MISREAD_THE, .digit = t->s->asked.digit));
}

static void right_digit_yes(struct turn *t)
{
	int digit = t->s->asked.digit;
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_RIGHT_DIGIT);
	turn_close_question(t);
	turn_say(t, SAY(R_DIGIT_RIGHT, .digit = digit));
}

static void right_digit_no(struct turn *t)
{
	int digit = t->s->asked.digit;
	turn_ask_saying(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit},
	                SAY(R_NOT_THE, .digit = digit));
}

static void move_yes(struct turn *t)
{
	if (t->s->asked.digit)
		digit_never_on(t, t->s->asked.digit);
	else
		no_answer(t);
}

/* A tourniquet that went on another digit than the marked one may have been entered as it was. */
static void move_no(struct turn *t)
{
	int digit = t->s->asked.digit;
	if (!debts_owes(&t->s->debts, (struct debt){.kind = DEBT_MARKED_DIGIT, .digit = (uint8_t)digit})) {
		leave(t);
		return;
	}
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_OTHER_DIGIT);
	turn_close_question(t);
	turn_say(t, SAY(R_NOT_MARKED_ONE, .digit = digit));
}

static enum answered move_digit(struct turn *t)
{
	if (!t->s->asked.digit) { /* nothing was timed that could move: this is a fact of its own */
		turn_close_question(t);
		return ANSWERED_NOT;
	}
	digit_move_to(t, t->in->digit);
	return ANSWERED;
}

/* A person who was read by mistake is put right as at a handover. */
static enum answered move_badge(struct turn *t, const struct person *p, enum team_place place)
{
	if (t->s->asked.digit || !place)
		return ANSWERED_NOT;
	return handover_out(t, p, place);
}

/* --- an item ------------------------------------------------------------------------------------ */

static enum answered move_thing(struct turn *t, int item)
{
	item_strike(t, item);
	return ANSWERED;
}

static enum answered returned_thing(struct turn *t, int item)
{
	item_give_back(t, item);
	return ANSWERED;
}

static enum answered isolate_thing(struct turn *t, int item)
{
	item_isolate(t, item);
	return ANSWERED;
}

static enum answered dropped_thing(struct turn *t, int item)
{
	if (!item && sheet_owes_listing(t->s))
		return ANSWERED_NOT;
	item_drop(t, item);
	return ANSWERED;
}

/* ADD, and what stands on the sheet. With a number it is that one. Without, while a count goes on, it may be the
 * wrapper of what is counted, or a further pack: only a person knows. */
static enum answered add_thing(struct turn *t, int item)
{
	const struct item *known = sheet_item_const(t->s, item);
	if (!known || sheet_owes_listing(t->s))
		return ANSWERED_NOT;
	if (!t->in->thing.identity[0]) {
		if (!sheet_is_counting(t->s))
			return ANSWERED_NOT;
		turn_ask_saying(t, (struct asked){.what = Q_COUNTED_IN, .item = (uint8_t)item, .n = CARD_ADD},
		                SAY(R_ONE_ON_SHEET, .item = known->thing.name));
		return ANSWERED;
	}
	turn_close_question(t);
	return ANSWERED_NOT;
}

static void rolls_on_yes(struct turn *t)
{
	int item = t->s->asked.item;
	turn_close_question(t);
	turn_pay(t, DEBT_ROLLS_ON, item, 0, PAID_WOUND);
	turn_owe(t, DEBT_SURGEON, item, 0);
	turn_say(t, SAY(R_ROLLS_ON));
}

static void rolls_on_no(struct turn *t)
{
	turn_pay(t, DEBT_ROLLS_ON, t->s->asked.item, 0, PAID_NO_WOUND);
	turn_close_question(t);
	turn_say(t, SAY(R_NO_WOUND));
}

static void no_code_is(struct turn *t, enum role role, enum saying called)
{
	turn_close_question(t);
	item_add_unlisted(t, role, called);
	turn_say(t, SAY(R_NO_CODE_IN, .item = t->s->items[t->s->n_items - 1].thing.name));
}

static void no_code_yes(struct turn *t)
{
	no_code_is(t, ROLE_TOURNIQUET, SAY_TOURNIQUET_NO_CODE);
}

static void no_code_no(struct turn *t)
{
	no_code_is(t, ROLE_OTHER, SAY_ITEM_NO_CODE);
}

static void extra_yes(struct turn *t)
{
	int item = t->s->asked.item;
	turn_close_question(t);
	extra_opened_here(t, item);
	final_progress(t);
}

static void extra_no(struct turn *t)
{
	turn_close_question(t);
	turn_say(t, SAY(R_EXTRA_UNKNOWN));
	final_progress(t);
}

/* A pack of the same line and lot, without a number, while another tourniquet is not listed: it may be the same pack
 * read again. The thing itself is told by the item that it is like. */
static void listed_already_yes(struct turn *t)
{
	struct thing th = sheet_item_const(t->s, t->s->asked.item)->thing;
	turn_close_question(t);
	turn_say(t, SAY(R_LISTED_ONCE, .item = th.name));
}

static void listed_already_no(struct turn *t)
{
	struct thing th = sheet_item_const(t->s, t->s->asked.item)->thing;
	int item = sheet_owes_listing(t->s);
	if (!item) {
		listed_already_yes(t);
		return;
	}
	turn_close_question(t);
	count_in_list_late(t, &th, item, NULL);
}

static void here_now_yes(struct turn *t)
{
	struct asked q = t->s->asked;
	int index = station_sheet_of_case(t->station, q.n);
	const struct item *it = index >= 0 ? sheet_item_const(&t->station->sheets[index], q.item) : NULL;
	if (!it || it->place != ITEM_HERE) {
		leave(t);
		return;
	}
	struct thing th = it->thing;
	turn_close_question(t);
	other_sheet_take_from(t, &th);
	count_in_pack(t, &th, it->pieces);
}

/* --- what was found ----------------------------------------------------------------------------- */

static void found_card(struct turn *t)
{
	if (t->s->asked.item)
		final_answer(t, t->in->card, 0);
	else
		no_answer(t);
}

static void found_no(struct turn *t)
{
	if (t->s->asked.item)
		search_ask_found(t, t->s->asked.item);
	else
		leave(t);
}

static enum answered found_thing(struct turn *t, int item)
{
	if (!item)
		return ANSWERED_NOT;
	final_mark(t, item);
	return ANSWERED;
}

/* The slip of the case that it comes from: for an item that bears no number (rule 21). */
static enum answered found_slip(struct turn *t)
{
	int32_t case_no = t->in->known.slip_case;
	if (t->s->asked.item || !case_no)
		return ANSWERED_NOT;
	if (other_sheet_is_open(t, case_no) == ANSWERED)
		return ANSWERED;
	turn_close_question(t);
	extra_of_case(t, case_no);
	return ANSWERED;
}

/* --- the end of a case -------------------------------------------------------------------------- */

static void leaves_yes(struct turn *t)
{
	EMIT(t, .kind = EV_PATIENT_LEFT);
	turn_close_question(t);
	turn_say(t, SAY(R_LEFT_ROOM));
	if (say_open(t))
		turn_say_more(t, SAY(R_TELL_SURGEON_AND_WARD));
}

static void who_looked_no(struct turn *t)
{
	turn_refuse(t, SAY(NO_IS_NOBODY));
}

static void point_yes(struct turn *t)
{
	sign_out_point(t, 1);
}

static void point_no(struct turn *t)
{
	sign_out_point(t, 0);
}

static void incident_owed(struct turn *t)
{
	case_end_unresolved(t, "");
}

static void incident_typed(struct turn *t)
{
	case_end_unresolved(t, t->in->text);
}

static enum answered witness_badge(struct turn *t, const struct person *p, enum team_place place)
{
	if (place == PLACE_CIRCULATING)
		sign_out_witnessed(t, p->number);
	else
		turn_refuse(t, SAY(CIRCULATING_WITNESSES));
	return ANSWERED;
}

/* --- the team ----------------------------------------------------------------------------------- */

static void handover_no(struct turn *t)
{
	turn_close_question(t);
	turn_say(t, SAY(R_NO_HANDOVER));
}

static enum answered handover_agree_badge(struct turn *t, const struct person *p, enum team_place place)
{
	if (!place && !t->s->single && !t->s->team.at[PLACE_CIRCULATING])
		return ANSWERED_NOT; /* joins first */
	handover_agree(t, p->number);
	return ANSWERED;
}

static enum answered field_too_badge(struct turn *t, const struct person *p, enum team_place place)
{
	if (place == PLACE_FIELD)
		count_agree(t, p->number);
	else
		turn_refuse(t, SAY(BOTH_BADGES_NEEDED));
	return ANSWERED;
}

static void visitor_is_surgeon(struct turn *t)
{
	visitor_is(t, 1);
}

static void visitor_is_none(struct turn *t)
{
	visitor_is(t, 0);
}

/* --- slips and stored scans --------------------------------------------------------------------- */

static void slip_here_yes(struct turn *t)
{
	const struct input *in = t->in;
	int i = station_room_index(t->station, in->room);
	if (in->known.unasked)
		turn_refuse_unasked(t);
	else if (in->known.slip.number != t->station->idle_n[i] || !in->known.paper.queued ||
	         in->known.paper.seen)
		leave(t);
	else {
		turn_close_question(t);
		turn_slip_seen(t, &in->known.slip, &in->known.paper);
	}
}

static void stored_yes(struct turn *t)
{
	stored_answer(t, 1);
}

static void stored_no(struct turn *t)
{
	stored_answer(t, 0);
}

static void twice_yes(struct turn *t)
{
	stored_meant(t, 1);
}

static void twice_no(struct turn *t)
{
	stored_meant(t, 0);
}

/* --- a row a question --------------------------------------------------------------------------- */

#define CARDS_AT_ONE 4

/* What it asks for, who may answer, and what that does. `yes` NULL: it says nothing here; `no` NULL: what is asked about is left as it is. */
struct answers {
	void (*deeds)(struct next *n, const struct sheet *s, const struct asked *q); /* NULL: YES and NO */
	void (*yes)(struct turn *t);
	void (*no)(struct turn *t);
	struct {
		int card;
		void (*then)(struct turn *t);
	} cards[CARDS_AT_ONE]; /* other ones */
	enum answered (*digit)(struct turn *t);
	enum answered (*badge)(struct turn *t, const struct person *p, enum team_place place);
	enum answered (*thing)(struct turn *t, int item);
	enum answered (*slip)(struct turn *t);
	void (*typed)(struct turn *t);
};

/* clang-format off */
static const struct answers
	OFF = {deeds_off, .yes = off_yes, .no = off_no, .cards = {{CARD_OFF, off_off}, {CARD_ADD, off_add}}},
	IS_ON = {deeds_is_on, .yes = is_on_yes, .no = is_on_no, .cards = {{CARD_MISREAD, is_on_misread}}},
	WHICH_OFF = {deeds_which_off, .digit = which_off_digit},
	RIGHT_DIGIT = {.yes = right_digit_yes, .no = right_digit_no},
	MOVE_TO = {deeds_move_to, .yes = move_yes, .no = move_no, .digit = move_digit, .thing = move_thing,
	           .badge = move_badge},
	ADD = {deeds_pack, .thing = add_thing},
	RETURNED = {deeds_pack, .thing = returned_thing},
	ISOLATE = {deeds_pack, .thing = isolate_thing},
	DROPPED = {deeds_mark, .thing = dropped_thing},
	ROLLS_ON = {.yes = rolls_on_yes, .no = rolls_on_no},
	NO_CODE = {.yes = no_code_yes, .no = no_code_no},
	EXTRA = {.yes = extra_yes, .no = extra_no},
	COUNTED_IN = {.yes = item_counted_in_yes, .no = item_counted_in_no},
	LISTED_ALREADY = {.yes = listed_already_yes, .no = listed_already_no},
	HERE_NOW = {.yes = here_now_yes},
	FOUND = {deeds_found, .yes = found_card, .no = found_no, .thing = found_thing, .slip = found_slip,
	         .cards = {{CARD_INTACT, found_card}, {CARD_CUT_AND_COMPLETE, found_card},
	                   {CARD_PIECES_MISSING, found_card}, {CARD_MARK_UNREADABLE, found_card}}},
	CANCEL = {.yes = case_cancel},
	LEAVES = {.yes = leaves_yes},
	WHO_LOOKED = {deeds_who_looked, .no = who_looked_no}, /* the cards WHO LOOKED say it, asked or not */
	POINT = {.yes = point_yes, .no = point_no, .cards = {{CARD_INTERRUPTED, sign_out_again}}},
	SURGEON_ENDS = {deeds_surgeon_ends, .badge = case_surgeon_ends},
	INCIDENT = {deeds_incident, .cards = {{CARD_NOT_DONE, incident_owed}}, .typed = incident_typed},
	WITNESS = {deeds_circulating, .badge = witness_badge},
	HANDOVER_OUT = {deeds_anybody, .no = handover_no, .badge = handover_out},
	HANDOVER_STAYS = {deeds_anybody, .no = handover_no, .badge = handover_stays},
	HANDOVER_IN = {deeds_anybody, .no = handover_no, .badge = handover_in},
	HANDOVER_SEEN = {deeds_handover_seen, .no = no_answer, .digit = handover_seen_on,
	                 .cards = {{CARD_WITHOUT_FULL_SIGHT, handover_without_sight}}},
	HANDOVER_AGREE = {deeds_handover_agree, .no = no_answer, .badge = handover_agree_badge}, /* begun, it is owed */
	FIELD_TOO = {deeds_field, .badge = field_too_badge},
	VISITOR = {deeds_circulating, .badge = visitor_vouch},
	VISITOR_IS_SURGEON = {.yes = visitor_is_surgeon, .no = visitor_is_none, .badge = visitor_first},
	SLIP_HERE = {.yes = slip_here_yes},
	STORED = {.yes = stored_yes, .no = stored_no},
	TWICE = {.yes = twice_yes, .no = twice_no};
/* clang-format on */

static const struct answers *const rows[QUESTION_KINDS] = {
#define X(name, text, about) [Q_##name] = &name,
    QUESTIONS(X)
#undef X
};

/* The row of what is asked here; one that nothing answers where nothing is. */
static const struct answers *row_of(const struct turn *t)
{
	static const struct answers none;
	enum question q = turn_asked(t);
	return q ? rows[q] : &none;
}

void answer_deeds(struct next *n, const struct sheet *s, const struct asked *q)
{
	void (*deeds)(struct next *, const struct sheet *, const struct asked *) = rows[q->what]->deeds;
	(deeds ? deeds : deeds_yes_no)(n, s, q);
}

/* A room without a case asks nothing that a card has to answer besides YES and NO. */
enum answered answer_card(struct turn *t)
{
	const struct answers *row = row_of(t);
	int card = t->in->card;
	for (int i = 0; turn_has_case(t) && i < CARDS_AT_ONE; i++)
		if (row->cards[i].then && row->cards[i].card == card) {
			row->cards[i].then(t);
			return ANSWERED;
		}
	if (!turn_asked(t) || (card != CARD_YES && card != CARD_NO))
		return ANSWERED_NOT;
	void (*then)(struct turn *) = card == CARD_YES ? row->yes : row->no;
	if (then)
		then(t);
	else if (card == CARD_YES)
		no_answer(t);
	else
		leave(t);
	return ANSWERED;
}

enum answered answer_digit(struct turn *t)
{
	const struct answers *row = row_of(t);
	return row->digit ? row->digit(t) : ANSWERED_NOT;
}

int answer_is_digit(const struct turn *t)
{
	return row_of(t)->digit != NULL;
}

enum answered answer_badge(struct turn *t, const struct person *p, enum team_place place)
{
	const struct answers *row = row_of(t);
	return row->badge ? row->badge(t, p, place) : ANSWERED_NOT;
}

enum answered answer_thing(struct turn *t, int item)
{
	const struct answers *row = row_of(t);
	return row->thing ? row->thing(t, item) : ANSWERED_NOT;
}

enum answered answer_slip(struct turn *t)
{
	const struct answers *row = row_of(t);
	return row->slip ? row->slip(t) : ANSWERED_NOT;
}

enum answered answer_typed(struct turn *t)
{
	const struct answers *row = row_of(t);
	if (!row->typed)
		return ANSWERED_NOT;
	row->typed(t);
	return ANSWERED;
}
