# Situations that need one card each.
> card OFF
refused: No case is open in Theatre 1: scan NEW CASE first.
next: Next patient: scan NEW CASE.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> card NEW CASE
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Scan the badge of the one at the field, before scrubbing.
> case 41
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> badge nobody
refused: Badge 999 is not known here: add it with 'bandtally staff add', or use a VISITOR card.
next: Scan each pack and instrument as it is counted in.
> card AWAKE PATIENT
accepted: The patient is awake: quiet sounds, plain words.
next: Scan each pack and instrument as it is counted in.
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES or NO.
> card YES
accepted: Counted in: tourniquet without a code. Say aloud what it is and write it on the paper sheet.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES or NO.
> card NO
accepted: Counted in: item without a code, described on paper. Say aloud what it is and write it on the paper sheet.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card MARK UNREADABLE
accepted: Counted in: 1 artery forceps, mark unreadable. At the end it is shown to both.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card PATIENT LEAVES
question: Patient leaves.
next: Does the patient leave the room now? Scan YES or NO.
> card NO
accepted: Left as it is.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card UNDO
accepted: Taken back: asked. The record keeps both.
next: Does the patient leave the room now? Scan YES or NO.
> card UNDO
refused: Nothing can be taken back now. To move an entry to the right digit scan MISREAD.
next: Does the patient leave the room now? Scan YES or NO.
> card DRESSING ALREADY ON
accepted: A dressing is on already: it comes down for the look at the bare digit.
next: Does the patient leave the room now? Scan YES or NO.
> card STEP DONE
refused: There is no search now.
next: Does the patient leave the room now? Scan YES or NO.
> card FOUND
refused: Nothing is missing in this case. An item of an earlier case: end this one, then scan FOUND.
next: Does the patient leave the room now? Scan YES or NO.
> card WITHOUT FULL SIGHT
refused: WITHOUT FULL SIGHT belongs to a handover.
next: Does the patient leave the room now? Scan YES or NO.
> card WHO LOOKED: NOBODY
refused: WHO LOOKED belongs to a single-person count, after the look at the bare digit.
next: Does the patient leave the room now? Scan YES or NO.
> typed hello
refused: Nothing asks for typed text now: type the code that stands under the barcode.
next: Does the patient leave the room now? Scan YES or NO.
> card INTACT
refused: Nothing is asked now that INTACT would answer.
next: Does the patient leave the room now? Scan YES or NO.
> card YES
accepted: The patient has left the room. What is owed stays owed.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card SHOWN 3
refused: No count asks for a number now.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card MISREAD
question: Misread: for a pack, scan that pack again to strike it.
next: Which digit is the right one? Scan its digit card.
> card NO
accepted: Left as it is.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card PATIENT LEAVES
question: Patient leaves.
next: Does the patient leave the room now? Scan YES or NO.
> card YES
accepted: The patient has left the room. What is owed stays owed.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> show
item 1: tourniquet without a code, here, 0 of 1
item 2: item without a code, described on paper, here, 0 of 1
item 3: artery forceps, mark unreadable, here, 0 of 1
owed: listing
