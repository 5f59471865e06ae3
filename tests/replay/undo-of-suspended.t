# The sheet of a case that is suspended in the same room is another sheet too (rules 4 and 24).
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
> pack GREEN-M 581 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:581 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-5
accepted: SCRUB-5: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-5, "SCRUB-5", first
> badge SUPPORT-4
accepted: SUPPORT-4: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person SUPPORT-4, "SUPPORT-4", first
> pack GREEN-M 581 lot T26 expiry 20280331
question: Finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1.
next: Is that pack in your hand here, unused? Scan YES; NO if not.
  event: asked, case 2, here-now, item 1, n 1, first
> card YES
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 2, nothing more, first
  event: item-struck, case 1, item 1, n 2
  event: item-in, case 2, item 1, GREEN-M:581 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
> card UNDO
refused: Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is not here: scan MISREAD, then its code; then have it scanned in Theatre 1.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 2, "Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is not here: scan MISREAD, then its code; then have it scanned in Theatre 1."
> card MISREAD
question: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 2, move-to, first
> pack GREEN-M 581 lot T26 expiry 20280331
accepted: Struck as a misread: finger tourniquet, green, M. The record keeps it.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: item-struck, case 2, item 1, first
  event: asked, case 2, nothing more
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
