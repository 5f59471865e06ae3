/* A run from its first draw to its end, with what befalls people on the way. */
#include <string.h>

#include "checks.h"
#include "hands.h"

static void befall(struct play *p, enum entry_kind kind, int64_t n, int while_off)
{
	struct entry e = {.kind = (uint8_t)kind,
	                  .at_ms = p->stage->true_ms,
	                  .n = n,
	                  .whole = (uint8_t)while_off,
	                  .operation = -1,
	                  .thing = -1,
	                  .id = (int16_t)p->next_id++,
	                  .group = -1,
	                  .reports = -1};
	stage_do(p->stage, &e);
}

static void power_cut(struct play *p)
{
	int64_t off = between(&p->chance, 5, 4000) * 1000;
	p->n_queue = 0; /* what was on its way is gone; people see no answer and scan again */
	befall(p, ENTRY_POWER, off, 0);
	if (p->troubles & TROUBLE_WALL && one_of(&p->chance, 2))
		befall(p, ENTRY_WALL, between(&p->chance, -200, 200) * 60000, 1);
	for (int r = 0; r < ROOMS; r++)
		if (p->people[r].wake_ms < INT64_MAX)
			p->people[r].wake_ms += off;
}

static void take_scanner(struct play *p, struct actor *a, int scanner)
{
	scanner_laid_down(p, a->scanner);
	a->scanner = scanner;
}

/* Each has the other room's scanner in the hand now. */
static void swap_scanners(struct play *p)
{
	int first = p->people[0].scanner;
	take_scanner(p, &p->people[0], p->people[1].scanner);
	take_scanner(p, &p->people[1], first);
}

static void trouble(struct play *p)
{
	struct actor *a = &p->people[one_of(&p->chance, ROOMS)];
	if (p->troubles & TROUBLE_POWER && p->power_cuts < 2 && in_hundred(&p->chance, 3)) {
		p->power_cuts++;
		power_cut(p);
	}
	if (p->troubles & TROUBLE_WALL && p->wall_jumps < 2 && in_hundred(&p->chance, 3)) {
		p->wall_jumps++;
		befall(p, ENTRY_WALL, between(&p->chance, -200, 200) * 60000, 0);
	}
	if (p->troubles & TROUBLE_CARRIED && in_hundred(&p->chance, 4))
		swap_scanners(p);
	if (p->troubles & TROUBLE_REPLACED && in_hundred(&p->chance, 2))
		take_scanner(p, a, a == &p->people[0] ? 4 : 5);
	if (p->troubles & TROUBLE_BURST && in_hundred(&p->chance, 2) && a->op >= 0)
		p->scanner_out_ms[a->scanner] = p->stage->true_ms + between(&p->chance, 5000, 60000);
}

static int next_room(const struct play *p)
{
	return p->people[1].wake_ms < p->people[0].wake_ms ? 1 : 0;
}

static void draw_troubles(struct play *p, unsigned allowed)
{
	unsigned all = 0;
	for (unsigned bit = 1; bit < (1u << 16); bit <<= 1)
		if (in_hundred(&p->chance, bit & TROUBLES_INNOCENT ? 30 : 25))
			all |= bit;
	if (one_of(&p->chance, 2))
		all &= TROUBLES_INNOCENT;
	if (in_hundred(&p->chance, 8))
		all = 0;
	p->troubles = all & allowed;
}

void play_run(struct play *p, struct stage *g, const struct station *built, uint64_t seed, uint64_t run,
              unsigned allowed)
{
	struct world start;
	memset(p, 0, sizeof *p);
	p->stage = g;
	p->chance = chance_of(seed, run);
	draw_troubles(p, allowed);
	plan_run(p, &start);
	stage_begin(g, built, &start);
	g->start = start;
	for (int r = 0; r < ROOMS; r++)
		p->people[r] = (struct actor){.op = -1, .awaiting = -1, .scanner = r * 2};
	while (!g->failure.check && !p->given_up && g->n_list < ENTRIES_MAX - 4 &&
	       p->next_id < GROUPS_MAX - 80 && p->next_group < GROUPS_MAX - 80) {
		int room = next_room(p);
		int64_t wake = p->people[room].wake_ms;
		if (p->n_queue && p->queue[0].at_ms <= wake) {
			deliver_first(p);
			continue;
		}
		if (wake == INT64_MAX)
			break;
		stage_wait(g, wake);
		trouble(p);
		people_act(p, room);
	}
	g->tally->given_up += p->given_up || g->n_list >= ENTRIES_MAX - 4;
}
