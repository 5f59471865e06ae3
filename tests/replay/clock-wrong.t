# While the wall clock is wrong expiry cannot be judged: the date is read aloud, and that is owed of each pack (rules 3, 5).
+ wall -180 min
+ 1 min
  event: clock-wrong, n 1
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
  event: clock-wrong, case 1, n 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 181 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028). Its expiry cannot be judged, the wall clock is wrong: read the date aloud.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:181 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, expiry-read, item 1
> pack GREEN-M 182 lot T20 expiry 20200331
refused: Not counted in: finger tourniquet, green, M expired on 31 Mar 2020. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Not counted in: finger tourniquet, green, M expired on 31 Mar 2020. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
> pack FORCEPS 183
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:183 "artery forceps, curved" forceps known by its mark, n 1, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
owed: expiry-read
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: an expiry date that the station cannot judge: finger tourniquet, green, M: scan NEXT, then the circulating badge when it was read aloud.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
owed: expiry-read
> digit right index finger
accepted: Tourniquet on, right index finger, from 07:01; forceps on it. The clock runs.
next: Still to do: an expiry date that the station cannot judge: finger tourniquet, green, M: scan the circulating badge when it was read aloud.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
  event: forceps-on, case 1, item 2, digit right index finger
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Still to do: an expiry date that the station cannot judge: finger tourniquet, green, M: scan the circulating badge when it was read aloud.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card OFF
accepted: Off, right index finger, at 07:01, after 0 min. Off is not yet accounted for.
next: Still to do: an expiry date that the station cannot judge: finger tourniquet, green, M: scan the circulating badge when it was read aloud.
  event: item-off, case 1, item 1, digit right index finger, first
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right index finger
+ 2 min
+ wall 190 min
+ 1 min
  event: clock-wrong
  event: clock-wrong, case 1
> pack GREEN-M 184 lot T26 expiry 20280331
accepted: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Still to do: an expiry date that the station cannot judge: finger tourniquet, green, M: scan the circulating badge when it was read aloud.
  event: item-in, case 1, item 3, GREEN-M:184 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
> badge CIRC-2
accepted: Expiry date read aloud, says CIRC-2. If it has passed: take the item off the field and use another.
next: Still to do: the count of what was added: scan NEXT, then the circulating badge when it was counted aloud.
  event: paid, case 1, expiry-read, item 1, person CIRC-2, read-aloud, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: finger tourniquet, green, M, here, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
owed: added
> card NEXT
accepted: Next.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: next, case 1
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: finger tourniquet, green, M, here, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
+ wall -300 min
+ 1 min
  event: clock-wrong, n 1
  event: clock-wrong, case 1, n 1
> badge SURG-3
refused: Not yet the sign-out: finger tourniquet, green, M is not accounted for.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "Not yet the sign-out: finger tourniquet, green, M is not accounted for."
> pack GREEN-M 185 lot T26 expiry 20280331
question: Extra item: finger tourniquet, green, M, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 4, GREEN-M:185 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: asked, case 1, extra, item 4
> digit left thumb
accepted: Tourniquet on, left thumb, from 05:16; forceps on it. The clock runs. The final count starts again.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 3, digit left thumb
  event: forceps-on, case 1, item 2, digit left thumb
  event: asked, case 1, nothing more
> badge SURG-3
refused: Not yet the sign-out: a tourniquet is on the left thumb.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: refused, case 1, "Not yet the sign-out: a tourniquet is on the left thumb."
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
item 3: finger tourniquet, green, M, on, 0 of 1
item 4: finger tourniquet, green, M, extra, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
left thumb: on, now 0 min, total 0 min, longest 0 min
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: item-in, case 1, item 5, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 5
  event: owed, case 1, added
> pack GREEN-M 186 lot T26 expiry 20280331
accepted: Listed: the tourniquet is finger tourniquet, green, M. Its expiry cannot be judged, the wall clock is wrong: read the date aloud.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-listed, case 1, item 5, GREEN-M:186 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: paid, case 1, listing, item 5, pack-scanned
  event: owed, case 1, expiry-read, item 5
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
item 3: finger tourniquet, green, M, on, 0 of 1
item 4: finger tourniquet, green, M, extra, 0 of 1
item 5: finger tourniquet, green, M, here, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
left thumb: on, now 0 min, total 0 min, longest 0 min
owed: added
owed: expiry-read
