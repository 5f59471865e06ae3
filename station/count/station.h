/* Everything the daemon knows: rooms, open sheets, catalogue, staff, what is in quarantine, which slips have
 * not been seen, which numbers are owed. Made from events alone. */
#ifndef BANDTALLY_COUNT_STATION_H
#define BANDTALLY_COUNT_STATION_H

#include "count/policy.h"
#include "count/sheet.h"

#define ROOMS_MAX 16
#define SHEETS_MAX 24 /* open ones, suspended ones included */
#define UNSEEN_MAX 128
#define CARRIED_MAX 32
#define SITE_MAX 3
#define ROOM_NAME_MAX 33

struct room {
	int32_t number; /* 1..99 as on its cards */
	char name[ROOM_NAME_MAX];
	uint8_t single; /* a room where one operator works alone */
};

enum slip_kind { SLIP_RECONCILIATION = 1, SLIP_DISCREPANCY, SLIP_ADDENDUM };
enum slip_state { SLIP_QUEUED = 1, SLIP_WRITTEN, SLIP_SENT, SLIP_DONE, SLIP_WAITING, SLIP_FAILED, SLIP_SEEN };

struct slip {
	int32_t number, case_no, room;
	uint8_t kind, state, copy;
	int32_t job; /* number at the print server, 0 none */
};

struct quarantine { /* a line, or one lot of it */
	char line[LINE_KEY_MAX];
	char lot[LOT_MAX]; /* "" the whole line */
	char why[EVENT_TEXT_MAX];
};

struct owed_number { /* a case that ended with 'incident number owed' (rule 16) */
	int32_t case_no, room;
};

struct step { /* the first event of the last step of a sheet */
	int64_t seq;
	uint8_t kind; /* enum event_kind */
	uint8_t item, digit;
};

/* Where a carried scanner works now (rule 18). */
struct carried {
	char scanner[33];
	int32_t room;
	uint8_t bound; /* as a spare, until a further card; else as long as the policy says */
	struct moment since;
};

struct station {
	char site[SITE_MAX]; /* two letters */
	char site_name[65];
	struct room rooms[ROOMS_MAX];
	int n_rooms;
	struct policy policy;
	struct catalogue catalogue;
	struct staff staff;
	struct quarantine *quarantines;
	size_t n_quarantines;
	struct sheet sheets[SHEETS_MAX]; /* case_no 0: free */
	struct sheet before[SHEETS_MAX]; /* each as it was before its last step, for UNDO */
	struct step undo[SHEETS_MAX];    /* that step; seq 0: nothing to undo */
	struct slip unseen[UNSEEN_MAX];  /* slips that no scanner has read back; the oldest fall out */
	int n_unseen;
	struct owed_number owed[UNSEEN_MAX];
	int n_owed;
	int32_t last_case_no, last_slip_no;
	int64_t last_item_no;          /* of stores' labels */
	uint8_t idle_asked[ROOMS_MAX]; /* a question in a room without a case: enum question */
	struct carried carried[CARRIED_MAX];
	int n_carried;
	int32_t boot;
	struct moment last; /* of the last event */
};

void station_deinit(struct station *st);

/* Applies one event, of the station or of a case. 0, -EINVAL, -ENOSPC or -ENOMEM; changes nothing then. */
int station_apply(struct station *st, const struct event *e);

const struct room *station_room(const struct station *st, int32_t number); /* NULL when unknown */
const char *station_room_name(const struct station *st, int32_t number);   /* "room 7" when unknown */
int station_sheet_of_room(const struct station *st, int32_t room);    /* index of the running case, or -1 */
int station_suspended_in(const struct station *st, int32_t room);     /* index of a suspended one, or -1 */
int station_sheet_of_case(const struct station *st, int32_t case_no); /* index or -1 */
int station_free_sheet(const struct station *st);                     /* index or -1 */

/* The case on whose open sheet this identity stands, 0 none (rule 4). */
int32_t station_identity_open(const struct station *st, const char *identity);

/* Why line and lot are in quarantine, or NULL. */
const char *station_quarantined(const struct station *st, const char *line, const char *lot);

/* The room that a scanner works for at `now`: where it was carried to, or its own. */
int32_t station_scanner_room(const struct station *st, const char *scanner, int32_t own, struct moment now);

const struct slip *station_slip(const struct station *st, int32_t number); /* among the unseen, or NULL */

#endif
