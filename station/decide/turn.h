/* One decision in progress. Only the files of this folder include this. */
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
void emit(struct turn *t, const struct event *e);
void emit_for_room(struct turn *t,
                   struct event e); /* of no case, though one is open: it outlasts it, and is no step */
#define EMIT(t, ...) emit((t), &(struct event){__VA_ARGS__})

void turn_accept(struct turn *t, const char *format, ...) __attribute__((format(printf, 2, 3)));
void turn_refuse(struct turn *t, const struct say *why);
/* The reply says what is wrong with a code or a text; the record keeps only that something was. */
void turn_refuse_fault(struct turn *t, const struct say *why, const struct say *kept);
void ask(struct turn *t, struct asked question, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void close_question(struct turn *t);

void capital(char *sentence); /* its first letter, where that is one of a-z */
const char *hm(struct moment at, char out[6]);
int32_t minute_of_day(struct moment at);
int has_case(const struct turn *t);
int32_t input_answer(const struct input *in); /* the card, or minus the badge; 0 neither */
int is_ready_to_agree(const struct sheet *s); /* final count: all answered, nothing missing */
void owe(struct turn *t, enum debt_kind kind, int item, int digit);
void pay(struct turn *t, enum debt_kind kind, int item, int digit, enum paid_how how);
void pay_typed(struct turn *t, enum debt_kind kind, const char *text);
void queue_slip(struct turn *t, enum slip_kind kind, int32_t case_no);
void found_after(struct turn *t, int32_t case_no, const char *what); /* rule 21, with its addendum slip */
void open_case(struct turn *t, const char *label);

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
void refuse_unasked(struct turn *t);
struct say
unknown_code(const struct input *in); /* a code that nothing here knows, as far as it may be repeated */
enum question asked_here(const struct turn *t);
int idle_answer(struct turn *t, int yes);

/* The parts of a decision. */
void on_thing(struct turn *t);
void on_digit(struct turn *t);
void on_badge(struct turn *t);
void on_card(struct turn *t);
void on_slip(struct turn *t);
void on_typed(struct turn *t);
void on_stored(struct turn *t); /* stored-scans */
void on_tick(const struct station *st, const struct input *in, struct outcome *out);

void count_in(struct turn *t); /* pack */
void add_unlisted(struct turn *t, enum role role, const char *name);
void start_on(struct turn *t, int digit); /* digit-card */
void doubt_on(struct turn *t, int digit, struct moment at);
void ask_is_on(struct turn *t, int digit,
               const char *besides);             /* its clock runs as 'on?', and that is asked */
void never_on(struct turn *t, int digit);        /* MISREAD: none went on at all */
void never_off(struct turn *t, int digit);       /* MISREAD: OFF was wrong, its clock has run all the time */
void answer_counted_in(struct turn *t, int yes); /* pack */
void answer_listed_already(struct turn *t, int yes);
void answer_here_now(struct turn *t, int yes);
void extra_opened_here(struct turn *t, int item); /* YES to an extra item */
int unused_tourniquet(const struct sheet *s);     /* one that lies here, the latest first; 0 none */
void second_on(struct turn *t, int digit);
void take_off(struct turn *t, int digit);
void look_bare(struct turn *t, int digit);
void final_begin(struct turn *t); /* final-count */
void final_answer(struct turn *t, int card, int number);
void final_mark(struct turn *t, int item);
void final_contradicted(struct turn *t); /* PIECES MISSING after the count was agreed */
void final_progress(struct turn *t);
void state_final(struct turn *t);
void agree(struct turn *t, int32_t badge);
void named_aloud(struct turn *t);
void owe_expiry(struct turn *t, int first, int last); /* expiry */
int expiry_read(struct turn *t, int32_t badge);       /* 1 where it was owed: the badge pays it */
void ask_found(struct turn *t, int after);            /* card */
void sign_out(struct turn *t, int32_t badge);         /* end */
void sign_out_witnessed(struct turn *t, int32_t witness);
void ask_points(struct turn *t);
void search_answered(struct turn *t, int done); /* card */
const char *on_words(const struct turn *t, char out[80]);
#define OPEN_WORDS_MAX 320
const char *open_words(const struct turn *t, char out[OPEN_WORDS_MAX]);
int is_look_step(const struct turn *t); /* digit-card: the step of the search that a digit card answers */
int badge_answers(struct turn *t, const struct person *p, enum team_place place); /* badge */
void on_visitor(struct turn *t, int32_t visitor, enum team_place place);
void visitor_joins(struct turn *t, int32_t visitor, enum team_place place);
void visitor_is(struct turn *t, int yes);
void handover_agree(struct turn *t, int32_t badge);
void end_case(struct turn *t, enum case_end how, enum end_why why, const char *typed);
/* Whether the stated circumference is outside what the maker states; the sentence begins with a space. */
int size_misfit(const struct turn *t, const struct thing *th, char *out, size_t size);
void answer_question(struct turn *t, int card); /* card */
int answers_stored(struct turn *t);             /* stored-scans: 1 where this card did */
void ask_stored(struct turn *t);                /* where scans are held and nothing else is asked */
int start_held(struct turn *t);                 /* a held digit card whose clock is known; 1 done */
void held_entered(struct turn *t);              /* after the turn of a held scan */
void stored_step(const struct station *st, int32_t room, enum question q, int in_case, struct next *next);
void stored_next(const struct station *st, int32_t room, struct outcome *out);
int accounted_words(const struct sheet *s, char *out, size_t size);

#endif
