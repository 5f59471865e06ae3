# Situations that need one card each.
> card OFF
refused: No case is open in Theatre 1: OFF has nothing to act on.
next: Next patient: scan NEW CASE.
  event: refused, "No case is open in Theatre 1: OFF has nothing to act on."
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> card NEW CASE
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 1, "Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL."
> case 41
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 1, "Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL."
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> badge nobody
refused: Badge 999 is not known here: add it with 'bandtally staff add', or use a VISITOR card.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Badge 999 is not known here: add it with 'bandtally staff add', or use a VISITOR card."
> card AWAKE PATIENT
accepted: The patient is awake: quiet sounds, plain words.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: awake-patient, case 1, n 1, first
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES; NO if not.
  event: asked, case 1, no-code, first
> card YES
accepted: Counted in: tourniquet without a code. Say aloud what it is and write it on the paper sheet.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
  event: item-in, case 1, item 1, no line "tourniquet without a code" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 1
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES; NO if not.
  event: asked, case 1, no-code, first
> card NO
accepted: Counted in: item without a code, described on paper. Say aloud what it is and write it on the paper sheet.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
  event: item-in, case 1, item 2, no line "item without a code, described on paper" other unlisted, n 1
> card MARK UNREADABLE
accepted: Counted in: 1 artery forceps, mark unreadable. At the end it is shown.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, no line "artery forceps, mark unreadable" forceps unlisted, n 1, first
> card PATIENT LEAVES
question: Patient leaves. NOT ACCOUNTED FOR: tourniquet without a code; item without a code, described on paper; artery forceps, mark unreadable.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: asked, case 1, leaves, first
> card NO
accepted: Left as it is.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
> card UNDO
accepted: Taken back: the answer. The record keeps both.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: undone, case 1, ref asked 1 before, first
> card UNDO
refused: Nothing can be taken back now. To move an entry to the right digit scan MISREAD.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: refused, case 1, "Nothing can be taken back now. To move an entry to the right digit scan MISREAD."
> card DRESSING ALREADY ON
accepted: Noted: a dressing is on. It comes down for the look at the bare digit.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: dressing-on, case 1, n 1, first
> card STEP DONE
refused: There is no search now.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: refused, case 1, "There is no search now."
> card FOUND
question: Nothing is missing in this case. It may be of an earlier one.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, case 1, found, first
> card WITHOUT FULL SIGHT
refused: WITHOUT FULL SIGHT belongs to a handover.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "WITHOUT FULL SIGHT belongs to a handover."
> card WHO LOOKED: NOBODY
refused: WHO LOOKED belongs to a single-person count, after the look at the bare digit.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "WHO LOOKED belongs to a single-person count, after the look at the bare digit."
> typed hello
refused: Nothing asks for text now. A barcode is typed whole, as it stands under the bars.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "Nothing asks for text now. A barcode is typed whole, as it stands under the bars."
> card INTACT
refused: INTACT does not answer what is asked: What was found?
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "INTACT does not answer what is asked: What was found?"
> card YES
refused: YES does not answer what is asked: What was found?
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "YES does not answer what is asked: What was found?"
> card NO
accepted: Left as it is.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
> card YES
refused: YES does not agree the count: scan the circulating badge.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "YES does not agree the count: scan the circulating badge."
> card SHOWN 3
refused: No count asks for a number now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "No count asks for a number now."
> card MISREAD
question: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 1, move-to, first
> card NO
accepted: Left as it is.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
> card PATIENT LEAVES
question: Patient leaves. NOT ACCOUNTED FOR: tourniquet without a code; item without a code, described on paper; artery forceps, mark unreadable.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: asked, case 1, leaves, first
> card YES
accepted: The patient has left the room. NOT ACCOUNTED FOR: tourniquet without a code; item without a code, described on paper; artery forceps, mark unreadable. Tell the surgeon and the ward now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: patient-left, case 1, first
  event: asked, case 1, nothing more
> show
item 1: tourniquet without a code, here, 0 of 1
item 2: item without a code, described on paper, here, 0 of 1
item 3: artery forceps, mark unreadable, here, 0 of 1
owed: listing
