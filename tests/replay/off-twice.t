# OFF is read twice while two digits have a tourniquet: one comes off, and the other clock runs on (rule 22). OFF after that
# needs its digit card, since two digits had one.
begins from two-on
+ 4 min
  event: alive, 4 times
> digit right index finger
question: Tourniquet on the right index finger for 4 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:04, after 4 min. Off is not yet accounted for.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
>> card OFF
accepted: Read twice, entered once: OFF.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 4 min, total 4 min, longest 4 min
left ring finger: on, now 4 min, total 4 min, longest 4 min
> card OFF
accepted: Entered once already: OFF. If it is meant again: NEXT, then this.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
> digit left ring finger
question: Tourniquet on the left ring finger for 4 min.
next: Left ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left ring finger, first
> card OFF
accepted: Off, left ring finger, at 10:04, after 4 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left ring finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 4 min, total 4 min, longest 4 min
left ring finger: off, now 4 min, total 4 min, longest 4 min
