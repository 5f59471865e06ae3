/* One decision in progress. Only the decide-*.c files include this. */
#ifndef BANDTALLY_COUNT_TURN_H
#define BANDTALLY_COUNT_TURN_H

#include "code/own-codes.h"
#include "count/decide.h"

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
#define EMIT(t, ...) emit((t), &(struct event){__VA_ARGS__})

void turn_accept(struct turn *t, const char *format, ...) __attribute__((format(printf, 2, 3)));
void refuse(struct turn *t, const char *format, ...) __attribute__((format(printf, 2, 3)));
void ask(struct turn *t, struct asked question, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void close_question(struct turn *t);

void capital(char *sentence); /* its first letter, where that is one of a-z */
const char *hm(struct moment at, char out[6]);
int has_case(const struct turn *t);
int is_ready_to_agree(const struct sheet *s); /* final count: all answered, nothing missing */
void owe(struct turn *t, enum debt_kind kind, int item, int digit);
void pay(struct turn *t, enum debt_kind kind, int item, int digit, const char *how);
void queue_slip(struct turn *t, enum slip_kind kind, int32_t case_no);
void found_after(struct turn *t, int32_t case_no, const char *what); /* rule 21, with its addendum slip */
void open_case(struct turn *t, const char *label);

/* The parts of a decision. */
void on_thing(struct turn *t);
void on_digit(struct turn *t);
void on_badge(struct turn *t);
void on_card(struct turn *t);
void on_slip(struct turn *t);
void on_typed(struct turn *t);
void on_tick(const struct station *st, const struct input *in, struct outcome *out);

void count_in(struct turn *t); /* decide-item */
void add_unlisted(struct turn *t, enum role role, const char *name);
void start_on(struct turn *t, int digit, struct moment at); /* decide-digit */
void second_on(struct turn *t, int digit);
void take_off(struct turn *t, int digit);
void look_bare(struct turn *t, int digit);
void final_begin(struct turn *t); /* decide-count */
void final_answer(struct turn *t, int card, int number);
void final_mark(struct turn *t, int item);
void final_progress(struct turn *t);
void state_final(struct turn *t);
void agree(struct turn *t, int32_t badge);
void named_aloud(struct turn *t);
void ask_found(struct turn *t, int after);    /* decide-card */
void sign_out(struct turn *t, int32_t badge); /* decide-end */
void ask_points(struct turn *t);
void end_case(struct turn *t, enum case_end how, const char *words);
/* Whether the stated circumference is outside what the maker states; the sentence begins with a space. */
int size_misfit(const struct turn *t, const struct thing *th, char *out, size_t size);
void answer_question(struct turn *t, int card); /* decide-card */
void idle_step(int unseen, char *out);          /* next: no case is open in this room */
int accounted_words(const struct sheet *s, char *out, size_t size);

#endif
