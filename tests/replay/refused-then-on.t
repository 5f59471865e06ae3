# A pack that was refused is on the digit all the same, while another lies unused on the sheet: what the refusal says to scan
# enters the right one.
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
> pack GREEN-M 510 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:510 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 511 lot OLD expiry 20200131
refused: Not counted in: finger tourniquet, green, M expired on 31 Jan 2020. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Not counted in: finger tourniquet, green, M expired on 31 Jan 2020. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 2
> pack GREEN-M 511 lot OLD expiry 20200131
accepted: Listed as what it is: finger tourniquet, green, M. But finger tourniquet, green, M expired on 31 Jan 2020: the surgeon answers for it.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-listed, case 1, item 2, GREEN-M:511 "finger tourniquet, green, M" tourniquet known by its pack lot OLD expiry 20200131 single-use, first
  event: paid, case 1, listing, item 2, pack-scanned
  event: owed, case 1, reason, item 2, "finger tourniquet, green, M expired on 31 Jan 2020"
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: the surgeon's answer for an item that the station refused: finger tourniquet, green, M: scan the surgeon's badge; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: Still to do: the surgeon's answer for an item that the station refused: finger tourniquet, green, M: scan the surgeon's badge; VISITOR 1 for a visitor without a badge.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now 0 min, total 0 min, longest 0 min
owed: reason
> badge SURG-3
accepted: SURG-3 answers for the item that the station refused. The slip says so.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: paid, case 1, reason, item 2, person SURG-3, surgeon-answers
