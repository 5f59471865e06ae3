# The digit card just after OFF, and a tourniquet did go on again: YES times it from the card.
begins from asked-after-off
+ 2 min
> card YES
accepted: Tourniquet on, right thumb, from 10:13; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 1, digit right thumb
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now 2 min, total 14 min, longest 12 min
> digit right thumb
question: Tourniquet on the right thumb for 2 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:15, after 2 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 2 min, total 14 min, longest 12 min
