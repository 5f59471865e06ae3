# Cancelled while a tourniquet may be on, and none was: nothing is on the sheet, and the case ends.
> digit right thumb
question: Right thumb: the clock runs as 'on?'. Case 1 is opened.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 1
  event: owed, case 1, team
  event: digit-maybe-on, case 1, digit right thumb
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> card CANCEL
question: Case 1. A TOURNIQUET MAY BE ON: right thumb.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1: the operation is cancelled. A TOURNIQUET MAY BE ON: right thumb. A count is still owed.
next: Right thumb: Is a tourniquet on it now? Scan NEXT, then YES; NO if none is on it: then it is the marked digit.
  event: asked, case 1, nothing more, first
  event: cancelled, case 1
  event: asked, case 1, is-on, digit right thumb, n 1
> card NEXT
accepted: Next.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: next, case 1
> card NO
accepted: Marked digit: right thumb. Case 1 ended as cancelled; nothing is on its sheet.
next: Next patient: scan NEW CASE.
  event: digit-not-on, case 1, digit right thumb, first
  event: paid, case 1, maybe-on, digit right thumb, not-on
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit right thumb
  event: case-ended, case 1, cancelled, sheet-empty
