# Only a case that has ended can be corrected.
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

room 2
> typed case 1: left and not right
refused: Theatre 2: Case 1 has not ended here: type the number of an ended case.
next: Next patient: scan NEW CASE.
  event: refused, "Case 1 has not ended here: type the number of an ended case."
