# The question of a tourniquet that rolls on is not lost by the next scan: it is asked until it is answered, of each one, also
# where the pack is listed for one that is on the digit already (rules 3, 7 and 19).
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
> pack ROLL-S 1 lot R1 expiry 20280331
question: Counted in: 1 finger tourniquet, roll-on, S (lot R1, expires 31 Mar 2028).
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 1, ROLL-S:1 "finger tourniquet, roll-on, S" tourniquet known by its pack lot R1 expiry 20280331 single-use rolls-on, n 1, first
  event: owed, case 1, rolls-on, item 1
  event: asked, case 1, rolls-on, item 1
> pack ROLL-S 2 lot R1 expiry 20280331
question: Counted in: 1 finger tourniquet, roll-on, S (lot R1, expires 31 Mar 2028).
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 2, ROLL-S:2 "finger tourniquet, roll-on, S" tourniquet known by its pack lot R1 expiry 20280331 single-use rolls-on, n 1, first
  event: owed, case 1, rolls-on, item 2
  event: asked, case 1, rolls-on, item 2
> pack FORCEPS 3
accepted: Counted in: 1 artery forceps, curved.
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 3, FORCEPS:3 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, nothing more
  event: asked, case 1, rolls-on, item 1
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> digit left thumb
question: Left thumb: the clock runs as 'on?'.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit left thumb, first
  event: owed, case 1, maybe-on, digit left thumb
  event: asked, case 1, is-on, digit left thumb, n 1
> card NO
accepted: Marked digit: left thumb.
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NEXT, then NO if not.
  event: digit-not-on, case 1, digit left thumb, first
  event: paid, case 1, maybe-on, digit left thumb, not-on
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit left thumb
  event: asked, case 1, rolls-on, item 1
> card YES
accepted: Noted. A tourniquet that rolls on may carry infection or tumour along and tear a flap.
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan NEXT, then YES; NO if not.
  event: asked, case 1, nothing more, first
  event: paid, case 1, rolls-on, item 1, wound
  event: owed, case 1, surgeon-decision, item 1
  event: asked, case 1, rolls-on, item 2
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan NEXT, then YES; NO if not.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> show
item 1: finger tourniquet, roll-on, S, here, 0 of 1
item 2: finger tourniquet, roll-on, S, here, 0 of 1
item 3: artery forceps, curved, here, 0 of 1
left thumb: bare, marked, now 0 min, total 0 min, longest 0 min
owed: rolls-on
owed: surgeon-decision
> digit left index finger
question: Left index finger: the clock runs as 'on?'.
next: Left index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit left index finger, first
  event: owed, case 1, maybe-on, digit left index finger
  event: asked, case 1, is-on, digit left index finger, n 1
> card YES
question: Tourniquet on, left index finger, from 10:00; forceps on it. The clock runs.
next: Left index finger: Not the marked digit. Is this the right digit? Scan NEXT, then YES; NO if not.
  event: paid, case 1, maybe-on, digit left index finger, is-on, first
  event: digit-on, case 1, digit left index finger
  event: item-on, case 1, item 2, digit left index finger
  event: forceps-on, case 1, item 3, digit left index finger
  event: owed, case 1, count
  event: owed, case 1, marked-digit, digit left index finger
  event: asked, case 1, right-digit, digit left index finger
> pack ROLL-S 4 lot R1 expiry 20280331
question: Counted in: 1 finger tourniquet, roll-on, S (lot R1, expires 31 Mar 2028).
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 4, ROLL-S:4 "finger tourniquet, roll-on, S" tourniquet known by its pack lot R1 expiry 20280331 single-use rolls-on, n 1, first
  event: owed, case 1, rolls-on, item 4
  event: asked, case 1, rolls-on, item 4
> card NO
accepted: No open wound, flap, infection or tumour on the digit, says the team.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES; NEXT, then NO if not.
  event: paid, case 1, rolls-on, item 4, no-wound, first
  event: asked, case 1, nothing more
  event: asked, case 1, right-digit, digit left index finger
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack ROLL-S 1
accepted: Returned unopened: finger tourniquet, roll-on, S. It may be used in another case.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES; NO if not.
  event: item-returned, case 1, item 1, first
  event: asked, case 1, nothing more
  event: paid, case 1, surgeon-decision, item 1, not-used
  event: asked, case 1, right-digit, digit left index finger
> pack ROLL-S 5 lot R1 expiry 20280331
question: Counted in: 1 finger tourniquet, roll-on, S (lot R1, expires 31 Mar 2028).
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 5, ROLL-S:5 "finger tourniquet, roll-on, S" tourniquet known by its pack lot R1 expiry 20280331 single-use rolls-on, n 1, first
  event: owed, case 1, rolls-on, item 5
  event: asked, case 1, rolls-on, item 5
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack ROLL-S 5
accepted: Returned unopened: finger tourniquet, roll-on, S. It may be used in another case.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES; NO if not.
  event: item-returned, case 1, item 5, first
  event: asked, case 1, nothing more
  event: paid, case 1, rolls-on, item 5, not-used
  event: asked, case 1, right-digit, digit left index finger
> show
item 1: finger tourniquet, roll-on, S, returned, 0 of 1
item 2: finger tourniquet, roll-on, S, on, 0 of 1
item 3: artery forceps, curved, on, 0 of 1
item 4: finger tourniquet, roll-on, S, here, 0 of 1
item 5: finger tourniquet, roll-on, S, returned, 0 of 1
left thumb: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: on, now 0 min, total 0 min, longest 0 min
owed: rolls-on
owed: count
owed: marked-digit
