# What was dropped goes on all the same: its pack says that it is that, and one is counted and not two.
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
> pack GREEN-M 853 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:853 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> pack GREEN-M 853 lot T26 expiry 20280331
accepted: Dropped: finger tourniquet, green, M. It stays in the room and in the count.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-dropped, case 1, item 1, first
  event: asked, case 1, nothing more
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> card YES
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: paid, case 1, maybe-on, digit right index finger, is-on, first
  event: digit-on, case 1, digit right index finger
  event: item-in, case 1, item 2, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 2
  event: owed, case 1, added
  event: item-on, case 1, item 2, digit right index finger
  event: asked, case 1, nothing more
> pack GREEN-M 853 lot T26 expiry 20280331
accepted: Listed: the tourniquet that was entered is the finger tourniquet, green, M that was dropped. Tell the surgeon that it lay on the floor.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-struck, case 1, item 2, first
  event: item-on, case 1, item 1, digit right index finger
  event: paid, case 1, listing, item 2, pack-scanned
> show
item 1: finger tourniquet, green, M, on, 0 of 1, dropped
item 2: tourniquet, not listed yet, struck, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
owed: added
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Tourniquet on the right index finger for 5 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:05, after 5 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
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
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:05.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right index finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:853 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this paper came out.
next: Next patient: scan NEW CASE.
  event: slip-state, case 1, seen, copy 1, n 1
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 854 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:854 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 855 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 2, GREEN-M:855 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 2, dropped, first
> pack GREEN-M 855 lot T26 expiry 20280331
accepted: Dropped: finger tourniquet, green, M. It stays in the room and in the count.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-dropped, case 2, item 2, first
  event: asked, case 2, nothing more
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:06; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 2, digit right index finger, first
  event: item-on, case 2, item 1, digit right index finger
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 2, off, digit right index finger, first
> card ADD
accepted: A second tourniquet on the right index finger. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: item-in, case 2, item 3, no line "tourniquet, not listed yet" tourniquet unlisted, n 1, first
  event: owed, case 2, listing, item 3
  event: owed, case 2, added
  event: item-on, case 2, item 3, digit right index finger
  event: asked, case 2, nothing more
> card OFF
accepted: One of the tourniquets is off the right index finger. Another is still on; the clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: item-off, case 2, item 3, digit right index finger, first
> pack GREEN-M 855 lot T26 expiry 20280331
accepted: Listed: the tourniquet that was entered is the finger tourniquet, green, M that was dropped. Tell the surgeon that it lay on the floor.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-struck, case 2, item 3, first
  event: item-on, case 2, item 2, digit right index finger
  event: item-off, case 2, item 2, digit right index finger
  event: paid, case 2, listing, item 3, pack-scanned
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1, dropped
item 3: tourniquet, not listed yet, struck, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
owed: added
