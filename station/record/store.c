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

#include "base/clock.h"
#include "base/json.h"
#include "record/event-text.h"
#include "record/event.h"
#include "record/store-internal.h"

/* What outlives its case: numbers, slips, what is owed, and what belongs to no case. A mark in time is told
 * apart, because there are so many. Written the same in index and query, which is how SQLite knows that the
 * one serves the other. */
#define LASTING                                                                                              \
	"((case_no = 0 AND kind <> 'alive') OR kind = 'case-opened' OR kind = 'case-ended' OR"               \
	" kind = 'slip-queued' OR kind = 'slip-state' OR kind = 'owed' OR kind = 'paid')"

#define OF_THE_PAST "(kind = 'setting' OR kind = 'staff-set')"

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
};

/* A damaged file is evidence: nothing of the log goes into it when it is closed. */
static void leave_as_it_is(struct record *r)
{
	if (r && r->db)
		sqlite3_db_config(r->db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
}

/* What SQLite says, as an errno and a sentence. */
int store_fault(struct record *r, int code, const char *doing, struct error *e)
{
	switch (code & 0xff) {
	case SQLITE_FULL:
		return error_set(e, -ENOSPC,
		                 "cannot %s: the disk is full: free some space; count by hand until then",
		                 doing);
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
		leave_as_it_is(r);
		return error_set(e, -EUCLEAN,
		                 "cannot %s: the record is damaged (%s): keep the file, restore a backup",
		                 doing, r && r->db ? sqlite3_errmsg(r->db) : "not a database");
	case SQLITE_NOMEM:
		return error_set(e, -ENOMEM, "cannot %s: out of memory: try again; count by hand until then",
		                 doing);
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
		return error_set(e, -EBUSY,
		                 "cannot %s: another program holds the record: end it and try again", doing);
	default:
		return error_set(e, -EIO, "cannot %s: %s: check the disk; count by hand until then", doing,
		                 r && r->db ? sqlite3_errmsg(r->db) : sqlite3_errstr(code));
	}
}

static int run(struct record *r, const char *sql, const char *doing, struct error *e)
{
	int code = sqlite3_exec(r->db, sql, NULL, NULL, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, doing, e);
}

static int version_of(struct record *r, int *version, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(r->db, "PRAGMA user_version", -1, &s, NULL);
	if (code == SQLITE_OK && sqlite3_step(s) == SQLITE_ROW)
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
	int result = version_of(r, &r->schema, e);
	if (result < 0)
		return result;
	if (r->schema > RECORD_SCHEMA)
		return error_set(
		    e, -EPROTO,
		    "the record was written by a later version (schema %d, this program knows %d): "
		    "install that version",
		    r->schema, RECORD_SCHEMA);
	return r->schema ? 0 : make(r, e);
}

static int prepare(struct record *r, sqlite3_stmt **s, const char *sql, struct error *e)
{
	int code = sqlite3_prepare_v3(r->db, sql, -1, SQLITE_PREPARE_PERSISTENT, s, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "read the record", e);
}

static int prepare_all(struct record *r, struct error *e)
{
	int n = prepare(r, &r->insert,
	                "INSERT INTO event(seq,case_no,kind,key,payload,hash) VALUES(?,?,?,?,?,?)", e);
	if (n == 0)
		n = prepare(r, &r->by_key,
		            "SELECT payload FROM event WHERE key=? AND key<>'' ORDER BY seq DESC LIMIT 1", e);
	if (n == 0)
		n = prepare(r, &r->of_case,
		            "SELECT payload, seq, case_no FROM event WHERE case_no=?1 AND case_no>0 UNION ALL"
		            " SELECT payload, seq, case_no FROM event WHERE case_no=0 AND kind IN "
		            "('started','alive') AND"
		            " seq > (SELECT min(seq) FROM event WHERE case_no=?1 AND case_no>0)"
		            " AND seq < (SELECT max(seq) FROM event WHERE case_no=?1 AND case_no>0)"
		            " ORDER BY 2",
		            e);
	if (n == 0) /* the newest first: those are the labels that are on packs now */
		n = prepare(r, &r->batches,
		            "SELECT payload FROM event WHERE kind = 'labelled' ORDER BY seq DESC", e);
	if (n == 0)
		n = prepare(r, &r->slips_of,
		            "SELECT payload FROM event WHERE case_no=? AND case_no>0 AND kind IN"
		            " ('slip-queued','slip-state') ORDER BY seq",
		            e);
	if (n == 0)
		n = prepare(r, &r->begin, "BEGIN IMMEDIATE", e);
	if (n == 0)
		n = prepare(r, &r->commit, "COMMIT", e);
	return n;
}

/* The last event must hash to what stands beside it: a torn or exchanged tail is found before anything is
 * added. The whole chain is `audit verify`'s work. */
static int check_tail(struct record *r, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(r->db, "SELECT seq,payload,hash FROM event ORDER BY seq DESC LIMIT 2",
	                              -1, &s, NULL);
	struct chain now = {0}, before = {0};
	char *text = NULL;
	size_t size = 0;
	int rows = 0, no_memory = 0;
	while (code == SQLITE_OK && sqlite3_step(s) == SQLITE_ROW && rows < 2) {
		struct chain *to = rows ? &before : &now;
		const void *hash = sqlite3_column_blob(s, 2);
		if (hash && sqlite3_column_bytes(s, 2) == CHAIN_BYTES)
			memcpy(to->hash, hash, CHAIN_BYTES);
		if (!rows) {
			const char *payload = (const char *)sqlite3_column_text(s, 1);
			r->last_seq = sqlite3_column_int64(s, 0);
			size = (size_t)sqlite3_column_bytes(s, 1);
			text = payload ? strndup(payload, size) : NULL;
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
		leave_as_it_is(r);
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

static int open_db(struct record *r, const char *file, int flags, struct error *e)
{
	int code = sqlite3_open_v2(file, &r->db, flags | SQLITE_OPEN_NOMUTEX, NULL); /* one thread */
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
		n = open_db(r, file, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, e);
	if (n == 0)
		n = run(r,
		        "PRAGMA locking_mode=EXCLUSIVE; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; "
		        "PRAGMA journal_size_limit=8388608;"
		        "PRAGMA cache_size=-2048; PRAGMA wal_autocheckpoint=1000",
		        "open the record", e);
	if (n == 0)
		n = check_schema(r, e);
	if (n == 0)
		n = prepare_all(r, e);
	if (n == 0)
		n = check_tail(r, e);
	if (n < 0) {
		record_close(r);
		return n;
	}
	*out = r;
	return 0;
}

/* `name`: the file as SQLite is told it, with flags. */
static int open_readable(struct record **out, const char *file, const char *name, int flags, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, "out of memory: try again");
	r->lock = -1;
	int n = 0;
	if (access(file, R_OK) < 0)
		n = error_set(e, -errno, "cannot read the record %s: %s: check the path", file,
		              strerror(errno));
	if (n == 0)
		n = open_db(r, name, flags, e);
	if (n == 0)
		n = version_of(r, &r->schema, e);
	if (n == 0 && (r->schema < 1 || r->schema > RECORD_SCHEMA))
		n = error_set(e, r->schema > RECORD_SCHEMA ? -EPROTO : -EUCLEAN,
		              "%s has schema %d, this program reads 1 to %d: use the version that wrote it",
		              file, r->schema, RECORD_SCHEMA);
	if (n == 0)
		n = prepare_all(r, e);
	if (n < 0) {
		record_close(r);
		return n;
	}
	*out = r;
	return 0;
}

int record_open_copy(struct record **out, const char *file, struct error *e)
{
	return open_readable(out, file, file, SQLITE_OPEN_READONLY, e);
}

/* SQLite writes nothing beside a file that it is told does not change. */
static void unchanging(const char *file, char name[8192])
{
	int n = snprintf(name, 8192, "file:");
	for (const char *p = file; *p && n < 8000; p++)
		n += snprintf(name + n, 8192 - (size_t)n, strchr("%?#", *p) ? "%%%02X" : "%c",
		              (unsigned char)*p);
	snprintf(name + n, 8192 - (size_t)n, "?immutable=1");
}

static int copy_file(const char *from, const char *to)
{
	char part[65536];
	ssize_t got = 0;
	int in = open(from, O_RDONLY | O_CLOEXEC);
	int out = in < 0 ? -1 : open(to, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
	int n = in < 0 || out < 0 ? -errno : 0;
	while (n == 0 && (got = read(in, part, sizeof part)) > 0)
		n = write(out, part, (size_t)got) == got ? 0 : -ENOSPC;
	if (n == 0 && got < 0)
		n = -errno;
	if (in >= 0)
		close(in);
	if (out >= 0)
		close(out);
	return n;
}

/* What a kill left in the log belongs to the record, and only a copy of both can be read without a change. */
static int open_with_log(struct record **out, const char *file, const char *log, struct error *e)
{
	const char *tmp = getenv("TMPDIR");
	char folder[512], copy[600], copy_log[700];
	snprintf(folder, sizeof folder, "%.400s/bandtally-check-XXXXXX", tmp && *tmp ? tmp : "/tmp");
	if (!mkdtemp(folder))
		return error_set(e, -errno, "cannot make a folder like %s: %s: check $TMPDIR", folder,
		                 strerror(errno));
	snprintf(copy, sizeof copy, "%s/" RECORD_FILE, folder);
	snprintf(copy_log, sizeof copy_log, "%s-wal", copy);
	int n = copy_file(file, copy);
	if (n == 0)
		n = copy_file(log, copy_log);
	if (n < 0)
		error_set(e, n, "cannot read the record %s by a copy in %s: %s: check the space there", file,
		          folder, strerror(-n));
	else
		n = open_readable(out, file, copy, SQLITE_OPEN_READWRITE, e);
	unlink(copy_log);
	unlink(copy);
	snprintf(copy_log, sizeof copy_log, "%s-shm", copy);
	unlink(copy_log);
	rmdir(folder);
	return n;
}

int record_open_still(struct record **out, const char *file, struct error *e)
{
	char log[4200], name[8192];
	struct stat st;
	snprintf(log, sizeof log, "%.4090s-wal", file);
	unchanging(file, name);
	int n = stat(log, &st) == 0 && st.st_size
	            ? open_with_log(out, file, log, e)
	            : open_readable(out, file, name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, e);
	if (n == 0 && (n = check_tail(*out, e)) < 0) {
		record_close(*out);
		*out = NULL;
	}
	return n;
}

void record_close(struct record *r)
{
	if (!r)
		return;
	record_copy_stop(r);
	sqlite3_finalize(r->insert);
	sqlite3_finalize(r->by_key);
	sqlite3_finalize(r->of_case);
	sqlite3_finalize(r->batches);
	sqlite3_finalize(r->slips_of);
	sqlite3_finalize(r->begin);
	sqlite3_finalize(r->commit);
	sqlite3_close(r->db);
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

static int insert(struct record *r, const struct event *ev, struct chain *chain, struct error *e)
{
	char room[24];
	chain_add(chain, r->text.data, r->text.size);
	sqlite3_bind_int64(r->insert, 1, ev->seq);
	sqlite3_bind_int(r->insert, 2, ev->case_no);
	sqlite3_bind_text(r->insert, 3, event_name(ev->kind), -1, SQLITE_STATIC);
	sqlite3_bind_text(r->insert, 4, event_key(ev, room), -1, SQLITE_TRANSIENT);
	sqlite3_bind_text(r->insert, 5, r->text.data, (int)r->text.size, SQLITE_STATIC);
	sqlite3_bind_blob(r->insert, 6, chain->hash, CHAIN_BYTES, SQLITE_STATIC);
	int code = step_once(r->insert);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "store this", e);
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
		return error_set(e, n,
		                 "cannot store this: out of memory: try again; count by hand until then");
	if (n < 0)
		return error_set(
		    e, -EINVAL,
		    "cannot store this: it could not be read again (%.200s): enter it otherwise, and tell "
		    "whoever looks after the station",
		    why.text[0] ? why.text : event_name(ev->kind));
	*ev = back;
	return 0;
}

int record_append(struct record *r, struct event *events, int count, struct error *e)
{
	if (!count)
		return 0;
	struct chain chain = r->chain;
	int code = step_once(r->begin);
	int n = code == SQLITE_OK ? 0 : store_fault(r, code, "store this", e);
	if (n == 0)
		n = raise_schema(r, r->schema, RECORD_SCHEMA, e);
	for (int i = 0; i < count && n == 0; i++) {
		events[i].seq = r->last_seq + 1 + i;
		n = write_text(r, &events[i], e);
		if (n == 0)
			n = insert(r, &events[i], &chain, e);
	}
	if (n == 0 && (code = step_once(r->commit)) != SQLITE_OK)
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
	r->last_seq += count;
	return 0;
}

int64_t record_last(const struct record *r, struct chain *chain)
{
	if (chain)
		*chain = r->chain;
	return r->last_seq;
}

/* -EPROTO where it is of a later format, -EINVAL where it cannot be read. */
static int read_row(sqlite3_stmt *s, struct event *ev, struct error *e)
{
	const char *text = (const char *)sqlite3_column_text(s, 0);
	size_t size = (size_t)sqlite3_column_bytes(s, 0);
	if (!text && sqlite3_errcode(sqlite3_db_handle(s)) == SQLITE_NOMEM)
		return error_set(e, -ENOMEM, "cannot read the record: out of memory: try again");
	int n = event_read(ev, text ? text : "", size, e);
	if (n == 0 && ev->format == 1) /* which did not say: as it has been read on this computer until now */
		ev->at.utc_min = clock_utc_min(ev->at.wall_ms);
	return n < 0 && text && event_format(text, size) > FORMAT_VERSION ? -EPROTO : n;
}

/* Columns: the payload; its seq and its case where they are asked for. */
static void unreadable(sqlite3_stmt *s, struct event *ev)
{
	int columns = sqlite3_column_count(s);
	memset(ev, 0, sizeof *ev);
	ev->kind = EV_UNREADABLE;
	ev->seq = columns > 1 ? sqlite3_column_int64(s, 1) : 0;
	ev->case_no = columns > 2 ? sqlite3_column_int(s, 2) : 0;
}

static int each_row(struct record *r, sqlite3_stmt *s, record_event_fn each, void *context, struct error *e)
{
	struct event *ev = malloc(sizeof *ev);
	int n = ev ? 0 : error_set(e, -ENOMEM, "cannot read the record: out of memory: try again"),
	    code = SQLITE_OK;
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		n = read_row(s, ev, e);
		if (n == -EINVAL) {
			unreadable(s, ev);
			n = 0;
		}
		if (n == 0)
			n = each(context, ev);
	}
	free(ev);
	sqlite3_reset(s);
	if (n == 0 && code != SQLITE_DONE && code != SQLITE_OK)
		return store_fault(r, code, "read the record", e);
	return n < 0 ? n : 0;
}

int record_each(struct record *r, int32_t case_no, record_event_fn each, void *context, struct error *e)
{
	if (case_no) {
		sqlite3_bind_int(r->of_case, 1, case_no);
		return each_row(r, r->of_case, each, context, e);
	}
	sqlite3_stmt *s = NULL;
	int n = prepare(r, &s, "SELECT payload, seq FROM event ORDER BY seq", e);
	if (n == 0)
		n = each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_each_station(struct record *r, enum event_kind kind, record_event_fn each, void *context,
                        struct error *e)
{
	char sql[160];
	sqlite3_stmt *s = NULL;
	/* The kind's name is part of the text, not bound: else the index of kinds could not be used. */
	snprintf(sql, sizeof sql,
	         "SELECT payload, seq FROM event WHERE case_no = 0 AND kind = '%s' ORDER BY seq",
	         event_name(kind));
	int n = prepare(r, &s, sql, e);
	if (n == 0)
		n = each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_each_setting(struct record *r, record_event_fn each, void *context, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = prepare(r, &s, "SELECT payload, seq FROM event WHERE " OF_THE_PAST " ORDER BY seq", e);
	if (n == 0)
		n = each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_chain_at(struct record *r, int64_t seq, struct chain *chain, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = prepare(r, &s, "SELECT hash FROM event WHERE seq = ?", e), code = SQLITE_OK;
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, seq);
	code = sqlite3_step(s);
	if (code == SQLITE_ROW && sqlite3_column_bytes(s, 0) == CHAIN_BYTES)
		memcpy(chain->hash, sqlite3_column_blob(s, 0), CHAIN_BYTES);
	else if (code == SQLITE_ROW || code == SQLITE_DONE)
		n = error_set(e, -ENOENT,
		              "there is no event %" PRId64 " in the record: see 'bandtally audit'", seq);
	else
		n = store_fault(r, code, "read the record", e);
	sqlite3_finalize(s);
	return n;
}

int record_each_case_edge(struct record *r, record_event_fn each, void *context, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = prepare(r, &s,
	                "SELECT payload, seq FROM event WHERE kind = 'case-opened' UNION ALL"
	                " SELECT payload, seq FROM event WHERE kind = 'case-ended' ORDER BY 2",
	                e);
	if (n == 0)
		n = each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

/* How far back a start looks for the last sign of life before it; more than one scan's events. */
#define LAST_SIGNS "16"

/* Numbers that must not be given out again, and where a case is, stand in a text that cannot be used as a whole. */
static void keep_numbers(struct station *st, sqlite3_stmt *s, int32_t *room)
{
	const char *text = (const char *)sqlite3_column_text(s, 0),
	           *key = (const char *)sqlite3_column_text(s, 5);
	_cleanup_(json_drop) json_t *o =
	    text ? json_read(text, (size_t)sqlite3_column_bytes(s, 0), NULL) : NULL;
	int64_t in = json_number(o, "room", 0), last = json_number(json_object_get(o, "batch"), "last", 0);
	int slip = 0;
	*room = in > 0 && in <= INT32_MAX ? (int32_t)in : 0;
	if (last > st->last_item_no && last <= 99999999)
		st->last_item_no = last;
	if (key && sscanf(key, "slip:%9d", &slip) == 1 && slip > st->last_slip_no)
		st->last_slip_no = slip;
}

static void not_followed(struct station *st, sqlite3_stmt *s)
{
	int32_t room;
	struct unfollowed u = {.seq = sqlite3_column_int64(s, 1), .case_no = sqlite3_column_int(s, 3)};
	const char *kind = (const char *)sqlite3_column_text(s, 4);
	snprintf(u.kind, sizeof u.kind, "%s", kind ? kind : "");
	keep_numbers(st, s, &room);
	station_not_followed(st, &u, room);
}

static int load_row(sqlite3_stmt *s, struct station *st, struct event *ev, struct error *e)
{
	int counts = sqlite3_column_int(s, 2), n = read_row(s, ev, e);
	if (n == 0) {
		struct event alive = {.kind = EV_ALIVE, .at = ev->at};
		n = station_apply(st, counts ? ev : &alive);
	}
	if (n == -ENOMEM)
		return error_set(e, n, "cannot read the record: out of memory: try again");
	if (n == -EPROTO)
		return n;
	if (n < 0 && counts)
		not_followed(st, s);
	return 0;
}

/* Ended cases leave behind only their numbers, their slips and what is owed: the rest of their events is
 * skipped, which is what lets a station with twenty thousand cases start at once. But when they happened
 * counts: a power cut is measured from the last sign of life, in whatever case that was. */
int record_load(struct record *r, struct station *st, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = SQLITE_OK;
	struct event *ev = malloc(sizeof *ev);
	int n = ev ? 0 : error_set(e, -ENOMEM, "out of memory: try again");
	if (n == 0)
		n = prepare(r, &s,
		            "SELECT payload, seq, 1, case_no, kind, key FROM event WHERE " LASTING
		            " UNION ALL"
		            " SELECT payload, seq, 1, case_no, kind, key FROM event WHERE case_no > 0 AND "
		            "NOT " LASTING " AND case_no IN"
		            " (SELECT case_no FROM event WHERE kind = 'case-opened' EXCEPT"
		            " SELECT case_no FROM event WHERE kind = 'case-ended') UNION ALL"
		            " SELECT payload, event.seq, 0, case_no, kind, key FROM (SELECT seq AS start "
		            "FROM event WHERE kind = "
		            "'started'"
		            " UNION ALL SELECT max(seq) + 1 FROM event) CROSS JOIN event"
		            " ON event.seq BETWEEN start - " LAST_SIGNS " AND start - 1 WHERE NOT " LASTING
		            " ORDER BY 2",
		            e);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW)
		n = load_row(s, st, ev, e);
	free(ev);
	sqlite3_finalize(s);
	if (n == 0 && code != SQLITE_DONE)
		return store_fault(r, code, "read the record", e);
	return n < 0 ? n : 0;
}

static int keep_one(void *context, const struct event *ev)
{
	*(struct event *)context = *ev;
	return 1;
}

static int by_key(struct record *r, const char *key, struct event *ev)
{
	sqlite3_bind_text(r->by_key, 1, key, -1, SQLITE_STATIC);
	ev->seq = 0;
	ev->case_no = ev->n = 0;
	ev->kind = EV_STOPPED;
	int n = each_row(r, r->by_key, keep_one, ev, NULL);
	return n < 0 ? n : ev->kind == EV_UNREADABLE ? -EUCLEAN : ev->seq != 0;
}

int record_item_used(struct record *r, const char *identity, int32_t *case_no, uint8_t *back)
{
	struct event ev;
	int n = identity[0] ? by_key(r, identity, &ev) : 0;
	if (n == 1) {
		*case_no = ev.case_no;
		*back = ev.n == 1;
	}
	return n;
}

/* The events of one slip, in order, among those of its case. */
static int follow_slip(void *context, const struct event *ev)
{
	struct slip *slip = context;
	if ((ev->kind != EV_SLIP_QUEUED && ev->kind != EV_SLIP_STATE) || ev->n != slip->number)
		return 0;
	if (ev->kind == EV_SLIP_QUEUED) {
		slip->kind = ev->what;
		slip->copy = (uint8_t)ev->other;
		slip->room = ev->room;
		slip->state = SLIP_QUEUED;
	} else if (slip->state != SLIP_SEEN) {
		slip->state = ev->what;
		slip->job = (int32_t)ev->ref;
	}
	return 0;
}

int record_slip_of(struct record *r, int32_t slip, struct slip *out)
{
	struct event ev;
	char key[24];
	snprintf(key, sizeof key, "slip:%d", (int)slip);
	int n = by_key(r, key, &ev);
	if (n != 1)
		return n;
	*out = (struct slip){.number = slip, .case_no = ev.case_no, .room = ev.room};
	sqlite3_bind_int(r->slips_of, 1, ev.case_no);
	n = each_row(r, r->slips_of, follow_slip, out, NULL);
	return n < 0 ? n : 1;
}

struct batch_search {
	int64_t number;
	struct batch *out;
	int found, unreadable;
};

static int match_batch(void *context, const struct event *ev)
{
	struct batch_search *b = context;
	b->unreadable |= ev->kind == EV_UNREADABLE;
	if (ev->kind == EV_LABELLED && ev->batch.first <= b->number && b->number <= ev->batch.last) {
		*b->out = ev->batch;
		b->found = 1;
		return 1;
	}
	return 0;
}

int record_batch_of(struct record *r, int64_t number, struct batch *out)
{
	struct batch_search b = {.number = number, .out = out};
	int n = each_row(r, r->batches, match_batch, &b, NULL);
	return n < 0 ? n : !b.found && b.unreadable ? -EUCLEAN : b.found;
}

int record_copy_start(struct record *r, const char *file, struct error *e)
{
	if (r->copy)
		return error_set(e, -EBUSY,
		                 "a copy of the record is being made already: wait for it and try again");
	int code = sqlite3_open_v2(file, &r->copy_db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);
	if (code == SQLITE_OK)
		r->copy = sqlite3_backup_init(r->copy_db, "main", r->db, "main");
	if (!r->copy) {
		error_set(e, -EIO, "cannot make a copy at %s: %s: check the path and the space", file,
		          sqlite3_errmsg(r->copy_db));
		sqlite3_close(r->copy_db);
		r->copy_db = NULL;
		return -EIO;
	}
	return 0;
}

int record_copy_step(struct record *r, int pages, struct error *e)
{
	int code = sqlite3_backup_step(r->copy, pages);
	if (code == SQLITE_OK)
		return 1;
	int n = sqlite3_backup_finish(r->copy);
	r->copy = NULL;
	/* The copy is a plain file that needs no -wal beside it. */
	if (code == SQLITE_DONE && n == SQLITE_OK)
		sqlite3_exec(r->copy_db, "PRAGMA journal_mode=DELETE", NULL, NULL, NULL);
	sqlite3_close(r->copy_db);
	r->copy_db = NULL;
	return code == SQLITE_DONE && n == SQLITE_OK
	           ? 0
	           : error_set(e, -EIO, "the copy of the record failed: %s: try again", sqlite3_errstr(code));
}

void record_copy_stop(struct record *r)
{
	if (!r->copy)
		return;
	sqlite3_backup_finish(r->copy);
	sqlite3_close(r->copy_db);
	r->copy = NULL;
	r->copy_db = NULL;
}
