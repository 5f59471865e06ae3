#include "run/prove.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "base/log.h"
#include "record/keys.h"
#include "run/aside.h"

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

bool prove_key(const struct core *c, struct event *ev)
{
	const struct proof *p = &c->station.proof;
	unsigned exposed = seal_state(c->seal) & (KEY_OTHERS | KEY_LINK), how = how_it_changed(c);
	if (p->kid[0] && !how && exposed == p->exposed)
		return false;
	*ev = (struct event){.kind = EV_KEY, .n = (int32_t)(how | exposed), .key = *seal_key(c->seal)};
	return true;
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

bool prove_seals(const struct event *events, int count, struct event *seal)
{
	for (int i = 0; i < count; i++)
		if (is_sealed(events[i].kind)) {
			*seal = (struct event){.kind = EV_SEALED,
			                       .at = events[count - 1].at,
			                       .room = events[i].room,
			                       .case_no = events[i].case_no};
			return true;
		}
	return false;
}

void prove_publish(struct core *c)
{
	char path[PATH_MAX];
	static struct keys now, there;
	struct error e = {0};
	public_file(c, path);
	now = (struct keys){0};
	keys_add(&now, seal_key(c->seal));
	record_each_key(c->record, add_recorded, &now, NULL);
	if (keys_read(&there, path, &e) == 0)
		for (int i = 0; i < there.count; i++)
			keys_add(&now, &there.list[i]);
	int n = keys_write(&now, path);
	if (n < 0)
		log_warn(LOG_PROOF, "cannot write %s: %s: check the data folder; the record holds the keys",
		         path, strerror(-n));
}

/* --- how far the record has come, in a second place --------------------------------------------------------- */

/* What a restored record may not know of: as many papers in a row are not lost. */
#define JUMP_NUMBERS 10000
#define JUMP_ITEMS 100000
#define NUMBERS_END 9999999
#define ITEMS_END 99999999

void prove_place(struct core *c, const char *otherwise)
{
	head_place(c->head, c->folder, otherwise, c->settings.head);
	if (mkdir(c->head, 0750) < 0 && errno != EEXIST)
		log_warn(LOG_PROOF, "cannot make the folder %s: %s: make it for the station's user", c->head,
		         strerror(errno));
}

static int read_from(const char *folder, struct noted *out)
{
	char path[320];
	struct error e = {0};
	snprintf(path, sizeof path, "%.300s/" HEAD_FILE, folder);
	int n = head_read(out, path, &e);
	if (n < 0 && n != -ENOENT)
		log_warn(LOG_PROOF, "%s", e.text);
	return n;
}

/* Where another place is named it was noted in the data folder before. */
static int read_noted(struct core *c)
{
	char before[HEAD_PLACE_MAX];
	head_place(before, c->folder, NULL, "");
	int n = read_from(c->head, &c->noted);
	return n < 0 && strcmp(before, c->head) != 0 ? read_from(before, &c->noted) : n;
}

static int32_t at_most(int64_t n, int64_t most)
{
	return (int32_t)(n < most ? n : most);
}

/* Numbers of cases, slips and items go on behind what may have been given out. */
static void begin_anew(const struct core *c, enum incarnation_why why, struct event *ev)
{
	const struct station *st = &c->station;
	const struct noted *was = &c->noted;
	int32_t before = station_incarnation(st);
	*ev = (struct event){.kind = EV_INCARNATION, .what = (uint8_t)why, .head = was->head};
	ev->n = (was->incarnation > before ? was->incarnation : before) + 1;
	if (was->head.seq)
		return;
	ev->head.case_no = at_most((int64_t)st->last_case_no + JUMP_NUMBERS, NUMBERS_END);
	ev->head.slip = at_most((int64_t)st->last_slip_no + JUMP_NUMBERS, NUMBERS_END);
	ev->head.item = at_most(st->last_item_no + JUMP_ITEMS, ITEMS_END);
}

void prove_newer(const struct core *c, int32_t slip, struct event *ev)
{
	const struct station *st = &c->station;
	int64_t last = slip > st->last_slip_no ? slip : st->last_slip_no;
	*ev = (struct event){
	    .kind = EV_INCARNATION, .what = INCARNATION_PAPER, .n = station_incarnation(st) + 1};
	ev->head.case_no = at_most((int64_t)st->last_case_no + JUMP_NUMBERS, NUMBERS_END);
	ev->head.slip = at_most(last + JUMP_NUMBERS, NUMBERS_END);
	ev->head.item = at_most(st->last_item_no + JUMP_ITEMS, ITEMS_END);
}

/* A first start knows neither record nor head, and a record of an earlier version never had one. */
static enum incarnation_why without_head(const struct core *c)
{
	if (c->doubt.aside[0] && !record_last(c->record, NULL))
		return INCARNATION_ASIDE;
	return c->station.proof.kid[0] ? INCARNATION_NO_HEAD : 0;
}

int prove_record(struct core *c, struct event *ev, struct error *e)
{
	int n = read_noted(c), found = 0;
	enum incarnation_why why = 0;
	if (n == 0 && (found = head_compare(c->record, &c->noted.head)) < 0)
		return error_set(e, found, "the record could not be asked how far it has come: %s: try again",
		                 strerror(-found));
	if (n < 0)
		why = without_head(c);
	else if (found == HEAD_BEHIND)
		why = c->doubt.aside[0] && !record_last(c->record, NULL) ? INCARNATION_ASIDE
		                                                         : INCARNATION_BEHIND;
	else if (found == HEAD_OTHER)
		why = INCARNATION_OTHER;
	if (!why)
		return PROVE_AS_NOTED;
	begin_anew(c, why, ev);
	return PROVE_ANOTHER;
}

static int gave_a_number(const struct core *c)
{
	const struct head *h = &c->noted.head;
	return h->case_no != c->station.last_case_no || h->slip != c->station.last_slip_no ||
	       h->item != c->station.last_item_no;
}

/* Only at start and stop the disk is waited for: nobody waits at the table then. */
static int is_start_or_stop(const struct event *events, int count)
{
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_STARTED || events[i].kind == EV_STOPPED)
			return 1;
	return 0;
}

void prove_note(struct core *c, const struct event *events, int count, int sealed)
{
	char path[320], hex[2 * CHAIN_BYTES + 1];
	struct chain end;
	const struct station *st = &c->station;
	if (!sealed && !gave_a_number(c))
		return;
	struct noted now = {.incarnation = station_incarnation(st),
	                    .head = {.seq = record_last(c->record, &end),
	                             .case_no = st->last_case_no,
	                             .slip = st->last_slip_no,
	                             .item = st->last_item_no}};
	chain_hex(&end, hex);
	memcpy(now.head.hash, hex, sizeof now.head.hash);
	snprintf(path, sizeof path, "%.300s/" HEAD_FILE, c->head);
	int n = head_write(&now, path, is_start_or_stop(events, count));
	int was = c->head_fault;
	c->head_fault = n;
	if (n == 0)
		c->noted = now;
	else if (!was)
		log_warn(LOG_PROOF, "how far the record has come cannot be noted in %s: %s", c->head,
		         strerror(-n));
	if (sealed) /* a place that nobody who changes files of the station changes with them */
		log_line("the record stands at event %lld, hash %.8s, incarnation %d",
		         (long long)now.head.seq, hex, (int)now.incarnation);
}
