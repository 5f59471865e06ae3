/* The sentences of a slip: W(NAME, "text"), each whole, so that it can be translated; {name} is a value. A SLIP_SAY() gives the
 * values that its text names.
 */
#ifndef BANDTALLY_WORDS_SLIP_WORDS_H
#define BANDTALLY_WORDS_SLIP_WORDS_H

#include <stddef.h>

/* clang-format off */
#define SLIP_WORDS(W) \
	SLIP_WORDS_HEAD(W) \
	SLIP_WORDS_DIGITS(W) \
	SLIP_WORDS_ITEMS(W) \
	SLIP_WORDS_AMISS(W) \
	SLIP_WORDS_ROWS(W) \
	SLIP_WORDS_ENTRIES(W) \
	SLIP_WORDS_NOTES(W) \
	SLIP_WORDS_PAPER(W)

/* What stands above everything else, and beside the patient's label. */
#define SLIP_WORDS_HEAD(W) \
	W(RECONCILED, "Reconciled.") \
	W(CANCELLED, "Case cancelled.") \
	W(CANCELLED_WHY, "Case cancelled: {why}.") \
	W(NOT_ENDED, "Not ended yet.") \
	W(DISCREPANCY, "DISCREPANCY") \
	W(UNRESOLVED, "UNRESOLVED") \
	W(FOUND_LATER, "FOUND LATER") \
	W(CASE_OPEN, "case open") \
	W(ADDS_TO, "addendum to slip {slip}, case {case}") \
	W(ADDS_TO_CASE, "addendum to case {case}") \
	W(NOTHING_IN, "Nothing was counted in.") \
	W(CASE, "case {case}") \
	W(LABELLED, "label {label}") \
	W(FROM_PAPER, "from paper sheet {n}") \
	W(DAY, "{day} {month} {year}") \
	W(HOURS, "{from} to {to}") \
	W(HOURS_TO_DAY, "{from} to {to}, {day}") \
	W(OPEN_AT, "{from}, open at {to}") \
	W(HOURS_OF_ENTRY, "entered {from} to {to}") \
	W(MONTH_1, "Jan") W(MONTH_2, "Feb") W(MONTH_3, "Mar") W(MONTH_4, "Apr") W(MONTH_5, "May") W(MONTH_6, "Jun") \
	W(MONTH_7, "Jul") W(MONTH_8, "Aug") W(MONTH_9, "Sep") W(MONTH_10, "Oct") W(MONTH_11, "Nov") W(MONTH_12, "Dec") \
	W(SINGLE, "Single-person count: no second person agreed it aloud. Timed from gloving.") \
	W(SINGLE_NO_DIGIT, "Single-person count: no second person agreed it aloud.")

#define SLIP_WORDS_DIGITS(W) \
	W(DIGIT, "{digit}: {minutes}") \
	W(DIGIT_ON, "{digit}: STILL ON, {minutes}") \
	W(DIGIT_ON_BRIEF, "{digit}: on for {minutes}") \
	W(MINUTES, "{n} min") \
	W(AT_LEAST, "at least {n} min") \
	W(TIMES, "{on} to {off}") \
	W(TIMES_SET_BACK, "from {on} (the wall clock was set back)") \
	W(TIMES_WENT_BACK, "{on} to {off} (the clocks went back)") \
	W(SINCE, "on since {on}") \
	W(STRETCH, "{times} ({minutes})") \
	W(STRETCHES, "{list}; the longest {longest}") \
	W(SEEN_BARE, "{times}, seen bare at {time} by {person}") \
	W(SEEN_BARE_ALSO, "{times}, seen bare at {time} by {person}; {also}") \
	/* of a case that was entered from a paper count sheet, on which its times stand */ \
	W(MINUTES_ON_PAPER, "minutes on paper sheet {n}") \
	W(ENTERED_AFTERWARDS, "entered afterwards") \
	W(BARE_ON_PAPER, "on paper") \
	W(SEEN_BARE_UNTIMED, "{times}, seen bare by {person}") \
	W(SEEN_BARE_UNTIMED_ALSO, "{times}, seen bare by {person}; {also}") \
	W(NOT_SEEN_BARE, "{times}, NOT SEEN BARE after the final count") \
	W(NOT_YET_BARE, "{times}, not yet seen bare") \
	W(PATIENT_LOOKED, "the patient looked as well") \
	W(CARER_LOOKED, "a carer looked as well") \
	W(COLLEAGUE_LOOKED, "a colleague looked as well") \
	W(NOBODY_LOOKED, "nobody else looked") \
	W(WITH_FORCEPS, "{digit}: {tourniquet}, with {forceps}") \
	W(WITHOUT_FORCEPS, "{digit}: {tourniquet}, no forceps on it") \
	W(NOT_SAID, "{digit}: not said whether a tourniquet was on") \
	W(REMINDER, "{minutes} min at {time}") \
	W(REMINDERS_TOLD, "{reminders}: told by {person}") \
	W(REMINDERS_NOT, "{reminders}: not answered") \
	W(OF_DIGIT, "{digit}: {text}")

#define SLIP_WORDS_ITEMS(W) \
	W(ITEM_NUMBER, "no. {number}") \
	W(ITEM_NUMBERS, "nos. {numbers}") \
	W(ITEM_MARK, "mark {number}") \
	W(NO_IDENTITY, "no identity of its own") \
	W(LOT, "lot {lot}") \
	W(EXPIRY, "expiry {date}") \
	W(MARK_READ, "its mark read") \
	W(SHOWN_BOTH, "shown to both") \
	W(SHOWN_ONE, "shown, one person") \
	W(INTACT, "intact") \
	W(CUT_COMPLETE, "cut and complete") \
	W(PIECES_MISSING, "pieces missing") \
	W(EVIDENCE_OF, "{evidence}, {condition}") \
	W(EVIDENCE_SOME, "{n} {evidence}") \
	W(NOT_COUNTED_YET, "not counted yet") \
	W(OFF_NOT_COUNTED, "off, not yet accounted for") \
	W(ON_DIGIT, "on a digit") \
	W(RETURNED, "returned unopened") \
	W(ISOLATED, "isolated: wrong number") \
	W(STRUCK, "struck: a misread") \
	W(NOT_FOUND, "{n} NOT FOUND") \
	W(NOT_ACCOUNTED, "{n} NOT ACCOUNTED FOR") \
	W(IN_PIECES, "PIECES MISSING") \
	W(EXTRA, "EXTRA ITEM") \
	W(ADDED, "added {time}") \
	W(DROPPED, "dropped") \
	W(IMPROVISED, "IMPROVISED, no tourniquet of the catalogue") \
	W(UNLISTED, "not listed in the catalogue") \
	W(FOUND_AT, "found {time}: {where}") \
	W(ALL_ITEMS, "all items") \
	W(NOTHING_EXTRA, "nothing extra") \
	W(EXTRAS, "{n} extra") \
	W(OUTCOME_INTACT, "{item}: {shown} of {pieces} shown intact") \
	W(OUTCOME_CUT, "{item}: {shown} of {pieces} shown cut and complete") \
	W(OUTCOME_MARK, "{item}: {shown} of {pieces} by its mark") \
	W(OUTCOME_SHOWN, "{item}: {shown} of {pieces} shown") \
	W(OUTCOME_NOT, "{item}: {shown} of {pieces}, NOT ALL ACCOUNTED FOR") \
	W(OUTCOME_EXTRA, "{item}: {n} extra") \
	W(OUTCOME_BARE, "{digit}: {minutes}, seen bare at {time}") \
	W(OUTCOME_BARE_UNTIMED, "{digit}: {minutes}, seen bare") \
	W(OUTCOME_NOT_BARE, "{digit}: {minutes}, NOT SEEN BARE")

/* What is missing, where it may be, and what to do. */
#define SLIP_WORDS_AMISS(W) \
	W(ROW_NOT_FOUND, "Not found") \
	W(ROW_IN_PIECES, "In pieces") \
	W(ROW_EXTRA, "Extra") \
	W(ROW_OPEN, "Not shown") \
	W(ROW_MAY_BE_ON, "May be on") \
	W(ROW_WAS_ON, "Was on") \
	W(ROW_NOW, "Now") \
	W(ROW_ON_NOW, "ON now") \
	W(ROW_NOT_BARE, "Not bare") \
	W(ROW_WHY, "Why") \
	W(ROW_FOUND, "Found") \
	W(ROW_CORRECTED, "Corrected") \
	W(COUNTED, "{n} {item}") \
	W(OF_SHOWN, "{shown} of {pieces} shown") \
	W(NO_DIGIT_ENTERED, "no digit was entered for it") \
	W(THE_DIGIT, "the {digit}") \
	W(OR, "{list} or {last}") \
	W(AND, "{list} and {last}") \
	W(ON_SINCE, "{digit}, on since {on}") \
	W(NOT_SEEN, "{digits}: not seen bare after the final count") \
	W(DO_LOOK, "No dressing yet. Look at and feel {digits} now. Tell the surgeon.") \
	W(DO_LOOK_UNDER, "Take the dressing down. Look at and feel {digits} now. Tell the surgeon.") \
	W(DO_LOOK_END, "Take the dressing down. Look at and feel {digits} now. Call the surgeon.") \
	W(DO_STEP, "{step}. Tell the surgeon.") \
	W(DO_STEP_END, "Not done yet: {step}. Call the surgeon.") \
	W(DO_DECIDE, "Every step of the search is answered. The surgeon decides.") \
	W(DO_TELL_ALL, "It may still be in or on the patient. Call the surgeon, tell the ward.") \
	W(DO_OFF, "A tourniquet is on {digits}. Call the surgeon now, tell the ward.") \
	W(DO_BARE, "Take the dressing down. Look at {digits} now.") \
	W(DO_LOOK_FOUND, "Look at this patient's {digits} now: take the dressing down. Tell the surgeon.") \
	W(DO_TELL_FOUND, "Tell the surgeon now: look at this patient's digits.") \
	W(DO_COUNT, "Counted by hand: look at the paper sheet. Look at each digit that was operated on.") \
	W(BOTH_DIGITS, "both digits") \
	W(EACH_DIGIT, "each of the {n} digits") \
	W(TWO_DIGITS, "two digits") \
	W(N_DIGITS, "{n} digits") \
	W(ANY_DIGIT, "each digit that was operated on") \
	W(DIGITS_OPERATED, "digits that were operated on") \
	W(AFTER_DISCREPANCY, "After a discrepancy at {time}, {what}.") \
	W(AFTER_DISCREPANCY_FOUND, "After a discrepancy at {time}, {what}; {found}.") \
	W(WAS_MISSING, "not found: {n} {item}") \
	W(WAS_IN_PIECES, "pieces missing: {item}") \
	W(WAS_EXTRA, "extra: {n} {item}") \
	W(THEN_FOUND, "found {time} ({where})") \
	W(THEN_SHOWN, "shown {time}") \
	W(THEN_FOUND_ITEM, "found {time}: {item} ({where})") \
	W(THEN_SHOWN_ITEM, "shown {time}: {item}") \
	W(THEN_CLOSED, "closed {time}") \
	W(MAY_BE_ON, "{what}; may be on {digits}") \
	W(NO_DISCREPANCY, "nothing is missing that was answered for") \
	W(TIMED_ON, "{digit} ({minutes}, on since {on})") \
	W(CORRECTED_AT, "entered {time}") \
	W(NOTHING_MISSING, "nothing that was counted in is missing") \
	W(SEARCH_OPEN, "Search: tick if the station is silent") \
	W(SEARCH_CLOSED, "Search, {from} to {to}") \
	W(SEARCH_ENDED, "Search from {from}") \
	W(STEP_DONE, "done {time}") \
	W(STEP_NOT_DONE, "not done {time}, because") \
	W(STEP_NOT_DONE_WHY, "not done {time}, because: {why}") \
	W(STEP_FOUND, "found here {time}") \
	W(INCIDENT, "incident number") \
	W(INCIDENT_OWED, "incident number, owed") \
	W(INCIDENT_IS, "incident number {number}") \
	W(ELSEWHERE, "Everything else stands on {slips}, and is not repeated here.") \
	W(SLIP_DISCREPANCY, "slip {slip} (discrepancy, {time})") \
	W(SLIP_ENDED, "slip {slip} ({outcome}, {time})") \
	W(SLIP_ADDENDUM, "slip {slip} (addendum, {time})") \
	W(END_RECONCILED, "reconciled") \
	W(END_UNRESOLVED, "ended unresolved") \
	W(END_CANCELLED, "cancelled")

/* 'label  what is said', one row for each subject. */
#define SLIP_WORDS_ROWS(W) \
	W(ROW_ON_DIGIT, "On digit") \
	W(ROW_REMINDERS, "Reminders") \
	W(ROW_COUNTS, "Counts") \
	W(ROW_SIGN_OUT, "Sign-out") \
	W(ROW_PEOPLE, "People") \
	W(ROW_OWED, "Owed") \
	W(ROW_STILL_OWED, "STILL OWED") \
	W(ROW_DISCREPANCY, "Discrepancy") \
	W(ROW_SEARCH, "Search") \
	W(ROW_ENTERED, "Entered") \
	W(ROW_LATE, "Late") \
	W(ROW_TYPED, "Typed") \
	W(ROW_OVERRIDDEN, "Overridden") \
	W(ROW_CLOCK, "Clock") \
	W(ROW_NOTES, "Notes") \
	W(NO_COUNT, "no count was agreed") \
	W(COUNT_INITIAL, "initial {time}") \
	W(COUNT_FINAL, "final {time}") \
	W(COUNT_HANDOVER, "handover {time}") \
	W(COUNT_ADDED, "added {time}") \
	W(AGREED, "{counts}: agreed aloud by {field} and {circulating}, recorded by {person}") \
	W(AGREED_SINGLE, "{counts}: single-person count by {person}") \
	W(WITHOUT_SIGHT, "{text}; without full sight of {digits}") \
	W(ALL_POINTS, "all {n} points yes, {person}, {time}") \
	W(SOME_POINTS, "{n} of {all} points yes, {person}, {time}") \
	W(POINT_NO, "NO: {text}") \
	W(WITNESSED, "{person}, witness {other}") \
	W(PERSON_FROM_TO, "{place} {person} {from} to {to}") \
	W(PERSON_FROM, "{place} {person} from {from}") \
	W(OPERATOR_ALONE, "operator, alone") \
	W(NOBODY, "nobody") \
	W(OWED, "{time} {what}") \
	W(OWED_DIGIT, "{time} {digit}: {what}") \
	W(OWED_PAID, "{owed}; {how}, {paid}") \
	W(OWED_PAID_BY, "{owed}; {how}, {paid}, {person}") \
	W(PAID_BY, "paid by, when")

/* One entry that was late, typed, overridden or corrected, or was taken back. */
#define SLIP_WORDS_ENTRIES(W) \
	W(ENTRY, "{time} {text}") \
	W(ALL_TYPED, "All {n} entries of this case were typed, {from} to {to}.") \
	W(ALL_LATE, "All {n} entries of this case were entered late, {from} to {to}.") \
	W(ALL_FROM_PAPER, "All {n} entries come from paper sheet {sheet}, where the times of this case stand; those on this slip, {from} to {to}, are of the entry.") \
	W(TAKEN_BACK, "taken back: {text}") \
	W(DID_NOT_SCAN_OUT, "{person} did not scan out") \
	W(NEVER_WENT_ON, "{digit}: no tourniquet had gone on") \
	W(WAS_STILL_ON, "{digit}: OFF had been scanned, and it was still on") \
	W(ON_EARLIER, "{digit}: on was {n} min earlier than scanned") \
	W(OFF_EARLIER, "{digit}: off was {n} min earlier than scanned") \
	W(MOVED, "entered for the {digit}, was the {other}; the time is kept") \
	W(STRUCK_ITEM, "struck as a misread: {item}") \
	W(E_OPENED, "case opened") \
	W(E_JOINED, "{person}: {place}") \
	W(E_LEFT, "{person} left") \
	W(E_ITEM_IN, "counted in: {item}") \
	W(E_ITEM_LISTED, "listed: {item}") \
	W(E_ITEM_OFF, "off: {item}") \
	W(E_SHOWN, "shown: {item}") \
	W(E_MARK_READ, "mark read: {item}") \
	W(E_NOT_SHOWN, "not there: {item}") \
	W(E_RETURNED, "returned unopened: {item}") \
	W(E_ISOLATED, "isolated: {item}") \
	W(E_DROPPED, "dropped: {item}") \
	W(E_MORE, "offcuts counted in: {item}") \
	W(E_EXTRA, "extra: {item}") \
	W(E_FORCEPS_ON, "forceps on: {item}") \
	W(E_FORCEPS_MOVED, "forceps moved: {item}") \
	W(E_AGAIN, "counted again: {item}") \
	W(E_MARKED, "{digit} marked") \
	W(E_MAYBE_ON, "{digit}: perhaps on") \
	W(E_ON, "tourniquet on, {digit}") \
	W(E_NOT_ON, "not on, {digit}") \
	W(E_OFF, "tourniquet off, {digit}") \
	W(E_BARE, "{digit} seen bare") \
	W(E_SEEN_ON, "{digit}: tourniquet seen on it") \
	W(E_SIZE, "size stated: {n} mm") \
	W(E_WHO_LOOKED, "who looked: {also}") \
	W(E_COUNT_BEGUN, "count begun") \
	W(E_AGREED_INITIAL, "initial count agreed") \
	W(E_AGREED_FINAL, "final count agreed") \
	W(E_AGREED_HANDOVER, "handover count agreed") \
	W(E_AGREED_ADDED, "added item agreed") \
	W(E_STEP, "search: {step}") \
	W(E_STEP_WHY, "why it was not done: {why}") \
	W(E_PAID, "settled: {what}") \
	W(E_POINT, "sign-out point {n}") \
	W(E_SIGNED, "sign-out") \
	W(E_TOLD, "reminder told, {digit}") \
	W(E_DRESSING, "dressing on before the look") \
	W(E_DRESSING_DOWN, "dressing taken down") \
	W(E_SUSPENDED, "suspended") \
	W(E_RESUMED, "went on") \
	W(E_CANCELLED, "cancelled") \
	W(E_PATIENT_LEFT, "patient left") \
	W(E_AWAKE, "patient awake") \
	W(E_ENDED, "case ended")

#define SLIP_WORDS_NOTES(W) \
	W(NOTE_ISOLATED, "Wrong number in its pack, isolated, not in the count: {item}. Tell stores.") \
	W(NOTE_SUSPENDED, "Suspended at {time}; clocks and reminders went on.") \
	W(NOTE_RESUMED, "Went on at {time}.") \
	W(NOTE_CANCELLED, "Cancelled at {time}; a pack had been opened, so a count was owed.") \
	W(NOTE_LEFT, "The patient left the room at {time}.") \
	W(NOTE_DRESSING, "At {time} a dressing was on before the look at the bare digit.") \
	W(NOTE_DRESSING_DOWN, "The dressing came down for the look at {time}.") \
	W(NOTE_CLOCK_WRONG, "The wall clock was wrong, and said {time}: times of day from here on cannot be trusted.") \
	W(NOTE_CLOCK_RIGHT, "The wall clock was right again at {time}.") \
	W(NOTE_NOT_FOLLOWED, "EVENT {seq} COULD NOT BE FOLLOWED: what it changed is not on this slip. Count by hand.") \
	W(NOTE_LEFT_OUT, "{n} further entries of this case are in the record alone: they found no place on this paper.") \
	W(CLOCK_GAP, "The station had no power for a time while a tourniquet was on the {digit}: its minutes are at least what is printed.") \
	W(CLOCK_BACK, "The wall clock was set back while a tourniquet was on the {digit}: when it went on and came off cannot be trusted, its minutes can.")

/* What the paper itself says, whatever it is filled with. */
#define SLIP_WORDS_PAPER(W) \
	W(P_SLIP, "Slip {slip}") \
	W(P_STATION, "station {n}") \
	W(P_COPY, "COPY {n}") \
	W(P_PAGE, "page {n} of {all}") \
	W(P_GOES_ON, "goes on: page {n} of {all}") \
	W(P_PATIENT, "Patient's label") \
	W(P_NUMBER, "no.") \
	W(P_ITEM, "item, and what tells it apart") \
	W(P_ITEM_EVIDENCE, "item, evidence") \
	W(P_IN, "counted\nin") \
	W(P_OUT, "accounted\nfor") \
	W(P_EVIDENCE, "evidence") \
	W(P_SKIN_BEFORE, "skin before") \
	W(P_SKIN_AFTER, "skin after") \
	W(P_COLOUR, "colour back at") \
	W(P_BY, "by") \
	W(P_WRITE, "What was done, to be written by whoever looks") \
	W(P_LOOKED_BY, "{digit}: looked at by") \
	W(P_LOOKED_DIGITS, "digits looked at by") \
	W(P_AT, "at") \
	W(P_FEELING, "colour, warmth, feeling") \
	W(P_SURGEON_TOLD, "surgeon told") \
	W(P_WARD_TOLD, "ward told") \
	W(P_PATIENT_TOLD, "patient told") \
	W(P_CONTINUED, "{section}, continued") \
	W(P_CAUTION, "A count that agrees can still be wrong: in any doubt take the dressing down and look. This paper supports the count that people make and never replaces it; local policy and the licensed practitioner decide. Names are as badges claim.") \
	W(P_SCAN, "Last scan, with the paper in your hand") \
	W(P_SCAN_NOW, "Scan this, paper in hand") \
	W(P_PROOF, "Proof against forgery: bandtally audit slip") \
	W(P_UNSIGNED, "This paper carries no signed summary.") \
	W(P_WRITTEN, "{date} {time}") \
	W(P_VERSION, "v{version}") \
	W(P_CUT, "cut here")
/* clang-format on */

enum slip_word {
#define W(name, text) SW_##name,
	SLIP_WORDS(W)
#undef W
	    SW_KINDS
};

/* `values`: names and texts in turn, then NULL. Cut behind a whole letter where it is too long for `out`. */
void slip_part(char *out, size_t size, enum slip_word word, const char *const values[]);

/* The same as a sentence: it begins with a capital where it begins with a letter from a to z. */
void slip_sentence(char *out, size_t size, enum slip_word word, const char *const values[]);

/* The text of one that names no value. */
const char *slip_text(enum slip_word word);

/* Behind what stands in `text`, with `between` where that is not empty; nothing of ""; cut behind a whole letter. */
void slip_join(char *text, size_t size, const char *between, const char *more);

/* The number with its seven digits. */
#define SLIP_NUMBER_TEXT 12
void slip_number(long long number, char out[SLIP_NUMBER_TEXT]);

#define SLIP_PART(out, word, ...)                                                                            \
	slip_part(out, sizeof out, SW_##word, (const char *const[]){__VA_ARGS__, NULL})
#define SLIP_SAY(out, word, ...)                                                                             \
	slip_sentence(out, sizeof out, SW_##word, (const char *const[]){__VA_ARGS__, NULL})

#endif
