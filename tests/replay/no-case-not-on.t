# A digit card while no case is open, and nothing is on: NO ends the case that the card opened.
> digit right thumb
question: Right thumb: the clock runs as 'on?'. Case 1 is opened.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 1
  event: owed, case 1, team
  event: digit-maybe-on, case 1, digit right thumb
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card NO
accepted: Not on: right thumb. Case 1 ended as cancelled; nothing was counted in.
next: Next patient: scan NEW CASE.
  event: digit-not-on, case 1, digit right thumb, first
  event: paid, case 1, maybe-on, digit right thumb, not-on
  event: asked, case 1, nothing more
  event: case-ended, case 1, cancelled, nothing-opened
> show
no case
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
