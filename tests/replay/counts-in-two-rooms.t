# Somebody who counts in one room badges in to count in another: the reply says so. A suspended case keeps nobody.
room 1
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
+ 1 min
> card NEW CASE
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL."
> badge SUPPORT-4
refused: SUPPORT-4 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "SUPPORT-4 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge."
> badge CIRC-2
accepted: Entered once already: CIRC-2. If it is meant again: NEXT, then this.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
+ 1 min
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
