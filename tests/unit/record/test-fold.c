/* What the station makes of the kept records, event by event, under the number of the fold (snapshot.h): where that comes
 * to something else, the number must be another, or old snapshots would be taken for what they are not.
 *   test-fold [--update]    writes fold.txt anew; the number is raised in snapshot.h
 */
#include <errno.h>
#include <glob.h>
#include <inttypes.h>
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>
#include <sodium.h>

#include "record/snapshot.h"
#include "run/settings.h"
#include "tests/kept/state.h"
#include "tests/unit/record/folder.h"

struct fold {
	struct station *st;
	crypto_hash_sha256_state hash;
};

static const char *source(void)
{
	const char *s = getenv("BANDTALLY_SOURCE");
	return s ? s : ".";
}

static void moment_text(const struct moment *m, struct buf *out)
{
	buf_printf(out, " %d/%" PRId64 "/%" PRId64, (int)m->boot, m->boot_ms, m->wall_ms);
}

/* What state_text() does not say. */
static void rest_text(const struct station *st, struct buf *out)
{
	for (int i = 0; i < st->n_rooms; i++) {
		buf_printf(out, "%d %d %d", st->idle_asked[i], (int)st->idle_n[i], (int)st->idle_last[i]);
		buf_printf(out, " paper %d %x %d", (int)st->papers[i].highest,
		           (unsigned)st->papers[i].entered, (int)st->papers[i].case_no);
		moment_text(&st->heard[i].scan, out);
		moment_text(&st->heard[i].reminder, out);
	}
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i], *b = &st->before[i];
		const struct step *u = &st->undo[i];
		if (!s->case_no)
			continue;
		buf_printf(out, "\nsheet %d: %d %d %d %d %d undo %" PRId64 " %d %d %d", i,
		           (int)s->last_answer, s->last_timed, s->last_timed_what, s->search_not_done,
		           s->unfollowed, u->seq, u->kind, u->item, u->digit);
		if (u->seq)
			buf_printf(out, " before %d %d %d %d", b->n_items, b->n_digits, b->debts.count,
			           b->final);
		moment_text(&s->final_at, out);
		moment_text(&s->asked.at, out);
		for (int d = 0; d < s->n_digits; d++) {
			moment_text(&s->digits[d].since, out);
			buf_printf(out, " %" PRId64 " %" PRId64 " %d %" PRId64, s->digits[d].by_wall.cut_ms,
			           s->digits[d].by_wall.off_ms, s->digits[d].doubted,
			           s->digits[d].sure_ms + s->digits[d].sure_cut_ms);
		}
	}
	for (int i = 0; i < st->n_held; i++)
		buf_printf(out, "\nheld %" PRId64 " %d %d %d", st->held[i].seq, st->held[i].kind,
		           (int)st->held[i].room, st->held[i].meant);
	moment_text(&st->last, out);
	buf_printf(out, " %" PRId64 " %d\n", st->wall_ms, st->clock_wrong);
}

static int follow(void *context, const struct event *e)
{
	struct fold *f = context;
	_cleanup_(buf_free) struct buf text = {0};
	buf_printf(&text, "%d\n", station_apply(f->st, e));
	state_text(f->st, &text);
	rest_text(f->st, &text);
	crypto_hash_sha256_update(&f->hash, (const unsigned char *)text.data, text.size);
	return 0;
}

static void fold_of(const char *kept, struct buf *out)
{
	static struct settings settings;
	unsigned char hash[crypto_hash_sha256_BYTES];
	char hex[2 * sizeof hash + 1], file[PATH_MAX + 16], copy[FOLDER_MAX];
	struct error e = {0};
	struct record *r = NULL;
	struct fold f = {.st = calloc(1, sizeof *f.st)};
	assert_non_null(f.st);
	folder_make(copy);
	folder_copy(kept, copy);
	snprintf(file, sizeof file, "%s/" RECORD_FILE, copy);
	crypto_hash_sha256_init(&f.hash);
	if (settings_read(&settings, f.st, copy, &e) < 0 || record_open_copy(&r, file, &e) < 0 ||
	    record_each(r, 0, follow, &f, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	crypto_hash_sha256_final(&f.hash, hash);
	buf_printf(out, "%s %s\n", strrchr(kept, '/') + 1,
	           sodium_bin2hex(hex, sizeof hex, hash, sizeof hash));
	record_close(r);
	station_deinit(f.st);
	free(f.st);
	folder_remove(copy);
}

static void folds_now(struct buf *out)
{
	char pattern[PATH_MAX];
	glob_t found;
	snprintf(pattern, sizeof pattern, "%s/tests/kept/format-*/*/record.db", source());
	assert_int_equal(glob(pattern, GLOB_ERR, NULL, &found), 0);
	buf_printf(out, "fold %d\n", SNAPSHOT_FOLD);
	for (size_t i = 0; i < found.gl_pathc; i++) {
		*strrchr(found.gl_pathv[i], '/') = 0;
		fold_of(found.gl_pathv[i], out);
	}
	globfree(&found);
}

static void noted(char *out, size_t size, const char *mode, const char *now)
{
	char path[PATH_MAX];
	snprintf(path, sizeof path, "%s/tests/unit/record/fold.txt", source());
	FILE *f = fopen(path, mode);
	if (!f)
		fail_msg("cannot open %s", path);
	if (now)
		fputs(now, f);
	else
		out[fread(out, 1, size - 1, f)] = 0;
	fclose(f);
}

static void the_number_of_the_fold_is_another_where_the_fold_is(void **state)
{
	char then[8192];
	int number = 0;
	_cleanup_(buf_free) struct buf now = {0};
	(void)state;
	folds_now(&now);
	noted(then, sizeof then, "re", NULL);
	if (strcmp(then, now.data) == 0)
		return;
	sscanf(then, "fold %d", &number);
	if (number == SNAPSHOT_FOLD)
		fail_msg("events come to another state than under fold %d, or a kept record was added: raise "
		         "SNAPSHOT_FOLD in station/record/snapshot.h where the state is another, then run "
		         "test-fold --update",
		         number);
	fail_msg("the fold is %d, fold.txt is of %d: run test-fold --update", SNAPSHOT_FOLD, number);
}

int main(int argc, char **argv)
{
	if (argc == 2 && strcmp(argv[1], "--update") == 0) {
		_cleanup_(buf_free) struct buf now = {0};
		folds_now(&now);
		noted(NULL, 0, "we", now.data);
		return 0;
	}
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(the_number_of_the_fold_is_another_where_the_fold_is),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
