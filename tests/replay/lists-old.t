# While the hospital's lists are old, and the policy wants it, stores are asked whether what is counted in was recalled: one debt, which whoever asked pays (rule 3).
lists old
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
> pack GREEN-M 181 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:181 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1

policy ask_when_lists_old
> pack FORCEPS 183
accepted: Counted in: 1 artery forceps, curved. The hospital's lists are old: ask stores whether it was recalled.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:183 "artery forceps, curved" forceps known by its mark, n 1, first
  event: owed, case 1, stores-asked-of-recalls
> pack GREEN-M 182 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028). The hospital's lists are old: ask stores whether it was recalled.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, GREEN-M:182 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: finger tourniquet, green, M, here, 0 of 1
owed: stores-asked-of-recalls
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: stores asked about recalls: scan NEXT, then the circulating badge when stores were asked.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: Still to do: stores asked about recalls: scan the circulating badge when stores were asked.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 3, digit right index finger
  event: forceps-on, case 1, item 2, digit right index finger
> badge CIRC-2
accepted: Stores were asked about recalls, says CIRC-2. What was recalled: take it off the field and use another.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: paid, case 1, stores-asked-of-recalls, person CIRC-2, stores-asked, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
item 3: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
> pack GREEN-M 184 lot T26 expiry 20280331
accepted: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028). The hospital's lists are old: ask stores whether it was recalled.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 4, GREEN-M:184 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
  event: owed, case 1, stores-asked-of-recalls
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: stores asked about recalls: scan NEXT, then the circulating badge when stores were asked.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> card NEXT
accepted: Next.
next: Still to do: stores asked about recalls: scan the circulating badge when stores were asked.
  event: next, case 1
> badge CIRC-2
accepted: Stores were asked about recalls, says CIRC-2. What was recalled: take it off the field and use another.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: paid, case 1, stores-asked-of-recalls, person CIRC-2, stores-asked, first
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card OFF
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 3, digit right index finger, first
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right index finger

lists fresh
> pack GREEN-M 185 lot T26 expiry 20280331
accepted: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 5, GREEN-M:185 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: item-in, case 1, item 6, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 6
  event: owed, case 1, added

lists old
> pack GREEN-M 186 lot T26 expiry 20280331
accepted: Listed: the tourniquet is finger tourniquet, green, M. The hospital's lists are old: ask stores whether it was recalled.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-listed, case 1, item 6, GREEN-M:186 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: paid, case 1, listing, item 6, pack-scanned
  event: owed, case 1, stores-asked-of-recalls
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: stores asked about recalls: scan NEXT, then the circulating badge when stores were asked.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> card NEXT
accepted: Next.
next: Still to do: stores asked about recalls: scan the circulating badge when stores were asked.
  event: next, case 1
> badge CIRC-2
accepted: Stores were asked about recalls, says CIRC-2. What was recalled: take it off the field and use another.
next: Before the dressing: scan FINAL COUNT.
  event: paid, case 1, stores-asked-of-recalls, person CIRC-2, stores-asked, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: finger tourniquet, green, M, off, 0 of 1
item 4: finger tourniquet, green, M, here, 0 of 1
item 5: finger tourniquet, green, M, here, 0 of 1
item 6: finger tourniquet, green, M, here, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
