/* What the parts of a slip's document share: how names, times and rows are put. */
#include "tell/slip-making.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"

json_t *slip_told(const char *s, size_t limit)
{
	return name_told(s, limit);
}

void slip_put(json_t *o, const char *key, const char *s, size_t limit)
{
	if (s[0])
		json_object_set_new(o, key, slip_told(s, limit));
}

void slip_say(const struct making *m, const struct say *say, char *out, size_t size)
{
	say_part_in(m->from->language, say, out, size);
}

const char *slip_text(const struct making *m, enum saying saying)
{
	return saying_text_in(m->from->language, saying);
}

void slip_hm(struct moment at, char hm[SLIP_HM])
{
	clock_text_hm(at.wall_ms, at.utc_min, hm);
}

int32_t slip_minute(struct moment at)
{
	return clock_minute_of_day(at.wall_ms, at.utc_min);
}

void slip_day(const struct making *m, int32_t yyyymmdd, char out[SLIP_DATE])
{
	int month = (int)(yyyymmdd / 100 % 100);
	if (month < 1 || month > 12) { /* what an earlier version let in */
		snprintf(out, SLIP_DATE, "%d", (int)yyyymmdd);
		return;
	}
	slip_say(m,
	         SAY(SLIP_DAY, .day = yyyymmdd % 100,
	             .month = (enum saying)((int)SAY_SLIP_MONTH_1 + month - 1), .year = yyyymmdd / 10000),
	         out, SLIP_DATE);
}

int32_t slip_date(struct moment at)
{
	return clock_date_number(at.wall_ms, at.utc_min);
}

const char *slip_name(const struct making *m, int32_t number)
{
	return number ? staff_name(&m->from->past->staff, number) : slip_text(m, SAY_SLIP_NOBODY);
}

void slip_row(const struct making *m, enum saying label, const char *says, const char *write)
{
	json_t *o;
	if (!says[0])
		return;
	o = json_object();
	slip_put(o, "label", slip_text(m, label), 40);
	slip_put(o, "says", says, ROW_MAX - 1);
	if (write)
		slip_put(o, "write", write, 60);
	json_array_append_new(m->rows, o);
}

void slip_row_add(const struct making *m, enum saying label, char says[ROW_MAX], const char *more)
{
	if (strlen(says) + strlen(more) + 3 > ROW_MAX) {
		slip_row(m, label, says, NULL);
		says[0] = 0;
	}
	slip_list(says, ROW_MAX, more);
}

void slip_list(char *list, size_t size, const char *more)
{
	said_join(list, size, "; ", more);
}

int slip_tells_all(const struct making *m)
{
	if (m->kind != SLIP_ADDENDUM)
		return 1;
	for (int i = 0; i < m->s->n_slips; i++)
		if (m->s->slips[i].number != m->from->number)
			return 0;
	return 1;
}
