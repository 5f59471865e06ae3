#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "count/unfollowed.h"
#include "record/verify.h"
#include "tool/audit-record.h"
#include "tool/fault.h"

struct tally {
	struct fault *fault;
	int64_t of_kind[EV_KINDS + 1];
	int64_t of_slip_state[SLIP_SEEN + 1];
};

/* What of an event is a name that somebody gave to a person or a case. */
static const char *name_in(const struct event *e)
{
	switch ((int)e->kind) {
	case EV_STAFF_SET:
		return e->staff.name;
	case EV_CASE_OPENED:
	case EV_CASE_ENDED:
	case EV_JOINED:
	case EV_PAID:
		return e->text;
	default:
		return "";
	}
}

static int take(void *context, const struct event *e)
{
	struct tally *t = context;
	t->of_kind[e->kind]++;
	if (e->kind == EV_SLIP_STATE && e->what <= SLIP_SEEN)
		t->of_slip_state[e->what]++;
	return mask_name(&t->fault->mask, name_in(e));
}

static void print_tally(const struct tally *t)
{
	for (int kind = 0; kind <= EV_KINDS; kind++)
		if (t->of_kind[kind])
			buf_printf(&t->fault->out, "%s: %" PRId64 "\n", event_name((enum event_kind)kind),
			           t->of_kind[kind]);
	for (int state = 0; state <= SLIP_SEEN; state++)
		if (t->of_slip_state[state])
			buf_printf(&t->fault->out, "slip-state, %s: %" PRId64 "\n",
			           event_list_name(LIST_SLIP_STATE, state), t->of_slip_state[state]);
}

static void say_found(void *context, const char *what)
{
	fault_masked(context, "found: ", what);
}

static void verify(struct fault *f, struct record *r, const char *path)
{
	static struct keys keys;
	struct error e = {0};
	struct verified v = {0};
	char from[PATH_MAX];
	struct verify_how how = {.indexes = 1, .found = say_found, .context = f};
	int known = audit_keys(&keys, NULL, path, from, &e);
	how.keys = known > 0 ? &keys : NULL;
	if (known < 0)
		fault_masked(f, "public keys: ", e.text);
	int n = record_verify_all(r, &how, &v, &e);
	buf_printf(&f->out,
	           "verify: %s; events %" PRId64 ", incarnation %d, seals %d, sealed up to event %" PRId64
	           ", held against the keys of %s\n",
	           n == 0 && !v.found ? "whole" : "NOT whole", v.events, (int)v.incarnation, v.seals,
	           v.sealed_to, how.keys ? "the station" : "the record itself");
	if (n < 0)
		fault_masked(f, "", e.text);
}

/* What a start would make of it. */
static void follow(struct fault *f, struct record *r)
{
	struct error e = {0};
	char words[300];
	struct station *st = calloc(1, sizeof *st);
	if (!st)
		return;
	if (record_load(r, st, &e) < 0)
		fault_masked(f, "a start would fail: ", e.text);
	else if (station_unfollowed_words(st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, words, sizeof words))
		fault_masked(f, "a start would say: ", words);
	else
		buf_add_text(&f->out, "a start would follow each event\n");
	station_deinit(st);
	free(st);
}

int fault_record(struct fault *f, struct error *e)
{
	struct record *r = NULL;
	struct tally t = {.fault = f};
	char path[PATH_MAX];
	int held, n = audit_record(&r, NULL, path, &held, e);
	fault_title(f, "record");
	if (n == 0) {
		verify(f, r, path);
		n = record_each(r, 0, take, &t, e);
		print_tally(&t);
		follow(f, r);
	}
	audit_done(r, held);
	if (n < 0 && n != -EPERM)
		fault_masked(f, "it could not be read whole: ", e->text);
	return n == -EPERM ? n : 0;
}
