/* What the board shows besides replies and what comes next. Of what its page says by itself (board/page) each key is "board-" and the page's name for it (words.js). A name that
 * ends in "-awake" is the plainer word where a patient who is awake reads it too. The form is that of sayings.h.
 */
#ifndef BANDTALLY_WORDS_BOARD_WORDS_H
#define BANDTALLY_WORDS_BOARD_WORDS_H

/* clang-format off */
#define BOARD_WORDS(X, N) \
	BOARD_PAGE(X, N) \
	BOARD_STATION(X, N)

/* of these the page makes its own sentences (page-catalogue.h) */
#define BOARD_PAGE(X, N) \
	BOARD_FRAME(X, N) \
	BOARD_TIMES(X, N) \
	BOARD_DIGITS(X, N) \
	BOARD_SHEET(X, N) \
	BOARD_AFTER(X, N) \
	BOARD_NOTES(X, N) \
	BOARD_TYPING(X, N) \
	BOARD_DESK(X, N) \
	BOARD_VALUES(X, N)

/* the strip above, what is heard, and why the board cannot be trusted */
#define BOARD_FRAME(X, N) \
	X(B_BOARD, "board-board", "Count board") \
	X(B_PRACTICE, "board-practice", "PRACTICE: nothing counts. The first real code ends it.") \
	X(B_PLACE, "board-place", "{room} · case {case}") \
	X(B_BY_HAND, "board-by-hand", "Count by hand on the paper sheet.") \
	X(B_NOT_STYLED, "board-not-styled", \
	  "This page loaded only in part. Count by hand on the paper sheet, and load it again.") \
	/* of a page before its script: in every language that is installed, for it knows none yet */ \
	X(B_NOT_LOADED, "board-not-loaded", \
	  "This page has not finished loading. Count by hand on the paper sheet, and load it again.") \
	X(B_SILENT, "board-silent", "No word from the station for {n} s. Count by hand on the paper sheet.") \
	X(B_WAITING, "board-waiting", "Waiting for the station. Until it speaks, count by hand on the paper sheet.") \
	X(B_NO_SUCH_ROOM, "board-no-such-room", "The station does not know room {room}. Count by hand on the paper sheet.") \
	X(B_NO_ROOM, "board-no-room", "The station does not know any room. Count by hand on the paper sheet.") \
	X(B_MAY_BE_OLD, "board-may-be-old", "The figures below may be old.") \
	X(B_SINGLE_PERSON, "board-single-person", "single-person count") \
	X(B_PATIENT_LEFT, "board-patient-left", "patient has left the room") \
	X(B_CANCELLED, "board-cancelled", "cancelled, count owed") \
	X(B_AWAKE, "board-awake", "patient awake") \
	X(B_CAMERA_IS, "board-camera-is", "Camera: not recorded.") \
	X(B_CAMERA_NONE, "board-camera-none", "No code seen: nearer, flat.") \
	X(B_CAMERA_HOLD, "board-camera-hold", "Hold it still.") \
	X(B_CAMERA_READ, "board-camera-read", "Read.") \
	X(B_LAST_WORD, "board-last-word", "as of {time}, {what}") \
	X(B_LAST_SCAN, "board-last-scan", "last scan {what}") \
	X(B_NO_SCAN, "board-no-scan", "no scan yet") \
	X(B_ACCEPTED, "board-accepted", "Accepted") \
	X(B_REFUSED, "board-refused", "Refused") \
	X(B_QUESTION, "board-question", "Question") \
	X(B_ACCEPTED_AWAKE, "board-accepted-awake", "Noted") \
	X(B_REFUSED_AWAKE, "board-refused-awake", "Not taken") \
	X(B_REPLY, "board-reply", "{what}:") \
	X(B_STEP, "board-step", "{n}. {step}") \
	X(B_ENDED_RECONCILED, "board-ended-reconciled", "Case {case} ended reconciled, {time}") \
	X(B_ENDED_UNRESOLVED, "board-ended-unresolved", "Case {case} ended UNRESOLVED, {time}") \
	X(B_ENDED_CANCELLED, "board-ended-cancelled", "Case {case} ended as cancelled, {time}") \
	X(B_MEMBER, "board-member", "{place} {person}") \
	X(B_NOBODY_BADGED, "board-nobody-badged", "Nobody is badged yet") \
	X(B_AGREED, "board-agreed", \
	  "{what} agreed aloud {time} by {person} and {other_person}, recorded by {recorder}") \
	X(B_AGREED_ALONE, "board-agreed-alone", "{what} {time}, single-person, by {person}") \
	X(B_INTENDED, "board-intended", \
	  "This station records and supports the count that people make, and never replaces it. Local policy and the licensed practitioner decide.") \
	X(B_TYPE_A_CODE, "board-type-a-code", "Type a code") \
	X(B_LIGHT_AND_SOUND, "board-light-and-sound", "Light and sound") \
	X(B_LIGHT, "board-light", "Light") \
	X(B_LIGHT_ROOM, "board-light-room", "Light room") \
	X(B_DARK_ROOM, "board-dark-room", "Dark room") \
	X(B_AS_THE_SCREEN, "board-as-the-screen", "As the screen") \
	X(B_HEAR_A_SOUND, "board-hear-a-sound", "Hear a sound") \
	X(B_SOUND_ACCEPTED, "board-sound-accepted", "accepted") \
	X(B_SOUND_REFUSED, "board-sound-refused", "refused") \
	X(B_SOUND_QUESTION, "board-sound-question", "question") \
	X(B_SOUND_REMINDER, "board-sound-reminder", "reminder") \
	X(B_SOUND_FAULT, "board-sound-fault", "fault") \
	X(B_NO_VOICE, "board-no-voice", "Replies are to be spoken, but this browser has no voice.") \
	X(B_SPOKEN, "board-spoken", "Replies are spoken, unless the patient is awake.") \
	X(B_CLOSE, "board-close", "Close") \
	/* the parts of the page, for who hears it read */ \
	X(B_PART_ELSEWHERE, "board-part-elsewhere", "Reminders in other rooms that nobody answers") \
	X(B_PART_SHOUT, "board-part-shout", "What is missing, and where it may be") \
	X(B_PART_CARDS, "board-part-cards", "Cards that fit now") \
	X(B_PART_FIGURE, "board-part-figure", "Hands and feet") \
	X(B_PART_SHEET, "board-part-sheet", "Count sheet") \
	X(B_PART_NOTES, "board-part-notes", "Faults and what is still to do")

#define BOARD_TIMES(X, N) \
	X(B_AGO_S, "board-ago-s", "{n} s ago") \
	X(B_AGO_MIN, "board-ago-min", "{n} min ago") \
	X(B_AGO_H, "board-ago-h", "{n} h ago") \
	N(B_AGO_DAYS, "board-ago-days", "{n} day ago", "{n} days ago") \
	X(B_AGE_TODAY, "board-age-today", "of today") \
	N(B_AGE_DAYS, "board-age-days", "{n} day", "{n} days") \
	X(B_MIN, "board-min", "min")

/* digits and their tourniquets; "wall": by the wall clock, "least": at least, where no clock knows better */
#define BOARD_DIGITS(X, N) \
	X(B_ON, "board-on", "On: {digit}") \
	X(B_MAYBE_ON, "board-maybe-on", "On? {digit}") \
	X(B_SINCE, "board-since", "since {time}") \
	X(B_SINCE_REMINDER, "board-since-reminder", "since {time}; next reminder at {n} min") \
	X(B_HOW_WALL, "board-how-wall", "by wall clock") \
	X(B_HOW_LEAST, "board-how-least", "at least") \
	X(B_HOW_MAYBE, "board-how-maybe", "on?") \
	X(B_HOW_MAYBE_WALL, "board-how-maybe-wall", "on? by wall clock") \
	X(B_HOW_MAYBE_LEAST, "board-how-maybe-least", "on? at least") \
	X(B_RAN, "board-ran", "{n} min") \
	X(B_RAN_WALL, "board-ran-wall", "by wall clock {n} min") \
	X(B_RAN_LEAST, "board-ran-least", "at least {n} min") \
	X(B_RAN_MAYBE, "board-ran-maybe", "on? {n} min") \
	X(B_RAN_MAYBE_WALL, "board-ran-maybe-wall", "on? by wall clock {n} min") \
	X(B_RAN_MAYBE_LEAST, "board-ran-maybe-least", "on? at least {n} min") \
	X(B_SEEN_BARE, "board-seen-bare", "seen bare") \
	X(B_MARKED_DIGIT, "board-marked-digit", "marked digit") \
	X(B_WAS_ON, "board-was-on", "was on {n} min, not yet seen bare") \
	X(B_WAS_ON_LEAST, "board-was-on-at-least", "was on at least {n} min, not yet seen bare") \
	X(B_WAS_ON_SEEN, "board-was-on-seen", "was on {n} min, seen bare") \
	X(B_WAS_ON_LEAST_SEEN, "board-was-on-at-least-seen", "was on at least {n} min, seen bare") \
	X(B_TOLD_ON, "board-told-on", "{digit}: tourniquet on, {words}") \
	X(B_TOLD_ON_FORCEPS, "board-told-on-forceps", "{digit}: tourniquet on, {words}, forceps on it") \
	X(B_TOLD_DIGIT, "board-told-digit", "{digit}: {words}") \
	X(B_TOLD_FORCEPS, "board-told-digit-forceps", "{digit}: {words}, forceps on it") \
	X(B_TOLD_REMINDER, "board-told-reminder", "{digit}: {words}, reminder") \
	X(B_NO_DIGIT, "board-no-digit", "No digit has a tourniquet on this sheet") \
	X(B_LEFT_HAND, "board-left-hand", "left hand") \
	X(B_RIGHT_HAND, "board-right-hand", "right hand") \
	X(B_LEFT_FOOT, "board-left-foot", "left foot") \
	X(B_RIGHT_FOOT, "board-right-foot", "right foot")

#define BOARD_SHEET(X, N) \
	X(B_SHEET, "board-sheet", "count sheet") \
	X(B_COUNTED_IN, "board-counted-in", "counted in") \
	X(B_ACCOUNTED_FOR, "board-accounted-for", "accounted for") \
	X(B_NO_CASE, "board-no-case", "No case is open here") \
	X(B_NOTHING_KNOWN, "board-nothing-known", "Nothing is known here") \
	X(B_NOTHING_IN, "board-nothing-in", "Nothing is counted in yet") \
	X(B_OF_ACCOUNTED, "board-of-accounted", "{n} of {all} accounted for") \
	X(B_NOTHING_IN_YET, "board-nothing-in-yet", "nothing in yet") \
	X(B_IS_ON, "board-is-on", "on: {digit}") \
	X(B_IS_ON_IT, "board-is-on-it", "on") \
	X(B_IS_ON_NOWHERE, "board-is-on-nowhere", "on a digit") \
	X(B_IS_OFF, "board-is-off", "off, not yet accounted for") \
	X(B_IS_MISSING, "board-is-missing", "NOT FOUND") \
	X(B_IS_MISSING_AWAKE, "board-is-missing-awake", "still to be found") \
	X(B_IS_EXTRA, "board-is-extra", "extra item") \
	X(B_IS_AWAY, "board-is-away", "isolated, not in the count") \
	X(B_IS_RETURNED, "board-is-returned", "returned unopened") \
	X(B_NOT_LISTED, "board-not-listed", "not listed") \
	X(B_DROPPED, "board-dropped", "dropped") \
	X(B_ADDED, "board-added", "added") \
	N(B_AND_LINES, "board-and-lines", "{n} further line, all accounted for", "{n} further lines, all accounted for") \
	X(B_DISCREPANCY, "board-discrepancy", "DISCREPANCY") \
	X(B_DISCREPANCY_AWAKE, "board-discrepancy-awake", "Counting again") \
	X(B_STOP_CLOSING, "board-stop-closing", "STOP CLOSING") \
	X(B_STOP_CLOSING_AWAKE, "board-stop-closing-awake", "Do not close yet") \
	X(B_STILL_ON, "board-still-on", "STILL ON: {list}") \
	X(B_STILL_ON_AWAKE, "board-still-on-awake", "Still on: {list}") \
	X(B_NOT_FOUND, "board-not-found", "Not found: {list}") \
	X(B_NOT_FOUND_AWAKE, "board-not-found-awake", "Still to find: {list}") \
	X(B_EXTRA_FOUND, "board-extra-found", "Extra: {list}") \
	X(B_MAY_BE_ON, "board-may-be-on", "May be on: {list}") \
	X(B_MAY_BE_ON_AWAKE, "board-may-be-on-awake", "Look at: {list}") \
	/* a list behind a colon, or of remarks */ \
	X(B_LIST, "board-list", "{first}, {second}") \
	X(B_ONE_OF, "board-one-of", "{item} ({n} of {all})") \
	X(B_TIMES, "board-times", "{n} × {item}") \
	X(B_COUNTED_AGAIN, "board-counted-again", "Counted again: {n} of {all} shown") \
	X(B_STEP_DONE, "board-step-done", "done") \
	X(B_STEP_NOT_DONE, "board-step-not-done", "not done") \
	X(B_STEPS_DONE, "board-steps-done", "{n} done") \
	X(B_STEPS_NOT_DONE, "board-steps-not-done", "{n} not done") \
	X(B_STEPS_TO_GO, "board-steps-to-go", "{n} to go") \
	X(B_SIGN_OUT, "board-sign-out", "Sign-out: read aloud") \
	X(B_POINT_YES, "board-point-yes", "yes") \
	X(B_POINT_NO, "board-point-no", "NO: held")

/* what is owed to the patient of a case that has ended */
#define BOARD_AFTER(X, N) \
	X(B_AFTER_CALLED, "board-after-patient-called-back", "Call that patient back now") \
	N(B_AFTER_LOOK, "board-after-digit-seen-bare", "Look at that patient's digit now", "Look at that patient's digits now") \
	X(B_AFTER_WARD, "board-after-ward-told", "Tell the ward now") \
	X(B_OWED_CALLED, "board-owed-patient-called-back", "patient called back, or still here") \
	X(B_OWED_LOOK_AT, "board-owed-look-at", "{digit} seen bare") \
	X(B_OWED_LOOK, "board-owed-look", "the digit seen bare") \
	X(B_OWED_WARD, "board-owed-ward-told", "ward told") \
	X(B_AFTER_CASE, "board-after-case", "Case {case}, since {time}. Stays until it is entered:") \
	N(B_AFTER_MORE, "board-after-more", "and {n} further case", "and {n} further cases") \
	X(B_AFTER_OPEN, "board-after-open", "Case {case}: {words}")

#define BOARD_NOTES(X, N) \
	X(B_STRAY, "board-stray", \
	  "Not counted: a scanner that the station does not know typed into this page. Use the room's own scanner; scanners.ini lists which are known.") \
	X(B_GAP_BY_WALL, "board-gap-by-wall", \
	  "Clock gap: {digit} on since {time} by the wall clock; at least {n} min are known.") \
	X(B_GAP_AT_LEAST, "board-gap-at-least", \
	  "Clock gap: {digit} on for at least {n} min; the wall clock cannot be trusted.") \
	X(B_OWED, "board-owed", "Still to do: {what}.") \
	X(B_SUSPENDED_CASE, "board-suspended-case", \
	  "Case {case} is suspended here: its clocks go on. SUSPEND continues it.") \
	X(B_INCIDENT_OWED, "board-incident-owed", "Case {case}: incident number owed.") \
	X(B_SLIP_OF, "board-slip-of", "Slip {slip}, case {case}: {then}, not seen yet.") \
	X(B_SLIP_OF_KIND, "board-slip-of-kind", "Slip {slip}, case {case}, {what}: {then}, not seen yet.") \
	X(B_SLIP_RECONCILIATION, "board-slip-reconciliation", "at its end") \
	X(B_SLIP_DISCREPANCY, "board-slip-discrepancy", "discrepancy") \
	X(B_SLIP_ADDENDUM, "board-slip-addendum", "addendum") \
	X(B_SLIP_QUEUED, "board-slip-queued", "queued") \
	X(B_SLIP_WRITTEN, "board-slip-written-as-PDF", "written as PDF") \
	X(B_SLIP_SENT, "board-slip-sent", "sent") \
	X(B_SLIP_REPORTED, "board-slip-reported-done", "reported done") \
	X(B_SLIP_WAITING, "board-slip-waiting", "waiting") \
	X(B_SLIP_FAILED, "board-slip-failed", "failed") \
	X(B_SLIP_SEEN, "board-slip-seen", "seen") \
	X(B_TYPING_OVER, "board-typing-over", "Typing is closed: ask for a new ticket.") \
	X(B_SOUND_WAITS, "board-sound-waits", "Sound waits until this board is touched once.") \
	X(B_NO_PRINTER, "board-no-printer", "No printer is set: slips are written as PDF.") \
	X(B_AND_MORE, "board-and-more", "and {n} more") \
	X(B_AND_MORE_OLDEST, "board-and-more-oldest", "and {n} more, oldest {words}") \
	X(B_NOBODY_ANSWERS, "board-nobody-answers", "Nobody answers:")

/* a code that is typed, and what its check digits say while it is */
#define BOARD_TYPING(X, N) \
	X(B_CODE, "board-code", "Code") \
	X(B_ENTER, "board-enter", "Enter") \
	X(B_BACK, "board-back", "Back") \
	X(B_MARKED_KEYED, "board-marked-keyed", "It is marked as keyed on sheet and slip.") \
	X(B_CLOSED, "board-closed", "Typing is closed: ask for a new ticket") \
	X(B_CLOSED_HOW, "board-closed-how", \
	  "Whoever looks after the station gets it with {code} and opens the address in this browser. It works once, and within a minute.") \
	X(B_CLOSED_UNTIL, "board-closed-until", \
	  "Until then scan the codes. Where no scanner reads them, count by hand on the paper sheet.") \
	X(B_IS_SENT, "board-is-sent", "Sent. Waiting for the station.") \
	X(B_NO_ANSWER, "board-no-answer", "The station did not answer. Count by hand on the paper sheet.") \
	X(B_NOT_REACHED, "board-not-reached", "The station cannot be reached. Count by hand on the paper sheet.") \
	X(B_CODE_1, "board-code-1", "card") \
	X(B_CODE_1_NAMED, "board-code-1-named", "card {words}") \
	X(B_CODE_2, "board-code-2", "digit card") \
	X(B_CODE_3, "board-code-3", "badge") \
	X(B_CODE_4, "board-code-4", "slip") \
	X(B_CODE_5, "board-code-5", "case label") \
	X(B_CODE_6, "board-code-6", "scanner check") \
	X(B_CODE_7, "board-code-7", "tray") \
	X(B_CODE_ITEM, "board-code-item", "item label") \
	X(B_CODE_PRACTICE, "board-code-practice", "practice code") \
	X(B_JUDGED_NONE, "board-judged-none", "Type what stands under the barcode.") \
	X(B_JUDGED_FREE, "board-judged-free", "Free text: read it again before it is sent.") \
	X(B_JUDGED_OURS, "board-judged-ours", "A code of ours: go on.") \
	X(B_JUDGED_EARLIER, "board-judged-earlier", "{what} of an earlier version: check digits agree") \
	X(B_JUDGED_SHORT, "board-judged-short", "{what}: {n} more") \
	X(B_JUDGED_LONG, "board-judged-long", "{what}: {n} too many") \
	X(B_JUDGED_RIGHT, "board-judged-right", "{what}: check digits agree") \
	X(B_JUDGED_WRONG, "board-judged-wrong", "{what}: check digits do not agree. Look again.") \
	X(B_TRADE_RIGHT, "board-trade-right", "Trade item number: check digit agrees") \
	X(B_TRADE_WRONG, "board-trade-wrong", "The check digit does not agree. Look again.") \
	X(B_TRADE_PART, "board-trade-part", "Not whole yet, or mistyped.") \
	N(B_TRADE_DIGITS, "board-trade-digits", "{n} digit", "{n} digits") \
	X(B_NO_CHECK, "board-no-check", "No check digit is known for this.") \
	X(B_NO_CHECK_READ, "board-no-check-read", "No check digit is known for this. Read it again.")

#define BOARD_DESK(X, N) \
	X(B_DESK, "board-desk", "Count desk") \
	X(B_DESK_OF, "board-desk-of", "Count desk · {text}") \
	X(B_DESK_NOT_STYLED, "board-desk-not-styled", \
	  "This page loaded only in part. Load it again; do not rely on it.") \
	X(B_DESK_NOT_LOADED, "board-desk-not-loaded", \
	  "This page has not finished loading. Load it again; do not rely on it.") \
	X(B_DESK_SILENT, "board-desk-silent", \
	  "No word from the station for {n} s. What stands here may no longer be true; in the rooms: count by hand.") \
	X(B_DESK_WAITING, "board-desk-waiting", "Waiting for the station.") \
	X(B_DESK_DISTRUST, "board-desk-distrust", "{words} In the rooms: count by hand.") \
	X(B_DESK_ROOM_DISTRUST, "board-desk-room-distrust", "{words} Count by hand.") \
	X(B_DESK_FACTS, "board-desk-facts", "{n} open, last case {case}") \
	X(B_DESK_CASE, "board-desk-case", "case {case}") \
	X(B_DESK_IN_DISCREPANCY, "board-desk-in-discrepancy", "discrepancy") \
	X(B_DESK_LEFT, "board-desk-left", "patient has left") \
	X(B_DESK_NO_CASE, "board-desk-no-case", "no case open") \
	X(B_DESK_SUSPENDED, "board-desk-suspended", "{words}; case {case} suspended") \
	X(B_DESK_NONE, "board-desk-none", "none") \
	X(B_DESK_ROOMS, "board-desk-rooms", "Rooms") \
	X(B_DESK_CASES, "board-desk-cases", "Cases of the day") \
	X(B_DESK_SLIPS, "board-desk-slips", "Slips not seen yet") \
	X(B_DESK_OWED, "board-desk-owed", "Still to do") \
	X(B_DESK_FAULTS, "board-desk-faults", "Faults") \
	X(B_DESK_PART, "board-desk-part-elsewhere", "Reminders that nobody answers") \
	X(B_HEAD_ROOM, "board-head-room", "Room") \
	X(B_HEAD_CASE, "board-head-case", "Case") \
	X(B_HEAD_DIGITS, "board-head-digits", "Digits") \
	X(B_HEAD_ACCOUNTED, "board-head-accounted", "Accounted for") \
	X(B_HEAD_NEXT, "board-head-next", "Next in the room") \
	X(B_HEAD_LAST, "board-head-last", "Last scan") \
	X(B_HEAD_OPENED, "board-head-opened", "Opened") \
	X(B_HEAD_ENDED, "board-head-ended", "Ended") \
	X(B_HEAD_OUTCOME, "board-head-outcome", "Outcome") \
	X(B_NO_ROOM_YET, "board-desk-no-room", "No room is known yet.") \
	X(B_NO_CASE_TODAY, "board-desk-no-case-today", "No case today.") \
	X(B_NOT_ENDED, "board-desk-not-ended", "not ended") \
	X(B_END_OPEN, "board-end-open", "open") \
	X(B_END_RECONCILED, "board-end-reconciled", "reconciled") \
	X(B_END_UNRESOLVED, "board-end-unresolved", "unresolved") \
	X(B_END_CANCELLED, "board-end-cancelled", "cancelled") \
	X(B_END_ENDED, "board-end-ended", "ended") \
	X(B_DESK_SLIP, "board-desk-slip", "Slip {slip}, case {case}, {what}: {then}") \
	X(B_DESK_OLDER, "board-desk-older", "And {n} older") \
	X(B_DESK_ALL_SEEN, "board-desk-all-seen", "Each slip was read back, or none was made.") \
	X(B_DESK_AFTER, "board-desk-after", "Case {case}, since {time}: {text}") \
	X(B_DESK_INCIDENT, "board-desk-incident", "Case {case}: incident number") \
	X(B_DESK_DEBT, "board-desk-debt", "{room}, case {case}: {what}") \
	X(B_NOTHING_OWED, "board-desk-nothing-owed", "Nothing that the station knows of.") \
	X(B_NO_FAULT, "board-desk-no-fault", "None that the station knows of.")

/* values of a view (tell/view.h), by their names there */
#define BOARD_VALUES(X, N) \
	X(B_COUNT_INITIAL, "board-count-initial", "initial count") \
	X(B_COUNT_FINAL, "board-count-final", "final count") \
	X(B_COUNT_HANDOVER, "board-count-handover", "handover count") \
	X(B_COUNT_ADDED, "board-count-added", "count of what was added") \
	X(B_AT_ISOLATED, "board-at-isolated", "isolated") \
	X(B_AT_STRUCK, "board-at-struck", "struck") \
	X(B_AT_EXTRA, "board-at-extra", "extra") \
	X(B_INTACT, "board-condition-intact", "intact") \
	X(B_CUT_COMPLETE, "board-condition-cut-complete", "cut and complete") \
	X(B_PIECES_MISSING, "board-condition-pieces-missing", "pieces missing") \
	X(PLACE_OPERATOR, "place-operator", "operator, alone") \
	X(DEBT_UNFOLLOWED, "debt-unfollowed", \
	  "the station could not follow an event of this case: count by hand on the paper sheet; it does not end reconciled")

/* what the station says of its clock, and of reminders that nobody answers */
#define BOARD_STATION(X, N) \
	X(PRACTICE_TOURNIQUET, "practice-tourniquet", "practice tourniquet") \
	X(PRACTICE_FORCEPS, "practice-forceps", "practice forceps") \
	X(PRACTICE_FIELD, "practice-field", "PRACTICE S") \
	X(PRACTICE_CIRCULATING, "practice-circulating", "PRACTICE C") \
	X(PRACTICE_SURGEON, "practice-surgeon", "PRACTICE SURGEON") \
	X(PRACTICE_ALONE, "practice-alone", "PRACTICE ALONE") \
	X(CLOCK_BEHIND, "clock-behind", \
	  "The wall clock is wrong: {date} {time}, though the record reaches to {other_date} {to}. Read expiry dates aloud; have the clock set.") \
	X(CLOCK_BEFORE_PROGRAM, "clock-before-program", \
	  "The wall clock is wrong: {date} {time}, before this program was made. Read expiry dates aloud; have the clock set.") \
	X(CLOCK_FAR_AHEAD, "clock-far-ahead", \
	  "The wall clock is wrong: {date} {time}, decades after this program was made. Read expiry dates aloud; have the clock set.") \
	X(NOBODY_ON, "nobody-on", "{room}: {digit} {minutes} min, {what}") \
	X(NOBODY_ON_LEAST, "nobody-on-least", "{room}: {digit} at least {minutes} min, {what}") \
	X(NOBODY_OFF, "nobody-off", "{room}: {digit}, off and not accounted for, {minutes} min, {what}") \
	X(NOBODY_OFF_LEAST, "nobody-off-least", \
	  "{room}: {digit}, off and not accounted for, at least {minutes} min, {what}") \
	X(DAY_AND_TIME, "day-and-time", "{date} {time}") \
	X(NO_SCAN_SINCE, "no-scan-since", "no scan since {time}") \
	X(NO_SCAN_SINCE_DAY, "no-scan-since-day", "no scan since {date} {time}") \
	X(NO_SCAN_SINCE_REMINDER, "no-scan-since-reminder", "no scan since the reminder") \
	X(SUSPENDED_ON, "suspended-on", "TOURNIQUET ON, case {case}, suspended") \
	X(SUSPENDED_MAYBE_ON, "suspended-maybe-on", "on?, case {case}, suspended") \
	X(SUSPENDED_CASE, "suspended-case", "case {case}, suspended")
/* clang-format on */

#endif
