#include <dirent.h>
#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include "base/log.h"
#include "base/name.h"
#include "count/unfollowed.h"
#include "run/request.h"

#define SETTLED_MAX 170
#define COPY_PAGES 64
#define COPY_EVERY_MS 3
#define COPY_SECRET_BYTES 16
#define COPY_LEAVES (4u << 20) /* of the disk */

json_t *request_settle(struct client *c, const json_t *q)
{
	struct error e = {0};
	int32_t seq = 0;
	struct event ev = {.kind = EV_CORRECTION};
	const char *what = json_text(q, "what");
	if (request_number(q, "event", 1, NUMBER_MAX, &seq, &e) < 0)
		return answer_no(e.text);
	if (!unfollowed_has(&c->d->core.station, seq) && !proof_waits(&c->d->core.station.proof, seq))
		return answer_no(
		    "that event is not among those that somebody must deal with: see 'bandtally status'");
	if (name_check("what was done about it", what, SETTLED_MAX, &e) < 0)
		return answer_no(e.text);
	ev.ref = seq;
	snprintf(ev.text, sizeof ev.text, "%s", what);
	return answer_yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

/* Who asks for people's names, or for what a badge did, is on record with the reason. */
json_t *request_audited(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_AUDITED};
	const char *why = json_text(q, "why");
	if (request_number(q, "case", 0, NUMBER_MAX, &ev.n, &e) < 0 ||
	    request_number(q, "person", 0, NUMBER_MAX, &ev.person, &e) < 0)
		return answer_no(e.text);
	if (name_check("the reason", why, EVENT_TEXT_MAX - 1, &e) < 0)
		return answer_no(e.text);
	snprintf(ev.text, sizeof ev.text, "%s", why);
	return answer_yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

static int take_room(void *context, const struct event *ev)
{
	*(int32_t *)context = ev->room;
	return ev->case_no != 0;
}

/* A case that somebody asked about, an inquest or a claim, stays until that is over, and the record says who it was for. */
json_t *request_keep(struct client *c, const json_t *q)
{
	struct error e = {0};
	struct event ev = {.kind = EV_KEPT_FOR, .n = json_truth(q, "on")}, edge = {0};
	const char *what = json_text(q, "what");
	if (request_number(q, "case", 1, NUMBER_MAX, &ev.case_no, &e) < 0)
		return answer_no(e.text);
	if (name_check(ev.n ? "what it is kept for" : "why that is over", what, EVENT_TEXT_MAX - 1, &e) < 0)
		return answer_no(e.text);
	if (record_case_left(c->d->core.record, ev.case_no, &edge) == RECORD_FOUND) {
		error_set(&e, -ENOENT, "case %d has left the record: keep its archive, %.100s",
		          (int)ev.case_no, edge.text);
		return answer_no(e.text);
	}
	if (record_each(c->d->core.record, ev.case_no, take_room, &ev.room, &e) < 0)
		return answer_no(e.text);
	if (!ev.room) {
		error_set(&e, -ENOENT, "there is no case %d in the record: see 'bandtally case list'",
		          (int)ev.case_no);
		return answer_no(e.text);
	}
	snprintf(ev.text, sizeof ev.text, "%s", what);
	return answer_yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}

static void copy_step(void *context)
{
	struct client *c = context;
	struct error e = {0};
	int n = record_copy_step(c->d->core.record, COPY_PAGES, &e);
	if (n == RECORD_COPY_GOES_ON) {
		loop_after(c->d->loop, COPY_EVERY_MS, copy_step, c);
		return;
	}
	c->copying = c->d->copying = 0;
	/* Read by another user than the station's, who got its name from us and nobody else. */
	if (n == 0 && chmod(c->copy_file, 0644) < 0)
		n = error_set(&e, -errno, "cannot hand out the copy: %s: check the data folder",
		              strerror(errno));
	json_t *o = answer_yes_or_no(n, &e);
	c->copy_events = n == 0 ? record_last(c->d->core.record, NULL) : 0;
	json_object_set_new(o, "file", json_string(c->copy_file));
	json_object_set_new(o, "events", json_integer(c->copy_events));
	request_answer(c, o);
}

static void copies_folder(const struct daemon *d, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s/copies", d->core.folder);
}

/* A file in a folder that can be passed through but not listed, with a name that cannot be guessed: who asks
 * may be a user whose own folders the station cannot write to, and the station writes nowhere else. */
static int copy_name(const struct daemon *d, char out[PATH_MAX], struct error *e)
{
	unsigned char secret[COPY_SECRET_BYTES];
	char folder[PATH_MAX];
	copies_folder(d, folder);
	if ((mkdir(folder, 0711) < 0 && errno != EEXIST) || chmod(folder, 0711) < 0 ||
	    getrandom(secret, sizeof secret, 0) != (ssize_t)sizeof secret)
		return error_set(e, -EIO, "cannot make %.200s: %s: check the data folder", folder,
		                 strerror(errno));
	int n = snprintf(out, PATH_MAX, "%.3900s/", folder);
	for (size_t i = 0; i < sizeof secret; i++)
		n += snprintf(out + n, PATH_MAX - (size_t)n, "%02x", secret[i]);
	return 0;
}

/* What a station left that was killed while somebody read a copy. */
void request_copies_clear(const struct daemon *d)
{
	char folder[PATH_MAX];
	copies_folder(d, folder);
	DIR *dir = opendir(folder);
	for (struct dirent *x = dir ? readdir(dir) : NULL; x; x = readdir(dir))
		if (x->d_name[0] != '.')
			unlinkat(dirfd(dir), x->d_name, 0);
	if (dir)
		closedir(dir);
}

/* A copy must not take the space in which the count is stored. */
static int copy_fits(const struct daemon *d, struct error *e)
{
	char record[PATH_MAX];
	struct stat file;
	struct statvfs disk;
	snprintf(record, sizeof record, "%.3900s/" RECORD_FILE, d->core.folder);
	if (stat(record, &file) < 0 || statvfs(d->core.folder, &disk) < 0)
		return error_set(e, -errno, "cannot look how much space there is: %s: check the data folder",
		                 strerror(errno));
	uint64_t space = (uint64_t)disk.f_bavail * disk.f_frsize, size = (uint64_t)file.st_size;
	if (space >= size + COPY_LEAVES)
		return 0;
	return error_set(
	    e, -ENOSPC,
	    "no copy was made: the disk of the data folder has %llu kB free, a copy takes %llu and "
	    "must leave %u for the count: free some space there",
	    (unsigned long long)space / 1024, (unsigned long long)size / 1024, COPY_LEAVES / 1024);
}

json_t *request_copy(struct client *c, const json_t *q)
{
	struct error e = {0};
	(void)q;
	if (c->d->copying)
		return answer_no("a copy of the record is being made already: wait for it and try again");
	if (c->copy_file[0])
		return answer_no("this connection has its copy already: open another for the next");
	int n = copy_fits(c->d, &e);
	if (n == 0)
		n = copy_name(c->d, c->copy_file, &e);
	if (n == 0)
		n = record_copy_start(c->d->core.record, c->copy_file, &e);
	if (n < 0)
		return answer_no(e.text);
	c->copying = c->d->copying = 1;
	loop_after(c->d->loop, 0, copy_step, c);
	return NULL; /* answered when it is done */
}

/* Who was given a copy says that a backup was made of it and read back from its first event to its last. */
json_t *request_backed_up(struct client *c, const json_t *q)
{
	struct error e;
	struct event ev = {.kind = EV_BACKED_UP, .ref = c->copy_events};
	(void)q;
	if (!c->copy_events)
		return answer_no(
		    "this connection was given no copy of which there could be a backup: ask for one first");
	return answer_yes_or_no(core_store(&c->d->core, &ev, 1, &e), &e);
}
