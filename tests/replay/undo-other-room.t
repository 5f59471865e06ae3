# A pack was said to be in the hand here, and left the sheet of another room by that. UNDO would leave it on no sheet: it is
# refused on both, and says what sets it right (rules 1, 4, 13 and 24).
begins from moved-here
> card UNDO
refused: Theatre 1: Not taken back: an item has left this sheet for case 2 in Theatre 2 since. If it is here: scan its code; if not, go on.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not taken back: an item has left this sheet for case 2 in Theatre 2 since. If it is here: scan its code; if not, go on."
> badge CIRC-2
accepted: Theatre 1: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first

room 2
> card UNDO
refused: Theatre 2: Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is not here: scan MISREAD, then its code; then have it scanned in Theatre 1.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 2, "Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is not here: scan MISREAD, then its code; then have it scanned in Theatre 1."
> badge SUPPORT-4
accepted: Theatre 2: Initial count agreed aloud by SCRUB-5 and SUPPORT-4, recorded by SUPPORT-4.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-5, other SUPPORT-4, n SUPPORT-4, first
> card MISREAD
question: Theatre 2: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 2, move-to, first
> pack GREEN-M 540 lot T26 expiry 20280331
accepted: Theatre 2: Struck as a misread: finger tourniquet, green, M. The record keeps it.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: item-struck, case 2, item 1, first
  event: owed, case 2, added
  event: asked, case 2, nothing more
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
owed: added

room 1
> pack GREEN-M 540 lot T26 expiry 20280331
accepted: Theatre 1: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 2, GREEN-M:540 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
item 2: finger tourniquet, green, M, here, 0 of 1
owed: added
