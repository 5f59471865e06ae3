# A case is suspended for another; one in which nothing was opened is cancelled; one with a pack owes a count.
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
> pack GREEN-M 180 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:180 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on. SUSPEND again continues it.
next: Case 1 is suspended: SUSPEND continues it. Another patient: scan NEW CASE.
  event: suspended, case 1, first
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 2
> card CANCEL
question: Case 2.
next: Cancel this case? Scan YES or NO.
  event: asked, case 2, cancel, first
> card YES
accepted: Case 2 ended as cancelled; nothing was opened.
next: Next patient: scan NEW CASE.
  event: asked, case 2, nothing more, first
  event: case-ended, case 2, cancelled, "nothing was opened"
> card SUSPEND
accepted: Case 1 goes on.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: resumed, case 1, first
> card CANCEL
question: Case 1.
next: Cancel this case? Scan YES or NO.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1 is cancelled. A pack was opened, so a count is still owed.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: asked, case 1, nothing more, first
  event: cancelled, case 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> badge SURG-3
accepted: Case 1 ended as cancelled. Finger tourniquet, green, M: 1 of 1 shown intact.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:180 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, cancelled
  event: slip-queued, case 1, reconciliation, copy 1, n 1
prints: reconciliation slip 1
