/* theatre [--runs N] [--seed S] [--jobs J] [--only CHECK] [--variant NAME] [--variants] [--replay SEED.RUN]
 *         [--innocent] [--ends-in N] [--tell N]
 *
 * Plays N runs and says what was played, what did not hold and how it came about. 0 where all holds; with --variants,
 * where each broken variant is caught. A seed gives the same runs on every machine and with any number of jobs.
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "checks.h"
#include "play.h"
#include "shrink.h"
#include "variants.h"

#define KINDS_MAX 96
#define JOBS_MAX 8

struct options {
	uint64_t seed, runs, from;
	int jobs, variants, tell, end_every, shrink;
	unsigned allowed;
	const char *only;
	const struct variant *variant;
};

struct kind { /* of failure: its runs read alike but for numbers */
	char key[160];
	uint64_t count, first;
};

struct result { /* of one job, in shared memory */
	struct tally tally;
	struct kind kinds[KINDS_MAX];
	int n_kinds;
};

static struct station built;

/* --- kinds of failure ------------------------------------------------------------------------------- */

static size_t digit_words(const char *text)
{
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++) {
		size_t n = strlen(own_digit_name(d));
		if (strncasecmp(text, own_digit_name(d), n) == 0)
			return n;
	}
	return 0;
}

static void key_of(const struct failure *f, char out[160])
{
	size_t used = (size_t)snprintf(out, 160, "%s: ", f->check), n;
	for (const char *c = f->text; *c && used < 150; c++) {
		if ((n = digit_words(c))) {
			c += n - 1;
			out[used++] = '@';
		} else if (*c >= '0' && *c <= '9') {
			if (used && out[used - 1] != '#')
				out[used++] = '#';
		} else {
			out[used++] = *c;
		}
	}
	out[used] = 0;
}

static void add_kind(struct result *r, const char *key, uint64_t count, uint64_t run)
{
	for (int i = 0; i < r->n_kinds; i++)
		if (strcmp(r->kinds[i].key, key) == 0) {
			r->kinds[i].count += count;
			if (run < r->kinds[i].first)
				r->kinds[i].first = run;
			return;
		}
	if (r->n_kinds == KINDS_MAX)
		return;
	struct kind *k = &r->kinds[r->n_kinds++];
	snprintf(k->key, sizeof k->key, "%s", key);
	k->count = count;
	k->first = run;
}

/* --- playing ------------------------------------------------------------------------------------------ */

static void set_stage(struct stage *g, const struct options *o, struct tally *tally, struct play *p)
{
	g->tally = tally;
	g->only = o->only;
	g->variant = o->variant;
	g->end_every = o->end_every;
	g->replaying = 0;
	g->chance = &p->chance;
}

/* A variant is caught only where the station as it is does not fail. */
static int fails_without(const struct options *o, struct stage *g, struct play *p, uint64_t run)
{
	struct failure first = g->failure;
	struct tally unused = {0};
	set_stage(g, o, &unused, p);
	g->variant = NULL;
	play_run(p, g, &built, o->seed, run, o->allowed);
	int fails = g->failure.check != NULL;
	g->failure = first;
	return fails;
}

static void play_job(const struct options *o, int job, struct result *r)
{
	struct stage *g = calloc(1, sizeof *g);
	struct play *p = calloc(1, sizeof *p);
	char key[160];
	for (uint64_t run = o->from + (uint64_t)job; g && p && run < o->from + o->runs;
	     run += (uint64_t)o->jobs) {
		set_stage(g, o, &r->tally, p);
		play_run(p, g, &built, o->seed, run, o->allowed);
		r->tally.runs++;
		if (!g->failure.check || (o->variants && fails_without(o, g, p, run)))
			continue;
		key_of(&g->failure, key);
		add_kind(r, key, 1, run);
		if (o->variants)
			break;
	}
	free(g);
	free(p);
}

static void add_tally(struct tally *to, const struct tally *from)
{
	int64_t *a = (int64_t *)to;
	const int64_t *b = (const int64_t *)from;
	for (size_t i = 0; i < sizeof *to / sizeof *a; i++)
		a[i] += b[i];
}

/* Each job is a process of its own; what they found comes back in memory that they share. */
static void play_all(const struct options *o, struct result *whole)
{
	struct result *shared = mmap(NULL, sizeof *shared * (size_t)o->jobs, PROT_READ | PROT_WRITE,
	                             MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	memset(whole, 0, sizeof *whole);
	if (shared == MAP_FAILED) {
		perror("theatre: memory");
		exit(1);
	}
	for (int i = 0; i < o->jobs; i++) {
		pid_t pid = fork();
		if (pid == 0) {
			play_job(o, i, &shared[i]);
			_exit(0);
		}
		if (pid < 0)
			play_job(o, i, &shared[i]);
	}
	for (int status; wait(&status) > 0;)
		if (!WIFEXITED(status))
			add_kind(whole, "a job ended by a signal", 1, 0);
	for (int i = 0; i < o->jobs; i++) {
		add_tally(&whole->tally, &shared[i].tally);
		for (int k = 0; k < shared[i].n_kinds; k++)
			add_kind(whole, shared[i].kinds[k].key, shared[i].kinds[k].count,
			         shared[i].kinds[k].first);
	}
	munmap(shared, sizeof *shared * (size_t)o->jobs);
}

/* Plays one run again, shrinks it where it fails, and tells it. 1 where it fails. */
static int tell_run(const struct options *o, uint64_t run, FILE *out)
{
	struct stage *g = calloc(1, sizeof *g);
	struct play *p = calloc(1, sizeof *p);
	struct tally tally = {0};
	if (!g || !p)
		return 1;
	set_stage(g, o, &tally, p);
	play_run(p, g, &built, o->seed, run, o->allowed);
	int failed = g->failure.check != NULL;
	fprintf(out, "\n# run %" PRIu64 ".%" PRIu64 ", troubles %#x\n", o->seed, run, p->troubles);
	if (failed) {
		fprintf(out, "# %s does not hold: %s\n", g->failure.check, g->failure.text);
		if (o->shrink && !shrink(g, &built))
			fprintf(out, "# (not shorter: without people it does not come about)\n");
		else
			fprintf(out, "# %s\n", g->failure.text);
	}
	tell_script(g, &built, out);
	free(g);
	free(p);
	return failed;
}

/* --- telling -------------------------------------------------------------------------------------------- */

static void tell_tally(const struct tally *t, double seconds)
{
	printf("%" PRId64 " runs, %" PRId64 " scans (%" PRId64 " of them repeats, %" PRId64
	       " refused) in %.0f s\n",
	       t->runs, t->scans, t->repeats, t->refused, seconds);
	printf("cases ended: %" PRId64 " reconciled, %" PRId64 " unresolved, %" PRId64 " cancelled\n",
	       t->ended[END_RECONCILED], t->ended[END_UNRESOLVED], t->ended[END_CANCELLED]);
	printf("runs given up, too long or with scans of the other room on a sheet: %" PRId64 "\n",
	       t->given_up);
	printf("walks to an end: %" PRId64 ", with %" PRId64 " scans\n", t->walks, t->walk_scans);
	printf("facts that were not true on an ended sheet, by what was injected:\n");
	for (int c = 0; c < CAUSES; c++)
		printf("  %8" PRId64 "  %s\n", t->false_facts[c], c ? cause_name((enum cause)c) : "nothing");
}

static void tell_checks(const struct result *r)
{
	printf("%-14s %12s %8s\n", "check", "looked", "failed");
	for (int c = 0; c < CHECK_KINDS; c++) {
		uint64_t failed = 0;
		size_t n = strlen(check_name((enum check)c));
		for (int k = 0; k < r->n_kinds; k++)
			if (strncmp(r->kinds[k].key, check_name((enum check)c), n) == 0 &&
			    r->kinds[k].key[n] == ':')
				failed += r->kinds[k].count;
		printf("%-14s %12" PRId64 " %8" PRIu64 "  %s\n", check_name((enum check)c), r->tally.held[c],
		       failed, check_words((enum check)c));
	}
}

static int by_count(const void *a, const void *b)
{
	const struct kind *x = a, *y = b;
	return (x->count < y->count) - (x->count > y->count);
}

static int play_and_tell(const struct options *o)
{
	static struct result r;
	struct timespec from, to;
	clock_gettime(CLOCK_MONOTONIC, &from);
	play_all(o, &r);
	clock_gettime(CLOCK_MONOTONIC, &to);
	tell_tally(&r.tally, (double)(to.tv_sec - from.tv_sec) + (double)(to.tv_nsec - from.tv_nsec) / 1e9);
	tell_checks(&r);
	qsort(r.kinds, (size_t)r.n_kinds, sizeof *r.kinds, by_count);
	for (int i = 0; i < r.n_kinds; i++)
		printf("%6" PRIu64 " times, first run %" PRIu64 ".%" PRIu64 ": %s\n", r.kinds[i].count,
		       o->seed, r.kinds[i].first, r.kinds[i].key);
	for (int i = 0; i < r.n_kinds && i < o->tell; i++)
		tell_run(o, r.kinds[i].first, stdout);
	return r.n_kinds != 0;
}

/* Each variant must fail its own check. */
static int play_variants(struct options o)
{
	static struct result r;
	int missed = 0;
	for (int i = 0; i < n_variants; i++) {
		o.variant = &variants[i];
		o.only = check_name(variants[i].check);
		play_all(&o, &r);
		printf("variant %-22s %s %s after %" PRId64 " runs\n", variants[i].name,
		       r.n_kinds ? "caught by" : "NOT CAUGHT by", o.only, r.tally.runs);
		missed += !r.n_kinds;
	}
	return missed != 0;
}

static const struct variant *variant_named(const char *name)
{
	for (int i = 0; i < n_variants; i++)
		if (strcmp(variants[i].name, name) == 0)
			return &variants[i];
	fprintf(stderr, "theatre: %s: no such variant: see variants.c\n", name);
	exit(2);
}

static const char *check_named(const char *name)
{
	for (int c = 0; c < CHECK_KINDS; c++)
		if (strcmp(check_name((enum check)c), name) == 0)
			return check_name((enum check)c);
	fprintf(stderr, "theatre: %s: no such check: see checks.h\n", name);
	exit(2);
}

int main(int argc, char **argv)
{
	struct options o = {
	    .seed = 1, .runs = 2000, .jobs = 2, .end_every = 20, .tell = 8, .allowed = ~0u, .shrink = 1};
	const char *replay = NULL;
	for (int i = 1; i < argc; i++) {
		const char *name = argv[i], *value = i + 1 < argc ? argv[i + 1] : "";
		if (strcmp(name, "--innocent") == 0)
			o.allowed = TROUBLES_INNOCENT;
		else if (strcmp(name, "--variants") == 0)
			o.variants = 1;
		else if (strcmp(name, "--whole") == 0)
			o.shrink = 0;
		else if (i++, strcmp(name, "--runs") == 0)
			o.runs = strtoull(value, NULL, 10);
		else if (strcmp(name, "--seed") == 0)
			o.seed = strcmp(value, "new") == 0 ? (uint64_t)time(NULL) : strtoull(value, NULL, 10);
		else if (strcmp(name, "--jobs") == 0)
			o.jobs = atoi(value) < 1 ? 1 : atoi(value) > JOBS_MAX ? JOBS_MAX : atoi(value);
		else if (strcmp(name, "--ends-in") == 0)
			o.end_every = atoi(value);
		else if (strcmp(name, "--tell") == 0)
			o.tell = atoi(value);
		else if (strcmp(name, "--only") == 0)
			o.only = check_named(value);
		else if (strcmp(name, "--variant") == 0)
			o.variant = variant_named(value);
		else if (strcmp(name, "--replay") == 0)
			replay = value;
		else {
			fprintf(stderr, "theatre: %s: no such option: see main.c\n", name);
			return 2;
		}
	}
	if (stage_build(&built) < 0) {
		fprintf(stderr, "theatre: the catalogue cannot be read\n");
		return 1;
	}
	setvbuf(stdout, NULL, _IOLBF, 0);
	if (replay) {
		char *end;
		o.seed = strtoull(replay, &end, 10);
		return tell_run(&o, *end ? strtoull(end + 1, NULL, 10) : 0, stdout);
	}
	printf("seed %" PRIu64 "\n", o.seed);
	int failed = o.variants ? play_variants(o) : play_and_tell(&o);
	station_deinit(&built);
	return failed;
}
