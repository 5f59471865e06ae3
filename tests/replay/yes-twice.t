# A YES that is read twice answers one line: between two equal answers stands another scan, which the board names.
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
> pack NEEDLE lot N1
accepted: Counted in: 1 needle (lot N1).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, NEEDLE "needle" other lot N1 single-use, n 1, first
> pack SWAB-5 lot S1
accepted: Counted in: 5 × swab, small (lot S1).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, SWAB-5 "swab, small" other lot S1 single-use, n 5, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the needle: scan YES when both have seen it; NO if it is not there.
  event: count-started, case 1, final, first
> card YES
accepted: Accounted for: needle: shown to both, 1 of 1.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 1, n 1, first
>> card YES
accepted: Read twice, entered once: YES.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
+ 1 min
> card YES
accepted: Entered once already: YES. If it is meant again: NEXT, then this.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
> card NEXT
accepted: Next.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: next, case 1
> card YES
accepted: Accounted for: swab, small: shown to both, 5 of 5.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 2, n 5, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
