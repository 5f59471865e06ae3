# Handover of the scrub, then of the circulating practitioner, with a tourniquet on.
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
> pack GREEN-M 170 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:170 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
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
> digit right index finger
accepted: Tourniquet seen on the right index finger.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right index finger, n 1, first
  event: asked, case 1, handover-agree, person SCRUB-1, n 5
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-5 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, handover, person SCRUB-5, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
  event: asked, case 1, nothing more
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge CIRC-2
question: CIRC-2 hands over (circulating).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person CIRC-2, first
> badge SUPPORT-4
question: SUPPORT-4 takes over from CIRC-2, circulating.
next: Right index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, circulating, person CIRC-2, first
  event: joined, case 1, circulating, person SUPPORT-4, "SUPPORT-4"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right index finger, person CIRC-2, n 4
> card WITHOUT FULL SIGHT
question: Handover without full sight of the right index finger. The slip says so.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right index finger, first
  event: asked, case 1, handover-agree, person CIRC-2, n 4
> badge SUPPORT-4
accepted: Handover count agreed aloud by SCRUB-5 and SUPPORT-4, recorded by SUPPORT-4.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, handover, person SCRUB-5, other SUPPORT-4, n SUPPORT-4, first
  event: paid, case 1, handover, person SUPPORT-4, agreed-aloud
  event: asked, case 1, nothing more
> card OFF
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: digit-off, case 1, digit right index finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge SUPPORT-4
accepted: Final count agreed aloud by SCRUB-5 and SUPPORT-4, recorded by SUPPORT-4.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-5, other SUPPORT-4, n SUPPORT-4, first
