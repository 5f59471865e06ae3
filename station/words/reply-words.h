/* What the station answers to a scan that it took, and what it says before it asks (the question stands in sayings.h). The
 * form is that of sayings.h; no record holds these.
 */
#ifndef BANDTALLY_WORDS_REPLY_WORDS_H
#define BANDTALLY_WORDS_REPLY_WORDS_H

/* clang-format off */
#define REPLY_WORDS(X, N) \
	/* behind and before others */ \
	X(R_ROOM, "reply-room", "{room}:") \
	X(R_DISCREPANCY, "reply-discrepancy", \
	  "DISCREPANCY: say it aloud. The discrepancy slip prints now.") \
	X(R_STILL_EXTRA, "reply-still-extra", "Still extra: {item}.") \
	X(R_STILL_IN_PIECES, "reply-still-in-pieces", "Still in pieces: {item}.") \
	X(R_STILL_MISSING, "reply-still-missing", "Still missing: {item}.") \
	X(R_ACCOUNTED, "reply-accounted", "Accounted for: {item}: {what}, {n} of {all}.") \
	X(R_FOUND_SHOWN, "reply-found-shown", "Found, {item}: {what}, {n} of {all}.") \
	X(R_HOW_MARK, "reply-how-mark", "its mark was read") \
	X(R_HOW_CUT, "reply-how-cut", "shown cut and complete") \
	X(R_HOW_INTACT, "reply-how-intact", "shown intact") \
	X(R_HOW_ONE_PERSON, "reply-how-one-person", "shown, one person") \
	X(R_HOW_BOTH, "reply-how-both", "shown to both") \
	X(R_SHARPS, "reply-sharps", "Into the sharps container now.") \
	X(R_TIMES, "reply-times", "{n} × {item}") \
	X(R_ENDED_NOTHING_LEFT, "reply-ended-nothing-left", \
	  "Case {case} ended as cancelled; nothing is on its sheet.") \
	X(R_READ_THING, "reply-read-thing", "{item}") \
	X(R_READ_TWICE, "reply-read-twice", "Read twice, entered once: {what}.") \
	X(R_ENTERED_ALREADY, "reply-entered-already", \
	  "Entered once already: {what}. If it is meant again: NEXT, then this.") \
	X(R_EXPIRY_UNJUDGED, "reply-expiry-unjudged", \
	  "Its expiry cannot be judged, the wall clock is wrong: read the date aloud.") \
	X(R_LISTS_OLD, "reply-lists-old", \
	  "The hospital's lists are old: ask stores whether it was recalled.") \
	X(R_SLIP_OF, "reply-slip-of", "Slip {slip} is of case {case} in {room}.") \
	X(R_ON_MAYBE, "reply-on-maybe", "{digit}: the clock runs as 'on?'.") \
	X(R_FEEL_IT, "reply-feel-it", "Look at it and feel it, under the dressing too.") \
	X(R_WAS_SEEN_BARE, "reply-was-seen-bare", "It was seen bare.") \
	/* cases */ \
	X(R_CASE_IS_OPENED, "reply-case-is-opened", "Case {case} is opened.") \
	X(R_STAYS_SUSPENDED, "reply-stays-suspended", "Case {case} stays suspended.") \
	X(R_CASE_OPENED, "reply-case-opened", "Case {case} opened in {room}.") \
	X(R_CASE_OPENED_LABEL, "reply-case-opened-label", "Case {case} opened in {room}, label {label}.") \
	X(R_CASE_OPENED_ALONE, "reply-case-opened-alone", \
	  "Case {case} opened in {room}. {person} works alone: single-person count.") \
	X(R_COUNTS_ELSEWHERE, "reply-counts-elsewhere", \
	  "{person} counts in {room} as well, case {case}, which is open: who leaves that team hands over there.") \
	X(R_GOES_ON_WITH_THIS, "reply-goes-on-with-this", \
	  "Case {case}, which was suspended, goes on with this. If this is the next patient: SUSPEND, then NEW CASE.") \
	X(R_GOES_ON, "reply-goes-on", "Case {case} goes on.") \
	X(R_ENDED_EMPTY, "reply-ended-empty", "Case {case} ended as cancelled; nothing was counted in.") \
	X(R_ENDED_RECONCILED, "reply-ended-reconciled", "Case {case} ended reconciled.") \
	X(R_ENDED_CANCELLED, "reply-ended-cancelled", "Case {case} ended as cancelled.") \
	X(R_ENDED_BY_HAND, "reply-ended-by-hand", \
	  "Case {case} ended, counted by hand: the station could not follow all of it.") \
	X(R_ENDED_UNRESOLVED, "reply-ended-unresolved", \
	  "Case {case} ended UNRESOLVED, incident number {typed}.") \
	X(R_ENDED_NUMBER_OWED, "reply-ended-number-owed", \
	  "Case {case} ended UNRESOLVED; its incident number is owed.") \
	X(R_SUSPENDED, "reply-suspended", "Case {case} is suspended.") \
	X(R_CLOCKS_GO_ON, "reply-clocks-go-on", "Clocks and reminders go on.") \
	X(R_CASE, "reply-case", "Case {case}.") \
	X(R_CANCELLED, "reply-cancelled", "Case {case}: the operation is cancelled.") \
	X(R_COUNT_STILL_OWED, "reply-count-still-owed", "A count is still owed.") \
	X(R_COUNT_OWED_OPENED, "reply-count-owed-opened", "A pack was opened, so a count is still owed.") \
	X(R_LEAVES, "reply-leaves", "Patient leaves.") \
	X(R_LEFT_ROOM, "reply-left-room", "The patient has left the room.") \
	X(R_TELL_SURGEON_AND_WARD, "reply-tell-surgeon-and-ward", "Tell the surgeon and the ward now.") \
	/* what was seen at the end, and what is not as it must be */ \
	X(R_SAW_INTACT, "reply-saw-intact", "{item}: {n} of {all} shown intact.") \
	X(R_SAW_CUT, "reply-saw-cut", "{item}: {n} of {all} shown cut and complete.") \
	X(R_SAW_MARK, "reply-saw-mark", "{item}: {n} of {all}, mark read.") \
	X(R_SAW_MARK_INTACT, "reply-saw-mark-intact", "{item}: {n} of {all}, mark read, intact.") \
	X(R_SAW_MARK_CUT, "reply-saw-mark-cut", "{item}: {n} of {all}, mark read, cut and complete.") \
	X(R_SAW_MARK_PIECES, "reply-saw-mark-pieces", "{item}: mark read, pieces missing; {n} of {all} accounted for.") \
	X(R_SAW_RETURNED, "reply-saw-returned", "{item}: {n} returned unopened.") \
	X(R_SAW_NOT_ALL, "reply-saw-not-all", "{item}: NOT accounted for, {n} of {all} shown.") \
	N(R_SAW_MORE, "reply-saw-more", "The slip has {n} line more.", "The slip has {n} lines more.") \
	X(R_SEEN_BARE_ALL, "reply-seen-bare-all", "Seen bare: {list}.") \
	X(R_OPEN_ON, "reply-open-on", "A TOURNIQUET IS ON: {list}.") \
	X(R_OPEN_MAY_BE_ON, "reply-open-may-be-on", "A TOURNIQUET MAY BE ON: {list}.") \
	X(R_OPEN_ITEMS, "reply-open-items", "NOT ACCOUNTED FOR: {list}.") \
	X(R_OPEN_NOT_BARE, "reply-open-not-bare", "NOT SEEN BARE: {list}.") \
	X(R_NOT_ON, "reply-not-on", "Not on: {digit}.") \
	X(R_NEXT, "reply-next", "Next.") \
	X(R_AFTER_CALLED, "reply-after-called", "Case {case}: patient called back, or still here, entered.") \
	X(R_AFTER_LOOK, "reply-after-look", "Case {case}: that patient's digit seen bare, entered.") \
	X(R_AFTER_LOOK_AT, "reply-after-look-at", "Case {case}: {digit} seen bare, entered.") \
	X(R_AFTER_ON, "reply-after-on", \
	  "Case {case}: a tourniquet is ON that patient's digit, entered. Call the surgeon now, to take it off. The slip prints.") \
	X(R_AFTER_ON_IT, "reply-after-on-it", \
	  "Case {case}: a tourniquet is ON the {digit}, entered. Call the surgeon now, to take it off. The slip prints.") \
	X(R_AFTER_WARD, "reply-after-ward", "Case {case}: ward told, entered.") \
	X(R_FOUND_AFTER, "reply-found-after", "Found after the end of a case.") \
	X(R_AWAKE, "reply-awake", "The patient is awake: quiet sounds, plain words.") \
	X(R_USUAL_SOUNDS, "reply-usual-sounds", "Usual sounds again.") \
	X(R_SPARE_SCANNER, "reply-spare-scanner", \
	  "This scanner is now a spare of {room}, until a card THIS ROOM or SPARE SCANNER of another room is scanned with it.") \
	X(R_SCANNER_WORKS, "reply-scanner-works", "This scanner now works for {room}.") \
	X(R_CAMERA_SHOWN, "reply-camera-shown", \
	  "For {n} s this station's own screen shows what {scanner} sees. It is kept nowhere. The card again ends it.") \
	X(R_CAMERA_NOT_SHOWN, "reply-camera-not-shown", "The camera's picture is no longer shown.") \
	X(R_NO_CAMERA, "reply-no-camera", "No camera works in {room}: there is no picture to show.") \
	X(R_CORRECTED, "reply-corrected", \
	  "Correction of case {case} entered beside what it corrects. An addendum slip prints: put it in the notes.") \
	X(R_WHY_ENTERED, "reply-why-entered", "Why step {n} of the search was not done is entered.") \
	X(R_NUMBER_ENTERED, "reply-number-entered", "Incident number of case {case} entered.") \
	X(R_LEFT_AS_IT_IS, "reply-left-as-it-is", "Left as it is.") \
	/* on and off */ \
	X(R_REMIND_OFF, "reply-remind-off", "Reminder: the tourniquet of the {digit} is off and not yet accounted for.") \
	X(R_REMIND, "reply-remind", "Reminder: tourniquet on the {digit} for {what}.") \
	X(R_TOLD, "reply-told", "Reminder for the {digit} acknowledged by {person}.") \
	X(R_SEEN_BARE, "reply-seen-bare", "{digit} seen bare at {time}.") \
	X(R_ON_FOR, "reply-on-for", "Tourniquet on the {digit} for {what}.") \
	X(R_MORE_THAN_ONE, "reply-more-than-one", "More than one digit had a tourniquet in this case.") \
	X(R_ON_FORCEPS, "reply-on-forceps", "Tourniquet on, {digit}, from {time}; forceps on it. The clock runs.") \
	X(R_ON_NO_FORCEPS, "reply-on-no-forceps", \
	  "Tourniquet on, {digit}, from {time}; no forceps on it. The clock runs.") \
	X(R_FINAL_AGAIN, "reply-final-again", "The final count starts again.") \
	X(R_TAKEN_FOR_SHOWN, "reply-taken-for-shown", \
	  "It is taken for the {item} that was shown: if that one lies there as well, this is another: scan its pack; UNLISTED TOURNIQUET if there is none.") \
	X(R_TAKEN_FOR_MISSING, "reply-taken-for-missing", \
	  "It is taken for the {item} that was missing: if it is another one, scan its pack; if it went on earlier, scan how many MINUTES AGO.") \
	X(R_SECOND_ON, "reply-second-on", \
	  "A second tourniquet on the {digit}. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.") \
	X(R_ONE_OFF, "reply-one-off", "One of the tourniquets is off the {digit}. Another is still on; the clock runs.") \
	X(R_MOVED, "reply-moved", "Moved from the {digit} to the {other_digit}; the time is kept.") \
	X(R_LOOK_AGAIN, "reply-look-again", "The look is not: it is done again.") \
	X(R_NEVER_ON, "reply-never-on", \
	  "Taken away: no tourniquet was on the {digit}, says the team. The record keeps both.") \
	X(R_NEVER_ON_OTHER_RUNS, "reply-never-on-other-runs", \
	  "Taken away: no tourniquet was on the {digit}. The clock of the {other_digit} runs.") \
	X(R_NEVER_OFF, "reply-never-off", \
	  "OFF taken back: the tourniquet is still on the {digit}, for {what}. The clock runs.") \
	X(R_LEFT_DIGIT, "reply-left-digit", "Left as it is: the {digit}.") \
	X(R_OFF_EARLIER, "reply-off-earlier", "Off {minutes} min earlier, {digit}.") \
	X(R_ON_EARLIER, "reply-on-earlier", "On {minutes} min earlier, {digit}.") \
	X(R_MAYBE_EARLIER, "reply-maybe-earlier", "'On?' from {minutes} min earlier, {digit}.") \
	X(R_IS_ONE_OF_THOSE, "reply-is-one-of-those", \
	  "{item}: one of those that were counted in without their mark; it is known by it from now on. Scan its mark again to account for it.") \
	X(R_PUSHED_AWAY, "reply-pushed-away", "{card} is not entered: scan it again after this.") \
	X(R_SUSPENDED_HAS_ONE, "reply-suspended-has-one", \
	  "Case {case}, suspended here, has one on the {digit} as well: if that is meant, MISREAD, then YES.") \
	X(R_LOOK_MISREAD, "reply-look-misread", \
	  "The look at the {digit} is taken back: it is looked at again. If another was looked at, scan its card.") \
	X(R_ISOLATED_IN_USE, "reply-isolated-in-use", \
	  "If a piece of it is in use: UNDO, it stays in the count. Count aloud anew what is left.") \
	X(R_NO_HANDOVER_YET, "reply-no-handover-yet", "The handover is not entered: scan HANDOVER again after this.") \
	X(R_SECOND_MOVED, "reply-second-moved", \
	  "The second tourniquet moved from the {digit} to the {other_digit}, from {time} on. The first is still on the {digit}.") \
	X(R_OTHER_STILL_ON, "reply-other-still-on", "On the {digit} it is still on; its clock runs on.") \
	X(R_MISREAD_DIGIT, "reply-misread-digit", "Misread: the {digit}, or a pack.") \
	X(R_MISREAD, "reply-misread", "Misread.") \
	X(R_CLOCK_RUNS_ON, "reply-clock-runs-on", "The clock of the {digit} runs on: UNDO does not stop it.") \
	X(R_STILL_ON, "reply-still-on", "Still on. The clock runs.") \
	X(R_MARKED, "reply-marked", "Marked digit: {digit}.") \
	X(R_MISREAD_THE, "reply-misread-the", "Misread: the {digit}.") \
	X(R_DIGIT_RIGHT, "reply-digit-right", "The {digit} is right, says the team.") \
	X(R_NOT_THE, "reply-not-the", "Not the {digit}.") \
	X(R_NOT_MARKED_ONE, "reply-not-marked-one", \
	  "Left as it is: it went on the {digit}, which is not the marked digit. Tell the surgeon now.") \
	X(R_FORCEPS_MOVED, "reply-forceps-moved", \
	  "Forceps moved away: tourniquet without forceps on the {digit}. The clock runs.") \
	X(R_SCANNED_BEFORE, "reply-scanned-before", "{digit}: scanned at {time}, before what was entered since.") \
	X(R_DRESSING_ON, "reply-dressing-on", "Noted: a dressing is on. It comes down for the look at the bare digit.") \
	X(R_LOOKED_TOO, "reply-looked-too", "Looked at the bare digit as well: {what}.") \
	X(R_LOOKED_ALREADY, "reply-looked-already", "Entered once already: looked at the bare digit as well: {what}.") \
	X(R_BY_PATIENT, "reply-by-patient", "the patient") \
	X(R_BY_CARER, "reply-by-carer", "a carer") \
	X(R_BY_COLLEAGUE, "reply-by-colleague", "a colleague") \
	X(R_BY_NOBODY, "reply-by-nobody", "nobody else") \
	/* packs and items */ \
	X(R_NAMED_ALOUD, "reply-named-aloud", \
	  "Noted: the tourniquet that is not listed was named aloud. Write on the paper sheet what it is.") \
	X(R_LISTED, "reply-listed", "Listed: the tourniquet is {item}.") \
	X(R_DROPPED_IS_THAT, "reply-dropped-is-that", \
	  "Listed: the tourniquet that was entered is the {item} that was dropped. Tell the surgeon that it lay on the floor.") \
	X(R_LISTED_ON, "reply-listed-on", "Listed: the tourniquet that is on is {item}.") \
	X(R_ONE_IS_LISTED, "reply-one-is-listed", "{item}: one is listed.") \
	X(R_ONE_ON_SHEET, "reply-one-on-sheet", "{item}: one is on the sheet.") \
	X(R_LISTED_ONCE, "reply-listed-once", "Listed once: {item}.") \
	X(R_ADDING, "reply-adding", "Adding.") \
	X(R_RETURNED, "reply-returned", "Returned unopened.") \
	X(R_NO_CODE, "reply-no-code", "An item without a code.") \
	X(R_DROPPED_WHAT, "reply-dropped-what", "Dropped.") \
	X(R_WRONG_NUMBER, "reply-wrong-number", "Wrong number in the pack.") \
	X(R_DROPPED, "reply-dropped", "Dropped: {item}. It stays in the room and in the count.") \
	X(R_ROLLS_ON, "reply-rolls-on", \
	  "Noted. A tourniquet that rolls on may carry infection or tumour along and tear a flap.") \
	X(R_NO_WOUND, "reply-no-wound", "No open wound, flap, infection or tumour on the digit, says the team.") \
	X(R_NO_CODE_IN, "reply-no-code-in", "Counted in: {item}. Say aloud what it is and write it on the paper sheet.") \
	X(R_EXTRA, "reply-extra", "Extra item: {item}, beyond what is on the sheet.") \
	X(R_EXTRA_WHY, "reply-extra-why", "Extra item: {item}, beyond what is on the sheet; {why}.") \
	X(R_OPENED_LATE, "reply-opened-late", "Entered late: {item} was opened in this case.") \
	X(R_OPENED_LATE_WHY, "reply-opened-late-why", \
	  "Entered late: {item} was opened in this case. But {why}: the surgeon answers for it.") \
	X(R_EXTRA_UNKNOWN, "reply-extra-unknown", \
	  "Extra item, origin not known: isolate it, keep it in the room. A misread: scan MISREAD, then its code.") \
	X(R_LEFT_ITEM, "reply-left-item", "Left as it is: {item}.") \
	X(R_GIVEN_BACK, "reply-given-back", "Returned unopened: {item}. It may be used in another case.") \
	X(R_OTHER_PACK_USED, "reply-other-pack-used", "So the other pack of the kind was opened and used: the sheet says so now.") \
	X(R_GIVEN_BACK_APART, "reply-given-back-apart", \
	  "Returned unopened: {item}. But {why}: lay it apart for stores; no case may use it.") \
	X(R_TRAY_BACK_APART, "reply-tray-back-apart", \
	  "The tray goes back unopened. But {why}: lay the tray apart for stores; no case may use it.") \
	X(R_STRUCK, "reply-struck", "Struck as a misread: {item}. The record keeps it.") \
	X(R_UNLISTED, "reply-unlisted", \
	  "Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.") \
	X(R_FORCEPS_MORE, "reply-forceps-more", \
	  "Added: 1 further artery forceps, mark unreadable. If it is counted in already: UNDO.") \
	X(R_FORCEPS_IN, "reply-forceps-in", "Counted in: 1 artery forceps, mark unreadable. At the end it is shown.") \
	N(R_OFFCUT, "reply-offcut", "Offcut counted: {item}, now {n} piece.", "Offcut counted: {item}, now {n} pieces.") \
	X(R_OFFCUT_OF_OTHER, "reply-offcut-of-other", \
	  "Nothing was cut from this one: the offcut is asked for with the other tourniquet.") \
	X(R_IN_USE_THERE, "reply-in-use-there", \
	  "{item} is in use in case {case}, {room}: it is no longer on the sheet of case {other_case}.") \
	X(R_SCANNED_THERE, "reply-scanned-there", \
	  "{item} of case {case} was scanned in {room}: fetch it from there.") \
	X(R_HERE_NOW, "reply-here-now", "{item} is on the open sheet of case {case} in {room}.") \
	X(R_FOUND_MISSING_THERE, "reply-found-missing-there", \
	  "FOUND: {item} comes from case {case}, where it was missing. Look at that patient's digit now and tell the surgeon. Keep it out of this field.") \
	X(R_FOUND_COUNTED_THERE, "reply-found-counted-there", \
	  "FOUND: {item} comes from case {case}, which counted it as accounted for. Look at that patient's digit now and tell the surgeon. Keep it out of this field.") \
	X(R_FOUND_FOR_CASE, "reply-found-for-case", \
	  "Found after the end: entered for case {case}. Look at that patient's digit now and tell the surgeon.") \
	X(R_EXPIRY_READ, "reply-expiry-read", \
	  "Expiry date read aloud, says {person}. If it has passed: take the item off the field and use another.") \
	X(R_STORES_ASKED, "reply-stores-asked", \
	  "Stores were asked about recalls, says {person}. What was recalled: take it off the field and use another.") \
	/* counts and search */ \
	X(R_COUNTING_AGAIN, "reply-counting-again", "Counting again, line by line.") \
	X(R_FINAL, "reply-final", "Final count, line by line.") \
	X(R_INTERRUPTED, "reply-interrupted", "Interrupted: {item} is counted again.") \
	X(R_SHOWN_MORE, "reply-shown-more", "{item}: {n} shown, {most} more than are on the sheet.") \
	X(R_SHOWN_OF, "reply-shown-of", "{item}: {n} of {all} shown.") \
	X(R_SHOWN_PIECES_MISSING, "reply-shown-pieces-missing", "{item}: shown, pieces missing; {n} of {all} accounted for.") \
	X(R_NOT_THERE, "reply-not-there", "NOT THERE: {item}, {n} of {all}.") \
	X(R_AGREED_INITIAL, "reply-agreed-initial", \
	  "Initial count agreed aloud by {person} and {other_person}, recorded by {recorder}.") \
	X(R_AGREED_FINAL, "reply-agreed-final", \
	  "Final count agreed aloud by {person} and {other_person}, recorded by {recorder}.") \
	X(R_AGREED_HANDOVER, "reply-agreed-handover", \
	  "Handover count agreed aloud by {person} and {other_person}, recorded by {recorder}.") \
	X(R_AGREED_ADDED, "reply-agreed-added", \
	  "What was added agreed aloud by {person} and {other_person}, recorded by {recorder}.") \
	X(R_READ_INITIAL, "reply-read-initial", "Initial count: circulating badge read.") \
	X(R_READ_FINAL, "reply-read-final", "Final count: circulating badge read.") \
	X(R_READ_ADDED, "reply-read-added", "What was added: circulating badge read.") \
	X(R_ALONE_INITIAL, "reply-alone-initial", "{person} counted: the initial count, single-person count.") \
	X(R_ALONE_ADDED, "reply-alone-added", "{person} counted: what was added, single-person count.") \
	X(R_ALONE_HANDOVER, "reply-alone-handover", "{person} counted: the handover count, single-person count.") \
	X(R_ALONE_FINAL, "reply-alone-final", "{person} counted: the final count, single-person count.") \
	X(R_FOUND, "reply-found", "Found.") \
	X(R_NONE_OF_MISSING, "reply-none-of-missing", "None of what is missing in this case.") \
	X(R_NOTHING_MISSING, "reply-nothing-missing", "Nothing is missing in this case. It may be of an earlier one.") \
	X(R_STEP_DONE, "reply-step-done", "Search step {n} done: {step}.") \
	X(R_STEP_NOT_DONE, "reply-step-not-done", \
	  "Entered as NOT done: search step {n}, {step}. Type why, or write it on the slip.") \
	X(R_STEPS_ANSWERED, "reply-steps-answered", "Each step of the search is answered.") \
	/* the team and the sign-out */ \
	X(R_DECIDES, "reply-decides", \
	  "{person} decides: it is used although it rolls on over an open wound, flap, infection or tumour. The slip says so.") \
	X(R_ANSWERS_FOR, "reply-answers-for", \
	  "{person} answers for the item that the station refused. The slip says so.") \
	X(R_VISITOR_WRITTEN, "reply-visitor-written", "Visitor's name written, says {person}.") \
	X(R_PLACE, "reply-place", "{person}: {place}.") \
	X(R_PERSON, "reply-person", "{person}.") \
	X(R_PERSON_SURGEON, "reply-person-surgeon", "{person}, operating surgeon.") \
	X(R_HANDOVER, "reply-handover", "Handover.") \
	X(R_TAKES_OVER_AS, "reply-takes-over-as", "{person} takes over from {other_person} as {place}.") \
	X(R_TAKES_OVER_PLACE, "reply-takes-over-place", "{person} takes over from {other_person}, {place}.") \
	X(R_TAKES_OVER, "reply-takes-over", "{person} takes over.") \
	X(R_HANDS_OVER, "reply-hands-over", "{person} hands over ({place}).") \
	X(R_FINISH_HANDOVER, "reply-finish-handover", "{digit}: the clock runs as 'on?'. First finish the handover.") \
	X(R_SEEN_ON, "reply-seen-on", "Tourniquet seen on the {digit}.") \
	X(R_WITHOUT_SIGHT, "reply-without-sight", "Handover without full sight of the {digit}. The slip says so.") \
	X(R_NO_HANDOVER, "reply-no-handover", "No handover.") \
	X(R_POINT, "reply-point", "Sign-out point {n} of {all}: {step}") \
	X(R_SIGNS_OUT, "reply-signs-out", "{person} signs out.") \
	X(R_HELD_AT, "reply-held-at", "Entered as NO: the sign-out is held at point {n}: {step}") \
	X(R_POINTS_YES, "reply-points-yes", "Each sign-out point is answered YES.") \
	X(R_ENDS_UNRESOLVED, "reply-ends-unresolved", "{person} decides to end this case unresolved.") \
	/* slips, and what was read or stored */ \
	X(R_SLIP_SEEN, "reply-slip-seen", "Slip {slip} of case {case}, copy {copy}, seen: this paper came out.") \
	X(R_SLIP_TYPED, "reply-slip-typed", \
	  "Slip {slip} of case {case}, copy {copy}, typed: somebody read the code of this paper, no scanner did.") \
	X(R_SLIP_OLD_CODE, "reply-slip-old-code", \
	  "Its code is of an earlier version, which anybody could have worked out.") \
	X(R_STORED_WAIT, "reply-stored-wait", "Stored scans wait for an answer.") \
	N(R_STORED_LATE, "reply-stored-late", \
	  "{n} stored scan is entered as late.", \
	  "{n} stored scans are entered as late.") \
	N(R_STORED_CAME, "reply-stored-came", "{n} stored scan came.", "{n} stored scans came.") \
	X(R_ON_MAYBE_FROM, "reply-on-maybe-from", "{digit}: the clock runs as 'on?' from {time}.") \
	X(R_NOT_HELD, "reply-not-held", "NOT held: {list}. Enter it from the paper sheet.") \
	X(R_NOT_HELD_SAID, "reply-not-held-said", "NOT held: {list}.") \
	N(R_NOT_HELD_FIRST, "reply-not-held-first", \
	  "{n} NOT held: {list}. Enter it from the paper sheet.", \
	  "{n} NOT held, the first: {list}. Enter them from the paper sheet.") \
	N(R_THROWN_AWAY, "reply-thrown-away", \
	  "{n} stored scan was thrown away: {list}. The record says so.", \
	  "{n} stored scans were thrown away: {list}. The record says so.") \
	N(R_STORED_ENTERED, "reply-stored-entered", \
	  "{n} stored scan was entered as late.", \
	  "{n} stored scans were entered as late.") \
	N(R_STORED_SOME, "reply-stored-some", \
	  "{n} of {all} stored scans was entered as late. NOT entered:", \
	  "{n} of {all} stored scans were entered as late. NOT entered:") \
	X(R_NOT_ENTERED_YET, "reply-not-entered-yet", "Not entered yet.") \
	/* off, with the minutes: a time of day only where the wall clock holds */ \
	X(R_OFF, "reply-off", "Off, {digit}, at {time}, after {what}. Off is not yet accounted for.") \
	X(R_OFF_AFTER, "reply-off-after", "Off, {digit}, after {what}. Off is not yet accounted for.") \
	X(R_OFF_NO_WALL, "reply-off-no-wall", \
	  "Off, {digit}, after {what}; the wall clock cannot be trusted. Off is not yet accounted for.") \
	/* counted in */ \
	N(R_IN, "reply-in", "Counted in: {n} {item} {more}.", "Counted in: {n} × {item} {more}.") \
	X(R_IN_TRAY, "reply-in-tray", "Counted in: {item}, {n} instruments from its list {more}.") \
	N(R_ADDED, "reply-added", "Added: {n} {item} {more}.", "Added: {n} × {item} {more}.") \
	X(R_ADDED_TRAY, "reply-added-tray", "Added: {item}, {n} instruments from its list {more}.") \
	X(R_LOT, "reply-lot", "(lot {lot})") \
	X(R_LOT_EXPIRY, "reply-lot-expiry", "(lot {lot}, expires {date})") \
	X(R_NO_OWN_NUMBER, "reply-no-own-number", \
	  "It bears no number of its own: the station cannot tell it from another.") \
	X(R_MISFIT, "reply-misfit", \
	  "The maker states {n} to {all} mm for the {item}: another size may be needed.") \
	X(R_SIZE_STATED, "reply-size-stated", "Circumference of the digit stated as {n} mm.") \
	X(R_LISTED_AS, "reply-listed-as", \
	  "Listed as what it is: {item}. But {why}: the surgeon answers for it.") \
	X(R_LISTED_AS_ON, "reply-listed-as-on", \
	  "Listed as what it is, because it is already on: {item}. But {why}: the surgeon answers for it.") \
	X(R_LISTED_IMPROVISED, "reply-listed-improvised", \
	  "Listed as what it is: IMPROVISED, {item}. But {why}: the surgeon answers for it.") \
	X(R_LISTED_IMPROVISED_ON, "reply-listed-improvised-on", \
	  "Listed as what it is, because it is already on: IMPROVISED, {item}. But {why}: the surgeon answers for it.") \
	N(R_ISOLATED, "reply-isolated", \
	  "Isolated, not in the count: {item}. Still counted in: {n} {item}. Keep the whole pack in the room, tell stores.", \
	  "Isolated, not in the count: {item}. Still counted in: {n} × {item}. Keep the whole pack in the room, tell stores.") \
	X(R_TRAY_ISOLATED, "reply-tray-isolated", \
	  "Isolated, not in the count: each thing on the list of {item}. Keep the whole tray in the room, tell stores.") \
	X(R_ISOLATED_ALL, "reply-isolated-all", \
	  "Isolated, not in the count: {item}. Still counted in: nothing of it. Keep the whole pack in the room, tell stores.") \
	X(R_FROM_PAPER, "reply-from-paper", \
	  "Case {case} opened in {room}, from paper sheet {n}: enter it from top to bottom. Each line is marked late.") \
	/* what no scan of the room was decided on */ \
	X(R_NOT_ENTERED, "reply-not-entered", "NOT ENTERED: the station could not keep it.") \
	X(R_NOT_ENTERED_FOR, "reply-not-entered-for", "NOT ENTERED: the station {fault}.") \
	X(R_SCANNER_BACK, "reply-scanner-back", \
	  "Scanner {scanner} works for its own room again: too many scanners were carried to others. Scan the card of this room with it before anything else.") \
	X(R_WAS_AWAY, "reply-was-away", \
	  "The station was away between {from} and {to}. Look at each tourniquet now, and enter what was done meanwhile.") \
	X(R_HALF_FORGOTTEN, "reply-half-forgotten", \
	  "NOT ENTERED: the first of two codes that scanner {scanner} read is forgotten, because too many others wait for their second. Scan both again.") \
	X(R_RECALL, "reply-recall", \
	  "Recall: {item} is in quarantine from now on: {typed}. Take out what lies ready.") \
	X(R_RECALL_LOT, "reply-recall-lot", \
	  "Recall: {item}, lot {lot}, is in quarantine from now on: {typed}. Take out what lies ready.") \
	X(R_RECALL_OVER, "reply-recall-over", "{item} is out of quarantine: {typed}.") \
	X(R_RECALL_LOT_OVER, "reply-recall-lot-over", "{item}, lot {lot}, is out of quarantine: {typed}.") \
	X(R_ITEM_TWICE, "reply-item-twice", \
	  "Item {identity} was counted in two cases: case {case} of station {station} and case {other_case} of station {other_station}. One of them is a wrong number: look at both slips.") \
	X(R_CHECK_NOT_BEGUN, "reply-check-not-begun", \
	  "Scanner check not begun, because a case is open: scan the sheet when the case is over.") \
	X(R_CHECK_BEGUN, "reply-check-begun", \
	  "Scanner check: scan the sheet once from the first code to the last, the first one again too.") \
	X(R_CHECK_DONE, "reply-check-done", \
	  "Scanner check done: this station now knows how this scanner sends.") \
	X(R_CHECK_PARTLY, "reply-check-partly", \
	  "Scanner check done, but not everything was learned: {fault}.") \
	X(R_CHECK_FAILED, "reply-check-failed", "Scanner check not complete: {fault}.") \
	X(R_CHECK_LOST, "reply-check-lost", "Scanner check not complete: the scanner was lost.") \
	X(R_CHECK_ENDED, "reply-check-ended", \
	  "Scanner check ended, because a case was opened: scan the sheet again when the case is over.") \
	/* taken back: which step it was */ \
	X(R_TAKEN_BACK, "reply-taken-back", "Taken back: {what}. The record keeps both.") \
	X(R_TAKEN_BACK_DIGIT, "reply-taken-back-digit", "Taken back: {what}, {digit}. The record keeps both.") \
	X(R_TAKEN_BACK_ITEM, "reply-taken-back-item", "Taken back: {what}, {item}. The record keeps both.") \
	X(R_STEP_BADGE, "reply-step-badge", "the badge") \
	X(R_STEP_COUNT, "reply-step-count", "the count that was agreed") \
	X(R_STEP_MAYBE_ON, "reply-step-maybe-on", "'on?'") \
	X(R_STEP_PAID, "reply-step-paid", "what was answered for") \
	X(R_STEP_SHOWN, "reply-step-shown", "accounted for") \
	X(R_STEP_NOT_SHOWN, "reply-step-not-shown", "not there") \
	X(R_STEP_ON, "reply-step-on", "tourniquet on") \
	X(R_STEP_OFF, "reply-step-off", "off") \
	X(R_STEP_SEEN_BARE, "reply-step-seen-bare", "seen bare") \
	X(R_STEP_BEGUN, "reply-step-begun", "the beginning of the count") \
	X(R_STEP_EARLIER, "reply-step-earlier", "the number of minutes") \
	X(R_STEP_FORCEPS_MOVED, "reply-step-forceps-moved", "that forceps were moved") \
	X(R_STEP_SEARCH, "reply-step-search", "the step of the search") \
	X(R_STEP_ANSWER, "reply-step-answer", "the answer") \
	X(R_STEP_QUESTION, "reply-step-question", "the question") \
	X(R_STEP_ADDED, "reply-step-added", "what was added") \
	X(R_STEP_IN, "reply-step-in", "counted in") \
	X(R_STEP_LAST, "reply-step-last", "the last scan") \
	X(R_SIGNED_HELD, "reply-signed-held", \
	  "Slip {slip}, copy {copy}, of case {case}: signed by this station, and the record holds what was signed.") \
	X(R_CODE_FITS, "reply-code-fits", \
	  "Slip {slip}, copy {copy}, of case {case}: this paper was made here. What was signed is in its other code.")
/* clang-format on */

#endif
