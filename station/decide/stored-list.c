#include "decide/stored-list.h"

#include <string.h>

#include "code/own-codes.h"
#include "decide/phrases.h"

/* Of a room, oldest first, as it will be after `out`; `out` may be NULL. */
int stored_list(const struct station *st, int32_t room, const struct outcome *out,
                struct held list[HELD_ROOM_MAX])
{
	int n = 0;
	for (int i = 0; i < st->n_held && n < HELD_ROOM_MAX; i++)
		if (st->held[i].room == room)
			list[n++] = st->held[i];
	for (int i = 0; out && i < out->count; i++)
		if (out->events[i].kind == EV_HELD || out->events[i].kind == EV_HELD_ANSWERED)
			held_apply(list, &n, HELD_ROOM_MAX, &out->events[i]);
	return n;
}

/* The question of the room while no case runs in it, as it will be after `out`. */
enum question stored_idle_question(const struct station *st, int32_t room, const struct outcome *out)
{
	enum question q = station_idle_asked(st, room);
	for (int i = 0; i < out->count; i++)
		if (out->events[i].kind == EV_CASE_OPENED || out->events[i].kind == EV_RESUMED)
			q = Q_NONE;
		else if (out->events[i].kind == EV_ASKED && !out->events[i].case_no)
			q = (enum question)out->events[i].what;
	return q;
}

/* What it was, by itself: texts are the station's and the scan's. */
struct say stored_scan(const struct station *st, const struct held *h)
{
	switch ((enum held_kind)h->kind) {
	case HELD_CARD:
		return *SAY(SCAN_OF_CARD, .card = h->n);
	case HELD_DIGIT:
		return *SAY(SCAN_OF_DIGIT, .digit = h->digit);
	case HELD_BADGE:
		return *SAY(SCAN_OF_BADGE, .person = staff_name(&st->staff, h->n));
	case HELD_CASE_LABEL:
		return *SAY(SCAN_OF_CASE_LABEL, .label = h->n);
	case HELD_SLIP:
		return *SAY(SCAN_OF_SLIP, .slip = h->n);
	case HELD_THING:
		return *SAY(SCAN_OF_PACK, .item = h->thing.name);
	case HELD_TRAY:
		return *SAY(SCAN_OF_TRAY, .item = h->thing.name);
	}
	return (struct say){0};
}

#define NAMES_MAX 110 /* bytes of English: what is to be done must stand behind them */

int stored_named(const struct station *st, const struct held *list, int n, struct say out[SAID_LISTED_MAX])
{
	char name[80];
	size_t used = 0;
	for (int i = 0; i < n; i++) {
		out[i] = stored_scan(st, &list[i]);
		say_part(&out[i], name, sizeof name);
		used += strlen(name) + 2;
		if (i && (used > NAMES_MAX || (i == SAID_LISTED_MAX - 1 && n > SAID_LISTED_MAX))) {
			out[i] = *SAY(LIST_FURTHER, .n = n - i);
			return i + 1;
		}
	}
	return n;
}

static struct moment oldest(const struct held *list, int n)
{
	struct moment at = list[0].made;
	for (int i = 1; i < n; i++)
		if (list[i].made.wall_ms < at.wall_ms)
			at = list[i].made;
	return at;
}

/* The first scans that came in a row and are the same, and nobody has said yet that it was meant: list[*from]
 * and those behind it. How many; 0 none. */
int stored_first_row(const struct held *list, int n, int *from)
{
	for (int i = 0; i + 1 < n; i++) {
		int k = i + 1;
		while (k < n && held_same(&list[k - 1], &list[k]) && !list[k].meant)
			k++;
		if (k > i + 1) {
			*from = i;
			return k - i;
		}
	}
	return 0;
}

/* Whether one of them would be refused because no case is open when its turn comes. */
int stored_wants_case(const struct held *list, int n)
{
	for (int i = 0; i < n; i++)
		switch ((enum held_kind)list[i].kind) {
		case HELD_DIGIT:
		case HELD_CASE_LABEL:
			return 0;
		case HELD_SLIP:
			break;
		case HELD_CARD:
			if (list[i].n == CARD_NEW_CASE || list[i].n == CARD_SUSPEND)
				return 0;
			if (list[i].n != CARD_FOUND)
				return 1;
			break;
		case HELD_BADGE:
		case HELD_THING:
		case HELD_TRAY:
			return 1;
		}
	return 0;
}

static void ask_row(const struct station *st, const struct held *first, int times, struct next *next)
{
	struct say head = stored_scan(st, first);
	head.what = head.saying;
	head.saying = times == 2 ? SAY_HEAD_TWICE : SAY_HEAD_TIMES;
	head.n = times;
	next_say(next, &head);
	next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_YES, .truth = TRUTH_YES});
	next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_NO, .truth = TRUTH_MEANT_ONCE});
}

/* The room's suspended case, as it will be where SUSPEND changes over to it; 0 none. */
static int32_t other_case(const struct station *st, int32_t room, int32_t case_no)
{
	int suspended = station_suspended_in(st, room), running = station_sheet_of_room(st, room);
	if (suspended >= 0 && st->sheets[suspended].case_no != case_no)
		return st->sheets[suspended].case_no;
	return running >= 0 && st->sheets[running].case_no != case_no ? st->sheets[running].case_no : 0;
}

/* Which case is meant is said by its number where another is suspended in the room. */
static enum saying head_of(int n, int32_t case_no, int32_t suspended)
{
	if (!case_no)
		return n == 1 ? SAY_HEAD_STORED_ONE : SAY_HEAD_STORED;
	if (!suspended)
		return n == 1 ? SAY_HEAD_STORED_ONE_HERE : SAY_HEAD_STORED_HERE;
	return n == 1 ? SAY_HEAD_STORED_ONE_FOR : SAY_HEAD_STORED_FOR;
}

static void ask_all(const struct station *st, const struct held *list, int n, int32_t in_case,
                    struct next *next)
{
	struct say names[SAID_LISTED_MAX];
	int32_t suspended = in_case ? other_case(st, list[0].room, in_case) : 0;
	struct say head = {.saying = head_of(n, in_case, suspended),
	                   .n = n,
	                   .case_no = in_case,
	                   .other_case = suspended,
	                   .time = moment_minute_of_day(oldest(list, n))};
	next_say(next, &head);
	int named = stored_named(st, list, n, names);
	for (int i = 0; i < named; i++)
		next_list(next, &names[i]);
	if (!in_case && stored_wants_case(list, n))
		next_add(next,
		         (struct deed){.kind = DEED_CARD, .n = CARD_NEW_CASE, .truth = TRUTH_CASE_FIRST});
	else
		next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_YES, .truth = TRUTH_MADE_HERE});
	next_add(next, (struct deed){.kind = DEED_CARD, .n = CARD_NO, .truth = TRUTH_MADE_ELSEWHERE});
}

int stored_question(const struct station *st, int32_t room, const struct outcome *out, enum question q,
                    int32_t in_case, struct next *next)
{
	struct held list[HELD_ROOM_MAX];
	int n = stored_list(st, room, out, list), from = 0, times = n ? stored_first_row(list, n, &from) : 0;
	if (q == Q_TWICE && times)
		ask_row(st, &list[from], times, next);
	else if (n)
		ask_all(st, list, n, in_case, next);
	return n;
}
