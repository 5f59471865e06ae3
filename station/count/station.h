/* Everything the daemon knows: rooms, open sheets, catalogue, staff, what is in quarantine, which slips have
 * not been seen, which numbers are owed. Made from events alone. */
#ifndef BANDTALLY_COUNT_STATION_H
#define BANDTALLY_COUNT_STATION_H

#include "count/after-end.h"
#include "count/held.h"
#include "count/paper-sheet.h"
#include "count/policy.h"
#include "count/proof.h"
#include "count/recorded.h"
#include "count/sheet.h"

#define SHEETS_MAX 24 /* open ones, suspended ones included */
#define UNSEEN_MAX 128
#define OWED_MAX 1024
#define CARRIED_MAX 128
#define HELD_MAX (ROOMS_MAX * HELD_ROOM_MAX)

enum slip_kind { SLIP_RECONCILIATION = 1, SLIP_DISCREPANCY, SLIP_ADDENDUM };
enum slip_state { SLIP_QUEUED = 1, SLIP_WRITTEN, SLIP_SENT, SLIP_DONE, SLIP_WAITING, SLIP_FAILED, SLIP_SEEN };

struct slip {
	int32_t number, case_no, room;
	uint8_t kind, state, copy;
	int32_t job;     /* number at the print server, 0 none */
	int64_t wall_ms; /* when it was first queued, by the wall clock */
};

struct quarantine { /* a line, or one lot of it */
	char line[LINE_KEY_MAX];
	char lot[LOT_MAX]; /* "" the whole line */
	char why[EVENT_TEXT_MAX];
	char notice[NOTICE_MAX]; /* the reference of a notice; "" none */
};

struct owed_number { /* a case that ended with 'incident number owed' (rule 16) */
	int32_t case_no, room;
	int64_t wall_ms; /* when it ended, by the wall clock */
};

/* What happened since a step began that no copy of its own sheet takes back. */
enum step_beyond {
	STEP_OF_ITS_SHEET = 0,
	STEP_TOOK,  /* an item left the sheet of another case for this one */
	STEP_TAKEN, /* an item left this sheet for that of another case */
	STEP_FOUND, /* something of a case that has ended was found (rule 21) */
};

struct step { /* the first event of the last step of a sheet */
	int64_t seq;
	uint8_t kind; /* enum event_kind */
	uint8_t item, digit;
	uint8_t beyond;     /* enum step_beyond */
	int32_t other_case; /* which */
};

/* How it was carried: for as long as the policy says, or as a spare, until a further card. */
enum carried_how { CARRIED_FOR_A_WHILE = 0, CARRIED_SPARE };

/* Where a carried scanner works now (rule 18). */
struct carried {
	char scanner[33];
	int32_t room;
	uint8_t bound; /* as a spare, until a further card; else as long as the policy says */
	struct moment since;
};

/* Who has to be looked for (count/unanswered.h). boot 0: never. */
struct heard {
	struct moment scan;     /* the last scan in this room, whatever became of it */
	struct moment reminder; /* the first reminder that no scan has followed */
	/* The first one of a case that is suspended here, which no scan of another case answers. */
	struct moment of_suspended;
};

/* An event that a start could not read or apply (rule 26). Everything else was followed. */
#define UNFOLLOWED_MAX 16
#define UNFOLLOWED_KIND_MAX 24
struct unfollowed {
	int64_t seq;
	int32_t case_no; /* 0 the station */
	char kind[UNFOLLOWED_KIND_MAX];
};

struct station {
	char site[SITE_MAX]; /* two letters, of the hospital */
	uint8_t number;      /* of this station among those of the hospital, 0 to 99 */
	char site_name[SITE_NAME_MAX];
	char language[LANGUAGE_CODE_MAX]; /* of rooms that name none; "" English */
	struct room rooms[ROOMS_MAX];
	int n_rooms;
	struct policy policy;
	uint8_t practice; /* 1: nothing here is real: it takes the codes of the practice set alone */
	struct catalogue catalogue;
	struct staff staff;
	struct quarantine *quarantines;
	size_t n_quarantines, quarantines_room;
	struct sheet sheets[SHEETS_MAX]; /* case_no 0: free */
	struct sheet before[SHEETS_MAX]; /* each as it was before its last step, for UNDO */
	struct step undo[SHEETS_MAX];    /* that step; seq 0: nothing to undo */
	struct slip unseen[UNSEEN_MAX];  /* slips that no scanner has read back: the latest of them */
	int n_unseen, older_unseen;      /* `older`: those before, which only the record tells */
	struct owed_number owed[OWED_MAX];
	int n_owed, more_owed;                 /* `more`: for which there was no place */
	struct after_end after[AFTER_END_MAX]; /* what is owed to patients of ended cases */
	int n_after, more_after;               /* `more`: for which there was no place */
	int32_t last_case_no, last_slip_no;
	int64_t last_item_no;          /* of stores' labels */
	uint8_t idle_asked[ROOMS_MAX]; /* a question in a room without a case: enum question */
	int32_t idle_n[ROOMS_MAX];     /* what it is about: Q_SLIP_HERE the slip */
	uint8_t idle_copy[ROOMS_MAX];  /* and its copy */
	int32_t idle_last
	    [ROOMS_MAX]; /* as sheet.last_answer, of a room whose case ended or was suspended by it */
	struct paper_sheets papers[ROOMS_MAX]; /* paper count sheets that were entered */
	struct carried carried[CARRIED_MAX];
	int n_carried;
	struct held held[HELD_MAX]; /* of all rooms, in the order in which they came */
	int n_held;
	struct unfollowed unfollowed[UNFOLLOWED_MAX]; /* that nobody has dealt with; the first of them */
	int n_unfollowed, more_unfollowed;            /* `more`: for which there was no place */
	/* The last backup that was read back whole: up to which event, and when by the wall clock; 0 there was none. */
	int64_t backup_seq, backup_ms;
	int32_t boot;
	struct moment last; /* of the last event */
	int64_t wall_ms;    /* the latest wall clock of any event */
	/* yyyymmdd: no wall clock that is right stands before it. The caller fills it in; 0 not known. */
	int32_t released;
	uint8_t clock_wrong;           /* what was said of the wall clock last (count/wall.h) */
	struct heard heard[ROOMS_MAX]; /* by the room's place */
	struct recorded recorded; /* the settings as the record has them; what is decided goes by the files */
	struct proof proof;
	/* Which of the records of this station it is: 0 and 1 the first, raised where an older or another one was found.
	 * Stands in every signature. Ask station_incarnation(). */
	int32_t incarnation;
};

void station_deinit(struct station *st);

/* Applies one event, of the station or of a case. 0, -EINVAL, -ENOSPC or -ENOMEM; changes nothing then. */
int station_apply(struct station *st, const struct event *e);

/* Notes an event that could not be read or applied, with as much as is known of it (rule 26): its case is marked, and is
 * opened or ended where that is what the event did. `room`: 0 not known. */
void station_not_followed(struct station *st, const struct unfollowed *u, int32_t room);

/* "event 17 (line-set) and event 20 (item-in) of case 3 could not be followed", and how many they are; 0 and "" none that is
 * open. saying: SAY_UNFOLLOWED or one like it, of which they are the {list}. case_no: those of that case, 0 of the station itself, or all of them, or those of all cases. */
#define UNFOLLOWED_ALL (-1)
#define UNFOLLOWED_OF_CASES (-2)
int station_unfollowed_words(const struct station *st, const struct language *language, enum saying saying,
                             int32_t case_no, char *out, size_t size);

/* Whether station_apply() will take these events, one after the other: what is stored must be what can be applied.
 * Changes nothing but that there is room for them, so that memory cannot fail them afterwards. 0, or -EINVAL, -ENOSPC,
 * -ENOMEM with `e`. */
int station_fits(struct station *st, const struct event *events, int count, struct error *e);

/* One event of a case that is open, or is opened by it, on its sheet; `before` and `undo` are what UNDO would take back.
 * 0 or as sheet_apply(); changes nothing then. */
int station_step(struct sheet *s, struct sheet *before, struct step *undo, const struct event *e,
                 struct origin *at);

/* Room for `more` further lines or lots in quarantine. 0 or -ENOMEM. */
int station_reserve_quarantines(struct station *st, size_t more);

const struct room *station_room(const struct station *st, int32_t number); /* NULL when unknown */
/* What works there now, 0 when unknown: whatever the files say its kind is, it is a room of cases until each case that was
 * begun there has ended and each scan that is held there was answered. */
int station_room_is(const struct station *st, int32_t number, enum room_kind kind);
const char *station_room_name(const struct station *st, int32_t number); /* "room 7" when unknown */
const char *station_language(const struct station *st,
                             int32_t room);                        /* of its board and papers: "en", "de" */
int station_sheet_of_room(const struct station *st, int32_t room); /* index of the running case, or -1 */
int station_suspended_in(const struct station *st, int32_t room);  /* index of a suspended one, or -1 */
/* A room has one suspended case at most; in records of earlier versions it may have more. The one that stands behind the
 * sheet `index`, round and round, so that each has its turn; -1 none is suspended. */
int station_suspended_behind(const struct station *st, int32_t room, int index);
int station_sheet_of_case(const struct station *st, int32_t case_no); /* index or -1 */
int station_free_sheet(const struct station *st);                     /* index or -1 */

/* What is asked in a room while no case runs in it. */
enum question station_idle_asked(const struct station *st, int32_t room);

/* What a room looks at: the sheet of its running case; else `idle`, filled in with the room and, where scans are
 * held for it, with the question about them. */
const struct sheet *station_shown(const struct station *st, int32_t room, struct sheet *idle);

/* The case on whose open sheet this identity stands, 0 none (rule 4). */
int32_t station_identity_open(const struct station *st, const char *identity);

/* Whether just that is in quarantine: the line as a whole where `lot` is "". */
int station_is_held(const struct station *st, const char *line, const char *lot);

/* Of `q` (EV_QUARANTINED), one event for each open case whose sheet has what it names, as it is called there. How many.
 * (recalls.c) */
int station_recalls(const struct station *st, const struct event *q, struct event recalled[SHEETS_MAX]);

/* Why line and lot are in quarantine, or NULL. */
const char *station_quarantined(const struct station *st, const char *line, const char *lot);

/* The room that a scanner works for at `now`: where it was carried to, or its own. */
int32_t station_scanner_room(const struct station *st, const char *scanner, int32_t own, struct moment now);

int32_t station_incarnation(const struct station *st); /* from 1 */

int station_room_index(const struct station *st, int32_t room); /* in rooms[], or -1 */

/* 1 where a room other than `room` has a case, suspended ones included. */
int station_others_have_a_case(const struct station *st, int32_t room);

/* The scanner that would be forgotten for the one that this event carries; NULL none. */
const struct carried *station_carried_falls(const struct station *st, const struct event *e);

const struct slip *station_slip(const struct station *st,
                                int32_t number);               /* among the latest unseen, or NULL */
int station_unseen_in(const struct station *st, int32_t room); /* how many of them are of this room */

/* 1 where nothing of patients waits in this room: it has no case, not even one that is suspended, and nothing is asked or owed
 * there. */
int station_may_practise(const struct station *st, int32_t room);

#endif
