/* A station with two rooms, and stages that begin with it. */
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stage-inside.h"

static const char catalogue_text[] =
    "key,name,role,codes,marked,visible,single_use,identity,rolls_on,xray,per_pack,size_mm,contents,instead\n"
    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,yes,pack,no,no,1,45-60,,\n"
    "PLAIN-M,\"finger tourniquet, orange, M\",tourniquet,09506000134369,yes,yes,yes,none,no,no,1,45-60,,\n"
    "ROLL-S,\"finger tourniquet, roll-on, S\",tourniquet,09506000134376,yes,yes,yes,pack,yes,no,1,,,\n"
    "FORCEPS,\"artery forceps, curved\",forceps,8004:9506000FC*,no,no,no,mark,no,yes,1,,,\n"
    "SWAB-5,\"swabs, small\",other,09506000134383,no,no,yes,none,no,yes,5,,,\n"
    "NEEDLE,\"needle\",other,09506000134390,no,no,yes,none,no,yes,1,,,\n"
    "GLOVE,\"glove finger\",refused,09506000134406,no,no,yes,none,no,no,1,,,a listed finger tourniquet\n";

int stage_build(struct station *st)
{
	static const struct person people[] = {
	    {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},   {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	    {3, "SURG-3", STAFF_SURGEON, 1, 0},         {4, "SUPPORT-4", STAFF_PRACTITIONER, 0, 0},
	    {5, "SCRUB-5", STAFF_PRACTITIONER, 1, 0},   {6, "CHARGE-6", STAFF_CHARGE, 1, 0},
	    {7, "SUPPORT-7", STAFF_PRACTITIONER, 0, 0},
	};
	struct line *lines;
	struct error error;
	size_t count;
	memset(st, 0, sizeof *st);
	int r = catalogue_read_csv(catalogue_text, sizeof catalogue_text - 1, &lines, &count, &error);
	if (r < 0)
		return r;
	snprintf(st->site, sizeof st->site, "BC");
	policy_default(&st->policy);
	st->rooms[st->n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	st->rooms[st->n_rooms++] = (struct room){.number = 3, .name = "Minor injuries", .single = 1};
	for (size_t i = 0; r == 0 && i < count; i++)
		r = station_apply(st, &(struct event){.kind = EV_LINE_SET, .line = lines[i]});
	free(lines);
	for (size_t i = 0; r == 0 && i < sizeof people / sizeof *people; i++)
		r = station_apply(st, &(struct event){.kind = EV_STAFF_SET, .staff = people[i]});
	return r;
}

/* The sheets are most of a station; those of an empty one need not be copied. */
static void station_copy_empty(struct station *to, const struct station *from)
{
	memcpy(to, from, offsetof(struct station, sheets));
	memcpy(to->undo, from->undo, sizeof *to - offsetof(struct station, undo));
	for (int i = 0; i < SHEETS_MAX; i++)
		to->sheets[i].case_no = 0;
}

void stage_copy(struct stage *to, const struct stage *from)
{
	station_copy_empty(&to->st, &from->st);
	for (int i = 0; i < SHEETS_MAX; i++)
		if (from->st.sheets[i].case_no)
			to->st.sheets[i] = from->st.sheets[i];
	to->now = from->now;
	to->true_ms = from->true_ms;
	to->seq = from->seq;
	to->world = from->world;
	memcpy(to->current, from->current, sizeof to->current);
	memcpy(to->used, from->used, sizeof to->used);
	memcpy(to->slips, from->slips, sizeof to->slips);
	to->n_used = from->n_used;
	to->n_slips = from->n_slips;
	to->variant = from->variant;
	to->failure.check = NULL;
	to->only = NULL;
	to->quiet = 1;
}

void stage_begin(struct stage *g, const struct station *built, const struct world *start)
{
	const struct entry none = {.operation = -1};
	station_copy_empty(&g->st, built);
	memset(&g->reads, 0, sizeof g->reads);
	memset(g->told, 0, sizeof g->told);
	memset(g->entered, 0, sizeof g->entered);
	memset(g->slip_of, 0, sizeof g->slip_of);
	g->now = (struct moment){.boot = 1, .boot_ms = 1000000, .wall_ms = 1795600800000};
	g->true_ms = g->seq = 0;
	g->n_batch = 0;
	g->n_used = g->n_slips = g->n_list = g->out_of_context = 0;
	g->world = *start;
	for (int i = 0; i < ROOMS; i++) {
		g->current[i] = -1;
		g->last_group[i] = -1;
	}
	g->failure.check = NULL;
	g->quiet = 0;
	g->path[0] = 0;
	stage_keep(g, &(struct event){.kind = EV_STARTED, .at = g->now, .n = 1}, &none);
}
