/* The record on disk: one SQLite file, append-only, in the data folder.
 *
 * One writer: the daemon, which holds a lock on the folder. A transaction is durable before record_append()
 * returns (WAL, synchronous=FULL). Readers never open the live file, which is locked: they get copies
 * (record_copy_*), because another user's read-only open of a WAL file fails after a clean close, and a long
 * reader makes it grow.
 *
 * Table `event`: seq (1, 2, 3 … without a gap), case_no (0 the station), kind, key (see event_key), payload
 * (the canonical text), hash (chain.h). Triggers refuse update and delete. `PRAGMA user_version` is the
 * schema's version. Every earlier one is read; the transaction that first writes what it could not hold raises it, so
 * that a record that was only read stays what it was. A later one is refused: schema 2 came with events of format 2.
 *
 * From schema 3 on, what was archived may have left (archive.h), and numbers are then without an event. Table `gone` names
 * each such stretch: first and last number, the hash before it, and the hash of its last event. Table `left_case`: which
 * cases left, and the number of the event that says so.
 */
#ifndef BANDTALLY_RECORD_STORE_H
#define BANDTALLY_RECORD_STORE_H

#include "base/error.h"
#include "count/slip-paper.h"
#include "record/chain.h"

#define RECORD_FILE "record.db"
#define RECORD_SCHEMA 3

struct record;

/* Opens the record of a data folder, making it where it is absent. 0, or
 *   -EBUSY    another daemon holds the folder
 *   -EACCES, -EROFS, -ENOSPC, -ENOTDIR …  the folder cannot be used
 *   -EUCLEAN  the file is damaged, or its chain does not hold
 *   -EPROTO   it was written by a later version
 * with `e` filled. */
int record_open(struct record **out, const char *folder, struct error *e);
void record_close(struct record *r); /* NULL is fine */

/* Opens any record file for reading: a copy, or one whose daemon is not running. Writes nothing. */
int record_open_copy(struct record **out, const char *file, struct error *e);

/* The same of a data folder whose daemon does not run, where it lies; its last event is checked as a start would. */
int record_open_still(struct record **out, const char *file, struct error *e);

/* Stores the events in one transaction, giving each its seq, and returns when they are durable. Each text is read back
 * before it goes in, and the events are afterwards what was read: what a start will find. On failure none is stored,
 * each seq is 0, and the negative errno (-ENOSPC, -EIO, …; -EINVAL where one could not be read back) comes with `e`. */
int record_append(struct record *r, struct event *events, int count, struct error *e);

/* As record_append(), and behind the events, in the same transaction, `seal`: an EV_SEALED that is filled in with the number
 * of the last of them and with what `sign` makes of that number and its hash: a JWS of fewer than SEAL_JWS_MAX bytes, 0 or a
 * negative errno. */
typedef int (*record_sign_fn)(void *context, int64_t seq, const struct chain *head, char *jws);
int record_append_sealed(struct record *r, struct event *events, int count, struct event *seal,
                         record_sign_fn sign, void *context, struct error *e);

/* Rebuilds the station from the events. Those of ended cases are left out where they leave nothing behind. One that
 * cannot be read or applied is noted (station_not_followed()) and the rest goes on (rule 26); -EPROTO where one has a
 * later format: nothing of such a record may be guessed. */
int record_load(struct record *r, struct station *st, struct error *e);

/* The same of a station that has followed the record up to the event `after` (snapshot.h): each event behind it. */
int record_load_from(struct record *r, int64_t after, struct station *st, struct error *e);

/* Of an event that cannot be read the callbacks get EV_UNREADABLE, its seq where it is known, and its case; -EPROTO where
 * it has a later format.
 *
 * Each event in order: all of them (case_no 0), or those of one case with what its clocks need until it ended: the
 * starts of the station, and the last mark in time before each. The callback returns 0 to go on. */
typedef int (*record_event_fn)(void *context, const struct event *e);
int record_each(struct record *r, int32_t case_no, record_event_fn each, void *context, struct error *e);
/* Each byte of each event can be had from the disk: asked before something is told that would break off in the middle. 0 or a
 * negative errno with `e`. */
int record_read_through(struct record *r, struct error *e);

/* Whether SQLite finds every page sound, and, where it is asked, each index agree with the events: what is looked up goes by
 * those. A year's record takes a quarter of a second, and with the indexes one. 0, or -EUCLEAN with `e`; -ENOMEM or -EIO where it
 * could not be asked. */
enum pages_how { PAGES_ALONE, PAGES_AND_INDEXES };
int record_check_pages(struct record *r, enum pages_how how, struct error *e);

/* What was found to be damaged in it since it was opened, by whoever read or stored anything, as the end of a sentence: "" nothing.
 * It stays. */
const char *record_damage(const struct record *r);

/* Each event of one kind that belongs to no case. */
int record_each_station(struct record *r, enum event_kind kind, record_event_fn each, void *context,
                        struct error *e);

/* Each event of these kinds that belongs to no case and whose number is behind `after`, in order. */
int record_each_of_kinds(struct record *r, int64_t after, const enum event_kind *kinds, int count,
                         record_event_fn each, void *context, struct error *e);

/* Each key that the record names: it is told with the start that found it, so that nothing else is read. */
int record_each_key(struct record *r, record_event_fn each, void *context, struct error *e);

/* What papers of all times go by: the settings and the people with a badge, each event of them in order. */
int record_each_setting(struct record *r, record_event_fn each, void *context, struct error *e);

/* The hash of one event. 0; -ENOENT where there is no such event, or another negative errno, with `e`. */
int record_chain_at(struct record *r, int64_t seq, struct chain *chain, struct error *e);

/* Where each case began and ended: the case-opened and case-ended events of all cases, in order. */
int record_each_case_edge(struct record *r, record_event_fn each, void *context, struct error *e);

/* A page of cases, in the order in which they were opened: at most `limit`, from the one behind the event `after` on (0
 * from the first). `*last` is the `after` of the next page, 0 where this was the last. */
#define CASE_SLIPS_MAX 4
struct case_edges {
	int32_t case_no, room;
	int64_t opened_ms;             /* wall clock */
	int32_t opened_day;            /* yyyymmdd, where and when it was opened */
	int end;                       /* enum case_end, 0 open */
	int64_t ended_ms;              /* wall clock; 0 open, or it cannot be read */
	int32_t slips[CASE_SLIPS_MAX]; /* the numbers of its first slips, without further copies */
	int n_slips;                   /* of all of them */
};
typedef int (*record_case_fn)(void *context, const struct case_edges *c);
int record_each_case(struct record *r, int64_t after, int limit, record_case_fn each, void *context,
                     int64_t *last, struct error *e);

/* Look-ups for a scan: whether it was found; a negative errno where the record could not be asked: nobody knows then. */
enum record_found { RECORD_HAS_NONE = 0, RECORD_FOUND };
int record_item_used(struct record *r, const char *identity, int32_t *case_no, uint8_t *back);
int record_batch_of(struct record *r, int64_t item_number, struct batch *out);
/* The same of a number that another station of this site gave out, whose list was taken. */
int record_batch_of_station(struct record *r, int32_t station, int64_t item_number, struct batch *out);
/* The highest number that a slip has, 0 where there is none. 0 or a negative errno. */
int record_last_slip(struct record *r, int32_t *slip);
/* The slip of a case's end; before there is one, its first. */
int record_slip_of_case(struct record *r, int32_t case_no, int32_t *slip);
/* The last event of a label (EV_LABEL_FATE, EV_ISSUED, EV_PUT_BACK, EV_WRITTEN_OFF). */
int record_label_last(struct record *r, int64_t item_number, struct event *out);
/* A slip with its last state, SLIP_SEEN once it was, and one copy of it; `paper->queued` 0 where that is not known. */
int record_slip_of(struct record *r, int32_t slip, int32_t copy, struct slip *out, struct paper *paper);

/* Whether the events of a case have left for an archive, and the event that says so (EV_ARCHIVED); what stays of it are its
 * opening, its end with its seal, its slips and what it used up. */
int record_case_left(struct record *r, int32_t case_no, struct event *out);
/* How many left in all, and the last event that says so. 0 or a negative errno. */
int record_left(struct record *r, int *cases, struct event *last);

/* The last event: its number and hash. */
int64_t record_last(const struct record *r, struct chain *chain);

/* The number of the last event that the file has, and the hash of one, or of the last one of a stretch that left. */
int64_t record_end(struct record *r); /* or a negative errno */
/* Whether there is such an event (enum record_found), or a negative errno. */
int record_hash_at(struct record *r, int64_t seq, struct chain *chain);

/* One event. 0, -ENOENT where there is none, -EINVAL where it cannot be read, or another negative errno. */
int record_event_at(struct record *r, int64_t seq, struct event *ev);

/* A copy of the record, made in short steps so that the count goes on meanwhile. Start one, then call step
 * for as long as it says RECORD_COPY_GOES_ON; RECORD_COPIED is the end, or a negative errno. Only one at a time. It is not
 * synced: whoever keeps it does that. */
enum record_copied { RECORD_COPIED = 0, RECORD_COPY_GOES_ON };
int record_copy_start(struct record *r, const char *file, struct error *e);
int record_copy_step(struct record *r, int pages, struct error *e);
void record_copy_stop(struct record *r); /* leaves the rest; the file is the caller's to remove */

/* Goes through the whole file: numbers without a gap but for what left (table `gone`), canonical texts, columns that agree with them, chain.
 * 0 and the number of the last event; -EUCLEAN with the first fault in `e`; -EBADMSG where everything holds but the texts of some
 * cannot be read: the first is in `e`. */
int record_verify(struct record *r, int64_t *events, struct chain *chain, struct error *e);

#endif
