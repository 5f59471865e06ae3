# N MINUTES AGO puts no tourniquet on a digit before the last one came off it; an OFF that was put earlier leaves more room.
begins from counted-in
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: forceps-on, case 1, item 2, digit right thumb
+ 9 min
  event: alive, 9 times
> digit right thumb
question: Tourniquet on the right thumb for 9 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:09, after 9 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right thumb
> card 3 MINUTES AGO
accepted: Off 3 min earlier, right thumb.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right thumb, n 3, first
+ 4 min
> digit right thumb
question: Right thumb: the clock runs as 'on?'.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:13; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 1, digit right thumb
  event: forceps-on, case 1, item 2, digit right thumb
  event: asked, case 1, nothing more
> card 10 MINUTES AGO
refused: The last one came off the right thumb 7 min before this one went on: it cannot have gone on 10 min earlier. Scan a smaller number; MISREAD if the last one never came off.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: refused, case 1, "The last one came off the right thumb 7 min before this one went on: it cannot have gone on 10 min earlier. Scan a smaller number; MISREAD if the last one never came off."
> card 5 MINUTES AGO
accepted: On 5 min earlier, right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right thumb, n 5, first
> card 3 MINUTES AGO
refused: The last one came off the right thumb 2 min before this one went on: it cannot have gone on 3 min earlier. Scan a smaller number; MISREAD if the last one never came off.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: refused, case 1, "The last one came off the right thumb 2 min before this one went on: it cannot have gone on 3 min earlier. Scan a smaller number; MISREAD if the last one never came off."
> card 2 MINUTES AGO
accepted: On 2 min earlier, right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right thumb, n 2, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
right thumb: on, now 7 min, total 13 min, longest 7 min
> digit right thumb
question: Tourniquet on the right thumb for 7 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:13, after 7 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
right thumb: off, now 7 min, total 13 min, longest 7 min
+ boot 30 min
  event: started, n 2
> digit right thumb
question: Right thumb: the clock runs as 'on?'.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:44; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 1, digit right thumb
  event: forceps-on, case 1, item 2, digit right thumb
  event: asked, case 1, nothing more
> card 10 MINUTES AGO
accepted: On 10 min earlier, right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right thumb, n 10, first
> card NEXT
accepted: Next.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: next, case 1
> card 10 MINUTES AGO
accepted: On 10 min earlier, right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right thumb, n 10, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
right thumb: on, now 20 min, total 33 min, longest 20 min
