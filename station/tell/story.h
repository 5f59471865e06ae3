/* What a case looks like when it is told: the fold of its events into what a slip prints. Unlike the sheet it
 * remembers when, who and how often; unlike the record it leaves out what was taken back (but says that it
 * was). Pure: events and a time in, a value out.
 */
#ifndef BANDTALLY_TELL_STORY_H
#define BANDTALLY_TELL_STORY_H

#include "count/station.h"

#define STORY_PEOPLE 24
#define STORY_COUNTS 40
#define STORY_STRETCHES 20
#define STORY_REMINDERS 60
#define STORY_DEBTS 40
#define STORY_STEPS 30
#define STORY_ENTRIES 100
#define STORY_NOTES 20

struct story_person {
	int32_t number;
	uint8_t place;
	char name[33];
	int64_t from_ms, to_ms; /* wall; to 0: to the end */
};
struct story_count {
	uint8_t kind;
	int64_t at_ms;
	int32_t field, circulating, recorded_by;
	char note[80];
};
struct story_stretch {
	int64_t on_ms, off_ms; /* wall; off 0: still on */
	char minutes[80];
};
struct story_reminder {
	int64_t at_ms, acknowledged_ms;
	int32_t minutes, by;
};
struct story_digit {
	uint8_t number;
	int n_stretches, n_reminders;
	struct story_stretch stretches[STORY_STRETCHES];
	struct story_reminder reminders[STORY_REMINDERS];
	uint8_t tourniquet, forceps; /* item numbers that were on it last */
	uint8_t without_sight;
	int64_t doubted_ms; /* wall: asked whether one is on again, not answered yet; 0 not asked */
	int64_t bare_ms;
	int32_t bare_by;
	char longest[80], total[80];
};
struct story_debt {
	struct debt debt;
	int64_t owed_ms, paid_ms;
	int32_t by;
	char how[EVENT_TEXT_MAX];
};
struct story_step {
	int64_t at_ms;
	uint8_t done;
	char text[POLICY_TEXT_MAX];
	char why[EVENT_TEXT_MAX]; /* why it was not done; "" not said */
};
struct story_entry {
	const char *how; /* late, keyed, overridden, corrected */
	int64_t at_ms;
	char text[240];
};
struct story_item {
	int64_t in_ms;
	uint8_t added;
	char found[EVENT_TEXT_MAX];
};

struct story {
	struct sheet sheet; /* as it was when the case ended, or is now */
	int32_t case_no, room;
	uint8_t single, ended; /* enum case_end, 0 open */
	char label[16], end_text[EVENT_TEXT_MAX];
	int64_t opened_ms, ended_ms, signed_ms, discrepancy_ms, closed_ms;
	int32_t witness;              /* of a visiting surgeon; 0 none */
	int32_t signed_by, last_slip; /* last_slip: the reconciliation slip that addenda add to, 0 none yet */
	char missing_text[400];
	int n_people, n_counts, n_digits, n_debts, n_steps, n_entries, n_notes;
	struct story_person people[STORY_PEOPLE];
	struct story_count counts[STORY_COUNTS];
	struct story_digit digits[DIGITS_MAX];
	struct story_item items[ITEMS_MAX];
	struct story_debt debts[STORY_DEBTS];
	struct story_step steps[STORY_STEPS];
	struct story_entry entries[STORY_ENTRIES];
	char notes[STORY_NOTES][240];
	uint8_t point_no; /* a point was answered no at some time */
};

/* Folds the `count` events of one case, oldest first, with the station's starts and marks in time from its
 * opening on among them, as its clocks need (record_each() gives them so). `now` is until when the clocks of
 * a case that is still open run; of one that has ended it is not looked at. 0 with a story that is the
 * caller's to free(), -ENOENT where there are no events, -ENOMEM. */
int story_make(struct story **out, const struct event *events, int count, struct moment now);

#endif
