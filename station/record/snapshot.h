/* A snapshot of what the station knows, so that a start need not read all that ever was: a file that can be thrown away
 * at any time, and is, wherever anything of it is not as it must be.
 *
 * The file `snapshot` in the data folder: a head, its HMAC by the station's key (seal_mac(), purpose "snapshot"), and the
 * state as this very program holds it. The head names the event up to which it goes (number and hash as in the record),
 * the number of the fold, the program (its build id: how a struct lies in memory is its own affair), and size and
 * SHA-256 of the state. No setting is in it: those are the files' of the day. Behind the station's state stands an annex:
 * what stores made of the same record (station/stock), as bytes of their own. Whoever changes what stock_apply() makes of an
 * event raises SNAPSHOT_FOLD as well.
 */
#ifndef BANDTALLY_RECORD_SNAPSHOT_H
#define BANDTALLY_RECORD_SNAPSHOT_H

#include "base/buf.h"
#include "record/seal.h"
#include "record/store.h"

#define SNAPSHOT_FILE "snapshot"

/* The number of the fold: raise it with every change of what station_apply() makes of an event. tests/unit/record/fold.txt
 * holds what the kept records come to, and a test says where raising it was forgotten. */
#define SNAPSHOT_FOLD 8

/* Fills in what the snapshot of the folder knows; the settings of `st` are its own and stay. Taken: with the number of
 * its event. Not: there is none, or one that is not for this record, key, program or these rooms: it is taken away, and
 * the journal says why. Then, and on -ENOMEM, `st` is as it was: as before the first event. The annex is appended to `annex`,
 * unless that is NULL. */
enum snapshot_taken { SNAPSHOT_TAKEN_NOT = 0, SNAPSHOT_TAKEN };
int snapshot_load(struct record *r, const struct seal *s, const char *folder, struct station *st,
                  struct buf *annex, int64_t *seq);

/* The same, which takes nothing away and tells nobody. */
int snapshot_look(struct record *r, const struct seal *s, const char *folder, struct station *st,
                  int64_t *seq);

/* Writing one, in turns. It is of the record as it stands when it is begun, and `st` must have followed that. `seal` is
 * borrowed until the end. */
struct snapshot_writer;
int snapshot_begin(struct snapshot_writer **out, const struct record *r, const struct seal *seal,
                   const char *folder, const struct station *st,
                   const struct buf *annex); /* annex: NULL none; 0 or -ENOMEM */

/* One turn, of a millisecond or so: how many ms until the next, at least 1; 0 it is written; or a negative errno. Who cannot
 * wait calls it again at once. */
int snapshot_step(struct snapshot_writer *w);
void snapshot_free(struct snapshot_writer *w); /* at any time; NULL is fine */

/* --- the state as bytes (snapshot-state.c) --------------------------------------------------------- */

/* Appends all that `st` knows but its settings. 0 or -ENOMEM. */
int snapshot_pack(const struct station *st, struct buf *out);

/* The other way, into a station that knows nothing yet. 0; -ESTALE where a room of `st` was not known then; -EINVAL where
 * the bytes are others; -ENOMEM. On failure `st` knows nothing. */
int snapshot_unpack(struct station *st, const void *bytes, size_t size);

/* What of struct station is which: each byte of it but the gaps between fields belongs to one part. */
enum snapshot_part_kind {
	PART_SETTING, /* not in it */
	PART_STATE,   /* as it lies */
	PART_COUNTED, /* an array, of which `count` (an int of the station) stand */
	PART_BY_ROOM, /* an array by the rooms' places */
	PART_CASES,   /* sheets and what UNDO takes back of them, where there is a case */
	PART_LIST,    /* of its own memory */
};
struct snapshot_part {
	const char *name;
	enum snapshot_part_kind kind;
	size_t offset, size, element, count;
};
const struct snapshot_part *snapshot_parts(size_t *n);

#endif
