#include "record/watch.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "record/gone.h"

void watch_found(struct watch *w, const char *format, ...)
{
	char text[400];
	va_list words;
	va_start(words, format);
	vsnprintf(text, sizeof text, format, words);
	va_end(words);
	w->v->found++;
	w->how->found(w->how->context, text);
}

void watch_begin(struct watch *w, const struct verify_how *how, struct verified *v, struct record *r)
{
	memset(w, 0, sizeof *w);
	w->how = how;
	w->v = v;
	w->r = r;
	w->incarnation = 1;
}

/* What a seal says must be what stands before it, and its key the one that the record named last. */
static const char *seal_fault(struct watch *w, const struct chain *head)
{
	char hex[2 * CHAIN_BYTES + 1];
	struct error e;
	int which = 0;
	const struct keys *keys = w->how->keys ? w->how->keys : &w->own;
	_cleanup_(json_drop) json_t *payload = NULL;
	if (keys_check(keys, w->ev.seal.jws, &payload, &which, &e) != KEYS_SIGNED)
		return "is not signed by any key of this station";
	if (strcmp(keys->list[which].kid, w->key.kid) != 0)
		return "is signed by another key than the record names";
	chain_hex(head, hex);
	if (json_number(payload, "seq", 0) != w->ev.ref || strcmp(json_text(payload, "chain"), hex) != 0)
		return "signs something else than the record holds: the record was changed or made anew";
	if (json_number(payload, "incarnation", 0) != w->incarnation)
		return "is of another incarnation of the record";
	return NULL;
}

static int look_at_seal(struct watch *w)
{
	struct chain head = {0};
	if (!w->seal)
		return 0;
	int n = record_event_at(w->r, w->seal, &w->ev);
	if (n == 0)
		n = record_hash_at(w->r, w->ev.ref, &head);
	if (n < 0)
		return n;
	const char *fault = seal_fault(w, &head);
	if (fault)
		watch_found(w, "event %lld (sealed) %s", (long long)w->seal, fault);
	else
		w->v->sealed_to = w->ev.ref;
	w->v->seals_checked++;
	w->seal = 0;
	return 0;
}

static int take_key(struct watch *w, int64_t seq)
{
	struct event ev;
	struct public_key k;
	int n = record_event_at(w->r, seq, &ev);
	if (n == 0 && strcmp(w->key.kid, ev.key.kid) != 0)
		n = look_at_seal(w);
	if (n < 0)
		return n;
	if (key_make(&k, ev.key.x) < 0 || strcmp(k.kid, ev.key.kid) != 0)
		watch_found(w, "event %lld (key) names a key that is none", (long long)seq);
	else if (w->how->keys && keys_find(w->how->keys, k.kid) < 0)
		watch_found(w, "event %lld (key) names a key %s that is not among those of this station",
		            (long long)seq, k.kid);
	w->key = ev.key;
	keys_add(&w->own, &ev.key);
	return 0;
}

static int take_incarnation(struct watch *w, int64_t seq)
{
	int n = look_at_seal(w);
	if (n == 0)
		n = record_event_at(w->r, seq, &w->ev);
	if (n == 0)
		w->incarnation = w->ev.n;
	return n;
}

static int take_seal(struct watch *w, const struct mark *m)
{
	int n = w->how->each_seal ? look_at_seal(w) : 0;
	if (!m->behind)
		watch_found(w, "event %lld (sealed) does not stand behind what it seals", (long long)m->seq);
	w->v->seals++;
	w->seal = m->seq;
	w->unsealed = 0;
	return n;
}

static void is_unsealed(struct watch *w)
{
	if (w->unsealed && w->key.kid[0])
		watch_found(
		    w,
		    "event %lld (%s) has no seal behind it: what followed it was taken away, or it was "
		    "not written by the station",
		    (long long)w->unsealed, event_name(w->unsealed_kind));
	w->unsealed = 0;
}

static int ask_gone(struct watch *w)
{
	return w->gone[0] ? 0 : gone_hash(w->r, w->gone, &w->gone_rows);
}

/* What left is what one of these events says: in a record that goes on the last of them; in an archive, which its own event
 * ends, the one before it; in a copy from a hospital's store the last one before the station had that store, for whatever left
 * later is still there. A number that is missing without being said breaks the chain. */
static int take_archived(struct watch *w, int64_t seq)
{
	int n = ask_gone(w);
	if (n == 0)
		n = record_event_at(w->r, seq, &w->ev);
	w->gone_is_said |= n == 0 && strcmp(w->ev.head.hash, w->gone) == 0;
	return n;
}

static int look_at_gone(struct watch *w)
{
	int n = ask_gone(w);
	if (n == 0 && w->gone_rows && !w->gone_is_said)
		watch_found(w, "what left the record is not what the record says that left: it was changed");
	return n;
}

int watch_mark(struct watch *w, const struct mark *m)
{
	if (m->kind == EV_KEY)
		return take_key(w, m->seq);
	if (m->kind == EV_INCARNATION)
		return take_incarnation(w, m->seq);
	if (m->kind == EV_SEALED)
		return take_seal(w, m);
	if (m->kind == EV_ARCHIVED)
		return take_archived(w, m->seq);
	is_unsealed(w);
	w->unsealed = m->seq;
	w->unsealed_kind = m->kind;
	return 0;
}

int watch_end(struct watch *w)
{
	is_unsealed(w);
	int n = look_at_gone(w);
	if (n < 0)
		return n;
	w->v->incarnation = w->incarnation;
	if (!w->key.kid[0] && w->how->keys && !w->how->keys->single)
		watch_found(
		    w,
		    "the record names no key, though this station's public file is of a version that names "
		    "each: it was made anew, or is older than that version");
	return look_at_seal(w);
}
