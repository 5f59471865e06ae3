/* backup, restore: the record in a file, and the way back. */
#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/clock.h"
#include "record/backup.h"
#include "record/store.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static void print_backup(const char *file, const struct backup *b)
{
	char hex[2 * CHAIN_BYTES + 1], when[26] = "a time that cannot be read";
	if (b->last_ms)
		clock_text_full(b->last_ms, clock_utc_min(b->last_ms), when);
	chain_hex(&b->chain, hex);
	printf("%s is whole: %" PRId64 " events to %s\nlast hash %s\n", file, b->events, when, hex);
	if (b->odd.code)
		printf("in it %s\n", b->odd.text);
}

/* --- backup ------------------------------------------------------------------------------------- */

static const char backup_usage[] =
    "usage: bandtally backup FILE\n"
    "Copies the record into FILE while the station goes on, reads the copy back from its first event to its "
    "last, "
    "and only\n"
    "then puts it in the place of an earlier backup of that name. 'bandtally status' says how old the last "
    "one is.\n"
    "For root, the station's user and the group bandtally-audit; FILE is outside the data folder, best on "
    "another "
    "disk.\n"
    "The station's key is not in it: keep a copy of station.key apart, locked away.\n"
    "example: bandtally backup /media/backup/record-monday.db\n";

/* What is copied: a copy that the station makes, which lives as long as `held`, or the record of one that is down. */
static int find_source(char path[PATH_MAX], int *held, struct error *e)
{
	_cleanup_(json_drop) json_t *a = client_ask_holding(json_pack("{s:s}", "do", "copy"), held, e);
	if (a) {
		snprintf(path, PATH_MAX, "%s", json_text(a, "file"));
		return 0;
	}
	if (e->code != -ENOENT && e->code != -ECONNREFUSED)
		return e->code;
	snprintf(path, PATH_MAX, "%.3900s/" RECORD_FILE, client_folder);
	return access(path, R_OK) == 0 ? 0 : e->code;
}

static int tell_station(int held, struct error *e)
{
	if (held < 0) {
		puts("the station does not run: 'bandtally status' will not know of this backup");
		return 0;
	}
	_cleanup_(json_drop) json_t *a = client_ask_again(held, json_pack("{s:s}", "do", "backed-up"), e);
	return a ? 0 : e->code;
}

int tool_backup(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct backup b;
	char from[PATH_MAX], aside[PATH_MAX] = "";
	int held = -1, r = words_read(&w, argc, argv, "", backup_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (!w.n_rest)
		return words_missing("FILE", backup_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], backup_usage);
	int n = find_source(from, &held, &e);
	if (n == 0)
		n = backup_write(from, w.rest[0], client_folder, &b, aside, &e);
	if (n == 0) {
		print_backup(w.rest[0], &b);
		if (aside[0])
			printf("what was there holds what this record does not: it lies, unchanged, in %s\n",
			       aside);
		n = tell_station(held, &e);
	}
	if (held >= 0)
		close(held);
	return n < 0 ? client_fail(&e) : EXIT_OK;
}

/* --- restore ------------------------------------------------------------------------------------ */

static const char restore_options[] = "check";
static const char restore_usage[] =
    "usage: bandtally restore FILE           puts a backup in the place of the record; the station must have "
    "ended\n"
    "       bandtally restore --check FILE   only looks whether FILE is whole, and touches nothing\n"
    "FILE is read from its first event to its last before anything is touched. The record that was there "
    "stays in "
    "the data\n"
    "folder under another name, unchanged. For root and the station's user.\n"
    "example: bandtally restore --check /media/backup/record-monday.db\n";

static void print_restored(const char *aside)
{
	char key[PATH_MAX];
	snprintf(key, sizeof key, "%.3900s/station.key", client_folder);
	puts("it is the record of this data folder now");
	if (aside[0])
		printf("what was there lies, unchanged, in %s\n", aside);
	if (access(key, F_OK) < 0 && errno == ENOENT)
		printf(
		    "%s is not there: put the copy that was kept of it in place before the station starts\n",
		    key);
	puts("what was recorded after the backup was made is not in it: go through the slips and the paper "
	     "since then");
}

int tool_restore(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct backup b;
	char aside[PATH_MAX] = "";
	int r = words_read(&w, argc, argv, restore_options, restore_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (!w.n_rest)
		return words_missing("FILE", restore_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], restore_usage);
	int check = words_given(&w, restore_options, "check");
	int n =
	    check ? backup_check(w.rest[0], &b, &e) : backup_restore(w.rest[0], client_folder, &b, aside, &e);
	if (n < 0)
		return client_fail(&e);
	print_backup(w.rest[0], &b);
	if (!check)
		print_restored(aside);
	return EXIT_OK;
}
