/* What the files that know the record's table share: store (open, append), still (open to read), pages, read, load, look-up,
 * copy, backup, verify. Nobody else includes it. */
#ifndef BANDTALLY_RECORD_STORE_INTERNAL_H
#define BANDTALLY_RECORD_STORE_INTERNAL_H

#include <sqlite3.h>

#include "base/buf.h"
#include "count/event.h"
#include "record/store.h"

/* What outlives its case: what count/event.h calls lasting, and what belongs to no case. A mark in time is told
 * apart, because there are so many. Written the same in index and query, which is how SQLite knows that the
 * one serves the other; each record has the index that it was made with (test-store). */
#define LASTING "((case_no = 0 AND kind <> 'alive')" EVENTS(OR_KIND) ")"
#define OR_KIND(name, text, group, lasts, fields) OR_KIND_##lasts(text)
#define OR_KIND_LASTING(text) " OR kind = '" text "'"
#define OR_KIND_PASSING(text) ""

#define SCHEMA_GONE 3 /* the first that knows what left */

#define OF_THE_PAST "(kind = 'setting' OR kind = 'staff-set')"

struct record {
	sqlite3 *db;
	sqlite3_stmt *insert, *by_key, *of_case, *batches, *taken, *slips_of, *begin, *commit;
	sqlite3 *copy_db;
	sqlite3_backup *copy;
	int lock;   /* of the data folder, -1 for a copy */
	int schema; /* of the file */
	int64_t last_seq;
	struct chain chain;
	char damage[160];       /* record_damage() */
	struct buf text, again; /* of the event that is being stored, and what it reads back to */
};

/* Makes in an empty database what a record of this one's schema is made of. 0 or a negative errno. */
int store_make_schema(struct record *r, sqlite3 *empty);
int store_make_schema_of(sqlite3 *empty, int version);

/* The triggers let nothing in but the next event. Off, and on again as a record of this schema has them, letter for letter; within
 * one transaction, so that no file is ever without. 0 or a negative errno with `e`. */
int store_triggers_off(struct record *r, struct error *e);
int store_triggers_on(struct record *r, struct error *e);

/* Another handle of the same file, which as little is written beside: for another thread. 0 or a negative errno. */
int store_open_again(struct record **out, struct record *r);

/* Closes the file, and holds the folder's lock on. Only record_close() may come behind it. */
void record_close_file(struct record *r);

/* What SQLite says, as an errno and a sentence. */
int store_fault(struct record *r, int code, const char *doing, struct error *e);

/* A damaged file is evidence: nothing of the log goes into it when it is closed. */
void store_leave_as_it_is(struct record *r);

int store_open_db(struct record *r, const char *file, int flags, struct error *e);
int store_version(struct record *r, int *version, struct error *e); /* the file's schema */
int store_prepare(struct record *r, sqlite3_stmt **s, const char *sql, struct error *e);
int store_prepare_all(struct record *r, struct error *e); /* the statements that stay */

/* Puts the text in `text` behind the others and goes on with the chain. */
struct store_row { /* borrowed */
	int64_t seq;
	int32_t case_no;
	const char *kind, *key; /* event_key() */
};
int store_insert(struct record *r, const struct store_row *row, struct chain *chain, struct error *e);

/* Sets the last number and hash; -EUCLEAN where that hash does not hold. */
int store_check_tail(struct record *r, struct error *e);

/* The payload in column 0: 0, -EPROTO where it is of a later format, -EINVAL where it cannot be read. */
int store_read_row(sqlite3_stmt *s, struct event *ev, struct error *e);

/* Columns: the payload; its seq and its case where they are asked for. Resets the statement. */
int store_each_row(struct record *r, sqlite3_stmt *s, record_event_fn each, void *context, struct error *e);

#endif
