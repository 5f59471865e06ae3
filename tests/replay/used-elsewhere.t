# An item that another station of the hospital has used is not counted in here; on a digit all the same it is listed, and the surgeon answers; and what turns up at the final count is none of this case (rules 3, 4, 5).
used elsewhere GREEN-M:190 case 7 of station 2
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 190 lot T26 expiry 20280331
refused: Not counted in: this finger tourniquet, green, M was used in case 7 of station 02, as the hospital's store says, and is used once only. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not counted in: this finger tourniquet, green, M was used in case 7 of station 02, as the hospital's store says, and is used once only. Take it off the field and use another. If it is on a digit alrea"
> pack GREEN-M 191 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:191 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 183
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:183 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
  event: forceps-on, case 1, item 2, digit right index finger
> digit left thumb
question: Left thumb: the clock runs as 'on?'.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit left thumb, first
  event: owed, case 1, maybe-on, digit left thumb
  event: asked, case 1, is-on, digit left thumb, n 1
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: item-in, case 1, item 3, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 3
  event: owed, case 1, added
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit left thumb, n 1
> digit left thumb
question: Left thumb: the clock runs as 'on?'.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: asked, case 1, is-on, digit left thumb, n 1, first
> pack GREEN-M 190 lot T26 expiry 20280331
accepted: Listed as what it is: finger tourniquet, green, M. But this finger tourniquet, green, M was used in case 7 of station 02, as the hospital's store says, and is used once only: the surgeon answers for it.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: item-listed, case 1, item 3, GREEN-M:190 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: paid, case 1, listing, item 3, pack-scanned
  event: owed, case 1, reason, item 3, "this finger tourniquet, green, M was used in case 7 of station 02, as the hospital's store says, and is used once only"
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
item 3: finger tourniquet, green, M, here, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
left thumb: maybe on, now 0 min, total 0 min, longest 0 min
owed: maybe-on
owed: added
owed: reason
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card OFF
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, first
> digit right index finger
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right index finger
  event: asked, case 1, is-on, digit left thumb, n 1
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 3, digit left thumb
  event: forceps-on, case 1, item 2, digit left thumb
  event: paid, case 1, maybe-on, digit left thumb, was-on
  event: item-off, case 1, item 3, digit left thumb
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit left thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
left thumb: off, now 0 min, total 0 min, longest 0 min
owed: added
owed: reason

used elsewhere GREEN-M:192 case 8 of station 2
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> pack GREEN-M 192 lot T26 expiry 20280331
refused: That finger tourniquet, green, M was used in case 8 of station 02, as the hospital's store says: it is no item of this case. If it is not its wrapper that lies here, call that room now and have that patient's digit looked at.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "That finger tourniquet, green, M was used in case 8 of station 02, as the hospital's store says: it is no item of this case. If it is not its wrapper that lies here, call that room now and have that p"
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
left thumb: off, now 0 min, total 0 min, longest 0 min
owed: added
owed: reason
