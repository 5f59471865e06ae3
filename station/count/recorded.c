#include "count/recorded.h"

#include <stdio.h>
#include <string.h>

#include "count/station.h"

void recorded_now(struct recorded *out, const struct station *st, const char *zone)
{
	memset(out, 0, sizeof *out);
	out->known = ~0u;
	memcpy(out->site, st->site, sizeof out->site);
	memcpy(out->site_name, st->site_name, sizeof out->site_name);
	snprintf(out->zone, sizeof out->zone, "%s", zone);
	memcpy(out->rooms, st->rooms, sizeof out->rooms);
	out->n_rooms = st->n_rooms;
	out->policy = st->policy;
}

const struct room *recorded_room(const struct recorded *r, int32_t number)
{
	for (int i = 0; i < r->n_rooms; i++)
		if (r->rooms[i].number == number)
			return &r->rooms[i];
	return NULL;
}

/* --- changing ---------------------------------------------------------------------------------------------- */

static void apply_room(struct recorded *r, const struct event *e)
{
	int i = 0;
	while (i < r->n_rooms && r->rooms[i].number != e->other)
		i++;
	if (!e->n) {
		if (i < r->n_rooms)
			memmove(&r->rooms[i], &r->rooms[i + 1],
			        sizeof *r->rooms * (size_t)(--r->n_rooms - i));
		return;
	}
	if (i == ROOMS_MAX)
		return;
	if (i == r->n_rooms)
		r->n_rooms++;
	r->rooms[i] = (struct room){.number = e->other, .single = e->n == 2};
	snprintf(r->rooms[i].name, ROOM_NAME_MAX, "%.32s", e->text);
}

/* A list is told from its end where it gets shorter. */
static void apply_list(char list[][POLICY_TEXT_MAX], uint8_t *count, const struct event *e)
{
	if (e->other < 1 || e->other > POLICY_LIST_MAX)
		return;
	snprintf(list[e->other - 1], POLICY_TEXT_MAX, "%.120s", e->text);
	if (!e->text[0] && e->other <= *count)
		*count = (uint8_t)(e->other - 1);
	else if (e->text[0] && e->other > *count)
		*count = (uint8_t)e->other;
}

void recorded_apply(struct recorded *r, const struct event *e)
{
	if (e->what < SETTING_KINDS)
		r->known |= 1u << e->what;
	switch ((enum setting)e->what) {
	case SETTING_SITE:
		snprintf(r->site, sizeof r->site, "%.2s", e->text);
		return;
	case SETTING_SITE_NAME:
		snprintf(r->site_name, sizeof r->site_name, "%.64s", e->text);
		return;
	case SETTING_ZONE:
		snprintf(r->zone, sizeof r->zone, "%.64s", e->text);
		return;
	case SETTING_ROOM:
		apply_room(r, e);
		return;
#define X(number, name, text, section, member)                                                               \
	case SETTING_##name:                                                                                 \
		apply_list(r->policy.member, &r->policy.n_##member, e);                                      \
		return;
		POLICY_LISTS(X)
#undef X
#define X(number, name, text, section, key, member, form, low, high, unset)                                  \
	case SETTING_##name:                                                                                 \
		r->policy.member = e->n;                                                                     \
		return;
		POLICY_NUMBERS(X)
#undef X
	case SETTING_NONE:
	case SETTING_KINDS: /* one of a later version */
		return;
	}
}

/* --- what changed ------------------------------------------------------------------------------------------ */

struct changes {
	const struct recorded *was, *is;
	struct event *out;
	int count;
};

static void add(struct changes *c, enum setting what, int32_t other, int32_t n, const char *text)
{
	struct event *e = &c->out[c->count++];
	memset(e, 0, sizeof *e);
	e->kind = EV_SETTING;
	e->what = (uint8_t)what;
	e->other = other;
	e->n = n;
	snprintf(e->text, sizeof e->text, "%s", text);
}

static int is_known(const struct changes *c, enum setting what)
{
	return c->was->known >> what & 1;
}

static void add_text(struct changes *c, enum setting what, const char *was, const char *is)
{
	if (!is_known(c, what) || strcmp(was, is) != 0)
		add(c, what, 0, 0, is);
}

static void add_number(struct changes *c, enum setting what)
{
	const int32_t *was = policy_number(&c->was->policy, what), *is = policy_number(&c->is->policy, what);
	if (is && (!is_known(c, what) || *was != *is))
		add(c, what, 0, *is, "");
}

static void add_rooms(struct changes *c)
{
	for (int i = 0; i < c->was->n_rooms; i++)
		if (!recorded_room(c->is, c->was->rooms[i].number))
			add(c, SETTING_ROOM, c->was->rooms[i].number, 0, "");
	for (int i = 0; i < c->is->n_rooms; i++) {
		const struct room *is = &c->is->rooms[i], *was = recorded_room(c->was, is->number);
		if (!was || was->single != is->single || strcmp(was->name, is->name) != 0)
			add(c, SETTING_ROOM, is->number, is->single ? 2 : 1, is->name);
	}
}

static void add_list(struct changes *c, enum setting what, const char was[][POLICY_TEXT_MAX], int n_was,
                     const char is[][POLICY_TEXT_MAX], int n_is)
{
	for (int i = n_was; i > n_is; i--)
		add(c, what, i, 0, "");
	for (int i = 0; i < n_is; i++)
		if (i >= n_was || strcmp(was[i], is[i]) != 0)
			add(c, what, i + 1, 0, is[i]);
}

int recorded_changes(const struct recorded *was, const struct recorded *is,
                     struct event out[RECORDED_CHANGES_MAX])
{
	struct changes c = {.was = was, .is = is, .out = out};
	add_text(&c, SETTING_SITE, was->site, is->site);
	add_text(&c, SETTING_SITE_NAME, was->site_name, is->site_name);
	add_text(&c, SETTING_ZONE, was->zone, is->zone);
	add_rooms(&c);
#define X(number, name, text, section, member)                                                               \
	add_list(&c, SETTING_##name, was->policy.member, was->policy.n_##member, is->policy.member,          \
	         is->policy.n_##member);
	POLICY_LISTS(X)
#undef X
	for (int i = 1; i < SETTING_KINDS; i++)
		add_number(&c, (enum setting)i);
	return c.count;
}
