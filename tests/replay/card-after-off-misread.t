# The digit card just after OFF, and it never came off: MISREAD takes OFF back, and its own clock has run all the time.
begins from asked-after-off
> card MISREAD
accepted: OFF taken back: the tourniquet is still on the right thumb, for 13 min. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-still-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: paid, case 1, maybe-on, digit right thumb, never-off
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now 13 min, total 13 min, longest 13 min
+ 8 min
  event: alive, 6 times
accepted: Reminder: tourniquet on the right thumb for 20 min.
next: Tourniquet on the right thumb for 20 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right thumb, n 20
  event: alive
> digit right thumb
question: Tourniquet on the right thumb for 21 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:21, after 21 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 21 min, total 21 min, longest 21 min
