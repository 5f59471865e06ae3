#include "run/stock-steps.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"
#include "code/own-codes.h"
#include "run/core-internal.h"

#define STEP_MAX 2048

static enum bench_question asked_at(const struct core *c, int32_t room)
{
	return (enum bench_question)stock_bench(&c->stock, room)->asked.what;
}

/* --- a step as it would be scanned or typed -------------------------------------------------------- */

/* Those of a bench alone, and those that it has in common with rooms. */
static int card_named(const char *name)
{
	static const int common[] = {CARD_YES, CARD_NO, CARD_FOUND};
	for (size_t i = 0; i < sizeof common / sizeof *common; i++)
		if (strcmp(own_card_name(common[i]), name) == 0)
			return common[i];
	for (int m = own_stores_card_next(0); m; m = own_stores_card_next(m))
		if (strcmp(own_card_name(m), name) == 0)
			return m;
	return 0;
}

static int card_numbered(int64_t number)
{
	return number > 0 && number <= INT_MAX && card_named(own_card_name((int)number)) == number
	           ? (int)number
	           : 0;
}

static int write_own(const struct core *c, struct own_code code, const char *before, char out[STEP_MAX])
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, c->station.site, sizeof code.site);
	if (own_code_write(&code, text) < 0)
		return -EINVAL;
	snprintf(out, STEP_MAX, "%s%s", before, text);
	return 0;
}

static int write_step(const struct core *c, int32_t room, const json_t *step, char out[STEP_MAX])
{
	const char *card = json_text(step, "card"), *box = json_text(step, "box"),
	           *text = *box ? box : json_text(step, "text");
	int64_t to = json_number(step, "to_room", 0), badge = json_number(step, "badge", 0),
	        label = json_number(step, "label", 0);
	int meaning = *card ? card_named(card) : card_numbered(json_number(step, "card", 0));
	if (meaning)
		return write_own(c, (struct own_code){.kind = OWN_CARD, .room = room, .meaning = meaning}, "",
		                 out);
	if (to >= 1 && to <= 99)
		return write_own(
		    c, (struct own_code){.kind = OWN_CARD, .room = room, .meaning = CARD_TO_ROOM + (int)to},
		    "", out);
	if (badge >= 1 && badge <= BADGE_NUMBER_MAX)
		return write_own(c, (struct own_code){.kind = OWN_BADGE, .number = (int32_t)badge}, "", out);
	if (label >= 1 && label <= 99999999)
		return write_own(c,
		                 (struct own_code){.kind = OWN_ITEM,
		                                   .role = 'P',
		                                   .station = c->station.number,
		                                   .number = (int32_t)label},
		                 "(91)", out);
	if (!*text || strlen(text) >= STEP_MAX)
		return -EINVAL;
	memcpy(out, text, strlen(text) + 1);
	return 0;
}

static int no_step(size_t number, struct error *e)
{
	return error_set(e, -EINVAL,
	                 "step %zu is none of a stores bench: give a card, a room, a badge, a "
	                 "label, a code or a text",
	                 number);
}

static int check_steps(const struct core *c, int32_t room, const json_t *steps, struct error *e)
{
	char text[STEP_MAX];
	size_t i;
	json_t *x;
	if (!json_array_size(steps) || json_array_size(steps) > STOCK_STEPS_MAX)
		return error_set(e, -EINVAL, "'steps' must be a list of 1 to %d steps: give fewer at once",
		                 STOCK_STEPS_MAX);
	json_array_foreach((json_t *)steps, i, x)
	{
		const char *at = json_text(x, "at");
		if (write_step(c, room, x, text) < 0 || (*at && event_list_number(LIST_BENCH, at) < 0))
			return no_step(i + 1, e);
	}
	return 0;
}

/* The labels that were numbered wait for their box, whoever read the last of them back. */
static int stays_open(enum bench_question q)
{
	return q == BENCH_NOTHING || q == BENCH_BOX_AGAIN;
}

static int check_bench(const struct core *c, int32_t room, struct error *e)
{
	struct next next;
	if (!core_is_bench(c, room))
		return error_set(e, -ENOENT,
		                 "station.ini has no stores bench of that number: see 'bandtally status'");
	if (stays_open(asked_at(c, room)))
		return 0;
	core_bench_next(c, room, &next);
	return error_set(
	    e, -EBUSY,
	    "nothing was done: somebody is asked something at that bench (%.300s): answer it there, "
	    "or leave it with DONE",
	    next.words);
}

/* --- who did it ------------------------------------------------------------------------------------ */

/* The step that gives the badge of whoever began it, or of the second person; NULL none. */
static const json_t *badge_step(const json_t *steps, int second)
{
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)steps, i, x)
	{
		if (json_number(x, "badge", 0) && (strcmp(json_text(x, "at"), "second") == 0) == second)
			return x;
	}
	return NULL;
}

static int refuses(struct error *why, const struct say *what)
{
	say_sentence(what, why->text, sizeof why->text);
	return why->code = -EINVAL;
}

/* Looked at before anything is done: the steps before a badge that nobody has, or that is the first one again, would stay. */
static int check_people(const struct core *c, const json_t *steps, struct error *why)
{
	const struct staff *staff = &c->station.staff;
	const json_t *first = badge_step(steps, 0), *second = badge_step(steps, 1);
	const json_t *const each[] = {first, second};
	for (size_t i = 0; i < 2; i++) {
		int32_t number = (int32_t)json_number(each[i], "badge", 0);
		const struct person *p = staff_find(staff, number);
		if (each[i] && (!p || p->withdrawn))
			return refuses(why, p ? SAY(BADGE_WITHDRAWN, .badge = number)
			                      : SAY(BADGE_UNKNOWN, .badge = number));
	}
	int32_t one = (int32_t)json_number(first, "badge", 0);
	if (first && second && json_number(second, "badge", 0) == one)
		return refuses(why, SAY(STOCK_ANOTHER_BADGE, .person = staff_name(staff, one)));
	return 0;
}

/* What the steps answer to this question; `otherwise` where they say nothing of it. */
static const char *answer_to(const json_t *steps, enum bench_question q, const char *otherwise)
{
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)steps, i, x)
	{
		if (event_list_number(LIST_BENCH, json_text(x, "at")) == (int)q)
			return json_text(x, "text");
	}
	return otherwise;
}

/* A step that is left out, since a code answered already, may say the same and nothing else. */
static int check_code(const struct batch *is, const json_t *steps, struct error *why)
{
	char lot[LOT_MAX], day[16];
	unsigned n = (unsigned)is->expiry;
	snprintf(lot, sizeof lot, "%s", is->lot[0] ? is->lot : "none");
	snprintf(day, sizeof day, n ? "%04u-%02u-%02u" : "none", n / 10000 % 10000, n / 100 % 100, n % 100);
	const char *given = answer_to(steps, BENCH_LOT, lot), *until = answer_to(steps, BENCH_EXPIRY, day);
	if (strcmp(given, lot) == 0 && strcmp(until, day) == 0)
		return 0;
	return error_set(why, -EINVAL,
	                 "its code says lot %s, expiry %s, and lot %.40s, expiry %.40s is given: look at the "
	                 "pack, and leave out what its code says",
	                 lot, day, given, until);
}

/* Asked before the last answer, which receives it. A second person has no part in what a code says. */
static int check_receipt(const struct core *c, int32_t room, const json_t *steps, struct error *why)
{
	const struct bench_asked *q = &stock_bench(&c->stock, room)->asked;
	if (q->what != BENCH_HOW_MANY)
		return 0;
	if (check_code(&q->batch, steps, why) < 0)
		return why->code;
	if (q->n || !badge_step(steps, 1))
		return 0;
	return error_set(
	    why, -EINVAL,
	    "its code says lot and expiry, so that no second person confirms them: leave out --and");
}

/* --- carried out ----------------------------------------------------------------------------------- */

/* Closing is no question where the last label was read in a room: why it cannot be yet is told here. */
static int check_box(const struct core *c, int32_t room, const json_t *steps, struct error *e)
{
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)steps, i, x)
	{
		const struct printing *p = stock_printing_at(&c->stock, room);
		int open = p ? printing_open(p) : 0;
		if (!*json_text(x, "box") || asked_at(c, room) == BENCH_BOX_AGAIN)
			continue;
		if (!p)
			return error_set(e, -ENOENT,
			                 "nothing was closed: no labels of this bench wait for their box");
		if (open)
			return error_set(
			    e, -EBUSY,
			    "nothing was closed: of labels %d to %d, %d were not read back: read them "
			    "back, or enter which did not come out ('bandtally stock spoilt')",
			    (int)p->batch.first, (int)p->batch.last, open);
	}
	return 0;
}

static const struct reply *take_step(struct core *c, int32_t room, const char *scanner, const char *text)
{
	return core_scan(c, &(struct scan){.scanner = scanner,
	                                   .room = room,
	                                   .aim = "",
	                                   .data = text,
	                                   .size = strlen(text),
	                                   .flags = EVENT_KEYED});
}

static int answers(const struct core *c, int32_t room, const json_t *step)
{
	const char *at = json_text(step, "at");
	return !*at || event_list_number(LIST_BENCH, at) == (int)asked_at(c, room);
}

static void leave_question(struct core *c, int32_t room)
{
	char done[STEP_MAX];
	if (write_own(c, (struct own_code){.kind = OWN_CARD, .room = room, .meaning = CARD_DONE}, "", done) ==
	    0)
		take_step(c, room, "keyed", done);
}

struct done {
	enum verdict verdict; /* of the last step */
	const char *why;      /* the name of the sentence that refused */
	int entered;          /* steps that entered more than a question or a badge */
	json_t *said;
};

static void say_done(struct done *d, enum verdict verdict, const char *said)
{
	d->verdict = verdict;
	json_array_append_new(d->said, name_told(said, SAID_MAX));
}

static int is_entered(const struct outcome *o)
{
	for (int i = 0; i < o->count && o->reply.verdict != VERDICT_REFUSED; i++) {
		enum event_kind kind = o->events[i].kind;
		if (kind != EV_BENCH_ASKED && kind != EV_BENCH_PERSON)
			return 1;
	}
	return 0;
}

static void take_steps(struct core *c, int32_t room, const json_t *steps, struct done *d)
{
	char text[STEP_MAX];
	struct error why = {0};
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)steps, i, x)
	{
		if (!answers(c, room, x))
			continue;
		if (check_receipt(c, room, steps, &why) < 0) {
			say_done(d, VERDICT_REFUSED, why.text);
			return;
		}
		write_step(c, room, x, text);
		take_step(c, room, "keyed", text);
		d->entered += is_entered(&c->outcome);
		say_done(d, c->outcome.reply.verdict, c->outcome.reply.said);
		if (d->verdict == VERDICT_REFUSED) {
			const struct reply *r = &c->outcome.reply;
			d->why = r->n_parts ? saying_name(r->parts[0].saying) : NULL;
			return;
		}
	}
}

json_t *stock_steps(struct core *c, int32_t room, const json_t *steps, struct error *e)
{
	struct error why = {0};
	struct done d = {.verdict = VERDICT_ACCEPTED};
	struct next next = {0};
	if (check_bench(c, room, e) < 0 || check_steps(c, room, steps, e) < 0 ||
	    check_box(c, room, steps, e) < 0)
		return NULL;
	json_t *o = json_object();
	d.said = json_array();
	if (check_people(c, steps, &why) < 0)
		say_done(&d, VERDICT_REFUSED, why.text);
	else
		take_steps(c, room, steps, &d);
	if (!stays_open(asked_at(c, room))) {
		core_bench_next(c, room, &next);
		leave_question(c, room);
	}
	json_object_set_new(o, "verdict", json_string(verdict_name(d.verdict)));
	json_object_set_new(o, "said", d.said);
	json_object_set_new(o, "why", json_string(d.why ? d.why : ""));
	json_object_set_new(o, "entered", json_integer(d.entered));
	json_object_set_new(o, "asked", name_told(next.words, sizeof next.words));
	return o;
}

const struct reply *stock_step(struct core *c, int32_t room, const char *scanner, const json_t *step,
                               struct error *e)
{
	char text[STEP_MAX];
	if (core_is_bench(c, room) && write_step(c, room, step, text) == 0)
		return take_step(c, room, scanner, text);
	no_step(1, e);
	return NULL;
}
