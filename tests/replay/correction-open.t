# Only a case that has ended can be corrected.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first

room 2
> typed case 1: left and not right
refused: Case 1 has not ended here: type the number of an ended case.
next: Next patient: scan NEW CASE.
  event: refused, "Case 1 has not ended here: type the number of an ended case."
