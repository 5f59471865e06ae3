/* Fuzzing what an auditor reads. The first letter says what the rest is: r texts that somebody puts into a record in the place
 * of events, by who knows how its chain is made, a line each behind the event's number and a space; l lines of a copy that is
 * made event by event; s what a slip says that the station signed.
 *
 * Whatever comes: a look through it ends with a sentence, or finds at least that a trigger is gone; the station reads it or says
 * why not, and comes to the same when it reads it once more; a copy takes nothing that does not follow; and what the station signed
 * is said to be so.
 */
#include <errno.h>
#include <sqlite3.h>

#include "base/json.h"
#include "record/chain.h"
#include "record/collect.h"
#include "record/seal.h"
#include "record/slip-check.h"
#include "record/verify.h"
#include "tests/fuzz/folder.h"
#include "tests/unit/record/history.h"

static struct {
	struct buf record; /* the file of one ordinary case */
	int64_t last;
} rig;

/* --- a record of one case ---------------------------------------------------------------------------- */

static void read_file(const char *path, struct buf *out)
{
	char part[65536];
	FILE *f = fopen(path, "re");
	must(f != NULL, path);
	for (size_t n; (n = fread(part, 1, sizeof part, f)) > 0;)
		must(buf_add(out, part, n) == 0, "no memory");
	fclose(f);
}

static void start(void)
{
	struct record *r = NULL;
	struct history h;
	struct error e = {0};
	char path[96];
	folder_make();
	must(record_open(&r, folder, &e) == 0, e.text);
	must(history_init(&h, r, 1, 0) == 0 && history_case(&h, 1) == 0, "no case");
	rig.last = record_last(r, NULL);
	history_deinit(&h);
	record_close(r);
	snprintf(path, sizeof path, "%s/" RECORD_FILE, folder);
	read_file(path, &rig.record);
	folder_write("station.key", "a key of 32 bytes, for tests.   ", 32);
}

static const char *fresh_record(void)
{
	return folder_write(RECORD_FILE, rig.record.data, rig.record.size);
}

/* --- somebody changes it ----------------------------------------------------------------------------- */

static sqlite3_stmt *statement(sqlite3 *db, const char *sql)
{
	sqlite3_stmt *s = NULL;
	must(sqlite3_prepare_v2(db, sql, -1, &s, NULL) == SQLITE_OK, sqlite3_errmsg(db));
	return s;
}

static void put_text(sqlite3 *db, const char *line, size_t size)
{
	char number[8] = "";
	const char *space = memchr(line, ' ', size);
	if (!space || space - line >= (ptrdiff_t)sizeof number)
		return;
	memcpy(number, line, (size_t)(space - line));
	sqlite3_stmt *s = statement(db, "UPDATE event SET payload = ? WHERE seq = ?");
	sqlite3_bind_text(s, 1, space + 1, (int)(line + size - space - 1), SQLITE_STATIC);
	sqlite3_bind_int(s, 2, atoi(number));
	must(sqlite3_step(s) == SQLITE_DONE, sqlite3_errmsg(db));
	sqlite3_finalize(s);
}

/* Each event's hash over what stands there now. */
static void make_chain(sqlite3 *db)
{
	struct chain chain = {0};
	sqlite3_stmt *s = statement(db, "SELECT seq, payload FROM event ORDER BY seq"),
	             *put = statement(db, "UPDATE event SET hash = ? WHERE seq = ?");
	while (sqlite3_step(s) == SQLITE_ROW) {
		chain_add(&chain, sqlite3_column_blob(s, 1), (size_t)sqlite3_column_bytes(s, 1));
		sqlite3_bind_blob(put, 1, chain.hash, CHAIN_BYTES, SQLITE_STATIC);
		sqlite3_bind_int64(put, 2, sqlite3_column_int64(s, 0));
		must(sqlite3_step(put) == SQLITE_DONE, sqlite3_errmsg(db));
		sqlite3_reset(put);
	}
	sqlite3_finalize(s);
	sqlite3_finalize(put);
}

static void change(const char *file, const char *text, size_t size)
{
	sqlite3 *db = NULL;
	must(sqlite3_open(file, &db) == SQLITE_OK, "the record cannot be opened");
	must(sqlite3_exec(
	         db,
	         "PRAGMA synchronous=OFF; BEGIN; DROP TRIGGER event_no_update; DROP TRIGGER event_in_order",
	         NULL, NULL, NULL) == SQLITE_OK,
	     sqlite3_errmsg(db));
	for (const char *end = text + size; text < end;) {
		const char *stop = memchr(text, '\n', (size_t)(end - text));
		size_t n = (size_t)((stop ? stop : end) - text);
		put_text(db, text, n);
		text += n + (stop != NULL);
	}
	make_chain(db);
	must(sqlite3_exec(db, "COMMIT", NULL, NULL, NULL) == SQLITE_OK, sqlite3_errmsg(db));
	sqlite3_close(db);
}

/* --- it is read -------------------------------------------------------------------------------------- */

static void on_found(void *context, const char *what)
{
	must(*what, "what is found has no words");
	*(int *)context += 1;
}

static void is_sentence(const struct error *e)
{
	must(strstr(e->text, ": ") != NULL, "the fault is no sentence");
}

static void look_through(const char *file)
{
	int found = 0;
	struct verify_how how = {
	    .each_seal = 1, .indexes = 1, .parts = 1, .found = on_found, .context = &found};
	struct verified v;
	struct record *r = NULL;
	struct error e = {0};
	int n = record_open_copy(&r, file, &e);
	if (n == 0)
		n = record_verify_all(r, &how, &v, &e);
	if (n < 0)
		is_sentence(&e);
	else
		must(found > 0, "a trigger that is gone is not found");
	record_close(r);
}

static int follow(struct station *st)
{
	struct record *r = NULL;
	struct error e = {0};
	memset(st, 0, sizeof *st);
	int n = record_open(&r, folder, &e);
	if (n == 0)
		n = record_load(r, st, &e);
	if (n < 0)
		is_sentence(&e);
	record_close(r);
	return n;
}

/* What it comes to must not hang on how it is read. */
static void station_reads(void)
{
	static struct station st, again;
	int n = follow(&st);
	must(follow(&again) == n, "it is read once, and then no more");
	must(n < 0 || (st.n_unfollowed == again.n_unfollowed && st.last_case_no == again.last_case_no &&
	               st.last_slip_no == again.last_slip_no && st.last_item_no == again.last_item_no),
	     "it comes to something else when it is read once more");
	station_deinit(&st);
	station_deinit(&again);
}

static void read_record(const char *text, size_t size)
{
	const char *file = fresh_record();
	change(file, text, size);
	look_through(file);
	station_reads();
}

/* --- a copy, event by event -------------------------------------------------------------------------- */

static void read_copy(const char *text, size_t size)
{
	char path[96];
	struct record *r = NULL;
	struct error e = {0};
	int32_t incarnation = 0;
	int n = 0;
	snprintf(path, sizeof path, "%s/BC-01.db", folder);
	unlink(path);
	must(collect_open(&r, path, &incarnation, &e) == 0, e.text);
	for (const char *end = text + size; text < end && n == 0;) {
		const char *stop = memchr(text, '\n', (size_t)(end - text));
		size_t length = (size_t)((stop ? stop : end) - text);
		struct line_event line;
		int64_t last = record_last(r, NULL);
		if (line_event(text, length, &line)) {
			n = collect_add(r, &line, &e);
			must(n < 0 || line.seq == last + 1, "an event that does not follow was taken");
		}
		text += length + (stop != NULL);
	}
	if (n < 0)
		is_sentence(&e);
	else
		must(collect_commit(r, 1, &e) == 0, e.text);
	record_close(r);
}

/* --- a slip ------------------------------------------------------------------------------------------ */

static void read_slip(const char *text, size_t size)
{
	static struct keys keys;
	char words[SLIP_CHECK_WORDS] = "";
	struct record *r = NULL;
	struct seal *seal = NULL;
	struct error e = {0};
	struct buf jws = {0};
	json_t *said = NULL, *payload = json_read(text, size, NULL);
	must(seal_open(&seal, folder, &e) == 0 && record_open_copy(&r, fresh_record(), &e) == 0, e.text);
	keys.count = 0;
	must(keys_add(&keys, seal_key(seal)) == 0, "no key");
	if (payload && seal_jws(seal, payload, &jws) == 0) {
		int n = slip_check(r, &keys, jws.data, words, &said, &e);
		must(n < 0 || words[0], "a slip of which nothing is said");
		must(n != SLIP_UNSIGNED, "what was signed is said to be unsigned");
		must(n != SLIP_HELD || json_number(said, "slip", 0) >= 1,
		     "a slip is held that has no number");
		if (n < 0)
			is_sentence(&e);
	}
	json_decref(said);
	json_decref(payload);
	buf_free(&jws);
	seal_close(seal);
	record_close(r);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	if (!rig.last)
		start();
	if (!size || size > 16384)
		return 0;
	fuzz_quiet();
	const char *rest = (const char *)data + 1;
	if (data[0] == 'r')
		read_record(rest, size - 1);
	else if (data[0] == 'l')
		read_copy(rest, size - 1);
	else if (data[0] == 's')
		read_slip(rest, size - 1);
	fuzz_aloud();
	return 0;
}
