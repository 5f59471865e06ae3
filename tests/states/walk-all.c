/* The walk as a program: the rooms, several at once, the saboteurs, and random long cases. */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "digest.h"
#include "walk-run.h"

#define DIGEST_STEPS 10000 /* a room */

/* --- rooms -------------------------------------------------------------------------------------- */

static int digest_rooms_of(const struct room_plan *plans, size_t count, struct buf *lines)
{
	uint32_t broken = 0;
	for (size_t i = 0; i < count; i++) {
		static struct walk w;
		uint64_t digest = DIGEST_START;
		memset(&w, 0, sizeof w);
		w.limit = DIGEST_STEPS;
		w.digest = &digest;
		w.quiet = 1; /* the walk itself tells what is broken */
		walk_run(&w, &plans[i]);
		digest_line(lines, digest, plans[i].name);
		broken |= w.broken;
		walk_free(&w);
	}
	return broken != 0;
}

/* walk --digest FILE [--update] */
static int digest_all(const char *file, int update)
{
	struct buf lines = {0};
	int bad = digest_rooms_of(rooms, n_rooms, &lines);
	bad |= digest_rooms_of(digest_rooms, n_digest_rooms, &lines);
	bad |= digest_compare(file, update, &lines);
	buf_free(&lines);
	return bad;
}

/* --- several at once: each in a process of its own, told in order --------------------------------- */

struct tally { /* shared with the process that fills it */
	uint64_t states, steps, compared, tried;
	int bad, whole;
};

struct job {
	void (*work)(const struct job *job, struct tally *t);
	const struct room_plan *plan;
	uint64_t limit;
	const struct saboteur *saboteur;
	uint32_t cases;
	uint64_t seed;
	FILE *said;
	pid_t pid;
};

static void walk_room(const struct job *job, struct tally *t)
{
	static struct walk w;
	w.limit = job->limit;
	w.ends = ends_new(job->plan, 0, NULL);
	time_t began = time(NULL);
	t->whole = walk_run(&w, job->plan);
	t->states = w.visited.count;
	t->steps = w.steps;
	t->compared = w.compared;
	t->tried = ends_tried(w.ends);
	t->bad = w.broken != 0;
	printf("%s: %s, %zu states, %" PRIu64 " transitions; %" PRIu64 " pairs of one key compared; %" PRIu64
	       " states with a truth, %" PRIu64 " without an end, the longest way %d scans (%d s)\n",
	       job->plan->name, t->whole ? "whole" : "NOT WHOLE: stopped at the limit", w.visited.count,
	       w.steps, w.compared, t->tried, ends_dead(w.ends), ends_longest(w.ends),
	       (int)(time(NULL) - began));
	walk_free(&w);
}

static void start(struct job *job, struct tally *t)
{
	fflush(stdout);
	job->said = tmpfile();
	job->pid = job->said ? fork() : -1;
	if (job->pid < 0) {
		perror("walk");
		exit(1);
	}
	if (job->pid)
		return;
	if (dup2(fileno(job->said), STDOUT_FILENO) < 0)
		_exit(1);
	job->work(job, t);
	fflush(stdout);
	_exit(0);
}

static void tell_job(struct job *job)
{
	int c;
	rewind(job->said);
	while ((c = getc(job->said)) != EOF)
		putchar(c);
	fclose(job->said);
	fflush(stdout);
}

/* 1 where a job failed or ended by a signal. */
static int do_jobs(struct job *jobs, struct tally *tallies, size_t n)
{
	long most = sysconf(_SC_NPROCESSORS_ONLN), running = 0;
	int bad = 0;
	for (size_t begun = 0, done = 0; done < n;) {
		if (begun < n && running < (most > 0 ? most : 1)) {
			start(&jobs[begun], &tallies[begun]);
			begun++;
			running++;
			continue;
		}
		int status;
		pid_t pid = wait(&status);
		for (size_t i = 0; i < begun; i++)
			if (jobs[i].pid == pid) {
				tell_job(&jobs[i]);
				bad |= status != 0 || tallies[i].bad;
			}
		running--;
		done++;
	}
	return bad;
}

static struct tally *tallies_new(size_t n)
{
	void *p =
	    mmap(NULL, n * sizeof(struct tally), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	if (p == MAP_FAILED)
		exit(1);
	return p;
}

static uint64_t dead_ends_in(const struct room_plan *plan, const struct saboteur *saboteur)
{
	static struct walk w;
	memset(&w, 0, sizeof w);
	w.quiet = 1;
	w.limit = 20000;
	w.ends = ends_new(plan, 1, saboteur);
	walk_run(&w, plan);
	uint64_t dead = ends_dead(w.ends);
	walk_free(&w);
	return dead;
}

static int is_caught_in(const struct room_plan *plan, const struct saboteur *saboteur)
{
	static struct walk w;
	if (saboteur->spoil_next)
		return !dead_ends_in(plan, NULL) && dead_ends_in(plan, saboteur);
	memset(&w, 0, sizeof w);
	w.saboteur = saboteur;
	w.quiet = 1;
	w.limit = 100000;
	walk_run(&w, plan);
	int found = w.broken >> saboteur->rule & 1;
	walk_free(&w);
	return found;
}

/* A broken variant must be caught in one of the rooms. */
static void catch_saboteur(const struct job *job, struct tally *t)
{
	for (size_t i = 0; i < n_rooms && !t->whole; i++)
		t->whole = is_caught_in(&rooms[i], job->saboteur);
	if (!t->whole)
		printf("NOT CAUGHT: rule %d, %s\n", job->saboteur->rule, job->saboteur->what);
	t->bad = !t->whole;
}

/* --- random long cases -------------------------------------------------------------------------- */

static uint64_t random_state;

static uint32_t random_number(uint32_t below)
{
	random_state = random_state * 6364136223846793005u + 1442695040888963407u;
	return (uint32_t)(random_state >> 33) % below;
}

static int plays_well(const struct room_plan *plan, const uint8_t *scans, int count, int quiet)
{
	static struct walk w;
	memset(&w, 0, sizeof w);
	w.quiet = quiet;
	world_init(&w.world, plan);
	snapshot_begin(&w.world);
	struct node n = {.state = snapshot_take(&w.world), .parent = walk_remember(&w, 0, 0)};
	for (int i = 0; i < count && !w.broken; i++) {
		int input = scans[i] % w.world.n_inputs;
		walk_step(&w, &n, input);
		free(n.state);
		n.state = snapshot_take(&w.world);
		n.parent = walk_remember(&w, n.parent, input);
	}
	free(n.state);
	int good = !w.broken;
	walk_free(&w);
	return good;
}

/* Takes out scans as long as the rest still fails: what is left is what a person has to read. */
static void shrink(const struct room_plan *plan, uint8_t *scans, int count)
{
	for (int size = count / 2; size >= 1; size /= 2)
		for (int at = 0; at + size <= count;) {
			uint8_t rest[512];
			memcpy(rest, scans, (size_t)at);
			memcpy(rest + at, scans + at + size, (size_t)(count - at - size));
			if (!plays_well(plan, rest, count - size, 1)) {
				memcpy(scans, rest, (size_t)(count - size));
				count -= size;
			} else {
				at += size;
			}
		}
	printf("shrunk to %d scans\n", count);
	plays_well(plan, scans, count, 0);
}

static void play_random(const struct job *job, struct tally *t)
{
	static const struct room_plan plan = {"random",     .tourniquets = 2, .forceps = 2,
	                                      .others = 1,  .rolls_on = 1,    .no_identity = 1,
	                                      .refused = 1, .digits = 2,      .people = 4};
	uint64_t scans_made = 0;
	random_state = job->seed;
	for (uint32_t i = 0; i < job->cases && !t->bad; i++) {
		uint8_t scans[512];
		int count = 200 + (int)random_number(300);
		for (int k = 0; k < count; k++)
			scans[k] = (uint8_t)random_number(256);
		if (!plays_well(&plan, scans, count, 1)) {
			printf("random case %u of seed %" PRIu64 " breaks a rule\n", i, job->seed);
			shrink(&plan, scans, count);
			t->bad = 1;
		}
		scans_made += (uint64_t)count;
	}
	if (!t->bad)
		printf("%u random long cases, %" PRIu64 " scans, no rule broken (seed %" PRIu64 ")\n",
		       job->cases, scans_made, job->seed);
}

/* --- all of it ---------------------------------------------------------------------------------- */

#define JOBS_MAX 128

static size_t add_rooms(struct job *jobs, size_t n, const struct room_plan *plans, size_t count)
{
	for (size_t i = 0; i < count; i++)
		jobs[n++] = (struct job){.work = walk_room, .plan = &plans[i]};
	return n;
}

static void tell_rooms(const struct job *jobs, const struct tally *t, size_t n)
{
	struct tally sum = {0};
	int count = 0, caught = 0;
	for (size_t i = 0; i < n; i++) {
		caught += jobs[i].saboteur && t[i].whole;
		if (jobs[i].work != walk_room)
			continue;
		count++;
		sum.whole += t[i].whole;
		sum.bad += t[i].bad;
		sum.states += t[i].states;
		sum.steps += t[i].steps;
		sum.compared += t[i].compared;
		sum.tried += t[i].tried;
	}
	printf("in all %d of %d rooms whole, %" PRIu64 " states, %" PRIu64 " transitions, %d rules, %" PRIu64
	       " pairs of one key compared, %" PRIu64 " states with a truth followed to the end; %s\n",
	       sum.whole, count, sum.states, sum.steps, RULE_MAX, sum.compared, sum.tried,
	       sum.bad ? "SOME RULE IS BROKEN" : "no rule broken");
	if (n > (size_t)count)
		printf("%d of %d broken variants caught\n", caught, n_saboteurs);
}

static int do_all(int deep, uint64_t seed)
{
	struct job jobs[JOBS_MAX] = {0};
	struct tally *tallies = tallies_new(JOBS_MAX);
	size_t n = add_rooms(jobs, 0, rooms, n_rooms);
	for (int k = 0; k < n_saboteurs; k++)
		jobs[n++] = (struct job){.work = catch_saboteur, .saboteur = &saboteurs[k]};
	jobs[n++] = (struct job){.work = play_random, .cases = deep ? 30000 : 3000, .seed = seed};
	if (deep)
		n = add_rooms(jobs, n, deep_rooms, n_deep_rooms);
	int bad = do_jobs(jobs, tallies, n);
	tell_rooms(jobs, tallies, n);
	return bad;
}

/* walk --room N [LIMIT]: one of them, stopped after so many transitions */
static int one_room(int number, uint64_t limit)
{
	struct job job = {.work = walk_room, .plan = &rooms[number], .limit = limit};
	struct tally t = {0};
	if (number < 0 || (size_t)number >= n_rooms)
		return 2;
	walk_room(&job, &t);
	return t.bad;
}

int main(int argc, char **argv)
{
	int deep = argc > 1 && strcmp(argv[1], "--deep") == 0;
	uint64_t seed = argc > 2 ? strtoull(argv[2], NULL, 10) : deep ? (uint64_t)time(NULL) : 2026;
	if (argc > 2 && strcmp(argv[1], "--room") == 0)
		return one_room(atoi(argv[2]), argc > 3 ? strtoull(argv[3], NULL, 10) : 0);
	if (argc > 2 && strcmp(argv[1], "--digest") == 0)
		return digest_all(argv[2], argc > 3 && strcmp(argv[3], "--update") == 0);
	return do_all(deep, seed);
}
