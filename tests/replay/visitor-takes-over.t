# A visitor comes to relieve the one at the field: vouched for by the circulating badge first, then as any other. The circulating
# place passes to no visitor. Another visitor takes over from the surgeon.
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
> pack GREEN-M 331 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:331 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 1, first
> card NO
question: Visitor 1.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NEXT, then NO to leave it as it is.
  event: asked, case 1, visitor, person visitor 1, first
> badge CIRC-2
accepted: Visitor 1: visiting.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: joined, case 1, visitor, person visitor 1, "visitor 1"
+ 5 min
  event: alive, 5 times
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge CIRC-2
question: CIRC-2 hands over (circulating).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person CIRC-2, first
> card VISITOR 1
refused: Visitor 1 cannot take this place (circulating): no handover. With one who may: HANDOVER again.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "Visitor 1 cannot take this place (circulating): no handover. With one who may: HANDOVER again."
  event: asked, case 1, nothing more
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-1
question: SCRUB-1 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SCRUB-1, first
> card VISITOR 1
question: Visitor 1 takes over from SCRUB-1, at the field.
next: Right index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-1, first
  event: left, case 1, visitor, person visitor 1
  event: joined, case 1, field, person visitor 1, "visitor 1"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right index finger, person SCRUB-1, n -1
> digit right index finger
accepted: Tourniquet seen on the right index finger.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right index finger, n 1, first
  event: asked, case 1, handover-agree, person SCRUB-1, n -1
> badge CIRC-2
accepted: Handover count agreed aloud by visitor 1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, handover, person visitor 1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 5 min, total 5 min, longest 5 min
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Tourniquet on the right index finger for 10 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:11, after 10 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Before the dressing: scan FINAL COUNT.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card VISITOR 2
question: Visitor 2.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 2, first
> card NO
question: Visitor 2.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NEXT, then NO to leave it as it is.
  event: asked, case 1, visitor, person visitor 2, first
> badge CIRC-2
accepted: Visitor 2: visiting.
next: Before the dressing: scan FINAL COUNT.
  event: asked, case 1, nothing more, first
  event: joined, case 1, visitor, person visitor 2, "visitor 2"
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SURG-3
question: SURG-3 hands over (operating surgeon).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SURG-3, first
> card VISITOR 2
accepted: Visitor 2 takes over from SURG-3 as operating surgeon.
next: Before the dressing: scan FINAL COUNT.
  event: left, case 1, surgeon, person SURG-3, first
  event: left, case 1, visitor, person visitor 2
  event: joined, case 1, surgeon, person visitor 2, "visitor 2"
  event: asked, case 1, nothing more
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by visitor 1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person visitor 1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:11.
next: Read the sign-out points aloud: scan VISITOR 2 if all are true; NO if one is not.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> card VISITOR 2
question: Visitor 2 signs out.
next: The visiting surgeon signs; the circulating badge is the witness: scan the circulating badge; NO to leave it as it is.
  event: asked, case 1, witness, person visitor 2, first

