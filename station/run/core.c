/* A scan, from the bytes that its driver wrote to the sentence that people read.
 *
 * core_scan() asks which room the scanner works for, core_read() what the code says (code/), whether it is half of a pack's
 * data whose other half waits (decide/halves.h), and what the record knows of it (run/known.h); then the input is complete
 * and nothing below it looks anything up. core_carry_out() asks reads whether this code was read a moment ago, decide() what it means, and stores
 * the events; only what is on disk is applied to the station and told (rule 12). Where storing fails the reply that was
 * decided is thrown away: it would speak of what did not happen. The outcome lies in the core, since it is large and one
 * thread has one at a time; a pointer to its reply is good until the next scan.
 *
 * What is kept here and not in the station's state need not outlive a restart: halves that wait, codes read within the
 * last seconds, guesses of slip codes, the last replies of each room. Whoever reads what the board shows compares
 * `changes`, which every way to another state must raise.
 */
#include "run/core.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "decide/slip-read.h"
#include "record/snapshot.h"
#include "run/aside.h"
#include "run/core-internal.h"
#include "run/doubt.h"
#include "run/prove.h"

#define REFUSED_AGAIN_MS 1000

const char *verdict_name(enum verdict verdict)
{
	static const char *const names[] = {"accepted", "refused", "question"};
	return names[verdict];
}

int core_quiet(const struct core *c)
{
	return !c->station.clock_wrong && settings_quiet(&c->settings.sound, core_now(c).wall_ms);
}

int core_room_index(const struct core *c, int32_t room)
{
	for (int i = 0; i < c->station.n_rooms; i++)
		if (c->station.rooms[i].number == room)
			return i;
	return -1;
}

void core_weigh(struct core *c)
{
	char was[DISTRUST_MAX];
	memcpy(was, c->distrust, sizeof was);
	core_distrust_in(c, NULL, 0, c->distrust);
	if (c->distrust[0] && strcmp(c->distrust, was) != 0)
		log_warn(LOG_DISTRUST, "%s", c->distrust);
	c->changes++;
}

/* station_fits() tried each event, so this would be a fault of ours; the record is right. */
static void diverged(struct core *c, const struct event *e)
{
	c->doubt.diverged = e->seq;
	c->doubt.diverged_by = e->kind;
	log_warn(LOG_RECORD, "event %lld (%s) does not apply", (long long)e->seq, event_name(e->kind));
}

/* A scanner that works for its own room again without a word would enter what it reads in the wrong one. */
static void tell_forgotten(struct core *c, const struct event *e)
{
	char said[SAID_MAX];
	const struct carried *falls = station_carried_falls(&c->station, e);
	if (!falls)
		return;
	const struct say *back = SAY(R_SCANNER_BACK, .scanner = falls->scanner);
	say_sentence(back, said, sizeof said);
	log_line("%s", said);
	core_tell(c, falls->room, VERDICT_QUESTION, back);
}

/* That a case has it as well is for its slip. */
static void tell_clock(const struct event *e)
{
	if (e->kind != EV_CLOCK_WRONG || e->case_no)
		return;
	if (e->n)
		log_warn(LOG_CLOCK, "the wall clock cannot be right: set it: durations go by another clock");
	else
		log_line("the wall clock can be right again");
}

static int append(struct core *c, struct event *events, int count, struct event *seal, struct error *e)
{
	struct seal_signing by = {c->seal, station_incarnation(&c->station)};
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_INCARNATION)
			by.incarnation = events[i].n;
	int n = count ? record_append_sealed(c->record, events, count, seal, seal_sign_head, &by, e) : 0;
	if (!count || n == -EINVAL) /* nothing was to be written */
		return n;
	snprintf(c->doubt.storage, sizeof c->doubt.storage, "%.199s", n < 0 ? e->text : "");
	if (n == -EUCLEAN)
		aside_want(c->folder);
	core_weigh(c);
	return n;
}

/* In each room whose open case has what was put in quarantine, at once, and on the slip of that case. */
static void tell_recall(struct core *c, const struct event *q)
{
	struct event recalled[SHEETS_MAX];
	int n = station_recalls(&c->station, q, recalled);
	for (int i = 0; i < n; i++) {
		const struct event *e = &recalled[i];
		const struct say *has =
		    SAY(RECALL_HAS_IT, .item = e->thing.name, .lot = e->thing.lot,
		        .what = e->thing.lot[0] ? SAY_OF_LOT_ALL_EXPIRIES : SAY_OF_ANY_LOT, .reason = e->text,
		        .case_no = e->case_no);
		core_tell(c, e->room, VERDICT_QUESTION, has);
	}
	if (n)
		core_store(c, recalled, n, NULL);
}

int core_store(struct core *c, struct event *events, int count, struct error *e)
{
	struct error own = {0};
	struct event seal;
	for (int i = 0; i < count; i++) {
		events[i].station = c->station.number;
		if (!events[i].at.boot)
			events[i].at = core_now(c);
		if (events[i].kind == EV_SLIP_QUEUED && c->seal)
			events[i].proof = slip_proof(c->seal, c->station.site, c->station.number, events[i].n,
			                             events[i].other);
	}
	bool sealed = !c->station.practice && prove_seals(events, count, &seal);
	if (sealed)
		seal.station = c->station.number;
	int n = station_fits(&c->station, events, count, e ? e : &own);
	if (n == 0)
		n = stock_fits(&c->stock, events, count, e ? e : &own);
	if (n == 0)
		n = append(c, events, count, sealed ? &seal : NULL, e ? e : &own);
	if (n < 0) {
		if (!e)
			log_error(LOG_STORE, &own);
		return n;
	}
	for (int i = 0; i < count; i++) {
		day_take(&c->day, &events[i]);
		tell_forgotten(c, &events[i]);
		tell_clock(&events[i]);
		if (station_apply(&c->station, &events[i]) < 0 || stock_apply(&c->stock, &events[i]) < 0)
			diverged(c, &events[i]);
	}
	if (sealed)
		station_apply(&c->station, &seal);
	prove_note(c, events, count, sealed);
	core_weigh(c);
	if (c->stored)
		c->stored(c->context, events, count);
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_QUARANTINED)
			tell_recall(c, &events[i]);
	return 0;
}

/* Where it was read in vain, whoever asked hears it at once; the board says it from the next second on. */
void core_look_aside(struct core *c)
{
	if (record_damage(c->record)[0] && !c->doubt.damaged) {
		c->doubt.damaged = 1;
		core_weigh(c);
	}
	int was = c->doubt.aside[0] != 0;
	if (!aside_find(c->folder, c->doubt.aside, sizeof c->doubt.aside))
		c->doubt.aside[0] = 0;
	if (was != (c->doubt.aside[0] != 0))
		core_weigh(c);
}

/* --- snapshots ------------------------------------------------------------------------------------ */

#define SNAPSHOT_EVENTS 2000 /* which a start reads in some 20 ms */

static void snapshot_over(struct core *c)
{
	snapshot_free(c->snapshot);
	c->snapshot = NULL;
}

/* Of a station that did not follow its record there must be none. One that cannot be written is no fault that anybody
 * has to mend: the next start takes longer. */
static void snapshot_start(struct core *c)
{
	if (c->doubt.diverged || !c->seal)
		return;
	c->snapshot_seq = record_last(c->record, NULL);
	_cleanup_(buf_free) struct buf annex = {0};
	int n = stock_pack(&c->stock, &annex);
	if (n == 0)
		n = snapshot_begin(&c->snapshot, c->record, c->seal, c->folder, &c->station, &annex);
	if (n < 0)
		log_warn_errno(LOG_SNAPSHOT, n, "no snapshot is written");
}

static int32_t snapshot_turn(struct core *c)
{
	int n = snapshot_step(c->snapshot);
	if (n < 0)
		log_warn_errno(LOG_SNAPSHOT, n, "the snapshot cannot be written");
	if (n <= 0)
		snapshot_over(c);
	return n > 0 ? n : 0;
}

int32_t core_snapshot(struct core *c)
{
	if (!c->snapshot && record_last(c->record, NULL) - c->snapshot_seq < SNAPSHOT_EVENTS)
		return 0;
	if (c->snapshot)
		return snapshot_turn(c);
	snapshot_start(c);
	return c->snapshot ? 1 : 0;
}

void core_snapshot_last(struct core *c)
{
	snapshot_over(c);
	if (c->record)
		snapshot_start(c);
	while (c->snapshot)
		snapshot_turn(c);
}

void core_close(struct core *c)
{
	snapshot_over(c);
	record_close(c->record);
	seal_close(c->seal);
	station_deinit(&c->station);
	languages_free(&c->languages);
	stock_deinit(&c->stock);
	c->record = NULL;
	c->seal = NULL;
}

const struct language *core_language(const struct core *c, int32_t room)
{
	return languages_find(&c->languages, station_language(&c->station, room));
}

/* Newest first; the same refusal again within a moment stands there once. */
static void remember(struct core *c, int32_t room, const struct recent *r)
{
	int index = core_room_index(c, room);
	if (index < 0)
		return;
	struct recent *list = c->recent[index];
	if (r->verdict == VERDICT_REFUSED && list[0].verdict == VERDICT_REFUSED &&
	    moment_between_ms(list[0].at, r->at) < REFUSED_AGAIN_MS && strcmp(list[0].said, r->said) == 0) {
		list[0].at = r->at;
		return;
	}
	memmove(&list[1], &list[0], sizeof *list * (RECENT_MAX - 1));
	list[0] = *r;
}

void core_pass_on(struct core *c, int32_t room, struct moment at, const struct reply *reply)
{
	struct recent r = {.at = at, .verdict = reply->verdict};
	memcpy(r.said, reply->said, sizeof r.said);
	reply_words_in(reply, core_language(c, room), r.told);
	remember(c, room, &r);
	c->changes++;
}

void core_tell(struct core *c, int32_t room, enum verdict verdict, const struct say *what)
{
	struct recent r = {.at = core_now(c), .verdict = verdict};
	say_sentence(what, r.said, sizeof r.said);
	say_sentence_in(core_language(c, room), what, r.told, sizeof r.told);
	remember(c, room, &r);
	c->changes++;
}

/* The first paper that shows it, or one of numbers that have not been passed by yet. */
static int is_unheard_of(const struct core *c, const struct input *in)
{
	return in->act == ACT_SLIP && in->known.newer && !in->known.unanswered &&
	       !input_is_lost(&c->station, in) &&
	       (!c->station.proof.begun || in->number > c->station.last_slip_no);
}

/* What was counted since is on paper alone, and its numbers must not be given out again. */
static void begin_behind_paper(struct core *c, const struct input *in)
{
	struct event e;
	prove_newer(c, in->number, &e);
	log_warn(LOG_OLDER,
	         "slip %07d, copy %d, is newer than this record: an older one was put back: numbers go on "
	         "behind it",
	         (int)in->number, (int)in->copy);
	core_store(c, &e, 1, NULL);
}

static struct event *refused_in(struct core *c, int32_t room)
{
	int place = core_room_index(c, room);
	return place < 0 ? NULL : &c->refused[place];
}

/* What was refused a moment ago, for the same reason. */
static int is_refused_again(struct core *c, const struct outcome *o)
{
	const struct event *e = &o->events[0], *was = refused_in(c, e->room);
	return o->count == 1 && e->kind == EV_REFUSED && was && was->kind == EV_REFUSED &&
	       moment_between_ms(was->at, core_now(c)) < REFUSED_AGAIN_MS && e->case_no == was->case_no &&
	       e->flags == was->flags && said_same(&e->said, &was->said);
}

static int store_outcome(struct core *c, struct outcome *o, struct error *e)
{
	if (is_refused_again(c, o))
		return 0;
	int n = core_store(c, o->events, o->count, e);
	struct event *refused = o->count ? refused_in(c, o->events[0].room) : NULL;
	if (n == 0 && refused)
		*refused = o->events[0];
	return n;
}

/* People read that it was not entered; who mends the station, where that was found out. */
static void log_misfit(const struct misfit *m)
{
	struct error e;
	if (!m->code)
		return;
	error_set(&e, m->code, "not entered: an event %s does not fit the sheet", event_name(m->kind));
	e.at = m->at;
	log_error(LOG_STORE, &e);
}

/* What could not be stored was not done (rule 12). */
const struct reply *core_carry_out(struct core *c, struct input *in, int *stored)
{
	struct error e = {0};
	struct reply *reply = &c->outcome.reply;
	int newer = is_unheard_of(c, in);
	reads_look(&c->reads, in, c->station.policy.repeat_ms);
	if (core_is_bench(c, in->room)) {
		bench_turn(c, in);
	} else {
		decide(&c->station, in, &c->outcome);
		log_misfit(&c->outcome.misfit);
		stock_takes(c, &c->outcome);
	}
	int n = store_outcome(c, &c->outcome, &e);
	if (n == 0)
		stock_tells(c, in);
	else if (n < 0)
		log_error(LOG_STORE, &e);
	if (stored)
		*stored = n == 0;
	if (n < 0) {
		c->outcome.enter = 0;
		reply_say(reply, VERDICT_REFUSED, SAY(R_NOT_ENTERED));
		say_sentence(SAY(R_NOT_ENTERED_FOR, .fault = e.text), reply->said, sizeof reply->said);
		next_say(&reply->next, SAY(HEAD_BY_HAND));
		next_word(&reply->next, &c->outcome.sheet, 0);
		c->outcome.told_room = 0;
	}
	reads_note(&c->reads, in, reply->verdict);
	core_pass_on(c, in->room, in->at, reply);
	if (c->outcome.told_room) {
		struct say told = said_say(&c->outcome.told);
		core_tell(c, c->outcome.told_room, VERDICT_QUESTION, &told);
	}
	if (newer && n == 0)
		begin_behind_paper(c, in);
	return reply;
}

/* --- time -------------------------------------------------------------------------------------------- */

/* What the board says of those who guess ends by itself. */
static void look_at_silenced(struct core *c)
{
	int n = guesses_words(&c->guesses, NULL, core_now(c), NULL);
	c->changes += n != c->silenced;
	c->silenced = n;
}

int32_t core_tick(struct core *c)
{
	struct error e = {0};
	look_at_silenced(c);
	struct input in = {.act = ACT_TICK, .at = core_now(c)};
	decide(&c->station, &in, &c->outcome);
	if (!c->outcome.count)
		return 0;
	int32_t room = c->outcome.events[0].room;
	if (core_store(c, c->outcome.events, c->outcome.count, &e) < 0)
		return 0;
	return c->outcome.reply.said[0] ? room : 0;
}
