/* The sentences of a slip: X(NAME, "text"), each whole, so that it can be translated; {name} is a value. A SLIP_SAY() gives the
 * values that its text names.
 */
#ifndef BANDTALLY_WORDS_SLIP_WORDS_H
#define BANDTALLY_WORDS_SLIP_WORDS_H

#include <stddef.h>

/* clang-format off */
#define SLIP_WORDS(X) \
	SLIP_WORDS_HEAD(X) \
	SLIP_WORDS_DIGITS(X) \
	SLIP_WORDS_ITEMS(X) \
	SLIP_WORDS_AMISS(X) \
	SLIP_WORDS_ROWS(X) \
	SLIP_WORDS_ENTRIES(X) \
	SLIP_WORDS_NOTES(X) \
	SLIP_WORDS_PAPER(X)

/* What stands above everything else, and beside the patient's label. */
#define SLIP_WORDS_HEAD(X) \
	X(RECONCILED, "Reconciled.") \
	X(CANCELLED, "Case cancelled.") \
	X(CANCELLED_WHY, "Case cancelled: {why}.") \
	X(NOT_ENDED, "Not ended yet.") \
	X(DISCREPANCY, "DISCREPANCY") \
	X(UNRESOLVED, "UNRESOLVED") \
	X(FOUND_LATER, "FOUND LATER") \
	X(CASE_OPEN, "case open") \
	X(ADDS_TO, "addendum to slip {slip}, case {case}") \
	X(ADDS_TO_CASE, "addendum to case {case}") \
	X(NOTHING_IN, "Nothing was counted in.") \
	X(CASE, "case {case}") \
	X(LABELLED, "label {label}") \
	X(DAY, "{day} {month} {year}") \
	X(HOURS, "{from} to {to}") \
	X(HOURS_TO_DAY, "{from} to {to}, {day}") \
	X(OPEN_AT, "{from}, open at {to}") \
	X(MONTH_1, "Jan") X(MONTH_2, "Feb") X(MONTH_3, "Mar") X(MONTH_4, "Apr") X(MONTH_5, "May") X(MONTH_6, "Jun") \
	X(MONTH_7, "Jul") X(MONTH_8, "Aug") X(MONTH_9, "Sep") X(MONTH_10, "Oct") X(MONTH_11, "Nov") X(MONTH_12, "Dec") \
	X(SINGLE, "Single-person count: no second person agreed it aloud. Timed from gloving.") \
	X(SINGLE_NO_DIGIT, "Single-person count: no second person agreed it aloud.")

#define SLIP_WORDS_DIGITS(X) \
	X(DIGIT, "{digit}: {minutes}") \
	X(DIGIT_ON, "{digit}: STILL ON, {minutes}") \
	X(DIGIT_ON_BRIEF, "{digit}: on for {minutes}") \
	X(MINUTES, "{n} min") \
	X(AT_LEAST, "at least {n} min") \
	X(TIMES, "{on} to {off}") \
	X(TIMES_SET_BACK, "from {on} (the wall clock was set back)") \
	X(TIMES_WENT_BACK, "{on} to {off} (the clocks went back)") \
	X(SINCE, "on since {on}") \
	X(STRETCH, "{times} ({minutes})") \
	X(STRETCHES, "{list}; the longest {longest}") \
	X(SEEN_BARE, "{times}, seen bare at {time} by {person}") \
	X(SEEN_BARE_ALSO, "{times}, seen bare at {time} by {person}; {also}") \
	X(NOT_SEEN_BARE, "{times}, NOT SEEN BARE after the final count") \
	X(NOT_YET_BARE, "{times}, not yet seen bare") \
	X(PATIENT_LOOKED, "the patient looked as well") \
	X(CARER_LOOKED, "a carer looked as well") \
	X(COLLEAGUE_LOOKED, "a colleague looked as well") \
	X(NOBODY_LOOKED, "nobody else looked") \
	X(WITH_FORCEPS, "{digit}: {tourniquet}, with {forceps}") \
	X(WITHOUT_FORCEPS, "{digit}: {tourniquet}, no forceps on it") \
	X(NOT_SAID, "{digit}: not said whether a tourniquet was on") \
	X(REMINDER, "{minutes} min at {time}") \
	X(REMINDERS_TOLD, "{reminders}: told by {person}") \
	X(REMINDERS_NOT, "{reminders}: not answered") \
	X(OF_DIGIT, "{digit}: {text}")

#define SLIP_WORDS_ITEMS(X) \
	X(ITEM_NUMBER, "no. {number}") \
	X(ITEM_NUMBERS, "nos. {numbers}") \
	X(ITEM_MARK, "mark {number}") \
	X(NO_IDENTITY, "no identity of its own") \
	X(LOT, "lot {lot}") \
	X(EXPIRY, "expiry {date}") \
	X(MARK_READ, "its mark read") \
	X(SHOWN_BOTH, "shown to both") \
	X(SHOWN_ONE, "shown, one person") \
	X(INTACT, "intact") \
	X(CUT_COMPLETE, "cut and complete") \
	X(PIECES_MISSING, "pieces missing") \
	X(EVIDENCE_OF, "{evidence}, {condition}") \
	X(EVIDENCE_SOME, "{n} {evidence}") \
	X(NOT_COUNTED_YET, "not counted yet") \
	X(OFF_NOT_COUNTED, "off, not yet accounted for") \
	X(ON_DIGIT, "on a digit") \
	X(RETURNED, "returned unopened") \
	X(ISOLATED, "isolated: wrong number") \
	X(STRUCK, "struck: a misread") \
	X(NOT_FOUND, "{n} NOT FOUND") \
	X(NOT_ACCOUNTED, "{n} NOT ACCOUNTED FOR") \
	X(IN_PIECES, "PIECES MISSING") \
	X(EXTRA, "EXTRA ITEM") \
	X(ADDED, "added {time}") \
	X(DROPPED, "dropped") \
	X(IMPROVISED, "IMPROVISED, no tourniquet of the catalogue") \
	X(UNLISTED, "not listed in the catalogue") \
	X(FOUND_AT, "found {time}: {where}") \
	X(ALL_ITEMS, "all items") \
	X(NOTHING_EXTRA, "nothing extra") \
	X(EXTRAS, "{n} extra") \
	X(OUTCOME_INTACT, "{item}: {shown} of {pieces} shown intact") \
	X(OUTCOME_CUT, "{item}: {shown} of {pieces} shown cut and complete") \
	X(OUTCOME_MARK, "{item}: {shown} of {pieces} by its mark") \
	X(OUTCOME_SHOWN, "{item}: {shown} of {pieces} shown") \
	X(OUTCOME_NOT, "{item}: {shown} of {pieces}, NOT ALL ACCOUNTED FOR") \
	X(OUTCOME_EXTRA, "{item}: {n} extra") \
	X(OUTCOME_BARE, "{digit}: {minutes}, seen bare at {time}") \
	X(OUTCOME_NOT_BARE, "{digit}: {minutes}, NOT SEEN BARE")

/* What is missing, where it may be, and what to do. */
#define SLIP_WORDS_AMISS(X) \
	X(ROW_NOT_FOUND, "Not found") \
	X(ROW_IN_PIECES, "In pieces") \
	X(ROW_EXTRA, "Extra") \
	X(ROW_OPEN, "Not shown") \
	X(ROW_MAY_BE_ON, "May be on") \
	X(ROW_WAS_ON, "Was on") \
	X(ROW_NOW, "Now") \
	X(ROW_ON_NOW, "ON now") \
	X(ROW_NOT_BARE, "Not bare") \
	X(ROW_WHY, "Why") \
	X(ROW_FOUND, "Found") \
	X(ROW_CORRECTED, "Corrected") \
	X(COUNTED, "{n} {item}") \
	X(OF_SHOWN, "{shown} of {pieces} shown") \
	X(NO_DIGIT_ENTERED, "no digit was entered for it") \
	X(THE_DIGIT, "the {digit}") \
	X(OR, "{list} or {last}") \
	X(AND, "{list} and {last}") \
	X(ON_SINCE, "{digit}, on since {on}") \
	X(NOT_SEEN, "{digits}: not seen bare after the final count") \
	X(DO_LOOK, "No dressing yet. Look at and feel {digits} now. Tell the surgeon.") \
	X(DO_LOOK_UNDER, "Take the dressing down. Look at and feel {digits} now. Tell the surgeon.") \
	X(DO_LOOK_END, "Take the dressing down. Look at and feel {digits} now. Call the surgeon.") \
	X(DO_STEP, "{step}. Tell the surgeon.") \
	X(DO_STEP_END, "Not done yet: {step}. Call the surgeon.") \
	X(DO_DECIDE, "Every step of the search is answered. The surgeon decides.") \
	X(DO_TELL_ALL, "It may still be in or on the patient. Call the surgeon, tell the ward.") \
	X(DO_OFF, "A tourniquet is on {digits}. Call the surgeon now, tell the ward.") \
	X(DO_BARE, "Take the dressing down. Look at the bare {digits} now.") \
	X(DO_LOOK_FOUND, "Look at this patient's {digits} now: take the dressing down. Tell the surgeon.") \
	X(DO_TELL_FOUND, "Tell the surgeon now: look at this patient's digits.") \
	X(DO_COUNT, "Counted by hand: look at the paper sheet. Look at each digit that was operated on.") \
	X(BOTH_DIGITS, "both digits") \
	X(EACH_DIGIT, "each of the {n} digits") \
	X(TWO_DIGITS, "two digits") \
	X(N_DIGITS, "{n} digits") \
	X(ANY_DIGIT, "each digit that was operated on") \
	X(DIGITS_OPERATED, "digits that were operated on") \
	X(AFTER_DISCREPANCY, "After a discrepancy at {time}, {what}.") \
	X(AFTER_DISCREPANCY_FOUND, "After a discrepancy at {time}, {what}; {found}.") \
	X(WAS_MISSING, "not found: {n} {item}") \
	X(WAS_IN_PIECES, "pieces missing: {item}") \
	X(WAS_EXTRA, "extra: {n} {item}") \
	X(THEN_FOUND, "found {time} ({where})") \
	X(THEN_SHOWN, "shown {time}") \
	X(THEN_FOUND_ITEM, "found {time}: {item} ({where})") \
	X(THEN_SHOWN_ITEM, "shown {time}: {item}") \
	X(THEN_CLOSED, "closed {time}") \
	X(MAY_BE_ON, "{what}; may be on {digits}") \
	X(NO_DISCREPANCY, "nothing is missing that was answered for") \
	X(TIMED_ON, "{digit} ({minutes}, on since {on})") \
	X(CORRECTED_AT, "entered {time}") \
	X(NOTHING_MISSING, "nothing that was counted in is missing") \
	X(SEARCH_OPEN, "Search: tick if the station is silent") \
	X(SEARCH_CLOSED, "Search, {from} to {to}") \
	X(SEARCH_ENDED, "Search from {from}") \
	X(STEP_DONE, "done {time}") \
	X(STEP_NOT_DONE, "not done {time}, because") \
	X(STEP_NOT_DONE_WHY, "not done {time}, because: {why}") \
	X(STEP_FOUND, "found here {time}") \
	X(INCIDENT, "incident number") \
	X(INCIDENT_OWED, "incident number, owed") \
	X(INCIDENT_IS, "incident number {number}") \
	X(ELSEWHERE, "Everything else stands on {slips}, and is not repeated here.") \
	X(SLIP_DISCREPANCY, "slip {slip} (discrepancy, {time})") \
	X(SLIP_ENDED, "slip {slip} ({outcome}, {time})") \
	X(SLIP_ADDENDUM, "slip {slip} (addendum, {time})") \
	X(END_RECONCILED, "reconciled") \
	X(END_UNRESOLVED, "ended unresolved") \
	X(END_CANCELLED, "cancelled")

/* 'label  what is said', one row for each subject. */
#define SLIP_WORDS_ROWS(X) \
	X(ROW_ON_DIGIT, "On digit") \
	X(ROW_REMINDERS, "Reminders") \
	X(ROW_COUNTS, "Counts") \
	X(ROW_SIGN_OUT, "Sign-out") \
	X(ROW_PEOPLE, "People") \
	X(ROW_OWED, "Owed") \
	X(ROW_STILL_OWED, "STILL OWED") \
	X(ROW_DISCREPANCY, "Discrepancy") \
	X(ROW_SEARCH, "Search") \
	X(ROW_ENTERED, "Entered") \
	X(ROW_LATE, "Late") \
	X(ROW_TYPED, "Typed") \
	X(ROW_OVERRIDDEN, "Overridden") \
	X(ROW_CLOCK, "Clock") \
	X(ROW_NOTES, "Notes") \
	X(NO_COUNT, "no count was agreed") \
	X(COUNT_INITIAL, "initial {time}") \
	X(COUNT_FINAL, "final {time}") \
	X(COUNT_HANDOVER, "handover {time}") \
	X(COUNT_ADDED, "added {time}") \
	X(AGREED, "{counts}: agreed aloud by {field} and {circulating}, recorded by {person}") \
	X(AGREED_SINGLE, "{counts}: single-person count by {person}") \
	X(WITHOUT_SIGHT, "{text}; without full sight of {digits}") \
	X(ALL_POINTS, "all {n} points yes, {person}, {time}") \
	X(SOME_POINTS, "{n} of {all} points yes, {person}, {time}") \
	X(POINT_NO, "NO: {text}") \
	X(WITNESSED, "{person}, witness {other}") \
	X(PERSON_FROM_TO, "{place} {person} {from} to {to}") \
	X(PERSON_FROM, "{place} {person} from {from}") \
	X(OPERATOR_ALONE, "operator, alone") \
	X(NOBODY, "nobody") \
	X(OWED, "{time} {what}") \
	X(OWED_DIGIT, "{time} {digit}: {what}") \
	X(OWED_PAID, "{owed}; {how}, {paid}") \
	X(OWED_PAID_BY, "{owed}; {how}, {paid}, {person}") \
	X(PAID_BY, "paid by, when")

/* One entry that was late, typed, overridden or corrected, or was taken back. */
#define SLIP_WORDS_ENTRIES(X) \
	X(ENTRY, "{time} {text}") \
	X(ALL_TYPED, "All {n} entries of this case were typed, {from} to {to}.") \
	X(ALL_LATE, "All {n} entries of this case were entered late, {from} to {to}.") \
	X(TAKEN_BACK, "taken back: {text}") \
	X(DID_NOT_SCAN_OUT, "{person} did not scan out") \
	X(NEVER_WENT_ON, "{digit}: no tourniquet had gone on") \
	X(WAS_STILL_ON, "{digit}: OFF had been scanned, and it was still on") \
	X(ON_EARLIER, "{digit}: on was {n} min earlier than scanned") \
	X(OFF_EARLIER, "{digit}: off was {n} min earlier than scanned") \
	X(MOVED, "entered for the {digit}, was the {other}; the time is kept") \
	X(STRUCK_ITEM, "struck as a misread: {item}") \
	X(E_OPENED, "case opened") \
	X(E_JOINED, "{person}: {place}") \
	X(E_LEFT, "{person} left") \
	X(E_ITEM_IN, "counted in: {item}") \
	X(E_ITEM_LISTED, "listed: {item}") \
	X(E_ITEM_OFF, "off: {item}") \
	X(E_SHOWN, "shown: {item}") \
	X(E_MARK_READ, "mark read: {item}") \
	X(E_NOT_SHOWN, "not there: {item}") \
	X(E_RETURNED, "returned unopened: {item}") \
	X(E_ISOLATED, "isolated: {item}") \
	X(E_DROPPED, "dropped: {item}") \
	X(E_MORE, "offcuts counted in: {item}") \
	X(E_EXTRA, "extra: {item}") \
	X(E_FORCEPS_ON, "forceps on: {item}") \
	X(E_FORCEPS_MOVED, "forceps moved: {item}") \
	X(E_AGAIN, "counted again: {item}") \
	X(E_MARKED, "{digit} marked") \
	X(E_MAYBE_ON, "{digit}: perhaps on") \
	X(E_ON, "tourniquet on, {digit}") \
	X(E_NOT_ON, "not on, {digit}") \
	X(E_OFF, "tourniquet off, {digit}") \
	X(E_BARE, "{digit} seen bare") \
	X(E_SEEN_ON, "{digit}: tourniquet seen on it") \
	X(E_SIZE, "size stated: {n} mm") \
	X(E_WHO_LOOKED, "who looked: {also}") \
	X(E_COUNT_BEGUN, "count begun") \
	X(E_AGREED_INITIAL, "initial count agreed") \
	X(E_AGREED_FINAL, "final count agreed") \
	X(E_AGREED_HANDOVER, "handover count agreed") \
	X(E_AGREED_ADDED, "added item agreed") \
	X(E_STEP, "search: {step}") \
	X(E_STEP_WHY, "why it was not done: {why}") \
	X(E_PAID, "settled: {what}") \
	X(E_POINT, "sign-out point {n}") \
	X(E_SIGNED, "sign-out") \
	X(E_TOLD, "reminder told, {digit}") \
	X(E_DRESSING, "dressing on before the look") \
	X(E_DRESSING_DOWN, "dressing taken down") \
	X(E_SUSPENDED, "suspended") \
	X(E_RESUMED, "went on") \
	X(E_CANCELLED, "cancelled") \
	X(E_PATIENT_LEFT, "patient left") \
	X(E_AWAKE, "patient awake") \
	X(E_ENDED, "case ended")

#define SLIP_WORDS_NOTES(X) \
	X(NOTE_ISOLATED, "Wrong number in its pack, isolated, not in the count: {item}. Tell stores.") \
	X(NOTE_SUSPENDED, "Suspended at {time}; clocks and reminders went on.") \
	X(NOTE_RESUMED, "Went on at {time}.") \
	X(NOTE_CANCELLED, "Cancelled at {time}; a pack had been opened, so a count was owed.") \
	X(NOTE_LEFT, "The patient left the room at {time}.") \
	X(NOTE_DRESSING, "At {time} a dressing was on before the look at the bare digit.") \
	X(NOTE_DRESSING_DOWN, "The dressing came down for the look at {time}.") \
	X(NOTE_CLOCK_WRONG, "The wall clock was wrong, and said {time}: times of day from here on cannot be trusted.") \
	X(NOTE_CLOCK_RIGHT, "The wall clock was right again at {time}.") \
	X(NOTE_NOT_FOLLOWED, "EVENT {seq} COULD NOT BE FOLLOWED: what it changed is not on this slip. Count by hand.") \
	X(NOTE_LEFT_OUT, "{n} further entries of this case are in the record alone: they found no place on this paper.") \
	X(CLOCK_GAP, "The station had no power for a time while a tourniquet was on the {digit}: its minutes are at least what is printed.") \
	X(CLOCK_BACK, "The wall clock was set back while a tourniquet was on the {digit}: when it went on and came off cannot be trusted, its minutes can.")

/* What the paper itself says, whatever it is filled with. */
#define SLIP_WORDS_PAPER(X) \
	X(P_SLIP, "Slip {slip}") \
	X(P_STATION, "station {n}") \
	X(P_COPY, "COPY {n}") \
	X(P_PAGE, "page {n} of {all}") \
	X(P_GOES_ON, "goes on: page {n} of {all}") \
	X(P_PATIENT, "Patient's label") \
	X(P_NUMBER, "no.") \
	X(P_ITEM, "item, and what tells it apart") \
	X(P_ITEM_EVIDENCE, "item, evidence") \
	X(P_IN, "counted\nin") \
	X(P_OUT, "accounted\nfor") \
	X(P_EVIDENCE, "evidence") \
	X(P_SKIN_BEFORE, "skin before") \
	X(P_SKIN_AFTER, "skin after") \
	X(P_COLOUR, "colour back at") \
	X(P_BY, "by") \
	X(P_WRITE, "What was done, to be written by whoever looks") \
	X(P_LOOKED_BY, "{digit}: looked at by") \
	X(P_LOOKED_DIGITS, "digits looked at by") \
	X(P_AT, "at") \
	X(P_FEELING, "colour, warmth, feeling") \
	X(P_SURGEON_TOLD, "surgeon told") \
	X(P_WARD_TOLD, "ward told") \
	X(P_PATIENT_TOLD, "patient told") \
	X(P_CONTINUED, "{section}, continued") \
	X(P_CAUTION, "A count that agrees can still be wrong: in any doubt take the dressing down and look. This paper supports the count that people make and never replaces it; local policy and the licensed practitioner decide. Names are as badges claim.") \
	X(P_SCAN, "Last scan, with the paper in your hand") \
	X(P_SCAN_NOW, "Scan this, paper in hand") \
	X(P_PROOF, "Proof against forgery: bandtally audit slip") \
	X(P_UNSIGNED, "This paper carries no signed summary.") \
	X(P_WRITTEN, "{date} {time}") \
	X(P_VERSION, "v{version}") \
	X(P_CUT, "cut here")
/* clang-format on */

enum slip_word {
#define X(name, text) SW_##name,
	SLIP_WORDS(X)
#undef X
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
