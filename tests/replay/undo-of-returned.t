# What went back, or was struck, may be in another room by now: UNDO does not bring it back, its own code does (rules 4 and 13).
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
> pack GREEN-M 561 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:561 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 562 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:562 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack GREEN-M 561 lot T26 expiry 20280331
accepted: Returned unopened: finger tourniquet, green, M. It may be used in another case.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-returned, case 1, item 1, first
  event: asked, case 1, nothing more

room 2
> card NEW CASE
accepted: Theatre 2: Case 2 opened in Theatre 2.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-5
accepted: Theatre 2: SCRUB-5: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-5, "SCRUB-5", first
> badge SUPPORT-4
accepted: Theatre 2: SUPPORT-4: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person SUPPORT-4, "SUPPORT-4", first
> pack GREEN-M 561 lot T26 expiry 20280331
accepted: Theatre 2: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:561 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge SUPPORT-4
accepted: Theatre 2: Initial count agreed aloud by SCRUB-5 and SUPPORT-4, recorded by SUPPORT-4.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-5, other SUPPORT-4, n SUPPORT-4, first

room 1
> card UNDO
refused: Theatre 1: Not taken back: finger tourniquet, green, M has left this sheet. If it is here: scan its code, then it is counted in again.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: refused, case 1, "Not taken back: finger tourniquet, green, M has left this sheet. If it is here: scan its code, then it is counted in again."
> pack GREEN-M 561 lot T26 expiry 20280331
question: Theatre 1: Finger tourniquet, green, M is on the open sheet of case 2 in Theatre 2.
next: Is that pack in your hand here, unused? Scan YES; NO if not.
  event: asked, case 1, here-now, item 1, n 2, first
> card NO
accepted: Theatre 1: Left as it is.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: asked, case 1, nothing more, first
> card MISREAD
question: Theatre 1: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 1, move-to, first
> pack GREEN-M 562 lot T26 expiry 20280331
accepted: Theatre 1: Struck as a misread: finger tourniquet, green, M. The record keeps it.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: item-struck, case 1, item 2, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> card UNDO
refused: Theatre 1: Not taken back: finger tourniquet, green, M has left this sheet. If it is here: scan its code, then it is counted in again.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not taken back: finger tourniquet, green, M has left this sheet. If it is here: scan its code, then it is counted in again."
> pack GREEN-M 562 lot T26 expiry 20280331
accepted: Theatre 1: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 3, GREEN-M:562 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
> show
item 1: finger tourniquet, green, M, returned, 0 of 1
item 2: finger tourniquet, green, M, struck, 0 of 1
item 3: finger tourniquet, green, M, here, 0 of 1
owed: added

room 2
> show
item 1: finger tourniquet, green, M, here, 0 of 1
