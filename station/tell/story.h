/* What a case looks like when it is told: the fold of its events into what a slip prints. Unlike the sheet it
 * remembers when, who and how often; unlike the record it leaves out what was taken back (but says that it
 * was). Pure: events and a time in, a value out.
 */
#ifndef BANDTALLY_TELL_STORY_H
#define BANDTALLY_TELL_STORY_H

#include "count/station.h"
#include "words/language.h"

#define STORY_PEOPLE 24
#define STORY_COUNTS 40
#define STORY_STRETCHES 20
#define STORY_REMINDERS 60
#define STORY_DEBTS 40
#define STORY_STEPS 30
#define STORY_ENTRIES 100
#define STORY_NOTE_MAX 400
#define STORY_NOTES 19 /* and one that says how much did not fit */
#define STORY_SLIPS 20
#define STORY_DISCREPANCIES 10
#define STORY_FOUND 10

/* A time of which nothing is known is all zero: time_is_set(). */
static inline int time_is_set(struct moment at)
{
	return at.wall_ms != 0;
}

struct story_person {
	int32_t number;
	uint8_t place;
	char name[33];
	struct moment from, to; /* to: not set where it is to the end */
};
struct story_count {
	uint8_t kind;
	struct moment at;
	int32_t field, circulating, recorded_by;
	uint32_t unseen; /* digits that a handover did not see fully, by their numbers: 1 << number */
};
struct story_stretch {
	struct moment on, off; /* off not set: still on */
	char minutes[80];
};
struct story_reminder {
	struct moment at, acknowledged;
	int32_t minutes, by;
};
struct story_digit {
	uint8_t number;
	int n_stretches, n_reminders;
	struct story_stretch stretches[STORY_STRETCHES];
	struct story_reminder reminders[STORY_REMINDERS];
	uint8_t tourniquet, forceps; /* item numbers that were on it last */
	uint8_t without_sight;
	uint8_t time_moved;    /* its on or off was entered as earlier than it was scanned */
	struct moment doubted; /* asked whether one is on again, and not answered yet */
	struct moment bare;
	int32_t bare_by;
	char longest[80], total[80];
	int64_t longest_ms;
};
struct story_debt {
	struct debt debt;
	uint8_t after; /* it was paid after the case had ended */
	struct moment owed, paid;
	int32_t by;
	char how[EVENT_TEXT_MAX];
	char why[200]; /* the station refused the item; "" no reason, or of a record that does not say */
};
struct story_step {
	struct moment at;
	uint8_t done; /* enum step_answer */
	char text[POLICY_TEXT_MAX];
	char why[EVENT_TEXT_MAX]; /* why it was not done; "" not said */
};
struct story_point { /* of the sign-out, as it was put */
	char text[POLICY_TEXT_MAX];
	uint8_t answer;   /* enum point_answer */
	struct moment no; /* when it was answered NO last; zero never */
};
enum story_how { ENTRY_LATE = 1, ENTRY_KEYED, ENTRY_OVERRIDDEN, ENTRY_CORRECTED };
struct story_entry {
	uint8_t how;   /* enum story_how */
	uint8_t after; /* the case had ended */
	struct moment at;
	char text[240];
};
struct story_steps { /* what people did, one a scan or a text */
	int all, late, keyed;
	struct moment first, last;
};
struct story_item {
	struct moment in, shown;
	struct moment seen_on; /* while it was missing: on the digit `on` */
	uint8_t on;
	uint8_t added;
	uint8_t where; /* `found` is where it was found; 0: it is remarked of it */
	char found[EVENT_TEXT_MAX];
};
struct story_slip { /* that was queued */
	int32_t number;
	uint8_t kind; /* enum slip_kind */
	struct moment at;
};
struct story_discrepancy {
	struct moment opened, closed; /* closed: not set where it is open */
	char what[400];               /* what was missing, extra or in pieces when it opened */
};
struct story_found { /* after the end (rule 21) */
	struct moment at;
	struct thing thing;
	uint8_t digit; /* it was on that; 0 not said */
	char text[EVENT_TEXT_MAX];
};

struct story {
	const struct language *language; /* of its words; NULL English. Borrowed */
	struct sheet sheet;              /* as it was when the case ended, or is now */
	int32_t case_no, room;
	uint8_t single, ended; /* enum case_end, 0 open */
	uint8_t end_why;       /* enum end_why; what was typed stands in end_text alone */
	char archive
	    [EVENT_TEXT_MAX]; /* "", or for which its events left the record; the caller's to fill in */
	int32_t paper_sheet;  /* that it was entered from; 0 it was counted as it happened */
	char label[16], end_text[EVENT_TEXT_MAX];
	struct moment opened, ended_at, signed_at;
	struct moment clocked; /* of the last step that was entered when it was done, for wall_turned_ms() */
	struct moment heard;   /* of the event before the one that is told, a start of the station apart */
	int32_t witness;       /* of a visiting surgeon; 0 none */
	int32_t signed_by, last_slip; /* last_slip: the reconciliation slip that addenda add to, 0 none yet */
	int n_people, n_counts, n_digits, n_debts, n_steps, n_entries, n_notes, n_slips, n_discrepancies,
	    n_found;
	struct story_person people[STORY_PEOPLE];
	struct story_count counts[STORY_COUNTS];
	struct story_digit digits[DIGITS_MAX];
	struct story_item items[ITEMS_MAX];
	struct story_debt debts[STORY_DEBTS];
	struct story_step steps[STORY_STEPS];
	struct story_entry entries[STORY_ENTRIES];
	char notes[STORY_NOTES][STORY_NOTE_MAX];
	struct story_slip slips[STORY_SLIPS];
	struct story_discrepancy discrepancies[STORY_DISCREPANCIES];
	struct story_found found[STORY_FOUND];
	struct story_steps scans;
	int left_out;        /* events that no list above had a place for; the record has them */
	uint8_t points_told; /* the events say which points were put; those of format 1 do not */
	int n_points;
	struct story_point points[POLICY_LIST_MAX];
};

/* Folds the `count` events of one case, oldest first, with what its clocks need among them: the station's
 * starts, and the last mark in time before each (record_each() gives them so). `now` is until when the clocks of
 * a case that is still open run; of one that has ended it is not looked at. 0 with a story that is the
 * caller's to free(), -ENOENT where there are no events, -ENOMEM. */
int story_make(struct story **out, const struct language *language, const struct event *events, int count,
               struct moment now);

#endif
