/* One decision in progress: a turn. Only the files of this folder include this.
 *
 * decide() makes a turn from the station, the input and a copy of the sheet that the scan is about, and hands it to the
 * file that knows this kind of scan (card.c, digit-card.c, badge.c, pack.c …). Whatever that file finds out it says with
 * turn_emit(): the event goes into the outcome and is applied to the copy at once, so that what comes later in the turn asks
 * the sheet as it is by then, and never the station's own, which stays as it was. A turn says one thing to people:
 * turn_accept(), turn_refuse() or turn_ask(), of which the last wins, and every turn ends with one of them. What was asked
 * stays open until an answer closes it (turn_close_question()); one question is open at a time (rule 19), so whoever asks in
 * the middle of another's question takes its place, and decide() asks again at the end what is still owed. A refusal is an
 * event too, for whoever audits. Where an event does not fit the sheet the turn has failed: nothing of it is kept.
 */
#ifndef BANDTALLY_DECIDE_TURN_H
#define BANDTALLY_DECIDE_TURN_H

#include "code/own-codes.h"
#include "decide/decide.h"

struct turn {
	const struct station *station;
	const struct input *in;
	struct sheet *s; /* working copy, outcome's; case_no 0 where no case runs in this room */
	int index;       /* of the sheet in the station, -1 while it is not there yet */
	struct outcome *out;
	int failed; /* an event did not fit: the whole turn is refused */
};

/* Adds an event (room, case, time and flags are filled in) and applies it to the working copy. */
void turn_emit(struct turn *t, const struct event *e);
void turn_emit_for_room(struct turn *t,
                        struct event e); /* of no case, though one is open: it outlasts it, and is no step */
#define EMIT(t, ...) turn_emit((t), &(struct event){__VA_ARGS__})

void turn_accept(struct turn *t, const char *format, ...) __attribute__((format(printf, 2, 3)));
void turn_refuse(struct turn *t, const struct say *why);
/* The reply says what is wrong with a code or a text; the record keeps only that something was. */
void turn_refuse_fault(struct turn *t, const struct say *why, const struct say *kept);
void turn_ask(struct turn *t, struct asked question, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void turn_close_question(struct turn *t);

void sentence_capital(char *sentence); /* its first letter, where that is one of a-z */
const char *moment_hm(struct moment at, char out[6]);
int32_t moment_minute_of_day(struct moment at);
int turn_has_case(const struct turn *t);
int32_t input_answer(const struct input *in);       /* the card, or minus the badge; 0 neither */
int sheet_is_ready_to_agree(const struct sheet *s); /* final count: all answered, nothing missing */
void turn_owe(struct turn *t, enum debt_kind kind, int item, int digit);
void turn_pay(struct turn *t, enum debt_kind kind, int item, int digit, enum paid_how how);
void turn_pay_typed(struct turn *t, enum debt_kind kind, const char *text);
void turn_queue_slip(struct turn *t, enum slip_kind kind, int32_t case_no);
void turn_found_after(struct turn *t, int32_t case_no,
                      const struct thing *what); /* rule 21, with its addendum slip */
void turn_open_case(struct turn *t, const char *label);

/* A room without a running case, as it will be after this scan. */
struct station_view {
	int32_t room;
	int unseen;        /* slips that no scanner has read back */
	uint8_t asked;     /* enum question */
	int32_t last;      /* station.idle_last */
	int32_t suspended; /* a case of this room that can be continued, 0 none */
};
void next_after(const struct station *st, const struct sheet *s, struct moment now,
                const struct station_view *after, struct next *n);
void turn_refuse_unasked(struct turn *t);
struct say
input_unknown_code(const struct input *in); /* a code that nothing here knows, as far as it may be repeated */
enum question turn_asked(const struct turn *t);
int idle_answer(struct turn *t, int yes);

/* --- the kinds of scan, from decide(), each in its file ------------------------------------------- */

void thing_take(struct turn *t);      /* pack: a pack, an instrument, a tray's list; with or without a case */
void digit_card_take(struct turn *t); /* digit-card: of this room */
void badge_take(struct turn *t);      /* badge */
void card_take(struct turn *t);       /* card: of this room */
void slip_take(struct turn *t);       /* decide */
void typed_take(struct turn *t);      /* end */
void stored_take(struct turn *t);     /* stored-scans */
/* tick: time alone. No turn, since it may be about any room's case; what is due goes into `out`. */
void tick_take(const struct station *st, const struct input *in, struct outcome *out);

/* --- pack ---------------------------------------------------------------------------------------- */

/* The thing of the input comes onto the sheet, or is refused with its reason, or its place is asked for. Needs a case. */
void pack_count_in(struct turn *t);
/* One more item that no pack stands for, and what it is called; a tourniquet's listing is owed from then on. */
void item_add_unlisted(struct turn *t, enum role role, enum saying called);
/* Answers to the questions of its name: Q_COUNTED_IN, Q_LISTED_ALREADY, Q_HERE_NOW. */
void answer_counted_in(struct turn *t, int yes);
void answer_listed_already(struct turn *t, int yes);
void answer_here_now(struct turn *t, int yes);
void extra_opened_here(struct turn *t, int item); /* YES to an extra item: it belongs to this sheet */
/* Whether the stated circumference is outside what the maker states; the sentence begins with a space. */
int size_misfit(const struct turn *t, const struct thing *th, char *out, size_t size);

/* --- digit-card ---------------------------------------------------------------------------------- */

int sheet_unused_tourniquet(const struct sheet *s); /* one that lies here, the latest first; 0 none */
/* The digit's clock starts now, with a tourniquet at hand or one that is not listed yet, and what was missing for it is
 * owed (rule 3). */
void digit_start_on(struct turn *t, int digit);
/* Its clock runs as 'on?' from `at`; the second asks about that too, `besides` behind the sentence. */
void digit_doubt_on(struct turn *t, int digit, struct moment at);
void digit_ask_is_on(struct turn *t, int digit, const char *besides);
void digit_second_on(struct turn *t, int digit); /* a second tourniquet on a digit that has one */
void digit_take_off(struct turn *t,
                    int digit); /* the latest that is on it; the last one stops its clock (rule 2) */
void digit_look_bare(struct turn *t, int digit); /* seen bare, after the final count (rule 9) */
void digit_never_on(struct turn *t, int digit);  /* MISREAD: none went on at all */
void digit_never_off(struct turn *t, int digit); /* MISREAD: OFF was wrong, its clock has run all the time */
int search_is_look_step(const struct turn *t); /* the search asks for the look, which a digit card answers */
const char *sheet_on_words(const struct turn *t,
                           char out[80]); /* card: what is still on, in capitals; "" nothing */
#define OPEN_WORDS_MAX 320
const char *sheet_open_words(const struct turn *t,
                             char out[OPEN_WORDS_MAX]); /* card: and what is not accounted for */

/* --- final-count --------------------------------------------------------------------------------- */

void final_begin(struct turn *t); /* refused while a tourniquet is on, or may be */
/* YES, NO, MISSING, INTACT … and SHOWN `number` while the final count or a search asks. */
void final_answer(struct turn *t, int card, int number);
void final_mark(struct turn *t,
                int item); /* the code of an item of this sheet was scanned meanwhile (rule 11) */
void final_contradicted(struct turn *t); /* PIECES MISSING after the count was agreed: it begins again */
void final_progress(
    struct turn *t); /* after each answer: goes on, opens or closes the discrepancy, or can be agreed */
void final_state_alone(struct turn *t); /* a lone operator's: agreed with its last answer */
void count_agree(struct turn *t,
                 int32_t badge); /* the count that waits to be agreed, recorded by this badge (rule 8) */
void listing_named_aloud(struct turn *t); /* pays the listing of a tourniquet that nothing lists */
int sheet_accounted_words(const struct sheet *s, char *out,
                          size_t size); /* turn: "1 … of 1 shown intact; …"; how many */

/* --- badge --------------------------------------------------------------------------------------- */

/* A badge at the question that is open: 1 where it answered. `place`: where it stands in the team, 0 nowhere yet. */
int badge_answers(struct turn *t, const struct person *p, enum team_place place);
void badge_take_visitor(struct turn *t, int32_t visitor,
                        enum team_place place); /* a VISITOR card that stands for somebody */
void visitor_join(struct turn *t, int32_t visitor, enum team_place place);
void visitor_is(struct turn *t, int yes); /* the operating surgeon, or not */
void handover_agree(struct turn *t, int32_t badge);

/* --- expiry, end, card --------------------------------------------------------------------------- */

void expiry_owe(struct turn *t, int first,
                int last);                      /* of these items, while the wall clock cannot be believed */
int expiry_read(struct turn *t, int32_t badge); /* 1 where it was owed: the badge pays it */
void sign_out_begin(struct turn *t, int32_t badge); /* refused with what is owed, or the case ends (rule 1) */
void sign_out_witnessed(struct turn *t, int32_t witness); /* of the visiting surgeon who is asked about */
void sign_out_ask_points(struct turn *t);                 /* of the sign-out, one by one */
void turn_end_case(struct turn *t, enum case_end how, enum end_why why, const char *typed);
void answer_question(struct turn *t,
                     int card); /* end: a card at the open question, which it answers or is refused */
void search_answered(struct turn *t, int done); /* card: this step of the search */
void search_ask_found(struct turn *t,
                      int after); /* card: which of the missing ones is it, behind item `after`? */

/* --- stored-scans -------------------------------------------------------------------------------- */

int answers_stored(struct turn *t); /* 1 where this card was an answer to the question about held scans */
void stored_ask(struct turn *t);    /* where scans are held for the room and nothing else is asked */
int held_start(struct turn *t);     /* a held digit card whose clock runs since it came; 1 done */
void held_entered(struct turn *t);  /* after the turn of a held scan: it is held no longer */
/* What comes next at Q_STORED or Q_TWICE, and in a room that has such a question as it will be after `out`. */
void stored_step(const struct station *st, int32_t room, enum question q, int in_case, struct next *next);
void stored_next(const struct station *st, int32_t room, struct outcome *out);

#endif
