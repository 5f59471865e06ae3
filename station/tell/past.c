#include "tell/past.h"

#include <string.h>

void past_init(struct past *p, int64_t to, const struct station *now)
{
	memset(p, 0, sizeof *p);
	p->to = to;
	recorded_now(&p->settings, now, "");
	p->settings.known = 0;
}

void past_deinit(struct past *p)
{
	staff_deinit(&p->staff);
}

/* The first word of the record on a list is the whole of it. */
static void forget_list(struct past *p, enum setting what)
{
	if (p->settings.known >> what & 1)
		return;
	if (what == SETTING_ROOM)
		p->settings.n_rooms = 0;
#define X(number, name, text, section, member)                                                               \
	else if (what == SETTING_##name) p->settings.policy.n_##member = 0;
	POLICY_LISTS(X)
#undef X
}

static int same(struct moment a, struct moment b)
{
	return a.boot == b.boot && a.boot_ms == b.boot_ms;
}

/* Whether a setting that was recorded after `to` says what stood then. */
static int is_nearest(struct past *p, const struct event *e)
{
	if (!p->later.boot) {
		p->later = e->at;
		p->known = p->settings.known;
	}
	return e->what < SETTING_KINDS && !(p->known >> e->what & 1) && same(e->at, p->later);
}

int past_take(void *past, const struct event *e)
{
	struct past *p = past;
	if (e->kind == EV_STAFF_SET)
		return e->seq <= p->to || !staff_find(&p->staff, e->staff.number)
		           ? staff_set(&p->staff, &e->staff)
		           : 0;
	if (e->kind != EV_SETTING || (e->seq > p->to && !is_nearest(p, e)))
		return 0;
	if (e->what < SETTING_KINDS)
		forget_list(p, (enum setting)e->what);
	recorded_apply(&p->settings, e);
	return 0;
}

const char *past_room_name(const struct past *p, const struct language *language, int32_t room)
{
	const struct room *r = recorded_room(&p->settings, room);
	return r ? r->name : saying_text_in(language, SAY_ROOM_NAMELESS);
}
