/* What is to be done next (count/deed.h): a head, and behind it the deeds that fit.
 *
 *   {head}: scan {deed}, {deed} or {deed}; {deed} {when it fits}; {deed} {when it fits}.
 *
 * A head has no full stop; one that ends with a question mark is followed by a sentence of its own.
 */
#ifndef BANDTALLY_WORDS_NEXT_WORDS_H
#define BANDTALLY_WORDS_NEXT_WORDS_H

/* clang-format off */
#define NEXT_WORDS(X, N) \
	NEXT_HEADS(X, N) \
	NEXT_PARTS(X, N) \
	DEED_NAMES(X, N) \
	DEED_TRUTHS(X, N)

#define NEXT_HEADS(X, N) \
	/* a line of the final count */ \
	N(HEAD_LAY, "head-lay", "Lay {n} × {item} beside it", "Lay {n} × {item} side by side") \
	N(HEAD_SHOW_PIECES, "head-show-pieces", "Show the {n} piece of the {item}", "Show all {n} pieces of the {item}") \
	X(HEAD_SHOW_BESIDE_FIRST, "head-show-beside-first", "Show the {item}, {n} of {all}, beside the first") \
	X(HEAD_SHOW_BESIDE_OTHERS, "head-show-beside-others", "Show the {item}, {n} of {all}, beside the others") \
	X(HEAD_SHOW_MARKED, "head-show-marked", "Show the {item} marked {code}") \
	X(HEAD_SHOW, "head-show", "Show the {item}") \
	/* questions */ \
	X(HEAD_FOUND_IS, "head-found-is", "Found: is it the {item}?") \
	X(HEAD_POINT, "head-point", "Sign-out {n} of {all}: {step} Is it so?") \
	X(HEAD_ASKED, "head-asked", "{question}") \
	X(HEAD_ASKED_OF_DIGIT, "head-asked-of-digit", "{digit}: {question}") \
	X(HEAD_STORED_ONE, "head-stored-one", "A scan was stored: {list} (made {time}). Made in this room?") \
	X(HEAD_STORED_ONE_HERE, "head-stored-one-here", \
	  "A scan was stored: {list} (made {time}). Made in this room, for this case?") \
	X(HEAD_STORED_ONE_FOR, "head-stored-one-for", \
	  "A scan was stored: {list} (made {time}). Made in this room, for case {case}, not case {other_case}?") \
	N(HEAD_STORED_FOR, "head-stored-for", \
	  "{n} scan was stored: {list} (made {time}). Made in this room, for case {case}, not case {other_case}?", \
	  "{n} scans were stored: {list} (oldest {time}). Made in this room, for case {case}, not case " \
	  "{other_case}?") \
	N(HEAD_STORED, "head-stored", "{n} scan was stored: {list} (made {time}). Made in this room?", \
	  "{n} scans were stored: {list} (oldest {time}). Made in this room?") \
	N(HEAD_STORED_HERE, "head-stored-here", \
	  "{n} scan was stored: {list} (made {time}). Made in this room, for this case?", \
	  "{n} scans were stored: {list} (oldest {time}). Made in this room, for this case?") \
	X(HEAD_TWICE, "head-twice", "{what} came twice in a row. Meant twice?") \
	N(HEAD_TIMES, "head-times", "{what} came {n} time in a row. Meant {n} time?", \
	  "{what} came {n} times in a row. Meant {n} times?") \
	/* what is owed, searched, signed */ \
	X(HEAD_OWED, "head-owed", "Still to do: {what}") \
	X(HEAD_OWED_DIGIT, "head-owed-digit", "Still to do, {digit}: {what}") \
	X(HEAD_OWED_ITEM, "head-owed-item", "Still to do: {what}: {item}") \
	X(HEAD_OWED_DIGIT_ITEM, "head-owed-digit-item", "Still to do, {digit}: {what}: {item}") \
	X(HEAD_SEARCH, "head-search", "Search {n} of {all}: {step}") \
	X(HEAD_SEARCH_END, "head-search-end", "Each step of the search is answered") \
	X(HEAD_HELD, "head-held", \
	  "Sign-out held: point {n} is NO. When it is resolved, the sign-out begins again") \
	X(HEAD_POINTS_YES, "head-points-yes", "Each point is answered YES. Sign-out by the surgeon's badge") \
	X(HEAD_POINTS_YES_SINGLE, "head-points-yes-single", \
	  "Each point is answered YES. Sign-out by the operator's badge") \
	X(HEAD_READ_POINTS, "head-read-points", "Read the sign-out points aloud") \
	/* before the final count */ \
	X(HEAD_WHO_COUNTS, "head-who-counts", "A tourniquet is on the {digit}. Who counts") \
	X(HEAD_WHO_CIRCULATES, "head-who-circulates", "Who circulates") \
	X(HEAD_WHO_WORKS_ALONE, "head-who-works-alone", "Who works alone") \
	X(HEAD_BEFORE_SCRUBBING, "head-before-scrubbing", "Before scrubbing") \
	X(HEAD_COUNT_IN, "head-count-in", "Count in") \
	X(HEAD_WHEN_ON_SINGLE, "head-when-on-single", "When the tourniquet goes on, before gloving") \
	X(HEAD_WHEN_ON, "head-when-on", "When the tourniquet is on") \
	X(HEAD_WHEN_OFF, "head-when-off", "When the tourniquet is off the {list}") \
	X(HEAD_WHEN_ONE_OFF, "head-when-one-off", "On: {list}. When one is off") \
	X(HEAD_REMIND_OFF, "head-remind-off", "Account for the tourniquet of the {digit}. Heard") \
	X(HEAD_REMIND_SINGLE, "head-remind-single", "Tourniquet on the {digit} for {what}. Heard") \
	X(HEAD_REMIND, "head-remind", "Tourniquet on the {digit} for {what}. Tell the surgeon, then") \
	/* after it */ \
	X(HEAD_AGREE_FINAL, "head-agree-final", "Agree the final count aloud") \
	X(HEAD_LOOK_DRESSING, "head-look-dressing", "Dressing down, look at the bare {digit}") \
	X(HEAD_LOOK_LEFT, "head-look-left", "The patient has left: go and look at the bare {digit}") \
	X(HEAD_LOOK, "head-look", "Look at the bare {digit} before the dressing") \
	X(HEAD_FINAL_LEFT, "head-final-left", "The patient has left, and the count is owed") \
	X(HEAD_FINAL, "head-final", "Before the dressing") \
	X(HEAD_SUSPENDED, "head-suspended", "Case {case} is suspended") \
	X(HEAD_AFTER_CALLED, "head-after-called", "Case {case}: call that patient back now, if not here any more") \
	X(HEAD_AFTER_LOOK, "head-after-look", "Case {case}: look at that patient's digit now") \
	X(HEAD_AFTER_LOOK_AT, "head-after-look-at", "Case {case}: look at that patient's {digit} now") \
	X(HEAD_AFTER_WARD, "head-after-ward", "Case {case}: tell the ward now") \
	X(HEAD_PAPER, "head-paper", "The paper") \
	X(HEAD_AUDIT_DESK, "head-audit-desk", "Auditor's desk: the next slip") \
	X(HEAD_NEXT_PATIENT, "head-next-patient", "Next patient") \
	X(HEAD_BY_HAND, "head-by-hand", "Count by hand on the paper sheet until this is mended") \
	X(BY_HAND, "by-hand", "Count by hand on the paper sheet.") \
	/* how long a tourniquet has been on; `most` is by the wall clock */ \
	X(MINUTES, "minutes", "{minutes} min") \
	X(MINUTES_AT_LEAST, "minutes-at-least", "at least {minutes} min; by wall clock {most} min") \
	X(MINUTES_NO_WALL, "minutes-no-wall", "at least {minutes} min; the wall clock cannot be trusted")

/* How head and deeds are put together. {first} and {second} are parts that were said already. */
#define NEXT_PARTS(X, N) \
	X(NEXT_STATED, "next-stated", "{first}.") \
	X(NEXT_STATED_DEED, "next-stated-deed", "{first}: {second}.") \
	X(NEXT_ASKED_DEED, "next-asked-deed", "{first} {second}.") \
	X(NEXT_MORE, "next-more", "{first}; {second}") \
	X(DO_SCAN, "do-scan", "scan {words}") \
	X(DO_TYPE, "do-type", "type {words}") \
	X(DO_WHEN, "do-when", "{first} {second}") \
	X(DO_SCAN_WHEN, "do-scan-when", "scan {first} {second}") \
	X(DO_TYPE_WHEN, "do-type-when", "type {first} {second}") \
	X(OR_TWO, "or-two", "{first} or {second}") \
	X(OR_MORE, "or-more", "{first}, {second}") \
	X(OR_LAST, "or-last", "{first} or {second}") \
	X(NEXT_THEN, "next-then", "{card}, then {words}") \
	X(NEXT_FIRST, "next-first", "{words} ({card} first)")

/* What a deed is called. */
#define DEED_NAMES(X, N) \
	X(DEED_SHOWN_NUMBER, "deed-shown-number", "SHOWN and their number") \
	X(DEED_LOOKED_80, "deed-looked-80", "PATIENT") \
	X(DEED_LOOKED_81, "deed-looked-81", "CARER") \
	X(DEED_LOOKED_82, "deed-looked-82", "COLLEAGUE") \
	X(DEED_LOOKED_83, "deed-looked-83", "NOBODY") \
	X(DEED_RIGHT_CARD, "deed-right-card", "the card of the digit that it is really on") \
	X(DEED_CARD_THEN_OFF, "deed-card-then-off", "its digit card, then OFF") \
	X(DEED_ITS_CARD, "deed-its-card", "its digit card") \
	X(DEED_DIGIT_CARD, "deed-digit-card", "the digit card") \
	X(DEED_ITS_MARK, "deed-its-mark", "its mark") \
	X(DEED_MARK_ON_IT, "deed-mark-on-it", "the mark on it") \
	X(DEED_PACK_OR_MARK, "deed-pack-or-mark", "its pack or its mark") \
	X(DEED_EACH_PACK, "deed-each-pack", "each pack and instrument") \
	X(DEED_ITS_PACK, "deed-its-pack", "its pack") \
	X(DEED_THE_PACK, "deed-the-pack", "the pack") \
	X(DEED_BADGE_OPERATOR, "deed-badge-operator", "the operator's badge") \
	X(DEED_BADGE_FIELD, "deed-badge-field", "the badge of the one at the field") \
	X(DEED_BADGE_CIRCULATING, "deed-badge-circulating", "the circulating badge") \
	X(DEED_BADGE_SURGEON, "deed-badge-surgeon", "the surgeon's badge") \
	X(DEED_BADGE_CHARGE, "deed-badge-charge", "the badge of the nurse in charge") \
	X(DEED_BADGE_ANY, "deed-badge-any", "a badge") \
	X(DEED_SLIP_CODE, "deed-slip-code", "the code on the slip") \
	X(DEED_TYPE_WHY, "deed-type-why", "why") \
	X(DEED_TYPE_NUMBER, "deed-type-number", "the incident number")

/* When a deed fits, behind it. A truth of count/deed.h that has no sentence here is said by the head. */
#define DEED_TRUTHS(X, N) \
	X(TRUTH_SHOWN, "truth-shown", "when both have seen it") \
	X(TRUTH_SHOWN_ALONE, "truth-shown-alone", "when you have seen it") \
	X(TRUTH_ALL_INTACT, "truth-all-intact", "if all are intact") \
	X(TRUTH_ALL_SHOWN, "truth-all-shown", "if all are there") \
	X(TRUTH_SOME_INTACT, "truth-some-intact", "for as many as are") \
	X(TRUTH_SOME_SHOWN, "truth-some-shown", "for as many as are") \
	X(TRUTH_ONE_CUT, "truth-one-cut", "for one that is cut") \
	X(TRUTH_ONE_IN_PIECES, "truth-one-in-pieces", "for one not whole") \
	X(TRUTH_NOT_THERE, "truth-not-there", "if it is not there") \
	X(TRUTH_NONE_THERE, "truth-none-there", "if none is there") \
	X(TRUTH_ON_A_DIGIT, "truth-on-a-digit", "if it is on a digit") \
	X(TRUTH_STILL_ON, "truth-still-on", "if it is still on") \
	X(TRUTH_SECOND_ON, "truth-second-on", "if a second one went on") \
	X(TRUTH_ON_AGAIN, "truth-on-again", "if one went on again") \
	X(TRUTH_IS_ON_NOW, "truth-is-on-now", "if a tourniquet is on it") \
	X(TRUTH_NEVER_OFF, "truth-never-off", "if it never came off") \
	X(TRUTH_NOT_ON, "truth-not-on", "if none is on it") \
	X(TRUTH_NOT_ON_YET, "truth-not-on-yet", "if none is on it: then it is the marked digit") \
	X(TRUTH_NEVER_ON, "truth-never-on", "if no tourniquet went on at all") \
	X(TRUTH_AS_ENTERED, "truth-as-entered", "to leave it as it is") \
	X(TRUTH_NO, "truth-no", "if not") \
	X(TRUTH_ALL_COUNTED, "truth-all-counted", "when both have counted aloud") \
	X(TRUTH_NOTHING_USED, "truth-nothing-used", "if no tourniquet will go on") \
	X(TRUTH_NO_OPERATION, "truth-no-operation", "if there is no operation") \
	X(TRUTH_COUNTED_ALOUD, "truth-counted-aloud", "when it was counted aloud") \
	X(TRUTH_WRITTEN, "truth-written", "when it is written") \
	X(TRUTH_NAMED_ALOUD, "truth-named-aloud", "when it was said aloud which it is") \
	X(TRUTH_READ_ALOUD, "truth-read-aloud", "when it was read aloud") \
	X(TRUTH_STORES_ASKED, "truth-stores-asked", "when stores were asked") \
	X(TRUTH_ALL_POINTS, "truth-all-points", "if all are true") \
	X(TRUTH_NOT_ALL_POINTS, "truth-not-all-points", "if one is not") \
	X(TRUTH_NO_BADGE, "truth-no-badge", "for a visitor without a badge") \
	X(TRUTH_NOBODY_SCRUBS, "truth-nobody-scrubs", "if nobody scrubs") \
	X(TRUTH_FOUND, "truth-found", "when what is missing is in your hand") \
	X(TRUTH_NO_NUMBER, "truth-no-number", "of the case it comes from, if it bears no number") \
	X(TRUTH_SOMETHING_ELSE, "truth-something-else", "if it is something else") \
	X(TRUTH_COUNT_AGAIN, "truth-count-again", "to count again") \
	X(TRUTH_GIVEN_UP, "truth-given-up", "when the surgeon decides to end") \
	X(TRUTH_GO_ON, "truth-go-on", "to go on") \
	X(TRUTH_NUMBER_OWED, "truth-number-owed", "if there is no number yet") \
	X(TRUTH_PAPER_IN_HAND, "truth-paper-in-hand", "when it is in your hand") \
	X(TRUTH_NEXT_PATIENT, "truth-next-patient", "for the next patient") \
	X(TRUTH_RESUME, "truth-resume", "to go on with it") \
	X(TRUTH_MADE_HERE, "truth-made-here", "to enter as late") \
	X(TRUTH_MADE_ELSEWHERE, "truth-made-elsewhere", "to throw away") \
	X(TRUTH_MEANT_ONCE, "truth-meant-once", "for once") \
	X(TRUTH_CASE_FIRST, "truth-case-first", "to open their case first") \
	X(TRUTH_READ_BY_MISTAKE, "truth-read-by-mistake", "if the extra item was read by mistake") \
	X(TRUTH_CASE_KNOWN, "truth-case-known", "if it is known which case it comes from") \
	X(TRUTH_AFTER_DONE, "truth-after-done", "when it was done") \
	X(TRUTH_AFTER_BARE, "truth-after-bare", "when it was seen bare") \
	X(TRUTH_AFTER_ON, "truth-after-on", "if a tourniquet is on it") \
	X(TRUTH_NO_FULL_SIGHT, "truth-no-full-sight", "if it cannot be seen")
/* clang-format on */

#endif
