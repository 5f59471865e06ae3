/* What all turns at a bench need. */
#include "stock/bench-turn.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/name.h"
#include "code/date.h"

#define TYPED_NONE "none" /* in every language, as the bench asks for it */

/* --- what happened, and what is said --------------------------------------------------------------- */

void bench_emit(struct bench_turn *t, const struct event *e)
{
	if (t->out->count == BENCH_EVENTS_MAX)
		return;
	struct event *ev = &t->out->events[t->out->count++];
	*ev = *e;
	ev->at = t->in->at;
	ev->room = t->in->room;
	ev->flags |= t->in->flags;
}

static void say(struct bench_turn *t, enum bench_verdict verdict, const struct say *what)
{
	t->out->verdict = verdict;
	said_keep(&t->out->what, what);
	say_sentence(what, t->out->said, sizeof t->out->said);
}

void bench_accept(struct bench_turn *t, const struct say *what)
{
	say(t, BENCH_ACCEPTED, what);
}

void bench_refuse(struct bench_turn *t, const struct say *why)
{
	struct event e = {.kind = EV_REFUSED};
	t->out->count = 0; /* nothing of what is refused is entered */
	said_keep(&e.said, why);
	bench_emit(t, &e);
	say(t, BENCH_REFUSED, why);
}

static struct event asked_event(const struct bench_asked *q)
{
	struct event e = {.kind = EV_BENCH_ASKED,
	                  .what = q->what,
	                  .batch = q->batch,
	                  .n = q->n,
	                  .other = q->other,
	                  .person = q->person};
	memcpy(e.text, q->text, sizeof e.text);
	return e;
}

void bench_ask(struct bench_turn *t, struct bench_asked question, const struct say *what)
{
	struct event e = asked_event(&question);
	bench_emit(t, &e);
	struct say asked = bench_question_say(t->st, &question);
	say(t, BENCH_ASKS, what ? what : &asked);
}

void bench_close(struct bench_turn *t)
{
	if (t->asked->what)
		BENCH_EMIT(t, .kind = EV_BENCH_ASKED);
}

/* --- what sentences speak of ----------------------------------------------------------------------- */

enum saying of_lot(const struct batch *b)
{
	if (b->lot[0])
		return b->expiry ? SAY_OF_LOT : SAY_OF_LOT_ALONE;
	return b->expiry ? SAY_OF_EXPIRY : SAY_OF_NO_LOT;
}

const struct line *bench_line(const struct bench_turn *t, const char *key)
{
	return catalogue_by_key(&t->st->catalogue, key);
}

const char *bench_line_name(const struct bench_turn *t, const char *key)
{
	const struct line *l = bench_line(t, key);
	return l ? l->name : key;
}

int32_t bench_person(const struct bench_turn *t)
{
	const struct person *p = staff_find(&t->st->staff, t->bench->person);
	return p && !p->withdrawn ? p->number : 0;
}

struct batch lot_batch(const struct stock_lot *l)
{
	struct batch b = {.expiry = l->expiry};
	memcpy(b.line, l->line, sizeof b.line);
	memcpy(b.lot, l->lot, sizeof b.lot);
	return b;
}

/* --- what an input says ---------------------------------------------------------------------------- */

enum bench_fitness bench_unfit(struct bench_turn *t)
{
	struct say q = bench_question_say(t->st, t->asked);
	q.question = q.saying;
	q.saying = SAY_STOCK_ASKED_FIRST;
	bench_refuse(t, &q);
	return BENCH_UNFIT;
}

int32_t bench_number(struct bench_turn *t, int32_t most)
{
	char *end;
	if (t->in->act == BENCH_CARD && own_card_group(t->in->card) == CARDS_NUMBERS)
		return own_card_says(t->in->card);
	if (t->in->act != BENCH_TYPED) {
		bench_unfit(t);
		return -EINVAL;
	}
	errno = 0;
	long n = strtol(t->in->text, &end, 10);
	if (!*t->in->text || *end || n < 0 || errno || strspn(t->in->text, "0123456789") == 0) {
		bench_refuse(t, SAY(STOCK_NO_NUMBER, .code = t->in->text, .most = most));
		return -EINVAL;
	}
	if (n > most) {
		bench_refuse(t,
		             SAY(STOCK_TOO_MANY, .n = n > INT32_MAX ? INT32_MAX : (int32_t)n, .most = most));
		return -EINVAL;
	}
	return (int32_t)n;
}

enum bench_fitness bench_text(struct bench_turn *t, size_t size)
{
	struct error e;
	if (t->in->act != BENCH_TYPED)
		return bench_unfit(t);
	if (name_check("", t->in->text, size - 1, &e) == 0)
		return BENCH_FIT;
	bench_refuse(t, SAY(STOCK_NO_TEXT));
	return BENCH_UNFIT;
}

enum bench_fitness bench_badge(struct bench_turn *t)
{
	if (t->in->act != BENCH_BADGE)
		return bench_unfit(t);
	const struct person *p = staff_find(&t->st->staff, t->in->number);
	if (p && !p->withdrawn)
		return BENCH_FIT;
	bench_refuse(t, p ? SAY(BADGE_WITHDRAWN, .badge = t->in->number)
	                  : SAY(BADGE_UNKNOWN, .badge = t->in->number));
	return BENCH_UNFIT;
}

int32_t bench_day(const char *text)
{
	int y, m, d, used = 0;
	if (strcmp(text, TYPED_NONE) == 0)
		return 0;
	if (strlen(text) != 10 || sscanf(text, "%4d-%2d-%2d%n", &y, &m, &d, &used) != 3 || used != 10)
		return -EINVAL;
	int32_t day = date_make(y, m, d);
	return day ? day : -EINVAL;
}

struct meant { /* what is empty was not said */
	struct batch batch;
	int no_lot, no_expiry; /* it was said that there is none */
};

static int is_meant(const struct meant *m, const struct stock_lot *l)
{
	const struct batch *b = &m->batch;
	return strcmp(l->line, b->line) == 0 && (!b->lot[0] || strcmp(l->lot, b->lot) == 0) &&
	       (!b->expiry || l->expiry == b->expiry) && !(m->no_lot && l->lot[0]) &&
	       !(m->no_expiry && l->expiry);
}

static int is_left(const struct stock_lot *l)
{
	return l->shelf > 0 || l->waits > 0 || l->in_rooms > 0;
}

struct fits {
	const struct stock_lot *one;
	int n, alike; /* how many; of one lot, which differ in their expiry alone */
};

/* Where its code or what was typed does not say lot or expiry: the one lot that stores have of it. Of what is down to nought
 * none is asked about while another is left. */
static struct fits lots_of(const struct bench_turn *t, const struct meant *m)
{
	struct fits f = {.alike = 1};
	for (int left = 1; left >= 0 && !f.n; left--)
		for (size_t i = 0; i < t->s->n_lots; i++) {
			const struct stock_lot *l = &t->s->lots[i];
			if ((left && !is_left(l)) || !is_meant(m, l))
				continue;
			if (f.n++ && strcmp(l->lot, f.one->lot) != 0)
				f.alike = 0;
			f.one = l;
		}
	return f;
}

static int has_lot(const struct bench_turn *t, const char *line, const char *lot)
{
	for (size_t i = 0; i < t->s->n_lots; i++)
		if (strcmp(t->s->lots[i].line, line) == 0 && strcmp(t->s->lots[i].lot, lot) == 0)
			return 1;
	return 0;
}

/* LOT, LOT/EXPIRY or /EXPIRY. A lot may have a slash of its own, and be called anything. */
static int read_lot(const struct bench_turn *t, const char *text, struct meant *m)
{
	struct batch *b = &m->batch;
	const char *slash = strrchr(text, '/');
	int32_t day = slash && !has_lot(t, b->line, text) ? bench_day(slash + 1) : -EINVAL;
	size_t n = day >= 0 ? (size_t)(slash - text) : strlen(text);
	struct error e;
	if (n >= sizeof b->lot || (!n && day < 0))
		return -EINVAL;
	memcpy(b->lot, text, n);
	b->expiry = day > 0 ? day : 0;
	m->no_expiry = day == 0;
	m->no_lot = strcmp(b->lot, TYPED_NONE) == 0 && !has_lot(t, b->line, b->lot);
	if (m->no_lot)
		b->lot[0] = 0;
	return b->lot[0] ? name_check("", b->lot, LOT_MAX - 1, &e) : 0;
}

static enum bench_fitness typed_means(struct bench_turn *t, struct meant *m)
{
	const char *slash = strchr(t->in->text, '/');
	size_t n = slash ? (size_t)(slash - t->in->text) : strlen(t->in->text);
	if (n && n < sizeof m->batch.line) {
		memcpy(m->batch.line, t->in->text, n);
		if (stock_knows(t->s, t->st, m->batch.line) && (!slash || read_lot(t, slash + 1, m) == 0))
			return BENCH_FIT;
	}
	bench_refuse(t, SAY(STOCK_NOT_KNOWN, .key = t->in->text));
	return BENCH_UNFIT;
}

static void refuse_lots(struct bench_turn *t, const struct batch *b, const struct fits *f)
{
	const char *name = bench_line_name(t, b->line);
	const char *lot = f->n && f->one->lot[0] ? f->one->lot : TYPED_NONE;
	if (!f->n)
		bench_refuse(t, SAY(STOCK_NONE_OF_IT, .item = name, LOT_VALUES(b)));
	else if (f->alike)
		bench_refuse(t, SAY(STOCK_WHICH_EXPIRY, .n = f->n, .item = name, .key = b->line, .lot = lot));
	else
		bench_refuse(t, SAY(STOCK_WHICH_LOT, .n = f->n, .item = name, .key = b->line));
}

enum bench_fitness bench_means(struct bench_turn *t, int unknown, struct batch *out)
{
	struct meant m = {0};
	*out = (struct batch){0};
	if (t->in->act == BENCH_TYPED) {
		if (typed_means(t, &m) == BENCH_UNFIT)
			return BENCH_UNFIT;
	} else if (t->in->act == BENCH_PACK || t->in->act == BENCH_LABEL) {
		m.batch = t->in->batch;
	} else {
		return bench_unfit(t);
	}
	*out = m.batch;
	if (unknown || out->first)
		return BENCH_FIT;
	struct fits f = lots_of(t, &m);
	if (f.n != 1) {
		refuse_lots(t, out, &f);
		return BENCH_UNFIT;
	}
	*out = lot_batch(f.one);
	return BENCH_FIT;
}
