#include "rule-table.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "tests/states/known.h"
#include "tests/states/walk.h"

const struct room_plan two_people = {"rules",      .tourniquets = 2, .forceps = 1, .others = 1, .rolls_on = 1,
                                     .refused = 1, .digits = 2,      .people = 4,  .later = 1};

void table_decide(struct table *t, const struct input *in)
{
	decide_known(&t->w.station, in, &t->out);
	for (int i = 0; i < t->out.count; i++) {
		t->out.events[i].seq = ++t->seq;
		assert_int_equal(station_apply(&t->w.station, &t->out.events[i]), 0);
	}
	assert_int_equal(rule_check_all(&t->w.station), 0);
}

/* One scan by the words that the walk gives it. */
enum verdict table_scan(struct table *t, const char *name)
{
	for (int i = 0; i < t->w.n_inputs; i++)
		if (strcmp(t->w.inputs[i].name, name) == 0) {
			table_decide(t, &t->w.inputs[i].in);
			return t->out.reply.verdict;
		}
	fail_msg("no scan '%s'", name);
	return VERDICT_REFUSED;
}

void table_scans(struct table *t, const char *const *names)
{
	for (; *names; names++)
		table_scan(t, *names);
}

struct table *table_lay(const struct room_plan *plan)
{
	static struct table t;
	if (t.w.n_inputs)
		world_deinit(&t.w);
	memset(&t, 0, sizeof t);
	t.seq = 1000;
	world_init(&t.w, plan);
	return &t;
}

const struct sheet *table_sheet(const struct table *t)
{
	return &t->w.station.sheets[0];
}

int table_happened(const struct table *t, enum event_kind kind)
{
	int n = 0;
	for (int i = 0; i < t->out.count; i++)
		n += t->out.events[i].kind == kind;
	return n;
}

int table_says(const struct table *t, const char *words)
{
	return strstr(t->out.reply.said, words) != NULL || strstr(t->out.reply.next.words, words) != NULL;
}
