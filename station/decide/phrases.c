#include "decide/phrases.h"

#include <string.h>

#include "base/clock.h"

#define LINES_MAX 6 /* of what was seen; of more than these, how many besides */

int32_t moment_minute_of_day(struct moment at)
{
	return clock_minute_of_day(at.wall_ms, at.utc_min);
}

/* --- what was seen ---------------------------------------------------------------------------------- */

struct alike { /* things of one name that were seen in one way */
	const char *name;
	enum saying how;
	int32_t shown, all;
};

static enum saying how_seen(const struct item *it)
{
	static const enum saying shown[] = {SAY_R_SHOWN_OF, SAY_R_SAW_INTACT, SAY_R_SAW_CUT,
	                                    SAY_R_SHOWN_PIECES_MISSING},
	                         by_mark[] = {SAY_R_SAW_MARK, SAY_R_SAW_MARK_INTACT, SAY_R_SAW_MARK_CUT,
	                                      SAY_R_SAW_MARK_PIECES};
	if (it->place == ITEM_RETURNED)
		return SAY_R_SAW_RETURNED;
	if (it->evidence == EVIDENCE_MARK)
		return by_mark[it->condition & 3];
	return it->evidence == EVIDENCE_SHOWN ? shown[it->condition & 3] : SAY_R_SAW_NOT_ALL;
}

static int is_amiss(enum saying how)
{
	return how == SAY_R_SAW_NOT_ALL || how == SAY_R_SHOWN_PIECES_MISSING || how == SAY_R_SAW_MARK_PIECES;
}

static struct alike *line_of(struct alike *lines, int *n, const char *name, enum saying how)
{
	for (int i = 0; i < *n; i++)
		if (lines[i].how == how && strcmp(lines[i].name, name) == 0)
			return &lines[i];
	lines[*n] = (struct alike){.name = name, .how = how};
	return &lines[(*n)++];
}

static int lines_seen(const struct sheet *s, struct alike lines[ITEMS_MAX])
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (!item_counts(it) && it->place != ITEM_RETURNED)
			continue;
		struct alike *line = line_of(lines, &n, it->thing.name, how_seen(it));
		line->shown += it->place == ITEM_RETURNED ? it->pieces : item_accounted(it);
		line->all += it->pieces;
	}
	return n;
}

/* What is amiss stands first; the slip has what there is no place for. */
void say_accounted(struct turn *t)
{
	struct alike lines[ITEMS_MAX];
	int n = lines_seen(t->s, lines), said = 0, most = n > LINES_MAX ? LINES_MAX - 1 : n;
	for (int amiss = 1; amiss >= 0; amiss--)
		for (int i = 0; i < n; i++)
			if (is_amiss(lines[i].how) == amiss && said < most) {
				turn_say_more(t, &(const struct say){.saying = lines[i].how,
				                                     .item = lines[i].name,
				                                     .n = lines[i].shown,
				                                     .all = lines[i].all});
				said++;
			}
	if (said < n)
		turn_say_more(t, SAY(R_SAW_MORE, .n = n - said));
}

/* --- what is to be listed --------------------------------------------------------------------------- */

/* The digits that `is` one of, behind `head`; 1 where there is one. */
static int list_digits(struct turn *t, enum saying head, int (*is)(const struct digit *d))
{
	int n = 0;
	for (int i = 0; i < t->s->n_digits; i++) {
		if (!is(&t->s->digits[i]))
			continue;
		if (!n++)
			turn_say_more(t, &(const struct say){.saying = head});
		turn_list(t, SAY(SCAN_OF_DIGIT, .digit = t->s->digits[i].number));
	}
	return n > 0;
}

static int is_seen_bare(const struct digit *d)
{
	return d->seen_bare;
}

void say_seen_bare(struct turn *t)
{
	list_digits(t, SAY_R_SEEN_BARE_ALL, is_seen_bare);
}

static int is_on(const struct digit *d)
{
	return digit_is_on(d) && d->state == DIGIT_ON;
}

static int may_be_on(const struct digit *d)
{
	return digit_is_on(d) && d->state != DIGIT_ON;
}

bool say_on(struct turn *t)
{
	int on = list_digits(t, SAY_R_OPEN_ON, is_on);
	return list_digits(t, SAY_R_OPEN_MAY_BE_ON, may_be_on) || on;
}

static int is_not_seen_bare(const struct digit *d)
{
	return d->had && !digit_is_on(d) && !d->seen_bare;
}

static int is_unaccounted(const struct item *it)
{
	return item_open(it) && it->place != ITEM_ON;
}

/* Each name once, with how many there are of it. */
static int list_unaccounted(struct turn *t)
{
	struct alike lines[ITEMS_MAX];
	int n = 0;
	for (int i = 0; i < t->s->n_items; i++)
		if (is_unaccounted(&t->s->items[i]))
			line_of(lines, &n, t->s->items[i].thing.name, SAY_R_READ_THING)->all++;
	if (n)
		turn_say_more(t, SAY(R_OPEN_ITEMS));
	for (int i = 0; i < n; i++)
		turn_list(t, lines[i].all > 1 ? SAY(R_TIMES, .item = lines[i].name, .n = lines[i].all)
		                              : SAY(R_READ_THING, .item = lines[i].name));
	return n > 0;
}

bool say_open(struct turn *t)
{
	int on = say_on(t), items = list_unaccounted(t);
	return list_digits(t, SAY_R_OPEN_NOT_BARE, is_not_seen_bare) || on || items;
}
