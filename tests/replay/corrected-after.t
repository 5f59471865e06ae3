# A correction after the end: a further event and an addendum slip, nothing edited (rule 13).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> card CANCEL
question: Case 1.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1 ended as cancelled; nothing was counted in.
next: Next patient: scan NEW CASE.
  event: asked, case 1, nothing more, first
  event: case-ended, case 1, cancelled, nothing-opened
> typed case 1: the patient was in Theatre 2
accepted: Correction of case 1 entered beside what it corrects. An addendum slip prints: put it in the notes.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: correction, case 1, "the patient was in Theatre 2"
  event: slip-queued, case 1, addendum, copy 1, n 1, "en"
prints: addendum slip 1
  event: slip-state, case 1, written, copy 1, n 1
> typed case 9: nothing
refused: Case 9 has not ended here: type the number of an ended case.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Case 9 has not ended here: type the number of an ended case."
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> typed case 2: too early
refused: Nothing asks for text now. A barcode is typed whole, as it stands under the bars.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 2, "Nothing asks for text now. A barcode is typed whole, as it stands under the bars."
