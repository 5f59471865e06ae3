/* The sentences: X(NAME, "name in the record", "in English"), and N(NAME, "name in the record", "of one", "of many") where
 * the value n decides between two forms.
 *
 * {name} is a value (values.h). Of a saying inside a sentence that is not given nothing is left, nor the space before it.
 * A name is never changed and never given to anything else, and no text names a value that older calls did not give: records
 * hold both (tests/kept/sayings.txt). How the text says it may be made better at any time.
 */
#ifndef BANDTALLY_WORDS_SAYINGS_H
#define BANDTALLY_WORDS_SAYINGS_H

#include "words/question-words.h"
#include "words/stock-words.h"

/* clang-format off */
#define SAYINGS(X, N) \
	SAYINGS_REFUSALS(X, N) \
	SAYINGS_PARTS(X, N) \
	SAYINGS_SCANNERS(X, N) \
	SAYINGS_NAMES(X, N) \
	SAYINGS_QUESTIONS(X, N) \
	SAYINGS_DEBTS(X, N) \
	SAYINGS_PLACES(X, N) \
	SAYINGS_STOCK(X, N) \
	SAYINGS_SIGNED(X, N)

/* What was scanned or typed is not entered: why, and what to do. */
#define SAYINGS_REFUSALS(X, N) \
	/* cases and cards */ \
	X(CASE_IS_OPEN, "case-is-open", \
	  "Case {case} is open in {room}: end it, or scan SUSPEND or CANCEL.") \
	X(ROOM_HAS_TWO_CASES, "room-has-two-cases", \
	  "Case {case} is open in {room}, case {other_case} is suspended there, and a room holds two: end one, or " \
	  "open the next patient's case in another room. SUSPEND changes over to case {other_case}.") \
	X(SUSPENDED_FITS_TWO, "suspended-fits-two", \
	  "Case {case} and case {other_case} are both suspended in {room}, and this fits both: scan SUSPEND to go on " \
	  "with case {case}, SUSPEND once more for case {other_case}; then this.") \
	X(PAPER_SHEET_ENTERED, "paper-sheet-entered", \
	  "Paper sheet {n} of {room} was entered already: scan the code of the sheet that is in your hand.") \
	X(NO_CASE_TO_SUSPEND, "no-case-to-suspend", "No case is open or suspended in {room}.") \
	X(SUSPENDED_THEN_CARD, "suspended-then-card", \
	  "Case {case} is suspended in {room}: to go on with it scan SUSPEND, then {card}.") \
	X(SUSPENDED_THEN_THIS, "suspended-then-this", \
	  "Case {case} is suspended in {room}: scan SUSPEND to go on with it, or NEW CASE; then this again.") \
	X(NO_CASE_IF_ON, "no-case-if-on", \
	  "No case is open in {room}: if it is on a digit, scan that digit card; else NEW CASE first.") \
	X(NO_CASE_NEW_FIRST, "no-case-new-first", "No case is open in {room}: scan NEW CASE first.") \
	X(NO_CASE_TO_ACT_ON, "no-case-to-act-on", \
	  "No case is open in {room}: {card} has nothing to act on.") \
	X(NO_CASE_THEN_THIS, "no-case-then-this", \
	  "No case is open in {room}: scan NEW CASE, then this again.") \
	X(STORED_NEED_A_CASE, "stored-need-a-case", \
	  "No case is open in {room}, and the stored scans need one: scan NEW CASE, then YES. NO throws them away.") \
	X(STORED_BEFORE_START, "stored-before-start", \
	  "{card} was stored before the station started again, and may have been entered meanwhile: if it was not, scan it now.") \
	X(CARD_OF_NO_USE, "card-of-no-use", "This card has no use here.") \
	X(CAMERA_BY_SCANNER, "camera-by-scanner", \
	  "SHOW CAMERA acts where a scanner of its room reads it: scan it there.") \
	X(CAMERA_NOT_IN_PRACTICE, "camera-not-in-practice", \
	  "The practice card shows no picture: SHOW CAMERA of the room's own cards does.") \
	X(CARD_ANSWERS_NOTHING, "card-answers-nothing", "Nothing is asked now that {card} would answer.") \
	X(CARD_OF_OTHER_ROOM, "card-of-other-room", \
	  "This is a card of {other_room}; this scanner works for {room}. Nothing was entered. In " \
	  "{room}: take that room's own card. In {other_room}: scan THIS ROOM of {other_room}, then this again.") \
	X(CODE_OF_NO_USE, "code-of-no-use", "This code has no use here.") \
	X(NO_TEXT_ASKED, "no-text-asked", \
	  "Nothing asks for text now. A barcode is typed whole, as it stands under the bars.") \
	X(NOTHING_TO_TAKE_BACK, "nothing-to-take-back", \
	  "Nothing can be taken back now. To move an entry to the right digit scan MISREAD.") \
	X(NOT_TAKEN_BACK_TOOK, "not-taken-back-took", \
	  "Not taken back: {item} left the sheet of case {case} in {room} for this one. If it is not here: " \
	  "scan MISREAD, then its code; then have it scanned in {room}.") \
	X(NOT_TAKEN_BACK_USED, "not-taken-back-used", \
	  "Not taken back: {item} left the sheet of case {case} in {room} for this one. If it is in {room}: have it counted in there with NO CODE.") \
	X(NOT_TAKEN_BACK_ENDED, "not-taken-back-ended", \
	  "Not taken back: {item} left the sheet of case {case} for this one, and that case has ended. If it " \
	  "is not here: scan MISREAD, then its code, and tell the surgeon of that case.") \
	X(NOT_TAKEN_BACK_GONE, "not-taken-back-gone", \
	  "Not taken back: an item has left this sheet for case {case} in {room} since. If it is here: scan its code; if not, go on.") \
	X(NOT_TAKEN_BACK_GONE_ENDED, "not-taken-back-gone-ended", \
	  "Not taken back: an item has left this sheet for case {case} since, which has ended. Go on with what is here.") \
	X(NOT_TAKEN_BACK_LEFT, "not-taken-back-left", \
	  "Not taken back: {item} has left this sheet. If it is here: scan its code, then it is counted in again.") \
	X(NOT_TAKEN_BACK_FOUND, "not-taken-back-found", \
	  "Not taken back: what was found stands for case {case}; look at that patient's digit all the same. If " \
	  "it comes from another case: scan FOUND, then that case's slip.") \
	X(NOT_TAKEN_BACK_AFTER, "not-taken-back-after", \
	  "No case is open in {room}, and what the patient of case {case} is owed stands until it is done. If " \
	  "something that was found comes from another case: scan FOUND, then that case's slip.") \
	X(ROOM_NOT_IN_SETTINGS, "room-not-in-settings", \
	  "Room {n} is not in station.ini: nothing was entered. Add the room, or use this site's cards.") \
	X(TOO_MANY_CASES, "too-many-cases", \
	  "Too many cases are open or suspended ({n}): end one. Count by hand on the paper sheet.") \
	X(SHEET_IS_FULL, "sheet-is-full", \
	  "The sheet is full: this was NOT entered. Write it on the paper sheet and count by hand.") \
	X(RECORD_NOT_ASKED, "record-not-asked", \
	  "The record could not be asked about this code: nothing was entered. Scan it again; if that does not help, count it by hand on the paper sheet.") \
	X(NOT_HELD, "not-held", "A stored scan was NOT held: {what}") \
	X(NOT_HELD_FOR, "not-held-for", "A stored scan was NOT held: {what}: {why}") \
	N(THROWN_AWAY, "thrown-away", "{n} stored scan was thrown away", "{n} stored scans were thrown away") \
	X(NOT_OUR_CODE, "not-our-code", \
	  "Not one of our codes: nothing of it was kept, nothing was entered.") \
	X(PATIENTS_CODE, "patients-code", \
	  "That is a patient's code: nothing of it was kept. Scan packs, instruments, cards and badges only.") \
	/* on and off */ \
	X(OFF_IN_OTHER_CASE, "off-in-other-case", \
	  "No tourniquet is on a digit in case {case}. Case {other_case}, suspended, has one on the " \
	  "{digit}: to go on with it end or suspend this case first.") \
	X(OFF_CHANGES_NOTHING, "off-changes-nothing", \
	  "No tourniquet is on a digit: OFF changes nothing. If one is on, scan its digit card.") \
	X(OFF_ENTERED_ALREADY, "off-entered-already", \
	  "OFF was entered for the {digit} already: NO if none went on again; YES if one did, then its digit card and OFF.") \
	X(OFF_BEFORE_ON, "off-before-on", \
	  "OFF was scanned at {time}, before the tourniquet on the {digit} went on: its clock runs on. If it is off, scan OFF now.") \
	X(LISTED_AS_UNLISTED, "listed-as-unlisted", \
	  "Entered already: the tourniquet on the {digit} is not listed. Say aloud what it is.") \
	X(NO_FORCEPS_IS_ON, "no-forceps-is-on", "No forceps is on a tourniquet now.") \
	X(FORCEPS_ON_SEVERAL, "forceps-on-several", \
	  "Forceps are on more than one digit. Scan the card of the digit that they left, then {card}; then NO if its tourniquet is still on.") \
	X(NOTHING_TIMED, "nothing-timed", \
	  "Nothing has been timed yet: scan the digit card or OFF first, then {card}.") \
	X(FIRST_WHETHER_OFF, "first-whether-off", \
	  "First say whether it is off the {digit}: OFF, then {card}; NO if it is still on.") \
	X(FIRST_WHICH_OFF, "first-which-off", \
	  "First scan the digit card of the one that is off, then {card}.") \
	X(FIRST_WHETHER_ON, "first-whether-on", \
	  "First say whether one is on the {digit}: YES or NO, then {card}.") \
	X(MORE_THAN_ONE_TIMED, "more-than-one-timed", \
	  "More than one tourniquet is on the {digit}, and its clock runs from the first: no number of minutes is taken for them.") \
	X(MINUTES_OF_NO_CLOCK, "minutes-of-no-clock", \
	  "{card} is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, {card}, then that scan again.") \
	X(MINUTES_OF_OTHER, "minutes-of-other", \
	  "{card} would move the {digit}, and another was spoken of last: no time was moved. If the {digit} is meant: its digit card, NO, then {card}.") \
	X(TIMED_NEITHER, "timed-neither", \
	  "What was entered last for the {digit} neither starts nor stops its clock: no number of minutes is taken for it.") \
	X(ON_LESS_THAN_A_MINUTE, "on-less-than-a-minute", \
	  "It was on the {digit} for less than a minute. If it went on earlier as well, write the times on the slip.") \
	X(ON_LESS_THAN_THAT, "on-less-than-that", \
	  "It was on the {digit} for {most} min: it cannot have come off {minutes} min earlier. Scan a smaller number.") \
	X(OFF_AFTER_IT_WAS_SAID, "off-after-it-was-said", \
	  "{most} min before OFF it was known to be still on the {digit}: it cannot have come off {minutes} min earlier. If that was wrong, write the time on the slip.") \
	X(OFF_AS_IT_WAS_SAID, "off-as-it-was-said", \
	  "Less than a minute before OFF it was known to be still on the {digit}: it cannot have come off {minutes} min earlier. If that was wrong, write the time on the slip.") \
	X(SECOND_CANNOT_MOVE, "second-cannot-move", \
	  "The clock of the {digit} runs by its own card. If no second tourniquet went on where it was entered: scan NO, then the card of that digit, then OFF.") \
	X(SECOND_STAYS, "second-stays", \
	  "Two tourniquets are entered on the {digit}. If the second never went on: scan NO, then the card of the {digit}, then OFF.") \
	X(ON_NONE_WAS_FREE, "on-none-was-free", \
	  "{minutes} min earlier each tourniquet on the sheet was on another digit. If a further one is on the {digit}: UNDO, {card}, then YES. " \
	  "If an OFF was scanned late: write the times on the slip.") \
	X(ON_AFTER_THE_LAST, "on-after-the-last", \
	  "The last one came off the {digit} {most} min before this one went on: it cannot have gone on " \
	  "{minutes} min earlier. Scan a smaller number; MISREAD if the last one never came off.") \
	X(UNDO_STOPS_NO_CLOCK, "undo-stops-no-clock", \
	  "The clock of the {digit} runs on: UNDO does not stop it. Wrong digit: scan MISREAD.") \
	X(YES_STOPS_NO_CLOCK, "yes-stops-no-clock", \
	  "YES does not stop the clock. If it is off, scan OFF.") \
	X(FIRST_SAY_WHETHER_ON, "first-say-whether-on", \
	  "First say whether a tourniquet is on the {digit}: scan its digit card, then YES or NO.") \
	X(TAKE_IT_OFF_FIRST, "take-it-off-first", "A tourniquet is on the {digit}: take it off first.") \
	X(TAKE_IT_OFF_AND_SCAN, "take-it-off-and-scan", \
	  "A tourniquet is on the {digit}: take it off first, scan its digit card and OFF.") \
	X(ITEM_ON_TAKE_OFF, "item-on-take-off", "{item} is on the {digit}: take it off first.") \
	X(CANNOT_MOVE_THERE, "cannot-move-there", \
	  "It cannot move to the {digit}: scan the card of the digit it is really on, or NO.") \
	X(ACCOUNTED_STAYS_ON, "accounted-stays-on", \
	  "The tourniquet of the {digit} was accounted for: that it was on stays. NO leaves it so.") \
	X(SEEN_ALREADY, "seen-already", "Seen already: {digit}.") \
	X(ASKED_AFTER_HANDOVER, "asked-after-handover", \
	  "Whether a tourniquet is on the {digit} is asked after the handover.") \
	/* counting in, and what may not be counted */ \
	X(TRAY_LISTS_UNKNOWN, "tray-lists-unknown", \
	  "the tray '{item}' lists '{key}', which the catalogue does not know: tell stores") \
	X(SCAN_ADD_FIRST, "scan-add-first", \
	  "{item} is already on the sheet and bears no number: for a further pack scan ADD first.") \
	X(MARK_OF_COUNTED, "mark-of-counted", \
	  "{item} is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first.") \
	X(WRAPPER_OF_ANOTHER_CASE, "wrapper-of-another-case", \
	  "That is the wrapper or bag of the {item} of case {case}, which is accounted for there: it is no item of this case.") \
	X(OF_ANOTHER_STATION, "of-another-station", \
	  "That {item} was used in case {case} of station {station}, as the hospital's store says: it is no item of this case. If it " \
	  "is not its wrapper that lies here, call that room now and have that patient's digit looked at.") \
	X(WRAPPER_OF_MISSING, "wrapper-of-missing", \
	  "That is the wrapper or bag of the {item} that case {case} did not account for: it proves only " \
	  "itself. Is the item itself in your hand? Then scan FOUND and the slip of case {case}.") \
	X(WRAPPER_OF_ENDED, "wrapper-of-ended", \
	  "That is the wrapper or bag of the {item} of case {case}, which is accounted for there. Is one " \
	  "of it in your hand all the same? Then scan FOUND and the slip of case {case}.") \
	X(TRAY_NOT_WHOLE, "tray-not-whole", \
	  "{item}: not each thing of it lies here as counted in: it stays in the count, and each is counted by itself.") \
	X(NOT_ISOLATED, "not-isolated", "{item} cannot be isolated: it is not lying here as counted in.") \
	X(NOT_STRUCK, "not-struck", \
	  "That item was used, is being counted or is not on the sheet: it cannot be struck as a misread.") \
	X(NOT_DROPPED, "not-dropped", \
	  "{item}: not on this sheet. What was never counted in is not dropped from it.") \
	X(IS_ISOLATED, "is-isolated", "{item} is isolated (wrong number in its pack): use another pack.") \
	X(FORCEPS_ON_ALREADY, "forceps-on-already", \
	  "{item}: entered as on the tourniquet of the {digit}. If it came away, scan FORCEPS MOVED.") \
	X(WRAPPER_PROVES_NO_MORE, "wrapper-proves-no-more", \
	  "{item}: on the {digit}; its wrapper proves nothing more.") \
	X(NOT_COUNTED_TWICE, "not-counted-twice", "{item}: on the sheet already, not counted twice.") \
	X(NOT_COUNTED_IN, "not-counted-in", \
	  "Not counted in: {why}. Take it off the field and use another. {then}") \
	X(NOT_DROPPED_OF_TRAY, "not-dropped-of-tray", \
	  "A tray's things are counted each by itself, and one without a code of its own is not entered as dropped: keep it in the room. The count asks for it.") \
	X(TRAY_THING_BY_THING, "tray-thing-by-thing", \
	  "The code of the tray accounts for none of its things: show each as it is asked for.") \
	X(TRAY_NOT_COUNTED_IN, "tray-not-counted-in", \
	  "The tray is not counted in: {why}. Take the tray off the field and use another.") \
	X(NOT_HERE, "not-here", \
	  "Not entered here: {item} is on the open sheet of case {case} in {room}. Take it there now.") \
	X(NOT_HERE_SOUGHT, "not-here-sought", \
	  "Not entered here: {item} is on the open sheet of case {case} in {room}, which looks for what " \
	  "is missing. Take it there now.") \
	X(OPENED_AS_COUNTED, "opened-as-counted", \
	  "{item} was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND.") \
	X(NOT_RETURNED, "not-returned", \
	  "{item} cannot go back unopened: it is not lying here as counted in.") \
	X(WHICH_CASE_OF, "which-case-of", \
	  "This code does not tell which case {item} comes from: scan FOUND, then the slip of the case " \
	  "you think of.") \
	X(WHICH_CASE, "which-case", \
	  "This code does not tell which case it comes from: scan FOUND, then the slip of the case you " \
	  "think of.") \
	X(NOT_IN_CATALOGUE, "not-in-catalogue", "Not in the catalogue: {what}. Not counted. {then}") \
	X(MISREAD, "misread", "Misread, nothing entered.") \
	X(MISREAD_FOR, "misread-for", "Misread, nothing entered: {fault}") \
	X(FOREIGN_CODE, "foreign-code", \
	  "This code belongs to {what}: nothing entered. Use this station's cards and labels.") \
	X(PRACTICE_CODE, "practice-code", \
	  "This is a practice code: it counts nothing here. Use this room's own cards, badges and packs.") \
	X(PRACTICE_NOT_NOW, "practice-not-now", \
	  "This is a practice code: nothing was entered. Practice begins when nothing is open, asked or owed " \
	  "in this room.") \
	X(R_PRACTICE, "practice", "Practice:") \
	X(R_PRACTICE_OVER, "practice-over", "Practice is over and nothing of it is kept: from here on everything counts.") \
	X(PRACTICE_IN_CASE, "practice-in-case", \
	  "This is a practice code: nothing of it was entered in case {case}, which is real. Scan this " \
	  "room's own code.") \
	X(HALF_OF_PACK, "half-of-pack", "Half of a pack's data. Scan the pack's other symbol as well.") \
	X(HALF_OF_PACK_FOR, "half-of-pack-for", \
	  "Half of a pack's data: {fault}. Scan the pack's other symbol as well.") \
	/* the count */ \
	X(NOTHING_TO_COUNT, "nothing-to-count", \
	  "Nothing is on the sheet: there is nothing to count yet.") \
	X(NOTHING_COUNTED_IN, "nothing-counted-in", \
	  "Nothing is counted in yet: scan what was opened first.") \
	X(INITIAL_NOT_AGREED, "initial-not-agreed", \
	  "The initial count was not agreed: count aloud what was opened, then the circulating badge, " \
	  "then FINAL COUNT.") \
	X(FINAL_UNFINISHED, "final-unfinished", \
	  "The final count is not finished: answer what the board asks first.") \
	X(COUNT_UNFINISHED_SEARCH, "count-unfinished-search", \
	  "The count is not finished: answer for what the board asks first.") \
	X(COUNT_UNFINISHED_ITEM, "count-unfinished-item", \
	  "The count is not finished: answer for the {item} first.") \
	X(ALIKE_TOGETHER, "alike-together", \
	  "{n} are asked for together: lay them side by side, SHOWN and their number.") \
	X(NO_TOURNIQUET_ASKED, "no-tourniquet-asked", "No tourniquet is asked for now.") \
	X(ONE_BY_ITS_MARK, "one-by-its-mark", \
	  "One is asked for, by its mark: {item}. YES, or scan its mark.") \
	X(NOTHING_COULD_BE_MISSING, "nothing-could-be-missing", \
	  "Nothing is asked for now that could be missing.") \
	X(SAY_HOW_IT_IS, "say-how-it-is", \
	  "{item}: say how it is: scan INTACT, CUT AND COMPLETE or PIECES MISSING.") \
	X(NO_PIECE_MISSING, "no-piece-missing", \
	  "No tourniquet is on the sheet of which a piece could be missing.") \
	X(NO_OFFCUT_WITHOUT_ONE, "no-offcut-without-one", \
	  "No tourniquet is on the sheet that an offcut could come from.") \
	X(NO_LINE_COUNTED, "no-line-counted", "No line has been counted yet.") \
	X(NO_NUMBER_ASKED, "no-number-asked", "No count asks for a number now.") \
	X(ACCOUNTED_ALREADY, "accounted-already", "{item} is accounted for already.") \
	X(THAT_IS_THE_WRAPPER, "that-is-the-wrapper", \
	  "That is the wrapper: it proves that a pack was opened, not where the {item} is. Show the item " \
	  "itself.") \
	X(MARK_READ_SAY_HOW, "mark-read-say-how", \
	  "Its mark was read; now say how it is: INTACT, CUT AND COMPLETE or PIECES MISSING.") \
	X(IS_THE_EXTRA_ITEM, "is-the-extra-item", "{item} is the extra item.") \
	X(COUNT_AGREED_MISSING, "count-agreed-missing", \
	  "The final count is agreed. If something is missing now, scan FINAL COUNT and count again.") \
	X(FOUND_WHILE_COUNTING, "found-while-counting", \
	  "The count goes on: answer for what the board asks. What was found of an earlier case: scan " \
	  "its mark.") \
	X(INITIAL_COUNT_AGAIN, "initial-count-again", \
	  "The initial count is not agreed yet: count aloud again from the first.") \
	X(NO_COUNT_GOES_ON, "no-count-goes-on", "No count is going on.") \
	X(FOUND_WHEN_IN_HAND, "found-when-in-hand", \
	  "Nothing is asked for now: when what is missing is in your hand, scan FOUND.") \
	X(LINES_ANSWERED_SINGLE, "lines-answered-single", \
	  "Each line is answered: scan what the board asks.") \
	X(LINES_ANSWERED, "lines-answered", \
	  "Each line is answered. YES does not agree the count: scan the circulating badge.") \
	X(LINES_ANSWERED_CARD, "lines-answered-card", \
	  "Each line is answered. {card} does not agree the count: scan the circulating badge.") \
	X(COUNT_NOT_AGREED, "count-not-agreed", "The count cannot be agreed: {why}.") \
	X(HANDOVER_NOT_AGREED, "handover-not-agreed", "The handover count cannot be agreed: {why}.") \
	/* the search */ \
	X(NO_SEARCH, "no-search", "There is no search now.") \
	X(SEARCH_ALL_ANSWERED, "search-all-answered", \
	  "Every step of the search is answered. FINAL COUNT counts again; END UNRESOLVED is the " \
	  "surgeon's decision.") \
	X(SEARCH_STEP_OPEN, "search-step-open", \
	  "A step of the search is not answered yet: {step}. Scan STEP DONE or NOT DONE.") \
	X(NOTHING_MISSING_TO_END, "nothing-missing-to-end", \
	  "Nothing is missing or extra: a case ends unresolved only after a discrepancy.") \
	X(SURGEON_ENDS_UNRESOLVED, "surgeon-ends-unresolved", \
	  "Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching.") \
	/* the sign-out and the end */ \
	X(WHO_LOOKED_NOT_NOW, "who-looked-not-now", \
	  "WHO LOOKED belongs to a single-person count, after the look at the bare digit.") \
	X(NO_IS_NOBODY, "no-is-nobody", \
	  "NO does not say who looked: if nobody else did, scan WHO LOOKED: NOBODY.") \
	X(CASE_NOT_ENDED_HERE, "case-not-ended-here", \
	  "Case {case} has not ended here: type the number of an ended case.") \
	X(CASE_STILL_OPEN, "case-still-open", \
	  "Case {case} is still open: what was found is answered for in its own count, not by a slip.") \
	X(TAKE_IT_TO, "take-it-to", "Take it to {room} now.") \
	X(NOT_YET_SIGN_OUT, "not-yet-sign-out", "Not yet the sign-out: {why}.") \
	X(SEEN_BEFORE_DRESSING, "seen-before-dressing", \
	  "Each digit was seen bare before the dressing: there is none left to look at.") \
	X(NO_LOOK_OWED, "no-look-owed", \
	  "No tourniquet was on a digit: there is none to look at before the dressing.") \
	X(YES_IS_NO_LOOK, "yes-is-no-look", "YES does not record the look: scan the digit card.") \
	X(YES_IS_NO_SIGN_OUT_SINGLE, "yes-is-no-sign-out-single", \
	  "YES does not sign out: scan the operator's badge.") \
	X(YES_IS_NO_SIGN_OUT, "yes-is-no-sign-out", "YES does not sign out: scan the surgeon's badge.") \
	X(YES_IS_NO_AGREEMENT, "yes-is-no-agreement", \
	  "YES does not agree the count: scan the circulating badge.") \
	X(YES_IS_NO_STEP, "yes-is-no-step", \
	  "YES does not answer a step of the search: scan STEP DONE or NOT DONE.") \
	X(NOT_AN_ANSWER, "not-an-answer", "{card} does not answer what is asked: {question}") \
	X(NOT_AN_ANSWER_STATED, "not-an-answer-stated", \
	  "{card} does not answer what is asked: {question}.") \
	X(TYPED_NOT_KEPT, "typed-not-kept", "What was typed cannot be kept.") \
	X(TYPED_NOT_KEPT_FOR, "typed-not-kept-for", "{fault}.") \
	/* badges */ \
	X(OPERATORS_BADGE_ONLY, "operators-badge-only", \
	  "This count is single-person: the operator's badge only.") \
	X(NOTHING_ASKED_OF, "nothing-asked-of", "The badge of {person} is not asked for now.") \
	X(FIELD_RECORDS_NO_COUNT, "field-records-no-count", \
	  "{person} is at the field: the circulating badge records a count.") \
	X(SINGLE_COUNT_BY, "single-count-by", \
	  "This count is single-person, by {person}. WHO LOOKED names who else looked. If {other_person} " \
	  "takes over, scan HANDOVER, then this badge.") \
	X(NOT_IN_TEAM, "not-in-team", \
	  "{person} is not in this team, and the place is taken: to take over scan HANDOVER, then this " \
	  "badge.") \
	X(IS_THE_SURGEON, "is-the-surgeon", \
	  "{person} is the operating surgeon here: scan HANDOVER to change over, or NO.") \
	X(NEITHER_REGISTERED, "neither-registered", \
	  "Neither {person} nor {other_person} is registered: one of the two must be. Scan a registered " \
	  "circulating badge, or NO.") \
	X(FIRST_WHETHER_SURGEON, "first-whether-surgeon", \
	  "First whether {person} is the operating surgeon: scan YES or NO, then the badge of {other_person}.") \
	X(CIRCULATING_VOUCHES, "circulating-vouches", \
	  "The circulating badge vouches for a visitor: scan it, or NO.") \
	X(NOT_ONE_OF_TWO, "not-one-of-two", \
	  "{person} is not one of the two who count: scan the badge of the one who stays.") \
	X(NO_PLACE_TO_HAND_OVER, "no-place-to-hand-over", \
	  "{person} has no place to hand over in this case: scan the badge of the one who leaves.") \
	X(CANNOT_TAKE_PLACE, "cannot-take-place", \
	  "{person} cannot take this place ({place}): no handover. With one who may: HANDOVER again.") \
	X(HANDOVER_UNREGISTERED, "handover-unregistered", \
	  "Neither {person} nor the one who stays is registered: no handover. With one who is: HANDOVER " \
	  "again.") \
	X(IN_TEAM_ALREADY, "in-team-already", \
	  "{person} is in the team already: scan the badge of the one who comes.") \
	X(BOTH_BADGES_NEEDED, "both-badges-needed", \
	  "Both badges are needed: scan the badge of the one at the field.") \
	X(CIRCULATING_WITNESSES, "circulating-witnesses", \
	  "The circulating badge is the witness of a visiting surgeon: scan it, or NO.") \
	X(NOT_REGISTERED_OPERATOR, "not-registered-operator", \
	  "{person} is not registered: a registered operator's badge opens a single-person count.") \
	X(HANDOVER_THEN_SEARCH, "handover-then-search", "A handover goes on: first finish it, then this step of the search.") \
	X(HANDOVER_BADGES_FIRST, "handover-badges-first", \
	  "Not yet: first the badges of those who hand over and take over.") \
	X(HANDOVER_ALL_SEEN, "handover-all-seen", "Each tourniquet that is on was seen already.") \
	X(FULL_SIGHT_AT_HANDOVER, "full-sight-at-handover", "WITHOUT FULL SIGHT belongs to a handover.") \
	X(NEITHER_HERE_REGISTERED, "neither-here-registered", \
	  "Neither {person} nor the one who is here is registered: one of the two must be. Scan a " \
	  "registered badge.") \
	X(SCAN_THAT_BADGE, "scan-that-badge", "{what}: scan that badge.") \
	X(SCAN_THAT_OR_HANDOVER, "scan-that-or-handover", \
	  "{what}. If {other_person} takes over, scan HANDOVER, then this badge.") \
	X(BADGE_WITHDRAWN, "badge-withdrawn", \
	  "Badge {badge} was withdrawn: scan a badge that is in use.") \
	X(BADGE_UNKNOWN, "badge-unknown", \
	  "Badge {badge} is not known here: add it with 'bandtally staff add', or use a VISITOR card.") \
	/* slips */ \
	X(SLIP_BEFORE_RESTORE, "slip-before-restore", \
	  "Slip {slip}, copy {copy}, is of this station and was made before an older record was put " \
	  "back: this record lacks it. Keep it in the notes: it says what was counted.") \
	X(SLIP_NEWER, "slip-newer", \
	  "Slip {slip}, copy {copy}, is of this station and newer than this record: was an older record " \
	  "put back? Count by hand, and tell whoever looks after the station.") \
	X(SLIP_LONGER_CODE, "slip-longer-code", \
	  "Slip {slip}, copy {copy}: its paper bears a longer code than this: scan the code on the paper " \
	  "itself.") \
	X(SLIP_NOT_IN_RECORD, "slip-not-in-record", \
	  "Slip {slip} is not in this record, and its code, of an earlier version, does not say whose it " \
	  "is: find out, and put the right slip in the notes.") \
	X(SLIP_NO_SUCH_COPY, "slip-no-such-copy", \
	  "Slip {slip} has no copy {copy}: this paper is not ours. Put the right slip in the notes.") \
	X(SLIP_NOT_OURS, "slip-not-ours", \
	  "Slip {slip}, copy {copy}, is not ours: its six digits are not this station's. Find out where " \
	  "it comes from, and put the right slip in the notes.") \
	X(SLIP_SEEN_BEFORE, "slip-seen-before", \
	  "Slip {slip}, copy {copy}, was seen before. If two papers of it lie here, only one goes into " \
	  "the notes: destroy the other.") \
	X(SLIP_COPY_SEEN, "slip-copy-seen", \
	  "Slip {slip}, copy {copy}: copy {other_copy} of it was seen before. Only one goes into the " \
	  "notes: destroy this one.") \
	X(SLIP_OF_OTHER_ROOM, "slip-of-other-room", \
	  "Slip {slip} is of case {case} in {room}: scan it there, or when this case has ended.") \
	X(SLIPS_NOT_ANSWERED, "slips-not-answered", \
	  "Five slip codes that are not ours were read here within a minute: no slip is answered for a " \
	  "minute. Tell whoever looks after the station.") \
	X(SLIP_CODES_TRIED, "slip-codes-tried", \
	  "Scanner {scanner}: five slip codes within a minute that are not ours: no slip is answered there " \
	  "for a minute. Look who tries") \
	X(SLIP_NOT_PRINTED, "slip-not-printed", \
	  "Slip {slip}, copy {copy}, was not printed yet: a typed or copied code proves no paper. Wait " \
	  "for it.")

/* What is wrong with a scanner. */
#define SAYINGS_SCANNERS(X, N) \
	X(SCANNER_TOLD, "scanner-told", "Scanner {scanner} of {room}: {what} {then}") \
	X(SCANNER_WITHOUT_ROOM, "scanner-without-room", \
	  "Scanner {scanner} has no one room of this station: see scanners.ini and station.ini") \
	N(SCANNER_MORE_SINCE, "scanner-more-since", "({n} fault more since)", "({n} faults more since)") \
	X(SCANNER_LOST_AT, "scanner-lost-at", \
	  "lost at {time}: plug it in again, use the spare scanner or type the code") \
	X(SCANNER_ENDED, "scanner-ended", \
	  "lost: its program ended and is started again; use the spare scanner or type the code") \
	X(SCANNER_LINE_TOO_LONG, "scanner-line-too-long", \
	  "sent a line that is too long: it was thrown away") \
	X(SCANNER_LINE_ODD, "scanner-line-odd", \
	  "sent a line that the station cannot read: it was thrown away") \
	SAYINGS_OF_DRIVERS(X, N)

/* What a driver's word for a fault says: its name behind "scanner-" (base/wire.h). Of any other word it is the last of them. */
#define SAYINGS_OF_DRIVERS(X, N) \
	X(SCANNER_LOST, "scanner-lost", "lost: plug it in again, use the spare scanner or type the code") \
	X(SCANNER_OPEN, "scanner-open", "cannot be opened: use the spare scanner or type the code") \
	X(SCANNER_SANDBOX, "scanner-sandbox", "its program may not start: use the spare scanner, and tell whoever looks after the station") \
	X(SCANNER_UNCERTAIN, "scanner-uncertain", \
	  "how it sends is not known: scan the scanner-check sheet, or type the code") \
	X(SCANNER_LEARNED, "scanner-learned", "how it sends is known") \
	X(SCANNER_PARTIAL, "scanner-partial", "a part of a code was thrown away: scan it again") \
	X(SCANNER_DROPPED, "scanner-dropped", "keys were lost, and a code with them: scan it again") \
	X(SCANNER_GARBLED, "scanner-garbled", "a code came garbled: scan it again") \
	X(SCANNER_TWO_CARDS, "scanner-two-cards", "two cards were in view and neither was entered: show one alone") \
	X(SCANNER_TOO_LONG, "scanner-too-long", "a code was too long: it was thrown away") \
	X(SCANNER_UNREADABLE, "scanner-unreadable", "a picture cannot be read: show the code again") \
	X(SCANNER_DARK, "scanner-dark", "it is dark where it looks: put a light on there, or use the spare scanner") \
	X(SCANNER_COVERED, "scanner-covered", \
	  "its lens is covered, or it looks at one even surface: uncover or turn it, or use the spare scanner") \
	X(SCANNER_FROZEN, "scanner-frozen", \
	  "its picture stands still: pull its plug and plug it in again, and use the spare scanner meanwhile") \
	X(SCANNER_STALLED, "scanner-stalled", \
	  "it is plugged in and gives no picture: pull its plug and plug it in again, and use the spare scanner meanwhile") \
	X(SCANNER_OTHER, "scanner-other", "a fault that the journal names: tell whoever looks after the station")

/* Parts of the above. */
#define SAYINGS_PARTS(X, N) \
	X(MAY_NOT_BE_USED, "may-not-be-used", "{item} may not be used as a tourniquet; use {instead}") \
	X(MAY_NOT_BE_USED_UNLISTED, "may-not-be-used-unlisted", \
	  "{item} may not be used as a tourniquet; use a listed one") \
	X(EXPIRED, "expired", "{item} expired on {date}") \
	X(DROPPED_HERE, "dropped-here", "it was dropped") \
	X(IN_QUARANTINE, "in-quarantine", "{item} is in quarantine ({reason})") \
	X(USED_BEFORE, "used-before", \
	  "this {item} was used before, in case {case}, and is used once only") \
	X(USED_ELSEWHERE, "used-elsewhere", \
	  "this {item} was used in case {case} of station {station}, as the hospital's store says, and is used once only") \
	X(ON_OTHER_SHEET, "on-other-sheet", "this {item} is on the open sheet of case {case} in {room}") \
	X(IF_ON_YES, "if-on-yes", "If it is the one that is on, scan YES, then this again.") \
	X(IF_ON_UNLISTED, "if-on-unlisted", "If it is on a digit already, scan UNLISTED TOURNIQUET.") \
	X(IF_ON_DIGIT_CARD, "if-on-digit-card", \
	  "If it is a tourniquet that is on a digit, scan that digit card.") \
	X(KEEP_IN_ROOM, "keep-in-room", \
	  "Keep it in the room; NO CODE counts it as an item of this case.") \
	X(USE_LISTED, "use-listed", \
	  "Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET.") \
	X(CODE_AS_READ, "code-as-read", "{code}") \
	X(CODE_OF_STORES, "code-of-stores", \
	  "stores' item number {item_number}, which the record does not know") \
	X(CODE_OF_TRAY, "code-of-tray", "tray number {tray_number}") \
	X(CODE_OF_BOX, "code-of-box", "the code of a box of several: open it and scan the pack") \
	X(CODE_OF_CHECK, "code-of-check", "a line of the scanner-check sheet, outside a scanner check") \
	X(CODE_OF_NO_CARD, "code-of-no-card", "card {n}, which this version does not have") \
	X(OTHER_SITE, "other-site", "another site ({site})") \
	X(OTHER_STATION, "other-station", "station {station} of this site") \
	X(UNHELD, "unheld", "{what}") \
	X(UNHELD_FOR, "unheld-for", "{what}: {why}") \
	X(UNHELD_FAULT, "unheld-fault", "{what}: {fault}") \
	X(SCAN_OF_CARD, "scan-of-card", "{card}") \
	X(SCAN_OF_DIGIT, "scan-of-digit", "{digit}") \
	X(SCAN_OF_BADGE, "scan-of-badge", "{person}") \
	X(SCAN_OF_CASE_LABEL, "scan-of-case-label", "case label {label}") \
	X(SCAN_OF_SLIP, "scan-of-slip", "slip {slip}") \
	X(SCAN_OF_PACK, "scan-of-pack", "pack {item}") \
	X(SCAN_OF_TRAY, "scan-of-tray", "tray {item}") \
	X(SCAN_OF_PATIENT, "scan-of-patient", "a patient's code, nothing of it was kept") \
	X(SCAN_OF_FOREIGN, "scan-of-foreign", "a code of another site or station") \
	X(SCAN_OF_PRACTICE, "scan-of-practice", "a practice code, which counts nothing") \
	X(SCAN_OF_HALF, "scan-of-half", "half of a pack's data") \
	X(SCAN_MISREAD, "scan-misread", "a code that was misread") \
	X(SCAN_UNKNOWN, "scan-unknown", "not in the catalogue") \
	X(SCAN_TOO_LONG, "scan-too-long", "a code that is longer than any pack, card or badge") \
	X(SCAN_OF_NOTHING, "scan-of-nothing", "no scan") \
	X(ANSWERED_WHAT, "answered-what", "what it answered is not known, scan it where it is asked") \
	X(BEHIND_SUSPEND, "behind-suspend", \
	  "the scans behind it would go to another case, scan it now if it is so") \
	X(TOO_MANY_WAIT, "too-many-wait", "too many wait for an answer") \
	X(NOBODY_AT_FIELD, "nobody-at-field", \
	  "nobody at the field has badged in: scan the scrub practitioner's badge") \
	X(NOBODY_CIRCULATING, "nobody-circulating", \
	  "nobody circulating has badged in: scan the circulating practitioner's badge") \
	X(SAME_PERSON, "same-person", \
	  "the same person cannot be at the field and circulating: scan the other's badge") \
	X(NEITHER_OF_THE_TWO, "neither-of-the-two", \
	  "neither of the two is registered: one must be: change over with HANDOVER") \
	X(WORKS_ALONE_COUNTS, "works-alone-counts", "{person} works alone now and counts") \
	X(RECORDS_HANDOVER, "records-handover", "{person} circulates and records the handover count") \
	X(ALONE_ENDS_UNRESOLVED, "alone-ends-unresolved", \
	  "{person} works alone here, and that badge or a surgeon's ends a case unresolved") \
	X(TOURNIQUET_IS_ON, "tourniquet-is-on", "a tourniquet is on the {digit}") \
	X(OWED, "owed", "still to do: {what}") \
	N(ITEMS_NOT_RIGHT, "items-not-right", "{n} item is missing, extra or in pieces", "{n} items are missing, extra or in pieces") \
	X(NOT_ACCOUNTED_FOR, "not-accounted-for", "{item} is not accounted for") \
	X(FINAL_NOT_AGREED, "final-not-agreed", "the final count is not agreed") \
	X(BARE_NOT_LOOKED_AT, "bare-not-looked-at", "the bare {digit} has not been looked at") \
	X(WHO_LOOKED_NOT_SAID, "who-looked-not-said", \
	  "who else looked at the bare digit has not been said") \
	X(SOMETHING_OWED, "something-owed", "something is still to do")

/* What a thing is called that the catalogue does not know, and what is remarked of one that was shown. */
#define SAYINGS_NAMES(X, N) \
	X(TOURNIQUET_NOT_LISTED, "tourniquet-not-listed", "tourniquet, not listed") \
	X(TOURNIQUET_NOT_LISTED_YET, "tourniquet-not-listed-yet", "tourniquet, not listed yet") \
	X(TOURNIQUET_LEFT_ON, "tourniquet-left-on", "tourniquet left on") \
	X(TOURNIQUET_NO_CODE, "tourniquet-no-code", "tourniquet without a code") \
	X(FORCEPS_UNREADABLE, "forceps-unreadable", "artery forceps, mark unreadable") \
	X(ITEM_NO_CODE, "item-no-code", "item without a code, described on paper") \
	X(ITEM_NO_NUMBER, "item-no-number", "an item without a number") \
	X(MARK_UNREADABLE, "mark-unreadable", "mark unreadable")

/* What is owed (count/debt.h). */
#define SAYINGS_DEBTS(X, N) \
	X(DEBT_COUNT, "debt-count", "the initial count, not agreed before the tourniquet went on") \
	X(DEBT_TEAM, "debt-team", "who counts: not all had badged in when it began") \
	X(DEBT_LISTING, "debt-listing", "which tourniquet it is, not listed") \
	X(DEBT_REASON, "debt-reason", "the surgeon's answer for an item that the station refused") \
	X(DEBT_ON, "debt-on", "whether a tourniquet is on") \
	X(DEBT_SURGEON, "debt-surgeon", \
	  "the surgeon's decision: it rolls on over an open wound, flap, infection or tumour") \
	X(DEBT_ADDED, "debt-added", "the count of what was added") \
	X(DEBT_MARKED_DIGIT, "debt-marked-digit", "whether this is the right digit: it was not marked") \
	X(DEBT_NAME, "debt-name", "a visitor's name on the slip") \
	X(DEBT_INCIDENT, "debt-incident", "the incident number") \
	X(DEBT_HANDOVER, "debt-handover", "the handover count") \
	X(DEBT_EXPIRY_READ, "debt-expiry-read", "an expiry date that the station cannot judge") \
	X(DEBT_CALLED, "debt-patient-called-back", "that patient called back, or still here") \
	X(DEBT_LOOK, "debt-digit-seen-bare", "that digit seen bare") \
	X(DEBT_WARD, "debt-ward-told", "the ward told") \
	X(DEBT_STORES_ASKED, "debt-stores-asked-of-recalls", "stores asked about recalls") \
	X(DEBT_ROLLS_ON, "debt-rolls-on", \
	  "it rolls on: open wound, flap, infection or tumour on the digit")

/* Where somebody stands in the team (count/team.h). */
#define SAYINGS_PLACES(X, N) \
	X(PLACE_FIELD, "place-field", "at the field") \
	X(PLACE_CIRCULATING, "place-circulating", "circulating") \
	X(PLACE_SURGEON, "place-surgeon", "operating surgeon") \
	X(PLACE_CHARGE, "place-charge", "nurse in charge") \
	X(PLACE_VISITOR, "place-visitor", "visiting") \
	X(PLACE_NONE, "place-none", "not here")

/* Of a slip's signed summary, and at an auditor's desk. */
#define SAYINGS_SIGNED(X, N) \
	X(SIGNED_FOR_AUDIT, "signed-for-audit", \
	  "Not entered: this code of the slip is for the auditor. Scan the code beside it.") \
	X(SIGNED_OTHER, "signed-other", \
	  "Slip {slip} is signed, but the record holds something else. Keep the paper aside; \"bandtally audit slip\" says what.") \
	X(SIGNED_BY_NOBODY, "signed-by-nobody", \
	  "Not signed by any key of this station. Keep the paper aside, and find out where it comes from.") \
	X(DESK_READS_SLIPS, "desk-reads-slips", "Not entered: at this desk only slips are read. Scan a code of a slip.")
/* clang-format on */

#endif
