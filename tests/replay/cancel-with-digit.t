# A case that holds only a digit card is cancelled: the reply says what is on the digit.
> digit left thumb
question: Left thumb: the clock runs as 'on?'. Case 1 is opened.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 1
  event: owed, case 1, team
  event: digit-maybe-on, case 1, digit left thumb
  event: owed, case 1, maybe-on, digit left thumb
  event: asked, case 1, is-on, digit left thumb, n 1
> card YES
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: A tourniquet is on the left thumb. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: paid, case 1, maybe-on, digit left thumb, is-on, first
  event: digit-on, case 1, digit left thumb
  event: item-in, case 1, item 1, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 1
  event: item-on, case 1, item 1, digit left thumb
  event: owed, case 1, team
  event: owed, case 1, count
  event: asked, case 1, nothing more
> card CANCEL
question: Case 1. A TOURNIQUET IS ON: left thumb.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1: the operation is cancelled. A TOURNIQUET IS ON: left thumb. A count is still owed.
next: A tourniquet is on the left thumb. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: asked, case 1, nothing more, first
  event: cancelled, case 1
> show
item 1: tourniquet, not listed yet, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
owed: team
owed: listing
owed: count
