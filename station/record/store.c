#include "record/store.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "record/disk.h"
#include "record/event-json.h"
#include "record/event-text.h"
#include "record/store-internal.h"

#define LEFT_FOR_GOOD(table, what)                                                                           \
	"CREATE TRIGGER " table "_no_" what " BEFORE " what " ON " table                                     \
	" BEGIN SELECT RAISE(ABORT, 'what left the record is said once'); END;"

static const char *const migrations[RECORD_SCHEMA] = {
    "CREATE TABLE event ("
    " seq INTEGER PRIMARY KEY, case_no INTEGER NOT NULL, kind TEXT NOT NULL, key TEXT NOT NULL,"
    " payload TEXT NOT NULL, hash BLOB NOT NULL) STRICT;"
    "CREATE INDEX event_case ON event(case_no, seq) WHERE case_no > 0;"
    "CREATE INDEX event_key ON event(key, seq) WHERE key <> '';"
    "CREATE INDEX event_station ON event(seq) WHERE case_no = 0;"
    "CREATE INDEX event_lasting ON event(seq) WHERE " LASTING ";"
    "CREATE INDEX event_edge ON event(kind, seq) WHERE kind = 'case-opened' OR kind = 'case-ended' OR"
    " kind = 'started' OR kind = 'labelled';"
    /* REPLACE deletes without a word to a trigger on delete; only the next number can be inserted. */
    "CREATE TRIGGER event_in_order BEFORE INSERT ON event"
    " WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM event)"
    " BEGIN SELECT RAISE(ABORT, 'the record is append-only'); END;"
    "CREATE TRIGGER event_no_update BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'the record is "
    "append-only'); END;"
    "CREATE TRIGGER event_no_delete BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'the record is "
    "append-only'); END;",
    /* 2: events of format 2, which an earlier program must not read. */
    "CREATE INDEX event_setting ON event(seq) WHERE " OF_THE_PAST ";",
    /* 3: what has left (archive.h): numbers without an event, and cases without theirs. */
    "CREATE TABLE gone ("
    " first INTEGER PRIMARY KEY, last INTEGER NOT NULL UNIQUE, before BLOB NOT NULL, hash BLOB NOT NULL) "
    "STRICT;"
    "CREATE TABLE left_case (case_no INTEGER PRIMARY KEY, seq INTEGER NOT NULL) STRICT;" LEFT_FOR_GOOD(
        "gone", "INSERT") LEFT_FOR_GOOD("gone", "UPDATE") LEFT_FOR_GOOD("gone", "DELETE")
        LEFT_FOR_GOOD("left_case", "INSERT") LEFT_FOR_GOOD("left_case", "UPDATE")
            LEFT_FOR_GOOD("left_case", "DELETE"),
};

void store_leave_as_it_is(struct record *r)
{
	if (r && r->db)
		sqlite3_db_config(r->db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
}

static const char *what_sqlite_says(const struct record *r, int code)
{
	return r && r->db && sqlite3_errcode(r->db) != SQLITE_OK ? sqlite3_errmsg(r->db)
	                                                         : sqlite3_errstr(code);
}

#define SCHEMA_OF_NONE 1000 /* no version comes so far: it is damaged */

static int is_damaged(struct record *r, int code, const char *doing, struct error *e)
{
	struct error damage;
	store_leave_as_it_is(r);
	error_set(&damage, -EUCLEAN,
	          "cannot %s: the record is damaged (%.60s): keep the file, restore a backup", doing,
	          what_sqlite_says(r, code));
	if (r && !r->damage[0])
		snprintf(r->damage, sizeof r->damage, "%.159s", damage.text);
	return error_set(e, -EUCLEAN, "%s", damage.text);
}

const char *record_damage(const struct record *r)
{
	return r->damage;
}

/* What SQLite says, as an errno and a sentence. */
int store_fault(struct record *r, int code, const char *doing, struct error *e)
{
	if (code == DISK_IS_READ_ONLY)
		return error_set(
		    e, -EROFS,
		    "cannot %s: its disk was made read-only, and keeps nothing any more: restart the "
		    "machine, and have the disk checked",
		    doing);
	if (code == DISK_LOST_THE_FILE)
		return error_set(e, -ENOENT,
		                 "cannot %s: the record's file was deleted while the station works: put the "
		                 "data folder or "
		                 "a backup back, and start the station again",
		                 doing);
	switch (code & 0xff) {
	case SQLITE_FULL:
		return error_set(e, -ENOSPC, "cannot %s: the disk is full: free some space", doing);
	case SQLITE_READONLY:
	case SQLITE_PERM:
	case SQLITE_CANTOPEN:
		return error_set(
		    e, -EACCES,
		    "cannot %s: the data folder or its files cannot be written: check their owner "
		    "and permissions",
		    doing);
	case SQLITE_CORRUPT:
	case SQLITE_NOTADB:
	case SQLITE_ERROR: /* no table, or a second one: what we ask fits every record */
	case SQLITE_CONSTRAINT:
		return is_damaged(r, code, doing, e);
	case SQLITE_NOMEM:
		return error_set(e, -ENOMEM, "cannot %s: out of memory: try again", doing);
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
		return error_set(e, -EBUSY,
		                 "cannot %s: another program holds the record: end it and try again", doing);
	default:
		return error_set(e, -EIO, "cannot %s: %s: check the disk", doing, what_sqlite_says(r, code));
	}
}

static int run(struct record *r, const char *sql, const char *doing, struct error *e)
{
	int code = sqlite3_exec(r->db, sql, NULL, NULL, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, doing, e);
}

int store_version(struct record *r, int *version, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(r->db, "PRAGMA user_version", -1, &s, NULL);
	if (code != SQLITE_OK)
		return store_fault(r, code, "read the record", e);
	if (sqlite3_step(s) == SQLITE_ROW)
		*version = sqlite3_column_int(s, 0);
	code = sqlite3_finalize(s);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "read the record", e);
}

/* Within a transaction of the caller's. */
static int raise_schema(struct record *r, int from, int to, struct error *e)
{
	int result = 0;
	for (; from < to && result == 0; from++) {
		char sql[64];
		snprintf(sql, sizeof sql, "PRAGMA user_version = %d", from + 1);
		result = run(r, migrations[from], "prepare the record", e);
		if (result == 0)
			result = run(r, sql, "prepare the record", e);
	}
	return result;
}

/* A record that is only read stays what it was: its schema is raised with the first event that needs it. */
static int make(struct record *r, struct error *e)
{
	int result = run(r, "BEGIN IMMEDIATE", "prepare the record", e);
	if (result == 0)
		result = raise_schema(r, 0, 1, e);
	if (result == 0)
		result = run(r, "COMMIT", "prepare the record", e);
	r->schema = 1;
	return result;
}

static int check_schema(struct record *r, struct error *e)
{
	int result = store_version(r, &r->schema, e);
	if (result < 0)
		return result;
	/* By its first bytes SQLite takes a file for one of its own later versions, and writes nothing to it. */
	int odd =
	    sqlite3_db_readonly(r->db, "main") == 1 && access(sqlite3_db_filename(r->db, "main"), W_OK) == 0;
	if (odd || r->schema < 0 || r->schema > SCHEMA_OF_NONE)
		return is_damaged(r, SQLITE_CORRUPT, "read the record", e);
	if (r->schema > RECORD_SCHEMA)
		return error_set(
		    e, -EPROTO,
		    "the record was written by a later version (schema %d, this program knows %d): "
		    "install that version",
		    r->schema, RECORD_SCHEMA);
	return r->schema ? 0 : make(r, e);
}

int store_make_schema_of(sqlite3 *empty, int version)
{
	int n = 0;
	for (int i = 0; n == 0 && i < version && i < RECORD_SCHEMA; i++)
		n = sqlite3_exec(empty, migrations[i], NULL, NULL, NULL) == SQLITE_OK ? 0 : -ENOMEM;
	return n;
}

int store_make_schema(struct record *r, sqlite3 *empty)
{
	int version = 0, n = store_version(r, &version, NULL);
	return n == 0 ? store_make_schema_of(empty, version) : n;
}

int store_prepare(struct record *r, sqlite3_stmt **s, const char *sql, struct error *e)
{
	int code = sqlite3_prepare_v3(r->db, sql, -1, SQLITE_PREPARE_PERSISTENT, s, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "read the record", e);
}

/* The events of a case; the starts of the station that fell into it, up to its end, and the last mark in time before
 * each: those are what its clocks need over a power cut. What came to it after its end (a correction, a copy) does not
 * make it longer. */
static const char of_case[] =
    "WITH span(a, z) AS MATERIALIZED (SELECT"
    " (SELECT min(seq) FROM event WHERE case_no=?1 AND case_no>0),"
    " coalesce((SELECT min(seq) FROM event WHERE case_no=?1 AND case_no>0 AND kind='case-ended'),"
    " (SELECT max(seq) FROM event WHERE case_no=?1 AND case_no>0))),"
    " start(seq) AS MATERIALIZED (SELECT event.seq FROM span CROSS JOIN event"
    " WHERE kind='started' AND event.seq>a AND event.seq<z)"
    " SELECT payload, seq, case_no FROM event WHERE case_no=?1 AND case_no>0 UNION ALL"
    " SELECT payload, seq, case_no FROM event WHERE seq IN (SELECT seq FROM start UNION ALL"
    " SELECT (SELECT e.seq FROM event AS e WHERE e.case_no=0 AND e.kind='alive' AND e.seq<start.seq AND "
    "e.seq>"
    " max(a, coalesce((SELECT max(p.seq) FROM event AS p WHERE p.kind='started' AND p.seq<start.seq), 0))"
    " ORDER BY e.seq DESC LIMIT 1) FROM start, span)"
    " ORDER BY 2";

int store_prepare_all(struct record *r, struct error *e)
{
	int n = store_prepare(r, &r->insert,
	                      "INSERT INTO event(seq,case_no,kind,key,payload,hash) VALUES(?,?,?,?,?,?)", e);
	if (n == 0)
		n = store_prepare(
		    r, &r->by_key,
		    "SELECT payload FROM event WHERE key=? AND key<>'' ORDER BY seq DESC LIMIT 1", e);
	if (n == 0)
		n = store_prepare(r, &r->of_case, of_case, e);
	if (n == 0) /* the newest first: those are the labels that are on packs now */
		n = store_prepare(r, &r->batches,
		                  "SELECT payload FROM event WHERE kind = 'labelled' ORDER BY seq DESC", e);
	if (n == 0)
		n = store_prepare(r, &r->taken,
		                  "SELECT payload FROM event WHERE key=? AND key<>'' ORDER BY seq DESC", e);
	if (n == 0)
		n = store_prepare(r, &r->slips_of,
		                  "SELECT payload FROM event WHERE case_no=? AND case_no>0 AND kind IN"
		                  " ('slip-queued','slip-state') ORDER BY seq",
		                  e);
	if (n == 0)
		n = store_prepare(r, &r->begin, "BEGIN IMMEDIATE", e);
	if (n == 0)
		n = store_prepare(r, &r->commit, "COMMIT", e);
	return n;
}

/* The last event must hash to what stands beside it: a torn or exchanged tail is found before anything is
 * added. The whole chain is `audit verify`'s work. */
int store_check_tail(struct record *r, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(r->db, "SELECT seq,payload,hash FROM event ORDER BY seq DESC LIMIT 2",
	                              -1, &s, NULL);
	struct chain now = {0}, before = {0};
	char *text = NULL;
	size_t size = 0;
	int rows = 0, no_memory = 0;
	if (code != SQLITE_OK)
		return store_fault(r, code, "read the record", e);
	while (sqlite3_step(s) == SQLITE_ROW && rows < 2) {
		struct chain *to = rows ? &before : &now;
		const void *hash = sqlite3_column_blob(s, 2);
		if (hash && sqlite3_column_bytes(s, 2) == CHAIN_BYTES)
			memcpy(to->hash, hash, CHAIN_BYTES);
		if (!rows) {
			const char *payload = (const char *)sqlite3_column_text(s, 1);
			r->last_seq = sqlite3_column_int64(s, 0);
			size = (size_t)sqlite3_column_bytes(s, 1);
			text = payload ? malloc(size + 1) : NULL; /* it may hold NUL: somebody put it there */
			if (text)
				memcpy(text, payload, size);
			no_memory |= !text;
		}
		no_memory |= sqlite3_errcode(r->db) == SQLITE_NOMEM;
		rows++;
	}
	code = sqlite3_finalize(s);
	if (code == SQLITE_OK && no_memory) /* which says nothing of the record */
		code = SQLITE_NOMEM;
	if (code != SQLITE_OK) {
		free(text);
		return store_fault(r, code, "read the record", e);
	}
	if (text)
		chain_add(&before, text, size);
	free(text);
	if (rows && memcmp(&before, &now, sizeof now) != 0) {
		store_leave_as_it_is(r);
		return error_set(e, -EUCLEAN,
		                 "the record's last event %" PRId64
		                 " was changed: its hash does not hold: keep the "
		                 "file, restore a backup",
		                 r->last_seq);
	}
	r->chain = now;
	return 0;
}

static int lock_folder(struct record *r, const char *folder, struct error *e)
{
	char path[4096];
	struct stat st;
	if (mkdir(folder, 0750) < 0 && errno != EEXIST)
		return error_set(e, -errno,
		                 "cannot make the data folder %s: %s: make it, or give another with --data",
		                 folder, strerror(errno));
	if (stat(folder, &st) < 0 || !S_ISDIR(st.st_mode))
		return error_set(e, -ENOTDIR, "%s is not a folder: give a data folder with --data", folder);
	snprintf(path, sizeof path, "%s/lock", folder);
	r->lock = open(path, O_RDWR | O_CREAT | O_CLOEXEC, 0640);
	if (r->lock < 0)
		return error_set(
		    e, -errno,
		    "cannot write in the data folder %s: %s: check its owner, its permissions and the "
		    "space on the disk",
		    folder, strerror(errno));
	if (flock(r->lock, LOCK_EX | LOCK_NB) < 0)
		return error_set(e, -EBUSY,
		                 "another bandtallyd works in %s already: use that one, or end it first",
		                 folder);
	return 0;
}

int store_open_db(struct record *r, const char *file, int flags, struct error *e)
{
	int code = sqlite3_open_v2(file, &r->db, flags | SQLITE_OPEN_NOMUTEX, disk_vfs()); /* one thread */
	if (code != SQLITE_OK)
		return store_fault(r, code, "open the record", e);
	sqlite3_extended_result_codes(r->db, 1);
	return 0;
}

int record_open(struct record **out, const char *folder, struct error *e)
{
	char file[4096];
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, "out of memory: try again");
	r->lock = -1;
	snprintf(file, sizeof file, "%s/" RECORD_FILE, folder);
	int n = lock_folder(r, folder, e);
	if (n == 0)
		n = store_open_db(r, file, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, e);
	if (n == 0)
		n = run(r,
		        "PRAGMA locking_mode=EXCLUSIVE; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; "
		        "PRAGMA journal_size_limit=8388608;"
		        "PRAGMA cache_size=-2048; PRAGMA wal_autocheckpoint=1000",
		        "open the record", e);
	if (n == 0)
		n = check_schema(r, e);
	if (n == 0)
		n = store_prepare_all(r, e);
	if (n == 0)
		n = store_check_tail(r, e);
	if (n < 0) {
		record_close(r);
		return n;
	}
	*out = r;
	return 0;
}

void record_close_file(struct record *r)
{
	sqlite3_stmt **all[] = {&r->insert, &r->by_key,   &r->of_case, &r->batches,
	                        &r->taken,  &r->slips_of, &r->begin,   &r->commit};
	record_copy_stop(r);
	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		sqlite3_finalize(*all[i]);
		*all[i] = NULL;
	}
	sqlite3_close(r->db);
	r->db = NULL;
}

void record_close(struct record *r)
{
	if (!r)
		return;
	record_close_file(r);
	if (r->lock >= 0)
		close(r->lock);
	buf_free(&r->text);
	buf_free(&r->again);
	free(r);
}

static int step_once(sqlite3_stmt *s)
{
	int code = sqlite3_step(s);
	int reset = sqlite3_reset(s);
	return code == SQLITE_DONE ? SQLITE_OK : reset ? reset : code;
}

int store_insert(struct record *r, const struct store_row *row, struct chain *chain, struct error *e)
{
	chain_add(chain, r->text.data, r->text.size);
	sqlite3_bind_int64(r->insert, 1, row->seq);
	sqlite3_bind_int(r->insert, 2, row->case_no);
	sqlite3_bind_text(r->insert, 3, row->kind, -1, SQLITE_STATIC);
	sqlite3_bind_text(r->insert, 4, row->key, -1, SQLITE_STATIC);
	sqlite3_bind_text(r->insert, 5, r->text.data, (int)r->text.size, SQLITE_STATIC);
	sqlite3_bind_blob(r->insert, 6, chain->hash, CHAIN_BYTES, SQLITE_STATIC);
	int code = step_once(r->insert);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "store this", e);
}

static int insert(struct record *r, const struct event *ev, struct chain *chain, struct error *e)
{
	char room[24];
	return store_insert(
	    r, &(struct store_row){ev->seq, ev->case_no, event_name(ev->kind), event_key(ev, room)}, chain,
	    e);
}

/* What goes into the record is what comes out of it: the text is read back as a start would read it, and the event is
 * from here on what was read. */
static int write_text(struct record *r, struct event *ev, struct error *e)
{
	struct error why = {0};
	struct event back;
	buf_clear(&r->text);
	int n = event_write(ev, &r->text);
	if (n == 0)
		n = event_read_exactly(&back, r->text.data, r->text.size, &r->again, &why);
	if (n == -ENOMEM)
		return error_set(e, n, "cannot store this: out of memory: try again");
	if (n < 0)
		return error_set(
		    e, -EINVAL,
		    "cannot store this: it could not be read again (%.200s): enter it otherwise, and tell "
		    "whoever looks after the station",
		    why.text[0] ? why.text : event_name(ev->kind));
	*ev = back;
	return 0;
}

static int append_one(struct record *r, struct event *ev, int64_t seq, struct chain *chain, struct error *e)
{
	ev->seq = seq;
	int n = write_text(r, ev, e);
	return n == 0 ? insert(r, ev, chain, e) : n;
}

int record_append(struct record *r, struct event *events, int count, struct error *e)
{
	return record_append_sealed(r, events, count, NULL, NULL, NULL, e);
}

int record_append_sealed(struct record *r, struct event *events, int count, struct event *seal,
                         record_sign_fn sign, void *context, struct error *e)
{
	if (!count)
		return 0;
	struct chain chain = r->chain;
	int64_t head = r->last_seq + count;
	/* One insert is a transaction by itself, and most scans are one event. */
	int alone = count == 1 && !seal && r->schema == RECORD_SCHEMA;
	int code = disk_look(r->db);
	if (code == SQLITE_OK && !alone)
		code = step_once(r->begin);
	int n = code == SQLITE_OK ? 0 : store_fault(r, code, "store this", e);
	if (n == 0)
		n = raise_schema(r, r->schema, RECORD_SCHEMA, e);
	for (int i = 0; i < count && n == 0; i++)
		n = append_one(r, &events[i], r->last_seq + 1 + i, &chain, e);
	if (n == 0 && seal) {
		seal->ref = head;
		n = sign(context, head, &chain, seal->seal.jws);
		n = n < 0 ? error_set(e, n,
		                      "cannot store this: it cannot be sealed: %s: count by hand until then",
		                      strerror(-n))
		          : append_one(r, seal, head + 1, &chain, e);
	}
	if (n == 0 && !alone && (code = step_once(r->commit)) != SQLITE_OK)
		n = store_fault(r, code, "store this", e);
	if (n < 0) {
		if (!sqlite3_get_autocommit(r->db))
			sqlite3_exec(r->db, "ROLLBACK", NULL, NULL, NULL);
		for (int i = 0; i < count; i++)
			events[i].seq = 0;
		return n;
	}
	r->chain = chain;
	r->schema = RECORD_SCHEMA;
	r->last_seq = head + (seal != NULL);
	return 0;
}

int64_t record_last(const struct record *r, struct chain *chain)
{
	if (chain)
		*chain = r->chain;
	return r->last_seq;
}
