# A case is suspended for another; one in which nothing was opened is cancelled; one with a pack owes a count.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 180 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on. SUSPEND again continues it.
next: Case 1 is suspended: SUSPEND continues it. Another patient: scan NEW CASE.
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> card CANCEL
question: Case 2.
next: Cancel this case? Scan YES or NO.
> card YES
accepted: Case 2 ended as cancelled; nothing was opened.
next: Next patient: scan NEW CASE.
> card SUSPEND
accepted: Case 1 goes on.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card CANCEL
question: Case 1.
next: Cancel this case? Scan YES or NO.
> card YES
accepted: Case 1 is cancelled. A pack was opened, so a count is still owed.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
> badge SURG-3
accepted: Case 1 ended as cancelled. Finger tourniquet, green, M: 1 of 1 shown intact.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 1
