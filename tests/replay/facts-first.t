# A digit card before any case is open opens one, and the clock starts at once (rule 3).
> digit right little finger
question: Right little finger: the clock runs as 'on?'. Case 1 is opened.
next: Right little finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 1
  event: owed, case 1, team
  event: digit-maybe-on, case 1, digit right little finger
  event: owed, case 1, maybe-on, digit right little finger
  event: asked, case 1, is-on, digit right little finger, n 1
> card YES
accepted: Tourniquet on, right little finger, from 10:00; no forceps on it. The clock runs.
next: A tourniquet is on the right little finger. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: paid, case 1, maybe-on, digit right little finger, is-on, first
  event: digit-on, case 1, digit right little finger
  event: item-in, case 1, item 1, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 1
  event: item-on, case 1, item 1, digit right little finger
  event: owed, case 1, team
  event: owed, case 1, count
  event: asked, case 1, nothing more
> show
item 1: tourniquet, not listed yet, on, 0 of 1
right little finger: on, now 0 min, total 0 min, longest 0 min
owed: team
owed: listing
owed: count
+ 4 min
  event: alive, 4 times
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: A tourniquet is on the right little finger. Who counts: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Still to do: which tourniquet it is, not listed: scan its pack; NEXT, then the circulating badge when it was said aloud which it is.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
  event: paid, case 1, team, person CIRC-2, badged-in
> pack GREEN-M 105 lot T26 expiry 20280331
accepted: Listed: the tourniquet that is on is finger tourniquet, green, M.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: item-listed, case 1, item 1, GREEN-M:105 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: paid, case 1, listing, item 1, pack-scanned
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right little finger: scan its digit card, then OFF.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, count, person CIRC-2, agreed-aloud-late
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right little finger: on, now 4 min, total 4 min, longest 4 min
> digit right little finger
question: Tourniquet on the right little finger for 4 min.
next: Right little finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right little finger, first
> card OFF
accepted: Off, right little finger, at 10:04, after 4 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right little finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right little finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right little finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right little finger
accepted: Right little finger seen bare at 10:04.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right little finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right little finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:105 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
