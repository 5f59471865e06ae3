/* The sign-out and the ends of a case (rules 1, 15, 16). */
#include <stdio.h>
#include <string.h>

#include "base/name.h"
#include "count/rule.h"
#include "decide/turn.h"

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

/* The look is a second piece of evidence, said beside the count and never merged with it (rule 11). */
static void add_seen_bare(const struct sheet *s, char *words, size_t size)
{
	for (int i = 0; i < s->n_digits; i++) {
		size_t used = strlen(words);
		if (s->digits[i].seen_bare)
			snprintf(words + used, size - used, "%s%s seen bare", used ? "; " : "",
			         own_digit_name(s->digits[i].number));
	}
}

static void emit_point(struct turn *t, int point, int yes)
{
	struct event e = {.kind = EV_POINT, .n = point, .what = (uint8_t)(yes ? 1 : 2)};
	snprintf(e.text, sizeof e.text, "%s", t->station->policy.points[point - 1]);
	turn_emit(t, &e);
}

/* The badge answers together what was not answered one by one; each is kept as it stood on the board. */
static void answer_the_rest(struct turn *t)
{
	for (int point = t->s->points_yes + 1; point <= t->station->policy.n_points; point++)
		emit_point(t, point, 1);
}

static void finish(struct turn *t, int32_t badge, int32_t witness)
{
	char words[SAID_MAX];
	int32_t case_no = t->s->case_no;
	sheet_accounted_words(t->s, words, sizeof words);
	add_seen_bare(t->s, words, sizeof words);
	sentence_capital(words);
	EMIT(t, .kind = EV_SIGNED_OUT, .person = badge, .other = witness);
	answer_the_rest(t);
	if (t->s->unfollowed) { /* the station does not know all of it (rule 26) */
		turn_end_case(t, END_UNRESOLVED, END_NOT_FOLLOWED, "");
		turn_accept(t, "Case %d ended, counted by hand. What the station saw: %.280s.", (int)case_no,
		            words);
		return;
	}
	enum case_end how = t->s->cancelled ? END_CANCELLED : END_RECONCILED;
	turn_end_case(t, how, END_TYPED, "");
	turn_accept(t, "Case %d ended %s. %.300s.", (int)case_no,
	            how == END_CANCELLED ? "as cancelled" : "reconciled", words);
}

static void ask_point(struct turn *t, int32_t badge, int point)
{
	turn_ask(t, (struct asked){.what = Q_POINT, .person = badge, .n = point},
	         "Sign-out point %d of %d: %s", point, t->station->policy.n_points,
	         t->station->policy.points[point - 1]);
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
		turn_ask(t, (struct asked){.what = Q_WITNESS, .person = badge}, "%s signs out.",
		         staff_name(&t->station->staff, badge));
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

/* YES or NO to a sign-out point. A NO holds the sign-out; it then begins again from the first. */
static void answer_point(struct turn *t, int yes)
{
	int point = t->s->asked.n;
	int32_t badge = t->s->asked.person;
	emit_point(t, point, yes);
	turn_close_question(t);
	if (!yes)
		turn_accept(t, "Sign-out held at point %d: %s", point, t->station->policy.points[point - 1]);
	else if (point < t->station->policy.n_points)
		ask_point(t, badge, point + 1);
	else if (!badge)
		turn_accept(t, "Each sign-out point is answered YES.");
	else
		sign(t, badge);
}

static void cancel_yes(struct turn *t)
{
	int32_t case_no = t->s->case_no;
	turn_close_question(t);
	if (sheet_holds_any(t->s)) {
		char open[OPEN_WORDS_MAX];
		EMIT(t, .kind = EV_CANCELLED);
		if (*sheet_open_words(t, open))
			turn_accept(t, "Case %d is cancelled.%s A count is still owed.", (int)case_no, open);
		else
			turn_accept(t, "Case %d is cancelled. A pack was opened, so a count is still owed.",
			            (int)case_no);
		return;
	}
	EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_NOTHING_OPENED);
	turn_accept(t, "Case %d ended as cancelled; nothing was counted in.", (int)case_no);
}

static void end_unresolved(struct turn *t, const char *number)
{
	char words[SAID_MAX];
	int32_t case_no = t->s->case_no, surgeon = t->s->asked.person, witness = t->s->asked.n;
	sheet_accounted_words(t->s, words, sizeof words);
	sentence_capital(words);
	turn_close_question(t);
	turn_owe(t, DEBT_INCIDENT, 0, 0);
	if (*number)
		turn_pay_typed(t, DEBT_INCIDENT, number);
	EMIT(t, .kind = EV_SIGNED_OUT, .person = surgeon, .other = witness);
	turn_end_case(t, END_UNRESOLVED, *number ? END_TYPED : END_NUMBER_OWED, number);
	turn_accept(t, "Case %d ended UNRESOLVED, incident number %s. %.280s.", (int)case_no,
	            *number ? number : "owed", words);
}

static void is_not_on(struct turn *t, int digit)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	int32_t case_no = t->s->case_no;
	int had = d && d->had;
	EMIT(t, .kind = EV_DIGIT_NOT_ON, .digit = (uint8_t)digit);
	turn_pay(t, DEBT_ON, 0, digit, PAID_NOT_ON);
	turn_close_question(t);
	if (sheet_is_empty(t->s)) {
		EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_NOTHING_OPENED);
		turn_accept(t, "Not on: %s. Case %d ended as cancelled; nothing was counted in.",
		            own_digit_name(digit), (int)case_no);
	} else if (!had && !t->s->initial_agreed) {
		EMIT(t, .kind = EV_DIGIT_MARKED, .digit = (uint8_t)digit);
		turn_accept(t, "Marked digit: %s.", own_digit_name(digit));
	} else if (had && search_is_look_step(t) && sheet_digits_had(t->s) == 1) {
		search_answered(t, 1);
	} else {
		turn_accept(t, "Not on: %s.", own_digit_name(digit));
	}
}

/* It is timed from the scan that asked, not from the answer. */
static void answer_is_on(struct turn *t, int yes)
{
	int digit = t->s->asked.digit;
	if (!yes) {
		is_not_on(t, digit);
		return;
	}
	turn_pay(t, DEBT_ON, 0, digit, PAID_IS_ON);
	digit_start_on(t, digit);
}

static void answer_never_off(struct turn *t)
{
	const struct digit *d = sheet_digit_const(t->s, t->s->asked.digit);
	if (d && d->state == DIGIT_OFF)
		digit_never_off(t, d->number);
	else /* the wrong card was read: its clock belongs to another digit */
		turn_ask(t, (struct asked){.what = Q_MOVE_TO, .digit = t->s->asked.digit}, "Misread: the %s.",
		         own_digit_name(t->s->asked.digit));
}

static void answer_rolls_on(struct turn *t, int yes)
{
	int item = t->s->asked.item;
	turn_close_question(t);
	if (!yes) {
		turn_accept(t, "No open wound, flap, infection or tumour on the digit, says the team.");
		return;
	}
	turn_owe(t, DEBT_SURGEON, item, 0);
	turn_accept(t,
	            "Noted. A tourniquet that rolls on may carry infection or tumour along and tear a flap.");
}

static void answer_extra(struct turn *t, int yes)
{
	int item = t->s->asked.item;
	turn_close_question(t);
	if (yes) {
		extra_opened_here(t, item);
	} else {
		turn_accept(t, "Extra item, origin not known: isolate it, keep it in the room. A misread: "
		               "scan MISREAD, then its code.");
	}
	final_progress(t);
}

static void answer_right_digit(struct turn *t, int yes)
{
	int digit = t->s->asked.digit;
	if (!yes) {
		turn_ask(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit}, "Not the %s.",
		         own_digit_name(digit));
		return;
	}
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_RIGHT_DIGIT);
	turn_close_question(t);
	turn_accept(t, "The %s is right, says the team.", own_digit_name(digit));
}

/* A tourniquet that went on another digit than the marked one, and was entered as it was. 1 where that is it. */
static int leaves_wrong_digit(struct turn *t)
{
	int digit = t->s->asked.digit;
	if (!debts_owes(&t->s->debts, (struct debt){.kind = DEBT_MARKED_DIGIT, .digit = (uint8_t)digit}))
		return 0;
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_OTHER_DIGIT);
	turn_close_question(t);
	turn_accept(t,
	            "Left as it is: it went on the %s, which is not the marked digit. Tell the surgeon now.",
	            own_digit_name(digit));
	return 1;
}

/* YES or NO to the open question. */
static int answer_yes_no(struct turn *t, int yes)
{
	switch ((enum question)t->s->asked.what) {
	case Q_IS_ON:
		answer_is_on(t, yes);
		return 1;
	case Q_ROLLS_ON:
		answer_rolls_on(t, yes);
		return 1;
	case Q_RIGHT_DIGIT:
		answer_right_digit(t, yes);
		return 1;
	case Q_EXTRA:
		answer_extra(t, yes);
		return 1;
	case Q_POINT:
		answer_point(t, yes);
		return 1;
	case Q_CANCEL:
		if (yes) {
			cancel_yes(t);
			return 1;
		}
		break;
	case Q_LEAVES:
		if (yes) {
			char open[OPEN_WORDS_MAX];
			EMIT(t, .kind = EV_PATIENT_LEFT);
			turn_close_question(t);
			sheet_open_words(t, open);
			turn_accept(t, "The patient has left the room.%s%s", open,
			            *open ? " Tell the surgeon and the ward now." : "");
			return 1;
		}
		break;
	case Q_NO_CODE:
		turn_close_question(t);
		item_add_unlisted(t, yes ? ROLE_TOURNIQUET : ROLE_OTHER,
		                  yes ? SAY_TOURNIQUET_NO_CODE : SAY_ITEM_NO_CODE);
		turn_accept(t, "Counted in: %s. Say aloud what it is and write it on the paper sheet.",
		            t->s->items[t->s->n_items - 1].thing.name);
		return 1;
	case Q_OFF:
		if (yes) {
			turn_refuse(t, SAY(YES_STOPS_NO_CLOCK));
			return 1;
		}
		turn_close_question(t);
		turn_accept(t, "Still on. The clock runs.");
		return 1;
	case Q_HANDOVER_OUT:
	case Q_HANDOVER_STAYS:
	case Q_HANDOVER_IN:
		if (yes)
			return 0;
		turn_close_question(t);
		turn_accept(t, "No handover.");
		return 1;
	case Q_WHO_LOOKED:
		if (yes)
			return 0;
		turn_refuse(t, SAY(NO_IS_NOBODY));
		return 1;
	case Q_FOUND:
		if (!t->s->asked.item)
			break;
		if (yes)
			final_answer(t, CARD_YES, 0);
		else
			search_ask_found(t, t->s->asked.item);
		return 1;
	case Q_HANDOVER_SEEN:
	case Q_HANDOVER_AGREE: /* begun, it is owed */
		return 0;
	case Q_LISTED_ALREADY:
		answer_listed_already(t, yes);
		return 1;
	case Q_HERE_NOW:
		answer_here_now(t, yes);
		return 1;
	case Q_COUNTED_IN:
		answer_counted_in(t, yes);
		return 1;
	case Q_MOVE_TO:
		if (yes && t->s->asked.digit) {
			digit_never_on(t, t->s->asked.digit);
			return 1;
		}
		if (!yes && leaves_wrong_digit(t))
			return 1;
		break;
	case Q_VISITOR_IS_SURGEON:
		visitor_is(t, yes);
		return 1;
	default:
		break;
	}
	if (yes)
		return 0;
	turn_close_question(t);
	turn_accept(t, "Left as it is.");
	return 1;
}

static int is_condition(int card)
{
	return card == CARD_INTACT || card == CARD_CUT_AND_COMPLETE || card == CARD_PIECES_MISSING;
}

/* The same question is asked again after a card that does not answer it; the fact on the card is lost to
 * nobody: it is refused in words. */
void answer_question(struct turn *t, int card)
{
	enum question q = (enum question)t->s->asked.what;
	if ((card == CARD_YES || card == CARD_NO) && answer_yes_no(t, card == CARD_YES))
		return;
	if (q == Q_FOUND && t->s->asked.item && (is_condition(card) || card == CARD_MARK_UNREADABLE)) {
		final_answer(t, card, 0);
		return;
	}
	if (q == Q_IS_ON && card == CARD_MISREAD) {
		answer_never_off(t);
		return;
	}
	if (q == Q_INCIDENT && card == CARD_NOT_DONE) {
		end_unresolved(t, "");
		return;
	}
	enum saying asked = question_saying(q);
	const char *words = saying_text(asked);
	turn_refuse(t, *words && words[strlen(words) - 1] == '?'
	                   ? SAY(NOT_AN_ANSWER, .card = card, .question = asked)
	                   : SAY(NOT_AN_ANSWER_STATED, .card = card, .question = asked));
}

/* The digit's circumference as somebody measured it: held against what the makers state, which says nothing
 * about pressure (section 1 of the design: the station never judges that). */
static void state_size(struct turn *t, int mm)
{
	char misfit[160] = "";
	EMIT(t, .kind = EV_SIZE_STATED, .n = mm);
	for (int i = 0; i < t->s->n_items; i++)
		if (size_misfit(t, &t->s->items[i].thing, misfit, sizeof misfit))
			break;
	turn_accept(t, "Circumference of the digit stated as %d mm.%s", mm, misfit);
}

int size_misfit(const struct turn *t, const struct thing *th, char *out, size_t size)
{
	const struct line *line = catalogue_by_key(&t->station->catalogue, th->line);
	int mm = t->s->size_mm;
	if (!mm || !line || !line->size_min_mm || (mm >= line->size_min_mm && mm <= line->size_max_mm))
		return 0;
	snprintf(out, size, " The maker states %d to %d mm for the %s: another size may be needed.",
	         line->size_min_mm, line->size_max_mm, th->name);
	return 1;
}

/* "case 41: …" where no case is open: what was entered wrongly is corrected by a further event and an
 * addendum slip; nothing is edited (rule 13). 1 where the text was one. */
static int correct_after(struct turn *t)
{
	int case_no = 0, used = 0;
	if (turn_has_case(t) || sscanf(t->in->text, "case %9d: %n", &case_no, &used) != 1 || !used ||
	    !t->in->text[used])
		return 0;
	if (case_no < 1 || case_no > t->station->last_case_no ||
	    station_sheet_of_case(t->station, case_no) >= 0) {
		turn_refuse(t, SAY(CASE_NOT_ENDED_HERE, .case_no = case_no));
		return 1;
	}
	struct event e = {.kind = EV_CORRECTION, .case_no = case_no};
	snprintf(e.text, sizeof e.text, "%s", t->in->text + used);
	turn_emit(t, &e);
	turn_queue_slip(t, SLIP_ADDENDUM, case_no);
	turn_accept(
	    t,
	    "Correction of case %d entered beside what it corrects. An addendum slip prints: put it in "
	    "the notes.",
	    case_no);
	return 1;
}

void typed_take(struct turn *t)
{
	struct error why;
	if (name_check("What was typed", t->in->text, EVENT_TEXT_MAX - 1, &why) < 0) {
		turn_refuse_fault(t, SAY(TYPED_NOT_KEPT_FOR, .fault = why.text), SAY(TYPED_NOT_KEPT));
		return;
	}
	if (correct_after(t))
		return;
	int mm = 0, used = 0;
	if (turn_has_case(t) && sscanf(t->in->text, "%3d mm%n", &mm, &used) == 1 && used &&
	    !t->in->text[used] && mm >= 20 && mm <= 200) {
		state_size(t, mm);
		return;
	}
	if (turn_has_case(t) && t->s->asked.what == Q_INCIDENT) {
		end_unresolved(t, t->in->text);
		return;
	}
	if (turn_has_case(t) && t->s->discrepancy && t->s->search_not_done) {
		struct event e = {.kind = EV_SEARCH_WHY, .n = t->s->search_not_done};
		snprintf(e.text, sizeof e.text, "%s", t->in->text);
		turn_emit(t, &e);
		turn_accept(t, "Why step %d of the search was not done is entered.", (int)e.n);
		return;
	}
	for (int i = 0; i < t->station->n_owed; i++)
		if (t->station->owed[i].room == t->in->room) {
			int32_t case_no = t->station->owed[i].case_no;
			struct event e = {.kind = EV_PAID, .case_no = case_no, .what = DEBT_INCIDENT};
			snprintf(e.text, sizeof e.text, "%s", t->in->text);
			turn_emit(t, &e);
			turn_queue_slip(t, SLIP_ADDENDUM, case_no);
			turn_accept(t, "Incident number of case %d entered.", (int)case_no);
			return;
		}
	turn_refuse(t, SAY(NO_TEXT_ASKED));
}
