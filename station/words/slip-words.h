/* The sentences of a slip. The form is that of sayings.h. */
#ifndef BANDTALLY_WORDS_SLIP_WORDS_H
#define BANDTALLY_WORDS_SLIP_WORDS_H

/* clang-format off */
#define SLIP_WORDS(X, N) \
	SLIP_HEAD(X, N) \
	SLIP_DIGITS(X, N) \
	SLIP_ITEMS(X, N) \
	SLIP_AMISS(X, N) \
	SLIP_ROWS(X, N) \
	SLIP_ENTRIES(X, N) \
	SLIP_NOTES(X, N) \
	SLIP_HOWS(X, N) \
	SLIP_PAPER(X, N)

/* What stands above everything else, and beside the patient's label. */
#define SLIP_HEAD(X, N) \
	X(SLIP_RECONCILED, "slip-reconciled", "Reconciled.") \
	X(SLIP_CANCELLED, "slip-cancelled", "Case cancelled.") \
	X(SLIP_CANCELLED_WHY, "slip-cancelled-why", "Case cancelled: {reason}.") \
	X(SLIP_NOT_ENDED, "slip-not-ended", "Not ended yet.") \
	X(SLIP_DISCREPANCY, "slip-discrepancy", "DISCREPANCY") \
	X(SLIP_UNRESOLVED, "slip-unresolved", "UNRESOLVED") \
	X(SLIP_FOUND_LATER, "slip-found-later", "FOUND LATER") \
	X(SLIP_CASE_OPEN, "slip-case-open", "case open") \
	X(SLIP_ADDS_TO, "slip-adds-to", "addendum to slip {slip}, case {case}") \
	X(SLIP_ADDS_TO_CASE, "slip-adds-to-case", "addendum to case {case}") \
	X(SLIP_NOTHING_IN, "slip-nothing-in", "Nothing was counted in.") \
	X(SLIP_ARCHIVED, "slip-archived", "What was counted stands in the archive {text} and on the slips of this case, not here.") \
	X(SLIP_CASE, "slip-case", "case {case}") \
	X(SLIP_LABELLED, "slip-labelled", "label {text}") \
	X(SLIP_FROM_PAPER, "slip-from-paper", "from paper sheet {n}") \
	X(SLIP_DAY, "slip-day", "{day} {month} {year}") \
	X(SLIP_HOURS, "slip-hours", "{from} to {to}") \
	X(SLIP_HOURS_TO_DAY, "slip-hours-to-day", "{from} to {to}, {words}") \
	X(SLIP_OPEN_AT, "slip-open-at", "{from}, open at {to}") \
	X(SLIP_HOURS_OF_ENTRY, "slip-hours-of-entry", "entered {from} to {to}") \
	X(SLIP_MONTH_1, "slip-month-1", "Jan") \
	X(SLIP_MONTH_2, "slip-month-2", "Feb") \
	X(SLIP_MONTH_3, "slip-month-3", "Mar") \
	X(SLIP_MONTH_4, "slip-month-4", "Apr") \
	X(SLIP_MONTH_5, "slip-month-5", "May") \
	X(SLIP_MONTH_6, "slip-month-6", "Jun") \
	X(SLIP_MONTH_7, "slip-month-7", "Jul") \
	X(SLIP_MONTH_8, "slip-month-8", "Aug") \
	X(SLIP_MONTH_9, "slip-month-9", "Sep") \
	X(SLIP_MONTH_10, "slip-month-10", "Oct") \
	X(SLIP_MONTH_11, "slip-month-11", "Nov") \
	X(SLIP_MONTH_12, "slip-month-12", "Dec") \
	X(SLIP_SINGLE, "slip-single", "Single-person count: no second person agreed it aloud. Timed from gloving.") \
	X(SLIP_SINGLE_NO_DIGIT, "slip-single-no-digit", "Single-person count: no second person agreed it aloud.")

#define SLIP_DIGITS(X, N) \
	X(SLIP_DIGIT, "slip-digit", "{digit}: tourniquet {words}") \
	X(SLIP_DIGIT_CORRECTED, "slip-digit-corrected", "{digit}: tourniquet {words}, corrected") \
	X(SLIP_DIGIT_ON, "slip-digit-on", "{digit}: tourniquet STILL ON, {words}") \
	X(SLIP_DIGIT_ON_BRIEF, "slip-digit-on-brief", "{digit}: tourniquet on for {words}") \
	X(SLIP_MINUTES, "slip-minutes", "{n} min") \
	X(SLIP_AT_LEAST, "slip-at-least", "at least {n} min") \
	X(SLIP_TIMES, "slip-times", "{from} to {to}") \
	X(SLIP_TIMES_SET_BACK, "slip-times-set-back", "from {from} (the wall clock was set back)") \
	X(SLIP_TIMES_WENT_BACK, "slip-times-went-back", "{from} to {to} (the clocks went back)") \
	X(SLIP_SINCE, "slip-since", "on since {from}") \
	X(SLIP_STRETCH, "slip-stretch", "{first} ({second})") \
	X(SLIP_STRETCHES, "slip-stretches", "{list}; the longest {words}") \
	X(SLIP_SEEN_BARE, "slip-seen-bare", "{words}, seen bare at {time} by {person}") \
	X(SLIP_SEEN_BARE_ALSO, "slip-seen-bare-also", "{words}, seen bare at {time} by {person}; {what}") \
	X(SLIP_MINUTES_ON_PAPER, "slip-minutes-on-paper", "minutes on paper sheet {n}") \
	X(SLIP_ENTERED_AFTERWARDS, "slip-entered-afterwards", "entered afterwards") \
	X(SLIP_BARE_ON_PAPER, "slip-bare-on-paper", "on paper") \
	X(SLIP_SEEN_BARE_UNTIMED, "slip-seen-bare-untimed", "{words}, seen bare by {person}") \
	X(SLIP_SEEN_BARE_UNTIMED_ALSO, "slip-seen-bare-untimed-also", "{words}, seen bare by {person}; {what}") \
	X(SLIP_NOT_SEEN_BARE, "slip-not-seen-bare", "{words}, NOT SEEN BARE after the final count") \
	X(SLIP_NOT_SEEN_BARE_NO_COUNT, "slip-not-seen-bare-no-count", "{words}, NOT SEEN BARE; no final count was agreed") \
	X(SLIP_NOT_YET_BARE, "slip-not-yet-bare", "{words}, not yet seen bare") \
	X(SLIP_PATIENT_LOOKED, "slip-patient-looked", "the patient looked as well") \
	X(SLIP_CARER_LOOKED, "slip-carer-looked", "a carer looked as well") \
	X(SLIP_COLLEAGUE_LOOKED, "slip-colleague-looked", "a colleague looked as well") \
	X(SLIP_NOBODY_LOOKED, "slip-nobody-looked", "nobody else looked") \
	X(SLIP_WITH_FORCEPS, "slip-with-forceps", "{digit}: {item}, with {other_item}") \
	X(SLIP_WITHOUT_FORCEPS, "slip-without-forceps", "{digit}: {item}, no forceps on it") \
	X(SLIP_NOT_SAID, "slip-not-said", "{digit}: not said whether a tourniquet was on") \
	X(SLIP_REMINDER, "slip-reminder", "{minutes} min at {time}") \
	X(SLIP_REMINDER_OFF, "slip-reminder-off", "{minutes} min since it went on, off by then, at {time}") \
	X(SLIP_REMINDERS_TOLD, "slip-reminders-told", "{list}: told by {person}") \
	X(SLIP_REMINDERS_NOT, "slip-reminders-not", "{list}: shown on the board, no badge scanned") \
	X(SLIP_OF_DIGIT, "slip-of-digit", "{digit}: {words}") \
	X(SLIP_OF_ITEM, "slip-of-item", "{item}: {text}")

#define SLIP_ITEMS(X, N) \
	X(SLIP_ITEM_NUMBER, "slip-item-number", "no. {text}") \
	X(SLIP_ITEM_NUMBERS, "slip-item-numbers", "nos. {text}") \
	X(SLIP_ITEM_MARK, "slip-item-mark", "mark {text}") \
	X(SLIP_NO_IDENTITY, "slip-no-identity", "no identity of its own") \
	X(SLIP_LOT, "slip-lot", "lot {lot}") \
	X(SLIP_EXPIRY, "slip-expiry", "expiry {words}") \
	X(SLIP_MARK_READ, "slip-mark-read", "its mark read") \
	X(SLIP_SHOWN_BOTH, "slip-shown-both", "shown to both") \
	X(SLIP_SHOWN_ONE, "slip-shown-one", "shown, one person") \
	X(SLIP_INTACT, "slip-intact", "intact") \
	X(SLIP_CUT_COMPLETE, "slip-cut-complete", "cut and complete") \
	X(SLIP_PIECES_MISSING, "slip-pieces-missing", "pieces missing") \
	X(SLIP_EVIDENCE_OF, "slip-evidence-of", "{first}, {second}") \
	X(SLIP_EVIDENCE_SOME, "slip-evidence-some", "{n} {words}") \
	X(SLIP_NOT_COUNTED_YET, "slip-not-counted-yet", "not counted yet") \
	X(SLIP_OFF_NOT_COUNTED, "slip-off-not-counted", "off, not yet accounted for") \
	X(SLIP_ON_DIGIT, "slip-on-digit", "on a digit") \
	X(SLIP_RETURNED, "slip-returned", "returned unopened") \
	X(SLIP_ISOLATED, "slip-isolated", "isolated: wrong number") \
	X(SLIP_STRUCK, "slip-struck", "struck from the sheet") \
	X(SLIP_NOT_FOUND, "slip-not-found", "{n} NOT FOUND") \
	X(SLIP_NOT_ACCOUNTED, "slip-not-accounted", "{n} NOT ACCOUNTED FOR") \
	X(SLIP_IN_PIECES, "slip-in-pieces", "PIECES MISSING") \
	X(SLIP_EXTRA, "slip-extra", "EXTRA ITEM") \
	X(SLIP_ADDED, "slip-added", "added {time}") \
	X(SLIP_DROPPED, "slip-dropped", "dropped") \
	X(SLIP_IMPROVISED, "slip-improvised", "IMPROVISED, no tourniquet of the catalogue") \
	X(SLIP_UNLISTED, "slip-unlisted", "not listed in the catalogue") \
	X(SLIP_FOUND_AT, "slip-found-at", "found {time}; search at: {text}") \
	X(SLIP_ALL_ITEMS, "slip-all-items", "all items") \
	X(SLIP_NOTHING_EXTRA, "slip-nothing-extra", "nothing extra") \
	X(SLIP_EXTRAS, "slip-extras", "{n} extra") \
	X(SLIP_OUTCOME_INTACT, "slip-outcome-intact", "{item}: {n} of {all} shown intact") \
	X(SLIP_OUTCOME_CUT, "slip-outcome-cut", "{item}: {n} of {all} shown cut and complete") \
	X(SLIP_OUTCOME_MARK, "slip-outcome-mark", "{item}: {n} of {all} by its mark") \
	X(SLIP_OUTCOME_SHOWN, "slip-outcome-shown", "{item}: {n} of {all} shown") \
	X(SLIP_OUTCOME_PIECES, "slip-outcome-pieces", "{item}: shown, PIECES MISSING, {n} of {all} accounted for") \
	X(SLIP_OUTCOME_PIECES_SHOWN, "slip-outcome-pieces-shown", "{item}: {n} of {all} shown, PIECES MISSING") \
	X(SLIP_OUTCOME_NOT, "slip-outcome-not", "{item}: {n} of {all}, NOT ALL ACCOUNTED FOR") \
	X(SLIP_OUTCOME_EXTRA, "slip-outcome-extra", "{item}: {all} extra") \
	X(SLIP_OUTCOME_BARE, "slip-outcome-bare", "{digit}: tourniquet {words}, seen bare at {time}") \
	X(SLIP_OUTCOME_BARE_UNTIMED, "slip-outcome-bare-untimed", "{digit}: {words}, seen bare") \
	X(SLIP_OUTCOME_NOT_BARE, "slip-outcome-not-bare", "{digit}: tourniquet {words}, NOT SEEN BARE")

/* What is missing, where it may be, and what to do. */
#define SLIP_AMISS(X, N) \
	X(SLIP_ROW_NOT_FOUND, "slip-row-not-found", "Not found") \
	X(SLIP_ROW_IN_PIECES, "slip-row-in-pieces", "In pieces") \
	X(SLIP_ROW_EXTRA, "slip-row-extra", "Extra") \
	X(SLIP_ROW_OPEN, "slip-row-open", "Not shown") \
	X(SLIP_ROW_MAY_BE_ON, "slip-row-may-be-on", "May be on") \
	X(SLIP_ROW_WAS_ON, "slip-row-was-on", "Was on") \
	X(SLIP_ROW_NOW, "slip-row-now", "Now") \
	X(SLIP_ROW_ON_NOW, "slip-row-on-now", "ON now") \
	X(SLIP_ROW_NOT_BARE, "slip-row-not-bare", "Not bare") \
	X(SLIP_ROW_WHY, "slip-row-why", "Why") \
	X(SLIP_ROW_FOUND, "slip-row-found", "Found") \
	X(SLIP_ROW_CORRECTED, "slip-row-corrected", "Corrected") \
	N(SLIP_COUNTED, "slip-counted", "{n} {item}", "{n} × {item}") \
	N(SLIP_PIECES_OF, "slip-pieces-of", "{n} piece of one {item}", "{n} pieces of one {item}") \
	X(SLIP_ONE_IN_PIECES, "slip-one-in-pieces", "one, in {n} pieces") \
	X(SLIP_OF_SHOWN, "slip-of-shown", "{n} of {all} shown") \
	X(SLIP_PIECE_MISSING, "slip-piece-missing", "a piece is missing") \
	X(SLIP_ENDED_AT, "slip-ended-at", "ended {time}") \
	X(SLIP_ENDED_BY, "slip-ended-by", "ended {time} by {person}") \
	X(SLIP_NO_DIGIT_ENTERED, "slip-no-digit-entered", "no digit was entered for it") \
	X(SLIP_THE_DIGIT, "slip-the-digit", "the {digit}") \
	X(SLIP_NOTE_NOT_BARE, "slip-note-not-bare", "not yet seen bare") \
	X(SLIP_NOTE_SOME_NOT_BARE, "slip-note-some-not-bare", "not yet seen bare: {list}") \
	X(SLIP_NOTE_END_NOT_BARE, "slip-note-end-not-bare", "NOT SEEN BARE") \
	X(SLIP_NOTE_END_SOME_NOT_BARE, "slip-note-end-some-not-bare", "NOT SEEN BARE: {list}") \
	X(SLIP_OR, "slip-or", "{first} or {second}") \
	X(SLIP_DO_LOOK, "slip-do-look", "No dressing yet. Look at and feel {list} now. Tell the surgeon.") \
	X(SLIP_DO_LOOK_UNDER, "slip-do-look-under", "Take the dressing down. Look at and feel {list} now. Tell the surgeon.") \
	X(SLIP_DO_LOOK_END, "slip-do-look-end", "Take the dressing down. Look at and feel {list} now. Call the surgeon.") \
	X(SLIP_DO_STEP, "slip-do-step", "{step}. Tell the surgeon.") \
	X(SLIP_DO_STEP_END, "slip-do-step-end", "Not done yet: {step}. Call the surgeon.") \
	X(SLIP_DO_DECIDE, "slip-do-decide", "Every step of the search is answered. The surgeon decides.") \
	X(SLIP_DO_TELL_ALL, "slip-do-tell-all", "It may still be in or on the patient. Call the surgeon, tell the ward.") \
	X(SLIP_DO_OFF, "slip-do-off", "A tourniquet is on {list}. Call the surgeon now, tell the ward.") \
	X(SLIP_DO_BARE, "slip-do-bare", "Take the dressing down. Look at {list} now.") \
	X(SLIP_DO_OFF_FOUND, "slip-do-off-found", \
	  "Call the surgeon now, to take it off. Then look at {list} bare. Tell the ward.") \
	X(SLIP_DO_LOOK_FOUND, "slip-do-look-found", \
	  "Look at this patient's {list} now: take the dressing down. Tell the surgeon.") \
	X(SLIP_DO_TELL_FOUND, "slip-do-tell-found", "Tell the surgeon now: look at this patient's digits.") \
	X(SLIP_DO_COUNT, "slip-do-count", \
	  "Counted by hand: look at the paper sheet. Look at each digit that was operated on.") \
	X(SLIP_BOTH_DIGITS, "slip-both-digits", "both digits") \
	X(SLIP_EACH_DIGIT, "slip-each-digit", "each of the {n} digits") \
	X(SLIP_TWO_DIGITS, "slip-two-digits", "two digits") \
	X(SLIP_N_DIGITS, "slip-n-digits", "{n} digits") \
	X(SLIP_ANY_DIGIT, "slip-any-digit", "each digit that was operated on") \
	X(SLIP_DIGITS_OPERATED, "slip-digits-operated", "digits that were operated on") \
	X(SLIP_AFTER_DISCREPANCY, "slip-after-discrepancy", "After a discrepancy at {first}, {words}.") \
	X(SLIP_AFTER_DISCREPANCY_FOUND, "slip-after-discrepancy-found", "After a discrepancy at {first}, {words}; {second}.") \
	X(SLIP_TIME_ON_SLIP, "slip-time-on-slip", "{time} (slip {slip})") \
	N(SLIP_WAS_MISSING, "slip-was-missing", "not found: {n} {item}", "not found: {n} × {item}") \
	X(SLIP_WAS_IN_PIECES, "slip-was-in-pieces", "pieces missing: {item}") \
	N(SLIP_WAS_EXTRA, "slip-was-extra", "extra: {n} {item}", "extra: {n} × {item}") \
	X(SLIP_THEN_FOUND, "slip-then-found", "found {time} (search at: {text})") \
	X(SLIP_THEN_SHOWN, "slip-then-shown", "shown {time}") \
	X(SLIP_THEN_FOUND_ITEM, "slip-then-found-item", "found {time}: {item} (search at: {text})") \
	X(SLIP_THEN_SHOWN_ITEM, "slip-then-shown-item", "shown {time}: {item}") \
	X(SLIP_THEN_ON_DIGIT, "slip-then-on-digit", "shown {time} (it was on the {digit})") \
	X(SLIP_THEN_ON_DIGIT_ITEM, "slip-then-on-digit-item", "shown {time}: {item} (it was on the {digit})") \
	X(SLIP_THEN_CLOSED, "slip-then-closed", "closed {time}") \
	X(SLIP_MAY_BE_ON, "slip-may-be-on", "{words}; may be on {list}") \
	X(SLIP_CORRECTED_AT, "slip-corrected-at", "entered {time}") \
	X(SLIP_SEARCH_OPEN, "slip-search-open", "Search: tick if the station is silent") \
	X(SLIP_SEARCH_CLOSED, "slip-search-closed", "Search, {from} to {to}") \
	X(SLIP_SEARCH_ENDED, "slip-search-ended", "Search from {from}") \
	X(SLIP_STEP_DONE, "slip-step-done", "done {time}") \
	X(SLIP_STEP_NOT_DONE, "slip-step-not-done", "not done {time}, because (write it here):") \
	X(SLIP_STEP_NOT_DONE_WHY, "slip-step-not-done-why", "not done {time}, because: {reason}") \
	X(SLIP_STEP_FOUND, "slip-step-found", "found during it {time}") \
	X(SLIP_INCIDENT, "slip-incident", "incident number") \
	X(SLIP_INCIDENT_OWED, "slip-incident-owed", "incident number, owed") \
	X(SLIP_INCIDENT_IS, "slip-incident-is", "incident number {text}") \
	X(SLIP_ELSEWHERE, "slip-elsewhere", "Everything else stands on {list}, and is not repeated here.") \
	X(SLIP_NAMED_DISCREPANCY, "slip-named-discrepancy", "slip {slip} (discrepancy, {time})") \
	X(SLIP_NAMED_ENDED, "slip-named-ended", "slip {slip} ({what}, {time})") \
	X(SLIP_NAMED_ADDENDUM, "slip-named-addendum", "slip {slip} (addendum, {time})") \
	X(SLIP_END_RECONCILED, "slip-end-reconciled", "reconciled") \
	X(SLIP_END_UNRESOLVED, "slip-end-unresolved", "ended unresolved") \
	X(SLIP_END_CANCELLED, "slip-end-cancelled", "cancelled")

/* 'label  what is said', one row for each subject. */
#define SLIP_ROWS(X, N) \
	X(SLIP_ROW_ON_DIGIT, "slip-row-on-digit", "On digit") \
	X(SLIP_ROW_REMINDERS, "slip-row-reminders", "Reminders") \
	X(SLIP_ROW_COUNTS, "slip-row-counts", "Counts") \
	X(SLIP_ROW_SIGN_OUT, "slip-row-sign-out", "Sign-out") \
	X(SLIP_ROW_PEOPLE, "slip-row-people", "People") \
	X(SLIP_ROW_OWED, "slip-row-owed", "Owed") \
	X(SLIP_ROW_STILL_OWED, "slip-row-still-owed", "STILL OWED") \
	X(SLIP_ROW_DISCREPANCY, "slip-row-discrepancy", "Discrepancy") \
	X(SLIP_ROW_LATE, "slip-row-late", "Late") \
	X(SLIP_ROW_TYPED, "slip-row-typed", "Typed") \
	X(SLIP_ROW_OVERRIDDEN, "slip-row-overridden", "Overridden") \
	X(SLIP_ROW_CLOCK, "slip-row-clock", "Clock") \
	X(SLIP_ROW_NOTES, "slip-row-notes", "Notes") \
	X(SLIP_NO_COUNT, "slip-no-count", "no count was agreed") \
	X(SLIP_COUNT_INITIAL, "slip-count-initial", "initial {time}") \
	X(SLIP_COUNT_FINAL, "slip-count-final", "final {time}") \
	X(SLIP_COUNT_HANDOVER, "slip-count-handover", "handover {time}") \
	X(SLIP_COUNT_ADDED, "slip-count-added", "added {time}") \
	X(SLIP_PAPER_INITIAL, "slip-paper-initial", "initial") \
	X(SLIP_PAPER_FINAL, "slip-paper-final", "final") \
	X(SLIP_PAPER_HANDOVER, "slip-paper-handover", "handover") \
	X(SLIP_PAPER_ADDED, "slip-paper-added", "added") \
	X(SLIP_PAPER_AGREED, "slip-paper-agreed", \
	  "{list}, from paper: agreed aloud by {person} and {other_person}, recorded by {recorder}") \
	X(SLIP_PAPER_AGREED_SINGLE, "slip-paper-agreed-single", "{list}, from paper: single-person count by {person}") \
	X(SLIP_PAPER_ALL_POINTS, "slip-paper-all-points", "all {n} points yes, {words}, from paper") \
	X(SLIP_PAPER_SOME_POINTS, "slip-paper-some-points", "{n} of {all} points yes, {words}, from paper") \
	X(SLIP_PAPER_PERSON, "slip-paper-person", "{place} {person}") \
	X(SLIP_AGREED, "slip-agreed", "{list}: agreed aloud by {person} and {other_person}, recorded by {recorder}") \
	X(SLIP_AGREED_SINGLE, "slip-agreed-single", "{list}: single-person count by {person}") \
	X(SLIP_WITHOUT_SIGHT, "slip-without-sight", "{words}; without full sight of {list}") \
	X(SLIP_ALL_POINTS, "slip-all-points", "all {n} points yes, {words}, {time}") \
	X(SLIP_SOME_POINTS, "slip-some-points", "{n} of {all} points yes, {words}, {time}") \
	X(SLIP_POINT_NO, "slip-point-no", "NO: {step}") \
	X(SLIP_POINT_WAS_NO, "slip-point-was-no", "NO at first, {time}: {step}") \
	X(SLIP_SIGNED, "slip-signed", "{person}") \
	X(SLIP_WITNESSED, "slip-witnessed", "{person}, witness {other_person}") \
	X(SLIP_PERSON_FROM_TO, "slip-person-from-to", "{place} {person} {from} to {to}") \
	X(SLIP_PERSON_FROM, "slip-person-from", "{place} {person} from {from}") \
	X(SLIP_OPERATOR_ALONE, "slip-operator-alone", "operator, alone") \
	X(SLIP_NOBODY, "slip-nobody", "nobody") \
	X(SLIP_OWED, "slip-owed", "{time} {what}") \
	X(SLIP_OWED_WHY, "slip-owed-why", "{time} {what}: {text}") \
	X(SLIP_OWED_DIGIT, "slip-owed-digit", "{time} {digit}: {what}") \
	X(SLIP_OWED_PAID, "slip-owed-paid", "{words}; {text}, {time}") \
	X(SLIP_OWED_PAID_BY, "slip-owed-paid-by", "{words}; {text}, {time}, {person}") \
	X(SLIP_PAID_BY, "slip-paid-by", "settled by, when")

/* One entry that was late, typed, overridden or corrected, or was taken back. */
#define SLIP_ENTRIES(X, N) \
	X(SLIP_ENTRY, "slip-entry", "{time} {words}") \
	X(SLIP_ALL_TYPED, "slip-all-typed", "All {n} entries of this case were typed, {from} to {to}.") \
	X(SLIP_ALL_LATE, "slip-all-late", "All {n} entries of this case were entered late, {from} to {to}.") \
	X(SLIP_ALL_FROM_PAPER, "slip-all-from-paper", \
	  "All {n} entries come from paper sheet {sheet}, where the times of this case stand; those on this slip, {from} to {to}, are of the entry.") \
	X(SLIP_TAKEN_BACK, "slip-taken-back", "taken back: {words}") \
	X(SLIP_DID_NOT_SCAN_OUT, "slip-did-not-scan-out", "{person} did not scan out") \
	X(SLIP_NEVER_WENT_ON, "slip-never-went-on", "{digit}: no tourniquet had gone on") \
	X(SLIP_WAS_STILL_ON, "slip-was-still-on", "{digit}: OFF had been scanned, and it was still on") \
	X(SLIP_ON_EARLIER, "slip-on-earlier", "{digit}: on was {n} min earlier than scanned") \
	X(SLIP_OFF_EARLIER, "slip-off-earlier", "{digit}: off was {n} min earlier than scanned") \
	X(SLIP_MOVED, "slip-moved", "entered for the {digit}, was the {other_digit}; the time is kept") \
	X(SLIP_STRUCK_ITEM, "slip-struck-item", "struck from the sheet: {item}") \
	X(SLIP_STRUCK_OF, "slip-struck-of", "struck from the sheet, it is of case {case}: {item}") \
	X(SLIP_E_OPENED, "slip-e-opened", "case opened") \
	X(SLIP_E_JOINED, "slip-e-joined", "{person}: {place}") \
	X(SLIP_E_LEFT, "slip-e-left", "{person} left") \
	X(SLIP_E_ITEM_IN, "slip-e-item-in", "counted in: {item}") \
	X(SLIP_E_ITEM_LISTED, "slip-e-item-listed", "listed: {item}") \
	X(SLIP_E_ITEM_OFF, "slip-e-item-off", "off: {item}") \
	X(SLIP_E_SHOWN, "slip-e-shown", "shown: {item}") \
	X(SLIP_E_MARK_READ, "slip-e-mark-read", "mark read: {item}") \
	X(SLIP_E_NOT_SHOWN, "slip-e-not-shown", "not there: {item}") \
	X(SLIP_E_RETURNED, "slip-e-returned", "returned unopened: {item}") \
	X(SLIP_E_ISOLATED, "slip-e-isolated", "isolated: {item}") \
	X(SLIP_E_DROPPED, "slip-e-dropped", "dropped: {item}") \
	X(SLIP_E_MORE, "slip-e-more", "offcuts counted in: {item}") \
	X(SLIP_E_EXTRA, "slip-e-extra", "extra: {item}") \
	X(SLIP_E_FORCEPS_ON, "slip-e-forceps-on", "forceps on: {item}") \
	X(SLIP_E_FORCEPS_MOVED, "slip-e-forceps-moved", "forceps moved: {item}") \
	X(SLIP_E_AGAIN, "slip-e-again", "counted again: {item}") \
	X(SLIP_E_MARKED, "slip-e-marked", "{digit} marked") \
	X(SLIP_E_MAYBE_ON, "slip-e-maybe-on", "{digit}: perhaps on") \
	X(SLIP_E_ON, "slip-e-on", "tourniquet on, {digit}") \
	X(SLIP_E_NOT_ON, "slip-e-not-on", "not on, {digit}") \
	X(SLIP_E_OFF, "slip-e-off", "tourniquet off, {digit}") \
	X(SLIP_E_BARE, "slip-e-bare", "{digit} seen bare") \
	X(SLIP_E_SAID_ON, "slip-e-said-on", "{digit}: tourniquet still on, as was answered") \
	X(SLIP_E_SEEN_ON, "slip-e-seen-on", "{digit}: tourniquet seen on it") \
	X(SLIP_E_SIZE, "slip-e-size", "size stated: {n} mm") \
	X(SLIP_E_WHO_LOOKED, "slip-e-who-looked", "who looked: {what}") \
	X(SLIP_E_COUNT_BEGUN, "slip-e-count-begun", "count begun") \
	X(SLIP_E_AGREED_INITIAL, "slip-e-agreed-initial", "initial count agreed") \
	X(SLIP_E_AGREED_FINAL, "slip-e-agreed-final", "final count agreed") \
	X(SLIP_E_AGREED_HANDOVER, "slip-e-agreed-handover", "handover count agreed") \
	X(SLIP_E_AGREED_ADDED, "slip-e-agreed-added", "added item agreed") \
	X(SLIP_E_STEP, "slip-e-step", "search: {step}") \
	X(SLIP_E_STEP_WHY, "slip-e-step-why", "why it was not done: {reason}") \
	X(SLIP_E_PAID, "slip-e-paid", "settled: {what}") \
	X(SLIP_E_POINT, "slip-e-point", "sign-out point {n}") \
	X(SLIP_E_SIGNED, "slip-e-signed", "sign-out") \
	X(SLIP_E_TOLD, "slip-e-told", "reminder told, {digit}") \
	X(SLIP_E_DRESSING, "slip-e-dressing", "dressing on before the look") \
	X(SLIP_E_DRESSING_DOWN, "slip-e-dressing-down", "dressing taken down") \
	X(SLIP_E_SUSPENDED, "slip-e-suspended", "suspended") \
	X(SLIP_E_RESUMED, "slip-e-resumed", "went on") \
	X(SLIP_E_CANCELLED, "slip-e-cancelled", "cancelled") \
	X(SLIP_E_PATIENT_LEFT, "slip-e-patient-left", "patient left") \
	X(SLIP_E_AWAKE, "slip-e-awake", "patient awake") \
	X(SLIP_E_ENDED, "slip-e-ended", "case ended")

#define SLIP_NOTES(X, N) \
	X(SLIP_NOTE_ISOLATED, "slip-note-isolated", \
	  "Wrong number in its pack, isolated, not in the count: {item}. Tell stores.") \
	X(SLIP_NOTE_SUSPENDED, "slip-note-suspended", "Suspended at {time}; clocks and reminders went on.") \
	X(SLIP_NOTE_RESUMED, "slip-note-resumed", "Went on at {time}.") \
	X(SLIP_NOTE_CANCELLED, "slip-note-cancelled", "Cancelled at {time}, after something was opened or used: a count was owed.") \
	X(SLIP_NOTE_LEFT, "slip-note-left", "The patient left the room at {time}.") \
	X(SLIP_NOTE_LEFT_ON, "slip-note-left-on", "The patient left the room at {time} with a tourniquet on {list}.") \
	X(SLIP_NOTE_DRESSING, "slip-note-dressing", "At {time} a dressing was on before the look at the bare digit.") \
	X(SLIP_NOTE_DRESSING_DOWN, "slip-note-dressing-down", "The dressing came down for the look at {time}.") \
	X(SLIP_NOTE_CLOCK_WRONG, "slip-note-clock-wrong", \
	  "The wall clock was wrong, and said {time}: times of day from here on cannot be trusted.") \
	X(SLIP_NOTE_CLOCK_RIGHT, "slip-note-clock-right", "The wall clock was right again at {time}.") \
	X(SLIP_NOTE_CLOCK_FORWARD, "slip-note-clock-forward", \
	  "The wall clock was set forward by {n} min between {from} and {to}: times of day from before and after do not fit each other. Minutes come from another clock.") \
	X(SLIP_NOTE_CLOCK_BACK, "slip-note-clock-back", \
	  "The wall clock was set back by {n} min between {from} and {to}: times of day from before and after do not fit each other. Minutes come from another clock.") \
	X(SLIP_NOTE_RECALLED, "slip-note-recalled", \
	  "Put in quarantine at {time}, when this case had it on its sheet: {item}, all lots. Reason: {reason}.") \
	X(SLIP_NOTE_RECALLED_LOT, "slip-note-recalled-lot", \
	  "Put in quarantine at {time}, when this case had it on its sheet: {item}, lot {lot}. Reason: {reason}.") \
	X(SLIP_NOTE_WITHDRAWN, "slip-note-withdrawn", \
	  "Discrepancy slip {slip} of {time} was taken back with UNDO, and its discrepancy with it.") \
	X(SLIP_NOTE_STOPPED, "slip-note-stopped", \
	  "The station was stopped by its administrator at {time}, in the middle of this case.") \
	X(SLIP_NOTE_FORCED, "slip-note-forced", \
	  "The station was stopped by its administrator at {time}, in the middle of this case, in spite of its being held: forced.") \
	X(SLIP_NOTE_BACK, "slip-note-back", \
	  "The station was there again at {time}. What was done without it is entered late, or stands on the paper sheet alone.") \
	X(SLIP_NOTE_UNSTOPPED, "slip-note-unstopped", \
	  "The station was away between {from} and {time}, and nobody had stopped it. What was done without it is entered late, or stands on the paper sheet alone.") \
	X(SLIP_NOTE_NOT_FOLLOWED, "slip-note-not-followed", \
	  "EVENT {n} COULD NOT BE FOLLOWED: what it changed is not on this slip. Count by hand.") \
	X(SLIP_NOTE_LEFT_OUT, "slip-note-left-out", \
	  "{n} further entries of this case are in the record alone: they found no place on this paper.") \
	X(SLIP_CLOCK_GAP, "slip-clock-gap", \
	  "The station had no power for a time while a tourniquet was on the {digit}: its minutes are at least what is printed.") \
	X(SLIP_CLOCK_BACK, "slip-clock-back", \
	  "The wall clock was set back while a tourniquet was on the {digit}: when it went on and came off cannot be trusted, its minutes can.")

/* How a debt was paid, and why a case ended, where nobody typed it (count/debt.h, count/sheet.h). */
#define SLIP_HOWS(X, N) \
	X(PAID_AGREED, "paid-agreed", "agreed aloud") \
	X(PAID_AGREED_LATE, "paid-agreed-late", "agreed aloud after the tourniquet went on") \
	X(PAID_NAMED, "paid-named", "named aloud, not in the catalogue") \
	X(PAID_WAS_ON, "paid-was-on", "it was on") \
	X(PAID_MOVED, "paid-moved", "entered for the wrong digit and moved") \
	X(PAID_NEVER_HERE, "paid-never-here", "it was never here") \
	X(PAID_NEVER_ON, "paid-never-on", "it was never on") \
	X(PAID_NEVER_OFF, "paid-never-off", "it never came off") \
	X(PAID_NOT_ON, "paid-not-on", "not on") \
	X(PAID_IS_ON, "paid-is-on", "it is on") \
	X(PAID_RIGHT_DIGIT, "paid-right-digit", "the team says that it is the right digit") \
	X(PAID_OTHER_DIGIT, "paid-other-digit", "it went on this digit, which is not the marked one") \
	X(PAID_READ, "paid-read", "read aloud") \
	X(PAID_IMPROVISED, "paid-improvised", "improvised: its code was scanned") \
	X(PAID_PACK, "paid-pack", "its pack was scanned") \
	X(PAID_BADGED, "paid-badged", "badged in") \
	X(PAID_BY_OPERATOR, "paid-by-operator", "counted by the operator") \
	X(PAID_BY_OPERATOR_LATE, "paid-by-operator-late", "stated by the operator after the tourniquet went on") \
	X(PAID_DECIDED, "paid-decided", "the surgeon's decision") \
	X(PAID_ANSWERED, "paid-answered", "the surgeon answers for it") \
	X(PAID_NAME_WRITTEN, "paid-name-written", "name written by the circulating practitioner") \
	X(PAID_ENTERED_AFTER, "paid-entered-after", "entered after the end") \
	X(PAID_ASKED_STORES, "paid-stores-asked", "stores were asked") \
	X(PAID_NO_WOUND, "paid-no-wound", "none, says the team") \
	X(PAID_WOUND, "paid-wound", "yes, says the team") \
	X(PAID_NOT_USED, "paid-not-used", "it was not used here") \
	X(END_NOTHING_OPENED, "end-nothing-opened", "nothing was opened") \
	X(END_SHEET_EMPTY, "end-sheet-empty", "nothing is on the sheet") \
	X(END_NUMBER_OWED, "end-number-owed", "incident number owed") \
	X(END_NOT_FOLLOWED, "end-not-followed", "counted by hand: the station could not follow its own record of this case")

/* What the paper itself says, whatever it is filled with. */
#define SLIP_PAPER(X, N) \
	X(SLIP_P_SLIP, "slip-p-slip", "Slip {slip}") \
	X(SLIP_P_STATION, "slip-p-station", "station {n}") \
	X(SLIP_P_COPY, "slip-p-copy", "COPY {copy}") \
	X(SLIP_P_PAGE, "slip-p-page", "page {page} of {pages}") \
	X(SLIP_P_GOES_ON, "slip-p-goes-on", "goes on: page {page} of {pages}") \
	X(SLIP_P_PRACTICE, "slip-p-practice", "PRACTICE") \
	X(SLIP_P_PRACTICE_NOTE, "slip-p-practice-note", \
	  "Practice: this paper is about no patient. Throw it away when the exercise is over.") \
	X(SLIP_P_NUMBER, "slip-p-number", "no.") \
	X(SLIP_P_ITEM, "slip-p-item", "item, and what tells it apart") \
	X(SLIP_P_ITEM_EVIDENCE, "slip-p-item-evidence", "item, evidence") \
	X(SLIP_P_IN, "slip-p-in", "counted in") \
	X(SLIP_P_OUT, "slip-p-out", "accounted for") \
	X(SLIP_P_EVIDENCE, "slip-p-evidence", "evidence") \
	X(SLIP_P_SKIN_BEFORE, "slip-p-skin-before", "skin before") \
	X(SLIP_P_SKIN_AFTER, "slip-p-skin-after", "skin after") \
	X(SLIP_P_COLOUR, "slip-p-colour", "colour back at") \
	X(SLIP_P_WRITE, "slip-p-write", "What was done, to be written by whoever looks") \
	X(SLIP_P_LOOKED_BY, "slip-p-looked-by", "{text}: looked at by") \
	X(SLIP_P_LOOKED_DIGITS, "slip-p-looked-digits", "digits looked at by") \
	X(SLIP_P_AT, "slip-p-at", "at") \
	X(SLIP_P_FEELING, "slip-p-feeling", "colour, warmth, feeling") \
	X(SLIP_P_SURGEON_TOLD, "slip-p-surgeon-told", "surgeon told") \
	X(SLIP_P_WARD_TOLD, "slip-p-ward-told", "ward told") \
	X(SLIP_P_PATIENT_TOLD, "slip-p-patient-told", "patient told") \
	X(SLIP_P_CONTINUED, "slip-p-continued", "{words}, continued") \
	X(SLIP_P_CAUTION, "slip-p-caution", \
	  "A count that agrees can still be wrong: in any doubt take the dressing down and look. This paper supports the count that people make and never replaces it; local policy and the licensed practitioner decide. Names are as badges claim.") \
	X(SLIP_P_SCAN, "slip-p-scan", "Last scan, with the paper in your hand") \
	X(SLIP_P_SCAN_NOW, "slip-p-scan-now", "Scan this, paper in hand") \
	X(SLIP_P_PROOF, "slip-p-proof", "Proof against forgery: bandtally audit slip") \
	X(SLIP_P_UNSIGNED, "slip-p-unsigned", "This paper carries no signed summary.") \
	X(SLIP_P_WRITTEN, "slip-p-written", "{words} {time}") \
	X(SLIP_P_VERSION, "slip-p-version", "v{version}")
/* clang-format on */

#endif
