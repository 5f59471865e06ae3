# A correction after the end: a further event and an addendum slip, nothing edited (rule 13).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> card CANCEL
question: Case 1.
next: Cancel this case? Scan YES or NO.
> card YES
accepted: Case 1 ended as cancelled; nothing was opened.
next: Next patient: scan NEW CASE.
> typed case 1: the patient was in Theatre 2
accepted: Correction of case 1 entered beside what it corrects. An addendum slip prints: put it in the notes.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: addendum slip 1
> typed case 9: nothing
refused: Case 9 has not ended here: type the number of an ended case.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> typed case 2: too early
refused: Nothing asks for typed text now: type the code that stands under the barcode.
next: Scan the badge of the one at the field, before scrubbing.
