/* One decision in progress: a turn. Only the files of this folder include this.
 *
 * decide() makes a turn from the station, the input and a copy of the sheet that the scan is about, and hands it to the
 * file that knows this kind of scan (card.c, digit-card.c, badge.c, pack.c …). Whatever that file finds out it says with
 * turn_emit(): the event goes into the outcome and is applied to the copy at once, so that what comes later in the turn asks
 * the sheet as it is by then, and never the station's own, which stays as it was. A turn says one thing to people:
 * turn_say(), turn_refuse() or turn_ask_saying(), of which the last wins, and every turn ends with one of them. What was asked
 * stays open until an answer closes it (turn_close_question()); one question is open at a time (rule 19), so whoever asks in
 * the middle of another's question takes its place, and decide() asks again at the end what is still owed. A refusal is an
 * event too, for whoever audits. Where an event does not fit the sheet the turn has failed: nothing of it is kept.
 */
#ifndef BANDTALLY_DECIDE_TURN_H
#define BANDTALLY_DECIDE_TURN_H

#include "code/own-codes.h"
#include "decide/input.h"
#include "decide/outcome.h"

struct turn {
	const struct station *station;
	const struct input *in;
	struct sheet *s; /* working copy, outcome's; case_no 0 where no case runs in this room */
	int index;       /* of the sheet in the station, -1 while it is not there yet */
	struct outcome *out;
	int failed; /* an event did not fit: the whole turn is refused */
};

/* Whether a scan was answered here: as what the open question asks for, or by what it means wherever it comes. One that was
 * not goes on as any other scan. */
enum answered { ANSWERED_NOT = 0, ANSWERED };

int turn_has_case(const struct turn *t);
enum question turn_asked(const struct turn *t); /* of the case, or of the room where none runs in it */
const char *turn_name_of(const struct turn *t, int32_t badge);
int32_t input_answer(const struct input *in); /* the card, or minus the badge; 0 neither */

/* --- what happened ------------------------------------------------------------------------------ */

/* Adds an event (room, case, time and flags are filled in) and applies it to the working copy. */
void turn_emit(struct turn *t, const struct event *e);
#define EMIT(t, ...) turn_emit((t), &(struct event){__VA_ARGS__})
/* Of no case, though one is open: it outlasts it, and is no step. */
void turn_emit_for_room(struct turn *t, struct event e);

/* What is owed stays until it is paid; the same debt is owed once. Who paid is the badge of the input, if it is one. */
void turn_owe(struct turn *t, enum debt_kind kind, int item, int digit);
void turn_owe_reason(struct turn *t, int item,
                     const struct say *why); /* why the station refused it: for the slip */
void turn_pay(struct turn *t, enum debt_kind kind, int item, int digit, enum paid_how how);
void turn_pay_typed(struct turn *t, enum debt_kind kind, const char *text);

void turn_open_case(struct turn *t, const char *label);
/* Where one is open here; and where the room has a suspended one as well. */
void turn_refuse_further_case(struct turn *t);
void turn_queue_slip(struct turn *t, enum slip_kind kind, int32_t case_no);
/* The paper itself was read, and that is said; where it proves less, that too. */
void turn_slip_seen(struct turn *t, const struct slip *slip, const struct paper *paper);
/* Rule 21, with its addendum slip. */
void turn_found_after(struct turn *t, int32_t case_no, const struct thing *what);

/* --- what is said ------------------------------------------------------------------------------- */

/* Accepted: what happened. */
void turn_say(struct turn *t, const struct say *what);
/* One sentence more, behind what was said. */
void turn_say_more(struct turn *t, const struct say *what);
/* One thing more in the {list} of the last sentence. */
void turn_list(struct turn *t, const struct say *thing);
void turn_refuse(struct turn *t, const struct say *why);
/* The reply says what is wrong with a code or a text; the record keeps only that something was. */
void turn_refuse_fault(struct turn *t, const struct say *why, const struct say *kept);
/* The record could not be asked: what nobody knows is not 'not used' (rules 4 and 5). */
void turn_refuse_unasked(struct turn *t);
void turn_ask_saying(struct turn *t, struct asked question, const struct say *what);
/* What is asked here, of the case or of the room, is answered; nothing where no question is open. */
void turn_close_question(struct turn *t);

#endif
