#include "run/check.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include "base/file.h"
#include "base/log.h"
#include "base/scanners.h"
#include "record/head.h"
#include "record/seal.h"
#include "record/snapshot.h"
#include "record/store.h"
#include "record/verify.h"
#include "run/aside.h"
#include "run/media.h"
#include "run/sense.h"
#include "run/sound.h"
#include "tell/rooms.h"
#include "words/languages.h"

static int is_held(const char *folder)
{
	char path[PATH_MAX];
	snprintf(path, sizeof path, "%.3800s/lock", folder);
	return file_is_locked(path);
}

/* 1 it can be read, 0 it is not there. */
static int can_read(const char *path, struct error *e)
{
	struct stat st;
	if (access(path, R_OK) == 0)
		return 1;
	int why = errno;
	if (why == ENOENT)
		return 0;
	/* By number: the station is not started before this is done, and a directory service may not answer. */
	char owner[24] = "root";
	if (stat(path, &st) < 0)
		snprintf(owner, sizeof owner, "another user");
	else if (st.st_uid)
		snprintf(owner, sizeof owner, "user %u", (unsigned)st.st_uid);
	return error_set(e, -why, "cannot read %.400s: %s: it belongs to %s: check as that user, or as root",
	                 path, strerror(why), owner);
}

/* Whether a start would take it for the station's latest record; `r` NULL: there is none. */
static int check_head(struct record *r, const struct station *st, const char *head, struct error *e)
{
	char path[PATH_MAX];
	struct noted noted;
	snprintf(path, sizeof path, "%.3800s/" HEAD_FILE, head);
	int n = head_read(&noted, path, e);
	if (n < 0 && !st->proof.kid[0]) /* no start of this version was there */
		return 0;
	if (n == 0 && !r)
		return error_set(
		    e, -ENOENT,
		    "there is no record, and one had come to event %lld (%.300s): the station would "
		    "begin another and say so: put it back",
		    (long long)noted.head.seq, path);
	if (n < 0)
		return error_set(
		    e, n,
		    "cannot read %.400s, where it was noted how far the record had come: %s: the "
		    "station would take it for another record: put the file back",
		    path, strerror(-n));
	n = head_compare(r, &noted.head);
	if (n == HEAD_HELD)
		return 0;
	return error_set(
	    e, n < 0 ? n : -EUCLEAN,
	    "the record is not the one that had come to event %lld (%.300s): the station would start, "
	    "say so, and give out other numbers",
	    (long long)noted.head.seq, path);
}

/* As a start would; `seal` NULL: it would make another key, which no snapshot is signed by. */
static int load(struct record *r, const struct seal *seal, const char *folder, struct station *st,
                struct error *e)
{
	int64_t seq = 0;
	return seal && snapshot_look(r, seal, folder, st, &seq) == SNAPSHOT_TAKEN
	           ? record_load_from(r, seq, st, e)
	           : record_load(r, st, e);
}

struct first_found {
	struct error *e;
	int any;
};

static void keep_first(void *context, const char *what)
{
	struct first_found *f = context;
	if (!f->any++)
		error_set(f->e, -EUCLEAN, "%.600s", what);
}

/* All of it, whatever a start would read: what is damaged now is read one day. An event whose text nobody can read, though it
 * was written so, is left for the end, `odd`: what a start would say of it says more. */
static int check_whole(struct record *r, struct error *odd, struct error *e)
{
	struct first_found f = {.e = e};
	struct verified v;
	struct error why = {0};
	int n = record_verify_all(r, &(struct verify_how){.indexes = 1, .found = keep_first, .context = &f},
	                          &v, &why);
	if (f.any)
		return e->code;
	if (n == -EBADMSG)
		*odd = why;
	return n < 0 && n != -EBADMSG ? error_set(e, n, "%.600s", why.text) : 0;
}

static int check_record(const char *folder, const char *head, const struct seal *seal, struct station *st,
                        struct error *odd, struct error *e)
{
	char path[PATH_MAX];
	struct record *r = NULL;
	snprintf(path, sizeof path, "%.3800s/" RECORD_FILE, folder);
	int n = can_read(path, e);
	if (n <= 0)
		return n < 0 ? n : check_head(NULL, st, head, e);
	n = record_open_still(&r, path, e);
	if (n == 0)
		n = check_whole(r, odd, e);
	if (n == 0)
		n = load(r, seal, folder, st, e);
	if (n == 0)
		n = check_head(r, st, head, e);
	record_close(r);
	return n;
}

/* Of a key what a start would say of it; a first start makes one. `none`: why there is no seal. */
static int check_key(const char *folder, const struct seal *seal, const struct error *none,
                     const struct station *st, struct error *e)
{
	char path[PATH_MAX];
	snprintf(path, sizeof path, "%.3800s/" SEAL_FILE, folder);
	int n = can_read(path, e);
	if (n == 0 && st->boot)
		return error_set(e, -ENOENT,
		                 "%.400s is not there, though the record has events: the station would make "
		                 "another and say so: restore it",
		                 path);
	if (n <= 0)
		return n;
	if (!seal)
		return error_set(e, none->code, "%s", none->text);
	unsigned state = seal_state(seal);
	if (state)
		return error_set(e, -EPERM,
		                 "%.400s %s: make it a file that its owner alone can read (chmod 600)", path,
		                 state & KEY_LINK ? "is a symbolic link" : "can be read by other users");
	if (st->proof.kid[0] && strcmp(seal_key(seal)->kid, st->proof.kid) != 0)
		return error_set(e, -EUCLEAN,
		                 "%.400s is another key than the record names: restore the one that it had",
		                 path);
	return 0;
}

/* What a start would put up with, and say on the board. */
static int check_state(const char *folder, const struct station *st, struct error *e)
{
	char words[600];
	if (station_unfollowed_words(st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, words, sizeof words))
		return error_set(
		    e, -EUCLEAN,
		    "%.400s: the station would start, and say: count by hand: see 'bandtally audit verify'",
		    words);
	if (rooms_gone_words(st, NULL, 0, st->last, words, sizeof words))
		return error_set(e, -ENOENT, "%.400s", words);
	if (aside_find(folder, words, sizeof words))
		return error_set(e, -EUCLEAN,
		                 "%.400s is a record that could not be read: look what can be had from it, "
		                 "and take it out "
		                 "of the data folder",
		                 words);
	return 0;
}

/* /var/lib/bandtally-head does not lie in /var/lib/bandtally. */
static bool lies_in(const char *path, const char *folder)
{
	size_t n = strlen(folder);
	return strncmp(path, folder, n) == 0 && (path[n] == '/' || path[n] == '\0');
}

#define SPACE_KB 512 /* what a start and its first events take at most */

/* A start on a full disk stores nothing, and ends. */
static int check_space(const char *folder, struct error *e)
{
	struct statvfs fs;
	if (statvfs(folder, &fs) < 0 || fs.f_bavail * (fs.f_frsize / 512) >= 2 * SPACE_KB)
		return 0;
	return error_set(e, -ENOSPC, "the disk of %.400s is full: free some space", folder);
}

static int check_rest(const char *folder, const char *head, struct station *st, const char **said,
                      struct error *e)
{
	struct stat there;
	if (stat(folder, &there) < 0)
		return error_set(
		    e, -errno,
		    "cannot look into %.400s: %s: the first start makes it, or give another with "
		    "--data",
		    folder, strerror(errno));
	if (!S_ISDIR(there.st_mode))
		return error_set(e, -ENOTDIR, "%.400s is not a folder: give a data folder with --data",
		                 folder);
	*said = "settings are sound; the record is held by the station that runs";
	if (is_held(folder))
		return 0;
	*said = "settings and record are sound";
	if (lies_in(head, folder))
		*said = "settings and record are sound. How far the record has come is noted in the data "
		        "folder, which "
		        "is a weak place: name another ([station] head in station.ini)";
	struct seal *seal = NULL;
	struct error none = {0}, odd = {0};
	seal_open_still(&seal, folder, &none);
	int n = check_record(folder, head, seal, st, &odd, e);
	if (n == 0)
		n = check_key(folder, seal, &none, st, e);
	seal_close(seal);
	if (n == 0)
		n = check_space(folder, e);
	if (n == 0)
		n = check_state(folder, st, e);
	return n == 0 && odd.code ? error_set(e, odd.code, "%.600s", odd.text) : n;
}

/* Every settings file of that place; each may be absent. */
static int check_files(const char *folder, const char *place, struct settings *settings, struct station *st,
                       struct error *e)
{
	int n = settings_read_from(settings, st, folder, place, e);
	if (n == 0)
		n = media_check(place, e);
	if (n == 0)
		n = sense_check(settings, st, place, e);
	return n == 0 ? sound_scanners_check(folder, place, e) : n;
}

int check_settings(const char *folder, const char *place, struct settings *settings, struct error *e)
{
	struct station *st = calloc(1, sizeof *st);
	if (!st)
		return error_set(e, -ENOMEM, "cannot check: out of memory: try again");
	int n = check_files(folder, place, settings, st, e);
	station_deinit(st);
	free(st);
	return n;
}

int check_folder(const char *folder, const char *head, struct settings *settings, const char **said,
                 struct error *e)
{
	char place[300];
	struct station *st = calloc(1, sizeof *st);
	if (!st)
		return error_set(e, -ENOMEM, "cannot check: out of memory: try again");
	int n = check_files(folder, folder, settings, st, e);
	if (n == 0)
		n = sound_check(settings, st, folder, e);
	if (n == 0)
		head_place(place, folder, head, settings->head);
	if (n == 0)
		n = check_rest(folder, place, st, said, e);
	if (n == 0)
		n = sound_site_check(settings, st, folder, e);
	station_deinit(st);
	free(st);
	return n;
}

void check_languages(void)
{
	struct languages all;
	struct error e = {0};
	if (languages_read(&all, languages_folder(), &e) < 0)
		log_line("%s", e.text);
	for (int i = 0; i < all.n; i++) {
		const struct language *l = all.list[i];
		const char *who = language_read_by(l);
		printf("language %s: %s", language_code(l), *who ? who : "nobody is named who has read it");
		if (language_lacks(l))
			printf("; %d of its %d sentences are said in English", language_lacks(l),
			       SAYING_KINDS - 1);
		putchar('\n');
	}
	languages_free(&all);
}
