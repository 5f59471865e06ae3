/* The printed practice set and its exercises (tool/label-practice.c). The form is that of sayings.h. */
#ifndef BANDTALLY_WORDS_PRACTICE_WORDS_H
#define BANDTALLY_WORDS_PRACTICE_WORDS_H

/* clang-format off */
#define PRACTICE_WORDS(X, N) \
	X(PR_PRACTICE, "pr-practice", "PRACTICE") \
	X(PR_ORDINARY, "pr-ordinary", "PRACTICE 1: an ordinary case") \
	X(PR_DISCREPANCY, "pr-discrepancy", "PRACTICE 2: something is missing") \
	X(PR_LONE, "pr-lone", "PRACTICE 3: alone") \
	X(PR_PACKS, "pr-packs", "PRACTICE SET: packs and badges") \
	X(PR_DIGITS, "pr-digits", "PRACTICE SET: digits") \
	X(PR_CARDS, "pr-cards", "PRACTICE SET: cards") \
	X(PR_NOTE, "pr-note", \
	  "From 1 on, in a room without a case: scan, read the board, do aloud what it asks; two seconds between scans. The first " \
	  "real code ends practice and counts.") \
	X(PR_NOTE_LAST, "pr-note-last", \
	  "Last: the slip prints, marked across. Scan the code on it: this paper is there. Then throw it away.") \
	X(PR_SET_NOTE, "pr-set-note", \
	  "For practice alone: nothing of this set counts. Keep it out of the room while a patient is in it.") \
	X(PR_OPEN, "pr-open", "A patient comes in: the case is opened.") \
	X(PR_IS_FIELD, "pr-is-field", "S is at the field: the badge, before scrubbing.") \
	X(PR_IS_CIRCULATING, "pr-is-circulating", "C circulates: the badge.") \
	X(PR_PACK, "pr-pack", "Counted in: the tourniquet's pack is opened.") \
	X(PR_FORCEPS, "pr-forceps", "Counted in: the artery forceps.") \
	X(PR_INITIAL, "pr-initial", "Both count aloud, and C records it: the initial count.") \
	X(PR_ON, "pr-on", "The tourniquet is on: its time starts.") \
	X(PR_MINUTES, "pr-minutes", "It comes off: the board shows the minutes, and asks.") \
	X(PR_OFF, "pr-off", "It is off: the time stops. Off is not yet accounted for.") \
	X(PR_FINAL, "pr-final", "Before the dressing: the board asks for each line in turn.") \
	X(PR_INTACT, "pr-intact", "The tourniquet is shown, whole and uncut.") \
	X(PR_SHOWN, "pr-shown", "The forceps is shown to both.") \
	X(PR_MISSING, "pr-missing", "The forceps is not there: a discrepancy. Its slip prints at once.") \
	X(PR_STEP, "pr-step", "The search: say it aloud, and stop closing.") \
	X(PR_FOUND, "pr-found", "It lay under the drapes.") \
	X(PR_FOUND_SHOWN, "pr-found-shown", "The board asks what was found: it is shown to both.") \
	X(PR_AGREED, "pr-agreed", "Both count aloud, and C records it: the final count.") \
	X(PR_BARE, "pr-bare", "The bare digit is looked at: a check of its own.") \
	X(PR_SIGN, "pr-sign", "The points are read aloud; the surgeon signs out, gloves off.") \
	X(PR_BY_ONESELF, "pr-by-oneself", "You work alone: your badge opens a single-person count.") \
	X(PR_BEFORE_GLOVES, "pr-before-gloves", "The tourniquet goes on; before gloving its time starts.") \
	X(PR_WITHOUT_GLOVES, "pr-without-gloves", "It has come off, and the gloves too: the board asks.") \
	X(PR_WHO_LOOKED, "pr-who-looked", "Who else looked at the bare digit? Here nobody: the slip says so.") \
	X(PR_SIGN_ALONE, "pr-sign-alone", "You read the points aloud, and sign out.")
/* clang-format on */

#endif
