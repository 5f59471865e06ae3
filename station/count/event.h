/* What happened, as values. Events are the only thing that is kept; every state is made from them by
 * sheet_apply() and station_apply(), and nothing changes a state without one (rule 13).
 *
 * One flat struct serves all kinds; EVENTS(X) says of each kind what it is called in the record and which
 * fields it uses, and that list drives the record's codec, so that a field a kind does not name is neither
 * written nor read.
 */
#ifndef BANDTALLY_COUNT_EVENT_H
#define BANDTALLY_COUNT_EVENT_H

#include <stdint.h>

#include "count/catalogue.h"
#include "count/digit.h"
#include "count/event-lists.h"
#include "words/said.h"

#define EVENT_TEXT_MAX 201
#define NOTICE_MAX 41

/* Fields, for the list below. */
enum event_field {
	F_ITEM = 1 << 0,    /* item: number on this sheet, from 1 */
	F_DIGIT = 1 << 1,   /* digit: 1..24 */
	F_PERSON = 1 << 2,  /* person: number of a badge */
	F_OTHER = 1 << 3,   /* other: a second badge, digit or item, as the kind says */
	F_N = 1 << 4,       /* n: a number, as the kind says */
	F_WHAT = 1 << 5,    /* what: one of an enum, as the kind says */
	F_REF = 1 << 6,     /* ref: the event that this one names */
	F_TEXT = 1 << 7,    /* text */
	F_LINE = 1 << 8,    /* line: the whole line of the catalogue */
	F_THING = 1 << 9,   /* thing: what is known of an item */
	F_STAFF = 1 << 10,  /* staff */
	F_BATCH = 1 << 11,  /* batch: stores' labels */
	F_KEY = 1 << 12,    /* key: a public key of the station */
	F_SEAL = 1 << 13,   /* seal: a signature over the record's head */
	F_HEAD = 1 << 14,   /* head: how far a record had come */
	F_PROOF = 1 << 15,  /* proof: the six digits of a slip's code (count/slip-paper.h) */
	F_SAID = 1 << 16,   /* said: a sentence, by its name and values; it need not be there */
	F_NOTICE = 1 << 17, /* notice: the reference of a maker's or an authority's notice */
};

/* Above those bits: of which enum `what` and `other` are, where they are of one (enum event_list). */
#define F_LIST_OF_WHAT 20
#define F_LIST_OF_OTHER 26
#define WHAT_IS(list) (F_WHAT | (uint32_t)LIST_##list << F_LIST_OF_WHAT)
#define OTHER_IS(list) (F_OTHER | (uint32_t)LIST_##list << F_LIST_OF_OTHER)

/* X(NAME, "name in the record", GROUP, LASTING or PASSING, fields)             what the fields mean
 * GROUP: what the event changes (enum event_group). LASTING: what is kept of a case that has ended, which a start reads
 * (record/store-internal.h makes its index of them, in this order: an existing record has it so); PASSING: the rest. */
/* clang-format off */
#define EVENTS(X) \
	/* the station */ \
	X(STARTED, "started",                         STATION, PASSING, F_N | F_TEXT) /* n: boot number, text: boot id */ \
	X(STOPPED, "stopped",                         STATION, PASSING, 0) \
	X(ALIVE, "alive",                             STATION, PASSING, 0) /* a mark in time while a tourniquet is on */ \
	X(LINE_SET, "line-set",                       STATION, PASSING, F_LINE) \
	X(STAFF_SET, "staff-set",                     STATION, PASSING, F_STAFF) \
	X(STAFF_WITHDRAWN, "staff-withdrawn",         STATION, PASSING, F_PERSON) \
	/* thing: line and perhaps lot, text: why, person and other: who did it, and the second person of a release */ \
	X(QUARANTINED, "quarantined",                 STATION, PASSING, F_TEXT | F_THING | F_NOTICE | F_PERSON) \
	X(RELEASED, "released",                       STATION, PASSING, F_TEXT | F_THING | F_PERSON | F_OTHER) \
	X(LABELLED, "labelled",                       STATION, PASSING, F_BATCH | F_N) /* n: 1 each label is to be read back */ \
	/* stores (station/stock): batch is line, lot, expiry, and first the number of the one that is meant where it has one; n: \
	 * packs; other: the room where they are or go, 0 the shelf; person: whose badge stands at the bench */ \
	X(BENCH_ASKED, "bench-asked",                 STATION, PASSING, F_BATCH | F_N | WHAT_IS(BENCH) | F_OTHER | F_PERSON | F_TEXT) \
	X(BENCH_PERSON, "bench-person",               STATION, PASSING, F_PERSON) \
	X(RECEIVED, "received",                       STATION, PASSING, F_BATCH | F_N | WHAT_IS(RECEIVED) | F_OTHER | F_PERSON) /* other: the second */ \
	X(CONFIRMED, "stock-confirmed",               STATION, PASSING, F_BATCH | F_N | F_OTHER | F_PERSON) /* other: the second */ \
	X(LABEL_FATE, "label-fate",                   STATION, PASSING, F_BATCH | WHAT_IS(LABEL) | OTHER_IS(LABEL) | F_PERSON) /* other: what it was */ \
	X(LABELS_CLOSED, "labels-closed",             STATION, PASSING, F_BATCH | F_PERSON) /* the box was read again */ \
	X(ISSUED, "issued",                           STATION, PASSING, F_BATCH | F_N | F_OTHER | F_PERSON) \
	X(PUT_BACK, "put-back",                       STATION, PASSING, F_BATCH | F_N | F_OTHER | F_PERSON) /* sealed, dry and clean */ \
	X(WRITTEN_OFF, "written-off",                 STATION, PASSING, F_BATCH | F_N | WHAT_IS(WRITTEN) | F_OTHER | F_PERSON | F_TEXT) /* text: why */ \
	X(STOCK_COUNTED, "stock-counted",             STATION, PASSING, F_BATCH | F_N | F_OTHER | F_PERSON | WHAT_IS(COUNTED)) /* n lie there */ \
	/* at the end of case `other`, of the room; for an item that was found after it, then */ \
	X(CASE_TOOK, "case-took",                     STATION, PASSING, F_BATCH | F_N | WHAT_IS(TOOK) | F_OTHER) \
	X(SCANNER_FAULT, "scanner-fault",             STATION, PASSING, F_SAID | F_TEXT) /* text: of a driver */ \
	/* what a file says from here on (count/recorded.h says what the fields are) */ \
	X(SETTING, "setting",                         STATION, PASSING, WHAT_IS(SETTING) | F_OTHER | F_N | F_TEXT) \
	/* scanner `text` works for room n, 0 its own again; what: 1 until a further card, 0 for a while */ \
	X(SCANNER_ROOM, "scanner-room",               STATION, PASSING, F_N | WHAT_IS(BOUND) | F_TEXT) \
	/* n: 1 the wall clock cannot be right (count/wall.h), 0 it can again; of a case as well, for its slip */ \
	X(CLOCK_WRONG, "clock-wrong",                 STATION, PASSING, F_N) \
	/* of each open case that has what was just put in quarantine on its sheet, for its slip; thing: its name, line and, \
	 * where it is one, lot; text: why */ \
	X(RECALLED, "recalled",                       STATION, PASSING, F_THING | F_TEXT) \
	X(BACKED_UP, "backed-up",                     STATION, PASSING, F_REF) /* ref: the last event of a backup that was read back whole */ \
	/* the case, and its slips */ \
	X(CASE_OPENED, "case-opened",                 CASE,    LASTING, F_N | F_TEXT) /* n: 1 single operator, text: case label */ \
	X(CASE_ENDED, "case-ended",                   CASE,    LASTING, WHAT_IS(CASE_END) | OTHER_IS(END_WHY) | F_TEXT) /* text: a number, as typed */ \
	X(SLIP_QUEUED, "slip-queued",                 STATION, LASTING, F_N | WHAT_IS(SLIP_KIND) | F_OTHER | F_PROOF | F_TEXT) /* n: slip, other: copy, text: language */ \
	/* n: slip, other: copy, ref: CUPS job */ \
	X(SLIP_STATE, "slip-state",                   STATION, LASTING, F_N | WHAT_IS(SLIP_STATE) | F_OTHER | F_REF | F_TEXT) \
	X(SUSPENDED, "suspended",                     CASE,    PASSING, 0) \
	X(RESUMED, "resumed",                         CASE,    PASSING, 0) \
	X(CANCELLED, "cancelled",                     CASE,    PASSING, 0) /* a count is still owed */ \
	X(PATIENT_LEFT, "patient-left",               CASE,    PASSING, 0) \
	X(AWAKE, "awake-patient",                     CASE,    PASSING, F_N) /* n: 1 awake, 0 no longer */ \
	X(JOINED, "joined",                           PEOPLE,  PASSING, F_PERSON | WHAT_IS(PLACE) | F_TEXT) /* text: name as shown */ \
	X(LEFT, "left",                               PEOPLE,  PASSING, F_PERSON | WHAT_IS(PLACE) | F_N) /* n: 1 without scanning out */ \
	X(ITEM_IN, "item-in",                         PACK,    PASSING, F_ITEM | F_THING | F_N) /* n: pieces */ \
	X(ITEM_LISTED, "item-listed",                 ITEM,    PASSING, F_ITEM | F_THING) /* what was unlisted is this */ \
	X(ITEM_ON, "item-on",                         ITEM,    PASSING, F_ITEM | F_DIGIT) \
	X(ITEM_OFF, "item-off",                       ITEM,    PASSING, F_ITEM | F_DIGIT) \
	/* text: found where, said: what is remarked of it */ \
	X(ITEM_SHOWN, "item-shown",                   ITEM,    PASSING, F_ITEM | F_N | WHAT_IS(EVIDENCE) | OTHER_IS(CONDITION) | F_SAID | F_TEXT) \
	X(ITEM_NOT_SHOWN, "item-not-shown",           ITEM,    PASSING, F_ITEM | F_N) /* n: pieces that are missing */ \
	X(ITEM_RETURNED, "item-returned",             ITEM,    PASSING, F_ITEM) \
	X(ITEM_ISOLATED, "item-isolated",             ITEM,    PASSING, F_ITEM) /* wrong number in its pack */ \
	X(ITEM_DROPPED, "item-dropped",               ITEM,    PASSING, F_ITEM) \
	X(ITEM_STRUCK, "item-struck",                 ITEM,    PASSING, F_ITEM | F_N) /* a misread, or counted again; n: it is of that case */ \
	X(ITEM_MORE, "item-more",                     ITEM,    PASSING, F_ITEM | F_N) /* n further pieces of the same pack: offcuts */ \
	X(FORCEPS_ON, "forceps-on",                   ITEM,    PASSING, F_ITEM | F_DIGIT) \
	X(FORCEPS_MOVED, "forceps-moved",             ITEM,    PASSING, F_ITEM) \
	X(DIGIT_MARKED, "digit-marked",               DIGIT,   PASSING, F_DIGIT) \
	X(DIGIT_MAYBE_ON, "digit-maybe-on",           DIGIT,   PASSING, F_DIGIT) \
	X(DIGIT_NOT_ON, "digit-not-on",               DIGIT,   PASSING, F_DIGIT) \
	X(DIGIT_ON, "digit-on",                       DIGIT,   PASSING, F_DIGIT) \
	X(DIGIT_DOUBTED, "digit-doubted",             DIGIT,   PASSING, F_DIGIT) /* 'on?' again, of a digit that had come off */ \
	X(DIGIT_STILL_ON, "digit-still-on",           DIGIT,   PASSING, F_DIGIT) /* OFF was wrong: its clock never stopped */ \
	X(DIGIT_NEVER_ON, "digit-never-on",           DIGIT,   PASSING, F_DIGIT) /* MISREAD: its last start was none */ \
	X(DIGIT_OFF, "digit-off",                     DIGIT,   PASSING, F_DIGIT) \
	X(DIGIT_SEEN_BARE, "digit-seen-bare",         DIGIT,   PASSING, F_DIGIT | F_PERSON) \
	X(DIGIT_NOT_SEEN, "digit-not-seen",           DIGIT,   PASSING, F_DIGIT) /* its look was of another digit: it is owed again */ \
	X(DIGIT_SEEN_ON, "digit-seen-on",             DIGIT,   PASSING, F_DIGIT | F_N) /* n: enum seen_on */ \
	X(DIGIT_EARLIER, "digit-earlier",             DIGIT,   PASSING, F_DIGIT | F_N | WHAT_IS(ON_OFF)) /* n minutes */ \
	X(DIGIT_MOVED, "digit-moved",                 DIGIT,   PASSING, F_DIGIT | F_OTHER) /* MISREAD: other is the right digit */ \
	X(SIZE_STATED, "size-stated",                 PEOPLE,  PASSING, F_N) /* circumference of the digit in mm, as typed */ \
	X(WHO_LOOKED, "who-looked",                   PEOPLE,  PASSING, WHAT_IS(LOOKED)) /* a single operator's witness */ \
	X(COUNT_STARTED, "count-started",             COUNT,   PASSING, WHAT_IS(COUNT)) \
	/* field, circulating, n: recorded by */ \
	X(COUNT_AGREED, "count-agreed",               COUNT,   PASSING, WHAT_IS(COUNT) | F_PERSON | F_OTHER | F_N) \
	X(COUNT_AGAIN, "count-again",                 COUNT,   PASSING, F_ITEM) /* INTERRUPTED: this line again */ \
	X(DISCREPANCY, "discrepancy",                 COUNT,   PASSING, F_N) /* n: 1 opened, 0 closed */ \
	/* n: step */ \
	X(SEARCH_STEP, "search-step",                 COUNT,   PASSING, F_N | WHAT_IS(DONE) | F_TEXT) \
	X(SEARCH_WHY, "search-why",                   COUNT,   PASSING, F_N | F_TEXT) /* n: step that was not done, text: why */ \
	X(EXTRA, "extra-item",                        PACK,    PASSING, F_ITEM | F_THING | F_N) /* n: pieces */ \
	X(DRESSING_ON, "dressing-on",                 CASE,    PASSING, F_N) /* n: 1 already on, 0 taken down */ \
	X(OWED, "owed",                               LEDGER,  LASTING, WHAT_IS(DEBT) | F_ITEM | F_DIGIT | F_SAID) /* said: why the item was refused, of `reason` */ \
	X(PAID, "paid",                               LEDGER,  LASTING, WHAT_IS(DEBT) | F_ITEM | F_DIGIT | F_PERSON | OTHER_IS(HOW) | F_TEXT) /* text: as typed */ \
	X(ASKED, "asked",                             LEDGER,  PASSING, WHAT_IS(QUESTION) | F_ITEM | F_DIGIT | F_PERSON | F_N) /* none: closes */ \
	X(POINT, "sign-out-point",                    CASE,    PASSING, F_N | WHAT_IS(YES_NO) | F_TEXT) /* n: point from 1, text: as it was put */ \
	X(SIGNED_OUT, "signed-out",                   CASE,    PASSING, F_PERSON | F_OTHER) /* other: the witness of a visiting surgeon */ \
	X(REMINDED, "reminded",                       PEOPLE,  PASSING, F_DIGIT | F_N) /* n: minutes */ \
	X(ACKNOWLEDGED, "acknowledged",               PEOPLE,  PASSING, F_DIGIT | F_PERSON) \
	X(REFUSED, "refused",                         NOTE,    PASSING, F_SAID | F_TEXT) /* text: in words instead, of earlier versions */ \
	X(NEXT, "next",                               NOTE,    PASSING, 0) /* stands between two equal answers (rule 22) */ \
	X(UNDONE, "undone",                           NOTE,    PASSING, F_REF) /* ref: the first event of the step */ \
	X(ITEM_USED, "item-used",                     NOTE,    PASSING, F_ITEM | F_THING | F_N) /* at the end of a case; n: 1 came back */ \
	/* after the end, on the case that it corrects; of the station: ref, an event that it could not follow, is dealt with */ \
	X(CORRECTION, "correction",                   NOTE,    PASSING, F_REF | F_TEXT) \
	X(FOUND_AFTER, "found-after",                 NOTE,    PASSING, F_THING | F_DIGIT | F_TEXT) /* rule 21, on the case that it came from; on that digit */ \
	/* a stored scan (count/held.h), at when it was made; item: place in its batch, text: scanner */ \
	X(HELD, "scan-held",                          STATION, PASSING, F_ITEM | WHAT_IS(HELD) | F_DIGIT | F_N | F_OTHER | F_PROOF | F_THING | F_TEXT) \
	X(HELD_ANSWERED, "held-scan-answered",        STATION, PASSING, F_REF | WHAT_IS(HELD_ANSWER)) /* ref: its scan-held */ \
	/* the record's proof of itself */ \
	X(KEY, "key",                                 STATION, PASSING, F_KEY | F_N) /* that signs from here on; n: bits of key_state */ \
	/* ref: the event up to which it signs; in the transaction of each start, stop and end of a case, which it is of */ \
	X(SEALED, "sealed",                           STATION, PASSING, F_REF | F_SEAL) \
	/* n: which incarnation begins here, head: of the second place, and behind which numbers of cases, \
	 * slips and items it goes on */ \
	X(INCARNATION, "incarnation", STATION, PASSING, F_N | WHAT_IS(INCARNATION) | F_HEAD) \
	/* an auditor asked for people's names in case n, or for what badge `person` did; text: why */ \
	X(AUDITED, "audited", STATION, PASSING, F_PERSON | F_N | F_TEXT) \
	X(LINE_REMOVED, "line-removed", STATION, PASSING, F_BATCH) /* of the catalogue; batch: its key */ \
	/* numbers that station `other` of this site gave out, by its signed list; text: the thumbprint of the key that signed it */ \
	X(LABELS_TAKEN, "labels-taken", STATION, PASSING, F_BATCH | F_OTHER | F_TEXT) \
	/* n cases leave the record, which were over `other` years ago, for the file `text`; head.seq: how many events they are, \
	 * head.hash: of all that ever left (record/archive.h) */ \
	X(ARCHIVED, "archived", STATION, PASSING, F_N | F_OTHER | F_HEAD | F_TEXT) \
	X(KEPT_FOR, "kept-for", NOTE, PASSING, F_N | F_TEXT) /* n: 1 the case must not leave the record, 0 it may again; text: what for */ \
	X(AWAY, "station-away", NOTE, PASSING, WHAT_IS(AWAY)) /* the station left an open case, or is there again; of each of them */
/* clang-format on */

enum event_kind {
#define X(name, text, group, lasts, fields) EV_##name,
	EVENTS(X)
#undef X
	    EV_KINDS,
	EV_UNREADABLE =
	    EV_KINDS /* stands in the record, and cannot be read: only seq and case are known (rule 26) */
};

enum event_group {
	EVENTS_OF_STATION = 1, /* no sheet, though it may name a case */
	EVENTS_OF_CASE,        /* the sheet as a whole */
	EVENTS_OF_PEOPLE,      /* who is there, and what they said once */
	EVENTS_OF_PACK,        /* an item comes onto the sheet */
	EVENTS_OF_ITEM,        /* `item` */
	EVENTS_OF_DIGIT,       /* `digit` */
	EVENTS_OF_COUNT,       /* the counts and the search */
	EVENTS_OF_LEDGER,      /* what is owed, and what is asked */
	EVENTS_OF_NOTE,        /* nothing on the sheet: it is noted in its case */
};

#define EVENT_LATE 1u  /* entered later than it happened (rule 17) */
#define EVENT_KEYED 2u /* typed, not scanned */
#define EVENT_FIRST 4u /* begins a step, which UNDO takes back whole */

/* What is known of one thing: of a scan before it is counted, or of an item on the sheet. */
struct thing {
	char line[LINE_KEY_MAX]; /* "" where the catalogue does not know it */
	char name[LINE_NAME_MAX];
	enum saying
	    called; /* what it is called where the catalogue does not know it: then a record keeps no name */
	char identity[IDENTITY_MAX]; /* "" where it has none */
	char lot[LOT_MAX];
	int32_t expiry; /* yyyymmdd, 0 none */
	uint8_t role;
	uint8_t identity_kind;
	uint8_t single_use;
	uint8_t rolls_on;
	uint8_t unlisted;
	uint8_t shows_on_xray;
};

enum staff_kind {
	STAFF_PRACTITIONER = 1, /* scrub or circulating */
	STAFF_SURGEON,          /* operating surgeon, or operator who works alone */
	STAFF_CHARGE,           /* nurse in charge */
};

struct person {
	int32_t number; /* of the badge, unique at this site */
	char name[33];  /* role code or name as the site wants it shown */
	uint8_t kind;   /* enum staff_kind */
	uint8_t registered;
	uint8_t withdrawn;
};

struct batch { /* one line and lot, and which item numbers of it: 0 none */
	char line[LINE_KEY_MAX];
	char lot[LOT_MAX];
	int32_t expiry;
	int64_t first, last;
};

/* A key that signs, by what everybody may know of it. */
#define KEY_TEXT_MAX 44
struct public_key {
	char kid[KEY_TEXT_MAX]; /* its thumbprint (RFC 7638), base64url */
	char x[KEY_TEXT_MAX];   /* RFC 8037 section 2 */
};

/* What was to be said of the secret part when it was taken. */
enum key_state {
	KEY_OTHERS = 1,   /* other users could read it */
	KEY_LINK = 2,     /* it was a symbolic link */
	KEY_MADE = 4,     /* there was none, though the record had events: it was lost */
	KEY_DAMAGED = 8,  /* it was no key: it is kept aside */
	KEY_CHANGED = 16, /* it was another than the record named before */
};

/* A compact JWS: {"chain":…,"incarnation":…,"seq":…}, the hash and the number of the event that it names, and which
 * incarnation of the record it is (station.h). */
#define SEAL_JWS_MAX 401
struct seal_text {
	char jws[SEAL_JWS_MAX];
};

/* How far a record had come; what the file in the second place holds. */
#define HEAD_HASH_MAX 65
struct head {
	int64_t seq;              /* of its last event, 0 not known */
	char hash[HEAD_HASH_MAX]; /* of that, in hex */
	int32_t case_no, slip;    /* the last numbers that were given out */
	int64_t item;
};

enum incarnation_why {
	INCARNATION_BEHIND =
	    1,               /* the record ends before the head that was noted: an older one was put back */
	INCARNATION_OTHER,   /* it holds something else there */
	INCARNATION_NO_HEAD, /* nothing was noted of a record that had one noted */
	INCARNATION_ASIDE,   /* a record that could not be read was kept aside, and this one is new */
	INCARNATION_PAPER,   /* a paper of this station is newer than the record: an older one was put back */
};

enum away {                   /* what befell the station while a case was open */
	    AWAY_STOPPED = 1, /* it was told to stop */
	    AWAY_FORCED,      /* the same, by somebody who had said that it must not wait for the case */
	    AWAY_BACK,        /* it is there again after one of these */
	    AWAY_UNSTOPPED,   /* it is there again, and nobody had told it to stop: a power cut, a crash */
};

struct event {
	enum event_kind kind;
	uint32_t flags;
	int64_t seq; /* number in the record; 0 before it is stored */
	struct moment at;
	int32_t room;    /* 1.., 0 the station */
	int32_t case_no; /* 0 none */
	int32_t person, other;
	int32_t n;
	int32_t
	    answer; /* of the first event of a step, and of case-ended and suspended: the card that was scanned,
	                   or minus the number of the badge; 0 neither */
	int64_t ref;
	int32_t proof;
	uint8_t item, digit, what;
	uint8_t station; /* number of the station at its site, 0 to 99 */
	uint8_t format;  /* of the record that it was read from (record/event-json.h); 0: not from a record */
	char text[EVENT_TEXT_MAX];
	char notice[NOTICE_MAX];
	union { /* by F_LINE, F_THING, F_STAFF, F_BATCH, F_KEY, F_SEAL, F_HEAD, F_SAID */
		struct line line;
		struct thing thing;
		struct person staff;
		struct batch batch;
		struct public_key key;
		struct seal_text seal;
		struct head head;
		struct said said;
	};
};

const char *event_name(enum event_kind kind); /* "unreadable" for EV_UNREADABLE */
uint32_t event_fields(enum event_kind kind);
enum event_group event_group(enum event_kind kind); /* EVENTS_OF_NOTE for EV_UNREADABLE */
int event_from_name(const char *name);              /* enum event_kind or -EINVAL */

#endif
