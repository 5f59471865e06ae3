#include "run/prove.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "record/keys.h"

static void public_file(const struct core *c, char path[PATH_MAX])
{
	snprintf(path, PATH_MAX, "%.300s/" KEYS_FILE, c->folder);
}

/* The key that signed before this start: the record's, or, of a version that named none there, the file's. 1 known. */
static int key_before(const struct core *c, char kid[KEY_TEXT_MAX])
{
	char path[PATH_MAX];
	struct keys there;
	const char *known = c->station.proof.kid;
	public_file(c, path);
	if (!known[0] && keys_read(&there, path, NULL) == 0)
		known = there.list[0].kid;
	snprintf(kid, KEY_TEXT_MAX, "%s", known);
	return kid[0] != 0;
}

/* With a fresh record nothing was lost. */
static unsigned how_it_changed(const struct core *c)
{
	char before[KEY_TEXT_MAX];
	unsigned how = seal_state(c->seal) & (KEY_MADE | KEY_DAMAGED);
	if (!record_last(c->record, NULL))
		return how & KEY_DAMAGED;
	if (key_before(c, before) && strcmp(before, seal_key(c->seal)->kid) != 0)
		how |= KEY_CHANGED;
	return how;
}

int prove_key(const struct core *c, struct event *ev)
{
	const struct proof *p = &c->station.proof;
	unsigned exposed = seal_state(c->seal) & (KEY_OTHERS | KEY_LINK), how = how_it_changed(c);
	if (p->kid[0] && !how && exposed == p->exposed)
		return 0;
	*ev = (struct event){.kind = EV_KEY, .n = (int32_t)(how | exposed), .key = *seal_key(c->seal)};
	return 1;
}

static int add_recorded(void *context, const struct event *ev)
{
	struct public_key k;
	if (ev->kind == EV_KEY && key_make(&k, ev->key.x) == 0)
		keys_add(context, &k);
	return 0;
}

static int is_sealed(enum event_kind kind)
{
	return kind == EV_STARTED || kind == EV_STOPPED || kind == EV_CASE_ENDED;
}

int prove_seals(const struct event *events, int count, struct event *seal)
{
	for (int i = 0; i < count; i++)
		if (is_sealed(events[i].kind)) {
			*seal = (struct event){.kind = EV_SEALED,
			                       .at = events[count - 1].at,
			                       .room = events[i].room,
			                       .case_no = events[i].case_no};
			return 1;
		}
	return 0;
}

int prove_sign(void *context, int64_t seq, const struct chain *head, char *jws)
{
	const struct prove_signing *by = context;
	char hex[2 * CHAIN_BYTES + 1];
	_cleanup_(buf_free) struct buf text = {0};
	chain_hex(head, hex);
	_cleanup_(json_drop) json_t *payload = json_pack("{s:s,s:I,s:I}", "chain", hex, "incarnation",
	                                                 (json_int_t)by->incarnation, "seq", (json_int_t)seq);
	int n = payload ? seal_jws(by->seal, payload, &text) : -ENOMEM;
	if (n == 0 && text.size >= SEAL_JWS_MAX)
		n = -EMSGSIZE;
	if (n == 0)
		memcpy(jws, text.data, text.size + 1);
	return n;
}

void prove_publish(struct core *c)
{
	char path[PATH_MAX];
	static struct keys now, there;
	struct error e = {0};
	public_file(c, path);
	now = (struct keys){0};
	keys_add(&now, seal_key(c->seal));
	record_each_station(c->record, EV_KEY, add_recorded, &now, NULL);
	if (keys_read(&there, path, &e) == 0)
		for (int i = 0; i < there.count; i++)
			keys_add(&now, &there.list[i]);
	int n = keys_write(&now, path);
	if (n < 0)
		log_line("cannot write %s: %s: check the data folder; the record holds the keys", path,
		         strerror(-n));
}
