# At a handover a tourniquet is seen where it is; the record names who leaves, and whether there was full sight.
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
> pack GREEN-M 350 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:350 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 351 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:351 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: On: right thumb and right index finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-1
question: SCRUB-1 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SCRUB-1, first
> badge SCRUB-5
question: SCRUB-5 takes over from SCRUB-1, at the field.
next: Right index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-1, first
  event: joined, case 1, field, person SCRUB-5, "SCRUB-5"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right index finger, person SCRUB-1, n 5
> digit right thumb
accepted: Right thumb: the clock runs as 'on?'. First finish the handover.
next: Right index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
> digit right index finger
accepted: Tourniquet seen on the right index finger.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right index finger, n 1, first
  event: asked, case 1, handover-agree, person SCRUB-1, n 5
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-5 and CIRC-2, recorded by CIRC-2.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: count-agreed, case 1, handover, person SCRUB-5, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit right thumb, n 1
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-5
question: SCRUB-5 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SCRUB-5, first
> badge SCRUB-1
question: SCRUB-1 takes over from SCRUB-5, at the field.
next: Right index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-5, first
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right index finger, person SCRUB-5, n 1
> card WITHOUT FULL SIGHT
question: Handover without full sight of the right index finger. The slip says so.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right index finger, first
  event: asked, case 1, handover-agree, person SCRUB-5, n 1
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: count-agreed, case 1, handover, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit right thumb, n 1
