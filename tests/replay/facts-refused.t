# What the station would have refused is listed all the same when it is on the digit already; the reason is owed.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. Say aloud what it is; a glove finger or a drain must not be used.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 1
> digit right ring finger
question: Right ring finger.
next: Right ring finger: Is a tourniquet on it now? Scan YES or NO.
  event: digit-maybe-on, case 1, digit right ring finger, first
  event: owed, case 1, maybe-on, digit right ring finger
  event: asked, case 1, is-on, digit right ring finger, n 1
> pack GREEN-M 110 lot OLD expiry 20200131
accepted: Listed as what it is, because it is already on. But finger tourniquet, green, M expired on 2020-01-31: take it off the field and use another: the surgeon answers for it.
next: Right ring finger: Is a tourniquet on it now? Scan YES or NO.
  event: item-listed, case 1, item 1, GREEN-M:110 "finger tourniquet, green, M" tourniquet known by its pack lot OLD expiry 20200131 single-use, first
  event: paid, case 1, listing, item 1, "its pack was scanned"
  event: owed, case 1, reason, item 1
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right ring finger: maybe on, now 0 min, total 0 min, longest 0 min
owed: maybe-on
owed: reason
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Right ring finger: Is a tourniquet on it now? Scan YES or NO.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit right ring finger, n 1
> badge SURG-3
accepted: SURG-3 answers for the item that the station refused. The slip says so.
next: Right ring finger: Is a tourniquet on it now? Scan YES or NO.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: paid, case 1, reason, item 1, person SURG-3, "the surgeon answers for it"
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right ring finger: maybe on, now 0 min, total 0 min, longest 0 min
owed: maybe-on
> digit right ring finger
question: Right ring finger.
next: Right ring finger: Is a tourniquet on it now? Scan YES or NO.
  event: asked, case 1, is-on, digit right ring finger, n 1, first
> card OFF
accepted: Off, right ring finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 1, digit right ring finger
  event: paid, case 1, maybe-on, digit right ring finger, "it was on"
  event: item-off, case 1, item 1, digit right ring finger
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
  event: count-started, case 1, final, first
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
  event: item-shown, case 1, shown, item 1, cut and complete, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right ring finger before the dressing, then scan its digit card.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right ring finger
accepted: Right ring finger seen bare at 10:00.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
  event: digit-seen-bare, case 1, digit right ring finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown cut and complete; right ring finger seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
  event: signed-out, case 1, person SURG-3, first
  event: item-used, case 1, item 1, GREEN-M:110 "finger tourniquet, green, M" tourniquet known by its pack lot OLD expiry 20200131 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1
prints: reconciliation slip 1
