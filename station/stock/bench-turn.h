/* One scan at a bench in progress. Only the files of this folder include this. */
#ifndef BANDTALLY_STOCK_BENCH_TURN_H
#define BANDTALLY_STOCK_BENCH_TURN_H

#include "code/own-codes.h"
#include "stock/bench.h"

struct bench_turn {
	const struct stock *s;
	const struct station *st;
	const struct bench_input *in;
	const struct bench *bench;
	const struct bench_asked *asked;
	struct bench_outcome *out;
};

/* Adds an event of this bench; what is beyond BENCH_EVENTS_MAX would be a fault of ours, and is left out. */
void bench_emit(struct bench_turn *t, const struct event *e);
#define BENCH_EMIT(t, ...) bench_emit((t), &(struct event){__VA_ARGS__})

/* The last of these wins; each turn ends with one of them. A refusal is kept. */
void bench_accept(struct bench_turn *t, const struct say *what);
void bench_refuse(struct bench_turn *t, const struct say *why);

/* Opens a question, or closes the one that is open (BENCH_NOTHING); `what` may be NULL: the question alone is said. */
void bench_ask(struct bench_turn *t, struct bench_asked question, const struct say *what);
void bench_close(struct bench_turn *t);

/* Whether what was scanned will do for what it is asked for; where not, it was refused. */
enum bench_fitness { BENCH_UNFIT = 0, BENCH_FIT };

/* What answers nothing of what is asked is refused, with the question. */
enum bench_fitness bench_unfit(struct bench_turn *t);

/* "lot T26, expiry 2028-03-31": as a value {what} of a sentence that has {lot} and {date}. */
enum saying of_lot(const struct batch *b);
#define LOT_VALUES(b) .what = of_lot(b), .lot = (b)->lot, .date = (b)->expiry

const char *bench_line_name(const struct bench_turn *t,
                            const char *key); /* its key where the catalogue has no such line */
const struct line *bench_line(const struct bench_turn *t, const char *key);
int32_t bench_person(const struct bench_turn *t); /* who works here; 0 nobody */
struct batch lot_batch(const struct stock_lot *l);

/* The number that this input answers, 0 to `most`: of a card, or typed. 0 to most, or -EINVAL where it is none, and that is
 * refused. */
int32_t bench_number(struct bench_turn *t, int32_t most);

/* The line and lot that this scan means: of a pack, a label, or typed as KEY, KEY/LOT or KEY/LOT/2028-03-31, with 'none' where it
 * has no lot or no expiry; of the catalogue, or of packs that outlived their line in it. Where it means one that stores know,
 * `out` is filled, with its number where it has one; of several, the one of which something lies there. `unknown`: a lot that
 * stores never had will do, and a line alone. */
enum bench_fitness bench_means(struct bench_turn *t, int unknown, struct batch *out);

/* yyyymmdd of "2028-03-31", 0 of "none"; -EINVAL where it is no day. */
int32_t bench_day(const char *text);

/* A typed text that is kept. */
enum bench_fitness bench_text(struct bench_turn *t, size_t size);

/* The badge of somebody who has one here. */
enum bench_fitness bench_badge(struct bench_turn *t);

/* --- each in its file ------------------------------------------------------------------------------ */

void receive_pack(struct bench_turn *t, const struct batch *what, int32_t packs, int typed); /* receive */
void label_scanned(struct bench_turn *t);              /* labels: where nothing is asked */
enum bench_fitness label_usable(struct bench_turn *t); /* not: no such number, used, spoilt or thrown away */
void label_card(struct bench_turn *t);                 /* PRINT LABELS */
void shelf_card(struct bench_turn *t);                 /* shelf */

/* Each question of the list has its answer in the file of what it is about: receive, labels, shelf, recall. */
#define X(name, text) void bench_answer_##name(struct bench_turn *t);
BENCH_QUESTIONS(X)
#undef X

#endif
