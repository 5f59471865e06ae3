#include "event-words.h"

#include <string.h>

#include "code/own-codes.h"

#define NAMES(...) ((const char *const[]){__VA_ARGS__, NULL})

/* What the numbers of `what` are called, from 0; debts, questions and places name themselves. */
static const char *const *const whats[EV_KINDS] = {
    [EV_SCANNER_ROOM] = NAMES("for a while", "until a further card"),
    [EV_SLIP_QUEUED] = NAMES("none", "reconciliation", "discrepancy", "addendum"),
    [EV_SLIP_STATE] = NAMES("none", "queued", "written", "sent", "done", "waiting", "failed", "seen"),
    [EV_CASE_ENDED] = NAMES("open", "reconciled", "unresolved", "cancelled"),
    [EV_ITEM_SHOWN] = NAMES("no evidence", "mark", "shown"),
    [EV_DIGIT_EARLIER] = NAMES("nothing", "on", "off"),
    [EV_WHO_LOOKED] = NAMES("nobody asked", "team", "patient", "carer", "colleague", "nobody"),
    [EV_COUNT_STARTED] = NAMES("none", "initial", "final", "handover", "added"),
    [EV_COUNT_AGREED] = NAMES("none", "initial", "final", "handover", "added"),
    [EV_SEARCH_STEP] = NAMES("nothing", "done", "not done"),
    [EV_HELD] = NAMES("nothing", "card", "digit", "badge", "case label", "slip", "thing", "tray"),
    [EV_HELD_ANSWERED] = NAMES("waits", "entered", "thrown away", "meant"),
    [EV_POINT] = NAMES("not answered", "yes", "no"),
};

static const char *const conditions[] = {"as it is", "intact", "cut and complete", "pieces missing", NULL};

static const char *name_at(const char *const *names, int n)
{
	for (; names && *names; names++)
		if (n-- == 0)
			return *names;
	return NULL;
}

static const char *what_name(const struct event *e)
{
	switch (e->kind) {
	case EV_JOINED:
	case EV_LEFT:
		return e->what && e->what < TEAM_PLACES ? place_name((enum team_place)e->what) : NULL;
	case EV_OWED:
	case EV_PAID:
		return e->what < DEBT_KINDS ? debt_name((enum debt_kind)e->what) : NULL;
	case EV_ASKED:
		return !e->what                   ? "nothing more"
		       : e->what < QUESTION_KINDS ? question_name((enum question)e->what)
		                                  : NULL;
	default:
		return name_at(whats[e->kind], e->what);
	}
}

static void put_named(struct buf *out, const char *key, const char *name, int64_t n)
{
	if (name)
		buf_printf(out, ", %s%s%s", key, *key ? " " : "", name);
	else
		buf_printf(out, ", %s %lld", *key ? key : "what", (long long)n);
}

static void put_person(struct buf *out, const char *key, int32_t number, const struct staff *staff)
{
	const struct person *p = staff_find(staff, number);
	if (p)
		put_named(out, key, p->name, number);
	else if (number < 0)
		buf_printf(out, ", %s VISITOR %d", key, -(int)number);
	else
		buf_printf(out, ", %s %d", key, (int)number);
}

static void put_other(struct buf *out, const struct event *e, const struct event_context *c)
{
	if (e->kind == EV_COUNT_AGREED)
		put_person(out, "other", e->other, c->staff);
	else if (e->kind == EV_DIGIT_MOVED)
		put_named(out, "other", own_digit_name(e->other), e->other);
	else if (e->kind == EV_ITEM_SHOWN)
		put_named(out, "", name_at(conditions, e->other), e->other);
	else if (e->kind == EV_PAID || e->kind == EV_CASE_ENDED)
		put_named(out, "", event_list_name(e->kind == EV_PAID ? LIST_HOW : LIST_END_WHY, e->other),
		          e->other);
	else
		put_named(out, e->kind == EV_SLIP_QUEUED || e->kind == EV_SLIP_STATE ? "copy" : "other", NULL,
		          e->other);
}

static void put_word(struct buf *out, const char *key, const char *value)
{
	if (!*value)
		return;
	buf_add_text(out, key);
	buf_add_text(out, value);
}

static void put_thing(struct buf *out, const struct thing *t)
{
	static const char *const identities[] = {"none", "pack", "mark", NULL};
	buf_add_text(out, ", ");
	buf_add_text(out, t->identity[0] ? t->identity : t->line[0] ? t->line : "no line");
	if (t->name[0] || t->called)
		buf_printf(out, " \"%s\"", t->name[0] ? t->name : saying_text(t->called));
	put_word(out, " ", t->role ? role_name((enum role)t->role) : "");
	/* Where the identity does not begin with its line's key. */
	if (t->identity[0] && strncmp(t->identity, t->line, strlen(t->line)) != 0)
		put_word(out, " of ", t->line);
	if (t->identity[0] || t->identity_kind)
		put_word(out, " known by its ", name_at(identities, t->identity_kind));
	put_word(out, " lot ", t->lot);
	if (t->expiry)
		buf_printf(out, " expiry %d", (int)t->expiry);
	buf_add_text(out, t->single_use ? " single-use" : "");
	buf_add_text(out, t->rolls_on ? " rolls-on" : "");
	buf_add_text(out, t->unlisted ? " unlisted" : "");
	buf_add_text(out, t->shows_on_xray ? " on-xray" : "");
}

static void put_ref(struct buf *out, const struct event *e, const struct event_context *c)
{
	const char *kind = c->kind_of && e->kind != EV_SLIP_STATE ? c->kind_of(c->record, e->ref) : NULL;
	if (kind)
		buf_printf(out, ", ref %s %lld before", kind, (long long)(e->seq - e->ref));
	else
		buf_printf(out, ", ref %lld", (long long)e->ref);
}

static void put_when(struct buf *out, const struct event *e, const struct event_context *c)
{
	if (e->at.boot != c->now.boot)
		buf_printf(out, ", in boot %d", (int)e->at.boot);
	if (e->at.boot_ms != c->now.boot_ms)
		buf_printf(out, ", %lld s before", (long long)(c->now.boot_ms - e->at.boot_ms) / 1000);
	if (e->at.wall_ms != c->now.wall_ms)
		buf_printf(out, ", by wall clock %lld s before",
		           (long long)(c->now.wall_ms - e->at.wall_ms) / 1000);
}

static void put_parts(struct buf *out, const struct event *e, uint32_t fields)
{
	if (fields & F_THING)
		put_thing(out, &e->thing);
	put_word(out, ", line ", fields & F_LINE ? e->line.key : "");
	put_word(out, ", staff ", fields & F_STAFF ? e->staff.name : "");
	if (fields & F_HEAD)
		buf_printf(out, ", head %lld %s, case %d, slip %d, item %lld", (long long)e->head.seq,
		           e->head.hash, (int)e->head.case_no, (int)e->head.slip, (long long)e->head.item);
	put_word(out, ", seal ", fields & F_SEAL ? e->seal.jws : "");
	put_word(out, ", key ", fields & F_KEY ? e->key.kid : "");
	if (fields & F_BATCH)
		buf_printf(out, ", batch %s lot %s %lld to %lld", e->batch.line, e->batch.lot,
		           (long long)e->batch.first, (long long)e->batch.last);
}

static void put_said(struct buf *out, const struct said *said, int sentence)
{
	struct say say = said_say(said);
	char words[SAID_MAX];
	if (sentence)
		say_sentence(&say, words, sizeof words);
	else
		say_part(&say, words, sizeof words);
	buf_printf(out, ", \"%.200s\"", words);
}

void event_words(const struct event *e, const struct event_context *c, struct buf *out)
{
	uint32_t fields = event_fields(e->kind);
	buf_add_text(out, event_name(e->kind));
	if (e->room && e->room != c->room)
		buf_printf(out, ", room %d", (int)e->room);
	if (e->case_no)
		buf_printf(out, ", case %d", (int)e->case_no);
	if (fields & F_WHAT)
		put_named(out, "", what_name(e), e->what);
	if (fields & F_ITEM && e->item)
		buf_printf(out, ", item %d", e->item);
	if (fields & F_DIGIT && e->digit)
		put_named(out, "digit", own_digit_name(e->digit), e->digit);
	if (fields & F_PERSON && e->person)
		put_person(out, "person", e->person, c->staff);
	if (fields & F_OTHER && e->other)
		put_other(out, e, c);
	put_parts(out, e, fields);
	if (fields & F_N && e->n && e->kind == EV_COUNT_AGREED)
		put_person(out, "n", e->n, c->staff);
	else if (fields & F_N && e->n)
		put_named(out, "n", NULL, e->n);
	if (fields & F_REF && e->ref)
		put_ref(out, e, c);
	if (fields & F_SAID && e->said.saying)
		put_said(out, &e->said, e->kind == EV_REFUSED);
	if (fields & F_TEXT && e->text[0])
		buf_printf(out, ", \"%s\"", e->text);
	buf_add_text(out, e->flags & EVENT_FIRST ? ", first" : "");
	buf_add_text(out, e->flags & EVENT_LATE ? ", late" : "");
	buf_add_text(out, e->flags & EVENT_KEYED ? ", keyed" : "");
	put_when(out, e, c);
}
