/* audit collect: copies of the records of all stations, from a hospital's store, for whoever audits more than one. What a copy
 * has already is not fetched again. bandtally-forward reads the store (forward/copy.h says what it tells). */
#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/json.h"
#include "record/collect.h"
#include "tool/audit.h"
#include "tool/central-files.h"
#include "tool/client.h"
#include "tool/words.h"

#define COMMIT_EVERY 50000
#define CHILD_WORDS 32

static const char options[] = "from= database= user= certificate= key= authority=";
static const char usage[] =
    "usage: bandtally audit collect FOLDER --from HOST[:PORT] --database NAME --user ROLE\n"
    "                               --certificate FILE --key FILE --authority FILE\n"
    "Copies the records of all stations that the role may read from a hospital's store into FOLDER, a file a "
    "station;\n"
    "once more, only what is new. Each event's hash is looked at on the way.\n"
    "  'bandtally audit report --central FOLDER …' is of all of them together; every other command of an "
    "audit takes\n"
    "  one: --file FOLDER/BC-01.db\n"
    "  --from         the host that has the store; several, with a comma between them\n"
    "  --certificate  names the role, a reader of the store; --authority signs the server's certificate\n"
    "Exit codes: 0 all copied, 1 failed or something is missing (it says what), 2 wrong usage.\n"
    "example: bandtally audit collect hospital --from store.example --database bt --user auditor \\\n"
    "             --certificate auditor.pem --key auditor.key --authority authority.pem\n";

struct collecting {
	const char *folder;
	struct record *r; /* of the station that is copied, NULL none */
	char name[8];
	int32_t incarnation;
	int64_t began; /* its copy's end before */
	int stations, faults, whole;
};

/* --- one station ------------------------------------------------------------------------------------------------------ */

static void path_of(const struct collecting *c, const char *name, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%.4000s/%.5s.db", c->folder, name);
}

static void leave_station(struct collecting *c, const char *why)
{
	fprintf(stderr, "bandtally: %s: %s\n", c->name, why);
	record_close(c->r);
	c->r = NULL;
	c->faults++;
}

static void end_station(struct collecting *c)
{
	struct error e = {0};
	if (!c->r)
		return;
	int64_t last = record_last(c->r, NULL);
	if (collect_end(c->r, c->incarnation, &e) < 0) {
		leave_station(c, e.text);
		return;
	}
	printf("%s  up to event %lld, %lld of them new\n", c->name, (long long)last,
	       (long long)(last - c->began));
	record_close(c->r);
	c->r = NULL;
	c->stations++;
}

/* A store that was put back, or that somebody emptied, does not take away what was copied of it: that stays beside the new one. */
static void keep_before(const struct collecting *c, const char *path)
{
	char before[PATH_MAX + 24];
	for (int n = 1; access(path, F_OK) == 0 && n < 1000; n++) {
		snprintf(before, sizeof before, "%s.before-%d", path, n);
		if (access(before, F_OK) < 0 && rename(path, before) == 0)
			fprintf(stderr, "bandtally: %s: copied anew; what was there is kept as %s\n", c->name,
			        before);
	}
}

static void begin_station(struct collecting *c, const json_t *o)
{
	char path[PATH_MAX];
	struct error e = {0};
	int32_t had = 0;
	snprintf(c->name, sizeof c->name, "%.2s-%02d", json_text(o, "site"),
	         (int)json_number(o, "number", 0) % 100);
	c->incarnation = (int32_t)json_number(o, "incarnation", 0);
	c->began = json_number(o, "after", 0);
	path_of(c, c->name, path);
	if (c->began == 0)
		keep_before(c, path);
	if (collect_open(&c->r, path, &had, &e) < 0)
		leave_station(c, e.text);
	else if (record_last(c->r, NULL) != c->began)
		leave_station(c, "its copy was changed meanwhile: collect again");
}

static void take_event(struct collecting *c, const struct line_event *line)
{
	struct error e = {0};
	if (!c->r)
		return;
	int n = collect_add(c->r, line, &e);
	if (n == 0 && line->seq % COMMIT_EVERY == 0)
		n = collect_commit(c->r, c->incarnation, &e);
	if (n < 0)
		leave_station(c, e.text);
}

static void take_gone(struct collecting *c, const json_t *o)
{
	struct error e = {0};
	if (collect_gone(c->r, json_number(o, "to", 0), json_text(o, "hash"), &e) < 0)
		leave_station(c, e.text);
}

static void take_line(struct collecting *c, const char *line)
{
	_cleanup_(json_drop) json_t *o = json_loads(line, 0, NULL);
	const json_t *station = json_object_get(o, "station"), *state = json_object_get(o, "state");
	if (station || json_object_get(o, "all"))
		end_station(c);
	if (station)
		begin_station(c, station);
	else if (json_object_get(o, "all"))
		c->whole = 1;
	else if (state) {
		fprintf(stderr, "bandtally: the store cannot be copied: %s: %s\n", json_text(state, "code"),
		        json_text(state, "why"));
		c->faults++;
	} else if (json_object_get(o, "gone") && c->r)
		take_gone(c, json_object_get(o, "gone"));
}

/* --- the program that reads the store ---------------------------------------------------------------------------------- */

struct child {
	pid_t pid;
	FILE *to, *from;
};

static int begin_child(struct child *c, char **argv, struct error *e)
{
	char path[PATH_MAX + 20];
	int in[2], out[2];
	ssize_t n = readlink("/proc/self/exe", path, PATH_MAX - 1);
	if (n < 0 || pipe(in) < 0 || pipe(out) < 0)
		return error_set(e, -errno, "the store cannot be read: %s: try again", strerror(errno));
	path[n] = 0;
	strcpy(strrchr(path, '/') + 1, "bandtally-forward");
	signal(SIGPIPE, SIG_IGN);
	c->pid = fork();
	if (c->pid == 0) {
		dup2(in[0], 0);
		dup2(out[1], 1);
		for (int i = 0; i < 2; i++) {
			close(in[i]);
			close(out[i]);
		}
		execv(path, argv);
		fprintf(stderr,
		        "bandtally: cannot start %s: %s: install bandtally's part for a hospital's store\n",
		        path, strerror(errno));
		_exit(EXIT_FAILED);
	}
	close(in[0]);
	close(out[1]);
	c->to = fdopen(in[1], "w");
	c->from = fdopen(out[0], "r");
	return c->pid > 0 && c->to && c->from ? 0
	                                      : error_set(e, -EAGAIN, "the store cannot be read: try again");
}

/* What there is already; a copy that cannot be used is made anew. */
static void tell_have(const struct collecting *c, FILE *to)
{
	struct central_files files;
	struct error e = {0};
	if (central_files_list(&files, c->folder, &e) < 0)
		files.count = 0;
	for (int i = 0; i < files.count; i++) {
		const struct central_file *f = &files.list[i];
		struct record *r = NULL;
		int32_t incarnation = 0;
		if (collect_open(&r, f->path, &incarnation, &e) < 0) {
			fprintf(stderr, "bandtally: %s: %s\n", f->name, e.text);
			continue;
		}
		fprintf(
		    to,
		    "{\"v\":1,\"have\":{\"site\":\"%s\",\"number\":%d,\"incarnation\":%d,\"seq\":%lld}}\n",
		    f->site, (int)f->number, (int)incarnation, (long long)record_last(r, NULL));
		record_close(r);
	}
	central_files_free(&files);
}

static void read_all(struct collecting *c, FILE *from)
{
	struct line_event event;
	char *line = NULL;
	size_t room = 0;
	ssize_t n;
	while ((n = getline(&line, &room, from)) > 0) {
		if (line[n - 1] == '\n')
			line[--n] = 0;
		if (line_event(line, (size_t)n, &event))
			take_event(c, &event);
		else
			take_line(c, line);
	}
	free(line);
	end_station(c); /* what came before the store was lost stays */
}

static int collect(struct collecting *c, char **argv, struct error *e)
{
	struct child child = {0};
	int status = 0, n = mkdir(c->folder, 0700) < 0 && errno != EEXIST ? -errno : 0;
	if (n < 0)
		return error_set(e, n, "the folder %.300s cannot be made: %s: give another", c->folder,
		                 strerror(-n));
	n = begin_child(&child, argv, e);
	if (n < 0)
		return n;
	tell_have(c, child.to);
	fclose(child.to);
	read_all(c, child.from);
	fclose(child.from);
	waitpid(child.pid, &status, 0);
	if (!c->whole && !c->faults)
		return error_set(e, -EPIPE, "the store was lost before all was copied: collect again");
	return c->faults ? EXIT_FAILED : EXIT_OK;
}

/* The words of the child, which lie in `names` and in `w`; 0, or an exit code after a sentence. */
static int child_words(const struct words *w, char **child)
{
	static const char *const needed[] = {"from", "database", "user", "certificate", "key", "authority"};
	static char names[sizeof needed / sizeof *needed][16];
	int n = 0;
	child[n++] = (char *)"bandtally-forward";
	child[n++] = (char *)"--copy";
	for (size_t i = 0; i < sizeof needed / sizeof *needed; i++) {
		char *value = (char *)words_value(w, options, needed[i]);
		snprintf(names[i], sizeof names[i], "--%s", needed[i]);
		if (!value)
			return words_missing(names[i], usage);
		for (char *one; value && n + 2 < CHILD_WORDS;) { /* hosts with a comma between them */
			one = i == 0 ? strsep(&value, ",") : value;
			value = i == 0 ? value : NULL;
			child[n++] = names[i];
			child[n++] = one;
		}
	}
	return 0;
}

int audit_collect(int argc, char **argv)
{
	char *child[CHILD_WORDS] = {0};
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest != 1)
		return w.n_rest ? words_beyond(w.rest[1], usage) : words_missing("FOLDER", usage);
	r = child_words(&w, child);
	if (r)
		return r;
	struct collecting c = {.folder = w.rest[0]};
	r = collect(&c, child, &e);
	return r < 0 ? client_fail(&e) : r;
}
