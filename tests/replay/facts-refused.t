# What the station would have refused is listed all the same when it is on the digit already; the reason is owed.
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
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 1
> digit right ring finger
question: Right ring finger: the clock runs as 'on?'.
next: Right ring finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit right ring finger, first
  event: owed, case 1, maybe-on, digit right ring finger
  event: asked, case 1, is-on, digit right ring finger, n 1
> card YES
accepted: Tourniquet on, right ring finger, from 10:00; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: paid, case 1, maybe-on, digit right ring finger, is-on, first
  event: digit-on, case 1, digit right ring finger
  event: item-on, case 1, item 1, digit right ring finger
  event: owed, case 1, count
  event: asked, case 1, nothing more
> pack GREEN-M 110 lot OLD expiry 20200131
accepted: Listed as what it is, because it is already on: finger tourniquet, green, M. But finger tourniquet, green, M expired on 31 Jan 2020: the surgeon answers for it.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: item-listed, case 1, item 1, GREEN-M:110 "finger tourniquet, green, M" tourniquet known by its pack lot OLD expiry 20200131 single-use, first
  event: paid, case 1, listing, item 1, pack-scanned
  event: owed, case 1, reason, item 1, "finger tourniquet, green, M expired on 31 Jan 2020"
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right ring finger: on, now 0 min, total 0 min, longest 0 min
owed: count
owed: reason
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: the surgeon's answer for an item that the station refused: finger tourniquet, green, M: scan the surgeon's badge; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, count, person CIRC-2, agreed-aloud-late
> badge SURG-3
accepted: SURG-3 answers for the item that the station refused. The slip says so.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: paid, case 1, reason, item 1, person SURG-3, surgeon-answers
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right ring finger: on, now 0 min, total 0 min, longest 0 min
> digit right ring finger
question: Tourniquet on the right ring finger for 0 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card OFF
accepted: Off, right ring finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, cut and complete, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right ring finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right ring finger
accepted: Right ring finger seen bare at 10:00.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not.
  event: digit-seen-bare, case 1, digit right ring finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown cut and complete. Seen bare: right ring finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:110 "finger tourniquet, green, M" tourniquet known by its pack lot OLD expiry 20200131 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
