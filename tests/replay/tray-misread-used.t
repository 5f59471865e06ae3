# A tray of which something was used is not struck as a misread, and a refusal owes nothing.
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
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 2, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use on-xray, n 3
> pack GREEN-M 891 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 4, GREEN-M:891 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 4, digit right index finger
  event: forceps-on, case 1, item 1, digit right index finger
> card MISREAD
question: Misread: the right index finger, or a pack.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right index finger, first
> tray TRAY-HAND
refused: Hand tray: not each thing of it lies here as counted in: it stays in the count, and each is counted by itself.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: refused, case 1, "Hand tray: not each thing of it lies here as counted in: it stays in the count, and each is counted by itself."
> show
item 1: artery forceps, curved, on, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: needle, here, 0 of 3
item 4: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
