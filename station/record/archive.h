/* Keeping and removing: what was archived may leave the record (rule 13's one exception).
 *
 * A case leaves when it ended reconciled or was cancelled, its last event is older than policy.ini's longest period, and nothing
 * about it is open: each slip was seen, nothing is owed, nothing of it was found after its end, every event of it can be read,
 * nobody named what it is kept for (EV_KEPT_FOR), and a hospital's store, where there is one, keeps all of it: a store takes
 * events without a gap, and could get what left from nobody. Of such a case stay its opening, its end with its seal, its slips, and the
 * items that it used up, so that no number is given out twice and a thing found, or a slip read, still finds it. Whatever
 * belongs to no case stays.
 *
 * The station must have ended. The whole record is first written to a file of its own, the archive, with two events at its end:
 * what leaves (EV_ARCHIVED) and the seal of that. It is read back from its first event to its last. The new record is made of
 * the archive: every event that stays is as it was, number, text and hash, and the numbers that left stand in a table beside
 * them (store.h). A hash over that table is in the event, and so under the seal: whoever puts other stretches or events there
 * is found by `audit verify`. Only then does it take the place of the old one. A power cut leaves one of the two, whole.
 */
#ifndef BANDTALLY_RECORD_ARCHIVE_H
#define BANDTALLY_RECORD_ARCHIVE_H

#include "record/backup.h"
#include "record/seal.h"
#include "record/store.h"

enum stays_why {
	STAYS_NOT = 0, /* it leaves */
	STAYS_OPEN,    /* it has not ended */
	STAYS_YOUNG,   /* its last event is not old enough */
	STAYS_UNRESOLVED,
	STAYS_OWED,   /* something is owed, or a slip was not seen */
	STAYS_FOUND,  /* a thing of it was found after its end */
	STAYS_NAMED,  /* it is kept for something that was named: an incident, a claim, an inquest */
	STAYS_UNREAD, /* an event of it cannot be read or followed */
	STAYS_UNSENT, /* the hospital's store has not said that it keeps all of it */
	STAYS_LEFT,   /* it has left already */
	STAYS_COUNT
};

struct archive_case {
	int32_t case_no;
	enum stays_why why;
	int64_t last_ms;    /* wall clock */
	int32_t opened_day; /* yyyymmdd, where and when it was opened */
	int64_t last_seq;
	int n_slips;
};

struct archive {
	struct archive_case *cases; /* all, by number; the caller's through archive_deinit() */
	int n_cases, leave;
	int32_t years;     /* of the policy that the record names last; 0: everything stays */
	int64_t before_ms; /* what is older may leave */
	int64_t
	    sent_to; /* the last event that the hospital's store keeps; INT64_MAX where there is no such store */
	int64_t events_leave; /* how many events */
};

/* What would leave at the wall clock `now_ms` the record of a data folder. 0 or a negative errno with `e`: -ENOTSUP where the policy names no period. */
int archive_choose(struct archive *a, struct record *r, const char *folder, int64_t now_ms, struct error *e);
void archive_deinit(struct archive *a);

/* Lets it leave: `folder` is the data folder, `file` the archive, in another folder and not there yet. `now_ms`: the wall
 * clock. 0 and, where a->leave is 0, nothing was touched; -EBUSY where a station works in the folder; or another negative
 * errno with `e`: the record is as it was and there is no archive, or, where only a folder could not be brought to disk, both
 * are whole. */
int archive_make(struct archive *a, const char *folder, const char *file, int64_t now_ms, struct backup *out,
                 struct error *e);

/* What left with the event `archived` of the record `live`, from the archive in `file`, which is read back: as archive_make()
 * told it then, so that what was to be written beside the archive can be written once more. `folder` as above. 0 or a negative
 * errno with `e`. */
int archive_again(struct archive *a, struct record *live, const struct event *archived, const char *folder,
                  const char *file, struct backup *out, struct error *e);

#endif
