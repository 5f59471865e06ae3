#include "shrink.h"

#include <stdlib.h>
#include <string.h>

#include "checks.h"

struct search {
	const struct station *built;
	const struct entry *all;
	int n_all;
	const char *check;
	int room;
	uint8_t kept[ENTRIES_MAX];
};

/* 1 where a read of `list` tells of the entry `id`. */
static int is_reported(const struct search *f, int id, int kept_only)
{
	for (int i = 0; i < f->n_all; i++)
		if (f->all[i].kind == ENTRY_READ && f->all[i].reports == id && (!kept_only || f->kept[i]))
			return 1;
	return 0;
}

static int is_kept(const struct search *f, int id)
{
	for (int i = 0; i < f->n_all; i++)
		if (f->all[i].id == id)
			return f->kept[i];
	return 1;
}

/* What was taken out of the list is a step left out, or makes what is still said false. */
static struct entry as_it_is_now(const struct search *f, int i)
{
	struct entry e = f->all[i];
	if (e.kind == ENTRY_MOVES && is_reported(f, e.id, 0) && !is_reported(f, e.id, 1))
		e.cause = CAUSE_LEFT_OUT;
	if (e.kind == ENTRY_READ && e.reports >= 0 && !is_kept(f, e.reports))
		e.cause = CAUSE_FALSE;
	return e;
}

static int fails(struct search *f, struct stage *g)
{
	struct world start = g->start;
	stage_begin(g, f->built, &start);
	g->start = start;
	g->replaying = 1;
	g->only = f->check;
	g->end_every = 0;
	for (int i = 0; i < f->n_all && !g->failure.check; i++)
		if (f->kept[i]) {
			struct entry e = as_it_is_now(f, i);
			stage_do(g, &e);
		}
	if (!g->failure.check && strcmp(f->check, check_name(CHECK_NO_DEAD_END)) == 0)
		check_dead_end(g, f->room);
	return g->failure.check && !g->out_of_context;
}

/* 1 where some were taken out. */
static int take_out(struct search *f, struct stage *g, int size)
{
	uint8_t before[ENTRIES_MAX];
	int less = 0;
	for (int from = f->n_all - 1; from >= 0;) {
		memcpy(before, f->kept, sizeof before);
		int left = size, to = from;
		for (; to >= 0 && left; to--)
			if (f->kept[to]) {
				f->kept[to] = 0;
				left--;
			}
		if (left < size && fails(f, g))
			less = 1;
		else
			memcpy(f->kept, before, sizeof before);
		from = to;
	}
	return less;
}

int shrink(struct stage *g, const struct station *built)
{
	static struct entry all[ENTRIES_MAX];
	struct search f = {.built = built,
	                   .all = all,
	                   .n_all = g->n_list,
	                   .check = g->failure.check,
	                   .room = g->failed_room};
	memcpy(all, g->list, sizeof *all * (size_t)g->n_list);
	memset(f.kept, 1, sizeof f.kept);
	struct failure first = g->failure;
	if (!fails(&f, g)) {
		memcpy(g->list, all, sizeof *all * (size_t)f.n_all);
		g->n_list = f.n_all;
		g->failure = first;
		return 0;
	}
	for (int size = f.n_all / 2; size >= 1;)
		if (!take_out(&f, g, size) || size > 1)
			size /= 2;
	return fails(&f, g);
}

/* --- the script ------------------------------------------------------------------------------------- */

static const char *badge_name(int32_t n)
{
	static const char *const names[] = {"",          "SCRUB-1", "CIRC-2",  "SURG-3",
	                                    "SUPPORT-4", "SCRUB-5", "CHARGE-6"};
	return n > 0 && n < 7 ? names[n] : "?";
}

static void thing_words(const struct real *r, char out[80])
{
	if (r->by_mark && !r->readable)
		snprintf(out, 80, "FORCEPS without a mark");
	else if (r->number)
		snprintf(out, 80, "%s %d expiry %d", r->line, (int)r->number, (int)r->expiry);
	else
		snprintf(out, 80, "%s expiry %d", r->line, (int)r->expiry);
}

void scanned_words(const struct world *w, const struct scanned *c, char out[120])
{
	char thing[80];
	out[0] = 0;
	switch ((enum act)c->act) {
	case ACT_CARD:
		snprintf(out, 120, "card %s", own_card_name(c->n));
		return;
	case ACT_DIGIT:
		snprintf(out, 120, "digit %s", own_digit_name(c->n));
		return;
	case ACT_BADGE:
		snprintf(out, 120, "badge %s", badge_name(c->n));
		return;
	case ACT_THING:
		thing_words(&w->things[c->thing], thing);
		snprintf(out, 120, "pack %s", thing);
		return;
	case ACT_SLIP:
		snprintf(out, 120, "slip of case %d", (int)w->operations[c->n].case_no);
		return;
	case ACT_TYPED:
		snprintf(out, 120, "typed %s", c->n ? "INC-7" : "no time for it");
		return;
	default:
		snprintf(out, 120, "unknown %s", c->act == ACT_PATIENT ? "a wristband" : "a code");
		return;
	}
}

static void tell_wait(FILE *out, int64_t ms)
{
	if (ms >= 180000)
		fprintf(out, "+ %d min\n", (int)(ms / 60000));
	else if (ms >= 5000)
		fprintf(out, "+ %d s\n", (int)(ms / 1000 - 3));
}

/* The reads that come with this ENTRY_SENT, which follow one another in the list. */
static void tell_sent(FILE *out, const struct stage *g, int last)
{
	char words[120];
	int first = last;
	while (first > 0 && g->list[first - 1].kind == ENTRY_READ && g->list[first - 1].late)
		first--;
	fprintf(out, "> stored ");
	for (int i = first; i < last; i++) {
		scanned_words(&g->world, &g->list[i].code, words);
		fprintf(out, i == first ? "%d s: %s" : "; %d s %s",
		        (int)((g->list[last].at_ms - g->list[i].made_ms) / 1000 + 1), words);
	}
	fprintf(out, "\n");
}

static void tell_read(FILE *out, const struct stage *g, const struct entry *e, int64_t gap_ms, int32_t room)
{
	static const char *const reads[] = {"", "  # read twice", "  # scanned again in doubt",
	                                    "  # the neighbour was read"};
	char words[120];
	scanned_words(&g->world, &e->code, words);
	fprintf(out, "%s %s", gap_ms < 2000 ? ">>" : ">", words);
	if ((e->code.act == ACT_CARD || e->code.act == ACT_DIGIT) && e->code.room != room)
		fprintf(out, " of room %d", (int)e->code.room);
	fprintf(out, "\n");
	if (e->read || e->scanner % 2 || e->scanner > 3)
		fprintf(out, "#   ^ by %s%s\n", scanner_name(e->scanner), reads[e->read]);
}

static void tell_moves(FILE *out, const struct stage *g, const struct entry *e)
{
	char words[80];
	thing_words(&g->world.things[e->thing], words);
	if (e->where == ON_DIGIT)
		fprintf(out, "# %s goes on the %s\n", words, own_digit_name(e->digit));
	else
		fprintf(out, "# %s is %s, %s\n", words, where_name((enum where)e->where),
		        whole_name((enum whole)e->whole));
}

static void tell_start(FILE *out, const struct stage *g)
{
	for (int op = 0; op < g->start.n_operations; op++) {
		const struct operation *o = &g->start.operations[op];
		fprintf(out, "# room %d%s:", (int)o->room,
		        o->surgeon < 0 ? ", the surgeon has no badge here" : "");
		for (int i = 0; i < g->start.n_things; i++)
			if (g->start.things[i].of == op)
				fprintf(out, " %s%s", g->start.things[i].line,
				        g->start.things[i].no_code ? " (no code)" : "");
		fprintf(out, "\n");
	}
}

void tell_script(const struct stage *g, const struct station *built, FILE *out)
{
	static struct stage *again;
	int32_t room = 1;
	int64_t at = 0;
	if (!again && !(again = calloc(1, sizeof *again)))
		return;
	struct tally unused = {0};
	again->tally = &unused;
	stage_begin(again, built, &g->start);
	again->variant = g->variant;
	again->only = "nothing";
	tell_start(out, g);
	for (int i = 0; i < g->n_list; i++) {
		const struct entry *e = &g->list[i];
		int64_t gap = e->at_ms - at;
		int32_t works = e->kind == ENTRY_READ || e->kind == ENTRY_SENT
		                    ? stage_works_for(again, e->scanner)
		                    : room;
		if (works != room)
			fprintf(out, "room %d\n", (int)works);
		room = works;
		if (e->kind == ENTRY_READ || e->kind == ENTRY_MOVES)
			tell_wait(out, gap);
		if (e->kind == ENTRY_SENT)
			tell_sent(out, g, i);
		else if (e->kind == ENTRY_READ && !e->late)
			tell_read(out, g, e, gap, works);
		else if (e->kind == ENTRY_MOVES)
			tell_moves(out, g, e);
		else if (e->kind == ENTRY_POWER)
			fprintf(out, "+ boot %d s\n", (int)(e->n / 1000));
		else if (e->kind == ENTRY_WALL)
			fprintf(out, "+ wall %d min\n", (int)(e->n / 60000));
		stage_do(again, e);
		if (e->kind == ENTRY_READ || e->kind == ENTRY_MOVES)
			at = again->true_ms;
		else if (e->kind == ENTRY_POWER)
			at += e->n;
		if ((e->kind == ENTRY_READ && !e->late) || e->kind == ENTRY_SENT)
			fprintf(out, "#     %s: %s\n#     next: %s\n",
			        again->out.reply.verdict == VERDICT_REFUSED    ? "refused"
			        : again->out.reply.verdict == VERDICT_QUESTION ? "question"
			                                                       : "accepted",
			        again->told[room_index(works)].said, again->out.reply.next.words);
	}
	if (g->path[0])
		fprintf(out, "# then people do what fits:\n%s", g->path);
}
