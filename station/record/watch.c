#include "record/watch.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

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

void watch_begin(struct watch *w, const struct verify_how *how, struct verified *v)
{
	memset(w, 0, sizeof *w);
	w->how = how;
	w->v = v;
	w->incarnation = 1;
}

/* What a seal says must be what stands before it, and its key the one that the record named last. */
static const char *seal_fault(struct watch *w)
{
	char hex[2 * CHAIN_BYTES + 1];
	struct error e;
	int which = 0;
	const struct keys *keys = w->how->keys ? w->how->keys : &w->own;
	_cleanup_(json_drop) json_t *payload = NULL;
	if (keys_check(keys, w->jws, &payload, &which, &e) != 1)
		return "is not signed by any key of this station";
	if (strcmp(keys->list[which].kid, w->key.kid) != 0)
		return "is signed by another key than the record names";
	chain_hex(&w->head, hex);
	if (json_number(payload, "seq", 0) != w->seal_of || strcmp(json_text(payload, "chain"), hex) != 0)
		return "signs something else than the record holds: the record was changed or made anew";
	if (json_number(payload, "incarnation", 0) != w->incarnation)
		return "is of another incarnation of the record";
	return NULL;
}

static void look_at_seal(struct watch *w)
{
	if (!w->seal)
		return;
	const char *fault = seal_fault(w);
	if (fault)
		watch_found(w, "event %lld (sealed) %s", (long long)w->seal, fault);
	else
		w->v->sealed_to = w->seal_of;
	w->v->seals_checked++;
	w->seal = 0;
}

static void take_key(struct watch *w, const struct event *ev)
{
	struct public_key k;
	if (strcmp(w->key.kid, ev->key.kid) != 0)
		look_at_seal(w);
	if (key_make(&k, ev->key.x) < 0 || strcmp(k.kid, ev->key.kid) != 0)
		watch_found(w, "event %lld (key) names a key that is none", (long long)ev->seq);
	else if (w->how->keys && keys_find(w->how->keys, k.kid) < 0)
		watch_found(w, "event %lld (key) names a key %s that is not among those of this station",
		            (long long)ev->seq, k.kid);
	w->key = ev->key;
	keys_add(&w->own, &ev->key);
}

static void take_seal(struct watch *w, const struct event *ev, const struct chain *before)
{
	if (w->how->each_seal)
		look_at_seal(w);
	if (ev->ref != ev->seq - 1)
		watch_found(w, "event %lld (sealed) does not stand behind what it seals", (long long)ev->seq);
	w->v->seals++;
	w->seal = ev->seq;
	w->seal_of = ev->ref;
	w->head = *before;
	memcpy(w->jws, ev->seal.jws, sizeof w->jws);
	w->unsealed = 0;
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

void watch_event(struct watch *w, const struct event *ev, const struct chain *before)
{
	switch (ev->kind) {
	case EV_STARTED:
	case EV_STOPPED:
	case EV_CASE_ENDED:
		is_unsealed(w);
		w->unsealed = ev->seq;
		w->unsealed_kind = ev->kind;
		return;
	case EV_KEY:
		take_key(w, ev);
		return;
	case EV_INCARNATION:
		look_at_seal(w);
		w->incarnation = ev->n;
		return;
	case EV_SEALED:
		take_seal(w, ev, before);
		return;
	default:
		return;
	}
}

void watch_end(struct watch *w)
{
	is_unsealed(w);
	look_at_seal(w);
	w->v->incarnation = w->incarnation;
	if (!w->key.kid[0] && w->how->keys && !w->how->keys->single)
		watch_found(
		    w,
		    "the record names no key, though this station's public file is of a version that names "
		    "each: it was made anew, or is older than that version");
}
